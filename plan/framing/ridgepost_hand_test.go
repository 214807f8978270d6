package framing

import (
	"testing"

	"galewright/plan"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"
)

// Sanderling's posts under its ridges: the main one's ridge runs along x from 0, the wing's
// along y from -192. A 6x6 is 5 1/2 in square; it ends under the board, 9 1/4 in deep, whose
// top is that of the rafters: 12 ft of run at 6 in 12, 72 in, over the seat's line.
func TestPostsUnderRidges(t *testing.T) {
	h := exampleHouse(t, "sanderling.toml")
	for _, c := range []struct {
		id       string
		x, y, at float64
	}{
		{"main/ridge post@328", 328, 144, 328},
		{"wing/ridge post@296", 360, 104, 296},
	} {
		m := byID(t, h, c.id)
		lo, hi := m.Solid[0].Bounds()
		assert.InDelta(t, c.x-2.75, lo.X, 1e-6)
		assert.InDelta(t, c.x+2.75, hi.X, 1e-6)
		assert.InDelta(t, c.y-2.75, lo.Y, 1e-6)
		assert.InDelta(t, c.y+2.75, hi.Y, 1e-6)
		assert.Zero(t, lo.Z)
		base, top := jointAt(h, m.Roof.Name, plan.PostBase, c.at), jointAt(h, m.Roof.Name, plan.PostCap, c.at)
		assert.Equal(t, []*Member{m}, base.Members)
		require.Len(t, top.Members, 2)
		ridge := top.Members[0]
		assert.Equal(t, plan.Ridge, ridge.Role)
		assert.Same(t, m, top.Members[1])
		under, _ := ridge.Solid[0].Bounds()
		assert.InDelta(t, under.Z, hi.Z, 1e-6)
		assert.InDelta(t, 9.25, max(ridge.A.Z, ridge.B.Z)-hi.Z, 1e-6, "the board over it, drawn by its top")
		assert.InDelta(t, m.Length, hi.Z-lo.Z, 1e-9)
		assert.Equal(t, "roof "+m.Roof.Name, top.HostName())
		assert.Equal(t, plan.RoofSheet, top.Place(false).Home)
		assert.Equal(t, plan.FoundationSheet, base.Place(false).Home)
	}
}

// A rake wall under two roofs goes up to the higher: sanderling's wall P lies at y from -2.75
// to 2.75, where the main roof's eave is, under the wing's rafters, which rise along x at 6
// in 12 to the ridge at 360. Over it the wing's pair at y = 0 lies on the plates, and it runs
// on past the wall's west end, so that no collector ends there in the air.
func TestARakeWallUnderTwoRoofsGoesUpToTheHigher(t *testing.T) {
	h := exampleHouse(t, "sanderling.toml")
	var low, high float64
	for _, m := range h.Members {
		if m.Wall == nil || m.Wall.Name != "P" || m.Role != plan.Stud {
			continue
		}
		if m.A.X < 260 && low == 0 {
			low = m.B.Z - m.A.X/2
		}
		if m.A.X > 310 && m.A.X < 330 {
			high = m.B.Z - m.A.X/2
		}
	}
	require.NotZero(t, low)
	require.NotZero(t, high)
	assert.InDelta(t, low, high, 0.8, "the studs' heads rise half an inch an inch, each cut to its lower side")
	for _, j := range h.Joints {
		if j.Kind == plan.Collector && (j.Host == "P" || j.Host == "Q") {
			assert.Greater(t, j.Station, 12.0, "none at P's free end")
			assert.Less(t, j.Station, 260.0, "nor at Q's")
		}
	}
}
