package framing

import (
	"math"

	"galewright/plan/geom"
)

// bar is a sloping stick that stands on edge, such as a rafter: a vertical
// slab along a line on plan. u runs along the plan line from the low end.
type bar struct {
	at    geom.Vec2 // plan point of u = 0, in the middle of the thickness
	dir   geom.Vec2 // uphill, unit
	top   float64   // height of the top edge over u = 0
	rise  float64   // of the top edge per inch of u
	depth float64   // square to the top edge
	half  float64   // half of the thickness
}

// plumb returns the depth measured plumb.
func (r bar) plumb() float64 { return r.depth * cosInv(r.rise) }

// height returns the top edge's height over u.
func (r bar) height(u float64) float64 { return r.top + r.rise*u }

// point returns the point of the top edge over u.
func (r bar) point(u float64) geom.Vec3 { return r.at.Add(r.dir.Mul(u)).Up(r.height(u)) }

// u returns the plan distance of p along the bar.
func (r bar) u(p geom.Vec2) float64 { return p.Sub(r.at).Dot(r.dir) }

// axis returns the direction of the top edge, unit.
func (r bar) axis() geom.Vec3 { return r.dir.Up(r.rise).Unit() }

// solid returns the bar from u0 to u1 with plumb cuts.
func (r bar) solid(u0, u1 float64) geom.Solid {
	left := r.dir.Left().Mul(r.half).Up(0)
	drop := geom.Vec3{Z: r.plumb()}
	a, b := r.point(u0).Sub(left), r.point(u1).Sub(left)
	return geom.Prism([]geom.Vec3{a.Sub(drop), b.Sub(drop), b, a}, left.Mul(2))
}

// column returns the plan of the bar as a slab one inch high about z = 0:
// what overlaps on plan overlaps as columns.
func (r bar) column(u0, u1 float64) geom.Solid {
	return column(geom.Frame{Origin: r.at, D: r.dir, In: r.dir.Left()}, u0, u1, -r.half, r.half)
}

// before returns the vertical half space of plan points up to u.
func (r bar) before(u float64) geom.Plane {
	return geom.Plane{N: r.dir.Up(0), C: r.dir.Dot(r.at) + u}
}

// after returns the vertical half space of plan points from u on.
func (r bar) after(u float64) geom.Plane { return flip(r.before(u)) }

// flip returns the other side of a plane.
func flip(p geom.Plane) geom.Plane { return geom.Plane{N: p.N.Mul(-1), C: -p.C} }

// beside returns the vertical half space beside the bar on the side of p.
func (r bar) beside(p geom.Vec2) geom.Plane {
	n := r.dir.Left()
	if n.Dot(p.Sub(r.at)) > 0 {
		n = n.Mul(-1)
	}
	return geom.Plane{N: n.Up(0), C: n.Dot(r.at) - r.half}
}

// clipTo returns s cut by all planes.
func clipTo(s geom.Solid, planes []geom.Plane) geom.Solid {
	for _, p := range planes {
		s = s.Clip(p)
	}
	return s
}

// extent returns the part of u0..u1 where the bar's middle line lies within
// all planes, which must be vertical.
func (r bar) extent(u0, u1 float64, planes []geom.Plane) (lo, hi float64) {
	lo, hi = u0, u1
	for _, p := range planes {
		k := p.N.Flat().Dot(r.dir)
		if math.Abs(k) < 1e-9 {
			continue
		}
		at := (p.C - p.N.Flat().Dot(r.at)) / k
		if k > 0 {
			hi = min(hi, at)
		} else {
			lo = max(lo, at)
		}
	}
	return lo, hi
}

// endless is longer than any house, in.
const endless = 1e5

