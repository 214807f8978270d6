package loadpath

import (
	"math"

	"galewright/plan"
)

// chordAt returns the chord force (lb, strength) of a deck at a coordinate
// across the wind, for wind along axis ax, and the bay that it is of: the deck as
// simple beams between the shear wall lines and a cantilever past the last, under
// the wind that is on each stretch of it; moment over the deck's depth there.
func (l *lateral) chordAt(lv *plan.Level, ax int, at float64) (lb float64, of *Bay) {
	for _, b := range l.bays() {
		if b.Level != lv || b.Axis != ax || at < b.Lo || at > b.Hi {
			continue
		}
		if c := math.Abs(b.moment(b.bands, at)) / math.Max(1, b.Depth); of == nil || c > lb {
			lb, of = c, &b
		}
	}
	return lb, of
}
