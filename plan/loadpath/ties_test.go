package loadpath

import (
	"math"
	"strings"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"
)

// tied is a gable 24 ft across under 10 psf of dead load on the slope, with what is
// said of its ceiling joists and their nails.
func tied(t *testing.T, roof, nailing string) *Report {
	t.Helper()
	b := box{
		length: 480, width: 288, stories: 1, kind: "gable", ridge: "x", pitch: 6, spacing: 16,
		wind: "wind_speed = \"120 mph\"\nexposure = \"C\"", loads: "[loads]\n[[loads.dead]]\npart = \"roof\"\nname = \"all\"\nweight = \"10 psf\"\n[[loads.dead]]\npart = \"ceiling\"\nname = \"none\"\nweight = \"0 psf\"\n",
	}
	text := b.plan()
	require.Equal(t, 1, strings.Count(text, `kind = "gable"`))
	return reported(t, strings.Replace(text, `kind = "gable"`, "kind = \"gable\"\n"+roof, 1)+nailing)
}

// linksOfTies gathers the links of ceiling joists away from the gables: of their
// ends and of their splices.
func linksOfTies(r *Report) (ends, splices []*Link) {
	for _, l := range r.Links {
		if l.Check.ID != tieCheck || !strings.Contains(l.ID, "-240-tie") {
			continue
		}
		if strings.Contains(l.ID, "splice") {
			splices = append(splices, l)
		} else {
			ends = append(ends, l)
		}
	}
	return ends, splices
}

// A pair's thrust is wL²/(8f): 10 psf on the slope is 10 x sqrt(5)/2 x 16/12 = 14.907
// lb per ft of plan. A seat of 2x8 rafters is 7.25 / (4 x 0.4472) = 4.05 in long, so that
// 288 - 4.05 is between the middles of both, 23.66 ft, and the rise is a quarter of
// that: w x 23.66 / 2 = 176.3 lb. At 32 on center
// a joist holds its own pair and half of each beside it: twice as much. One 16d
// common through 1 1/2 in into 1 1/2 in of southern pine: 154 lb (NDS 2018 Table 12N,
// from memory) x 1.5/1.62 for its penetration of less than 10 diameters x 0.9 for
// dead load = 128.3, and not 1.6, which is for wind.
func TestCeilingJoistsHoldTheThrustByTheirNails(t *testing.T) {
	r := tied(t, "ceiling_joists = \"2x6 @ 32in\"\nceiling_splice = \"2'\"", "\n[nailing]\nrafter_to_joist = { nail = \"16d common\", count = 3 }\nceiling_splice = { nail = \"16d common\", count = 5 }\n")
	ends, splices := linksOfTies(r)
	require.Len(t, ends, 1)
	require.Len(t, splices, 1)
	for _, l := range append(ends, splices...) {
		assert.InDelta(t, 2*176.3, l.Demand, 0.5, l.ID)
		assert.Empty(t, l.Gap)
		assert.InDelta(t, 1.4*l.Demand, l.Strength, 1e-9)
	}
	assert.InDelta(t, 3*128.3, ends[0].Capacity.Value, 1)
	assert.InDelta(t, 5*128.3, splices[0].Capacity.Value, 1.5)
	assert.InDelta(t, 352.7/384.9, ends[0].Ratio, 0.005)
	var all float64 // nothing of the thrust is lost between the joists
	for _, l := range r.Links {
		if l.Check.ID == tieCheck && !strings.Contains(l.ID, "splice") {
			all += l.Demand
		}
	}
	var pushed float64
	for _, p := range r.work.pairs {
		pushed += r.work.thrust(p)
	}
	assert.InDelta(t, pushed, all, 1e-6)
	assert.Less(t, math.Abs(all-31*176.3), 2*176.3, "31 spaces of 16 in and some on 40 ft less the overhangs")
}

// A splice without nails is a gap, whatever else the plan orders; so are the ends
// where the plan orders some nailing and not theirs. A plan that orders none has
// that said at the ridge.
func TestCeilingJoistsWithoutNailsAreGaps(t *testing.T) {
	ends, splices := linksOfTies(tied(t, "ceiling_splice = \"2'\"", "\n[nailing]\nrafter_to_plate = { nail = \"10d common\", count = 3 }\n"))
	require.Len(t, ends, 1)
	require.Len(t, splices, 1)
	assert.Contains(t, ends[0].Gap, "rafter_to_joist")
	assert.Contains(t, splices[0].Gap, "ceiling_splice")
	r := tied(t, "ceiling_splice = \"2'\"", "")
	ends, splices = linksOfTies(r)
	assert.Empty(t, ends)
	require.Len(t, splices, 1)
	assert.NotEmpty(t, splices[0].Gap)
	require.Len(t, r.Ridges, 1)
	assert.Contains(t, r.Ridges[0].Note, "no nails are ordered")
}
