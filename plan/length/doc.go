// Package length reads and prints lengths as builders write them:
// 12' 3 1/2", 12'-3 1/2", 147.5in, 3744mm, 3.744m. Text flows in at one
// edge of the program and out at the other; between them every length is a
// float64 in inches. A bare number is refused, because nobody can tell feet
// from inches in it. Printing rounds once, from the true value, to the
// tape's 1/16 in, so running dimensions never add up rounding errors.
package length
