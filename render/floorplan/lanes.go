package floorplan

import (
	"cmp"
	"math"
	"slices"

	"galewright/plan"
	"galewright/plan/placement"
	"galewright/render/label"
	"galewright/render/page"
	"galewright/render/sheet"
	"galewright/symbols"
)

// laneSpot is where a symbol stands: along the wall, mm of paper from the
// wall's start, and in which lane beside it.
type laneSpot struct {
	at           sheet.MM
	lane         int
	first, count int // the pieces it stands for
	set          bool
}

// laneSlack is how far a symbol may stand off its place along the wall before
// it goes to the next lane, mm.
const laneSlack sheet.MM = 1.2

// laneSide is what stands in the lanes on one side of one wall: for each
// lane the lengths taken, mm.
type laneSide struct{ taken [][][2]sheet.MM }

// place finds the nearest free place to at in a lane, for a symbol that takes
// gap; it does not go back, nor farther on than the slack.
func (s *laneSide) place(lane int, at, gap sheet.MM) (sheet.MM, bool) {
	if lane >= len(s.taken) {
		return at, true
	}
	want := at
	for range s.taken[lane] {
		i := slices.IndexFunc(s.taken[lane], func(t [2]sheet.MM) bool { return t[0] < at+gap/2-1e-9 && t[1] > at-gap/2+1e-9 })
		if i < 0 {
			return at, true
		}
		at = s.taken[lane][i][1] + gap/2
		if at > want+laneSlack {
			return 0, false
		}
	}
	i := slices.IndexFunc(s.taken[lane], func(t [2]sheet.MM) bool { return t[0] < at+gap/2-1e-9 && t[1] > at-gap/2+1e-9 })
	return at, i < 0
}

func (s *laneSide) take(lane int, lo, hi sheet.MM) {
	for lane >= len(s.taken) {
		s.taken = append(s.taken, nil)
	}
	s.taken[lane] = append(s.taken[lane], [2]sheet.MM{lo, hi})
}

// packRuns gives every piece of a wall's runs its spot. Each run has a lane
// of its own, long runs next to the wall; runs that do not meet share one.
// Pieces that crowd in theirs go to lanes farther out.
// Nothing is set upon what taken holds of other walls.
func packRuns(c *page.Context, w *plan.Wall, runs []*run, sc planScale, taken *label.Board) {
	slices.SortStableFunc(runs, func(a, b *run) int {
		return cmp.Or(cmp.Compare(len(b.pieces), len(a.pieces)), cmp.Compare(c.Schedule.Number(a.item.Mark), c.Schedule.Number(b.item.Mark)))
	})
	p := packing{c, w, sc, taken, map[bool]*laneSide{true: {}, false: {}}}
	for i, r := range runs {
		wantSpots(c, w, r, sc)
		r.lane = ownLane(c, r, runs[:i])
		for k := range r.spots {
			p.set(r, &r.spots[k], r.lane)
		}
	}
	for _, r := range runs {
		for k := range r.spots {
			for lane := r.lane + 1; !r.spots[k].set; lane++ {
				p.set(r, &r.spots[k], lane)
			}
		}
	}
}

// packing is the lanes of one wall while they fill.
type packing struct {
	*page.Context
	wall  *plan.Wall
	scale planScale
	taken *label.Board // by symbols of all walls
	sides map[bool]*laneSide
}

// aside lists how far a symbol may move along its wall, in symbols, where
// another wall's symbols fill the lanes before it.
var aside = []sheet.MM{0, 0.7, -0.7, 1.4, -1.4, 2.1, -2.1}

// mostLanes is how many lanes out a symbol goes to be clear of other walls'.
const mostLanes = 7

// set gives a spot its place in a lane if there is room: at its own place in
// the first two, farther out moved along too.
func (p packing) set(r *run, s *laneSpot, lane int) {
	side := p.sides[r.outside]
	tries := aside
	if lane < r.lane+2 {
		tries = aside[:1]
	}
	sym, _ := symbols.For(r.item.Kind.Symbol)
	scale := float64(symbolSize(p.Context) / max(sym.Box.W, sym.Box.H))
	for _, t := range tries {
		at, ok := side.place(lane, s.at+t*r.gap, r.gap)
		if !ok {
			continue
		}
		box := symbolBox(sym, laneAt(p.Context, p.wall, r.outside, lane, at, p.scale), scale)
		if lane < r.lane+mostLanes && !p.taken.Free(box.Inset(label.Gap+0.01)) {
			continue
		}
		p.taken.Block(box)
		s.at, s.lane, s.set = at, lane, true
		side.take(lane, at-r.gap/2, at+r.gap/2)
		return
	}
}

// laneAt returns where the middle of a symbol stands in a lane, at mm along
// its wall, mm of paper from where the plan's origin falls.
func laneAt(c *page.Context, w *plan.Wall, outside bool, lane int, at sheet.MM, sc planScale) sheet.Pt {
	f := w.Frame()
	o, along, in := uv(f.Origin, sc.turned), uv(f.D, sc.turned), uv(f.In, sc.turned)
	d := -(sheet.MM(lane)+0.5)*lanePitch(c) - 0.8
	if !outside {
		d = sheet.MM(w.Depth()*sc.k) - d
	}
	return sheet.Pt{
		X: sheet.MM(o.X*sc.k) + sheet.MM(along.X)*at + sheet.MM(in.X)*d,
		Y: -sheet.MM(o.Y*sc.k) - sheet.MM(along.Y)*at - sheet.MM(in.Y)*d,
	}
}

