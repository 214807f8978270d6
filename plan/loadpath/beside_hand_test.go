package loadpath

import (
	"strings"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"
)

// The wide door d10 of wall N of the row house: the header's uplift comes to the inner of
// two kings, whose faces are the outer king's and a jack's. The outer king's hold-down holds
// both: 18 screws for it, less what that king lifts itself, or the 10d common nails between
// the kings: 0.148 in, 1-1/2 in through and 1-1/2 in deep at G 0.55, mode IV: 0.148²/2.2
// sqrt(2 x 5550 x 90000/6) = 128.5 lb (NDS 2018 equation 12.3-6, transcribed) x 1.6 = 205.6
// lb each, in two rows 12 in apart.
func TestTheInnerKingHangsOnTheOuterOnesHoldDown(t *testing.T) {
	r := exampleReport(t, "curlew-row.toml")
	outer, inner := demand(t, r, "N-139-SB", "base-uplift"), demand(t, r, "N-140-SB", "base-uplift")
	assert.Contains(t, outer.Capacity.Mark, "hold-down")
	assert.Contains(t, outer.Capacity.Starred(), "*")
	assert.InDelta(t, outer.Capacity.Value-outer.Demand, inner.Capacity.Value, 1e-6)
	assert.Equal(t, outer.Capacity.Starred(), inner.Capacity.Starred())
	assert.Greater(t, inner.Demand, 1000.0)
	assert.Less(t, inner.Ratio, 1.0)
	found := false
	for _, l := range r.Links {
		if l.Check.ID == nailingCheck && strings.HasPrefix(l.ID, "N/king@140.25, ") {
			found = true
			assert.GreaterOrEqual(t, l.Demand, inner.Demand, "no less is asked of the nails")
			assert.InDelta(t, 205.6*float64(l.Capacity.Pieces), l.Capacity.Value, 0.1*float64(l.Capacity.Pieces))
		}
	}
	assert.True(t, found, "the nails between the kings have a link")
	// Nothing of it comes to the plate: no bolt beside the door has it.
	for _, l := range r.Links {
		if l.Check.ID == sillCheck && l.Wall.Name == "N" {
			for _, x := range l.Terms {
				assert.NotContains(t, x.Text, `stud at 11'-8 1/4"`)
			}
		}
	}
}

// Without nails between the kings, or without the outer king's hold-down, nothing holds the
// inner one: a gap. With few nails they are the limit; two studs that stand so on one share
// what it has to spare. With its clips back the inner king pulls at the plate again.
func TestWhatTheInnerKingHangsOnIsAsked(t *testing.T) {
	const nails = `built_up_studs = { nail = "10d common", spacing = "12in", rows = 2 }`
	few := exampleWith(t, "curlew-row.toml", nails, `built_up_studs = { nail = "10d common", spacing = "48in" }`)
	l := demand(t, few, "N-140-SB", "base-uplift")
	assert.Contains(t, l.Capacity.Governs, "nails between")
	assert.InDelta(t, 3*205.6, l.Capacity.Value, 1, "9 ft at 48 in: three")
	assert.Greater(t, l.Ratio, 1.0)

	bare := exampleWith(t, "curlew-row.toml", nails, "")
	assert.NotEmpty(t, demand(t, bare, "N-140-SB", "base-uplift").Gap)

	const places = `at = ["11' 6 3/4in", "71' 6 3/4in", "100' 10 3/4in", "107' 11 1/4in"]`
	loose := exampleWith(t, "curlew-row.toml", places, strings.Replace(places, `"11' 6 3/4in", `, "", 1))
	assert.NotEmpty(t, demand(t, loose, "N-140-SB", "base-uplift").Gap)

	const removed = `at = ["11' 8 1/4in", "71' 8 1/4in", "101' 1/4in", "107' 9 3/4in"]`
	clipped := exampleWith(t, "curlew-row.toml", removed, strings.Replace(removed, `"11' 8 1/4in", `, "", 1))
	pulls := false
	for _, l := range clipped.Links {
		for _, x := range l.Terms {
			pulls = pulls || l.Check.ID == sillCheck && strings.Contains(x.Text, `stud at 11'-8 1/4"`)
		}
	}
	require.True(t, pulls)
}
