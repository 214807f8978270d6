package loadpath

import (
	"math"
	"strings"
	"testing"

	"galewright/plan"
	"galewright/plan/framing"
	"galewright/plan/units"
	"galewright/plan/wind"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"
)

// reported runs a plan as far as its report.
func reported(t *testing.T, text string) *Report {
	t.Helper()
	r, ds := loadsOf(placed(t, text))
	require.False(t, ds.Errors(), "%v", ds)
	return r
}

// storm is a house of two stories in a wind that lifts all of it.
var storm = box{
	length: 480, width: 288, stories: 2, kind: "gable", ridge: "x", pitch: 6, overhang: 12, rake: 12, spacing: 16, piles: true, windows: 1, shear: true,
	wind: "wind_speed = \"180 mph\"\nexposure = \"D\"", floor: 120,
}

// closed takes the windows out of a wall.
func closed(t *testing.T, text, wall string) string {
	t.Helper()
	head, rest, ok := strings.Cut(text, "name = \""+wall+"\"\n")
	require.True(t, ok)
	own, after, ok := strings.Cut(rest, "\n[[wall]]")
	require.True(t, ok)
	own, _, ok = strings.Cut(own, "\n[[wall.opening]]")
	require.True(t, ok, "the wall has a window")
	return head + "name = \"" + wall + "\"\n" + own + "\n[[wall]]" + after
}

func linkAt(r *Report, j *framing.Joint, check string) *Link {
	for _, l := range r.Links {
		if l.Joint == j && l.Check.ID == check {
			return l
		}
	}
	return nil
}

// Studs that stand over an opening hand their uplift to its header, which
// shares it by lever to the kings at its ends: of 60 in between the ends, a stud
// 15 from the left gives it three quarters.
func TestStudsOverAnOpeningHangOnItsHeader(t *testing.T) {
	r := reported(t, closed(t, storm.plan(), "2S"))
	var ends []*framing.Joint
	for _, j := range r.Placement.House.Joints {
		if j.Kind == plan.OpeningHead && j.Host == "1S" {
			ends = append(ends, j)
		}
	}
	require.Len(t, ends, 2)
	lo, hi := ends[0].Station, ends[1].Station
	require.Less(t, lo, hi)
	var left, right float64
	over := 0
	for _, j := range r.Placement.House.Joints {
		if j.Kind != plan.StudStud || j.Host != "2S" || j.Station <= lo || j.Station >= hi {
			continue
		}
		over++
		l := linkAt(r, j, "story-uplift")
		require.NotNil(t, l)
		require.Positive(t, l.Demand, "the wind lifts it at %v", j.Station)
		k := (j.Station - lo) / (hi - lo)
		left, right = left+(1-k)*l.Demand, right+k*l.Demand
	}
	require.GreaterOrEqual(t, over, 4)
	assert.InDelta(t, left, linkAt(r, ends[0], "header-uplift").Demand, 1)
	assert.InDelta(t, right, linkAt(r, ends[1], "header-uplift").Demand, 1)
}

// A stud over a stud hands it all; what is added on the way down is weight: 0.6
// of the wall below and of the floor on its plates.
func TestStudOverAStudHandsItAllItHas(t *testing.T) {
	r := reported(t, storm.plan())
	n := 0
	for _, j := range r.Placement.House.Joints {
		if j.Kind != plan.StudStud || !j.Below || len(j.Members) < 2 || !j.Members[1].Role.FullHeight() {
			continue
		}
		var base *framing.Joint
		for _, k := range r.Placement.House.Joints {
			if k.Kind == plan.StudBase && k.First() == j.Members[1] {
				base = k
			}
		}
		up, low := linkAt(r, j, "story-uplift"), linkAt(r, base, "base-uplift")
		if up == nil || low == nil || up.Case != low.Case || low.Demand == 0 {
			continue
		}
		n++
		// Nothing but that stud brings wind to this one, save a header beside it.
		if low.Force.W == up.Force.W {
			assert.Less(t, low.Demand, up.Demand, j.ID)
			assert.InDelta(t, 0.6*(low.Force.D-up.Force.D), up.Demand-low.Demand, 1e-6, j.ID)
		} else {
			assert.Greater(t, low.Force.W, up.Force.W, j.ID)
		}
	}
	assert.Greater(t, n, 50)
}

func TestLinksOfAChainCountTheirLinks(t *testing.T) {
	r := reported(t, storm.plan())
	require.NotEmpty(t, r.Chains)
	for _, c := range r.Chains {
		require.NotEmpty(t, c.Links)
		weak, ratio := -1, -1.0
		for i, g := range c.Links {
			links, gaps, worst := 0, 0, 0.0
			for _, l := range r.Links {
				if g.Wall == nil || l.Joint == nil || l.Joint.Wall != g.Wall || l.Joint.Kind != g.Kind || l.Check.ID == sillCheck || (l.Check.ID == platesCheck) != strings.HasPrefix(g.Title, "upper plate") {
					continue
				}
				links++
				if l.Gap != "" {
					gaps++
				}
				worst = math.Max(worst, l.Ratio)
			}
			if g.Wall != nil && !strings.HasPrefix(g.Title, "bottom plate") {
				assert.Equal(t, links, g.Joints, "%s, %s", c.Name, g.Title)
				assert.Equal(t, gaps, g.Gaps, "%s, %s", c.Name, g.Title)
				assert.Equal(t, worst, g.Worst.Ratio, "%s, %s", c.Name, g.Title)
			}
			if g.Worst.Demand > 0 && g.Worst.Ratio > ratio {
				weak, ratio = i, g.Worst.Ratio
			}
		}
		if c.Weak >= 0 && !math.IsInf(ratio, 1) {
			assert.Equal(t, weak, c.Weak, c.Name)
		} else if weak >= 0 {
			assert.True(t, math.IsInf(c.Links[c.Weak].Worst.Ratio, 1), "a gap is the weakest")
		}
	}
}

