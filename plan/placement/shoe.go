package placement

import (
	"cmp"
	"math"

	"galewright/plan"
	"galewright/plan/framing"
	"galewright/plan/geom"
)

// butt is where one member ends against another: what a hanger or an angle
// between them is laid on.
type butt struct {
	held, on *framing.Member
	d, e     geom.Vec2    // along the held one toward the other; along the other, or across d at a blunt end
	n        geom.Vec3    // of the face it ends at, toward the held one
	foot     float64      // height of the held one's lower edge there
	deep     float64      // plumb depth of the held one there, in
	corner   [2]geom.Vec2 // where the left and right side of the held one meet that face
	sides    [2]abut      // what its left and right side end at
}

// abut is the face that one side of a held member ends at: mostly of what carries
// it, but a hip's end in the corner of two rafters has one of them on each side.
type abut struct {
	on     *framing.Member
	e      geom.Vec2 // along it
	n      geom.Vec3 // of its face, toward the held one
	corner geom.Vec2 // where the held one's side meets that face, or ends before it
	none   bool      // other wood stands in the corner: there is no room for a flange
}

// butts finds how the first member of a joint ends at what carries it.
func (x *placer) butts(w want) (b butt, ok bool) {
	j := w.joint
	b.held = j.First()
	if b.on = role(j, plan.Ridge); b.on == nil || b.on == b.held {
		if len(j.Members) < 2 {
			return b, false
		}
		b.on = j.Members[1]
	}
	near, far := b.held.B, b.held.A
	if far.Sub(j.At).Len() < near.Sub(j.At).Len() {
		near, far = far, near
	}
	if b.d = near.Sub(far).Flat().Unit(); b.d == (geom.Vec2{}) {
		return b, false
	}
	if b.held.Role.IsTruss() { // its bottom chord, on the plates
		near = j.At
	}
	b.e = b.on.B.Sub(b.on.A).Flat().Unit()
	n := b.e.Left()
	if geom.Skims(b.e, b.d) { // an upright, or end to end
		n, b.e = b.d, b.d.Left()
	}
	if n.Dot(b.d) > 0 {
		n = n.Mul(-1)
	}
	b.n = n.Up(0)
	_, reach := extent(b.on, b.n)
	side := b.d.Left().Mul(b.held.Section.Width() / 2)
	for i, p := range []geom.Vec2{near.Flat().Add(side), near.Flat().Sub(side)} {
		b.corner[i] = p.Add(b.d.Mul((reach - p.Dot(n)) / b.d.Dot(n)))
	}
	b.foot, b.deep = b.held.Z0, b.held.Z1-b.held.Z0
	switch {
	case b.held.Role.IsTruss():
		b.foot, b.deep = j.At.Z, b.held.Section.Depth
	case b.held.Roof != nil: // A to B runs along its top edge
		run := near.Sub(far)
		b.deep = b.held.Section.Depth * run.Len() / run.Flat().Len()
		b.foot = near.Z - b.deep
	}
	b.sides = [2]abut{x.abuts(&b, 0, near.Flat()), x.abuts(&b, 1, near.Flat())}
	return b, true
}

// abuts finds what the left (0) or right side of a held member ends at: the first
// wood straight on from it, half-way up, at a plumb face. Where less than 7/10 of
// that half of it ends there, as where a valley only rounds a hip's corner, it is
// the carrier, and no flange has room in that corner.
func (x *placer) abuts(b *butt, i int, near geom.Vec2) abut {
	same := abut{on: b.on, e: b.e, n: b.n, corner: b.corner[i]}
	half := b.held.Section.Width() / 2
	side, ok := x.ahead(b, i, near, half-2*skin)
	if !ok || side.on == b.on {
		return same
	}
	if most, ok := x.ahead(b, i, near, 0.3*half); !ok || most.on != side.on {
		same.corner, same.none = side.corner, true
		return same
	}
	return side
}

// ahead returns the face that a line along the held member, off from its middle
// toward a side, first comes to, with where that side meets it.
func (x *placer) ahead(b *butt, i int, near geom.Vec2, off float64) (abut, bool) {
	_, out := b.side(i)
	back := 3 * b.held.Section.Width() // behind the longest cheek cut
	side := near.Sub(b.d.Mul(back))
	from := side.Add(out.Flat().Mul(off)).Up(b.foot + b.deep/2)
	left := 0.0 // where the line leaves the held one
	for _, r := range x.wood.Through(from, from.Add(b.d.Mul(2*back).Up(0))) {
		if r.Member == b.held {
			left = r.To
			continue
		}
		if left == 0 {
			continue
		}
		at := from.Add(b.d.Mul(r.From).Up(0))
		a, ok := b.faceOf(r.Member, at)
		if !ok || r.From > left+4*skin {
			return abut{}, false
		}
		edge := side.Add(out.Flat().Mul(b.held.Section.Width() / 2))
		a.corner = edge.Add(b.d.Mul(at.Flat().Sub(edge).Dot(a.n.Flat()) / b.d.Dot(a.n.Flat())))
		return a, true
	}
	return abut{}, false
}

