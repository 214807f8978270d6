package sheet

import (
	"errors"
	"fmt"
	"math"
	"strings"
)

// offPaper is how far a mark may reach over the edge of the paper, mm: the
// rounding of a border drawn on the very edge.
const offPaper MM = 0.01

// Check refuses a set that no writer could write faithfully: numbers that are
// none, marks off the paper, symbols that are not defined, ids out of the
// alphabet, a piece that stands for itself twice. It reports every fault.
func Check(set *Set) error {
	c := &checker{symbols: set.Map(), home: map[string]string{}, sheets: map[string]bool{}}
	for _, sh := range set.Sheets {
		if c.sheets[sh.Title.Sheet] {
			c.fault("sheet %q is there twice", sh.Title.Sheet)
		}
		c.sheets[sh.Title.Sheet] = true
	}
	for i, s := range set.Symbols {
		c.at = fmt.Sprintf("symbol %q", s.ID)
		c.symbol(s)
		if i > 0 && set.Symbols[i-1].ID >= s.ID {
			c.fault("symbols must stand in order of id, each once")
		}
	}
	for _, sh := range set.Sheets {
		c.sheet(sh)
	}
	return errors.Join(c.faults...)
}

type checker struct {
	symbols map[string]Symbol
	home    map[string]string // tag -> sheet where the piece stands for itself
	sheets  map[string]bool
	at      string
	faults  []error
}

func (c *checker) fault(format string, args ...any) {
	c.faults = append(c.faults, fmt.Errorf("%s: %s", c.at, fmt.Sprintf(format, args...)))
}

func (c *checker) symbol(s Symbol) {
	if !GoodID(s.ID) {
		c.fault("the id must be letters, digits and hyphens, a letter first")
	}
	if !finite(s.Box.X, s.Box.Y, s.Box.W, s.Box.H) || s.Box.W <= 0 || s.Box.H <= 0 {
		c.fault("the box must have a size")
	}
	for i, m := range s.Marks {
		if _, ok := m.(Use); ok {
			c.fault("mark %d uses another symbol", i)
			continue
		}
		c.mark(i, m)
	}
}

func (c *checker) sheet(sh *Sheet) {
	c.at = "sheet " + sh.Title.Sheet
	if !finite(sh.Paper.W, sh.Paper.H) || sh.Paper.W <= 0 || sh.Paper.H <= 0 {
		c.fault("the paper has no size")
		return
	}
	for i, m := range sh.Marks {
		if !c.mark(i, m) {
			continue
		}
		if b := Bounds(m, c.symbols); !sh.Paper.Rect().Holds(b, offPaper) {
			c.fault("mark %d, %s, reaches off the paper: x %.1f to %.1f, y %.1f to %.1f of %.1f by %.1f mm",
				i, describe(m), b.X, b.X+b.W, b.Y, b.Y+b.H, sh.Paper.W, sh.Paper.H)
		}
		c.piece(i, m, sh.Title.Sheet)
		if t, ok := m.(Text); ok && t.Link != "" && !c.sheets[t.Link] && sh.Title.Of == len(c.sheets) {
			c.fault("mark %d, %s, points to sheet %q, which is not in the set", i, describe(m), t.Link)
		}
	}
}

// piece checks the piece of a mark. The instance that stands for a piece is
// its symbol: one Use at home in the whole set.
func (c *checker) piece(i int, m Mark, sheet string) {
	p := PieceOf(m)
	if p == nil {
		return
	}
	if p.Tag == "" || p.Legend < 1 {
		c.fault("mark %d: a piece needs a tag and a legend number from 1, not %q and %d", i, p.Tag, p.Legend)
	}
	if _, symbol := m.(Use); !symbol || !p.Home {
		return
	}
	if first, ok := c.home[p.Tag]; ok {
		c.fault("mark %d: piece %q already stands for itself on sheet %s", i, p.Tag, first)
		return
	}
	c.home[p.Tag] = sheet
}

