package render

import (
	"fmt"

	"galewright/plan/schedule"
	"galewright/render/sheet"
	"galewright/symbols"
)

// legendOnTop tells whether the band beside the title block is too narrow for
// the sheet's legend, which then stands in a row along the top.
func (p *page) legendOnTop() bool { return p.Band.W < 60 }

// legendRow is the height of a row of the sheet's legend.
func (c *context) legendRow() sheet.MM { return max(2*c.legendRadius()+0.4, c.Size.Note*1.7) }

// sheetLegend lists the numbers on this sheet, and how the drawing is read.
func (p *page) sheetLegend(parts []*part) {
	on := map[int]bool{}
	for _, q := range parts {
		for _, pc := range q.pieces {
			if len(q.centreLine(q.vp, pc)) > 0 {
				on[p.legend(pc)] = true
			}
		}
	}
	var lines []*schedule.Line
	for _, l := range p.Schedule.Lines {
		if on[l.Number] {
			lines = append(lines, l)
		}
	}
	if p.legendOnTop() {
		p.legendAlong(lines)
		return
	}
	p.legendInBand(lines)
}

// legendAlong draws the sheet's legend in a row along the top.
func (p *page) legendAlong(lines []*schedule.Line) {
	at := sheet.Pt{X: p.Area.X, Y: p.Area.Y}
	for _, l := range lines {
		if at.X < p.Area.X+p.Area.W-12 {
			at.X += p.legendEntry(l, at, p.Area.X+p.Area.W-at.X) + 5
		}
	}
}

// legendInBand draws the sheet's legend in columns beside the title block, and
// the notes in what is left. Where the marks do not all fit, the numbers stand
// with their symbols alone.
func (p *page) legendInBand(lines []*schedule.Line) {
	rows := max(1, int(p.Band.H/p.legendRow()))
	named, width := true, sheet.MM(0)
	for i := 0; i < len(lines); i += rows {
		width += p.legendWidth(lines[i:min(i+rows, len(lines))]) + 6
	}
	if width > p.Band.W {
		named = false
	}
	x := p.Band.X
	for i := 0; i < len(lines); i += rows {
		column := lines[i:min(i+rows, len(lines))]
		for k, l := range column {
			at := sheet.Pt{X: x, Y: p.Band.Y + sheet.MM(k)*p.legendRow()}
			if named {
				p.legendEntry(l, at, p.Band.X+p.Band.W-x)
			} else {
				p.legendBare(l, at)
			}
		}
		if named {
			x += p.legendWidth(column) + 6
		} else {
			x += 2*p.legendRadius() + 11
		}
	}
	p.readingNotes(sheet.Rect{X: x, Y: p.Band.Y, W: p.Band.X + p.Band.W - x, H: p.Band.H})
}

// legendWidth returns the width of a column of entries.
func (p *page) legendWidth(lines []*schedule.Line) (w sheet.MM) {
	for _, l := range lines {
		w = max(w, 2*p.legendRadius()+8+textWidth(l.Item.Mark, p.Size.Note, true))
	}
	return w
}

// legendBare draws a number and its symbol, at's corner its upper left one.
func (p *page) legendBare(l *schedule.Line, at sheet.Pt) {
	r, mid := p.legendRadius(), at.Y+p.legendRow()/2
	p.numberCircle(l.Number, sheet.Pt{X: at.X + r, Y: mid}, fmt.Sprintf("legend %d of the sheet", l.Number))
	p.legendSymbol(symbolNamed(l.Item.Kind.Symbol), sheet.Pt{X: at.X + 2*r + 4, Y: mid})
}

// legendEntry draws a number, its symbol and its mark, no wider than most, and
// returns the width it takes.
func (p *page) legendEntry(l *schedule.Line, at sheet.Pt, most sheet.MM) sheet.MM {
	p.legendBare(l, at)
	r, z := p.legendRadius(), p.Size.Note
	s := fitText(l.Item.Mark, z, true, most-2*r-9)
	t := p.boxedText("label", lettered{S: s, At: sheet.Pt{X: at.X + 2*r + 8, Y: at.Y + p.legendRow()/2 + z/2}, Bold: true, Role: "note"})
	return t.X + t.W - at.X
}

// readingNotes says how an elevation is read, as far as there is room.
func (p *page) readingNotes(r sheet.Rect) {
	if r.W < 40 {
		return
	}
	y := r.Y + p.Size.Note
	for _, s := range [...]string{
		"Studs: from the wall's start to the near (left) edge, at the stud's foot or in the strip below.",
		"At left: heights above each storey's subfloor, of sills, headers, plates. At right: ends of straps.",
		"Solid steel lies on the face toward you, open steel on the far face. Steel is shown to length.",
		"Numbers in circles are lines of the legend and of the schedule.",
	} {
		for _, line := range wrap(s, p.Size.Note, false, min(r.W, 180)) {
			if y > r.Y+r.H {
				return
			}
			p.text(lettered{S: line, At: sheet.Pt{X: r.X, Y: y}, Role: "note"})
			y += p.Size.Note * 1.6
		}
	}
}

// legendSymbol draws a symbol centred on a point of a legend.
func (p *page) legendSymbol(id string, at sheet.Pt) {
	s, _ := symbols.For(id)
	k := p.symbolScale()
	c := s.Box.Centre()
	p.use(id, sheet.Pt{X: at.X - c.X*sheet.MM(k), Y: at.Y - c.Y*sheet.MM(k)}, 0, k, nil)
}
