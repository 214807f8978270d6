package project

import "galewright/plan/geom"

// Thing is one body of a scene: a member, a plate of steel, a rod. One that is
// not convex is several solids that touch and do not overlap.
type Thing struct {
	Solids []geom.Solid
	// Round bodies are prisms of many sides: only their outline and their ends
	// are drawn, not the edges between the sides.
	Round bool
	// Owner is what the caller knows the body by.
	Owner any
}

// Scene is what there is to look at.
type Scene struct {
	things []Thing
	cuts   []geom.Plane // planes that cut solids open, outward from what is left
}

// Add puts things into the scene.
func (s *Scene) Add(things ...Thing) {
	for _, t := range things {
		if len(t.Solids) > 0 {
			s.things = append(s.things, t)
		}
	}
}

// Things returns what is in the scene, in the order it was added.
func (s *Scene) Things() []Thing { return s.things }

// Clip returns the scene inside half spaces. What they cut is open: its edges
// in the plane come out as Cut.
func (s *Scene) Clip(planes ...geom.Plane) *Scene {
	out := &Scene{cuts: append(append([]geom.Plane{}, s.cuts...), planes...)}
	for _, t := range s.things {
		var left []geom.Solid
		for _, part := range t.Solids {
			for _, p := range planes {
				part = part.Clip(p)
			}
			if !part.Empty() {
				left = append(left, part)
			}
		}
		t.Solids = left
		out.Add(t)
	}
	return out
}

// Box returns the planes of a box around a point, with half extents along three
// axes square to each other, in.
func Box(center geom.Vec3, axes [3]geom.Vec3, half [3]float64) (out []geom.Plane) {
	for i, a := range axes {
		out = append(out, geom.PlaneAt(center.Add(a.Mul(half[i])), a), geom.PlaneAt(center.Sub(a.Mul(half[i])), a.Mul(-1)))
	}
	return out
}
