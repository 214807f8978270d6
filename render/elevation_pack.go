package render

import (
	"slices"

	"galewright/render/sheet"
)

// gapBetween is the clear space between two blocks on a sheet.
const gapBetween sheet.MM = 8

// lookBack is how many pages are kept open: walls far apart in the plan do not
// share a sheet, and the work grows with the number of walls alone.
const lookBack = 12

// pack lays the parts on pages: each onto the first open page that takes it,
// else onto a page of its own.
func pack(c *context, parts []*part) (pages []*page) {
	var open []*shelves
	for _, p := range parts {
		placed := false
		for _, s := range open[max(0, len(open)-lookBack):] {
			if placed = s.take(p); placed {
				break
			}
		}
		if !placed {
			s := &shelves{area: p.area(), paper: p.paper(), scale: p.scale}
			s.add(p)
			open = append(open, s)
		}
	}
	for _, s := range open {
		pages = append(pages, c.elevationPage(s))
	}
	return pages
}

// shelves is a page that is being filled: a block stands right of the last in
// its shelf, or on a new shelf below.
type shelves struct {
	area        sheet.Rect
	paper       sheet.Paper
	scale       Scale
	parts       []*part
	x, y, h     sheet.MM // place of the next block, height of the shelf
	wide, below sheet.MM // extent taken
}

// loose is the share of a page below which it gives up a step of scale to
// take another drawing: no sheet with one small drawing in a corner.
const loose = 0.45

// take puts a part on the page, at the page's scale if it fits so, or at the
// next smaller one when the page is still loosely filled.
func (s *shelves) take(p *part) bool {
	if s.paper != p.paper() || s.scale.Ratio > 2*p.scale.Ratio {
		return false
	}
	if s.scale.Ratio >= p.scale.Ratio && s.refill(s.scale, p) {
		return true
	}
	if p.left != nil || p.right != nil {
		return false // lengths of one wall stay together, at their own scale
	}
	good, _ := p.goodScales()
	for _, g := range good {
		if g.Ratio > s.scale.Ratio && g.Ratio >= p.scale.Ratio {
			return s.fill() < loose && g.Ratio <= 2*p.scale.Ratio && s.refill(g, p)
		}
	}
	return false
}

// fill returns the share of the page that is taken.
func (s *shelves) fill() float64 {
	taken := 0.0
	for _, p := range s.parts {
		w, h := p.size()
		taken += float64(w * h)
	}
	return taken / float64(s.area.W*s.area.H)
}

// refill lays the page's parts and one more out at a scale; when they do not
// fit, everything stays as it was.
func (s *shelves) refill(scale Scale, more *part) bool {
	next := &shelves{area: s.area, paper: s.paper, scale: scale}
	parts := append(slices.Clone(s.parts), more)
	was := make([]part, len(parts))
	for i, p := range parts {
		was[i] = *p
	}
	for _, p := range parts {
		if p.scale != scale {
			p.settle(scale)
		}
		if !next.add(p) {
			for i, p := range parts {
				*p = was[i]
			}
			return false
		}
	}
	*s = *next
	return true
}

// add puts a part on the page as it is settled. The first always goes.
func (s *shelves) add(p *part) bool {
	w, h := p.size()
	x, y, row := s.x, s.y, s.h
	if x+w > s.area.W && x > 0 {
		x, y, row = 0, s.y+s.h+gapBetween, 0
	}
	if len(s.parts) > 0 && (x+w > s.area.W || y+max(h, row) > s.area.H) {
		return false
	}
	p.at, p.shelf = sheet.Pt{X: x, Y: y}, y
	if row < h { // blocks of a shelf stand on one line
		for _, q := range s.parts {
			if q.shelf == y {
				q.at.Y += h - row
			}
		}
	} else {
		p.at.Y += row - h
	}
	s.parts = append(s.parts, p)
	s.x, s.y, s.h = x+w+gapBetween, y, max(row, h)
	s.wide, s.below = max(s.wide, x+w), max(s.below, s.y+s.h)
	return true
}
