package loadpath

import (
	"testing"

	"galewright/plan"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"
)

// Both hips of dunlin's west end are nailed by one flange to the last common rafter
// and by the other, half of the ten nails, to the rafter in line with the ridge. That
// one's strap holds half of each hip beside its own: its demand less its own is the mean
// of the hips' two. The pair beside takes all that comes to the ridge, and no half of it
// again.
func TestHipsHangOnTheRafterInLine(t *testing.T) {
	a := reportOf(WorkOut("dunlin.toml", string(Source(t, "dunlin.toml"))).Placed).work
	links := map[string]*Link{}
	for _, c := range Checks() {
		if c.ID == "ridge-tie" {
			for _, l := range ridgeTies(c, a) {
				links[l.ID] = l
			}
		}
	}
	in, one, two, pair := links["main-144b-RR"], links["main-144c-RR"], links["main-144d-RR"], links["main-144-RR"]
	for _, l := range []*Link{in, one, two, pair} {
		require.NotNil(t, l)
	}
	require.Equal(t, plan.HipRafter, one.Joint.First().Role)
	own := a.peaks[in.Joint].demand
	require.Positive(t, own)
	assert.InDelta(t, own+(one.Demand+two.Demand)/2, in.Demand, 1e-6)
	assert.Greater(t, in.Demand, 1000.0)
	assert.InDelta(t, a.peaks[pair.Joint].demand*a.slopedTie(pair.Joint), pair.Demand, 1e-6)
	for _, h := range a.hungOnRafters()[in.Joint.First()] {
		assert.InDelta(t, 0.5, h.k, 1e-9)
	}
}

// In sanderling the rafters beside the east hips end at the valley with one foot: what the
// hips bring to the ridge is in the forces of a pair 8 ft away, while their hangers are
// nailed to this one. Each hip's half is added here: P a b / (L f) = 408 lb x 46.9 x 142.0 /
// (188.9 x 47.2) = 305 lb level, with its own 171 along a slope of 6 in 12: 532 lb.
func TestHipsHangOnAPairWithoutAPlate(t *testing.T) {
	a := reportOf(WorkOut("sanderling.toml", string(Source(t, "sanderling.toml"))).Placed).work
	links := map[string]*Link{}
	for _, c := range Checks() {
		if c.ID == "ridge-tie" {
			for _, l := range ridgeTies(c, a) {
				links[l.ID] = l
			}
		}
	}
	beside, one, two, far := links["main-336-RR"], links["main-336c-RR"], links["main-336d-RR"], links["main-240-RR"]
	for _, l := range []*Link{beside, one, two, far} {
		require.NotNil(t, l)
	}
	p := a.pairAt[beside.Joint]
	require.NotNil(t, p)
	require.False(t, p.onPlates())
	half := (one.Demand + two.Demand) / 2
	level := half * p.apex * (p.span - p.apex) / p.span / p.rise
	assert.InDelta(t, (a.peaks[beside.Joint].demand+level)*a.slopedTie(beside.Joint), beside.Demand, 1e-6)
	assert.InDelta(t, 532, beside.Demand, 3)
	assert.True(t, a.takes(a.pairAt[far.Joint], two.Joint))
	assert.False(t, a.takes(p, two.Joint))
	assert.InDelta(t, a.peaks[far.Joint].demand*a.slopedTie(far.Joint), far.Demand, 1e-6, "and none is relieved")
}
