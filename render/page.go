package render

import (
	"fmt"
	"strings"

	"galewright/plan/length"
	"galewright/plan/placement"
	"galewright/render/sheet"
)

// minLetter is the least height of a capital on any paper: 3/32 in.
const minLetter sheet.MM = 2.4

// lettering holds the capital heights for a paper, mm.
type lettering struct {
	Note  sheet.MM // notes and labels
	Dim   sheet.MM // dimensions and legend numbers
	Head  sheet.MM // titles of views
	Title sheet.MM // sheet number
}

// large tells whether p is a full-size sheet: ARCH C and up.
func large(p sheet.Paper) bool { return p.W*p.H >= 450*600 }

// letteringFor returns 1/8 in dimensions on papers of ARCH C and up, and the
// least lettering where paper is scarce.
func letteringFor(p sheet.Paper) lettering {
	if large(p) {
		return lettering{Note: 2.6, Dim: 3.2, Head: 5, Title: 9}
	}
	return lettering{Note: minLetter, Dim: 2.5, Head: 3.4, Title: 6}
}

// page is one sheet while it is made: first laid out, then drawn.
type page struct {
	*context
	*sheet.Sheet
	Number string // "S-201", set when all views are laid out
	Name   string // sheet title
	Scale  string // `1/2" = 1'-0"`, "as noted", "none"
	Keys   []string
	// Area is where views draw; Band is the space left of the title block,
	// for notes and small tables.
	Area, Band sheet.Rect
	// Draw puts the marks on the page.
	Draw func(p *page)

	frame, block sheet.Rect
	series       int
}

// newPage returns an empty page of the set's paper; the caller sets Draw and
// returns it from its Pages.
func (c *context) newPage(name, scale string, keys ...string) *page {
	return c.newPageOn(c.Paper, name, scale, keys...)
}

// newPageOn returns an empty page of a paper: the set's own, or that turned.
func (c *context) newPageOn(paper sheet.Paper, name, scale string, keys ...string) *page {
	p := &page{context: c, Sheet: &sheet.Sheet{Paper: paper}, Name: name, Scale: scale, Keys: keys}
	p.frame, p.block = frameOf(paper), blockOf(paper, c.Size)
	p.Area = sheet.Rect{X: p.frame.X, Y: p.frame.Y, W: p.frame.W, H: p.frame.H - p.block.H}.Inset(gutter(c.Paper))
	p.Band = sheet.Rect{X: p.frame.X, Y: p.block.Y, W: p.frame.W - p.block.W, H: p.block.H}.Inset(gutter(c.Paper))
	return p
}

// area returns the drawing area of a page before one exists.
func (c *context) area() sheet.Rect { return c.newPage("", "").Area }

// gutter is the space kept between the border and a drawing.
func gutter(p sheet.Paper) sheet.MM {
	if large(p) {
		return 6
	}
	return 3
}

// style is short for a sheet.Style without fill.
func style(pen sheet.Pen, layer sheet.Layer) sheet.Style {
	return sheet.Style{Pen: pen, Layer: layer}
}

// add appends marks as they are.
func (p *page) add(m ...sheet.Mark) { p.Marks = append(p.Marks, m...) }

// line draws a straight line.
func (p *page) line(pen sheet.Pen, layer sheet.Layer, a, b sheet.Pt) {
	p.add(sheet.Line{Style: style(pen, layer), A: a, B: b})
}

// polyline draws a chain of lines.
func (p *page) polyline(pen sheet.Pen, layer sheet.Layer, pts ...sheet.Pt) {
	p.add(sheet.Polyline{Style: style(pen, layer), Pts: pts})
}

// polygon draws a closed outline with a fill.
func (p *page) polygon(s sheet.Style, pts ...sheet.Pt) {
	if len(pts) >= 3 {
		p.add(sheet.Polyline{Style: s, Pts: pts, Closed: true})
	}
}

// rect draws an upright rectangle with a fill.
func (p *page) rect(s sheet.Style, r sheet.Rect) { p.polygon(s, corners(r)...) }

// corners returns the four corners of r in turn.
func corners(r sheet.Rect) []sheet.Pt {
	return []sheet.Pt{{X: r.X, Y: r.Y}, {X: r.X + r.W, Y: r.Y}, {X: r.X + r.W, Y: r.Y + r.H}, {X: r.X, Y: r.Y + r.H}}
}

// circle draws a circle with a fill.
func (p *page) circle(s sheet.Style, c sheet.Pt, r sheet.MM) {
	p.add(sheet.Circle{Style: s, C: c, R: r})
}

// lettered is a line of text to set.
type lettered struct {
	S      string
	Cap    sheet.MM // height of capitals; 0 = the page's note size
	At     sheet.Pt // on the baseline
	Anchor sheet.Anchor
	Angle  float64 // deg, counterclockwise on paper
	Bold   bool
	Role   string      // "dimension", "legend", "label", "note", "title"
	Layer  sheet.Layer // 0 = by role
	Link   string      // sheet number it points to
	Piece  *sheet.Piece
}

