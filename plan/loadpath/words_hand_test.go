package loadpath

import (
	"bufio"
	"bytes"
	"testing"

	"galewright/plan"
	"galewright/plan/framing"
	"galewright/plan/placement"
	"galewright/plan/units"
	"galewright/plan/wind"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"
)

// A stretch of deck 24 ft long and 16 ft deep, 1,600 and 1,200 lb at its ends, its moment
// 8,000 lb ft: 100 plf and 500 lb in its chords at strength level, 60 and 300 in the tables.
// Past the last line it ends at a free edge.
func TestStretchesOfADeckInWords(t *testing.T) {
	b := Bay{Level: &plan.Level{Name: "first"}, Axis: 1, Lines: [2]string{"W", ""}, Lo: 0, Hi: 288, Ends: [2]float64{1600, 1200}, Depth: 192, Moment: 96_000, Case: "wind from S"}
	assert.Equal(t, jsonBay{
		Story: "first", Along: plan.AxisY, From: 0, To: 24, FromLine: "W", ToLine: "", FromLb: 1600, ToLb: 1200, Unit: 60, Chord: 300, Depth: 16, Case: "wind from S",
	}, b.json())
	for u, want := range map[units.System][]string{
		units.Imperial: {"depth ft", "16.0", "60", "300", `W = 0"`, `free edge = 24'-0"`},
		units.Metric:   {"depth m", "4.88", "0.876", "1.33", "free edge = 7315 mm"},
	} {
		p := &plan.Plan{}
		p.Project.Units = u
		r := &Report{Placement: &placement.Placement{House: &framing.House{Plan: p}}, Bays: []Bay{b}}
		var out bytes.Buffer
		w := bufio.NewWriter(&out)
		r.writeBays(printer{w, u})
		require.NoError(t, w.Flush())
		for _, s := range want {
			assert.Contains(t, out.String(), s, u)
		}
	}
}

// A force brought to the ridge of two rafters that lean on each other, 60 in in of a span of
// 240 and 50 in up: by lever three quarters of it come to the near plate and a quarter to the
// other; the far one, 180 in away, turns about the ridge with its reaction, so the pull across
// is 25 lb x 180 / 50 = 90 lb. A ridge that is hardly over its plates pulls nothing known.
func TestForceAtARidgeByStatics(t *testing.T) {
	near, far := &framing.Member{}, &framing.Member{}
	for rise, pull := range map[float64]float64{50: 90, 1: 0} {
		p := &pair{a: &strip{Share: &framing.Share{Member: near}}, b: &strip{Share: &framing.Share{Member: far}}, span: 240, apex: 60, rise: rise}
		s := &caseState{pulls: make([]Force, 1), brought: make([]Force, 1), unheld: map[*framing.Member]float64{}}
		s.lift(p, Force{W: 100})
		assert.InDelta(t, pull, s.pulls[0].W, 1e-9)
		assert.InDelta(t, 0.6*75, s.unheld[near], 1e-9, "without a bearing it is lost, and told")
		assert.InDelta(t, 0.6*25, s.unheld[far], 1e-9)
		s.lift(p, Force{D: 100})
		assert.InDelta(t, pull, s.pulls[0].D, 1e-9)
		assert.InDelta(t, 0.6*75, s.unheld[near], 1e-9, "weight alone does not fly")
	}
}

// A number under the least that a method goes to is over by how often it goes into that; one
// within is told by the nearer of both ends; of a method with no least by its most alone.
func TestLimitsFromBothSides(t *testing.T) {
	for _, c := range []struct{ value, least, most, demand, capacity float64 }{
		{0.10, 0.25, 1, 0.25, 0.10}, // 2.5 times too low
		{0.30, 0.25, 1, 0.25, 0.30}, // 0.83 of the way down, 0.30 up
		{0.90, 0.25, 1, 0.90, 1},
		{1.20, 0.25, 1, 1.20, 1},
		{0.20, 0, 1, 0.20, 1},
		{0, 0.25, 1, 0, 1},
	} {
		b := wind.Bound{What: "h/L", Value: c.value, Least: c.least, Most: c.most}
		l := boundLink(&Check{}, units.Imperial, b)
		assert.InDelta(t, c.demand, l.Demand, 1e-9, "%v", c)
		assert.InDelta(t, c.demand, l.Strength, 1e-9, "%v", c)
		assert.InDelta(t, c.capacity, l.Capacity.Value, 1e-9, "%v", c)
		assert.InDelta(t, b.Ratio(), l.Ratio, 1e-9, "%v", c)
		assert.Equal(t, "this program's own limit", l.Capacity.Source)
		assert.InDelta(t, c.value, l.Terms[0].Value, 1e-9)
	}
}
