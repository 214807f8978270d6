package placement

import (
	"fmt"
	"math"

	"galewright/plan"
	"galewright/plan/framing"
	"galewright/plan/geom"
)

// link is what an upright strap, hold-down or rod ties: the member above, the
// one below, and what lies between.
type link struct {
	joint        *framing.Joint // whose members and gap count
	above, below *framing.Member
	zAbove       float64 // foot of the member above
	zBelow       float64 // top of the face lapped below
	s0, s1       float64 // stations both members share
	floor        bool    // a story lies between, and below it stands an upright
}

// through finds what a vertical piece at j ties. The end of a shear wall
// speaks of the same post as the joint through the floor or to the base.
func (x *placer) through(j *framing.Joint) link {
	if j.Kind == plan.WallEnd {
		for _, kind := range []plan.JointKind{plan.StudStud, plan.StudBase} {
			for _, k := range x.byFirst[j.First()] {
				if k.Kind == kind {
					return x.through(k)
				}
			}
		}
	}
	l := link{joint: j, above: j.First()}
	l.zAbove = l.above.Z0
	l.zBelow = l.zAbove - j.Gap
	l.s0, l.s1 = breadthAt(j, l.above)
	for _, m := range j.Members[1:] {
		if math.Abs(m.Z1-l.zBelow) < 0.125 && (l.below == nil || m.Z0 < l.below.Z0) {
			l.below = m
		}
	}
	if l.below == nil && len(j.Members) > 1 {
		l.below = j.Members[len(j.Members)-1]
	}
	if j.Kind == plan.StudStud {
		if !j.Below {
			l.below = nil
		} else if l.floor = standing(l.below); l.floor {
			mid, half := (l.s0+l.s1)/2+j.Offset, (l.below.S1-l.below.S0)/2
			l.s0, l.s1 = max(l.s0, mid-half), min(l.s1, mid+half)
		}
	}
	return l
}

// standing tells whether a member carries uplift down by itself: over an
// opening a stud finds a header or a cripple instead.
func standing(m *framing.Member) bool {
	return m.Role.FullHeight() || m.Role == plan.Jack
}

// minShared is the least breadth that two studs, one over the other, must
// share for a nail line to hold in both: 3/8 in of edge on each side (common
// practice, no published source), in.
const minShared = 2 * edge

// stacked says why there is nothing to tie to below, or nil.
func (l link) stacked() *plan.Diagnostic {
	if l.below == nil {
		return &plan.Diagnostic{
			Severity: plan.Warning, Code: "stud-none-below",
			Summary: fmt.Sprintf("there is no stud below the %s above: nothing is placed", l.above.Role),
			Mend:    "add a stud or blocking below, or leave these joints out with where = { lines_up = true }",
		}
	}
	if l.floor && l.s1-l.s0 < minShared-geom.Eps {
		return &plan.Diagnostic{
			Severity: plan.Warning, Code: "studs-out-of-line",
			Summary: fmt.Sprintf("the stud below is offset %s from the %s above, more than a strap can follow: nothing is placed",
				l.joint.Units.Length(math.Abs(l.joint.Offset)), l.above.Role),
			Mend: "move one of them, add a stud below, or leave these joints out with where = { lines_up = true }",
		}
	}
	return nil
}

// upright lays a vertical strap over the gap: between stories with equal
// laps, at the base with as much below as the member there takes.
func (x *placer) upright(w want) (Lie, *plan.Diagnostic) {
	f, depth, fault := onWall(w.joint)
	if fault != nil {
		return Lie{}, fault
	}
	l := x.through(w.joint)
	if fault := l.stacked(); fault != nil {
		return Lie{}, fault
	}
	if w.to != "" && w.joint.Kind == plan.StudBase {
		return x.downTo(w, l, f, depth)
	}
	gap := l.zAbove - l.zBelow
	room := l.zBelow - l.below.Z0
	total, cut := w.cut(gap, w.item.Lap+min(w.item.Lap, max(room, 0)))
	low := (total - gap) / 2
	if !l.floor && room > 0 {
		low = min(low, room)
	}
	w = x.pick(w, l.above, l.zAbove+1)
	g := facingOf(f, l.s0, l.s1, depth, w.face)
	off := w.spread()
	up := total - gap - low
	b := geom.Band{w.plate(g.n, g.at(l.zBelow-low, off), g.at(l.zAbove+up, off))}
	lie := x.strap(Lie{Face: w.face, Gap: gap, Cut: cut}, b, lap{l.above, up, true}, lap{l.below, low, false})
	lie.Station = stationOf(f, lie.Path)
	return lie, nil
}

