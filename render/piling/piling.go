package piling

import (
	"cmp"
	"fmt"
	"math"
	"slices"

	"galewright/plan"
	"galewright/plan/framing"
	"galewright/plan/geom"
	"galewright/render/page"
	"galewright/render/project"
	"galewright/render/scene"
	"galewright/render/sheet"
	"galewright/render/table"
)

// Pages draws every line of piles that is braced or closed, with the list of braces.
func Pages(c *page.Context) []*page.Page {
	lines := linesOf(c)
	if len(lines) == 0 {
		return nil
	}
	var best []*page.Page
	for _, s := range c.Scales() {
		for columns := 1; columns <= mostColumns; columns++ {
			if pages := lay(c, lines, s, columns); pages != nil && (best == nil || len(pages) < len(best)) {
				best = pages
			}
		}
		if len(best) == 1 || best != nil && s.Ratio >= leastScale {
			break
		}
	}
	if best == nil {
		c.Tell(plan.Diagnostic{
			Severity: plan.Warning, Code: "no-room-on-sheet", Pos: c.PlanPos(), Where: "bracing between piles",
			Summary: "no line of piles fits on a sheet of this paper at any scale: its elevations are left out", Mend: "take larger paper",
		})
	}
	return best
}

// leastScale is the smallest scale taken to have all on fewer sheets, inches of house to one
// of paper; mostColumns how many lines stand beside each other.
const (
	leastScale  = 64
	mostColumns = 3
)

// lay puts the lines, the list of braces and the notes on sheets in columns; nil where a line
// does not fit into one.
func lay(c *page.Context, lines []*pileLine, s page.Scale, columns int) []*page.Page {
	flow := c.NewFlow("Bracing and walls between piles", "piling")
	flow.Columns(columns)
	for _, l := range lines {
		f := figure(c, l, s)
		if f.W > flow.ColumnWidth || f.H > c.DrawingArea().H {
			return nil
		}
		flow.Put(f)
	}
	t := braceTable(c)
	if t.Wanted(c) > flow.ColumnWidth {
		return nil
	}
	if len(t.Rows) > 0 {
		flow.Put(t)
	}
	flow.Put(table.Numbered("Notes", notes(c)))
	pages := flow.Done()
	for _, p := range pages {
		p.Scale = "as noted"
	}
	return pages
}

// past is how far beyond the ends of a line a picture goes, under how far below grade, in.
const (
	past  = 14
	under = 3
)

// heightsWidth is the room for heights at a picture's left, mm.
func heightsWidth(c *page.Context) sheet.MM {
	return page.TextWidth(c.Length(12*19+11.0625), c.Size.Dim, false) + 8
}

// figure lays out the picture of one line.
func figure(c *page.Context, l *pileLine, s page.Scale) *page.Figure {
	left := heightsWidth(c)
	w, h := sheet.MM((l.len+2*past)*s.K()), sheet.MM((l.top+under)*s.K())
	_, title := c.ViewTitleSize(l.title, s)
	rows := sheet.MM(stationRows(l, c, s)+1) * c.Size.Dim * rowPitch
	return &page.Figure{W: left + w, H: h + rows + title + 4, Draw: func(p *page.Page, at sheet.Pt) {
		vp := page.NewViewport(s, sheet.Pt{X: at.X + left, Y: at.Y + h}, -past, l.len+past, -under, l.top)
		d := &drawing{p, vp, l}
		d.walls()
		d.wood()
		d.grade()
		d.heights(at.X)
		d.below(at.Y + h)
		p.ViewTitle(sheet.Pt{X: at.X, Y: at.Y + h + rows + title + 2}, l.title, s)
	}}
}

// drawing is one picture while it is drawn.
type drawing struct {
	*page.Page
	vp *page.Viewport
	l  *pileLine
}

// shortest is the shortest line that is drawn, mm.
const shortest sheet.MM = 0.2

