package loadpath_test

import (
	"strings"
	"testing"

	"galewright/plan/loadpath"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"
)

// limits returns the links of the limits of the method by ID.
func limits(r *loadpath.Report) map[string]*loadpath.Link {
	out := map[string]*loadpath.Link{}
	for _, l := range r.Links {
		if l.Check.ID == "method-limit" {
			out[l.ID] = l
		}
	}
	return out
}

// A house outside of a limit of the method fails the check, and one that lies
// within it does not fail by it.
func TestALimitOfTheMethodFails(t *testing.T) {
	within, outside := limits(cabinReport()), limits(cabinWith(`pitch = "4:12"`, `pitch = "13:12"`))
	require.Contains(t, within, "limit, angle of roof roof")
	assert.InDelta(t, 18.43/45, within["limit, angle of roof roof"].Ratio, 1e-3) // 4:12
	steep := outside["limit, angle of roof roof"]
	require.NotNil(t, steep)
	assert.InDelta(t, 47.29/45, steep.Ratio, 1e-3) // 13:12
	assert.True(t, steep.Over(1))
	for id, l := range within {
		assert.False(t, l.Over(1), id)
	}
	var b strings.Builder
	failed, err := cabinWith(`pitch = "4:12"`, `pitch = "13:12"`).WriteCheck(&b, 1000, "text")
	require.NoError(t, err)
	assert.True(t, failed, "its deck has gaps")
	assert.Contains(t, b.String(), "limit, angle of roof roof")
}

// A limit does not change with the wind, so no speed overtakes it.
func TestLimitsAreNotOvertaken(t *testing.T) {
	for _, o := range cabinReport().Speeds("") {
		assert.NotEqual(t, "method-limit", o.Check.ID)
	}
}
