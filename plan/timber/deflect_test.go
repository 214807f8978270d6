package timber

import (
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"
)

// SDPWS 2015 equation 4.3-1 by hand: v 490 plf, h 9 ft, b 8 ft, A 10.5 in², E
// 1.4e6 psi, Ga 22, 0.125 in of stretch:
// 8·490·729/(1.4e6·10.5·8) = 0.0243; 490·9/22,000 = 0.2005; 9·0.125/8 = 0.1406.
func TestDeflectionByHand(t *testing.T) {
	for _, c := range []struct{ v, h, b, a, e, ga, stretch, bend, shear, anchor float64 }{
		{490, 9, 8, 10.5, 1.4e6, 22, 0.125, 0.0243, 0.2005, 0.1406},
		{532.5, 9, 8, 10.5, 1.4e6, 19, 0.125, 0.0264, 0.2522, 0.1406},
		{350, 8, 4, 12.25, 1.6e6, 15, 0.125, 0.0183, 0.1867, 0.2500},
	} {
		d := DeflectionOf(c.h, c.b, c.a, c.e, c.ga, c.stretch/c.v)
		assert.InDelta(t, c.bend, c.v*d.Bending, 5e-5)
		assert.InDelta(t, c.shear, c.v*d.Shear, 5e-5)
		assert.InDelta(t, c.anchor, c.v*d.Anchorage, 5e-5)
	}
}

// Equal deflection, our statics: 4,000 lb on walls 8 ft high, Ga 15, EA
// 1.4e6·10.5, anchors of 40,000 lb/in, so that Δa = v h/40,000. 8 and 4 ft
// deflect alike at 361.5 and 276.9 plf; 8, 4 and 3 ft at 306.5, 234.7 and 203.0.
func TestEqualDeflectionByHand(t *testing.T) {
	for _, c := range []struct{ b, v []float64 }{
		{[]float64{8, 8}, []float64{250, 250}},
		{[]float64{8, 4}, []float64{361.5, 276.9}},
		{[]float64{8, 4, 3}, []float64{306.5, 234.7, 203.0}},
		{[]float64{6, 3}, []float64{488.4, 356.5}},
	} {
		sum := 0.0
		for _, b := range c.b {
			sum += b / DeflectionOf(8, b, 10.5, 1.4e6, 15, 8.0/40_000).Per()
		}
		for i, b := range c.b {
			assert.InDelta(t, c.v[i], 4000/sum/DeflectionOf(8, b, 10.5, 1.4e6, 15, 8.0/40_000).Per(), 0.1, "%v", c.b)
		}
	}
}

// Cells of Ga: SDPWS 2015 Table 4.3A (transcribed).
func TestApparentStiffness(t *testing.T) {
	u, err := Sheathing{Thickness: "15/32", Nail: "8d", Edge: 4, G: 0.55}.UnitShear()
	require.NoError(t, err)
	osb, ply, ok := u.Row.ApparentStiffness(u.Column)
	assert.True(t, ok)
	assert.Equal(t, []float64{19, 13}, []float64{osb, ply})
	u, err = Sheathing{Thickness: "3/8", Nail: "8d", Edge: 4, G: 0.55}.UnitShear()
	require.NoError(t, err)
	_, _, ok = u.Row.ApparentStiffness(u.Column)
	assert.False(t, ok, "no row of 3/8 was read")
	_, _, ok = u.Row.ApparentStiffness(5)
	assert.False(t, ok)
}

// 2b/h by hand for a wall of 8 ft: 3 ft is 0.75, 2.5 ft 0.625; past 3.5:1 nothing.
func TestLengthFactor(t *testing.T) {
	for b, want := range map[float64]float64{8: 1, 4: 1, 3: 0.75, 2.5: 0.625, 8 / 3.5: 2 / 3.5, 2.2: 0} {
		assert.InDelta(t, want, LengthFactor(8, b), 1e-9, "%v ft", b)
	}
}

// Edge nails of 2 in, or 10d at 3 in, split a 2x at a joint of panels (an answer
// of the American Wood Council on SDPWS, read).
func TestWideFraming(t *testing.T) {
	for _, c := range []struct {
		panel, nail string
		edge        float64
		wide        bool
	}{{"15/32", "8d", 2, true}, {"15/32", "8d", 3, false}, {"15/32", "10d", 3, true}, {"15/32", "10d", 4, false}} {
		u, err := Sheathing{Thickness: c.panel, Nail: c.nail, Edge: c.edge, G: 0.5}.UnitShear()
		require.NoError(t, err)
		assert.Equal(t, c.wide, u.WideFraming() != "", "%v", c)
	}
}
