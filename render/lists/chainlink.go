package lists

import (
	"fmt"
	"strings"

	"galewright/plan"
	"galewright/plan/loadpath"
	"galewright/plan/wind"
	"galewright/render/page"
	"galewright/render/sheet"
	"galewright/render/table"
)

// DrawAt draws the part of the chain with its upper left corner at at.
func (l *laidChain) DrawAt(p *page.Page, at sheet.Pt) {
	title := "Line " + l.chain.Name
	if l.from > 0 {
		title += " (continued)"
	}
	link := ""
	if on := p.SheetsOf("section " + l.chain.Name); len(on) > 0 {
		link = on[0]
		title += ", section on " + link
	}
	p.Box("label", "chain "+l.chain.Name, sheet.Rect{X: at.X, Y: at.Y, W: l.w, H: l.Height()})
	p.Text(page.Lettered{S: page.FitText(title, l.m.cap*1.4, true, l.w), Cap: l.m.cap * 1.4, At: sheet.Pt{X: at.X, Y: at.Y + l.m.cap*1.5}, Bold: true, Role: "note", Link: link})
	y := at.Y + l.titleH()
	for i := l.from; i < l.to; i++ {
		h := l.highs[i]
		mid := sheet.Pt{X: at.X + l.m.axis, Y: y + h/2}
		if i > l.from {
			edgeLink(p, sheet.Pt{X: mid.X, Y: y}, l.m)
		}
		drawLink(p, formOf(l.chain, i), mid, l.m, h)
		if l.pictures[i] != nil {
			l.pictures[i].Draw(p, sheet.Rect{X: at.X + l.m.picture, Y: y + l.m.gap, W: pictureWide * l.m.cap, H: h - 2*l.m.gap})
		}
		l.drawText(p, at.X+l.m.text, y, i)
		y += h
	}
}

// drawText sets the lines beside link i and the sheet that shows its joints.
func (l *laidChain) drawText(p *page.Page, x, y sheet.MM, i int) {
	y += l.m.cap + l.m.gap/2
	for _, s := range l.lines[i] {
		p.Text(page.Lettered{S: s.s, Cap: l.m.cap, At: sheet.Pt{X: x, Y: y}, Bold: s.bold, Role: "note"})
		y += table.Pitch(l.m.cap)
	}
	if on := p.SheetsOf(seeKey(l.chain.Links[i])); len(on) > 0 {
		p.Text(page.Lettered{S: "see " + on[0], Cap: l.m.cap, At: sheet.Pt{X: x, Y: y}, Role: "note", Link: on[0]})
	}
}

// stadium returns the outline of a link about c: two straight sides and a
// half circle at each end, w wide and h high over all.
func stadium(c sheet.Pt, w, h sheet.MM) []sheet.Seg {
	const k = 0.5522847 // control points of a quarter circle
	r := w / 2
	t, b := c.Y-h/2+r, c.Y+h/2-r
	pt := func(x, y sheet.MM) sheet.Pt { return sheet.Pt{X: c.X + x, Y: y} }
	return []sheet.Seg{
		{Op: 'M', P: [3]sheet.Pt{pt(-r, b)}},
		{Op: 'L', P: [3]sheet.Pt{pt(-r, t)}},
		{Op: 'C', P: [3]sheet.Pt{pt(-r, t-k*r), pt(-k*r, t-r), pt(0, t-r)}},
		{Op: 'C', P: [3]sheet.Pt{pt(k*r, t-r), pt(r, t-k*r), pt(r, t)}},
		{Op: 'L', P: [3]sheet.Pt{pt(r, b)}},
		{Op: 'C', P: [3]sheet.Pt{pt(r, b+k*r), pt(k*r, b+r), pt(0, b+r)}},
		{Op: 'C', P: [3]sheet.Pt{pt(-k*r, b+r), pt(-r, b+k*r), pt(-r, b)}},
		{Op: 'Z'},
	}
}

// half returns the upper (or lower) half of a link, open where it is parted,
// its ends turned out.
func half(c sheet.Pt, w, h sheet.MM, upper bool) []sheet.Seg {
	const k = 0.5522847
	r, s := w/2, sheet.MM(1)
	if !upper {
		s = -1
	}
	t, e := -h/2+r, -h*0.17
	pt := func(x, y sheet.MM) sheet.Pt { return sheet.Pt{X: c.X + x, Y: c.Y + s*y} }
	return []sheet.Seg{
		{Op: 'M', P: [3]sheet.Pt{pt(-r*1.7, e)}},
		{Op: 'L', P: [3]sheet.Pt{pt(-r, e-r*0.5)}},
		{Op: 'L', P: [3]sheet.Pt{pt(-r, t)}},
		{Op: 'C', P: [3]sheet.Pt{pt(-r, t-k*r), pt(-k*r, t-r), pt(0, t-r)}},
		{Op: 'C', P: [3]sheet.Pt{pt(k*r, t-r), pt(r, t-k*r), pt(r, t)}},
		{Op: 'L', P: [3]sheet.Pt{pt(r, e-r*0.5)}},
		{Op: 'L', P: [3]sheet.Pt{pt(r*1.7, e)}},
	}
}

