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
	Force    float64 // largest, lb at strength level
	Deck     float64 // part of Force from this story's deck
	Brought  float64 // part of Force from lines above
	Case     string
	Drag     []DragPoint // collector force along the line in that case
	stiff    float64
	uppers   []upper
	lo, hi   float64 // the deck's edges along the line
	deck     float64 // this case, strength
	brought  float64
}

// upper is a line of the story above and the part of its force that comes
// here.
type upper struct {
	line     *ShearLine
	k        float64
	straight bool // it stands over this line
}

func (x *ShearLine) force() float64 { return x.deck + x.brought }

// DragPoint is the collector force at one place of a line, lb at strength
// level: positive is tension when the wind blows toward growing coordinates.
type DragPoint struct{ At, Force float64 }

// shearLines gathers the segments of a story that run along an axis.
func (a *analysis) shearLines(lv *plan.Level, ax int) (out []*ShearLine) {
	for _, w := range a.plan.Walls {
		if len(w.Shear) == 0 || w.Level.Index > lv.Index || topLevel(w).Index < lv.Index || math.Abs(axis(w.Frame().D, ax)) < 0.98 {
			continue
		}
		at := axis(w.From, 1-ax)
		var line *ShearLine
		for _, x := range out {
			if math.Abs(x.At-at) < 12 {
				line = x
			}
		}
		if line == nil {
			line = &ShearLine{Level: lv, Axis: ax, At: at}
			out = append(out, line)
		}
		line.Name = strings.TrimPrefix(line.Name+"/"+w.Name, "/")
		for i, s := range w.Shear {
			line.Segments = append(line.Segments, a.segment(w, s, i, lv, ax))
		}
	}
	slices.SortStableFunc(out, func(x, y *ShearLine) int { return cmpFloat(x.At, y.At) })
	for _, x := range out {
		x.shareOut()
	}
	return out
}

// shareOut splits a line's force over its segments by the length that counts
// and gives the line its stiffness: length times unit shear capacity.
func (x *ShearLine) shareOut() {
	sum := 0.0
	for _, g := range x.Segments {
		sum += g.Working
		x.stiff += g.Working / 12 * math.Max(1, g.Unit.Allow*g.Factor)
	}
	for _, g := range x.Segments {
		if sum > 0 {
			g.Share = g.Working / sum
		}
	}
}

// linkLines ties each line to the lines of the story above whose force
// comes down on it.
func (l *lateral) linkLines() {
	for i, d := range l.decks {
		for ax := range 2 {
			for _, x := range d.lines[ax] {
				x.lo, x.hi = axis(d.extent.lo, ax), axis(d.extent.hi, ax)
			}
			if i == 0 {
				continue
			}
			for _, u := range l.decks[i-1].lines[ax] {
				bringDown(u, d.lines[ax])
			}
			stackSegments(d.lines[ax])
		}
	}
}

// bringDown hands the force of an upper line to the line under it, or by
// lever to the two beside it.
func bringDown(u *ShearLine, lines []*ShearLine) {
	var l, r *ShearLine
	for _, x := range lines {
		switch {
		case math.Abs(x.At-u.At) < 12:
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
					if math.Abs(g.Lo-h.Lo) < 18 && math.Abs(g.Hi-h.Hi) < 18 {
						g.above, h.stacked = append(g.above, h), true
					}
				}
			}
		}
	}
}

// fromAbove brings the force of the lines above down to these.
func (l *lateral) fromAbove(lines []*ShearLine, ax int, s *StoryShear) {
	for _, x := range lines {
		for _, u := range x.uppers {
			x.brought += u.k * u.line.force()
		}
		s.Above += x.brought
	}
}

// spread hands a deck's load to its lines.
func (l *lateral) spread(d *diaphragm, lines []*ShearLine, load []stretch, ax int) {
	if l.a.plan.Loads.Distribution == plan.Stiffness {
		l.rigid(d, lines, load, ax)
		return
	}
	for i, x := range lines {
		lo, hi := math.Inf(-1), math.Inf(1)
		if i > 0 {
			lo = (lines[i-1].At + x.At) / 2
		}
		if i < len(lines)-1 {
			hi = (x.At + lines[i+1].At) / 2
		}
		for _, s := range load {
			x.deck += s.w * overlap(lo, hi, s.lo, s.hi) / 12
		}
	}
}

// rigid hands the load out by stiffness, with the twist that comes of load
// and stiffness being out of line, over the lines of both directions.
func (l *lateral) rigid(d *diaphragm, lines []*ShearLine, load []stretch, ax int) {
	sum, at := 0.0, 0.0
	for _, s := range load {
		f := s.w * (s.hi - s.lo) / 12
		sum += f
		at += f * (s.lo + s.hi) / 2
	}
	var k, kAt [2]float64
	for i := range 2 {
		for _, x := range d.lines[i] {
			k[i] += x.stiff
			kAt[i] += x.stiff * x.At
		}
	}
	if sum == 0 || k[ax] == 0 {
		return
	}
	polar := 0.0
	for i := range 2 {
		for _, x := range d.lines[i] {
			dist := x.At - kAt[i]/math.Max(k[i], 1e-9)
			polar += x.stiff * dist * dist
		}
	}
	twist := sum * (at/sum - kAt[ax]/k[ax])
	for _, x := range lines {
		x.deck = sum * x.stiff / k[ax]
		if polar > 0 {
			x.deck += twist * x.stiff * (x.At - kAt[ax]/k[ax]) / polar
		}
	}
}

// resist works the line's segments, their ends and its collector out in one
// gust, and keeps the worst.
func (x *ShearLine) resist(g gust) {
	f := math.Abs(x.force())
	for _, s := range x.Segments {
		s.v = f * s.Share
		s.overturn()
		if s.v > s.V {
			s.V, s.Case = s.v, g.String()
			s.Demand = ASD.W * s.v / math.Max(s.Working, 1e-9) * 12
		}
		if s.lifts > s.Lifts {
			s.Lifts, s.Moment = s.lifts, s.moment
		}
	}
	if f > x.Force {
		x.Force, x.Deck, x.Brought, x.Case = f, x.deck, x.brought, g.String()
		x.Drag = x.drag()
	}
}

// drag returns the collector force along the line: what the deck and the
// segments above bring, less what the segments here take, added up from the
// low end. It ends at zero.
func (x *ShearLine) drag() []DragPoint {
	type flow struct{ lo, hi, q float64 } // lb per in
	flows := []flow{{x.lo, x.hi, x.deck / math.Max(1, x.hi-x.lo)}}
	for _, u := range x.uppers {
		if !u.straight {
			flows = append(flows, flow{x.lo, x.hi, u.k * u.line.force() / math.Max(1, x.hi-x.lo)})
			continue
		}
		for _, h := range u.line.Segments {
			flows = append(flows, flow{h.Lo, h.Hi, u.line.force() * h.Share / math.Max(1, h.Hi-h.Lo)})
		}
	}
	for _, s := range x.Segments {
		flows = append(flows, flow{s.Lo, s.Hi, -x.force() * s.Share / math.Max(1, s.Hi-s.Lo)})
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
func (x *ShearLine) DragAt(p float64) float64 {
	for i := 1; i < len(x.Drag); i++ {
		l, r := x.Drag[i-1], x.Drag[i]
		if p >= l.At && p <= r.At && r.At > l.At {
			return l.Force + (r.Force-l.Force)*(p-l.At)/(r.At-l.At)
		}
	}
	return 0
}
