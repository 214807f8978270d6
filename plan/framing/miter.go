package framing

import (
	"fmt"
	"math"
	"strings"

	"galewright/plan"
	"galewright/plan/geom"
)

// Where two walls turn by less than a right angle, as at a bay or a corner cut
// off, square ends would leave a wedge open between their end studs. The plates
// of both are cut along the line from the outer corner to the inner one, at half
// the angle where the walls are of one depth; the end studs stand square and meet
// at the edge on the short side, and a beveled stud beside each fills its half of
// the wedge, so that the two can be nailed together face to face. Where the wedge
// takes but little of an end stud, that stud itself is beveled. Common practice, no
// published source.

// miter is a wall's end that is cut to meet another wall's.
type miter struct {
	tail  bool
	other wallEnd
	cut   geom.Plane  // what of the wall stays
	run   float64     // how far apart the two ends of the cut are along the wall, in
	angle float64     // of the cut off square, degrees
	stock plan.Lumber // of the filler; zero where the end stud itself is beveled
	stud  *Member     // the beveled stud, once it stands
}

// squareTurn is the cosine of the sharpest turn that is mitered, 85°: nearer to a right angle
// one wall runs through and the wedge that stays is less than half an inch.
var squareTurn = math.Cos(85 * math.Pi / 180)

// halfStud is the most, in, that a bevel takes from an end stud of 1 1/2 in before a stud
// of its own is ripped: half of it stays.
const halfStud = plate / 2

// miterCorner cuts the ends of walls of which two alone meet in a story, and returns
// those that are left.
func miterCorner(g []wallEnd) (rest []wallEnd) {
	done := map[wallEnd]bool{}
	for _, e := range g {
		if done[e] {
			continue
		}
		if o, ok := onlyOther(g, e); ok && mitered(e, o) && miterPair(e, o) {
			done[e], done[o] = true, true
		}
	}
	for _, e := range g {
		if !done[e] {
			rest = append(rest, e)
		}
	}
	return rest
}

// onlyOther returns the one end of the group that stands at the height of e, if it
// meets no other either.
func onlyOther(g []wallEnd, e wallEnd) (only wallEnd, ok bool) {
	beside := func(e wallEnd) (out []wallEnd) {
		for _, o := range g {
			if o != e && o.w.beside(e.w) {
				out = append(out, o)
			}
		}
		return out
	}
	if its := beside(e); len(its) == 1 && len(beside(its[0])) == 1 {
		return its[0], true
	}
	return wallEnd{}, false
}

// miterPair cuts two ends to the line from the outer to the inner corner, and tells
// whether it did.
func miterPair(a, z wallEnd) bool {
	outer := cross(a.w.frame, 0, z.w.frame, 0)
	inner := cross(a.w.frame, a.w.Depth(), z.w.frame, z.w.Depth())
	one, ok1 := newMiter(a, z, outer, inner)
	two, ok2 := newMiter(z, a, outer, inner)
	if !ok1 || !ok2 {
		return false
	}
	a.cutAt(one, outer, inner)
	z.cutAt(two, outer, inner)
	return true
}

// mitered tells whether two ends turn the corner of one outline by less than a
// right angle, with flat plates, and the plan leaves the corner to itself.
func mitered(a, z wallEnd) bool {
	turn := a.w.frame.D.Dot(z.w.frame.D)
	return a.w != z.w && a.tail != z.tail && !a.w.rake() && !z.w.rake() &&
		a.spec().Join == "" && z.spec().Join == "" && !a.teed(nil) && !z.teed(nil) &&
		!a.w.body().inLine(z.w.body()) && turn > squareTurn
}

// newMiter works out the cut of end e against o; it fails where no stock is thick
// enough for the bevel.
func newMiter(e, o wallEnd, outer, inner geom.Vec2) (*miter, bool) {
	s0, _ := e.w.frame.Local(outer)
	s1, _ := e.w.frame.Local(inner)
	m := &miter{tail: e.tail, other: o, run: abs(s1 - s0)}
	m.angle = math.Atan2(m.run, e.w.Depth()) * 180 / math.Pi
	n := inner.Sub(outer).Unit().Left()
	if out := n.Dot(e.w.frame.D); (out > 0) != e.tail {
		n = n.Mul(-1)
	}
	m.cut = geom.PlaneAt(outer.Up(0), n.Up(0))
	ok := true
	if m.run > halfStud {
		m.stock, ok = ripped(e.w.Studs, m.run)
	}
	return m, ok
}

