package roofplan

import (
	"cmp"
	"slices"

	"galewright/plan/geom"
)

// snap is the tolerance, in, within which two corners of faces are one.
const snap = 1e-4

// near is how far, in, lines and their ends may be from each other that meet: what
// crosses them is worked out from corners that are each off by up to snap.
const near = 10 * snap

// Area returns the signed area of a polygon, in²; positive counterclockwise.
func Area(p []geom.Vec2) (a float64) {
	for i, q := range p {
		a += q.Cross(p[(i+1)%len(p)]) / 2
	}
	return a
}

// clip returns the part of the convex polygon p where n·q <= c.
func clip(p []geom.Vec2, n geom.Vec2, c float64) (out []geom.Vec2) {
	l := n.Len()
	if l < 1e-12 {
		if c >= 0 {
			return p
		}
		return nil
	}
	n, c = n.Mul(1/l), c/l
	for i, a := range p {
		b := p[(i+1)%len(p)]
		da, db := n.Dot(a)-c, n.Dot(b)-c
		if da <= geom.Eps {
			out = append(out, a)
		}
		if (da < -geom.Eps && db > geom.Eps) || (da > geom.Eps && db < -geom.Eps) {
			out = append(out, a.Add(b.Sub(a).Mul(da/(da-db))))
		}
	}
	if Area(out) < snap {
		return nil
	}
	return out
}

// inside returns the half plane to the left of edge i of p: n·q <= c.
func inside(p []geom.Vec2, i int) (n geom.Vec2, c float64) {
	a, b := p[i], p[(i+1)%len(p)]
	n = b.Sub(a).Unit().Right()
	return n, n.Dot(a)
}

// intersect returns the convex polygon that is in both a and b.
func intersect(a, b []geom.Vec2) []geom.Vec2 {
	for i := range b {
		if a == nil {
			return nil
		}
		n, c := inside(b, i)
		a = clip(a, n, c)
	}
	return a
}

// subtract cuts the convex polygon r out of the convex polygons of list.
func subtract(list [][]geom.Vec2, r []geom.Vec2) (out [][]geom.Vec2) {
	for _, p := range list {
		if intersect(p, r) == nil {
			out = append(out, p)
			continue
		}
		for i := range r {
			n, c := inside(r, i)
			if cut := clip(p, n.Mul(-1), -c); cut != nil {
				out = append(out, cut)
			}
			if p = clip(p, n, c); p == nil {
				break
			}
		}
	}
	return out
}

// union returns the outlines of touching polygons that do not overlap:
// counterclockwise loops for the outside, clockwise ones for holes. Edges
// that two polygons share cancel; what is left is chained.
func union(list [][]geom.Vec2) [][]geom.Vec2 {
	var corners []geom.Vec2
	id := func(p geom.Vec2) int {
		for i, q := range corners {
			if p.Sub(q).Len() < snap {
				return i
			}
		}
		corners = append(corners, p)
		return len(corners) - 1
	}
	for _, p := range list {
		for _, q := range p {
			id(q)
		}
	}
	var edges [][2]int
	for _, p := range list {
		for i, a := range p {
			edges = append(edges, split(corners, id(a), id(p[(i+1)%len(p)]))...)
		}
	}
	return chain(corners, cancel(edges))
}

// split breaks the edge from a to b at all corners that lie on it.
func split(corners []geom.Vec2, a, b int) (out [][2]int) {
	if a == b {
		return nil
	}
	d := corners[b].Sub(corners[a])
	l := d.Len()
	d = d.Unit()
	on := []int{a, b}
	pos := map[int]float64{a: 0, b: l}
	for i, q := range corners {
		v := q.Sub(corners[a])
		if t := v.Dot(d); i != a && i != b && t > 0 && t < l && max(v.Cross(d), -v.Cross(d)) < snap {
			on = append(on, i)
			pos[i] = t
		}
	}
	slices.SortFunc(on, func(i, j int) int { return cmp.Compare(pos[i], pos[j]) })
	for i := 1; i < len(on); i++ {
		out = append(out, [2]int{on[i-1], on[i]})
	}
	return out
}

// cancel drops each pair of opposite edges.
func cancel(edges [][2]int) (out [][2]int) {
	count := map[[2]int]int{}
	for _, e := range edges {
		count[e]++
	}
	for _, e := range edges {
		if count[[2]int{e[1], e[0]}] > 0 || count[e] == 0 {
			continue
		}
		count[e] = 0
		out = append(out, e)
	}
	return out
}

// chain links directed edges into loops and drops corners on straight runs.
// Loops that only touch in a corner stay apart.
func chain(corners []geom.Vec2, edges [][2]int) (loops [][]geom.Vec2) {
	used := make([]bool, len(edges))
	for start := range edges {
		if used[start] {
			continue
		}
		var loop []geom.Vec2
		for e := start; e >= 0 && !used[e]; {
			used[e] = true
			loop = append(loop, corners[edges[e][0]])
			e = next(corners, edges, used, start, e)
		}
		if loop = straighten(loop); len(loop) >= 3 {
			loops = append(loops, loop)
		}
	}
	return loops
}

// next returns the edge that follows e, the start edge when the loop closes
// there, or -1. Loops run counterclockwise
// with the face at their left, so at a corner where two loops touch the
// leftmost turn stays with the same loop.
func next(corners []geom.Vec2, edges [][2]int, used []bool, start, e int) int {
	best, turn := -1, 0.0
	d := corners[edges[e][1]].Sub(corners[edges[e][0]]).Unit()
	for i, f := range edges {
		if used[i] && i != start || f[0] != edges[e][1] {
			continue
		}
		v := corners[f[1]].Sub(corners[f[0]]).Unit()
		t := angle(d, v)
		if best < 0 || t > turn {
			best, turn = i, t
		}
	}
	return best
}

// straighten drops the corners that lie on a straight run.
func straighten(loop []geom.Vec2) (out []geom.Vec2) {
	n := len(loop)
	for i, p := range loop {
		a, b := loop[(i+n-1)%n], loop[(i+1)%n]
		if c := p.Sub(a).Unit().Cross(b.Sub(p).Unit()); c > 1e-7 || c < -1e-7 || p.Sub(a).Dot(b.Sub(p)) < 0 {
			out = append(out, p)
		}
	}
	return out
}