// mark checks one mark's numbers and tells whether they can be drawn.
func (c *checker) mark(i int, m Mark) bool {
	if m == nil {
		c.fault("mark %d is nil", i)
		return false
	}
	if why := flaw(m, c.symbols); why != "" {
		c.fault("mark %d, %s: %s", i, describe(m), why)
		return false
	}
	return true
}

// flaw says what is wrong with a mark by itself, or "".
func flaw(m Mark, symbols map[string]Symbol) string {
	if s := m.styled(); s.Pen > PenGrid || s.Fill > Mid || s.Layer > LayerRevision {
		return "unknown pen, fill or layer"
	}
	switch m := m.(type) {
	case Line:
		return flawPts(2, m.A, m.B)
	case Polyline:
		return flawPts(2, m.Pts...)
	case Path:
		return flawPath(m.Segs)
	case Circle:
		if m.R <= 0 {
			return "the radius must be over 0"
		}
		return flawPts(1, m.C, Pt{m.R, 0})
	case Text:
		if !finite(m.At.X, m.At.Y, m.Size, MM(m.Angle)) || m.Size <= 0 || m.Anchor > Right {
			return "place, size or angle is no number to draw with"
		}
	case Use:
		if _, ok := symbols[m.Symbol]; !ok {
			return fmt.Sprintf("symbol %q is not in the set", m.Symbol)
		}
		if !finite(m.At.X, m.At.Y, MM(m.Angle), MM(m.Scale)) || m.Scale <= 0 {
			return "place, scale or angle is no number to draw with"
		}
	case Window:
		return flawWindow(m, symbols)
	default:
		return fmt.Sprintf("%T is no mark that writers know", m)
	}
	return ""
}

func flawWindow(w Window, symbols map[string]Symbol) string {
	if !finite(w.Rect.X, w.Rect.Y, w.Rect.W, w.Rect.H, w.Shift.X, w.Shift.Y) || w.Rect.W <= 0 || w.Rect.H <= 0 {
		return "the window has no size"
	}
	for _, m := range w.Marks {
		if _, nested := m.(Window); nested {
			return "a window holds another"
		}
		if p := PieceOf(m); p != nil && p.Home {
			return fmt.Sprintf("piece %q is at home in a window, where only part of it may show", p.Tag)
		}
		if why := flaw(m, symbols); why != "" {
			return why
		}
	}
	return ""
}

func flawPts(least int, ps ...Pt) string {
	if len(ps) < least {
		return fmt.Sprintf("has %d points", len(ps))
	}
	for _, p := range ps {
		if !finite(p.X, p.Y) {
			return "has a point that is no number"
		}
	}
	return ""
}

func flawPath(segs []Seg) string {
	if len(segs) < 2 || segs[0].Op != 'M' {
		return "a path begins with a move and goes somewhere"
	}
	for _, s := range segs {
		if !strings.ContainsRune("MLCZ", s.Op) {
			return fmt.Sprintf("unknown step %q", s.Op)
		}
		if why := flawPts(0, s.Points()...); why != "" {
			return why
		}
	}
	return ""
}

// describe names a mark for a message.
func describe(m Mark) string {
	switch m := m.(type) {
	case Text:
		return fmt.Sprintf("text %q", m.S)
	case Use:
		return fmt.Sprintf("symbol %q", m.Symbol)
	}
	return strings.ToLower(strings.TrimPrefix(fmt.Sprintf("%T", m), "sheet."))
}

// GoodID tells whether s may be the id of a symbol or sheet in a file:
// letters, digits and hyphens, a letter first.
func GoodID(s string) bool {
	for i, r := range s {
		letter := r >= 'a' && r <= 'z' || r >= 'A' && r <= 'Z'
		if !letter && (i == 0 || r != '-' && (r < '0' || r > '9')) {
			return false
		}
	}
	return s != ""
}

func finite(xs ...MM) bool {
	for _, x := range xs {
		if math.IsNaN(float64(x)) || math.Abs(float64(x)) > 1e6 {
			return false
		}
	}
	return true
}
