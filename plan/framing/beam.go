package framing

import (
	"cmp"
	"fmt"
	"math"
	"slices"

	"galewright/plan"
	"galewright/plan/geom"
)

// leastBearing is the least length of a beam's end on wood that carries it, in (IRC
// R502.6, from memory).
const leastBearing = 1.5

// framedBeam is a beam of a floor or ceiling as it lies, before and after it is cut to
// its pieces.
type framedBeam struct {
	*Beam
	body      body // its outline; stations along its center line from the plan's point From
	foot, top float64
	role      plan.Role
	level     *plan.Level // by which its members and joints are told and drawn
}

// droppedBeams adds the beams between walls or on posts at the height of the plates,
// cut to the walls' faces, with what carries them.
func (b *builder) droppedBeams() {
	for _, x := range b.hangingLast(func(x *plan.FloorBeam) bool { return x.Set != plan.SetFlush }) {
		fb := newBeam(x, plan.PlateBeam, x.Level, x.Level.Top())
		b.cutToWalls(fb)
		b.cutToBeams(fb)
		b.layBeam(fb)
	}
}

// hangingLast lists the beams of a plan that are wanted, each after those of its level
// that its ends reach.
func (b *builder) hangingLast(want func(*plan.FloorBeam) bool) (out []*plan.FloorBeam) {
	var rest []*plan.FloorBeam
	for _, x := range b.plan.Beams {
		if want(x) {
			rest = append(rest, x)
		}
	}
	for len(rest) > 0 {
		i := slices.IndexFunc(rest, func(x *plan.FloorBeam) bool {
			return !slices.ContainsFunc(rest, func(o *plan.FloorBeam) bool { return o != x && reachesBeam(x, o) })
		})
		i = max(i, 0) // two that reach each other: the first as it can
		out = append(out, rest[i])
		rest = slices.Delete(rest, i, i+1)
	}
	return out
}

// reachesBeam tells whether an end of a beam lies in another of its level, or just short
// of it.
func reachesBeam(x, o *plan.FloorBeam) bool {
	if x.Level != o.Level || x.Set != o.Set {
		return false
	}
	f := newBeam(o, "", nil, 0).body
	for _, p := range []geom.Vec2{x.From, x.To} {
		if s, t := f.f.Local(p); s > f.s0-near && s < f.s1+near && t > -near && t < f.d+near {
			return true
		}
	}
	return false
}

// cutToBeams cuts a beam's ends to the faces of the beams that they reach and that lie
// beside them.
func (b *builder) cutToBeams(fb *framedBeam) {
	for _, o := range b.beams {
		if o.role == fb.role && o.foot < fb.top-sixteenth && o.top > fb.foot+sixteenth && !fb.body.inLine(o.body) {
			endAt(&fb.body, o.body)
		}
	}
}

// newBeam is a beam between the points that its plan gives.
func newBeam(x *plan.FloorBeam, role plan.Role, level *plan.Level, top float64) *framedBeam {
	f, width := geom.NewFrame(x.From, x.To), x.Member.Width()
	f.Origin = f.At(0, -width/2, 0).Flat()
	return &framedBeam{
		Beam: &Beam{FloorBeam: x, Frame: f}, body: body{f, 0, x.To.Sub(x.From).Len(), width}, foot: top - x.Member.Depth, top: top,
		role: role, level: level,
	}
}

// cutToWalls cuts a beam's ends to the faces of the walls of its level that they reach.
func (b *builder) cutToWalls(fb *framedBeam) {
	for _, w := range b.walls {
		if w.On(fb.Level) {
			endAt(&fb.body, w.body())
		}
	}
}

