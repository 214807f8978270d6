package loadpath

import (
	"fmt"
	"math"
	"slices"

	"galewright/plan"
	"galewright/plan/capacity"
	"galewright/plan/framing"
	"galewright/plan/placement"
)

// plateRun is one piece of a bottom plate, from end to end, in, with what lifts it and
// the bolts in it, by station.
type plateRun struct {
	of     *framing.Member // the piece; nil of what lies on none
	lo, hi float64
	lifts  []plateLift
	bolts  []*placement.Piece
}

// plateRuns parts what lifts the bottom plate of a wall, and its bolts, by the pieces of
// the plate: no piece holds another one down past a break or a doorway. A stud on a break
// lifts the piece that its clips are nailed to, or both by their nails. What lies on no
// piece is a run of its own, as long as the wall.
func (a *analysis) plateRuns(w *plan.Wall, bolts []*placement.Piece, lifts []plateLift) []plateRun {
	var out []plateRun
	for _, m := range a.house.In(w) {
		if m.Role == plan.SillPlate || m.Role == plan.BottomPlate {
			out = append(out, plateRun{of: m, lo: m.S0, hi: m.S1})
		}
	}
	slices.SortFunc(out, func(x, y plateRun) int { return cmpFloat(x.lo, y.lo) })
	rest := plateRun{hi: w.Length()}
	for _, f := range lifts {
		var on []int
		for i := range out {
			if out[i].has(f.station) {
				on = append(on, i)
			}
		}
		if len(on) == 0 {
			rest.lifts = append(rest.lifts, f)
		}
		for _, i := range on {
			part, k := f, a.nailedShare(f, out, on, i)
			if k == 0 {
				continue
			}
			if part.lb *= k; k < 1 {
				part.from += fmt.Sprintf(", on a break of the plate, %.2f of it here", k)
			}
			out[i].lifts = append(out[i].lifts, part)
		}
	}
	for _, q := range bolts {
		i := slices.IndexFunc(out, func(r plateRun) bool { return r.has(q.Station) })
		if i < 0 {
			rest.bolts = append(rest.bolts, q)
			continue
		}
		out[i].bolts = append(out[i].bolts, q)
	}
	return append(out, rest)
}

// nailedShare is how much of what a stud lifts comes on one of the pieces of plate under
// it, by the nails of its clips in each; evenly where they are in none.
func (a *analysis) nailedShare(f plateLift, runs []plateRun, on []int, of int) float64 {
	if len(on) == 1 || f.foot == nil {
		return 1 / float64(len(on))
	}
	in, all := 0, 0
	for _, q := range a.placed.At(f.foot) {
		for _, x := range a.steel.Body(q).Fasteners {
			for _, i := range on {
				if len(x.Runs) > 0 && x.Runs[0].Member == runs[i].of {
					all++
					if i == of {
						in++
					}
				}
			}
		}
	}
	if all == 0 {
		return 1 / float64(len(on))
	}
	return float64(in) / float64(all)
}

// has tells whether a station of the wall is on the piece.
func (r plateRun) has(s float64) bool { return s >= r.lo-1e-6 && s <= r.hi+1e-6 }

// boltLinks are the links of the bolts of each piece of a wall's bottom plate, and of
// pieces that lift and have none.
func (a *analysis) boltLinks(c *Check, w *plan.Wall, bolts []*placement.Piece, lifts []plateLift) (out []*Link) {
	for _, r := range a.plateRuns(w, bolts, lifts) {
		if len(r.bolts) == 0 {
			if l := a.loose(c, w, r); l != nil {
				out = append(out, l)
			}
			continue
		}
		out = append(out, a.runLinks(c, w, r)...)
	}
	return out
}

// loose is the link of a piece of plate that lifts and has no bolt; nil where nothing
// lifts it.
func (a *analysis) loose(c *Check, w *plan.Wall, r plateRun) *Link {
	sum := 0.0
	for _, f := range r.lifts {
		sum += f.lb
	}
	if sum <= least {
		return nil
	}
	l := unbolted(c, w, sum)
	l.ID = fmt.Sprintf("%s-%.0f, bottom plate", w.Name, r.lo)
	l.Where = fmt.Sprintf("wall %s, bottom plate from %s to %s", w.Name, a.u.Length(r.lo), a.u.Length(r.hi))
	l.Gap = "no bolt in the plan holds this piece of the bottom plate"
	return l
}

// runLinks are the links of the bolts of one piece of plate.
func (a *analysis) runLinks(c *Check, w *plan.Wall, r plateRun) (out []*Link) {
	on, terms := a.onBolts(r)
	for i, q := range r.bolts {
		l := &Link{
			Check: c, ID: q.Tag, Joint: q.Joint, Wall: w, Unit: "lb", Demand: on[i], Strength: on[i] / ASD.W, Case: "each stud in its own worst case",
			Host: "wall " + w.Name, Where: fmt.Sprintf("wall %s, bolt at %s", w.Name, a.u.Length(q.Station)),
		}
		l.Terms = append(terms[i], Term{"together, ASD", on[i], "lb"})
		held := a.allowed.One(q, capacity.Upward)
		l.close(&held)
		out = append(out, l)
	}
	return out
}

// onBolts shares what lifts a piece of plate to the bolts on both sides by lever. What is
// past the outer bolt pulls it with more than itself: the plate turns about the bolt before
// it, or about its own other end where it has one bolt alone. What that presses down there
// relieves nothing.
func (a *analysis) onBolts(r plateRun) (on []float64, terms [][]Term) {
	n := len(r.bolts)
	on, terms = make([]float64, n), make([][]Term, n)
	put := func(i int, f plateLift, k float64) {
		lb := f.lb * k
		on[i] += lb
		if lb > least {
			terms[i] = append(terms[i], Term{a.u.Sprintf("%s: %.0f lb ASD in its own worst case, times %.3f by lever arm", f.from, f.lb, k), lb, "lb"})
		}
	}
	for _, f := range r.lifts {
		i, _ := slices.BinarySearchFunc(r.bolts, f.station, func(q *placement.Piece, s float64) int { return cmpFloat(q.Station, s) })
		switch {
		case i == 0:
			put(0, f, r.lever(f.station, 0, 1))
		case i == n:
			put(n-1, f, r.lever(f.station, n-1, n-2))
		default:
			k := (f.station - r.bolts[i-1].Station) / (r.bolts[i].Station - r.bolts[i-1].Station)
			put(i-1, f, 1-k)
			put(i, f, k)
		}
	}
	return on, terms
}

// lever is how much of a force past an outer bolt that bolt takes, turning about the one
// before it, or about the far end of the plate where there is none.
func (r plateRun) lever(at float64, bolt, before int) float64 {
	b := r.bolts[bolt].Station
	about := r.hi
	if at > b {
		about = r.lo
	}
	if before >= 0 && before < len(r.bolts) {
		about = r.bolts[before].Station
	}
	if math.Abs(b-about) < flatDeep {
		return 1
	}
	return (at - about) / (b - about)
}
