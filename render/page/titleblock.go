package page

import (
	"fmt"

	"galewright/plan"
	"galewright/render/sheet"
)

// Caution is the line that every sheet and every page of a poster carries.
const Caution = plan.Caution

// FrameOf returns the border of a paper. Office printers leave a quarter of
// an inch blank; large sheets keep what a plotter's rollers need.
func FrameOf(p sheet.Paper) sheet.Rect {
	if Large(p) {
		return p.Rect().Inset(12)
	}
	return p.Rect().Inset(7.5)
}

// blockOf returns the title block's place, in the lower right corner of the
// border.
func blockOf(p sheet.Paper, z Lettering) sheet.Rect {
	f := FrameOf(p)
	w, h := sheet.MM(172), sheet.MM(0)
	if Large(p) {
		w = 236
	}
	w = min(w, f.W)
	for _, r := range blockRows(z) {
		h += r
	}
	return sheet.Rect{X: f.X + f.W - w, Y: f.Y + f.H - h, W: w, H: h}
}

// blockRows returns the heights of the block's rows: project, job and site,
// sheet title, the row of cells, the caution in two lines.
func blockRows(z Lettering) [5]sheet.MM {
	return [5]sheet.MM{z.Head*1.1 + 2, z.Note*1.2 + 1.4, z.Head*1.2 + 2.4, 2*z.Note + 3.4, 2*z.Note + 3.8}
}

// setTitle fills the title block's data; i of n counts the whole set.
func (p *Page) setTitle(i, n int) {
	pr := p.House.Plan.Project
	p.Title = sheet.Title{
		Project: pr.Name, Number: pr.Number, Site: pr.Site,
		Sheet: p.Number, SheetTitle: p.Name, Scale: p.Scale,
		Date: pr.Date, Revision: pr.Revision,
		DrawnBy: pr.DrawnBy, CheckedBy: pr.CheckedBy,
		Index: i, Of: n, Caution: Caution,
	}
	if p.Title.Revision == "" {
		p.Title.Revision = "0"
	}
}

// DrawFrame draws the border and the title block.
func (p *Page) DrawFrame() {
	p.Rect(Style(sheet.PenCut, sheet.LayerFrame), p.Frame)
	p.Rect(sheet.Style{Pen: sheet.PenCut, Fill: sheet.White, Layer: sheet.LayerFrame}, p.Block)
	p.Box("title", "title block", p.Block)
	z, rows, b := p.Size, blockRows(p.Size), p.Block
	numW := b.W * 0.22
	textW := b.W - numW - 4
	y := b.Y
	row := func(i int) (top, base sheet.MM) {
		top = y
		y += rows[i]
		return top, y
	}
	_, y1 := row(0)
	p.blockText(sheet.Pt{X: b.X + 2, Y: y1 - z.Head*0.3}, p.Title.Project, z.Head, true, textW)
	_, y2 := row(1)
	p.blockText(sheet.Pt{X: b.X + 2, Y: y2 - z.Note*0.5}, Join(p.Title.Number, p.Title.Site), z.Note, false, textW)
	_, y3 := row(2)
	p.rule(b.X, b.X+b.W-numW, y2)
	p.blockText(sheet.Pt{X: b.X + 2, Y: y3 - z.Head*0.45}, p.Title.SheetTitle, z.Head, true, textW)
	p.rule(b.X, b.X+b.W, y3)
	_, y4 := row(3)
	p.blockCells(sheet.Rect{X: b.X, Y: y3, W: b.W, H: y4 - y3})
	p.rule(b.X, b.X+b.W, y4)
	p.blockNumber(sheet.Rect{X: b.X + b.W - numW, Y: b.Y, W: numW, H: y3 - b.Y})
	for i, s := range Wrap(p.Title.Caution, z.Note, false, b.W-4) {
		p.blockText(sheet.Pt{X: b.X + 2, Y: y4 + 1.1 + z.Note + sheet.MM(i)*(z.Note+1.2)}, s, z.Note, false, b.W-3)
	}
}

// rule draws a horizontal line of the title block.
func (p *Page) rule(x0, x1, y sheet.MM) {
	p.Line(sheet.PenMember, sheet.LayerFrame, sheet.Pt{X: x0, Y: y}, sheet.Pt{X: x1, Y: y})
}

func (p *Page) blockText(at sheet.Pt, s string, h sheet.MM, bold bool, w sheet.MM) {
	if s != "" {
		p.Text(Lettered{S: FitText(s, h, bold, w), Cap: h, At: at, Bold: bold, Role: "title"})
	}
}

// blockNumber sets the sheet's number large, and its place in the set.
func (p *Page) blockNumber(r sheet.Rect) {
	p.Line(sheet.PenMember, sheet.LayerFrame, sheet.Pt{X: r.X, Y: r.Y}, sheet.Pt{X: r.X, Y: r.Y + r.H})
	h := p.Size.Title
	for TextWidth(p.Number, h, true) > r.W-4 && h > MinLetter {
		h -= 0.5
	}
	c := r.Center()
	p.Text(Lettered{S: p.Number, Cap: h, At: sheet.Pt{X: c.X, Y: r.Y + 2.2 + h}, Anchor: sheet.Middle, Bold: true, Role: "title"})
	s := fmt.Sprintf("sheet %d of %d", p.Title.Index, p.Title.Of)
	p.Text(Lettered{S: s, At: sheet.Pt{X: c.X, Y: r.Y + r.H - 2}, Anchor: sheet.Middle, Role: "title"})
}

