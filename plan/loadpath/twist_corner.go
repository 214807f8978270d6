package loadpath

import (
	"math"
	"slices"

	"galewright/plan"
	"galewright/plan/framing"
)

// corners finds the inside corners, as of the court of an L, at which an exterior
// wall of a line ends and the deck that loads the line goes on: there the wall's
// plates must be tied to something that runs on in the line and gathers the deck's
// force. Interior walls have a collector joint at such an end.
func (t *twister) corners(x *LineShear) {
	seen := map[*plan.Wall]bool{}
	for _, g := range x.Segments {
		w := g.Wall
		if seen[w] || !w.Exterior || t.a.indoors[x.Level] == nil {
			continue
		}
		seen[w] = true
		from, to := axis(w.From, x.Axis), axis(w.To, x.Axis)
		t.corner(x, w, min(from, to), -1)
		t.corner(x, w, max(from, to), 1)
	}
}

// corner tells of one end of a wall, out being the way on along the line.
func (t *twister) corner(x *LineShear, w *plan.Wall, at, out float64) {
	drag := math.Abs(x.DragAt(at))
	if ASD.W*drag <= least || !x.under(t.a.indoors[x.Level], at+out*onFor) || t.runsOn(x, w, at, out) {
		return
	}
	t.gap(x, w, "collector past "+w.Name+" at "+t.a.u.Length(at), drag, "collector force there",
		"the house goes on past the wall's end at the inside corner, %s = %s, and nothing there that its plates are tied to carries the line on; run a wall, joist or beam on in line, tied to the plates by a strap, or have the engineer design the deck to bring its force in along the wall alone",
		plan.Axes[x.Axis], t.a.u.Length(at))
}

// runsOn tells whether the plates of a wall are tied to a member that runs on past
// its end in the line.
func (t *twister) runsOn(x *LineShear, w *plan.Wall, at, out float64) bool {
	on := func(m *framing.Member) bool {
		lo, hi := axis(m.A.Flat(), x.Axis), axis(m.B.Flat(), x.Axis)
		return gathers(m) && m.B.Sub(m.A).Flat().Unit().RunsAlong(x.Axis) && math.Abs(axis(m.A.Flat(), 1-x.Axis)-x.At) <= oneLine &&
			max(out*lo, out*hi) >= out*at+onFor
	}
	return slices.ContainsFunc(t.a.house.Members, func(m *framing.Member) bool {
		return m.Wall == w && (m.Role == plan.TopPlate || m.Role == plan.UpperPlate) && slices.ContainsFunc(t.next[m], on)
	})
}
