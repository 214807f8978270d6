package loadpath

import (
	"fmt"
	"math"

	"galewright/plan"
	"galewright/plan/capacity"
	"galewright/plan/framing"
	"galewright/plan/timber"
	"galewright/plan/wind"
)

// ridgeTies checks each joint at a ridge, hip or valley.
func ridgeTies(c *Check, a *analysis) (out []*Link) {
	hung := a.hungOnRafters()
	for _, j := range a.house.Joints {
		if j.Kind != plan.RafterRidge || a.peaks[j] == nil {
			continue
		}
		l := a.upliftLink(c, j)
		a.withHung(l, hung.on)
		if k := a.slopedTie(j); k > 1 && l.Demand > 0 {
			l.Demand, l.Strength = l.Demand*k, l.Strength*k
			l.Terms = append(l.Terms, Term{"1 / cos of the steeper slope: the tie lies along the rafters", k, ""}, Term{"tension of the tie, ASD", l.Demand, "lb"})
		}
		l.close(a.allowed.At(j, a.ridgePull(j)))
		if by := hung.by[j]; len(by) > 0 {
			a.holdKing(l, by)
		}
		a.withoutKing(l, hung.less[j])
		out = append(out, l)
	}
	return out
}

// ridgePull returns the direction a ridge joint is asked for: along the
// rafters where two lean on each other, upward where one rests on a beam, a
// hip or a valley.
func (a *analysis) ridgePull(j *framing.Joint) capacity.Direction {
	if a.pairAt[j] != nil {
		return capacity.Endways
	}
	return capacity.Upward
}

// slopedTie returns what a tie over a ridge board carries for each pound of
// level tension: it follows the slope of the rafters, the steeper the more; 1
// where no two rafters lean on each other.
func (a *analysis) slopedTie(j *framing.Joint) float64 {
	p := a.pairAt[j]
	if p == nil {
		return 1
	}
	return math.Max(math.Hypot(1, p.a.Tan), math.Hypot(1, p.b.Tan))
}

// bears tells whether a rafter's low or ledger end is at joints of a kind.
func bears(k plan.JointKind) bool { return k.OnPlate() || k == plan.RafterLedger }

// rafterUplift checks each rafter at each bearing.
func rafterUplift(c *Check, a *analysis) (out []*Link) {
	for _, j := range a.house.Joints {
		if !bears(j.Kind) || a.peaks[j] == nil {
			continue
		}
		l := a.upliftLink(c, j)
		a.sideways(l)
		out = append(out, l)
	}
	return out
}

// hungUplift checks what hangs on girder trusses and corner jacks, and valley frames on trusses.
func hungUplift(c *Check, a *analysis) (out []*Link) {
	for _, k := range []plan.JointKind{plan.JackGirder, plan.JackCorner, plan.ValleyTruss} {
		out = append(out, upliftAt(k)(c, a)...)
	}
	return out
}

// sideways adds the linear interaction of uplift with the push along or
// across the wall, where the maker gives those loads.
func (a *analysis) sideways(l *Link) {
	j := l.Joint
	if l.Gap != "" || l.Capacity == nil || l.Capacity.Value == 0 || j.Wall == nil {
		return
	}
	for _, p := range a.placed.At(j) {
		given := p.Item.Load
		if p.Item.Mark != l.Capacity.Mark || given.Along == 0 && given.Across == 0 {
			continue
		}
		n := float64(l.Capacity.Pieces)
		along, across := a.alongWall(j), a.acrossWall(j)
		both := 0.0
		if given.Along > 0 {
			both = timber.Interaction([2]float64{l.Demand, l.Capacity.Value}, [2]float64{along, given.Along * n})
			l.Terms = append(l.Terms, a.alongTerm(j, along))
		}
		if given.Across > 0 {
			both = math.Max(both, timber.Interaction([2]float64{l.Demand, l.Capacity.Value}, [2]float64{across, given.Across * n}))
			l.Terms = append(l.Terms, a.acrossTerm(j, across))
		}
		if both > l.Ratio {
			l.Ratio = both
			l.Notes = append(l.Notes, fmt.Sprintf("ratio by linear interaction of uplift with the lateral load along or across the wall, each in its own worst case: %.2f", both))
		}
		return
	}
}

// alongWall returns the share of the deck's shear that passes from the roof
// into the wall at a joint, lb ASD.
func (a *analysis) alongWall(j *framing.Joint) float64 {
	x := a.lineOf(j)
	if x == nil || x.hi <= x.lo {
		return 0
	}
	return ASD.W * math.Abs(x.Deck) / (x.hi - x.lo) * j.Tributary
}

// acrossWall returns the push of the wind on the upper half of the wall at a
// joint, lb ASD: components and cladding, zone 5 within a of a corner of the
// house, else zone 4.
func (a *analysis) acrossWall(j *framing.Joint) float64 {
	h, w := j.Wall.TopHeight()/12, j.Tributary/12
	zones := wind.WallFigure(a.basis.Edition, a.basis.Theta).Zones
	z, strip := zones[0], 12*a.basis.EdgeStrip()
	if j.Station < strip || j.Station > j.Wall.Length()-strip {
		z = zones[1]
	}
	p := a.basis.Cladding(z, wind.EffectiveArea(h, w))
	return ASD.W * math.Max(p.Positive, -p.Negative) * h / 2 * w
}

// alongTerm names the parts of alongWall.
func (a *analysis) alongTerm(j *framing.Joint, lb float64) Term {
	x := a.lineOf(j)
	if x == nil {
		return Term{"lateral load along the wall (wind along it): no shear wall line stands in it", lb, "lb"}
	}
	return Term{a.u.Sprintf("lateral load along the wall (wind along it), ASD: 0.6 of %.0f lb from the deck over %.2f ft of line %s, on %.2f ft", math.Abs(x.Deck), (x.hi-x.lo)/12, x.Name, j.Tributary/12), lb, "lb"}
}

// acrossTerm names the parts of acrossWall.
func (a *analysis) acrossTerm(j *framing.Joint, lb float64) Term {
	h, w := j.Wall.TopHeight()/12, j.Tributary/12
	psf := 0.0
	if h*w > 0 {
		psf = lb / (ASD.W * h / 2 * w)
	}
	return Term{a.u.Sprintf("lateral load across the wall (wind on it), ASD: 0.6 of %.1f psf on half of %.2f ft of wall, %.2f ft wide", psf, h, w), lb, "lb"}
}
