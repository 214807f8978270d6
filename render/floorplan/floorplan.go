package floorplan

import (
	"fmt"

	"galewright/plan"
	"galewright/plan/framing"
	"galewright/plan/geom"
	"galewright/render/page"
	"galewright/render/sheet"
	"galewright/render/table"
)

// FloorPages makes the plan of each level, lowest first.
func FloorPages(c *page.Context) (pages []*page.Page) {
	lo, hi, ok := c.WallBounds()
	if !ok {
		return nil
	}
	for _, l := range c.House.Plan.Levels {
		walls := c.WallsOn(l)
		if len(walls) == 0 {
			continue
		}
		pages = append(pages, levelPages(c, l, walls, lo, hi)...)
	}
	return pages
}

// sideColumn is the width kept for tables at the right of a plan: none on
// small paper, where they go left of the title block.
func sideColumn(c *page.Context) sheet.MM {
	if page.Large(c.Paper) {
		return 136
	}
	return 0
}

// levelPages makes the sheets of one level.
func levelPages(c *page.Context, l *plan.Level, walls []*plan.Wall, lo, hi geom.Vec2) []*page.Page {
	// lanes take most room at the smallest scale: lay the sheet out with
	// those, then with the lanes at the scale found, then pack them for good
	sc := planScale{k: (page.Scale{Ratio: leastPlanScale(c)}).K()}
	var top, left gridRoom
	var sheets []planSheet
	for range 2 {
		var m margins
		top, left, m = planMargins(c, widestLanes(c, walls, runsOf(c, l, sc)))
		sheets = layPlan(c, lo, hi, m, leastPlanScale(c))
		sc = planScale{sheets[0].scale.K(), sheets[0].turned}
	}
	runs := runsOf(c, l, sc)
	holes := holesOf(c, l)
	return planPages(c, sheets, planKind{
		title: "Plan, " + l.Name, key: "level " + l.Name, top: top, left: left,
		draw:   func(v *planView, s planSheet) { v.drawLevel(l, walls, runs, holes, s) },
		after:  func(v *planView) { v.dimHoles(holes) },
		tables: levelTables(c, l, holes),
	})
}

// planKind is what makes one plan differ from another.
type planKind struct {
	title, key string
	top, left  gridRoom
	draw       func(v *planView, s planSheet)
	after      func(v *planView) // once the labels have their places; may be nil
	tables     []*table.Table
}

// planPages makes the sheets of a plan.
func planPages(c *page.Context, sheets []planSheet, k planKind) (pages []*page.Page) {
	for i, s := range sheets {
		name := k.title
		if len(sheets) > 1 {
			name += fmt.Sprintf(", part %d of %d", i+1, len(sheets))
		}
		p := c.NewPage(name, s.scale.Name, k.key)
		p.Draw = func(p *page.Page) {
			v := newPlanView(p, s)
			v.gridTop, v.gridLeft = k.top, k.left
			k.draw(v, s)
			v.matchLines(s, pages, i)
			v.placeLabels()
			if k.after != nil {
				k.after(v)
			}
			v.planTables(name, s, k.tables)
		}
		pages = append(pages, p)
	}
	return pages
}

// widestLanes is the most room that the lanes outside the house take, mm.
func widestLanes(c *page.Context, walls []*plan.Wall, runs map[*plan.Wall][]*run) (lanes sheet.MM) {
	for _, w := range walls {
		if w.Exterior {
			lanes = max(lanes, laneRoom(c, runs[w]))
		}
	}
	return lanes
}

// planMargins returns where the grid stands and the room round a plan whose
// hardware takes lanes outside its walls.
func planMargins(c *page.Context, lanes sheet.MM) (top, left gridRoom, m margins) {
	name := page.TextWidth("2W S-202", c.Size.Dim, true) + 8 // a wall's label beside it
	high := c.Size.Dim*1.4 + 3
	top, left = roomForGrid(c, lanes+high), roomForGrid(c, lanes+name)
	return top, left, margins{left: left.total(), top: top.total(), right: lanes + name, bottom: lanes + high + 1}
}

// openMargins is the same for plans without wall labels, whose edge has
// lettering of its own in the nearest millimeters, above and below in high
// ones and beside it in wide ones.
func openMargins(c *page.Context, high, wide sheet.MM) (top, left gridRoom, m margins) {
	top, left = roomForGrid(c, high), roomForGrid(c, wide)
	return top, left, margins{left: left.total(), top: top.total(), right: wide, bottom: high}
}

