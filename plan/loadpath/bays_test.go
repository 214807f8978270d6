package loadpath

import (
	"math"
	"testing"

	"galewright/plan"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"
)

// A simple-span deck by
// own statics: 516 plf over 192 ft on a deck 120 ft deep: V = 49,536 lb, v = 413
// plf, M = wL²/8 = 2,377,728 lb-ft, chord 19,814 lb.
func TestBayOfADeck(t *testing.T) {
	b := Bay{Lines: [2]string{"a", "b"}, Lo: 120, Hi: 120 + 192*12, Depth: 120 * 12}
	b.load([]Band{{From: "walls", Lo: 0, Hi: 5000, Load: 516}})
	assert.InDelta(t, 49_536, b.Ends[0], 1e-6)
	assert.InDelta(t, 49_536, b.Ends[1], 1e-6)
	assert.InDelta(t, 413, b.Unit(), 0.5)
	assert.InDelta(t, 19_814, b.Chord(), 0.5)

	// Statics: a load of 100 plf on the first 10 of 40 ft: 875 and 125 lb; the moment is
	// largest where the shear comes to nothing, 8.75 ft in: 875 x 8.75 / 2.
	b = Bay{Lines: [2]string{"a", "b"}, Lo: 0, Hi: 480, Depth: 240}
	b.load([]Band{{Lo: 0, Hi: 120, Load: 100}})
	assert.InDeltaSlice(t, []float64{875, 125}, b.Ends[:], 1e-9)
	assert.InDelta(t, 875*8.75/2*12, b.Moment, 0.002*875*8.75/2*12)

	// Past the last line it is a cantilever.
	b = Bay{Lines: [2]string{"a", ""}, Lo: 480, Hi: 540, Depth: 240}
	b.load([]Band{{Lo: 0, Hi: 540, Load: 100}})
	assert.InDeltaSlice(t, []float64{500, 0}, b.Ends[:], 1e-9)
	assert.InDelta(t, 500*30, b.Moment, 1e-9)
	b = Bay{Lines: [2]string{"", "a"}, Lo: 0, Hi: 60, Depth: 240}
	b.load([]Band{{Lo: 0, Hi: 540, Load: 100}})
	assert.InDeltaSlice(t, []float64{0, 500}, b.Ends[:], 1e-9)
	assert.InDelta(t, 500*30, b.Moment, 1e-9)
}

// What the bays hand to the lines is all the wind on each deck.
func TestBaysHandOnAllOfTheDeck(t *testing.T) {
	r := demoReport(t)
	for _, s := range r.Stories {
		sum := 0.0
		for _, b := range r.Bays {
			if b.Level == s.Level && plan.Axes[b.Axis] == s.Axis {
				sum += b.Ends[0] + b.Ends[1]
			}
		}
		assert.InDelta(t, s.Deck, sum, 1e-6*s.Deck, "%s along %s", s.Level.Name, s.Axis)
	}
	// The demo's roof: 0.6 of its wind by halves over 44 ft, without that on the eaves,
	// which goes to the walls under them: 18 in out, as deep at the wall as a 2x10 at
	// 7:12 and half of what the slope falls, under 58.44 psf. Its deck, 19/32 in with
	// ring nails of 0.120 in, has the 15/32 row of 8d, 360 x 1.4 to 505 / 2, less by
	// the nail.
	eaves := 2 * 1.5 * 58.44 * (9.25*math.Hypot(1, 7.0/12) + 18*7.0/12/2) / 12
	l := demand(t, r, "roof deck, line 2S, from its high side", diaphragmCheck)
	assert.InDelta(t, (r.Stories[0].Total-eaves)/2/44*0.6, l.Demand, 0.5)
	assert.Less(t, l.Capacity.Value, 252.5)
	assert.Greater(t, l.Capacity.Value, 180.0)
	require.Empty(t, l.Gap)
}
