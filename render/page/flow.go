package page

import (
	"fmt"

	"galewright/render/sheet"
)

// Block is something that flows down the columns of sheets.
type Block interface {
	// Wanted is the width at which it is best read, mm.
	Wanted(c *Context) sheet.MM
	// Lay settles it at that width or less.
	Lay(c *Context, w sheet.MM) Laid
}

// Laid is a block whose width is settled.
type Laid interface {
	// Height is what it takes of a column, mm.
	Height() sheet.MM
	// Split parts it: first is no higher than h, nil when nothing fits;
	// rest is nil when all does.
	Split(h sheet.MM) (first, rest Laid)
	// DrawAt draws it with its upper left corner at at.
	DrawAt(p *Page, at sheet.Pt)
}

// Figure is a block of one size that is not parted.
type Figure struct {
	W, H sheet.MM
	// Draw draws it with its upper left corner at at.
	Draw func(p *Page, at sheet.Pt)
}

// Wanted is the figure's own width, mm.
func (f *Figure) Wanted(*Context) sheet.MM { return f.W }

// Lay returns the figure as it is.
func (f *Figure) Lay(*Context, sheet.MM) Laid { return f }

// Height is the figure's own height, mm.
func (f *Figure) Height() sheet.MM { return f.H }

// DrawAt draws the figure with its upper left corner at at.
func (f *Figure) DrawAt(p *Page, at sheet.Pt) { f.Draw(p, at) }

// Split never parts a figure.
func (f *Figure) Split(h sheet.MM) (Laid, Laid) {
	if f.H <= h {
		return f, nil
	}
	return nil, f
}

// Flow fills pages with blocks: whole widths first, then columns.
type Flow struct {
	c     *Context
	name  string
	keys  []string
	Pages []*Page // so far, the one that fills last
	parts map[*Page][]placedPart
	Area  sheet.Rect // what is left of the page under blocks of whole width
	cols  int
	// ColumnWidth is the width a block is laid to, mm.
	ColumnWidth sheet.MM
	col         int
	y           sheet.MM
}

type placedPart struct {
	Laid
	at sheet.Pt
}

// NewFlow starts on a new page.
func (c *Context) NewFlow(name string, keys ...string) *Flow {
	f := &Flow{c: c, name: name, keys: keys, parts: map[*Page][]placedPart{}, cols: 1}
	f.newPage()
	f.Columns(1)
	return f
}

// colGap is the space between columns and between blocks.
func (f *Flow) colGap() sheet.MM {
	if Large(f.c.Paper) {
		return 9
	}
	return 5
}

func (f *Flow) newPage() {
	p := f.c.NewPage(f.name, "none", f.keys...)
	p.Draw = func(p *Page) {
		for _, part := range f.parts[p] {
			part.DrawAt(p, part.at)
		}
	}
	f.Pages = append(f.Pages, p)
	f.Area, f.col, f.y = p.Area, 0, p.Area.Y
}

// Columns parts what is left of the area into n columns.
func (f *Flow) Columns(n int) {
	f.Area.H -= f.y - f.Area.Y
	f.Area.Y = f.y
	f.col = 0
	f.cols = max(n, 1)
	f.ColumnWidth = (f.Area.W - sheet.MM(f.cols-1)*f.colGap()) / sheet.MM(f.cols)
}

// ColumnsOf parts the area into columns of about the width w.
func (f *Flow) ColumnsOf(w sheet.MM) { f.Columns(int((f.Area.W + f.colGap()) / (w + f.colGap()))) }

// empty tells whether the column has nothing in it.
func (f *Flow) empty() bool { return f.y <= f.Area.Y }

// Put sets a block under what is there, and goes on in the next column or on
// the next page with what does not fit.
func (f *Flow) Put(b Block) { f.PutLaid(b.Lay(f.c, f.ColumnWidth)) }

// PutLaid puts a block that is laid to the width of the columns.
func (f *Flow) PutLaid(rest Laid) {
	page := f.Pages[len(f.Pages)-1].Area.H
	left, short := f.Area.Y+f.Area.H-f.y, rest.Height() < 0.6*page
	switch { // short blocks are not parted
	case short && rest.Height() > f.Area.H: // in no column at the foot of this page
		f.newPage()
	case short && rest.Height() > left && !f.empty():
		f.Next()
	}
	for rest != nil {
		var first Laid
		first, rest = rest.Split(f.Area.Y + f.Area.H - f.y)
		if first == nil && f.empty() {
			if f.Area.H < f.Pages[len(f.Pages)-1].Area.H {
				f.newPage() // the foot of a page, under other columns
				continue
			}
			first, rest = rest, nil // higher than a sheet: better seen than lost
		}
		if first != nil {
			p := f.Pages[len(f.Pages)-1]
			x := f.Area.X + sheet.MM(f.col)*(f.ColumnWidth+f.colGap())
			f.parts[p] = append(f.parts[p], placedPart{first, sheet.Pt{X: x, Y: f.y}})
			f.y += first.Height() + f.colGap()
		}
		if rest != nil {
			f.Next()
		}
	}
}

// Keep starts a new column when less than h is left in this one.
func (f *Flow) Keep(h sheet.MM) {
	if !f.empty() && f.Area.Y+f.Area.H-f.y < h {
		f.Next()
	}
}

// Next goes to the top of the next column, on a new page after the last one.
func (f *Flow) Next() {
	f.col++
	f.y = f.Area.Y
	if f.col >= f.cols {
		f.newPage()
	}
}

// Done returns the pages, each named with its place among them.
func (f *Flow) Done() []*Page {
	if n := len(f.Pages); n > 1 {
		for i, p := range f.Pages {
			p.Base, p.Name = f.name, fmt.Sprintf("%s, %d of %d", f.name, i+1, n)
		}
	}
	return f.Pages
}

// ReadingCap is the capital height of text that is read off a posted sheet:
// as large as dimensions where there is paper for it.
func (c *Context) ReadingCap() sheet.MM {
	switch {
	case c.reading > 0:
		return c.reading
	case Large(c.Paper):
		return c.Size.Dim
	}
	return c.Size.Note
}

// Largest lays a text view out with the largest lettering at which it takes
// one sheet, so that a posted sheet is read from afar; with the paper's own
// lettering when it takes more.
func (c *Context) Largest(lay func(c *Context) []*Page) []*Page {
	own := lay(c)
	if Large(c.Paper) && len(own) == 1 {
		for h := sheet.MM(5.2); h > c.Size.Dim; h -= 0.2 {
			try := *c
			try.reading = h
			if pages := lay(&try); len(pages) == 1 {
				pages[0].Context = c
				return pages
			}
		}
	}
	return own
}
