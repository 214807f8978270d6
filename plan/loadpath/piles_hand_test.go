package loadpath

import (
	"math"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"
)

// Statics of a beam on two supports that runs past the second: a force a past it,
// the supports L apart, lifts it by 1 + a/L of itself and presses the first down by
// a/L.
func TestLever(t *testing.T) {
	for _, c := range []struct {
		name string
		at   []float64
		s    float64
		want []levered
	}{
		{"between", []float64{0, 80, 200}, 110, []levered{{1, 0.75}, {2, 0.25}}},
		{"past the last", []float64{0, 80, 200}, 230, []levered{{1, -0.25}, {2, 1.25}}},
		{"before the first", []float64{10, 90}, 2, []levered{{0, 1.1}, {1, -0.1}}},
		{"on one", []float64{10, 90}, 90, []levered{{1, 1}}},
		{"one alone", []float64{10}, 40, []levered{{0, 1}}},
		{"two on one spot", []float64{10, 10.5}, 40, []levered{{1, 1}}},
	} {
		got := lever(c.at, c.s)
		require.Len(t, got, len(c.want), c.name)
		sum := 0.0
		for i, w := range c.want {
			assert.Equal(t, w.i, got[i].i, c.name)
			assert.InDelta(t, w.k, got[i].k, 1e-12, c.name)
			sum += got[i].k
		}
		assert.InDelta(t, 1, sum, 1e-12, c.name)
	}
	assert.Empty(t, lever(nil, 3))
}

// The demo's corner pile GS-11: the first story's rod at the corner stands in at
// 0.75 + 0.75 + 1-9/16 = 3-1/16 in, the piles at 10-15/16 and 102-1/2: (102.5 -
// 3.0625) / (102.5 - 10.9375) = 1.086 of its tension.
func TestRodPastTheLastPile(t *testing.T) {
	r := demoReport(t)
	found := false
	for _, p := range r.work.pilePulls() {
		if p.joint.ID == "GS-11-GP" && p.segment.Name == "1S/A" && p.end == "low" {
			found = true
			assert.InDelta(t, (102.5-3.0625)/(102.5-10.9375), p.k, 1e-3)
		}
	}
	assert.True(t, found)
}

// Where two girders butt, an end pulls at the one its rod goes through. The post of
// 1W/B's north end stands at 168-1/4 in from the north corner at 28 ft, its rod 3/4
// + 1-9/16 in further on at y 165-7/16: in GWS, which begins at y 170-3/4, 5-5/16
// in from there, before the first pile at 34-3/4: (130.75 - 5.3125) / 96 = 1.307. GWN
// ends beside it and takes nothing.
func TestRodNamesItsGirder(t *testing.T) {
	r := demoReport(t)
	got := map[string]float64{}
	for _, p := range r.work.pilePulls() {
		if p.segment.Name == "1W/B" && p.end == "high" {
			got[p.joint.ID] = p.k
		}
	}
	assert.Len(t, got, 2)
	assert.InDelta(t, (130.75-5.3125)/96, got["GWS-35-GP"], 1e-3)
	assert.InDelta(t, 1-(130.75-5.3125)/96, got["GWS-131-GP"], 1e-3)
	for _, l := range r.Links { // every pile that an end pulls at is checked
		if l.Check.ID == "pile-overturning" {
			delete(got, l.ID)
		}
	}
	assert.Empty(t, got)
}

// Upper plate, the rafter at 2 ft 8 in of 2S: its clip has 4 nails in the upper plate
// and 3 in the top plate, one of these 0.04 in from the seam, which counts for
// nothing. Of its uplift 4/6 comes into the upper plate; the stud's clips have all
// their nails in the top plate. Between the plates 10d common, 0.148 in, in two rows 6
// in apart, 16 in of plate: 5.33 nails, drawn 1-1/2 in out of southern pine: 1380 x
// 0.55^2.5 x 0.148 x 1.5 x 1.6 lb each (NDS 2018 12.2-3, transcribed).
func TestUpperPlateByHand(t *testing.T) {
	r := demoReport(t)
	l := demand(t, r, "2S-32-RP, upper plate", platesCheck)
	asd := demand(t, r, "2S-32-RP", "rafter-uplift").Demand
	assert.InDelta(t, asd*4/6, l.Demand, 0.5)
	assert.InDelta(t, 2*16/6.0*1380*math.Pow(0.55, 2.5)*0.148*1.5*1.6, l.Capacity.Value, 3)

	// Under the gable's rafter the heavy clip's nails in the top plate hold all alone.
	l = demand(t, r, "2S-1-RP, upper plate", platesCheck)
	assert.InDelta(t, demand(t, r, "2S-1-RP", "rafter-uplift").Demand, l.Demand, 1e-9)
	assert.Contains(t, l.Capacity.Governs, "top plate alone")
}
