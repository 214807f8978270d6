package framing

import (
	"math"

	"galewright/plan/geom"
)

// The upper plate laps over the butt joint of the lower one, so that walls
// hold together at corners and intersections (IRC R602.3.2, from memory, asks for top
// plates that overlap at corners and at intersections with bearing
// partitions): at a corner the butting wall's upper plate runs over the
// through wall, whose own is cut back; at a T it runs over the wall it meets,
// whose own is broken there.

// level tells whether the top plates of two walls lie at one height.
func level(a, b *framedWall) bool {
	return math.Abs(a.top-b.top) < geom.Eps && !a.rake() && !b.rake()
}

// rake tells whether the wall's top follows a roof.
func (w *framedWall) rake() bool { return len(w.seat) > 0 }

// lapCorner sets the upper plates of the first two walls of a corner whose
// plates are level and that do not run in line.
func lapCorner(g []wallEnd) {
	for i, e := range g {
		for _, o := range g[:i] {
			if e.w == o.w || !level(e.w, o.w) || e.w.body().inLine(o.w.body()) {
				continue
			}
			lapOver(e, o)
			for _, x := range g {
				if x != e && level(x.w, e.w) {
					x.cutCap(e.w.capBody())
				}
			}
			return
		}
	}
}

// lapOver runs e's upper plate over wall o.w.
func lapOver(e, o wallEnd) {
	if e.teed(o.w) {
		return
	}
	s := e.w.capBody().throughStop(o.w.body(), e.tail)
	if e.tail {
		e.w.c1 = s
	} else {
		e.w.c0 = s
	}
}

// cutCap cuts the upper plate back at this end to what lies in its way.
func (e wallEnd) cutCap(o body) {
	s, ok := e.w.capBody().buttStop(o, e.tail)
	switch {
	case !ok:
	case e.tail:
		e.w.c1 = min(e.w.c1, s)
	default:
		e.w.c0 = max(e.w.c0, s)
	}
}

// span is a range of stations.
type span struct{ lo, hi float64 }

func (a span) mid() float64 { return (a.lo + a.hi) / 2 }

func (a span) meets(b span) bool { return a.lo < b.hi-geom.Eps && b.lo < a.hi-geom.Eps }

// lapTees runs the upper plates of the walls that meet w along its length
// over it, and notes where w's own upper plate is broken.
func lapTees(w *framedWall) {
	for _, m := range w.meets {
		if m.cross && m.over {
			lapCrossing(w, m)
		}
		if m.cross || m.end != 0 || !level(w, m.other) {
			continue
		}
		u := wallEnd{m.other, m.tail}
		lap := u.w.capBody()
		if s := lap.throughStop(w.body(), u.tail); u.tail {
			lap.s1 = s
		} else {
			lap.s0 = s
		}
		lo, hi, ok := w.capBody().crossing(lap)
		cut := span{lo, hi}
		if !ok || lo <= w.c0+24 || hi >= w.c1-24 || anyMeets(w.breaks, cut) {
			continue
		}
		u.w.c0, u.w.c1 = lap.s0, lap.s1
		w.breaks = append(w.breaks, cut)
	}
}

func anyMeets(list []span, s span) bool {
	for _, x := range list {
		if x.meets(s) {
			return true
		}
	}
	return false
}
