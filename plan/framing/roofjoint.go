package framing

import (
	"cmp"
	"math"
	"slices"

	"galewright/plan"
	"galewright/plan/geom"
	"galewright/plan/roofplan"
)

// plateJoint adds the rafter-plate joints of a member at its seats: one for
// each wall it crosses; a hip or valley bears on a corner and gets one, on
// the wall whose plate is longest under it. It returns false when there is
// no plate.
func (f *roofFrame) plateJoint(m *Member, r bar, seats []bearing, owner *roofBody, corner bool) bool {
	var real []bearing
	for _, s := range seats {
		if s.crosses(r) && (s.u1-s.u0 > 0.5 || corner) {
			real = append(real, s)
		}
	}
	if corner && len(real) > 1 {
		slices.SortStableFunc(real, func(a, b bearing) int {
			return cmp.Compare(math.Round((b.u1-b.u0)*100), math.Round((a.u1-a.u0)*100)) // ties go to the wall written first
		})
		real = real[:1]
	}
	found := false
	for _, s := range real {
		found = f.bearingJoint(m, r, s, owner) || found
	}
	return found
}

// bearingJoint adds one rafter-plate joint.
func (f *roofFrame) bearingJoint(m *Member, r bar, s bearing, owner *roofBody) bool {
	p := r.at.Add(r.dir.Mul((s.u0 + s.u1) / 2))
	station, _ := s.bed.frame.Local(p)
	if w := s.bed.wall; w != nil { // a valley bears just past the ends of both its walls
		station = min(max(station, w.Hook), w.Length())
	}
	j := &Joint{Kind: plan.RafterPlate, Station: station, Level: f.level, Roof: owner.Roof, At: p.Up(s.z)}
	if m.Role == plan.GirderTruss {
		j.Kind = plan.GirderPlate
	}
	switch {
	case s.bed.wall != nil:
		plate := s.bed.wall.plateUnder(station)
		if plate == nil {
			return false
		}
		j.Host, j.Wall, j.Members = s.bed.wall.Name, s.bed.wall.Wall, []*Member{m, plate}
	default:
		beam := f.beamOf(s.bed.porch.Name, p.Up(s.z))
		if beam == nil {
			return false
		}
		j.Host, j.Level, j.Members = s.bed.porch.Name, nil, []*Member{m, beam}
	}
	f.joints = append(f.joints, f.joint(j))
	return true
}

// rakeJoint adds the joint of a rafter where a rake wall runs through to the
// corner and carries it on its sloping plate: it belongs to the eave's wall,
// at whose end it stands.
func (f *roofFrame) rakeJoint(r *roofRafter, p geom.Vec2, rb *roofBody, side int) bool {
	for _, rake := range f.rakes {
		along, in := rake.wall.frame.Local(p.Add(r.dir))
		if in < -near || in > rake.wall.Depth()+near || along < rake.wall.Hook-near || along > rake.wall.Length()+near {
			continue
		}
		plate := rake.wall.plateUnder(along)
		for _, w := range rb.sides[side].walls {
			s, t := w.Frame().Local(p)
			if plate != nil && math.Abs(t) < near && s > w.Hook-near && s < w.Length()+near {
				f.joints = append(f.joints, f.joint(&Joint{
					Kind: plan.RafterPlate, Host: w.Name, Wall: w, Station: s,
					Level: f.level, Roof: r.owner.Roof, Members: []*Member{r.member, plate}, At: p.Up(rb.sides[side].plate),
				}))
				return true
			}
		}
	}
	return false
}

// rakeEnd adds the joint of a rafter with an end, near p, on the sloping plate of
// a rake wall: a flush one that starts there because trusses leave no valley
// stick to start from, or one that ends there beside a ledger. The rake wall is
// its host.
func (f *roofFrame) rakeEnd(r *roofRafter, p geom.Vec2) {
	for _, rake := range f.rakes {
		s, in := rake.wall.frame.Local(p)
		if in < 0 || in > rake.wall.Depth() || s < rake.wall.Hook || s > rake.wall.Length() {
			continue
		}
		if plate := rake.wall.plateUnder(s); plate != nil {
			at := r.member.A
			if u := r.u(p); u > (r.u(r.member.A.Flat())+r.u(r.member.B.Flat()))/2 {
				at = r.point(u)
			}
			f.joints = append(f.joints, f.joint(&Joint{
				Kind: plan.RafterPlate, Host: rake.wall.Name, Wall: rake.wall.Wall, Station: s,
				Level: f.level, Roof: r.owner.Roof, Members: []*Member{r.member, plate}, At: at.Add(geom.Vec3{Z: -r.plumb()}),
			}))
			return
		}
	}
}

