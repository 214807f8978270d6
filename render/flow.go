package render

import (
	"fmt"

	"galewright/render/sheet"
)

// block is something that flows down the columns of sheets.
type block interface {
	// wanted is the width at which it is best read, mm.
	wanted(c *context) sheet.MM
	// lay settles it at that width or less.
	lay(c *context, w sheet.MM) laid
}

// laid is a block whose width is settled.
type laid interface {
	height() sheet.MM
	// split parts it: first is no higher than h, nil when nothing fits;
	// rest is nil when all does.
	split(h sheet.MM) (first, rest laid)
	draw(p *page, at sheet.Pt)
}

// figure is a block of one size that is not parted.
type figure struct {
	W, H sheet.MM
	Draw func(p *page, at sheet.Pt)
}

func (f *figure) wanted(*context) sheet.MM    { return f.W }
func (f *figure) lay(*context, sheet.MM) laid { return f }
func (f *figure) height() sheet.MM            { return f.H }
func (f *figure) draw(p *page, at sheet.Pt)   { f.Draw(p, at) }
func (f *figure) split(h sheet.MM) (laid, laid) {
	if f.H <= h {
		return f, nil
	}
	return nil, f
}

// flow fills pages with blocks: whole widths first, then columns.
type flow struct {
	c     *context
	name  string
	keys  []string
	pages []*page
	parts map[*page][]placedPart
	area  sheet.Rect // what is left of the page under blocks of whole width
	cols  int
	colW  sheet.MM
	col   int
	y     sheet.MM
}

type placedPart struct {
	laid
	at sheet.Pt
}

// newFlow starts on a new page.
func (c *context) newFlow(name string, keys ...string) *flow {
	f := &flow{c: c, name: name, keys: keys, parts: map[*page][]placedPart{}, cols: 1}
	f.newPage()
	f.columns(1)
	return f
}

// colGap is the space between columns and between blocks.
func (f *flow) colGap() sheet.MM {
	if large(f.c.Paper) {
		return 9
	}
	return 5
}

func (f *flow) newPage() {
	p := f.c.newPage(f.name, "none", f.keys...)
	p.Draw = func(p *page) {
		for _, part := range f.parts[p] {
			part.draw(p, part.at)
		}
	}
	f.pages = append(f.pages, p)
	f.area, f.col, f.y = p.Area, 0, p.Area.Y
}

// columns parts what is left of the area into n columns.
func (f *flow) columns(n int) {
	f.area.H -= f.y - f.area.Y
	f.area.Y = f.y
	f.col = 0
	f.cols = max(n, 1)
	f.colW = (f.area.W - sheet.MM(f.cols-1)*f.colGap()) / sheet.MM(f.cols)
}

// columnsOf parts the area into columns of about the width w.
func (f *flow) columnsOf(w sheet.MM) { f.columns(int((f.area.W + f.colGap()) / (w + f.colGap()))) }

// empty tells whether the column has nothing in it.
func (f *flow) empty() bool { return f.y <= f.area.Y }

// put sets a block under what is there, and goes on in the next column or on
// the next page with what does not fit.
func (f *flow) put(b block) { f.putLaid(b.lay(f.c, f.colW)) }

// putLaid puts a block that is laid to the width of the columns.
func (f *flow) putLaid(rest laid) {
	page := f.pages[len(f.pages)-1].Area.H
	left, short := f.area.Y+f.area.H-f.y, rest.height() < 0.6*page
	switch { // short blocks are not parted
	case short && rest.height() > f.area.H: // in no column at the foot of this page
		f.newPage()
	case short && rest.height() > left && !f.empty():
		f.next()
	}
	for rest != nil {
		var first laid
		first, rest = rest.split(f.area.Y + f.area.H - f.y)
		if first == nil && f.empty() {
			if f.area.H < f.pages[len(f.pages)-1].Area.H {
				f.newPage() // the foot of a page, under other columns
				continue
			}
			first, rest = rest, nil // higher than a sheet: better seen than lost
		}
		if first != nil {
			p := f.pages[len(f.pages)-1]
			x := f.area.X + sheet.MM(f.col)*(f.colW+f.colGap())
			f.parts[p] = append(f.parts[p], placedPart{first, sheet.Pt{X: x, Y: f.y}})
			f.y += first.height() + f.colGap()
		}
		if rest != nil {
			f.next()
		}
	}
}

// keep starts a new column when less than h is left in this one.
func (f *flow) keep(h sheet.MM) {
	if !f.empty() && f.area.Y+f.area.H-f.y < h {
		f.next()
	}
}

// next goes to the top of the next column, on a new page after the last one.
func (f *flow) next() {
	f.col++
	f.y = f.area.Y
	if f.col >= f.cols {
		f.newPage()
	}
}

// done returns the pages, each named with its place among them.
func (f *flow) done() []*page {
	if n := len(f.pages); n > 1 {
		for i, p := range f.pages {
			p.Name = fmt.Sprintf("%s, %d of %d", f.name, i+1, n)
		}
	}
	return f.pages
}
