package loadpath_test

import (
	"os"
	"regexp"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"
)

// Without ordered nails between the plates only the ties' own nails in the top
// plate count: enough of them under the gables' rafters, too few elsewhere.
func TestPlatesWithoutNails(t *testing.T) {
	src, err := os.ReadFile("../../examples/marsh-wren.toml")
	require.NoError(t, err)
	r := reportOf(t, "marsh-wren.toml", regexp.MustCompile(`(?m)^top_plates = .*$`).ReplaceAllString(string(src), ""))
	seen := map[string]float64{}
	for _, l := range r.Links {
		if l.Check.ID == "plates-uplift" {
			seen[l.ID] = l.Ratio
			assert.Contains(t, l.Capacity.Governs, "top plate alone", l.ID)
		}
	}
	assert.Greater(t, seen["2S-32-RP, upper plate"], 1.2)
	assert.Less(t, seen["2S-1-RP, upper plate"], 1.0)
}
