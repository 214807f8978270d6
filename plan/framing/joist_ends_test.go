package framing

import (
	"fmt"
	"maps"
	"math"
	"slices"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"galewright/plan"
	"galewright/plan/geom"
)

// plainShape is an outline of two stories, nothing drawn.
func plainShape(name string, balloon int, run plan.Axis) shape {
	s := shape{stories: 2, spacing: 16, run: run, balloon: balloon}
	for _, q := range outlines[name] {
		s.outline = append(s.outline, q.Mul(12))
		s.posts, s.joins, s.studs, s.openings = append(s.posts, 3), append(s.joins, ""), append(s.studs, twoBySix), append(s.openings, nil)
	}
	return s
}

// joistsNear lists the joists of the second floor whose center lines lie within reach of
// a coordinate across them.
func joistsNear(h *House, axis int, at, reach float64) (out []*Member) {
	for _, m := range roled(h, plan.Joist, "second") {
		if math.Abs(m.A.Flat().Along(axis)-at) < reach {
			out = append(out, m)
		}
	}
	return out
}

// The balloon wall of the L from (384, 192) to (240, 192) runs through to the inner face of
// the wall above it, at 234.5, and its studs take 186.5 to 192. The joist at 192 would
// stand with half of its end against the end of that wall: it slides to 192 ... 193.5,
// past it, and lies on the other wall's plates up to its rim, at 238.5.
func TestAJoistSlidesPastTheEndOfABalloonWallByHand(t *testing.T) {
	h, faults := Frame(plainShape("L", 2, plan.AxisX).plan(same, false))
	require.Empty(t, faults)
	list := joistsNear(h, 1, 192, 3)
	require.Len(t, list, 1)
	assert.InDelta(t, 192.75, list[0].A.Y, 1e-9)
	assert.InDelta(t, 238.5, list[0].B.X, 1e-9)
	assert.InDelta(t, 237, list[0].Length, 1e-9)
	assert.Equal(t, "second/joist@192.75", list[0].ID)
}

// Of the balloon wall from (240, 192) up the ledger reaches past the inside corner to the
// end of its studs, at 186.5, so that a joist at 188 in hangs on it, at 233.
func TestALedgerReachesToTheEndOfItsWallAtAnInsideCorner(t *testing.T) {
	p := plainShape("L", 3, plan.AxisX).plan(same, false)
	p.Levels[1].JoistSpace = 188.0 / 11
	h, faults := Frame(p)
	require.Empty(t, faults)
	list := joistsNear(h, 1, 188, 1)
	require.NotEmpty(t, list)
	assert.InDelta(t, 233, list[0].B.X, 1e-9)
	low := math.Inf(1)
	for _, m := range roled(h, plan.Ledger, "second") {
		low = min(low, m.A.Y, m.B.Y)
	}
	assert.InDelta(t, 186.5, low, 1e-9)
}

// The wall of the bay from (144, 0) to (192, -48) leans 45° to joists that run north: one
// of 1.5 in there is cut at 45°, its long point 1.5 in past its short one, its center line
// at the rim's inner face: at x = 160 in that is y = -16 + 1.5 sqrt 2.
func TestAJoistIsCutAlongASlantedRimByHand(t *testing.T) {
	h, faults := Frame(plainShape("bay", -1, plan.AxisY).plan(same, false))
	require.Empty(t, faults)
	list := joistsNear(h, 0, 160, 0.1)
	require.Len(t, list, 1)
	m := list[0]
	foot := -16 + 1.5*math.Sqrt2
	assert.InDelta(t, foot, m.A.Y, 1e-9)
	assert.InDelta(t, 286.5-foot+0.75, m.Length, 1e-9, "long point to the square end")
	assert.InDelta(t, 45, m.Bevel, 1e-9)
	assert.InDelta(t, 1.5*9.25*(286.5-foot), m.Solid[0].Volume(), 1e-6, "as long as its center line")
	assert.Zero(t, joistsNear(h, 0, 80, 0.1)[0].Bevel)
}

