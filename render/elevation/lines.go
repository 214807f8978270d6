package elevation

import (
	"cmp"
	"math"
	"slices"

	"galewright/plan/geom"
	"galewright/render/project"
	"galewright/render/sheet"
)

// apart is the paper that two lines beside each other need between them to
// print as two, mm.
const apart sheet.MM = 0.2

// mostMerged bounds how far a line is moved to print on another, in: less
// than the thickness of a 2-by.
const mostMerged = 1

// level is how far the ends of a line may differ that counts as level or
// upright, in.
const level = 0.01

// segment is a line of lumber as it is drawn.
type segment struct{ a, b geom.Vec2 }

// way is how a segment runs.
type way int

const (
	slant way = iota
	across
	upright
)

func (s segment) way() way {
	switch {
	case abs(s.a.Y-s.b.Y) < level:
		return across
	case abs(s.a.X-s.b.X) < level:
		return upright
	}
	return slant
}

// inked returns the lines of the lumber as they are drawn, by pen. A level or
// upright line that would come too near to a nearer one to print as a line of its
// own is drawn on that one, as a drafter would; figures are those of the true
// place. Where lines fall on each other the heaviest is drawn, and a hidden one
// nowhere.
func (p *part) inked() map[sheet.Pen][]segment {
	out := map[sheet.Pen][]segment{}
	for _, l := range p.merged() {
		if pen := p.penOf(l); pen != sheet.NoPen {
			out[pen] = append(out[pen], segment{l.A, l.B})
		}
	}
	over := map[track][]span{}
	for _, pen := range [...]sheet.Pen{sheet.PenCut, sheet.PenMember, sheet.PenDim, sheet.PenHidden} {
		out[pen] = once(out[pen], over)
	}
	return out
}

// merged returns the lines of the lumber, those too near to a nearer one moved.
func (p *part) merged() []project.Line {
	lines := slices.Clone(p.elev.drawn)
	slices.SortStableFunc(lines, func(a, b project.Line) int {
		return cmp.Or(cmp.Compare(a.State, b.State), cmp.Compare(b.Depth, a.Depth))
	})
	most := min(mostMerged, float64(p.scale.MemberPen().Width()+apart)/p.scale.K())
	us, vs := newPlaces(most, p.su0, p.su1), newPlaces(most, p.sv0, p.sv1)
	for _, l := range lines {
		switch (segment{l.A, l.B}).way() {
		case across:
			vs.take(l.A.Y)
		case upright:
			us.take(l.A.X)
		}
	}
	for i := range lines {
		if l := &lines[i]; (segment{l.A, l.B}).way() != slant {
			l.A = geom.Vec2{X: us.of(l.A.X), Y: vs.of(l.A.Y)}
			l.B = geom.Vec2{X: us.of(l.B.X), Y: vs.of(l.B.Y)}
		}
	}
	return lines
}

// places are where level or upright lines are drawn.
type places struct {
	most  float64
	taken []float64 // in order
	moved map[int64]float64
}

func newPlaces(most float64, at ...float64) *places {
	return &places{most: most, taken: at, moved: map[int64]float64{}}
}

// take gives a line a place of its own, or that of one too near.
func (p *places) take(x float64) {
	if _, ok := p.moved[mil(x)]; ok {
		return
	}
	to := onto(p.taken, x, p.most)
	p.moved[mil(x)] = to
	if at, ok := slices.BinarySearch(p.taken, to); !ok {
		p.taken = slices.Insert(p.taken, at, to)
	}
}

// of returns where what ends at a line is drawn.
func (p *places) of(x float64) float64 {
	if to, ok := p.moved[mil(x)]; ok {
		return to
	}
	return x
}

func mil(x float64) int64 { return int64(math.Round(x * 1000)) }

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

// track is a level or upright line without ends.
type track struct {
	way way
	at  int64
}

// span is a stretch of a track.
type span struct{ from, to float64 }

// once returns segments without what is drawn over them already, which it notes.
func once(list []segment, over map[track][]span) (out []segment) {
	for _, s := range list {
		w := s.way()
		if w == slant {
			out = append(out, s)
			continue
		}
		t, x := track{w, mil(s.a.Y)}, span{min(s.a.X, s.b.X), max(s.a.X, s.b.X)}
		if w == upright {
			t, x = track{w, mil(s.a.X)}, span{min(s.a.Y, s.b.Y), max(s.a.Y, s.b.Y)}
		}
		for _, free := range without(x, over[t]) {
			q := segment{geom.Vec2{X: free.from, Y: s.a.Y}, geom.Vec2{X: free.to, Y: s.a.Y}}
			if w == upright {
				q = segment{geom.Vec2{X: s.a.X, Y: free.from}, geom.Vec2{X: s.a.X, Y: free.to}}
			}
			out = append(out, q)
		}
		over[t] = join(over[t], x)
	}
	return out
}

// without returns what of a span none of a list in order covers.
func without(x span, list []span) (out []span) {
	for _, s := range list {
		if s.from > x.from && s.from < x.to {
			out = append(out, span{x.from, s.from})
		}
		if s.to > x.from && s.from < x.to {
			x.from = s.to
		}
	}
	if x.to-x.from > geom.Eps {
		out = append(out, x)
	}
	return out
}

// join adds a span to a list in order; what touches becomes one.
func join(list []span, x span) []span {
	var out []span
	for _, s := range list {
		if s.from <= x.to+geom.Eps && s.to >= x.from-geom.Eps {
			x = span{min(x.from, s.from), max(x.to, s.to)}
		} else {
			out = append(out, s)
		}
	}
	at, _ := slices.BinarySearchFunc(out, x, func(a, b span) int { return cmp.Compare(a.from, b.from) })
	return slices.Insert(out, at, x)
}
