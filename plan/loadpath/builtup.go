package loadpath

import (
	"cmp"
	"slices"

	"galewright/plan"
	"galewright/plan/framing"
)

// tight is how near the sides of two studs lie that are nailed together, in.
const tight = 1.0 / 16

// builtUp returns the studs that stand as one post with one: those of its wall tight
// beside it and those of another at a corner, where the plan orders the nails between
// them. Else it is the stud alone.
func (b *builder) builtUp(m *framing.Member) []*framing.Member {
	post := b.tightBeside(m)
	for _, x := range slices.Clone(post) {
		post = append(post, b.atCorner(x)...)
	}
	return post
}

// atCorner returns the studs of other walls that a wall's end stud is nailed to at
// a corner, where the plan orders those nails.
func (b *builder) atCorner(m *framing.Member) []*framing.Member {
	if b.plan.Ordered(plan.CornerStuds) == nil {
		return nil
	}
	if b.corners == nil {
		b.corners = cornersOf(b.house)
	}
	return b.corners[m]
}

// cornersOf finds for each end stud what it meets at corners, in the joints' order.
func cornersOf(h *framing.House) map[*framing.Member][]*framing.Member {
	out := map[*framing.Member][]*framing.Member{}
	for _, j := range h.Joints {
		if j.Kind != plan.WallCorner || len(j.Members) < 2 {
			continue
		}
		for i, x := range j.Members[:2] {
			out[x] = append(out[x], j.Members[1-i])
		}
	}
	return out
}

// tightBeside returns the studs of its own wall that stand tight beside one, with
// it.
func (b *builder) tightBeside(m *framing.Member) []*framing.Member {
	if m.Wall == nil || b.plan.Ordered(plan.BuiltUpStuds) == nil {
		return []*framing.Member{m}
	}
	list := b.uprights(m.Wall)
	i := slices.Index(list, m)
	if i < 0 {
		return []*framing.Member{m}
	}
	lo, hi := i, i+1
	for lo > 0 && list[lo].S0-list[lo-1].S1 < tight {
		lo--
	}
	for hi < len(list) && list[hi].S0-list[hi-1].S1 < tight {
		hi++
	}
	return slices.Clone(list[lo:hi])
}

// uprights returns the full-height members of a wall in order of station.
func (b *builder) uprights(w *plan.Wall) []*framing.Member {
	if list, ok := b.standing[w]; ok {
		return list
	}
	var out []*framing.Member
	for _, m := range b.house.In(w) {
		if m.Role.FullHeight() {
			out = append(out, m)
		}
	}
	slices.SortStableFunc(out, func(a, b *framing.Member) int { return cmp.Compare(a.S0, b.S0) })
	if b.standing == nil {
		b.standing = map[*plan.Wall][]*framing.Member{}
	}
	b.standing[w] = out
	return out
}