// text sets one line and returns the box it takes.
func (p *page) text(t lettered) sheet.Rect {
	if t.Cap == 0 {
		t.Cap = p.Size.Note
	}
	if t.Layer == 0 {
		t.Layer = layerOf(t.Role)
	}
	m := sheet.Text{
		Style:  sheet.Style{Fill: sheet.Black, Layer: t.Layer},
		At:     t.At,
		Size:   sheet.Em(t.Cap),
		Anchor: t.Anchor,
		Angle:  t.Angle,
		Bold:   t.Bold,
		S:      t.S,
		Piece:  t.Piece,
		Role:   t.Role,
		Link:   t.Link,
	}
	p.add(m)
	return m.Box()
}

func layerOf(role string) sheet.Layer {
	switch role {
	case "dimension":
		return sheet.LayerDimension
	case "legend", "label":
		return sheet.LayerLabel
	case "title":
		return sheet.LayerFrame
	}
	return sheet.LayerNote
}

// boxedText sets a line of text and claims its place.
func (p *page) boxedText(kind string, t lettered) sheet.Rect {
	r := p.text(t)
	p.box(kind, t.Role+" "+t.S, r)
	return r
}

// use draws an instance of a symbol.
func (p *page) use(id string, at sheet.Pt, angle, scale float64, pc *sheet.Piece) {
	p.add(sheet.Use{Style: style(sheet.PenHardware, sheet.LayerHardware), Symbol: id, At: at, Angle: angle, Scale: scale, Piece: pc})
}

// box claims a place that labels, pieces and dimensions must keep clear of.
// kind is "label", "piece", "dimension" or "title".
func (p *page) box(kind, what string, r sheet.Rect) {
	p.Boxes = append(p.Boxes, sheet.Box{Rect: r, What: what, Kind: kind})
}

// legendRadius returns the radius of a legend circle for the set's lettering.
func (c *context) legendRadius() sheet.MM { return c.Size.Dim * 0.95 }

// legendCircle draws a piece's number in a circle and claims its place.
func (p *page) legendCircle(n int, at sheet.Pt, what string, pc *sheet.Piece) {
	r := p.legendRadius()
	p.add(sheet.Circle{Style: sheet.Style{Pen: sheet.PenDim, Fill: sheet.White, Layer: sheet.LayerLabel}, C: at, R: r, Piece: pc})
	h := p.Size.Dim
	if n > 9 {
		h = max(minLetter, h*0.8)
	}
	p.text(lettered{S: fmt.Sprint(n), Cap: h, At: sheet.Pt{X: at.X, Y: at.Y + h/2}, Anchor: sheet.Middle, Bold: true, Role: "legend", Piece: pc})
	p.box("label", what, sheet.Rect{X: at.X - r, Y: at.Y - r, W: 2 * r, H: 2 * r})
}

// numberCircle draws a legend number that stands for no single piece.
func (p *page) numberCircle(n int, at sheet.Pt, what string) { p.legendCircle(n, at, what, nil) }

// legendText returns the legend number of a piece as text.
func (c *context) legendText(pc *placement.Piece) string { return fmt.Sprint(c.legend(pc)) }

// length prints a length in the plan's own system.
func (c *context) length(in float64) string { return length.Print(in, c.metric()) }

// textWidth returns the width of a line whose capitals are capHeight high.
func textWidth(s string, capHeight sheet.MM, bold bool) sheet.MM {
	return sheet.TextWidth(s, sheet.Em(capHeight), bold)
}

// fitText cuts s so that it is no wider than w.
func fitText(s string, capHeight sheet.MM, bold bool, w sheet.MM) string {
	if textWidth(s, capHeight, bold) <= w {
		return s
	}
	r := []rune(s)
	for len(r) > 0 && textWidth(string(r)+"...", capHeight, bold) > w {
		r = r[:len(r)-1]
	}
	return string(r) + "..."
}

// wrap breaks s at blanks into lines no wider than w.
func wrap(s string, capHeight sheet.MM, bold bool, w sheet.MM) (lines []string) {
	blank := textWidth(" ", capHeight, bold)
	from, width := 0, sheet.MM(0) // the words of the line so far
	words := strings.Fields(s)
	for i, word := range words {
		wide := textWidth(word, capHeight, bold)
		if i > from && width+blank+wide > w {
			lines = append(lines, strings.Join(words[from:i], " "))
			from, width = i, 0
		}
		if i > from {
			width += blank
		}
		width += wide
	}
	if from < len(words) {
		lines = append(lines, strings.Join(words[from:], " "))
	}
	return lines
}
