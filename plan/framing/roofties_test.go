package framing

import (
	"strings"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"galewright/plan"
	"galewright/plan/geom"
)

// wide is a gable 300 across, wider than the longest stock, 240; its rafters stand
// at 0.75 and 239.25, flush, and at 16, 32 ... 224 between, 14 pairs.
func wide() *plan.Plan {
	p := stories(1)
	w := ring(p, 0, rect(0, 0, 240, 300)...)
	w[0].Top, w[2].Top = plan.PlateTop, plan.PlateTop
	w[1].Top, w[3].Top = plan.RakeTop, plan.RakeTop
	roofOn(p, "main", "gable", "x", 7, rect(0, 0, 240, 300))
	p.Lumber.Stock = []float64{192, 240}
	return p
}

// tiesOf frames a plan and returns its ceiling joists and what is told of them.
func tiesOf(t *testing.T, p *plan.Plan) (ties []*Tie, told []plan.Diagnostic) {
	t.Helper()
	h, ds := Frame(p)
	for _, d := range ds {
		require.NotEqual(t, plan.Error, d.Severity, "%s", d)
		if strings.HasPrefix(string(d.Code), "ceiling") {
			told = append(told, d)
		}
	}
	return h.Ties, told
}

// Over a bearing wall from y = 130 to 135.5 each joist breaks at 132.75; the piece
// beside the break laps 12 on each side. Nothing meets in mid air.
func TestCeilingJoistsBreakOverABearingWall(t *testing.T) {
	p := wide()
	w := wall(p, "I", 0, geom.Vec2{Y: 130}, geom.Vec2{X: 240, Y: 130})
	w.From.X, w.To.X, w.Bearing = 5.5, 234.5, true
	ties, told := tiesOf(t, p)
	require.Empty(t, told)
	require.Len(t, ties, 14)
	for _, x := range ties {
		require.Len(t, x.Pieces, 2)
		require.Len(t, x.Splices, 1)
		lo, hi := x.Splices[0].Bounds()
		assert.InDelta(t, 120.75, lo.Y, 1e-9)
		assert.InDelta(t, 144.75, hi.Y, 1e-9)
		a, b := x.Pieces[0], x.Pieces[1]
		assert.InDelta(t, 132.75, a.Length, 1e-9)
		assert.InDelta(t, 167.25, b.Length, 1e-9)
		assert.InDelta(t, 0, lo.X-min(a.B.X, b.B.X)-0.75, 3.1, "one thickness beside the joist")
	}
}

// Without a wall, and with no splice ordered, a joist stays in one piece and that is
// told at the roof's line with the first one's place; a splice of 24 breaks it in the
// middle, at 150, and laps to 126 and 174. A wall that carries nothing is no bearing.
func TestCeilingJoistsBreakElsewhereOnlyByASplice(t *testing.T) {
	p := wide()
	w := wall(p, "I", 0, geom.Vec2{X: 5.5, Y: 130}, geom.Vec2{X: 234.5, Y: 130})
	w.Bearing = false
	ties, told := tiesOf(t, p)
	require.Len(t, told, 1)
	assert.Equal(t, plan.Code("ceiling-joist-too-long"), told[0].Code)
	assert.Equal(t, p.Roofs[0].Pos, told[0].Pos)
	assert.Contains(t, told[0].Where, "roof main, ceiling joist, ")
	assert.Contains(t, told[0].Where, "from the west end, and 13 more")
	for _, x := range ties {
		require.Len(t, x.Pieces, 1)
		assert.InDelta(t, 300, x.Pieces[0].Length, 1e-9)
		assert.Empty(t, x.Splices)
	}
	p.Roofs[0].CeilingSplice = 24
	ties, told = tiesOf(t, p)
	require.Empty(t, told)
	for _, x := range ties {
		require.Len(t, x.Pieces, 2)
		assert.InDelta(t, 150, x.Pieces[0].Length, 1e-9)
		lo, hi := x.Splices[0].Bounds()
		assert.InDelta(t, 126, lo.Y, 1e-9)
		assert.InDelta(t, 174, hi.Y, 1e-9)
	}
}

// A partition that rises over the plates at x = 81, from y = 20 to 60, is in the way of half of the joist
// that would stand there: its other half is laid, but ties nothing, and at a spacing the next pair has a tie.
func TestACeilingJoistWithoutRoomIsNoTie(t *testing.T) {
	for _, space := range []float64{0, 32} {
		plain, blocked := wide(), wide()
		for _, p := range []*plan.Plan{plain, blocked} {
			p.Roofs[0].CeilingSplice, p.Roofs[0].CeilingSpace = 24, space
		}
		w := wall(blocked, "I", 0, geom.Vec2{X: 81, Y: 20}, geom.Vec2{X: 81, Y: 60})
		w.Height = 109.125 + 20
		all, _ := tiesOf(t, plain)
		h, _ := Frame(blocked)
		at := map[float64]bool{}
		for _, x := range h.Ties {
			require.Len(t, x.Pieces, 2)
			at[x.Along] = true
		}
		joists := 0
		for _, m := range h.Members {
			if m.Role == plan.Joist && m.Roof != nil {
				joists++
			}
		}
		assert.Equal(t, 3*len(h.Ties)+1, joists, "two pieces and what is beside their break, and one by itself")
		assert.False(t, at[80], "%v", at)
		if space == 0 {
			assert.Len(t, h.Ties, len(all)-1)
			continue
		}
		assert.True(t, at[96], "%v", at)
	}
}

// At 32 on center every second of the 14 pairs has one, 16, 48 ... 208, and the last,
// 224, as well: 8. Their lumber is the plan's.
func TestCeilingJoistsAtTheirOwnSpacing(t *testing.T) {
	p := wide()
	p.Roofs[0].CeilingSplice, p.Roofs[0].CeilingSpace = 24, 32
	p.Roofs[0].Ceiling = plan.Lumber{Ply: 1, Breadth: 1.5, Depth: 7.25, Text: "2x8"}
	ties, _ := tiesOf(t, p)
	var at []float64
	for _, x := range ties {
		at = append(at, x.Along)
		assert.Equal(t, "2x8", x.Pieces[0].Section.Text)
		assert.InDelta(t, 7.25, x.Pieces[0].Z1-x.Pieces[0].Z0, 1e-9)
	}
	assert.InDeltaSlice(t, []float64{16, 48, 80, 112, 144, 176, 208, 224}, at, 1e-9)
}

// Of walls at 100, 130 and 200 along 500 the farthest within 192 is 130, from
// there 200, and from 200 the end is 300 off: too far.
func TestOverWalls(t *testing.T) {
	assert.Equal(t, []float64{0, 130, 200, 380}, overWalls([]float64{100, 130, 200}, 380, 192))
	assert.Nil(t, overWalls([]float64{100, 130, 200}, 500, 192))
	assert.Nil(t, overWalls(nil, 300, 240))
	assert.Equal(t, []float64{0, 150, 300}, overWalls([]float64{150}, 300, 240))
}
