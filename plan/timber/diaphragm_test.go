package timber

import (
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"
)

// SDPWS Table 4.2C, edition not named, sheathing, unblocked, cases 2 to 6 (second-hand, the transcriber
// asks to verify it): 15/32 with 8d 360 seismic, so 505 wind, 252.5 allowable; 19/32
// with 10d 430, 600 and 300; on spruce-pine-fir 1 − (0.5 − 0.42) = 0.92 of it.
func TestUnitShearOfADeck(t *testing.T) {
	for _, c := range []struct {
		panel float64
		nail  string
		g     float64
		want  float64
		row   string
	}{
		{15.0 / 32, "8d common", 0.55, 252.5, "15/32 with 8d"},
		{19.0 / 32, "10d common", 0.55, 300, "19/32 with 10d"},
		{19.0 / 32, "8d common", 0.55, 252.5, "15/32 with 8d"}, // no row of its own
		{7.0 / 16, "8d common", 0.42, 475 / 2.0 * 0.92, "7/16 with 8d"},
	} {
		n, ok := NailOf(c.nail)
		require.True(t, ok)
		u, err := DeckShear{c.panel, n, c.g}.UnitShear()
		require.NoError(t, err)
		assert.InDelta(t, c.want, u.Allow, 1e-9, c.nail)
		assert.Equal(t, c.row, u.Row)
	}
	_, err := DeckShear{0.25, Nail{Name: "8d", Diameter: 0.131, Length: 2.5}, 0.55}.UnitShear()
	assert.ErrorContains(t, err, "no unit shear")
}

// A thinner nail that no row has is worth its part of the row's nail across.
func TestUnitShearOfADeckWithAnotherNail(t *testing.T) {
	ring, common := Nail{Name: "ring", Diameter: 0.113, Length: 2.375}, Nail{Name: "8d", Diameter: 0.131, Length: 2.5}
	panel, rafter := Part{Thickness: 15.0 / 32, G: 0.5}, Part{Thickness: 3.5, G: 0.55}
	a, err := SingleNail(ring, panel, rafter)
	require.NoError(t, err)
	b, err := SingleNail(common, panel, rafter)
	require.NoError(t, err)
	u, err := DeckShear{15.0 / 32, ring, 0.55}.UnitShear()
	require.NoError(t, err)
	assert.InDelta(t, 252.5*a.Z/b.Z, u.Allow, 1e-9)
	assert.Less(t, u.Ratio, 0.95)
	thick := Nail{Name: "spike", Diameter: 0.162, Length: 3.5}
	u, err = DeckShear{15.0 / 32, thick, 0.55}.UnitShear()
	require.NoError(t, err)
	assert.Equal(t, 1.0, u.Ratio)
}
