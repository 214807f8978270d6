package elevation

import (
	"cmp"
	"fmt"
	"slices"

	"galewright/plan"
	"galewright/plan/framing"
	"galewright/plan/geom"
	"galewright/render/label"
	"galewright/render/page"
	"galewright/render/sheet"
)

// wording is a label of some lines of lettering.
type wording struct {
	lines []string
	bold  bool // the first line
	place label.Label
}

// wordings returns the labels of openings, headers and shear walls.
func (p *part) wordings() (out []wording) {
	for _, i := range p.own {
		s := p.stories[i]
		for _, o := range s.wall.Openings {
			if u := s.shift + o.At; p.holds(u+o.Width/2) && p.vp.Shows(u, u+o.Width, s.floor+o.Sill, s.floor+o.Sill+o.Height) {
				out = append(out, p.openingWording(s, o))
			}
		}
		for _, x := range s.wall.Shear {
			out = append(out, p.shearWordings(s, x)...)
		}
		out = append(out, p.panelWordings(s)...)
	}
	for _, h := range p.shapes {
		u0, u1, v0, v1 := h.bounds()
		if h.m.Role == plan.Header && p.ownsWall(h.m.Wall) && p.holds((u0+u1)/2) && p.vp.Shows(u0, u1, v0, v1) {
			out = append(out, p.headerWording(h.m, p.vp.Rect(u0, u1, v0, v1)))
		}
	}
	return out
}

func (p *part) worded(name string, lines []string, bold bool) wording {
	w := wording{lines: lines, bold: bold}
	width := sheet.MM(0)
	for i, s := range lines {
		width = max(width, page.TextWidth(s, p.Size.Note, bold && i == 0))
	}
	w.place = label.Label{Name: name, W: width + 1, H: sheet.MM(len(lines))*(p.Size.Note*1.55) + 0.6}
	return w
}

// openingWording names an opening and gives its rough size.
func (p *part) openingWording(s story, o *plan.Opening) wording {
	u := s.shift + o.At
	room := p.vp.Rect(u, u+o.Width, s.floor+o.Sill, s.floor+o.Sill+o.Height)
	lines := []string{o.Name, "R.O. " + p.Length(o.Width) + " x " + p.Length(o.Height)}
	if page.TextWidth(lines[1], p.Size.Note, false) > room.W-2 {
		lines = []string{o.Name + " R.O.", p.Length(o.Width), "x " + p.Length(o.Height)}
	}
	w := p.worded("opening "+o.Name, lines, true)
	w.place.Near = gridIn(room, w.place.W, w.place.H, 5, 7)
	w.place.Anchors = []sheet.Pt{room.Center()}
	return w
}

// headerWording gives a header's section, on it where that fits.
func (p *part) headerWording(m *framing.Member, room sheet.Rect) wording {
	text := m.Section.Text
	if text == "" {
		text = fmt.Sprintf("%g x %g", m.Section.Width(), m.Section.Depth)
	}
	w := p.worded("header "+text, []string{text}, false)
	c := room.Center()
	for _, dx := range [...]sheet.MM{0, 0.15, -0.15, 0.3, -0.3} {
		w.place.Near = append(w.place.Near, sheet.Pt{X: c.X + dx*room.W, Y: c.Y})
	}
	for _, dy := range [...]sheet.MM{1, -1} {
		for _, dx := range [...]sheet.MM{0, 0.2, -0.2} {
			w.place.Near = append(w.place.Near, sheet.Pt{X: c.X + dx*room.W, Y: c.Y + dy*(room.H+w.place.H)/2})
		}
	}
	w.place.Anchors = []sheet.Pt{c}
	return w
}

// shearWordings says how a shear segment is sheathed and nailed.
func (p *part) shearWordings(s story, x *plan.Shear) []wording {
	u0, u1 := max(s.shift+x.From, p.from), min(s.shift+x.To, p.to)
	v0, v1 := max(s.floor, p.sv0), min(s.top, p.sv1)
	if u1-u0 < 12 || v1-v0 < 12 {
		return nil
	}
	room := p.vp.Rect(u0, u1, v0, v1)
	text := fmt.Sprintf("%s panel, %s nails, edges %s o.c., field %s o.c.", x.Panel, x.Nail, p.Spacing(x.Edge), p.Spacing(x.Field))
	if x.BothFaces {
		text += ", both faces"
	}
	if x.Perforated {
		text += ", perforated"
	}
	lines := append([]string{"shear wall " + x.Name}, page.Wrap(text, p.Size.Note, false, max(26, min(room.W*0.8, 60)))...)
	w := p.worded("shear wall "+x.Name, lines, true)
	w.place.Near = gridIn(room, w.place.W, w.place.H, 9, 13)
	w.place.Anchors = []sheet.Pt{room.Center()}
	w.place.Reach = 90
	return []wording{w}
}

