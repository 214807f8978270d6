package framing

import (
	"math"
	"slices"

	"galewright/plan"
	"galewright/plan/geom"
)

// shearPosts puts a post stud at each end of a shear segment, unless a
// full-height member stands within 3 in of it: a hold-down must have one to
// hold (common practice, no published source). Where the plan asks for more
// studs there, they stand tight to it, away from the segment; at the wall's own end
// there is no room, and the studs of the corner do it.
func shearPosts(w *framedWall, l *layout) {
	for _, s := range w.Shear {
		for _, c := range []float64{s.From + plate/2, s.To - plate/2} {
			if !l.fullNear(c, 3) {
				l.put(slot{span: span{c - plate/2, c + plate/2}, role: plan.Post})
			}
		}
		for _, end := range []struct{ at, out float64 }{{max(s.From, w.s0), -1}, {min(s.To, w.s1), 1}} {
			l.thicken(w, end.at, end.out, s.Posts-1)
		}
	}
}

// thicken puts n more studs beside the one at the end of a segment, out being
// the way from the segment.
func (l *layout) thicken(w *framedWall, at, out float64, n int) {
	for _, x := range l.slots {
		if !x.role.FullHeight() || at < x.lo-3 || at > x.hi+3 {
			continue
		}
		switch room := plate * float64(n); {
		case out < 0 && x.lo-l.wall.lo >= room:
			l.beside(x.lo, -1, n)
		case out > 0 && l.wall.hi-x.hi >= room:
			l.beside(x.hi, 1, n)
		case w.through(out):
		case out < 0:
			l.beside(x.hi, 1, n)
		default:
			l.beside(x.lo, -1, n)
		}
		return
	}
}

// through tells whether a wall runs through over another at its end on one side.
func (w *framedWall) through(side float64) bool {
	return slices.ContainsFunc(w.meets, func(m meeting) bool { return m.over && float64(m.end) == side })
}

// innermost is the stud of a segment's post that faces the segment, of up to n that
// stand tight: what its tie is fastened to. dir is the way out of the segment.
func (w *framedWall) innermost(m *Member, dir float64, n int) *Member {
	for range n - 1 {
		next := w.nearest(w.uprights, m.Mid()-dir*plate)
		if abs(abs(next.Mid()-m.Mid())-plate) > geom.Eps {
			break
		}
		m = next
	}
	return m
}

// fullNear tells whether a full-height slot is centered within d of c.
func (l *layout) fullNear(c, d float64) bool {
	for _, x := range l.slots {
		if x.role.FullHeight() && math.Abs((x.lo+x.hi)/2-c) <= d {
			return true
		}
	}
	return false
}

// shearJoints finds wall ends and collectors of each shear segment.
func (b *builder) shearJoints() {
	for _, w := range b.walls {
		for _, s := range w.Shear {
			for _, end := range []struct{ s, mid, dir float64 }{{s.From, s.From + plate/2, -1}, {s.To, s.To - plate/2, 1}} {
				mid := min(max(end.mid, w.s0+plate/2), w.s1-plate/2)
				if m := w.nearest(w.uprights, mid); m != nil {
					m = w.innermost(m, end.dir, s.Posts)
					f := b.footOf(w, m)
					b.footJoint(w, plan.WallEnd, m, f).Tributary = s.To - s.From
				}
				b.collector(w, s, end.s, end.dir)
			}
		}
	}
}

// beyond is how far past a segment's end, in, its line must go on to make a
// collector worth a strap: half a stud space and a post.
const beyond = 12

// collector ties the top of a segment's end to what carries its line on: the
// wall's own plate, the plate of a wall in line, or a joist, beam or truss
// above. An interior wall that ends free gets a joint with nothing to
// tie to, so that the lack is told.
func (b *builder) collector(w *framedWall, s *plan.Shear, end, dir float64) {
	in := min(max(end-dir*plate/2, w.s0), w.s1)
	top := w.capAt(min(max(in, w.c0), w.c1))
	if top == nil {
		return
	}
	on, need := b.goesOn(w, top, end, dir)
	if !need {
		return
	}
	j := b.newJoint(w, plan.Collector, min(max(end, w.s0), w.s1), topAt(top, min(max(in, top.S0), top.S1)), append([]*Member{top}, on...)...)
	j.Below, j.Tributary = len(on) > 0, s.To-s.From
	if len(on) > 0 && on[0].Role == plan.PlateBeam {
		w.toBeam(j, top, on[0], dir)
	}
}

