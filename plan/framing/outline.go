package framing

import (
	"cmp"
	"fmt"
	"math"
	"slices"

	"galewright/plan"
	"galewright/plan/geom"
)

// edge is one side of a floor: the wall along it and how far in the floor's
// joists end, in.
type edge struct {
	w       *framedWall
	inset   float64
	balloon bool // the wall passes this floor: it has a ledger and no rim
}

// body returns the strip of depth d along the edge's wall.
func (e edge) body(d float64) body { return body{e.w.frame, e.w.Hook, e.w.Length(), d} }

// outline returns the loops of exterior walls round level l, each in order.
func (b *builder) outline(l *plan.Level) (loops [][]edge) {
	var sides []edge
	for _, w := range b.walls {
		if !w.Exterior {
			continue
		}
		switch {
		case w.Level == l:
			sides = append(sides, edge{w: w, inset: l.Rim})
		case w.Passes(l):
			sides = append(sides, edge{w: w, inset: w.Depth() + plate, balloon: true})
		}
	}
	starts := startsOf(sides)
	used := make([]bool, len(sides))
	for i := range sides {
		if used[i] {
			continue
		}
		if loop, ok := chain(sides, starts, used, i); ok {
			loops = append(loops, loop)
		} else {
			b.openLoop(l, sides, loop)
		}
	}
	b.turned(l, loops)
	return loops
}

// startsOf returns a function that finds the first side that starts at a
// point, or -1.
func startsOf(sides []edge) func(geom.Vec2) int {
	at := map[[2]int][]int{}
	key := func(p geom.Vec2) [2]int { return [2]int{int(math.Floor(p.X)), int(math.Floor(p.Y))} }
	for i, e := range sides {
		at[key(e.w.From)] = append(at[key(e.w.From)], i)
	}
	return func(p geom.Vec2) int {
		hit, k := -1, key(p)
		for dx := -1; dx <= 1; dx++ {
			for dy := -1; dy <= 1; dy++ {
				for _, i := range at[[2]int{k[0] + dx, k[1] + dy}] {
					if touches(sides[i].w.From, p) && (hit < 0 || i < hit) {
						hit = i
					}
				}
			}
		}
		return hit
	}
}

// chain follows the walls from side i, end to start, until it comes back.
func chain(sides []edge, starts func(geom.Vec2) int, used []bool, i int) (loop []edge, ok bool) {
	for at := i; ; {
		used[at] = true
		loop = append(loop, sides[at])
		if touches(sides[at].w.To, sides[i].w.From) {
			return loop, len(loop) > 2
		}
		next := starts(sides[at].w.To)
		if next < 0 || used[next] {
			return loop, false
		}
		at = next
	}
}

func touches(a, b geom.Vec2) bool { return a.Sub(b).Len() <= near }

// openLoop faults exterior walls that do not close. Without joists to lay
// only an end that all but meets another is a fault.
func (b *builder) openLoop(l *plan.Level, sides, loop []edge) {
	i := slices.IndexFunc(loop, func(e edge) bool {
		return !slices.ContainsFunc(sides, func(o edge) bool { return touches(e.w.To, o.w.From) })
	})
	if i < 0 {
		return // it runs into walls whose own end is faulted
	}
	last := loop[i].w
	var best *framedWall
	gap := math.Inf(1)
	for _, e := range sides {
		if d := e.w.From.Sub(last.To).Len(); e.w != last && d > near && d < gap {
			best, gap = e.w, d
		}
	}
	if best == nil || l.Joists.Depth == 0 && gap > 24 {
		if l.Joists.Depth > 0 {
			b.wallFault(last.Wall, "walls-open", fmt.Sprintf("ends where no exterior wall of level %s starts", l.Name), "close the outline; the floor needs it")
		}
		return
	}
	b.wallFault(last.Wall, "walls-open", fmt.Sprintf("ends %s from the start of wall %s, and no exterior wall of level %s starts there", b.inches(gap), best.Name, l.Name),
		"set one of the two points right, so that the outline closes")
}

// turned faults an outline written clockwise that is no courtyard.
func (b *builder) turned(l *plan.Level, loops [][]edge) {
	outer, yards := sides(loops)
	for _, y := range yards {
		if !slices.ContainsFunc(outer, func(o [][]edge) bool { return holds(o[0], y) }) {
			b.wallFault(y[0].w.Wall, "walls-clockwise", fmt.Sprintf("and the other exterior walls of level %s go around clockwise", l.Name),
				"write each from left to right as seen from outside")
		}
	}
}

// holds tells whether the outline o goes round loop.
func holds(o, loop []edge) bool { return contains(points(o), loop[0].w.From) }

