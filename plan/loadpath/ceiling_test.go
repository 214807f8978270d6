package loadpath

import (
	"strings"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"galewright/plan"
)

// ceilinged is a house of 24 by 16 ft with a ceiling of 5 psf and a roof of no
// weight, so that all dead load of the roof's joints is the ceiling's.
const ceilinged = `
level = [{ name = "floor", plate_height = "9'", studs = "2x4 @ 16in" }]
wall = [
  { name = "S", from = ["0'", "0'"], to = ["24'", "0'"] },
  { name = "E", to = ["24'", "16'"] },
  { name = "N", to = ["0'", "16'"] },
  { name = "W", to = ["0'", "0'"] },
]
roof = [{ name = "main", kind = "gable", ridge = "x", pitch = "6:12", overhang = "1'", rake = "1'", rafters = "2x8 @ 16in" }]
loads.dead = [
  { part = "roof", name = "none", weight = "0 psf" },
  { part = "ceiling", name = "plaster", weight = "5 psf" },
]
[project]
name = "ceilinged"
date = 2026-01-05
[site]
wind_speed = "150 mph"
exposure = "C"
edition = "7-16"
`

// deadAt returns the dead load at joints of a kind of a wall in the first wind
// case, by station, lb: what is left is the same in all.
func deadAt(a *analysis, wall string, kind plan.JointKind) map[int]float64 {
	s, out := a.run(a.cases()[0]), map[int]float64{}
	for _, j := range a.house.Joints {
		if j.Kind == kind && j.Wall != nil && j.Wall.Name == wall {
			out[int(j.Station+0.5)] = s.rafters[j].D
		}
	}
	return out
}

// onWall returns the dead load that the roof and its ceiling bring to a wall, lb.
func onWall(a *analysis, wall string) float64 {
	s := a.run(a.cases()[0])
	for _, p := range a.paths {
		if p.w.Name == wall {
			return s.walls[p.n].roof.D
		}
	}
	return 0
}

// hung is the weight of all ceilings that hang on joists, lb.
func hung(a *analysis) (lb float64) {
	for _, c := range a.ceilings {
		for _, x := range c.seats {
			lb += x.weight
		}
	}
	return lb
}

func TestACeilingOnJoistsRelievesNoRafter(t *testing.T) {
	a := analyzed(t, ceilinged)
	for at, lb := range deadAt(a, "S", plan.RafterPlate) {
		assert.Zero(t, lb, "rafter at %d in", at)
	}
	for _, p := range a.pairs {
		assert.Zero(t, a.run(a.cases()[0]).pulls[p.n].D)
		assert.Zero(t, a.thrust(p), "joists do not spread the plates")
	}
	// Each joist brings half of 16 ft of 16 in at 5 psf: 53.3 lb to each plate. Those
	// beside the end rafters have half a bay, and nothing beyond the walls.
	n := 0
	for _, c := range a.ceilings {
		require.Len(t, c.seats, 2)
		assert.InDelta(t, c.seats[0].weight, c.seats[1].weight, 1e-6)
		if c.along > 20 && c.along < 268 {
			n++
			assert.InDelta(t, 5*16./12*8, c.seats[0].weight, 1e-6)
		}
	}
	assert.Positive(t, n)
	assert.InDelta(t, onWall(a, "N"), onWall(a, "S"), 1e-6)
	sum := hung(a)
	assert.InDelta(t, sum, onWall(a, "N")+onWall(a, "S"), 1e-6, "all that hangs comes down")
	assert.LessOrEqual(t, sum, 5.0*24*16)
	assert.Greater(t, sum, 5.0*(24-2*16./12)*16)
}

