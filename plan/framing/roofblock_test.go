package framing

import (
	"math"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"galewright/plan"
	"galewright/plan/geom"
)

// blocked frames the gable of wide with blocks at its eaves, without ceiling joists.
func blocked(t *testing.T, how plan.EaveBlocking, set *float64) *House {
	t.Helper()
	p := wide()
	r := p.Roofs[0]
	r.CeilingTies, r.Blocking, r.BlockingSet = false, how, set
	h, ds := Frame(p)
	require.False(t, ds.Errors())
	return h
}

// Rafters at 16 in stand on both walls: 14.5 in are left between two of them. A block's
// outer face stands 3.5 - 1.5 = 2 in in from that of a 2x4 wall, and its top follows the
// rafters': those are let in by their seats, and what is over the plates' outside face
// rises 7 in 12 to the block's faces.
func TestBlocksFillTheEavesBetweenRafters(t *testing.T) {
	h := blocked(t, plan.FullBlocking, nil)
	bays := 0
	for _, b := range h.Blocks {
		require.Equal(t, plan.Blocking, b.Member.Role)
		assert.True(t, b.Full)
		assert.Equal(t, plan.UpperPlate, b.Plate.Role)
		lo, hi := b.Member.Bounds()
		assert.InDelta(t, b.Plate.Z1, lo.Z, 1e-9, "it stands on the plate")
		in := b.Wall.Depth() - 1.5
		_, t0 := b.Wall.Frame().Local(b.Member.A.Flat())
		assert.InDelta(t, in+0.75, t0, 1e-9)
		rafter := b.Rafters[0]
		run := rafter.B.Sub(rafter.A).Flat().Len()
		tan := (rafter.B.Z - rafter.A.Z) / run
		assert.InDelta(t, 7.0/12, math.Abs(tan), 1e-9)
		edge := b.Wall.Frame().At(b.Station, in+1.5, 0).Flat()
		top := rafter.A.Z + tan*edge.Sub(rafter.A.Flat()).Dot(rafter.B.Sub(rafter.A).Flat().Unit())
		assert.InDelta(t, top, hi.Z, 1e-6, "beveled up to the deck")
		assert.GreaterOrEqual(t, b.Member.Section.Depth, hi.Z-lo.Z-1e-9)
		if math.Abs(b.Member.Length-14.5) < 1e-6 {
			bays++
		}
	}
	// Rafters at 0.75, 16, 32 ... 224 and 239.25: 13 bays of 14.5 in on each side, and two
	// shorter ones at the ends.
	assert.Equal(t, 2*13, bays)
	assert.Len(t, h.Blocks, 2*15)
	assert.Contains(t, h.BlocksOf(h.Plan.Roofs[0]), "30 of 2x")
	for _, b := range h.Blocks {
		for _, m := range h.Members {
			if m == b.Member {
				continue
			}
			for _, s := range m.Solid {
				require.False(t, geom.Overlap(b.Member.Solid[0], s, 0.01), "%s in %s", b.Member.ID, m.ID)
			}
		}
	}
}

func TestVentedBlocksStopUnderTheDeck(t *testing.T) {
	full, vented := blocked(t, plan.FullBlocking, nil), blocked(t, plan.VentedBlocking, nil)
	require.Equal(t, len(full.Blocks), len(vented.Blocks))
	for i, b := range vented.Blocks {
		assert.False(t, b.Full)
		// 2 in square to the slope: 2 sqrt(12² + 7²) / 12 plumb.
		assert.InDelta(t, 2*math.Hypot(12, 7)/12, full.Blocks[i].Member.Z1-b.Member.Z1, 1e-6)
	}
	assert.Contains(t, vented.BlocksOf(vented.Plan.Roofs[0]), "for air")
	assert.Empty(t, blocked(t, plan.NoBlocking, nil).Blocks)
	assert.Empty(t, blocked(t, plan.NoBlocking, nil).BlocksOf(full.Plan.Roofs[0]))
}

func TestBlocksStandWhereThePlanSets(t *testing.T) {
	set := 1.0
	h := blocked(t, plan.FullBlocking, &set)
	require.NotEmpty(t, h.Blocks)
	for _, b := range h.Blocks {
		_, at := b.Wall.Frame().Local(b.Member.A.Flat())
		assert.InDelta(t, 1.75, at, 1e-9)
	}
}

// A ceiling joist beside a rafter shortens the block by its thickness.
func TestCeilingJoistsPartTheBlocks(t *testing.T) {
	p := wide()
	p.Roofs[0].Blocking = plan.FullBlocking
	p.Lumber.Stock = []float64{192, 320}
	h, ds := Frame(p)
	require.False(t, ds.Errors())
	short := 0
	for _, b := range h.Blocks {
		if math.Abs(b.Member.Length-13) < 1e-6 {
			short++
		}
	}
	assert.Equal(t, 2*12, short, "of 13 bays the middle one has joists on neither or both sides")
}
