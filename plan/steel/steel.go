package steel

import (
	"slices"

	"galewright/plan"
	"galewright/plan/framing"
	"galewright/plan/geom"
	"galewright/plan/hardware"
	"galewright/plan/placement"
)

// Steel is all hardware of a house as bodies.
type Steel struct {
	Placed  *placement.Placement
	Wood    *Wood
	Bodies  []*Body // one a piece, in its order
	byPiece map[*placement.Piece]*Body
}

// New makes the bodies of all pieces.
func New(placed *placement.Placement) *Steel {
	s := &Steel{Placed: placed, Wood: NewWood(placed.House.Members), byPiece: make(map[*placement.Piece]*Body, len(placed.Pieces))}
	for _, p := range placed.Pieces {
		b := s.body(p)
		s.Bodies = append(s.Bodies, b)
		s.byPiece[p] = b
	}
	for _, b := range s.Bodies {
		s.rods(b)
	}
	return s
}

// Body returns the body of a piece, or nil.
func (s *Steel) Body(p *placement.Piece) *Body { return s.byPiece[p] }

// body makes plates and fasteners of a piece.
func (s *Steel) body(p *placement.Piece) *Body {
	b := &Body{Piece: p, Bands: over(p)}
	for _, band := range b.Bands {
		b.Over = append(b.Over, s.Wood.under(band)...)
	}
	for i, e := range p.Item.Ends() {
		if i >= len(p.Ends) || e.Count <= 0 {
			continue
		}
		starts := p.Ends[i].Starts
		for k, at := range starts {
			s.Wood.fasten(b, i, portion(e, k, len(starts)), Seat{at.Band, at.Far}, p.Item.Across())
		}
	}
	return b
}

// under returns the members right below the plates of a band that lie on top of
// something between two bends, both of which turn down.
func (w *Wood) under(band geom.Band) (out []*framing.Member) {
	for i, p := range band {
		if i == 0 || i == len(band)-1 || !geom.LooksUp(p.N) || !turnsDown(band[i-1], p.A, p.N) || !turnsDown(band[i+1], p.B, p.N) {
			continue
		}
		out = append(out, w.beneath(p)...)
	}
	return out
}

// beneath returns the members right below the middle of a plate. What ends just
// there is not: it must go on a hair along and across, both ways.
func (w *Wood) beneath(p geom.Plate) (out []*framing.Member) {
	for i, off := range [][2]float64{{-hair, -hair}, {-hair, hair}, {hair, -hair}, {hair, hair}} {
		at := p.At(p.Len()/2+off[0], off[1])
		runs := w.Through(at.Add(p.N.Mul(hair)), at.Sub(p.N.Mul(3*hair)))
		if i == 0 {
			for _, r := range runs {
				out = append(out, r.Member)
			}
		}
		out = slices.DeleteFunc(out, func(m *framing.Member) bool {
			return !slices.ContainsFunc(runs, func(r Run) bool { return r.Member == m })
		})
	}
	return out
}

// turnsDown tells whether a plate leaves the point to the side away from n.
func turnsDown(p geom.Plate, from, n geom.Vec3) bool {
	far := p.A
	if p.A.Sub(from).Len() < p.B.Sub(from).Len() {
		far = p.B
	}
	return far.Sub(from).Dot(n) < -hair
}

// portion returns what the kth of n starts takes of an end's fasteners; the
// first have the odd ones.
func portion(e hardware.End, k, n int) hardware.End {
	of := func(total int) int {
		part := total / n
		if k < total%n {
			part++
		}
		return part
	}
	e.Count, e.Holes = of(e.Count), of(e.Holes)
	return e
}

// sheathed is the wall sheathing taken between framing and steel that goes on
// after it, in: assumed, as for the dead load.
const sheathed = 7.0 / 16

// over returns a piece's bands where they are when it is on: over the wall's
// sheathing when it goes on after that.
func over(p *placement.Piece) []geom.Band {
	j := p.Joint
	if p.Face != plan.Outside || p.Item.Phase == nil || p.Item.Phase.Name != plan.AfterSheathing || j.Wall == nil || !j.Wall.Exterior {
		return p.Bands
	}
	out := j.Wall.Frame().In.Up(0).Mul(-1)
	moved := make([]geom.Band, len(p.Bands))
	for i, band := range p.Bands {
		for _, x := range band {
			if geom.Toward(x.N.Flat(), out.Flat()) {
				x.A, x.B = x.A.Add(out.Mul(sheathed)), x.B.Add(out.Mul(sheathed))
			}
			moved[i] = append(moved[i], x)
		}
	}
	return moved
}

