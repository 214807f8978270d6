package framing

import (
	"cmp"
	"fmt"
	"math"
	"slices"

	"galewright/plan"
	"galewright/plan/geom"
)

// tReach is how far, in, a wall's end may stand off the wall it is meant to
// meet: a gap of up to 1/2 in is closed.
const tReach = near

// meeting is a place where another wall meets this one.
type meeting struct {
	other *framedWall
	tail  bool    // the other's end that meets: its To
	lo    float64 // stations of this wall between which the other's faces
	hi    float64 // reach the side on which it meets
	end   int     // -1: at this wall's start, 1: at its tail, 0: along it
	over  bool    // this wall runs through and the other butts
	line  bool    // they go on in one line
	miter bool    // both ends are cut to meet
	cross bool    // the other goes on past this wall, or this wall past it
}

// wallEnd is one end of a wall.
type wallEnd struct {
	w    *framedWall
	tail bool
}

func (e wallEnd) point() geom.Vec2 {
	if e.tail {
		return e.w.To
	}
	return e.w.From
}

func (e wallEnd) spec() plan.End {
	if e.tail {
		return e.w.End
	}
	return e.w.Start
}

func (e wallEnd) side() int {
	if e.tail {
		return 1
	}
	return -1
}

// trim moves the end inward to station s if it reaches past it.
func (e wallEnd) trim(s float64) {
	if e.tail {
		e.w.s1 = min(e.w.s1, s)
	} else {
		e.w.s0 = max(e.w.s0, s)
	}
}

// set puts the end at station s.
func (e wallEnd) set(s float64) {
	if e.tail {
		e.w.s1 = s
	} else {
		e.w.s0 = s
	}
}

func (w *framedWall) body() body { return body{w.frame, w.s0, w.s1, w.Depth()} }

// onLine is the wall from From to To, wherever it was trimmed.
func (w *framedWall) onLine() body { return body{w.frame, w.Hook, w.Length(), w.Depth()} }

// line returns the length from From to To, in.
func (w *framedWall) line() float64 { return w.Length() - w.Hook }

func (w *framedWall) capBody() body { return body{w.frame, w.c0, w.c1, w.Depth()} }

// beside tells whether two walls stand at one height somewhere.
func (w *framedWall) beside(o *framedWall) bool {
	return w.floor < o.top-geom.Eps && o.floor < w.top-geom.Eps
}

// corners decides once for each place where walls meet which runs through
// and which butts, and sets the extents of walls and upper plates.
func (b *builder) corners() {
	groups := b.endGroups()
	grouped := map[wallEnd][]wallEnd{}
	for _, g := range groups {
		for _, e := range g {
			grouped[e] = g
		}
	}
	b.tees(grouped)
	var square [][]wallEnd
	for _, g := range groups {
		g = miterCorner(g)
		b.corner(g)
		square = append(square, g)
	}
	for _, w := range b.walls {
		w.c0, w.c1 = w.p0(), w.p1()
	}
	for _, g := range square {
		lapCorner(g)
	}
	for _, w := range b.walls {
		lapTees(w)
		if w.s1-w.s0 < 2*plate {
			b.wallFault(w.Wall, "wall-too-short",
				"too short for its two end studs once it has met its neighbors", "make it longer or leave it out")
		}
	}
}

// endGroups returns the wall ends that stand at one point, the best to run
// through first. Single ends make no group.
func (b *builder) endGroups() (groups [][]wallEnd) {
	at := map[[2]int][]int{} // group numbers by cells of one inch
	key := func(p geom.Vec2) [2]int { return [2]int{int(math.Floor(p.X)), int(math.Floor(p.Y))} }
	var all [][]wallEnd
	for _, w := range b.walls {
		for _, e := range []wallEnd{{w, false}, {w, true}} {
			k, found := key(e.point()), false
			for dx := -1; dx <= 1 && !found; dx++ {
				for dy := -1; dy <= 1 && !found; dy++ {
					for _, n := range at[[2]int{k[0] + dx, k[1] + dy}] {
						if all[n][0].point().Sub(e.point()).Len() <= near {
							all[n] = append(all[n], e)
							found = true
							break
						}
					}
				}
			}
			if !found {
				at[k] = append(at[k], len(all))
				all = append(all, []wallEnd{e})
			}
		}
	}
	for _, g := range all {
		if len(g) > 1 {
			slices.SortStableFunc(g, throughFirst) // stable for the two ends of one wall
			groups = append(groups, g)
		}
	}
	return groups
}

