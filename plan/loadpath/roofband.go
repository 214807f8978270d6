package loadpath

import (
	"math"

	"galewright/plan"
	"galewright/plan/framing"
	"galewright/plan/geom"
	"galewright/plan/wind"
)

// roofShape is what of a roof stands against level wind, by its faces as they
// are: overhangs of eaves and rakes are in it. Sides are its low and high one
// across the ridge, ends its low and high one along it.
type roofShape struct {
	top, ridge float64    // of its plates and its highest point, above grade, in
	low        [2]float64 // by side: lower edge of the slope there, never over the plates, in
	over       [2]float64 // by side: its surface over the plates at the walls' outside face, in
	tan        [2]float64 // by side: rise over run of that slope
	eave       [2]float64 // by side: how far it reaches out past the walls, in
	rake       [2]float64 // by end: the same of a gable
	hip        bool       // it has slopes at its ends
	crest      float64    // coordinate of the highest point across the ridge
	fascia     float64    // plumb depth of its edges, in: that of the rafters
}

// shapeOf measures a roof.
func (m *model) shapeOf(r *plan.Roof) roofShape {
	top := r.Over.Top()
	s := roofShape{top: top, ridge: m.house.RidgeHeight(r), low: [2]float64{top, top}}
	s.fascia = r.Rafters.Depth * math.Hypot(1, math.Max(r.Pitch, r.PitchOther)/12)
	area, ax := roofArea(m.plan, r), r.RidgeAxis()
	s.crest = (axis(area.lo, 1-ax) + axis(area.hi, 1-ax)) / 2
	for _, f := range m.house.FacesOver(r) {
		switch {
		case f.Slope.Mainly(ax):
			s.hip = true
		default:
			s.face(f, area, ax)
		}
	}
	return s
}

// face takes a face that slopes across the ridge into the shape.
func (s *roofShape) face(f *framing.Face, area extent, ax int) {
	side := 0
	if axis(f.Slope, 1-ax) > 0 {
		side = 1
	}
	lo, hi := f.Outline[0], f.Outline[0]
	for i, p := range f.Outline {
		if p.Z < lo.Z {
			lo = p
		}
		if p.Z > hi.Z {
			hi = p
		}
		switch q := f.Outline[(i+1)%len(f.Outline)].Flat(); f.Edges[i].Kind {
		case plan.EaveEdge, plan.RidgeEdge:
			pastWalls(&s.eave, area, p.Flat().Add(q).Mul(0.5), 1-ax)
		case plan.RakeEdge:
			pastWalls(&s.rake, area, p.Flat().Add(q).Mul(0.5), ax)
		}
	}
	s.low[side] = math.Min(s.low[side], lo.Z)
	if run := math.Abs(axis(hi.Sub(lo).Flat(), 1-ax)); run > 1 {
		s.tan[side] = (hi.Z - lo.Z) / run
	}
	walls := [2]float64{axis(area.lo, 1-ax), axis(area.hi, 1-ax)}[side]
	s.over[side] = math.Max(s.over[side], lo.Z+s.tan[side]*math.Abs(axis(lo.Flat(), 1-ax)-walls)-s.top)
	if hi.Z > s.ridge-1 {
		s.crest = axis(hi.Flat(), 1-ax)
	}
}

// pastWalls keeps how far a point lies beyond a roof's walls along an axis, by side.
func pastWalls(keep *[2]float64, area extent, p geom.Vec2, ax int) {
	keep[0] = math.Max(keep[0], axis(area.lo, ax)-axis(p, ax))
	keep[1] = math.Max(keep[1], axis(p, ax)-axis(area.hi, ax))
}

// roofBand adds the level part of the roof pressure on its vertical projection,
// overhangs included: every part of it that stands against the wind.
func (m *model) roofBand(g gust, r *plan.Roof, list []stretch) []stretch {
	area, s := roofArea(m.plan, r), m.shapeOf(r)
	cross := 1 - g.axis
	lo, hi := axis(area.lo, cross), axis(area.hi, cross)
	if g.axis == r.RidgeAxis() {
		return m.endBand(g, s, lo, hi, list)
	}
	return m.slopeBand(g, r, s, lo, hi, list)
}

// slopeBand is the band across the ridge: that of the two slopes, from their lower
// edges to the ridge, but never less than nothing (ASCE 7-10 Fig. 27.4-1 note 7,
// read; the low-rise figure has the same): the shear is no less than with the roof
// left out. A gable's rakes reach past the walls, and so does the band, with the
// depth of their edges, which stand before no wall. At a hipped end the band is as long
// as the walls and of its full height: more than the trapezoid it shows; a rake at the
// other end reaches past them all the same.
func (m *model) slopeBand(g gust, r *plan.Roof, s roofShape, lo, hi float64, list []stretch) []stretch {
	on := face{z: [2]float64{s.top, s.ridge}, roof: r, slopes: true, heights: s.heights(g)}
	on.high = math.Max(0.01, math.Max(on.heights[0], on.heights[1]))
	in, end := m.slopeLoad(g, r, s)
	in, end = math.Max(0, in)/on.high, math.Max(0, end)/on.high
	list = m.ends(g, lo, hi, on, in, end, list)
	wall, corner := m.wallPressure(g, on.z)
	edge := face{z: on.z, high: s.fascia / 12}
	for i, x := range [2][2]float64{{lo - s.rake[0], lo}, {hi, hi + s.rake[1]}} {
		list = g.past(i, x, on, in, end, list)
		list = g.past(i, x, edge, wall, corner, list)
	}
	return list
}

