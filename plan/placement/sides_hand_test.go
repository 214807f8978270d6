package placement

import (
	"testing"

	"galewright/plan"
	"galewright/plan/framing"
	"galewright/plan/geom"
	"galewright/plan/hardware"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"
)

// A strap goes on the left side of a stud; within 1/2 in of the wall's start, and on a stud
// after an opening, on the right, away from the end and from the opening. Where a window is, from
// its sill to its head, the side that it needs is none.
func TestTheBetterSideOfAStud(t *testing.T) {
	left, right := []plan.Face{plan.Left, plan.Right}, []plan.Face{plan.Right, plan.Left}
	o := &plan.Opening{At: 30, Width: 20, Sill: 24, Height: 36}
	for _, c := range []struct {
		name string
		s0   float64
		o    *plan.Opening
		z    float64 // over the floor
		want []plan.Face
	}{
		{"at the start", 0, nil, 50, right},
		{"1/2 in from it", 0.5, nil, 50, right},
		{"5/8 in from it", 0.625, nil, 50, left},
		{"farther in", 20, nil, 50, left},
		{"before a window, at its sill", 28.5, o, 24, []plan.Face{plan.Left}},
		{"before a window, at its head", 28.5, o, 60, []plan.Face{plan.Left}},
		{"before a window, under it", 28.5, o, 23.9, left},
		{"before a window, over it", 28.5, o, 60.1, left},
		{"after a window", 50, o, 40, []plan.Face{plan.Right}},
		{"after a window, under it", 50, o, 10, right},
		{"a king before a window, a jack's breadth off", 27, o, 40, left},
		{"a king after it", 51.5, o, 40, right},
	} {
		h := newHand()
		m := h.member(0, plan.Stud, c.s0, c.s0+1.5, floor1+1.5, top1-3)
		m.Opening = c.o
		x := &placer{world: newWorld(h.House)}
		j := h.joint(h.walls[0], plan.StudTop, c.s0+0.75, top1-3, m)
		assert.Equal(t, c.want, x.freeSides(j, m, floor1+c.z), c.name)
	}
}

// Of several pieces on two free sides one each goes on both; of four two on each, beside each
// other; a face that is asked for stays, and where no side is free they go inside.
func TestTheSidesOfSeveralPieces(t *testing.T) {
	h := newHand()
	m := h.member(0, plan.Stud, 40, 41.5, floor1+1.5, top1-3)
	tight := h.member(0, plan.Stud, 60, 61.5, floor1+1.5, top1-3)
	h.member(0, plan.Stud, 58.5, 60, floor1+1.5, top1-3)
	h.member(0, plan.Stud, 61.5, 63, floor1+1.5, top1-3)
	x := &placer{world: newWorld(h.House)}
	type got struct {
		face plan.Face
		k, n int
	}
	for _, c := range []struct {
		m    *framing.Member
		face plan.Face
		n    int
		want []got
	}{
		{m, "", 1, []got{{plan.Left, 0, 1}}},
		{m, plan.Top, 2, []got{{plan.Left, 0, 2}, {plan.Right, 1, 2}}},
		{m, plan.Through, 4, []got{{plan.Left, 0, 2}, {plan.Left, 1, 2}, {plan.Right, 0, 2}, {plan.Right, 1, 2}}},
		{m, "", 3, []got{{plan.Left, 0, 2}, {plan.Left, 1, 2}, {plan.Right, 0, 2}}},
		{m, plan.Outside, 2, []got{{plan.Outside, 0, 2}, {plan.Outside, 1, 2}}},
		{tight, "", 1, []got{{plan.Inside, 0, 1}}},
	} {
		for k, goes := range c.want {
			j := h.joint(h.walls[0], plan.StudTop, c.m.Mid(), top1-3, c.m)
			w := x.pick(want{joint: j, face: c.face, k: k, n: c.n}, c.m, floor1+50)
			assert.Equal(t, goes, got{w.face, w.k, w.n}, "%d of %d at %v", k, c.n, c.m.Mid())
		}
	}
}

// A pair of hold-downs on posts of 1 1/2 in, the lower one 1/8 in farther on: each body stands on its
// own post's face, at 48.75 and 48.875; its rod 1 7/16 in off the upper one, at the middle of the
// wall's 5 1/2, from 1 1/2 over the upper seat to as much under the lower one and what sticks out.
func TestBodiesOfAPairOnTheirOwnPosts(t *testing.T) {
	for face, at := range map[plan.Face]struct{ up, low, rod float64 }{
		plan.Right: {48.75, 48.875, 50.1875}, plan.Left: {47.25, 47.375, 45.8125},
	} {
		h := newHand()
		low, high := h.column(48.125, 48)
		j := h.joint(h.walls[1], plan.StudStud, 48, floor2+1.5, high, low)
		j.Gap, j.Below, j.Offset = storyGap, true, 0.125
		x := &placer{world: newWorld(h.House)}
		it := &hardware.Item{Item: &plan.Item{Length: 10.625, Width: 2.375, Rod: 0.625, Standoff: 1.5, Center: 1.4375, Washer: 2}, Kind: hardware.KindNamed(plan.HoldDownPairItem)}
		l, fault := x.pair(want{joint: j, item: it, face: face, n: 1})
		require.Nil(t, fault)
		require.Len(t, l.Bands, 2)
		assert.InDelta(t, at.up, l.Bands[0][0].A.X, 1e-9, "%s, above", face)
		assert.InDelta(t, at.low, l.Bands[1][0].A.X, 1e-9, "%s, below", face)
		assert.InDelta(t, floor2+1.5, l.Bands[0][0].A.Z, 1e-9)
		assert.InDelta(t, floor2+1.5+10.625, l.Bands[0][0].B.Z, 1e-9)
		assert.InDelta(t, top1-3, l.Bands[1][0].A.Z, 1e-9)
		assert.InDelta(t, top1-3-10.625, l.Bands[1][0].B.Z, 1e-9)
		past := hardware.Past(0.625, 2)
		assert.InDelta(t, 0, l.Rod.A.Sub(geom.Vec3{X: at.rod, Y: 2.75, Z: floor2 + 3 + past}).Len(), 1e-9)
		assert.InDelta(t, 0, l.Rod.B.Sub(geom.Vec3{X: at.rod, Y: 2.75, Z: top1 - 4.5 - past}).Len(), 1e-9)
		assert.InDelta(t, storyGap+3+2*past, l.Cut, 1e-9)
		assert.InDelta(t, storyGap, l.Gap, 1e-9)
		assertPath(t, l.Path, geom.Vec3{X: at.rod, Y: 2.75, Z: top1 - 13.625}, geom.Vec3{X: at.rod, Y: 2.75, Z: top1 - 4.5}, geom.Vec3{X: at.rod, Y: 2.75, Z: floor2 + 3}, geom.Vec3{X: at.rod, Y: 2.75, Z: floor2 + 12.125})
	}
}
