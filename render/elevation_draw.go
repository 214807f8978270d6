package render

import (
	"fmt"
	"slices"
	"strings"

	"galewright/plan/framing"
	"galewright/plan/geom"
	"galewright/plan/schedule"
	"galewright/render/label"
	"galewright/render/sheet"
	"galewright/symbols"
)

// elevationPage makes the page of a filled sheet.
func (c *context) elevationPage(s *shelves) *page {
	var names []string
	var keys []string
	for _, p := range s.parts {
		for _, i := range p.own {
			w := p.storeys[i].wall
			if !slices.Contains(names, w.Name) {
				names = append(names, w.Name)
				keys = append(keys, "wall "+w.Name)
			}
		}
		if k := "line " + p.line.Name; !slices.Contains(keys, k) {
			keys = append(keys, k)
		}
	}
	name := "Elevation of wall "
	if len(names) > 1 {
		name = "Elevations of walls "
	}
	pg := c.newPageOn(s.paper, name+strings.Join(names, ", "), s.scale.Name, keys...)
	dx := (s.area.W - s.wide) / 2
	dy := max(0, (s.area.H-s.below)/2)
	for _, p := range s.parts {
		p.page = pg
		p.at = p.at.Add(sheet.Pt{X: s.area.X + dx, Y: s.area.Y + dy})
	}
	pg.Draw = func(pg *page) {
		for _, p := range s.parts {
			p.draw()
		}
		pg.sheetLegend(s.parts)
	}
	return pg
}

// draw puts the part on its page.
func (p *part) draw() {
	w, h := p.size()
	origin := sheet.Pt{X: p.at.X + p.plan.left, Y: p.at.Y + p.plan.top + p.vp.Clip.H}
	p.vp = newViewport(p.scale, origin, p.su0, p.su1, p.sv0, p.sv1)
	b := label.NewBoard(sheet.Rect{X: p.at.X, Y: p.at.Y, W: w, H: h})
	p.drawShear()
	p.drawSubfloors()
	p.drawMembers(b)
	p.drawSplices()
	p.drawSides(b)
	list := p.gatherPieces()
	p.drawSteel(b, list)
	p.placeSymbols(list, p.drawFeet(b))
	p.drawSymbols(b, list)
	p.drawMatches(b)
	foot := p.vp.Clip.Y + p.vp.Clip.H
	end := p.drawRows(b, foot+p.belowDrawing())
	b.BlockText(sheet.Rect{X: p.at.X, Y: foot + p.belowDrawing() - 0.8, W: w, H: p.at.Y + h - foot})
	p.label(b, list)
	p.drawTitle(max(end, p.at.Y+h-p.titleHeight()))
}

// drawMembers draws the lumber, far things first, each hiding what lies
// behind it; what is hidden behind a rim shows dashed.
func (p *part) drawMembers(b *label.Board) {
	var dashed []shape
	for _, s := range p.shapes {
		if s.hidden {
			dashed = append(dashed, s)
			continue
		}
		p.drawShape(b, s)
	}
	for _, s := range dashed {
		p.page.polygon(style(sheet.PenHidden, sheet.LayerHidden), p.vp.Polygon(s.pts)...)
	}
}

func (p *part) drawShape(b *label.Board, s shape) {
	pts := p.vp.Polygon(s.pts)
	if pts == nil {
		return
	}
	st := sheet.Style{Pen: sheet.PenMember, Fill: sheet.White, Layer: sheet.LayerMember}
	switch s.m.Role {
	case framing.Pile:
		p.drawPile(s)
		return
	case framing.Girder:
		st.Pen = sheet.PenCut
	}
	p.page.polygon(st, pts...)
	if standing(s.m) || s.m.Role == framing.Header {
		u0, u1, v0, v1 := s.bounds()
		b.Discourage(p.vp.Rect(u0, u1, v0, v1))
	}
}

// drawPile draws a pile's head, broken off below.
func (p *part) drawPile(s shape) {
	u0, u1, v0, v1 := s.bounds()
	m := (u0 + u1) / 2
	var pts []geom.Vec2
	for _, q := range [...]geom.Vec2{{X: u0, Y: v1}, {X: u0, Y: v0}, {X: m - 1, Y: v0}, {X: m - 0.5, Y: v0 + 2}, {X: m + 0.5, Y: v0 - 2}, {X: m + 1, Y: v0}, {X: u1, Y: v0}, {X: u1, Y: v1}} {
		pts = append(pts, q)
	}
	for i := 1; i < len(pts); i++ {
		pen := sheet.PenDim
		if pts[i].X == pts[i-1].X {
			pen = sheet.PenCut
		}
		if a, b, ok := p.vp.Segment(pts[i-1], pts[i]); ok {
			p.page.line(pen, sheet.LayerMember, a, b)
		}
	}
}

