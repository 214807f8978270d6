package framing

import (
	"math"

	"galewright/plan"
	"galewright/plan/geom"
)

// balloons stops the floor at walls whose studs pass it: a ledger on the
// side of the joists, and fire blocking between the studs at the foot of the
// joists.
func (b *builder) balloons(d *deck) {
	for i, loop := range d.loops {
		for k, e := range loop {
			if e.balloon {
				b.outerLedger(d, loop, d.inner[i], k)
			}
		}
	}
	for _, w := range d.passing {
		if !w.Exterior && !geom.With(w.frame.D, b.runOf(d.level).D) && !geom.Against(w.frame.D, b.runOf(d.level).D) {
			b.ledger(d, w, body{w.frame, w.s0, w.s1, w.Depth()}, w.Depth())
			b.ledger(d, w, body{w.frame, w.s0, w.s1, w.Depth()}, -plate)
		}
		b.fireBlocks(d, w)
	}
}

// outerLedger puts the ledger of an exterior wall between its neighbors'
// rims or ledgers.
func (b *builder) outerLedger(d *deck, loop []edge, inner []geom.Vec2, k int) {
	e, n := loop[k], len(loop)
	run := body{e.w.frame, math.Inf(-1), math.Inf(1), e.w.Depth()}
	for _, t := range []float64{e.w.Depth(), e.w.Depth() + plate} {
		prev, next := loop[(k+n-1)%n], loop[(k+1)%n]
		if prev.w.frame.D.Cross(e.w.frame.D) < 0 { // an inside corner: the floor goes on past it
			run.s0 = e.w.s0
		} else {
			run.s0 = max(run.s0, ledgerEnd(e, prev, t, e.w.s0))
		}
		if e.w.frame.D.Cross(next.w.frame.D) < 0 {
			run.s1 = e.w.s1
		} else {
			run.s1 = min(run.s1, ledgerEnd(e, next, t, e.w.s1))
		}
	}
	b.ledger(d, e.w, run, e.w.Depth())
}

// ledgerEnd returns the station of e's wall at which the inset line of its
// neighbor crosses depth t.
func ledgerEnd(e, o edge, t, own float64) float64 {
	if geom.Parallel(e.w.frame.D, o.w.frame.D) {
		return own
	}
	s, _ := e.w.frame.Local(cross(e.w.frame, t, o.w.frame, o.inset))
	return s
}

// ledger adds a ledger along w from depth t inward, less what other balloon
// walls and ledgers take.
func (b *builder) ledger(d *deck, w *framedWall, run body, t float64) {
	f := w.frame
	f.Origin = f.At(0, t, 0).Flat()
	strip := body{f, run.s0, run.s1, plate}
	spans := []span{{strip.s0, strip.s1}}
	if !w.Exterior {
		spans = both(spans, insideBand(d.inner, f, 0, plate))
	}
	for _, o := range d.taken {
		if lo, hi, ok := strip.crossing(o.body); ok {
			spans = without(spans, span{lo, hi})
		}
	}
	section := plan.Lumber{Ply: 1, Breadth: plate, Depth: d.level.Joists.Depth, Text: d.level.Joists.Text}
	for _, s := range spans {
		if s.hi-s.lo < plate {
			continue
		}
		one := body{f, s.lo, s.hi, plate}
		w.ledgers = append(w.ledgers, b.strip(w, d.level, plan.Ledger, one, section, d.z0, d.z1)...)
		d.taken = append(d.taken, obstacle{one, true})
	}
}

// fireBlocks closes the bays of w at the foot of the joists of d.
func (b *builder) fireBlocks(d *deck, w *framedWall) {
	z0, z1 := d.z0, d.z0+plate
	from := w.s0
	fill := func(to float64) {
		if to-from > 1.0/4 && w.solidBay(from, to, z0, z1) {
			m := b.wallMember(w, piece{role: plan.Blocking, s0: from, s1: to, z0: z0, z1: z1, section: w.Studs})
			if m != nil {
				m.Level = d.level
			}
		}
	}
	for _, m := range w.uprights {
		if m.Z0 < z1 && m.Z1 > z0 {
			if m.Z0 > z0 || m.Z1 < z1 {
				continue
			}
			fill(m.S0)
			from = max(from, m.S1)
		}
	}
	fill(w.s1)
}

// solidBay tells whether no opening, header or sill lies in the bay.
func (w *framedWall) solidBay(lo, hi, z0, z1 float64) bool {
	for _, o := range w.openings {
		if lo < o.h1-geom.Eps && hi > o.h0+geom.Eps && z0 < o.top && z1 > o.sill-plate {
			return false
		}
	}
	return true
}
