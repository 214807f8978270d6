package project

import "galewright/plan/geom"

// Face is a face of a body that looks toward the eye.
type Face struct {
	Loop  []geom.Vec3 // counterclockwise seen from outside
	N     geom.Vec3   // out of the body, unit
	Owner any
	Cut   bool // it lies in a plane that cuts the scene open
}

// Faces returns the faces that look toward the eye, by thing, whether or not
// something hides them.
func (p *Picture) Faces() (out []Face) {
	for _, t := range p.scene.things {
		for _, s := range t.Solids {
			for i, plane := range s.Planes() {
				if plane.N.Dot(p.view.Toward) > 0.05 {
					out = append(out, Face{s.Faces[i], plane.N, t.Owner, p.opened(plane)})
				}
			}
		}
	}
	return out
}

// opened tells whether a face lies in a plane that cuts the scene.
func (p *Picture) opened(face geom.Plane) bool {
	for _, c := range p.scene.cuts {
		if same(face, c) {
			return true
		}
	}
	return false
}
