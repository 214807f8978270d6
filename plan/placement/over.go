package placement

import (
	"fmt"

	"galewright/plan"
	"galewright/plan/framing"
	"galewright/plan/geom"
)

// overPlate wraps a strap from one face of the stud or king up over the
// plates and down the other, legs equal. True girth: two legs and the wall's
// depth. With a face asked for, or where the outside is taken, it goes down
// that face alone and ends at the far edge of the plate's top.
func (x *placer) overPlate(w want) (Lie, *plan.Diagnostic) {
	j := w.joint
	f, depth, fault := onWall(j)
	if fault != nil {
		return Lie{}, fault
	}
	m := stud(j)
	top, plate := plates(j)
	up := top - m.Z1
	s0, s1 := breadthAt(j, m)
	out, in := facingOf(f, s0, s1, depth, plan.Outside), facingOf(f, s0, s1, depth, plan.Inside)
	if w.face == plan.Outside {
		out, in = in, out
	}
	off := w.spread()
	top -= m.Z1 - x.headAt(m, in, off)
	over := w.plate(geom.Vec3{Z: 1}, out.at(top, off), in.at(top, off))
	down := func(leg float64) geom.Plate { return w.plate(in.n, in.at(top, off), in.at(top-leg, off)) }
	lie := Lie{Station: (s0 + s1) / 2}
	var total float64
	if w.face == "" || w.face == plan.Both {
		total, lie.Cut = w.cut(depth+2*up, 2*w.item.Lap)
		leg := (total - depth) / 2
		lie.Gap, lie.Face = depth+2*up, plan.Outside
		b := geom.Band{w.plate(out.n, out.at(top-leg, off), out.at(top, off)), over, down(leg)}
		lie = x.strap(lie, b, lap{m, leg - up, false}, lap{m, leg - up, true})
		lie.Station = stationOf(f, lie.Path)
		return lie, nil
	}
	if lie.Face = plan.Inside; w.face == plan.Outside {
		lie.Face = plan.Outside
	}
	total, lie.Cut = w.cut(depth+up, w.item.Lap)
	lie.Gap = up
	lie = x.strap(lie, geom.Band{over, down(total - depth)}, lap{m, total - depth - up, true}, lap{plate, depth, false})
	lie.Station = stationOf(f, lie.Path)
	return lie, nil
}

// overRafter wraps a strap over a rafter at the outside face of its wall,
// down both its sides to the seat, and on down the wall's face beside it.
func (x *placer) overRafter(w want) (Lie, *plan.Diagnostic) {
	j := w.joint
	f, _, fault := onWall(j)
	if fault != nil {
		return Lie{}, fault
	}
	m := j.First()
	s0, s1 := breadthAt(j, m)
	top := topAt(m, f, 0)
	seat, plate := plates(j)
	up := max(top-seat, 0)
	total, cut := w.cut(s1-s0+2*up, 2*w.item.Lap)
	leg := (total - (s1 - s0)) / 2
	d, out, t := f.D.Up(0), f.In.Up(0).Mul(-1), w.spread()
	half := w.wide() / 2
	b := geom.Band{
		w.plate(out, f.At(s0-half, 0, top-leg), f.At(s0-half, 0, top-up)),
		w.plate(d.Mul(-1), f.At(s0, t+half, top-up), f.At(s0, t+half, top)),
		w.plate(geom.Vec3{Z: 1}, f.At(s0, t+half, top), f.At(s1, t+half, top)),
		w.plate(d, f.At(s1, t+half, top), f.At(s1, t+half, top-up)),
		w.plate(out, f.At(s1+half, 0, top-up), f.At(s1+half, 0, top-leg)),
	}
	lie := Lie{
		Face: plan.Top, Gap: s1 - s0 + 2*up, Cut: cut, Station: (s0 + s1) / 2,
		Path: []geom.Vec3{f.At(s0, t, top-leg), f.At(s0, t, top), f.At(s1, t, top), f.At(s1, t, top-leg)},
		Laid: []Laid{{Member: m, Lap: s1 - s0 + 2*up, Room: s1 - s0 + 2*up}}, tied: [2]int{1, 2},
	}
	return x.strap(lie, b, lap{plate, leg - up, false}, lap{plate, leg - up, true}), nil
}

