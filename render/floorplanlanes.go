package render

import (
	"cmp"
	"math"
	"slices"

	"galewright/plan"
	"galewright/plan/placement"
	"galewright/render/sheet"
	"galewright/symbols"
)

// laneSpot is where a piece of a run stands: along the wall, mm of paper from
// the wall's start, and in which of the run's lanes.
type laneSpot struct {
	at   sheet.MM
	lane int
}

// laneSlack is how far a symbol may stand off its place along the wall before
// it goes to the next lane, mm.
const laneSlack sheet.MM = 1.2

// packRun gives each piece of a run its spot: at its place where the lane is
// free there, a little on where it nearly is, else a lane farther out.
func (c *context) packRun(w *plan.Wall, r *run, sc planScale) {
	sym, ok := symbols.For(r.item.Kind.Symbol)
	if !ok {
		return
	}
	size := c.symbolSize()
	gap := c.pieceGap(sym, size, w, sc)
	spans := c.freeSpans(w, r)
	var ends []sheet.MM
	for _, pc := range r.pieces {
		at := spotIn(spans, pc, gap/2, sc.k)
		lane := slices.IndexFunc(ends, func(end sheet.MM) bool { return end <= at+laneSlack })
		if lane < 0 {
			lane = len(ends)
			ends = append(ends, sheet.MM(math.Inf(-1)))
		}
		at = max(at, ends[lane])
		ends[lane] = at + gap
		r.spots = append(r.spots, laneSpot{at, lane})
	}
	r.lanes = len(ends)
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
func (c *context) pieceGap(sym sheet.Symbol, size sheet.MM, w *plan.Wall, sc planScale) sheet.MM {
	k := size / max(sym.Box.W, sym.Box.H)
	d := uv(w.Frame().D, sc.turned)
	if d.X*d.X > d.Y*d.Y {
		return sym.Box.W*k + 0.3
	}
	return sym.Box.H*k + 0.3
}

// setLanes puts long runs next to the wall, and lets runs share lanes where
// they do not meet.
func (c *context) setLanes(runs []*run) {
	slices.SortStableFunc(runs, func(a, b *run) int {
		return cmp.Or(cmp.Compare(len(b.pieces), len(a.pieces)), cmp.Compare(c.Schedule.Number(a.item.Mark), c.Schedule.Number(b.item.Mark)))
	})
	room := 2*c.legendRadius() + c.symbolSize() // for the legend circle
	for i, r := range runs {
		lo, hi := r.extent(room)
		for r.lane = 0; ; r.lane++ {
			free := true
			for _, o := range runs[:i] {
				a, b := o.extent(room)
				if o.outside == r.outside && o.lane < r.lane+r.lanes && r.lane < o.lane+o.lanes && lo < b && a < hi {
					free = false
				}
			}
			if free {
				break
			}
		}
	}
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
func (c *context) laneRoom(runs []*run) (room sheet.MM) {
	for _, r := range runs {
		if r.outside {
			room = max(room, sheet.MM(r.lane+r.lanes)*c.lanePitch()+1)
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
// Pieces inside such a wall are drawn at its nearer side.
func (c *context) freeSpans(w *plan.Wall, r *run) []freeSpan {
	out := []freeSpan{{-beyond, beyond, -beyond, beyond}}
	if r.outside && w.Exterior {
		return out
	}
	for _, s := range c.crossings(w, r.outside) {
		last := &out[len(out)-1]
		switch {
		case s.hi < 24: // nothing stands before the wall's first corner
			last.lo = s.hi
		case s.lo > w.Length()-24:
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
func (c *context) crossings(w *plan.Wall, outside bool) (shut []freeSpan) {
	f := w.Frame()
	t := w.Depth() + 4
	if outside {
		t = -4
	}
	for _, o := range c.wallsOn(w.Level) {
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
		if t > t0 && t < t1 && s.hi-s.lo < w.Length() && s.hi > 0 && s.lo < w.Length() {
			shut = append(shut, s)
		}
	}
	slices.SortFunc(shut, func(a, b freeSpan) int { return cmp.Compare(a.lo, b.lo) })
	return shut
}
