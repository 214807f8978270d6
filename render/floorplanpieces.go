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

// run is all pieces of one mark on one side of one wall: they stand in one
// lane beside it, each at its station.
type run struct {
	item    *hardware.Item
	pieces  []*placement.Piece
	outside bool
	lane    int
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

// runsOf groups the pieces of a level by wall, side and mark.
func (c *context) runsOf(l *plan.Level) map[*plan.Wall][]*run {
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
		c.setLanes(out[w])
	}
	return out
}

// setLanes puts long runs next to the wall, and lets runs share a lane where
// they do not meet.
func (c *context) setLanes(runs []*run) {
	slices.SortStableFunc(runs, func(a, b *run) int {
		return cmp.Or(cmp.Compare(len(b.pieces), len(a.pieces)), cmp.Compare(c.Schedule.Number(a.item.Mark), c.Schedule.Number(b.item.Mark)))
	})
	type span struct{ from, to float64 }
	taken := map[bool][][]span{}
	for _, r := range runs {
		s := span{r.pieces[0].Station, r.pieces[0].Station}
		for _, p := range r.pieces {
			s.from, s.to = min(s.from, p.Station), max(s.to, p.Station)
		}
		const room = 48 // for the legend circle, in
		s.from -= room
		lanes := taken[r.outside]
		r.lane = len(lanes)
		for i, lane := range lanes {
			if !slices.ContainsFunc(lane, func(o span) bool { return s.from < o.to+room/2 && o.from < s.to+room/2 }) {
				r.lane = i
				break
			}
		}
		if r.lane == len(lanes) {
			lanes = append(lanes, nil)
		}
		lanes[r.lane] = append(lanes[r.lane], s)
		taken[r.outside] = lanes
	}
}

// laneRoom returns the room that a wall's lanes take on its outside, mm.
func (c *context) laneRoom(runs []*run) (room sheet.MM) {
	for _, r := range runs {
		if r.outside {
			room = max(room, sheet.MM(r.lane+1)*c.lanePitch()+1)
		}
	}
	return room
}

// drawRun draws a run's symbols in its lane and queues its legend circle.
func (v *planView) drawRun(w *plan.Wall, r *run) {
	f := w.Frame()
	pieces := slices.Clone(r.pieces)
	slices.SortStableFunc(pieces, func(a, b *placement.Piece) int { return cmp.Compare(a.Station, b.Station) })
	sym, ok := symbols.For(r.item.Kind.Symbol)
	if !ok {
		return
	}
	size := v.symbolSize()
	scale := float64(size / max(sym.Box.W, sym.Box.H))
	along, off := v.laneLine(f, w.Depth(), r)
	var at []sheet.Pt
	origin := v.pt(f.Origin).Add(off)
	for _, free := range v.freeSpans(w, r) {
		var seen []*placement.Piece
		var want []sheet.MM
		for _, pc := range pieces {
			if free.holds(pc.Station) && v.sees(f.At(pc.Station, 0, 0).Flat()) {
				seen, want = append(seen, pc), append(want, v.vp.Len(pc.Station))
			}
		}
		half := size / 2
		spots, _ := label.Row(want, v.pieceGap(sym, scale, along), v.vp.Len(free.lo)+half, v.vp.Len(free.hi)-half)
		for i, s := range spots {
			p := origin.Add(sheet.Pt{X: along.X * s, Y: along.Y * s})
			v.drawPiece(sym, p, scale, seen[i])
			at = append(at, p)
		}
	}
	if len(at) == 0 {
		return
	}
	v.labelRun(r, at, along)
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

// freeSpan is a length of a lane between walls that stand in its way; from
// and to are the stations it serves, lo and hi where symbols may stand, in.
type freeSpan struct{ from, to, lo, hi float64 }

func (s freeSpan) holds(station float64) bool { return station >= s.from && station < s.to }

// freeSpans parts a lane at the walls that cross it. Pieces inside such a
// wall are drawn at its nearer side.
func (v *planView) freeSpans(w *plan.Wall, r *run) []freeSpan {
	const far = 1e6
	if r.outside && w.Exterior {
		return []freeSpan{{-far, far, -far, far}}
	}
	f := w.Frame()
	_, off := v.laneLine(f, w.Depth(), r)
	in := v.dir(f.In)
	t := float64(off.X*in.X+off.Y*in.Y) / v.vp.Scale.K()
	type span struct{ lo, hi float64 }
	var shut []span
	for _, o := range v.wallsOn(w.Level) {
		if o == w {
			continue
		}
		of := o.Frame()
		s0, s1, t0, t1 := far, -far, far, -far
		for _, p := range wallPoly(of, 0, o.Length(), 0, o.Depth()) {
			s, d := f.Local(p)
			s0, s1, t0, t1 = min(s0, s), max(s1, s), min(t0, d), max(t1, d)
		}
		if t > t0 && t < t1 && s1-s0 < w.Length() {
			shut = append(shut, span{s0, s1})
		}
	}
	slices.SortFunc(shut, func(a, b span) int { return cmp.Compare(a.lo, b.lo) })
	out := []freeSpan{{-far, far, -far, far}}
	for _, s := range shut {
		last := &out[len(out)-1]
		mid := (s.lo + s.hi) / 2
		if s.hi < 24 { // nothing stands before the wall's first corner
			last.from, last.lo = -far, s.hi
			continue
		}
		if s.lo > w.Length()-24 {
			last.hi = s.lo
			break
		}
		last.to, last.hi = mid, s.lo
		out = append(out, freeSpan{mid, far, s.hi, far})
	}
	return out
}

// pieceGap is the room a symbol takes along its lane.
func (v *planView) pieceGap(sym sheet.Symbol, scale float64, along sheet.Pt) sheet.MM {
	if along.X*along.X > along.Y*along.Y {
		return sym.Box.W*sheet.MM(scale) + 0.3
	}
	return sym.Box.H*sheet.MM(scale) + 0.3
}

// laneLine returns the way a lane runs on paper, and how far it is off the
// wall's line.
func (v *planView) laneLine(f geom.Frame, depth float64, r *run) (along, off sheet.Pt) {
	along = v.dir(f.D)
	in := v.dir(f.In)
	d := -(sheet.MM(r.lane)+0.5)*v.lanePitch() - 0.8
	if !r.outside {
		d = v.vp.Len(depth) - d
	}
	return along, sheet.Pt{X: in.X * d, Y: in.Y * d}
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
