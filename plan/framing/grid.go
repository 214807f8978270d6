package framing

import (
	"math"
	"slices"

	"galewright/plan/geom"
)

// cell is the side of a cell of the grid, in: a little over two stud spaces,
// so that a stud lies in one or two cells and a plate in a row of them.
const cell = 36

// grid is a hashed uniform grid over the plan that finds the members near a
// place in time independent of the size of the house.
type grid struct {
	cells   map[[2]int][]int
	members []*Member
	lo, hi  []geom.Vec3
}

func newGrid() *grid { return &grid{cells: map[[2]int][]int{}} }

func cellOf(v float64) int { return int(math.Floor(v / cell)) }

// add puts m into every cell that a part of it may touch.
func (g *grid) add(m *Member) {
	if len(m.Solid) == 0 {
		return
	}
	n := len(g.members)
	lo, hi := m.Bounds()
	g.members = append(g.members, m)
	g.lo, g.hi = append(g.lo, lo), append(g.hi, hi)
	for x := cellOf(lo.X); x <= cellOf(hi.X); x++ {
		for y := cellOf(lo.Y); y <= cellOf(hi.Y); y++ {
			if onPlan(m, x, y) {
				k := [2]int{x, y}
				g.cells[k] = append(g.cells[k], n)
			}
		}
	}
}

// onPlan tells whether m may touch cell x, y. A long member that lies slant
// on the plan touches only the cells near its axis, not the square it spans.
func onPlan(m *Member, x, y int) bool {
	a, d := m.A.Flat(), m.B.Sub(m.A).Flat()
	l := d.Len()
	if l < cell {
		return true
	}
	c := geom.Vec2{X: (float64(x) + 0.5) * cell, Y: (float64(y) + 0.5) * cell}
	off := math.Abs(d.Cross(c.Sub(a))) / l
	return off <= cell*math.Sqrt2/2+2*max(m.Section.Width(), m.Section.Depth)
}

// within returns the members whose box meets the box lo..hi, in the order in
// which they were added.
func (g *grid) within(lo, hi geom.Vec3) []*Member {
	var hits []int
	for x := cellOf(lo.X); x <= cellOf(hi.X); x++ {
		for y := cellOf(lo.Y); y <= cellOf(hi.Y); y++ {
			for _, i := range g.cells[[2]int{x, y}] {
				if meet(g.lo[i], g.hi[i], lo, hi) {
					hits = append(hits, i)
				}
			}
		}
	}
	slices.Sort(hits)
	hits = slices.Compact(hits)
	out := make([]*Member, len(hits))
	for i, h := range hits {
		out[i] = g.members[h]
	}
	return out
}

func meet(alo, ahi, blo, bhi geom.Vec3) bool {
	return alo.X <= bhi.X && blo.X <= ahi.X && alo.Y <= bhi.Y && blo.Y <= ahi.Y &&
		alo.Z <= bhi.Z && blo.Z <= ahi.Z
}

// Bounds returns the axis-aligned extent of the member, in.
func (m *Member) Bounds() (lo, hi geom.Vec3) {
	for i, s := range m.Solid {
		l, h := s.Bounds()
		if i == 0 {
			lo, hi = l, h
			continue
		}
		lo = geom.Vec3{X: min(lo.X, l.X), Y: min(lo.Y, l.Y), Z: min(lo.Z, l.Z)}
		hi = geom.Vec3{X: max(hi.X, h.X), Y: max(hi.Y, h.Y), Z: max(hi.Z, h.Z)}
	}
	return lo, hi
}

// Overlaps returns every pair of members that reach into each other by more
// than tol inches, in order. In a well framed house there is none.
func (h *House) Overlaps(tol float64) (pairs [][2]*Member) {
	g := newGrid()
	for _, m := range h.Members {
		lo, hi := m.Bounds()
		for _, o := range g.within(lo, hi) {
			if overlap(m, o, tol) {
				pairs = append(pairs, [2]*Member{o, m})
			}
		}
		g.add(m)
	}
	return pairs
}

func overlap(a, b *Member, tol float64) bool {
	for _, s := range a.Solid {
		for _, t := range b.Solid {
			if geom.Overlap(s, t, tol) {
				return true
			}
		}
	}
	return false
}
