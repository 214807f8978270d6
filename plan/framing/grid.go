package framing

import (
	"math"
	"slices"

	"galewright/plan/geom"
)

// cell is the side of a cell of the grid, in: a little over two stud spaces,
// so that a stud lies in one or two cells and a plate in a row of them.
const cell = 36

// grid is a hashed uniform grid over the plan that finds the things near a
// place in time independent of the size of the house.
type grid[T any] struct {
	cells  map[[2]int][]int
	things []T
	lo, hi []geom.Vec3
}

func newGrid[T any]() *grid[T] { return &grid[T]{cells: map[[2]int][]int{}} }

func cellOf(v float64) int { return int(math.Floor(v / cell)) }

// add puts x, whose box is lo..hi, into every cell of it for which on holds;
// a nil on holds for all.
func (g *grid[T]) add(x T, lo, hi geom.Vec3, on func(x, y int) bool) {
	n := len(g.things)
	g.things = append(g.things, x)
	g.lo, g.hi = append(g.lo, lo), append(g.hi, hi)
	for x := cellOf(lo.X); x <= cellOf(hi.X); x++ {
		for y := cellOf(lo.Y); y <= cellOf(hi.Y); y++ {
			if on == nil || on(x, y) {
				k := [2]int{x, y}
				g.cells[k] = append(g.cells[k], n)
			}
		}
	}
}

// addMember puts m into the grid, unless it has no body.
func addMember(g *grid[*Member], m *Member) {
	if len(m.Solid) == 0 {
		return
	}
	lo, hi := m.Bounds()
	g.add(m, lo, hi, slant(m.A.Flat(), m.B.Flat(), max(m.Section.Width(), m.Section.Depth)))
}

// slant tells for a cell whether something along the line a to b, no wider
// than wide to either side, may touch it: a long thing that lies slant on the
// plan touches only the cells near its axis, not the square it spans. It is
// nil, for all cells, when the line is short.
func slant(a, b geom.Vec2, wide float64) func(x, y int) bool {
	d := b.Sub(a)
	l := d.Len()
	if l < cell {
		return nil
	}
	return func(x, y int) bool {
		c := geom.Vec2{X: (float64(x) + 0.5) * cell, Y: (float64(y) + 0.5) * cell}
		return math.Abs(d.Cross(c.Sub(a)))/l <= cell*math.Sqrt2/2+2*wide
	}
}

// within returns the things whose box meets the box lo..hi, in the order in
// which they were added.
func (g *grid[T]) within(lo, hi geom.Vec3) []T {
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
	out := make([]T, len(hits))
	for i, h := range hits {
		out[i] = g.things[h]
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
