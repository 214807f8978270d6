package floorplan

import (
	"cmp"
	"fmt"
	"math"
	"slices"
	"strconv"

	"galewright/plan"
	"galewright/plan/framing"
	"galewright/plan/geom"
	"galewright/plan/hardware"
	"galewright/plan/placement"
	"galewright/render/label"
	"galewright/render/page"
	"galewright/render/sheet"
	"galewright/render/table"
)

// drawCollectors draws the collectors of a level as heavy lines with their
// length, and their symbol on them.
func (v *planView) drawCollectors(l *plan.Level) {
	for _, pc := range v.Placement.Pieces {
		j := pc.Joint
		if j.Kind != plan.Collector || v.House.Story(j) != l || len(pc.Path) < 2 {
			continue
		}
		var long float64
		var ends []sheet.Pt
		for i := 1; i < len(pc.Path); i++ {
			a, b := pc.Path[i-1], pc.Path[i]
			long += b.Sub(a).Len()
			if p, q, ok := v.stroke(sheet.PenHardware, sheet.LayerHardware, a.Flat(), b.Flat()); ok {
				v.board.BlockLine(p, q)
				ends = append(ends, p, q)
			}
		}
		if len(ends) == 0 {
			continue
		}
		// a quarter along: the middle is where shear walls end and holes are
		last := ends[len(ends)-1]
		mid := sheet.Pt{X: ends[0].X*0.75 + last.X*0.25, Y: ends[0].Y*0.75 + last.Y*0.25}
		dir := v.dir(pc.Path[len(pc.Path)-1].Sub(pc.Path[0]).Flat().Unit())
		v.Use(pc.Item.Kind.Symbol, mid, math.Atan2(-float64(dir.Y), float64(dir.X))*180/math.Pi, 0.8, v.PieceMark(pc, false))
		b := sheet.Rect{X: mid.X - 2.4, Y: mid.Y - 2.4, W: 4.8, H: 4.8}
		v.Box("piece", pc.Tag, b)
		v.board.Block(b)
		v.showPiece(pc.Item)
		v.labelCollector(pc, mid, long)
	}
}

// labelCollector queues the legend circle and the length of a collector.
func (v *planView) labelCollector(pc *placement.Piece, mid sheet.Pt, long float64) {
	rad, z := v.LegendRadius(), v.Size.Note
	text := "collector " + v.Length(long)
	w := 2*rad + 1 + page.TextWidth(text, z, false)
	l := label.Label{Name: text, W: w, H: 2 * rad, Anchors: []sheet.Pt{mid}}
	for _, d := range []sheet.MM{1, 4, 8, 12} {
		l.Near = append(l.Near, aroundPoint(mid, w, 2*rad, 2+d)...)
	}
	n := v.Legend(pc)
	v.later(l, func(r sheet.Rect) {
		v.LegendCircle(n, sheet.Pt{X: r.X + rad, Y: r.Y + rad}, "legend of "+pc.Tag, nil)
		b := v.Text(page.Lettered{S: text, At: sheet.Pt{X: r.X + 2*rad + 1, Y: r.Y + rad + z/2}, Role: "label"})
		v.Box("label", text+" of "+pc.Tag, b)
	})
}

// drawSplices marks the breaks of the top plates on the walls below them.
func (v *planView) drawSplices(l *plan.Level) {
	for _, j := range v.House.Joints {
		if j.Kind != plan.PlateSplice || j.Wall == nil || v.House.Story(j) != l {
			continue
		}
		f := j.Wall.Frame()
		at := f.At(j.Station, j.Wall.Depth()/2, 0).Flat()
		if !v.sees(at) {
			continue
		}
		d := v.dir(f.D)
		v.Use("sym-splice", v.pt(at), math.Atan2(-float64(d.Y), float64(d.X))*180/math.Pi, 0.9, nil)
	}
}

// legendItems returns the items this sheet shows in order of their numbers.
func (v *planView) legendItems() []*hardware.Item {
	order := slices.Clone(v.order)
	slices.SortFunc(order, func(a, b *hardware.Item) int {
		return cmp.Compare(v.Schedule.Number(a.Mark), v.Schedule.Number(b.Mark))
	})
	return order
}

// sheetLegend is the table of the numbers and symbols that a plan shows.
func (v *planView) sheetLegend() *table.Table {
	t := &table.Table{Title: "Hardware on this sheet", Cols: []table.Column{{Head: "No.", Align: sheet.Middle}, {Head: "Symbol", Align: sheet.Middle}, {Head: "Mark"}, {Head: "Here", Align: sheet.Right}}}
	for _, it := range v.legendItems() {
		t.Rows = append(t.Rows, table.Row{Cells: []table.Cell{{Legend: v.Schedule.Number(it.Mark)}, {Symbol: it.Kind.Symbol}, {S: it.Mark}, {S: fmt.Sprint(v.shown[it])}}})
	}
	return t
}

