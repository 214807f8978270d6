package render

import (
	"fmt"
	"math"
	"slices"

	"galewright/plan"
	"galewright/render/page"
	"galewright/render/sheet"
	"galewright/symbols"
)

// Measures of a poster's pages, mm. Office printers leave a rim of about
// 1/4 in white (common practice, no published source).
const (
	posterRim  sheet.MM = 16 // rim, which holds the page's name and the caution
	posterGlue sheet.MM = 12 // strip at right and foot that the next page covers
)

// Poster puts the elevation sheets of one wall, drawn for large paper, over
// many pages of the small paper of the options, at the same scale: trim left
// and head of each page along the line, glue it on the strip of the page
// before. Options.Sheets is not used.
func Poster(m *Model, wall, large string, o Options) (*sheet.Set, plan.Diagnostics) {
	small, _ := sheet.PaperNamed(o.Paper)
	c, ok := page.NewContext(m, Options{Paper: large})
	if !ok {
		return nil, c.Diags
	}
	set := &sheet.Set{}
	for _, p := range layOut(c) {
		if !slices.Contains(p.Keys, "wall "+wall) {
			continue
		}
		p.DrawFrame()
		p.Draw(p)
		set.Sheets = append(set.Sheets, tiles(p.Sheet, small, c.Size)...)
	}
	if len(set.Sheets) == 0 {
		c.Tell(plan.Diagnostic{
			Code: "no-such-wall", Summary: fmt.Sprintf("no elevation shows a wall %q", wall),
			Mend: "name a wall of the plan", Pos: m.House.Plan.Project.Pos,
		})
		return nil, c.Diags
	}
	for i, s := range set.Sheets {
		s.Title.Index, s.Title.Of = i+1, len(set.Sheets)
	}
	set.Symbols = symbols.Used(set.Sheets)
	return set, c.Diags
}

// tiles cuts a sheet into pages of the small paper, row by row.
func tiles(big *sheet.Sheet, small sheet.Paper, size page.Lettering) (out []*sheet.Sheet) {
	step := sheet.Pt{X: small.W - 2*posterRim - posterGlue, Y: small.H - 2*posterRim - posterGlue}
	cols := count(big.Paper.W-posterGlue, step.X)
	rows := count(big.Paper.H-posterGlue, step.Y)
	marks := guests(big.Marks)
	for r := range rows {
		for c := range cols {
			t := tile{big: big, small: small, size: size, row: r, col: c, rows: rows, cols: cols}
			from := sheet.Pt{X: step.X * sheet.MM(c), Y: step.Y * sheet.MM(r)}
			out = append(out, t.page(marks, from))
		}
	}
	return out
}

func count(length, step sheet.MM) int { return max(1, int(math.Ceil(float64(length/step)))) }

// guests returns the marks with pieces shown as repeats: a page of a poster
// may show only part of a piece.
func guests(ms []sheet.Mark) []sheet.Mark {
	seen := map[*sheet.Piece]*sheet.Piece{}
	guest := func(p *sheet.Piece) *sheet.Piece {
		if p == nil || !p.Home {
			return p
		}
		if seen[p] == nil {
			c := *p
			c.Home = false
			seen[p] = &c
		}
		return seen[p]
	}
	out := make([]sheet.Mark, len(ms))
	for i, m := range ms {
		switch m := m.(type) {
		case sheet.Line:
			m.Piece = guest(m.Piece)
			out[i] = m
		case sheet.Polyline:
			m.Piece = guest(m.Piece)
			out[i] = m
		case sheet.Path:
			m.Piece = guest(m.Piece)
			out[i] = m
		case sheet.Circle:
			m.Piece = guest(m.Piece)
			out[i] = m
		case sheet.Text:
			m.Piece = guest(m.Piece)
			out[i] = m
		case sheet.Use:
			m.Piece = guest(m.Piece)
			out[i] = m
		default:
			out[i] = m
		}
	}
	return out
}

