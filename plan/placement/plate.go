package placement

import (
	"math"

	"galewright/plan"
	"galewright/plan/framing"
	"galewright/plan/geom"
)

// heights returns the lowest and highest point of a plate.
func heights(p geom.Plate) (lo, hi float64) {
	lo, hi = min(p.A.Z, p.B.Z), max(p.A.Z, p.B.Z)
	if hi-lo < touch && !geom.LiesFlat(p.N) {
		lo, hi = lo-p.Width/2, hi+p.Width/2
	}
	return lo, hi
}

// plane names the face a plate lies on: its normal and its distance from the
// origin, in eighths; of level faces also how the steel on it is turned, so that
// what lies square to each other is compared. Faces on both sides of an eighth can
// be flush: see overlaps.
type plane struct{ x, y, z, off, turn int32 }

// rect is a plate seen square to its face; u runs level, v up the face, off is how far
// the face is from the origin.
type rect struct{ u0, u1, v0, v1, off float64 }

// flush is how far apart two faces are at most that steel meets on, in.
const flush = 1.0 / 16

// beside returns the planes in which steel can be flush with that on p.
func (p plane) beside() [3]plane {
	below, above := p, p
	below.off--
	above.off++
	return [3]plane{p, below, above}
}

// near tells whether steel on q can be flush with that on p.
func (p plane) near(q plane) bool {
	d := q.off - p.off
	q.off = p.off
	return p == q && -1 <= d && d <= 1
}

// flat returns the plane of a plate and its rectangle there.
func flat(p geom.Plate) (plane, rect) {
	normal := p.N.Unit()
	across, turn := geom.Vec3{X: -normal.Y, Y: normal.X}, 0.0
	if across.Len() < geom.Eps {
		across = quarter(p.B.Sub(p.A))
		turn = across.X
	}
	across = across.Unit()
	up := normal.Cross(across)
	off := p.A.Dot(normal)
	face := rect{p.A.Dot(across), p.B.Dot(across), p.A.Dot(up), p.B.Dot(up), off}
	if face.u0 > face.u1 {
		face.u0, face.u1 = face.u1, face.u0
	}
	if face.v0 > face.v1 {
		face.v0, face.v1 = face.v1, face.v0
	}
	if face.v1-face.v0 >= face.u1-face.u0 {
		face.u0, face.u1 = face.u0-p.Width/2, face.u1+p.Width/2
	} else {
		face.v0, face.v1 = face.v0-p.Width/2, face.v1+p.Width/2
	}
	rounded := func(v float64) int32 { return int32(math.Round(v * 1000)) }
	return plane{rounded(normal.X), rounded(normal.Y), rounded(normal.Z), int32(math.Round(off * 8)), rounded(turn)}, face
}

// quarter returns the level direction square to d, turned by right angles until
// it points between east and, not included, north of it: one for all steel
// that lies along or across d.
func quarter(d geom.Vec3) geom.Vec3 {
	d = geom.Vec3{X: d.X, Y: d.Y}.Unit()
	if d.Len() < geom.Eps {
		return geom.Vec3{Y: -1}
	}
	for d.X < geom.Eps || d.Y < -geom.Eps {
		d = geom.Vec3{X: -d.Y, Y: d.X}
	}
	return geom.Vec3{X: d.Y, Y: -d.X}
}

// overlaps tells whether two rectangles on faces flush to a sixteenth share more than an
// eighth of an inch both ways.
func (r rect) overlaps(s rect) bool {
	const tol = 1.0 / 8
	return math.Abs(r.off-s.off) < flush+geom.Eps && min(r.u1, s.u1)-max(r.u0, s.u0) > tol && min(r.v1, s.v1)-max(r.v0, s.v0) > tol
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

// runsAlong tells whether a member runs along its wall: a joint is at one
// place of it.
func runsAlong(m *framing.Member) bool {
	return !geom.Upright(m.B.Sub(m.A).Unit())
}

// spread returns where w goes across its face, among the n beside each other.
func (w want) spread() float64 { return spread(w.k, w.n, w.wide()) }

// breadthAt returns the stations between which a member stands on the joint's
// wall; of one that lies along it, those of the joint's own place.
func breadthAt(j *framing.Joint, m *framing.Member) (s0, s1 float64) {
	if m != nil && m.Wall != nil && m.Wall == j.Wall && !runsAlong(m) {
		return m.S0, m.S1
	}
	b := 1.5
	if m != nil && m.Section.Breadth > 0 {
		b = m.Section.Width()
	}
	return j.Station - b/2, j.Station + b/2
}
