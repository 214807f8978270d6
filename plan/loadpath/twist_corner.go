package loadpath

import (
	"fmt"
	"math"
	"slices"

	"galewright/plan"
	"galewright/plan/deck"
	"galewright/plan/framing"
	"galewright/plan/geom"
	"galewright/plan/timber"
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
	if l := t.across(x, w, at, drag); l != nil {
		t.out = append(t.out, l)
		return
	}
	t.gap(x, w, "collector past "+w.Name+" at "+t.a.u.Length(at), drag, "collector force there",
		"the house goes on past the wall's end at the inside corner, %s = %s, and nothing there that its plates are tied to carries the line on; run a wall, joist or beam on in line, tied to the plates by a strap, or have the engineer design the deck to bring its force in along the wall alone",
		plan.Axes[x.Axis], t.a.u.Length(at))
}

// across is the link of what at an inside corner two faces of the deck, nailed to one
// member over it, hand each other along the line: where the walls on both sides take
// about what they gather, that is little. Nil where their nails near the corner do not
// hold it: then a member must carry the line on.
func (t *twister) across(x *LineShear, w *plan.Wall, at, drag float64) *Link {
	lb := drag + x.otherwise(at)
	held := t.a.overCorner(x, at)
	if held == nil || held.Value < ASD.W*lb {
		return nil
	}
	l := &Link{
		Check: t.c, ID: "deck past " + w.Name + " at " + t.a.u.Length(at), Wall: w, Host: "wall " + w.Name, Where: fmt.Sprintf("wall %s, story %s", w.Name, x.Level.Name), Unit: "lb",
		Demand: ASD.W * lb, Strength: lb, Case: x.Case,
		Terms: []Term{
			{"collector force there, strength level", drag, "lb"},
			{"and what it differs by where the segments share the force by the other rule, by stiffness or by length", lb - drag, "lb"},
			{"0.6 of both", ASD.W * lb, "lb"},
		},
	}
	l.close(held)
	l.Notes = append(l.Notes, "no member carries the line on past the inside corner: the walls on both sides take about what they gather, and what is left goes from one face of the deck to the other")
	return l
}

// otherwise is by how much the collector force of a line at a place may differ where its
// segments share by the rule that is not taken, lb at strength level.
func (x *LineShear) otherwise(at float64) float64 {
	sum := 0.0
	for _, g := range x.Segments {
		sum += (g.Share - g.OtherShare) * overlap(g.Lo, g.Hi, math.Inf(-1), at) / math.Max(1, g.Hi-g.Lo)
	}
	return x.Force * math.Abs(sum)
}

// overCorner is what the nails of two faces of the roof's deck into one member hold
// across it within a foot of an inside corner, as along a valley: of the face that has
// fewer there. Nil where there are none.
func (a *analysis) overCorner(x *LineShear, at float64) *Capacity {
	if a.plan.Above(x.Level) != nil || a.plan.Deck == nil {
		return nil
	}
	corner := geom.Vec2{X: at, Y: x.At}
	if x.Axis == 1 {
		corner = geom.Vec2{X: x.At, Y: at}
	}
	into, n, depth := a.sharedNails(corner, a.indoors[x.Level])
	nail, panel, err := a.deckNail()
	if into == nil || err != nil {
		return nil
	}
	z, err := timber.SingleNail(nail, timber.Part{Thickness: panel, G: deckPanelG}, timber.Part{Thickness: depth, G: a.species.G})
	if err != nil {
		return nil
	}
	each := z.Z * float64(timber.WindDuration)
	return &Capacity{
		Value: each * float64(n), Source: "computed", Pieces: n, Governs: fmt.Sprintf("%s of one face of the deck into the %s over the corner", plan.Counted(n, "nail"), into.Role),
		Terms: ofCapacity(
			Term{a.u.Sprintf("one %s through %s in into the %s: Z %.1f lb (mode %s), CD 1.6", nail.Name, a.plan.Deck.Panel, into.Role, z.Z, z.Mode), each, "lb"},
			Term{fmt.Sprintf("%s of each face within a foot of the corner, inside the walls, into %s", plan.Counted(n, "nail"), into.ID), each * float64(n), "lb"},
		),
	}
}

// sharedNails finds the member that two faces of the deck are nailed to within a foot of
// a plan point, inside the walls: how many nails the one has that has fewer, and the wood
// they go into, in. Of several members the one with most.
func (a *analysis) sharedNails(p geom.Vec2, in outline) (into *framing.Member, n int, depth float64) {
	found := map[*framing.Member]*nailsBeside{}
	for _, f := range a.panels.Faces {
		for _, x := range nailsNear(f, p, in) {
			if found[x.Into] == nil {
				found[x.Into] = &nailsBeside{}
			}
			found[x.Into].add(f, x.Depth)
		}
	}
	for _, m := range a.house.Members {
		if k := found[m]; k != nil && k.fewer() > n {
			into, n, depth = m, k.fewer(), k.depth
		}
	}
	return into, n, depth
}

// nailsNear lists the nails of a face of the deck within a foot of a plan point, inside the
// walls.
func nailsNear(f *deck.Face, at geom.Vec2, in outline) (out []deck.Nail) {
	for _, p := range f.Pieces {
		for _, x := range p.Nails {
			if x.At.Sub(at).Len() <= onFor && in.inside(x.At) {
				out = append(out, x)
			}
		}
	}
	return out
}

// nailsBeside counts the nails of faces of the deck into one member, the last face last.
type nailsBeside struct {
	faces []*deck.Face
	n     []int
	depth float64 // of the member, in
}

func (k *nailsBeside) add(f *deck.Face, depth float64) {
	if len(k.faces) == 0 || k.faces[len(k.faces)-1] != f {
		k.faces, k.n = append(k.faces, f), append(k.n, 0)
	}
	k.n[len(k.n)-1]++
	k.depth = depth
}

// fewer is how many nails the second of the faces has: 0 where there is but one.
func (k *nailsBeside) fewer() int {
	if len(k.n) < 2 {
		return 0
	}
	n := slices.Clone(k.n)
	slices.Sort(n)
	return n[len(n)-2]
}

// fed tells of what runs on past an inside corner below the deck, a dropped beam or
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
