package loadpath

import (
	"testing"

	"galewright/plan"
	"galewright/plan/framing"
	"galewright/plan/geom"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"
)

// Sanderling is an L. The line of its court's north wall, C, takes 8,248 lb from a deck
// 40 ft long beside it, of which the wall is the west half: at the inside corner 4,124
// lb, 2,474 ASD, have yet to come in, and no plate, joist or beam runs on there. The
// court's east wall, D, is 16 of 40 ft long: 24/40 of 8,263 lb, 2,975 ASD. Ends at
// outside corners ask for nothing.
func TestNothingCarriesALineOnPastAnInsideCorner(t *testing.T) {
	r := exampleReport(t, "sanderling.toml")
	got := map[string]float64{}
	for _, l := range r.Links {
		if l.Check.ID == twistCheck {
			got[l.ID] = l.Demand
			assert.Contains(t, l.Gap, "inside corner")
		}
	}
	require.Len(t, got, 2)
	assert.InDelta(t, 0.6*8248.0*20/40, got[`collector past C at 20'-0"`], 2)
	assert.InDelta(t, 0.6*8263.0*24/40, got[`collector past D at 0"`], 2)
}

// What a wall's plates are tied to carries the line on where it lies in the line and
// reaches a foot past the wall's end.
func TestWhatRunsOnPastAWallsEnd(t *testing.T) {
	w := &plan.Wall{Name: "C"}
	bar := func(role plan.Role, x0, y0, x1, y1 float64) *framing.Member {
		return &framing.Member{Role: role, A: geom.Vec3{X: x0, Y: y0}, B: geom.Vec3{X: x1, Y: y1}}
	}
	top := bar(plan.UpperPlate, 0, 2, 240, 2)
	top.Wall = w
	x := &LineShear{ShearLine: &ShearLine{}}
	for _, c := range []struct {
		text string
		m    *framing.Member
		on   bool
	}{
		{"a joist in line", bar(plan.Joist, 200, 5, 480, 5), true},
		{"drawn the other way", bar(plan.Joist, 480, 5, 200, 5), true},
		{"it ends too soon", bar(plan.Joist, 200, 5, 250, 5), false},
		{"it lies off the line", bar(plan.Joist, 200, 15, 480, 15), false},
		{"it crosses", bar(plan.Rafter, 240, -100, 240, 200), false},
		{"a stud gathers nothing", bar(plan.Stud, 200, 5, 480, 5), false},
	} {
		a := &analysis{model: &model{givens: givens{house: &framing.House{Members: []*framing.Member{top}}}}}
		tw := &twister{a: a, next: map[*framing.Member][]*framing.Member{top: {c.m}}}
		assert.Equal(t, c.on, tw.runsOn(x, w, 240, 1), c.text)
		assert.False(t, tw.runsOn(x, w, 0, -1), "the other end")
	}
}
