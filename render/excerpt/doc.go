// Package excerpt draws the place of one joint in space: what lies within a box
// around its steel, seen from outside and above, as it stands.
package excerpt
