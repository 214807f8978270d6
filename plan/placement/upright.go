package placement

import (
	"fmt"
	"math"

	"galewright/plan"
	"galewright/plan/framing"
	"galewright/plan/geom"
	"galewright/plan/length"
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
	l.s0, l.s1 = span2(j, l.above)
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
				length.Feet(math.Abs(l.joint.Offset)), l.above.Role),
			Mend: "move one of them, add a stud below, or leave these joints out with where = { lines_up = true }",
		}
	}
	return nil
}

// upright lays a vertical strap over the gap: between stories with equal
// laps, at the base with as much below as the member there takes.
func (x *placer) upright(p *Piece, k, n int) *plan.Diagnostic {
	f, depth, fault := onWall(p.Joint)
	if fault != nil {
		return fault
	}
	l := x.through(p.Joint)
	if fault := l.stacked(); fault != nil {
		return fault
	}
	gap := l.zAbove - l.zBelow
	room := l.zBelow - l.below.Z0
	total := p.cut(gap, p.Item.Lap+min(p.Item.Lap, max(room, 0)))
	low := (total - gap) / 2
	if !l.floor && room > 0 {
		low = min(low, room)
	}
	p.gap, p.Laps = gap, [2]float64{total - gap - low, low}
	p.Laid, p.room = []*framing.Member{l.above, l.below}, [2]float64{l.above.Z1 - l.above.Z0, room}
	p.Face, k, n = x.pick(p, l.above, l.zAbove+1, k, n)
	g := facingOf(f, l.s0, l.s1, depth, p.Face)
	off := spread(k, n, p.wide())
	p.lay(g.n, g.at(l.zBelow-low, off), g.at(l.zAbove+p.Laps[0], off))
	p.setStation(f)
	return nil
}

// toPlate lays a vertical strap from the plates down on the stud or king.
func (x *placer) toPlate(p *Piece, k, n int) *plan.Diagnostic {
	f, depth, fault := onWall(p.Joint)
	if fault != nil {
		return fault
	}
	m := stud(p.Joint)
	top, plate := plates(p.Joint)
	up := top - m.Z1
	total := p.cut(up, p.Item.Lap)
	p.Laps, p.Laid, p.gap = [2]float64{total - up, up}, laid(m, plate), up
	p.room[0] = m.Z1 - m.Z0
	p.Face, k, n = x.pick(p, m, m.Z1-1, k, n)
	s0, s1 := span2(p.Joint, m)
	g := facingOf(f, s0, s1, depth, p.Face)
	off := spread(k, n, p.wide())
	p.lay(g.n, g.at(top-total, off), g.at(top, off))
	p.setStation(f)
	return nil
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

func laid(ms ...*framing.Member) (out []*framing.Member) {
	for _, m := range ms {
		if m != nil {
			out = append(out, m)
		}
	}
	return out
}

// standalone lays a vertical strap on the side of a girder or porch beam and
// down what carries it: half of it above, but no more than the beam is deep.
func (x *placer) standalone(p *Piece, k, n int) *plan.Diagnostic {
	j := p.Joint
	f, half := lineOf(j)
	if p.Face == "" {
		p.Face = plan.Outside
	}
	upper, lower := pile(j)
	total := p.cut(j.Gap, 2*p.Item.Lap)
	up := (total - j.Gap) / 2
	if upper.Z1 > j.At.Z {
		p.room[0] = upper.Z1 - j.At.Z
		up = min(up, p.room[0])
	}
	p.Laps, p.gap = [2]float64{up, total - j.Gap - up}, j.Gap
	p.Laid = laid(upper, lower)
	if lower != nil {
		p.room[1] = lower.Z1 - lower.Z0
	}
	s, _ := f.Local(j.At.Flat())
	g := facingOf(f, s-0.75, s+0.75, 2*half, p.Face)
	off := spread(k, n, p.wide())
	p.lay(g.n, g.at(j.At.Z+up-total, off), g.at(j.At.Z+up, off))
	return nil
}

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

// lineOf returns a frame along the level member of a joint without a wall,
// its origin on the member's outer face, and half the member's breadth.
func lineOf(j *framing.Joint) (geom.Frame, float64) {
	for _, m := range j.Members {
		a, b := m.A.Flat(), m.B.Flat()
		if b.Sub(a).Len() > 1 {
			f, half := geom.NewFrame(a, b), m.Section.Width()/2
			f.Origin = f.Origin.Sub(f.In.Mul(half))
			return f, half
		}
	}
	return geom.NewFrame(geom.Vec2{Y: -0.75}, geom.Vec2{X: 1, Y: -0.75}), 0.75
}

// setStation takes the piece's own station from where its steel lies.
func (p *Piece) setStation(f geom.Frame) {
	p.Station, _ = f.Local(p.Path[0].Flat())
}
