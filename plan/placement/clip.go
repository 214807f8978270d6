package placement

import (
	"cmp"
	"fmt"
	"math"
	"slices"
	"strings"

	"galewright/plan"
	"galewright/plan/framing"
	"galewright/plan/geom"
)

// body lays a piece that is one place: a clip, base, cap, hanger or generic.
func (x *placer) body(w want) (Lie, *plan.Diagnostic) {
	j := w.joint
	if ofDormer(j) {
		return x.dormerFace(w)
	}
	switch w.item.Kind.Name {
	case plan.HangerItem:
		if role(j, plan.ValleyBoard) != nil {
			return noWay(w)
		}
		return x.hanger(w)
	case plan.PostBaseItem, plan.PostCapItem:
		return x.shoe(w)
	}
	switch j.Kind.Lies() {
	case plan.LiesOverRidge:
		if role(j, plan.ValleyBoard) != nil {
			return x.onBoard(w)
		}
		return x.angle(w)
	case plan.LiesAtRafter:
		return x.rafterClip(w)
	case plan.LiesStandalone:
		return x.shoe(w)
	case plan.LiesRound:
		return x.corner(w)
	case plan.LiesOver:
		if j.Kind == plan.ValleyTruss {
			return x.frameClip(w)
		}
		return x.clipOver(w)
	case plan.LiesAgainst:
		return x.angle(w)
	case plan.LiesOnSlope:
		return x.onSlope(w)
	case plan.LiesAlong:
		return x.clipAlong(w)
	case plan.LiesToPlate:
		if j.Kind == plan.OpeningHead && (speaksOf(w, plan.Header) || role(j, plan.TopPlate, plan.UpperPlate) == nil) {
			return x.headerClip(w)
		}
		return x.studClip(w)
	case plan.LiesUpright:
		return x.studClip(w)
	}
	return noWay(w)
}

// clipAlong lays a clip where members meet end to end or end against side.
func (x *placer) clipAlong(w want) (Lie, *plan.Diagnostic) {
	switch {
	case role(w.joint, plan.Sill) != nil && w.joint.First().Role == plan.Sill:
		return x.sillClip(w)
	case w.joint.First().Role == plan.Header:
		return x.headerClip(w)
	}
	return x.level(w)
}

// speaksOf tells whether a part of the item's nails names a role: "to header".
func speaksOf(w want, role plan.Role) bool {
	return slices.ContainsFunc(w.item.Fasteners, func(f plan.Fasteners) bool { return strings.Contains(f.Part, string(role)) })
}

// legs makes the lie of a clip of two legs: that on the other member, from its
// free end to the fold, then that on the member held.
func (x *placer) legs(l Lie, held, other *framing.Member, onOther, onHeld geom.Plate) Lie {
	b := geom.Band{onOther, onHeld}
	return x.strap(l, b, lap{held, onHeld.Len(), true}, lap{other, onOther.Len(), false})
}

// studClip lays a clip at an upright's foot or head. On the upright's side one
// leg is on it and the other turned out onto the plate it stands on or under;
// on a face of the wall it is flat over both, no more of it on the plates than
// they are thick.
func (x *placer) studClip(w want) (Lie, *plan.Diagnostic) {
	f, depth, fault := onWall(w.joint)
	if fault != nil {
		return Lie{}, fault
	}
	m := stud(w.joint)
	z, way := m.Z0, 1.0
	if w.joint.Kind.Lies() == plan.LiesToPlate {
		z, way = m.Z1, -1
	}
	plate, thick := x.meets(w.joint, way)
	w = x.pick(w, m, z+way)
	s0, s1 := breadthAt(w.joint, m)
	g := facingOf(f, s0, s1, depth, w.face)
	off := w.spread()
	held, other := w.item.LegLengths()
	up := geom.Vec3{Z: way}
	lie := Lie{Face: w.face, Path: []geom.Vec3{g.at(z, off)}}
	lie.Station = stationOf(f, lie.Path)
	if w.face == plan.Outside || w.face == plan.Inside {
		lay := min(other, thick)
		a := g.at(z, off)
		return x.legs(lie, m, plate, w.plate(g.n, a.Sub(up.Mul(lay)), a), w.plate(g.n, a, a.Add(up.Mul(held+other-lay)))), nil
	}
	out := g.n
	if plate != nil { // on a rake wall it climbs
		if run := plate.B.Sub(plate.A).Unit(); math.Abs(run.Z) > geom.Eps && !geom.Upright(run) {
			out = run.Mul(math.Copysign(1, run.Dot(g.n)))
			z = x.headAt(m, g, off)
		}
	}
	a := g.at(z, off)
	n := out.Cross(g.across).Unit()
	if n.Dot(up) < 0 {
		n = n.Mul(-1)
	}
	return x.legs(lie, m, plate, w.plate(n, a.Add(out.Mul(other)), a), w.plate(g.n, a, a.Add(up.Mul(held)))), nil
}

