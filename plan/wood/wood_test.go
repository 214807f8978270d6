package wood

import (
	"testing"

	"galewright/plan"
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
		A: geom.Vec3{X: mid.X, Y: mid.Y, Z: lo.Z}, B: geom.Vec3{X: mid.X, Y: mid.Y, Z: hi.Z}, Z0: lo.Z, Z1: hi.Z,
	}
}

func TestALineFindsEachMemberItRunsIn(t *testing.T) {
	a := stick("a", geom.Vec3{}, geom.Vec3{X: 1.5, Y: 5.5, Z: 96})
	b := stick("b", geom.Vec3{X: 1.5}, geom.Vec3{X: 3, Y: 5.5, Z: 96})
	w := New([]*framing.Member{a, b})
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
	w := New([]*framing.Member{m})
	runs := w.Through(geom.Vec3{X: 0.75, Y: 2, Z: 40}, geom.Vec3{X: 0.75, Y: 2, Z: 60})
	require.Len(t, runs, 1)
	assert.InDelta(t, 20, runs[0].Len(), 1e-9)
	got := w.Around(m, geom.Vec3{X: 0.5, Y: 0, Z: 50}, geom.Vec3{Y: -1})
	assert.InDelta(t, 0.5, got.Edge, 1e-9)
	assert.InDelta(t, 46, got.End, 1e-9, "to the head at 96, not to the seam at 48")
}

func TestMarginOfAPointOffTheWoodIsNothing(t *testing.T) {
	m := stick("m", geom.Vec3{}, geom.Vec3{X: 1.5, Y: 5.5, Z: 48})
	w := New([]*framing.Member{m})
	assert.Zero(t, w.Around(m, geom.Vec3{X: 2, Z: 10}, geom.Vec3{Y: -1}))
}

func TestARodGoesDownToTheUndersideOfWhatCarries(t *testing.T) {
	plate := stick("plate", geom.Vec3{X: -20, Z: 20}, geom.Vec3{X: 20, Y: 5.5, Z: 21.5})
	plate.Role = plan.BottomPlate
	girder := stick("girder", geom.Vec3{X: -20, Z: -3}, geom.Vec3{X: 20, Y: 4.5, Z: 8.25})
	girder.Role = plan.GirderBeam
	deep := stick("deep", geom.Vec3{X: -20, Z: -40}, geom.Vec3{X: 20, Y: 4.5, Z: -30})
	deep.Role = plan.Beam
	w := New([]*framing.Member{plate, girder, deep})
	x := Washer{Side: 3, Hole: 0.6875}
	land := w.Below(geom.Vec3{Y: 2, Z: 24}, 80, x, 1.25, Carries)
	require.Same(t, girder, land.Member(), "what lies 27 in below the girder is not reached")
	assert.InDelta(t, 27, land.Deep(), 1e-9)
	assert.Nil(t, land.Blocked)
	assert.False(t, land.OnSill())
	assert.Nil(t, w.Below(geom.Vec3{Y: 5, Z: 24}, 27, x, 1.25, Carries).Member(), "beside the girder there is nothing to bear on")
	m, d := Nearest([]*framing.Member{plate, girder, deep}, geom.Vec3{Y: 5, Z: 24}, geom.Vec3{Y: 5, Z: -20}, Carries)
	assert.Same(t, girder, m)
	assert.InDelta(t, 2.75, d, 1e-9, "the middle line is at y = 2.25")
}

// A pile whose face is 1 in from the rod's line leaves a 3 in washer no room,
// one at 1 1/2 in and a play does.
func TestAWasherNeedsRoomBesideWhatStandsThere(t *testing.T) {
	girder := stick("girder", geom.Vec3{X: -20, Z: -3}, geom.Vec3{X: 20, Y: 4.5, Z: 8.25})
	girder.Role = plan.GirderBeam
	girder.A, girder.B = geom.Vec3{X: -20, Y: 2.25, Z: 3}, geom.Vec3{X: 20, Y: 2.25, Z: 3}
	for _, c := range []struct {
		at      float64
		blocked bool
	}{{1, true}, {1.4, true}, {1.55, false}} {
		pile := stick("pile", geom.Vec3{X: c.at, Y: -2, Z: -90}, geom.Vec3{X: c.at + 9.5, Y: 7.5, Z: -3})
		pile.Role = plan.Pile
		land := New([]*framing.Member{girder, pile}).Below(geom.Vec3{Y: 2.25, Z: 24}, 60, Washer{Side: 3}, 1.25, Carries)
		assert.Equal(t, c.blocked, land.Blocked == pile, "pile at %v", c.at)
	}
}

// By hand: a 3 in plate over a hole of 11/16 in (0.371 in²) on wood 5.5 wide: 9 -
// 0.371; on a 1 1/2 in ply it bears on 3 x 1.5 - 0.371; in the middle of a 4 1/2
// in girder a cut washer of 2 1/4 in has 3.976 - 0.690 (15/16 hole), its 48 sides
// a third of a percent less; half over the edge a plate has half.
func TestAWasherBearsOnWhatWoodIsUnderIt(t *testing.T) {
	level := func(y0, y1 float64) *framing.Member {
		m := stick("m", geom.Vec3{X: -20, Y: y0}, geom.Vec3{X: 20, Y: y1, Z: 9.25})
		m.A, m.B = geom.Vec3{X: -20}, geom.Vec3{X: 20}
		return m
	}
	plate, cut := Washer{Side: 3, Hole: 0.6875}, Washer{Side: 2.25, Round: true, Hole: 0.9375}
	down := geom.Vec3{Z: -1}
	for _, c := range []struct {
		m    *framing.Member
		x    Washer
		want float64
	}{
		{level(-2.75, 2.75), plate, 8.629},
		{level(-0.75, 0.75), plate, 4.5 - 0.371},
		{level(0, 5.5), plate, 4.5 - 0.371},
		{level(-2.25, 2.25), cut, 3.976*0.9971 - 0.690},
	} {
		assert.InDelta(t, c.want, New([]*framing.Member{c.m}).Bears(c.m, geom.Vec3{}, down, c.x), 0.005)
	}
}
