package loadpath

import (
	"math"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"
)

// The main ridge of the L ends at 336 in, and the last pair of rafters with both feet on
// plates stands at 240: two hips and an end rafter pull at a board of 2x10 that sticks out
// 96 in. 800 psi x 1.6 x 1.5 x 9.25²/6 = 27,380 lb-in (NDS 2018 Supplement Table 4B, from
// memory). Nothing stands under the last piece of the wing's board: a gap.
func TestRidgeBoardsPastTheLastPairByHand(t *testing.T) {
	r := elbowWith(t)
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
	assert.Contains(t, demand(t, r, "wing ridge at 324, pull", ridgeBendCheck).Gap, "no pair of rafters on two plates and no post stands under this piece")
}

// A post under the end of the main ridge, at 328, holds its end: the 8 in past it and the
// 88 between it and the pair at 240 bend the board. One under the wing's last piece alone
// does not keep that from tipping over it.
func TestAPostUnderARidgesEnd(t *testing.T) {
	r := elbowWith(t, "[[girder]]\nname = \"G1\"\nfrom = [\"0'\", \"12'\"]\nto = [\"40'\", \"12'\"]", "[[girder]]\nname = \"G1\"\nfrom = [\"0'\", \"12' 6in\"]\nto = [\"40'\", \"12' 6in\"]",
		"name = \"main\"\nkind = \"gable\"", "name = \"main\"\npost = [{ at = \"27' 4in\" }]\nkind = \"gable\"", "name = \"wing\"\nkind = \"gable\"", "name = \"wing\"\npost = [{ at = \"24' 8in\" }]\nkind = \"gable\"")
	sum := 0.0
	for _, id := range []string{"main-336b-RR", "main-336c-RR", "main-336d-RR"} {
		sum += r.work.peaks[demand(t, r, id, "ridge-tie").Joint].demand
	}
	for _, l := range r.Links {
		if l.Check.ID == ridgeBendCheck && l.Host == "roof main" {
			assert.Less(t, l.Ratio, 1.0, l.ID)
			if l.Unit == "lb-in" {
				assert.GreaterOrEqual(t, l.Demand, 8*sum-1)
			}
		}
	}
	assert.Contains(t, demand(t, r, "wing ridge at 324, pull", ridgeBendCheck).Gap, "it tips over that")
	top, foot := demand(t, r, "main-328-PC", "porch-cap-uplift"), demand(t, r, "main-328-PB", "porch-base-uplift")
	assert.InDelta(t, top.Demand, foot.Demand, 1e-9)
	assert.Greater(t, top.Demand, sum/2)
	assert.Equal(t, "roof main, ridge at 27'-4\"", top.Where)
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
	a := elbowWith(t).work
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
		stands := r.stands(math.Inf(-1), math.Inf(1))
		assert.InDelta(t, 0, stands[len(stands)-1], 1e-6)
	}
	assert.Greater(t, demand(t, elbowWith(t), "wing-192-RR", "ridge-tie").Demand, 1000.0)
}
