package loadpath

import (
	"fmt"
	"math"
	"slices"

	"galewright/plan"
	"galewright/plan/geom"
)

// patch is one stretch of a strip with its load.
type patch struct {
	u0, u1 float64
	zone   string  // "zone 2", "windward slope"
	top    float64 // coefficient on its top, gust and end zone in it
	below  float64 // from below: inside the walls GCpi, outside the soffit's
	ends   [2]float64
	in     bool   // between the walls
	free   string // the case of an open roof that lifts more than top and soffit do, "" when none does
	force  Force
}

// mid is where the patch's force acts.
func (p patch) mid() float64 { return (p.u0 + p.u1) / 2 }

// roofLoads calls emit with each stretch of a strip: wind on it at strength
// level, and the weight of the roof, of the ceiling too where it hangs on the
// rafter or truss.
func (m *model) roofLoads(s *strip, rc roofCase, emit func(patch)) {
	if s.Width <= 0 {
		return
	}
	cuts := s.cuts(rc)
	slope := math.Hypot(1, s.Tan)
	roofDead, ceiling := m.dead.roof(s.roof)*slope, m.dead.ceiling()
	in := s.Width - s.out0 - s.out1
	for i := 1; i < len(cuts); i++ {
		p := patch{u0: cuts[i-1], u1: cuts[i]}
		if p.u1-p.u0 < 1e-9 {
			continue
		}
		long := (p.u1 - p.u0) / 144
		p.force = Force{W: s.lift(&p, rc) * rc.q * long, D: roofDead * s.Width * long}
		if p.in && hangsOn(s.roof) != onJoists {
			p.force.D += ceiling * in * long
		}
		emit(p)
	}
}

// lift fills in the coefficients of a patch and returns the sum of net
// coefficient times width, in.
func (s *strip) lift(p *patch, rc roofCase) float64 {
	u := p.mid()
	p.top, p.zone = rc.top(s, p.u0, p.u1)
	p.in = s.between(u, rc.outline)
	p.below = rc.gcpi
	if !p.in {
		p.below = rc.under(s.At(u))
	}
	for i, side := range []float64{-1, 1} {
		p.ends[i] = rc.under(s.beyond(u, side, rc))
	}
	in := s.Width - s.out0 - s.out1
	lift := in*p.below + s.out0*p.ends[0] + s.out1*p.ends[1] - s.Width*p.top
	if rc.open == nil {
		return lift
	}
	if free, name := rc.free(s, p.u0, p.u1); free*s.Width > lift {
		p.free = name
		return free * s.Width
	}
	return lift
}

// beyond returns a plan point of the strip's part past the gable wall at the
// low (-1) or high (+1) end of the ridge.
func (s *strip) beyond(u, side float64, rc roofCase) geom.Vec2 {
	p := s.At(u)
	at := axis(rc.walls.lo, rc.ridge) - 1
	if side > 0 {
		at = axis(rc.walls.hi, rc.ridge) + 1
	}
	if rc.ridge == 0 {
		return geom.Vec2{X: at, Y: p.Y}
	}
	return geom.Vec2{X: p.X, Y: at}
}

// under returns the coefficient from below on a roof that is open below at a
// plan point: what is past a windward wall takes that wall's pressure; so does
// a porch in a corner of an L that the wind reaches.
func (rc roofCase) under(p geom.Vec2) float64 {
	outside := false
	for k := range 2 {
		x := axis(p, k)
		low, high := x < axis(rc.walls.lo, k), x > axis(rc.walls.hi, k)
		outside = outside || low || high
		if low && rc.wind.windward(k, -1) || high && rc.wind.windward(k, 1) {
			return rc.soffit
		}
	}
	if outside || rc.open == nil && !rc.reaches(p) {
		return 0
	}
	return rc.soffit
}

// cuts returns where the pressure along u may change, ascending.
func (s *strip) cuts(rc roofCase) []float64 {
	c := append([]float64{0, s.inside[0], s.inside[1], s.Run}, s.passes...)
	switch rc.wind.proc {
	case plan.Envelope:
		if !s.slopesAlong() {
			c = append(c, s.uOf(rc.zones.mid, 1-rc.ridge), s.uOf(rc.zones.reach, 1-rc.ridge))
		}
	case plan.Directional:
		if s.Up.Mainly(rc.wind.axis) {
			for _, d := range rc.slopes.bounds {
				c = append(c, s.uOf(rc.slopes.edge+rc.wind.sign*d, rc.wind.axis))
			}
		}
	}
	if o := rc.open; o != nil && s.Up.Mainly(rc.wind.axis) {
		c = append(c, s.uOf(o.mid, rc.wind.axis))
		for _, d := range o.bounds {
			c = append(c, s.uOf(o.edge+rc.wind.sign*d, rc.wind.axis))
		}
	}
	slices.Sort(c)
	return c
}

