// Package svg writes flat sheets as SVG files: real millimeters, styles by
// class from one fixed set, each symbol defined once and used. A sheet set
// flows in, bytes flow out, and they are the same bytes for the same set. It
// is the only package that knows the SVG library, and it owns what that
// library leaves open: escaping of attributes, rounding without a negative
// zero, refusal of numbers that are none, buffering, and the first write error.
//
// A piece shows as a group with data-legend, data-mark and a title. The group
// that holds the symbol standing for the piece has data-tag, and there is one
// in a set; a group that shows it again has data-see; lines and labels that
// belong to a piece, apart from its symbol, have data-part.
package svg
