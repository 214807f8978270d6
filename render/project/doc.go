// Package project looks at solids in space along a direction and returns the
// lines of the picture: which parts of each edge are seen, which are hidden,
// which lie in a cut. It is exact, without pixels: what hides an edge is worked
// out for each convex solid as an interval of the edge. Lengths are inches, in
// the picture as in space. The package knows geometry alone, no houses.
package project
