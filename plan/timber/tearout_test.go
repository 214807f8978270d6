package timber

import (
	"math"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"
)

func TestTearOutExample(t *testing.T) {
	// NDS 2018 Appendix E example E.7, AWC errata of March 2019 (read): side member
	// 1-1/2 x 3-1/2 in, one row of three 1/2 in bolts, hole 0.5625 in; printed
	// 3,470, 1,350 and 3 x 550 lb, row tear-out governs.
	got, err := WoodTension{Thickness: 1.5, Width: 3.5, Hole: 0.5625, Rows: 1, N: 3, Critical: 2, Ft: 788, Fv: 150, Z: []float64{550, 550, 550}}.Value()
	require.NoError(t, err)
	assert.InDelta(t, 3470, got.Net, 5)
	assert.InDelta(t, 1350, got.Row, 1e-9)
	assert.InDelta(t, 1650, got.Yield, 1e-9)
	assert.InDelta(t, 1350, got.Allow, 1e-9)
	assert.Equal(t, "row tear-out", got.Governs)
	assert.True(t, math.IsInf(got.GroupOut, 1))
}

func TestGroupTearOut(t *testing.T) {
	// Appendix E.4, from memory, worked by hand: two rows 1 in apart tear out as
	// one: half of each row, 600 lb, and 1 - 0.5 in of wood at 800 psi.
	w := WoodTension{Thickness: 1.5, Width: 5.5, Hole: 0.5, Rows: 2, N: 2, Critical: 2, Across: 1, Ft: 800, Fv: 100}
	got, err := w.Value()
	require.NoError(t, err)
	assert.InDelta(t, 600, got.Row, 1e-9)
	assert.InDelta(t, 1200, got.GroupOut, 1e-9)
	assert.InDelta(t, 1200, got.RowSum, 1e-9)
	assert.InDelta(t, 800*1.5*4.5, got.Net, 1e-9)
	w.Across = 0.75
	got, err = w.Value()
	require.NoError(t, err)
	assert.Equal(t, "group tear-out", got.Governs)
	w.Width = 1
	_, err = w.Value()
	assert.ErrorContains(t, err, "leave nothing")
}
