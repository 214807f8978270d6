package placement

import (
	"math"
	"slices"

	"galewright/plan"
	"galewright/plan/framing"
	"galewright/plan/geom"
	"galewright/plan/hardware"
	"galewright/plan/wood"
)

// rod sets a bolt across a girder into its pile, or down from a porch post.
func (x *placer) rod(w want) (Lie, *plan.Diagnostic) {
	j, it := w.joint, w.item
	switch j.Kind {
	case plan.BraceRod:
		return x.braceRod(w), nil
	case plan.BraceEnd:
		return x.braceBolt(w), nil
	}
	if j.Kind.Lies() == plan.LiesAgainst {
		return x.crossing(w)
	}
	if j.Kind != plan.GirderPile && j.Kind != plan.DeckPost {
		return x.rodLie(w, Axis{j.At, j.At.Sub(geom.Vec3{Z: it.Length})}, j.Members, j.Station), nil
	}
	f := x.lineOf(j)
	s, _ := f.Local(j.At.Flat())
	upper, lower := pile(j)
	s += spread(w.k, w.n, boltsApart(w, lower))
	z := boltUp(upper, lower, it.Rod)
	mid := it.Length / 2
	a := Axis{f.At(s, -mid, z), f.At(s, mid, z)}
	through := x.passedOf(j.Members, a)
	if len(through) == 0 {
		through = present(upper, lower, otherHalf(j))
	}
	return x.rodLie(w, x.headed(a, it, through), through, j.Station), nil
}

// passedOf returns those of members that the line of a bolt passes, in its order: where a
// girder breaks over its pile the piece that is there.
func (x *placer) passedOf(members []*framing.Member, a Axis) (out []*framing.Member) {
	d := a.B.Sub(a.A).Unit()
	long := a.B.Sub(a.A).Len()
	for _, r := range x.wood.Stretches(a.A.Sub(d.Mul(long)), d, 3*long, func(m *framing.Member) bool { return slices.Contains(members, m) }) {
		if !slices.Contains(out, r.Member) {
			out = append(out, r.Member)
		}
	}
	return out
}

// What a bolt that holds a girder down wants, in diameters: to the top of the pile, which
// it pushes along the grain toward its end, and to the girder's underside, which it pushes
// across the grain (NDS 2018 Tables 12.5.1A and C, transcribed).
const (
	boltToTop  = 7
	boltToEdge = 4
)

// boltUp returns the height of a bolt of a diameter across a girder and its pile: half way
// up where both are, or lower where that leaves more of what the pile wants above it, but
// no lower than the girder wants below it. Of a girder on top of its pile, half way up it.
func boltUp(girder, pile *framing.Member, d float64) float64 {
	top := girder.Z1
	if pile != nil && pile.Z1 > girder.Z0 {
		top = min(top, pile.Z1)
	}
	mid := (girder.Z0 + top) / 2
	if pile == nil || pile.Z1 <= girder.Z0 {
		return mid
	}
	return min(mid, max(pile.Z1-boltToTop*d, girder.Z0+boltToEdge*d))
}

// otherHalf returns the piece of a girder astride of a pile on the pile's inside face;
// nil of any other seat.
func otherHalf(j *framing.Joint) *framing.Member {
	if j.Seat != framing.Astride {
		return nil
	}
	upper := j.First()
	way := upper.B.Sub(upper.A).Unit()
	for _, m := range j.Members {
		off := m.A.Sub(upper.A)
		if m.Role == upper.Role && off.Sub(way.Mul(off.Dot(way))).Len() > touch {
			return m
		}
	}
	return nil
}

// boltsApart returns the distance of the bolts of a girder on a pile: of several
// each in the middle of its share of the pile's width, so that where a girder
// breaks over it each piece has its own; no less than a washer takes, in.
func boltsApart(w want, pile *framing.Member) float64 {
	least := max(w.item.Washer, 3)
	if pile == nil || w.n < 2 {
		return least
	}
	return max(least, pile.Section.Width()/float64(w.n))
}

// headed shifts a bolt along its line until its head lies on its washer, and
// that on the first of the members that it holds.
func (x *placer) headed(a Axis, it *hardware.Item, through []*framing.Member) Axis {
	d := a.B.Sub(a.A).Unit()
	start := a.A.Sub(d.Mul(it.Length))
	runs := x.wood.Stretches(start, d, 3*it.Length, func(m *framing.Member) bool { return slices.Contains(through, m) })
	if len(runs) == 0 {
		return a
	}
	shift := d.Mul(runs[0].From - it.Length - hardware.WasherThick(it.Washer))
	return Axis{a.A.Add(shift), a.B.Add(shift)}
}

