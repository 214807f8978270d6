package elevation

import (
	"slices"

	"galewright/render/page"
	"galewright/render/sheet"
)

// gapBetween is the clear space between two blocks on a sheet.
const gapBetween sheet.MM = 8

// lookBack is how many pages are kept open: walls far apart in the plan do not
// share a sheet, and the work grows with the number of walls alone.
const lookBack = 12

// pack lays the parts on pages: each onto the first open page that takes it,
// else onto a page of its own. Pages left loose are then joined, and strips
// made complete where there is room.
func pack(c *page.Context, parts []*part) (pages []*page.Page) {
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
	for _, s := range joined(open) {
		s.complete()
		pages = append(pages, elevationPage(c, s))
	}
	return pages
}

// joined joins pages that are loosely filled at the next smaller scale: no
// sheet with one small drawing in a corner.
func joined(open []*shelves) (out []*shelves) {
	for _, s := range open {
		done := false
		for _, t := range out[max(0, len(out)-lookBack):] {
			if done = t.join(s); done {
				break
			}
		}
		if !done {
			out = append(out, s)
		}
	}
	return out
}

// shelves is a page that is being filled: a block stands right of the last in
// its shelf, or on a new shelf below.
type shelves struct {
	area        sheet.Rect
	paper       sheet.Paper
	scale       page.Scale
	parts       []*part
	x, y, h     sheet.MM // place of the next block, height of the shelf
	wide, below sheet.MM // extent taken
	kept        sheet.MM // height kept free for the legend
}

// take puts a part on the page at the page's scale, if it fits so.
func (s *shelves) take(p *part) bool {
	return s.paper == p.paper() && s.suits(s.scale, p) && s.lay(s.scale, append(slices.Clone(s.parts), p))
}

// suits tells whether a part may be drawn at a scale: not larger than its own
// and not under half of it.
func (s *shelves) suits(g page.Scale, p *part) bool {
	return g.Ratio >= p.best.Ratio && g.Ratio <= 2*p.best.Ratio
}

// loose is the share of a page below which it gives up a step of scale to
// take another's drawings.
const loose = 0.45

// join takes the parts of a page on this one when both are loosely filled.
// Lengths of one wall stay together, at their own scale.
func (s *shelves) join(t *shelves) bool {
	if s.paper != t.paper || s.fill() > loose || t.fill() > loose {
		return false
	}
	all := append(slices.Clone(s.parts), t.parts...)
	good, _ := goodScales(all[0].Context)
	for _, g := range good {
		if g.Ratio <= max(s.scale.Ratio, t.scale.Ratio) {
			continue
		}
		for _, p := range all {
			if p.left != nil || p.right != nil || !s.suits(g, p) {
				return false
			}
		}
		return s.lay(g, all)
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

// complete makes the strips of the page's parts complete where that fits
// beside a legend with names: all of them, else as many as do.
func (s *shelves) complete() {
	c := s.parts[0].Context
	k := keyFor(c.NewPageOn(s.paper, "", ""), linesOn(c, s.parts), s.area.H-s.below)
	s.kept = k.strip
	for _, p := range s.parts {
		p.full = true
	}
	if s.lay(s.scale, s.parts) {
		return
	}
	for _, p := range s.parts {
		p.full = false
	}
	s.lay(s.scale, s.parts)
	for _, p := range s.parts {
		p.full = true
		if !s.lay(s.scale, s.parts) {
			p.full = false
			p.settle(s.scale)
		}
	}
}

// lay lays parts out on the page at a scale; when they do not fit, everything
// stays as it was.
func (s *shelves) lay(scale page.Scale, parts []*part) bool {
	next := &shelves{area: s.area, paper: s.paper, scale: scale, kept: s.kept}
	was := make([]part, len(parts))
	for i, p := range parts {
		was[i] = *p
	}
	fits := true
	for _, p := range parts {
		p.settle(scale)
		fits = fits && next.add(p)
	}
	if !fits || next.wide > s.area.W || next.below > s.area.H-s.kept {
		for i, p := range parts {
			*p = was[i]
		}
		return false
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
