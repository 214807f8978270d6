package section

import (
	"cmp"
	"math"
	"slices"

	"galewright/plan/geom"
	"galewright/render/page"
	"galewright/render/project"
	"galewright/render/scene"
	"galewright/render/sheet"
)

// stretch is a part of a picture, in, from low to high.
type stretch struct{ from, to float64 }

// What of a plain stretch stays at either side of a break, the least that a break takes
// out, in, and the room on paper between its two lines, mm.
const (
	stays = 7.0
	least = 8.0
)

const gap sheet.MM = 3

// partOf is what a line is of.
func partOf(l project.Line) scene.Part {
	part, _ := l.Owner.(scene.Part)
	return part
}

// axis is a direction of the picture: 0 across, 1 up.
type axis int

func (x axis) of(p geom.Vec2) float64 {
	if x == 0 {
		return p.X
	}
	return p.Y
}

// plain finds the stretches of a picture in which nothing ends, turns or is fastened: up,
// where only plumb lines pass; across, where only lines pass that go on. They are where
// it may be broken.
func (s *slice) plain(x axis) (out []stretch) {
	taken := []stretch{{x.of(s.lo), x.of(s.lo)}, {x.of(s.hi), x.of(s.hi)}}
	for _, l := range s.lines {
		a, b := x.of(l.A), x.of(l.B)
		if a > b {
			a, b = b, a
		}
		straight := math.Abs((1-x).of(l.A)-(1-x).of(l.B)) < 1.0/32
		if partOf(l).Body != nil || x == 1 && !straight && b-a > 0 {
			taken = append(taken, stretch{a, b})
			continue
		}
		taken = append(taken, stretch{a, a}, stretch{b, b})
	}
	for _, r := range s.rows {
		taken = append(taken, stretch{x.of(r.at), x.of(r.at)})
	}
	slices.SortFunc(taken, func(a, b stretch) int { return cmp.Compare(a.from, b.from) })
	end := taken[0].to
	for _, t := range taken {
		if t.from-end > 2*stays+least {
			out = append(out, stretch{end + stays, t.from - stays})
		}
		end = max(end, t.to)
	}
	return out
}

// paper is where a section's places are on its sheet: real scale but for what the breaks
// take out.
type paper struct {
	scale  page.Scale
	breaks [2][]stretch
	lo     geom.Vec2
	origin sheet.Pt // of lo
}

// along is how far on paper a place is from the low end of the picture, mm.
func (p *paper) along(x axis, at float64) sheet.MM {
	long, gaps := at-x.of(p.lo), sheet.MM(0)
	for _, b := range p.breaks[x] {
		if at <= b.from {
			break
		}
		long -= min(at, b.to) - b.from
		if at >= b.to {
			gaps += gap
		}
	}
	return sheet.MM(long*p.scale.K()) + gaps
}

// at is the place on paper of a place in the section.
func (p *paper) at(q geom.Vec2) sheet.Pt {
	return sheet.Pt{X: p.origin.X + p.along(0, q.X), Y: p.origin.Y - p.along(1, q.Y)}
}

// pieces parts a line at the breaks: what is taken out is left out.
func (p *paper) pieces(a, b geom.Vec2) [][2]geom.Vec2 {
	list := [][2]geom.Vec2{{a, b}}
	for _, x := range []axis{0, 1} {
		for _, cut := range p.breaks[x] {
			var left [][2]geom.Vec2
			for _, l := range list {
				left = append(left, outside(x, cut, l)...)
			}
			list = left
		}
	}
	return list
}

// outside is what of a line lies outside of a stretch.
func outside(x axis, cut stretch, l [2]geom.Vec2) (out [][2]geom.Vec2) {
	a, b := l[0], l[1]
	if x.of(a) > x.of(b) {
		a, b = b, a
	}
	to := func(at float64) geom.Vec2 { return a.Add(b.Sub(a).Mul((at - x.of(a)) / (x.of(b) - x.of(a)))) }
	if x.of(b) <= cut.from || x.of(a) >= cut.to {
		return [][2]geom.Vec2{l}
	}
	if x.of(a) < cut.from {
		out = append(out, [2]geom.Vec2{a, to(cut.from)})
	}
	if x.of(b) > cut.to {
		out = append(out, [2]geom.Vec2{to(cut.to), b})
	}
	return out
}

// passing are the extents along the other axis of what crosses a break, one of each
// member or of members close to each other, at its low and at its high side.
func (s *slice) passing(x axis, cut stretch) (low, high []stretch) {
	var at [2][]float64
	for _, l := range s.lines {
		a, b := x.of(l.A), x.of(l.B)
		if min(a, b) > cut.from || max(a, b) < cut.to {
			continue
		}
		for i, side := range []float64{cut.from, cut.to} {
			k := (side - a) / (b - a)
			at[i] = append(at[i], (1-x).of(l.A)+k*((1-x).of(l.B)-(1-x).of(l.A)))
		}
	}
	return clusters(at[0]), clusters(at[1])
}

// together is how far apart the edges of a member may be that is broken off by one line, in.
const together = 13.0

// clusters gathers places that are close to each other.
func clusters(list []float64) (out []stretch) {
	slices.Sort(list)
	for _, v := range list {
		if n := len(out); n > 0 && v-out[n-1].to < together {
			out[n-1].to = v
			continue
		}
		out = append(out, stretch{v, v})
	}
	return out
}
