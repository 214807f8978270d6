package pipeline_test

import (
	"os"
	"path/filepath"
	"testing"

	"galewright/plan/pipeline"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"
)

func demo(t *testing.T) *pipeline.Result {
	t.Helper()
	dir := filepath.Join("..", "..", "examples")
	src, err := os.ReadFile(filepath.Join(dir, "marsh-wren.toml"))
	require.NoError(t, err)
	r, faults := pipeline.Run("marsh-wren.toml", src, func(n string) ([]byte, error) { return os.ReadFile(filepath.Join(dir, n)) })
	require.False(t, faults.Errors(), "%v", faults)
	return r
}

// What is there is among the candidates with the ratio that the load path gives
// it; what stands before it holds more, and nothing of the result has changed.
func TestCandidatesAreTriedAsTheyWouldBe(t *testing.T) {
	r := demo(t)
	report, _ := r.Loads()
	joint := r.Placement.Piece("2S-224-SS-strap").Joint
	now := report.At(joint)[0].Ratio
	list := r.Candidates(joint.ID)
	require.NotEmpty(t, list)
	found := false
	for i, c := range list {
		assert.InDelta(t, c.Demand/c.Capacity, c.Ratio, 1e-9, c.Mark)
		if i > 0 {
			assert.LessOrEqual(t, list[i-1].Ratio, c.Ratio)
		}
		if c.Mark == "story-strap" {
			found = true
			assert.InDelta(t, now, c.Ratio, 1e-9)
		}
	}
	assert.True(t, found)
	assert.Same(t, joint, r.Placement.Piece("2S-224-SS-strap").Joint)
	assert.Nil(t, r.Candidates("no such joint"))
}

// Every piece of the one is one of the other; what no rule asks for, or the catalog
// has not, is an error of use.
func TestSwap(t *testing.T) {
	r := demo(t)
	pl, faults, err := r.Swap(map[string]string{"story-strap": "base-strap"})
	require.NoError(t, err)
	require.False(t, faults.Errors(), "%v", faults)
	n := 0
	for _, p := range pl.Pieces {
		assert.NotEqual(t, "story-strap", p.Item.Mark)
		if p.Item.Mark == "base-strap" {
			n++
		}
	}
	was := 0
	for _, p := range r.Placement.Pieces {
		if p.Item.Mark == "base-strap" || p.Item.Mark == "story-strap" {
			was++
		}
	}
	assert.Equal(t, was, n)
	_, _, err = r.Swap(map[string]string{"story-strap": "nothing"})
	assert.ErrorContains(t, err, "no item")
	_, _, err = r.Swap(map[string]string{"coil-strap": "base-strap"})
	assert.ErrorContains(t, err, "no rule or place asks")
}
