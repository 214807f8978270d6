package placement

import (
	"galewright/plan"
	"galewright/plan/framing"
	"galewright/plan/geom"
)

// upperFoot returns the height of the foot of what a joint holds: of a sloping
// member, there.
func upperFoot(j *framing.Joint) float64 { return j.At.Z + j.Gap/2 }

// place returns the face of the wall at a joint's own place.
func place(w want, f geom.Frame, depth float64) (want, facing) {
	if w.face != plan.Inside {
		w.face = plan.Outside
	}
	s, _ := f.Local(w.joint.At.Flat())
	return w, facingOf(f, s-0.75, s+0.75, depth, w.face)
}

// overClip lays a clip flat on a face of the wall over two members that lie
// one over the other.
func (x *placer) overClip(w want) (Lie, *plan.Diagnostic) {
	j := w.joint
	f, depth, fault := onWall(j)
	if fault != nil {
		return Lie{}, fault
	}
	w, g := place(w, f, depth)
	z, off := upperFoot(j), w.spread()
	held, other := w.item.LegLengths()
	lie := Lie{Face: w.face, Gap: j.Gap, Path: []geom.Vec3{g.at(z, off)}}
	lie.Station = stationOf(f, lie.Path)
	b := geom.Band{w.plate(g.n, g.at(z-other, off), g.at(z, off)), w.plate(g.n, g.at(z, off), g.at(z+held, off))}
	return x.strap(lie, b, lap{j.Members[0], held, true}, lap{j.Members[1], max(other-j.Gap, 0), false}), nil
}

// acrossGap lays a vertical strap at the joint's own place on the face of two
// members that lie one over the other: a rim on its girder, a plate on a rim.
// Each end takes what the item's lap asks for, but no more than its member is
// high.
func (x *placer) acrossGap(w want) (Lie, *plan.Diagnostic) {
	j := w.joint
	f, depth, fault := onWall(j)
	if fault != nil {
		return noWay(w) // the faces of members that cross off the walls stand square to each other
	}
	above, below := j.Members[0], j.Members[1]
	top := upperFoot(j)
	total, cut := w.cut(j.Gap, min(w.item.Lap, above.Z1-above.Z0)+min(w.item.Lap, below.Z1-below.Z0))
	up := min((total-j.Gap)/2, above.Z1-above.Z0)
	w, g := place(w, f, depth)
	off := w.spread()
	b := geom.Band{w.plate(g.n, g.at(top+up-total, off), g.at(top+up, off))}
	lie := x.strap(Lie{Face: w.face, Gap: j.Gap, Cut: cut}, b, lap{above, up, true}, lap{below, total - j.Gap - up, false})
	lie.Station = stationOf(f, lie.Path)
	return lie, nil
}
