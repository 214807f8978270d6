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
	if ASD.W*drag <= least || !x.under(t.a.indoors[x.Level], at+out*onFor) {
		return
	}
	if on := t.runsOn(x, w, at, out); on != nil {
		t.fed(x, w, on, at, drag)
		return
	}
	t.gap(x, w, "collector past "+w.Name+" at "+t.a.u.Length(at), drag, "collector force there",
		"the house goes on past the wall's end at the inside corner, %s = %s, and nothing there that its plates are tied to carries the line on; run a wall, joist or beam on in line, tied to the plates by a strap, or have the engineer design the deck to bring its force in along the wall alone",
		plan.Axes[x.Axis], t.a.u.Length(at))
}

// fed tells of what runs on past an inside corner below the deck, a flush beam or
// the plates of a wall, that no member of the deck is tied to: nothing brings the
// deck's force into it. It asks whether there is a tie, not how much that holds.
func (t *twister) fed(x *LineShear, w *plan.Wall, on *framing.Member, at, drag float64) {
	if deckRole(on) || t.met(t.goingOn(on), deckRole) {
		return
	}
	t.gap(x, w, "deck to "+on.ID+" past "+w.Name+" at "+t.a.u.Length(at), drag, "collector force there",
		"the %s %s carries the line on past the inside corner, and no fastener ties the deck to it; bring the deck's force down into it by blocking or rafters tied to it, or have the engineer design how it gets there", on.Role, on.ID)
}

// goingOn returns a member that runs on, of a wall's plates all of that wall.
func (t *twister) goingOn(on *framing.Member) []*framing.Member {
	out := []*framing.Member{on}
	for _, m := range t.a.house.Members {
		if on.Wall != nil && m != on && m.Wall == on.Wall && (m.Role == plan.TopPlate || m.Role == plan.UpperPlate) {
			out = append(out, m)
		}
	}
	return out
}

// runsOn returns a member that runs on past a wall's end in the line and that the
// wall's plates are tied to, nil for none.
func (t *twister) runsOn(x *LineShear, w *plan.Wall, at, out float64) *framing.Member {
	on := func(m *framing.Member) bool {
		lo, hi := axis(m.A.Flat(), x.Axis), axis(m.B.Flat(), x.Axis)
		return gathers(m) && m.B.Sub(m.A).Flat().Unit().RunsAlong(x.Axis) && math.Abs(axis(m.A.Flat(), 1-x.Axis)-x.At) <= oneLine &&
			max(out*lo, out*hi) >= out*at+onFor
	}
	for _, m := range t.a.house.In(w) {
		if m.Role != plan.TopPlate && m.Role != plan.UpperPlate {
			continue
		}
		if i := slices.IndexFunc(t.next[m], on); i >= 0 {
			return t.next[m][i]
		}
	}
	return nil
}
