package elevation

import (
	"slices"

	"galewright/plan/geom"
	"galewright/render/sheet"
)

// apart is the paper that two lines beside each other need between them to
// print as two, mm.
const apart sheet.MM = 0.2

// mostMerged bounds how far an edge is moved to print on another, in: less
// than the thickness of a 2-by.
const mostMerged = 1

// level is how far the ends of an edge may differ that counts as level or
// upright, in.
const level = 0.01

// merged returns the outlines of all shapes as they are drawn. A level or
// upright edge that would come too near to one of a nearer shape to print as a
// line of its own is drawn on that one, as a drafter would; figures are
// those of the true place. A shape too thin to show two sides is nil.
func (p *part) merged() [][]geom.Vec2 {
	most := min(mostMerged, float64(p.scale.MemberPen().Width()+apart)/p.scale.K())
	out := make([][]geom.Vec2, len(p.shapes))
	us, vs := []float64{p.su0, p.su1}, []float64{p.sv0, p.sv1} // of nearer shapes and the cut, in order
	for i, s := range slices.Backward(p.shapes) {
		if out[i] = s.pts; s.hidden {
			continue
		}
		if u0, u1, v0, v1 := s.bounds(); u1-u0 < most || v1-v0 < most {
			out[i] = nil // a sliver of a member that is cut beside the wall
			continue
		}
		pts := slices.Clone(s.pts)
		us = mergeEdges(pts, us, most, func(q *geom.Vec2) *float64 { return &q.X })
		vs = mergeEdges(pts, vs, most, func(q *geom.Vec2) *float64 { return &q.Y })
		switch u0, u1, v0, v1 := (shape{pts: pts}).bounds(); {
		case u1-u0 > geom.Eps && v1-v0 > geom.Eps:
			out[i] = pts
		case s.m.Wall == nil: // both sides fall on one line that is there
			out[i] = nil
		}
	}
	return out
}

// mergeEdges moves the edges of an outline along which a coordinate is
// constant onto the nearest of the places, and returns the places with those
// of the outline.
func mergeEdges(pts []geom.Vec2, places []float64, most float64, of func(*geom.Vec2) *float64) []float64 {
	var own []float64
	was := slices.Clone(pts)
	for i := range pts {
		n := (i + 1) % len(pts)
		if x := *of(&was[i]); abs(x-*of(&was[n])) < level {
			x = onto(places, x, most)
			*of(&pts[i]), *of(&pts[n]) = x, x
			own = append(own, x)
		}
	}
	for _, x := range own {
		if at, ok := slices.BinarySearch(places, x); !ok {
			places = slices.Insert(places, at, x)
		}
	}
	return places
}

// onto returns the place of the sorted list nearest to x, if it is nearer than
// most, else x.
func onto(list []float64, x, most float64) float64 {
	at, _ := slices.BinarySearch(list, x)
	best := x
	for i := max(0, at-1); i < min(at+1, len(list)); i++ {
		if d := abs(list[i] - x); d < most {
			best, most = list[i], d
		}
	}
	return best
}
