package floorplan

import (
	"math"

	"galewright/plan/geom"
	"galewright/plan/hardware"
	"galewright/render/label"
	"galewright/render/page"
	"galewright/render/sheet"
)

// planView is a plan on one sheet, seen from above, while it is drawn.
type planView struct {
	*page.Page
	vp                *page.Viewport
	turned            bool // north to the right, where that gives a larger scale
	board             *label.Board
	labels            []planLabel
	shown             map[*hardware.Item]int // pieces drawn on this sheet
	order             []*hardware.Item
	circles           []*circled
	gridTop, gridLeft gridRoom
}

// planLabel is lettering that waits for its place.
type planLabel struct {
	label.Label
	set func(r sheet.Rect)
}

// margins is the room kept round a plan, mm.
type margins struct{ left, right, top, bottom sheet.MM }

// planSheet is one sheet of a plan: which part of the house it shows, where.
type planSheet struct {
	scale          page.Scale
	turned         bool
	at             sheet.Pt // lower left corner of the range on paper
	u0, u1, v0, v1 float64  // range shown
	col, row       int      // of the part
	cols, rows     int
	side           sheet.MM // kept free at the right for tables
}

// uv turns a place on plan into the drawing's own axes.
func uv(p geom.Vec2, turned bool) geom.Vec2 {
	if turned {
		return geom.Vec2{X: p.Y, Y: -p.X}
	}
	return p
}

// spanUV returns the extent of a rectangle on plan in the drawing's axes.
func spanUV(lo, hi geom.Vec2, turned bool) (u0, u1, v0, v1 float64) {
	a, b := uv(lo, turned), uv(hi, turned)
	return math.Min(a.X, b.X), math.Max(a.X, b.X), math.Min(a.Y, b.Y), math.Max(a.Y, b.Y)
}

// leastPlanScale is the smallest scale of a level's plan before it goes over
// more sheets, inches of house to one of paper.
func leastPlanScale(c *page.Context) float64 {
	switch {
	case c.Metric() && page.Large(c.Paper):
		return 100
	case c.Metric():
		return 50
	case page.Large(c.Paper):
		return 96
	}
	return 64
}

// leastOpenScale is the same for plans of the roof and the foundation, which
// are less crowded.
func leastOpenScale(c *page.Context) float64 {
	if c.Metric() {
		return 100
	}
	return 96
}

// layPlan chooses scale, turn and parts for a plan of the extent lo to hi.
// A column is kept free at the right for tables, unless the plan is long and
// low and goes larger without; then they stand below it. A plan that would be
// smaller than 1 to least goes over more sheets.
func layPlan(c *page.Context, lo, hi geom.Vec2, m margins, least float64) []planSheet {
	side := sideColumn(c)
	beside := layPlanBeside(c, lo, hi, m, side, least)
	if side == 0 {
		return beside
	}
	m.bottom += tablesBelow
	below := layPlanBeside(c, lo, hi, m, 0, least)
	if len(below) > len(beside) || below[0].scale.Ratio >= beside[0].scale.Ratio {
		return beside
	}
	return below
}

// tablesBelow is the height kept for tables under a long plan, mm.
const tablesBelow sheet.MM = 130

// layPlanBeside lays a plan out with a column of a width at the right.
func layPlanBeside(c *page.Context, lo, hi geom.Vec2, m margins, side sheet.MM, least float64) []planSheet {
	area := c.DrawingArea()
	_, th := c.ViewTitleSize("x", c.Scales()[0])
	W := area.W - side - m.left - m.right
	H := area.H - m.top - m.bottom - th - 2
	best := planSheet{cols: 1, rows: 1, side: side}
	for _, turned := range []bool{false, true} {
		u0, u1, v0, v1 := spanUV(lo, hi, turned)
		s, ok := page.Fit(c.Scales(), u1-u0, v1-v0, W, H)
		if ok && (best.scale.Ratio == 0 || s.Ratio < best.scale.Ratio) {
			best.scale, best.turned = s, turned
		}
	}
	if best.scale.Ratio == 0 || best.scale.Ratio > least {
		best = tilePlan(c, lo, hi, W, H, least)
		best.side = side
	}
	u0, u1, v0, v1 := spanUV(lo, hi, best.turned)
	k := best.scale.K()
	var out []planSheet
	for row := best.rows - 1; row >= 0; row-- {
		for col := range best.cols {
			s := best
			s.col, s.row = col, row
			s.u0, s.u1 = u0+(u1-u0)*float64(col)/float64(s.cols), u0+(u1-u0)*float64(col+1)/float64(s.cols)
			s.v0, s.v1 = v0+(v1-v0)*float64(row)/float64(s.rows), v0+(v1-v0)*float64(row+1)/float64(s.rows)
			w, h := sheet.MM((s.u1-s.u0)*k), sheet.MM((s.v1-s.v0)*k)
			s.at = sheet.Pt{X: area.X + m.left + max(0, (W-w)/2), Y: area.Y + m.top + max(0, (H-h)/2) + h}
			out = append(out, s)
		}
	}
	return out
}

// tilePlan parts a plan that is too long for one sheet: the fewest sheets at a
// scale that is good to read, and the largest that takes no more.
func tilePlan(c *page.Context, lo, hi geom.Vec2, W, H sheet.MM, least float64) planSheet {
	best := planSheet{}
	for _, s := range c.Scales() {
		if s.Ratio > least {
			continue
		}
		for _, turned := range []bool{false, true} {
			u0, u1, v0, v1 := spanUV(lo, hi, turned)
			nx, ny := int(math.Ceil((u1-u0)*s.K()/float64(W)-1e-9)), int(math.Ceil((v1-v0)*s.K()/float64(H)-1e-9))
			one := planSheet{scale: s, turned: turned, cols: max(nx, 1), rows: max(ny, 1)}
			switch n, have := one.cols*one.rows, best.cols*best.rows; {
			case have == 0, n < have, n == have && s.Ratio < best.scale.Ratio:
				best = one
			}
		}
	}
	return best
}

