package project

import (
	"math"

	"galewright/plan/geom"
)

// near is how close, in, a point lies to a face that it is on: over the
// rounding of clipped solids, far under the thinnest steel.
const near = 1e-4

// edge is where two faces of a convex solid meet.
type edge struct {
	a, b  geom.Vec3
	faces [2]geom.Plane
}

// block is a convex solid of a thing, worked out for a view.
type block struct {
	thing  int
	planes []geom.Plane
	edges  []edge
	lo, hi geom.Vec3 // in the picture; Z is depth
}

// newBlock finds planes and edges of a solid.
func newBlock(v View, thing int, s geom.Solid) *block {
	b := &block{thing: thing, planes: s.Planes()}
	b.lo, b.hi = v.box(s)
	for i, loop := range s.Faces {
		for k, p := range loop {
			q := loop[(k+1)%len(loop)]
			if q.Sub(p).Len() < near {
				continue
			}
			for j := i + 1; j < len(b.planes); j++ {
				if on(b.planes[j], p) && on(b.planes[j], q) {
					b.edges = append(b.edges, edge{p, q, [2]geom.Plane{b.planes[i], b.planes[j]}})
					break
				}
			}
		}
	}
	return b
}

// on tells whether a point lies in a plane.
func on(p geom.Plane, at geom.Vec3) bool { return math.Abs(p.N.Dot(at)-p.C) < near }

// same tells whether a face lies in a plane and looks the same way.
func same(face, p geom.Plane) bool {
	return face.N.Dot(p.N) > 1-1e-9 && math.Abs(face.C-p.C) < near
}

// at returns the point of the edge at a share of its length.
func (e edge) at(t float64) geom.Vec3 { return e.a.Add(e.b.Sub(e.a).Mul(t)) }

// roundness is the cosine of the angle between sides of a round body under
// which the edge between them is not one: 60 degrees.
const roundness = 0.5

// outline tells whether an edge of a round body is drawn: at its ends, or
// where it turns away from the eye.
func (e edge) outline(v View) bool {
	if e.faces[0].N.Dot(e.faces[1].N) < roundness {
		return true
	}
	return e.faces[0].N.Dot(v.Toward)*e.faces[1].N.Dot(v.Toward) <= 0
}
