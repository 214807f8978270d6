// Package piling draws the lines of piles that are braced or closed by breakaway
// walls: elevations from girder to grade, projected, with the heights and lengths
// that braces are cut and bolted by.
package piling
