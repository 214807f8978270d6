package placement

import (
	"fmt"
	"math"

	"galewright/plan"
	"galewright/plan/framing"
	"galewright/plan/geom"
)

// level lays a strap along the wall: over a plate's splice, at a sill's end,
// or from a shear wall's plate into the collector.
func (x *placer) level(w want) (Lie, *plan.Diagnostic) {
	j := w.joint
	f, depth, fault := onWall(j)
	if j.Wall == nil && len(j.Members) > 1 { // two pieces of a girder, end to end
		f, depth, fault = x.girderFrame(j)
	}
	if fault != nil {
		return Lie{}, fault
	}
	if j.Kind == plan.Collector && len(j.Members) < 2 {
		return Lie{}, &plan.Diagnostic{
			Code: "collector-to-nothing", Summary: "nothing continues the shear wall's line past its end: nothing is placed",
			Mend: "run a joist, beam or truss over the wall's line, or end the shear wall at another wall",
		}
	}
	if j.Step > 0 {
		return Lie{}, &plan.Diagnostic{
			Code: "splice-at-step", Summary: fmt.Sprintf("the top plates step by %s here: nothing is placed", x.units().Length(j.Step)),
			Mend: "leave the joint out with except, and let the engineer say how the force along the plates goes on",
		}
	}
	if w.face != plan.Inside && w.face != plan.Top {
		w.face = plan.Outside
	}
	total, cut := w.cut(j.Gap, 2*w.item.Lap)
	b := x.levelBand(w, f, depth, total)
	on := (total - j.Gap) / 2
	held, other := lap{j.First(), on, !firstAtStart(j, f)}, lap{nil, on, firstAtStart(j, f)}
	if len(j.Members) > 1 {
		other.m = j.Members[1]
	}
	if m := x.underLap(b, held, held.m); m != nil {
		held.m = m
	}
	if own := x.underLap(b, other, j.First()); own != nil {
		other.m = own // plates run on under it, whatever else carries the line
	} else if on := x.underLap(b, other, other.m); on != nil {
		other.m = on
	}
	return x.strap(Lie{Face: w.face, Gap: j.Gap, Cut: cut, Station: j.Station}, b, held, other), nil
}

// levelBand returns the steel of a strap along a wall, its middle at the joint.
func (x *placer) levelBand(w want, f geom.Frame, depth, total float64) (b geom.Band) {
	j := w.joint
	m := j.First()
	in := f.In.Up(0)
	z, t, normal := (m.Z0+m.Z1)/2, 0.0, in.Mul(-1)
	shift := geom.Vec3{Z: w.spread()}
	switch w.face {
	case plan.Inside:
		t, normal = depth, in
	case plan.Top:
		z, t, shift = m.Z1, depth/2, in.Mul(w.spread())
		if role(j, plan.TopPlate, plan.UpperPlate) != nil {
			z, _ = plates(j)
		}
	}
	s, _ := f.Local(j.At.Flat())
	path := []geom.Vec3{f.At(s-total/2, t, z), f.At(s+total/2, t, z)}
	if row := x.sloped[plateRow{m.Wall, m.Role}]; len(row) > 0 {
		above := 0.0
		if w.face == plan.Top {
			above = m.Section.Breadth / 2
		}
		path = alongSlope(f, row, s, t, above, total)
	}
	for i := range len(path) - 1 {
		a, c := path[i].Add(shift), path[i+1].Add(shift)
		n := normal
		if w.face == plan.Top {
			n = in.Cross(a.Sub(c)).Unit()
		}
		b = append(b, w.plate(n, a, c))
	}
	return b
}

// firstAtStart tells whether the first member of a joint along a wall lies on
// the side of the wall's start: at a shear wall's end what is sheathed does, so
// its plate lies toward the segment.
func firstAtStart(j *framing.Joint, f geom.Frame) bool {
	s, _ := f.Local(j.At.Flat())
	if j.Kind == plan.Collector && j.Wall != nil {
		for _, seg := range j.Wall.Shear {
			if math.Abs(min(seg.To, j.Wall.Length())-s) < touch {
				return true
			}
		}
		return false
	}
	a, _ := f.Local(j.First().A.Flat())
	b, _ := f.Local(j.First().B.Flat())
	return (a+b)/2 < s
}

