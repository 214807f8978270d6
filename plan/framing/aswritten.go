package framing

import (
	"cmp"
	"math"
	"slices"
	"strings"

	"galewright/plan"
	"galewright/plan/geom"
)

// AsWritten returns the station of a joint as its plan counts it, in: of a house that lies
// mirrored from what was the start of its wall, girder or porch, and of a ridge from what
// was its west or south end.
func (h *House) AsWritten(j *Joint) float64 {
	if total, reversed := h.reversed(j); reversed {
		return total - j.Station
	}
	return j.Station
}

// reversed tells whether a joint's host is counted from its other end as the plan has it,
// and how long the host is, in.
func (h *House) reversed(j *Joint) (total float64, is bool) {
	if h == nil || h.Plan == nil || h.Plan.Lay == (plan.Lay{}) {
		return 0, false
	}
	lay := h.Plan.Lay
	if j.Wall != nil {
		return j.Wall.Length() + j.Wall.Past, lay.Mirrored
	}
	for _, g := range h.Plan.Girders {
		if g.Name == j.Host {
			return g.To.Sub(g.From).Len(), lay.Mirrored
		}
	}
	if d := j.Dormer; d != nil && (j.Host == d.Name || j.Host == d.Name+"/opening") {
		return d.Width, lay.Mirrored
	}
	for _, p := range h.Plan.Porches {
		if p.Name == j.Host {
			return p.To.Sub(p.From).Len(), lay.Mirrored
		}
	}
	for _, x := range h.Plan.Beams {
		if x.Name == j.Host {
			return x.To.Sub(x.From).Len(), lay.Mirrored
		}
	}
	for _, r := range h.Plan.Roofs {
		if size := r.Area[1].Sub(r.Area[0]); j.Host == r.Name || strings.HasPrefix(j.Host, r.Name+"/"+string(plan.RidgeEdge)) {
			return map[plan.Axis]float64{plan.AxisX: size.X, plan.AxisY: size.Y}[r.Ridge], lay.Reversed(r.Ridge)
		}
	}
	return 0, false
}

// JointsAsWritten returns the joints in the order that they have in the house as written:
// what is chosen in their order is chosen alike wherever the house lies.
func (h *House) JointsAsWritten() []*Joint {
	out := slices.Clone(h.Joints)
	if h.Plan.Lay == (plan.Lay{}) {
		return out
	}
	rank := map[string]int{}
	for _, j := range out {
		if _, ok := rank[j.Host]; !ok {
			rank[j.Host] = len(rank)
		}
	}
	at := make(map[*Joint]float64, len(out))
	for _, j := range out {
		at[j] = math.Round(h.AsWritten(j) * 1000)
	}
	slices.SortStableFunc(out, func(a, b *Joint) int {
		return cmp.Or(cmp.Compare(rank[a.Host], rank[b.Host]), cmp.Compare(at[a], at[b]))
	})
	return out
}

// Left returns the direction to the left of a level or sloping member, looking along it as
// it is laid in the house as written. What lies along a wall, a girder or a porch is laid
// along it in a mirrored house too, and its left is its own; all else has it on its right.
func (h *House) Left(m *Member) geom.Vec2 {
	left := m.B.Sub(m.A).Flat().Unit().Left()
	if along := m.Wall != nil || m.Role == plan.GirderBeam || m.Role == plan.Beam || m.Role == plan.PlateBeam; h.Plan.Lay.Mirrored && !along {
		return left.Mul(-1)
	}
	return left
}