// plateUnder returns the upper plate at a station, or the lower one, or the
// upper plate whose end is nearest within a wall's depth, as at a corner
// where the other wall's plate laps.
func (w *framedWall) plateUnder(s float64) *Member {
	if m := w.capAt(s); m != nil {
		return m
	}
	if m := w.memberAt(w.plates, s); m != nil {
		return m
	}
	caps := slices.Clone(w.caps)
	near := func(m *Member) bool { return s > m.S0-w.Depth()-near && s < m.S1+w.Depth()+near }
	if w.mirrored {
		slices.Reverse(caps)
	}
	if i := slices.IndexFunc(caps, near); i >= 0 {
		return caps[i]
	}
	return nil
}

// beamOf returns the beam of a porch at p: where two porches meet at a corner,
// that of the other touches it there.
func (f *roofFrame) beamOf(porch string, p geom.Vec3) *Member {
	for _, m := range f.index.Within(around(p)) {
		if m.Role == plan.Beam && owner(m) == "porch "+porch {
			return m
		}
	}
	return nil
}

// ridgeJoints adds a rafter-ridge joint for each opposing pair, or single
// rafter, at a ridge, and for hips and valleys that end there.
func (f *roofFrame) ridgeJoints() {
	hosts := f.lineHosts()
	for _, l := range f.lines {
		if l.line.Kind == roofplan.Ridge {
			f.jointsAt(l, hosts[l])
		}
	}
}

// jointsAt adds the joints at one ridge.
func (f *roofFrame) jointsAt(l *roofLine, host string) {
	var here []*roofRafter
	for _, r := range f.rafters {
		if r.run.HighEnd.Kind == roofplan.Ridge && l.holds(r.run.High) && f.ridgeOf(r.run.High, r.dir) == l {
			here = append(here, r)
		}
	}
	at := func(r *roofRafter) float64 { return math.Round(l.u(r.run.High) * 1000) } // what meets at one point keeps its order wherever the house stands
	slices.SortStableFunc(here, func(a, b *roofRafter) int { return cmp.Compare(at(a), at(b)) })
	done := map[*roofRafter]bool{}
	for i, a := range here {
		if done[a] {
			continue
		}
		members := []*Member{a.member}
		rest := here[i:]
		if n := slices.IndexFunc(rest, func(c *roofRafter) bool {
			return !done[c] && math.Abs(l.u(c.run.High)-l.u(a.run.High)) < near && geom.Against(c.dir, a.dir)
		}); n >= 0 {
			members, done[rest[n]] = append(members, rest[n].member), true
		}
		f.ridgeJoint(l, host, members, a.run.High)
	}
	for _, o := range f.lines {
		if o.line.Kind != roofplan.Ridge && o.member != nil && l.holds(o.line.B.Flat()) && f.ridgeOf(o.line.B.Flat(), o.dir) == l {
			f.ridgeJoint(l, host, []*Member{o.member}, o.line.B.Flat())
		}
	}
}

// ridgeOf returns the ridge that holds what comes up in direction d to p: of
// two that end there, as over the corner of an L, the one it meets squarer.
func (f *roofFrame) ridgeOf(p, d geom.Vec2) (best *roofLine) {
	for _, l := range f.linesAt.Within(around(p.Up(0))) {
		if l.line.Kind != roofplan.Ridge || !l.holds(p) {
			continue
		}
		if best == nil || math.Abs(l.dir.Dot(d)) < math.Abs(best.dir.Dot(d))-1e-6 {
			best = l
		}
	}
	return best
}

// holds tells whether p lies on the ridge.
func (l *roofLine) holds(p geom.Vec2) bool {
	u := l.u(p)
	return math.Abs(p.Sub(l.at).Cross(l.dir)) < onLine && u > -onLine && u < l.line.Run()+onLine
}

// ridgeJoint adds one joint at plan point p of a ridge.
func (f *roofFrame) ridgeJoint(l *roofLine, host string, members []*Member, p geom.Vec2) {
	if m := f.ridgePiece(l, p); m != nil {
		members = append(members, m)
	}
	f.joints = append(f.joints, f.joint(&Joint{
		Kind: plan.RafterRidge, Host: host, Level: f.level, Roof: l.owner.Roof,
		Station: l.owner.station(p), Members: members, At: p.Up(l.height(l.u(p))),
	}))
}

// ridgePiece returns the piece of a ridge at p: a long board is several.
func (f *roofFrame) ridgePiece(l *roofLine, p geom.Vec2) *Member {
	for _, m := range f.index.Within(around(p.Up(l.height(l.u(p)) - l.plumb()/2))) {
		if m.Role == plan.Ridge && m.Roof == l.owner.Roof {
			return m
		}
	}
	return nil
}
