package loadpath

import (
	"math"

	"galewright/plan/wind"
)

// roofLoads calls emit with the force of each stretch of a strip at its
// middle u: wind on it at strength level, and the weight of roof and ceiling.
func (a *analysis) roofLoads(s *strip, c windCase, rc roofCase, emit func(u float64, f Force)) {
	if s.width <= 0 {
		return
	}
	cuts := s.cuts(rc, a.basis.ZoneTwoReach()*12)
	slope := math.Hypot(1, s.tan)
	roofDead, ceiling := a.dead.roof(s.roof)*slope, a.dead.ceiling()
	for i := 1; i < len(cuts); i++ {
		u0, u1 := cuts[i-1], cuts[i]
		if u1-u0 < 1e-9 {
			continue
		}
		mid := (u0 + u1) / 2
		g := rc.roofCoef(s.zone(mid, rc, a), s.along0, s.along1)
		lift := 0.0 // coefficient times width
		in := s.width - s.out0 - s.out1
		under := mid > s.inside[0] && mid < s.inside[1]
		if under {
			lift = in * (rc.gcpi - g)
		} else {
			lift = in * (s.soffit(mid, c) - g)
		}
		lift += s.out0*(rakeSoffit(c, rc, -1)-g) + s.out1*(rakeSoffit(c, rc, 1)-g)
		f := Force{W: lift * rc.q * (u1 - u0) / 144, D: roofDead * s.width * (u1 - u0) / 144}
		if under {
			f.D += ceiling * in * (u1 - u0) / 144
		}
		emit(mid, f)
	}
}

// cuts returns where the pressure along u may change, ascending.
func (s *strip) cuts(rc roofCase, reach float64) []float64 {
	z := s.run
	switch {
	case s.roof.Kind == "shed":
		z = math.Min(s.run/2, reach)
		if !s.lowIsNear(rc) {
			z = s.run - z
		}
	case !s.slopesAlong() && s.lowIsNear(rc):
		z = math.Min(reach, s.run)
	}
	c := []float64{0, s.inside[0], s.inside[1], z, s.run}
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
	high := axis(s.up, 1-ridgeAxis(s.roof)) < 0 // the low end is on the high side
	return high == rc.nearHigh
}

// zone returns 2 or 3 for the place u on the strip.
func (s *strip) zone(u float64, rc roofCase, a *analysis) int {
	reach := a.basis.ZoneTwoReach() * 12
	near := s.lowIsNear(rc)
	switch {
	case s.roof.Kind == "shed":
		d := u
		if !near {
			d = s.run - u
		}
		near = d < math.Min(s.run/2, reach)
	case s.slopesAlong():
		ax := 1 - ridgeAxis(s.roof)
		area := roofArea(a.plan, s.roof)
		near = (axis(s.low, ax) > (axis(area.lo, ax)+axis(area.hi, ax))/2) == rc.nearHigh
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
	facing := -axis(s.up, c.axis) * c.sign // downhill, along the wind
	if u > s.inside[1] {
		facing = -facing
	}
	if facing < -0.7 {
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
