package project

import (
	"math"
	"slices"

	"galewright/plan/geom"
)

// span is a part of an edge, as shares of its length.
type span struct{ from, to float64 }

// real returns the parts of an edge that are edges of the thing itself, not
// seams between the convex solids that it is made of: around a seam the wood is
// whole, or its surface goes on flat.
func (e edge) real(of []*block) (out []span) {
	if len(of) == 1 {
		return []span{{0, 1}}
	}
	cuts := []float64{0, 1}
	for _, b := range of {
		if t0, t1, ok := geom.Within(grown(b.planes), e.a, e.b.Sub(e.a), 0, 1); ok {
			cuts = append(cuts, t0, t1)
		}
	}
	slices.Sort(cuts)
	for i := 1; i < len(cuts); i++ {
		t := span{cuts[i-1], cuts[i]}
		if t.to-t.from > 1e-9 && !seam(e, e.at((t.from+t.to)/2), of) {
			out = append(out, t)
		}
	}
	return out
}

// grown returns planes moved outward so that what touches them is inside.
func grown(planes []geom.Plane) []geom.Plane {
	out := slices.Clone(planes)
	for i := range out {
		out[i].C += near
	}
	return out
}

// seam tells whether the solids together have no edge at a point of an edge:
// around it, in the plane across the edge, they fill half the turn or all.
func seam(e edge, at geom.Vec3, of []*block) bool {
	d := e.b.Sub(e.a).Unit()
	x := e.faces[0].N
	y := d.Cross(x)
	var filled []span // angles around the edge, from 0 to a turn
	for _, b := range of {
		filled = append(filled, wedge(b.planes, at, x, y)...)
	}
	total := length(union(filled))
	return math.Abs(total-math.Pi) < 1e-3 || total > 2*math.Pi-1e-3
}

// wedge returns the angles around a point, in the plane of x and y, in which
// the solid inside the planes lies: one interval, or two where it passes zero.
func wedge(planes []geom.Plane, at, x, y geom.Vec3) []span {
	const turn = 2 * math.Pi
	w := []span{{0, turn}}
	for _, p := range planes {
		gap := p.C - p.N.Dot(at)
		if gap < -near {
			return nil
		}
		nx, ny := p.N.Dot(x), p.N.Dot(y)
		if gap > near || math.Hypot(nx, ny) < near {
			continue
		}
		from := math.Mod(math.Atan2(ny, nx)+math.Pi/2+turn, turn) // behind the face
		if from+math.Pi <= turn {
			w = both(w, []span{{from, from + math.Pi}})
		} else {
			w = both(w, []span{{0, from - math.Pi}, {from, turn}})
		}
	}
	return w
}

// both returns what lies in a and in b.
func both(a, b []span) (out []span) {
	for _, p := range a {
		for _, q := range b {
			if lo, hi := max(p.from, q.from), min(p.to, q.to); hi-lo > 1e-9 {
				out = append(out, span{lo, hi})
			}
		}
	}
	return out
}

// union returns spans joined where they touch, in order.
func union(list []span) (out []span) {
	slices.SortFunc(list, func(a, b span) int { return cmpFloat(a.from, b.from) })
	for _, s := range list {
		if n := len(out); n > 0 && s.from <= out[n-1].to+1e-9 {
			out[n-1].to = max(out[n-1].to, s.to)
		} else {
			out = append(out, s)
		}
	}
	return out
}

// without returns what of a span no span of a sorted list covers.
func without(s span, list []span) (out []span) {
	at := s.from
	for _, x := range list {
		if x.to <= at || x.from >= s.to {
			continue
		}
		if x.from-at > 1e-9 {
			out = append(out, span{at, x.from})
		}
		at = max(at, x.to)
	}
	if s.to-at > 1e-9 {
		out = append(out, span{at, s.to})
	}
	return out
}

func length(list []span) (l float64) {
	for _, s := range list {
		l += s.to - s.from
	}
	return l
}

func cmpFloat(a, b float64) int {
	switch {
	case a < b:
		return -1
	case a > b:
		return 1
	}
	return 0
}