// sides parts loops into outlines, which go round counterclockwise, and
// courtyards, which are seen from their own outside and go the other way.
func sides(loops [][]edge) (outer [][][]edge, yards [][]edge) {
	for _, o := range loops {
		if area(o) > 0 {
			outer = append(outer, [][]edge{o})
		} else {
			yards = append(yards, o)
		}
	}
	return outer, yards
}

// buildings parts loops into outlines, each with its courtyards.
func buildings(loops [][]edge) [][][]edge {
	outer, yards := sides(loops)
	for i, o := range outer {
		for _, y := range yards {
			if holds(o[0], y) {
				outer[i] = append(outer[i], y)
			}
		}
	}
	return outer
}

func points(loop []edge) (out []geom.Vec2) {
	for _, e := range loop {
		out = append(out, e.w.From)
	}
	return out
}

// area returns twice the signed area, positive when counterclockwise.
func area(loop []edge) (a float64) {
	p := points(loop)
	for i := range p {
		a += p[i].Sub(p[0]).Cross(p[(i+1)%len(p)].Sub(p[0]))
	}
	return a
}

func contains(p []geom.Vec2, q geom.Vec2) (in bool) {
	for i, a := range p {
		z := p[(i+1)%len(p)]
		if (a.Y <= q.Y) != (z.Y <= q.Y) && q.X < a.X+(z.X-a.X)*(q.Y-a.Y)/(z.Y-a.Y) {
			in = !in
		}
	}
	return in
}

// insetLoop returns the outline moved in by each edge's inset. Edges in line
// with different insets leave a step.
func insetLoop(loop []edge) (out []geom.Vec2) {
	n := len(loop)
	for i, e := range loop {
		prev := loop[(i+n-1)%n]
		d, f := prev.w.frame, e.w.frame
		corner := e.w.From
		if geom.Parallel(d.D, f.D) {
			out = append(out, corner.Add(d.In.Mul(prev.inset)), corner.Add(f.In.Mul(e.inset)))
			continue
		}
		out = append(out, cross(d, prev.inset, f, e.inset))
	}
	return out
}

// cross returns where the lines at depth s of frame a and t of frame b meet.
func cross(a geom.Frame, s float64, b geom.Frame, t float64) geom.Vec2 {
	p, q := a.At(0, s, 0).Flat(), b.At(0, t, 0).Flat()
	k := q.Sub(p).Cross(b.D) / a.D.Cross(b.D)
	return p.Add(a.D.Mul(k))
}

// inside returns the spans of stations, at depth t of frame f, that lie
// within the loops (even-odd, so a loop within a loop is a hole).
func inside(loops [][]geom.Vec2, f geom.Frame, t float64) (out []span) {
	var at []float64
	for _, loop := range loops {
		for i, p := range loop {
			s0, t0 := f.Local(p)
			s1, t1 := f.Local(loop[(i+1)%len(loop)])
			if (t0 <= t) != (t1 <= t) {
				at = append(at, s0+(s1-s0)*(t-t0)/(t1-t0))
			}
		}
	}
	slices.Sort(at)
	for i := 0; i+1 < len(at); i += 2 {
		out = append(out, span{at[i], at[i+1]})
	}
	return out
}

// insideBand returns the spans in which the whole band of depths t0..t1 lies
// within the loops.
func insideBand(loops [][]geom.Vec2, f geom.Frame, t0, t1 float64) []span {
	const hair = 1e-6
	levels := []float64{t0 + hair, t1 - hair}
	for _, loop := range loops {
		for _, p := range loop {
			if _, t := f.Local(p); t > t0+2*hair && t < t1-2*hair {
				levels = append(levels, t-hair, t+hair)
			}
		}
	}
	out := inside(loops, f, levels[0])
	for _, t := range levels[1:] {
		out = both(out, inside(loops, f, t))
	}
	return out
}

// both returns what two rows of spans have in common.
func both(a, b []span) (out []span) {
	for _, x := range a {
		for _, y := range b {
			if s := (span{max(x.lo, y.lo), min(x.hi, y.hi)}); s.hi-s.lo > geom.Eps {
				out = append(out, s)
			}
		}
	}
	slices.SortFunc(out, func(a, b span) int { return cmp.Compare(a.lo, b.lo) })
	return out
}

// without returns the spans with cut taken out.
func without(a []span, cut span) (out []span) {
	for _, x := range a {
		if !x.meets(cut) {
			out = append(out, x)
			continue
		}
		if cut.lo-x.lo > geom.Eps {
			out = append(out, span{x.lo, cut.lo})
		}
		if x.hi-cut.hi > geom.Eps {
			out = append(out, span{cut.hi, x.hi})
		}
	}
	return out
}
