package framing

import (
	"math"

	"galewright/plan/geom"
)

// The upper plate laps over the butt joint of the lower one, so that walls
// hold together at corners and intersections (IRC R602.3.2 asks for top
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
			return
		}
	}
}

// lapOver runs e's upper plate over wall o.w and cuts o's back to it.
func lapOver(e, o wallEnd) {
	if e.teed2(o.w) {
		return
	}
	s := e.w.capBody().throughStop(o.w.body(), e.tail)
	if e.tail {
		e.w.c1 = s
	} else {
		e.w.c0 = s
	}
	if s, ok := o.w.capBody().buttStop(e.w.capBody(), o.tail); ok {
		if o.tail {
			o.w.c1 = min(o.w.c1, s)
		} else {
			o.w.c0 = max(o.w.c0, s)
		}
	}
}

// teed2 tells whether the end stops at the side of a wall other than o.
func (e wallEnd) teed2(o *framedWall) bool {
	for _, m := range e.w.meets {
		if m.end == e.side() && !m.over && !m.line && m.other != o {
			return true
		}
	}
	return false
}

// span is a range of stations.
type span struct{ lo, hi float64 }

func (a span) meets(b span) bool { return a.lo < b.hi-geom.Eps && b.lo < a.hi-geom.Eps }

// lapTees runs the upper plates of the walls that meet w along its length
// over it, and notes where w's own upper plate is broken.
func lapTees(w *framedWall) {
	for _, m := range w.meets {
		if m.end != 0 || !level(w, m.other) {
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
