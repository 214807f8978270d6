package render

import (
	"fmt"
	"math"

	"galewright/plan/schedule"
	"galewright/render/sheet"
	"galewright/symbols"
)

// legendRow is the height of a row of the sheet's legend.
func (c *context) legendRow() sheet.MM { return max(2*c.legendRadius()+0.4, c.Size.Note*1.7) }

// bareWidth is the width of a number with its symbol alone.
func (c *context) bareWidth() sheet.MM { return 2*c.legendRadius() + 11 }

// leastNotes is the least width in which notes are set.
const leastNotes sheet.MM = 40

// key is the legend of an elevation sheet and its notes on reading: in the
// band beside the title block where that holds them whole, else in a strip
// above it where the drawings leave room, else the numbers with their symbols
// alone.
type key struct {
	lines []*schedule.Line
	notes []string
	named bool
	// strip is the height of the strip across the foot of the area; 0 = all
	// is in the band.
	strip sheet.MM
}

// linesOn returns the legend lines of what the parts show.
func (c *context) linesOn(parts []*part) (lines []*schedule.Line) {
	on := map[int]bool{}
	for _, q := range parts {
		for _, pc := range q.pieces {
			if len(q.centerLine(q.vp, pc)) > 0 {
				on[c.legend(pc)] = true
			}
		}
	}
	for _, l := range c.Schedule.Lines {
		if on[l.Number] {
			lines = append(lines, l)
		}
	}
	return lines
}

// keyFor chooses the form of the legend for a page whose drawings leave free
// millimeters of height.
func (p *page) keyFor(lines []*schedule.Line, free sheet.MM) key {
	band := p.Band.W - p.columnsWidth(lines)
	for _, notes := range [...][]string{readingNotes, shortNotes} {
		if p.notesHeight(notes, band) <= p.Band.H {
			return key{lines: lines, notes: notes, named: true}
		}
	}
	k := key{lines: lines, named: true, strip: p.gridHeight(lines) + 2}
	for _, notes := range [...][]string{readingNotes, shortNotes, nil} {
		k.notes = notes
		if p.notesHeight(notes, p.Band.W) <= p.Band.H && k.strip <= free {
			return k
		}
	}
	k.notes = shortNotes
	if h := k.strip + p.notesHeight(shortNotes, p.Area.W) + 2; h <= free {
		k.strip = h
		return k
	}
	k.notes = nil
	if k.strip <= free {
		return k
	}
	if p.columnsWidth(lines)-6 <= p.Band.W {
		return key{lines: lines, named: true}
	}
	return p.bareKey(lines)
}

// bareKey is the legend without names, with as many of the notes as go whole.
func (p *page) bareKey(lines []*schedule.Line) key {
	k := key{lines: lines}
	if p.Band.W < leastNotes {
		k.strip = p.legendRow()
		return k
	}
	rows := max(1, int(p.Band.H/p.legendRow()))
	w := p.Band.W - sheet.MM((len(lines)+rows-1)/rows)*p.bareWidth()
	for n := len(shortNotes); n > 0 && k.notes == nil; n-- {
		if p.notesHeight(shortNotes[:n], w) <= p.Band.H {
			k.notes = shortNotes[:n]
		}
	}
	return k
}

// drawKey draws the legend and the notes.
func (p *page) drawKey(k key) {
	strip := sheet.Rect{X: p.Area.X, Y: p.Area.Y + p.Area.H - k.strip, W: p.Area.W, H: k.strip}
	switch {
	case k.strip == 0:
		x := p.legendColumns(k)
		p.setNotes(k.notes, sheet.Rect{X: x, Y: p.Band.Y, W: p.Band.X + p.Band.W - x, H: p.Band.H})
	case !k.named:
		step := min(p.bareWidth(), strip.W/sheet.MM(max(1, len(k.lines))))
		for i, l := range k.lines {
			p.legendBare(l, sheet.Pt{X: strip.X + sheet.MM(i)*step, Y: strip.Y})
		}
	default:
		h := p.gridHeight(k.lines)
		p.legendGrid(k.lines, strip)
		if p.notesHeight(k.notes, p.Band.W) <= p.Band.H {
			p.setNotes(k.notes, p.Band)
		} else {
			p.setNotes(k.notes, sheet.Rect{X: strip.X, Y: strip.Y + h + 2, W: strip.W})
		}
	}
}

