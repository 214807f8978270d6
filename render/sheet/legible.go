package sheet

import (
	"cmp"
	"math"
	"slices"
)

// SmallestLettering returns the text of the sheet with the lowest capitals,
// and their height; ok is false when the sheet has none.
func SmallestLettering(sh *Sheet) (t Text, cap MM, ok bool) {
	for _, m := range sh.Marks {
		x, is := m.(Text)
		if is && x.S != "" && (!ok || x.Size < t.Size) {
			t, ok = x, true
		}
	}
	return t, t.Size * CapHeight, ok
}

// Gap is the paper seen between two parallel strokes.
type Gap struct {
	A, B  Line // as drawn, with the style of the mark they are a side of
	Clear MM   // between the edges of the strokes
}

// SmallestGap returns the narrowest strip of paper between two upright or two
// level strokes that run beside each other for at least 2 mm on one layer;
// ok is false when there are none. Strokes that touch or lie on each other
// leave no strip: two members side by side share an edge. In a print whose
// strip is under a stroke's own width, two lines become one.
func SmallestGap(sh *Sheet) (g Gap, ok bool) {
	g.Clear = MM(math.Inf(1))
	for _, upright := range []bool{false, true} {
		ls := strokes(sh, upright)
		for i, a := range ls {
			for _, b := range ls[i+1:] {
				d := b.at - a.at
				if d > g.Clear+2 {
					break // sorted: all that follow are farther away
				}
				clear := d - (a.Pen.Width()+b.Pen.Width())/2
				beside := min(a.to, b.to) - max(a.from, b.from)
				if clear > 0.01 && beside >= 2 && a.Layer == b.Layer && clear < g.Clear {
					g, ok = Gap{A: a.Line, B: b.Line, Clear: clear}, true
				}
			}
		}
	}
	return g, ok
}

// stroke is a level line at height at from from to to, or an upright one with
// x and y changed.
type stroke struct {
	Line
	at, from, to MM
}

// strokes returns the level or upright strokes of a sheet in order of place.
func strokes(sh *Sheet, upright bool) (out []stroke) {
	add := func(s Style, a, b Pt) {
		if upright {
			a, b = Pt{a.Y, a.X}, Pt{b.Y, b.X}
		}
		if s.Pen == NoPen || math.Abs(float64(a.Y-b.Y)) > 1e-6 || a.X == b.X {
			return
		}
		out = append(out, stroke{Line{Style: s, A: a, B: b}, a.Y, min(a.X, b.X), max(a.X, b.X)})
	}
	for _, m := range sh.Marks {
		switch m := m.(type) {
		case Line:
			add(m.Style, m.A, m.B)
		case Polyline:
			for i := 1; i < len(m.Pts); i++ {
				add(m.Style, m.Pts[i-1], m.Pts[i])
			}
			if m.Closed && len(m.Pts) > 2 {
				add(m.Style, m.Pts[len(m.Pts)-1], m.Pts[0])
			}
		}
	}
	slices.SortFunc(out, func(a, b stroke) int {
		return cmp.Or(cmp.Compare(a.at, b.at), cmp.Compare(a.from, b.from), cmp.Compare(a.to, b.to), cmp.Compare(a.Pen, b.Pen), cmp.Compare(a.Layer, b.Layer))
	})
	return out
}