// panelWordings says how the wall is sheathed and nailed outside of its shear segments, in
// the longest such stretch beside openings that is on the sheet.
func (p *part) panelWordings(s story) []wording {
	var u0, u1 float64
	for _, x := range s.wall.Panels() {
		for _, piece := range besideOpenings(s.wall, x) {
			if lo, hi := max(s.shift+piece[0], p.from), min(s.shift+piece[1], p.to); hi-lo > u1-u0+geom.Eps {
				u0, u1 = lo, hi
			}
		}
	}
	v0, v1 := max(s.floor, p.sv0), min(s.top, p.sv1)
	if u1-u0 < 12 || v1-v0 < 12 {
		return nil
	}
	room, x := p.vp.Rect(u0, u1, v0, v1), s.wall.Sheathing
	text := fmt.Sprintf("%s panel, %s nails, edges %s o.c., field %s o.c.", x.Panel, x.Nail, p.Spacing(x.Edge), p.Spacing(x.Field))
	head := "sheathing"
	if len(s.wall.Shear) > 0 {
		head = "sheathing outside of shear walls"
	}
	lines := append([]string{head}, page.Wrap(text, p.Size.Note, false, max(26, min(room.W*0.8, 60)))...)
	w := p.worded("sheathing of wall "+s.wall.Name, lines, true)
	w.place.Near = gridIn(room, w.place.W, w.place.H, 9, 13)
	w.place.Anchors = []sheet.Pt{room.Center()}
	w.place.Reach = 90
	return []wording{w}
}

// besideOpenings returns the parts of a stretch of wall that have no opening, by station.
func besideOpenings(w *plan.Wall, x *plan.Shear) (out [][2]float64) {
	list := slices.Clone(w.Openings)
	slices.SortFunc(list, func(a, b *plan.Opening) int { return cmp.Compare(a.At, b.At) })
	from := x.From
	for _, o := range list {
		if o.At > from && o.At < x.To {
			out = append(out, [2]float64{from, o.At})
		}
		from = max(from, o.End())
	}
	if from < x.To {
		out = append(out, [2]float64{from, x.To})
	}
	return out
}

// gridIn returns centers for a box in a room, the middle first and outward
// from there.
func gridIn(room sheet.Rect, w, h sheet.MM, nx, ny int) (out []sheet.Pt) {
	c := room.Center()
	dx, dy := max(room.W-w, 0)/2, max(room.H-h, 0)/2
	for _, y := range outward(ny) {
		for _, x := range outward(nx) {
			out = append(out, sheet.Pt{X: c.X + dx*x, Y: c.Y + dy*y})
		}
	}
	return out
}

// outward returns n numbers of -1..1, 0 first, then both sides in turn.
func outward(n int) []sheet.MM {
	out := []sheet.MM{0}
	for i := 1; i <= n/2; i++ {
		t := sheet.MM(i) / sheet.MM(n/2)
		out = append(out, -t, t)
	}
	return out
}

// label places and draws all labels of the part at once.
func (p *part) label(b *label.Board, list []*shown) {
	words := p.wordings()
	var labels []label.Label
	for _, w := range words {
		labels = append(labels, w.place)
	}
	for _, d := range list {
		labels = append(labels, p.numberLabel(d))
	}
	for i, at := range b.Place(labels) {
		if !at.OK {
			p.unplaced(labels[i].Name)
			continue
		}
		if i < len(words) {
			p.drawLeader(at.Leader, nil)
			p.drawWording(words[i], at.Rect)
			continue
		}
		d := list[i-len(words)]
		p.drawLeader(at.Leader, d.mark)
		p.page.LegendCircle(d.mark.Legend, at.Rect.Center(), labels[i].Name, d.mark)
	}
}

// unplaced tells of a label that found no place.
func (p *part) unplaced(name string) {
	w := p.stories[p.own[0]].wall
	p.Tell(plan.Diagnostic{
		Severity: plan.Warning, Code: "label-without-place",
		Summary: "there is no room on the sheet for the " + name,
		Where:   "wall " + w.Name + ", sheet " + p.page.Number, Mend: "draw it on larger paper", Pos: w.Pos,
	})
}

