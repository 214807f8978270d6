package loadpath

import (
	"math"

	"galewright/plan"
	"galewright/plan/wind"
)

// patch is one stretch of a strip with its load.
type patch struct {
	u0, u1 float64
	zone   int     // 2 or 3
	gcpf   float64 // external, the end zone in proportion
	below  float64 // from below, per part of the width: inside the walls GCpi, outside the soffit's
	in     bool    // between the walls
	force  Force
}

// mid is where the patch's force acts.
func (p patch) mid() float64 { return (p.u0 + p.u1) / 2 }

// roofLoads calls emit with each stretch of a strip: wind on it at strength
// level, and the weight of roof and ceiling.
func (m *model) roofLoads(s *strip, c windCase, rc roofCase, emit func(patch)) {
	if s.Width <= 0 {
		return
	}
	cuts := s.cuts(rc, m.basis.ZoneTwoReach()*12)
	slope := math.Hypot(1, s.Tan)
	roofDead, ceiling := m.dead.roof(s.roof)*slope, m.dead.ceiling()
	in := s.Width - s.out0 - s.out1
	for i := 1; i < len(cuts); i++ {
		p := patch{u0: cuts[i-1], u1: cuts[i]}
		if p.u1-p.u0 < 1e-9 {
			continue
		}
		p.zone = s.zone(p.mid(), rc, m)
		p.gcpf = rc.roofCoef(p.zone, s.along0, s.along1)
		p.in = p.mid() > s.inside[0] && p.mid() < s.inside[1]
		p.below = rc.gcpi
		if !p.in {
			p.below = s.soffit(p.mid(), c)
		}
		lift := in*(p.below-p.gcpf) + s.out0*(rakeSoffit(c, rc, -1)-p.gcpf) + s.out1*(rakeSoffit(c, rc, 1)-p.gcpf)
		long := (p.u1 - p.u0) / 144
		p.force = Force{W: lift * rc.q * long, D: roofDead * s.Width * long}
		if p.in {
			p.force.D += ceiling * in * long
		}
		emit(p)
	}
}

// cuts returns where the pressure along u may change, ascending.
func (s *strip) cuts(rc roofCase, reach float64) []float64 {
	z := s.Run
	switch {
	case s.roof.Kind == plan.ShedRoof:
		z = math.Min(s.Run/2, reach)
		if !s.lowIsNear(rc) {
			z = s.Run - z
		}
	case !s.slopesAlong() && s.lowIsNear(rc):
		z = math.Min(reach, s.Run)
	}
	c := []float64{0, s.inside[0], s.inside[1], z, s.Run}
	for i := 1; i < len(c); i++ { // insertion: five values
		for k := i; k > 0 && c[k] < c[k-1]; k-- {
			c[k], c[k-1] = c[k-1], c[k]
		}
	}
	return c
}

// lowIsNear tells whether the low end is on the windward or reference side
// across the ridge.
func (s *strip) lowIsNear(rc roofCase) bool {
	high := axis(s.Up, 1-s.roof.RidgeAxis()) < 0 // the low end is on the high side
	return high == rc.nearHigh
}

// zone returns 2 or 3 for the place u on the strip.
func (s *strip) zone(u float64, rc roofCase, m *model) int {
	reach := m.basis.ZoneTwoReach() * 12
	near := s.lowIsNear(rc)
	switch {
	case s.roof.Kind == plan.ShedRoof:
		d := u
		if !near {
			d = s.Run - u
		}
		near = d < math.Min(s.Run/2, reach)
	case s.slopesAlong():
		ax := 1 - s.roof.RidgeAxis()
		area := roofArea(m.plan, s.roof)
		near = (axis(s.Low, ax) > (axis(area.lo, ax)+axis(area.hi, ax))/2) == rc.nearHigh
	default:
		near = near && u < reach
	}
	if near {
		return 2
	}
	return 3
}

// soffit returns the coefficient of pressure from below on an eave overhang:
// on the side that faces the wind only.
func (s *strip) soffit(u float64, c windCase) float64 {
	into := axis(s.Up, c.axis) * c.sign // uphill, along the wind
	if u > s.inside[1] {
		into = -into
	}
	if s.Up.Mainly(c.axis) && into > 0 {
		return wind.OverhangGCp
	}
	return 0
}

// rakeSoffit is soffit for the overhang beyond the gable wall at the low (-1)
// or high (+1) end along the ridge.
func rakeSoffit(c windCase, rc roofCase, end float64) float64 {
	if !rc.across && c.sign*end < 0 {
		return wind.OverhangGCp
	}
	return 0
}
