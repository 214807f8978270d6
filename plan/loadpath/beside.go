package loadpath

import (
	"math"
	"slices"

	"galewright/plan"
	"galewright/plan/capacity"
	"galewright/plan/framing"
	"galewright/plan/nailing"
)

// withBeside adds to what holds a stud's top what holds the studs nailed tight
// beside it: their clips, less what they carry themselves, and no more than the
// ordered nails between them hold across. A stud between the two that back a
// meeting wall has no face free for a clip of its own.
func (a *analysis) withBeside(j *framing.Joint, own *Capacity) *Capacity {
	line := a.nails.Line(plan.BuiltUpStuds)
	if j.Kind != plan.StudTop || own == nil || own.Unknown != "" || line == nil {
		return own
	}
	out := *own
	out.Terms = slices.Clone(own.Terms)
	for _, s := range line.Spots {
		o := s.Main
		switch j.First() {
		case s.Side:
		case s.Main:
			o = s.Side
		default:
			continue
		}
		spare, by := a.spareAt(o)/float64(a.leaning(line, o)), float64(s.Nails(line.Order))*line.One(s, a.species).Lateral
		if v := math.Min(spare, by); v > 0 {
			out.Value, out.Pieces = out.Value+v, out.Pieces+1
			out.Governs = own.Governs + ", with the " + string(o.Role) + " nailed beside it"
			out.Terms = append(out.Terms, ofCapacity(Term{a.u.Sprintf("what is spare at the %s nailed beside it (%s %s hold %.0f lb)", o.Role, plan.Counted(s.Nails(line.Order), "nail"), line.Mark(), by), v, "lb"})...)
		}
	}
	if out.Value > own.Value {
		out.Terms = append(out.Terms, ofCapacity(Term{a.u.Sprintf("with the %.0f lb of its own top", own.Value), out.Value, "lb"})...)
	}
	return &out
}

// leaning counts the studs nailed tight beside one that want more than their own
// tops hold: they share what it has to spare.
func (a *analysis) leaning(line *nailing.Line, m *framing.Member) (n int) {
	for _, s := range line.Spots {
		o := s.Main
		switch m {
		case s.Side:
		case s.Main:
			o = s.Side
		default:
			continue
		}
		for _, j := range a.byFirst[o] {
			p := a.peaks[j]
			if j.Kind != plan.StudTop || p == nil || p.demand <= 0 {
				continue
			}
			if held := a.allowed.Of(j, capacity.Upward, ordinary); held == nil || p.demand > held.Value {
				n++
			}
		}
	}
	return max(n, 1)
}

// spareAt is what holds the top of a stud beyond its own demand, lb.
func (a *analysis) spareAt(m *framing.Member) float64 {
	for _, j := range a.byFirst[m] {
		if j.Kind != plan.StudTop {
			continue
		}
		held := a.allowed.Of(j, capacity.Upward, ordinary)
		if held == nil || held.Unknown != "" {
			return 0
		}
		spare := held.Value
		if p := a.peaks[j]; p != nil {
			spare -= math.Max(0, p.demand)
		}
		return math.Max(0, spare)
	}
	return 0
}

// heldAtBeside is what holds the foot of a stud that has no piece that holds it there: the
// hold-downs at the feet of the studs nailed tight beside it, less what those studs carry
// themselves, each no more than the ordered nails between let through; nil where there are
// none. Two kings stand so beside a wide door: the inner one has no face free.
func (a *analysis) heldAtBeside(j *framing.Joint) *Capacity {
	line := a.nails.Line(plan.BuiltUpStuds)
	if j.Kind != plan.StudBase || line == nil || a.allowed.At(j, capacity.Upward) != nil {
		return nil
	}
	var out *Capacity
	for _, s := range line.Spots {
		o := otherSide(s, j.First())
		foot, held := a.engineeredFoot(o)
		if held == nil {
			continue
		}
		own := 0.0
		if p := a.peaks[foot]; p != nil {
			own = math.Max(0, p.demand)
		}
		n := s.Nails(line.Order)
		spare, by := math.Max(0, held.Value-own)/float64(a.barefoot(line, o)), float64(n)*line.One(s, a.species).Lateral
		if out == nil {
			out = &Capacity{Source: held.Source, Mark: held.Mark, NotMakers: held.NotMakers, Governs: held.Governs + ", of the " + string(o.Role) + " nailed beside it"}
		}
		if by < spare {
			out.Governs = "nails between it and the " + string(o.Role) + " beside it"
		}
		out.Value, out.Pieces = out.Value+math.Min(spare, by), out.Pieces+held.Pieces
		out.Terms = append(append(out.Terms, held.Terms...), ofCapacity(
			Term{"that holds the foot of " + o.ID + ", less its own uplift, for each stud that stands on it so", spare, "lb"},
			Term{plan.Counted(n, "nail") + " of " + line.Mark() + " between, " + line.One(s, a.species).Text, by, "lb"},
			Term{"the lesser of both", math.Min(spare, by), "lb"})...)
	}
	return out
}

// otherSide is the member at the far side of a connection from one; nil where it is not in it.
func otherSide(s *nailing.Spot, m *framing.Member) *framing.Member {
	switch m {
	case s.Side:
		return s.Main
	case s.Main:
		return s.Side
	}
	return nil
}

// holdsAnEnd tells whether what is at a stud's foot is all that holds an end of a shear
// wall's segment: it has nothing to spare then.
func (a *analysis) holdsAnEnd(foot *framing.Joint) bool {
	for _, x := range a.lateral.lines {
		for _, s := range x.Segments {
			for _, j := range s.ends {
				if j != nil && a.footOf[j.First()] == foot && a.allowed.At(j, capacity.Upward) == nil {
					return true
				}
			}
		}
	}
	return false
}

// engineeredFoot is the joint at the foot of a stud and what the engineer's hold-down there
// holds; nil where there is none, or where a shear wall's end asks for it.
func (a *analysis) engineeredFoot(m *framing.Member) (*framing.Joint, *Capacity) {
	for _, j := range a.byFirst[m] {
		if j.Kind != plan.StudBase {
			continue
		}
		if held := a.allowed.Of(j, capacity.Upward, engineered); held != nil && held.Unknown == "" && !a.holdsAnEnd(j) {
			return j, held
		}
	}
	return nil, nil
}

// barefoot counts the studs nailed tight beside one that have none that holds their own feet:
// they share what its hold-down has to spare.
func (a *analysis) barefoot(line *nailing.Line, m *framing.Member) (n int) {
	for _, s := range line.Spots {
		for _, j := range a.byFirst[otherSide(s, m)] { // nothing stands first of nil
			if j.Kind == plan.StudBase && a.allowed.At(j, capacity.Upward) == nil && a.peaks[j] != nil && a.peaks[j].demand > least {
				n++
			}
		}
	}
	return max(n, 1)
}