func TestLinksCloseByWhatHoldsThem(t *testing.T) {
	for _, c := range []struct {
		name    string
		demand  float64
		held    *Capacity
		ratio   float64
		gap     string
		governs string
	}{
		{"held", 300, &Capacity{Value: 400, Governs: "nails"}, 0.75, "", "nails"},
		{"no demand", 0.4, nil, 0, "", "no demand"},
		{"half a pound is rounding", 0.5, nil, 0, "", "no demand"},
		{"more is not", 0.6, nil, math.Inf(1), "no hardware at this joint", "no hardware at this joint"},
		{"less than nothing", -5, &Capacity{Value: 400, Governs: "nails"}, 0, "", "nails"},
		{"unknown", 300, &Capacity{Unknown: "no steel"}, math.Inf(1), "no capacity known: no steel", "no capacity known: no steel"},
		{"unknown, nothing asked", 0, &Capacity{Unknown: "no steel"}, 0, "", "no demand; no steel"},
		{"holds nothing", 300, &Capacity{}, math.Inf(1), "capacity is 0", "capacity is 0"},
	} {
		l := &Link{Demand: c.demand}
		l.close(c.held)
		assert.Equal(t, c.ratio, l.Ratio, c.name)
		assert.Equal(t, c.gap, l.Gap, c.name)
		assert.Equal(t, c.governs, l.Governs(), c.name)
		assert.GreaterOrEqual(t, l.Demand, 0.0, c.name)
	}
}

func TestLoadCombinationsByHand(t *testing.T) {
	// ASCE 7-16 2.4.1 and 2.3.1 (second-hand): 0.6 W - 0.6 D and 1.0 W - 0.9 D.
	f := Force{W: 1000, D: 300}
	assert.InDelta(t, 420, f.net(ASD), 1e-9)
	assert.InDelta(t, 730, f.net(Strength), 1e-9)
	g := f.add(Force{W: 1, D: 2}).times(2)
	assert.Equal(t, Force{W: 2002, D: 604}, g)
	g.take(Force{W: -2, D: 6})
	assert.Equal(t, Force{W: 2000, D: 610}, g)
	assert.Equal(t, Force{D: 7}, down(7))
	assert.Equal(t, 3.0, overlap(0, 5, 2, 9))
	assert.Equal(t, 0.0, overlap(0, 5, 5, 9))
	assert.Equal(t, 0.0, overlap(0, 5, 7, 9))
}

func TestWindCasesAreNamedByWhereTheWindComesFrom(t *testing.T) {
	want := []string{}
	for _, by := range [][]string{{"envelope"}, {"directional, first Cp", "directional, second Cp"}} {
		for _, sides := range [][2][2]string{{{"W", "E"}, {"S", "N"}}, {{"S", "N"}, {"W", "E"}}} {
			for _, from := range sides[0] {
				for _, corner := range sides[1] {
					for _, how := range by {
						at := "wind from " + from + ", corner " + corner
						want = append(want, at+", internal pressure, "+how, at+", internal pressure, "+how+", no pressure under eaves "+corner, at+", internal suction, "+how)
					}
				}
			}
		}
	}
	m := &model{givens: givens{choice: wind.Choice{Use: []plan.Procedure{plan.Envelope, plan.Directional}}}}
	var got []string
	for _, c := range m.cases() {
		got = append(got, c.String())
	}
	assert.Equal(t, want, got)
	assert.Len(t, got, 72)
	assert.Equal(t, "wind from N, minimum loads", gust{axis: 1, sign: -1}.String())
	assert.Equal(t, "wind from E, corner S, envelope", gust{proc: plan.Envelope, sign: -1, corner: -1}.String())
	assert.Equal(t, "wind from W, directional, second Cp", gust{proc: plan.Directional, sign: 1, second: true}.String())
}

func TestGableWallIsNotSaidToBeHeldByItsWeight(t *testing.T) {
	// Rafters bring uplift to the eaves' walls; to a gable wall none is followed,
	// and no weight is said to be greater there.
	r := reported(t, storm.plan())
	seen := map[bool]int{}
	for _, c := range r.Chains {
		eave := strings.Contains(c.Name, "S") || strings.Contains(c.Name, "N")
		for _, g := range c.Links {
			if g.Kind == plan.StudTop && strings.HasPrefix(g.Wall.Name, "2") {
				assert.Equal(t, eave, g.Followed, "%s, %s", c.Name, g.Title)
				assert.Equal(t, !eave, g.text(units.Imperial) == "no wind uplift is followed to it: not checked", g.text(units.Imperial))
				seen[eave]++
			}
		}
	}
	assert.Equal(t, map[bool]int{true: 2, false: 2}, seen)
	for _, l := range r.Links {
		if l.Check.ID == "stud-top-uplift" && l.Wall.Name == "2E" {
			assert.Contains(t, l.Governs(), "not checked", l.ID)
		}
	}
}
