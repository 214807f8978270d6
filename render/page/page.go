package page

import (
	"fmt"

	"galewright/plan/placement"
	"galewright/render/sheet"
)

// MinLetter is the least height of a capital on any paper: 3/32 in.
const MinLetter sheet.MM = 2.4

// Lettering holds the capital heights for a paper, mm.
type Lettering struct {
	Note  sheet.MM // notes and labels
	Dim   sheet.MM // dimensions and legend numbers
	Head  sheet.MM // titles of views
	Title sheet.MM // sheet number
}

// Large tells whether p is a full-size sheet: ARCH C and up.
func Large(p sheet.Paper) bool { return p.W*p.H >= 450*600 }

// LetteringFor returns 1/8 in dimensions on papers of ARCH C and up, and the
// least lettering where paper is scarce.
func LetteringFor(p sheet.Paper) Lettering {
	if Large(p) {
		return Lettering{Note: 2.6, Dim: 3.2, Head: 5, Title: 9}
	}
	return Lettering{Note: MinLetter, Dim: 2.5, Head: 3.4, Title: 6}
}

// Page is one sheet while it is made: first laid out, then drawn.
type Page struct {
	*Context
	*sheet.Sheet
	Number string // "S-201", set when all views are laid out
	Name   string // sheet title
	Base   string // Name without its place among several, "" where it has none
	Scale  string // `1/2" = 1'-0"`, "as noted", "none"
	Keys   []string
	// Area is where views draw; Band is the space left of the title block,
	// for notes and small tables.
	Area, Band sheet.Rect
	// Draw puts the marks on the page.
	Draw func(p *Page)

	Frame, Block sheet.Rect // the border; the title block
	Series       int        // first digit of its number
}

// NewPage returns an empty page of the set's paper; the caller sets Draw and
// returns it from its Pages.
func (c *Context) NewPage(name, scale string, keys ...string) *Page {
	return c.NewPageOn(c.Paper, name, scale, keys...)
}

// NewPageOn returns an empty page of a paper: the set's own, or that turned.
func (c *Context) NewPageOn(paper sheet.Paper, name, scale string, keys ...string) *Page {
	p := &Page{Context: c, Sheet: &sheet.Sheet{Paper: paper}, Name: name, Scale: scale, Keys: keys}
	p.Frame, p.Block = FrameOf(paper), blockOf(paper, c.Size)
	p.Area = sheet.Rect{X: p.Frame.X, Y: p.Frame.Y, W: p.Frame.W, H: p.Frame.H - p.Block.H}.Inset(Gutter(c.Paper))
	p.Band = sheet.Rect{X: p.Frame.X, Y: p.Block.Y, W: p.Frame.W - p.Block.W, H: p.Block.H}.Inset(Gutter(c.Paper))
	return p
}

// DrawingArea returns the drawing area of a page before one exists.
func (c *Context) DrawingArea() sheet.Rect { return c.NewPage("", "").Area }

// Gutter is the space kept between the border and a drawing.
func Gutter(p sheet.Paper) sheet.MM {
	if Large(p) {
		return 6
	}
	return 3
}

// Style is short for a sheet.Style without fill.
func Style(pen sheet.Pen, layer sheet.Layer) sheet.Style {
	return sheet.Style{Pen: pen, Layer: layer}
}

// Add appends marks as they are.
func (p *Page) Add(m ...sheet.Mark) { p.Marks = append(p.Marks, m...) }

// Line draws a straight line.
func (p *Page) Line(pen sheet.Pen, layer sheet.Layer, a, b sheet.Pt) {
	p.Add(sheet.Line{Style: Style(pen, layer), A: a, B: b})
}

// Polyline draws a chain of lines.
func (p *Page) Polyline(pen sheet.Pen, layer sheet.Layer, pts ...sheet.Pt) {
	p.Add(sheet.Polyline{Style: Style(pen, layer), Pts: pts})
}

// Polygon draws a closed outline with a fill.
func (p *Page) Polygon(s sheet.Style, pts ...sheet.Pt) {
	if len(pts) >= 3 {
		p.Add(sheet.Polyline{Style: s, Pts: pts, Closed: true})
	}
}

