package sheet

import (
	"cmp"
	"slices"
)

// Overlap is two pieces of lettering that lie on each other.
type Overlap struct{ A, B Text }

// TextOverlaps returns every pair of lettering of the sheet whose boxes share
// more than tol, in order of place from left to right.
func TextOverlaps(sh *Sheet, tol MM) (out []Overlap) {
	type lettering struct {
		Text
		box Rect
	}
	var ts []lettering
	for _, m := range sh.Marks {
		if t, ok := m.(Text); ok && t.S != "" {
			ts = append(ts, lettering{t, t.Box().Inset(tol / 2)})
		}
	}
	slices.SortStableFunc(ts, func(a, b lettering) int { return cmp.Compare(a.box.X, b.box.X) })
	for i, a := range ts {
		for _, b := range ts[i+1:] {
			if b.box.X >= a.box.X+a.box.W {
				break // sorted: all that follow begin farther right
			}
			if a.box.Overlaps(b.box) {
				out = append(out, Overlap{a.Text, b.Text})
			}
		}
	}
	return out
}
