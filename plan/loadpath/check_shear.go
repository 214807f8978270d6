package loadpath

import (
	"fmt"
	"math"
	"slices"

	"galewright/plan"
	"galewright/plan/capacity"
	"galewright/plan/framing"
	"galewright/plan/nailing"
	"galewright/plan/placement"
	"galewright/plan/units"
)

// unitShear checks each sheathed segment.
func unitShear(c *Check, a *analysis) (out []*Link) {
	for _, x := range a.lateral.lines {
		for _, s := range x.Segments {
			l := &Link{
				Check: c, ID: s.Name, Wall: s.Wall, Unit: "plf", Demand: s.Demand, Strength: s.Demand / ASD.W, Case: s.Case,
				Host: "wall " + s.Wall.Name, Where: fmt.Sprintf("wall %s, story %s", s.Wall.Name, x.Level.Name),
			}
			l.Terms = []Term{
				{"shear of the line, strength level, " + x.Name, x.Force, "lb"},
				{"share of this segment, " + x.method(), s.Share, ""},
				{"counted length", s.Working / 12, "ft"},
				{"0.6 of it over that length", s.Demand, "plf"},
			}
			l.close(segmentCapacity(a.u, s, x.ByLength))
			l.Notes = append(l.Notes, stiffNotes(a.u, x, s)...)
			if s.Factor == 0 && !s.Shear.Perforated {
				l.Notes = append(l.Notes, fmt.Sprintf("height to width ratio %.2f exceeds 3.5: not counted", s.Tallest/s.Length))
			}
			if s.Pierced != nil {
				l.Notes = append(l.Notes, a.u.Sprintf("perforated wall: Ao %.0f ft², r %.3f, Co %.3f; uplift of the bottom plate between its ends is the same %.0f plf (SDPWS 2021 4.3.6.4.2.1, transcribed)",
					s.Pierced.Ao/144, s.Pierced.R, s.Pierced.Co, s.Demand))
			}
			out = append(out, l)
		}
	}
	return out
}

// segmentCapacity returns the unit shear capacity of a segment, plf.
func segmentCapacity(u units.System, s *SegmentShear, byLength bool) *Capacity {
	unit := s.Unit
	if s.Trouble != "" {
		return &Capacity{Unknown: s.Trouble}
	}
	c := &Capacity{Value: unit.Allow * s.Factor, Source: "computed", Governs: "unit shear, " + unit.Table, Pieces: 1}
	c.Terms = ofCapacity(
		Term{u.Sprintf("nominal, %s %s, %s at %.0f in, %s", unit.Row.Grade, unit.Row.Thickness, unit.Row.Nail, unit.Column, unit.Source), unit.Nominal, "plf"},
		Term{"species factor", unit.Species, ""},
		Term{"faces", unit.Faces, ""},
		Term{"divisor to allowable", unit.Divisor, ""},
		Term{narrowWords(byLength), s.Factor, ""},
		Term{"allowable", c.Value, "plf"},
	)
	return c
}

// narrowWords names the factor for a narrow segment.
func narrowWords(byLength bool) string {
	if byLength {
		return "2b/h for a segment narrower than half its height, second-hand"
	}
	return "aspect ratio factor, SDPWS 2015 4.3.4.2, from memory"
}

// stiffNotes tells how a segment deflects, what the other way of sharing would
// give, and what its nailing asks of the framing.
func stiffNotes(u units.System, x *LineShear, s *SegmentShear) (out []string) {
	if s.Stiff > 0 {
		out = append(out, u.Sprintf("deflection %.2f in at this shear: bending %.3f{in}, panel shear and nail slip %.3f{in}, anchorage %.3f{in} (%s; anchorage {1/8 in} at its allowable shear, assumed; %s)",
			s.Demand*s.Flex.Per(), s.Demand*s.Flex.Bending, s.Demand*s.Flex.Shear, s.Demand*s.Flex.Anchorage, s.Flex.Terms(u), s.Flex.Source))
	}
	if other := s.Unit.Allow * s.OtherFactor; s.OtherShare > 0 && other > 0 && len(x.Segments) > 1 {
		demand := ASD.W * x.Force * s.OtherShare / s.Working * 12
		out = append(out, u.Sprintf("%s it would be share %.3f: %.0f{plf} of %.0f plf, ratio %.2f",
			map[bool]string{true: "by stiffness", false: "by length with 2b/h"}[x.ByLength], s.OtherShare, demand, other, demand/other))
	}
	if why := s.Unit.WideFraming(); why != "" && s.Trouble == "" {
		out = append(out, why+": adjoining panel edges want framing 3 in nominal, or two members nailed together, and staggered nails; on both faces the joints of the two sides offset")
	}
	return out
}

