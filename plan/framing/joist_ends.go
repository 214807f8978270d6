package framing

import (
	"cmp"
	"fmt"
	"math"
	"slices"

	"galewright/plan"
	"galewright/plan/geom"
)

// obstacle is what the joists of a floor end at within it.
type obstacle struct {
	body
	bears bool // joists hang on it: a ledger or a flush beam
}

// laidJoist is where a joist at the spacing may lie: a band across the joists, and the
// spans of it that are free.
type laidJoist struct {
	wide span
	long []span
}

// standing returns where a joist at the spacing lies between t0 and t1 across the joists.
// A stretch of an upper floor with an end that nothing carries, as against the end of a
// balloon wall or half beside its ledger, slides along to the nearest place where each
// of its ends is carried or passes by; where there is none within half a space it stays.
func (b *builder) standing(d *deck, t0, t1 float64) (out []laidJoist) {
	_, spans := d.free(t0, t1)
	stay := laidJoist{wide: span{t0, t1}}
	for _, s := range spans {
		if slices.ContainsFunc(out, func(x laidJoist) bool { return anyMeets(x.long, s) }) {
			continue // it went along with the one before
		}
		by := b.slides(d, t0, t1, s)
		if by == 0 {
			stay.long = append(stay.long, s)
			continue
		}
		x := laidJoist{wide: span{t0 + by, t1 + by}}
		for _, m := range d.beside(t0+by, t1+by, s) {
			if !anyMeets(stay.long, m) {
				x.long = append(x.long, m)
			}
		}
		out = append(out, x)
	}
	if len(stay.long) > 0 {
		out = append(out, stay)
	}
	return out
}

// beside are the free spans of another band that lie beside a stretch of joist.
func (d *deck) beside(t0, t1 float64, s span) []span {
	_, spans := d.free(t0, t1)
	return slices.DeleteFunc(spans, func(m span) bool { return !m.meets(s) })
}

// slides is how far a joist between t0 and t1 moves so that both ends of one stretch of it
// are carried, in; 0 where they are, or nothing near would carry them.
func (b *builder) slides(d *deck, t0, t1 float64, s span) float64 {
	if d.level.Index == 0 {
		return 0
	}
	band, _ := d.free(t0, t1)
	steps := b.steps(d, band, s)
	slices.SortStableFunc(steps, func(a, b float64) int {
		return cmp.Or(cmp.Compare(math.Round(math.Abs(a)*1000), math.Round(math.Abs(b)*1000)), cmp.Compare(a, b))
	})
	for _, by := range steps {
		if math.Abs(by) > d.level.JoistSpace/2-(t1-t0) {
			break
		}
		moved, _ := d.free(t0+by, t1+by)
		if list := d.beside(t0+by, t1+by, s); len(list) > 0 && !slices.ContainsFunc(list, func(m span) bool { return !b.stands(d, moved, m) }) {
			return by
		}
	}
	return 0
}

// stands tells whether each end of a stretch of joist is carried, or hangs free over a
// bearing inside it.
func (b *builder) stands(d *deck, band body, s span) bool {
	carried := func(at, out float64) bool { return b.carriedEnd(d, band, at, out) }
	return carried(s.lo, -1) && carried(s.hi, 1) || len(b.steps(d, band, s)) == 0 && len(d.under(band, s)) > 0
}

// steps are the moves of a joist that would take those ends of a stretch of it that
// nothing carries off what they stand against, or wholly onto it.
func (b *builder) steps(d *deck, band body, s span) (out []float64) {
	for _, e := range []struct{ at, out float64 }{{s.lo, -1}, {s.hi, 1}} {
		if b.carriedEnd(d, band, e.at, e.out) {
			continue
		}
		for _, o := range d.taken {
			if lo, hi, ok := band.crossing(o.body); ok && lo < e.at+near && hi > e.at-near {
				a, z := o.across(band)
				out = append(out, z, a-band.d, z-band.d, a)
			}
		}
		for _, loop := range d.inner {
			for _, p := range loop {
				if at, t := band.f.Local(p); math.Abs(at-e.at) < near && t > 0 && t < band.d {
					out = append(out, t, t-band.d)
				}
			}
		}
	}
	return out
}

// across is the extent of a thing across a band of joists, from the band's low edge, in.
func (o obstacle) across(band body) (lo, hi float64) {
	lo, hi = math.Inf(1), math.Inf(-1)
	for _, p := range o.corners() {
		_, t := band.f.Local(p)
		lo, hi = min(lo, t), max(hi, t)
	}
	return lo, hi
}

// carriedEnd tells whether the end of a band of joists at a station lies on wood or
// stands with its whole width against what joists hang on.
func (b *builder) carriedEnd(d *deck, band body, s, out float64) bool {
	for _, o := range d.taken {
		if !o.bears || geom.Parallel(band.f.D, o.f.D) {
			continue
		}
		lo, hi, ok := band.crossing(o.body)
		if a, z := o.across(band); ok && a < sixteenth && z > band.d-sixteenth && (out > 0 && math.Abs(lo-s) < near || out < 0 && math.Abs(hi-s) < near) {
			return true
		}
	}
	in := s - out*seatReach
	return b.lyingOn(band.f.Box(min(s, in), max(s, in), 0, band.d, d.z0-1, d.z0)) >= band.d*leastBearing/2
}

// lyingOn is the area of what carries joists that lies right under the lowest inch of
// space below them, in².
func (b *builder) lyingOn(foot geom.Solid) (area float64) {
	lo, hi := foot.Bounds()
	for _, o := range b.index.Within(lo, hi) {
		if carriesJoists(o.Role) && math.Abs(o.Z1-hi.Z) < sixteenth {
			area += common(foot, o).Volume()
		}
	}
	return area
}