// layBeam adds a beam whose two ends are carried: by a post, by what they hang from or,
// of a flush one, by a plate; else it tells which end is in the air, and stands no
// beam there.
func (b *builder) layBeam(fb *framedBeam) bool {
	x, t := fb.FloorBeam, fb.body
	if t.s1-t.s0 < 12 {
		b.beamFault(x, "beam-too-short", fmt.Sprintf("beam %s has no length between the walls", x.Name), "give it two ends that lie a foot apart or more")
		return false
	}
	if !b.postsOf(fb) {
		return false
	}
	carried := true
	for i, e := range []struct{ s, out float64 }{{t.s0, -1}, {t.s1, 1}} {
		if !b.carriesEnd(fb, e.s, e.out) {
			b.inTheAir(fb, e.s, i)
			carried = false
		}
	}
	if !carried {
		return false
	}
	cuts := b.cutsOver(fb.postStations(), t.s0, t.s1)
	from := t.s0
	for _, to := range append(cuts, t.s1) {
		if long := to - from; long > b.longest()+geom.Eps {
			b.beamFault(x, "beam-too-long", fmt.Sprintf("beam %s is %s long, the longest stock is %s", x.Name, b.inches(long), b.inches(b.longest())),
				"name longer stock under [lumber], end it at a wall between, or give it a post to break over")
			return false
		}
		from = to
	}
	b.cutBeam(fb, cuts)
	b.standPosts(fb)
	b.wallsUnder(fb)
	slices.SortStableFunc(fb.Supports, func(x, y BeamSupport) int { return cmp.Compare(x.Along, y.Along) })
	b.beams = append(b.beams, fb)
	b.house.Beams = append(b.house.Beams, fb.Beam)
	return true
}

// cutBeam adds the pieces of a beam between its ends and the places where it breaks.
func (b *builder) cutBeam(fb *framedBeam, cuts []float64) {
	b.eachPart(append(append([]float64{fb.body.s0}, cuts...), fb.body.s1), func(from, to float64) {
		m := b.lying(fb.role, fb.body.f, from, to, 0, fb.body.d, fb.foot, fb.top)
		m.ID, m.Section, m.Level = fmt.Sprintf("%s/beam@%s", fb.Name, at(from-fb.body.s0)), fb.Member, fb.level
		fb.Pieces = append(fb.Pieces, b.member(m))
	})
	fb.Pieces = b.inOrder(fb.Pieces)
}

// carriesEnd finds what carries one end of a beam and notes it; false where nothing
// does.
func (b *builder) carriesEnd(fb *framedBeam, s, out float64) bool {
	t := fb.body
	lo, hi := min(s, s-out*seatReach), max(s, s-out*seatReach)
	if on := b.seatUnder(fb, lo, hi); on != nil {
		b.onPlate(fb, on, lo, hi)
		return true
	}
	if on := b.hungFrom(t, s, out, fb.foot, fb.top); on != nil {
		p := t.f.At(s, t.d/2, (max(fb.foot, on.Z0)+min(fb.top, on.Z1))/2)
		b.support(fb, BeamSupport{Along: s, At: p, On: on})
		return true
	}
	if u, ok := b.hungOnBeam(fb, s, out); ok {
		b.support(fb, u)
		return true
	}
	for _, p := range fb.postStations() {
		if math.Abs(p-s) <= fb.Post.Width()/2+near {
			return true
		}
	}
	return false
}

// hungOnBeam finds the beam against whose face the end of another stands with all of its
// width and depth.
func (b *builder) hungOnBeam(fb *framedBeam, s, out float64) (BeamSupport, bool) {
	t := fb.body
	end := t.f.Box(min(s, s+out*near), max(s, s+out*near), 0, t.d, fb.foot, fb.top)
	for _, o := range b.beams {
		if o.role != fb.role || !geom.Square(o.Frame.D, fb.Frame.D) || o.foot > fb.foot+sixteenth || o.top < fb.top-sixteenth {
			continue
		}
		for _, m := range o.Pieces {
			if common(end, m).Volume() > 0.99*near*t.d*(fb.top-fb.foot) {
				at := t.f.At(s, t.d/2, (fb.foot+fb.top)/2)
				along, _ := o.Frame.Local(at.Flat())
				return BeamSupport{Along: s, At: at, On: m, Beam: o.Beam, Station: along}, true
			}
		}
	}
	return BeamSupport{}, false
}

// seatReach is how far in from a beam's end the plate that carries it may reach, in.
const seatReach = 6

