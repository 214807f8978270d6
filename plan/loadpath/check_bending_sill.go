package loadpath

import (
	"fmt"
	"math"
	"slices"

	"galewright/plan"
	"galewright/plan/framing"
	"galewright/plan/placement"
)

// withoutHoldDowns leaves out what studs bring to a plate that a hold-down of their own
// holds to the ground: it is stiffer than the plate, and its check has their uplift.
func (a *analysis) withoutHoldDowns(p *wallPath, lifts []plateLift) (out []plateLift) {
	for i, f := range lifts {
		own := false
		for _, j := range a.byFirst[p.carriers[i].m] {
			own = own || j.Kind == plan.WallEnd && slices.ContainsFunc(a.placed.At(j), engineered)
		}
		if !own {
			out = append(out, f)
		}
	}
	return out
}

// washerFace is how far from a bolt's middle the bearing of its plate washer begins, in:
// half of the washer less half of the bearing that it needs, the least of both outer
// bolts; 0 where one has no plate washer.
func (a *analysis) washerFace(bolts []*placement.Piece, on []float64) float64 {
	least := math.Inf(1)
	for _, i := range []int{0, len(bolts) - 1} {
		w := bolts[i].Item.Washer
		if w == 0 || a.species.FcPerp == 0 {
			return 0
		}
		least = math.Min(least, (w-on[i]/(a.species.FcPerp*w))/2)
	}
	return math.Max(0, least)
}

// sill are the links of the pieces of a bottom plate between its bolts: of the worst, and
// of all that are over what they bear.
func (b *bent) sill(bolts []*placement.Piece, lifts []plateLift) []*Link {
	var all []bend
	for _, r := range b.a.plateRuns(b.p.w, bolts, lifts) {
		if s, ok := b.bolted(r); ok {
			all = append(all, s)
		}
	}
	if len(all) == 0 {
		return nil
	}
	return b.told(b.p.w.Name+", bottom plate", all)
}

// bolted is a piece of bottom plate between its bolts; ok is false where it has none or
// nothing lifts it.
func (b *bent) bolted(r plateRun) (s bend, ok bool) {
	var supports []float64
	var in []push
	for _, q := range r.bolts {
		supports = append(supports, q.Station)
	}
	for _, f := range r.lifts {
		if f.lb > least {
			in = append(in, push{f.station, f.lb})
			s.terms = append(s.terms, Term{f.from + ", ASD", f.lb, "lb"})
		}
	}
	if len(supports) == 0 || len(in) == 0 {
		return s, false
	}
	on, _ := b.a.onBolts(r)
	face := b.a.washerFace(r.bolts, on)
	s.spanned = onSupports(supports, face, flatDeep, in)
	s.terms = append(s.terms, b.held("bolts", supports), Term{"past the outer bolts the plate bends from the washer's bearing on, off the bolt", face, "in"})
	u := b.a.u
	s.id = fmt.Sprintf("%s-%.0f, bottom plate", b.p.w.Name, r.lo)
	s.where = fmt.Sprintf("wall %s, bottom plate from %s to %s, most at %s", b.p.w.Name, u.Length(r.lo), u.Length(r.hi), u.Length(s.at))
	s.of = b.sillWood(r.of)
	return s, true
}

// sillWood is the wood of a bottom plate, flat.
func (b *bent) sillWood(m *framing.Member) wood {
	of := b.flat(1, "the bottom plate, flat")
	if m == nil {
		return of
	}
	if m.Section.Depth > 0 {
		of.wide, of.deep, of.depth = m.Section.Depth, m.Section.Breadth*float64(max(1, m.Section.Ply)), m.Section.Depth
	}
	if m.Role == plan.SillPlate && b.a.species.Name != "southern pine" {
		of.factor = 0.80 // incised for its treatment
	}
	return of
}
