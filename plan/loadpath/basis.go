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
func axis(v geom.Vec2, i int) float64 { return v.Along(i) }

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
		if !w.Exterior || l != nil && !w.On(l) {
			continue
		}
		e.hold(w.From)
		e.hold(w.To)
		any = true
	}
	return e, any
}

// roofArea returns the outside faces of the walls under a roof.
func roofArea(p *plan.Plan, r *plan.Roof) extent {
	if r.Area[0] != r.Area[1] {
		return extent{r.Area[0], r.Area[1]}
	}
	e, _ := wallExtent(p, r.Over)
	return e
}

// hair is how far a roof reaches over the house when it only ends at its wall, in: what
// rounding leaves of lengths in millimeters.
const hair = 0.01

// walledArea returns the part of a roof's area that has the house's walls
// round it: what reaches over a porch is open below. A roof with none is open
// all over, and its whole area comes back.
func walledArea(p *plan.Plan, r *plan.Roof) (e extent, open bool) {
	e = roofArea(p, r)
	w, any := wallExtent(p, r.Over)
	if !any {
		return e, true
	}
	in := extent{
		geom.Vec2{X: math.Max(e.lo.X, w.lo.X), Y: math.Max(e.lo.Y, w.lo.Y)},
		geom.Vec2{X: math.Min(e.hi.X, w.hi.X), Y: math.Min(e.hi.Y, w.hi.Y)},
	}
	if in.span(0) > hair && in.span(1) > hair {
		return in, false
	}
	return e, true
}

// chosen returns the procedures that a house is worked out by.
func chosen(h *framing.House, b wind.Basis) (wind.Choice, error) {
	var kinds []plan.RoofKind
	for _, r := range h.Plan.Roofs {
		if _, open := walledArea(h.Plan, r); !open {
			kinds = append(kinds, r.Kind)
		}
	}
	return b.Choose(h.Plan.Site.Procedure, kinds)
}

// basisOf takes the wind basis from the plan and the framed house, with the
// roof that mean height and angle are of.
func basisOf(h *framing.House) (wind.Basis, *plan.Roof) {
	s, size := h.Plan.Site, h.Size()
	b := wind.Basis{Edition: s.Edition, Speed: s.WindSpeed, Exposure: s.Exposure, Enclosure: s.Enclosure, Kzt: s.Kzt, Elevation: s.Elevation, Units: h.Plan.Project.Units}
	b.Length, b.Width, b.Eave, b.Height = size.Length/12, size.Width/12, size.Eave/12, size.Mean/12
	if size.Main != nil {
		b.Theta = size.Main.Angle()
	}
	return b, size.Main
}