// drawLevel draws everything of one level that this sheet shows.
func (v *planView) drawLevel(l *plan.Level, walls []*plan.Wall, runs map[*plan.Wall][]*run, holes []holeRow, s planSheet) {
	v.board.Block(v.Block)
	v.drawGrid(gridOf(v.Context), s)
	of := map[*plan.Wall][]*framing.Member{}
	for _, m := range v.House.Members {
		if m.Wall != nil {
			of[m.Wall] = append(of[m.Wall], m)
		}
	}
	for _, w := range walls {
		v.drawWall(w, of[w])
	}
	v.drawAdded(l)
	v.drawBeams(l)
	v.drawStairwells(l)
	v.drawSplices(l)
	for _, w := range walls {
		v.drawRuns(w, runs[w])
	}
	v.namePosts(l)
	v.drawCollectors(l)
	v.drawHoles(holes)
	v.drawJoists(l, walls, s)
	for _, w := range walls {
		v.labelWall(w, laneRoom(v.Context, runs[w]))
		v.labelShear(w)
	}
}

// matchLines draws the edges where a plan goes on on another sheet.
func (v *planView) matchLines(s planSheet, pages []*page.Page, i int) {
	if s.cols*s.rows == 1 {
		return
	}
	c := v.vp.Clip
	edge := func(on bool, a, b sheet.Pt, other int, angle float64) {
		if !on {
			return
		}
		v.Line(sheet.PenGrid, sheet.LayerGrid, a, b)
		v.board.BlockLine(a, b)
		v.Line(sheet.PenCut, sheet.LayerGrid, a, sheet.Pt{X: a.X + (b.X-a.X)*0.06, Y: a.Y + (b.Y-a.Y)*0.06})
		v.Line(sheet.PenCut, sheet.LayerGrid, b, sheet.Pt{X: b.X + (a.X-b.X)*0.06, Y: b.Y + (a.Y-b.Y)*0.06})
		words := "match line, see " + pages[other].Number
		var mids []sheet.Pt
		for _, t := range []sheet.MM{0.5, 0.3, 0.7, 0.2, 0.8, 0.4, 0.6, 0.1, 0.9} {
			mids = append(mids, sheet.Pt{X: a.X + (b.X-a.X)*t, Y: a.Y + (b.Y-a.Y)*t})
		}
		v.turnedWords(page.Lettered{S: words, Link: pages[other].Number}, angle, 0.8, mids, mids[:3])
	}
	at := func(col, row int) int { return (s.rows-1-row)*s.cols + col }
	tl, tr, bl, br := cornersOf(c)
	edge(s.col > 0, tl, bl, at(max(s.col-1, 0), s.row), 90)
	edge(s.col < s.cols-1, tr, br, at(min(s.col+1, s.cols-1), s.row), 90)
	edge(s.row > 0, bl, br, at(s.col, max(s.row-1, 0)), 0)
	edge(s.row < s.rows-1, tl, tr, at(s.col, min(s.row+1, s.rows-1)), 0)
}

// cornersOf returns the corners of a rectangle: top left and right, bottom left and
// right.
func cornersOf(c sheet.Rect) (tl, tr, bl, br sheet.Pt) {
	return sheet.Pt{X: c.X, Y: c.Y}, sheet.Pt{X: c.X + c.W, Y: c.Y}, sheet.Pt{X: c.X, Y: c.Y + c.H}, sheet.Pt{X: c.X + c.W, Y: c.Y + c.H}
}

// openEdges returns the edges of a part at which the plan goes on on another sheet.
func (s planSheet) openEdges(c sheet.Rect) (out [][2]sheet.Pt) {
	tl, tr, bl, br := cornersOf(c)
	for _, e := range []struct {
		on   bool
		a, b sheet.Pt
	}{{s.col > 0, tl, bl}, {s.col < s.cols-1, tr, br}, {s.row > 0, bl, br}, {s.row < s.rows-1, tl, tr}} {
		if e.on {
			out = append(out, [2]sheet.Pt{e.a, e.b})
		}
	}
	return out
}

// lost tells that something found no room on a sheet.
func lost(p *page.Page, what string) {
	p.Tell(plan.Diagnostic{
		Severity: plan.Warning, Code: "no-room-on-sheet",
		Summary: fmt.Sprintf("no room for %q on sheet %s", what, p.Number),
		Mend:    "take larger paper", Pos: p.PlanPos(),
	})
}