// drawLeader draws a leader that ends in a ring on what it speaks of; the
// ring shows on steel too.
func (p *part) drawLeader(pts []sheet.Pt, pc *sheet.Piece) {
	if len(pts) < 2 {
		return
	}
	p.page.Add(sheet.Polyline{Style: page.Style(sheet.PenDim, sheet.LayerLabel), Pts: pts, Piece: pc})
	p.page.Add(sheet.Circle{Style: sheet.Style{Pen: sheet.PenDim, Fill: sheet.White, Layer: sheet.LayerLabel}, C: pts[0], R: 0.5, Piece: pc})
}

// drawWording draws a label on a ground of its own, so that lumber behind it
// does not run through the letters.
func (p *part) drawWording(w wording, r sheet.Rect) {
	p.page.Rect(sheet.Style{Fill: sheet.White, Layer: sheet.LayerLabel}, r)
	step := p.Size.Note * 1.55
	for i, s := range w.lines {
		at := sheet.Pt{X: r.X + r.W/2, Y: r.Y + 0.3 + sheet.MM(i)*step + p.Size.Note*1.2}
		p.page.Text(page.Lettered{S: s, At: at, Anchor: sheet.Middle, Bold: w.bold && i == 0, Role: "label"})
	}
	p.page.Box("label", w.place.Name, r)
}

// drawSplices marks the breaks in the top plates.
func (p *part) drawSplices() {
	for _, j := range p.splices {
		if !p.ownsWall(j.Wall) {
			continue
		}
		q := p.flat(j.At)
		if !p.vp.Shows(q.X-0.1, q.X+0.1, q.Y-0.1, q.Y+0.1) {
			continue
		}
		spliceMark(p.page, p.vp.Pt(q.X, q.Y))
	}
}

// spliceMark draws the two slant strokes of a break in a plate.
func spliceMark(p *page.Page, c sheet.Pt) {
	const h = 1.3
	for _, dx := range [...]sheet.MM{-0.4, 0.4} {
		p.Line(sheet.PenMember, sheet.LayerMember, sheet.Pt{X: c.X + dx - 0.6, Y: c.Y + h}, sheet.Pt{X: c.X + dx + 0.6, Y: c.Y - h})
	}
}

// drawShear tints the shear segments.
func (p *part) drawShear() {
	for _, i := range p.own {
		s := p.stories[i]
		for _, x := range s.wall.Shear {
			pts := p.vp.Polygon(p.under(s, s.shift+x.From, s.shift+x.To))
			p.page.Polygon(sheet.Style{Fill: sheet.Pale, Layer: sheet.LayerMember}, pts...)
		}
	}
}

// under returns the outline of a wall between two stations, from its floor
// up to its plates: for a rake wall they rise to the ridge.
func (e *elev) under(s story, u0, u1 float64) []geom.Vec2 {
	var plates []shape
	var ends []float64
	for _, h := range e.shapes {
		if h.m.Wall != s.wall || h.m.Role != plan.TopPlate && h.m.Role != plan.UpperPlate {
			continue
		}
		plates = append(plates, h)
		for _, q := range h.pts {
			ends = append(ends, q.X)
		}
	}
	if len(plates) == 0 {
		return nil
	}
	u0, u1 = max(u0, slices.Min(ends)), min(u1, slices.Max(ends))
	pts := []geom.Vec2{{X: u0, Y: s.floor}, {X: u1, Y: s.floor}}
	for _, u := range append(ends, u0, u1) {
		for _, h := range plates {
			if v, ok := h.topAt(u); ok && u >= u0 && u <= u1 {
				pts = append(pts, geom.Vec2{X: u, Y: v})
			}
		}
	}
	return outline(pts)
}

// topAt returns the height of a convex shape's upper edge at station u.
func (s shape) topAt(u float64) (top float64, ok bool) {
	for i, a := range s.pts {
		b := s.pts[(i+1)%len(s.pts)]
		if a.X > b.X {
			a, b = b, a
		}
		if u < a.X-geom.Eps || u > b.X+geom.Eps {
			continue
		}
		v := max(a.Y, b.Y)
		if b.X-a.X > geom.Eps {
			v = a.Y + (b.Y-a.Y)*(u-a.X)/(b.X-a.X)
		}
		if !ok || v > top {
			top, ok = v, true
		}
	}
	return top, ok
}