// overturning checks the ends of each segment whose wall stands on this
// story's floor.
func overturning(c *Check, a *analysis) (out []*Link) {
	for _, x := range a.lateral.lines {
		for _, s := range x.Segments {
			if !s.base || s.Lifts == 0 {
				continue
			}
			for i := range s.ends {
				out = append(out, a.endLink(c, x, s, i))
				if l := a.footLink(c, s, i); l != nil {
					out = append(out, l)
				}
			}
		}
	}
	return out
}

// relief returns half of the weight over a segment that uplift has left over
// (lb ASD): weight is not used twice.
func (a *analysis) relief(s *Segment) (lb float64) {
	for _, k := range s.carriers {
		if p := a.peaks[k.base]; p != nil {
			lb += math.Max(0, -p.demand) / 2
		}
	}
	return lb
}

// leverWords says from where to where the lever arm goes.
func leverWords(s *Segment) string {
	switch {
	case s.Pierced != nil:
		return ", Co ΣLi of a perforated wall"
	case s.LeverTo != "":
		return ", from " + s.LeverTo + " to the middle of the far post"
	}
	return ", the segment's length"
}

func (a *analysis) endLink(c *Check, x *LineShear, s *SegmentShear, i int) *Link {
	j, relief := s.ends[i], a.relief(s.Segment)
	net := ASD.W*s.Lifts - relief
	l := &Link{
		Check: c, Joint: j, Wall: s.Wall, Unit: "lb", Case: s.Case, Force: Force{W: s.Lifts},
		Demand: math.Max(0, net), Strength: math.Max(0, s.Lifts-relief*Strength.D/ASD.D),
	}
	if j != nil {
		l.ID, l.Host, l.Where = j.ID, j.HostName(), whereOf(a.u, j)
	} else {
		l.ID = fmt.Sprintf("%s, %s end", s.Name, []string{"first", "second"}[i])
		l.Host, l.Where = "wall "+s.Wall.Name, "wall "+s.Wall.Name
	}
	l.Terms = []Term{
		{"shear of the segment, strength level", s.V, "lb"},
		{"height at which it acts" + map[bool]string{true: ", mean of a rake wall over the segment"}[s.Height != x.Level.PlateHeight && s.Wall.Top == plan.RakeTop], s.Height / 12, "ft"},
		{"shear of the segments above that stand on it, over the depth of the floor between, strength level", s.Moment/12 - s.V*s.Height/12, "lb-ft"},
		{"moment, both", s.Moment / 12, "lb-ft"},
		{"over the lever arm" + leverWords(s.Segment), s.arm() / 12, "ft"},
		{"with the stories above: chord tension, strength level", s.Lifts, "lb"},
		{"less 0.6 of the dead load left after uplift, half of it at this end, ASD", relief, "lb"},
		{"0.6 of the tension less the relief", net, "lb"},
	}
	if j == nil {
		l.close(nil)
		if l.Gap != "" {
			l.Gap = "no member to hold at this end"
		}
		return l
	}
	a.closeEnd(l, j)
	if len(s.above) == 0 && carriesUpper(x.ShearLine) {
		l.Notes = append(l.Notes, "a segment of the story above on this line ends elsewhere; its end tension is not in this number")
	}
	return l
}

// footLink follows the end tension of a segment that stands on no other
// through the post below it to that post's foot; nil where there is no need.
func (a *analysis) footLink(c *Check, s *SegmentShear, i int) *Link {
	net := ASD.W*s.Lifts - a.relief(s.Segment)
	if s.stacked || s.Wall.Level.Index == 0 || s.ends[i] == nil || net <= least {
		return nil
	}
	l := &Link{
		Check: c, ID: fmt.Sprintf("%s, below its %s end", s.Name, []string{"first", "second"}[i]), Wall: s.Wall, Host: "below wall " + s.Wall.Name, Where: "below wall " + s.Wall.Name, Unit: "lb", Case: s.Case,
		Demand: net, Strength: net / ASD.W, Terms: []Term{{"end tension from the story above, ASD", net, "lb"}},
	}
	var base *framing.Joint
	if foot := a.footOf[s.ends[i].First()]; foot != nil && foot.Below && len(foot.Members) > 1 {
		base = a.footOf[foot.Members[1]]
	}
	if base == nil {
		l.close(nil)
		l.Gap = "no post below carries the end tension down"
		return l
	}
	l.Joint, l.Where = base, whereOf(a.u, base)
	if p := a.peaks[base]; p != nil && p.demand > 0 {
		l.Demand += p.demand
		l.Strength += p.demand / ASD.W
		l.Terms = append(l.Terms, Term{"uplift of the post itself, ASD, in its own worst case", p.demand, "lb"})
	}
	l.close(a.allowed.At(base, capacity.Upward))
	l.Notes = append(l.Notes, "no sheathed segment stands below this end")
	return l
}

