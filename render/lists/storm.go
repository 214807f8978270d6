package lists

import (
	"fmt"
	"math"

	"galewright/plan/loadpath"
	"galewright/plan/units"
	"galewright/render/page"
	"galewright/render/sheet"
	"galewright/render/table"
)

// firstFew is how many of the links that are overtaken first are named.
const firstFew = 10

// StormPages draws at which wind speed the links of the load path are overtaken:
// a curve for each set of hardware compared, and the first links by name. Without
// curves there is no sheet.
func StormPages(c *page.Context) []*page.Page {
	if len(c.Storms) == 0 || c.Loads == nil {
		return nil
	}
	return c.Largest(stormLaid)
}

func stormLaid(c *page.Context) []*page.Page {
	f := c.NewFlow("What wind overtakes first", "storm")
	f.Put(stormPlot(c, f.Area.W, f.Area.H*0.55))
	f.ColumnsOf(min(f.Area.W, 62*c.ReadingCap()))
	for _, s := range c.Storms {
		f.Put(stormTable(c, s))
	}
	f.Put(table.Numbered("What the curve is", []string{
		"Preliminary, for the engineer of record. Speeds are 3 s gusts, of the same kind as the plan's design speed.",
		"A link counts at the speed at which its demand, by the design method at that speed, meets its capacity; wind from any side. Links with a gap, and what is not checked, are not in it.",
		"The house is not said to stand below any speed nor to fall above it.",
	}))
	return f.Done()
}

// stormTable names the links that are overtaken first.
func stormTable(c *page.Context, s page.Storm) *table.Table {
	t := &table.Table{Title: s.Name + ": the first to be overtaken", Cols: []table.Column{
		{Head: "No.", Align: sheet.Right}, {Head: c.Units().Unit("mph"), Align: sheet.Right}, {Head: "Link", Wrap: true}, {Head: "At"}, {Head: "Held by", Wrap: true},
	}}
	for i, o := range s.List[:min(firstFew, len(s.List))] {
		t.Rows = append(t.Rows, table.Row{Cells: table.Texts(fmt.Sprint(i+1), mph(c.Units(), o), o.Check.Title, o.ID, o.Capacity.Mark)})
	}
	if len(t.Rows) == 0 {
		t.Rows = append(t.Rows, table.Row{Cells: table.Texts("", "", "no link has a demand and a capacity")})
	}
	return t
}

func mph(u units.System, o loadpath.Overtaken) string {
	switch {
	case o.Under:
		return u.Sprintf("under %.0f{mph}", o.Speed)
	case o.Over:
		return u.Sprintf("over %.0f{mph}", o.Speed)
	}
	return u.Sprintf("%.0f{mph}", o.Speed)
}

// plot is the frame of a curve: speeds to the right, links overtaken up.
type plot struct {
	rect   sheet.Rect // of the axes
	lo, hi float64    // mph
	top    float64    // links
}

func (g plot) at(v, n float64) sheet.Pt {
	return sheet.Pt{
		X: g.rect.X + g.rect.W*sheet.MM((v-g.lo)/(g.hi-g.lo)),
		Y: g.rect.Y + g.rect.H*sheet.MM(1-n/g.top),
	}
}

// stormPlot is the curves as a figure.
func stormPlot(c *page.Context, w, h sheet.MM) *page.Figure {
	return &page.Figure{W: w, H: h, Draw: func(p *page.Page, at sheet.Pt) {
		z := c.Size.Note
		design := c.House.Plan.Site.WindSpeed
		g := plot{lo: math.Floor(design*0.4/10) * 10, hi: math.Ceil(design*1.6/10) * 10}
		for _, s := range c.Storms {
			g.top = max(g.top, float64(loadpath.Reached(s.List, g.hi)))
		}
		g.top = math.Ceil(max(g.top, 1)/10) * 10
		g.rect = sheet.Rect{X: at.X + 12*z, Y: at.Y + 3*z, W: w - 16*z, H: h - 9*z}
		g.axes(p, z, c.Units())
		d := g.at(design, 0)
		p.Line(sheet.PenGrid, sheet.LayerDimension, d, g.at(design, g.top))
		p.BoxedText("label", page.Lettered{S: c.Units().Sprintf("design %.0f mph", design), At: sheet.Pt{X: d.X, Y: g.rect.Y - z*0.6}, Anchor: sheet.Middle, Role: "label"})
		for i, s := range c.Storms {
			g.curve(p, z, i, s)
		}
	}}
}

// axes draws the frame with its figures.
func (g plot) axes(p *page.Page, z sheet.MM, u units.System) {
	p.Rect(page.Style(sheet.PenMember, sheet.LayerNote), g.rect)
	for v := math.Ceil(g.lo/20) * 20; v <= g.hi; v += 20 {
		q := g.at(v, 0)
		p.Line(sheet.PenDim, sheet.LayerDimension, q, sheet.Pt{X: q.X, Y: q.Y + 1.2})
		p.BoxedText("dimension", page.Lettered{S: u.Sprintf("%.0f{mph}", v), At: sheet.Pt{X: q.X, Y: q.Y + 1.8 + z}, Anchor: sheet.Middle, Role: "note"})
	}
	p.BoxedText("label", page.Lettered{S: u.Words("wind speed, {mph} (3 s gust)"), At: sheet.Pt{X: g.rect.X + g.rect.W/2, Y: g.rect.Y + g.rect.H + 4.2*z}, Anchor: sheet.Middle, Role: "note"})
	step := math.Max(1, math.Ceil(g.top/100)*10)
	for n := 0.0; n <= g.top; n += step {
		q := g.at(g.lo, n)
		p.Line(sheet.PenDim, sheet.LayerDimension, q, sheet.Pt{X: q.X - 1.2, Y: q.Y})
		p.BoxedText("dimension", page.Lettered{S: fmt.Sprintf("%.0f", n), At: sheet.Pt{X: q.X - 2, Y: q.Y + z/2}, Anchor: sheet.Right, Role: "note"})
	}
	p.BoxedText("label", page.Lettered{S: "links overtaken", At: sheet.Pt{X: g.rect.X - 8*z, Y: g.rect.Y + g.rect.H/2}, Anchor: sheet.Middle, Angle: 90, Role: "note"})
}

// curve draws one stair, up by one at each link's speed, and its line of the key.
// The second and later ones are thin.
func (g plot) curve(p *page.Page, z sheet.MM, i int, s page.Storm) {
	pen := sheet.PenHardware
	if i > 0 {
		pen = sheet.PenMember
	}
	line := []sheet.Pt{g.at(g.lo, 0)}
	n := 0.0
	for _, o := range s.List {
		if o.Over || o.Speed > g.hi {
			break
		}
		v := max(o.Speed, g.lo)
		line = append(line, g.at(v, n), g.at(v, n+1))
		n++
	}
	line = append(line, g.at(g.hi, n))
	p.Polyline(pen, sheet.LayerHardware, line...)
	key := sheet.Pt{X: g.rect.X + 2*z, Y: g.rect.Y + z*(2+2.2*sheet.MM(i))}
	p.Line(pen, sheet.LayerHardware, key, sheet.Pt{X: key.X + 8*z, Y: key.Y})
	p.BoxedText("label", page.Lettered{S: s.Name, At: sheet.Pt{X: key.X + 9*z, Y: key.Y + z/2}, Role: "label"})
}
