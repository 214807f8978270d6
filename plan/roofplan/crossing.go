package roofplan

import (
	"cmp"
	"math"
	"slices"

	"galewright/plan/geom"
)

// crossing is where a rafter's line meets an edge of the face's outline or a
// carried valley, at height h up the slope.
type crossing struct {
	h    float64 // along the uphill direction
	kind EdgeKind
	line *Line
}

// RunsAt returns the runs of face f at a station: one, or several where the
// face is not convex or a carried valley crosses it.
func (r *Roof) RunsAt(f *Face, s float64) (out []*Run) {
	up := f.Uphill()
	point := func(h float64) geom.Vec2 {
		if f.Plane.G.X == 0 {
			return geom.Vec2{X: s, Y: h * up.Y}
		}
		return geom.Vec2{X: h * up.X, Y: s}
	}
	cs := r.crossings(f, s, -probe)
	if other := r.crossings(f, s, probe); better(other, cs) {
		cs = other
	}
	cs = thinned(cs)
	for i := 1; i < len(cs); i++ {
		lo, hi := cs[i-1], cs[i]
		mid := point((lo.h + hi.h) / 2)
		if !contains(f.Outline, mid) {
			continue
		}
		run := &Run{
			Face: f, Station: s, Low: point(lo.h), High: point(hi.h),
			LowEnd: End{lo.kind, lo.line}, HighEnd: End{hi.kind, hi.line},
		}
		r.atRidgeEnd(run)
		run.Kind = run.kindOf()
		out = append(out, run)
	}
	return out
}

// thinned drops, of crossings within an inch of each other, all but the one
// that carries most: a rafter that meets a ridge where a valley comes up to
// it is held by the ridge.
func thinned(cs []crossing) (out []crossing) {
	order := []EdgeKind{Ridge, Hip, Eave, Wall, Rake, Valley}
	for _, c := range cs {
		n := len(out)
		if n == 0 || c.h-out[n-1].h >= 1 {
			out = append(out, c)
		} else if slices.Index(order, c.kind) < slices.Index(order, out[n-1].kind) {
			out[n-1] = c
		}
	}
	return out
}

// better tells whether crossings a describe a line that lies on a corner
// better than b do: more of them, or a ridge at the top, or a wall beside a hip that ends there.
func better(a, b []crossing) bool {
	if len(a) != len(b) {
		return len(a) > len(b)
	}
	if len(a) == 0 {
		return false
	}
	x, y := a[len(a)-1].kind, b[len(b)-1].kind
	return x == Ridge && y != Ridge || x == Wall && y == Hip
}

// bound is one edge of a face's outline, or a carried valley across it.
type bound struct {
	a, b   geom.Vec2
	sa, sb float64 // the ends along the eave
	kind   EdgeKind
	line   *Line
}

// boundsOf returns what may end a rafter of f, worked out once.
func (r *Roof) boundsOf(f *Face) []bound {
	if got, ok := r.bounds[f]; ok {
		return got
	}
	var out []bound
	add := func(a, b geom.Vec2, kind EdgeKind, line *Line) {
		out = append(out, bound{a, b, f.across(a), f.across(b), kind, line})
	}
	for i, kind := range f.Edges {
		a, b := f.Outline[i], f.Outline[(i+1)%len(f.Outline)]
		add(a, b, kind, r.lineOn(kind, a, b))
	}
	for _, l := range r.Lines {
		if l.Carried == nil {
			continue
		}
		mid := l.Carried.Add(l.B.Flat()).Mul(0.5)
		if contains(f.Outline, mid) && math.Abs(f.Plane.At(l.B.Flat())-l.B.Z) < step {
			add(*l.Carried, l.B.Flat(), Valley, l)
		}
	}
	if r.bounds == nil {
		r.bounds = map[*Face][]bound{}
	}
	r.bounds[f] = out
	return out
}

// crossings returns where the line at station s meets the outline of f. The
// line is looked up a little beside, at s+beside, so that it never runs
// through a corner; heights are then taken at s itself.
func (r *Roof) crossings(f *Face, s, beside float64) (out []crossing) {
	up := f.Uphill()
	for _, e := range r.boundsOf(f) {
		if at := s + beside; (e.sa > at) != (e.sb > at) {
			p := e.a.Add(e.b.Sub(e.a).Mul((s - e.sa) / (e.sb - e.sa)))
			out = append(out, crossing{p.Dot(up), e.kind, e.line})
		}
	}
	slices.SortStableFunc(out, func(a, b crossing) int { return cmp.Compare(a.h, b.h) })
	return out
}

// lineOn returns the line of the kind that the edge a b lies on, or nil.
func (r *Roof) lineOn(kind EdgeKind, a, b geom.Vec2) *Line {
	mid := a.Add(b).Mul(0.5)
	for _, l := range r.Lines {
		if l.Kind == kind && distance(mid, l.A.Flat(), l.B.Flat()) < near {
			return l
		}
	}
	return nil
}

// atRidgeEnd turns the upper end of a run that meets the very end of a ridge
// into a ridge end.
func (r *Roof) atRidgeEnd(run *Run) {
	if run.HighEnd.Kind != Hip {
		return
	}
	for _, l := range r.Lines {
		if l.Kind == Ridge && (l.A.Flat().Sub(run.High).Len() < near || l.B.Flat().Sub(run.High).Len() < near) {
			run.HighEnd = End{Ridge, l}
		}
	}
}
