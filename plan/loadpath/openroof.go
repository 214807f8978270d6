package loadpath

import (
	"math"
	"slices"

	"galewright/plan"
	"galewright/plan/wind"
)

// openRoof is a roof with no walls below, as of a porch on posts, in one wind
// case: net coefficients of a free roof, positive up, gust in them, as parts of
// the q of the case.
type openRoof struct {
	edge, mid float64   // windward edge and middle along the wind, coordinates
	bounds    []float64 // in from the edge
	across    bool
	halves    []openCase // wind across ridge or eaves: windward, leeward half
	strips    []openCase // wind along them: by distance
	// hip are the cases of the slope at a shed's hip end, around the corner: wind across the
	// one side of a porch is wind along the other, and no figure has the corner.
	hip []openCase
}

// openCase is one case of the figures.
type openCase struct {
	name string
	up   []float64
}

// openCase returns the cases of an open roof. They are run for a porch roof
// that leans on a house too, whose underside the house's windward wall
// presses on: of the two readings the larger uplift is taken place by place.
func (m *model) openCase(c windCase, r *plan.Roof, area extent) *openRoof {
	q := m.q
	if c.proc == plan.Directional {
		q = m.basis.Direct().QKd
	}
	k := -wind.Gust * m.basis.Direct().QKd / q
	o := &openRoof{across: c.axis != r.RidgeAxis()}
	lo, hi := axis(area.lo, c.axis), axis(area.hi, c.axis)
	o.edge, o.mid = lo, (lo+hi)/2
	if c.sign < 0 {
		o.edge = hi
	}
	o.bounds = []float64{12 * m.basis.Height, 24 * m.basis.Height}
	for _, f := range wind.FreeAlong() {
		o.strips = append(o.strips, openCase{"free roof, case " + f.Case, []float64{k * f.CN[0], k * f.CN[1], k * f.CN[2]}})
	}
	for _, f := range wind.FreeSlope(r.Kind, math.Min(r.Angle(), wind.FreeTheta), meetsHigh(r, c)) {
		o.halves = append(o.halves, openCase{"free roof, case " + f.Case, []float64{k * f.Windward, k * f.Lee}})
	}
	if r.Kind == plan.ShedRoof && slices.Contains(r.GableEnd[:], plan.HipEnd) {
		o.hip = slices.Concat(o.strips, o.halves)
		for _, high := range []bool{false, true} {
			for _, f := range wind.FreeSlope(r.Kind, math.Min(r.Angle(), wind.FreeTheta), high) {
				o.hip = append(o.hip, openCase{"free roof around a corner, case " + f.Case, []float64{k * f.Windward, k * f.Lee}})
			}
		}
	}
	return o
}

// meetsHigh tells whether the wind meets a shed roof's high side.
func meetsHigh(r *plan.Roof, c windCase) bool { return string(r.High) == from(c.axis, c.sign) }

// free returns the largest net uplift coefficient of an open roof on a
// stretch of a strip, and its case.
func (rc roofCase) free(s *strip, u0, u1 float64) (up float64, name string) {
	o := rc.open
	x0, x1 := s.From, s.To
	if s.Up.Mainly(rc.wind.axis) {
		x0, x1 = axis(s.At(u0), rc.wind.axis), axis(s.At(u1), rc.wind.axis)
	}
	if rc.shed && s.slopesAlong() {
		return o.hipMost()
	}
	list, bounds := o.strips, o.bounds
	if o.across {
		list, bounds = o.halves, []float64{math.Abs(o.mid - o.edge)}
	}
	up = math.Inf(-1)
	for _, c := range list {
		if f := stripMean(o.edge, rc.wind.sign, bounds, c.up, x0, x1); f > up {
			up, name = f, c.name
		}
	}
	return up, name
}

// hipMost returns the largest net uplift coefficient of the slope at a shed's hip end, and
// its case: that of any part of any case.
func (o *openRoof) hipMost() (up float64, name string) {
	up = math.Inf(-1)
	for _, c := range o.hip {
		if f := slices.Max(c.up); f > up {
			up, name = f, c.name
		}
	}
	return up, name
}