// faceOf returns the plumb face of a member at a point that looks at the held one.
func (b *butt) faceOf(m *framing.Member, at geom.Vec3) (abut, bool) {
	for _, s := range m.Solid {
		for _, p := range s.Planes() {
			if math.Abs(p.N.Z) < 1e-6 && p.N.Dot(b.d.Up(0)) < -geom.Eps && math.Abs(p.N.Dot(at)-p.C) < skin {
				return abut{on: m, e: p.N.Flat().Left(), n: p.N}, true
			}
		}
	}
	return abut{}, false
}

// side returns which way along the carrier is away from the held member's
// left (0) or right (1) side, and that side's normal.
func (b *butt) side(i int) (away, n geom.Vec3) {
	out := b.d.Left()
	if i == 1 {
		out = out.Mul(-1)
	}
	e := b.e
	if b.sides[i].on != nil {
		e = b.sides[i].e
	}
	if e.Dot(out) < 0 {
		e = e.Mul(-1)
	}
	return e.Up(0), out.Up(0)
}

// hanger lays a hanger: a flange on each side of the member it hangs, and one
// beside each on the face that it hangs from, where that goes on; all as high
// as the item is long, from the held member's lower edge up.
func (x *placer) hanger(w want) (Lie, *plan.Diagnostic) {
	b, ok := x.butts(w)
	if !ok {
		return noWay(w)
	}
	tall := cmp.Or(w.item.Length, 0.7*b.deep)
	held, other := w.item.LegLengths()
	lie := Lie{Face: cmp.Or(w.face, plan.Outside), Path: []geom.Vec3{w.joint.At}, Station: w.joint.Station}
	hung, from := Laid{Member: b.held, Lap: tall}, Laid{Member: b.on, Lap: tall, of: len(b.sides)}
	if b.sides[0].on != b.on && b.sides[1].on != b.on {
		from.Member = b.sides[x.leftRight()[0]].on
	}
	for _, i := range x.leftRight() {
		a := b.sides[i]
		_, n := b.side(i)
		x.flange(w, &lie, &hung, b.upright(w, n, a.corner.Sub(b.d.Mul(held/2)), tall, held))
		tab, wood, clear := x.tab(w, b, i, tall, other)
		if !a.none && clear && (wood || !x.tabs(w, b, tall, other)) {
			x.flange(w, &lie, &from, tab)
			from.with(a.on)
		}
	}
	lie.Laid = []Laid{hung, from}
	return lie, nil
}

// leftRight are the sides of a held member, its left one (0) first; in a mirrored house its
// right one.
func (x *placer) leftRight() [2]int {
	if x.first() == plan.Right {
		return [2]int{1, 0}
	}
	return [2]int{0, 1}
}

// upright returns a plate of a width standing on a plumb face at a point.
func (b *butt) upright(w want, n geom.Vec3, at geom.Vec2, tall, wide float64) geom.Plate {
	p := w.plate(n, at.Up(b.foot), at.Up(b.foot+tall))
	p.Width = wide
	return p
}

// tab returns the flange beside the held member's left (0) or right side on
// what it hangs from, whether that goes on so far, and whether nothing else
// ends against the face there.
func (x *placer) tab(w want, b butt, i int, tall, wide float64) (p geom.Plate, wood, clear bool) {
	away, _ := b.side(i)
	a := b.sides[i]
	p = b.upright(w, a.n, a.corner.Add(away.Flat().Mul(wide/2)), tall, wide)
	mid := p.At(tall/2, 0)
	others := func(m *framing.Member) bool { return m != b.held && m != a.on }
	clear = len(x.wood.Stretches(mid.Add(a.n.Mul(2*skin)), a.n, probeFar, others)) == 0
	return p, x.along(a.on, mid, p.N, away, wide/2) >= edge, clear
}

