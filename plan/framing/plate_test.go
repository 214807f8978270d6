package framing

import (
	"math"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"
	"pgregory.net/rapid"

	"galewright/plan"
	"galewright/plan/geom"
	"galewright/plan/plantest"
)

// End joints in the two top plates lie at least 24 in apart. Source: the
// nailing table of IRC 2009 or 2012 R602.3 (row of the double top plate
// splice, 24 in offset; local amendment text, transcribed); R602.3.2 by name from the trade.
func TestTopPlateJointsLie24InchesApart(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		length := 16 * float64(rapid.IntRange(13, 90).Draw(t, "modules"))
		at := rapid.Float64Range(20, 120).Draw(t, "at")
		p, w := straight(length, window("w", at, 60))
		w.Stock = rapid.SampledFrom([]float64{120, 144, 192, 240}).Draw(t, "stock")
		h := frameDrawn(t, p)
		lower, upper := breaks(of(h, "1A", plan.TopPlate)), breaks(of(h, "1A", plan.UpperPlate))
		for _, a := range lower {
			for _, b := range upper {
				if math.Abs(a-b) < 24-1e-6 {
					t.Fatalf("joints at %v and %v", a, b)
				}
			}
		}
		for _, m := range of(h, "1A", plan.TopPlate, plan.UpperPlate, plan.SillPlate) {
			if m.Length > w.Stock+1e-6 {
				t.Fatalf("%s is %v long", m.ID, m.Length)
			}
		}
		if n := len(joints(h, "1A", plan.PlateSplice)); n != len(lower)+len(upper) {
			t.Fatalf("%d splice joints for %d breaks", n, len(lower)+len(upper))
		}
	})
}

// breaks returns the stations where one plate's pieces meet.
func breaks(plates []*Member) (out []float64) {
	for i, m := range plates {
		if i > 0 {
			out = append(out, m.S0)
		}
	}
	return out
}

func TestSplicesStandOnStudsAndOffHeaders(t *testing.T) {
	p, w := straight(400, window("w", 170, 60))
	w.Stock = 192
	h := frame(t, p)
	mids := map[float64]bool{}
	for _, m := range of(h, "1A", plan.Stud, plan.King) {
		mids[m.Mid()] = true
	}
	header := of(h, "1A", plan.Header)[0]
	for _, s := range append(breaks(of(h, "1A", plan.TopPlate)), breaks(of(h, "1A", plan.UpperPlate))...) {
		assert.True(t, mids[s], "splice at %v is on a stud", s)
		assert.False(t, s > header.S0-6 && s < header.S1+6, "splice at %v is at the header", s)
	}
}

func TestStockTooShortToSpliceIsTold(t *testing.T) {
	p, w := straight(400)
	w.Stock = 20
	_, faults := Frame(p)
	require.NotEmpty(t, faults)
	assert.Equal(t, "plate-splice", string(faults[0].Code))
}

// Dressed sizes of PS 20 (transcribed), as the members have them.
func TestMembersHaveDressedSizes(t *testing.T) {
	p, _ := straight(192, window("w", 64, 38.5))
	h := frame(t, p)
	for _, m := range h.Members {
		lo, hi := m.Bounds()
		size := hi.Sub(lo)
		switch m.Role {
		case plan.Stud, plan.King, plan.Jack, plan.Cripple:
			assert.InDelta(t, 1.5, size.X, 1e-9)
			assert.InDelta(t, 5.5, size.Y, 1e-9)
		case plan.TopPlate, plan.UpperPlate, plan.SillPlate, plan.Sill:
			assert.InDelta(t, 1.5, size.Z, 1e-9)
			assert.InDelta(t, 5.5, size.Y, 1e-9)
		case plan.Header:
			assert.InDelta(t, 9.25, size.Z, 1e-9)
			assert.InDelta(t, 3, size.Y, 1e-9)
		}
	}
}

func TestLayoutMovesTheModule(t *testing.T) {
	p, w := straight(96)
	w.Layout = 8
	h := frame(t, p)
	plantest.Near(t, []float64{0.75, 8, 24, 40, 56, 72, 88, 95.25}, mids(of(h, "1A", plan.Stud)), 1e-9)
}

func TestModuleIsMeasuredFromTheCornerInAButtingWall(t *testing.T) {
	p := onSlabPlan()
	ring(p, 0, rect(0, 0, 336, 240)...)
	h := frame(t, p)
	assert.InDelta(t, 16, of(h, "1B", plan.Stud)[0].Mid(), 1e-9)
}

func mids(list []*Member) (out []float64) {
	for _, m := range list {
		out = append(out, m.Mid())
	}
	return out
}

func TestRakeWallFollowsTheRoof(t *testing.T) {
	p := onSlabPlan()
	walls := ring(p, 0, rect(0, 0, 336, 240)...)
	walls[1].Top, walls[3].Top = "rake", "rake"
	p.Roofs = []*plan.Roof{{
		Name: "roof", Over: p.Levels[0], Kind: "gable", Area: [2]geom.Vec2{{}, {X: 336, Y: 240}}, Ridge: "x", Pitch: 6,
		Overhang: 12, Rake: 12, Rafters: twoByTen, Spacing: 16, RidgeMember: plan.Lumber{Ply: 1, Breadth: 1.75, Depth: 11.875, Text: "1.75x11.875"},
		GableEnd: [2]plan.GableEnd{"rake", "rake"},
	}}
	h := frame(t, p)
	var tallest, lowest float64 = 0, math.Inf(1)
	for _, m := range of(h, "1B", plan.Stud, plan.Post) {
		tallest, lowest = max(tallest, m.Length), min(lowest, m.Length)
		require.NotNil(t, joints(h, "1B", plan.StudTop))
	}
	// from the long point of the first stud, 7 in, to that of the last before
	// the ridge, 112.75 in, the roof rises 6 in 12
	assert.InDelta(t, (112.75-7)/2, tallest-lowest, 1e-6)
	plates := of(h, "1B", plan.UpperPlate)
	require.Len(t, plates, 2)
	assert.InDelta(t, 114.5*math.Sqrt(1.25), plates[0].Length, 0.01, "framing square, 6 in 12: 13.42 in for each foot")
}
