package loadpath

import (
	"cmp"
	"math"
	"slices"

	"galewright/plan"
	"galewright/plan/framing"
	"galewright/plan/geom"
)

// overGirder is one joist, or rim that runs with the joists, with its joints to what
// carries it, in order along it.
type overGirder struct {
	at     float64 // its place across the joists, in
	lo, hi float64 // from where to where it goes
	joints []*framing.Joint
	s      []float64 // of the joints, along it
}

// joistPart is the share of a force at a joist's joint to what carries it.
type joistPart struct {
	joint *framing.Joint
	k     float64
}

// joistFloor is the joists of one level that walls stand on off what is below, and the
// rims that run with them, in order across: of the lowest level all that lie on girders.
type joistFloor struct {
	along int // axis
	lines []*overGirder
}

// joistFloors finds them for every level.
func (b *builder) joistFloors() {
	b.floors = map[*plan.Level]*joistFloor{}
	for _, l := range b.plan.Levels {
		list := b.carriedJoists(l)
		if l.Index == 0 {
			list = b.joistsOnGirders()
		}
		if len(list) > 0 {
			b.floors[l] = &joistFloor{joistAxis(l), linesOf(list, joistAxis(l))}
		}
	}
}

// joistsOnGirders are the joints of the lowest floor's joists, and of the rims that run
// with them, to girders.
func (m *model) joistsOnGirders() (out []*framing.Joint) {
	for _, j := range m.house.Joints {
		if m.liesOver(j) {
			out = append(out, j)
		}
	}
	return out
}

// liesOver tells whether a joint ties a joist to a girder, or a rim that runs with the joists.
func (m *model) liesOver(j *framing.Joint) bool {
	if len(j.Members) < 2 || j.Members[1] == nil || j.Members[1].Role != plan.GirderBeam {
		return false
	}
	x := j.First()
	return j.Kind == plan.JoistGirder || j.Kind == plan.RimGirder && x.B.Sub(x.A).Flat().Unit().Leans(m.piles.joists)
}

// carriedJoists are the joints of an upper floor's joists to plates and beams; none where
// no joist is tied to a plate, for no wall stands on one then.
func (b *builder) carriedJoists(l *plan.Level) (out []*framing.Joint) {
	onPlate := func(j *framing.Joint) bool { return j.Kind == plan.JoistPlate }
	for _, j := range b.house.Joints {
		m := j.First()
		if m == nil || m.Level != l || m.Roof != nil {
			continue
		}
		switch j.Kind {
		case plan.JoistPlate, plan.JoistBeam, plan.JoistHung:
			out = append(out, j)
		}
	}
	if !slices.ContainsFunc(out, onPlate) {
		return nil
	}
	return out
}

// linesOf gathers the joints of joists by joist, in order across them.
func linesOf(joints []*framing.Joint, along int) (out []*overGirder) {
	by := map[*framing.Member]*overGirder{}
	for _, j := range joints {
		m := j.First()
		if by[m] == nil {
			p, q := axis(m.A.Flat(), along), axis(m.B.Flat(), along)
			by[m] = &overGirder{at: axis(m.A.Flat(), 1-along), lo: math.Min(p, q), hi: math.Max(p, q)}
			out = append(out, by[m])
		}
		by[m].joints = append(by[m].joints, j)
	}
	slices.SortStableFunc(out, func(x, y *overGirder) int { return cmp.Or(cmp.Compare(x.at, y.at), cmp.Compare(x.lo, y.lo)) })
	for _, x := range out {
		slices.SortStableFunc(x.joints, func(p, q *framing.Joint) int { return cmp.Compare(axis(p.At.Flat(), along), axis(q.At.Flat(), along)) })
		for _, j := range x.joints {
			x.s = append(x.s, axis(j.At.Flat(), along))
		}
	}
	return out
}

// tips tells whether a force at a place along a joist, off its one joint, has no lever: it
// turns about that.
func (x *overGirder) tips(s float64) bool {
	return len(x.s) == 1 && math.Abs(s-x.s[0]) > framing.RimReach
}