// Whichever wall is a balloon wall and however the joists run, both ends of each are
// carried: nothing is told, and the frame shows the same.
func TestJoistsAreBorneBesideEveryBalloonWall(t *testing.T) {
	for _, name := range slices.Sorted(maps.Keys(outlines)) {
		for balloon := -1; balloon < len(outlines[name]); balloon++ {
			for i, space := range []float64{12, 16, 19.2, 24} {
				run := plan.Axes[(i+balloon+1)%2]
				p := plainShape(name, balloon, run).plan(same, false)
				p.Levels[1].JoistSpace = space
				h, faults := Frame(p)
				require.Empty(t, faults, "%s, balloon wall %d, run %s, %v", name, balloon, run, space)
				borne(t, h)
				require.Empty(t, h.Overlaps(sixteenth), fmt.Sprint(name, balloon, run, space))
			}
		}
	}
}

// hangingOver is a lower story of 336 by 240 and an upper one that reaches past it to the
// south, joists of 2x10 at 16 in running north.
func hangingOver(by float64, stock ...float64) *plan.Plan {
	p := stories(2)
	p.Lumber.Stock = append(stock, 400)
	ring(p, 0, rect(0, 0, 336, 240)...)
	ring(p, 1, rect(0, -by, 336, 240)...)
	return p
}

// A joist may reach past the wall below as far as it is nominally deep, 10 in, where it
// lies three times as far back inside: here from the middle of the plates at 2.75 in to
// that of the ones at 237.25, and over from the plates' edge at 0 to the rim's outer face.
func TestJoistsHangOverByTheRule(t *testing.T) {
	h, faults := Frame(hangingOver(10))
	require.Empty(t, faults)
	m := joistsNear(h, 0, 160, 0.1)
	require.Len(t, m, 1)
	assert.InDelta(t, 238.5+8.5, m[0].Length, 1e-9)
	_, faults = Frame(hangingOver(10.25))
	require.Len(t, faults, 1)
	assert.Equal(t, plan.Code("joist-overhang"), faults[0].Code)
	assert.Contains(t, faults[0].Summary, `joist second/joist@16, one of 20, reaches 10 1/4" past what it lies on, more than the 10"`)
	assert.True(t, faults[0].Severity == plan.Warning)
}

// Where the first bearing inside is near, the joist lies too short a way back: a bearing
// wall at 20 in, over whose middle, 21.75, the joists break as they are longer than the
// stock: from 2.75 to the middle of what they lie on there, 20.875, are 18.1, over 10.
func TestJoistsHangOverWithAShortBackSpan(t *testing.T) {
	p := hangingOver(10)
	p.Lumber.Stock = []float64{230}
	w := wall(p, "1P", 0, geom.Vec2{X: 5.5, Y: 20}, geom.Vec2{X: 330.5, Y: 20})
	w.Bearing, w.Studs = true, twoByFour
	_, faults := Frame(p)
	require.Len(t, faults, 2)
	assert.Equal(t, plan.Code("joist-too-long"), faults[0].Code, "of the lowest floor")
	assert.Contains(t, faults[1].Summary, "joist second/joist@16 lies 1.8 times as far back inside")
}

// A joist never breaks over what its end hangs over: it would tip off.
func TestJoistsDoNotBreakWhereTheyHangOver(t *testing.T) {
	p := hangingOver(10)
	p.Lumber.Stock = []float64{240}
	h, faults := Frame(p)
	require.Len(t, faults, 1)
	assert.Equal(t, plan.Code("joist-too-long"), faults[0].Code)
	assert.Len(t, joistsNear(h, 0, 160, 0.1), 1)
}

// A joist that runs along over a bearing wall may break over it where nothing that it crosses lies within
// the stock: of 237 in over a wall under its middle line to 105.5, in stock of 12 ft, 3 in short of its end;
// over a wall to 80 as well, and what is left is told: 238.5 - 77 = 161.5, 13 ft 5 1/2.
func TestJoistsBreakOverAWallAlongUnderThem(t *testing.T) {
	for _, c := range []struct{ long, at float64 }{{105.5, 102.5}, {80, 77}} {
		p := hangingOver(0)
		p.Lumber.Stock = []float64{144}
		p.Levels[0].Joists = plan.Lumber{} // of the upper floor alone
		w := wall(p, "1P", 0, geom.Vec2{X: 162.75, Y: 5.5}, geom.Vec2{X: 162.75, Y: c.long})
		w.Bearing, w.Studs = true, twoByFour
		h, faults := Frame(p)
		got := joistsNear(h, 0, 160, 0.1)
		require.Len(t, got, 2)
		assert.InDelta(t, c.at, min(got[0].B.Y, got[1].B.Y), 1e-9)
		require.NotEmpty(t, faults)
		assert.Equal(t, plan.Code("joist-too-long"), faults[0].Code, "the others cross no wall")
	}
}
