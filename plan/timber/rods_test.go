package timber

import (
	"math"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"
)

func TestRodTables(t *testing.T) {
	// AISC Manual 9th ed., "Tension, allowable loads" (read from a page scan),
	// kips: A36 threaded at 19.1 ksi; the 3/4 cell is damaged. A307 at 20.0 ksi
	// is a rounded 0.33 of 60.
	for d, want := range map[float64][2]float64{0.625: {5.9, 6.1}, 0.875: {11.5, 12.0}, 1: {15.0, 15.7}} {
		a36, err := RodTensionOf(d, A36)
		require.NoError(t, err)
		assert.InDelta(t, want[0], a36.Older/1000, 0.051, "A36 %v", d)
		a307, err := RodTensionOf(d, A307)
		require.NoError(t, err)
		assert.InEpsilon(t, want[1], a307.Older/1000, 0.015, "A307 %v", d)
	}
	// 0.75 Fu/2 (AISC 360 J3, second-hand), arithmetic of the reference notes.
	for d, want := range map[float64][2]float64{0.5: {4418, 4271}, 0.625: {6903, 6673}, 0.75: {9940, 9609}, 0.875: {13530, 13079}, 1: {17671, 17082}} {
		a, err := RodTensionOf(d, A307)
		require.NoError(t, err)
		b, err := RodTensionOf(d, F1554Gr36)
		require.NoError(t, err)
		assert.Equal(t, want, [2]float64{math.Round(a.Allow), math.Round(b.Allow)})
	}
	_, err := RodTensionOf(0, A36)
	assert.Error(t, err)
}

func TestThreads(t *testing.T) {
	// Tensile stress areas of coarse thread, ASME B1.1 (from memory), in².
	for d, want := range map[float64]float64{0.375: 0.0775, 0.5: 0.1419, 0.625: 0.226, 0.75: 0.334, 0.875: 0.462, 1: 0.606, 1.125: 0.763, 1.25: 0.969} {
		r, ok := RodSizeOf(d)
		require.True(t, ok)
		assert.InDelta(t, want, r.StressArea(), 0.0006, "%v", d)
		// What a nut and a washer are: the nut hides the washer's hole.
		assert.Greater(t, r.AcrossFlats, r.WasherHole)
		assert.Greater(t, r.WasherOut, r.AcrossFlats)
		assert.Greater(t, r.WasherHole, r.D)
		assert.Less(t, math.Abs(r.NutHeight-r.D), 0.2)
	}
	r, _ := RodSizeOf(0.625)
	assert.InDelta(t, 1./11, r.Pitch(), 1e-12)
	_, ok := RodSizeOf(0.6)
	assert.False(t, ok)
}

func TestBearingFactorCells(t *testing.T) {
	// NDS 2018 Table 3.10.4 (from memory): the cells of Cb, rounded up to 0.01
	// (1.09375 stands as 1.10).
	for lb, want := range map[float64]float64{0.5: 1.75, 1: 1.38, 1.5: 1.25, 2: 1.19, 3: 1.13, 4: 1.10, 6: 1.00, 9: 1} {
		assert.InDelta(t, want, BearingFactor(lb, 3).Value, 0.0065, "lb %v", lb)
	}
	assert.Equal(t, 1.0, BearingFactor(3, 2.9).Value)
	assert.Equal(t, 1.375, BearingFactor(1, 3).Value)
}

func TestWasherBearings(t *testing.T) {
	// Arithmetic of the reference notes, not published: 3 x 3 plate, hole 11/16,
	// net 8.629 in².
	for fc, want := range map[float64]float64{625: 5393, 565: 4875, 425: 3667, 405: 3495} {
		w := Washer{Along: 3, Across: 3, Hole: 11. / 16, FcPerp: fc}
		b, err := w.Value()
		require.NoError(t, err)
		assert.InDelta(t, 8.629, b.Area, 5e-4)
		assert.InDelta(t, want, b.Allow, 1)
		old, err := WasherBearing(3, 11./16, fc)
		require.NoError(t, err)
		assert.InDelta(t, old, b.Allow, 1e-9, "the older function is the same with Cb 1")
		w.FromEnd = Far
		b, err = w.Value()
		require.NoError(t, err)
		assert.InDelta(t, want*1.125, b.Allow, 1)
		w.Tight = true
		tight, err := w.Value()
		require.NoError(t, err)
		assert.InDelta(t, 0.73*b.Allow, tight.Allow, 1e-9)
	}
	round, err := Washer{Along: 2, Round: true, Hole: 0.75, FcPerp: 565}.Value()
	require.NoError(t, err)
	assert.InDelta(t, math.Pi/4*(4-0.5625), round.Area, 1e-12)
	_, err = Washer{Along: 0.5, Across: 0.5, Hole: 1, FcPerp: 565}.Value()
	assert.ErrorContains(t, err, "no bearing")
}

func TestPostOnPlate(t *testing.T) {
	// Arithmetic of the reference notes, not published: 4x4 on a southern pine
	// plate 6,921 lb, on Douglas fir-larch 7,656 lb, Cb 1.
	for fc, want := range map[float64]float64{565: 6921, 625: 7656} {
		v, err := Post{Thickness: 3.5, Width: 3.5, Fc: 1500, FcStar: 1500, PlateFcPerp: fc}.Value()
		require.NoError(t, err)
		assert.InDelta(t, want, v.Push, 1)
		assert.Equal(t, "plate", v.Governs)
		assert.False(t, v.PlateOfMetal)
	}
	bare, err := Post{Thickness: 3.5, Width: 3.5, Fc: 1500, FcStar: 1500}.Value()
	require.NoError(t, err)
	assert.Equal(t, "post", bare.Governs)
	assert.True(t, bare.PlateOfMetal)
}

func TestPostNetSection(t *testing.T) {
	// NDS 2018 Appendix E example E.7, AWC errata of March 2019 (read): 788 psi on
	// 1.5 x (3.5 - 0.5625) in, printed 3,470 lb.
	v, err := Post{Thickness: 1.5, Width: 3.5, Hole: 0.5625, Abreast: 1, Ft: 788}.Value()
	require.NoError(t, err)
	assert.InDelta(t, 3470, v.Tension, 5)
	_, err = Post{Thickness: 1.5, Width: 1, Hole: 0.6, Abreast: 2}.Value()
	assert.ErrorContains(t, err, "leave nothing")
}