// past adds what stands past the walls on one side across the wind, with the
// pressures of a face, psf: in the end zone where the reference corner is there.
func (g gust) past(side int, x [2]float64, on face, in, end float64, list []stretch) []stretch {
	if x[1] <= x[0] {
		return list
	}
	if g.proc == plan.Envelope && (g.corner > 0) == (side == 1) {
		return append(list, stretch{x[0], x[1], end * on.high, on.with(end, true)})
	}
	return append(list, stretch{x[0], x[1], in * on.high, on.with(in, false)})
}

// heights are those of the slopes that the wind meets and leaves, ft.
func (s roofShape) heights(g gust) [2]float64 {
	met := 0
	if g.sign < 0 {
		met = 1
	}
	return [2]float64{(s.ridge - s.low[met]) / 12, (s.ridge - s.low[1-met]) / 12}
}

// endBand is the band along the ridge: gable triangles take the walls' pressure, a
// hip's ends no less. What a gable shows over its walls is spread evenly over them;
// past them the boxed eaves stand, as deep as the rafters at their edges. The end of
// a roof that lies under the plates, as of a lean-to, shows its outer rafter. A hip's
// end is the triangle from eave to eave, and none of it is taken off for the wall
// behind its lower edge.
func (m *model) endBand(g gust, s roofShape, lo, hi float64, list []stretch) []stretch {
	on := face{z: [2]float64{s.top, s.ridge}}
	in, end := m.wallPressure(g, on.z)
	if s.hip {
		on.high = (s.ridge - math.Min(s.low[0], s.low[1])) / 24
		return m.ends(g, lo-s.eave[0], hi+s.eave[1], on, in, end, list)
	}
	on.high = math.Max(s.overPlates(lo, hi), s.fascia) / 12
	list = m.ends(g, lo, hi, on, in, end, list)
	for i, x := range [2][2]float64{{lo - s.eave[0], lo}, {hi, hi + s.eave[1]}} {
		on.high = (s.fascia + s.tan[i]*math.Max(0, s.eave[i])/2) / 12
		list = g.past(i, x, on, in, end, list)
	}
	return list
}

// overPlates is the mean height of a gable's surface over its plates, between the
// outside faces of the walls under its eaves, in.
func (s roofShape) overPlates(lo, hi float64) float64 {
	c, rise := clamp(s.crest, lo, hi), s.ridge-s.top
	return ((s.over[0]+rise)*(c-lo) + (rise+s.over[1])*(hi-c)) / 2 / math.Max(1, hi-lo)
}

// slopeLoad returns the level load of a roof across its ridge, plf, in the
// interior and the end zone: the pressure of each slope on its own height.
func (m *model) slopeLoad(g gust, r *plan.Roof, s roofShape) (in, end float64) {
	ahead, behind := s.heights(g)[0], s.heights(g)[1]
	switch {
	case g.least():
		w := wind.LeastRoof * math.Max(ahead, behind)
		return w, w
	case g.proc == plan.Directional:
		windward, leeward := m.directSlopes(g, r, [2]float64{s.top, s.ridge})
		w := windward*ahead + leeward*behind
		return w, w
	}
	c := wind.CaseA(r.Angle())
	return m.q * (c.Interior[1]*ahead - c.Interior[2]*behind), m.q * (c.End[1]*ahead - c.End[2]*behind)
}

// directSlopes returns the level pressure on the vertical projections of a roof's
// windward and leeward slope by the directional procedure, psf, positive the way
// the wind goes. On its high side a shed shows a wall, to both winds.
func (m *model) directSlopes(g gust, r *plan.Roof, z [2]float64) (windward, leeward float64) {
	ridge := m.alongRidge(g.axis)
	l, b := m.basis.Along(ridge)
	qh := m.basis.Direct().QKd
	v := slopeOf(math.Max(r.Pitch, r.PitchOther), m.basis.Height/l, g.second)
	if v.flat { // by distance: at most the first strip's lee, least the second value
		strips := wind.StripCp(m.basis.Height / l)
		v.windward, v.leeward = wind.Gust*strips[0], wind.Gust*strips[0]
		if g.second {
			v.windward = wind.Gust * wind.SecondStrip
		}
		if r.Kind != plan.ShedRoof {
			return 0, 0
		}
	}
	windward, leeward = qh*v.windward, -qh*v.leeward
	switch {
	case r.Kind != plan.ShedRoof:
	case string(r.High) == from(g.axis, g.sign):
		windward = wind.Gust * wind.WindwardWallCp * m.basis.MeanQKd(z[0]/12, z[1]/12)
	default:
		leeward = -qh * wind.Gust * wind.LeewardWallCp(l, b)
	}
	return windward, leeward
}
