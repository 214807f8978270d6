package loadpath

import (
	"fmt"
	"math"

	"galewright/plan"
	"galewright/plan/framing"
	"galewright/plan/nailing"
)

// soleCheck is the ID of the check of bottom plates along their walls.
const soleCheck = "sole-shear"

// soleShear checks the nails through the bottom plate under each sheathed
// segment that stands on a floor: its unit shear against what the nails hold
// across. On a slab anchor bolts do this: see anchorShear.
func soleShear(c *Check, a *analysis) (out []*Link) {
	for _, x := range a.lateral.lines {
		for _, s := range x.Segments {
			if s.base && a.onFloor(s.Wall) && s.Demand > least {
				out = append(out, a.soleLink(c, s))
			}
		}
	}
	return out
}

// onFloor tells whether a wall stands on joists.
func (m *model) onFloor(w *plan.Wall) bool { return m.floored(w.Level) }

// floored tells whether a level has joists under it.
func (m *model) floored(lv *plan.Level) bool {
	return lv.Joists.Depth > 0 && !(lv.Index == 0 && m.plan.Foundation.Kind == plan.Slab)
}

// soleLink is the link of one segment.
func (a *analysis) soleLink(c *Check, s *SegmentShear) *Link {
	l := &Link{
		Check: c, ID: s.Name + ", bottom plate", Wall: s.Wall, Unit: "lb", Host: "wall " + s.Wall.Name, Where: "wall " + s.Wall.Name + ", segment " + s.Name, Case: s.Case,
		Demand: s.Demand * s.Working / 12, Strength: s.Demand * s.Working / 12 / ASD.W,
	}
	l.Terms = []Term{
		{"unit shear of the segment, ASD", s.Demand, "plf"},
		{"counted length", s.Working / 12, "ft"},
		{"shear of the segment, ASD", l.Demand, "lb"},
	}
	l.close(a.soleNails(s))
	if l.Gap != "" && l.Capacity == nil {
		l.Gap = fmt.Sprintf("no nails of the bottom plate into the floor are ordered (%s or %s)", plan.SoleAtShearWall, plan.SoleToFloor)
	}
	return l
}

// soleNails is what the nails within a segment hold across, nil where none are
// ordered.
func (a *analysis) soleNails(s *SegmentShear) *Capacity {
	var one nailing.Value
	var line *nailing.Line
	n, sum := 0, 0.0
	for _, c := range []plan.Connection{plan.SoleAtShearWall, plan.SoleToFloor} {
		l := a.nails.Line(c)
		if l == nil {
			continue
		}
		line = cmpLine(line, l)
		for _, x := range l.On(s.Wall) {
			if x.Station <= s.Shear.From || x.Station >= s.Shear.To {
				continue
			}
			in := x.Nails(l.Order)
			v := l.One(x, a.species)
			if v.Nothing != "" {
				return &Capacity{Unknown: v.Nothing}
			}
			one, n, sum = v, n+in, sum+float64(in)*v.Lateral
		}
	}
	if line == nil {
		return nil
	}
	if n == 0 {
		return &Capacity{Unknown: "the bottom plate has no rim or joist under it"}
	}
	return &Capacity{
		Value: sum, Source: "ordered nailing", Pieces: n, Mark: line.Mark(), Governs: fmt.Sprintf("%s of %s, %s", plan.Counted(n, "nail"), line.Mark(), line.Row.One),
		Terms: ofCapacity(Term{"one nail, " + one.Text, one.Lateral, "lb"}, Term{plan.Counted(n, "nail") + " within the segment", sum, "lb"}),
	}
}

// cmpLine returns the first line that is.
func cmpLine(a, b *nailing.Line) *nailing.Line {
	if a != nil {
		return a
	}
	return b
}

// plateNails is what the nails of a bottom plate hold of a stud's uplift: those
// in the length of wall that it serves, by their spacing; nil where none are
// ordered.
func (a *analysis) plateNails(k *carrier) *Capacity {
	l, x := a.soleAt(k)
	if l == nil {
		return nil
	}
	one, how := l.Uplift(x, a.species)
	if one == 0 {
		return &Capacity{Unknown: "the nails of the bottom plate hold no uplift: " + l.One(x, a.species).PullBy}
	}
	n := float64(l.Order.Rows) * k.share / l.Order.Spacing
	return &Capacity{
		Value: n * one, Source: "ordered nailing", Pieces: int(n), Mark: l.Mark(), Governs: fmt.Sprintf("%s drawn out, %s", l.Mark(), l.Row.One),
		Terms: ofCapacity(Term{"one nail, " + how, one, "lb"}, Term{"length of wall that the stud serves", k.share / 12, "ft"}, Term{"nails in that length, by their spacing", n, ""}, Term{"together", n * one, "lb"}),
	}
}

// soleAt returns the line of the bottom plate's nails at a stud, with the
// connection there; nil where none are ordered.
func (a *analysis) soleAt(k *carrier) (line *nailing.Line, spot *nailing.Spot) {
	near := math.Inf(1)
	for _, c := range []plan.Connection{plan.SoleAtShearWall, plan.SoleToFloor} {
		l := a.nails.Line(c)
		if l == nil {
			continue
		}
		for _, x := range l.On(k.wall.w) {
			if d := math.Max(0, math.Abs(x.Station-k.station)-x.Touch/2); d < near {
				near, line, spot = d, l, x
			}
		}
	}
	return line, spot
}

// splicedByNails is what the nails ordered in the lap of a top plate splice
// hold on each side of the break, nil where none are ordered.
func (a *analysis) splicedByNails(j *framing.Joint) *Capacity {
	l := a.nails.Line(plan.TopPlateSplice)
	if l == nil {
		return nil
	}
	for _, s := range l.Spots {
		if s.Side != j.First() || s.Station != j.Station {
			continue
		}
		v := l.One(s, a.species)
		if v.Nothing != "" {
			return &Capacity{Unknown: v.Nothing}
		}
		sum := v.Lateral * float64(l.Order.Count)
		return &Capacity{
			Value: sum, Source: "ordered nailing", Pieces: l.Order.Count, Mark: l.Mark(), Governs: fmt.Sprintf("%s of %s in the lap", plan.Counted(l.Order.Count, "nail"), l.Mark()),
			Terms: ofCapacity(Term{"one nail, " + v.Text, v.Lateral, "lb"}, Term{plan.Counted(l.Order.Count, "nail") + " on each side of the break", sum, "lb"}),
		}
	}
	return nil
}
