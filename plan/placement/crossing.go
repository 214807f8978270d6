package placement

import (
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

// clipOver lays a clip flat over two members one over the other.
func (x *placer) clipOver(w want) (Lie, *plan.Diagnostic) {
	j := w.joint
	f, _, fault := onWall(j)
	if fault != nil {
		return noWay(w)
	}
	held, other := w.item.LegLengths()
	return x.stepped(w, f, j.Members[0], j.Members[1], held, other, 0), nil
}
