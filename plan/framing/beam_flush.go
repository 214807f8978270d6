package framing

import (
	"fmt"
	"math"

	"galewright/plan"
)

// squareOff is the sine of the angle by which a flush beam may lie off square across its
// joists, whose ends are cut square.
const squareOff = 0.001

// flushBeams adds the beams that the joists of a floor hang on: between its rims,
// ledgers and walls that pass it, on plates or posts, and takes their room from the
// joists.
func (b *builder) flushBeams(d *deck) {
	for _, x := range b.hangingLast(func(x *plan.FloorBeam) bool { return x.Set == plan.SetFlush }) {
		mid := x.From.Add(x.To).Mul(0.5)
		if b.plan.Above(x.Level) != d.level || !d.holds(mid) {
			continue
		}
		fb := newBeam(x, plan.FlushBeam, d.level, d.z1)
		fb.Carries = d.level
		b.flushIn[x] = true
		if b.fitsFlush(d, fb) && b.layBeam(fb) {
			d.taken = append(d.taken, obstacle{fb.body, true})
		}
	}
}

// fitsFlush cuts a flush beam to the floor that it lies in; false where it cannot carry
// joists there, which it tells.
func (b *builder) fitsFlush(d *deck, fb *framedBeam) bool {
	x := fb.FloorBeam
	switch joists := d.level.Joists.Depth; {
	case math.Abs(fb.Frame.D.Dot(b.runOf(d.level).D)) > squareOff && math.Abs(fb.Frame.D.Cross(b.runOf(d.level).D)) > squareOff:
		b.beamFault(x, "beam-off-square", fmt.Sprintf("beam %s is to be flush with the joists of level %s and lies neither square across them nor along them", x.Name, d.level.Name), "turn it, or set it dropped")
		return false
	case x.Member.Depth < joists-sixteenth:
		b.beamFault(x, "beam-shallow", fmt.Sprintf("beam %s is %s deep and the joists that hang on it %s", x.Name, b.inches(x.Member.Depth), b.inches(joists)), "take a beam as deep as the joists or deeper, or set it dropped")
		return false
	case x.Member.Depth > joists+sixteenth:
		b.cutToWalls(fb)
	}
	spans := insideBand(d.inner, fb.body.f, 0, fb.body.d)
	for _, o := range d.taken {
		if lo, hi, ok := fb.body.crossing(o.body); ok {
			spans = without(spans, span{lo, hi})
		}
	}
	mid := (fb.body.s0 + fb.body.s1) / 2
	for _, s := range spans {
		if s.lo <= mid && mid <= s.hi {
			fb.body.s0, fb.body.s1 = max(fb.body.s0, s.lo), min(fb.body.s1, s.hi)
			return true
		}
	}
	b.beamFault(x, "beam-off-floor", fmt.Sprintf("beam %s does not lie free in the floor of level %s", x.Name, d.level.Name), "keep it clear of rims, other beams and walls that pass the floor")
	return false
}

// lostBeams tells of flush beams that lie in no floor.
func (b *builder) lostBeams() {
	for _, x := range b.plan.Beams {
		if x.Set != plan.SetFlush || b.flushIn[x] {
			continue
		}
		next, what := b.plan.Above(x.Level), "neither a floor with joists nor a roof with ceiling joists lies over level "+x.Level.Name+" there"
		if next != nil && next.Joists.Depth > 0 {
			what = "it does not lie in the floor of level " + next.Name
		}
		b.beamFault(x, "beam-off-floor", fmt.Sprintf("beam %s is to be flush with joists, and %s", x.Name, what), "name the level on whose plates the joists lie, and give points inside its walls; ceiling joists are those of a roof with ceiling_ties")
	}
}
