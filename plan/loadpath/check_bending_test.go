package loadpath

import (
	"strings"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"
)

// 100 lb at 16 and 200 lb at 32 of 48: left (100 x 32 + 200 x 16)/48 = 133.3, right 166.7;
// moments 133.3 x 16 = 2,133 and 166.7 x 16 = 2,667. Half an inch off a support and 1.5 in
// deep a third of a force counts for its shear.
func TestBeamsByHand(t *testing.T) {
	s := simple(0, 48, 1.5, []push{{16, 100}, {32, 200}})
	assert.InDelta(t, 2666.7, s.moment, 0.1)
	assert.InDelta(t, 32, s.at, 1e-9)
	assert.InDelta(t, 166.7, s.shear, 0.1)
	near := simple(0, 10, 1.5, []push{{0.5, 300}})
	assert.InDelta(t, 300*0.95/3, near.shear, 1e-9)
	assert.InDelta(t, 300*0.95*0.5, near.moment, 1e-9)

	o := onSupports([]float64{30, 10}, 0, 1.5, []push{{4, 50}, {20, 100}, {36, 100}})
	assert.InDelta(t, 600, o.moment, 1e-9, "past the right one: 100 x 6; between 100 x 20/4")
	assert.InDelta(t, 30, o.at, 1e-9)
	assert.InDelta(t, 100, o.shear, 1e-9)
	assert.InDelta(t, 525, onSupports([]float64{30, 10}, 0.75, 1.5, []push{{4, 50}, {20, 100}, {36, 100}}).moment, 1e-9, "from the washer's bearing on: 100 x 5.25")
	assert.Equal(t, []float64{50 + 50, 50 + 100}, reactions([]float64{10, 30}, []push{{4, 50}, {20, 100}, {36, 100}}))
}

// Over window w1 of wall 2S, kings at 110-1/2 and 152 in, rafters at 112, 128 and 144 in, 748
// lb each (worked in hand_test.go): without tied cripples both plates span 41.5 in; left
// 748 x 72/41.5 = 1,297 lb, at the middle rafter 1,297 x 17.5 - 748 x 16 = 10,739 lb-in
// against two 2x6 flat, 3,300 each.
func TestPlatesOverAnOpeningByHand(t *testing.T) {
	plate, _ := handRafter(handTop)
	p := 0.6*plate.W - 0.6*plate.D
	const at = "at = \"cripple-plate\"\nuse = \"cripple-clip\"\nface = \"right\"\n"
	bare := demoWith(t, at+"where = { wall = [\"2S\", \"2N\"] }", at+"where = { wall = \"2N\" }")
	l := demand(t, bare, "2S-110, plates over the opening, bending", bendingCheck)
	assert.InDelta(t, p*72/41.5*17.5-p*16, l.Demand, 15)
	assert.InDelta(t, 2*3300, l.Capacity.Value, 1e-6)
	assert.Greater(t, l.Ratio, 1.0)

	// Its cripples stand under the rafters: tied, they hold the plates, and the header is
	// bent by what they bring: three 2x10.
	r := demoReport(t)
	tied := demand(t, r, "2S-110, plates over the opening, bending", bendingCheck)
	assert.Less(t, tied.Demand, 0.01*l.Demand)
	header := demand(t, r, "2S-110, header, bending", bendingCheck)
	assert.InDelta(t, p*72/41.5*17.5-p*16, header.Demand, 15)
	assert.InDelta(t, 3*27380, header.Capacity.Value, 1)
	cripple := demand(t, r, "2S/cripple@112, ties", bendingCheck)
	assert.InDelta(t, p, cripple.Demand, 1)
	assert.Less(t, cripple.Ratio, 1.0)
}

// A sill plate between bolts: what studs' clips bring to it between two bolts, each stretch
// a simple beam. At 4 ft apart it bends too much, at 2 ft it does not; a stud with a
// hold-down of its own brings it nothing.
func TestSillPlatesBendBetweenTheirBolts(t *testing.T) {
	r := exampleReport(t, "turnstone.toml")
	near := demand(t, r, "S, bottom plate, bending", bendingCheck)
	assert.Less(t, near.Ratio, 1.0)
	far := demand(t, exampleWith(t, "turnstone.toml", `at_most = "600mm"`, `at_most = "1200mm"`), "S, bottom plate, bending", bendingCheck)
	assert.Greater(t, far.Demand, near.Demand)
	assert.InDelta(t, 3300, far.Capacity.Value, 1e-6)
	require.NotEmpty(t, far.Terms)
	for _, x := range far.Terms {
		assert.NotContains(t, x.Text, "stud at 10 ", "the corner's")
	}
	assert.Less(t, demand(t, r, "S, bottom plate, shear", bendingCheck).Ratio, 1.0)
}

// Not the worst piece of a wall alone: with bolts 4 ft apart each piece of a bottom plate
// that is over what it bears is told, once, under its own name, and none that is not.
func TestEveryPlateOverItsBendingIsTold(t *testing.T) {
	r := exampleWith(t, "turnstone.toml", `at_most = "600mm"`, `at_most = "1200mm"`)
	over, seen := map[string]int{}, map[string]bool{}
	for _, l := range r.Links {
		if l.Check.ID != bendingCheck || !strings.Contains(l.ID, "bottom plate") {
			continue
		}
		require.False(t, seen[l.ID], "%s told twice", l.ID)
		seen[l.ID] = true
		worst := l.ID == l.Wall.Name+", bottom plate, bending" || l.ID == l.Wall.Name+", bottom plate, shear"
		if assert.True(t, worst || l.Ratio > 1, l.ID); l.Ratio > 1 {
			over[l.Wall.Name]++
		}
	}
	assert.Equal(t, map[string]int{"S": 2, "N": 2}, over, "both pieces of each long wall, at both sides of its door")
}
