package placement

import (
	"galewright/plan"
	"galewright/plan/framing"
	"galewright/plan/geom"
)

// goesOn tells whether o goes on where m ends: of one role, or both plates of
// a wall's top, or both standing side by side.
func goesOn(m, o *framing.Member) bool {
	of := func(r plan.Role) plan.Role {
		switch {
		case r == plan.UpperPlate:
			return plan.TopPlate
		case r.FullHeight() || r == plan.Jack:
			return plan.Stud
		}
		return r
	}
	return m == o || of(m.Role) == of(o.Role)
}

// How wood is looked for under steel, in: just under the face; from the gap on
// a play of an eighth (common practice, no published source); no farther than
// any strap reaches.
const (
	skin     = 1.0 / 16
	play     = 0.125
	farthest = 1800
)

// room returns how far the wood of m goes on under a band, from a developed
// distance on, and past the band's end straight on.
func (w *world) room(m *framing.Member, b geom.Band, from float64) (total float64) {
	rest := b.Past(from)
	if len(rest) == 0 { // no lap at all: what lies straight on from the end
		last := b[len(b)-1]
		return w.along(m, last.B, last.N, last.B.Sub(last.A).Unit(), farthest)
	}
	for i, p := range rest {
		far := p.Len()
		if i == len(rest)-1 {
			far = farthest
		}
		got := w.along(m, p.A, p.N, p.B.Sub(p.A).Unit(), far)
		total += got
		if got < far-play {
			break
		}
	}
	return total
}

// along returns how far from the point a of a face with normal n the wood of
// m, and what goes on from it, runs without a break in direction d.
func (w *world) along(m *framing.Member, a, n, d geom.Vec3, far float64) (t float64) {
	a = a.Sub(n.Mul(skin))
	for _, r := range w.wood.Stretches(a, d, far, func(o *framing.Member) bool { return goesOn(m, o) }) {
		if r.From > t+play {
			break
		}
		t = max(t, r.To)
	}
	return t
}

// under returns the member just under the point a of a face with normal n,
// one that goes on from m: m itself before any other; nil for none.
func (w *world) under(m *framing.Member, a, n geom.Vec3) (hit *framing.Member) {
	for _, r := range w.wood.Stretches(a, n.Mul(-1), 2*skin, func(o *framing.Member) bool { return goesOn(m, o) }) {
		if hit == nil || r.Member == m {
			hit = r.Member
		}
	}
	return hit
}

// extent returns how far a member reaches along a unit direction, from the
// origin of space, in.
func extent(m *framing.Member, d geom.Vec3) (lo, hi float64) {
	for i, s := range m.Solid {
		a, b := s.Along(d)
		if i == 0 {
			lo, hi = a, b
		}
		lo, hi = min(lo, a), max(hi, b)
	}
	return lo, hi
}
