// Package geom holds the little solid geometry that framing, placement and
// drawing share: points, the frame of a wall, and convex solids that can be
// clipped by a plane and tested for overlap. Lengths are inches; x is east,
// y is north, z is up, z = 0 is grade. The package knows nothing of houses.
//
// A Solid is always convex. A member that is not (a rafter with its
// birdsmouth) is a slice of solids that touch but do not overlap.
package geom