// uOf returns the place on a strip at a coordinate along an axis that it
// slopes along, held to the strip.
func (s *strip) uOf(x float64, ax int) float64 {
	up := axis(s.Up, ax)
	if math.Abs(up) < 1e-9 {
		return 0
	}
	return clamp((x-axis(s.Low, ax))/up, 0, s.Run)
}

// top returns the coefficient on the top of a stretch of a strip, gust in it,
// and the name of the zone.
func (rc roofCase) top(s *strip, u0, u1 float64) (coef float64, name string) {
	switch rc.wind.proc {
	case plan.Envelope:
		z := s.zone((u0+u1)/2, rc)
		return rc.zones.roofCoef(z, s.along0, s.along1), fmt.Sprintf("zone %d", z)
	case plan.Directional:
		return rc.direct(s, u0, u1)
	}
	return 0, ""
}

// zone returns 2 or 3 of the envelope figure for the place u on the strip.
func (s *strip) zone(u float64, rc roofCase) int {
	x := axis(s.At(u), 1-rc.ridge)
	e := rc.zones
	near := x <= e.mid+1e-6 // a jack in the middle of a hip's end stands in both zones: 2 lifts more
	if e.nearHigh {
		near = x >= e.mid-1e-6
	}
	if !s.slopesAlong() && near {
		near = x < e.reach
		if e.nearHigh {
			near = x > e.reach
		}
	}
	if near {
		return 2
	}
	return 3
}

// direct returns G Cp of the directional procedure on a stretch of a strip.
// Along the wind it is that of a slope, or of the strips by distance under 10
// degrees; a strip across the wind takes the mean over its width. The end
// slope of a hip may be read as a slope that the wind meets or as a roof along
// the wind: of the two the first value is what lifts more, the second what
// presses more.
func (rc roofCase) direct(s *strip, u0, u1 float64) (coef float64, name string) {
	if !s.Up.Mainly(rc.wind.axis) {
		return rc.byDistance(s.From, s.To), "by distance from the windward edge"
	}
	x0, x1 := axis(s.At(u0), rc.wind.axis), axis(s.At(u1), rc.wind.axis)
	far := rc.byDistance(math.Min(x0, x1), math.Max(x0, x1))
	v := rc.slopes.slope[0]
	if math.Abs(s.Tan-rc.slopes.pitch) > 1e-6 && rc.slopes.slope[1] != (slopeValues{}) {
		v = rc.slopes.slope[1]
	}
	if v.flat {
		return far, "by distance from the windward edge"
	}
	coef, name = v.windward, "windward slope"
	if axis(s.Up, rc.wind.axis)*rc.wind.sign < 0 {
		coef, name = v.leeward, "leeward slope"
	}
	if rc.across {
		return coef, name
	}
	if rc.wind.second {
		return math.Max(coef, far), "hip end, " + name
	}
	return math.Min(coef, far), "hip end, " + name
}

// byDistance returns the mean G Cp of the strips between two coordinates along
// the wind.
func (rc roofCase) byDistance(x0, x1 float64) float64 {
	d := rc.slopes
	return stripMean(d.edge, rc.wind.sign, d.bounds[:], d.strips[:], x0, x1)
}

// stripMean returns the mean between two coordinates of values that change at
// bounds, in from an edge along the wind; what lies before the edge has the
// first.
func stripMean(edge, sign float64, bounds, values []float64, x0, x1 float64) float64 {
	d0, d1 := (x0-edge)*sign, (x1-edge)*sign
	d0, d1 = math.Min(d0, d1), math.Max(d0, d1)
	if d1-d0 < 1e-9 {
		d1 = d0 + 1e-6
	}
	sum, from := 0.0, math.Inf(-1)
	for i, v := range values {
		to := math.Inf(1)
		if i < len(bounds) {
			to = bounds[i]
		}
		sum += v * overlap(d0, d1, from, to)
		from = to
	}
	return sum / (d1 - d0)
}
