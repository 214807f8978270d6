package geom

import (
	"cmp"
	"math"
	"slices"
)

// Plane is the half space of points p with N·p <= C. N need not be unit, but
// Clip's tolerance is then in units of N.
type Plane struct {
	N Vec3
	C float64
}

// PlaneAt returns the half space that lies behind point p against normal n.
func PlaneAt(p, n Vec3) Plane { n = n.Unit(); return Plane{n, n.Dot(p)} }

// Solid is a convex polyhedron: its faces as loops of points, each loop
// counterclockwise seen from outside. The zero Solid is empty.
type Solid struct{ Faces [][]Vec3 }

// Box returns the parallelepiped with one corner at o and edges u, v, w.
func Box(o, u, v, w Vec3) Solid {
	return Prism([]Vec3{o, o.Add(u), o.Add(u).Add(v), o.Add(v)}, w)
}

// Prism returns the convex planar polygon base swept along ext. The turning
// sense of base does not matter.
func Prism(base []Vec3, ext Vec3) Solid {
	if normal(base).Dot(ext) < 0 {
		base = slices.Clone(base)
		slices.Reverse(base)
	}
	n := len(base)
	top := make([]Vec3, n)
	for i, p := range base {
		top[i] = p.Add(ext)
	}
	s := Solid{Faces: make([][]Vec3, 0, n+2)}
	for i := range base {
		j := (i + 1) % n
		s.Faces = append(s.Faces, []Vec3{base[i], base[j], top[j], top[i]})
	}
	bottom := slices.Clone(base)
	slices.Reverse(bottom)
	s.Faces = append(s.Faces, bottom, top)
	return s
}

// normal returns the (unnormalized) normal of a planar loop by Newell's method.
func normal(loop []Vec3) (n Vec3) {
	for i, a := range loop {
		n = n.Add(a.Cross(loop[(i+1)%len(loop)]))
	}
	return n
}

// Moved returns the solid moved by v.
func (s Solid) Moved(v Vec3) (out Solid) {
	for _, face := range s.Faces {
		var moved []Vec3
		for _, p := range face {
			moved = append(moved, p.Add(v))
		}
		out.Faces = append(out.Faces, moved)
	}
	return out
}

// Empty tells whether nothing is left of s.
func (s Solid) Empty() bool { return len(s.Faces) == 0 }

// Points calls f with every corner; corners shared by faces come repeatedly.
func (s Solid) Points(f func(Vec3)) {
	for _, loop := range s.Faces {
		for _, p := range loop {
			f(p)
		}
	}
}

// Bounds returns the axis-aligned extent of s.
func (s Solid) Bounds() (lo, hi Vec3) {
	lo = Vec3{math.Inf(1), math.Inf(1), math.Inf(1)}
	hi = lo.Mul(-1)
	s.Points(func(p Vec3) {
		lo = Vec3{min(lo.X, p.X), min(lo.Y, p.Y), min(lo.Z, p.Z)}
		hi = Vec3{max(hi.X, p.X), max(hi.Y, p.Y), max(hi.Z, p.Z)}
	})
	return lo, hi
}

// Clip returns the part of s inside p.
func (s Solid) Clip(p Plane) Solid {
	var out Solid
	var rim []Vec3
	for _, loop := range s.Faces {
		kept := clipLoop(loop, p, &rim)
		if len(kept) >= 3 {
			out.Faces = append(out.Faces, kept)
		}
	}
	if len(out.Faces) < 3 {
		return Solid{}
	}
	if lid := hull(rim, p.N); len(lid) >= 3 {
		out.Faces = append(out.Faces, lid)
	}
	return out
}

