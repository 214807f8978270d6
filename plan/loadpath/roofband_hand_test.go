package loadpath

import (
	"math"
	"testing"

	"galewright/plan"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"
)

// bandsOn lists the bands of a report's lowest story for wind along an axis that lie
// from one coordinate to another across it, in.
func bandsOn(r *Report, ax plan.Axis, lo, hi float64) (out []Band) {
	for _, s := range r.Stories {
		for _, b := range s.Bands {
			if s.Axis == ax && math.Abs(b.Lo-lo) < 0.1 && math.Abs(b.Hi-hi) < 0.1 {
				out = append(out, b)
			}
		}
	}
	return out
}

// The lean-to over the east side of turnstone's porch lies under the plates of its wall. Seen
// from its end it is as deep as its outer rafter, a 2x6 at 1.5:12: 5.5 x (1 + 0.125²)^½ = 5.54
// in. Less than nothing it is not: it takes nothing off the wind on the house.
func TestEndOfALeanToShowsItsOuterRafter(t *testing.T) {
	r := exampleReport(t, "turnstone.toml")
	on := bandsOn(r, "y", 10800/25.4, 13200/25.4)
	require.Len(t, on, 1)
	assert.InDelta(t, 5.5428/12, on[0].High, 1e-4)
	assert.InDelta(t, on[0].Psf*5.5428/12, on[0].Load, 0.01)
	for _, s := range r.Stories {
		sum := 0.0
		for _, b := range s.Bands {
			assert.Positive(t, b.Load, "wind along %s, %s from %.0f in", s.Axis, b.From, b.Lo)
			sum += b.Load / 12 * (b.Hi - b.Lo)
		}
		assert.InDelta(t, s.Deck, sum, 1e-6*s.Deck)
	}
}

// Sanderling's main roof has a rake of 1 ft in the west and a hip in the east. Wind
// across its ridge blows on that foot of slope too, as high as the rest, and on the
// depth of its edge: a 2x8 at 6:12, 7.25 x 1.118 = 8.106 in.
func TestRakeOfARoofThatIsHippedAtItsOtherEnd(t *testing.T) {
	r := exampleReport(t, "sanderling.toml")
	over := bandsOn(r, "y", 0, 480)
	past := bandsOn(r, "y", -12, 0)
	require.Len(t, over, 2, "walls and the main roof")
	require.Len(t, past, 2)
	assert.InDelta(t, over[1].Load, past[0].Load, 1e-9)
	assert.InDelta(t, 8.106/12, past[1].High, 1e-3)
	assert.Empty(t, bandsOn(r, "y", 480, 492), "the hip has no rake")
}
