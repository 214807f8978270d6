package loadpath

import (
	"math"

	"galewright/plan"
	"galewright/plan/framing"
	"galewright/plan/geom"
	"galewright/plan/wind"
)

// extent is an upright rectangle on plan, in.
type extent struct{ lo, hi geom.Vec2 }

// axis returns the coordinate of v along axis 0 (x) or 1 (y).
func axis(v geom.Vec2, i int) float64 {
	if i == 0 {
		return v.X
	}
	return v.Y
}

func (e extent) span(i int) float64 { return axis(e.hi, i) - axis(e.lo, i) }

func (e *extent) hold(p geom.Vec2) {
	e.lo = geom.Vec2{X: math.Min(e.lo.X, p.X), Y: math.Min(e.lo.Y, p.Y)}
	e.hi = geom.Vec2{X: math.Max(e.hi.X, p.X), Y: math.Max(e.hi.Y, p.Y)}
}

func noExtent() extent {
	return extent{geom.Vec2{X: math.Inf(1), Y: math.Inf(1)}, geom.Vec2{X: math.Inf(-1), Y: math.Inf(-1)}}
}

// wallExtent returns the extent of the exterior walls that stand on or pass
// a level; nil level means all.
func wallExtent(p *plan.Plan, l *plan.Level) (extent, bool) {
	e, any := noExtent(), false
	for _, w := range p.Walls {
		if !w.Exterior || l != nil && (w.Level.Index > l.Index || topLevel(w).Index < l.Index) {
			continue
		}
		e.hold(w.From)
		e.hold(w.To)
		any = true
	}
	return e, any
}

// topLevel returns the level whose top the studs of w reach.
func topLevel(w *plan.Wall) *plan.Level {
	if w.ToLevel != nil {
		return w.ToLevel
	}
	return w.Level
}

// roofArea returns the outside faces of the walls under a roof.
func roofArea(p *plan.Plan, r *plan.Roof) extent {
	if r.Area[0] != r.Area[1] {
		return extent{r.Area[0], r.Area[1]}
	}
	e, _ := wallExtent(p, r.Over)
	return e
}

// covered returns the part of a roof's area that has the house's walls round
// it: what reaches over a porch is open below.
func (a *analysis) covered(r *plan.Roof) extent {
	e, ok := a.coveredBy[r]
	if ok {
		return e
	}
	e = roofArea(a.plan, r)
	if w, any := wallExtent(a.plan, r.Over); any {
		in := extent{
			geom.Vec2{X: math.Max(e.lo.X, w.lo.X), Y: math.Max(e.lo.Y, w.lo.Y)},
			geom.Vec2{X: math.Min(e.hi.X, w.hi.X), Y: math.Min(e.hi.Y, w.hi.Y)},
		}
		if in.span(0) > 0 && in.span(1) > 0 {
			e = in
		}
	}
	a.coveredBy[r] = e
	return e
}

// ridgeAxis returns 0 when the ridge (of a shed: the high wall) runs along x.
func ridgeAxis(r *plan.Roof) int {
	if r.Ridge == plan.AxisY {
		return 1
	}
	return 0
}

// angle returns the steeper roof angle of r, degrees.
func angle(r *plan.Roof) float64 {
	return math.Atan(math.Max(r.Pitch, r.PitchOther)/12) * 180 / math.Pi
}

// mainRoof returns the roof over the largest area.
func mainRoof(p *plan.Plan) (best *plan.Roof) {
	most := 0.0
	for _, r := range p.Roofs {
		e := roofArea(p, r)
		if a := e.span(0) * e.span(1); a > most+1e-6 {
			best, most = r, a
		}
	}
	return best
}

// basisOf takes the wind basis from the plan and the framed roof: mean roof
// height is half way from eave to ridge of the main roof, or the eave's to 10
// degrees (ASCE 7-16 26.2, transcribed).
func basisOf(h *framing.House) (wind.Basis, *plan.Roof) {
	s := h.Plan.Site
	b := wind.Basis{Edition: s.Edition, Speed: s.WindSpeed, Exposure: s.Exposure, Enclosure: s.Enclosure, Kzt: s.Kzt, Elevation: s.Elevation}
	all, _ := wallExtent(h.Plan, nil)
	r := mainRoof(h.Plan)
	if r == nil {
		b.Length, b.Width = math.Max(all.span(0), all.span(1))/12, math.Min(all.span(0), all.span(1))/12
		for _, l := range h.Plan.Levels {
			b.Height = math.Max(b.Height, l.Top()/12)
		}
		b.Eave = b.Height
		return b, nil
	}
	b.Theta = angle(r)
	b.Length, b.Width = all.span(ridgeAxis(r))/12, all.span(1-ridgeAxis(r))/12
	b.Eave = r.Over.Top() / 12
	b.Height = b.Eave
	if b.Theta > 10 {
		b.Height = (b.Eave + ridgeHeight(h, r)/12) / 2
	}
	return b, r
}

// ridgeHeight returns the highest point of a roof above grade, in.
func ridgeHeight(h *framing.House, r *plan.Roof) float64 {
	z := 0.0
	for _, f := range h.Roof {
		if f.Roof == r {
			for _, p := range f.Outline {
				z = math.Max(z, p.Z)
			}
		}
	}
	if z > 0 {
		return z
	}
	run := roofArea(h.Plan, r).span(1 - ridgeAxis(r))
	if r.Kind != plan.ShedRoof {
		run /= 2
	}
	return r.Over.Top() + run*r.Pitch/12
}
