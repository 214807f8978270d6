package loadpath

import (
	"fmt"
	"strings"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"galewright/plan"
	"galewright/plan/framing"
	"galewright/plan/geom"
)

// offGirders is a house 24 by 20 ft whose girders lie 2 ft in from its long walls: joists
// along y, 16 in apart, go over them and out to the walls.
const offGirders = `
project = { name = "Invented house, girders off its walls", date = 2026-03-02 }
site = { wind_speed = "140 mph", exposure = "C" }
foundation = { kind = "piles", pile = "10x10" }
level = [{ name = "main", floor = "9'", plate_height = "8' 1 1/8in", joists = "2x10 @ 16in", joist_run = "y" }]
wall = [
  { name = "S", from = ["0'", "0'"], to = ["24'", "0'"] }, { name = "E", to = ["24'", "20'"] },
  { name = "N", to = ["0'", "20'"] }, { name = "W", to = ["0'", "0'"] },
]
roof = [{ name = "main", kind = "gable", ridge = "x", pitch = "6:12", gable_ends = "gable truss", rafters = "2x8 @ 16in" }]
girder = [
  { name = "GS", from = ["0'", "2'"], to = ["24'", "2'"], member = "3-2x10", seat = "notch", piles = "@ 8'" },
  { name = "GN", from = ["24'", "18'"], to = ["0'", "18'"], member = "3-2x10", seat = "notch", piles = "@ 8'" },
]
`

// The stud of S at 4 ft stands over the joist there, its middle 2 3/4 in from the wall's face
// and so 21 1/4 in past girder GS at 24 in; GN is at 216. Of its uplift GS takes (216 - 2.75) /
// 192 = 1.1107, and what that presses GN down relieves nothing there. All is bare: a gap.
func TestJoistsPastTheirGirders(t *testing.T) {
	r, ds := Run(placed(t, offGirders))
	require.False(t, ds.Errors())
	foot := demand(t, r, "S-48-SB", "base-uplift").Demand
	require.Positive(t, foot)
	l := demand(t, r, "GS-48-JG", joistsCheck)
	assert.InDelta(t, foot*(216-2.75)/192, l.Demand, 1e-6)
	assert.NotEmpty(t, l.Gap)
	assert.Contains(t, fmt.Sprint(l.Terms), "at S-48-SB, ASD")

	// The end wall stands on the rim that runs with the joists: its corner post and studs.
	rim := demand(t, r, "W-24-RG", joistsCheck)
	assert.Positive(t, rim.Demand)
	assert.NotEmpty(t, rim.Gap)

	// All that pulls at the floor comes to joints of joists and rims, by lever more than it is.
	up, sum := 0.0, 0.0
	for _, l := range r.Links {
		switch l.Check.ID {
		case "base-uplift":
			up += l.Demand
		case joistsCheck:
			sum += l.Demand
		}
	}
	assert.Greater(t, sum, up)
	assert.Less(t, sum, up*1.12, "of every foot 1.11 at the girder near it, nothing at the other")
}

// Where girders lie under the walls nothing goes over joists: the examples have none.
func TestNoJoistsWhereGirdersLieUnderTheWalls(t *testing.T) {
	for _, l := range demoReport(t).Links {
		assert.NotEqual(t, joistsCheck, l.Check.ID, l.ID)
	}
}

// A force a third of the way from one joist to the next goes to it by two thirds; on each
// 60 in from one girder and 120 from the next by two thirds to the nearer.
func TestAForceOverTheJoists(t *testing.T) {
	line := func(at float64) *overGirder {
		return &overGirder{at: at, lo: 0, hi: 240, s: []float64{30, 210}, joints: []*framing.Joint{{Kind: plan.JoistGirder, Station: at}, {Kind: plan.JoistGirder, Station: at + 0.5}}}
	}
	f := &joistFloor{1, []*overGirder{line(0), line(24)}}
	got := map[float64]float64{}
	parts, tips := f.share(geom.Vec2{X: 8, Y: 90})
	assert.False(t, tips)
	for _, x := range parts {
		got[x.joint.Station] = x.k
	}
	assert.InDeltaMapValues(t, map[float64]float64{0: 4.0 / 9, 0.5: 2.0 / 9, 24: 2.0 / 9, 24.5: 1.0 / 9}, got, 1e-12)
	parts, _ = f.share(geom.Vec2{X: 8, Y: 260})
	assert.Empty(t, parts, "past the joists' ends")
}

// A girder whose near edge lies 3 1/4 in off the wall's studs does not carry them: the joists
// do, by lever, as if it were further away.
func TestAGirderBesideAWallDoesNotCarryIt(t *testing.T) {
	r, ds := Run(placed(t, strings.ReplaceAll(offGirders, `"2'"`, `"11in"`)))
	require.False(t, ds.Errors())
	foot := demand(t, r, "S-48-SB", "base-uplift").Demand
	assert.InDelta(t, foot*(216-2.75)/(216-11), demand(t, r, "GS-48-JG", joistsCheck).Demand, 1e-6)
	r, ds = Run(placed(t, strings.ReplaceAll(offGirders, `"2'"`, `"7 1/2in"`)))
	require.False(t, ds.Errors())
	assert.NotContains(t, fmt.Sprint(demand(t, r, "GS-48-JG", joistsCheck).Terms), "at S-", "from 5 1/4 to 9 3/4 in: it lies under the studs, that end at 5 1/2")
}