// rodLie is the lie of a rod along an axis through members.
func (x *placer) rodLie(w want, a Axis, through []*framing.Member, station float64) Lie {
	l := Lie{Face: plan.Through, Rod: &a, Path: []geom.Vec3{a.A, a.B}, Station: station}
	d := a.B.Sub(a.A)
	for _, m := range through {
		t := 0.0
		for _, r := range x.wood.Stretches(a.A, d.Unit(), d.Len(), func(o *framing.Member) bool { return o == m }) {
			t += r.Len()
		}
		l.Laid = append(l.Laid, Laid{Member: m, Lap: t, Room: t})
	}
	return l
}

// present returns those members that are there.
func present(ms ...*framing.Member) (out []*framing.Member) {
	for _, m := range ms {
		if m != nil {
			out = append(out, m)
		}
	}
	return out
}

// crossing is a bolt square through two members that lie face to face, its
// head on the one held.
func (x *placer) crossing(w want) (Lie, *plan.Diagnostic) {
	j := w.joint
	f, m := j.Wall.Frame(), j.First()
	s, face := f.Local(j.At.Flat())
	_, mid := f.Local(m.A.Flat())
	way := 1.0
	if mid > face {
		way = -1
	}
	z := j.At.Z + spread(w.k, w.n, max(w.item.Washer, 3))
	b := m.Section.Breadth
	through := present(j.Members[:min(2, len(j.Members))]...)
	a := Axis{f.At(s, face-way*b, z), f.At(s, face+way*(w.item.Length-b), z)}
	return x.rodLie(w, x.headed(a, w.item, through), through, s), nil
}

// aligned is how far two bodies of a pair may stand out of line, in: the play
// of a rod in its holes over a floor (common practice, no published source).
const aligned = 0.25

// pair sets two bodies over each other on the same side of two posts, with
// the rod that joins them.
func (x *placer) pair(w want) (Lie, *plan.Diagnostic) {
	j := w.joint
	f, depth, fault := onWall(j)
	if fault != nil {
		return Lie{}, fault
	}
	l := x.through(j)
	if !l.floor || l.below == nil {
		return Lie{}, &plan.Diagnostic{
			Code: "pair-without-post", Summary: "a hold-down pair needs a post above the floor and one below, there is none below",
			Mend: "add a stud below, or use a single hold-down here",
		}
	}
	w, l = x.side(w, l)
	s, it := l.rodLine(w), w.item
	gap := l.zAbove - l.zBelow
	body := max(it.Length, it.Standoff)
	reach := it.Standoff + hardware.Past(it.Rod, it.Washer)
	mid := func(z float64) geom.Vec3 { return f.At(s, depth/2, z) }
	lie := Lie{
		Face: w.face, Gap: gap, Cut: gap + 2*reach, Station: s, Rod: &Axis{mid(l.zAbove + reach), mid(l.zBelow - reach)},
		Path: []geom.Vec3{mid(l.zBelow - body), mid(l.zBelow - it.Standoff), mid(l.zAbove + it.Standoff), mid(l.zAbove + body)},
	}
	g := x.postSide(w, l, f, depth, l.above, 0)
	lie = x.bodyOn(w, lie, l.above, g, l.zAbove, l.zAbove+body)
	g = x.postSide(w, l, f, depth, l.below, l.joint.Offset)
	return x.bodyOn(w, lie, l.below, g, l.zBelow, l.zBelow-body), nil
}

// postSide returns the face of a post that a body goes on.
func (x *placer) postSide(w want, l link, f geom.Frame, depth float64, m *framing.Member, off float64) facing {
	s0, s1 := breadthAt(l.joint, m)
	return facingOf(f, s0+off, s1+off, depth, w.face)
}

// bodyOn adds the body of a hold-down on a post's face: one plate from its
// seat, where the rod is, to its free end, from which its fasteners are laid.
func (x *placer) bodyOn(w want, l Lie, m *framing.Member, g facing, seat, end float64) Lie {
	b := geom.Band{w.plate(g.n, g.at(seat, 0), g.at(end, 0))}
	l.Bands = append(l.Bands, b)
	l.Laid = append(l.Laid, Laid{Member: m, Lap: b.Len(), Room: x.room(m, b, 0), starts: []Start{{len(l.Bands) - 1, true}}})
	return l
}

