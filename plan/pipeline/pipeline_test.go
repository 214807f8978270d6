package pipeline_test

import (
	"os"
	"path/filepath"
	"strings"
	"testing"

	"galewright/plan/pipeline"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"
)

// shed returns the smallest example, with some of its text changed.
func shed(t *testing.T, old, new string) (*pipeline.Result, []string) {
	dir := filepath.Join("..", "..", "examples")
	src, err := os.ReadFile(filepath.Join(dir, "shed.toml"))
	require.NoError(t, err)
	require.Contains(t, string(src), old)
	r, ds := pipeline.Run("shed.toml", []byte(strings.ReplaceAll(string(src), old, new)), func(n string) ([]byte, error) { return os.ReadFile(filepath.Join(dir, n)) })
	_, more := r.Loads()
	var codes []string
	for _, d := range append(ds, more...) {
		codes = append(codes, string(d.Code))
	}
	return r, codes
}

// Each stage stands where those before it could, and the last two are worked
// out once however often they are asked for.
func TestStagesRunAsFarAsThePlanAllows(t *testing.T) {
	for name, c := range map[string]struct {
		old, new                        string
		code                            string
		house, placed, counted, checked bool
	}{
		"a sound plan":          {"", "", "", true, true, true, true},
		"a plan of bad grammar": {"[site]", "[site", "syntax", false, false, false, false},
		"no wind speed":         {"[site]\nwind_speed = \"130 mph\"\nexposure = \"C\"\nshore = \"4 mi\"\n", "", "no-wind-basis", true, true, true, false},
	} {
		t.Run(name, func(t *testing.T) {
			r, codes := shed(t, c.old, c.new)
			loads, _ := r.Loads()
			assert.Equal(t, c.house, r.House != nil, "framed")
			assert.Equal(t, c.placed, r.Placement != nil, "placed")
			assert.Equal(t, c.counted, r.Schedule != nil, "counted")
			assert.Equal(t, c.checked, loads != nil, "load path")
			assert.Equal(t, c.house, r.Lumber() != nil, "cut list")
			if c.code != "" {
				assert.Contains(t, codes, c.code)
			}
			again, _ := r.Loads()
			assert.Same(t, loads, again)
			assert.Same(t, r.Lumber(), r.Lumber())
		})
	}
}
