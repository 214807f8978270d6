package framing

import (
	"math"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"
	"pgregory.net/rapid"

	"galewright/plan"
	"galewright/plan/geom"
)

// partitioned is a house of two floors, 336 by 240, joists of the second running north at
// 16 in, with a wall of 2x4 on it from (101, 40) to (101, 160), whose studs take 97.5 to 101.
func partitioned(under, level plan.UnderWall) *plan.Plan {
	p := stories(2)
	for i := range 2 {
		ring(p, i, rect(0, 0, 336, 240)...)
	}
	p.Lumber.Stock = []float64{400}
	w := wall(p, "2P", 1, geom.Vec2{X: 101, Y: 40}, geom.Vec2{X: 101, Y: 160})
	w.Studs, w.Under = twoByFour, under
	p.Levels[1].Under = level
	return p
}

// The double joist lies under the middle of the wall, at 99.25, as long as the others; the
// joists at 96, to 96.75, and 112 stay beside it, and the wall's studs stand over it.
func TestADoubleJoistUnderAWallByHand(t *testing.T) {
	h := frame(t, partitioned("", plan.UnderJoist))
	list := joistsNear(h, 0, 99.25, 0.1)
	require.Len(t, list, 1)
	assert.InDelta(t, 237, list[0].Length, 1e-9)
	assert.Equal(t, 2, list[0].Section.Ply)
	assert.Len(t, joistsNear(h, 0, 96, 0.1), 1)
	require.Len(t, h.Added, 1)
	assert.Equal(t, "under 2P", h.Added[0].Name)
	for _, j := range joints(h, "2P", plan.SoleRim) {
		require.Equal(t, []plan.Role{plan.BottomPlate, plan.Joist}, rolesOf(j))
		assert.Same(t, list[0], j.Members[1])
	}
	require.NotEmpty(t, joints(h, "2P", plan.SoleRim))

	// At 98 in the joist at the spacing, 95.25 to 96.75, would lie in it, 95.75 to 98.75.
	p := partitioned(plan.UnderJoist, "")
	w := p.Walls[len(p.Walls)-1]
	w.From.X, w.To.X = 99, 99
	h = frame(t, p)
	assert.Len(t, joistsNear(h, 0, 97.25, 0.1), 1)
	assert.Empty(t, joistsNear(h, 0, 96, 0.1), "it takes that one's place")
	assert.Empty(t, frame(t, partitioned(plan.UnderNothing, plan.UnderJoist)).Added)
	assert.Empty(t, frame(t, partitioned("", "")).Added)
}

// A wall of 120 in takes blocks at 12, 36 ... 108 from its end, 5 of them, each from the
// joist at 96 to that at 112: 14.5 long.
func TestBlocksUnderAWallByHand(t *testing.T) {
	h := frame(t, partitioned("", plan.UnderBlocks))
	require.Len(t, h.Added, 1)
	require.True(t, h.Added[0].Blocks)
	list := h.Added[0].Members
	require.Len(t, list, 5)
	for i, m := range list {
		assert.InDelta(t, 14.5, m.Length, 1e-9)
		assert.InDelta(t, 52+24*float64(i), m.A.Y, 1e-9)
		assert.InDelta(t, 104, (m.A.X+m.B.X)/2, 1e-9)
	}
	assert.Equal(t, "second/under 2P 12 block@20.75", list[0].ID)
	p := partitioned("", plan.UnderBlocks)
	w := p.Walls[len(p.Walls)-1]
	w.From.X, w.To.X = 97.75, 97.75 // its middle over the joist at 96
	assert.Empty(t, frame(t, p).Added)
	w.Bearing = true
	_, faults := Frame(p)
	require.Len(t, faults, 1)
	assert.Equal(t, plan.Code("under-bearing-wall"), faults[0].Code)
}