// tabs tells whether either tab finds wood that is clear.
func (x *placer) tabs(w want, b butt, tall, wide float64) bool {
	for i := range 2 {
		if _, wood, clear := x.tab(w, b, i, tall, wide); wood && clear && !b.sides[i].none {
			return true
		}
	}
	return false
}

// flange adds a band of one plate, whose fasteners start at its first point.
func (x *placer) flange(w want, l *Lie, on *Laid, p geom.Plate) {
	on.starts = append(on.starts, Start{len(l.Bands), false})
	// from its head, for the foot may hang lower than what it is on; from the foot where the head stands over a rafter that falls
	b := geom.Band{p}
	on.Room = max(on.Room, cmp.Or(x.room(on.Member, b.Turned(), 0), x.room(on.Member, b, 0)))
	l.Bands = append(l.Bands, geom.Band{p})
}

// angle lays a clip in the angle where one member ends at the side of another:
// a leg on the side of the one held and a leg beside it on the other, folded
// plumb between them, half-way up.
func (x *placer) angle(w want) (Lie, *plan.Diagnostic) {
	b, ok := x.butts(w)
	if !ok {
		return noWay(w)
	}
	i := x.leftRight()[w.k%2]
	if w.other {
		i = 1 - i
	}
	if w.face == plan.Left || w.face == plan.Right {
		i = x.faceSide(w, b)
	}
	away, n := b.side(i)
	held, other := w.item.LegLengths()
	fold := b.corner[i].Up(b.foot + b.deep/2 + spread(w.k/2, (w.n+1)/2, w.wide()))
	lie := Lie{Face: cmp.Or(w.face, plan.Outside), Path: []geom.Vec3{w.joint.At}, Station: w.joint.Station}
	if w.joint.Wall != nil {
		lie.Station = stationOf(w.joint.Wall.Frame(), []geom.Vec3{fold})
		lie.Path = []geom.Vec3{fold.Add(geom.Vec3{Z: w.joint.At.Z - fold.Z})}
	}
	onOther := w.plate(b.n, fold.Add(away.Mul(other)), fold)
	onHeld := w.plate(n, fold, fold.Sub(b.d.Up(0).Mul(held)))
	return x.legs(lie, b.held, b.on, onOther, onHeld), nil
}

// faceSide returns the side, 0 for left, of the held member that a face asked
// for means: left and right as seen along the host's stations.
func (x *placer) faceSide(w want, b butt) int {
	f := x.frameAt(w.joint, b.on)
	away, _ := b.side(0)
	if toward := away.Flat().Dot(f.D); (toward < 0) == (w.face == plan.Left) {
		return 0
	}
	return 1
}

// shoe lays a post's base or cap: flanges on the outside and the inside of the
// post and, of a cap, of the beam on it, half its length on each; of a base its
// whole length up the post.
func (x *placer) shoe(w want) (Lie, *plan.Diagnostic) {
	j := w.joint
	upper, lower := pile(j)
	f := x.lineOf(j)
	s, _ := f.Local(j.At.Flat())
	long := cmp.Or(w.item.Length, 6)
	lie := Lie{Face: cmp.Or(w.face, plan.Outside), Path: []geom.Vec3{j.At}, Station: j.Station}
	off := w.spread()
	if lower == nil || w.item.Kind.Name == plan.PostBaseItem && j.Kind == plan.PostBase {
		lie.Laid = []Laid{x.flanges(w, &lie, f, s+off, upper, j.At.Z, j.At.Z+long)}
		return lie, nil
	}
	up := x.flanges(w, &lie, f, s+off, upper, j.At.Z, j.At.Z+long/2)
	down := x.flanges(w, &lie, f, s+off, lower, j.At.Z-j.Gap, j.At.Z-j.Gap-long/2)
	lie.Laid = []Laid{up, down}
	return lie, nil
}

// flanges adds a plate on the outside and one on the inside of a member, from
// one height to the free end at another, from which its fasteners are laid.
func (x *placer) flanges(w want, l *Lie, f geom.Frame, s float64, m *framing.Member, from, to float64) Laid {
	on := Laid{Member: m, Lap: math.Abs(to - from), Room: math.Inf(1)}
	for _, face := range []plan.Face{plan.Outside, plan.Inside} {
		g := sideOf(f, s, m, face)
		b := geom.Band{w.plate(g.n, g.at(from, 0), g.at(to, 0))}
		on.starts = append(on.starts, Start{len(l.Bands), true})
		on.Room = min(on.Room, x.room(m, b, 0))
		l.Bands = append(l.Bands, b)
	}
	return on
}
