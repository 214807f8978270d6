package label

import (
	"math"
	"slices"

	"galewright/render/sheet"
)

// grid is a uniform grid over boxes: each cell lists the boxes that touch
// it. Labels are all of about one size, so a grid beats a tree here.
type grid struct {
	cell  sheet.MM
	cells map[[2]int][]int
	boxes []sheet.Rect
	seen  []int // stamp of the last query that met a box
	stamp int
}

func newGrid(cell sheet.MM) *grid {
	return &grid{cell: cell, cells: map[[2]int][]int{}}
}

// add puts a box in and returns its handle.
func (g *grid) add(r sheet.Rect) int {
	id := len(g.boxes)
	g.boxes = append(g.boxes, r)
	g.seen = append(g.seen, 0)
	g.span(r, func(c [2]int) bool {
		g.cells[c] = append(g.cells[c], id)
		return true
	})
	return id
}

// remove takes a box out.
func (g *grid) remove(id int) {
	g.span(g.boxes[id], func(c [2]int) bool {
		if i := slices.Index(g.cells[c], id); i >= 0 {
			g.cells[c] = slices.Delete(g.cells[c], i, i+1)
		}
		return true
	})
}

// span calls f for every cell that r touches until it returns false.
func (g *grid) span(r sheet.Rect, f func([2]int) bool) {
	x0, x1 := int(math.Floor(float64(r.X/g.cell))), int(math.Floor(float64((r.X+r.W)/g.cell)))
	y0, y1 := int(math.Floor(float64(r.Y/g.cell))), int(math.Floor(float64((r.Y+r.H)/g.cell)))
	for y := y0; y <= y1; y++ {
		for x := x0; x <= x1; x++ {
			if !f([2]int{x, y}) {
				return
			}
		}
	}
}

// over calls f with the handle of every box that overlaps r, once each,
// until it returns false.
func (g *grid) over(r sheet.Rect, f func(id int) bool) {
	g.stamp++
	g.span(r, func(c [2]int) bool {
		for _, id := range g.cells[c] {
			if g.seen[id] == g.stamp {
				continue
			}
			g.seen[id] = g.stamp
			if g.boxes[id].Overlaps(r) && !f(id) {
				return false
			}
		}
		return true
	})
}

// hits tells whether any box overlaps r.
func (g *grid) hits(r sheet.Rect) (hit bool) {
	g.over(r, func(int) bool { hit = true; return false })
	return hit
}

// crossings counts the boxes that the segment a–b passes through.
func (g *grid) crossings(a, b sheet.Pt) (n int) {
	r := sheet.Rect{X: min(a.X, b.X), Y: min(a.Y, b.Y), W: abs(a.X - b.X), H: abs(a.Y - b.Y)}
	// a flat rectangle overlaps nothing: give it a hair
	r = r.Inset(-0.01)
	g.over(r, func(id int) bool {
		if Crosses(a, b, g.boxes[id]) {
			n++
		}
		return true
	})
	return n
}

func abs(x sheet.MM) sheet.MM { return max(x, -x) }

// Crosses tells whether the segment a–b passes through the inside of r.
func Crosses(a, b sheet.Pt, r sheet.Rect) bool {
	t0, t1 := sheet.MM(0), sheet.MM(1)
	for _, s := range [...][3]sheet.MM{{a.X, b.X - a.X, 0}, {a.Y, b.Y - a.Y, 1}} {
		lo, hi := r.X, r.X+r.W
		if s[2] == 1 {
			lo, hi = r.Y, r.Y+r.H
		}
		if s[1] == 0 {
			if s[0] <= lo || s[0] >= hi {
				return false
			}
			continue
		}
		u, v := (lo-s[0])/s[1], (hi-s[0])/s[1]
		t0, t1 = max(t0, min(u, v)), min(t1, max(u, v))
	}
	return t1-t0 > 1e-9
}

// meet tells whether segments a–b and c–d cross.
func meet(a, b, c, d sheet.Pt) bool {
	side := func(p, q, r sheet.Pt) sheet.MM { return (q.X-p.X)*(r.Y-p.Y) - (q.Y-p.Y)*(r.X-p.X) }
	return side(a, b, c)*side(a, b, d) < 0 && side(c, d, a)*side(c, d, b) < 0
}