// newPlanView opens a sheet of a plan for drawing.
func newPlanView(p *page.Page, s planSheet) *planView {
	v := &planView{Page: p, turned: s.turned, shown: map[*hardware.Item]int{}, board: label.NewBoard(p.Area)}
	v.vp = page.NewViewport(s.scale, s.at, s.u0, s.u1, s.v0, s.v1)
	// beyond the house's own edge the sheet shows what sticks out; toward
	// the next part it ends at the match line
	const past = 240
	if s.col == 0 {
		v.vp.U0 -= past
	}
	if s.col == s.cols-1 {
		v.vp.U1 += past
	}
	if s.row == 0 {
		v.vp.V0 -= past
	}
	if s.row == s.rows-1 {
		v.vp.V1 += past
	}
	w, h := p.ViewTitleSize(p.Name, s.scale)
	v.board.BlockText(sheet.Rect{X: p.Area.X, Y: p.Area.Y + p.Area.H - h, W: w + 6, H: h})
	return v
}

// pt returns the place on paper of a point on plan.
func (v *planView) pt(p geom.Vec2) sheet.Pt {
	q := uv(p, v.turned)
	return v.vp.Pt(q.X, q.Y)
}

// sees tells whether a point on plan is on this sheet; one on a match line is
// on one side of it only.
func (v *planView) sees(p geom.Vec2) bool {
	q := uv(p, v.turned)
	return q.X >= v.vp.U0-geom.Eps && q.X < v.vp.U1-geom.Eps && q.Y >= v.vp.V0-geom.Eps && q.Y < v.vp.V1-geom.Eps
}

// dir turns a direction on plan into one on paper, y down.
func (v *planView) dir(d geom.Vec2) sheet.Pt {
	q := uv(d, v.turned)
	return sheet.Pt{X: sheet.MM(q.X), Y: sheet.MM(-q.Y)}
}

// shape draws a convex polygon of the plan, cut at the sheet's range, and
// returns its box on paper.
func (v *planView) shape(s sheet.Style, pts ...geom.Vec2) (sheet.Rect, bool) {
	on := v.cut(pts)
	if on == nil {
		return sheet.Rect{}, false
	}
	v.Polygon(s, on...)
	return page.Bounds(on), true
}

// cut maps a convex polygon of the plan onto paper, cut at the sheet's range;
// nil when nothing of it is left.
func (v *planView) cut(pts []geom.Vec2) []sheet.Pt {
	q := make([]geom.Vec2, len(pts))
	for i, p := range pts {
		q[i] = uv(p, v.turned)
	}
	if on := v.vp.Polygon(q); len(on) > 2 {
		return on
	}
	return nil
}

// stroke draws a line of the plan, cut at the sheet's range.
func (v *planView) stroke(pen sheet.Pen, layer sheet.Layer, a, b geom.Vec2) (p, q sheet.Pt, ok bool) {
	p, q, ok = v.vp.Segment(uv(a, v.turned), uv(b, v.turned))
	if ok {
		v.Line(pen, layer, p, q)
	}
	return p, q, ok
}

// note counts a piece that this sheet shows.
func (v *planView) showPiece(it *hardware.Item) {
	if v.shown[it] == 0 {
		v.order = append(v.order, it)
	}
	v.shown[it]++
}

// later queues a label.
func (v *planView) later(l label.Label, set func(sheet.Rect)) {
	v.labels = append(v.labels, planLabel{l, set})
}

// words queues a line of text near points.
func (v *planView) words(s string, t page.Lettered, near, anchors []sheet.Pt) {
	if t.Cap == 0 {
		t.Cap = v.Size.Note
	}
	t.S, t.Anchor = s, sheet.Middle
	w, h := page.TextWidth(s, t.Cap, t.Bold)+0.8, t.Cap*1.4
	l := label.Label{Name: s, W: w, H: h, Near: near, Anchors: anchors}
	v.later(l, func(r sheet.Rect) {
		c := r.Center()
		t.At = sheet.Pt{X: c.X, Y: c.Y + t.Cap*0.42}
		v.Rect(sheet.Style{Fill: sheet.White, Layer: sheet.LayerLabel}, r)
		v.Text(t)
		v.Box("label", s, r)
	})
}

// placeLabels gives every queued label its place. What finds none is left
// out and told, never printed upon something else.
func (v *planView) placeLabels() {
	list := make([]label.Label, len(v.labels))
	for i, l := range v.labels {
		list[i] = l.Label
	}
	for i, pl := range v.board.Place(list) {
		if !pl.OK {
			lost(v.Page, list[i].Name)
			continue
		}
		if len(pl.Leader) > 1 {
			v.Polyline(sheet.PenDim, sheet.LayerLabel, pl.Leader...)
		}
		v.labels[i].set(pl.Rect)
	}
	v.moreCircles()
}

// around returns places beside p in the eight directions, d away from it for
// a label of w by h.
func aroundPoint(p sheet.Pt, w, h, d sheet.MM) []sheet.Pt {
	x, y := w/2+d, h/2+d
	return []sheet.Pt{
		{X: p.X + x, Y: p.Y - y},
		{X: p.X - x, Y: p.Y - y},
		{X: p.X + x, Y: p.Y + y},
		{X: p.X - x, Y: p.Y + y},
		{X: p.X, Y: p.Y - y},
		{X: p.X, Y: p.Y + y},
		{X: p.X + x, Y: p.Y},
		{X: p.X - x, Y: p.Y},
	}
}