// Rect draws an upright rectangle with a fill.
func (p *Page) Rect(s sheet.Style, r sheet.Rect) { p.Polygon(s, corners(r)...) }

// corners returns the four corners of r in turn.
func corners(r sheet.Rect) []sheet.Pt {
	return []sheet.Pt{{X: r.X, Y: r.Y}, {X: r.X + r.W, Y: r.Y}, {X: r.X + r.W, Y: r.Y + r.H}, {X: r.X, Y: r.Y + r.H}}
}

// Circle draws a circle with a fill.
func (p *Page) Circle(s sheet.Style, c sheet.Pt, r sheet.MM) {
	p.Add(sheet.Circle{Style: s, C: c, R: r})
}

// Lettered is a line of text to set.
type Lettered struct {
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

// Text sets one line and returns the box it takes.
func (p *Page) Text(t Lettered) sheet.Rect {
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
	p.Add(m)
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

// BoxedText sets a line of text and claims its place.
func (p *Page) BoxedText(kind string, t Lettered) sheet.Rect {
	r := p.Text(t)
	p.Box(kind, t.Role+" "+t.S, r)
	return r
}

// Use draws an instance of a symbol.
func (p *Page) Use(id string, at sheet.Pt, angle, scale float64, pc *sheet.Piece) {
	p.Add(sheet.Use{Style: Style(sheet.PenHardware, sheet.LayerHardware), Symbol: id, At: at, Angle: angle, Scale: scale, Piece: pc})
}

// Box claims a place that labels, pieces and dimensions must keep clear of.
// kind is "label", "piece", "dimension" or "title".
func (p *Page) Box(kind, what string, r sheet.Rect) {
	p.Boxes = append(p.Boxes, sheet.Box{Rect: r, What: what, Kind: kind})
}

// LegendRadius returns the radius of a legend circle for the set's lettering.
func (c *Context) LegendRadius() sheet.MM { return c.Size.Dim * 0.95 }

// LegendCircle draws a piece's number in a circle and claims its place.
func (p *Page) LegendCircle(n int, at sheet.Pt, what string, pc *sheet.Piece) {
	r := p.LegendRadius()
	p.Add(sheet.Circle{Style: sheet.Style{Pen: sheet.PenDim, Fill: sheet.White, Layer: sheet.LayerLabel}, C: at, R: r, Piece: pc})
	h := p.Size.Dim
	if n > 9 {
		h = max(MinLetter, h*0.8)
	}
	p.Text(Lettered{S: fmt.Sprint(n), Cap: h, At: sheet.Pt{X: at.X, Y: at.Y + h/2}, Anchor: sheet.Middle, Bold: true, Role: "legend", Piece: pc})
	p.Box("label", what, sheet.Rect{X: at.X - r, Y: at.Y - r, W: 2 * r, H: 2 * r})
}

// NumberCircle draws a legend number that stands for no single piece.
func (p *Page) NumberCircle(n int, at sheet.Pt, what string) { p.LegendCircle(n, at, what, nil) }

// legendText returns the legend number of a piece as text.
func (c *Context) legendText(pc *placement.Piece) string { return fmt.Sprint(c.Legend(pc)) }

// Length prints a length in the plan's own system.
func (c *Context) Length(in float64) string { return c.Units().Length(in) }

// Spacing prints a spacing of members or fasteners: in inches, as framers name
// it, or in millimeters.
func (c *Context) Spacing(in float64) string { return c.Units().Spacing(in) }

// TextWidth returns the width of a line whose capitals are capHeight high.
func TextWidth(s string, capHeight sheet.MM, bold bool) sheet.MM {
	return sheet.TextWidth(s, sheet.Em(capHeight), bold)
}

// FitText cuts s so that it is no wider than w.
func FitText(s string, capHeight sheet.MM, bold bool, w sheet.MM) string {
	if TextWidth(s, capHeight, bold) <= w {
		return s
	}
	r := []rune(s)
	for len(r) > 0 && TextWidth(string(r)+"...", capHeight, bold) > w {
		r = r[:len(r)-1]
	}
	return string(r) + "..."
}
