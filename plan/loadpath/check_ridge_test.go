package loadpath

import (
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"
)

// The main ridge of the L ends at 336 in, and the last pair of rafters with both feet on
// plates stands at 240: two hips and an end rafter pull at a board of 2x10 that sticks out
// 96 in. 800 psi x 1.6 x 1.5 x 9.25²/6 = 27,380 lb-in (NDS 2018 Supplement Table 4B, from
// memory). The wing's board breaks on the way: a gap.
func TestRidgeBoardsPastTheLastPairByHand(t *testing.T) {
	r := exampleReport(t, "sanderling.toml")
	sum := 0.0
	for _, id := range []string{"main-336b-RR", "main-336c-RR", "main-336d-RR"} {
		p := demand(t, r, id, "ridge-tie")
		sum += r.work.peaks[p.Joint].demand
	}
	require.Greater(t, sum, 500.0)
	l := demand(t, r, "main ridge at 252, bending", ridgeBendCheck)
	assert.InDelta(t, 96*sum, l.Demand, 1)
	assert.InDelta(t, 27380, l.Capacity.Value, 1e-6)
	assert.Greater(t, l.Ratio, 1.0)
	assert.InDelta(t, sum, demand(t, r, "main ridge at 252, shear", ridgeBendCheck).Demand, 0.01)
	w := demand(t, r, "wing ridge at 204, bending", ridgeBendCheck)
	assert.Contains(t, w.Gap, "breaks")
}

// Where the hips meet at a pair of rafters nothing bends the board; a ridge beam is the
// engineer's.
func TestRidgesWhoseEndsAPairHoldsDoNotBend(t *testing.T) {
	for _, name := range []string{"curlew-row.toml", "dunlin.toml", "marsh-wren.toml"} {
		for _, l := range exampleReport(t, name).Links {
			assert.NotEqual(t, ridgeBendCheck, l.Check.ID, "%s: %s", name, l.ID)
		}
	}
}

// A wing's ridge that runs into another roof has pairs with a rafter of that roof: their
// place is along the wing's ridge all the same, and what pulls at its end comes to the
// nearest of them on plates. Of the L's wing that is the one at 16 ft, at the court's corner.
func TestAPairsPlaceIsAlongItsOwnRidge(t *testing.T) {
	a := exampleReport(t, "sanderling.toml").work
	for _, r := range a.ridges {
		if r.roof.Name != "wing" {
			continue
		}
		for i, p := range r.pairs {
			assert.InDelta(t, axis(p.joint.At.Flat(), 1), p.along, 1e-9, p.joint.ID)
			assert.True(t, p.along >= r.lo-1 && p.along <= r.hi+1, p.joint.ID)
			if i > 0 {
				assert.Greater(t, p.along, r.pairs[i-1].along)
			}
		}
		stands := r.stands()
		assert.InDelta(t, 0, stands[len(stands)-1], 1e-6)
	}
	assert.Greater(t, demand(t, exampleReport(t, "sanderling.toml"), "wing-192-RR", "ridge-tie").Demand, 1000.0)
}
