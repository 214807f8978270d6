package steel

import (
	"slices"

	"galewright/plan"
	"galewright/plan/framing"
	"galewright/plan/geom"
	"galewright/plan/hardware"
	"galewright/plan/placement"
	"galewright/plan/units"
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
	stop(s.Bodies)
	for _, b := range s.Bodies {
		s.rods(b)
		s.slots(b)
	}
	for _, b := range s.Bodies {
		s.anchor(b)
	}
	return s
}

// Body returns the body of a piece, or nil.
func (s *Steel) Body(p *placement.Piece) *Body { return s.byPiece[p] }

// body makes plates and fasteners of a piece.
func (s *Steel) body(p *placement.Piece) *Body {
	b := &Body{Piece: p, Bands: s.over(p)}
	for _, band := range b.Bands {
		b.Over = append(b.Over, s.Wood.under(band)...)
	}
	for i, e := range p.Item.Ends() {
		if i >= len(p.Ends) || e.Count <= 0 {
			continue
		}
		starts := p.Ends[i].Starts
		bare := max(0, p.Ends[i].Of-len(starts)) // one flange alone has the fewer ones of an odd number
		for k, at := range starts {
			s.Wood.fasten(b, i, portion(e, k+bare, len(starts)+bare), Seat{at.Band, at.Far, k + bare, s.mirrored()}, p.Item.Across(), p.Laid[p.Ends[i].Laid].Lap)
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

// Sheathing returns the wall sheathing between the framing and a piece that goes
// on after it: the thickest of its wall's, whose nails have least left; ok is
// false for a piece that lies on the wood.
func (s *Steel) Sheathing(p *placement.Piece) (x plan.Panel, ok bool) {
	w := p.Joint.Wall
	if p.Face != plan.Outside || p.Item.Phase == nil || p.Item.Phase.Name != plan.AfterSheathing || w == nil || !w.Exterior {
		return plan.Panel{}, false
	}
	_, x = s.Placed.House.Plan.WallPanels(w)
	return x, true
}

// over returns a piece's bands where they are when it is on: over the wall's
// sheathing when it goes on after that.
func (s *Steel) over(p *placement.Piece) []geom.Band {
	j := p.Joint
	sheathing, ok := s.Sheathing(p)
	if !ok {
		return p.Bands
	}
	sheathed := sheathing.Thick
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

// units is that of the piece that the rod is for.
func (r *Rod) units() units.System { return r.For.Units() }

// mirrored tells whether the house lies mirrored from what its plan writes.
func (s *Steel) mirrored() bool {
	p := s.Placed.House.Plan
	return p != nil && p.Lay.Mirrored
}