// joistEnd is how an end of a joist is cut: square, or along the face of a rim or ledger
// that lies at a slant to it.
type joistEnd struct {
	far, mid float64 // stations of its long point and of its center line
	slant    bool
	face     geom.Plane // along which it is cut
	bevel    float64    // degrees off square
}

// endAt finds how the end of a band of joists at station s is cut, out -1 at its low end
// and 1 at its high.
func (b *builder) endAt(d *deck, band body, s, out float64) joistEnd {
	for _, loop := range d.inner {
		for i, p := range loop {
			q := loop[(i+1)%len(loop)]
			s0, t0 := band.f.Local(p)
			s1, t1 := band.f.Local(q)
			if min(t0, t1) > geom.Eps || max(t0, t1) < band.d-geom.Eps || math.Abs(t1-t0) < geom.Eps {
				continue
			}
			rise := (s1 - s0) / (t1 - t0)
			a, z := s0-t0*rise, s0+(band.d-t0)*rise // stations at its low and high edge
			near, far := a, z
			if (z-a)*out < 0 {
				near, far = z, a
			}
			if math.Abs(far-near) < sixteenth || math.Abs(near-s) > 1e-3 {
				continue
			}
			n := q.Sub(p).Left()
			if n.Dot(band.f.D)*out < 0 {
				n = n.Mul(-1)
			}
			e := joistEnd{far, (near + far) / 2, true, geom.PlaneAt(p.Up(0), n.Up(0)), math.Atan(math.Abs(rise)) * 180 / math.Pi}
			if !b.inTheWay(band.f.Box(min(near, far), max(near, far), 0, band.d, d.z0, d.z1).Clip(e.face)) {
				return e
			}
		}
	}
	return joistEnd{far: s, mid: s}
}

// inTheWay tells whether a member stands where a solid is to be.
func (b *builder) inTheWay(s geom.Solid) bool {
	lo, hi := s.Bounds()
	for _, o := range b.index.Within(lo, hi) {
		if slices.ContainsFunc(o.Solid, func(x geom.Solid) bool { return meets(s, x) }) {
			return true
		}
	}
	return false
}

// cut cuts a joist at one end of its center line.
func (e joistEnd) cut(m *Member, end *geom.Vec3) {
	if !e.slant {
		return
	}
	back := m.A.Sub(m.B).Unit()
	if end == &m.A {
		back = back.Mul(-1)
	}
	m.Solid[0] = m.Solid[0].Clip(e.face)
	*end = end.Add(back.Mul(math.Abs(e.far - e.mid)))
	m.Bevel = max(m.Bevel, e.bevel)
}

// unborneEnds warns of the ends of a floor's joists that lie on nothing and hang on
// nothing, and of joists that hang over what carries them by more than the rule.
func (b *builder) unborneEnds(d *deck, from int) {
	if d.level.Index == 0 {
		return // what girders leave open there the joints to them show
	}
	var bad []*Member
	over := overhangs{}
	for _, m := range b.house.Members[from:] {
		if m.Role != plan.Joist || m.Level != d.level || b.isHeader(m) {
			continue
		}
		lo, hi := b.endBorne(m, m.A), b.endBorne(m, m.B)
		if lo && hi {
			continue
		}
		if !over.take(m, b.bearings(m), lo, hi) {
			bad = append(bad, m)
		}
	}
	over.tell(b, d.level)
	if len(bad) > 0 {
		b.fault(plan.Diagnostic{
			Severity: plan.Warning, Code: "joist-in-the-air", Pos: d.level.Pos, Where: "level " + d.level.Name,
			Summary: fmt.Sprintf("an end of joist %s%s is in the air: it lies on no plate or beam and hangs on no ledger or beam", bad[0].ID, andMore(len(bad)-1)),
			Mend:    "add a bearing wall or a [[beam]] there, or let the joists run the other way",
		})
	}
}

// andMore counts what is like the one named.
func andMore(n int) string {
	if n == 0 {
		return ""
	}
	return fmt.Sprintf(", and of %d more,", n)
}

// isHeader tells whether a member is the header of an opening in a floor.
func (b *builder) isHeader(m *Member) bool {
	return slices.ContainsFunc(b.wellEnds, func(e wellEnd) bool { return e.header == m })
}

// endBorne tells whether the end of a joist at p lies on wood, by half of the least
// bearing over its width, or stands against what it hangs on by most of its end.
func (b *builder) endBorne(m *Member, p geom.Vec3) bool {
	wide := m.Section.Width()
	out := p.Sub(m.A.Add(m.B).Mul(0.5)).Unit()
	f := geom.NewFrame(m.A.Flat(), m.B.Flat())
	s, _ := f.Local(p.Flat())
	in := s - seatReach*out.Flat().Dot(f.D)
	if b.lyingOn(f.Box(min(s, in), max(s, in), -wide/2, wide/2, m.Z0-1, m.Z0)) >= wide*leastBearing/2 {
		return true
	}
	const nudge = 0.1
	hung := 0.0
	end := m.Solid[0].Moved(out.Mul(nudge))
	lo, hi := end.Bounds()
	for _, o := range b.index.Within(lo, hi) {
		switch o.Role {
		case plan.Ledger, plan.FlushBeam, plan.Joist:
			if o != m && o.Level == m.Level && !geom.Parallel(o.B.Sub(o.A).Flat().Unit(), f.D) {
				hung += common(end, o).Volume()
			}
		}
	}
	return hung >= 0.75*nudge*wide*(m.Z1-m.Z0)
}