// A bearing wall 6 ft from the south: its middle lies at 72 + 1.75 in. The rafters'
// seats, 4 in deep level from the outside face, are at 1.75 in both. By the lever of two
// simple spans the south plate has all up to there about it: 73.75²/2/(73.75 - 1.75)
// of 5 x 16/144 lb per in; the wall the rest of that and half of 116.5 x ... on its
// other side.
func TestABearingWallTakesItsPartOfTheCeiling(t *testing.T) {
	a := analyzed(t, strings.Replace(ceilinged, `{ name = "W", to = ["0'", "0'"] },`,
		`{ name = "W", to = ["0'", "0'"] }, { name = "B", interior = true, bearing = true, from = ["0'", "6'"], to = ["24'", "6'"] },`, 1))
	w, n := 5*16./144, 0
	for _, c := range a.ceilings {
		if c.along < 20 || c.along > 268 {
			continue
		}
		n++
		require.Len(t, c.seats, 3)
		seat, mid := c.seats[0].plate.At.Y, 73.75
		south := w * mid * mid / 2 / (mid - seat)
		north := w * (192 - mid) * (192 - mid) / 2 / (192 - mid - seat)
		by := map[string]float64{}
		for _, x := range c.seats {
			if x.wall != nil {
				by["B"] += x.weight
			} else {
				by[x.plate.Wall.Name] += x.weight
			}
		}
		assert.InDelta(t, south, by["S"], 1e-6)
		assert.InDelta(t, north, by["N"], 1e-6)
		assert.InDelta(t, w*192-south-north, by["B"], 1e-6)
	}
	assert.Positive(t, n)
}

// Without ceiling joists, and on trusses, the ceiling hangs on what the clips hold:
// half of 16 ft less nothing, 53.3 lb at each.
func TestACeilingOnRaftersOrTrussesRelievesTheirClips(t *testing.T) {
	for _, key := range []string{`ceiling_ties = false, ridge_beam = true`, `ceiling_ties = false`, `trusses = true`} {
		a := analyzed(t, strings.Replace(ceilinged, `rafters = "2x8 @ 16in"`, `rafters = "2x8 @ 16in", `+key, 1))
		assert.Empty(t, a.ceilings, key)
		dead := deadAt(a, "S", plan.RafterPlate)
		mids := 0
		for at, lb := range dead {
			if at > 40 && at < 248 && key != `ceiling_ties = false, ridge_beam = true` {
				mids++
				assert.InDelta(t, 5*16./12*8, lb, 1e-6, "%s at %d", key, at)
			} else if at > 40 && at < 248 {
				mids++
				assert.Positive(t, lb)
				assert.Less(t, lb, 5*16./12*8, "the ridge beam has its part")
			}
		}
		assert.Positive(t, mids, key)
	}
}

// A hip's ends have no joists in the plan: what hangs there relieves nothing.
func TestACeilingWithoutJoistsRelievesNothing(t *testing.T) {
	a := analyzed(t, strings.Replace(ceilinged, `kind = "gable"`, `kind = "hip"`, 1))
	for _, wall := range []string{"E", "W"} {
		assert.Zero(t, onWall(a, wall))
	}
	sum := hung(a)
	// Joists stand from 8 ft to 16 ft along the ridge: 5 psf on those 8 ft and half a bay
	// more on both sides at most.
	assert.Positive(t, sum)
	assert.LessOrEqual(t, sum, 5*(8+16./12)*16+1e-6)
}

// Joists at every second pair hold the ceiling of the pairs between.
func TestJoistsAtEverySecondPairHoldAllOfTheCeiling(t *testing.T) {
	each := analyzed(t, ceilinged)
	second := analyzed(t, strings.Replace(ceilinged, `rake = "1'"`, `rake = "1'", ceiling_joists = "2x6 @ 32in"`, 1))
	assert.Less(t, len(second.ceilings), len(each.ceilings)*2/3)
	assert.InDelta(t, onWall(each, "S"), onWall(second, "S"), 5*16./12*8+1e-6)
	for _, c := range second.ceilings {
		if c.along > 40 && c.along < 240 {
			assert.InDelta(t, 2*5*16./12*8, c.seats[0].weight, 1e-6)
		}
	}
}

func TestWhereTheCeilingHangsIsSaid(t *testing.T) {
	r, _ := Run(placed(t, ceilinged))
	assert.Contains(t, strings.Join(r.Assumed, "\n"), "hang on ceiling joists where the roof has them")
	found := false
	for _, m := range r.Masses() {
		if m.Part == plan.DeadCeiling {
			found = true
			assert.Equal(t, "ceiling under roof main", m.On)
			assert.Contains(t, m.How, "no rafter and no ridge")
		}
	}
	assert.True(t, found)
	rafter, stud := false, false
	for _, l := range r.Links {
		text := strings.Join(r.Workings(l), "\n")
		rafter = rafter || l.Check.ID == "rafter-uplift" && strings.Contains(text, "the ceiling, between the walls; on ceiling joists")
		stud = stud || l.Check.ID == "stud-top-uplift" && strings.Contains(text, "of ceiling, times")
	}
	assert.True(t, rafter)
	assert.True(t, stud)
}
