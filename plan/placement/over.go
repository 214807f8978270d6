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
func (x *placer) overPlate(p *Piece, k, n int) *plan.Diagnostic {
	j := p.Joint
	f, depth, fault := onWall(j)
	if fault != nil {
		return fault
	}
	m := stud(j)
	top, plate := plates(j)
	up := top - m.Z1
	s0, s1 := span2(j, m)
	out, in := facingOf(f, s0, s1, depth, plan.Outside), facingOf(f, s0, s1, depth, plan.Inside)
	if p.Face == plan.Outside {
		out, in = in, out
	}
	off := spread(k, n, p.wide())
	p.Laid, p.room = laid(m, plate), [2]float64{m.Z1 - m.Z0, m.Z1 - m.Z0}
	if p.Face == "" || p.Face == plan.Both {
		total := p.cut(depth+2*up, 2*p.Item.Lap)
		leg := (total - depth) / 2
		p.gap, p.Laps, p.Face = depth+2*up, [2]float64{leg - up, leg - up}, plan.Outside
		p.lay(out.n, out.at(top-leg, off), out.at(top, off))
		p.lay(geom.Vec3{Z: 1}, out.at(top, off), in.at(top, off))
		p.lay(in.n, in.at(top, off), in.at(top-leg, off))
		p.setStation(f)
		return nil
	}
	if p.Face != plan.Outside {
		p.Face = plan.Inside
	}
	leg := p.cut(depth+up, p.Item.Lap) - depth
	p.gap, p.Laps, p.room[1] = up, [2]float64{leg - up, depth}, depth
	p.lay(geom.Vec3{Z: 1}, out.at(top, off), in.at(top, off))
	p.lay(in.n, in.at(top, off), in.at(top-leg, off))
	p.setStation(f)
	return nil
}

// overRafter wraps a strap over a rafter at the outside face of its wall and
// down on both sides of it.
func (x *placer) overRafter(p *Piece, k, n int) *plan.Diagnostic {
	j := p.Joint
	f, _, fault := onWall(j)
	if fault != nil {
		return fault
	}
	m := j.First()
	s0, s1 := span2(j, m)
	top := topAt(m, f, 0)
	seat, plate := plates(j)
	up := max(top-seat, 0)
	total := p.cut(s1-s0+2*up, 2*p.Item.Lap)
	leg := (total - (s1 - s0)) / 2
	p.Laps, p.Laid = [2]float64{leg - up, leg - up}, laid(m, plate)
	p.gap, p.Face = s1-s0+2*up, plan.Top
	d := f.D.Up(0)
	t := spread(k, n, p.wide())
	p.lay(d.Mul(-1), f.At(s0, t, top-leg), f.At(s0, t, top))
	p.lay(geom.Vec3{Z: 1}, f.At(s0, t, top), f.At(s1, t, top))
	p.lay(d, f.At(s1, t, top), f.At(s1, t, top-leg))
	p.Station = (s0 + s1) / 2
	return nil
}

// besideRafter lays a flat strap up the side of a rafter from its wall.
func (x *placer) besideRafter(p *Piece, k, n int) *plan.Diagnostic {
	j := p.Joint
	f, _, fault := onWall(j)
	if fault != nil {
		return fault
	}
	m := j.First()
	seat, plate := plates(j)
	total := p.cut(j.Gap, 2*p.Item.Lap)
	p.Laps, p.Laid = [2]float64{total / 2, total / 2}, laid(m, plate)
	if p.Face != plan.Left && p.Face != plan.Right {
		p.Face = append(x.freeSides(j, m, seat), plan.Left)[0]
	}
	s0, s1 := span2(j, m)
	g := facingOf(f, s0, s1, 0, p.Face)
	off := spread(k, n, p.wide())
	p.lay(g.n, g.at(seat-total/2, off), g.at(seat+total/2, off))
	p.Station = g.s
	return nil
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
// one rafter meets it alone, over the ridge member and down its far side.
func (x *placer) ridge(p *Piece, k, n int) *plan.Diagnostic {
	rafters, beam := atRidge(p.Joint)
	if len(rafters) == 0 {
		return &plan.Diagnostic{Code: "no-rafter", Summary: "no rafter meets the ridge here", Mend: "take this joint out of the rule"}
	}
	if on := rafters[min(1, len(rafters)-1)]; on != rafters[0] && (on.Role == plan.HipRafter || on.Role == plan.ValleyRafter) {
		return &plan.Diagnostic{
			Code: "no-ridge", Summary: fmt.Sprintf("a %s leans on a %s here: there is no ridge for a strap to go over", rafters[0].Role, on.Role),
			Mend: `give the rule where = { against = "ridge" }, and hang the jacks by a rule of their own`,
		}
	}
	r := rafters[0]
	down := r.A.Sub(r.B).Unit()
	level := geom.Vec3{X: -down.X, Y: -down.Y}.Unit()
	off := geom.Vec3{X: -level.Y, Y: level.X}.Mul(spread(k, n, p.wide()))
	q1 := r.B.Add(off)
	q2, far := q1, geom.Vec3{Z: -1}
	p.Face, p.Laid = plan.Top, rafters[:min(2, len(rafters))]
	if len(rafters) > 1 {
		o := rafters[1]
		q2, far = o.B.Add(off), o.A.Sub(o.B).Unit()
	} else if beam != nil {
		q2 = q1.Add(level.Mul(beam.Section.Width()))
		p.Laid = laid(r, beam)
	}
	p.overRidge(q1, q2, down, far)
	for i, m := range p.Laid {
		if m != beam {
			p.room[i] = m.B.Sub(m.A).Len()
		}
	}
	return nil
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

// overRidge lays the steel: equal legs from q1 along down and from q2 along
// far, and what is between.
func (p *Piece) overRidge(q1, q2, down, far geom.Vec3) {
	p.gap = q2.Sub(q1).Len()
	leg := (p.cut(p.gap, 2*p.Item.Lap) - p.gap) / 2
	p.Laps = [2]float64{leg, leg}
	p.lay(upNormal(down), q1.Add(down.Mul(leg)), q1)
	if p.gap > touch {
		p.lay(geom.Vec3{Z: 1}, q1, q2)
	}
	p.lay(upNormal(far), q2, q2.Add(far.Mul(leg)))
}

// upNormal returns the normal of the sloping top along d that looks up; for
// a plumb face the one that looks along it.
func upNormal(d geom.Vec3) geom.Vec3 {
	side := geom.Vec3{X: -d.Y, Y: d.X}
	if side.Len() < geom.Eps {
		return geom.Vec3{X: 1}
	}
	n := d.Cross(side).Unit()
	if n.Z < 0 {
		n = n.Mul(-1)
	}
	return n
}
