package floorplan

import (
	"cmp"
	"slices"

	"galewright/plan"
	"galewright/plan/hardware"
	"galewright/plan/placement"
	"galewright/render/label"
	"galewright/render/page"
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
func symbolSize(c *page.Context) sheet.MM {
	if page.Large(c.Paper) {
		return 4.2
	}
	return 3.2
}

func lanePitch(c *page.Context) sheet.MM { return symbolSize(c) + 0.6 }

// onPlan tells whether a level's plan shows the piece: what is nailed to the
// walls in the level's story. Rafters and ridge are on the roof plan.
func onPlan(c *page.Context, pc *placement.Piece, l *plan.Level) *plan.Wall {
	if pc.Joint.Kind.Shown() != plan.FloorSheet {
		return nil
	}
	if w := page.HomeWall(pc.Joint); w != nil && c.House.Story(pc.Joint) == l {
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
func runsOf(c *page.Context, l *plan.Level, sc planScale) map[*plan.Wall][]*run {
	out := map[*plan.Wall][]*run{}
	for _, pc := range c.Placement.Pieces {
		w := onPlan(c, pc, l)
		if w == nil {
			continue
		}
		outside := pc.Face == plan.Outside || pc.Face != plan.Inside && !w.Exterior
		i := slices.IndexFunc(out[w], func(r *run) bool { return r.item == pc.Item && r.outside == outside })
		if i < 0 {
			out[w] = append(out[w], &run{item: pc.Item, outside: outside})
			i = len(out[w]) - 1
		}
		out[w][i].pieces = append(out[w][i].pieces, pc)
	}
	taken := label.NewBoard(sheet.Rect{X: -1e6, Y: -1e6, W: 2e6, H: 2e6})
	for _, w := range c.WallsOn(l) {
		var on []sheet.Pt
		for _, p := range wallPoly(w.Frame(), 0, w.Length(), 0, w.Depth()) {
			q := uv(p, sc.turned)
			on = append(on, sheet.Pt{X: sheet.MM(q.X * sc.k), Y: sheet.MM(-q.Y * sc.k)})
		}
		taken.Block(page.Bounds(on))
	}
	for _, w := range c.House.Plan.Walls {
		for _, r := range out[w] {
			slices.SortStableFunc(r.pieces, func(a, b *placement.Piece) int { return cmp.Compare(a.Station, b.Station) })
		}
		packRuns(c, w, out[w], sc, taken)
	}
	return out
}

// drawRuns draws the symbols of a wall's runs in their lanes and queues their
// legend circles.
func (v *planView) drawRuns(w *plan.Wall, runs []*run) {
	along := v.dir(w.Frame().D)
	drawn := map[laneKey][]laneSymbol{}
	var keys []laneKey
	for _, r := range runs {
		for _, s := range v.drawRun(w, r) {
			k := laneKey{r.outside, s.lane}
			if drawn[k] == nil {
				keys = append(keys, k)
			}
			drawn[k] = append(drawn[k], s)
		}
	}
	for _, list := range laneStretches(keys, drawn, along) {
		g := &circled{along: along, name: "legend of " + list[0].item.Mark, number: v.Schedule.Number(list[0].item.Mark)}
		for _, s := range list {
			g.at = append(g.at, s.at)
		}
		v.circleFor(g)
	}
}

// laneKey is one lane beside a wall, laneSymbol a symbol in it.
type laneKey struct {
	outside bool
	lane    int
}

type laneSymbol struct {
	item *hardware.Item
	at   sheet.Pt
	lane int
}

// laneStretches parts the symbols beside a wall into those that a circle
// speaks for. A mark that shares its symbol with another on that side gets
// one in each lane and each time the other comes between.
func laneStretches(keys []laneKey, drawn map[laneKey][]laneSymbol, along sheet.Pt) (out [][]laneSymbol) {
	alone := aloneBeside(keys, drawn)
	whole := map[laneMark]int{} // where all of a mark that is alone stand
	for _, k := range keys {
		list := drawn[k]
		slices.SortStableFunc(list, func(a, b laneSymbol) int { return cmp.Compare(farAlong(a.at, along), farAlong(b.at, along)) })
		for _, idx := range stretches(len(list), func(i int) string { return list[i].item.Mark }, func(i int) string { return list[i].item.Kind.Symbol }) {
			it := list[idx[0]].item
			n, again := whole[laneMark{k.outside, it.Mark}]
			if !again || !alone[laneMark{k.outside, it.Kind.Symbol}] {
				n = len(out)
				whole[laneMark{k.outside, it.Mark}], out = n, append(out, nil)
			}
			for _, i := range idx {
				out[n] = append(out[n], list[i])
			}
		}
	}
	return out
}

// laneMark is a mark, or a symbol, on one side of a wall.
type laneMark struct {
	outside bool
	name    string
}

// aloneBeside tells for each symbol on each side of a wall whether all that
// have it are of one mark.
func aloneBeside(keys []laneKey, drawn map[laneKey][]laneSymbol) map[laneMark]bool {
	alone, mark := map[laneMark]bool{}, map[laneMark]string{}
	for _, k := range keys {
		for _, s := range drawn[k] {
			id := laneMark{k.outside, s.item.Kind.Symbol}
			if m, ok := mark[id]; !ok {
				mark[id], alone[id] = s.item.Mark, true
			} else if m != s.item.Mark {
				alone[id] = false
			}
		}
	}
	return alone
}

func farAlong(p, along sheet.Pt) sheet.MM { return p.X*along.X + p.Y*along.Y }

// drawRun draws a run's symbols in its lanes.
func (v *planView) drawRun(w *plan.Wall, r *run) (out []laneSymbol) {
	sym, ok := symbols.For(r.item.Kind.Symbol)
	if !ok {
		return nil
	}
	f := w.Frame()
	scale := float64(symbolSize(v.Context) / max(sym.Box.W, sym.Box.H))
	for _, s := range r.spots {
		pc := r.pieces[s.first]
		if !v.sees(f.At(pc.Station, 0, 0).Flat()) {
			continue
		}
		p := v.vp.Origin.Add(laneAt(v.Context, w, r.outside, s.lane, s.at, planScale{v.vp.Scale.K(), v.turned}))
		v.drawPiece(sym, p, scale, pc, false)
		v.shown[r.item] += s.count - 1
		out = append(out, laneSymbol{r.item, p, s.lane})
	}
	return out
}

// drawPiece draws a piece's symbol upright at p and claims its place.
func (v *planView) drawPiece(sym sheet.Symbol, p sheet.Pt, scale float64, pc *placement.Piece, home bool) {
	v.Use(sym.ID, p, 0, scale, v.PieceMark(pc, home))
	b := symbolBox(sym, p, scale)
	v.Box("piece", pc.Tag, b)
	v.board.Block(b)
	v.showPiece(pc.Item)
}

// symbolBox is what a symbol takes that stands upright at p.
func symbolBox(sym sheet.Symbol, p sheet.Pt, scale float64) sheet.Rect {
	k := sheet.MM(scale)
	return sheet.Rect{X: p.X + sym.Box.X*k, Y: p.Y + sym.Box.Y*k, W: sym.Box.W * k, H: sym.Box.H * k}
}
