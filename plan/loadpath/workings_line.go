package loadpath

import (
	"fmt"
	"math"

	"galewright/plan"
	"galewright/plan/units"
)

// LineWorkings tells what the force of a shear wall line is made of in its
// governing case: the pressures on its tributary width, and what the lines above
// bring, each with its own two spaces in.
func (r *Report) LineWorkings(x *LineShear) []string {
	for _, g := range r.work.gusts() {
		if g.axis == x.Axis && g.String() == x.Case {
			return r.work.blow(g).lineWorkings(x.ShearLine)
		}
	}
	return nil
}

// lineWorkings is that of one gust.
func (s *gustState) lineWorkings(x *ShearLine) (out []string) {
	out = append(out, s.m.u.Sprintf("line %s, story %s: %.0f lb at strength level, %s", x.Name, x.Level.Name, math.Abs(s.force(x)), s.gust))
	return append(out, indent(s.parts(x))...)
}

// parts tells what its own deck and the lines above bring a line.
func (s *gustState) parts(x *ShearLine) (out []string) {
	out = s.deckWorkings(x, s.lines[x.n].deck)
	for _, u := range x.uppers {
		how := "by lever arm between the lines beside it"
		if u.straight {
			how = "in line above"
		}
		f := s.force(u.line)
		out = append(out, s.m.u.Sprintf("from line %s, %s: %.0f lb x %.3f = %.0f lb", u.line.Name, how, f, u.k, f*u.k))
		out = append(out, indent(s.parts(u.line))...)
	}
	return out
}

// deckWorkings tells what the deck of the line's own story brings.
func (s *gustState) deckWorkings(x *ShearLine, lb float64) (out []string) {
	d := s.m.deckOf(x)
	if d == nil {
		return nil
	}
	if s.m.plan.Loads.Distribution == plan.Stiffness {
		out = append(out, s.m.u.Sprintf("from the diaphragm over story %s, shared by the stiffness of all lines and twist: %.0f lb of", x.Level.Name, lb))
	} else {
		out = append(out, s.m.u.Sprintf("from the diaphragm over story %s, half way to the lines beside: %.0f lb", x.Level.Name, lb))
	}
	lo, hi := tributary(d.lines[x.Axis], x)
	if s.m.plan.Loads.Distribution == plan.Stiffness {
		lo, hi = math.Inf(-1), math.Inf(1)
	}
	walls, roofs := s.m.deckLoad(d, s.gust)
	return append(out, bandWorkings(s.m.u, append(s.bands("walls", walls), s.bands("roofs", roofs)...), lo, hi, plan.Axes[1-x.Axis])...)
}

// bandWorkings tells the wind of bands between two coordinates along an axis, in.
func bandWorkings(u units.System, bands []Band, lo, hi float64, along plan.Axis) (out []string) {
	for _, b := range bands {
		w := overlap(lo, hi, b.Lo, b.Hi)
		if w <= 0 {
			continue
		}
		out = append(out, u.Sprintf("  %s, %s = %s to %s: %.2f psf on %.2f ft high, %.1f plf on %.2f ft: %.0f lb; the pressure is %s", b.From, along,
			u.Length(math.Max(lo, b.Lo)), u.Length(math.Min(hi, b.Hi)), b.Psf, b.High, b.Load, w/12, b.Load*w/12, b.Why))
	}
	return out
}

// bayWorkings tells the wind on the stretch of deck that a link of a roof's deck is
// of, and how it goes to the lines.
func (r *Report) bayWorkings(l *Link) (out []string) {
	for _, b := range r.Bays {
		for i := range b.Lines {
			if b.link("roof", i) != l.ID && b.link("floor", i) != l.ID && (b.Lines[i] == "" || intoLine("roof", b.Lines[i]) != l.ID && intoLine("floor", b.Lines[i]) != l.ID) || b.Case != l.Case {
				continue
			}
			head := r.Units().Sprintf("deck over story %s, %s, %s: %.0f lb to the line %s of", b.Level.Name, b.stretch(r.Units()), b.spans(), b.Ends[i], b.Lines[i])
			out = append(append(out, head), bandWorkings(r.Units(), b.bands, b.Lo, b.Hi, plan.Axes[1-b.Axis])...)
		}
	}
	return out
}

// deckOf returns the deck that hands a line its force.
func (m *model) deckOf(x *ShearLine) *diaphragm {
	for _, d := range m.decks {
		if d.level == x.Level {
			return d
		}
	}
	return nil
}

// tributary returns between which coordinates across it a flexible deck hands
// its load to a line, in; the outer lines take what reaches past them.
func tributary(lines []*ShearLine, x *ShearLine) (lo, hi float64) {
	lo, hi = math.Inf(-1), math.Inf(1)
	for i, y := range lines {
		if y != x {
			continue
		}
		if i > 0 {
			lo = (lines[i-1].At + x.At) / 2
		}
		if i < len(lines)-1 {
			hi = (x.At + lines[i+1].At) / 2
		}
	}
	return lo, hi
}