// throughFirst orders ends by their claim to run through: the plan's own
// word, then balloon walls, exterior walls, the higher wall (or the corner
// would stand open above the lower one), the longer wall, and the wall
// written first. Long walls running through is common practice; no published
// source.
func throughFirst(a, b wallEnd) int {
	word := map[plan.Join]int{plan.JoinThrough: 0, "": 1, plan.JoinButt: 2}
	no := func(x bool) int {
		if x {
			return 0
		}
		return 1
	}
	tape := func(v float64) float64 { return -math.Round(v * 16) }
	return cmp.Or(
		cmp.Compare(word[a.spec().Join], word[b.spec().Join]),
		cmp.Compare(no(a.w.Balloon()), no(b.w.Balloon())),
		cmp.Compare(no(a.w.Exterior), no(b.w.Exterior)),
		cmp.Compare(tape(a.w.top), tape(b.w.top)),
		cmp.Compare(tape(a.w.line()), tape(b.w.line())),
		cmp.Compare(a.w.nth, b.w.nth))
}

// corner sets the ends of one group: each end runs through over those after
// it and butts against those before it.
func (b *builder) corner(group []wallEnd) {
	for i, end := range group {
		through := true
		for _, other := range group[:i] {
			if !end.w.beside(other.w) || end.w == other.w {
				continue
			}
			b.agree(other, end)
			if end.w.body().inLine(other.w.body()) {
				b.inLine(other, end)
				continue
			}
			through = false
			if stop, ok := end.w.body().buttStop(other.w.body(), end.tail); ok {
				end.trim(stop)
			}
			meetCorner(other, end)
		}
		if through {
			runThrough(end, group[i+1:])
		}
	}
}

// runThrough sets end e to the far face of the first wall it runs past.
func runThrough(e wallEnd, later []wallEnd) {
	for _, o := range later {
		if e.w != o.w && e.w.beside(o.w) && !e.w.body().inLine(o.w.body()) {
			s := e.w.body().throughStop(o.w.body(), e.tail)
			if !e.teed(nil) {
				e.set(s)
			}
			return
		}
	}
}

// teed tells whether the end stops at the side of a wall, not counting one.
func (e wallEnd) teed(but *framedWall) bool {
	for _, m := range e.w.meets {
		if m.end == e.side() && !m.over && !m.line && !m.miter && m.other != but {
			return true
		}
	}
	return false
}

// agree faults two ends that both claim, or both refuse, to run through.
func (b *builder) agree(o, e wallEnd) {
	x, y := o.spec(), e.spec()
	if x.Join == "" || x.Join != y.Join {
		return
	}
	mend := `make one of them "butt"`
	if x.Join == plan.JoinButt {
		mend = `make one of them "through"`
	}
	pos := y.Pos
	if pos.Line == 0 {
		pos = e.w.Pos
	}
	b.fault(plan.Diagnostic{
		Code: "corner-contradicts", Pos: pos, Related: []plan.Pos{x.Pos},
		Summary: fmt.Sprintf("walls %s and %s are both %q at one corner", o.w.Name, e.w.Name, x.Join),
		Where:   "wall " + e.w.Name, Mend: mend,
	})
}

// inLine lets e go on where o ends: cut back where o runs on past the corner
// to a third wall, and by the wedge between them where they are not quite
// straight.
func (b *builder) inLine(o, e wallEnd) {
	if s, ok := e.w.body().buttStop(o.w.body(), e.tail); ok {
		inward := s - e.w.Hook
		if e.tail {
			inward = e.w.Length() - s
		}
		if inward > 36 {
			b.wallFault(e.w.Wall, "walls-overlap", fmt.Sprintf("lies in wall %s", o.w.Name), "end one where the other begins")
			return
		}
		e.trim(s)
	}
	o.w.meets = append(o.w.meets, meeting{other: e.w, tail: e.tail, end: o.side(), line: true})
	e.w.meets = append(e.w.meets, meeting{other: o.w, tail: o.tail, end: e.side(), line: true})
}

// meetCorner notes the corner in both walls: through wall o, butting wall e.
func meetCorner(o, e wallEnd) {
	lo, hi := facesOn(o.w, e.w, e.tail)
	o.w.meets = append(o.w.meets, meeting{other: e.w, tail: e.tail, lo: lo, hi: hi, end: o.side(), over: true})
	e.w.meets = append(e.w.meets, meeting{other: o.w, tail: o.tail, end: e.side()})
}

// facesOn returns the stations of through wall o between which the faces of
// the wall u, meeting it with the given end, reach the side of o it meets.
func facesOn(o, u *framedWall, tail bool) (lo, hi float64) {
	out := u.frame.D
	if !tail {
		out = out.Mul(-1)
	}
	t := 0.0
	if out.Dot(o.frame.In) < 0 {
		t = o.Depth() // it comes from the inside
	}
	a, b := o.body().faces(u.body(), t)
	return min(a, b), max(a, b)
}

