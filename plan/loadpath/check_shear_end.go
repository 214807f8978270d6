package loadpath

import (
	"galewright/plan"
	"galewright/plan/capacity"
	"galewright/plan/framing"
	"galewright/plan/placement"
)

// liftToo adds the uplift of a post to what holds its end, where no strap at its foot
// holds that.
func (a *analysis) liftToo(l *Link, foot *framing.Joint, c *Capacity) {
	p := a.peaks[foot]
	if p == nil || p.demand <= 0 || l.Demand <= least || a.allowed.Of(foot, capacity.Upward, ordinaryStrap) != nil {
		return
	}
	l.Demand += p.demand
	l.Strength += p.demand / ASD.W
	l.Terms = append(l.Terms, Term{sameUplift, p.demand, "lb"}, Term{"both, ASD", l.Demand, "lb"})
	l.close(c)
}

// ordinaryStrap tells whether a piece is a strap, but not the engineer's: it goes past the
// plate that a clip ends at.
func ordinaryStrap(p *placement.Piece) bool { return p.Item.Kind.Strap && ordinary(p) }

// engineered tells whether a piece is of a kind that goes in for a shear
// wall's end; ordinary is any other.
func engineered(p *placement.Piece) bool {
	switch p.Item.Kind.Name {
	case plan.LongStrapItem, plan.HoldDownItem, plan.HoldDownPairItem:
		return true
	}
	return false
}

func ordinary(p *placement.Piece) bool { return !engineered(p) }
