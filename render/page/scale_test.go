package page

import (
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"
)

// An architect's scale rule has one foot at 1/2 in on the 1/2 in scale, and
// at 12.7 mm by the inch's definition.
func TestScalesAreWhatTheySay(t *testing.T) {
	for _, s := range architectural {
		inches := map[string]float64{
			`1" = 1'-0"`: 1, `3/4" = 1'-0"`: 0.75, `1/2" = 1'-0"`: 0.5, `3/8" = 1'-0"`: 0.375,
			`1/4" = 1'-0"`: 0.25, `3/16" = 1'-0"`: 0.1875, `1/8" = 1'-0"`: 0.125, `1/16" = 1'-0"`: 0.0625,
		}[s.Name]
		require.NotZero(t, inches, s.Name)
		assert.InDelta(t, inches*25.4, 12*s.K(), 1e-9, s.Name)
	}
	s, ok := Fit(architectural, 336, 120, 300, 200)
	require.True(t, ok)
	assert.Equal(t, `3/8" = 1'-0"`, s.Name)
	_, ok = Fit(architectural, 1e6, 120, 300, 200)
	assert.False(t, ok)
}
