package framing

import (
	"testing"

	"galewright/plan"
	"galewright/plan/plantest"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"
)

// Under a floor the sill runs on below a door: a wall of 28 ft with a door of 6 ft in
// its middle has joints along all of it, 9 in from the ends of each of its two pieces
// (cut at 16 ft) and in the middle of each bay of 16 in between.
func TestSillUnderAFloorHasJointsUnderItsDoor(t *testing.T) {
	p := elevated(1)
	p.Foundation = plan.Foundation{Kind: plan.Stem, Sill: twoBySix}
	p.Girders = nil
	w := p.Walls[0]
	w.Openings = []*plan.Opening{{Name: "d", At: 132, Width: 72, Height: 80, Header: headerWide, Jacks: 1, Kings: 1}}
	h := frame(t, p)
	sills := of(h, w.Name, plan.SillPlate)
	require.NotEmpty(t, sills)
	under := 0
	for _, m := range sills {
		var at []float64
		for _, j := range joints(h, w.Name, plan.SillFoundation) {
			if j.First() == m {
				at = append(at, j.Station)
				assert.InDelta(t, m.Z0, j.At.Z, 1e-9)
			}
		}
		require.NotEmpty(t, at)
		assert.InDelta(t, m.S0+9, at[0], 1e-9)
		assert.InDelta(t, m.S1-9, at[len(at)-1], 1e-9)
		sum := 0.0
		for _, j := range joints(h, w.Name, plan.SillFoundation) {
			if j.First() == m {
				sum += j.Tributary
			}
		}
		assert.InDelta(t, m.S1-m.S0, sum, 1e-9, "each inch of the sill is one joint's")
		for i, s := range at[1:] {
			assert.Less(t, s-at[i], 24.0, "no bay is left out")
			if s > 132 && s < 204 {
				under++
			}
		}
	}
	assert.GreaterOrEqual(t, under, 4, "6 ft of door, bays of 16 in")
}

// On a slab the door cuts the plate: of a wall of 12 ft with a door of 3 ft two
// pieces are left, and each has joints of its own near its ends; a piece of 1 ft
// has one, in its middle.
func TestSillOnASlabIsCutAtItsDoor(t *testing.T) {
	for _, c := range []struct {
		name string
		m    Member
		want []float64
	}{
		{"1 ft", Member{S0: 100, S1: 112}, []float64{106}},
		{"26 in: 8 in between the two", Member{S0: 0, S1: 26}, []float64{13}},
		{"27 in", Member{S0: 0, S1: 27}, []float64{9, 18}},
		{"4 ft: a bay's middle 18 in from the first", Member{S0: 0, S1: 48}, []float64{9, 24, 39}},
		{"bays' middles nearer than 9 in to an end's joint are left out", Member{S0: 0, S1: 96}, []float64{9, 24, 40, 56, 72, 87}},
	} {
		w := &framedWall{Wall: &plan.Wall{Spacing: 16}, s0: 0, s1: 144}
		plantest.Near(t, c.want, sillStations(w, &c.m), 1e-9, c.name)
	}
}