// wood draws members and steel as they are seen, and what is hidden of braces.
func (d *drawing) wood() {
	paths := map[sheet.Pen]*sheet.Path{}
	order := []sheet.Pen{sheet.PenHidden, sheet.PenMember, sheet.PenHardware}
	for _, pen := range order {
		layer := sheet.LayerMember
		if pen == sheet.PenHardware {
			layer = sheet.LayerHardware
		}
		paths[pen] = &sheet.Path{Style: page.Style(pen, layer)}
	}
	for _, x := range d.l.lines {
		part := x.Owner.(scene.Part)
		pen := sheet.PenMember
		switch brace := part.Member != nil && part.Member.Role == plan.BraceBoard || part.Body != nil && part.Kind == scene.Rod; {
		case x.State == project.Hidden && !brace, x.State == project.Broken:
			continue
		case x.State == project.Hidden:
			pen = sheet.PenHidden
		case part.Body != nil && page.Large(d.Context.Paper):
			pen = sheet.PenHardware
		}
		a, b, ok := d.vp.Segment(d.l.at(x.A), d.l.at(x.B))
		if ok && math.Hypot(float64(b.X-a.X), float64(b.Y-a.Y)) >= float64(shortest) {
			paths[pen].Segs = append(paths[pen].Segs, sheet.Seg{Op: 'M', P: [3]sheet.Pt{a}}, sheet.Seg{Op: 'L', P: [3]sheet.Pt{b}})
		}
	}
	for _, pen := range order {
		if len(paths[pen].Segs) > 0 {
			d.Add(*paths[pen])
		}
	}
}

// boardApart is the distance of the lines that stand for a breakaway wall, in.
const boardApart = 12

// walls draws breakaway walls thin: they are no part of the frame.
func (d *drawing) walls() {
	thin := sheet.Style{Pen: sheet.PenDim, Layer: sheet.LayerMember}
	for _, x := range d.l.walls {
		d.Rect(thin, d.vp.Rect(x.u0, x.u1, x.v0, x.v1))
		for u := x.u0 + boardApart; u < x.u1-1; u += boardApart {
			d.Line(sheet.PenDim, sheet.LayerMember, d.vp.Pt(u, x.v0), d.vp.Pt(u, x.v1))
		}
	}
}

// grade draws the ground.
func (d *drawing) grade() {
	d.Line(sheet.PenCut, sheet.LayerMember, d.vp.Pt(-past, 0), d.vp.Pt(d.l.len+past, 0))
}

// heights letters the heights above grade at the left: of the piles' seats and of the
// bolts.
func (d *drawing) heights(x sheet.MM) {
	list := append([]float64{0}, d.l.heights...)
	var want, tall []sheet.MM
	for _, z := range list {
		want, tall = append(want, -d.vp.Y(z)), append(tall, d.Size.Dim*1.5)
	}
	edge := d.vp.X(-past)
	for i, y := range page.Spread(want, tall) {
		text := d.Length(list[i])
		if i == 0 {
			text = "grade"
		}
		d.BoxedText("label", page.Lettered{S: text, Cap: d.Size.Dim, At: sheet.Pt{X: edge - 5, Y: -y + d.Size.Dim/2}, Anchor: sheet.Right, Role: "dimension"})
		d.Polyline(sheet.PenDim, sheet.LayerDimension, sheet.Pt{X: edge - 4, Y: -y}, sheet.Pt{X: edge - 1, Y: d.vp.Y(list[i])}, sheet.Pt{X: edge + 3, Y: d.vp.Y(list[i])})
	}
}

// rowPitch is the distance of rows of lettering under a line, in their height.
const rowPitch = 1.9

// rowsOf returns in which row the station of each pile is lettered: those that would run
// into the one before in the second.
func rowsOf(l *pileLine, c *page.Context, s page.Scale) []int {
	out, last := make([]int, len(l.piles)), sheet.MM(-1e6)
	for i, x := range l.piles {
		at, w := sheet.MM(x.at*s.K()), page.TextWidth(x.text, c.Size.Dim, false)
		if at-w/2 < last+1 {
			out[i] = 1
			continue
		}
		last = at + w/2
	}
	return out
}

// stationRows is how many rows the stations of a line take.
func stationRows(l *pileLine, c *page.Context, s page.Scale) int {
	return slices.Max(rowsOf(l, c, s)) + 1
}

// below letters under a line where its piles stand and what is in its bays.
func (d *drawing) below(y sheet.MM) {
	pitch := d.Size.Dim * rowPitch
	y += pitch * 0.8
	rows := rowsOf(d.l, d.Context, d.vp.Scale)
	for i, s := range d.l.piles {
		d.BoxedText("label", page.Lettered{S: s.text, Cap: d.Size.Dim, At: sheet.Pt{X: d.vp.X(s.at), Y: y + sheet.MM(rows[i])*pitch}, Anchor: sheet.Middle, Role: "dimension"})
	}
	y += sheet.MM(stationRows(d.l, d.Context, d.vp.Scale)) * pitch
	var mid, wide []sheet.MM
	for _, b := range d.l.bays {
		mid, wide = append(mid, d.vp.X(b.at)), append(wide, page.TextWidth(b.text, d.Size.Note, false)+3)
	}
	for i, x := range page.Spread(mid, wide) {
		d.BoxedText("label", page.Lettered{S: d.l.bays[i].text, At: sheet.Pt{X: x, Y: y}, Anchor: sheet.Middle, Role: "note"})
	}
}

