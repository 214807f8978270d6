package loadpath

import (
	"math"

	"galewright/plan"
	"galewright/plan/nailing"
	"galewright/plan/timber"
)

// wetShear is CM of Fv where lumber is wet in service (NDS 2018 Supplement Tables 4A and
// 4B, from memory).
const wetShear = 0.97

// alongWood is what the boards themselves bear of a force that comes in along their tops
// and goes out along their bottoms by the nails of a line: shear along the grain over their
// length and thickness, Fv CD b l, lb. Of lines whose nails are spaced along rims, blocks and
// joists; 0 of any other. It is shear through the board's whole depth, without bending, and
// the same all over.
func (a *analysis) alongWood(l *nailing.Line, here places) (lb float64, terms []Term) {
	w, ok := a.species.Along()
	if !ok || !l.Row.Spaced {
		return 0, nil
	}
	long, fv := 0.0, w.Fv*float64(timber.WindDuration)
	for _, s := range a.spots(l, here) {
		if s.Side == s.Main || !standing(s.Side.Role) {
			continue
		}
		long += s.Touch
		lb += a.woodShear(s, fv)
	}
	if lb == 0 {
		return 0, nil
	}
	return lb, []Term{{a.u.Sprintf("the wood over %s, %.1f ft of it by its thickness, in shear along the grain, Fv %.0f psi (No. 2 %s, NDS 2018 Supplement, from memory), CD 1.6, wet 0.97", l.Mark(), long/12, w.Fv, a.species.Name), lb, "lb"}}
}

// woodShear is what the board over one stretch of nails bears along its grain, lb.
func (a *analysis) woodShear(s *nailing.Spot, fv float64) float64 {
	if a.house.Wet(s.Side) {
		fv *= wetShear
	}
	return fv * s.Side.Section.Width() * s.Touch
}

// blockWood is what a block at an eave bears so over the nails into the plates.
func (a *analysis) blockWood(s *nailing.Spot) float64 {
	w, ok := a.species.Along()
	if !ok {
		return math.Inf(1) // the nails alone are known
	}
	return a.woodShear(s, w.Fv*float64(timber.WindDuration))
}

// standing tells whether a member of a floor stands on edge and hands shear down through
// its depth.
func standing(r plan.Role) bool {
	return r == plan.Rim || r == plan.Joist || r == plan.Blocking
}
