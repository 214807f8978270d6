package timber

import (
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"
)

// A 2x6 of No. 2 southern pine flat: 1,000 psi x 1.6 x 5.5 x 1.5²/6 = 3,300 lb-in; across
// its grain 2/3 x 175 x 1.6 x 5.5 x 1.5 = 1,540 lb. Three 2x10 on edge: 800 x 1.6 x 1.5 x
// 9.25²/6 = 27,380 each. Of spruce 875 psi whatever the depth. (Values from memory, as in
// the table.)
func TestBendByHand(t *testing.T) {
	pine, _ := SpeciesOf("southern pine")
	b, ok := pine.Bend(5.5)
	require.True(t, ok)
	assert.InDelta(t, 3300, b.Moment(5.5, 1.5), 1e-9)
	assert.InDelta(t, 1540, b.Shear(5.5, 1.5), 1e-9)
	deep, ok := pine.Bend(9.25)
	require.True(t, ok)
	assert.InDelta(t, 800*1.6*1.5*9.25*9.25/6, deep.Moment(1.5, 9.25), 1e-9)
	spruce, _ := SpeciesOf("spf")
	for _, d := range []float64{3.5, 11.25} {
		b, ok := spruce.Bend(d)
		require.True(t, ok)
		assert.Equal(t, Bend{875, 135}, b)
	}
	_, ok = spruce.Bend(13.25)
	assert.False(t, ok, "deeper lumber has less")
	_, ok = pine.Bend(13.25)
	assert.False(t, ok)
	cedar, _ := SpeciesOf("western cedars")
	_, ok = cedar.Bend(5.5)
	assert.False(t, ok)
}
