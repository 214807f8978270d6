package loadpath

import (
	"math"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"
)

// 23/32 in panels with 10d common take the row of 19/32 in: 430 plf seismic of cases 2 to
// 6 (SDPWS Table 4.2C, edition not named, second-hand), wind 1.4 of it as 600, over 2.0: 300 plf. One nail of
// 0.148 in through 0.719 in of panel, G 0.50, Fe 4650, into southern pine, Fe 5550: Re
// 1.194, Fyb 90,000, Rd 2.2 (NDS 2018 equation 12.3-5, transcribed).
func TestFloorsAreCheckedByTheirNailsByHand(t *testing.T) {
	r := demoReport(t)
	l := demand(t, r, "floor deck, line 1P/1R, from its low side", diaphragmCheck)
	require.NotNil(t, l.Capacity)
	assert.InDelta(t, 300, l.Capacity.Value, 1e-6)
	bay := Bay{}
	for _, b := range r.Bays {
		if b.Lines == [2]string{"1W", "1P/1R"} {
			bay = b
		}
	}
	assert.InDelta(t, 0.6*bay.Ends[1]/28, l.Demand, 1e-6, "28 ft of floor along the line")

	row := demand(t, r, "floor deck into line 1P/1R", diaphragmCheck)
	const panel = 23.0 / 32
	re := 5550.0 / 4650
	k3 := -1 + math.Sqrt(2*(1+re)/re+2*90_000*(2+re)*0.148*0.148/(3*5550*panel*panel))
	z := k3 * 0.148 * panel * 5550 / ((2 + re) * 2.2)
	assert.InDelta(t, 2*1.6*z, row.Capacity.Value, 0.5, "two a foot")
	assert.Greater(t, row.Demand, l.Demand, "both sides")

	low := demand(t, r, "lowest floor, line 1S", diaphragmCheck)
	x := r.LineOf(demand(t, r, "deck to the plates, line 1S", deckShearCheck))
	require.NotNil(t, x)
	assert.InDelta(t, 0.6*math.Abs(x.Floor)/44, low.Demand, 1e-6)

	// Not ordered: a gap at each. Wider than the table: nothing is known.
	const order = "[floor] # the panels of all floors, as thick as each level's subfloor\nkind = \"plywood\"\nnail = \"10d common\"\nedge = \"6in\"\nfield = \"6in\" # both sides of the deck go into one joist over 1P and 1R\n"
	none := demand(t, demoWith(t, order, ""), "floor deck, line 1P/1R, from its low side", diaphragmCheck)
	assert.Contains(t, none.Gap, "[floor]")
	wide := demand(t, demoWith(t, `edge = "6in"`+"\n"+`field = "6in" # both`, `edge = "8in"`+"\n"+`field = "6in" # both`), "floor deck, line 1P/1R, from its low side", diaphragmCheck)
	assert.Contains(t, wide.Gap, "farther apart")
}