// clipLoop is Sutherland and Hodgman's step for one plane; points on the
// plane are gathered in rim.
func clipLoop(loop []Vec3, p Plane, rim *[]Vec3) (kept []Vec3) {
	crossed := false
	var on []Vec3
	for i, a := range loop {
		b := loop[(i+1)%len(loop)]
		da, db := p.N.Dot(a)-p.C, p.N.Dot(b)-p.C
		if da <= Eps {
			kept = append(kept, a)
		} else {
			crossed = true
		}
		if math.Abs(da) <= Eps {
			on = append(on, a)
		}
		if (da < -Eps && db > Eps) || (da > Eps && db < -Eps) {
			m := a.Add(b.Sub(a).Mul(da / (da - db)))
			kept, on = append(kept, m), append(on, m)
		}
	}
	if crossed {
		*rim = append(*rim, on...)
	}
	return kept
}

// hull orders the coplanar points of a convex outline counterclockwise about
// n and drops doubles.
func hull(pts []Vec3, n Vec3) []Vec3 {
	var uniq []Vec3
	for _, p := range pts {
		if !slices.ContainsFunc(uniq, func(q Vec3) bool { return q.Sub(p).Len() < 10*Eps }) {
			uniq = append(uniq, p)
		}
	}
	if len(uniq) < 3 {
		return nil
	}
	var c Vec3
	for _, p := range uniq {
		c = c.Add(p.Mul(1 / float64(len(uniq))))
	}
	u := uniq[0].Sub(c).Unit()
	v := n.Unit().Cross(u)
	angle := func(p Vec3) float64 { d := p.Sub(c); return math.Atan2(d.Dot(v), d.Dot(u)) }
	slices.SortFunc(uniq, func(a, b Vec3) int { return cmp.Compare(angle(a), angle(b)) })
	return uniq
}

// Volume returns the volume of s, in³.
func (s Solid) Volume() (v float64) {
	for _, f := range s.Faces {
		for i := 2; i < len(f); i++ {
			v += f[0].Dot(f[i-1].Cross(f[i])) / 6
		}
	}
	return v
}

// Overlap tells whether a and b share more than tol inches of depth in every
// direction, by the separating axis theorem over face normals and the cross
// products of edges. Solids that only touch do not overlap.
func Overlap(a, b Solid, tol float64) bool {
	if a.Empty() || b.Empty() {
		return false
	}
	alo, ahi := a.Bounds()
	blo, bhi := b.Bounds()
	if ahi.X-blo.X <= tol || bhi.X-alo.X <= tol || ahi.Y-blo.Y <= tol || bhi.Y-alo.Y <= tol ||
		ahi.Z-blo.Z <= tol || bhi.Z-alo.Z <= tol {
		return false
	}
	na, ea := a.axes()
	nb, eb := b.axes()
	for _, n := range append(slices.Clone(na), nb...) {
		if depth(a, b, n) <= tol {
			return false
		}
	}
	for _, u := range ea {
		for _, v := range eb {
			if n := u.Cross(v); n.Len() > 1e-6 && depth(a, b, n.Unit()) <= tol {
				return false
			}
		}
	}
	return true
}

// axes returns the distinct face normals and edge directions of s, unit.
func (s Solid) axes() (normals, edges []Vec3) {
	for _, f := range s.Faces {
		normals = addAxis(normals, normal(f))
		for i, p := range f {
			edges = addAxis(edges, f[(i+1)%len(f)].Sub(p))
		}
	}
	return normals, edges
}

func addAxis(list []Vec3, v Vec3) []Vec3 {
	if v.Len() < Eps {
		return list
	}
	v = v.Unit()
	if slices.ContainsFunc(list, func(w Vec3) bool { return math.Abs(w.Dot(v)) > 1-1e-12 }) {
		return list
	}
	return append(list, v)
}

// depth returns how deep a and b reach into each other along the unit n.
func depth(a, b Solid, n Vec3) float64 {
	alo, ahi := a.along(n)
	blo, bhi := b.along(n)
	return min(ahi-blo, bhi-alo)
}

func (s Solid) along(n Vec3) (lo, hi float64) {
	lo, hi = math.Inf(1), math.Inf(-1)
	s.Points(func(p Vec3) {
		d := p.Dot(n)
		lo, hi = min(lo, d), max(hi, d)
	})
	return lo, hi
}
