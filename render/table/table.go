package table

import (
	"fmt"

	"galewright/render/page"
	"galewright/render/sheet"
)

// Table is a table of text, legend circles, symbols and boxes to tick. Column
// widths are measured, long text wraps, and a part that goes on elsewhere
// repeats title and heads.
type Table struct {
	Title string
	Cols  []Column
	Rows  []Row
	// Plain tables have no heads, rules or border: lists of notes.
	Plain bool
	// Grid draws a rule between columns.
	Grid bool
	// RowH is the least height of a row, mm; 0 = what the lettering takes.
	RowH sheet.MM
	// Cap is the height of its capitals, mm; 0 = the paper's for reading.
	Cap sheet.MM
	// Foot stands under the last row and is never parted from it.
	Foot *page.Figure
}

// cap returns the height of the table's capitals.
func (t *Table) cap(c *page.Context) sheet.MM {
	if t.Cap > 0 {
		return t.Cap
	}
	return c.ReadingCap()
}

// slack is added to measured widths, mm, so that text which just fits is not
// broken by the last bit of a sum.
const slack sheet.MM = 0.02

// Column says how a column is set.
type Column struct {
	Head   string
	Legend int // a legend number for a head
	Align  sheet.Anchor
	Wrap   bool // may be narrower than its longest text
	Grow   bool // takes the width that is left
}

// Row is one row; missing cells are empty.
type Row struct {
	Cells []Cell
	Join  bool // belongs to the row above: no rule between, never parted from it
	Group bool // a heading over all columns, its text in the first cell
	Bold  bool
}

// Cell holds text, or a legend number, a symbol or a box to tick.
type Cell struct {
	S      string
	Legend int
	Symbol string // id in package symbols
	Tick   bool
	Link   string // sheet number the text points to
}

// Texts makes plain cells.
func Texts(ss ...string) []Cell {
	out := make([]Cell, len(ss))
	for i, s := range ss {
		out[i].S = s
	}
	return out
}

// padX is the space beside the text of a cell, padY that over and under it.
func (t *Table) padX(c *page.Context) sheet.MM { return t.cap(c) * 0.6 }
func (t *Table) padY(c *page.Context) sheet.MM { return t.cap(c) * 0.48 }

// Pitch returns the distance from line to line of lettering: capitals and
// their whole height again less a third, as lettering on drawings is spaced
// (line space 1/2 to 1 of the height: ASME Y14.2, read in an extract, edition not noted).
func Pitch(h sheet.MM) sheet.MM { return h * 1.65 }

// symbolH is the height of a symbol in the table, mm: it must read at 3 mm.
func (t *Table) symbolH(c *page.Context) sheet.MM { return max(5, 2*t.cap(c)) }

// circle returns the radius of a legend circle in the table.
func (t *Table) circle(c *page.Context) sheet.MM { return max(c.LegendRadius(), t.cap(c)*0.95) }

// TickSize is the side of a box that a carpenter's pencil (some 7 mm by 13 mm
// with a lead of 2 by 5 mm: common practice, no published source) can tick.
const TickSize sheet.MM = 6.4

// content returns the width a cell wants and the least it can do with.
func (t *Table) content(c *page.Context, x Cell, bold bool) (want, least sheet.MM) {
	switch {
	case x.Legend > 0:
		return 2 * t.circle(c), 2 * t.circle(c)
	case x.Symbol != "":
		return t.symbolH(c) * 2, t.symbolH(c) * 2
	case x.Tick:
		return TickSize, TickSize
	}
	for _, w := range page.Unparted(x.S) {
		least = max(least, page.TextWidth(w, t.cap(c), bold))
	}
	return page.TextWidth(x.S, t.cap(c), bold), least
}

// measure returns the width each column wants and the least it takes.
func (t *Table) measure(c *page.Context) (want, least []sheet.MM) {
	want, least = make([]sheet.MM, len(t.Cols)), make([]sheet.MM, len(t.Cols))
	for i, col := range t.Cols {
		if !t.Plain {
			_, w := t.content(c, Cell{S: col.Head, Legend: col.Legend}, true)
			want[i], least[i] = w, w
		}
		for _, r := range t.Rows {
			if r.Group || i >= len(r.Cells) {
				continue
			}
			w, l := t.content(c, r.Cells[i], r.Bold)
			if !col.Wrap {
				l = w
			}
			want[i], least[i] = max(want[i], w), max(least[i], l)
		}
		want[i] += 2*t.padX(c) + slack
		least[i] += 2*t.padX(c) + slack
	}
	return want, least
}

