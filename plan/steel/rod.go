package steel

import (
	"slices"

	"galewright/plan"
	"galewright/plan/framing"
	"galewright/plan/geom"
	"galewright/plan/hardware"
	"galewright/plan/placement"
	"galewright/plan/wood"
)

// Bearing is what one end of a rod pulls against.
type Bearing struct {
	Kind   BearingKind
	At     geom.Vec3       // where the nut's side of washer or seat lies
	Member *framing.Member // that a washer lies on; nil for a seat or concrete
	Washer float64         // side of a square plate, in; 0 = a cut washer
	// Area is what the washer bears on, in²: wood of Member under it, less the
	// hole; what hangs over its edge counts for nothing.
	Area    float64
	Nuts    int
	Washers int
	// Embed is how deep the end is cast into what is below the sill plate, in.
	Embed float64
}

// BearingKind says what holds the end of a rod.
type BearingKind string

// The bearings. Nothing is none: the rod ends in the air or in wood.
const (
	OnSeat   BearingKind = "seat of the body"
	OnWasher BearingKind = "washer on wood"
	CastIn   BearingKind = "cast in concrete"
	Nothing  BearingKind = "nothing"
)

// Rod is a threaded rod or bolt from bearing to bearing.
type Rod struct {
	A, B     geom.Vec3 // ends of the rod as it is cut; A the upper or outer one
	Diameter float64   // in
	Ends     [2]Bearing
	Passes   []Run // members between the bearings, measured from A
	// For is the piece that the rod is bought with: that of a hold-down over
	// concrete is the anchor's.
	For *placement.Piece
	// Blocked tells that a member stands where its nut would be; Why says what
	// keeps an end that bears on nothing from bearing.
	Blocked bool
	Why     string
	// Need is the length that would reach a bearing with washer, nut and thread,
	// in; 0 where nothing on its line carries one.
	Need float64
}

// Length returns the length to cut, in.
func (r *Rod) Length() float64 { return r.B.Sub(r.A).Len() }

// Bears tells whether both ends pull against something.
func (r *Rod) Bears() bool { return r.Ends[0].Kind != Nothing && r.Ends[1].Kind != Nothing }

// rods makes the rods of a body.
func (s *Steel) rods(b *Body) {
	p := b.Piece
	if p.Rod == nil || p.Item.Kind.Name == plan.HoldDownItem && p.Cut == 0 { // the anchor's, see anchor
		return
	}
	r := &Rod{A: p.Rod.A, B: p.Rod.B, Diameter: p.Item.Rod, For: p}
	switch {
	case p.Item.Kind.Shape == hardware.Pair:
		s.between(r)
	case p.Item.Kind.Name == plan.HoldDownItem:
		r.Ends[0] = onSeat(r.A, r.Diameter, 0, -1)
		s.down(r, r.Ends[0].At)
	case !geom.Upright(r.B.Sub(r.A).Unit()):
		s.across(r)
	default:
		s.bolt(r)
	}
	b.Rods = append(b.Rods, r)
}

func up(z float64) geom.Vec3 { return geom.Vec3{Z: z} }

// onSeat is the end of a rod that a body's seat pulls at, with a washer of a
// side, 0 for a cut one; way is 1 where the seat lies above the end, -1 below it.
func onSeat(end geom.Vec3, rod, washer, way float64) Bearing {
	return Bearing{Kind: OnSeat, At: end.Add(up(way * hardware.Past(rod, washer))), Washer: washer, Nuts: 1, Washers: 1}
}

// onWasher is the end of a rod with washer and nut on a member, n the normal
// out of its face.
func (s *Steel) onWasher(r *Rod, m *framing.Member, at, n geom.Vec3) Bearing {
	x := placement.WasherOf(r.For.Item)
	return Bearing{Kind: OnWasher, At: at, Member: m, Washer: r.For.Item.Washer, Area: s.Wood.Bears(m, at, n, x), Nuts: 1, Washers: 1}
}

