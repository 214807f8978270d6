package loadpath

import (
	"math"
	"slices"

	"galewright/plan"
	"galewright/plan/geom"
)

// outline is the exterior walls of a level on plan; nil where they close no
// loop, and then all between their extents counts as inside.
type outline [][2]geom.Vec2

// outlineOf reads the exterior walls of a level.
func outlineOf(p *plan.Plan, l *plan.Level) (o outline) {
	ends := map[geom.Vec2]int{}
	for _, w := range p.Walls {
		if w.Exterior && w.On(l) {
			o = append(o, [2]geom.Vec2{w.From, w.To})
			ends[w.From]++
			ends[w.To]--
		}
	}
	for _, n := range ends {
		if n != 0 {
			return nil
		}
	}
	return o
}

// inside tells whether a plan point lies within the walls.
func (o outline) inside(p geom.Vec2) bool { return o == nil || o.hits(p, 0, 1)%2 == 1 }

// hits counts the walls that a ray from p along an axis meets.
func (o outline) hits(p geom.Vec2, ax int, sign float64) (n int) {
	for _, w := range o {
		if at, ok := crossing(w, axis(p, 1-ax), ax); ok && (at-axis(p, ax))*sign > 0 {
			n++
		}
	}
	return n
}

// depth returns how far the house reaches along an axis where it reaches least
// between two coordinates across it, in: in one piece, so that of a house with two
// wings the longer counts. Past the walls it is as deep as at them; whole is the
// extent of the walls, which counts where they close no loop.
func (o outline) depth(whole extent, ax int, lo, hi float64) float64 {
	if o == nil {
		return whole.span(ax)
	}
	first, last := axis(whole.lo, 1-ax), axis(whole.hi, 1-ax)
	at := []float64{clamp(lo, first, last-1), clamp(hi, first+1, last)}
	for _, w := range o {
		for _, p := range w {
			if c := axis(p, 1-ax); c > at[0] && c < at[1] {
				at = append(at, c)
			}
		}
	}
	slices.Sort(at)
	least := math.Inf(1)
	for i := 1; i < len(at); i++ {
		in := math.Min(0.5, (at[i]-at[i-1])/4) // just inside each end
		if at[i] > at[i-1] {
			least = math.Min(least, math.Min(o.across(ax, at[i-1]+in), o.across(ax, at[i]-in)))
		}
	}
	return least
}

// across returns the longest piece of the house along an axis at a coordinate
// across it, in.
func (o outline) across(ax int, at float64) (long float64) {
	var hits []float64
	for _, w := range o {
		if x, ok := crossing(w, at, ax); ok {
			hits = append(hits, x)
		}
	}
	slices.Sort(hits)
	for i := 1; i < len(hits); i += 2 {
		long = math.Max(long, hits[i]-hits[i-1])
	}
	return long
}

// crossing returns where a wall meets the line along an axis at a coordinate
// across it.
func crossing(w [2]geom.Vec2, across float64, ax int) (at float64, ok bool) {
	a, b := axis(w[0], 1-ax), axis(w[1], 1-ax)
	if (a > across) == (b > across) {
		return 0, false
	}
	k := (across - a) / (b - a)
	return axis(w[0], ax) + k*(axis(w[1], ax)-axis(w[0], ax)), true
}

// faces tells whether the wind from a side across or along an axis reaches a
// place that is open below and is stopped there by a wall behind it.
func (o outline) faces(p geom.Vec2, ax int, side float64) bool {
	return o.hits(p, ax, side) == 0 && o.hits(p, ax, -side) > 0
}

// wallsUnder returns where along u the line of a strip comes out of the house
// or into it.
func (s *strip) wallsUnder(o outline) (out []float64) {
	ax := s.Up.MainAxis()
	for _, w := range o {
		if at, ok := crossing(w, axis(s.Low, 1-ax), ax); ok {
			u := s.uOf(at, ax)
			if o.inside(s.At(u-1)) != o.inside(s.At(u+1)) && u > 0 && u < s.Run {
				out = append(out, u)
			}
		}
	}
	return out
}

// reaches tells whether the wind of a case presses under a place in such a
// corner: from its own side, or from that of its corner.
func (rc roofCase) reaches(p geom.Vec2) bool {
	for ax := range 2 {
		for _, side := range []float64{-1, 1} {
			if rc.wind.windward(ax, side) && rc.outline.faces(p, ax, side) {
				return true
			}
		}
	}
	return false
}
