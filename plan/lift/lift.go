package lift

import (
	"cmp"
	"math"
	"slices"

	"galewright/plan"
	"galewright/plan/framing"
	"galewright/plan/geom"
)

// Tie holds two members together in tension. A tie to the ground has no B.
type Tie struct {
	A, B *framing.Member
	By   string // tag of the piece, or the nailing or sheathing that it is
}

// Gap is a member that a force must pass through and that nothing holds to
// the ground.
type Gap struct {
	Member *framing.Member
	// Above are the members whose force ends here, the member itself left
	// out, in the order of the house.
	Above []*framing.Member
}

// level is how much higher the next member of a way down may lie, in: members
// side by side may hold each other, but no way leads from a bottom plate up to
// the foot of the next stud, which stands half a plate over its middle.
const level = 0.5

// hung is above all that stands, in: an outlooker cantilevers from the rafters it
// is tied to, and a fly rafter hangs on outlookers, so that neither carries what
// holds it, however low it lies on the slope.
const hung = 1e6

// Rank returns the height that decides which of two members lies lower, in:
// the foot of what stands, the middle of what lies or slopes; over all of them
// what hangs on others.
func Rank(m *framing.Member) float64 {
	switch m.Role {
	case plan.Outlooker:
		return hung
	case plan.FlyRafter:
		return 2 * hung
	}
	if geom.Upright(m.B.Sub(m.A).Unit()) {
		return min(m.A.Z, m.B.Z)
	}
	return (m.A.Z + m.B.Z) / 2
}

// Graph is the members of a house and what ties them.
type Graph struct {
	order map[*framing.Member]int
	rank  map[*framing.Member]float64
	down  map[*framing.Member][]*framing.Member // ties that do not climb
	over  map[*framing.Member][]*framing.Member // the same, from below
	held  map[*framing.Member]bool
}

// New builds the graph and finds all that is held.
func New(members []*framing.Member, ties []Tie) *Graph {
	n := len(members)
	g := &Graph{
		order: make(map[*framing.Member]int, n), rank: make(map[*framing.Member]float64, n),
		down: make(map[*framing.Member][]*framing.Member, n), over: make(map[*framing.Member][]*framing.Member, n), held: make(map[*framing.Member]bool, n),
	}
	for i, m := range members {
		g.order[m], g.rank[m] = i, math.Round(Rank(m)*1000)/1000 // members at one height are so wherever the house stands
	}
	var ground []*framing.Member
	for _, t := range ties {
		switch {
		case t.B == nil && t.A != nil:
			ground = append(ground, t.A)
		case t.A != nil && t.A != t.B:
			g.join(t.A, t.B)
			g.join(t.B, t.A)
		}
	}
	g.climb(ground)
	return g
}

// join lets a's force go to b unless b lies higher.
func (g *Graph) join(a, b *framing.Member) {
	if g.Leads(a, b) && !slices.Contains(g.down[a], b) {
		g.down[a] = append(g.down[a], b)
		g.over[b] = append(g.over[b], a)
	}
}

// climb marks all that is held, from the ground up.
func (g *Graph) climb(todo []*framing.Member) {
	for len(todo) > 0 {
		m := todo[len(todo)-1]
		todo = todo[:len(todo)-1]
		if g.held[m] {
			continue
		}
		g.held[m] = true
		todo = append(todo, g.over[m]...)
	}
}

// Held tells whether a way down leads from m to the ground.
func (g *Graph) Held(m *framing.Member) bool { return g.held[m] }

// Tied tells whether a tie joins the two directly, either way.
func (g *Graph) Tied(a, b *framing.Member) bool {
	return slices.Contains(g.down[a], b) || slices.Contains(g.down[b], a)
}

// Leads tells whether the force of a may go on to b: b lies no higher, or a stands on it.
func (g *Graph) Leads(a, b *framing.Member) bool {
	return stands(a, b) || g.rank[b] <= g.rank[a]+level && !stands(b, a)
}

// stands tells whether an upright has its foot on a member that slopes, as a stud of a dormer on
// a trimmer, however low on it: the slope's middle says nothing of the place.
func stands(a, b *framing.Member) bool {
	way := b.B.Sub(b.A)
	if !geom.Upright(a.B.Sub(a.A).Unit()) || math.Abs(way.Z) < level || geom.Upright(way.Unit()) {
		return false
	}
	foot := a.A
	if a.B.Z < foot.Z {
		foot = a.B
	}
	flat := way.Flat()
	along := foot.Sub(b.A).Flat().Dot(flat) / flat.Dot(flat)
	return along > 0 && along < 1 && foot.Z > b.A.Z+along*way.Z-max(level, b.Section.Depth/2)
}

// Ends tells whether no tie leads down from m.
func (g *Graph) Ends(m *framing.Member) bool { return len(g.down[m]) == 0 }

// MembersOf lists the members that some ties hold, each once.
func MembersOf(ties []Tie) (out []*framing.Member) {
	for _, t := range ties {
		for _, m := range []*framing.Member{t.A, t.B} {
			if m != nil && !slices.Contains(out, m) {
				out = append(out, m)
			}
		}
	}
	return out
}

// Gaps follows the force of each lifted member down as far as ties lead, and
// returns the members where it ends above the ground, in the order of the
// house.
func (g *Graph) Gaps(lifted []*framing.Member) []Gap {
	above := map[*framing.Member][]*framing.Member{}
	for _, m := range lifted {
		if g.held[m] {
			continue
		}
		for _, end := range g.ends(m) {
			above[end] = append(above[end], m)
		}
	}
	out := make([]Gap, 0, len(above))
	for m, from := range above {
		from = slices.DeleteFunc(from, func(x *framing.Member) bool { return x == m })
		g.sort(from)
		out = append(out, Gap{m, slices.Compact(from)})
	}
	slices.SortFunc(out, func(a, b Gap) int { return cmp.Compare(g.order[a.Member], g.order[b.Member]) })
	return out
}

// ends returns the members below m that no tie leads down from; among those
// that only hold each other, the lowest.
func (g *Graph) ends(m *framing.Member) (out []*framing.Member) {
	seen := map[*framing.Member]bool{m: true}
	all := []*framing.Member{m}
	for i := 0; i < len(all); i++ {
		for _, n := range g.down[all[i]] {
			if !seen[n] {
				seen[n] = true
				all = append(all, n)
			}
		}
	}
	for _, n := range all {
		if len(g.down[n]) == 0 {
			out = append(out, n)
		}
	}
	if len(out) == 0 {
		out = append(out, slices.MinFunc(all, func(a, b *framing.Member) int {
			return cmp.Or(cmp.Compare(g.rank[a], g.rank[b]), cmp.Compare(g.order[a], g.order[b]))
		}))
	}
	return out
}

func (g *Graph) sort(list []*framing.Member) {
	slices.SortFunc(list, func(a, b *framing.Member) int { return cmp.Compare(g.order[a], g.order[b]) })
}
