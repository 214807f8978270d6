// Package render turns a framed house with its hardware into a drawing set.
// A Model flows in, flat sheets flow out. Its views are rows of one list and
// packages of their own (elevation, floorplan, detail, lists), none of which
// imports another: a view lays out pages first (paper, scale, what goes on
// which), then, when every sheet has its number, draws marks onto them. All
// marks are in millimeters of paper; no view knows a file format. The
// invariant: every piece has exactly one home instance over the set, and
// nothing that is lettered lies upon something else.
package render
