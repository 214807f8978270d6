// Package framing turns a checked plan into members with true extents in
// space and into joints, the places where members meet and force must cross.
// A plan flows in, a House flows out. No two members of a House occupy the
// same space, and every joint names the members that meet in it: later
// stages speak of joints and never search geometry again. The package knows
// nothing of hardware.
package framing
