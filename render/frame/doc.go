// Package frame draws the whole frame in space: every member and every piece of
// steel as it stands, projected, with one path of the uplift picked out.
package frame
