package steel

import (
	"math"

	"galewright/plan/hardware"
	"galewright/plan/timber"
)

// Hole is one hole of an end: along the steel from its end, across from its
// middle line, in; Filled when it takes a fastener.
type Hole struct {
	Along, Across float64
	Filled        bool
}

// Pattern is how the holes of one end are laid out.
type Pattern struct {
	Count, Holes     int     // fasteners, holes (at least as many)
	Rows             int     // at least 1
	Spacing, EndDist float64 // along a row; from the steel's end, in
	Stagger          bool
	Offset           float64 // of every other row when staggered, in
	// Odd says that it is the first row that is shifted, not the second: a second
	// flange goes on where the rows of the first one left off.
	Odd bool
}

// Lay returns the holes of the pattern on steel of the width, those nearest
// to the end first.
func (p Pattern) Lay(width float64) []Hole {
	rows := max(p.Rows, 1)
	out := make([]Hole, 0, max(p.Count, p.Holes))
	for i := range max(p.Count, p.Holes) {
		row := i % rows
		h := Hole{Along: p.EndDist + float64(i/rows)*p.Spacing, Filled: i < p.Count}
		h.Across = width * ((float64(row)+0.5)/float64(rows) - 0.5)
		if p.Stagger && (row%2 == 1) != p.Odd {
			h.Along += p.Offset
		}
		out = append(out, h)
	}
	return out
}

// Need returns the length of steel that the pattern takes from its end to the
// middle of its last hole, in.
func (p Pattern) Need() float64 {
	rows := float64(max(p.Rows, 1))
	need := p.EndDist + (math.Ceil(float64(max(p.Count, p.Holes))/rows)-1)*p.Spacing
	if p.Stagger && (rows > 1 || p.Odd) {
		need += p.Offset
	}
	return need
}

// Room is the steel that an end has for its holes, from where it starts, in.
type Room struct {
	Steel float64 // as far as a bend, or all of it
	Wood  float64 // as far as the wood it is meant for goes under it; 0 = not known
}

// PatternOf returns the pattern of an end as the catalog gives it. What it
// leaves out is one rule for all: two rows where the steel is 2 in wide and
// more, else one; the first hole 1/2 in from the steel's end; along a row 10
// diameters apart, as the commentary of the standard advises under steel, where
// the steel on the wood is long enough for that, else as far apart as it is, but
// 3/4 in; nearer than that only where the steel itself is too short; staggered
// rows by half the spacing (common practice, no published source).
func PatternOf(e hardware.End, width float64, have Room) Pattern {
	p := Pattern{Count: e.Count, Holes: max(e.Holes, e.Count), Rows: e.Rows, Spacing: e.Spacing, EndDist: e.EndDist, Stagger: e.Stagger, Offset: e.Offset}
	if p.Rows == 0 {
		p.Rows = 1
		if width >= 2 {
			p.Rows = 2
		}
	}
	if p.EndDist == 0 {
		p.EndDist = hardware.MinEnd
	}
	if p.Spacing == 0 {
		p.Spacing = p.apart(e.Size.Diameter, have)
	}
	if p.Stagger && p.Offset == 0 {
		p.Offset = p.Spacing / 2
	}
	return p
}

// apart is the spacing along a row where the catalog gives none, in.
func (p Pattern) apart(diameter float64, have Room) float64 {
	advised := math.Max(hardware.MinPitch, timber.SmallSpacingOf(true, false).RowAlong*diameter)
	steps := math.Ceil(float64(p.Holes)/float64(p.Rows)) - 1
	if p.Stagger && p.Rows > 1 {
		steps += 0.5
	}
	if steps <= 0 {
		return hardware.MinPitch
	}
	if have.Wood > 0 { // the last hole stays as far from where the wood ends
		if fit := (have.Wood - p.EndDist - advised) / steps; fit > hardware.MinPitch {
			return math.Min(advised, fit)
		}
	}
	return math.Max(0.01, math.Min(hardware.MinPitch, (have.Steel-p.EndDist-fold)/steps))
}

// fold is how far the last hole stays from a bend, in (common practice, no
// published source).
const fold = 0.25
