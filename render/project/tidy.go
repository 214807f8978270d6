package project

import (
	"cmp"
	"math"
	"slices"
	"sync"

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
	where := func(of []Line) []span {
		out := make([]span, len(of))
		for i, l := range of {
			out[i] = span{min(at(l.A), at(l.B)), max(at(l.A), at(l.B))}
		}
		return union(out)
	}
	groups := alike(lines)
	over := coverers(lines, groups, where)
	for i, group := range groups {
		over := over(i)
		for _, s := range where(group) {
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

// coverers returns, by the number of a group, where its lines are left out because
// they coincide with others: hidden ones with any that shows, seen ones with the same
// body's cut.
func coverers(lines []Line, groups [][]Line, where func([]Line) []span) func(i int) []span {
	cut := map[any][]Line{} // by owner
	var shows []Line
	for _, l := range lines {
		if l.State == Cut {
			cut[l.Owner] = append(cut[l.Owner], l)
		}
		if l.State == Seen || l.State == Cut {
			shows = append(shows, l)
		}
	}
	all := sync.OnceValue(func() []span { return where(shows) })
	return func(i int) []span {
		switch g := groups[i][0]; g.State {
		case Hidden:
			return all()
		case Seen:
			return where(cut[g.Owner])
		}
		return nil
	}
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
