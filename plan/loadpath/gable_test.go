package loadpath

import (
	"testing"

	"galewright/plan"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"
)

func TestGableEndsByHand(t *testing.T) {
	// The demo house: q at 32.6 ft 58.0 psf. Its gable walls are 97.125 in to the
	// plates and 8.836 ft more to the ridge: 16.93 ft. Effective area of a stud at
	// 8 in: 16.93 x 16.93/3 = 95.5 ft². Zone 5: -1.4 + 0.3532 log10(9.55) = -1.054;
	// with GCpi 1.234 x 58 = 71.6 psf; 0.6 x 71.6 x 16.93/2 x 0.667 = 242 lb.
	// Rake 12 in, 7:12 (30.3 degrees), ASCE 7-22 Fig. 30.3-2D zone 3 -2.5 less the
	// wall's +1.0: 3.5 x 58 = 203 psf, 0.6 of it on a foot 122 plf.
	r := demoReport(t)
	list := r.work.gableEnds()
	require.Len(t, list, 2)
	for i, name := range []string{"2E", "2W"} {
		g := list[i]
		assert.Equal(t, name, g.Wall)
		assert.InDelta(t, 16.93*12, g.Tall, 1)
		assert.InDelta(t, 242.3, g.Push, 2)
		assert.Equal(t, "5", g.Zone)
		assert.InDelta(t, 203, g.Up, 0.2)
		assert.InDelta(t, 121.8, g.PerFt, 0.2)
	}
}

func TestOnlyGablesAreGableEnds(t *testing.T) {
	b := sample
	b.kind = "hip"
	assert.Empty(t, analyzed(t, b.plan()).gableEnds())
	a := analyzed(t, sample.plan())
	require.Len(t, a.gableEnds(), 2)
	for _, g := range a.gableEnds() {
		assert.Contains(t, []string{"2E", "2W"}, g.Wall, "the upper story's")
		assert.InDelta(t, 109, g.Tall, 1e-6, "to the plates: the wall has no rake top")
	}
	up, ok := a.rakeOverhang(a.plan.Roofs[0], 10)
	require.True(t, ok)
	assert.Equal(t, plan.GableRoof, a.plan.Roofs[0].Kind)
	assert.Equal(t, "3", up.Zone, "the corner's")
}
