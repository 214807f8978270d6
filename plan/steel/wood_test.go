package steel

import (
	"testing"

	"galewright/plan/framing"
	"galewright/plan/geom"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"
)

// stick is a member of a box between two corners, its grain along z.
func stick(id string, lo, hi geom.Vec3) *framing.Member {
	d := hi.Sub(lo)
	mid := lo.Add(hi).Mul(0.5)
	return &framing.Member{
		ID: id, Solid: []geom.Solid{geom.Box(lo, geom.Vec3{X: d.X}, geom.Vec3{Y: d.Y}, geom.Vec3{Z: d.Z})},
		A: geom.Vec3{X: mid.X, Y: mid.Y, Z: lo.Z}, B: geom.Vec3{X: mid.X, Y: mid.Y, Z: hi.Z},
	}
}

func TestALineFindsEachMemberItRunsIn(t *testing.T) {
	a := stick("a", geom.Vec3{}, geom.Vec3{X: 1.5, Y: 5.5, Z: 96})
	b := stick("b", geom.Vec3{X: 1.5}, geom.Vec3{X: 3, Y: 5.5, Z: 96})
	w := NewWood([]*framing.Member{a, b})
	runs := w.Through(geom.Vec3{X: -0.5, Y: 2, Z: 40}, geom.Vec3{X: 2, Y: 2, Z: 40})
	require.Len(t, runs, 2)
	assert.Same(t, a, runs[0].Member)
	assert.InDelta(t, 0.5, runs[0].From, 1e-9, "half an inch of air first")
	assert.InDelta(t, 1.5, runs[0].Len(), 1e-9)
	assert.InDelta(t, 0.5, runs[1].Len(), 1e-9)
	assert.False(t, runs[0].EndGrain())
	down := w.Through(geom.Vec3{X: 0.5, Y: 2, Z: 97}, geom.Vec3{X: 0.5, Y: 2, Z: 94})
	require.Len(t, down, 1)
	assert.True(t, down[0].EndGrain())
	assert.Empty(t, w.Through(geom.Vec3{X: 9, Y: 9, Z: 9}, geom.Vec3{X: 9, Y: 9, Z: 9}))
}

// A member of two parts that touch is one: neither a run nor an edge distance
// ends where the parts meet.
func TestPartsOfOneMemberAreOne(t *testing.T) {
	m := stick("m", geom.Vec3{}, geom.Vec3{X: 1.5, Y: 5.5, Z: 48})
	upper := stick("", geom.Vec3{Z: 48}, geom.Vec3{X: 1.5, Y: 5.5, Z: 96})
	m.Solid, m.B = append(m.Solid, upper.Solid...), upper.B
	w := NewWood([]*framing.Member{m})
	runs := w.Through(geom.Vec3{X: 0.75, Y: 2, Z: 40}, geom.Vec3{X: 0.75, Y: 2, Z: 60})
	require.Len(t, runs, 1)
	assert.InDelta(t, 20, runs[0].Len(), 1e-9)
	got := w.Around(m, geom.Vec3{X: 0.5, Y: 0, Z: 50}, geom.Vec3{Y: -1})
	assert.InDelta(t, 0.5, got.Edge, 1e-9)
	assert.InDelta(t, 46, got.End, 1e-9, "to the head at 96, not to the seam at 48")
}

func TestMarginOfAPointOffTheWoodIsNothing(t *testing.T) {
	m := stick("m", geom.Vec3{}, geom.Vec3{X: 1.5, Y: 5.5, Z: 48})
	w := NewWood([]*framing.Member{m})
	assert.Zero(t, w.Around(m, geom.Vec3{X: 2, Z: 10}, geom.Vec3{Y: -1}))
}