// drawSubfloors draws the edge of each storey's subfloor.
func (p *part) drawSubfloors() {
	for _, s := range p.storeys {
		for _, l := range p.passed(s.wall) {
			if l.Subfloor <= 0 || l.Joists.Depth <= 0 {
				continue
			}
			u0, u1, v0, v1 := s.shift, s.shift+s.wall.Length(), l.Floor-l.Subfloor, l.Floor
			p.page.polygon(sheet.Style{Pen: sheet.PenMember, Fill: sheet.White, Layer: sheet.LayerMember},
				p.vp.Polygon([]geom.Vec2{{X: u0, Y: v0}, {X: u1, Y: v0}, {X: u1, Y: v1}, {X: u0, Y: v1}})...)
		}
	}
}

// legendOnTop tells whether the band beside the title block is too narrow for
// the sheet's legend, which then stands in a row along the top.
func (p *page) legendOnTop() bool { return p.Band.W < 60 }

// legendRow is the height of a row of the sheet's legend.
func (c *context) legendRow() sheet.MM { return max(2*c.legendRadius()+0.8, c.Size.Note*1.7) }

// sheetLegend lists the numbers on this sheet, and how the drawing is read.
func (p *page) sheetLegend(parts []*part) {
	on := map[int]bool{}
	for _, q := range parts {
		for _, pc := range q.pieces {
			if len(q.centreLine(q.vp, pc)) > 0 {
				on[p.legend(pc)] = true
			}
		}
	}
	row := p.legendRow()
	if p.legendOnTop() {
		at := sheet.Pt{X: p.Area.X, Y: p.Area.Y}
		for _, l := range p.Schedule.Lines {
			if on[l.Number] && at.X < p.Area.X+p.Area.W-12 {
				at.X += p.legendEntry(l, at, p.Area.X+p.Area.W-at.X) + 5
			}
		}
		return
	}
	at, width := sheet.Pt{X: p.Band.X, Y: p.Band.Y}, sheet.MM(0)
	right := p.Band.X + p.Band.W
	for _, l := range p.Schedule.Lines {
		if !on[l.Number] {
			continue
		}
		if at.Y+row > p.Band.Y+p.Band.H {
			at, width = sheet.Pt{X: at.X + width + 6, Y: p.Band.Y}, 0
		}
		if at.X > right-25 {
			break
		}
		width = max(width, p.legendEntry(l, at, right-at.X))
		at.Y += row
	}
	at.X += width + 6
	p.readingNotes(sheet.Rect{X: at.X, Y: p.Band.Y, W: right - at.X, H: p.Band.H})
}

// legendEntry draws a number, its symbol and its mark, at's corner its upper
// left one, and returns the width it takes.
func (p *page) legendEntry(l *schedule.Line, at sheet.Pt, most sheet.MM) sheet.MM {
	r, z := p.legendRadius(), p.Size.Note
	mid := at.Y + p.legendRow()/2
	p.numberCircle(l.Number, sheet.Pt{X: at.X + r, Y: mid}, fmt.Sprintf("legend %d of the sheet", l.Number))
	p.legendSymbol(symbolNamed(l.Item.Kind.Symbol), sheet.Pt{X: at.X + 2*r + 4, Y: mid})
	s := fitText(l.Item.Mark, z, true, most-2*r-9)
	t := p.boxedText("label", lettered{S: s, At: sheet.Pt{X: at.X + 2*r + 8, Y: mid + z/2}, Bold: true, Role: "note"})
	return t.X + t.W - at.X
}

// readingNotes says how an elevation is read, as far as there is room.
func (p *page) readingNotes(r sheet.Rect) {
	if r.W < 40 {
		return
	}
	y := r.Y + p.Size.Note
	for _, s := range [...]string{
		"Studs: from the wall's start to the near (left) edge, at the stud's foot or in the strip below.",
		"At left: heights above each storey's subfloor, of sills, headers, plates. At right: ends of straps.",
		"Solid steel lies on the face toward you, open steel on the far face. Steel is shown to length.",
		"Numbers in circles are lines of the legend and of the schedule.",
	} {
		for _, line := range wrap(s, p.Size.Note, false, min(r.W, 180)) {
			if y > r.Y+r.H {
				return
			}
			p.text(lettered{S: line, At: sheet.Pt{X: r.X, Y: y}, Role: "note"})
			y += p.Size.Note * 1.6
		}
	}
}

// legendSymbol draws a symbol centred on a point of a legend.
func (p *page) legendSymbol(id string, at sheet.Pt) {
	s, _ := symbols.For(id)
	k := p.symbolScale()
	c := s.Box.Centre()
	p.use(id, sheet.Pt{X: at.X - c.X*sheet.MM(k), Y: at.Y - c.Y*sheet.MM(k)}, 0, k, nil)
}
