package loadpath

import (
	"math"
	"slices"
	"strings"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"galewright/plan"
)

// storyOut is a house 24 by 20 ft on a slab whose upper story stands 2 ft out over wall S: the
// joists, along y, go on past it. Inside, wall I bears them at 10 ft, where they break.
const storyOut = `
project = { name = "Invented house, upper story out over its wall", date = 2026-03-02 }
site = { wind_speed = "140 mph", exposure = "C" }
foundation = { kind = "slab" }
level = [
  { name = "one", floor = "1'", plate_height = "8' 1 1/8in" },
  { name = "two", plate_height = "8' 1 1/8in", joists = "2x10 @ 16in", joist_run = "y" },
]
wall = [
  { name = "S", level = "one", from = ["0'", "0'"], to = ["24'", "0'"] }, { name = "E", level = "one", to = ["24'", "20'"] },
  { name = "N", level = "one", to = ["0'", "20'"] }, { name = "W", level = "one", to = ["0'", "0'"] },
  { name = "US", level = "two", from = ["0'", "-2'"], to = ["24'", "-2'"] }, { name = "UE", level = "two", to = ["24'", "20'"] },
  { name = "UN", level = "two", to = ["0'", "20'"] }, { name = "UW", level = "two", to = ["0'", "-2'"] },
  { name = "I", level = "one", interior = true, bearing = true, from = ["0'", "10'"], to = ["24'", "10'"] },
]
roof = [{ name = "main", kind = "gable", ridge = "x", pitch = "6:12", gable_ends = "gable truss", rafters = "2x8 @ 16in" }]
`

// The stud of US at 12 ft stands over the joist there, 24 in out past wall S, whose plate's
// middle is at 2 3/4 in; the joist ends over the middle of wall I, 3 1/2 in deep from 10 ft, and
// lies on half of it: 120 7/8 in. So a lever of 24 / 118 1/8 = 0.2032: of its uplift S's joint
// takes 1.2032, and of what it presses down, dead load whole, I's joint is lifted by 0.2032.
func TestAStoryOutOverItsWall(t *testing.T) {
	r, ds := Run(placed(t, storyOut))
	require.False(t, ds.Errors())
	foot := demand(t, r, "US-144-SB", "base-uplift")
	require.Positive(t, foot.Demand)
	near := demand(t, r, "S-144-JP", upperJoists)
	assert.InDelta(t, foot.Demand*(1+24/118.125), near.Demand, 1e-6)
	assert.Equal(t, "no hardware at this joint", near.Gap)
	far, presses := demand(t, r, "I-144-JP", upperJoists), 0.0
	a := analyze(placed(t, storyOut))
	for _, c := range a.cases() { // no less than dead load alone, with what wind presses beside it
		f := a.run(c).foot(carrierAt(t, a, "US", 144))
		presses = math.Max(presses, math.Max(f.D, f.D-0.6*f.W))
	}
	assert.Greater(t, presses, foot.Force.D)
	assert.InDelta(t, presses*24/118.125, far.Demand, 1e-6)
	for _, d := range ds {
		assert.NotEqual(t, plan.Code("uplift-without-path"), d.Code, d.Summary)
	}
}

// What stands out over S presses it by more than itself and takes the difference off wall I:
// I's stud at 8 ft has the floor of half of both its spans, 16 in wide, less the lever of the
// stud above and of the floor past S's plate: joists from -22 1/2 in to 2 3/4, 25 1/4 in long,
// their middle 12 5/8 in out.
func TestAStoryOutTakesDeadLoadOffTheWallInside(t *testing.T) {
	a := analyze(placed(t, storyOut))
	psf := a.dead.floor(a.plan.Levels[1])
	us, in := carrierAt(t, a, "US", 96), carrierAt(t, a, "I", 96)
	for _, c := range a.cases() {
		s := a.run(c)
		floor := psf * (120 + 120) / 2 * in.share / 144
		past := psf * 25.25 * 16 / 144 * 12.625 / 118.125
		got := s.carriers[in.n].top
		assert.InDelta(t, floor-past-s.foot(us).D*24/118.125, got.D, 0.02*floor, c.String())
		assert.InDelta(t, -s.foot(us).W*24/118.125, got.W, 1, c.String())
	}
	// All that the studs of US and of the ends over the joists hand down is on walls below.
	for _, b := range a.balances {
		if b.Level == a.plan.Levels[0] {
			assert.InDelta(t, 0, b.Elsewhere.W, 1e-6)
		}
	}
}

// An upper wall 2 ft inside the one below ends the floor: its joists, 18 ft long, lie on I,
// whose plate's middle is at 121 3/4 in, and on N inside its rim, from 234 1/2 to 238 1/2. US, at
// 26 3/4, lifts I's joint by 209.75 / 114.75 of its uplift.
func TestAStorySetBack(t *testing.T) {
	set := strings.ReplaceAll(storyOut, `"-2'"`, `"2'"`)
	r, _ := Run(placed(t, set))
	foot := demand(t, r, "US-144-SB", "base-uplift").Demand
	assert.InDelta(t, foot*209.75/114.75, demand(t, r, "I-144-JP", upperJoists).Demand, 1e-6)
}

// Without wall I those joists lie on N alone: they turn about it, and uplift has no path.
func TestAStorySetBackTips(t *testing.T) {
	set := strings.Split(strings.ReplaceAll(storyOut, `"-2'"`, `"2'"`), "\n")
	set = slices.DeleteFunc(set, func(s string) bool { return strings.Contains(s, `name = "I"`) })
	r, ds := Run(placed(t, strings.Join(set, "\n")))
	l := demand(t, r, "N-144-JP", upperJoists)
	assert.True(t, math.IsInf(l.Ratio, 1))
	assert.Contains(t, l.Gap, "has no joint but this one")
	assert.True(t, slices.ContainsFunc(ds, func(d plan.Diagnostic) bool { return d.Code == "uplift-without-path" }))
}

// Dead load that lifts counts whole beside wind, 1.2 times at strength level; one that
// presses by 0.6 and 0.9 (ASCE 7-16 2.4.1 and 2.3.1, second-hand); a sheet names the one
// that its number is of.
func TestDeadLoadThatLifts(t *testing.T) {
	assert.InDelta(t, 0.6*100-0.6*50, Force{100, 50}.net(ASD), 1e-12)
	assert.InDelta(t, 0.6*100+50, Force{100, -50}.net(ASD), 1e-12)
	assert.InDelta(t, 100+1.2*50, Force{100, -50}.net(Strength), 1e-12)
	assert.Equal(t, "0.6 D + 0.6 W, net of dead load, positive upward", ASD.said(Force{100, 50}))
	assert.Equal(t, "D + 0.6 W, dead load that lifts whole, positive upward", ASD.said(Force{100, -50}))
}

// A joist with one joint has no lever for what stands off that by more than the rim brings.
func TestAJoistOnOneJointTips(t *testing.T) {
	f := &joistFloor{0, []*overGirder{{at: 0, lo: 0, hi: 100, s: []float64{40}}}}
	assert.True(t, f.lines[0].tips(90))
	assert.False(t, f.lines[0].tips(44))
	two := &overGirder{s: []float64{40, 80}}
	assert.False(t, two.tips(0))
}

// carrierAt is the stud of a wall at a station.
func carrierAt(t *testing.T, a *analysis, wall string, station float64) *carrier {
	for _, p := range a.paths {
		for _, c := range p.carriers {
			if p.w.Name == wall && math.Abs(c.station-station) < 1 {
				return c
			}
		}
	}
	t.Fatal(wall)
	return nil
}
