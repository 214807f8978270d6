package framing

import (
	"slices"

	"galewright/plan/geom"
	"galewright/plan/roofplan"
)

// noEdge is the kind of the two sides of a cut from a face's eave to an opening in it: an
// outline is one loop, and nothing is there.
const noEdge roofplan.EdgeKind = ""

// openFace takes a dormer's opening out of the main face: a notch in its eave where the front
// wall stands over the wall under that, else a hole that a cut of no width joins to it.
func (f *roofFrame) openFace(d *dormer) {
	face := f.houseFace[d.face]
	in := d.trimmer.Width()
	d.Opening = [2]geom.Vec2{d.Frame.At(d.From+in, d.SetBack, 0).Flat(), d.Frame.At(d.To-in, d.Upper, 0).Flat()}
	a, b, t0, t1 := d.From+in, d.To-in, d.SetBack, d.Upper
	up := func(s, t float64) geom.Vec3 {
		p := d.Frame.At(s, t, 0).Flat()
		return p.Up(d.main.At(p))
	}
	for i, kind := range slices.Clone(face.Edges) {
		p, q := face.Outline[i], face.Outline[(i+1)%len(face.Outline)]
		s0, e := d.Frame.Local(p.Flat())
		s1, _ := d.Frame.Local(q.Flat())
		if kind.Kind != roofplan.Eave || s0 > a || s1 < b {
			continue
		}
		wall := roofplan.Wall
		loop := []geom.Vec3{up(a, e), up(a, t1), up(b, t1), up(b, e)}
		kinds := []roofplan.EdgeKind{wall, wall, wall, roofplan.Eave}
		if d.SetBack > 0 {
			loop = []geom.Vec3{up(a, e), up(a, t0), up(a, t1), up(b, t1), up(b, t0), up(a, t0), up(a, e)}
			kinds = []roofplan.EdgeKind{noEdge, wall, wall, wall, wall, noEdge, roofplan.Eave}
		}
		var edges []FaceEdge
		for _, k := range kinds {
			edges = append(edges, FaceEdge{Kind: k})
		}
		face.Outline = slices.Insert(face.Outline, i+1, loop...)
		face.Edges = slices.Insert(face.Edges, i+1, edges...)
		return
	}
}
