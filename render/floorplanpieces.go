package render

import (
	"cmp"
	"slices"

	"galewright/plan"
	"galewright/plan/framing"
	"galewright/plan/geom"
	"galewright/plan/hardware"
	"galewright/plan/placement"
	"galewright/render/label"
	"galewright/render/sheet"
	"galewright/symbols"
)

// run is all pieces of one mark on one side of one wall: they stand in lanes
// beside it, each at its station.
type run struct {
	item    *hardware.Item
	pieces  []*placement.Piece // by station
	outside bool
	lane    int // its own lane
	spots   []laneSpot
	gap     sheet.MM // what a symbol takes along the lane
}

// lanePitch is from lane to lane, symbolSize the larger side of a symbol in
// one, mm. Symbols read at 3 mm; large paper has room for more.
func (c *context) symbolSize() sheet.MM {
	if large(c.Paper) {
		return 4.2
	}
	return 3.2
}

func (c *context) lanePitch() sheet.MM { return c.symbolSize() + 0.6 }

// onPlan tells whether a level's plan shows the piece: what is nailed to the
// walls that stand on the level. Rafters and ridge are on the roof plan.
func onPlan(pc *placement.Piece, l *plan.Level) *plan.Wall {
	switch pc.Joint.Kind {
	case framing.RafterPlate, framing.RafterRidge, framing.Collector:
		return nil
	}
	if w := homeWall(pc.Joint); w != nil && w.Level == l {
		return w
	}
	return nil
}

// planScale is what packing lanes must know of a plan's scale.
type planScale struct {
	k      float64 // mm of paper an inch of house
	turned bool
}

// runsOf groups the pieces of a level by wall, side and mark, and gives each
// run its lanes at a scale.
func (c *context) runsOf(l *plan.Level, sc planScale) map[*plan.Wall][]*run {
	out := map[*plan.Wall][]*run{}
	for _, pc := range c.Placement.Pieces {
		w := onPlan(pc, l)
		if w == nil {
			continue
		}
		outside := pc.Face == "outside" || pc.Face != "inside" && !w.Exterior
		i := slices.IndexFunc(out[w], func(r *run) bool { return r.item == pc.Item && r.outside == outside })
		if i < 0 {
			out[w] = append(out[w], &run{item: pc.Item, outside: outside})
			i = len(out[w]) - 1
		}
		out[w][i].pieces = append(out[w][i].pieces, pc)
	}
	for _, w := range c.House.Plan.Walls {
		for _, r := range out[w] {
			slices.SortStableFunc(r.pieces, func(a, b *placement.Piece) int { return cmp.Compare(a.Station, b.Station) })
		}
		c.packRuns(w, out[w], sc)
	}
	return out
}

// drawRun draws a run's symbols in its lanes and queues its legend circle.
func (v *planView) drawRun(w *plan.Wall, r *run) {
	sym, ok := symbols.For(r.item.Kind.Symbol)
	if !ok {
		return
	}
	f := w.Frame()
	scale := float64(v.symbolSize() / max(sym.Box.W, sym.Box.H))
	along := v.dir(f.D)
	var at []sheet.Pt
	for _, s := range r.spots {
		pc := r.pieces[s.first]
		if !v.sees(f.At(pc.Station, 0, 0).Flat()) {
			continue
		}
		p := v.pt(f.Origin).Add(v.laneOffset(f, w.Depth(), r, s.lane)).Add(sheet.Pt{X: along.X * s.at, Y: along.Y * s.at})
		v.drawPiece(sym, p, scale, pc)
		v.shown[r.item] += s.count - 1
		at = append(at, p)
	}
	if len(at) > 0 {
		v.labelRun(r, at, along)
	}
}

// drawPiece draws a piece's symbol upright at p and claims its place.
func (v *planView) drawPiece(sym sheet.Symbol, p sheet.Pt, scale float64, pc *placement.Piece) {
	k := sheet.MM(scale)
	v.use(sym.ID, p, 0, scale, v.pieceMark(pc, false))
	b := sheet.Rect{X: p.X + sym.Box.X*k, Y: p.Y + sym.Box.Y*k, W: sym.Box.W * k, H: sym.Box.H * k}
	v.box("piece", pc.Tag, b)
	v.board.Block(b)
	v.showPiece(pc.Item)
}

// laneOffset returns how far the i-th lane on a run's side is off its wall's
// line, on paper.
func (v *planView) laneOffset(f geom.Frame, depth float64, r *run, i int) sheet.Pt {
	in := v.dir(f.In)
	d := -(sheet.MM(i)+0.5)*v.lanePitch() - 0.8
	if !r.outside {
		d = v.vp.Len(depth) - d
	}
	return sheet.Pt{X: in.X * d, Y: in.Y * d}
}

// labelRun queues the circle with a run's legend number: before its first
// symbol, after its last, in its gaps.
func (v *planView) labelRun(r *run, at []sheet.Pt, along sheet.Pt) {
	rad := v.legendRadius()
	d := rad + v.symbolSize()/2 + 0.6
	first, last := at[0], at[len(at)-1]
	l := label.Label{Name: "legend " + r.item.Mark, W: 2 * rad, H: 2 * rad, Anchors: []sheet.Pt{first, last, at[len(at)/2]}}
	for _, more := range []sheet.MM{0, 2, 4, 7} {
		l.Near = append(l.Near,
			sheet.Pt{X: first.X - along.X*(d+more), Y: first.Y - along.Y*(d+more)},
			sheet.Pt{X: last.X + along.X*(d+more), Y: last.Y + along.Y*(d+more)})
	}
	for i := 1; i < len(at); i++ {
		l.Near = append(l.Near, sheet.Pt{X: (at[i].X + at[i-1].X) / 2, Y: (at[i].Y + at[i-1].Y) / 2})
	}
	n := v.Schedule.Number(r.item.Mark)
	v.later(l, func(b sheet.Rect) { v.legendCircle(n, b.Centre(), "legend of "+r.item.Mark, nil) })
}
