package steel

import (
	"slices"

	"galewright/plan"
	"galewright/plan/framing"
	"galewright/plan/lift"
)

// leastBite is the least penetration that makes a tie, in diameters (NDS 2018
// 12.1.6.4, transcribed).
const leastBite = 6

// Ties returns what the bodies hold together: all members that one body holds
// by fasteners with enough wood, or by a rod that bears, are tied to each
// other, and to the ground where the rod is cast in.
func (s *Steel) Ties() (out []lift.Tie) {
	for _, b := range s.Bodies {
		out = append(out, b.Ties()...)
	}
	return append(out, s.grounded()...)
}

// Ties returns what one body holds together.
func (b *Body) Ties() (out []lift.Tie) {
	held, ground := b.gripped()
	tag := b.Piece.Tag
	for i, m := range held {
		for _, o := range held[:i] {
			out = append(out, lift.Tie{A: m, B: o, By: tag})
		}
		if ground {
			out = append(out, lift.Tie{A: m, By: tag})
		}
	}
	return out
}

// gripped returns the members that a body holds, and whether it goes on into
// concrete.
func (b *Body) gripped() (held []*framing.Member, ground bool) {
	seen := map[*framing.Member]bool{}
	add := func(m *framing.Member) {
		if m != nil && !seen[m] {
			seen[m] = true
			held = append(held, m)
		}
	}
	for _, f := range b.Fasteners {
		if m, deep, _, ok := f.Bite(b.Steel()); ok && deep >= leastBite*f.Diameter-1e-9 {
			add(m)
		}
	}
	for _, m := range b.Over {
		add(m)
	}
	for _, r := range b.Rods {
		if !r.Bears() {
			continue
		}
		for _, e := range r.Ends {
			add(e.Member)
			ground = ground || e.Kind == CastIn
		}
		if k := b.Piece.Joint.Kind; k == plan.GirderPile || k == plan.DeckPost { // a bolt across holds all it passes
			for _, x := range r.Passes {
				add(x.Member)
			}
		}
	}
	return held, ground
}

// Grips tells whether a body holds a member: by fasteners with enough wood, or a rod.
func (b *Body) Grips(m *framing.Member) bool {
	held, _ := b.gripped()
	return slices.Contains(held, m)
}

// grounded ties piles to the ground, and porch posts whose base is fastened:
// embedment and footing are the engineer's.
func (s *Steel) grounded() (out []lift.Tie) {
	for _, m := range s.Placed.House.Members {
		if m.Role == plan.Pile {
			out = append(out, lift.Tie{A: m, By: "embedment by the engineer"})
		}
	}
	for _, b := range s.Bodies {
		if b.Piece.Joint.Kind != plan.PostBase {
			continue
		}
		held, _ := b.gripped()
		for _, m := range held {
			if (m.Role == plan.PorchPost || m.Role == plan.RidgePole) && len(b.Piece.Joint.Members) < 2 {
				out = append(out, lift.Tie{A: m, By: b.Piece.Tag + ", footing by the engineer"})
			}
		}
	}
	return out
}
