package sheet

import "math"

// extent gathers points into a rectangle.
type extent struct{ lo, hi Pt }

func newExtent() extent {
	inf := MM(math.Inf(1))
	return extent{Pt{inf, inf}, Pt{-inf, -inf}}
}

func (e *extent) add(ps ...Pt) {
	for _, p := range ps {
		e.lo = Pt{min(e.lo.X, p.X), min(e.lo.Y, p.Y)}
		e.hi = Pt{max(e.hi.X, p.X), max(e.hi.Y, p.Y)}
	}
}

func (e extent) rect() Rect {
	if e.lo.X > e.hi.X {
		return Rect{}
	}
	return Rect{e.lo.X, e.lo.Y, e.hi.X - e.lo.X, e.hi.Y - e.lo.Y}
}

// Bounds returns the upright rectangle that m covers, without the width of
// its pen. A curve is bounded by its control points. A Use takes the box of
// its symbol, or its own point when symbols lacks it.
func Bounds(m Mark, symbols map[string]Symbol) Rect {
	e := newExtent()
	switch m := m.(type) {
	case Line:
		e.add(m.A, m.B)
	case Polyline:
		e.add(m.Pts...)
	case Path:
		for _, s := range m.Segs {
			e.add(s.Points()...)
		}
	case Circle:
		e.add(Pt{m.C.X - m.R, m.C.Y - m.R}, Pt{m.C.X + m.R, m.C.Y + m.R})
	case Text:
		return m.Box()
	case Use:
		box := symbols[m.Symbol].Box
		if m.Mirror {
			box.X = -box.X - box.W
		}
		return turned(box, m.At, m.Angle, m.Scale)
	case Window:
		return m.Rect
	}
	return e.rect()
}

// Points returns the points that s uses, its end last.
func (s *Seg) Points() []Pt {
	switch s.Op {
	case 'M', 'L':
		return s.P[:1]
	case 'C':
		return s.P[:3]
	}
	return nil
}

// StyleOf returns the style of any mark.
func StyleOf(m Mark) Style { return m.styled() }

// PieceOf returns the piece a mark belongs to, or nil.
func PieceOf(m Mark) *Piece {
	switch m := m.(type) {
	case Line:
		return m.Piece
	case Polyline:
		return m.Piece
	case Path:
		return m.Piece
	case Circle:
		return m.Piece
	case Text:
		return m.Piece
	case Use:
		return m.Piece
	}
	return nil
}

// Union returns the smallest rectangle around r and s.
func (r Rect) Union(s Rect) Rect {
	e := newExtent()
	e.add(Pt{r.X, r.Y}, Pt{r.X + r.W, r.Y + r.H}, Pt{s.X, s.Y}, Pt{s.X + s.W, s.Y + s.H})
	return e.rect()
}

// Holds tells whether s lies inside r, give or take tol.
func (r Rect) Holds(s Rect, tol MM) bool {
	return s.X >= r.X-tol && s.Y >= r.Y-tol && s.X+s.W <= r.X+r.W+tol && s.Y+s.H <= r.Y+r.H+tol
}

// Map returns the symbols of the set by id.
func (set *Set) Map() map[string]Symbol {
	m := make(map[string]Symbol, len(set.Symbols))
	for _, s := range set.Symbols {
		m[s.ID] = s
	}
	return m
}

// Uses returns the ids of the symbols that marks use, those in windows too.
func Uses(marks []Mark) map[string]bool {
	used := map[string]bool{}
	for _, m := range marks {
		switch m := m.(type) {
		case Use:
			used[m.Symbol] = true
		case Window:
			for id := range Uses(m.Marks) {
				used[id] = true
			}
		}
	}
	return used
}