// goesOn finds the members that carry w's line on past a segment's end.
func (b *builder) goesOn(w *framedWall, top *Member, end, dir float64) (on []*Member, need bool) {
	out := end + dir*beyond
	if out > w.s0 && out < w.s1 {
		next := w.capAt(out + dir*sixteenth) // where it breaks just there, the piece beyond
		if next == nil || next == top {
			next = w.memberAt(w.plates, out)
		}
		return present(next), true
	}
	side := -1
	if dir > 0 {
		side = 1
	}
	met, outside := false, w.Exterior
	for _, m := range w.meets {
		if m.end == side && m.line {
			next := nearCap(m.other, m.tail)
			if next != nil && m.step(top, next) != 0 {
				next = nil // the plates lie at two heights: nothing of one goes on in the other
			}
			return present(next), true
		}
		met = met || m.end == side
		outside = outside || m.end == side && m.other.Exterior
	}
	if outside && w.insideCorner(side) {
		m := b.inLineAbove(w, out, dir)
		return present(m), m != nil // where nothing does, the load path tells
	}
	if outside {
		return nil, false // nothing goes on past the building's face
	}
	if m := b.inLineAbove(w, out, dir); m != nil {
		return []*Member{m}, true
	}
	return nil, !met && !b.rafterRunsOn(w, out, dir)
}

// rafterRunsOn tells whether a rafter that a rake wall ends under runs on past its end:
// the deck is nailed to it there as over the wall, and it to the wall's plates all along.
func (b *builder) rafterRunsOn(w *framedWall, out, dir float64) bool {
	if !w.rake() {
		return false
	}
	in := out - 2*dir*beyond
	z := w.seatAt(in) + 2*plate
	lo, hi := w.frame.Box(min(in, in+dir), max(in, in+dir), 0, w.Depth(), z-2, z+beyond).Bounds()
	return slices.ContainsFunc(b.index.Within(lo, hi), func(m *Member) bool {
		if m.Role != plan.Rafter || !geom.Parallel(m.B.Sub(m.A).Flat().Unit(), w.frame.D) {
			return false
		}
		x0, t := w.frame.Local(m.A.Flat())
		x1, _ := w.frame.Local(m.B.Flat())
		return t > -plate/2 && t < w.Depth()+plate/2 && min(x0, x1) <= min(in, out)+plate && max(x0, x1) >= max(in, out)-plate
	})
}

// insideCorner tells whether the house goes on past an exterior wall's end on one
// side: the exterior wall that it meets there goes off to the outside, as in the court
// of an L.
func (w *framedWall) insideCorner(side int) bool {
	return slices.ContainsFunc(w.meets, func(m meeting) bool {
		if m.end != side || !m.other.Exterior {
			return false
		}
		mid := m.other.From.Add(m.other.To).Mul(0.5)
		return mid.Sub(w.From).Dot(w.frame.In) < -1
	})
}

func present(m *Member) []*Member {
	if m == nil {
		return nil
	}
	return []*Member{m}
}

// nearCap returns the upper plate at one end of a wall.
func nearCap(w *framedWall, tail bool) *Member {
	if len(w.caps) == 0 {
		return nil
	}
	if tail {
		return w.caps[len(w.caps)-1]
	}
	return w.caps[0]
}

// inLineAbove returns the nearest member that runs w's way just above its
// plates at station s, a foot to each side at most.
func (b *builder) inLineAbove(w *framedWall, s, dir float64) (hit *Member) {
	mid := w.Depth() / 2
	lo, hi := w.frame.Box(min(s, s+dir), max(s, s+dir), mid-beyond, mid+beyond, w.top-1, w.top+beyond).Bounds()
	best := math.Inf(1)
	for _, m := range b.index.Within(lo, hi) {
		switch m.Role {
		case plan.Joist, plan.Beam, plan.PlateBeam, plan.FlushBeam, plan.Truss, plan.GirderTruss, plan.HipTruss, plan.JackTruss, plan.GirderBeam, plan.Rim:
		default:
			continue
		}
		d := m.B.Sub(m.A).Flat().Unit()
		if !geom.Parallel(d, w.frame.D) || b.house.Splices(m) {
			continue
		}
		x0, t := w.frame.Local(m.A.Flat())
		x1, _ := w.frame.Local(m.B.Flat())
		if off := math.Abs(t - mid); off < best-geom.Eps && off <= beyond && min(x0, x1) <= s && s <= max(x0, x1) {
			hit, best = m, off
		}
	}
	return hit
}
