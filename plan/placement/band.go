package placement

import (
	"math"

	"galewright/plan"
	"galewright/plan/framing"
	"galewright/plan/geom"
)

// band is a straight stretch of steel on one face: its center line, its
// width, and the normal of the face it lies on.
type band struct {
	n     geom.Vec3
	a, b  geom.Vec3
	width float64
}

// heights returns the lowest and highest point of the band.
func (b band) heights() (lo, hi float64) {
	lo, hi = min(b.a.Z, b.b.Z), max(b.a.Z, b.b.Z)
	if hi-lo < touch && math.Abs(b.n.Z) < 0.5 {
		lo, hi = lo-b.width/2, hi+b.width/2
	}
	return lo, hi
}

// plane names the face a band lies on: its normal and its distance from the
// origin, rounded so that faces flush to a sixteenth are one.
type plane struct{ x, y, z, off int32 }

// rect is a band seen square to its face; u runs level, v up the face.
type rect struct{ u0, u1, v0, v1 float64 }

// flat returns the plane of a band and its rectangle there.
func (b band) flat() (plane, rect) {
	n := b.n.Unit()
	e1 := geom.Vec3{X: -n.Y, Y: n.X}
	if e1.Len() < 1e-3 {
		d := b.b.Sub(b.a)
		if d.X < -touch || math.Abs(d.X) <= touch && d.Y < 0 {
			d = d.Mul(-1)
		}
		e1 = geom.Vec3{X: 1}
		if d.Len() > touch {
			e1 = geom.Vec3{X: d.Y, Y: -d.X}
		}
	}
	e1 = e1.Unit()
	e2 := n.Cross(e1)
	r := rect{b.a.Dot(e1), b.b.Dot(e1), b.a.Dot(e2), b.b.Dot(e2)}
	if r.u0 > r.u1 {
		r.u0, r.u1 = r.u1, r.u0
	}
	if r.v0 > r.v1 {
		r.v0, r.v1 = r.v1, r.v0
	}
	if r.v1-r.v0 >= r.u1-r.u0 {
		r.u0, r.u1 = r.u0-b.width/2, r.u1+b.width/2
	} else {
		r.v0, r.v1 = r.v0-b.width/2, r.v1+b.width/2
	}
	k := func(v float64) int32 { return int32(math.Round(v * 1000)) }
	return plane{k(n.X), k(n.Y), k(n.Z), int32(math.Round(b.a.Dot(n) * 8))}, r
}

// overlaps tells whether two rectangles share more than an eighth of an inch
// both ways.
func (r rect) overlaps(s rect) bool {
	const tol = 1.0 / 8
	return min(r.u1, s.u1)-max(r.u0, s.u0) > tol && min(r.v1, s.v1)-max(r.v0, s.v0) > tol
}

// facing is one face of an upright member in a wall: a point in the middle of
// the face (station, depth), its normal, and the level direction along it.
type facing struct {
	f         geom.Frame
	s, t      float64
	n, across geom.Vec3
	breadth   float64
}

// facingOf returns the named face of what stands between stations s0 and s1
// of a wall's frame, depth in deep; what is not beside it (top, through, or
// not chosen yet) is measured on the outside.
func facingOf(f geom.Frame, s0, s1, depth float64, face plan.Face) facing {
	d, in := f.D.Up(0), f.In.Up(0)
	mid := (s0 + s1) / 2
	switch face {
	case plan.Inside:
		return facing{f, mid, depth, in, d, s1 - s0}
	case plan.Left:
		return facing{f, s0, depth / 2, d.Mul(-1), in, depth}
	case plan.Right:
		return facing{f, s1, depth / 2, d, in, depth}
	}
	return facing{f, mid, 0, in.Mul(-1), d, s1 - s0}
}

// at returns the point of the face at height z, off along it.
func (g facing) at(z, off float64) geom.Vec3 { return g.f.At(g.s, g.t, z).Add(g.across.Mul(off)) }

// spread returns where the kth of n pieces of a width goes, from the middle
// of the face, with an eighth of an inch between two.
func spread(k, n int, width float64) float64 {
	return (float64(k) - float64(n-1)/2) * (width + 0.125)
}

// lies tells whether a member runs along its wall: a joint is at one place of
// it.
func lies(m *framing.Member) bool {
	d := m.B.Sub(m.A)
	return d.Flat().Len() > math.Abs(d.Z)
}

// span2 returns the stations between which a member stands on the joint's
// wall; of one that lies along it, those of the joint's own place.
func span2(j *framing.Joint, m *framing.Member) (s0, s1 float64) {
	if m != nil && m.Wall != nil && m.Wall == j.Wall && !lies(m) {
		return m.S0, m.S1
	}
	b := 1.5
	if m != nil && m.Section.Breadth > 0 {
		b = m.Section.Width()
	}
	return j.Station - b/2, j.Station + b/2
}