// meets returns what an upright of the joint meets at its foot (way 1) or head
// (way -1), and how much of it there is for a clip laid flat over both, in.
func (x *placer) meets(j *framing.Joint, way float64) (*framing.Member, float64) {
	if way < 0 {
		if top, plate := plates(j); plate != nil {
			if lower := role(j, plan.TopPlate); lower != nil {
				plate = lower
			}
			return plate, max(top-stud(j).Z1, 0)
		}
		if h := role(j, plan.Header); h != nil {
			return h, h.Z1 - h.Z0
		}
	}
	for _, k := range []*framing.Joint{j, x.through(j).joint} {
		if p := role(k, plan.BottomPlate, plan.SillPlate); p != nil && way > 0 {
			return p, p.Z1 - p.Z0
		}
	}
	if len(j.Members) > 1 {
		return j.Members[1], j.Members[1].Z1 - j.Members[1].Z0
	}
	return nil, 0
}

// headerClip lays a clip flat on a face of the wall over a header's end and
// the upright it ends at.
func (x *placer) headerClip(w want) (Lie, *plan.Diagnostic) {
	f, depth, fault := onWall(w.joint)
	if fault != nil {
		return Lie{}, fault
	}
	header, king := w.joint.First(), role(w.joint, plan.King, plan.Stud, plan.Post)
	if header == nil || king == nil {
		return noWay(w)
	}
	if w.face != plan.Inside {
		w.face = plan.Outside
	}
	z := min((header.Z0+header.Z1)/2, header.Z0+lowEdge+w.wide()/2) // low: straps of the header's end come down on the king
	return x.across(w, f, depth, header, king, z), nil
}

// lowEdge is how far above a header's underside the clip at its end begins, in.
const lowEdge = 0.5

// across lays a clip flat along a wall's face from a level member onto the
// upright at its end.
func (x *placer) across(w want, f geom.Frame, depth float64, level, upright *framing.Member, z float64) Lie {
	s, n, t := w.joint.Station, f.In.Up(0).Mul(-1), 0.0
	if w.face == plan.Inside {
		n, t = n.Mul(-1), depth
	}
	toward := math.Copysign(1, upright.Mid()-level.Mid())
	z += w.spread()
	held, other := w.item.LegLengths()
	at := func(d float64) geom.Vec3 { return f.At(s+toward*d, t, z) }
	lie := Lie{Face: w.face, Path: []geom.Vec3{at(0)}, Station: s}
	return x.legs(lie, level, upright, w.plate(n, at(other), at(0)), w.plate(n, at(0), at(-held)))
}

