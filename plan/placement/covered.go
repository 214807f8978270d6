package placement

import (
	"galewright/plan"
	"galewright/plan/framing"
	"galewright/plan/geom"
)

// block is one solid part of a member that can stand against a face.
type block struct {
	m     *framing.Member
	solid geom.Solid
}

// blocksOf enters the solid parts of members that can stand against faces.
func blocksOf(members []*framing.Member) *geom.Grid[block] {
	g := geom.NewGrid[block]()
	for _, m := range members {
		if !blocks(m.Role) {
			continue
		}
		for _, s := range m.Solid {
			if !s.Empty() {
				lo, hi := s.Bounds()
				g.Add(block{m, s}, lo, hi, nil)
			}
		}
	}
	return g
}

// blocks tells whether members of a role stand against faces that hardware
// is nailed to. Plates, headers and rafters do not: straps go over or under
// them by intent.
func blocks(r plan.Role) bool {
	switch r {
	case plan.Jack, plan.Cripple, plan.BeveledStud, plan.Joist, plan.Blocking, plan.Ledger:
		return true
	}
	return r.FullHeight()
}

// The room that is looked at in front of a face: from just off it to a
// quarter of an inch, an eighth inside the steel's outline, in.
const (
	probeNear  = 1.0 / 32
	probeFar   = 0.25
	probeInset = 0.125
)

// cover returns a member that stands against the face where the plate lies, up
// to far in front of it, other than those in skip, or nil.
func (w *world) cover(b geom.Plate, far float64, skip ...*framing.Member) *framing.Member {
	l := b.Len() - 2*probeInset
	wide := b.Width - 2*probeInset
	if l <= 0 || wide <= 0 {
		return nil
	}
	u, n := b.B.Sub(b.A).Unit(), b.N.Unit()
	v := n.Cross(u)
	o := b.A.Add(u.Mul(probeInset)).Sub(v.Mul(wide / 2)).Add(n.Mul(probeNear))
	probe := geom.Box(o, u.Mul(l), v.Mul(wide), n.Mul(far-probeNear))
	return w.inside(probe, skip...)
}

// inside returns a member that stands in a room, other than those in skip, or
// nil: the first in the order of the house.
func (w *world) inside(probe geom.Solid, skip ...*framing.Member) *framing.Member {
	lo, hi := probe.Bounds()
	for _, x := range w.grid.Within(lo, hi) {
		if !in(skip, x.m) && geom.Overlap(x.solid, probe, touch/4) {
			return x.m
		}
	}
	return nil
}

func in(list []*framing.Member, m *framing.Member) bool {
	for _, x := range list {
		if x == m {
			return true
		}
	}
	return false
}

// beside tells whether another member stands against a side of an upright of
// a wall at height z.
func (w *world) beside(m *framing.Member, side plan.Face, z float64) bool {
	g := facingOf(m.Wall.Frame(), m.S0, m.S1, m.Wall.Depth(), side)
	return w.cover(geom.Plate{A: g.at(z-1, 0), B: g.at(z+1, 0), N: g.n, Width: g.breadth / 2}, probeFar, m) != nil
}
