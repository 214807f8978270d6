// Package render turns a framed house with its hardware into a drawing set.
// A Model flows in, flat sheets flow out. Each view has a row in
// one list: it lays out pages first (paper, scale, what goes on
// which), then, when every sheet has its number, draws marks onto them. All
// marks are in millimeters of paper; no view knows a file format. The
// invariant: every piece has exactly one home instance over the set, and
// nothing that is lettered lies upon something else.
package render