// sameUplift is the term of a post's uplift where the piece that holds its end
// tension is all that holds it.
const sameUplift = "uplift of the post, which the same piece carries"

// closeEnd finds what holds a segment's end: pieces at its wall-end joint, or
// a long strap or hold-down on the same post at the joint of its foot. It carries the
// post's uplift too, unless a strap at the foot does or, where it stands at the wall's end,
// a clip whose plate a floor's nails hold: a sill plate between bolts gives way first.
func (a *analysis) closeEnd(l *Link, j *framing.Joint) {
	foot := a.footOf[j.First()]
	if c := a.allowed.At(j, capacity.Upward); c != nil {
		l.close(c)
		if foot != nil && onSillAlone(foot) {
			a.liftToo(l, foot, c)
		}
		return
	}
	if foot == nil {
		l.close(nil)
		return
	}
	c := a.allowed.Of(foot, capacity.Upward, engineered)
	l.close(c)
	if c == nil || l.Demand <= least {
		return
	}
	l.Notes = append(l.Notes, "held by "+c.Mark+" at joint "+foot.ID)
	a.liftToo(l, foot, c)
}

// carriesUpper tells whether segments of the story above stand on the line.
func carriesUpper(x *ShearLine) bool {
	for _, u := range x.uppers {
		if u.straight && len(u.line.Segments) > 0 {
			return true
		}
	}
	return false
}

// lineOf returns the shear line of a wall in the story of its top plates.
func (a *analysis) lineOf(j *framing.Joint) *LineShear {
	if j.Wall == nil {
		return nil
	}
	d := j.Wall.Frame().D
	for _, k := range a.decks {
		for ax := range 2 {
			if k.level != j.Wall.TopLevel() || !d.RunsAlong(ax) {
				continue
			}
			at := axis(j.Wall.From, 1-ax)
			i, _ := slices.BinarySearchFunc(k.lines[ax], at-oneLine, func(x *ShearLine, v float64) int { return cmpFloat(x.At, v) })
			for ; i < len(k.lines[ax]) && k.lines[ax][i].At < at+oneLine; i++ {
				if math.Abs(k.lines[ax][i].At-at) < oneLine {
					return a.lateral.lines[k.lines[ax][i].n]
				}
			}
		}
	}
	return nil
}

// chordThrough returns the chord force (lb, strength) of wind across an exterior
// wall that goes through a collector joint: where it ties the wall's plate to that of
// another wall in line, there is no other way for it. In one wall its plates run on
// over the joint, and their breaks have a check of their own.
func (a *analysis) chordThrough(j *framing.Joint, x *LineShear) float64 {
	if !j.Wall.Exterior || len(j.Members) < 2 || j.Members[1].Wall == nil || j.Members[1].Wall == j.Wall {
		return 0
	}
	lb, _ := a.lateral.chordAt(x.Level, 1-x.Axis, axis(j.At.Flat(), x.Axis))
	return lb
}

// collectors checks each collector joint.
func collectors(c *Check, a *analysis) (out []*Link) {
	for _, j := range a.house.Joints {
		if j.Kind != plan.Collector {
			continue
		}
		x := a.lineOf(j)
		if x == nil {
			continue
		}
		l := a.collectorLink(c, j, x)
		l.close(a.allowed.At(j, capacity.Endways))
		if !j.Below && l.Demand > least {
			l.Notes = append(l.Notes, "no member continues the line here")
		}
		out = append(out, l)
	}
	return out
}

