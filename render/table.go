package render

import (
	"strings"

	"galewright/render/sheet"
)

// table is a table of text, legend circles, symbols and boxes to tick. Column
// widths are measured, long text wraps, and a part that goes on elsewhere
// repeats title and heads.
type table struct {
	Title string
	Cols  []tableColumn
	Rows  []tableRow
	// Plain tables have no heads, rules or border: lists of notes.
	Plain bool
	// Grid draws a rule between columns.
	Grid bool
	// RowH is the least height of a row, mm; 0 = what the lettering takes.
	RowH sheet.MM
	// Cap is the height of its capitals, mm; 0 = the paper's for reading.
	Cap sheet.MM
	// Foot stands under the last row and is never parted from it.
	Foot *figure
}

// readingCap is the capital height of text that is read off a posted sheet:
// as large as dimensions where there is paper for it.
func (c *context) readingCap() sheet.MM {
	switch {
	case c.reading > 0:
		return c.reading
	case large(c.Paper):
		return c.Size.Dim
	}
	return c.Size.Note
}

// largest lays a text view out with the largest lettering at which it takes
// one sheet, so that a posted sheet is read from afar; with the paper's own
// lettering when it takes more.
func (c *context) largest(lay func(c *context) []*page) []*page {
	own := lay(c)
	if large(c.Paper) && len(own) == 1 {
		for h := sheet.MM(5.2); h > c.Size.Dim; h -= 0.2 {
			try := *c
			try.reading = h
			if pages := lay(&try); len(pages) == 1 {
				pages[0].context = c
				return pages
			}
		}
	}
	return own
}

// cap returns the height of the table's capitals.
func (t *table) cap(c *context) sheet.MM {
	if t.Cap > 0 {
		return t.Cap
	}
	return c.readingCap()
}

// slack is added to measured widths, mm, so that text which just fits is not
// broken by the last bit of a sum.
const slack sheet.MM = 0.02

// tableColumn says how a column is set.
type tableColumn struct {
	Head   string
	Legend int // a legend number for a head
	Align  sheet.Anchor
	Wrap   bool // may be narrower than its longest text
	Grow   bool // takes the width that is left
}

// tableRow is one row; missing cells are empty.
type tableRow struct {
	Cells []tableCell
	Join  bool // belongs to the row above: no rule between, never parted from it
	Group bool // a heading over all columns, its text in the first cell
	Bold  bool
}

// tableCell holds text, or a legend number, a symbol or a box to tick.
type tableCell struct {
	S      string
	Legend int
	Symbol string // id in package symbols
	Tick   bool
	Link   string // sheet number the text points to
}

// texts makes plain cells.
func texts(ss ...string) []tableCell {
	out := make([]tableCell, len(ss))
	for i, s := range ss {
		out[i].S = s
	}
	return out
}

// padX is the space beside the text of a cell, padY that over and under it.
func (t *table) padX(c *context) sheet.MM { return t.cap(c) * 0.6 }
func (t *table) padY(c *context) sheet.MM { return t.cap(c) * 0.48 }

// pitch returns the distance from line to line of lettering: capitals and
// their whole height again less a third, as lettering on drawings is spaced
// (line space 1/2 to 1 of the height: ASME Y14.2, read in an extract, edition not noted).
func pitch(h sheet.MM) sheet.MM { return h * 1.65 }

// symbolH is the height of a symbol in the table, mm: it must read at 3 mm.
func (t *table) symbolH(c *context) sheet.MM { return max(5, 2*t.cap(c)) }

// circle returns the radius of a legend circle in the table.
func (t *table) circle(c *context) sheet.MM { return max(c.legendRadius(), t.cap(c)*0.95) }

// tickSize is the side of a box that a carpenter's pencil (some 7 mm by 13 mm
// with a lead of 2 by 5 mm: common practice, no published source) can tick.
const tickSize sheet.MM = 6.4

// content returns the width a cell wants and the least it can do with.
func (t *table) content(c *context, x tableCell, bold bool) (want, least sheet.MM) {
	switch {
	case x.Legend > 0:
		return 2 * t.circle(c), 2 * t.circle(c)
	case x.Symbol != "":
		return t.symbolH(c) * 2, t.symbolH(c) * 2
	case x.Tick:
		return tickSize, tickSize
	}
	for _, w := range strings.Fields(x.S) {
		least = max(least, textWidth(w, t.cap(c), bold))
	}
	return textWidth(x.S, t.cap(c), bold), least
}

// measure returns the width each column wants and the least it takes.
func (t *table) measure(c *context) (want, least []sheet.MM) {
	want, least = make([]sheet.MM, len(t.Cols)), make([]sheet.MM, len(t.Cols))
	for i, col := range t.Cols {
		if !t.Plain {
			_, w := t.content(c, tableCell{S: col.Head, Legend: col.Legend}, true)
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

// wanted returns the width at which nothing wraps, or at
// which wrapping columns have a line that reads well: long notes need not stand on one line.
func (t *table) wanted(c *context) (w sheet.MM) {
	want, least := t.measure(c)
	for i := range want {
		if t.Cols[i].Wrap && want[i] > 25*t.cap(c) {
			want[i] = max(25*t.cap(c), least[i])
		}
		w += want[i]
	}
	return max(w, textWidth(t.Title, t.titleCap(c), true)+2)
}

// titleCap is the capital height of a table's title.
func (t *table) titleCap(c *context) sheet.MM { return t.cap(c) * 1.4 }

// widths shares w among the columns.
func (t *table) widths(c *context, w sheet.MM) []sheet.MM {
	want, least := t.measure(c)
	all, low := sum(want), sum(least)
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
func (t *table) squeeze(c *context, ws []sheet.MM, w sheet.MM) {
	wraps, n := sheet.MM(0), 0
	for i, x := range ws {
		if t.Cols[i].Wrap {
			wraps += x
			n++
		}
	}
	left := w - (sum(ws) - wraps)
	if n > 0 && left >= sheet.MM(n)*5*t.cap(c) {
		for i := range ws {
			if t.Cols[i].Wrap {
				ws[i] *= left / wraps
			}
		}
		return
	}
	k := w / sum(ws)
	for i := range ws {
		ws[i] *= k
	}
}

func (t *table) grow(ws []sheet.MM, left sheet.MM) {
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

func sum(xs []sheet.MM) (s sheet.MM) {
	for _, x := range xs {
		s += x
	}
	return s
}

// wrapHard wraps s and breaks words that are wider than w by themselves.
func wrapHard(s string, h sheet.MM, bold bool, w sheet.MM) (out []string) {
	for _, line := range wrap(s, h, bold, w) {
		for textWidth(line, h, bold) > w {
			r := []rune(line)
			n := len(r)
			for n > 1 && textWidth(string(r[:n]), h, bold) > w {
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
