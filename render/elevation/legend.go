package elevation

import (
	"fmt"
	"math"
	"slices"

	"galewright/plan/schedule"
	"galewright/render/page"
	"galewright/render/sheet"
	"galewright/symbols"
)

// legendRow is the height of a row of the sheet's legend.
func legendRow(c *page.Context) sheet.MM { return max(2*c.LegendRadius()+0.4, c.Size.Note*1.7) }

// bareWidth is the width of a number with its symbol alone.
func bareWidth(c *page.Context) sheet.MM { return 2*c.LegendRadius() + 11 }

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
func linesOn(c *page.Context, parts []*part) (lines []*schedule.Line) {
	on := map[int]bool{}
	for _, q := range parts {
		for _, pc := range q.pieces {
			if len(q.centerLine(q.vp, pc)) > 0 {
				on[c.Legend(pc)] = true
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
func keyFor(p *page.Page, lines []*schedule.Line, free sheet.MM) key {
	band := p.Band.W - columnsWidth(p, lines)
	for _, notes := range [...][]string{reading(p), short(p)} {
		if notesHeight(p, notes, band) <= p.Band.H {
			return key{lines: lines, notes: notes, named: true}
		}
	}
	k := key{lines: lines, named: true, strip: gridHeight(p, lines) + 2}
	for _, notes := range [...][]string{reading(p), short(p), nil} {
		k.notes = notes
		if notesHeight(p, notes, p.Band.W) <= p.Band.H && k.strip <= free {
			return k
		}
	}
	k.notes = short(p)
	if h := k.strip + notesHeight(p, k.notes, p.Area.W) + 2; h <= free {
		k.strip = h
		return k
	}
	k.notes = nil
	if k.strip <= free {
		return k
	}
	if columnsWidth(p, lines)-6 <= p.Band.W {
		return key{lines: lines, named: true}
	}
	return bareKey(p, lines)
}

// bareKey is the legend without names, with as many of the notes as go whole.
func bareKey(p *page.Page, lines []*schedule.Line) key {
	k := key{lines: lines}
	if p.Band.W < leastNotes {
		k.strip = legendRow(p.Context)
		return k
	}
	rows := max(1, int(p.Band.H/legendRow(p.Context)))
	w := p.Band.W - sheet.MM((len(lines)+rows-1)/rows)*bareWidth(p.Context)
	notes := short(p)
	for n := len(notes); n > 0 && k.notes == nil; n-- {
		if notesHeight(p, notes[:n], w) <= p.Band.H {
			k.notes = notes[:n]
		}
	}
	return k
}

// drawKey draws the legend and the notes.
func drawKey(p *page.Page, k key) {
	strip := sheet.Rect{X: p.Area.X, Y: p.Area.Y + p.Area.H - k.strip, W: p.Area.W, H: k.strip}
	switch {
	case k.strip == 0:
		x := legendColumns(p, k)
		setNotes(p, k.notes, sheet.Rect{X: x, Y: p.Band.Y, W: p.Band.X + p.Band.W - x, H: p.Band.H})
	case !k.named:
		step := min(bareWidth(p.Context), strip.W/sheet.MM(max(1, len(k.lines))))
		for i, l := range k.lines {
			legendBare(p, l, sheet.Pt{X: strip.X + sheet.MM(i)*step, Y: strip.Y})
		}
	default:
		h := gridHeight(p, k.lines)
		legendGrid(p, k.lines, strip)
		if notesHeight(p, k.notes, p.Band.W) <= p.Band.H {
			setNotes(p, k.notes, p.Band)
		} else {
			setNotes(p, k.notes, sheet.Rect{X: strip.X, Y: strip.Y + h + 2, W: strip.W})
		}
	}
}

// legendGrid draws named entries in rows of columns of one width.
func legendGrid(p *page.Page, lines []*schedule.Line, r sheet.Rect) {
	w, cols := gridColumns(p, lines)
	for i, l := range lines {
		legendEntry(p, l, sheet.Pt{X: r.X + sheet.MM(i%cols)*w, Y: r.Y + sheet.MM(i/cols)*legendRow(p.Context)})
	}
}

func gridColumns(p *page.Page, lines []*schedule.Line) (w sheet.MM, n int) {
	w = legendWidth(p, lines) + 6
	return w, max(1, int((p.Area.W+6)/w))
}

func gridHeight(p *page.Page, lines []*schedule.Line) sheet.MM {
	_, cols := gridColumns(p, lines)
	return sheet.MM((len(lines)+cols-1)/cols) * legendRow(p.Context)
}

// columnsWidth returns the width of the named legend in the band.
func columnsWidth(p *page.Page, lines []*schedule.Line) (w sheet.MM) {
	rows := max(1, int(p.Band.H/legendRow(p.Context)))
	for i := 0; i < len(lines); i += rows {
		w += legendWidth(p, lines[i:min(i+rows, len(lines))]) + 6
	}
	return w
}

// legendColumns draws the legend in columns in the band and returns where
// they end.
func legendColumns(p *page.Page, k key) sheet.MM {
	rows, x := max(1, int(p.Band.H/legendRow(p.Context))), p.Band.X
	for i := 0; i < len(k.lines); i += rows {
		column := k.lines[i:min(i+rows, len(k.lines))]
		for n, l := range column {
			at := sheet.Pt{X: x, Y: p.Band.Y + sheet.MM(n)*legendRow(p.Context)}
			if k.named {
				legendEntry(p, l, at)
			} else {
				legendBare(p, l, at)
			}
		}
		if k.named {
			x += legendWidth(p, column) + 6
		} else {
			x += bareWidth(p.Context)
		}
	}
	return x
}

// legendWidth returns the width of a column of entries.
func legendWidth(p *page.Page, lines []*schedule.Line) (w sheet.MM) {
	for _, l := range lines {
		w = max(w, 2*p.LegendRadius()+8+page.TextWidth(l.Item.Mark, p.Size.Note, true))
	}
	return w
}

// legendBare draws a number and its symbol, at's corner its upper left one.
func legendBare(p *page.Page, l *schedule.Line, at sheet.Pt) {
	r, mid := p.LegendRadius(), at.Y+legendRow(p.Context)/2
	p.NumberCircle(l.Number, sheet.Pt{X: at.X + r, Y: mid}, fmt.Sprintf("legend %d of the sheet", l.Number))
	legendSymbol(p, symbolNamed(l.Item.Kind.Symbol), sheet.Pt{X: at.X + 2*r + 4, Y: mid})
}

// legendEntry draws a number, its symbol and its mark.
func legendEntry(p *page.Page, l *schedule.Line, at sheet.Pt) {
	legendBare(p, l, at)
	r, z := p.LegendRadius(), p.Size.Note
	p.BoxedText("label", page.Lettered{S: l.Item.Mark, At: sheet.Pt{X: at.X + 2*r + 8, Y: at.Y + legendRow(p.Context)/2 + z/2}, Bold: true, Role: "note"})
}

// How an elevation is read, and the same for narrow places.
var (
	readingNotes = []string{
		"Studs: from the wall's start to the near (left) edge, at the stud's foot or in the strip below.",
		"At left: heights above each story's subfloor: sills, headers, plates. At right: ends of straps, as room allows.",
		"Solid steel lies on the face toward you or shows its edge, open steel on the far face; what lumber hides is dashed. All is to length but clips: symbols in their corners.",
		"Numbers in circles are lines of the legend and of the schedule.",
	}
	shortNotes = []string{
		"Studs: wall's start to near (left) edge.",
		"Black steel: near face; open: far face; dashed: behind lumber.",
		"Left: heights above subfloor; right: ends of straps.",
	}
)

// reading is the notes of a sheet, short those for narrow places: where the
// plan orders nails between members, with the lines that they are.
func reading(p *page.Page) []string { return nailed(p, readingNotes, "Nails between members: ") }
func short(p *page.Page) []string   { return nailed(p, shortNotes, "Nails: ") }

func nailed(p *page.Page, notes []string, what string) []string {
	n := p.Schedule.Nailing.Lines
	if len(n) == 0 {
		return notes
	}
	span := n[0].Mark()
	if len(n) > 1 {
		span += " to " + n[len(n)-1].Mark()
	}
	return append(slices.Clone(notes), what+span+" of the nailing schedule; check sheets by wall.")
}

// noteLines wraps notes to a width.
func noteLines(p *page.Page, notes []string, w sheet.MM) (out []string) {
	for _, s := range notes {
		out = append(out, page.Wrap(s, p.Size.Note, false, min(w, 180))...)
	}
	return out
}

// notesHeight returns the height of notes set in a width; no notes take none,
// and no height is enough for notes in a place too narrow.
func notesHeight(p *page.Page, notes []string, w sheet.MM) sheet.MM {
	if len(notes) == 0 {
		return 0
	}
	if w < leastNotes {
		return sheet.MM(math.Inf(1))
	}
	return sheet.MM(len(noteLines(p, notes, w))-1)*p.Size.Note*1.6 + p.Size.Note*1.3
}

// setNotes sets notes from the upper left corner of r down.
func setNotes(p *page.Page, notes []string, r sheet.Rect) {
	y := r.Y + p.Size.Note
	for _, s := range noteLines(p, notes, r.W) {
		p.Text(page.Lettered{S: s, At: sheet.Pt{X: r.X, Y: y}, Role: "note"})
		y += p.Size.Note * 1.6
	}
}

// legendSymbol draws a symbol centered on a point of a legend.
func legendSymbol(p *page.Page, id string, at sheet.Pt) {
	s, _ := symbols.For(id)
	k := symbolScale(p.Context)
	c := s.Box.Center()
	p.Use(id, sheet.Pt{X: at.X - c.X*sheet.MM(k), Y: at.Y - c.Y*sheet.MM(k)}, 0, k, nil)
}
