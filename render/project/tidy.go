package project

import (
	"cmp"
	"math"
	"slices"

	"galewright/plan/geom"
)

// track is a line without ends that lines of a picture lie on.
type track struct{ angle, off int64 }

// trackOf returns the track of a line, and the unit direction along it: to the
// right, or up.
func trackOf(l Line) (track, geom.Vec2) {
	d := l.B.Sub(l.A).Unit()
	if d.X < -1e-6 || (math.Abs(d.X) <= 1e-6 && d.Y < 0) {
		d = d.Mul(-1)
	}
	return track{int64(math.Round(math.Atan2(d.Y, d.X) * 1e4)), int64(math.Round(d.Cross(l.A) * 1e3))}, d
}

// tidy joins lines of one owner and state that lie on each other, and takes
// from hidden ones what coincides with seen ones.
func tidy(lines []Line) (out []Line) {
	byTrack := map[track][]Line{}
	var order []track
	for _, l := range lines {
		k, _ := trackOf(l)
		if byTrack[k] == nil {
			order = append(order, k)
		}
		byTrack[k] = append(byTrack[k], l)
	}
	for _, k := range order {
		out = append(out, tidyTrack(byTrack[k])...)
	}
	return out
}

// tidyTrack is tidy for lines on one track.
func tidyTrack(lines []Line) (out []Line) {
	_, d := trackOf(lines[0])
	at := func(p geom.Vec2) float64 { return p.Dot(d) }
	base := lines[0].A.Sub(d.Mul(at(lines[0].A)))
	where := func(of ...Line) (out []span) {
		for _, l := range of {
			out = append(out, span{min(at(l.A), at(l.B)), max(at(l.A), at(l.B))})
		}
		return union(out)
	}
	for _, group := range alike(lines) {
		over := where(slices.DeleteFunc(slices.Clone(lines), func(l Line) bool { return !group[0].yields(l) })...)
		for _, s := range where(group...) {
			for _, s := range without(s, over) {
				if s.to-s.from > near {
					l := group[0]
					l.A, l.B = base.Add(d.Mul(s.from)), base.Add(d.Mul(s.to))
					out = append(out, l)
				}
			}
		}
	}
	return out
}

// yields tells whether a line is left out where it coincides with another: a
// hidden one with any that shows, a seen one with the same body's cut.
func (l Line) yields(to Line) bool {
	switch l.State {
	case Hidden:
		return to.State == Seen || to.State == Cut
	case Seen:
		return to.State == Cut && to.Owner == l.Owner
	}
	return false
}

// alike groups lines by owner and state, in the order of the first of each;
// each group has its nearest line first.
func alike(lines []Line) (out [][]Line) {
	type key struct {
		owner any
		state State
	}
	at := map[key]int{}
	for _, l := range lines {
		k := key{l.Owner, l.State}
		i, ok := at[k]
		if !ok {
			i = len(out)
			at[k] = i
			out = append(out, nil)
		}
		out[i] = append(out[i], l)
	}
	for _, g := range out {
		slices.SortStableFunc(g, func(a, b Line) int { return cmp.Compare(b.Depth, a.Depth) })
	}
	return out
}