// rods makes the rods of a body.
func (s *Steel) rods(b *Body) {
	p := b.Piece
	if p.Rod == nil {
		return
	}
	r := &Rod{A: p.Rod.A, B: p.Rod.B, Diameter: p.Item.Rod}
	switch {
	case p.Item.Kind.Shape == hardware.Pair:
		s.between(r)
	case p.Item.Kind.Name == plan.HoldDownItem:
		s.down(r, p, Bearing{Kind: OnSeat, At: r.A.Sub(up(past(r.Diameter)))})
	case p.Joint.Wall == nil && p.Joint.Kind == plan.GirderPile:
		s.across(r, p)
	default:
		s.bolt(r, p)
	}
	b.Rods = append(b.Rods, r)
}

func up(z float64) geom.Vec3 { return geom.Vec3{Z: z} }

// between is the rod of a pair: nuts on the seats of both bodies.
func (s *Steel) between(r *Rod) {
	r.Ends = [2]Bearing{{Kind: OnSeat, At: r.A.Sub(up(past(r.Diameter))), Nuts: 1}, {Kind: OnSeat, At: r.B.Add(up(past(r.Diameter))), Nuts: 1}}
	r.Passes = s.Wood.Through(r.A, r.B)
}

// reachDown is how far under its seat a rod is followed, in: a story's floor
// and a deep girder.
const reachDown = 60.0

// down runs a rod from its upper bearing to the underside of what carries, or
// into concrete where it goes through a sill plate.
func (s *Steel) down(r *Rod, p *placement.Piece, top Bearing) {
	top.Nuts = 1
	r.Ends[0] = top
	runs, at, ok := s.Wood.Below(r.A, reachDown, Carries)
	switch {
	case len(runs) > 0 && onConcrete(runs):
		r.Passes, r.Ends[1] = runs, s.cast(r, p)
	case ok:
		r.Passes = runs[:at+1]
		face := r.A.Sub(up(runs[at].To))
		w := p.Item.Washer
		if r.Need = runs[at].To + past(r.Diameter); r.Length() < r.Need-hair { // as it is cut it ends in the wood
			r.Ends[1] = Bearing{Kind: Nothing, At: r.B}
			return
		}
		r.Ends[1] = Bearing{Kind: OnWasher, At: face, Member: runs[at].Member, Washer: w, Area: area(w, r.Diameter), Nuts: 1}
	default:
		r.Passes, r.Ends[1] = runs, Bearing{Kind: Nothing, At: r.B}
	}
}

// onConcrete tells whether the last member that a rod passes is a sill plate,
// which lies on a slab or stem wall.
func onConcrete(runs []Run) bool { return runs[len(runs)-1].Member.Role == plan.SillPlate }

// cast is the end of a rod in concrete: its own, or of a hold-down that of
// the anchor rod placed at the same joint.
func (s *Steel) cast(r *Rod, p *placement.Piece) Bearing {
	if p.Item.Kind.Shape == hardware.Rod {
		return Bearing{Kind: CastIn, At: r.B}
	}
	for _, q := range s.Placed.At(p.Joint) {
		if q != p && q.Item.Kind.Shape == hardware.Rod && q.Rod != nil && q.Rod.A.Flat().Sub(r.A.Flat()).Len() < 2 {
			r.B = q.Rod.B
			return Bearing{Kind: CastIn, At: q.Rod.B}
		}
	}
	return Bearing{Kind: Nothing, At: r.B}
}

// bolt is a bolt or anchor rod down through a plate or from a post.
func (s *Steel) bolt(r *Rod, p *placement.Piece) {
	runs := s.Wood.Through(r.A, r.B)
	if len(runs) == 0 {
		r.Ends = [2]Bearing{{Kind: Nothing, At: r.A}, {Kind: CastIn, At: r.B}}
		return
	}
	face := r.A.Sub(up(runs[0].From))
	w := p.Item.Washer
	s.down(r, p, Bearing{Kind: OnWasher, At: face, Member: runs[0].Member, Washer: w, Area: area(w, r.Diameter)})
}

// across is a bolt across a girder and its pile: a washer and nut on both
// sides, if it is long enough to come through.
func (s *Steel) across(r *Rod, p *placement.Piece) {
	r.Passes = s.Wood.Through(r.A, r.B)
	n := len(r.Passes)
	if n == 0 {
		r.Ends = [2]Bearing{{Kind: Nothing, At: r.A}, {Kind: Nothing, At: r.B}}
		return
	}
	d := r.B.Sub(r.A).Unit()
	side := func(at float64, out float64, m *framing.Member) Bearing {
		if out < past(r.Diameter)-hair {
			return Bearing{Kind: Nothing, At: r.A.Add(d.Mul(at))}
		}
		w := p.Item.Washer
		return Bearing{Kind: OnWasher, At: r.A.Add(d.Mul(at)), Member: m, Washer: w, Area: area(w, r.Diameter), Nuts: 1}
	}
	first, last := r.Passes[0], r.Passes[n-1]
	r.Ends = [2]Bearing{side(first.From, first.From, first.Member), side(last.To, r.Length()-last.To, last.Member)}
}