// besideRafter lays a strap up the side of a rafter from the wall's face
// beside it, half on each, turned where it passes the seat.
func (x *placer) besideRafter(w want) (Lie, *plan.Diagnostic) {
	j := w.joint
	f, _, fault := onWall(j)
	if fault != nil {
		return Lie{}, fault
	}
	m := j.First()
	seat, plate := plates(j)
	total, cut := w.cut(j.Gap, 2*w.item.Lap)
	if w.face != plan.Left && w.face != plan.Right {
		w.face = append(x.freeSides(j, m, seat), x.first())[0]
	}
	s0, s1 := breadthAt(j, m)
	g := facingOf(f, s0, s1, 0, w.face)
	off, half := w.spread(), w.wide()/2
	beside := g.n.Mul(half)
	b := geom.Band{
		w.plate(f.In.Up(0).Mul(-1), f.At(g.s, 0, seat-total/2).Add(beside), f.At(g.s, 0, seat).Add(beside)),
		w.plate(g.n, g.at(seat, off+half), g.at(seat+total/2, off+half)),
	}
	lie := Lie{Face: w.face, Gap: j.Gap, Cut: cut, Station: g.s, Path: []geom.Vec3{g.at(seat-total/2, off), g.at(seat+total/2, off)}}
	return x.strap(lie, b, lap{m, total / 2, true}, lap{plate, total / 2, false}), nil
}

// topAt returns the height of a rafter's top edge at depth t of a wall's
// frame.
func topAt(m *framing.Member, f geom.Frame, t float64) float64 {
	_, ta := f.Local(m.A.Flat())
	_, tb := f.Local(m.B.Flat())
	if tb-ta < geom.Eps && ta-tb < geom.Eps {
		return max(m.A.Z, m.B.Z)
	}
	return m.A.Z + (m.B.Z-m.A.Z)*(t-ta)/(tb-ta)
}

// ridge lays a strap over the ridge and down both rafters' tops, or, where
// one rafter meets it alone, over the ridge member and down its far side; where
// that rafter runs the ridge's way, on along the ridge's top.
func (x *placer) ridge(w want) (Lie, *plan.Diagnostic) {
	rafters, beam := atRidge(w.joint)
	if len(rafters) == 0 {
		return Lie{}, &plan.Diagnostic{Code: "no-rafter", Summary: "no rafter meets the ridge here", Mend: "take this joint out of the rule"}
	}
	if on := rafters[min(1, len(rafters)-1)]; on != rafters[0] && (on.Role == plan.HipRafter || on.Role == plan.ValleyRafter) {
		return Lie{}, &plan.Diagnostic{
			Code: "no-ridge", Summary: fmt.Sprintf("a %s leans on a %s here: there is no ridge for a strap to go over", rafters[0].Role, on.Role),
			Mend: `give the rule where = { against = "ridge" }, and hang the jacks by a rule of their own`,
		}
	}
	r := rafters[0]
	down := r.A.Sub(r.B).Unit()
	level := geom.Vec3{X: -down.X, Y: -down.Y}.Unit()
	off := geom.Vec3{X: -level.Y, Y: level.X}.Mul(w.spread())
	q1 := r.B.Add(off)
	q2, far, n, on := q1, geom.Vec3{Z: -1}, level, beam
	switch {
	case len(rafters) > 1:
		on = rafters[1]
		q2, far = on.B.Add(off), on.A.Sub(on.B).Unit()
		n = upNormal(far)
	case beam != nil && !geom.Athwart(beam.B.Sub(beam.A).Flat().Unit(), level.Flat()):
		far, n = level, geom.Vec3{Z: 1}
		q2.Z = beam.B.Z
	case beam != nil:
		q2 = q1.Add(level.Mul(beam.Section.Width()))
	}
	gap := q2.Sub(q1).Len()
	total, cut := w.cut(gap, 2*w.item.Lap)
	leg := (total - gap) / 2
	b := geom.Band{w.plate(upNormal(down), q1.Add(down.Mul(leg)), q1)}
	if gap > touch && far != level {
		b = append(b, w.plate(geom.Vec3{Z: 1}, q1, q2))
	}
	b = append(b, w.plate(n, q2, q2.Add(far.Mul(leg))))
	lie := Lie{Face: plan.Top, Gap: gap, Cut: cut, Station: w.joint.Station}
	return x.strap(lie, b, lap{r, leg, false}, lap{on, leg, true}), nil
}

// atRidge returns the rafters that meet at a ridge joint, and the ridge.
func atRidge(j *framing.Joint) (rafters []*framing.Member, beam *framing.Member) {
	for _, m := range j.Members {
		if m.Role == plan.Ridge {
			beam = m
		} else {
			rafters = append(rafters, m)
		}
	}
	return rafters, beam
}

// upNormal returns the normal of the sloping top along d that looks up; for
// a plumb face the one that looks along it.
func upNormal(d geom.Vec3) geom.Vec3 {
	side := geom.Vec3{X: -d.Y, Y: d.X}
	if side.Len() < geom.Eps {
		return geom.Vec3{X: 1}
	}
	return d.Cross(side).Unit() // its Z is d's square on plan: never down
}
