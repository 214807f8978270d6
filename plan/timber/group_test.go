package timber

import (
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"
)

func TestPublishedGroupCells(t *testing.T) {
	// NDS 2018 Tables 11.3.6A p.70 and 11.3.6C p.71 (transcribed), printed to
	// 0.01; then two hand calculations beside the same transcription.
	const e = 1_400_000
	for _, c := range []struct {
		name                string
		g                   Group
		u, m, rea           float64
		published, rounding float64
		arithmetic          float64 // of the equation, to one digit more
	}{
		{"11.3.6A", Group{N: 4, S: 4, D: 1, Am: 12, As: 12, Em: e, Es: e}, 1.042857, 0.746967, 1, 0.96, 0.005, 0.9605},
		{"11.3.6A", Group{N: 8, S: 4, D: 1, Am: 10, As: 5, Em: e, Es: e}, 1.077143, 0.676847, 0.5, 0.55, 0.005, 0.5476},
		{"11.3.6C", Group{N: 6, S: 4, D: 1, Am: 5, As: 5. / 12, Em: e, Es: SteelModulus, Metal: true}, 1.120343, 0.615201, 0.56, 0.62, 0.005, 0.6212},
		{"by hand", Group{N: 3, S: 3, D: 0.75, Am: 10.5, As: 8.25, Em: 1.6e6, Es: 1.6e6}, 1.023724, 0.804609, 0.785714, 0.98431, 1e-5, 0.98431},
		{"by hand", Group{N: 2, S: 2, D: 0.5, Am: 5.25, As: 8.25, Em: 1.6e6, Es: 1.6e6}, 1.012397, 0.854447, 0.636364, 0.99729, 1e-5, 0.99729},
	} {
		got, err := c.g.Value()
		require.NoError(t, err)
		assert.InDelta(t, c.published, got.Cg, c.rounding, c.name)
		assert.InDelta(t, c.arithmetic, got.Cg, 1e-4, c.name)
		assert.InDelta(t, c.u, got.U, 1e-6, c.name)
		assert.InDelta(t, c.m, got.M, 1e-6, c.name)
		assert.InDelta(t, c.rea, got.REA, 1e-6, c.name)
	}
}

func TestGroupOfOneOrOfNails(t *testing.T) {
	// NDS 2018 11.3.6 (transcribed).
	for _, g := range []Group{{N: 1, D: 1}, {N: 20, D: 0.162}} {
		f, err := g.Value()
		require.NoError(t, err)
		assert.Equal(t, 1.0, f.Cg)
	}
	_, err := Group{N: 2, D: 0.5, S: 2}.Value()
	assert.ErrorContains(t, err, "EA")
	g := Group{N: 2, S: 4, D: 0.75, Am: 8, As: 8, Em: 1.4e6, Es: 1.4e6}
	last := 1.0
	for ; g.N < 12; g.N++ { // property: more fasteners in a row share worse
		f, err := g.Value()
		require.NoError(t, err)
		assert.Less(t, f.Cg, last)
		last = f.Cg
	}
}