// between is the rod of a pair: nuts on the seats of both bodies.
func (s *Steel) between(r *Rod) {
	w := r.For.Item.Washer
	r.Ends = [2]Bearing{onSeat(r.A, r.Diameter, w, -1), onSeat(r.B, r.Diameter, w, 1)}
	r.Passes = s.Wood.Through(r.A, r.B)
}

// down runs a rod from its upper bearing at top to the underside of what
// carries, or into concrete where it goes through a sill plate.
func (s *Steel) down(r *Rod, top geom.Vec3) {
	it := r.For.Item
	past := hardware.Past(r.Diameter, it.Washer)
	land := s.Wood.Below(top, placement.ReachDown, placement.WasherOf(it), past, wood.Carries)
	r.Passes, r.Ends[1] = r.fromA(land.Runs, top), Bearing{Kind: Nothing, At: r.B}
	m := land.Member()
	switch {
	case land.OnSill():
		sill := land.Sill()
		r.Ends[1] = Bearing{Kind: CastIn, At: r.B, Embed: top.Z - sill.To - r.B.Z}
		if r.B.Z > top.Z-sill.To-hair {
			r.Ends[1].Kind, r.Why = Nothing, "it does not reach through the sill plate"
		}
		return
	case m == nil:
		r.Why = s.nothingBelow(r, top)
		return
	}
	r.Passes = r.Passes[:land.At+1]
	r.Need = r.A.Z - (top.Z - land.Deep() - past)
	switch {
	case land.Blocked != nil:
		r.Why = "where it comes out under the " + name(m) + " the " + name(land.Blocked) + " leaves no room for washer and nut"
		r.Need, r.Blocked = 0, true
	case r.Length() < r.Need-hair: // as it is cut it ends in the wood
		r.Why = "cut to " + r.units().Length(r.Length()) + " it ends in the wood, to a washer and nut under the " + name(m) + " it takes " + r.units().Length(r.Need)
	default:
		r.Ends[1] = s.onWasher(r, m, top.Sub(up(land.Deep())), geom.Vec3{Z: -1})
	}
}

// fromA returns runs that are measured from a point of the rod as measured from
// its upper end.
func (r *Rod) fromA(runs []Run, at geom.Vec3) []Run {
	off := r.A.Sub(at).Len()
	out := slices.Clone(runs)
	for i := range out {
		out[i].From, out[i].To = out[i].From+off, out[i].To+off
	}
	return out
}

// nothingBelow says what a rod passes by.
func (s *Steel) nothingBelow(r *Rod, top geom.Vec3) string {
	why := "nothing under it takes a washer: it goes through " + wood.Passed(r.Passes)
	reach := top.Sub(up(placement.ReachDown))
	if m, far := wood.Nearest(s.Placed.House.Members, top, reach, under(top, reach)); m != nil {
		why += "; the nearest is the " + name(m) + ", whose middle line passes it at " + r.units().Length(far)
	}
	return why
}

// under tells of members that carry and whose top is below a point, and not
// deeper than another.
func under(top, reach geom.Vec3) func(*framing.Member) bool {
	return func(m *framing.Member) bool { return wood.Carries(m) && m.Z1 < top.Z && m.Z1 > reach.Z }
}

// name names a member: "girder GS/girder@0".
func name(m *framing.Member) string { return string(m.Role) + " " + m.ID }

// anchored is how far the middle lines of an anchor rod and of the seat over
// it may stand apart, in: the play of a seat's hole (common practice, no
// published source).
const anchored = 0.25

