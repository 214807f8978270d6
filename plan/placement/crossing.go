package placement

import (
	"cmp"
	"math"

	"galewright/plan"
	"galewright/plan/framing"
	"galewright/plan/geom"
)

// upperFoot returns the height of the foot of what a joint holds: of a sloping
// member, there.
func upperFoot(j *framing.Joint) float64 { return j.At.Z + j.Gap/2 }

// acrossGap lays a vertical strap at the joint's own place on the face of two
// members that lie one over the other: a rim on its girder, a plate on a rim.
// Each end takes what the item's lap asks for, but no more than its member is
// high. Where their faces are not flush the strap bends over the step.
func (x *placer) acrossGap(w want) (Lie, *plan.Diagnostic) {
	j := w.joint
	f, _, fault := onWall(j)
	if fault != nil {
		return noWay(w) // the faces of members that cross off the walls stand square to each other
	}
	above, below := j.Members[0], j.Members[1]
	if crosses(above, below) {
		return noWay(w)
	}
	high, deep := above.Z1-above.Z0, below.Z1-below.Z0
	total, cut := w.cut(j.Gap, min(w.item.Lap, high)+min(w.item.Lap, deep))
	up := min((total-j.Gap)/2, high)
	return x.stepped(w, f, above, below, up, total-j.Gap-up, cut), nil
}

// stepped lays steel upright on the faces of two members one over the other at
// the joint's place, up long on the upper, the rest of down on the lower and on
// the step between their faces.
func (x *placer) stepped(w want, f geom.Frame, above, below *framing.Member, up, down, cut float64) Lie {
	j := w.joint
	if w.face != plan.Inside {
		w.face = plan.Outside
	}
	s, _ := f.Local(j.At.Flat())
	hi, lo := sideOf(f, s, above, w.face), sideOf(f, s, below, w.face)
	step, off := hi.out(lo), w.spread()
	top := upperFoot(j)
	foot := top - j.Gap
	down -= math.Abs(step)
	b := geom.Band{w.plate(hi.n, hi.at(foot-down, off), hi.at(top+up, off))}
	if math.Abs(step) > touch {
		bend := foot
		if step < 0 {
			bend = top
		}
		b = geom.Band{
			w.plate(lo.n, lo.at(foot-down, off), lo.at(bend, off)),
			w.plate(geom.Vec3{Z: math.Copysign(1, step)}, lo.at(bend, off), hi.at(bend, off)),
			w.plate(hi.n, hi.at(bend, off), hi.at(top+up, off)),
		}
	}
	lie := Lie{Face: w.face, Gap: j.Gap + math.Abs(step), Cut: cut, Station: s}
	return x.strap(lie, b, lap{above, up, true}, lap{below, down, false})
}

// crosses tells whether two level members run across each other on plan, so
// that none of their faces are in one plane.
func crosses(a, b *framing.Member) bool {
	u, v := a.B.Sub(a.A).Flat().Unit(), b.B.Sub(b.A).Flat().Unit()
	return geom.Crosses(u, v)
}

// clipOver lays a clip flat over two members one over the other; where they
// cross it is twisted, one leg on the face of the lower, the other on the side
// of the upper.
func (x *placer) clipOver(w want) (Lie, *plan.Diagnostic) {
	j := w.joint
	if crosses(j.Members[0], j.Members[1]) {
		return x.twisted(w), nil
	}
	f, _, fault := onWall(j)
	if fault != nil {
		return noWay(w)
	}
	held, other := w.item.LegLengths()
	return x.stepped(w, f, j.Members[0], j.Members[1], held, other, 0), nil
}

// twisted lays a clip where a level member crosses another: one leg on the
// lower one's face nearer to the joint, beside the upper, the other on the side
// of the upper, no more of it than the member is high.
func (x *placer) twisted(w want) Lie {
	j := w.joint
	above, below := j.Members[0], j.Members[1]
	n := nearFace(below, j.At)
	side := x.house.Left(above).Up(0)
	if w.k%2 == 1 || w.face == opposite(x.first()) {
		side = side.Mul(-1)
	}
	corner := n.at.Add(side.Mul(reachAlong(above, side) - n.at.Dot(side)))
	top, half := upperFoot(j), w.wide()/2
	held, other := w.item.LegLengths()
	held = min(held, above.Z1-above.Z0)
	foot := corner.Add(side.Mul(half)).Flat().Up(top - j.Gap)
	rise := corner.Sub(n.n.Mul(half)).Flat().Up(top)
	up := geom.Vec3{Z: 1}
	lie := Lie{Face: cmp.Or(w.face, plan.Outside), Gap: j.Gap, Path: []geom.Vec3{foot}, Station: j.Station}
	if j.Wall != nil {
		lie.Station = stationOf(j.Wall.Frame(), lie.Path)
	}
	return x.legs(lie, above, below, w.plate(n.n, foot.Sub(up.Mul(other)), foot), w.plate(side, rise, rise.Add(up.Mul(held))))
}

// plumb is an upright face: a point of it and its normal.
type plumb struct{ at, n geom.Vec3 }

// nearFace returns the long face of a level member that lies nearer to a point.
func nearFace(m *framing.Member, p geom.Vec3) plumb {
	n := m.B.Sub(m.A).Flat().Unit().Left().Up(0)
	lo, hi := extent(m, n)
	if d := p.Dot(n); d-lo < hi-d {
		n, hi = n.Mul(-1), -lo
	}
	return plumb{p.Add(n.Mul(hi - p.Dot(n))), n}
}

// reachAlong returns how far a member reaches along a direction, in.
func reachAlong(m *framing.Member, d geom.Vec3) float64 {
	_, hi := extent(m, d)
	return hi
}