// braceTable lists every board and rod, with the length that it is cut to.
func braceTable(c *page.Context) *table.Table {
	t := &table.Table{Title: "Braces", Cols: []table.Column{{Head: "Brace"}, {Head: "Of"}, {Head: "Girder"}, {Head: "At"}, {Head: "Ends above grade"}, {Head: "Bolt to bolt"}, {Head: "Cut to"}, {Head: "Slope"}}}
	for _, x := range c.House.Plan.Braces {
		for _, m := range c.House.Members {
			if m.Role == plan.BraceBoard && boardOf(c, m) == x.Name {
				way := m.B.Sub(m.A).Unit().Mul(framing.PastBolt)
				a, b := m.A.Add(way), m.B.Sub(way)
				t.Rows = append(t.Rows, row(c, x, m.Section.Text, a, b, m.Length))
			}
		}
		for _, j := range c.House.Joints {
			if j.Kind != plan.BraceRod || j.Brace.Name != x.Name {
				continue
			}
			cut, of := 0.0, "no rod is placed"
			for _, pc := range c.Placement.At(j) {
				cut, of = pc.Cut, pc.Item.Mark+", "+c.Units().Bought(pc.Item.Rod)
			}
			t.Rows = append(t.Rows, row(c, x, of, j.Brace.A, j.Brace.B, cut))
		}
	}
	return t
}

// boardOf names the brace that a board is of.
func boardOf(c *page.Context, m *framing.Member) string {
	for _, j := range c.House.Joints {
		if j.Kind == plan.BraceEnd && j.First() != nil {
			for _, o := range j.Members {
				if o == m {
					return j.Brace.Name
				}
			}
		}
	}
	return ""
}

// stationsOf says between which stations of its girder a brace is; of one across, at which,
// and to which girder.
func stationsOf(c *page.Context, x *plan.Brace, a, b geom.Vec3) string {
	for _, g := range c.House.Plan.Girders {
		if g.Name != x.Girder {
			continue
		}
		f := geom.NewFrame(g.From, g.To)
		s, _ := f.Local(a.Flat())
		t, _ := f.Local(b.Flat())
		if x.Across != "" {
			pile := slices.MinFunc(g.Piles, func(p, q float64) int { return cmp.Compare(math.Abs(p-s), math.Abs(q-s)) })
			return c.Length(pile) + ", to " + x.Across
		}
		return c.Length(min(s, t)) + " to " + c.Length(max(s, t))
	}
	return ""
}

// row is a line of the list: a brace from bolt to bolt.
func row(c *page.Context, x *plan.Brace, of string, a, b geom.Vec3, cut float64) table.Row {
	d := b.Sub(a)
	length := "-"
	if cut > 0 {
		length = c.Length(cut)
	}
	return table.Row{Cells: table.Texts(x.Name, of, x.Girder, stationsOf(c, x, a, b), c.Length(min(a.Z, b.Z))+" and "+c.Length(max(a.Z, b.Z)), c.Length(d.Len()), length,
		fmt.Sprintf("%.1f°", math.Asin(math.Abs(d.Z)/d.Len())*180/math.Pi))}
}

// notes say how to read the sheet, and what nothing of it is counted as.
func notes(c *page.Context) (out []string) {
	out = append(out, "Heights are above grade, stations along the girder from its start to the middle of each pile. Dashed: behind.")
	if len(c.House.Plan.Braces) > 0 {
		out = append(out,
			"Braces are drawn, counted and cut from the plan as given. What they carry is not checked: wind, flood, waves, debris and scour on the piles are the engineer's, and so are their size, bolts and embedment. Of two crossed braces the one in tension works. No load of this set's load path is taken by them.",
			"Boards end square, "+c.Length(framing.PastBolt)+" past their bolts. Cut rods to length with nuts and washers beveled to their slope; draw both of a cross tight together, piles plumb. Heights of rods are those of their line over the middles of the piles.")
	}
	for _, x := range c.House.Plan.Breakaways {
		note := ""
		if x.Note != "" {
			note = " (" + x.Note + ")"
		}
		out = append(out, fmt.Sprintf("%s%s: breakaway wall, drawn thin. It carries nothing, is in no load path and in no count here.", x.Name, note))
	}
	if len(c.House.Plan.Breakaways) > 0 {
		out = append(out, "Breakaway walls are their designer's: they are to give way to flood without taking piles, girders, braces or services with them (44 CFR 60.3(e)(5) and FEMA Technical Bulletin 9, from memory). Fasten no brace, strap or hold-down to them, and them to no brace.")
	}
	return out
}