// Tributary returns between which coordinates across it the deck over its story
// hands its load to a line, in, held to the deck.
func (r *Report) Tributary(x *LineShear) (lo, hi float64) {
	d := r.work.deckOf(x.ShearLine)
	lo, hi = tributary(d.lines[x.Axis], x.ShearLine)
	return math.Max(lo, axis(d.extent.lo, 1-x.Axis)), math.Min(hi, axis(d.extent.hi, 1-x.Axis))
}

// indent moves lines two spaces in.
func indent(list []string) []string {
	out := make([]string, len(list))
	for i, s := range list {
		out[i] = "  " + s
	}
	return out
}

// sideWorkings tells what a link of the lateral path takes from its line: the
// share of its segment, the weight that relieves its end, chord and collector.
func (r *Report) sideWorkings(l *Link) (out []string) {
	x := r.LineOf(l)
	if l.Check.ID == "chord-splice" {
		out = append(out, r.work.chordWorkings(l)...)
	}
	if x == nil {
		return out
	}
	if s := x.segmentOf(l); s != nil {
		out = append(out, shareWorkings(r.Units(), x, s))
		if l.Check.ID == "overturning" || l.Check.ID == postCheck {
			out = append(out, r.work.reliefWorkings(s.Segment)...)
		}
	}
	if l.Joint != nil && (l.Check.ID == "collector" || l.Check.ID == "chord-splice") {
		out = append(out, x.dragWorkings(r.Units(), l)...)
	}
	return out
}

// shareWorkings tells how a segment comes to its share of the line.
func shareWorkings(u units.System, x *LineShear, s *SegmentShear) string {
	long := 0.0
	for _, g := range x.Segments {
		long += g.Working
	}
	if x.ByLength || x.stiff == 0 {
		return u.Sprintf("segment %s: %.2f{ft} of %.2f ft counted length of the line, share %.3f; %s", s.Name, s.Working/12, long/12, s.Share, x.method())
	}
	return u.Sprintf("segment %s: stiffness %.0f{lb/in} of %.0f lb/in of the line, share %.3f; %s", s.Name, s.Stiff, x.stiff, s.Share, x.method())
}

// reliefWorkings tells which studs over a segment have weight left.
func (a *analysis) reliefWorkings(s *Segment) (out []string) {
	for _, k := range s.carriers {
		if p := a.peaks[k.base]; p != nil && p.demand < 0 {
			out = append(out, a.u.Sprintf("dead load left at %s after uplift: %.0f lb ASD, half of it at each end", k.base.ID, -p.demand))
		}
	}
	return out
}

// chordWorkings tells the chord force at a splice: the wind on the bay it is in,
// the moment there, the depth.
func (a *analysis) chordWorkings(l *Link) []string {
	j := l.Joint
	if j == nil || !j.Wall.Exterior {
		return nil
	}
	ax := 1 - j.Wall.Frame().D.MainAxis()
	at := axis(j.At.Flat(), 1-ax)
	lb, b := a.lateral.chordAt(j.Wall.TopLevel(), ax, at)
	if b == nil {
		return nil
	}
	out := []string{fmt.Sprintf("chord: wind along %s on the deck over story %s, %s, %s (%s):", plan.Axes[ax], b.Level.Name, b.stretch(a.u), b.spans(), b.Case)}
	out = append(out, bandWorkings(a.u, b.bands, b.Lo, b.Hi, plan.Axes[1-ax])...)
	return append(out, a.u.Sprintf("  ends %.0f{lb} and %.0f lb; moment here %.0f lb-ft, over the depth %.2f ft: %.0f lb", b.Ends[0], b.Ends[1], math.Abs(b.moment(b.bands, at))/12, b.Depth/12, lb))
}

// stretch tells from where to where a bay goes.
func (b Bay) stretch(u units.System) string {
	return fmt.Sprintf("%s = %s to %s", plan.Axes[1-b.Axis], u.Length(b.Lo), u.Length(b.Hi))
}

// spans tells how a bay goes to the lines.
func (b Bay) spans() string {
	switch {
	case b.Lines[0] == "":
		return "a cantilever past the line " + b.Lines[1]
	case b.Lines[1] == "":
		return "a cantilever past the line " + b.Lines[0]
	}
	return fmt.Sprintf("a simple beam between the lines %s and %s", b.Lines[0], b.Lines[1])
}

// dragWorkings tells the collector force along the line as far as a joint.
func (x *LineShear) dragWorkings(u units.System, l *Link) []string {
	at := axis(l.Joint.At.Flat(), x.Axis)
	out := []string{u.Sprintf("collector force along the line, from its low end: what the diaphragm and what stands on the line bring, less what its segments take; at %s = %s it is %.0f lb", plan.Axes[x.Axis], u.Length(at), x.DragAt(at))}
	for _, d := range x.Drag {
		out = append(out, u.Sprintf("  at %s: %.0f lb", u.Length(d.At), whole(d.Force)))
	}
	return out
}
