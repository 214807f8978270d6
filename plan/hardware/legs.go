package hardware

import (
	"cmp"

	"galewright/plan"
)

// What a body measures where the catalog does not say, in: as drawn (common
// practice, no published source).
const (
	bodyLength = 3.0 // of a clip
	bodyWidth  = 1.5 // a stud's edge
)

// Across returns the width of the steel, in; where the catalog does not say,
// that of a stud's edge.
func (it *Item) Across() float64 {
	if it.Width > 0 {
		return it.Width
	}
	return bodyWidth
}

// LegLengths returns the lengths of the two legs of a bent piece out from its
// fold, in: those of the catalog's legs, first that on the member held; where
// it gives none, the developed length half and half, and for a hanger, whose
// length is its height, the width for each.
func (it *Item) LegLengths() (held, other float64) {
	if it.Legs != [2]float64{} {
		return it.Legs[0], it.Legs[1]
	}
	if it.Kind.Name == plan.HangerItem {
		return it.Across(), it.Across()
	}
	half := cmp.Or(it.Length, bodyLength) / 2
	return half, half
}