// tile is one page of a poster.
type tile struct {
	big                  *sheet.Sheet
	small                sheet.Paper
	size                 page.Lettering
	row, col, rows, cols int
}

// name is row letter and column number, "B3".
func (t tile) name() string { return fmt.Sprintf("%c%d", 'A'+t.row, t.col+1) }

// page shows the part of the big sheet that starts at from.
func (t tile) page(marks []sheet.Mark, from sheet.Pt) *sheet.Sheet {
	s := &sheet.Sheet{Title: t.big.Title, Paper: t.small}
	s.Title.Sheet += "-" + t.name()
	s.Title.SheetTitle += ", page " + t.name()
	show := sheet.Rect{X: posterRim, Y: posterRim, W: t.small.W - 2*posterRim, H: t.small.H - 2*posterRim}
	show.W = min(show.W, t.big.Paper.W-from.X)
	show.H = min(show.H, t.big.Paper.H-from.Y)
	shift := sheet.Pt{X: posterRim - from.X, Y: posterRim - from.Y}
	shown := within(marks, show, shift)
	s.Marks = append(s.Marks, sheet.Window{Rect: show, Shift: shift, Marks: shown})
	s.Marks = append(s.Marks, t.trim(show, len(shown) == 0)...)
	return s
}

// within leaves out marks that lie wholly outside the window.
func within(ms []sheet.Mark, show sheet.Rect, shift sheet.Pt) (out []sheet.Mark) {
	window := show.Inset(-2)
	window.X, window.Y = window.X-shift.X, window.Y-shift.Y
	table := (&sheet.Set{Symbols: symbols.All()}).Map()
	for _, m := range ms {
		if slices.ContainsFunc(inked(m, table), window.Overlaps) {
			out = append(out, m)
		}
	}
	return out
}

// inked returns boxes about what a mark prints: of an outline each side by
// itself, for a border goes round pages that show nothing of it.
func inked(m sheet.Mark, table map[string]sheet.Symbol) (out []sheet.Rect) {
	// A line has no area, and its pen has width.
	const pen sheet.MM = -0.5
	p, ok := m.(sheet.Polyline)
	if !ok || p.Fill != sheet.NoFill {
		return []sheet.Rect{sheet.Bounds(m, table).Inset(pen)}
	}
	for i, a := range p.Pts {
		if i > 0 || p.Closed {
			side := sheet.Line{Style: p.Style, A: p.Pts[(i+len(p.Pts)-1)%len(p.Pts)], B: a}
			out = append(out, sheet.Bounds(side, table).Inset(pen))
		}
	}
	return out
}

// trim draws the lines to cut and glue along, and says what the page is; one
// that shows nothing of the sheet still joins those beside it.
func (t tile) trim(show sheet.Rect, blank bool) (out []sheet.Mark) {
	line := func(x0, y0, x1, y1 sheet.MM) {
		out = append(out, sheet.Line{Style: page.Style(sheet.PenGrid, sheet.LayerGrid), A: sheet.Pt{X: x0, Y: y0}, B: sheet.Pt{X: x1, Y: y1}})
	}
	how := ""
	if t.col > 0 {
		line(show.X, 0, show.X, t.small.H)
		how += "; cut along the left line"
	}
	if t.row > 0 {
		line(0, show.Y, t.small.W, show.Y)
		how += "; cut along the upper line"
	}
	if x := t.small.W - posterRim - posterGlue; t.col < t.cols-1 {
		line(x, 0, x, t.small.H)
		how += fmt.Sprintf("; glue %c%d on the right strip", 'A'+t.row, t.col+2)
	}
	if y := t.small.H - posterRim - posterGlue; t.row < t.rows-1 {
		line(0, y, t.small.W, y)
		how += fmt.Sprintf("; glue %c%d on the lower strip", 'B'+t.row, t.col+1)
	}
	if blank {
		how = ", blank" + how
	}
	what := fmt.Sprintf("%s, page %s of %d rows by %d%s", t.big.Title.Sheet, t.name(), t.rows, t.cols, how)
	return append(out, t.foot(what)...)
}
