// Package schedule counts pieces: the legend numbers, the fasteners, what to
// order. A placement flows in; tables flow out as data, text, CSV and JSON.
// It counts what is placed and nothing else, so sheets and order agree.
//
// Invariant: the pieces of every breakdown add up to the pieces placed, and
// legend numbers run from 1 without gaps in the order of the catalog.
package schedule