// sillClip lays a clip in the angle under a sill's end: one leg on its
// underside, the other down the side of the upright it ends at; with a face of
// the wall asked for, flat over both.
func (x *placer) sillClip(w want) (Lie, *plan.Diagnostic) {
	f, depth, fault := onWall(w.joint)
	if fault != nil {
		return Lie{}, fault
	}
	sill := w.joint.First()
	if len(w.joint.Members) < 2 {
		return noWay(w)
	}
	up := w.joint.Members[1]
	if w.face == plan.Outside || w.face == plan.Inside {
		return x.across(w, f, depth, sill, up, (sill.Z0+sill.Z1)/2), nil
	}
	toward := math.Copysign(1, up.Mid()-sill.Mid())
	w.face = plan.Right
	if toward > 0 {
		w.face = plan.Left
	}
	held, other := w.item.LegLengths()
	s := w.joint.Station
	at := func(d, z float64) geom.Vec3 { return f.At(s-toward*d, depth/2+w.spread(), sill.Z0-z) }
	lie := Lie{Face: w.face, Path: []geom.Vec3{at(0, 0)}, Station: s}
	return x.legs(lie, sill, up, w.plate(f.D.Up(0).Mul(-toward), at(0, other), at(0, 0)), w.plate(geom.Vec3{Z: -1}, at(0, 0), at(held, 0))), nil
}

// rafterClip lays a clip beside a rafter where it bears: one leg on the face
// of the plates or beam below the seat, the other up the rafter's side from the
// seat, over the plates. Where the rafter ends against the side of a ledger
// instead, the clip is in the angle between the two.
func (x *placer) rafterClip(w want) (Lie, *plan.Diagnostic) {
	j := w.joint
	m, on := j.First(), present(j.Members[min(1, len(j.Members)):]...)
	if len(on) == 0 {
		return noWay(w)
	}
	carrier := on[0]
	seat, plate := plates(j)
	if plate != nil {
		carrier = plate
	}
	if carrier.Z1 > seat+1 && math.Abs(carrier.B.Z-carrier.A.Z) < touch {
		return x.angle(w)
	}
	if lie, ok := x.lengthways(w, m, carrier); ok {
		return lie, nil
	}
	f := x.frameAt(j, carrier)
	in := f.In.Up(0)
	lo, hi := extent(carrier, in)
	t, n, inward := lo-f.Origin.Dot(f.In), in.Mul(-1), 1.0
	want0 := w.face
	if w.face == plan.Inside {
		t, n, inward = hi-f.Origin.Dot(f.In), in, -1
	} else if w.face != plan.Left && w.face != plan.Right {
		w.face, want0 = plan.Outside, plan.Outside
	}
	sides := sidesAt(f, m, t, j)
	side := x.rafterSide(w, f, m, sides, seat)
	lie := Lie{Face: w.face}
	if (want0 == plan.Left || want0 == plan.Right) && side != want0 {
		lie.Face, lie.Moved = side, fmt.Sprintf("the %s side of the rafter is off the wall's end", want0)
	}
	c := sides[side]
	half := w.wide() / 2
	held, other := w.item.LegLengths()
	foot := f.At(c.s+c.way*half, t, seat)
	rise := f.At(c.s, t, seat).Add(c.run.Mul(inward * half))
	lie.Path = []geom.Vec3{foot}
	if lie.Station = stationOf(f, lie.Path); j.Dormer != nil {
		lie.Station = j.Station
	}
	up := geom.Vec3{Z: 1}
	return x.legs(lie, m, carrier, w.plate(n, foot.Sub(up.Mul(other)), foot), w.plate(c.n, rise, rise.Add(up.Mul(held)))), nil
}

// lengthways lays a clip on a rafter that lies along its plate, as on a rake
// wall: flat over both where their sides are flush, over the middle of the wall
// at whose end it stands; ok is false where it does not lie so.
func (x *placer) lengthways(w want, m, plate *framing.Member) (l Lie, ok bool) {
	d := m.B.Sub(m.A).Flat().Unit()
	if !geom.Parallel(plate.B.Sub(plate.A).Flat().Unit(), d) || w.joint.Wall == nil {
		return l, false
	}
	wall := w.joint.Wall
	f := wall.Frame()
	left := x.house.Left(m).Up(0)
	for _, n := range []geom.Vec3{left, left.Mul(-1)} {
		_, a := extent(m, n)
		_, b := extent(plate, n)
		if math.Abs(a-b) > touch {
			continue
		}
		s, _ := f.Local(w.joint.At.Flat())
		at := f.At(s, wall.Depth()/2+w.spread(), w.joint.At.Z)
		at = at.Add(n.Mul(a - at.Dot(n)))
		run := plate.B.Sub(plate.A)
		k := run.Flat().Len()
		at.Z = plate.A.Z + run.Z*at.Sub(plate.A).Flat().Dot(run.Flat())/(k*k) + plate.Section.Breadth/2*run.Len()/k
		held, other := w.item.LegLengths()
		up := geom.Vec3{Z: 1}
		l = Lie{Face: cmp.Or(w.face, plan.Outside), Path: []geom.Vec3{at}, Station: stationOf(f, []geom.Vec3{at})}
		return x.legs(l, m, plate, w.plate(n, at.Sub(up.Mul(other)), at), w.plate(n, at, at.Add(up.Mul(held)))), true
	}
	return l, false
}

