// Package floorplan draws what is seen from above: the plan of each level, the
// roof plan, the foundation plan and the sheet of their notes. A context flows
// in; pages flow out, a plan turned or parted where that keeps it readable. The
// invariant: pieces of ridge and roof are at home on the roof plan, those on
// piles and posts on the foundation plan, and a level's plan shows every other
// mark at every stud as a repeat of its home on an elevation.
package floorplan
