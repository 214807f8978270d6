// Package wood tells what a straight line in space meets in a house: members
// in order, with the length in each, how much wood lies around a point, what
// carries a washer under a rod. It knows members and their solids, no hardware.
//
// Invariant: a member counts once on a line, however many parts it is made of.
package wood