// blockCells sets the row of small fields, each with its name over it.
func (p *Page) blockCells(r sheet.Rect) {
	z := p.Size
	cells := [...]struct {
		name, value string
		share       sheet.MM
	}{
		{"scale", p.Title.Scale, 0.20},
		{"date", p.Title.Date, 0.18},
		{"revision", p.Title.Revision, 0.14},
		{"drawn", p.Title.DrawnBy, 0.24},
		{"checked", p.Title.CheckedBy, 0.24},
	}
	x := r.X
	for i, c := range cells {
		w := r.W * c.share
		if i > 0 {
			p.Line(sheet.PenDim, sheet.LayerFrame, sheet.Pt{X: x, Y: r.Y}, sheet.Pt{X: x, Y: r.Y + r.H})
		}
		p.blockText(sheet.Pt{X: x + 2, Y: r.Y + 1.2 + z.Note}, c.name, z.Note, false, w-3)
		p.blockText(sheet.Pt{X: x + 2, Y: r.Y + r.H - 1.4}, c.value, z.Note, true, w-3)
		x += w
	}
}

// Join puts the words that are not empty side by side.
func Join(words ...string) (s string) {
	for _, w := range words {
		if w != "" && s != "" {
			s += ", "
		}
		s += w
	}
	return s
}

// ViewTitle sets the name of a view with its scale and a scale bar under it,
// and claims the place. at is the lower left corner of what it takes.
func (p *Page) ViewTitle(at sheet.Pt, name string, s Scale) sheet.Rect {
	z := p.Size
	bar := p.ScaleBar(sheet.Pt{X: at.X, Y: at.Y}, s)
	y := bar.Y - 1.6
	r := p.Text(Lettered{S: name, Cap: z.Head, At: sheet.Pt{X: at.X, Y: y}, Bold: true, Role: "title", Layer: sheet.LayerNote})
	r2 := p.Text(Lettered{S: "scale " + s.Name, At: sheet.Pt{X: r.X + r.W + 4, Y: y}, Role: "note"})
	all := r.Union(r2).Union(bar)
	p.Box("title", "title of "+name, all)
	return all
}

// ViewTitleSize returns the place ViewTitle takes.
func (c *Context) ViewTitleSize(name string, s Scale) (w, h sheet.MM) {
	bw, bh := c.ScaleBarSize(s)
	tw := TextWidth(name, c.Size.Head, true) + 4 + TextWidth("scale "+s.Name, c.Size.Note, false)
	return max(bw, tw), bh + 1.6 + c.Size.Head*1.3
}

// scaleBarSteps returns the length of one step of the bar, in, the number of
// steps, and what the end of each is called.
func (c *Context) scaleBarSteps(s Scale) (step float64, ends []string) {
	if c.Metric() {
		mm := 1000.0
		switch {
		case s.Ratio <= 10:
			mm = 50
		case s.Ratio <= 25:
			mm = 500
		}
		step = mm / 25.4
		for i := range 5 {
			ends = append(ends, c.Length(step*float64(i)))
		}
		return step, ends
	}
	step = 12
	switch {
	case s.Ratio <= 8:
		step = 1
	case s.Ratio >= 96:
		step = 48
	case s.Ratio >= 48:
		step = 24
	}
	for i := range 5 {
		ends = append(ends, c.Length(step*float64(i)))
	}
	ends[0] = "0"
	return step, ends
}

// ScaleBarSize returns the place ScaleBar takes, mm.
func (c *Context) ScaleBarSize(s Scale) (w, h sheet.MM) {
	step, ends := c.scaleBarSteps(s)
	n := len(ends) - 1
	last := TextWidth(ends[n], c.Size.Note, false)
	return sheet.MM(step*float64(n)*s.K()) + last/2 + 1, 1.8 + 1 + c.Size.Note
}

// ScaleBar draws a graphic scale, its lower left corner at p: prints get
// shrunk, and this shrinks with them.
func (p *Page) ScaleBar(at sheet.Pt, s Scale) sheet.Rect {
	step, ends := p.scaleBarSteps(s)
	w, h := p.ScaleBarSize(s)
	k := sheet.MM(step * s.K())
	top := at.Y - h
	x0 := at.X + 1
	every := 1
	for sheet.MM(every)*k < TextWidth(ends[len(ends)-1], p.Size.Note, false)+2 {
		every *= 2
	}
	for i, e := range ends {
		x := x0 + sheet.MM(i)*k
		if i+1 < len(ends) {
			fill := sheet.White
			if i%2 == 0 {
				fill = sheet.Black
			}
			p.Rect(sheet.Style{Pen: sheet.PenDim, Fill: fill, Layer: sheet.LayerNote}, sheet.Rect{X: x, Y: top, W: k, H: 1.8})
		}
		if i%every == 0 {
			p.Text(Lettered{S: e, At: sheet.Pt{X: x, Y: at.Y}, Anchor: sheet.Middle, Role: "note"})
		}
	}
	return sheet.Rect{X: at.X, Y: top, W: w, H: h}
}

// NorthArrow draws the arrow of plans at a center; angle turns it
// counterclockwise from up.
func (p *Page) NorthArrow(at sheet.Pt, angle float64) {
	const k = 2.2
	p.Use("sym-north", at, angle, k, nil)
	p.Box("label", "north arrow", sheet.Rect{X: at.X - 3*k, Y: at.Y - 3*k, W: 6 * k, H: 6 * k})
}

// PlanPos is the place that drawing diagnostics speak of.
func (c *Context) PlanPos() plan.Pos { return c.House.Plan.Project.Pos }

// Number gives the sheets their numbers, S-001, S-101, S-201 ..., by series.
func Number(pages []*Page) {
	next := map[int]int{}
	for i, p := range pages {
		next[p.Series]++
		p.Number = fmt.Sprintf("S-%d%02d", p.Series, next[p.Series])
		p.setTitle(i+1, len(pages))
	}
}
