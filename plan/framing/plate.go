package framing

import (
	"cmp"
	"fmt"
	"math"
	"slices"

	"galewright/plan"
	"galewright/plan/geom"
)

// spliceOffset is the least distance, in, between a joint in the lower and
// one in the upper top plate (IRC R602.3.2, from memory).
const spliceOffset = 24

// plates adds bottom and top plates, cut to stock.
func (b *builder) plates(w *framedWall) {
	b.bottomPlates(w)
	if w.rake() {
		b.rakePlates(w)
		b.checkRakeBreaks(w)
		return
	}
	var laps []float64
	for _, c := range w.breaks {
		laps = append(laps, c.lo, c.hi)
	}
	var lower []float64
	for _, run := range b.partsOf(w, span{w.p0(), w.p1()}) {
		cuts := b.topCuts(w, run, laps)
		w.plates = append(w.plates, b.plateRun(w, piece{role: plan.TopPlate, z0: w.head, z1: w.head + plate}, run.lo, run.hi, cuts)...)
		lower = append(lower, cuts...)
	}
	slices.SortFunc(w.plates, func(a, b *Member) int { return cmp.Compare(a.S0, b.S0) })
	for _, g := range w.gaps { // the lower plate ends there as well
		lower = append(lower, g.lo, g.hi)
	}
	slices.SortFunc(w.breaks, func(a, b span) int { return cmp.Compare(a.lo, b.lo) })
	from := w.c0
	for _, c := range append(slices.Clone(w.breaks), span{w.c1, w.c1}) {
		run := span{from, c.lo}
		w.caps = append(w.caps, b.plateRun(w, piece{role: plan.UpperPlate, z0: w.head + plate, z1: w.top}, run.lo, run.hi, b.upperCuts(w, run, lower))...)
		from = c.hi
	}
	b.checkBreaks(w)
}

// flat returns the section of a plate of w.
func flat(w *framedWall) plan.Lumber { return w.Studs }

// plateRun adds the pieces of one plate from lo to hi, cut at the stations.
func (b *builder) plateRun(w *framedWall, p piece, lo, hi float64, cuts []float64) (out []*Member) {
	p.section = flat(w)
	b.eachPart(append(append([]float64{lo}, cuts...), hi), func(lo, hi float64) {
		p.s0, p.s1 = lo, hi
		if hi-lo > geom.Eps {
			out = append(out, b.wallMember(w, p))
		}
	})
	return b.inOrder(out)
}

// eachPart calls with each part between neighboring stations, in the order of the house as
// written: what is made first is found first.
func (b *builder) eachPart(at []float64, with func(lo, hi float64)) {
	for i := 1; i < len(at); i++ {
		k := i
		if b.plan.Lay.Mirrored {
			k = len(at) - i
		}
		with(at[k-1], at[k])
	}
}

// bottomPlates adds the bottom plate, cut out at openings to the floor. On a
// slab it is the sill plate itself.
func (b *builder) bottomPlates(w *framedWall) {
	p := piece{role: plan.BottomPlate, z0: w.floor, z1: w.base}
	if b.onSlab(w) {
		p.role = plan.SillPlate
	}
	from := w.p0()
	run := func(to float64) {
		if to-from > geom.Eps {
			w.bottoms = append(w.bottoms, b.plateRun(w, p, from, to, b.bottomCuts(w, from, to))...)
		}
	}
	for _, c := range w.bottomCutOut() {
		run(c.lo)
		from = c.hi
	}
	run(w.p1())
}

// onSlab tells whether w stands on the slab itself.
func (b *builder) onSlab(w *framedWall) bool {
	return b.plan.Foundation.Kind == plan.Slab && w.Level.Index == 0
}

// stock returns the longest plate for w.
func (b *builder) stock(w *framedWall) float64 {
	for _, s := range []float64{w.Stock, b.plan.Lumber.Plate} {
		if s > 0 {
			return s
		}
	}
	return 192
}

// fromStart returns cuts of what runs from lo to hi, as count has them. In a house that
// lies the other way it is counted back from hi: count is then given −hi to −lo, and −1
// as the way.
func fromStart(reversed bool, lo, hi float64, count func(lo, hi, way float64) []float64) []float64 {
	if !reversed {
		return count(lo, hi, 1)
	}
	cuts := count(-hi, -lo, -1)
	for i := range cuts {
		cuts[i] = -cuts[i]
	}
	slices.Reverse(cuts)
	return cuts
}