// anchor gives a hold-down over concrete the rod that is set under it.
func (s *Steel) anchor(b *Body) {
	p := b.Piece
	if p.Item.Kind.Name != plan.HoldDownItem || p.Cut > 0 || p.Rod == nil {
		return
	}
	for _, q := range s.Placed.At(p.Joint) {
		o := s.byPiece[q]
		if q == p || q.Item.Kind.Shape != hardware.Rod || len(o.Rods) == 0 {
			continue
		}
		r := o.Rods[0]
		if r.A.Flat().Sub(p.Rod.A.Flat()).Len() > anchored || r.Diameter != p.Item.Rod || r.A.Z < p.Rod.A.Z-hair {
			continue
		}
		r.Ends[0] = onSeat(p.Rod.A, r.Diameter, 0, -1)
		b.Rods = append(b.Rods, r)
		return
	}
	b.Rods = append(b.Rods, &Rod{A: p.Rod.A, B: p.Rod.B, Diameter: p.Item.Rod, Why: "no rod of its diameter is set under its seat", Ends: [2]Bearing{{Kind: Nothing, At: p.Rod.A}, {Kind: Nothing, At: p.Rod.B}}})
}

// bolt is a bolt or anchor rod down through a plate or from a post.
func (s *Steel) bolt(r *Rod) {
	runs := s.Wood.Through(r.A, r.B)
	if len(runs) == 0 {
		r.Ends = [2]Bearing{{Kind: Nothing, At: r.A}, {Kind: CastIn, At: r.B}}
		if s.footed(r.For) {
			r.Ends[0] = onSeat(r.A, r.Diameter, 0, -1)
		} else {
			r.Why = "it goes through no member"
		}
		return
	}
	face := r.A.Sub(up(runs[0].From))
	r.Ends[0] = s.onWasher(r, runs[0].Member, face, geom.Vec3{Z: 1})
	s.down(r, r.A)
}

// footed tells whether a post base at the joint of a piece takes its rod.
func (s *Steel) footed(p *placement.Piece) bool {
	return slices.ContainsFunc(s.Placed.At(p.Joint), func(q *placement.Piece) bool { return q.Item.Kind.Name == plan.PostBaseItem })
}

// across is a bolt that lies, through a girder and its pile or a ledger and
// its wall: a washer under head and nut, if it is long enough to come through.
func (s *Steel) across(r *Rod) {
	r.Passes = s.Wood.Through(r.A, r.B)
	n := len(r.Passes)
	if n == 0 {
		r.Why = "it goes through no member"
		r.Ends = [2]Bearing{{Kind: Nothing, At: r.A}, {Kind: Nothing, At: r.B}}
		return
	}
	d := r.B.Sub(r.A).Unit()
	first, last := r.Passes[0], r.Passes[n-1]
	past := hardware.Past(r.Diameter, r.For.Item.Washer)
	head := hardware.WasherThick(r.For.Item.Washer) // the head itself is no part of a bolt's length
	side := func(at, out, want float64, m *framing.Member, n geom.Vec3) Bearing {
		if out < want-hair {
			r.Why = "cut to " + r.units().Length(r.Length()) + " it ends in the wood, to a washer and nut on both sides it takes " + r.units().Length(last.To-first.From+head+past)
			return Bearing{Kind: Nothing, At: r.A.Add(d.Mul(at))}
		}
		return s.onWasher(r, m, r.A.Add(d.Mul(at)), n)
	}
	n0 := d
	if r.For.Joint.Kind == plan.BraceRod { // its washers are beveled: they lie on the piles' faces
		n0 = geom.Vec3{X: d.X, Y: d.Y}.Unit()
	}
	r.Ends = [2]Bearing{
		side(first.From, first.From, head, first.Member, n0.Mul(-1)),
		side(last.To, r.Length()-last.To, past, last.Member, n0),
	}
	if r.For.Joint.Kind != plan.BraceRod {
		r.Ends[0].Nuts = 0 // its head
	}
}

// Rods returns all rods and bolts of the house, each once, in the order of the
// pieces they are bought with.
func (s *Steel) Rods() (out []*Rod) {
	for _, b := range s.Bodies {
		for _, r := range b.Rods {
			if r.For == b.Piece {
				out = append(out, r)
			}
		}
	}
	return out
}

// OnWood tells whether the upper nut of a bolt or rod is on wood.
func (s *Steel) OnWood(p *placement.Piece) bool {
	b := s.Body(p)
	return b != nil && len(b.Rods) > 0 && b.Rods[0].Ends[0].Kind == OnWasher
}
