package framing

import (
	"fmt"
	"math"

	"galewright/plan"
	"galewright/plan/geom"
)

// flushBeams adds the beams between walls at the height of their top plates,
// cut to the walls' faces, and a joint at each end.
func (b *builder) flushBeams() {
	for _, x := range b.plan.Beams {
		if t := b.beamBody(x); t.s1-t.s0 < 12 {
			b.beamFault(x, "beam-too-short", fmt.Sprintf("beam %s has no length between the walls", x.Name), "give it two ends that lie a foot apart or more")
		} else if long := t.s1 - t.s0; long > b.longest()+geom.Eps {
			b.beamFault(x, "beam-too-long", fmt.Sprintf("beam %s is %s long, the longest stock is %s", x.Name, b.inches(long), b.inches(b.longest())),
				"name longer stock under [lumber], or end it at a wall between")
		} else {
			b.flushBeam(x, t)
		}
	}
}

// beamBody returns a beam's body, its ends cut to the faces of the walls of its
// level that they reach.
func (b *builder) beamBody(x *plan.FlushBeam) body {
	f, width := geom.NewFrame(x.From, x.To), x.Member.Width()
	f.Origin = f.At(0, -width/2, 0).Flat()
	t := body{f, 0, x.To.Sub(x.From).Len(), width}
	for _, w := range b.walls {
		if w.On(x.Level) {
			endAt(&t, w.body())
		}
	}
	return t
}

// flushBeam adds one beam whose two ends are hung from something; else it tells
// which end is in the air, and stands no beam there.
func (b *builder) flushBeam(x *plan.FlushBeam, t body) {
	top := x.Level.Top()
	foot := top - x.Member.Depth
	ends := []struct {
		s, out float64
		on     *Member
	}{{t.s0, -1, nil}, {t.s1, 1, nil}}
	for i, e := range ends {
		if ends[i].on = b.hungFrom(t, e.s, e.out, foot, top); ends[i].on == nil {
			b.inTheAir(x, t, e.s, i, foot, top)
		}
	}
	if ends[0].on == nil || ends[1].on == nil {
		return
	}
	m := b.lying(plan.PlateBeam, t.f, t.s0, t.s1, 0, t.d, foot, top)
	m.ID, m.Section, m.Level = fmt.Sprintf("%s/beam@%s", x.Name, at(0)), x.Member, x.Level
	b.member(m)
	for _, e := range ends {
		b.beamEnd(t, e.s, m, e.on)
	}
}

// beamEnd adds the joint of one end, in the wall that it is hung from.
func (b *builder) beamEnd(t body, s float64, m, on *Member) {
	w := b.byWall[on.Wall]
	p := t.f.At(s, t.d/2, (max(m.Z0, on.Z0)+min(m.Z1, on.Z1))/2)
	station, _ := w.frame.Local(p.Flat())
	j := b.newJoint(w, plan.BeamEnd, station, p.Z, m, on)
	j.At, j.Level = p, m.Level
}

// hungFrom returns what a beam's end stands against: of the plates and full-height
// uprights of walls the one that covers most of it; nil where less than a plate's
// thickness each way is covered by any.
func (b *builder) hungFrom(t body, s, out, foot, top float64) (best *Member) {
	end := t.f.Box(min(s, s+out*near), max(s, s+out*near), 0, t.d, foot, top)
	lo, hi := end.Bounds()
	most := plate*plate - geom.Eps
	for _, o := range b.index.Within(lo, hi) {
		if b.byWall[o.Wall] == nil || o.Role != plan.TopPlate && o.Role != plan.UpperPlate && !o.Role.FullHeight() {
			continue
		}
		for _, solid := range o.Solid {
			if area := covered(solid, t, foot, top); meets(end, solid) && area > most {
				best, most = o, area
			}
		}
	}
	return best
}

// covered is how much of a beam's end one solid stands across, in²: its extent
// across the beam by its extent in height.
func covered(solid geom.Solid, t body, foot, top float64) float64 {
	t0, t1, z0, z1 := math.Inf(1), math.Inf(-1), math.Inf(1), math.Inf(-1)
	solid.Points(func(p geom.Vec3) {
		_, across := t.f.Local(p.Flat())
		t0, t1, z0, z1 = min(t0, across), max(t1, across), min(z0, p.Z), max(z1, p.Z)
	})
	return max(0, min(t1, t.d)-max(t0, 0)) * max(0, min(z1, top)-max(z0, foot))
}

// inTheAir tells of an end that nothing holds, with the nearest thing that could.
func (b *builder) inTheAir(x *plan.FlushBeam, t body, s float64, i int, foot, top float64) {
	p := t.f.At(s, t.d/2, (foot+top)/2)
	var nearest *Member
	far := math.Inf(1)
	for _, m := range b.house.Members {
		if m.Role != plan.TopPlate && m.Role != plan.UpperPlate || m.Z1 < foot || m.Z0 > top {
			continue
		}
		if d := m.away(p.Flat()); d < far-geom.Eps {
			nearest, far = m, d
		}
	}
	what, mend := fmt.Sprintf("the %s end of beam %s, at %s, %s, is in the air", []string{"first", "second"}[i], x.Name, b.inches(p.X), b.inches(p.Y)), "let it end at a wall of its level"
	if nearest != nil {
		what += fmt.Sprintf(": the nearest plate is %s, %s away", nearest.ID, b.inches(far))
		mend = "let it end at the face of wall " + nearest.Wall.Name + ", at a plate or a full-height stud"
	}
	b.beamFault(x, "beam-in-the-air", what, mend)
}

// away is the distance on plan from a point to a member that lies in a wall, in.
func (m *Member) away(p geom.Vec2) float64 {
	f, half := geom.NewFrame(m.A.Flat(), m.B.Flat()), m.Section.Depth/2
	s, t := f.Local(p)
	return math.Hypot(max(0, -s, s-m.B.Sub(m.A).Flat().Len()), max(0, abs(t)-half))
}

func (b *builder) beamFault(x *plan.FlushBeam, code plan.Code, what, mend string) {
	b.fault(plan.Diagnostic{Code: code, Pos: x.Pos, Where: "beam " + x.Name, Summary: what, Mend: mend})
}

// toBeam moves a collector joint to where the wall's plate ends and the beam begins,
// half way over what lies between: a strap laps both from there.
func (w *framedWall) toBeam(j *Joint, top, beam *Member, dir float64) {
	lo, hi := beam.along(w)
	ends, begins := top.S1, lo
	if dir < 0 {
		ends, begins = top.S0, hi
	}
	if j.Gap = (begins - ends) * dir; j.Gap < geom.Eps {
		j.Gap = 0
	}
	j.At = w.frame.At((ends+begins)/2, w.Depth()/2, j.At.Z)
}
