package loadpath

import (
	"fmt"
	"math"

	"galewright/plan"
	"galewright/plan/framing"
	"galewright/plan/nailing"
)

// deckShearCheck is the ID of the check of what hands a line its force.
const deckShearCheck = "deck-shear"

// deckShear checks the ordered nails that hand a line's force from the deck to
// its top plates, and of the lowest line on from the floor's edge to girders: rims,
// joists and rafters on what they lie on. Clips and straps there are not counted.
func deckShear(c *Check, a *analysis) (out []*Link) {
	for _, x := range a.lateral.lines {
		if ASD.W*x.Force <= least {
			continue
		}
		out = append(out, a.handLink(c, x, "deck to the plates", a.overPlates(x)))
		if x.Level.Index == 0 && a.plan.Foundation.Kind == plan.Piles && a.onFloor(x.Segments[0].Wall) {
			out = append(out, a.handLink(c, x, "floor to the girders", a.overGirders(x)))
		}
	}
	return out
}

// handLink is the link of one place where a line's force is handed on.
func (a *analysis) handLink(c *Check, x *LineShear, what string, here func(*nailing.Spot) bool) *Link {
	l := &Link{
		Check: c, ID: what + ", line " + x.Name, Wall: x.Segments[0].Wall, Unit: "lb", Host: "line " + x.Name,
		Where: fmt.Sprintf("line %s, story %s", x.Name, x.Level.Name), Case: x.Case, Demand: ASD.W * x.Force, Strength: x.Force,
		Terms: []Term{{"force of the line, strength level", x.Force, "lb"}, {"0.6 of it", ASD.W * x.Force, "lb"}},
	}
	l.close(a.handed(here))
	if l.Capacity == nil {
		l.Gap = fmt.Sprintf("no nails are ordered there (%s, %s, %s, %s)", plan.RimToSupport, plan.JoistAlongSupport, plan.JoistToSupport, plan.RafterAlongPlate)
	}
	return l
}

// handed is what all ordered nails of the places asked for hold across; nil
// where there are none.
func (a *analysis) handed(here func(*nailing.Spot) bool) *Capacity {
	out := &Capacity{Source: "ordered nailing"}
	for _, l := range a.nails.Lines {
		n, sum, one := 0, 0.0, nailing.Value{}
		for _, s := range l.Spots {
			if s.Side == s.Main || !here(s) {
				continue
			}
			one = l.One(s, a.species)
			n += s.Nails(l.Order)
			sum += float64(s.Nails(l.Order)) * one.Lateral
		}
		if sum == 0 {
			continue
		}
		out.Value, out.Pieces = out.Value+sum, out.Pieces+n
		out.Governs = fmt.Sprintf("%s of %s, %s", plan.Counted(n, "nail"), l.Mark(), l.Row.One)
		out.Terms = append(out.Terms, ofCapacity(Term{fmt.Sprintf("%s of %s, %s: one holds %.0f lb, %s", plan.Counted(n, "nail"), l.Mark(), l.Row.One, one.Lateral, one.Text), sum, "lb"})...)
	}
	if out.Value == 0 {
		return nil
	}
	if len(out.Terms) > 1 {
		out.Terms = append(out.Terms, ofCapacity(Term{"together", out.Value, "lb"})...)
	}
	return out
}

// overPlates tells of a nailed place whether it ties the deck to the top plates
// of a line's walls.
func (a *analysis) overPlates(x *LineShear) func(*nailing.Spot) bool {
	on := map[*plan.Wall]bool{}
	for _, g := range x.Segments {
		on[g.Wall] = true
	}
	return func(s *nailing.Spot) bool {
		top := func(m *framing.Member) bool {
			return (m.Role == plan.UpperPlate || m.Role == plan.TopPlate) && on[m.Wall]
		}
		return top(s.Main) && deckRole(s.Side) || top(s.Side) && deckRole(s.Main)
	}
}

// overGirders tells of a nailed place whether it ties a rim or joist in a line to
// the girder under it, or to one that it crosses.
func (a *analysis) overGirders(x *LineShear) func(*nailing.Spot) bool {
	return func(s *nailing.Spot) bool {
		if s.Main.Role != plan.GirderBeam && s.Main.Role != plan.SillPlate || !deckRole(s.Side) {
			return false
		}
		mid := axis(s.Side.A.Add(s.Side.B).Mul(0.5).Flat(), 1-x.Axis)
		return s.Side.B.Sub(s.Side.A).Flat().Unit().RunsAlong(x.Axis) && math.Abs(mid-x.At) < oneLine
	}
}
