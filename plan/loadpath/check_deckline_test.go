package loadpath

import (
	"math"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"
)

// All that comes to the inner line of the demo's second story, 2P and 2R, 13,419 lb,
// goes out of the roof's deck into one rafter 28 ft long: 0.6 x 13419 / 28 = 288 plf.
// One nail of 0.120 in through 19/32 in of panel, G 0.50, Fe 4650, into southern pine,
// Fe 5550, Re 1.194, Fyb 100,000, Rd 2.2 (NDS 2018 equation 12.3-5): k3 = -1 + (3.676 +
// 1.567)^½ = 1.290, Z = 1.290 x 0.12 x 0.594 x 5550 / (3.194 x 2.2) = 72.6 lb; two a
// foot at 6 in, CD 1.6: 232 plf.
func TestDeckHandsBothSidesToAnInnerLineByHand(t *testing.T) {
	r := demoWith(t, `edge = "6in"`+"\n"+`field = "4in"`, `edge = "6in"`+"\n"+`field = "6in"`)
	l := demand(t, r, "roof deck into line 2P/2R", diaphragmCheck)
	for _, x := range r.Lines {
		if x.Name == "2P/2R" {
			assert.InDelta(t, 0.6*x.Deck/28, l.Demand, 0.01)
		}
	}
	assert.InDelta(t, 288, l.Demand, 1)
	re := 5550.0 / 4650
	k3 := -1 + math.Sqrt(2*(1+re)/re+2*100_000*(2+re)*0.12*0.12/(3*5550*math.Pow(19.0/32, 2)))
	z := k3 * 0.12 * 19 / 32 * 5550 / ((2 + re) * 2.2)
	require.NotNil(t, l.Capacity)
	assert.InDelta(t, 2*1.6*z, l.Capacity.Value, 0.5)
	assert.Greater(t, l.Ratio, 1.0, "its deck's nails at 6 in are too few there")

	tight := demoReport(t) // as the demo has them, at 4 in
	assert.InDelta(t, 3*1.6*z, demand(t, tight, "roof deck into line 2P/2R", diaphragmCheck).Capacity.Value, 0.5)
	// Outer lines have one side, and lines under the eaves are crossed by all rafters.
	for _, x := range r.Links {
		if x.Check.ID == diaphragmCheck {
			assert.NotContains(t, []string{"roof deck into line 2W", "roof deck into line 2E", "roof deck into line 2S"}, x.ID)
		}
	}
}