// drawJoists draws the way the joists run, in the middle of the largest open
// space, with their size and spacing.
func (v *planView) drawJoists(level *plan.Level, walls []*plan.Wall, s planSheet) {
	if level.Joists.Depth == 0 {
		return
	}
	middle, room := v.openSpace(walls, stairwells(v.Context, level), v.dashed(level), s)
	if room < 30 {
		return
	}
	run := geom.Vec2{X: 1}
	if level.JoistRun == plan.AxisY {
		run = geom.Vec2{Y: 1}
	}
	at := v.pt(middle)
	way := v.dir(run)
	long := min(v.vp.Len(room)-4*lanePitch(v.Context), 35)
	if long < 8 {
		return
	}
	tail, head := sheet.Pt{X: at.X - way.X*long, Y: at.Y - way.Y*long}, sheet.Pt{X: at.X + way.X*long, Y: at.Y + way.Y*long}
	v.Line(sheet.PenMember, sheet.LayerNote, tail, head)
	v.arrowHead(tail, sheet.Pt{X: -way.X, Y: -way.Y})
	v.arrowHead(head, way)
	v.board.BlockLine(tail, head)
	words := fmt.Sprintf("%s joists at %s o.c. below", level.Joists.Text, v.Spacing(level.JoistSpace))
	if w := page.TextWidth(words, v.Size.Note, false); w > 2*long && uv(run, v.turned).Mainly(1) {
		v.words(words, page.Lettered{Role: "label"}, []sheet.Pt{
			{X: at.X + w/2 + 2, Y: at.Y},
			{X: at.X - w/2 - 2, Y: at.Y},
			{X: at.X + w/2 + 2, Y: at.Y + long/2},
			{X: at.X - w/2 - 2, Y: at.Y + long/2},
			{X: at.X, Y: at.Y + long + 3},
		}, []sheet.Pt{at})
		return
	}
	var mids []sheet.Pt
	for _, t := range []sheet.MM{0, 0.5, -0.5, 1, -1, 1.5, -1.5} {
		mids = append(mids, sheet.Pt{X: at.X + way.X*long*t, Y: at.Y + way.Y*long*t})
	}
	v.turnedWords(page.Lettered{S: words}, v.angleOn(run), 0.6, mids, []sheet.Pt{at})
}

// arrowHead draws a filled head at p pointing along k.
func (v *planView) arrowHead(p, k sheet.Pt) {
	n := sheet.Pt{X: -k.Y, Y: k.X}
	v.Polygon(sheet.Style{Fill: sheet.Black, Layer: sheet.LayerNote}, p,
		sheet.Pt{X: p.X - 3*k.X + n.X, Y: p.Y - 3*k.Y + n.Y}, sheet.Pt{X: p.X - 3*k.X - n.X, Y: p.Y - 3*k.Y - n.Y})
}

// openSpace returns the point of the sheet's range, on a raster of 2 ft, that
// is farthest from every wall, floor opening and drawn beam or joist but inside the walls, and how far
// that is, in.
func (v *planView) openSpace(walls []*plan.Wall, wells []*plan.FloorOpening, bars []*framing.Member, s planSheet) (best geom.Vec2, room float64) {
	const step = 24.0
	for a := s.u0 + step; a < s.u1; a += step {
		for b := s.v0 + step; b < s.v1; b += step {
			p := geom.Vec2{X: a, Y: b}
			if v.turned {
				p = geom.Vec2{X: -b, Y: a}
			}
			d := min(a-s.u0, s.u1-a, b-s.v0, s.v1-b)
			for _, w := range walls {
				d = min(d, offSegment(p, w.From, w.To))
			}
			for _, x := range wells {
				d = min(d, offOpening(p, x))
			}
			for _, m := range bars {
				d = min(d, offSegment(p, m.A.Flat(), m.B.Flat()))
			}
			if d > room+1e-6 && insideWalls(p, walls) {
				best, room = p, d
			}
		}
	}
	return best, room
}

// offOpening is how far a point is from an opening in a floor; 0 within it.
func offOpening(p geom.Vec2, x *plan.FloorOpening) float64 {
	return math.Hypot(max(0, x.Lo.X-p.X, p.X-x.Hi.X), max(0, x.Lo.Y-p.Y, p.Y-x.Hi.Y))
}

// insideWalls tells whether p is inside the outline of the exterior walls:
// a ray to the east crosses an odd number of them.
func insideWalls(p geom.Vec2, walls []*plan.Wall) bool {
	in := false
	for _, w := range walls {
		a, b := w.From, w.To
		if w.Exterior && (a.Y > p.Y) != (b.Y > p.Y) && p.X < a.X+(p.Y-a.Y)/(b.Y-a.Y)*(b.X-a.X) {
			in = !in
		}
	}
	return in
}

func offSegment(p, a, b geom.Vec2) float64 {
	d := b.Sub(a)
	t := max(0, min(1, p.Sub(a).Dot(d)/d.Dot(d)))
	return p.Sub(a.Add(d.Mul(t))).Len()
}

// trimFloat prints a number without needless zeros.
func trimFloat(x float64) string { return strconv.FormatFloat(x, 'f', -1, 64) }
