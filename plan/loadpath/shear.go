package loadpath

import (
	"math"
	"slices"
	"strings"

	"galewright/plan"
)

// ShearLine is the sheathed segments of one story that stand in one line
// and resist wind along it.
type ShearLine struct {
	Level    *plan.Level
	Axis     int     // 0: the line runs along x
	At       float64 // its coordinate across, in
	Name     string  // the names of its walls
	Segments []*Segment
	ByLength bool   // force goes to segments by length, not by stiffness
	Why      string // why by length though the plan does not ask for it
	n        int
	// stiff is its stiffness, lb/in, 0 where it is not known; byCapacity length
	// times unit shear capacity, lb.
	stiff, byCapacity float64
	uppers            []upper
	lo, hi            float64 // the deck's edges along the line, where it lies beside it
}

// LineShear is a line with its worst gust.
type LineShear struct {
	*ShearLine
	Segments []*SegmentShear
	Force    float64 // largest, lb at strength level
	Deck     float64 // part of Force from this story's deck
	Brought  float64 // part of Force from lines above
	Case     string
	// Under is the largest force with the wind that enters at the lowest floor,
	// under the segments: the lower half of its walls and its edge, which is Floor;
	// lb at strength level, in UnderCase. Without a floor under it, it is Force.
	Under, Floor float64
	UnderCase    string
	Drag         []DragPoint // collector force along the line in that case
}

func newLineShear(x *ShearLine) *LineShear {
	out := &LineShear{ShearLine: x}
	for _, g := range x.Segments {
		out.Segments = append(out.Segments, &SegmentShear{Segment: g})
	}
	return out
}

// fold keeps a gust if it asks for more of the line or of its segments.
func (x *LineShear) fold(s *gustState) {
	for _, g := range x.Segments {
		g.fold(s)
	}
	if f := math.Abs(s.force(x.ShearLine)); f > x.Force {
		on := s.lines[x.n]
		x.Force, x.Deck, x.Brought, x.Case = f, on.deck, on.brought, s.gust.String()
		x.Drag = s.drag(x.ShearLine)
	}
	if f := math.Abs(s.under(x.ShearLine)); f > x.Under {
		x.Under, x.Floor, x.UnderCase = f, s.lines[x.n].floor, s.gust.String()
	}
}

// Walls are of one line, and ends of segments one over the other, when they
// lie no farther apart than this, in: a matter of judgment, no published
// source. The assumptions tell the second.
const (
	oneLine = 12
	oneEnd  = 18
)

// upper is a line of the story above and the part of its force that comes
// here.
type upper struct {
	line     *ShearLine
	k        float64
	straight bool // it stands over this line
}

// DragPoint is the collector force at one place of a line, lb at strength
// level: positive is tension when the wind blows toward growing coordinates.
type DragPoint struct{ At, Force float64 }

// shearLines gathers the segments of a story that run along an axis.
func (b *builder) shearLines(lv *plan.Level, ax int) (out []*ShearLine) {
	for _, w := range b.plan.Walls {
		if len(w.Shear) == 0 || !w.On(lv) || !w.Frame().D.RunsAlong(ax) {
			continue
		}
		at := axis(w.From, 1-ax)
		var line *ShearLine
		for _, x := range out {
			if math.Abs(x.At-at) < oneLine {
				line = x
			}
		}
		if line == nil {
			line = &ShearLine{Level: lv, Axis: ax, At: at}
			out = append(out, line)
		}
		line.Name = strings.TrimPrefix(line.Name+"/"+w.Name, "/")
		for i, s := range w.Shear {
			line.Segments = append(line.Segments, b.segment(w, s, i, lv, ax))
		}
	}
	slices.SortStableFunc(out, func(x, y *ShearLine) int { return cmpFloat(x.At, y.At) })
	for _, x := range out {
		x.shareOut(b.plan.Loads.Segments)
	}
	return out
}

// linkLines ties each line to the lines of the story above whose force
// comes down on it.
func (b *builder) linkLines() {
	for i, d := range b.decks {
		for ax := range 2 {
			for _, x := range d.lines[ax] {
				x.lo, x.hi = x.besideDeck(b.indoors[d.level], axis(d.extent.lo, ax), axis(d.extent.hi, ax))
			}
			if i == 0 {
				continue
			}
			for _, u := range b.decks[i-1].lines[ax] {
				bringDown(u, d.lines[ax])
			}
			stackSegments(d.lines[ax])
		}
	}
}

// besideDeck narrows the stretch of a line between two coordinates to where the deck
// lies beside it: beside the wing of an L it brings nothing.
func (x *ShearLine) besideDeck(deck outline, lo, hi float64) (first, last float64) {
	first, last = lo, hi
	for first < hi && !x.under(deck, first+0.5) {
		first++
	}
	for last > lo && !x.under(deck, last-0.5) {
		last--
	}
	if last <= first {
		return lo, hi // it stands beside none: told by the test of twist
	}
	return first, last
}

// bringDown hands the force of an upper line to the line under it, or by
// lever to the two beside it.
func bringDown(u *ShearLine, lines []*ShearLine) {
	var l, r *ShearLine
	for _, x := range lines {
		switch {
		case math.Abs(x.At-u.At) < oneLine:
			x.uppers = append(x.uppers, upper{u, 1, true})
			return
		case x.At < u.At:
			l = x
		case r == nil:
			r = x
		}
	}
	switch {
	case l == nil && r == nil:
	case l == nil:
		r.uppers = append(r.uppers, upper{u, 1, false})
	case r == nil:
		l.uppers = append(l.uppers, upper{u, 1, false})
	default:
		k := (u.At - l.At) / (r.At - l.At)
		l.uppers = append(l.uppers, upper{u, 1 - k, false})
		r.uppers = append(r.uppers, upper{u, k, false})
	}
}

