// Package porch draws the elevation of each side of a porch: its posts, beams, deck and
// the rafters over them as they stand, projected, with the stations of its posts and the
// heights that they are cut to. What hardware goes there is counted on the plans.
package porch