// side chooses the side a body goes on and returns the link of the upright
// that has it: toward the shear wall it holds down, else toward the wall's
// middle, unless a face is asked for; where there is no room, the other side,
// or past a corner's second post, which is nailed to the first.
func (x *placer) side(w want, l link) (want, link) {
	if w.face == plan.Left || w.face == plan.Right {
		return w, l
	}
	toward, other := opposite(x.first()), x.first()
	if d := x.shearMiddle(w.joint, l) - (l.s0+l.s1)/2; math.Abs(d) > geom.Eps && (d < 0) == (toward == plan.Right) {
		toward, other = other, toward
	}
	if x.holds(w, l, toward) {
		return w.on(toward), l
	}
	if x.holds(w, l, other) {
		return w.on(other), l
	}
	if next, ok := x.next(l, toward); ok && x.holds(w, next, toward) {
		return w.on(toward), next
	}
	return w.on(toward), l
}

// shearMiddle returns the station of the middle of the nearest shear segment,
// else of the wall.
func (x *placer) shearMiddle(j *framing.Joint, l link) float64 {
	mid, to, best := (l.s0+l.s1)/2, (j.Wall.Length()+j.Wall.Past)/2, 1e9
	for _, s := range j.Wall.Shear {
		if d := max(s.From-mid, mid-s.To, 0); d < best {
			best, to = d, (s.From+s.To)/2
		}
	}
	return to
}

// postWide is the most that the middles of two neighboring studs of a corner
// post are apart, in.
const postWide = 8

// next returns the link of the next upright of the wall on one side, when it
// stands near enough to be of the same post and is no stud of the module.
func (x *placer) next(l link, side plan.Face) (link, bool) {
	list := x.byHost[hostKind{l.joint.Host, l.joint.Kind}]
	i := slices.Index(list, l.joint) + 1
	if side == x.first() { // the list goes as written
		i -= 2
	}
	if i < 0 || i >= len(list) || math.Abs(list[i].Station-l.joint.Station) > postWide || list[i].First().Role != plan.Post {
		return l, false
	}
	n := x.through(list[i])
	return n, n.below != nil && n.floor == l.floor
}

// holds tells whether a body fits on a side of an upright, above and, of a
// pair, below: it reaches as far past its rod as the rod stands off, and does
// not hang over the wall's end.
func (x *placer) holds(w want, l link, side plan.Face) bool {
	f, depth := w.joint.Wall.Frame(), w.joint.Wall.Depth()
	reach := 2 * w.item.Center
	body := max(w.item.Length, w.item.Standoff)
	fits := func(m *framing.Member, off, z float64) bool {
		s0, s1 := breadthAt(l.joint, m)
		a, b := s1+off, s1+off+reach
		if side == plan.Left {
			a, b = s0+off-reach, s0+off
		}
		half := w.wide()/2 - probeInset
		room := f.Box(a+probeNear, b-probeNear, depth/2-half, depth/2+half, z+touch, z+body-touch)
		return a > -touch && b < w.joint.Wall.Length()+w.joint.Wall.Past+touch && x.inside(room, l.above, l.below) == nil
	}
	if w.item.Kind.Shape == hardware.Pair && !fits(l.below, l.joint.Offset, l.zBelow-body) {
		return false
	}
	return fits(l.above, 0, l.zAbove)
}

// rodLine returns the station of a hold-down's rod.
func (l link) rodLine(w want) float64 {
	s0, s1 := breadthAt(l.joint, l.above)
	if w.face == plan.Left {
		return s0 - w.item.Center
	}
	return s1 + w.item.Center
}

// ReachDown is how far under its seat a rod is followed, in: a story's floor
// and a deep girder.
const ReachDown = 60.0

// landing is where a hold-down's rod, or a bolt, that bears at top comes down.
func (x *world) landing(top geom.Vec3, it *hardware.Item) wood.Landing {
	return x.wood.Below(top, ReachDown, WasherOf(it), hardware.Past(it.Rod, it.Washer), wood.Carries)
}

// WasherOf returns the washer that an item's rod has on wood.
func WasherOf(it *hardware.Item) wood.Washer {
	w := wood.Washer{Side: it.Washer, Hole: hardware.RodHole(it.Rod)}
	if w.Side == 0 {
		w.Side, w.Round = hardware.CutWasher(it.Rod), true
	}
	return w
}

