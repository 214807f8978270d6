package geom

import (
	"math"
	"slices"
)

// GridCell is the side of a cell of a Grid, in: a little over two stud
// spaces, so that a stud lies in one or two cells and a plate in a row of them.
const GridCell = 36

// Grid is a hashed uniform grid over the plan that finds the things near a
// place in time independent of the size of the house.
type Grid[T any] struct {
	cells  map[[2]int][]int
	things []T
	lo, hi []Vec3
}

// NewGrid returns an empty grid.
func NewGrid[T any]() *Grid[T] { return &Grid[T]{cells: map[[2]int][]int{}} }

func cellOf(v float64) int { return int(math.Floor(v / GridCell)) }

// Add puts x, whose box is lo..hi, into every cell of it for which on holds;
// a nil on holds for all.
func (g *Grid[T]) Add(x T, lo, hi Vec3, on func(x, y int) bool) {
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

// Slant tells for a cell whether something along the line a to b, no wider
// than wide to either side, may touch it: a long thing that lies slant on the
// plan touches only the cells near its axis, not the square it spans. It is
// nil, for all cells, when the line is short.
func Slant(a, b Vec2, wide float64) func(x, y int) bool {
	d := b.Sub(a)
	l := d.Len()
	if l < GridCell {
		return nil
	}
	return func(x, y int) bool {
		c := Vec2{X: (float64(x) + 0.5) * GridCell, Y: (float64(y) + 0.5) * GridCell}
		return math.Abs(d.Cross(c.Sub(a)))/l <= GridCell*math.Sqrt2/2+2*wide
	}
}

// Within returns the things whose box meets the box lo..hi, in the order in
// which they were added.
func (g *Grid[T]) Within(lo, hi Vec3) []T {
	var hits []int
	for x := cellOf(lo.X); x <= cellOf(hi.X); x++ {
		for y := cellOf(lo.Y); y <= cellOf(hi.Y); y++ {
			for _, i := range g.cells[[2]int{x, y}] {
				if Meet(g.lo[i], g.hi[i], lo, hi) {
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

// Meet tells whether two boxes touch or overlap.
func Meet(alo, ahi, blo, bhi Vec3) bool {
	return alo.X <= bhi.X && blo.X <= ahi.X && alo.Y <= bhi.Y && blo.Y <= ahi.Y &&
		alo.Z <= bhi.Z && blo.Z <= ahi.Z
}