// A bearing wall along the joists with nothing under it is told; not one across them, with
// a wall of the lower story in line under it, or with a double joist of the plan's.
func TestABearingWallAlongJoistsWantsSomethingUnderIt(t *testing.T) {
	told := func(change func(p *plan.Plan, w *plan.Wall)) plan.Diagnostics {
		p := partitioned("", "")
		w := p.Walls[len(p.Walls)-1]
		w.Bearing, p.Levels[0].JoistRun = true, plan.AxisX
		change(p, w)
		_, faults := Frame(p)
		return faults
	}
	list := told(func(*plan.Plan, *plan.Wall) {})
	require.Len(t, list, 1)
	assert.Equal(t, plan.Code("under-bearing-wall"), list[0].Code)
	assert.Contains(t, list[0].Summary, "bearing wall 2P stands along the joists of level second with no double joist")
	assert.Empty(t, told(func(p *plan.Plan, w *plan.Wall) { w.Bearing = false }))
	assert.Empty(t, told(func(p *plan.Plan, w *plan.Wall) { p.Levels[1].JoistRun = plan.AxisX }))
	assert.Empty(t, told(func(p *plan.Plan, w *plan.Wall) { w.Under = plan.UnderJoist }))
	for _, bearing := range []bool{true, false} {
		n := len(told(func(p *plan.Plan, w *plan.Wall) {
			b := wall(p, "1P", 0, geom.Vec2{X: 101, Y: 40}, geom.Vec2{X: 101, Y: 160})
			b.Studs, b.Bearing = twoByFour, bearing
		}))
		assert.Equal(t, map[bool]int{true: 0, false: 1}[bearing], n)
	}
	j := func(ply int) plan.Diagnostics {
		return told(func(p *plan.Plan, w *plan.Wall) {
			p.FloorJoists = []*plan.FloorJoist{{Name: "J1", Level: p.Levels[1], From: geom.Vec2{X: 99, Y: 0}, To: geom.Vec2{X: 99, Y: 240}, Member: p.Levels[1].Joists.Times(ply)}}
		})
	}
	assert.Empty(t, j(2))
	assert.Len(t, j(1), 1)
}

// A wall across the joists takes nothing, nor does an outer one; one over which the plan
// has put its own joist has that.
func TestOnlyWallsAlongJoistsTakeSomethingUnderThem(t *testing.T) {
	p := partitioned("", plan.UnderJoist)
	p.Levels[1].JoistRun = plan.AxisX
	assert.Empty(t, frame(t, p).Added)
	p = partitioned("", plan.UnderJoist)
	p.FloorJoists = []*plan.FloorJoist{{Name: "J1", Level: p.Levels[1], From: geom.Vec2{X: 99, Y: 0}, To: geom.Vec2{X: 99, Y: 240}, Member: p.Levels[1].Joists.Times(2)}}
	h := frame(t, p)
	require.Len(t, h.Added, 1)
	assert.Equal(t, "J1", h.Added[0].Name)
}

// Under drawn walls along the joists no two members share space, and the middle of each such
// wall of two joists' width or more from the rims has its joist, or stands over blocks or
// another.
func TestDrawnWallsAlongJoists(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		s := drawShapeOf(t, outlineNames[:4], []float64{12, 16, 19.2, 24})
		s.stories, s.inner, s.balloon = 2, false, -1
		p := s.plan(same, false)
		p.Levels[1].Under = rapid.SampledFrom(plan.UnderWalls[1:]).Draw(t, "under")
		d := geom.Vec2{Y: 1}
		if s.run == plan.AxisX {
			d = geom.Vec2{X: 1}
		}
		at := geom.Vec2{X: rapid.Float64Range(20, 120).Draw(t, "x"), Y: rapid.Float64Range(20, 120).Draw(t, "y")}
		w := wall(p, "2P", 1, at, at.Add(d.Mul(rapid.Float64Range(30, 60).Draw(t, "long"))))
		w.Studs = twoByFour
		h, faults := Frame(p)
		for _, f := range faults {
			if f.Code != "wall-in-opening" && f.Code != "opening-near-end" {
				t.Fatalf("fault: %v", f)
			}
		}
		for _, pair := range h.Overlaps(0.01) {
			t.Fatalf("%s reaches into %s", pair[0].ID, pair[1].ID)
		}
		mid := w.Frame().At(w.Length()/2, w.Depth()/2, p.Levels[1].Floor-p.Levels[1].Subfloor-1)
		found := false
		for _, m := range h.Members {
			lo, hi := m.Bounds()
			on := m.Role == plan.Joist && lo.X < mid.X+1e-6 && hi.X > mid.X-1e-6 && lo.Y < mid.Y+1e-6 && hi.Y > mid.Y-1e-6 && math.Abs(hi.Z-mid.Z-1) < 1e-6
			found = found || on
		}
		for _, x := range h.Added {
			found = found || x.Name == "under 2P" && len(x.Members) > 0
		}
		if !found {
			t.Fatalf("nothing lies under 2P at %v", mid)
		}
	})
}
