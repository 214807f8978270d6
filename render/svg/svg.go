package svg

import (
	"bufio"
	"fmt"
	"io"
	"strings"

	svgo "github.com/ajstarks/svgo/float"

	"galewright/render/sheet"
)

type pt = sheet.Pt

// Options says how a sheet is written.
type Options struct {
	// Screen adds color and hover rules that hold on screens only; print
	// stays black.
	Screen bool
	// Bare leaves out the XML declaration, to put the drawing into a page.
	Bare bool
	// Href gives the target of a link to a sheet; nil: its number and ".svg".
	Href func(number string) string
}

// Write writes sheet i of the set, counted from 0. It returns the first fault
// of the sheet or of w; what is written until then is not to be used.
func Write(w io.Writer, set *sheet.Set, i int, o Options) error {
	if i < 0 || i >= len(set.Sheets) {
		return fmt.Errorf("svg: no sheet %d in a set of %d", i, len(set.Sheets))
	}
	sticky := &stickyWriter{w: w}
	buf := bufio.NewWriterSize(sticky, 64<<10)
	out := &writer{svg: svgo.New(buf), raw: buf, sheet: set.Sheets[i], symbols: set.Map(), o: o}
	out.svg.Decimals = decimals
	out.document(set)
	if err := buf.Flush(); out.err == nil {
		out.err = err
	}
	if out.err != nil {
		return fmt.Errorf("svg: sheet %s: %w", out.sheet.Title.Sheet, out.err)
	}
	return nil
}

// writer writes one sheet; err is its first fault.
type writer struct {
	svg     *svgo.SVG
	raw     *bufio.Writer
	sheet   *sheet.Sheet
	symbols map[string]sheet.Symbol
	o       Options
	windows int // written so far
	err     error
}

func (w *writer) fail(err error) {
	if w.err == nil {
		w.err = err
	}
}

func (w *writer) document(set *sheet.Set) {
	t := w.sheet.Title
	w.open()
	w.svg.Title(strings.TrimSpace(t.Sheet + " " + t.SheetTitle))
	if t.Caution != "" {
		w.svg.Desc(t.Caution)
	}
	w.svg.Style("text/css", stylesheet(w.o.Screen))
	w.definitions(set)
	w.svg.Rect(0, 0, w.num(float64(w.sheet.Paper.W)), w.num(float64(w.sheet.Paper.H)), `class="k0 f-paper"`)
	w.marks(w.sheet.Marks)
	w.svg.End()
}

// open begins the document at real size: one unit is a millimeter.
func (w *writer) open() {
	wd, ht := number(w.num(float64(w.sheet.Paper.W))), number(w.num(float64(w.sheet.Paper.H)))
	attrs := []string{
		attr("class", "gw"), attr("width", wd+"mm"), attr("height", ht+"mm"),
		attr("viewBox", "0 0 "+wd+" "+ht), attr("data-sheet", w.sheet.Title.Sheet), attr("data-paper", w.sheet.Paper.Name),
	}
	if !w.o.Bare {
		w.svg.Startraw(attrs...)
		return
	}
	fmt.Fprintf(w.raw, "<svg %s xmlns=\"http://www.w3.org/2000/svg\" xmlns:xlink=\"http://www.w3.org/1999/xlink\">\n", strings.Join(attrs, " "))
}

// definitions writes each symbol that this sheet uses, once, in order of id.
func (w *writer) definitions(set *sheet.Set) {
	used := sheet.Uses(w.sheet.Marks)
	if len(used) == 0 {
		return
	}
	w.svg.Def()
	for _, s := range set.Symbols {
		if !used[s.ID] {
			continue
		}
		if !sheet.GoodID(s.ID) {
			w.fail(fmt.Errorf("symbol id %q is not letters, digits and hyphens", s.ID))
			continue
		}
		fmt.Fprintf(w.raw, "<symbol id=\"%s\" overflow=\"visible\">\n", s.ID)
		w.svg.Title(s.Title)
		for _, m := range s.Marks {
			w.mark(m)
		}
		fmt.Fprintln(w.raw, "</symbol>")
	}
	w.svg.DefEnd()
}

// marks writes the marks in their order, in one group for each run of marks of
// one layer, and inside it one group for each run of one piece.
func (w *writer) marks(ms []sheet.Mark) {
	for len(ms) > 0 {
		layer := sheet.StyleOf(ms[0]).Layer
		n := run(ms, func(m sheet.Mark) bool { return sheet.StyleOf(m).Layer == layer })
		w.svg.Group(attr("class", "l-"+layer.String()))
		w.pieces(ms[:n])
		w.svg.Gend()
		ms = ms[n:]
	}
}

func (w *writer) pieces(ms []sheet.Mark) {
	for len(ms) > 0 {
		p := sheet.PieceOf(ms[0])
		n := run(ms, func(m sheet.Mark) bool { return samePiece(p, sheet.PieceOf(m)) })
		if p != nil {
			w.svg.Group(pieceAttrs(p, ms[:n])...)
			w.svg.Title(p.Title)
		}
		for _, m := range ms[:n] {
			w.mark(m)
		}
		if p != nil {
			w.svg.Gend()
		}
		ms = ms[n:]
	}
}

// run returns how many marks from the first on are alike; at least one.
func run(ms []sheet.Mark, alike func(sheet.Mark) bool) int {
	n := 1
	for n < len(ms) && alike(ms[n]) {
		n++
	}
	return n
}

func samePiece(a, b *sheet.Piece) bool {
	return a == b || a != nil && b != nil && *a == *b
}

// pieceAttrs says what a group of marks is to its piece.
func pieceAttrs(p *sheet.Piece, ms []sheet.Mark) []string {
	name := "data-part"
	for _, m := range ms {
		if _, ok := m.(sheet.Use); ok {
			name = "data-see"
			if p.Home {
				name = "data-tag"
			}
		}
	}
	return []string{attr(name, p.Tag), attr("data-legend", fmt.Sprint(p.Legend)), attr("data-mark", p.Mark)}
}
