package detail

import (
	"fmt"
	"slices"

	"galewright/render/page"
	"galewright/render/sheet"
)

// sheetful is the details that one page has taken.
type sheetful struct {
	page  *page.Page
	taken []sheet.Rect // from the area's corner
	scale string
}

// detailGap is kept between details, mm.
const detailGap sheet.MM = 9

// packDetails sets each draft on the first page that has room for it, as high
// and as far left as it goes; the space beside the title block counts.
func packDetails(c *page.Context, drafts []*draft, marks, scales []string) (pages []*page.Page) {
	var fulls []*sheetful
	for i, d := range drafts {
		r := d.extent()
		at, full := roomFor(c, fulls, r.W, r.H)
		if full == nil {
			full = &sheetful{page: c.NewPage("", "")}
			fulls, pages = append(fulls, full), append(pages, full.page)
		}
		full.taken = append(full.taken, sheet.Rect{X: at.X, Y: at.Y, W: r.W + detailGap, H: r.H + detailGap})
		full.scale = shareScale(full.scale, scales[i])
		p := full.page
		p.Scale = full.scale
		p.Keys = append(p.Keys, "mark "+marks[i])
		stamp(p, d, sheet.Pt{X: p.Area.X + at.X - r.X, Y: p.Area.Y + at.Y - r.Y})
	}
	for i, p := range pages {
		p.Name = "Hardware details"
		if len(pages) > 1 {
			p.Base, p.Name = p.Name, fmt.Sprintf("Hardware details, %d of %d", i+1, len(pages))
		}
	}
	return pages
}

// roomFor finds the first page with room for w by h mm, and where.
func roomFor(c *page.Context, fulls []*sheetful, w, h sheet.MM) (at sheet.Pt, full *sheetful) {
	for _, f := range fulls {
		xs, ys := []sheet.MM{0}, []sheet.MM{0}
		for _, t := range f.taken {
			xs, ys = append(xs, t.X+t.W), append(ys, t.Y+t.H)
		}
		slices.Sort(xs)
		slices.Sort(ys)
		for _, y := range ys {
			for _, x := range xs {
				if f.fits(sheet.Rect{X: x, Y: y, W: w, H: h}) {
					return sheet.Pt{X: x, Y: y}, f
				}
			}
		}
	}
	return sheet.Pt{}, nil
}

// fits tells whether r, from the area's corner, is free on the page.
func (f *sheetful) fits(r sheet.Rect) bool {
	p := f.page
	high := p.Area.H
	if p.Area.X+r.X+r.W < p.Block.X-detailGap {
		high = p.Frame.Y + p.Frame.H - page.Gutter(p.Context.Paper) - p.Area.Y
	}
	return r.X+r.W <= p.Area.W && r.Y+r.H <= high && !slices.ContainsFunc(f.taken, r.Overlaps)
}

// shareScale is the scale of a sheet whose views have the given ones.
func shareScale(a, b string) string {
	if a == "" || a == b {
		return b
	}
	return "as noted"
}

// stamp makes the page draw d moved by by, after what it draws already.
func stamp(p *page.Page, d *draft, by sheet.Pt) {
	before := p.Draw
	p.Draw = func(p *page.Page) {
		if before != nil {
			before(p)
		}
		for _, m := range d.Marks {
			p.Add(moved(m, by))
		}
		for _, b := range d.Boxes {
			b.X, b.Y = b.X+by.X, b.Y+by.Y
			p.Boxes = append(p.Boxes, b)
		}
	}
}

// moved returns m moved by by.
func moved(m sheet.Mark, by sheet.Pt) sheet.Mark {
	switch m := m.(type) {
	case sheet.Line:
		m.A, m.B = m.A.Add(by), m.B.Add(by)
		return m
	case sheet.Polyline:
		pts := make([]sheet.Pt, len(m.Pts))
		for i, p := range m.Pts {
			pts[i] = p.Add(by)
		}
		m.Pts = pts
		return m
	case sheet.Circle:
		m.C = m.C.Add(by)
		return m
	case sheet.Text:
		m.At = m.At.Add(by)
		return m
	case sheet.Use:
		m.At = m.At.Add(by)
		return m
	}
	return m
}
