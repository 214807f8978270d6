// Package model writes the house out as it stands: members as solids, joints,
// every piece with its plates, fasteners and rods in space, and what the lift
// test took for tied. Placement, bodies and load path go in, JSON comes out,
// from which another program can check what this one says. Nothing is computed
// here: each number is read from the stage that found it, rounded once.
package model
