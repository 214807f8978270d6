package framing

import (
	"fmt"
	"slices"
	"strings"

	"galewright/plan"
	"galewright/plan/geom"
)

// Overlaps returns every pair of members that reach into each other by more
// than tol inches, in order. In a well framed house there is none.
func (h *House) Overlaps(tol float64) (pairs [][2]*Member) {
	g := geom.NewGrid[*Member]()
	for _, m := range h.Members {
		lo, hi := m.Bounds()
		by := geom.Vec3{X: tol, Y: tol, Z: tol} // most that stand near only touch
		for _, o := range g.Within(lo.Add(by), hi.Sub(by)) {
			if overlap(m, o, tol) {
				pairs = append(pairs, [2]*Member{o, m})
			}
		}
		addMember(g, m)
	}
	return pairs
}

func overlap(a, b *Member, tol float64) bool {
	for _, s := range a.Solid {
		for _, t := range b.Solid {
			if geom.Overlap(s, t, tol) {
				return true
			}
		}
	}
	return false
}

// checkOverlaps reports members that take the same place: what the plan asks
// for cannot be built there, whatever rule let it through. Two walls, roofs
// or porches are told of once, by their first two members, and not where an
// error has told of one of them before.
func (b *builder) checkOverlaps() {
	type both [2]string
	count, first := map[both]int{}, map[both][2]*Member{}
	var order []both
	told := map[plan.Pos]bool{}
	for _, d := range b.faults {
		if d.Severity == plan.Error {
			told[d.Pos] = true
		}
	}
	for _, pair := range b.house.Overlaps(sixteenth) {
		k := both{owner(pair[0]), owner(pair[1])}
		if told[b.posOf(pair[0])] || told[b.posOf(pair[1])] {
			continue
		}
		if count[k]++; count[k] == 1 {
			first[k] = pair
			order = append(order, k)
		}
	}
	for _, k := range order {
		x, y := first[k][0], first[k][1]
		more := ""
		if n := count[k] - 1; n > 0 {
			more = fmt.Sprintf(", and so %s %s of theirs", map[bool]string{true: "does", false: "do"}[n == 1], number(n, "more pair"))
		}
		b.fault(plan.Diagnostic{
			Severity: plan.Error, Code: "members-overlap", Pos: b.posOf(y), Related: []plan.Pos{b.posOf(x)}, Where: k[1],
			Summary: fmt.Sprintf("%s of %s and %s of %s take the same place%s", x.ID, k[0], y.ID, k[1], more),
			Mend:    "move one of the two, or end it at the other's face",
		})
	}
}

// owner names what a member is part of.
func owner(m *Member) string {
	host, _, _ := strings.Cut(m.ID, "/")
	switch {
	case m.Wall != nil:
		return "wall " + m.Wall.Name
	case m.Roof != nil:
		return "roof " + m.Roof.Name
	case m.Role == plan.Beam || m.Role == plan.PorchPost || slices.Contains(plan.DeckRoles, m.Role):
		return "porch " + host
	case m.Role == plan.GirderBeam || m.Role == plan.Pile:
		return "girder " + host
	case m.Role == plan.BraceBoard:
		return "brace " + host
	case m.Role == plan.PlateBeam || m.Role == plan.FlushBeam || m.Role == plan.BeamPost:
		return "beam " + host
	}
	return "level " + host
}

// posOf returns where the plan asks for a member.
func (b *builder) posOf(m *Member) plan.Pos {
	host, _, _ := strings.Cut(m.ID, "/")
	switch {
	case m.Wall != nil:
		return m.Wall.Pos
	case m.Roof != nil:
		return m.Roof.Pos
	}
	for _, p := range b.plan.Porches {
		if p.Name == host && owner(m) == "porch "+host {
			return p.Pos
		}
	}
	for _, x := range b.plan.Beams {
		if x.Name == host && owner(m) == "beam "+host {
			return x.Pos
		}
	}
	for _, x := range b.plan.Braces {
		if x.Name == host && m.Role == plan.BraceBoard {
			return x.Pos
		}
	}
	for _, g := range b.plan.Girders {
		if g.Name == host && (m.Role == plan.GirderBeam || m.Role == plan.Pile) {
			return g.Pos
		}
	}
	return m.Level.Pos
}
