package label

import (
	"galewright/plan/geom"
	"galewright/render/sheet"
)

// cell is the side of a cell of a board's grids, mm: about the size of a label.
const cell = 8

// grid finds the boxes near a place of the sheet.
type grid struct{ *geom.Grid[sheet.Rect] }

func newGrid() grid { return grid{geom.NewGridOf[sheet.Rect](cell)} }

// corners returns the corners of a box as the grid takes them.
func corners(r sheet.Rect) (lo, hi geom.Vec3) {
	return geom.Vec3{X: float64(r.X), Y: float64(r.Y)}, geom.Vec3{X: float64(r.X + r.W), Y: float64(r.Y + r.H)}
}

// add puts a box in and returns its handle.
func (g grid) add(r sheet.Rect) int {
	lo, hi := corners(r)
	return g.Add(r, lo, hi, nil)
}

// over calls f with the handle of every box that overlaps r, once each,
// until it returns false.
func (g grid) over(r sheet.Rect, f func(id int) bool) {
	lo, hi := corners(r)
	g.Each(lo, hi, func(id int, box sheet.Rect) bool { return !box.Overlaps(r) || f(id) })
}

// hits tells whether any box overlaps r.
func (g grid) hits(r sheet.Rect) (hit bool) {
	g.over(r, func(int) bool { hit = true; return false })
	return hit
}

// crossings counts the boxes that the segment a–b passes through.
func (g grid) crossings(a, b sheet.Pt) (n int) {
	g.crossed(a, b, func(int) bool { n++; return true })
	return n
}

// crossed calls f with the handle of every box that the segment a–b passes
// through, until it returns false.
func (g grid) crossed(a, b sheet.Pt, f func(id int) bool) {
	lo, hi := corners(around(a, b))
	g.Each(lo, hi, func(id int, box sheet.Rect) bool { return !Crosses(a, b, box) || f(id) })
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
