package elevation

import (
	"slices"
	"strings"

	"galewright/plan"
	"galewright/plan/geom"
	"galewright/render/label"
	"galewright/render/page"
	"galewright/render/sheet"
)

// elevationPage makes the page of a filled sheet.
func elevationPage(c *page.Context, s *shelves) *page.Page {
	var names []string
	var keys []string
	for _, p := range s.parts {
		for _, i := range p.own {
			w := p.stories[i].wall
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
	pg := c.NewPageOn(s.paper, name+strings.Join(names, ", "), s.scale.Name, keys...)
	dx := (s.area.W - s.wide) / 2
	k := keyFor(pg, linesOn(c, s.parts), pg.Area.H-s.below)
	dy := max(0, (pg.Area.H-k.strip-s.below)/2)
	for _, p := range s.parts {
		p.page = pg
		p.at = p.at.Add(sheet.Pt{X: s.area.X + dx, Y: s.area.Y + dy})
	}
	pg.Draw = func(pg *page.Page) {
		for _, p := range s.parts {
			p.draw()
		}
		drawKey(pg, k)
	}
	return pg
}

// draw puts the part on its page.
func (p *part) draw() {
	w, h := p.size()
	origin := sheet.Pt{X: p.at.X + p.plan.left, Y: p.at.Y + p.plan.top + p.vp.Clip.H}
	p.vp = page.NewViewport(p.scale, origin, p.su0, p.su1, p.sv0, p.sv1)
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
	merged := p.merged()
	for i, s := range p.shapes {
		if s.hidden {
			dashed = append(dashed, s)
			continue
		}
		if s.pts = merged[i]; s.pts != nil {
			p.drawShape(b, s)
		}
	}
	for _, s := range dashed {
		p.page.Polygon(page.Style(sheet.PenHidden, sheet.LayerHidden), p.vp.Polygon(s.pts)...)
	}
}

func (p *part) drawShape(b *label.Board, s shape) {
	pts := p.vp.Polygon(s.pts)
	if pts == nil {
		return
	}
	st := sheet.Style{Pen: p.scale.MemberPen(), Fill: sheet.White, Layer: sheet.LayerMember}
	switch s.m.Role {
	case plan.Pile:
		p.drawPile(s)
		return
	case plan.GirderBeam:
		st.Pen = sheet.PenCut
	}
	p.page.Polygon(st, pts...)
	if standing(s.m) || s.m.Role == plan.Header {
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
			p.page.Line(pen, sheet.LayerMember, a, b)
		}
	}
}

// drawSubfloors draws the edge of each story's subfloor, half as deep as a
// plate and so in the thinnest pen.
func (p *part) drawSubfloors() {
	for _, s := range p.stories {
		for _, l := range p.passed(s.wall) {
			if l.Subfloor <= 0 || l.Joists.Depth <= 0 {
				continue
			}
			if p.vp.Len(l.Subfloor) < sheet.PenDim.Width()+apart {
				continue // one line with the plate on it
			}
			u0, u1, v0, v1 := s.shift, s.shift+s.wall.Length(), l.Floor-l.Subfloor, l.Floor
			p.page.Polygon(sheet.Style{Pen: sheet.PenDim, Fill: sheet.White, Layer: sheet.LayerMember},
				p.vp.Polygon([]geom.Vec2{{X: u0, Y: v0}, {X: u1, Y: v0}, {X: u1, Y: v1}, {X: u0, Y: v1}})...)
		}
	}
}