// underLap returns the member that lies under the middle of a lap, of those
// that go on as m does: over a shear wall's end a plate may run on past the one
// the joint names. Nil where none lies there.
func (x *placer) underLap(b geom.Band, g lap, m *framing.Member) *framing.Member {
	if m == nil {
		return nil
	}
	if !g.far {
		b = b.Turned()
	}
	i, at := b.At(b.Len() - max(g.len, 0)/2)
	return x.under(m, b[i].At(at, 0), b[i].N)
}

// corner lays a strap on the outside of two walls' top plates, bent round
// the corner.
func (x *placer) corner(w want) (Lie, *plan.Diagnostic) {
	j := w.joint
	frame, _, fault := onWall(j)
	if fault != nil {
		return Lie{}, fault
	}
	var other *framing.Member
	for _, m := range j.Members {
		if m.Wall != nil && m.Wall != j.Wall {
			other = m
		}
	}
	if other == nil {
		return Lie{}, &plan.Diagnostic{Code: "corner-of-one", Summary: "only one wall stands at this corner", Mend: "use another item here"}
	}
	otherFrame := other.Wall.Frame()
	at, ok := meet(frame, otherFrame)
	if !ok {
		return Lie{}, &plan.Diagnostic{Code: "corner-of-one", Summary: fmt.Sprintf("walls %s and %s run one way", j.Wall.Name, other.Wall.Name), Mend: "use a plate-splice strap"}
	}
	total, cut := w.cut(0, 2*w.item.Lap)
	top, plate := plates(j)
	if plate == nil {
		top += 2 * j.Wall.Studs.Breadth // the joint is at the studs' top, under two plates
		plate = j.First()
	}
	z := top - j.Wall.Studs.Breadth + w.spread()
	b := geom.Band{
		w.plate(frame.In.Up(0).Mul(-1), at.Add(away(frame, j.Wall, at).Mul(total/2)).Up(z), at.Up(z)),
		w.plate(otherFrame.In.Up(0).Mul(-1), at.Up(z), at.Add(away(otherFrame, other.Wall, at).Mul(total/2)).Up(z)),
	}
	own, its := lap{plate, total / 2, false}, lap{plate, total / 2, true}
	for _, one := range []*lap{&own, &its} {
		if m := x.underLap(b, *one, plate); m != nil {
			one.m = m
		}
	}
	lie := x.strap(Lie{Face: plan.Outside, Cut: cut, Station: j.Station}, b, own, its)
	return lie, nil
}

// meet returns where the measured faces of two walls cross.
func meet(f, g geom.Frame) (geom.Vec2, bool) {
	c := f.D.Cross(g.D)
	if c < 1e-6 && c > -1e-6 {
		return geom.Vec2{}, false
	}
	s := g.Origin.Sub(f.Origin).Cross(g.D) / c
	return f.Origin.Add(f.D.Mul(s)), true
}

// away returns the unit direction along a wall from one of its ends inward.
func away(f geom.Frame, w *plan.Wall, at geom.Vec2) geom.Vec2 {
	if s, _ := f.Local(at); s > w.Length()/2 {
		return f.D.Mul(-1)
	}
	return f.D
}

// girderFrame returns a frame along a girder, its origin on the girder's outer
// face, and the girder's breadth.
func (x *placer) girderFrame(j *framing.Joint) (geom.Frame, float64, *plan.Diagnostic) {
	f, m := x.lineOf(j), j.First()
	lo, hi := extent(m, f.In.Up(0))
	f.Origin = f.Origin.Add(f.In.Mul(lo - f.Origin.Dot(f.In)))
	return f, hi - lo, nil
}
