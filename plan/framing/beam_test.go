package framing

import (
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"
	"pgregory.net/rapid"

	"galewright/plan"
	"galewright/plan/geom"
)

// beamPlan is a house of one story, 336 by 240 in, with one flush beam.
func beamPlan(from, to geom.Vec2, section plan.Lumber) *plan.Plan {
	p := onSlabPlan()
	ring(p, 0, rect(0, 0, 336, 240)...)
	p.Beams = []*plan.FloorBeam{{Name: "B1", Level: p.Levels[0], From: from, To: to, Member: section, Pos: plan.Pos{File: "plan.toml", Line: 77}}}
	return p
}

func flushBeam(t require.TestingT, h *House) *Member {
	for _, m := range h.Members {
		if m.Role == plan.PlateBeam {
			return m
		}
	}
	require.Fail(t, "no beam stands")
	return nil
}

var twoTwoByEight = plan.Lumber{Ply: 2, Breadth: 1.5, Depth: 7.25, Text: "2-2x8"}

// 2x6 walls are 5 1/2 in deep: between their faces 240 less 11 in. The plates' top is
// 120 + 109 1/8 in.
func TestFlushBeamIsCutToTheWallsFaces(t *testing.T) {
	for _, ends := range [][2]float64{{5.5, 234.5}, {0, 240}, {5.25, 234.75}, {5.9, 234.1}} {
		h := frame(t, beamPlan(geom.Vec2{X: 100, Y: ends[0]}, geom.Vec2{X: 100, Y: ends[1]}, twoTwoByEight))
		m := flushBeam(t, h)
		assert.InDelta(t, 229, m.Length, 1e-9)
		assert.InDelta(t, 229.125, m.Z1, 1e-9)
		assert.InDelta(t, 229.125-7.25, m.Z0, 1e-9)
		lo, hi := m.Solid[0].Bounds()
		assert.InDelta(t, 0, lo.Sub(geom.Vec3{X: 98.5, Y: 5.5, Z: 221.875}).Len(), 1e-9)
		assert.InDelta(t, 0, hi.Sub(geom.Vec3{X: 101.5, Y: 234.5, Z: 229.125}).Len(), 1e-9)
	}
}

func TestFlushBeamEndInTheAirIsTold(t *testing.T) {
	_, faults := Frame(beamPlan(geom.Vec2{X: 100, Y: 5.5}, geom.Vec2{X: 100, Y: 200}, twoTwoByEight))
	require.Len(t, faults, 1)
	assert.Equal(t, plan.Code("beam-in-the-air"), faults[0].Code)
	assert.Equal(t, 77, faults[0].Pos.Line)
	assert.Contains(t, faults[0].Summary, `second end of beam B1, at 8'-4", 16'-8", is in the air`)
	assert.Contains(t, faults[0].Summary, `1C/`)
	assert.Contains(t, faults[0].Summary, `2'-10 1/2" away`)
}

func TestFlushBeamThatIsTooShortOrTooLongIsTold(t *testing.T) {
	_, faults := Frame(beamPlan(geom.Vec2{X: 100, Y: 100}, geom.Vec2{X: 100, Y: 110}, twoTwoByEight))
	require.Len(t, faults, 1)
	assert.Equal(t, plan.Code("beam-too-short"), faults[0].Code)
	_, faults = Frame(beamPlan(geom.Vec2{X: 5.5, Y: 100}, geom.Vec2{X: 330.5, Y: 100}, twoTwoByEight))
	require.Len(t, faults, 1)
	assert.Equal(t, plan.Code("beam-too-long"), faults[0].Code)
	assert.Contains(t, faults[0].Summary, `27'-1"`, "336 less 11 in")
}

// Wherever a beam stands between two walls, in whatever direction it is written, it
// is hung at both ends, touches what it hangs from and shares no space.
func TestFlushBeamsHangAtBothEnds(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		along := rapid.Bool().Draw(t, "along x")
		ply := rapid.IntRange(1, 3).Draw(t, "plies")
		section := plan.Lumber{Ply: ply, Breadth: 1.5, Depth: rapid.SampledFrom([]float64{5.5, 7.25, 9.25, 11.25}).Draw(t, "depth")}
		short := rapid.Float64Range(0, 5.9).Draw(t, "into the wall")
		from, to := geom.Vec2{Y: short}, geom.Vec2{Y: 240 - short}
		if along {
			from, to = geom.Vec2{X: short}, geom.Vec2{X: 336 - short}
		}
		shift := geom.Vec2{X: rapid.Float64Range(12, 324).Draw(t, "x")}
		if along {
			shift = geom.Vec2{Y: rapid.Float64Range(12, 228).Draw(t, "y")}
		}
		from, to = from.Add(shift), to.Add(shift)
		if rapid.Bool().Draw(t, "turned round") {
			from, to = to, from
		}
		p := beamPlan(from, to, section)
		p.Lumber.Stock = []float64{400}
		h, faults := Frame(p)
		require.Empty(t, faults)
		require.Empty(t, h.Overlaps(0.01))
		m := flushBeam(t, h)
		ends := 0
		for _, j := range h.Joints {
			if j.Kind != plan.BeamEnd {
				continue
			}
			ends++
			require.Same(t, m, j.First())
			require.Len(t, j.Members, 2)
			require.Less(t, min(j.At.Sub(m.A).Flat().Len(), j.At.Sub(m.B).Flat().Len()), 1e-6)
			lo, hi := j.Members[1].Bounds()
			at := j.At
			require.True(t, at.X > lo.X-3 && at.X < hi.X+3 && at.Y > lo.Y-3 && at.Y < hi.Y+3 && at.Z > lo.Z-1e-6 && at.Z < hi.Z+1e-6, "%s", j.Members[1].ID)
		}
		require.Equal(t, 2, ends)
	})
}
