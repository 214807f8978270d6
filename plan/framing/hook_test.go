package framing

import (
	"testing"

	"galewright/plan"
	"galewright/plan/geom"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"
)

// elPlan is an L of 2x6 walls; 1D, the longer at the inside corner, runs through
// from (240, 180) north and begins one stud's depth, 5.5 in, south of it.
func elPlan(d func(*plan.Wall)) *plan.Plan {
	p := onSlabPlan()
	ring(p, 0, geom.Vec2{}, geom.Vec2{X: 360}, geom.Vec2{X: 360, Y: 180}, geom.Vec2{X: 240, Y: 180}, geom.Vec2{X: 240, Y: 420}, geom.Vec2{Y: 420})
	d(p.Walls[3])
	return p
}

// A wall that runs through at an inside corner is measured from its first stud:
// what the plan gives from its point From stands 5.5 in farther on the tape, at
// the same place of the house.
func TestTapeHooksOnTheFirstStud(t *testing.T) {
	p := elPlan(func(w *plan.Wall) {
		w.Openings = []*plan.Opening{window("w", 60, 36)}
		w.Shear = []*plan.Shear{{Name: "A", From: 120, To: 240, Posts: 1, Panel: "15/32", Nail: "8d common", Edge: 6, Field: 12}}
	})
	h := frame(t, p)
	w := h.Plan.Walls[3]
	assert.InDelta(t, 5.5, w.Hook, 1e-9)
	assert.InDelta(t, 245.5, w.Length(), 1e-9)
	assert.InDelta(t, 65.5, w.Openings[0].At, 1e-9)
	assert.InDelta(t, 125.5, w.Shear[0].From, 1e-9)
	assert.InDelta(t, 245.5, w.Shear[0].To, 1e-9)
	jack := of(h, "1D", plan.Jack)[0]
	assert.InDelta(t, 65.5, jack.S1, 1e-9)
	assert.InDelta(t, 240, jack.B.Y+0.75, 1e-9, "180 and 60: where the plan puts it")
	first := of(h, "1D", plan.Post)[0]
	assert.Equal(t, "1D/post@0.75", first.ID)
	assert.InDelta(t, 175.25, first.A.Y, 1e-9, "180 - 5.5 + 0.75")
	mids := map[float64]bool{}
	for _, m := range of(h, "1D", plan.Stud) {
		mids[m.Mid()] = true
	}
	assert.True(t, mids[21.5] && mids[37.5], "the module still counts from the corner, where the sheathing begins: 16 + 5.5, 32 + 5.5: %v", mids)
}

// What the plan says is not touched, and a plan without such a wall is itself.
func TestTheReadPlanKeepsItsOwnStations(t *testing.T) {
	p := elPlan(func(w *plan.Wall) { w.Openings = []*plan.Opening{window("w", 60, 36)} })
	h := frame(t, p)
	assert.NotSame(t, p, h.Plan)
	assert.Zero(t, p.Walls[3].Hook)
	assert.InDelta(t, 60, p.Walls[3].Openings[0].At, 0)
	assert.Same(t, p.Walls[0], h.Plan.Walls[0])
	again := frame(t, h.Plan)
	assert.Same(t, h.Plan, again.Plan, "framed again, nothing moves")
	require.Len(t, again.Joints, len(h.Joints))
	for i, j := range h.Joints {
		assert.Equal(t, j.ID, again.Joints[i].ID)
		assert.InDelta(t, 0, j.At.Sub(again.Joints[i].At).Len(), 1e-6)
	}
	square := onSlabPlan()
	ring(square, 0, rect(0, 0, 336, 240)...)
	assert.Same(t, square, frame(t, square).Plan)
}

// No joint or member of an L, a raised one of two stories too, has a negative
// station or name.
func TestNoNegativeStations(t *testing.T) {
	raised := stories(2)
	girders(raised, 0, 240, 20, 400)
	for level := range 2 {
		ring(raised, level, geom.Vec2{}, geom.Vec2{X: 360}, geom.Vec2{X: 360, Y: 180}, geom.Vec2{X: 240, Y: 180}, geom.Vec2{X: 240, Y: 420}, geom.Vec2{Y: 420})
	}
	for _, p := range []*plan.Plan{elPlan(func(*plan.Wall) {}), raised} {
		h, faults := Frame(p)
		require.False(t, faults.Errors(), "%v", faults)
		sound(t, h)
		for _, j := range h.Joints {
			assert.GreaterOrEqual(t, j.Station, 0.0, j.ID)
			assert.NotContains(t, j.ID, "--")
		}
		for _, m := range h.Members {
			assert.NotContains(t, m.ID, "@-")
		}
	}
}