// toPlate lays a vertical strap from the plates, or of a jack from its header,
// down on the stud or king.
func (x *placer) toPlate(w want) (Lie, *plan.Diagnostic) {
	f, depth, fault := onWall(w.joint)
	if fault != nil {
		return Lie{}, fault
	}
	m := stud(w.joint)
	top, over := plates(w.joint)
	total, cut := w.cut(top-m.Z1, w.item.Lap)
	if over == nil {
		if over = role(w.joint, plan.Header); over != nil {
			top = m.Z1 + min(total/2, over.Z1-over.Z0)
		}
	}
	up := top - m.Z1
	switch w.face {
	case plan.Left, plan.Right:
		return noWay(w) // what lies on the upright stands in its way
	case plan.Inside:
	default:
		w.face = plan.Outside
	}
	s0, s1 := breadthAt(w.joint, m)
	g := facingOf(f, s0, s1, depth, w.face)
	off := w.spread()
	top -= m.Z1 - x.headAt(m, g, off)
	b := geom.Band{w.plate(g.n, g.at(top-total, off), g.at(top, off))}
	lie := x.strap(Lie{Face: w.face, Gap: up, Cut: cut}, b, lap{m, total - up, false}, lap{over, up, true})
	lie.Station = stationOf(f, lie.Path)
	return lie, nil
}

// headAt returns the height of an upright's head, off along one of its faces:
// under a plate that climbs it is beveled.
func (x *placer) headAt(m *framing.Member, g facing, off float64) float64 {
	if t := x.along(m, g.at(m.Z0, off), g.n, geom.Vec3{Z: 1}, farthest); t > 0 {
		return min(m.Z0+t, m.Z1)
	}
	return m.Z1
}

// stud returns the upright a strap at the joint lies on: at a header's end
// the king, else the member held.
func stud(j *framing.Joint) *framing.Member {
	if j.Kind == plan.OpeningHead {
		if m := role(j, plan.King, plan.Stud, plan.Post); m != nil {
			return m
		}
	}
	return j.First()
}

// standalone lays a vertical strap on the face of a girder or porch beam and
// down what carries it: half of it above, but no more than the beam is deep.
// Where the two faces are not flush it bends over to the lower one.
func (x *placer) standalone(w want) (Lie, *plan.Diagnostic) {
	j := w.joint
	if w.face == "" {
		w.face = plan.Outside
	}
	upper, lower := pile(j)
	if w.face != plan.Outside && w.face != plan.Inside || lower == nil {
		return noWay(w)
	}
	if w.face == plan.Inside && (j.Seat == framing.Notched || j.Seat == framing.Beside) {
		return Lie{}, &plan.Diagnostic{
			Code: "no-way-to-lie", Summary: "the pile runs up against the inside face of the girder: no strap can lie there",
			Mend: `put it on face = "outside", two of them with count = 2`,
		}
	}
	f := x.lineOf(j)
	s, _ := f.Local(j.At.Flat())
	if o := otherHalf(j); o != nil && w.face == plan.Inside {
		upper = o
	}
	hi, lo := sideOf(f, s, upper, w.face), sideOf(f, s, lower, w.face)
	step := hi.out(lo)
	gap := j.Gap + math.Abs(step)
	total, cut := w.cut(gap, 2*w.item.Lap)
	up := (total - gap) / 2
	if upper.Z1 > j.At.Z {
		up = min(up, upper.Z1-j.At.Z)
	}
	low, off := total-gap-up, x.besideBolts(w, lower)
	var b geom.Band
	if math.Abs(step) > touch {
		n := geom.Vec3{Z: math.Copysign(1, step)}
		foot := j.At.Z - j.Gap
		if step < 0 {
			foot = j.At.Z
		}
		b = geom.Band{
			w.plate(lo.n, lo.at(j.At.Z-j.Gap-low, off), lo.at(foot, off)),
			w.plate(n, lo.at(foot, off), hi.at(foot, off)),
			w.plate(hi.n, hi.at(foot, off), hi.at(j.At.Z+up, off)),
		}
	} else {
		b = geom.Band{w.plate(hi.n, hi.at(j.At.Z-j.Gap-low, off), hi.at(j.At.Z+up, off))}
	}
	lie := x.strap(Lie{Face: w.face, Gap: gap, Cut: cut, Station: j.Station}, b, lap{upper, up, true}, lap{lower, low, false})
	return lie, nil
}

