package placement

import (
	"cmp"

	"galewright/plan"
	"galewright/plan/framing"
	"galewright/plan/geom"
)

// onSlope lays a clip in the corner between an outlooker's edge and the side of
// the rafter or fly rafter that it ends at or is let into: folded square to the
// roof, one leg along each. Over a gable truss, which stands lower, the leg on
// the truss is below the outlooker and the other, twisted, up its edge.
func (x *placer) onSlope(w want) (Lie, *plan.Diagnostic) {
	j := w.joint
	if j.Kind == plan.BoardRafter {
		return x.onBoardEdge(w)
	}
	o := role(j, plan.Outlooker)
	c := j.First()
	if c == o {
		c = j.Members[1]
	}
	s := slopeOf(o, c, j.At, w)
	held, other := w.item.LegLengths()
	onOutlooker, onCarrier := held, other
	if j.First() != o {
		onOutlooker, onCarrier = other, held
	}
	a, b := s.legs(w, onOutlooker, onCarrier)
	if x.along(c, b.At(b.Len()/2, 0), b.N, s.edge.Mul(-1), edge) < edge-touch { // no wood beside the outlooker
		a, b = s.twisted(w, onOutlooker, onCarrier)
	}
	lie := Lie{Face: cmp.Or(w.face, plan.Inside), Path: []geom.Vec3{s.corner}, Station: j.Station}
	if j.First() == o {
		return x.legs(lie, o, c, geom.Band{b}.Turned()[0], a), nil
	}
	return x.legs(lie, c, o, geom.Band{a}.Turned()[0], b), nil
}

// slope is the corner that a clip at an outlooker lies in.
type slope struct {
	corner geom.Vec3 // in the roof's surface
	thick  float64   // of the outlooker, square to the roof, in
	normal geom.Vec3 // of the roof, up
	edge   geom.Vec3 // of the outlooker's edge that the clip is on, out
	face   geom.Vec3 // of the carrier's face, toward the outlooker's free part
}

// slopeOf finds the corner of an outlooker with what it is tied to, on the side
// of its edges that w asks for: the lower one first, of two each.
func slopeOf(o, c *framing.Member, at geom.Vec3, w want) slope {
	d := o.B.Sub(o.A).Unit() // level, out of the house
	s := slope{thick: o.Section.Breadth, normal: o.FlatTop()}
	s.edge = s.normal.Cross(d)
	if s.edge.Z > 0 {
		s.edge = s.edge.Mul(-1)
	}
	if w.other != (w.k%2 == 1) || w.face != "" && (w.face == plan.Left) != (d.Cross(geom.Vec3{Z: 1}).Dot(s.edge) > 0) && (w.face == plan.Left || w.face == plan.Right) {
		s.edge = s.edge.Mul(-1)
	}
	lo, hi := extent(c, d)
	t, out := lo, at.Dot(d) > o.B.Dot(d)-touch // the fly rafter's inner side, else the side toward the house
	s.face = d.Mul(-1)
	if !out && (at.Dot(d) < o.A.Dot(d)+touch || w.face == plan.Outside) { // the inner rafter's outer side
		t, s.face = hi, d
	}
	s.corner = o.A.Add(d.Mul(t - o.A.Dot(d))).Add(s.edge.Mul(o.Section.Depth / 2))
	return s
}

// legs returns the leg on the outlooker's edge, away from the fold, and the one
// on the carrier's side.
func (s slope) legs(w want, onOutlooker, onCarrier float64) (a, b geom.Plate) {
	fold := s.corner.Sub(s.normal.Mul(s.thick / 2))
	return w.plate(s.edge, fold, fold.Add(s.face.Mul(onOutlooker))), w.plate(s.face, fold, fold.Add(s.edge.Mul(onCarrier)))
}

// twisted returns the leg up the outlooker's edge, no more of it than that is
// high, and the one down the face of what it lies on.
func (s slope) twisted(w want, onOutlooker, onCarrier float64) (a, b geom.Plate) {
	half := w.wide() / 2
	seat := s.corner.Sub(s.normal.Mul(s.thick))
	foot, rise := seat.Add(s.edge.Mul(half)), seat.Sub(s.face.Mul(half))
	return w.plate(s.edge, rise, rise.Add(s.normal.Mul(min(onOutlooker, s.thick)))), w.plate(s.face, foot, foot.Sub(s.normal.Mul(onCarrier)))
}