// holdDown sets one body on the post's side with the rod that goes down from
// it: to washer and nut under the member that carries, or into the anchor that
// is there.
func (x *placer) holdDown(w want) (Lie, *plan.Diagnostic) {
	f, depth, fault := onWall(w.joint)
	if fault != nil {
		return Lie{}, fault
	}
	l := x.through(w.joint)
	if l.below == nil {
		return Lie{}, l.stacked()
	}
	w, l = x.side(w, l)
	s, it := l.rodLine(w), w.item
	mid := func(z float64) geom.Vec3 { return f.At(s, depth/2, z) }
	body, seat := max(it.Length, it.Standoff), l.zAbove+it.Standoff
	lie := Lie{Face: w.face, Gap: l.zAbove - l.zBelow, Station: s, Path: []geom.Vec3{mid(l.zAbove), mid(l.zAbove + body)}}
	lie.Rod = &Axis{mid(seat + hardware.Past(it.Rod, 0)), mid(l.below.Z0)}
	if land := x.landing(mid(seat), it); !land.OnSill() && l.below.Role != plan.SillPlate {
		under := l.below.Z0 // nothing carries: told by the check of rods
		if land.Member() != nil {
			under = seat - land.Deep()
		}
		lie.Rod.B = mid(under - hardware.Past(it.Rod, it.Washer))
		lie.Cut = lie.Rod.A.Z - lie.Rod.B.Z
	}
	lie = x.bodyOn(w, lie, l.above, x.postSide(w, l, f, depth, l.above, 0), l.zAbove, l.zAbove+body)
	passed := x.rodLie(w, *lie.Rod, present(l.below), s).Laid
	lie.Laid = append(lie.Laid, passed...)
	return lie, nil
}

// beyond tells whether a point on plan lies outside of the exterior walls round a
// level, whose outside faces are the edge of its subfloor: a line through it, along
// x or y, crosses them, on either side of it an even number of times, or none does.
func beyond(walls []*plan.Wall, l *plan.Level, p geom.Vec2) bool {
	var before, after [2]int
	found := false
	for _, w := range walls {
		if !w.Exterior || !w.On(l) {
			continue
		}
		found = true
		a, b := w.From.Sub(p), w.To.Sub(p)
		for i, at := range [2][4]float64{{a.X, a.Y, b.X, b.Y}, {a.Y, a.X, b.Y, b.X}} {
			if (at[1] > 0) == (at[3] > 0) {
				continue
			}
			if at[0]-at[1]/(at[3]-at[1])*(at[2]-at[0]) > 0 {
				after[i]++
			} else {
				before[i]++
			}
		}
	}
	crossed := func(i int) bool { return before[i]+after[i] > 0 }
	out := func(i int) bool { return crossed(i) && before[i]%2 == 0 && after[i]%2 == 0 }
	return out(0) || out(1) || found && !crossed(0) && !crossed(1)
}

// holes returns the holes a piece needs in the subfloor it passes, of a house
// with the walls.
func holes(p *Piece, walls []*plan.Wall) []*Hole {
	j := p.Joint
	kind := p.Item.Kind.Name
	if j.Level == nil || j.Level.Subfloor <= 0 || j.Wall == nil {
		return nil
	}
	at := p.Path[0]
	h := &Hole{Piece: p, Level: j.Level, At: geom.Vec3{X: at.X, Y: at.Y, Z: j.Level.Floor}}
	switch {
	case kind == plan.HoldDownPairItem, kind == plan.HoldDownItem && p.Cut > 0:
		d := hardware.RodHole(p.Item.Rod)
		h.Round, h.Size = true, [2]float64{d, d}
	case p.Item.Kind.Strap && p.Face != plan.Outside && p.Z0 < j.Level.Floor-j.Level.Subfloor && p.Z1 > j.Level.Floor && len(p.plates()) == 1:
		// The strap's width and half an inch of room each way to thread it
		// (common practice, no published source).
		n := p.plates()[0].N
		along, out := p.wide()+slack, p.Item.Thickness+slack
		h.At = h.At.Add(n.Mul(out / 2))
		h.Size = [2]float64{along, out}
		if geom.Lengthways(n.Flat(), j.Wall.Frame().D) {
			h.Size = [2]float64{out, along}
		}
		if beyond(walls, j.Level, h.At.Flat()) {
			return nil // it hangs down outside of the walls
		}
	default:
		return nil
	}
	return []*Hole{h}
}

// slack is the room to thread a strap through a subfloor, in.
const slack = 0.5
