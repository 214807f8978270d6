package framing

import (
	"cmp"
	"fmt"
	"math"
	"slices"

	"galewright/plan"
	"galewright/plan/geom"
)

// Two interior walls may cross. One runs through; of the other bottom plate, lower top
// plate and studs stop at its faces, with an end stud at each, and go on past it. Where
// both are of one height the upper plate of the other laps over the one that runs through,
// whose own is broken there, as at a T (IRC R602.3.2, from memory); else it stops too. The
// wall that runs through has a backing stud at each side, as at a T.

// crossable tells whether two walls that cross can be framed so.
func crossable(u, t *framedWall) bool {
	return !u.Exterior && !t.Exterior && !u.rake() && !t.rake() && math.Abs(u.floor-t.floor) <= sixteenth
}

// goesThrough orders walls that cross by their claim to run through: the plan's own word,
// then balloon walls, the higher wall, a bearing one, the longer, and the one written first
// (common practice, no published source).
func goesThrough(a, b *framedWall) int {
	no := func(x bool) int {
		if x {
			return 0
		}
		return 1
	}
	tape := func(v float64) float64 { return -math.Round(v * 16) }
	return cmp.Or(
		cmp.Compare(no(a.Through), no(b.Through)),
		cmp.Compare(no(a.Balloon()), no(b.Balloon())),
		cmp.Compare(tape(a.top), tape(b.top)),
		cmp.Compare(no(a.Bearing), no(b.Bearing)),
		cmp.Compare(tape(a.line()), tape(b.line())),
		cmp.Compare(a.nth, b.nth))
}

// cross lets u stop at t and go on past it, where t is the one that runs through: at is
// where t's faces lie along u.
func (b *builder) cross(u, t *framedWall, at span) {
	if goesThrough(u, t) < 0 {
		return // told of the other way around
	}
	if u.Through && t.Through {
		b.wallFault(u.Wall, "crossing-contradicts", fmt.Sprintf("and wall %s cross, and both run through", t.Name), "leave through out of one of them")
	}
	if u.top > t.top+sixteenth {
		b.wallFault(u.Wall, "walls-cross", fmt.Sprintf("crosses wall %s, which is lower and runs through", t.Name), "let the higher one run through")
		return
	}
	for _, s := range u.Shear {
		if (span{s.From, s.To}).meets(at) {
			b.fault(plan.Diagnostic{
				Code: "shear-across-wall", Pos: s.Pos, Where: "wall " + u.Name + ", shear wall " + s.Name,
				Summary: fmt.Sprintf("wall %s runs through it from %s to %s: no panel goes on there", t.Name, b.inches(at.lo), b.inches(at.hi)),
				Mend:    "end the segment at that wall and begin another past it, or let this wall run through with through = true",
			})
		}
	}
	lo, hi := facesOn(t, u, false)
	a, z := facesOn(t, u, true) // they meet its two sides: at a slant not at one place
	u.gaps = append(u.gaps, at)
	slices.SortFunc(u.gaps, func(x, y span) int { return cmp.Compare(x.lo, y.lo) })
	t.meets = append(t.meets, meeting{other: u, lo: min(lo, a), hi: max(hi, z), over: true, cross: true})
	u.meets = append(u.meets, meeting{other: t, lo: at.lo, hi: at.hi, cross: true})
}

// gapAt returns where wall t runs through w.
func (w *framedWall) gapAt(t *framedWall) (span, bool) {
	for _, m := range w.meets {
		if m.cross && !m.over && m.other == t {
			return span{m.lo, m.hi}, true
		}
	}
	return span{}, false
}

// gapPosts keeps the studs of w out of the walls that run through it, and puts an end stud
// at each of their faces.
func (b *builder) gapPosts(w *framedWall, l *layout) {
	for _, g := range w.gaps {
		ok := l.put(slot{span: g})
		ok = l.put(slot{span: span{g.lo - plate, g.lo}, role: plan.Post}) && ok
		ok = l.put(slot{span: span{g.hi, g.hi + plate}, role: plan.Post}) && ok
		if !ok {
			b.wallFault(w.Wall, "walls-cross", fmt.Sprintf("has no room for its end studs beside the wall that runs through it at %s", b.inches(g.mid())), "let it end there, or lengthen it")
		}
	}
}

// partsOf returns the parts of a run of w that no wall runs through, in the order of the
// house as written.
func (b *builder) partsOf(w *framedWall, run span) (out []span) {
	from := run.lo
	for _, g := range w.gaps {
		if g.lo > from+geom.Eps && g.lo < run.hi {
			out = append(out, span{from, g.lo})
		}
		from = max(from, g.hi)
	}
	if run.hi > from+geom.Eps {
		out = append(out, span{from, run.hi})
	}
	if b.plan.Lay.Mirrored {
		slices.Reverse(out)
	}
	return out
}

// bottomCutOut returns where w has no bottom plate: at openings to the floor and at walls
// that run through, by station.
func (w *framedWall) bottomCutOut() []span {
	out := slices.Clone(w.gaps)
	for _, o := range w.openings {
		if o.Sill <= geom.Eps {
			out = append(out, span{o.lo, o.hi})
		}
	}
	slices.SortStableFunc(out, func(a, b span) int { return cmp.Compare(a.lo, b.lo) })
	return out
}

// lapCrossing settles the upper plates where u crosses w, which runs through: u's laps over
// w where they are of one height and w's can be broken there, else u's own is broken.
func lapCrossing(w *framedWall, m meeting) {
	u := m.other
	gap, ok := u.gapAt(w)
	if !ok {
		return
	}
	lo, hi, ok := w.capBody().crossing(u.capBody())
	if ok && level(w, u) && lo > w.c0+24 && hi < w.c1-24 && !anyMeets(w.breaks, span{lo, hi}) {
		w.breaks = append(w.breaks, span{lo, hi})
		return
	}
	u.breaks = append(u.breaks, gap)
}

// crossJoints finds the joints of a wall that runs through with one that crosses it, one at
// each of its sides.
func (b *builder) crossJoints(w *framedWall, m meeting) {
	gap, ok := m.other.gapAt(w)
	if !ok {
		return
	}
	sides := []float64{gap.lo - plate/2, gap.hi + plate/2}
	if m.other.mirrored {
		slices.Reverse(sides)
	}
	s := (m.lo + m.hi) / 2
	for _, at := range sides {
		b.newJoint(w, plan.WallCorner, s, min(w.head, m.other.head), m.other.nearest(m.other.uprights, at), w.nearest(w.uprights, s), w.capAt(s))
	}
}
