package loadpath

import (
	"math"
	"testing"

	"galewright/plan"
	"galewright/plan/wind"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"
)

// porchHouse has a gable roof that reaches over a porch beam along its south
// side.
const porchHouse = `
level = [{ name = "floor", plate_height = "9'", studs = "2x6 @ 16in" }]
wall = [
  { name = "S", from = ["0'", "0'"], to = ["24'", "0'"] },
  { name = "E", to = ["24'", "16'"] },
  { name = "N", to = ["0'", "16'"] },
  { name = "W", to = ["0'", "0'"] },
]
roof = [{ name = "main", kind = "gable", area = [["0'", "-8'"], ["24'", "16'"]], ridge = "x", pitch = "4:12", overhang = "1'", rake = "1'", rafters = "2x8 @ 16in" }]
porch = [{ name = "P", from = ["0'", "-8'"], to = ["24'", "-8'"], beam = "2-2x10", post = "6x6", posts = ["0' 3in", "8'", "16'", "23' 9in"], base = "0'", top = "9'" }]
[project]
name = "porch"
date = 2026-01-05
[site]
wind_speed = "150 mph"
exposure = "D"
`

func TestPorchBeamHandsItsUpliftToThePosts(t *testing.T) {
	a := analyzed(t, porchHouse)
	for _, c := range a.cases() {
		s := a.run(c)
		onBeam, posts := Force{}, Force{}
		for j, f := range s.rafters {
			if j.Kind == plan.RafterPlate && j.Host == "P" {
				onBeam.take(f)
			}
		}
		for _, p := range a.porches {
			posts.take(s.posts[p.n])
		}
		for _, x := range a.ceilings { // what lies over the outer half of the wall's plate has a lever to the beam
			for _, seat := range x.seats {
				if seat.plate != nil && seat.plate.Host == "P" {
					onBeam.take(down(seat.weight))
				}
			}
		}
		require.InDelta(t, onBeam.W, posts.W, 1e-6, c.String())
		require.InDelta(t, onBeam.D, posts.D, 1e-6, c.String())
	}
	r, _ := loadsOf(placed(t, porchHouse))
	posts := 0
	for _, l := range r.Links {
		if l.Check.ID == "porch-base-uplift" || l.Check.ID == "porch-cap-uplift" {
			posts++
			assert.Positive(t, l.Demand, l.ID)
			assert.NotEmpty(t, l.Gap, "nothing is placed there")
		}
	}
	assert.Equal(t, 8, posts)
}

// rafterAt returns the rafter of a house that rises toward north about x, in.
func rafterAt(t *testing.T, a *analysis, x float64) *strip {
	for _, s := range a.rafters {
		if s.Up.Y > 0.9 && math.Abs(s.Low.X-x) <= 8 && !s.Gathers() {
			return s
		}
	}
	require.Fail(t, "no rafter")
	return nil
}

func TestRoofOverAPorchIsOpenBelow(t *testing.T) {
	// The roof of 4:12 slopes up from its south eave, 9 ft south of the wall, to its
	// ridge 4 ft behind it. Coefficients on top and below, over the porch and
	// behind the wall, in the middle of the house: ASCE 7-22 Fig. 28.3-1, case A at
	// 18.4 degrees zones 2 and 3 (-0.69; -0.37 - 0.11 x 13.43/15 = -0.468), case B
	// (-0.69, -0.37), with 0.7 below where the south side or its corner meets the
	// wind. Directional: mean height 11.0 ft, L 16 ft across the ridge and 24 ft
	// along it, h/L 0.72 and 0.48; slope values between the rows 0.5 and 1; along
	// the ridge 12 ft from the edge lie past h: -0.5, or -0.18.
	a := analyzed(t, porchHouse)
	require.Len(t, a.choice.Use, 2)
	hL := a.basis.Height / 16
	require.InDelta(t, 0.70, hL, 0.03)
	first, second, leeward := wind.SlopeCp(18.435, hL)
	env, dir := plan.Envelope, plan.Directional
	for _, x := range []struct {
		c          windCase
		top, under float64
		name       string
	}{
		{windCase{proc: env, axis: 1, sign: 1, corner: 1, pi: 1}, -0.69, 0.7, "from S"},
		{windCase{proc: env, axis: 1, sign: -1, corner: 1, pi: 1}, -0.468, 0, "from N"},
		{windCase{proc: env, axis: 0, sign: 1, corner: -1, pi: 1}, -0.69, 0.7, "from W, corner S"},
		{windCase{proc: env, axis: 0, sign: 1, corner: 1, pi: -1}, -0.37, 0, "from W, corner N"},
		{windCase{proc: dir, axis: 1, sign: 1, corner: 1, pi: 1}, 0.85 * first, 0.68, "directional from S, first"},
		{windCase{proc: dir, axis: 1, sign: 1, corner: 1, pi: 1, second: true}, 0.85 * second, 0.68, "directional from S, second"},
		{windCase{proc: dir, axis: 1, sign: -1, corner: -1, pi: -1}, 0.85 * leeward, 0, "directional from N"},
		{windCase{proc: dir, axis: 0, sign: 1, corner: -1, pi: 1, second: true}, 0.85 * -0.18, 0.68, "directional from W, corner S, second"},
	} {
		rc, rafter, seen := a.onRoof(x.c, a.main), rafterAt(t, a, 145), 0
		a.roofLoads(rafter, rc, func(p patch) {
			below := 0.18 * x.c.pi
			if p.mid() < 12+96 { // overhang and porch
				below = x.under
				seen++
			}
			assert.InDelta(t, (below-x.top)*rc.q*rafter.Width*(p.u1-p.u0)/144, p.force.W, 0.002*math.Abs(p.force.W)+0.01, "%s at %v", x.name, p.mid())
		})
		assert.Positive(t, seen)
	}
}

