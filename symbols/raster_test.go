package symbols

import (
	"math"

	"galewright/render/sheet"
)

// grid is what a print shows of a symbol: cells of cell mm over ±4 mm, true
// where there is ink.
type grid [cells][cells]bool

const (
	cells = 160
	cell  = 8.0 / cells
)

func at(i, j int) sheet.Pt {
	return sheet.Pt{X: sheet.MM(-4 + (float64(j)+0.5)*cell), Y: sheet.MM(-4 + (float64(i)+0.5)*cell)}
}

// raster paints marks in order, as a printer does.
func raster(marks []sheet.Mark) (g grid) {
	for _, m := range marks {
		switch m := m.(type) {
		case sheet.Line:
			g.paint(true, func(p sheet.Pt) bool { return near(p, m.A, m.B) <= m.Pen.Width()/2 })
		case sheet.Circle:
			r := func(p sheet.Pt) sheet.MM { return sheet.MM(math.Hypot(float64(p.X-m.C.X), float64(p.Y-m.C.Y))) }
			g.fill(m.Style, func(p sheet.Pt) bool { return r(p) <= m.R },
				func(p sheet.Pt) bool { return r(p)-m.R <= m.Pen.Width()/2 && m.R-r(p) <= m.Pen.Width()/2 })
		case sheet.Polyline:
			g.fill(m.Style, func(p sheet.Pt) bool { return inside(p, m.Pts) },
				func(p sheet.Pt) bool { return onEdge(p, m) })
		}
	}
	return g
}

func (g *grid) paint(ink bool, in func(sheet.Pt) bool) {
	for i := range g {
		for j := range g[i] {
			if in(at(i, j)) {
				g[i][j] = ink
			}
		}
	}
}

func (g *grid) fill(s sheet.Style, in, edge func(sheet.Pt) bool) {
	if s.Fill != sheet.NoFill {
		g.paint(s.Fill == sheet.Black, in)
	}
	if s.Pen != sheet.NoPen {
		g.paint(true, edge)
	}
}

func onEdge(p sheet.Pt, m sheet.Polyline) bool {
	for i := range m.Pts {
		if i+1 == len(m.Pts) && !m.Closed {
			break
		}
		if near(p, m.Pts[i], m.Pts[(i+1)%len(m.Pts)]) <= m.Pen.Width()/2 {
			return true
		}
	}
	return false
}

// near is the distance of p from the segment ab.
func near(p, a, b sheet.Pt) sheet.MM {
	dx, dy := float64(b.X-a.X), float64(b.Y-a.Y)
	t := (float64(p.X-a.X)*dx + float64(p.Y-a.Y)*dy) / (dx*dx + dy*dy)
	t = max(0, min(1, t))
	return sheet.MM(math.Hypot(float64(p.X-a.X)-t*dx, float64(p.Y-a.Y)-t*dy))
}

// inside is the even-odd rule.
func inside(p sheet.Pt, poly []sheet.Pt) bool {
	in := false
	for i, a := range poly {
		b := poly[(i+1)%len(poly)]
		if (a.Y > p.Y) != (b.Y > p.Y) && p.X < a.X+(p.Y-a.Y)/(b.Y-a.Y)*(b.X-a.X) {
			in = !in
		}
	}
	return in
}

// ink counts the inked cells.
func (g grid) ink() (n int) {
	for i := range g {
		for j := range g[i] {
			if g[i][j] {
				n++
			}
		}
	}
	return n
}

// turned returns g a quarter turn on.
func (g grid) turned() (h grid) {
	for i := range g {
		for j := range g[i] {
			h[j][cells-1-i] = g[i][j]
		}
	}
	return h
}

// distance is the share of the ink of both that only one of them has.
func (g grid) distance(h grid) float64 {
	var only, any float64
	for i := range g {
		for j := range g[i] {
			if g[i][j] || h[i][j] {
				any++
			}
			if g[i][j] != h[i][j] {
				only++
			}
		}
	}
	return only / any
}
