package framing

import (
	"math"

	"galewright/plan/geom"
)

// body is a straight thing with square ends on plan: a wall, a plate or a
// rim. It lies between stations s0 and s1 and depths 0 and d of its frame.
type body struct {
	f         geom.Frame
	s0, s1, d float64
}

// corners returns the body's outline, counterclockwise.
func (b body) corners() []geom.Vec2 {
	return []geom.Vec2{
		b.f.At(b.s0, 0, 0).Flat(), b.f.At(b.s1, 0, 0).Flat(),
		b.f.At(b.s1, b.d, 0).Flat(), b.f.At(b.s0, b.d, 0).Flat(),
	}
}

// crossing returns the stations of b between which the outline of o lies in
// b's endless strip; ok is false when it lies beside it.
func (b body) crossing(o body) (lo, hi float64, ok bool) {
	local := make([]geom.Vec2, 0, 4)
	for _, p := range o.corners() {
		s, t := b.f.Local(p)
		local = append(local, geom.Vec2{X: s, Y: t})
	}
	const hair = 1e-4 // bodies that only touch do not cross
	local = clip2(local, geom.Vec2{Y: -1}, -hair)
	local = clip2(local, geom.Vec2{Y: 1}, b.d-hair)
	lo, hi = math.Inf(1), math.Inf(-1)
	for _, p := range local {
		lo, hi = min(lo, p.X), max(hi, p.X)
	}
	return lo, hi, len(local) > 2
}

// clip2 returns the part of a convex outline where n·p <= c.
func clip2(loop []geom.Vec2, n geom.Vec2, c float64) (out []geom.Vec2) {
	for i, p := range loop {
		q := loop[(i+1)%len(loop)]
		dp, dq := n.Dot(p)-c, n.Dot(q)-c
		if dp <= 0 {
			out = append(out, p)
		}
		if dp < 0 && dq > 0 || dp > 0 && dq < 0 {
			out = append(out, p.Add(q.Sub(p).Mul(dp/(dp-dq))))
		}
	}
	return out
}

// inLine tells whether the two run so nearly the same way.
func (b body) inLine(o body) bool { return geom.InLine(b.f.D, o.f.D) }

// throughStop returns the station at which b's start or tail must end when b
// runs through at a corner with o: as far as it can go, cut square, without
// passing the face of o that it comes to last.
func (b body) throughStop(o body, tail bool) float64 {
	out := b.f.D
	if !tail {
		out = out.Mul(-1)
	}
	n, p := o.f.In, o.f.At(0, o.d, 0).Flat() // far face is o's inner one
	if out.Dot(n) < 0 {
		n, p = n.Mul(-1), o.f.Origin
	}
	stop := math.Inf(1)
	for _, t := range []float64{0, b.d} {
		edge := b.f.At(0, t, 0).Flat()
		stop = min(stop, n.Dot(p.Sub(edge))/n.Dot(out)) // travel along out
	}
	if !tail {
		return 0 - stop // never minus zero
	}
	return stop
}

// buttStop returns the station at which b's start or tail must end to touch
// o without reaching into it; ok is false when o is not in its way.
func (b body) buttStop(o body, tail bool) (float64, bool) {
	lo, hi, ok := b.crossing(o)
	if tail {
		return lo, ok
	}
	return hi, ok
}

// faces returns the stations of b at which the outer (t = 0) and inner face
// of o meet b's own face at depth t.
func (b body) faces(o body, t float64) (outer, inner float64) {
	edge := b.f.At(0, t, 0).Flat()
	k := o.f.In.Dot(b.f.D)
	outer = o.f.In.Dot(o.f.Origin.Sub(edge)) / k
	inner = outer + o.d/k
	return outer, inner
}
