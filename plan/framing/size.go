package framing

import (
	"math"

	"galewright/plan"
	"galewright/plan/geom"
)

// Size is a house as the wind meets it.
type Size struct {
	Main          *plan.Roof // the roof over the largest area; nil without one
	Length, Width float64    // of the exterior walls along and across the main ridge, in; 0 without walls
	Eave          float64    // height of the main roof's plates above grade, in
	// Mean is the mean roof height above grade, in: half way from eave to
	// ridge of the main roof, or the eave's to 10 degrees (ASCE 7-16 26.2, from memory).
	Mean float64
}

// Size measures the house.
func (h *House) Size() Size {
	lo, hi := h.exterior()
	x, y := max(0, hi.X-lo.X), max(0, hi.Y-lo.Y)
	s := Size{Main: h.mainRoof()}
	if s.Main == nil {
		s.Length, s.Width = max(x, y), min(x, y)
		for _, l := range h.Plan.Levels {
			s.Eave = max(s.Eave, l.Top())
		}
		s.Mean = s.Eave
		return s
	}
	s.Length, s.Width = x, y
	if s.Main.RidgeAxis() == 1 {
		s.Length, s.Width = y, x
	}
	s.Eave = s.Main.Over.Top()
	s.Mean = s.Eave
	if s.Main.Angle() > 10 {
		s.Mean = (s.Eave + h.RidgeHeight(s.Main)) / 2
	}
	return s
}

// exterior returns the extent of the exterior walls.
func (h *House) exterior() (lo, hi geom.Vec2) {
	lo, hi = geom.Vec2{X: math.Inf(1), Y: math.Inf(1)}, geom.Vec2{X: math.Inf(-1), Y: math.Inf(-1)}
	for _, w := range h.Plan.Walls {
		if !w.Exterior {
			continue
		}
		for _, p := range []geom.Vec2{w.From, w.To} {
			lo = geom.Vec2{X: min(lo.X, p.X), Y: min(lo.Y, p.Y)}
			hi = geom.Vec2{X: max(hi.X, p.X), Y: max(hi.Y, p.Y)}
		}
	}
	return lo, hi
}

// mainRoof returns the roof over the largest area.
func (h *House) mainRoof() (best *plan.Roof) {
	most := 0.0
	for _, r := range h.Plan.Roofs {
		size := r.Area[1].Sub(r.Area[0])
		if a := size.X * size.Y; a > most+1e-6 {
			best, most = r, a
		}
	}
	return best
}

// FacesOver returns the faces of a roof; of a shed that goes on in the plane of another, as
// around the corner of a porch, the one over its middle.
func (h *House) FacesOver(r *plan.Roof) (out []*Face) {
	for _, f := range h.Roof {
		if f.Roof == r {
			out = append(out, f)
		}
	}
	if len(out) > 0 || r.Kind != plan.ShedRoof {
		return out
	}
	mid := r.Area[0].Add(r.Area[1]).Mul(0.5)
	for _, f := range h.Roof {
		ring := make([]geom.Vec2, len(f.Outline))
		for i, p := range f.Outline {
			ring[i] = p.Flat()
		}
		if f.Roof.Over == r.Over && f.Roof.Kind == r.Kind && contains(ring, mid) {
			out = append(out, f)
		}
	}
	return out
}

// RidgeHeight returns the highest point of a roof above grade, in.
func (h *House) RidgeHeight(r *plan.Roof) float64 {
	z := 0.0
	for _, f := range h.FacesOver(r) {
		for _, p := range f.Outline {
			z = max(z, p.Z)
		}
	}
	if z > 0 {
		return z
	}
	run := r.Area[1].Sub(r.Area[0]).Along(1 - r.RidgeAxis())
	if r.Kind != plan.ShedRoof {
		run /= 2
	}
	return r.Over.Top() + run*r.Pitch/12
}

// EaveHeight returns how high the lowest edge of a roof lies over grade, its overhang
// with it, in; the plates under it where it has no faces.
func (h *House) EaveHeight(r *plan.Roof) float64 {
	z := math.Inf(1)
	for _, f := range h.FacesOver(r) {
		for _, p := range f.Outline {
			z = min(z, p.Z)
		}
	}
	if math.IsInf(z, 1) {
		return r.Over.Top()
	}
	return z
}