// ripped returns the least stock, of the depth of the studs, out of which a stud
// of a breadth is ripped.
func ripped(studs plan.Lumber, breadth float64) (plan.Lumber, bool) {
	_, deep, _ := strings.Cut(studs.Text, "x")
	for _, nominal := range []int{2, 4, 6, 8} {
		l, err := plan.ParseLumber(fmt.Sprintf("%dx%s", nominal, deep))
		if err == nil && l.Breadth >= breadth-geom.Eps && abs(l.Depth-studs.Depth) < 0.3 {
			return l, true
		}
	}
	return plan.Lumber{}, false
}

// cutAt miters the end: sets where its studs and its plates stop.
func (e wallEnd) cutAt(m *miter, outer, inner geom.Vec2) {
	a, _ := e.w.frame.Local(outer)
	z, _ := e.w.frame.Local(inner)
	short, long := min(a, z), max(a, z)
	if !e.tail {
		short, long = long, short
	}
	if m.stock.Ply == 0 {
		short = long
	}
	e.set(short)
	if e.tail {
		e.w.past[1] = long - short
	} else {
		e.w.past[0] = short - long
	}
	e.w.miters = append(e.w.miters, m)
	e.w.meets = append(e.w.meets, meeting{other: m.other.w, tail: m.other.tail, end: e.side(), miter: true})
}

// p0 and p1 are the stations between which the plates lie: past the end studs
// where the end is mitered.
func (w *framedWall) p0() float64 { return w.s0 - w.past[0] }

func (w *framedWall) p1() float64 { return w.s1 + w.past[1] }

// miterAt returns the miter at one end, or nil.
func (w *framedWall) miterAt(side int) *miter {
	for _, m := range w.miters {
		if m.tail == (side > 0) {
			return m
		}
	}
	return nil
}

// trimmed cuts a part of the wall to its mitered ends, and returns the angle of
// the cut, 0 for none.
func (w *framedWall) trimmed(solid geom.Solid, p piece) (geom.Solid, float64) {
	angle := 0.0
	for _, m := range w.miters {
		if m.tail && p.s1 < w.s1-geom.Eps || !m.tail && p.s0 > w.s0+geom.Eps {
			continue
		}
		before := solid.Volume()
		if solid = solid.Clip(m.cut); solid.Volume() < before-1e-6*before {
			angle = m.angle
		}
	}
	return solid, angle
}

// bevels adds the beveled studs that fill the wedges at a wall's mitered ends; where
// there is none, the end stud itself is it.
func (b *builder) bevels(w *framedWall) {
	for _, m := range w.miters {
		switch {
		case len(w.uprights) == 0:
		case m.stock.Ply == 0 && m.tail:
			m.stud = w.uprights[len(w.uprights)-1]
		case m.stock.Ply == 0:
			m.stud = w.uprights[0]
		case m.tail:
			m.stud = b.wallMember(w, piece{role: plan.BeveledStud, s0: w.s1, s1: w.p1(), z0: w.base, z1: w.head, section: m.stock})
		default:
			m.stud = b.wallMember(w, piece{role: plan.BeveledStud, s0: w.p0(), s1: w.s0, z0: w.base, z1: w.head, section: m.stock})
		}
	}
}

// miterJoint finds the corner where the beveled studs of two walls meet, once, at
// the wall that ends there.
func (b *builder) miterJoint(w *framedWall, m *miter) {
	if m.tail == w.mirrored { // of a mirrored house the one that begins there
		return
	}
	side, s := -1, w.Length()
	if w.mirrored {
		side, s = 1, w.Hook
	}
	its := m.other.w.miterAt(side)
	if m.stud == nil || its == nil || its.stud == nil {
		return
	}
	b.newJoint(w, plan.WallCorner, s, min(w.head, m.other.w.head), its.stud, m.stud, w.capAt(min(max(s, w.s0+plate/2), w.s1-plate/2)))
}