// wantSpots sets where each symbol of a run would stand. Pieces of the mark
// at one stud share a symbol.
func wantSpots(c *page.Context, w *plan.Wall, r *run, sc planScale) {
	sym, ok := symbols.For(r.item.Kind.Symbol)
	if !ok {
		return
	}
	r.gap = pieceGap(c, sym, symbolSize(c), w, sc)
	spans := freeSpans(c, w, r, sc)
	for i, pc := range r.pieces {
		if n := len(r.spots) - 1; n >= 0 && pc.Station-r.pieces[r.spots[n].first].Station < sameStud {
			r.spots[n].count++
			continue
		}
		r.spots = append(r.spots, laneSpot{at: spotIn(spans, pc, r.gap/2, sc.k), first: i, count: 1})
	}
}

// sameStud is how far apart the pieces on one stud may be along the wall: its
// thickness, in.
const sameStud = 1.5

// ownLane returns the lowest lane where a run meets none of the others.
func ownLane(c *page.Context, r *run, others []*run) int {
	room := 2*c.LegendRadius() + symbolSize(c) // for the legend circle
	lo, hi := r.extent(room)
	for lane := 0; ; lane++ {
		if !slices.ContainsFunc(others, func(o *run) bool {
			a, b := o.extent(room)
			return o.outside == r.outside && o.lane == lane && lo < b && a < hi
		}) {
			return lane
		}
	}
}

// spotIn returns where a piece would stand, kept out of walls that cross its
// lane by half a symbol.
func spotIn(spans []freeSpan, pc *placement.Piece, half sheet.MM, k float64) sheet.MM {
	at := sheet.MM(pc.Station * k)
	for _, s := range spans {
		if s.holds(pc.Station) {
			lo, hi := sheet.MM(s.lo*k)+half, sheet.MM(s.hi*k)-half
			return max(lo, min(at, max(hi, lo)))
		}
	}
	return at
}

// pieceGap is the room a symbol takes along its lane, mm.
func pieceGap(c *page.Context, sym sheet.Symbol, size sheet.MM, w *plan.Wall, sc planScale) sheet.MM {
	k := size / max(sym.Box.W, sym.Box.H)
	d := uv(w.Frame().D, sc.turned)
	if d.X*d.X > d.Y*d.Y {
		return sym.Box.W*k + 0.3
	}
	return sym.Box.H*k + 0.3
}

// extent returns the length of lane that a run takes, mm from the wall's
// start, with room for its legend circle.
func (r *run) extent(room sheet.MM) (lo, hi sheet.MM) {
	lo, hi = sheet.MM(math.Inf(1)), sheet.MM(math.Inf(-1))
	for _, s := range r.spots {
		lo, hi = min(lo, s.at), max(hi, s.at)
	}
	return lo - room, hi + room/2
}

// laneRoom returns the room that a wall's lanes take on its outside, mm.
func laneRoom(c *page.Context, runs []*run) (room sheet.MM) {
	for _, r := range runs {
		for _, s := range r.spots {
			if r.outside {
				room = max(room, sheet.MM(s.lane+1)*lanePitch(c)+1)
			}
		}
	}
	return room
}

// freeSpan is a length of a lane between walls that stand in its way; from
// and to are the stations it serves, lo and hi where symbols may stand, in.
type freeSpan struct{ from, to, lo, hi float64 }

func (s freeSpan) holds(station float64) bool { return station >= s.from && station < s.to }

// beyond is farther than any wall is long, in.
const beyond = 1e6

// freeSpans parts the lanes beside a wall at the walls that cross them.
// Pieces inside such a wall are drawn at its nearer side. In the corner of two
// walls the one that runs along x has the room; the other's lanes begin
// beyond its first one.
func freeSpans(c *page.Context, w *plan.Wall, r *run, sc planScale) []freeSpan {
	out := []freeSpan{{-beyond, beyond, -beyond, beyond}}
	if r.outside && w.Exterior {
		return out
	}
	inset := 0.0
	if d := w.Frame().D; d.Y*d.Y > d.X*d.X {
		inset = float64(lanePitch(c)+0.8) / sc.k
	}
	for _, s := range crossings(c, w, r.outside) {
		s.lo, s.hi = s.lo-inset, s.hi+inset
		last := &out[len(out)-1]
		switch {
		case s.hi-inset < 24: // nothing stands before the wall's first corner
			last.lo = s.hi
		case s.lo+inset > w.Length()-24:
			last.hi = min(last.hi, s.lo)
		default:
			mid := (s.lo + s.hi) / 2
			last.to, last.hi = mid, s.lo
			out = append(out, freeSpan{mid, beyond, s.hi, beyond})
		}
	}
	return out
}

// crossings lists the stations that other walls take right beside a wall, in
// order.
func crossings(c *page.Context, w *plan.Wall, outside bool) (shut []freeSpan) {
	f := w.Frame()
	t := w.Depth() + 4
	if outside {
		t = -4
	}
	for _, o := range c.WallsOn(w.Level) {
		if o == w {
			continue
		}
		s := freeSpan{lo: beyond, hi: -beyond}
		t0, t1 := beyond, -beyond
		for _, p := range wallPoly(o.Frame(), 0, o.Length(), 0, o.Depth()) {
			x, d := f.Local(p)
			s.lo, s.hi = min(s.lo, x), max(s.hi, x)
			t0, t1 = min(t0, d), max(t1, d)
		}
		if t > t0 && t < t1 && s.hi-s.lo < w.Length() && s.hi > -12 && s.lo < w.Length()+12 {
			shut = append(shut, s)
		}
	}
	slices.SortFunc(shut, func(a, b freeSpan) int { return cmp.Compare(a.lo, b.lo) })
	return shut
}
