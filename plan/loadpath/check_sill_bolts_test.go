package loadpath

import (
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"galewright/plan"
	"galewright/plan/placement"
)

// boltsAt are bolts of a plate at stations, in.
func boltsAt(at ...float64) (out []*placement.Piece) {
	for _, s := range at {
		out = append(out, &placement.Piece{Lie: placement.Lie{Station: s}})
	}
	return out
}

// A plate of 100 in, bolts at 10 and 34: 120 lb at 16 go 18/24 and 6/24; 60 lb at 4 pull
// the first by (34 - 4)/24 = 1.25, for the plate turns about the second; 80 lb at 40 the
// second by (40 - 10)/24. With the bolt at 34 alone, 60 lb at 4 turn the plate about its
// end at 100: (100 - 4)/66, and 80 lb at 40 about its end at 0: 40/34. Statics, shown here.
func TestPlatesTurnAboutTheBoltBefore(t *testing.T) {
	a := exampleReport(t, "turnstone.toml").work
	r := plateRun{hi: 100, bolts: boltsAt(10, 34), lifts: []plateLift{{station: 4, lb: 60}, {station: 16, lb: 120}, {station: 40, lb: 80}}}
	on, _ := a.onBolts(r)
	assert.InDeltaSlice(t, []float64{60*1.25 + 90, 30 + 100}, on, 1e-9)
	r.bolts, r.lifts = boltsAt(34), []plateLift{{station: 4, lb: 60}, {station: 40, lb: 80}}
	on, _ = a.onBolts(r)
	require.Len(t, on, 1)
	assert.InDelta(t, 60*96.0/66+80*40.0/34, on[0], 1e-9)
}

// No piece of plate is held past its end: wall S of the house stands on two, its door
// between them. What lifts one is shared among its own bolts alone; without its bolts it
// is a gap, however many the other has.
func TestEachPieceOfPlateHasItsOwnBolts(t *testing.T) {
	a := exampleReport(t, "turnstone.toml").work
	var w *plan.Wall
	for _, x := range a.plan.Walls {
		if x.Name == "S" {
			w = x
		}
	}
	require.NotNil(t, w)
	bolts := a.bolts(w)
	runs := a.plateRuns(w, bolts, nil)
	require.Len(t, runs, 3, "two pieces, and what is on none")
	left, right := runs[0], runs[1]
	require.Greater(t, right.lo-left.hi, 36.0, "the door")
	assert.Empty(t, runs[2].bolts)
	assert.Len(t, bolts, len(left.bolts)+len(right.bolts))

	lift := []plateLift{{station: left.hi - 1, lb: 500}, {station: right.lo + 1, lb: 700}}
	sum := 0.0
	for _, l := range a.boltLinks(&Check{ID: sillCheck}, w, left.bolts, lift) {
		if l.Gap != "" {
			assert.InDelta(t, 700, l.Demand, 1e-9)
			assert.Contains(t, l.Gap, "this piece of the bottom plate")
			continue
		}
		sum += l.Demand
	}
	last, before := left.bolts[len(left.bolts)-1].Station, left.bolts[len(left.bolts)-2].Station
	assert.InDelta(t, 500*(left.hi-1-before)/(last-before), sum, 1e-6, "the king at the door, about the bolt before the last")
}
