package placement

import (
	"math"
	"slices"

	"galewright/plan"
	"galewright/plan/framing"
	"galewright/plan/geom"
	"galewright/plan/hardware"
)

// thread is what a rod shows beyond its nut, in: three turns of a coarse
// thread (common practice, no published source). A nut is taken as high as
// the rod is thick.
const thread = 0.25

// nuts returns the rod length one end takes for nut, washer and thread.
func nuts(rod float64) float64 { return rod + thread }

// rod sets a bolt across a girder into its pile, or down from a porch post.
func (x *placer) rod(w want) (Lie, *plan.Diagnostic) {
	j, it := w.joint, w.item
	if j.Kind.Lies() == plan.LiesAgainst {
		return x.crossing(w)
	}
	if j.Kind != plan.GirderPile {
		return x.rodLie(w, Axis{j.At, j.At.Sub(geom.Vec3{Z: it.Length})}, j.Members, j.Station), nil
	}
	f := x.lineOf(j)
	s, _ := f.Local(j.At.Flat())
	s += spread(w.k, w.n, max(it.Washer, 3))
	mid := it.Length / 2
	// Half-way up the girder, where the pile's cheek stands behind it.
	z := j.At.Z
	if g := j.First(); g.Z1 > g.Z0 {
		z = (g.Z0 + g.Z1) / 2
	}
	upper, lower := pile(j)
	return x.rodLie(w, Axis{f.At(s, -mid, z), f.At(s, mid, z)}, present(upper, lower), j.Station), nil
}

// rodLie is the lie of a rod along an axis through members.
func (x *placer) rodLie(w want, a Axis, through []*framing.Member, station float64) Lie {
	l := Lie{Face: plan.Through, Rod: &a, Path: []geom.Vec3{a.A, a.B}, Station: station}
	d := a.B.Sub(a.A)
	for _, m := range through {
		t := 0.0
		for _, r := range x.runs(a.A, d.Unit(), d.Len(), func(o *framing.Member) bool { return o == m }) {
			t += r.t1 - r.t0
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
	return x.rodLie(w, Axis{f.At(s, face-way*b, z), f.At(s, face+way*(w.item.Length-b), z)}, present(j.Members[:min(2, len(j.Members))]...), s), nil
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
	reach := it.Standoff + nuts(it.Rod)
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
	l.Laid = append(l.Laid, Laid{m, b.Len(), x.room(m, b, 0), []Start{{len(l.Bands) - 1, true}}})
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
	toward, other := plan.Right, plan.Left
	if x.shearMiddle(w.joint, l) < (l.s0+l.s1)/2 {
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
	mid, to, best := (l.s0+l.s1)/2, j.Wall.Length()/2, 1e9
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
// stands near enough to be of the same post.
func (x *placer) next(l link, side plan.Face) (link, bool) {
	list := x.byHost[hostKind{l.joint.Host, l.joint.Kind}]
	i := slices.Index(list, l.joint) + 1
	if side == plan.Left {
		i -= 2
	}
	if i < 0 || i >= len(list) || math.Abs(list[i].Station-l.joint.Station) > postWide {
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
		return a > -touch && b < w.joint.Wall.Length()+touch && x.inside(room, l.above, l.below) == nil
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

// holdDown sets one body on the post's side with the rod that goes down from
// it: through the member below, or into the anchor that is there.
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
	body, reach := max(it.Length, it.Standoff), it.Standoff+nuts(it.Rod)
	foot := l.below.Z0
	lie := Lie{Face: w.face, Gap: l.zAbove - l.zBelow, Station: s, Path: []geom.Vec3{mid(l.zAbove), mid(l.zAbove + body)}}
	switch {
	case l.floor:
		foot = l.zBelow
	case l.below.Role != plan.SillPlate:
		foot -= nuts(it.Rod)
		lie.Cut = l.zAbove + reach - foot
	}
	lie.Rod = &Axis{mid(l.zAbove + reach), mid(foot)}
	lie = x.bodyOn(w, lie, l.above, x.postSide(w, l, f, depth, l.above, 0), l.zAbove, l.zAbove+body)
	passed := x.rodLie(w, *lie.Rod, present(l.below), s).Laid
	lie.Laid = append(lie.Laid, passed...)
	return lie, nil
}

// holes returns the holes a piece needs in the subfloor it passes.
func holes(p *Piece) []*Hole {
	j := p.Joint
	kind := p.Item.Kind.Name
	if j.Level == nil || j.Level.Subfloor <= 0 || j.Wall == nil {
		return nil
	}
	at := p.Path[0]
	h := &Hole{Piece: p, Level: j.Level, At: geom.Vec3{X: at.X, Y: at.Y, Z: j.Level.Floor}}
	switch {
	case kind == plan.HoldDownPairItem, kind == plan.HoldDownItem && p.Cut > 0:
		// Holes for bolts are 1/16 in over the bolt (NDS 2018 12.1.3.2, from memory).
		h.Round = true
		h.Size = [2]float64{p.Item.Rod + 1.0/16, p.Item.Rod + 1.0/16}
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
	default:
		return nil
	}
	return []*Hole{h}
}

// slack is the room to thread a strap through a subfloor, in.
const slack = 0.5