// frameAt returns the frame in which a joint's stations are measured: that of
// its wall, else of the level member that carries.
func (x *placer) frameAt(j *framing.Joint, carrier *framing.Member) geom.Frame {
	if j.Wall != nil {
		return j.Wall.Frame()
	}
	f := geom.NewFrame(carrier.A.Flat(), carrier.B.Flat())
	if j.Dormer != nil {
		return f // from the end of the cheek's plate at its left, seen from outside
	}
	s, _ := f.Local(j.At.Flat())
	f.Origin = f.Origin.Add(f.D.Mul(s - j.Station)) // stations as the joint's host has them
	return f
}

// rafterEdge is one side of a rafter where it passes a face: the station, which
// way along the wall is away from the rafter, the side's normal, and the
// direction along the rafter inward, square to the normal.
type rafterEdge struct {
	s, way float64
	n, run geom.Vec3
}

// sidesAt returns both sides of a rafter at depth t of a frame. A hip or
// valley crosses the wall at a slant.
func sidesAt(f geom.Frame, m *framing.Member, t float64, j *framing.Joint) map[plan.Face]rafterEdge {
	d := m.B.Sub(m.A).Flat().Unit()
	across, inward := d.Dot(f.D), d.Dot(f.In)
	if geom.Skims(d, f.D) { // it runs along the wall
		d, across, inward = f.In, 0, 1
	}
	if inward < 0 {
		d, across, inward = d.Mul(-1), -across, -inward
	}
	s0, t0 := f.Local(m.A.Flat())
	mid := s0 + (t-t0)*across/inward
	if m.Wall != nil && m.Wall == j.Wall {
		mid = m.Mid()
	}
	b := m.Section.Width() / 2
	if b <= 0 {
		b = 0.75
	}
	left := rafterEdge{s: mid - b/inward, way: -1, n: d.Left().Up(0), run: d.Up(0)}
	right := rafterEdge{s: mid + b/inward, way: 1, n: d.Left().Up(0).Mul(-1), run: d.Up(0)}
	return map[plan.Face]rafterEdge{plan.Left: left, plan.Right: right}
}

// rafterSide chooses the side of a rafter that a clip goes on: the one asked
// for, else the first or, of two clips, each; never off the end of what it is
// nailed to.
func (x *placer) rafterSide(w want, f geom.Frame, m *framing.Member, at map[plan.Face]rafterEdge, seat float64) plan.Face {
	j := w.joint
	end := math.Inf(1)
	if j.Wall != nil {
		end = j.Wall.Length()
	}
	if j.Wall != nil {
		end += j.Wall.Past
	}
	if j.Dormer != nil && len(j.Members) > 1 {
		end = j.Members[1].B.Sub(j.Members[1].A).Len()
	}
	on := func(side plan.Face) bool {
		a, b := at[side].s, at[side].s+at[side].way*w.wide()
		return min(a, b) >= -touch && max(a, b) <= end+touch
	}
	sides := x.freeSides(j, m, seat)
	sides = slices.DeleteFunc(sides, func(s plan.Face) bool { return !on(s) })
	if w.face == plan.Left || w.face == plan.Right {
		if on(w.face) || len(sides) == 0 {
			return w.face
		}
		return sides[0]
	}
	if len(sides) == 0 {
		return x.first()
	}
	if w.other {
		slices.Reverse(sides)
	}
	return sides[w.k%len(sides)]
}