// Wanted returns the width at which nothing wraps, or at
// which wrapping columns have a line that reads well: long notes need not stand on one line.
func (t *Table) Wanted(c *page.Context) (w sheet.MM) {
	want, least := t.measure(c)
	for i := range want {
		if t.Cols[i].Wrap && want[i] > 25*t.cap(c) {
			want[i] = max(25*t.cap(c), least[i])
		}
		w += want[i]
	}
	return max(w, page.TextWidth(t.Title, t.titleCap(c), true)+2)
}

// titleCap is the capital height of a table's title.
func (t *Table) titleCap(c *page.Context) sheet.MM { return t.cap(c) * 1.4 }

// widths shares w among the columns.
func (t *Table) widths(c *page.Context, w sheet.MM) []sheet.MM {
	want, least := t.measure(c)
	all, low := Sum(want), Sum(least)
	switch {
	case all <= w:
		t.grow(want, w-all)
		return want
	case low <= w:
		f := (w - low) / max(all-low, 1e-9)
		for i := range want {
			want[i] = least[i] + (want[i]-least[i])*f
		}
		return want
	}
	t.squeeze(c, least, w)
	return least
}

// squeeze narrows columns below their longest words, which then break: first
// those that wrap, and all alike when that is not enough.
func (t *Table) squeeze(c *page.Context, ws []sheet.MM, w sheet.MM) {
	wraps, n := sheet.MM(0), 0
	for i, x := range ws {
		if t.Cols[i].Wrap {
			wraps += x
			n++
		}
	}
	left := w - (Sum(ws) - wraps)
	if n > 0 && left >= sheet.MM(n)*5*t.cap(c) {
		for i := range ws {
			if t.Cols[i].Wrap {
				ws[i] *= left / wraps
			}
		}
		return
	}
	k := w / Sum(ws)
	for i := range ws {
		ws[i] *= k
	}
}

func (t *Table) grow(ws []sheet.MM, left sheet.MM) {
	n := 0
	for _, col := range t.Cols {
		if col.Grow {
			n++
		}
	}
	for i, col := range t.Cols {
		if col.Grow {
			ws[i] += left / sheet.MM(n)
		}
	}
}

// Sum adds lengths up, mm.
func Sum(xs []sheet.MM) (s sheet.MM) {
	for _, x := range xs {
		s += x
	}
	return s
}

// WrapHard wraps s and breaks words that are wider than w by themselves.
func WrapHard(s string, h sheet.MM, bold bool, w sheet.MM) (out []string) {
	for _, line := range page.Wrap(s, h, bold, w) {
		for page.TextWidth(line, h, bold) > w {
			r := []rune(line)
			n := len(r)
			for n > 1 && page.TextWidth(string(r[:n]), h, bold) > w {
				n--
			}
			out, line = append(out, string(r[:n])), string(r[n:])
			if n == 1 && len(line) == 0 {
				break
			}
		}
		if line != "" {
			out = append(out, line)
		}
	}
	return out
}

// Pairs makes a table of names and values; empty values are left out.
func Pairs(title string, kv ...string) *Table {
	t := &Table{Title: title, Plain: true, Cols: []Column{{}, {Wrap: true, Grow: true}}}
	for i := 0; i+1 < len(kv); i += 2 {
		if kv[i+1] != "" {
			t.Rows = append(t.Rows, Row{Cells: Texts(kv[i], kv[i+1])})
		}
	}
	return t
}

// DropLast takes the last column away.
func (t *Table) DropLast() {
	n := len(t.Cols) - 1
	t.Cols = t.Cols[:n]
	for i := range t.Rows {
		t.Rows[i].Cells = t.Rows[i].Cells[:n]
	}
}

// Numbered makes a plain table of numbered sentences.
func Numbered(title string, list []string) *Table {
	t := &Table{Title: title, Plain: true, Cols: []Column{{Align: sheet.Right}, {Wrap: true, Grow: true}}}
	for i, s := range list {
		t.Rows = append(t.Rows, Row{Cells: Texts(fmt.Sprintf("%d", i+1), s)})
	}
	return t
}