// besideBolts returns how far along its girder from the pile's middle a strap
// lies: two on one face stand at the pile's edges, a quarter of an inch in, so
// that the washers of bolts find room between them.
func (x *placer) besideBolts(w want, pile *framing.Member) float64 {
	if out := pile.Section.Width()/2 - w.wide()/2 - pileEdge; w.n == 2 && out > w.wide()/2 && w.joint.Kind == plan.GirderPile {
		return out * float64(2*w.k-1)
	}
	return w.spread()
}

// pileEdge is how far a strap stays from a pile's edge, in (common practice, no
// published source).
const pileEdge = 0.25

// pile returns the member held at a joint off the walls, and the upright
// that carries it, or at a post's base what it stands on.
func pile(j *framing.Joint) (upper, lower *framing.Member) {
	upper = j.First()
	for _, m := range j.Members {
		if m != upper && m.Role != upper.Role {
			lower = m
		}
	}
	return upper, lower
}

// lineOf returns a frame along the middle line of the level member of a joint
// without a wall; of a post by itself, along its porch.
func (x *placer) lineOf(j *framing.Joint) geom.Frame {
	for _, m := range j.Members {
		if a, b := m.A.Flat(), m.B.Flat(); b.Sub(a).Len() > 1 && math.Abs(b.Sub(a).Len()-m.B.Sub(m.A).Len()) < 1 {
			return geom.NewFrame(a, b)
		}
	}
	f := geom.NewFrame(geom.Vec2{}, x.hostLine(j))
	f.Origin = j.At.Flat()
	return f
}

// hostLine is the direction of what a joint without a level member stands on: of its porch,
// its beam, or its roof's ridge.
func (x *placer) hostLine(j *framing.Joint) geom.Vec2 {
	for _, p := range x.house.Plan.Porches {
		if p.Name == j.Host {
			return p.To.Sub(p.From)
		}
	}
	for _, b := range x.house.Plan.Beams {
		if b.Name == j.Host {
			return b.To.Sub(b.From)
		}
	}
	in := x.house.Plan.Lay.Way(geom.Vec2{Y: 1}) // of a ridge from west to east as written
	if j.Roof != nil && j.Roof.RidgeAxis() != in.Right().MainAxis() {
		in = x.house.Plan.Lay.Way(geom.Vec2{X: -1})
	}
	return in.Right()
}

// sideOf returns the outside or inside face of a member that a frame runs
// along, at station s, as its solids have it.
func sideOf(f geom.Frame, s float64, m *framing.Member, face plan.Face) facing {
	in := f.In.Up(0)
	lo, hi := extent(m, in)
	g := facing{f: f, s: s, t: lo - f.Origin.Dot(f.In), n: in.Mul(-1), across: f.D.Up(0)}
	if face == plan.Inside {
		g.t, g.n = hi-f.Origin.Dot(f.In), in
	}
	return g
}

// out returns how much farther out o lies than g, both looking one way, in.
func (g facing) out(o facing) float64 { return (o.t - g.t) * g.f.In.Up(0).Dot(g.n) }

// stationOf returns the station at which a piece lies, from its path.
func stationOf(f geom.Frame, path []geom.Vec3) float64 {
	s, _ := f.Local(path[0].Flat())
	return s
}