// share brings a force at plan point v by the rim to the joists on both sides of it and
// along each to what carries that, past the last by lever: it is pressed the other way at
// the one before. Joists that would tip take none where there are others; tips tells that
// there are only those.
func (f *joistFloor) share(v geom.Vec2) (out []joistPart, tips bool) {
	s, t := axis(v, f.along), axis(v, 1-f.along)
	var near, firm []*overGirder
	for _, x := range f.lines {
		if s <= x.lo-framing.RimReach || s >= x.hi+framing.RimReach {
			continue
		}
		near = append(near, x)
		if !x.tips(s) {
			firm = append(firm, x)
		}
	}
	if tips = len(firm) == 0; !tips {
		near = firm
	}
	at := make([]float64, len(near))
	for i, x := range near {
		at[i] = x.at
	}
	for _, x := range lever(at, t) {
		line := near[x.i]
		for _, y := range lever(line.s, s) {
			out = append(out, joistPart{line.joints[y.i], x.k * y.k})
		}
	}
	return out, tips
}

// standOnJoists brings the feet of the studs of walls that stand on joists to the joists'
// joints, and the floor that reaches past the last of them by its lever.
func (b *builder) standOnJoists() {
	for _, p := range b.paths {
		f := b.floors[p.w.Level]
		if f == nil {
			continue
		}
		for _, c := range p.carriers {
			if c.base != nil && b.onJoists(c.base) {
				c.joists, c.tips = f.share(c.base.At.Flat())
			}
		}
	}
	for _, l := range b.plan.Levels {
		if f := b.floors[l]; f != nil && l.Index > 0 {
			b.reachingPast(l, f)
		}
	}
}

// onJoists tells whether the foot of a stud stands on joists: on an upper floor off the
// walls below, on the lowest off the girders.
func (m *model) onJoists(foot *framing.Joint) bool {
	if foot.Kind != plan.StudBase || foot.Level == nil {
		return false
	}
	return foot.Level.Index > 0 || len(m.piles.girders) > 0 && !onSill(foot) && m.offGirders(foot.At.Flat(), halfOf(foot.Wall), foot.Members)
}

// offGirders tells whether no girder lies under a plan point or is among the members there.
func (m *model) offGirders(v geom.Vec2, half float64, members []*framing.Member) bool {
	return !m.piles.covers(v, half) && !slices.ContainsFunc(members, func(x *framing.Member) bool { return m.piles.byMember[x] != nil })
}

// halfOf is half of a wall's depth, in; 0 where no wall is.
func halfOf(w *plan.Wall) float64 {
	if w == nil {
		return 0
	}
	return w.Depth() / 2
}

// reachingPast takes the weight of a floor past the last joint of its joists to the walls
// below: more of it to the nearest, off the one inside.
func (b *builder) reachingPast(l *plan.Level, f *joistFloor) {
	psf := b.dead.floor(l)
	for _, x := range f.lines {
		n := len(x.s)
		if n < 2 || x.joints[0].First().Role != plan.Joist {
			continue
		}
		for _, e := range [][2]float64{{x.lo, x.s[0]}, {x.s[n-1], x.hi}} {
			lb := psf * (e[1] - e[0]) * l.JoistSpace / 144
			for _, y := range lever(x.s, (e[0]+e[1])/2) {
				b.weighJoint(x.joints[y.i], y.k*lb)
			}
		}
	}
}

// weighJoint puts weight at a joist's joint on the wall or beam there.
func (b *builder) weighJoint(j *framing.Joint, lb float64) {
	b.joistOn(j, func(p *wallPath, station, k float64) {
		for _, on := range p.places(station) {
			on.c.floor = on.c.floor.add(down(on.k * k * lb))
		}
	})
}

// joistOn shares what a joist brings to a joint to the walls that carry it: the one under
// it, or by lever those at the ends of its beam; what part of it comes to no wall.
func (m *model) joistOn(j *framing.Joint, take func(p *wallPath, station, k float64)) (lost float64) {
	if j.Wall != nil {
		if p := m.byWall[j.Wall]; p != nil && len(p.carriers) > 0 {
			take(p, j.Station, 1)
			return 0
		}
		return 1
	}
	if x := m.beamOf(j); x != nil {
		return m.beamOn(x, j.Station, 1, take, 0)
	}
	return 1
}

// beamOn shares a part k of a force at a place along a beam to the walls at its supports
// and to those of the beams that it hangs on, so many on each other.
func (m *model) beamOn(x *framing.Beam, station, k float64, take func(p *wallPath, station, k float64), on int) (lost float64) {
	at := supportsAlong(x)
	if len(at) == 0 || on > deepest {
		return k
	}
	for _, y := range lever(at, station) {
		u := x.Supports[y.i]
		p := m.byWall[u.Wall]
		switch {
		case u.Beam != nil:
			lost += m.beamOn(u.Beam, u.Station, k*y.k, take, on+1)
		case p != nil && len(p.carriers) > 0:
			take(p, u.Station, k*y.k)
		default:
			lost += k * y.k
		}
	}
	return lost
}