// drawLink draws one link of a chain in a row of the height.
func drawLink(p *page.Page, f linkForm, c sheet.Pt, m linkMetrics, row sheet.MM) {
	w, h := 1.5*m.cap, row-1.3*m.cap
	path := func(pen sheet.Pen, segs []sheet.Seg) {
		p.Add(sheet.Path{Style: sheet.Style{Pen: pen, Layer: sheet.LayerNote}, Segs: segs})
	}
	switch f {
	case linkIdle:
		path(sheet.PenHidden, stadium(c, w, h))
	case linkPlain:
		path(sheet.PenCut, stadium(c, w, h))
	case linkOpen:
		path(sheet.PenCut, half(c, w, h, true))
		path(sheet.PenCut, half(c, w, h, false))
	case linkWeakest:
		path(sheet.PenHardware, stadium(c, 1.35*w, h+0.2*w))
		path(sheet.PenMember, stadium(c, 0.8*w, h-0.5*w))
		pointer(p, c, m)
	case linkWeakGap:
		path(sheet.PenHardware, half(c, 1.35*w, h+0.2*w, true))
		path(sheet.PenHardware, half(c, 1.35*w, h+0.2*w, false))
		pointer(p, sheet.Pt{X: c.X - 0.25*w, Y: c.Y}, m)
	}
}

// pointer is the black triangle beside the weakest link.
func pointer(p *page.Page, c sheet.Pt, m linkMetrics) {
	x := c.X - 1.25*m.cap
	p.Polygon(sheet.Style{Pen: sheet.PenDim, Fill: sheet.Black, Layer: sheet.LayerNote},
		sheet.Pt{X: x, Y: c.Y}, sheet.Pt{X: x - 0.9*m.cap, Y: c.Y - 0.7*m.cap}, sheet.Pt{X: x - 0.9*m.cap, Y: c.Y + 0.7*m.cap})
}

// edgeLink is the link seen on edge between two others.
func edgeLink(p *page.Page, c sheet.Pt, m linkMetrics) {
	p.Add(sheet.Path{Style: sheet.Style{Pen: sheet.PenMember, Fill: sheet.White, Layer: sheet.LayerNote}, Segs: stadium(c, 0.45*m.cap, 2*m.cap)})
}

// chainKey is the key to the links, and what the chains are and are not.
type chainKey struct{}

// chainKeyRows are the forms with their meaning.
var chainKeyRows = []struct {
	form linkForm
	text string
}{
	{linkPlain, "controlling joint of the step, demand over capacity"},
	{linkWeakest, "the weakest of the chain"},
	{linkOpen, "gap: at one joint or more, nothing known resists the demand"},
	{linkWeakGap, "the weakest of the chain is a gap"},
	{linkIdle, "no demand: dead load is greater, or no uplift is followed to it; its text says which"},
}

// chainCaution is what to know before reading the chains: what the numbers
// are, where the method ends, and what no chain shows.
func chainCaution(r *loadpath.Report) string {
	s := "Pictures: the joint named beside them as it stands, from above and the side that shows its steel best, its own steel heavy, not to scale. Preliminary numbers for the engineer of record. Demand is net uplift or end tension at allowable stress level, from the worst wind case of each joint; assumptions and what was not checked are on the load path sheet."
	if r.Missing == "" {
		s += fmt.Sprintf(" Wind: ASCE %s, %s, GCpi +/-%.2f; coefficients and zones are on the load path sheet.", r.Basis.Edition, r.Choice, wind.GCpi(r.Basis.Enclosure))
	}
	for _, l := range r.Limits {
		s += " Limit of the method: " + strings.TrimSuffix(l, ".") + "."
	}
	sideways := 0
	for _, l := range r.Links {
		if l.Joint == nil && l.Gap != "" {
			sideways++
		}
	}
	if sideways > 0 {
		s += fmt.Sprintf(" Beside the chains: %s, reported on the load path sheet.", plan.Counted(sideways, "gap"))
	}
	return s
}

// Wanted is the width at which the key is best read, mm.
func (k *chainKey) Wanted(c *page.Context) sheet.MM { return 58 * c.ReadingCap() }

// Lay settles the key at a width of w or less, mm.
func (k *chainKey) Lay(c *page.Context, w sheet.MM) page.Laid {
	m := metricsOfLinks(c)
	note := table.WrapHard(chainCaution(c.Loads), m.cap, false, w)
	row := 4.6 * m.cap
	head := table.Pitch(m.cap*1.4) + m.gap
	h := head + sheet.MM(len(chainKeyRows))*row + sheet.MM(len(note))*table.Pitch(m.cap) + m.gap
	return &page.Figure{W: w, H: h, Draw: func(p *page.Page, at sheet.Pt) {
		p.Box("label", "key to the chains", sheet.Rect{X: at.X, Y: at.Y, W: w, H: h})
		p.Text(page.Lettered{S: "Key", Cap: m.cap * 1.4, At: sheet.Pt{X: at.X, Y: at.Y + m.cap*1.5}, Bold: true, Role: "note"})
		y := at.Y + head
		for _, r := range chainKeyRows {
			mid := sheet.Pt{X: at.X + m.axis, Y: y + row/2}
			drawLink(p, r.form, mid, m, row)
			for i, s := range table.WrapHard(r.text, m.cap, false, w-m.picture) {
				p.Text(page.Lettered{S: s, Cap: m.cap, At: sheet.Pt{X: at.X + m.picture, Y: mid.Y + m.cap/2 + sheet.MM(i)*table.Pitch(m.cap)}, Role: "note"})
			}
			y += row
		}
		for _, s := range note {
			y += table.Pitch(m.cap)
			p.Text(page.Lettered{S: s, Cap: m.cap, At: sheet.Pt{X: at.X, Y: y - m.gap}, Role: "note"})
		}
	}}
}
