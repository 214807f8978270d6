package geom

import (
	"math"
	"slices"
)

// GridCell is the side of a cell of a Grid, in: a little over two stud
// spaces, so that a stud lies in one or two cells and a plate in a row of them.
const GridCell = 36

// Grid is a hashed uniform grid over the plan, or over a sheet, that finds the
// things near a place in time independent of how many there are.
type Grid[T any] struct {
	cell   float64
	cells  map[[2]int][]int // the handles of what is in each
	things []T
	lo, hi []Vec3
	least  [][2]int // the cells of lo
	holes  []bool   // whether a thing is not in every cell of its box
}

// NewGrid returns an empty grid of GridCell, for a house.
func NewGrid[T any]() *Grid[T] { return NewGridOf[T](GridCell) }

// NewGridOf returns an empty grid whose cells have a side of its own.
func NewGridOf[T any](cell float64) *Grid[T] {
	return &Grid[T]{cell: cell, cells: map[[2]int][]int{}}
}

// span calls f for every cell that the box lo..hi touches, row by row, until it
// returns false.
func (g *Grid[T]) span(lo, hi Vec3, f func(cell [2]int) bool) {
	from, to := g.cellAt(lo), g.cellAt(hi)
	for y := from[1]; y <= to[1]; y++ {
		for x := from[0]; x <= to[0]; x++ {
			if !f([2]int{x, y}) {
				return
			}
		}
	}
}

func (g *Grid[T]) cellAt(p Vec3) [2]int {
	return [2]int{int(math.Floor(p.X / g.cell)), int(math.Floor(p.Y / g.cell))}
}

// Add puts x, whose box is lo..hi, into every cell of it for which on holds,
// and returns its handle; a nil on holds for all.
func (g *Grid[T]) Add(x T, lo, hi Vec3, on func(x, y int) bool) int {
	n := len(g.things)
	g.things = append(g.things, x)
	g.lo, g.hi = append(g.lo, lo), append(g.hi, hi)
	g.least, g.holes = append(g.least, g.cellAt(lo)), append(g.holes, on != nil)
	g.span(lo, hi, func(cell [2]int) bool {
		if on == nil || on(cell[0], cell[1]) {
			g.cells[cell] = append(g.cells[cell], n)
		}
		return true
	})
	return n
}

// Remove takes a thing out by its handle.
func (g *Grid[T]) Remove(n int) {
	g.span(g.lo[n], g.hi[n], func(cell [2]int) bool {
		if i := slices.Index(g.cells[cell], n); i >= 0 {
			g.cells[cell] = slices.Delete(g.cells[cell], i, i+1)
		}
		return true
	})
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

// Each calls f with the handle of every thing whose box meets the box lo..hi,
// once each, row of cells by row, until f returns false.
func (g *Grid[T]) Each(lo, hi Vec3, f func(n int, x T) bool) {
	var met []int // of those with holes
	from := g.cellAt(lo)
	g.span(lo, hi, func(cell [2]int) bool {
		for _, n := range g.cells[cell] {
			switch {
			case !Meet(g.lo[n], g.hi[n], lo, hi):
				continue
			case g.holes[n]:
				if slices.Contains(met, n) {
					continue
				}
				met = append(met, n)
			case cell[0] != max(from[0], g.least[n][0]) || cell[1] != max(from[1], g.least[n][1]):
				continue // found in an earlier cell
			}
			if !f(n, g.things[n]) {
				return false
			}
		}
		return true
	})
}

// Within returns the things whose box meets the box lo..hi, in the order in
// which they were added.
func (g *Grid[T]) Within(lo, hi Vec3) []T {
	var hits []int
	g.Each(lo, hi, func(n int, _ T) bool {
		hits = append(hits, n)
		return true
	})
	slices.Sort(hits)
	out := make([]T, len(hits))
	for i, n := range hits {
		out[i] = g.things[n]
	}
	return out
}

// Meet tells whether two boxes touch or overlap.
func Meet(alo, ahi, blo, bhi Vec3) bool {
	return alo.X <= bhi.X && blo.X <= ahi.X && alo.Y <= bhi.Y && blo.Y <= ahi.Y &&
		alo.Z <= bhi.Z && blo.Z <= ahi.Z
}