// leanTo is a house with a shed roof of 1.5:12 over a porch on posts, on a
// ledger at the wall.
const leanTo = `
level = [{ name = "floor", plate_height = "9'", studs = "2x6 @ 16in" }]
wall = [
  { name = "S", from = ["0'", "0'"], to = ["24'", "0'"] },
  { name = "E", to = ["24'", "16'"] },
  { name = "N", to = ["0'", "16'"] },
  { name = "W", to = ["0'", "0'"] },
]
roof = [
  { name = "main", kind = "gable", area = [["0'", "0'"], ["24'", "16'"]], ridge = "x", pitch = "4:12", overhang = "1'", rake = "1'", rafters = "2x8 @ 16in" },
  { name = "porch", kind = "shed", high = "N", area = [["0'", "-8'"], ["24'", "0'"]], pitch = "1.5:12", overhang = "1'", rafters = "2x8 @ 16in" },
]
porch = [{ name = "P", from = ["0'", "-8'"], to = ["24'", "-8'"], beam = "2-2x10", post = "6x6", posts = ["0' 3in", "8'", "16'", "23' 9in"], base = "0'", top = "6' 9in" }]
[project]
name = "lean-to"
date = 2026-01-05
[site]
wind_speed = "150 mph"
exposure = "D"
`

func TestOpenPorchRoofByHand(t *testing.T) {
	// 1.5:12 is 7.1 degrees: under 7.5 free roofs take the row of 0 (ASCE 7-16 Fig.
	// 27.3-4, transcribed): the most that lifts the windward half is -1.1 (B, clear
	// or obstructed), the leeward half -1.2 (A, obstructed); along it to h -1.2 (A,
	// obstructed). With G those are 0.935, 1.02 and 1.02. As an overhang it takes
	// 0.68 below at the wind, and on top under 10 degrees by distance G Cp.
	a := analyzed(t, leanTo)
	var roof *plan.Roof
	for _, r := range a.plan.Roofs {
		if r.Kind == plan.ShedRoof {
			roof = r
		}
	}
	require.True(t, a.open[roof])
	require.Len(t, a.choice.Use, 2, "a porch's shed roof is not over walls")
	var rafter *strip
	for _, s := range a.rafters {
		if s.roof == roof && s.Low.X > 140 && s.Low.X < 150 {
			rafter = s
		}
	}
	require.NotNil(t, rafter)
	q, strips := a.basis.Direct().QKd, wind.StripCp(a.basis.Height/16)
	for _, x := range []struct {
		c    windCase
		up   func(y float64) float64 // by distance from the house's wall, ft, south negative
		name string
	}{
		// From S the porch's edge is the windward one: 9 ft of it, overhang and all,
		// lie within h; to h/2 the first strip. 0.68 from below.
		{windCase{proc: plan.Directional, axis: 1, sign: 1, corner: 1, pi: 1}, func(y float64) float64 {
			if 8+y < a.basis.Height/2 {
				return 0.68 - 0.85*strips[0]
			}
			return 0.68 - 0.85*strips[1]
		}, "from S, first"},
		// The second value lifts 0.68 + 0.153 = 0.833: less than the free roof's
		// 0.935 on the windward 4 ft of 8 and 1.02 on the rest.
		{windCase{proc: plan.Directional, axis: 1, sign: 1, corner: 1, pi: 1, second: true}, func(y float64) float64 {
			if y < -4 {
				return 0.935
			}
			return 1.02
		}, "from S, second"},
		// From N the wall meets nothing below: on top 0.85 x 0.9 or so is less than
		// what the free roof takes, windward half at the house.
		{windCase{proc: plan.Directional, axis: 1, sign: -1, corner: 1, pi: 1, second: true}, func(y float64) float64 {
			if y > -4 {
				return 0.935
			}
			return 1.02
		}, "from N, second"},
		{windCase{proc: plan.Directional, axis: 0, sign: 1, corner: 1, pi: 1, second: true}, func(float64) float64 { return 0 }, "from W, second"},
	} {
		a.roofLoads(rafter, a.onRoof(x.c, roof), func(p patch) {
			y := axis(rafter.At(p.mid()), 1) / 12
			want := x.up(y)
			if x.c.axis == 0 { // 12 ft from the end: past h of 10 or so, -0.9 for A, obstructed; at the rafter's own stretch the mean
				assert.NotEmpty(t, p.free)
				assert.Greater(t, p.force.W, 0.85*0.89*q*rafter.Width*(p.u1-p.u0)/144)
				return
			}
			assert.InDelta(t, want*q*rafter.Width*(p.u1-p.u0)/144, p.force.W, 0.05, "%s at %.1f ft", x.name, y)
		})
	}
	r := reportOf(placed(t, leanTo))
	assert.Contains(t, wholeOf(t, r), "free roofs were not made for it", "h/L of a narrow porch is outside the figures, and told")
}

func TestUndersideMeetsTheWindOnBothSidesOfItsCorner(t *testing.T) {
	// Of the four sides two meet the wind in each case: its own and the corner's.
	for _, c := range []windCase{{axis: 0, sign: 1, corner: -1}, {axis: 1, sign: -1, corner: 1}} {
		n := 0
		for ax := range 2 {
			for _, side := range []float64{-1, 1} {
				if c.windward(ax, side) {
					n++
				}
			}
		}
		assert.Equal(t, 2, n)
	}
	c := windCase{axis: 0, sign: 1, corner: -1} // from W, corner S
	assert.True(t, c.windward(0, -1))
	assert.False(t, c.windward(0, 1))
	assert.True(t, c.windward(1, -1))
	assert.False(t, c.windward(1, 1))
}
