package framing

import (
	"cmp"
	"math"
	"slices"

	"galewright/plan"
	"galewright/plan/geom"
)

// beamJoints finds what meets each beam: what carries it, and the joists that lie on it
// or hang on it.
func (b *builder) beamJoints() {
	for _, fb := range b.beams {
		for _, u := range fb.Supports {
			b.beamEnd(fb, u)
		}
		b.postJoints(fb)
		var found []*Joint
		if fb.role == plan.FlushBeam {
			found = b.hungJoists(fb)
		} else {
			found = b.joistsOver(fb)
		}
		slices.SortStableFunc(found, func(x, y *Joint) int {
			_, tx := fb.body.f.Local(x.First().Middle())
			_, ty := fb.body.f.Local(y.First().Middle())
			return cmp.Or(cmp.Compare(math.Round(x.Station*1000), math.Round(y.Station*1000)), cmp.Compare(tx, ty))
		})
		for _, j := range found {
			j.Tributary = spaced(found, j.Station, joistSpace(b.plan, j))
			b.joint(j)
		}
	}
}

// joistSpace is the spacing of a joist's floor or ceiling, in.
func joistSpace(p *plan.Plan, j *Joint) float64 {
	m := j.First()
	switch next := p.Above(j.Level); {
	case m.Roof != nil:
		return max(m.Roof.CeilingSpace, m.Roof.Spacing)
	case m.Level != nil:
		return m.Level.JoistSpace
	case next != nil:
		return next.JoistSpace
	}
	return 0
}

// Middle returns the plan point of the middle of a member's center line.
func (m *Member) Middle() geom.Vec2 { return m.A.Add(m.B).Mul(0.5).Flat() }

// beamEnd adds the joint of a beam and the wall or beam that it hangs from or lies on.
func (b *builder) beamEnd(fb *framedBeam, u BeamSupport) {
	if u.Beam != nil {
		b.joint(&Joint{
			Kind: plan.BeamHung, Host: u.Beam.Name, Level: fb.level, Station: u.Station, At: u.At, Members: []*Member{b.pieceAt(fb, u.Along), u.On}, Below: true,
		})
		return
	}
	w := b.byWall[u.Wall]
	if w == nil {
		return
	}
	kind := plan.BeamEnd
	if u.Seat {
		kind = plan.BeamSeat
	}
	m := b.pieceAt(fb, u.Along)
	j := b.newJoint(w, kind, u.Station, u.At.Z, m, u.On)
	j.At, j.Level, j.Below = u.At, fb.FloorBeam.Level, true
}

// pieceAt returns the piece of a beam at a station: where it breaks the first, as in the
// house as written.
func (b *builder) pieceAt(fb *framedBeam, s float64) *Member {
	list := b.inOrder(slices.Clone(fb.Pieces))
	for _, m := range list {
		if from, _ := fb.body.f.Local(m.A.Flat()); from-geom.Eps <= s && s <= from+m.Length+geom.Eps {
			return m
		}
	}
	if s < fb.body.s0 {
		return fb.Pieces[0]
	}
	return fb.Pieces[len(fb.Pieces)-1]
}

// joistsOver finds the joists of floor and ceiling that lie on a dropped beam.
func (b *builder) joistsOver(fb *framedBeam) (out []*Joint) {
	g := &framedGirder{body: fb.body, z0: fb.foot, z1: fb.top, pieces: fb.Pieces, mirrored: b.plan.Lay.Mirrored}
	lo, hi := fb.bounds()
	for _, m := range b.index.Within(lo.Up(fb.top-1), hi.Up(fb.top+1)) {
		if m.Role != plan.Joist || b.house.Splices(m) || fb.body.inLine(body{f: geom.NewFrame(m.A.Flat(), m.B.Flat())}) {
			continue
		}
		if at, piece, ok := g.carries(m.Solid[0]); ok {
			s, _ := fb.body.f.Local(at.Flat())
			out = append(out, &Joint{Kind: plan.JoistBeam, Host: fb.Name, Level: fb.level, Station: s, At: at, Members: []*Member{m, piece}, Below: true})
		}
	}
	return out
}

// hungJoists finds the joists that end at a flush beam's faces.
func (b *builder) hungJoists(fb *framedBeam) (out []*Joint) {
	lo, hi := fb.bounds()
	reach := geom.Vec2{X: 1, Y: 1}
	for _, m := range b.index.Within(lo.Sub(reach).Up(fb.foot), hi.Add(reach).Up(fb.top)) {
		ours := m.Level == fb.level && m.Roof == nil
		if fb.Carries == nil {
			ours = m.Roof != nil && !b.house.Splices(m)
		}
		if m.Role != plan.Joist || !ours || !geom.Square(m.B.Sub(m.A).Flat().Unit(), fb.Frame.D) {
			continue
		}
		for _, p := range []geom.Vec3{m.A, m.B} {
			s, t := fb.body.f.Local(p.Flat())
			if s < fb.body.s0-sixteenth || s > fb.body.s1+sixteenth || min(math.Abs(t), math.Abs(t-fb.body.d)) > sixteenth {
				continue
			}
			on := b.pieceAt(fb, s)
			at := p
			at.Z = (max(m.Z0, on.Z0) + min(m.Z1, on.Z1)) / 2
			out = append(out, &Joint{Kind: plan.JoistHung, Host: fb.Name, Level: fb.level, Station: s, At: at, Members: []*Member{m, on}, Below: true})
		}
	}
	return out
}

// bounds is a beam's extent on plan.
func (fb *framedBeam) bounds() (lo, hi geom.Vec2) {
	a, z := fb.body.f.Box(fb.body.s0, fb.body.s1, 0, fb.body.d, 0, 1).Bounds()
	return a.Flat(), z.Flat()
}
