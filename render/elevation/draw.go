package elevation

import (
	"slices"
	"strings"

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
