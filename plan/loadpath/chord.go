package loadpath

import (
	"math"

	"galewright/plan"
)

// chordAt returns the chord force (lb, strength) of a deck at a coordinate
// across the wind, for wind along axis ax: the deck as simple beams between
// the shear wall lines and a cantilever past the last, under its mean load;
// moment over the deck's depth.
func (l *lateral) chordAt(lv *plan.Level, ax int, at float64) float64 {
	for _, d := range l.m.decks {
		if d.level != lv {
			continue
		}
		w := 0.0 // lb per in
		for _, s := range l.stories {
			if s.Level == lv && s.Axis == plan.Axes[ax] {
				w = s.Deck / math.Max(1, d.extent.span(1-ax))
			}
		}
		return w * bending(d.lines[ax], axis(d.extent.lo, 1-ax), axis(d.extent.hi, 1-ax), at) / math.Max(1, d.extent.span(ax))
	}
	return 0
}

// bending returns the bending moment of a unit load between lo and hi, on
// simple beams between the lines, at a coordinate, in².
func bending(lines []*ShearLine, lo, hi, at float64) float64 {
	if len(lines) == 0 {
		return 0
	}
	first, last := lines[0].At, lines[len(lines)-1].At
	switch {
	case at <= first:
		return (at - lo) * (at - lo) / 2
	case at >= last:
		return (hi - at) * (hi - at) / 2
	}
	for i := 1; i < len(lines); i++ {
		if l, r := lines[i-1].At, lines[i].At; at <= r {
			return (at - l) * (r - at) / 2
		}
	}
	return 0
}
