package calculation

import (
	"os"
	"path/filepath"
	"testing"

	"galewright/plan/pipeline"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"
)

// The filed sheets tell every deck between its lines. Sanderling's deck between the
// wing's end and the line of the court is the wing's 20 ft deep; what decks hand to
// their lines is all that enters each story.
func TestDecksOfTheFiledSet(t *testing.T) {
	dir := filepath.Join("..", "..", "examples")
	src, err := os.ReadFile(filepath.Join(dir, "sanderling.toml"))
	require.NoError(t, err)
	run, ds := pipeline.Run("sanderling.toml", src, func(n string) ([]byte, error) { return os.ReadFile(filepath.Join(dir, n)) })
	require.False(t, ds.Errors())
	r, _ := run.Loads()
	s := decks(r)
	assert.Contains(t, lateral(r), s)
	sum, enters := map[string]float64{}, map[string]float64{}
	for _, row := range s.Rows {
		sum[row[1].Text] += row[5].Number + row[6].Number
		if row[1].Text == "x" && row[2].Text == `S = -16'-0"` {
			assert.Equal(t, `C/P = 0"`, row[3].Text)
			assert.InDelta(t, 20, row[4].Number, 1e-6)
			// 182.4 and 144.7 plf over 16 ft, and 131.3 on the last foot, into line C:
			// (327.1 x 16 / 2 + 131.3 x 15.5 / 16) / 20 ft.
			assert.InDelta(t, (327.1*8+131.3*15.5/16)/20, row[7].Number, 0.2)
			assert.InDelta(t, 0.6*row[7].Number, row[8].Number, 1e-9)
		}
	}
	for _, x := range r.Stories {
		enters[string(x.Axis)] += x.Deck
	}
	for ax, lb := range enters {
		assert.InDelta(t, lb, sum[ax], 1e-6*lb, "wind along %s", ax)
	}
}