// seatUnder returns the plate on which most of a stretch of a flush beam bears; nil where
// it has not the least bearing there.
func (b *builder) seatUnder(fb *framedBeam, s0, s1 float64) (best *Member) {
	if fb.role != plan.FlushBeam {
		return nil
	}
	under := fb.body.f.Box(s0, s1, 0, fb.body.d, fb.foot-1, fb.foot)
	lo, hi := under.Bounds()
	most, all := 0.0, 0.0
	for _, o := range b.index.Within(lo, hi) {
		if o.Role != plan.UpperPlate || math.Abs(o.Z1-fb.foot) > sixteenth {
			continue
		}
		on := common(under, o).Volume() / fb.body.d
		if all += on; on > most {
			best, most = o, on
		}
	}
	if all < leastBearing-sixteenth {
		return nil
	}
	return best
}

// onPlate notes that a stretch of a beam bears on a plate, at the middle of what of it
// lies there.
func (b *builder) onPlate(fb *framedBeam, on *Member, s0, s1 float64) {
	part := common(fb.body.f.Box(s0, s1, 0, fb.body.d, fb.foot-1, fb.foot), on)
	lo, hi := part.Bounds()
	p := lo.Add(hi).Mul(0.5)
	s, _ := fb.body.f.Local(p.Flat())
	b.support(fb, BeamSupport{Along: s, At: fb.body.f.At(s, fb.body.d/2, fb.foot), On: on, Seat: true})
}

// support notes what carries a beam at a place, once.
func (b *builder) support(fb *framedBeam, u BeamSupport) {
	if slices.ContainsFunc(fb.Supports, func(o BeamSupport) bool { return math.Abs(o.Along-u.Along) < 1 }) {
		return
	}
	if w := b.byWall[u.On.Wall]; w != nil {
		u.Wall = u.On.Wall
		u.Station, _ = w.frame.Local(u.At.Flat())
	}
	fb.Supports = append(fb.Supports, u)
}

// wallsUnder notes the bearing walls whose plates a flush beam crosses between its ends.
func (b *builder) wallsUnder(fb *framedBeam) {
	for _, w := range b.walls {
		lo, hi, ok := fb.body.crossing(w.body())
		if !ok || !w.Bearing && !w.Exterior || fb.body.inLine(w.body()) || lo < fb.body.s0+seatReach || hi > fb.body.s1-seatReach {
			continue
		}
		if on := b.seatUnder(fb, lo, hi); on != nil {
			b.onPlate(fb, on, lo, hi)
		}
	}
}

// common is the part of a solid that lies in a member of one convex part.
func common(s geom.Solid, m *Member) geom.Solid {
	for _, p := range m.Solid[0].Planes() {
		s = s.Clip(p)
	}
	return s
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
func (b *builder) inTheAir(fb *framedBeam, s float64, i int) {
	x, foot, top := fb.FloorBeam, fb.foot-near, fb.top
	p := fb.body.f.At(s, fb.body.d/2, (foot+top)/2)
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
	what, mend := fmt.Sprintf("the %s end of beam %s, at %s, %s, is in the air", []string{"first", "second"}[i], x.Name, b.inches(p.X), b.inches(p.Y)), "let it end at a wall of its level, at the face of a beam there no shallower than it, square to it, or on one of its posts"
	if nearest != nil {
		what += fmt.Sprintf(": the nearest plate is %s, %s away", nearest.ID, b.inches(far))
		mend = "let it end at the face of wall " + nearest.Wall.Name + ", at a plate or a full-height stud, at the face of a beam no shallower than it, or on one of its posts"
		if fb.role == plan.FlushBeam {
			mend = fmt.Sprintf("let it lie %s or more on a plate, as that of wall %s, or end on one of its posts", b.inches(leastBearing), nearest.Wall.Name)
		}
	}
	b.beamFault(x, "beam-in-the-air", what, mend)
}

// away is the distance on plan from a point to a member that lies in a wall, in.
func (m *Member) away(p geom.Vec2) float64 {
	f, half := geom.NewFrame(m.A.Flat(), m.B.Flat()), m.Section.Depth/2
	s, t := f.Local(p)
	return math.Hypot(max(0, -s, s-m.B.Sub(m.A).Flat().Len()), max(0, abs(t)-half))
}

func (b *builder) beamFault(x *plan.FloorBeam, code plan.Code, what, mend string) {
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
