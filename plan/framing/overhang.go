package framing

import (
	"cmp"
	"fmt"
	"math"
	"slices"

	"galewright/plan"
	"galewright/plan/geom"
)

// backSpan is the least length of a joist inside what it hangs over, as a multiple of how
// far it hangs over it, where a wall stands on its end (IRC 2018 R502.3.3 and Table
// R502.3.3(1), from memory; a balcony wants 2).
const backSpan = 3.0

// overhangs are the joists of a floor that reach past the outermost of what carries
// them.
type overhangs struct {
	n          int
	long, back float64 // the farthest, in, and the least back span over its overhang
	worst      *Member // of the farthest
	short      *Member // of the least back span
	depth      float64
}

// take notes a joist that is not carried at its low or high end and hangs over there;
// false where it does not lie on what would hold it so: two bearings, or one and its other
// end.
func (x *overhangs) take(m *Member, on []span, lo, hi bool) bool {
	long := m.B.Sub(m.A).Len()
	at := []float64{}
	if lo && (len(on) == 0 || on[0].lo > seatReach) { // it hangs there
		at = append(at, 0)
	}
	for _, s := range on {
		at = append(at, s.mid())
	}
	if hi && (len(on) == 0 || on[len(on)-1].hi < long-seatReach) {
		at = append(at, long)
	}
	if len(at) < 2 {
		return false
	}
	last := len(at) - 1
	if !lo && at[1]-at[0] < on[0].lo || !hi && at[last]-at[last-1] < long-on[len(on)-1].hi {
		return false // it would tip off
	}
	if !lo {
		x.note(m, on[0].lo+m.Level.Rim, at[1]-at[0])
	}
	if !hi {
		x.note(m, long-on[len(on)-1].hi+m.Level.Rim, at[last]-at[last-1])
	}
	return true
}

// note keeps the worst of the ends that hang over, the rim counted with them.
func (x *overhangs) note(m *Member, over, back float64) {
	x.n++
	x.depth = calledDeep(m.Section.Depth)
	if over > x.long+geom.Eps {
		x.long, x.worst = over, m
	}
	if over > 0 && (x.short == nil || back/over < x.back-geom.Eps) {
		x.back, x.short = back/over, m
	}
}

// calledDeep is the depth by which lumber is called, in: of a dressed size the nominal one,
// of another its own.
func calledDeep(deep float64) float64 {
	if i := slices.Index(stockDepths, deep); i >= 0 {
		return float64(4 + 2*i)
	}
	return deep
}

// tell warns where joists hang over farther than the code's rule lets them without a
// table or a calculation.
func (x *overhangs) tell(b *builder, l *plan.Level) {
	say := func(what, mend string) {
		b.fault(plan.Diagnostic{Severity: plan.Warning, Code: "joist-overhang", Pos: l.Pos, Where: "level " + l.Name, Summary: what, Mend: mend})
	}
	if x.long > x.depth+sixteenth {
		say(fmt.Sprintf("joist %s%s reaches %s past what it lies on, more than the %s that the joists are nominally deep: beyond that the code wants its table for joists that carry a wall and roof, or a calculation (IRC 2018 R502.3.3, from memory); the joists there are not checked",
			x.worst.ID, x.others(), b.inches(x.long), b.inches(x.depth)), "put a wall, a beam or posts under the end, make it shorter, or let the engineer size the joists")
	}
	if x.short != nil && x.back < backSpan-1e-6 {
		say(fmt.Sprintf("joist %s lies %.1f times as far back inside what it hangs over as it reaches past it; where a wall stands on the end the code wants %.0f times (IRC 2018 R502.3.3, from memory), and a tie against uplift at its inner end", x.short.ID, x.back, backSpan),
			"let the joists run on over the next bearing, make the overhang shorter, or let the engineer size them")
	}
}

// others counts the other ends that hang over.
func (x *overhangs) others() string {
	if x.n == 1 {
		return ""
	}
	return fmt.Sprintf(", one of %d,", x.n)
}

// bearings are the stretches of a joist, in from its first end, that lie on plates or dropped
// beams, in order; those that touch are one.
func (b *builder) bearings(m *Member) (out []span) {
	f, long, half := geom.NewFrame(m.A.Flat(), m.B.Flat()), m.B.Sub(m.A).Len(), m.Section.Width()/2
	foot := f.Box(0, long, -half, half, m.Z0-1, m.Z0)
	lo, hi := foot.Bounds()
	for _, o := range b.index.Within(lo, hi) {
		if !carriesJoists(o.Role) || math.Abs(o.Z1-m.Z0) > sixteenth {
			continue
		}
		part := common(foot, o)
		if part.Volume() < half*leastBearing {
			continue
		}
		a, z := part.Along(f.D.Up(0))
		from := f.Origin.Dot(f.D)
		out = append(out, span{a - from, z - from})
	}
	slices.SortFunc(out, func(a, b span) int { return cmp.Compare(a.lo, b.lo) })
	return merged(out)
}

// merged joins spans in order that touch.
func merged(list []span) (out []span) {
	for _, s := range list {
		if n := len(out); n > 0 && s.lo <= out[n-1].hi+near {
			out[n-1].hi = max(out[n-1].hi, s.hi)
			continue
		}
		out = append(out, s)
	}
	return out
}

// carriesJoists tells whether joists may lie on top of a member of this role.
func carriesJoists(r plan.Role) bool {
	switch r {
	case plan.UpperPlate, plan.PlateBeam, plan.GirderBeam, plan.SillPlate:
		return true
	}
	return false
}
