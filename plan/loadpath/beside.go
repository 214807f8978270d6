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