// tees trims each end that stops at the side of another wall, and faults
// walls that cross.
func (b *builder) tees(grouped map[wallEnd][]wallEnd) {
	find := b.wallGrid()
	for _, u := range b.walls {
		for _, t := range find(u.extent()) {
			switch {
			case u == t || !u.beside(t):
			case u.body().inLine(t.body()):
				b.doubled(u, t, grouped)
			default:
				b.tee(u, t, grouped)
			}
		}
	}
}

// doubled faults two walls in line that take the same place.
func (b *builder) doubled(u, t *framedWall, grouped map[wallEnd][]wallEnd) {
	for _, e := range []wallEnd{{u, false}, {u, true}} {
		if slices.ContainsFunc(grouped[e], func(o wallEnd) bool { return o.w == t }) {
			return // the corner will tell
		}
	}
	lo, hi, ok := u.body().crossing(t.onLine())
	if ok && lo < u.Length()-near && hi > u.Hook+near {
		b.wallFault(u.Wall, "walls-overlap", fmt.Sprintf("lies in wall %s", t.Name), "end one where the other begins, or move one")
	}
}

func (b *builder) tee(u, t *framedWall, grouped map[wallEnd][]wallEnd) {
	line := t.onLine()
	lo, hi, ok := u.body().crossing(line)
	if !ok {
		return
	}
	for _, e := range []wallEnd{{u, false}, {u, true}} {
		if slices.ContainsFunc(grouped[e], func(o wallEnd) bool { return o.w == t }) {
			return
		}
		s := u.Hook
		if e.tail {
			s = u.Length()
		}
		if s < lo-tReach || s > hi+tReach {
			continue
		}
		if !t.Exterior && cornered(e, grouped[e]) {
			return // the inside wall's own end stops at this one
		}
		stop, _ := u.body().buttStop(line, e.tail)
		e.set(stop)
		a, z := facesOn(t, u, e.tail)
		t.meets = append(t.meets, meeting{other: u, tail: e.tail, lo: a, hi: z, over: true})
		u.meets = append(u.meets, meeting{other: t, end: e.side()})
		return
	}
	if lo > u.Hook && hi < u.Length() && !b.endsOn(t, u) {
		if crossable(u, t) {
			b.cross(u, t, span{lo, hi})
			return
		}
		b.wallFault(u.Wall, "walls-cross", fmt.Sprintf("crosses wall %s", t.Name),
			"end one of them at the other's face and continue with a second wall")
	}
}

// cornered tells whether an exterior wall's end stands at that of another, in a corner or in
// one line: an inside wall that reaches into it there does not cut it back.
func cornered(e wallEnd, group []wallEnd) bool {
	return e.w.Exterior && slices.ContainsFunc(group, func(o wallEnd) bool { return o.w != e.w && o.w.Exterior && o.w.beside(e.w) })
}

// endsOn tells whether t's own end stops at u, so that u does not cross it.
func (b *builder) endsOn(t, u *framedWall) bool {
	lo, hi, ok := t.body().crossing(u.onLine())
	return ok && (t.Hook >= lo-tReach && t.Hook <= hi+tReach || t.Length() >= lo-tReach && t.Length() <= hi+tReach)
}

// wallGrid returns a function that finds the walls, on whatever level, near
// a rectangle of the plan.
func (b *builder) wallGrid() func(lo, hi geom.Vec2) []*framedWall {
	if b.wallsAt == nil {
		b.wallsAt = geom.NewGrid[*framedWall]()
		for _, w := range b.walls {
			lo, hi := w.extent()
			b.wallsAt.Add(w, lo.Up(0), hi.Up(0), geom.Slant(w.From, w.To, w.Depth()))
		}
	}
	return func(lo, hi geom.Vec2) []*framedWall {
		const around = 6 // in, more than any gap that is closed
		by := geom.Vec2{X: around, Y: around}
		return b.wallsAt.Within(lo.Sub(by).Up(0), hi.Add(by).Up(0))
	}
}

// extent returns the rectangle that holds w on plan.
func (w *framedWall) extent() (lo, hi geom.Vec2) {
	l, h := column(w.frame, w.Hook, w.Length(), 0, w.Depth()).Bounds()
	return l.Flat(), h.Flat()
}

// wallFault notes an error of a wall.
func (b *builder) wallFault(w *plan.Wall, code plan.Code, what, mend string) {
	b.fault(plan.Diagnostic{
		Code: code, Pos: w.Pos, Where: "wall " + w.Name,
		Summary: fmt.Sprintf("wall %s %s", w.Name, what), Mend: mend,
	})
}