// collectorLink is the link of a collector joint with what it is asked for.
func (a *analysis) collectorLink(c *Check, j *framing.Joint, x *LineShear) *Link {
	drag, chord := math.Abs(x.DragAt(axis(j.At.Flat(), x.Axis))), a.chordThrough(j, x)
	f, diagonal := a.atOnce(drag, chord)
	l := &Link{Check: c, ID: j.ID, Joint: j, Wall: j.Wall, Host: j.HostName(), Where: whereOf(a.u, j), Unit: "lb", Demand: ASD.W * f, Strength: f, Case: x.Case, Force: Force{W: f}}
	l.Terms = []Term{
		{"force of the line, strength level, " + x.Name, x.Force, "lb"},
		{"of it from this story's diaphragm, uniform over " + a.u.Sprintf("%.1f ft", (x.hi-x.lo)/12), x.Deck, "lb"},
		{"collector force here, strength level", drag, "lb"},
	}
	last := "0.6 of it"
	if chord > 0 {
		last = "0.6 of the largest"
		l.Terms = append(append(l.Terms, Term{"chord force that goes through it, wind across the wall, strength level", chord, "lb"}), a.bothTerm(drag, chord)...)
	}
	switch {
	case diagonal:
		l.Case = "chord and collector, " + bothWords
	case chord > drag:
		l.Case = "diaphragm chord, wind across the wall"
	}
	l.Terms = append(l.Terms, Term{last, l.Demand, "lb"})
	return l
}

// bridged tells whether a piece at a splice holds the plates on both sides of the
// break: one that lies on the other plate, which runs through, ties nothing.
func (a *analysis) bridged(j *framing.Joint) bool {
	return len(j.Members) < 2 || slices.ContainsFunc(a.placed.At(j), func(p *placement.Piece) bool {
		b := a.steel.Body(p)
		return len(b.Holds(j.Members[0])) > 0 && len(b.Holds(j.Members[1])) > 0
	})
}

// splices checks each break in a top plate against chord force, collector force,
// and both at once where the wind blows along both axes.
func splices(c *Check, a *analysis) (out []*Link) {
	for _, j := range a.house.Joints {
		if j.Kind != plan.PlateSplice || j.Wall == nil {
			continue
		}
		ax := j.Wall.Frame().D.MainAxis()
		at := axis(j.At.Flat(), ax)
		chord, drag := 0.0, 0.0
		if j.Wall.Exterior {
			chord, _ = a.lateral.chordAt(j.Wall.TopLevel(), 1-ax, at)
			if j.Step > 0 && j.Members[1].Wall != nil && j.Members[1].Wall.TopLevel() != j.Wall.TopLevel() { // the lower wall's story loses its chord there
				other, _ := a.lateral.chordAt(j.Members[1].Wall.TopLevel(), 1-ax, at)
				chord = max(chord, other)
			}
		}
		what := "diaphragm chord, wind across the wall"
		if x := a.lineOf(j); x != nil {
			drag = math.Abs(x.DragAt(at))
		}
		f, diagonal := a.atOnce(chord, drag)
		switch {
		case diagonal:
			what = "chord and collector, " + bothWords
		case drag > chord:
			what = "collector, wind along the wall"
		}
		l := &Link{Check: c, ID: j.ID, Joint: j, Wall: j.Wall, Host: j.HostName(), Where: whereOf(a.u, j), Unit: "lb", Demand: ASD.W * f, Strength: f, Case: what, Force: Force{W: f}}
		l.Terms = []Term{{"chord force, strength level", chord, "lb"}, {"collector force, strength level", drag, "lb"}}
		l.Terms = append(append(l.Terms, a.bothTerm(chord, drag)...), Term{"0.6 of the largest", l.Demand, "lb"})
		if j.Step > 0 {
			out = append(out, a.stepped(l, j))
			continue
		}
		cap := a.allowed.At(j, capacity.Endways)
		through := cap != nil && !a.bridged(j)
		if through || cap == nil || cap.Unknown != "" {
			cap = a.splicedByNails(j)
		}
		l.close(cap)
		if through {
			l.Notes = append(l.Notes, "the strap there is nailed to the plate that runs through over the break, on both sides of it: it is not counted")
		}
		if cap == nil && l.Gap != "" {
			l.Gap = "no strap at this splice, and no nails in its lap are ordered (" + string(plan.TopPlateSplice) + ")"
			if a.nails.Line(plan.TopPlateSplice) != nil {
				l.Gap = fmt.Sprintf("no strap at this splice, and no plate runs %d in past it on both sides for nails in a lap", nailing.Lap)
			}
		}
		out = append(out, l)
	}
	return out
}

// stepped closes the link of two walls in line whose plates lie at two heights: nothing on
// them is counted, for a strap along one plate finds no other.
func (a *analysis) stepped(l *Link, j *framing.Joint) *Link {
	l.close(nil)
	step := a.u.Length(j.Step)
	if l.Gap != "" {
		l.Gap = "the top plates step by " + step + " here: the force along them has no way across; the engineer must give it one, as a strap along the lower plates into the higher wall with blocks between its studs"
	}
	l.Notes = append(l.Notes, "the wall's height changes by "+step+" here: no strap is counted")
	return l
}