// legendGrid draws named entries in rows of columns of one width.
func (p *page) legendGrid(lines []*schedule.Line, r sheet.Rect) {
	w, cols := p.gridColumns(lines)
	for i, l := range lines {
		p.legendEntry(l, sheet.Pt{X: r.X + sheet.MM(i%cols)*w, Y: r.Y + sheet.MM(i/cols)*p.legendRow()})
	}
}

func (p *page) gridColumns(lines []*schedule.Line) (w sheet.MM, n int) {
	w = p.legendWidth(lines) + 6
	return w, max(1, int((p.Area.W+6)/w))
}

func (p *page) gridHeight(lines []*schedule.Line) sheet.MM {
	_, cols := p.gridColumns(lines)
	return sheet.MM((len(lines)+cols-1)/cols) * p.legendRow()
}

// columnsWidth returns the width of the named legend in the band.
func (p *page) columnsWidth(lines []*schedule.Line) (w sheet.MM) {
	rows := max(1, int(p.Band.H/p.legendRow()))
	for i := 0; i < len(lines); i += rows {
		w += p.legendWidth(lines[i:min(i+rows, len(lines))]) + 6
	}
	return w
}

// legendColumns draws the legend in columns in the band and returns where
// they end.
func (p *page) legendColumns(k key) sheet.MM {
	rows, x := max(1, int(p.Band.H/p.legendRow())), p.Band.X
	for i := 0; i < len(k.lines); i += rows {
		column := k.lines[i:min(i+rows, len(k.lines))]
		for n, l := range column {
			at := sheet.Pt{X: x, Y: p.Band.Y + sheet.MM(n)*p.legendRow()}
			if k.named {
				p.legendEntry(l, at)
			} else {
				p.legendBare(l, at)
			}
		}
		if k.named {
			x += p.legendWidth(column) + 6
		} else {
			x += p.bareWidth()
		}
	}
	return x
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

// legendEntry draws a number, its symbol and its mark.
func (p *page) legendEntry(l *schedule.Line, at sheet.Pt) {
	p.legendBare(l, at)
	r, z := p.legendRadius(), p.Size.Note
	p.boxedText("label", lettered{S: l.Item.Mark, At: sheet.Pt{X: at.X + 2*r + 8, Y: at.Y + p.legendRow()/2 + z/2}, Bold: true, Role: "note"})
}

// How an elevation is read, and the same for narrow places.
var (
	readingNotes = []string{
		"Studs: from the wall's start to the near (left) edge, at the stud's foot or in the strip below.",
		"At left: heights above each story's subfloor: sills, headers, plates. At right: ends of straps, as room allows.",
		"Solid steel lies on the face toward you, open steel on the far face. Steel is shown to length.",
		"Numbers in circles are lines of the legend and of the schedule.",
	}
	shortNotes = []string{
		"Studs: wall's start to near (left) edge.",
		"Black steel: near face; open: far face.",
		"Left: heights above subfloor; right: ends of straps.",
	}
)

// noteLines wraps notes to a width.
func (p *page) noteLines(notes []string, w sheet.MM) (out []string) {
	for _, s := range notes {
		out = append(out, wrap(s, p.Size.Note, false, min(w, 180))...)
	}
	return out
}

// notesHeight returns the height of notes set in a width; no notes take none,
// and no height is enough for notes in a place too narrow.
func (p *page) notesHeight(notes []string, w sheet.MM) sheet.MM {
	if len(notes) == 0 {
		return 0
	}
	if w < leastNotes {
		return sheet.MM(math.Inf(1))
	}
	return sheet.MM(len(p.noteLines(notes, w))-1)*p.Size.Note*1.6 + p.Size.Note*1.3
}

// setNotes sets notes from the upper left corner of r down.
func (p *page) setNotes(notes []string, r sheet.Rect) {
	y := r.Y + p.Size.Note
	for _, s := range p.noteLines(notes, r.W) {
		p.text(lettered{S: s, At: sheet.Pt{X: r.X, Y: y}, Role: "note"})
		y += p.Size.Note * 1.6
	}
}

// legendSymbol draws a symbol centered on a point of a legend.
func (p *page) legendSymbol(id string, at sheet.Pt) {
	s, _ := symbols.For(id)
	k := p.symbolScale()
	c := s.Box.Center()
	p.use(id, sheet.Pt{X: at.X - c.X*sheet.MM(k), Y: at.Y - c.Y*sheet.MM(k)}, 0, k, nil)
}