// box returns a box about z = 0 that holds the plan of the bar cut by
// vertical planes, and a little more.
func (r bar) box(planes []geom.Plane) (lo, hi geom.Vec3) {
	u0, u1 := r.extent(-endless, endless, planes)
	more := geom.Vec2{X: 3*r.half + 1, Y: 3*r.half + 1}
	a, b := r.at.Add(r.dir.Mul(u0)), r.at.Add(r.dir.Mul(u1))
	lo = geom.Vec2{X: min(a.X, b.X), Y: min(a.Y, b.Y)}.Sub(more).Up(-1)
	hi = geom.Vec2{X: max(a.X, b.X), Y: max(a.Y, b.Y)}.Add(more).Up(1)
	return lo, hi
}

// notch is a cut from below: over u0..u1 nothing of the bar is under z.
type notch struct{ u0, u1, z float64 }

// deep returns how far the notch cuts into the bar, square to it: to its
// corner at the low end.
func (n notch) deep(r bar) float64 { return (n.z - r.height(n.u0) + r.plumb()) / cosInv(r.rise) }

// notchOver returns the notch that lets the bar, cut by planes, down over a
// rectangle whose top is at z: the rectangle is clipped against the bar's own
// plan, so that the cut is square to the bar however it crosses the wall.
func (r bar) notchOver(rect geom.Solid, z float64, planes []geom.Plane) (n notch, ok bool) {
	lo, hi, ok := r.over(rect, planes)
	if !ok {
		return n, false
	}
	under := r.height(lo) - r.plumb()
	if under > z-geom.Eps {
		return n, false
	}
	if r.rise > 1e-9 {
		hi = min(hi, lo+(z-under)/r.rise)
	}
	return notch{lo, hi, z}, hi > lo+geom.Eps
}

// over returns between which u the bar, cut by vertical planes, lies over a
// rectangle.
func (r bar) over(rect geom.Solid, planes []geom.Plane) (lo, hi float64, ok bool) {
	left := r.dir.Left()
	if a, b := rect.Along(left.Up(0)); a > left.Dot(r.at)+r.half || b < left.Dot(r.at)-r.half {
		return 0, 0, false
	}
	in := clipTo(rect.Clip(r.side(1)).Clip(r.side(-1)), planes)
	if in.Empty() || in.Volume() < 1e-6 {
		return 0, 0, false
	}
	lo, hi = in.Along(r.dir.Up(0))
	base := r.at.Dot(r.dir)
	return lo - base, hi - base, true
}

// planes returns the space the notch takes from a bar.
func (n notch) planes(r bar) []geom.Plane {
	return []geom.Plane{r.after(n.u0), r.before(n.u1), {N: geom.Vec3{Z: 1}, C: n.z}}
}

// side returns the half space within the left (1) or right (−1) face.
func (r bar) side(k float64) geom.Plane {
	n := r.dir.Left().Mul(k)
	return geom.Plane{N: n.Up(0), C: n.Dot(r.at) + r.half}
}

// cut returns the bar from u0 to u1, cut by planes, less the spaces that are
// each inside all of some planes: convex parts that touch.
func (r bar) cut(u0, u1 float64, planes []geom.Plane, less [][]geom.Plane) []geom.Solid {
	s := clipTo(r.solid(u0, u1), planes)
	if s.Empty() {
		return nil
	}
	parts := []geom.Solid{s}
	for _, space := range less {
		parts = geom.Carve(parts, space)
	}
	return parts
}

// span returns the extent of solids along the bar's axis, in: long point to
// long point, what the piece of stock must have.
func (r bar) span(parts []geom.Solid) float64 {
	lo, hi := math.Inf(1), math.Inf(-1)
	for _, s := range parts {
		a, b := s.Along(r.axis())
		lo, hi = min(lo, a), max(hi, b)
	}
	return max(hi-lo, 0)
}

// stockDepths are the dressed depths of 2-by lumber, in (PS 20).
var stockDepths = []float64{3.5, 5.5, 7.25, 9.25, 11.25, 13.25, 15.25}

// deeper returns the next stock depth over d, in.
func deeper(d float64) float64 {
	for _, s := range stockDepths {
		if s > d+geom.Eps {
			return s
		}
	}
	return d
}
