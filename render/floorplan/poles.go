package floorplan

import (
	"cmp"
	"fmt"
	"math"
	"slices"

	"galewright/plan"
	"galewright/plan/geom"
	"galewright/plan/placement"
	"galewright/render/page"
	"galewright/render/sheet"
)

// besidePole is how far beside its joint a piece at the foot of a post under a ridge is
// drawn, in, so that it does not cover the post; 0 of other pieces.
func (v *planView) besidePole(pc *placement.Piece) float64 {
	m := pc.Joint.First()
	if m == nil || m.Role != plan.RidgePole {
		return 0
	}
	return m.Section.Depth/2 + 3/float64(v.vp.Len(1))
}

// poleStations letters at each post under a ridge how far its center is from two outer
// grid lines, the nearer ones, that cross.
func (v *planView) poleStations() {
	grid := gridOf(v.Context)
	for _, m := range v.House.Members {
		c := m.A.Flat()
		if m.Role != plan.RidgePole || !v.sees(c) {
			continue
		}
		text := v.fromLine(grid, c, true) + ", " + v.fromLine(grid, c, false)
		p, half := v.pt(c), v.vp.Len(m.Section.Depth/2)
		w, h := page.TextWidth(text, v.Size.Note, false)+0.8, v.Size.Note*1.4
		near := []sheet.Pt{}
		for _, off := range []sheet.MM{0.8, 3, 6} {
			near = append(near, aroundPoint(p, w, h, half+off)...)
		}
		slices.SortStableFunc(near, func(a, b sheet.Pt) int { return cmp.Compare(b.Y-p.Y, a.Y-p.Y) }) // below it first: a girder may lie above
		v.words(text, page.Lettered{Role: "dimension"}, near, []sheet.Pt{p})
	}
}

// fromLine says how far a plan point is from the nearest outer grid line along y or x.
func (v *planView) fromLine(grid []gridLine, c geom.Vec2, alongY bool) string {
	at, best, name := c.Y, math.Inf(1), ""
	if alongY {
		at = c.X
	}
	for _, g := range grid {
		if d := math.Abs(g.at - at); g.alongY == alongY && g.outer && d < best {
			best, name = d, g.name
		}
	}
	return fmt.Sprintf("%s from %s", v.Length(best), name)
}