// stackSegments finds the segments that stand on each other, end over end.
func stackSegments(lines []*ShearLine) {
	for _, x := range lines {
		for _, u := range x.uppers {
			if !u.straight {
				continue
			}
			for _, g := range x.Segments {
				for _, h := range u.line.Segments {
					if math.Abs(g.Lo-h.Lo) < oneEnd && math.Abs(g.Hi-h.Hi) < oneEnd {
						g.above, h.stacked = append(g.above, h), true
					}
				}
			}
		}
	}
}

// fromAbove brings the force of the lines above down to these, and returns
// the sum.
func (s *gustState) fromAbove(lines []*ShearLine) (sum float64) {
	for _, x := range lines {
		for _, u := range x.uppers {
			s.lines[x.n].brought += u.k * s.force(u.line)
		}
		sum += s.lines[x.n].brought
	}
	return sum
}

// spread hands a deck's load along an axis to its lines, lb by line.
func (m *model) spread(d *diaphragm, ax int, load []stretch) []float64 {
	if m.plan.Loads.Distribution == plan.Stiffness {
		return d.rigid(ax, load)
	}
	lines := d.lines[ax]
	out := make([]float64, len(lines))
	for i, x := range lines {
		lo, hi := tributary(lines, x)
		for _, part := range load {
			out[i] += part.w * overlap(lo, hi, part.lo, part.hi) / 12
		}
	}
	return out
}

// rigid hands the load out by stiffness, with the twist that comes of load
// and stiffness being out of line, over the lines of both directions.
func (d *diaphragm) rigid(ax int, load []stretch) []float64 {
	out := make([]float64, len(d.lines[ax]))
	sum, at := 0.0, 0.0
	for _, part := range load {
		f := part.w * (part.hi - part.lo) / 12
		sum += f
		at += f * (part.lo + part.hi) / 2
	}
	of := d.stiffnessOf()
	stiff, middle := d.stiffness(of)
	if sum == 0 || stiff[ax] == 0 {
		return out
	}
	polar := d.polar(of, middle)
	twist := sum * (at/sum - middle[ax])
	for i, x := range d.lines[ax] {
		out[i] = sum * of(x) / stiff[ax]
		if polar > 0 {
			out[i] += twist * of(x) * (x.At - middle[ax]) / polar
		}
	}
	return out
}

// stiffnessOf returns how stiff a line is taken: by deflection where that is
// known of all lines under the deck, else by length times unit shear capacity.
func (d *diaphragm) stiffnessOf() func(*ShearLine) float64 {
	for _, lines := range d.lines {
		for _, x := range lines {
			if x.stiff == 0 && x.byCapacity > 0 {
				return func(x *ShearLine) float64 { return x.byCapacity }
			}
		}
	}
	return func(x *ShearLine) float64 { return x.stiff }
}

// stiffness returns the stiffness of a deck's lines along x and along y, and
// the coordinate of its middle across them, in.
func (d *diaphragm) stiffness(of func(*ShearLine) float64) (sum, middle [2]float64) {
	for i := range 2 {
		moment := 0.0
		for _, x := range d.lines[i] {
			sum[i] += of(x)
			moment += of(x) * x.At
		}
		middle[i] = moment / math.Max(sum[i], 1e-9)
	}
	return sum, middle
}

// polar returns the stiffness of a deck's lines against twist about its
// middle, in².
func (d *diaphragm) polar(of func(*ShearLine) float64, middle [2]float64) (sum float64) {
	for i := range 2 {
		for _, x := range d.lines[i] {
			dist := x.At - middle[i]
			sum += of(x) * dist * dist
		}
	}
	return sum
}

// resist hands a line's force to its segments and works their ends out.
func (s *gustState) resist(x *ShearLine) {
	f := math.Abs(s.force(x))
	for _, g := range x.Segments {
		s.overturn(g, f*g.Share)
	}
}

// drag returns the collector force along the line: what the deck and the
// segments above bring, less what the segments here take, added up from the
// low end. It ends at zero.
func (s *gustState) drag(x *ShearLine) []DragPoint {
	type flow struct{ lo, hi, q float64 } // lb per in
	flows := []flow{{x.lo, x.hi, s.lines[x.n].deck / math.Max(1, x.hi-x.lo)}}
	for _, u := range x.uppers {
		if !u.straight {
			flows = append(flows, flow{x.lo, x.hi, u.k * s.force(u.line) / math.Max(1, x.hi-x.lo)})
			continue
		}
		for _, h := range u.line.Segments {
			flows = append(flows, flow{h.Lo, h.Hi, s.force(u.line) * h.Share / math.Max(1, h.Hi-h.Lo)})
		}
	}
	for _, g := range x.Segments {
		flows = append(flows, flow{g.Lo, g.Hi, -s.force(x) * g.Share / math.Max(1, g.Hi-g.Lo)})
	}
	var at []float64
	for _, f := range flows {
		at = append(at, f.lo, f.hi)
	}
	slices.Sort(at)
	at = slices.Compact(at)
	out := make([]DragPoint, len(at))
	for i, p := range at {
		out[i].At = p
		for _, f := range flows {
			out[i].Force += f.q * overlap(f.lo, f.hi, math.Inf(-1), p)
		}
	}
	return out
}

// DragAt returns the collector force at a coordinate along the line.
func (x *LineShear) DragAt(p float64) float64 {
	for i := 1; i < len(x.Drag); i++ {
		l, r := x.Drag[i-1], x.Drag[i]
		if p >= l.At && p <= r.At && r.At > l.At {
			return l.Force + (r.Force-l.Force)*(p-l.At)/(r.At-l.At)
		}
	}
	return 0
}
