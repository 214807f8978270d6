package placement

import (
	"cmp"

	"galewright/plan"
	"galewright/plan/geom"
)

// frameClip lays a clip in the corner of a valley frame with the side of a truss that it
// stands on, on the frame's uphill side: one leg down the truss's side, the other, twisted,
// up the frame's, each with an edge in the corner.
func (x *placer) frameClip(w want) (Lie, *plan.Diagnostic) {
	j := w.joint
	frame, truss := j.First(), j.Members[1]
	up, rise := truss.B.Sub(truss.A).Flat().Unit(), truss.Roof.Pitch/12
	if j.At.Sub(truss.B).Flat().Len() < j.At.Sub(truss.A).Flat().Len() {
		up, rise = up.Mul(-1), cmp.Or(truss.Roof.PitchOther, truss.Roof.Pitch)/12
	}
	side := up.Left()
	if (x.leftRight()[0] == 1) != (w.other != (w.k%2 == 1)) {
		side = side.Mul(-1)
	}
	half, thick := w.wide()/2, frame.Section.Width()/2
	corner := j.At.Flat().Add(up.Mul(thick)).Add(side.Mul(truss.Section.Width() / 2)).Up(j.At.Z + rise*thick)
	held, other := w.item.LegLengths()
	down := corner.Add(up.Mul(half).Up(0))
	on := corner.Add(side.Mul(half).Up(0))
	lie := Lie{Face: cmp.Or(w.face, plan.Inside), Path: []geom.Vec3{corner}, Station: j.Station}
	return x.legs(lie, frame, truss,
		w.plate(side.Up(0), down.Sub(geom.Vec3{Z: other}), down),
		w.plate(up.Up(0), on, on.Add(geom.Vec3{Z: held}))), nil
}