// even returns the cuts of a run along a wall in lengths of whole stock, the rest at its end.
func (b *builder) even(lo, hi, stock float64) []float64 {
	return fromStart(b.plan.Lay.Mirrored, lo, hi, func(lo, hi, _ float64) []float64 { return even(lo, hi, stock) })
}

// even returns the cuts of a run in lengths of whole stock.
func even(lo, hi, stock float64) (cuts []float64) {
	for s := lo + stock; s < hi-geom.Eps; s += stock {
		cuts = append(cuts, s)
	}
	return cuts
}

// splices chooses where a top plate's run is spliced: never longer than the
// stock, at least 24 in from the joints in avoid, and of all such choices the
// one with the fewest pieces, then off laps and headers, over studs and
// without short pieces.
func (b *builder) splices(w *framedWall, run span, avoid, laps []float64) []float64 {
	stock := b.stock(w)
	ok := false
	cuts := fromStart(b.plan.Lay.Mirrored, run.lo, run.hi, func(lo, hi, way float64) (cuts []float64) {
		places := splicePlaces(w, run, way, avoid, laps)
		cuts, ok = chooseCuts(span{lo, hi}, places, stock)
		return cuts
	})
	if !ok {
		b.wallFault(w.Wall, "plate-splice", fmt.Sprintf("cannot have its top plates spliced %s apart out of %s stock", b.plan.Project.Units.Spacing(spliceOffset), b.inches(stock)),
			"name a longer plate stock")
		return b.even(run.lo, run.hi, stock)
	}
	return cuts
}

// place is a station for a splice and how little it is liked.
type place struct{ s, cost float64 }

// splicePlaces returns the stations at which run may be spliced: full-height
// studs, and whole feet as a second choice.
// They are counted along the wall, or with way -1 back from its end.
func splicePlaces(w *framedWall, run span, way float64, avoid, laps []float64) (out []place) {
	add := func(s, cost float64) {
		if within(avoid, s, spliceOffset) || s < run.lo+plate+geom.Eps || s > run.hi-plate-geom.Eps {
			return
		}
		if within(laps, s, spliceOffset) {
			cost += 30 // the plate of a wall that meets it laps over there
		}
		for _, o := range w.openings {
			if s > o.h0-6+geom.Eps && s < o.h1+6-geom.Eps {
				cost += 10 // over a header, or at the king that the plate ties
			}
		}
		out = append(out, place{way * s, cost})
	}
	for _, m := range w.uprights {
		if m.Role.FullHeight() {
			add(m.Mid(), 0)
		}
	}
	for d := 12.0; d < run.hi-run.lo; d += 12 {
		if way < 0 {
			add(run.hi-d, 3)
		} else {
			add(run.lo+d, 3)
		}
	}
	slices.SortStableFunc(out, func(a, b place) int { return cmp.Compare(a.s, b.s) })
	return out
}

// within tells whether a station of the list is nearer to s than d.
func within(list []float64, s, d float64) bool {
	return slices.ContainsFunc(list, func(x float64) bool { return math.Abs(x-s) < d-geom.Eps })
}

// chooseCuts finds the cheapest row of cuts, working back from the far end:
// best[i] is the cost of what follows place i. Of two equal choices the one
// with the longer first piece wins.
func chooseCuts(run span, places []place, stock float64) (cuts []float64, ok bool) {
	n := len(places)
	best, next := make([]float64, n+1), make([]int, n+1)
	for i := n; i >= 0; i-- { // i == n stands for the run's start here
		from, first := run.lo, 0
		if i < n {
			from, first = places[i].s, i+1
		}
		best[i], next[i] = math.Inf(1), -2
		if run.hi-from <= stock+geom.Eps {
			best[i], next[i] = short(run.hi-from), -1
		}
		if i == n {
			continue // filled last, below
		}
		pick(places, best, next, i, from, first, stock)
	}
	pick(places, best, next, n, run.lo, 0, stock)
	if math.IsInf(best[n], 1) {
		return nil, false
	}
	for i := next[n]; i >= 0; i = next[i] {
		cuts = append(cuts, places[i].s)
	}
	return cuts, true
}

// pick improves best[i] by each place within one stock length of from.
func pick(places []place, best []float64, next []int, i int, from float64, first int, stock float64) {
	for j := first; j < len(places) && places[j].s-from <= stock+geom.Eps; j++ {
		c := 100 + places[j].cost + short(places[j].s-from) + best[j]
		if c <= best[i]+geom.Eps {
			best[i], next[i] = c, j
		}
	}
}

// short is the cost of a piece under 4 ft.
func short(l float64) float64 {
	if l < 48-geom.Eps {
		return 20
	}
	return 0
}
