package loadpath

import (
	"math"
	"slices"
	"strings"
	"testing"

	"galewright/plan"
	"galewright/plan/geom"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"
)

// What comes on a wall's plates goes to the studs on both sides by lever, and over an opening
// to the kings at the ends of its header: studs at 0, 16, 32 and 80 in, an opening from 36 to
// 76 whose header ends at those at 32 and 80.
func TestPlacesByLever(t *testing.T) {
	p := &wallPath{}
	for _, s := range []float64{0, 16, 32, 80} {
		p.carriers = append(p.carriers, &carrier{station: s})
	}
	p.openings = []*opened{{lo: 32, hi: 80, left: p.carriers[2], right: p.carriers[3]}}
	for s, want := range map[float64][4]float64{
		-3: {1}, 0: {1}, 4: {0.75, 0.25}, 16: {0, 1}, 28: {0, 0.25, 0.75}, 32: {0, 0, 1}, 44: {0, 0, 0.75, 0.25}, 68: {0, 0, 0.25, 0.75}, 80: {0, 0, 0, 1}, 90: {0, 0, 0, 1},
	} {
		var got [4]float64
		for _, x := range p.places(s) {
			got[slices.Index(p.carriers, x.c)] += x.k
			assert.Equal(t, s > 32 && s < 80, x.header != nil, "by the header at %v", s)
		}
		assert.InDeltaSlice(t, want[:], got[:], 1e-9, "at %v", s)
	}
	assert.Empty(t, (&wallPath{}).places(10), "a wall without studs carries nothing")
}

// The extent of the walls round a level is that of the exterior walls that stand on it or
// pass it, whatever stands inside or reaches farther out as a partition.
func TestExtentOfTheWallsRoundALevel(t *testing.T) {
	first, second := &plan.Level{Name: "first"}, &plan.Level{Name: "second", Index: 1}
	v := func(x, y float64) geom.Vec2 { return geom.Vec2{X: x, Y: y} }
	wall := func(l *plan.Level, outside bool, a, b geom.Vec2) *plan.Wall {
		return &plan.Wall{Level: l, ToLevel: l, Exterior: outside, From: a, To: b}
	}
	p := &plan.Plan{Levels: []*plan.Level{first, second}, Walls: []*plan.Wall{
		wall(first, true, v(0, 0), v(480, 0)), wall(first, true, v(480, 0), v(480, 288)), wall(first, false, v(-99, 100), v(700, 100)),
		wall(second, true, v(60, 0), v(300, 200)),
	}}
	for _, c := range []struct {
		of     *plan.Level
		lo, hi geom.Vec2
	}{{first, v(0, 0), v(480, 288)}, {second, v(60, 0), v(300, 200)}, {nil, v(0, 0), v(480, 288)}} {
		e, ok := wallExtent(p, c.of)
		require.True(t, ok)
		assert.Equal(t, extent{c.lo, c.hi}, e)
	}
	_, ok := wallExtent(&plan.Plan{Walls: p.Walls[2:3]}, first)
	assert.False(t, ok, "a partition alone encloses nothing")
	assert.Equal(t, extent{v(0, 0), v(480, 288)}, roofArea(p, &plan.Roof{Over: first}))
	assert.Equal(t, extent{v(1, 2), v(3, 4)}, roofArea(p, &plan.Roof{Over: first, Area: [2]geom.Vec2{v(1, 2), v(3, 4)}}))
	in, open := walledArea(p, &plan.Roof{Over: first, Area: [2]geom.Vec2{v(-96, 0), v(480, 288)}})
	assert.False(t, open)
	assert.Equal(t, extent{v(0, 0), v(480, 288)}, in, "what reaches over a porch is not in it")
	_, open = walledArea(p, &plan.Roof{Over: first, Area: [2]geom.Vec2{v(-96, 0), v(0, 288)}})
	assert.True(t, open, "a roof beside the house")
}

// The weight of the lowest floor is on the piles: of the house of 40 by 24 ft whose joists
// run along y, girders at 2-3/4, 144 and 285-1/4 in carry what lies between the first and
// the last, 282-1/2 of its 288 in.
func TestPilesCarryTheFloor(t *testing.T) {
	a := analyzed(t, storm.plan())
	psf := a.dead.floor(a.plan.Levels[0])
	require.Positive(t, psf)
	sum, by := 0.0, map[float64]float64{}
	for _, g := range a.piles.girders {
		for _, x := range g.piles {
			sum += x.weight
			by[g.g.From.Y] += x.weight
		}
	}
	assert.InDelta(t, psf*40*282.5/12, sum, 1)
	assert.InDelta(t, sum/2, by[144], 1, "the middle one has half")
	assert.InDelta(t, by[2.75], by[285.25], 1)
}

// A line's name stands for what its force is in, and nothing else: of line 1S its own story's
// and segments' links, no uplift, and none of another line.
func TestLinksOfALine(t *testing.T) {
	r := reportOf(placed(t, storm.plan()))
	for _, name := range []string{"1S", "2S", "1E"} {
		x := r.lineNamed(name)
		require.NotNil(t, x)
		list := r.Named("line " + name)
		require.NotEmpty(t, list, name)
		for _, l := range list {
			assert.Contains(t, sideChecks, l.Check.ID)
			assert.Same(t, x, r.LineOf(l), l.ID)
		}
		n := 0
		for _, l := range r.Links {
			if slices.Contains(sideChecks, l.Check.ID) && r.LineOf(l) == x {
				n++
			}
		}
		assert.Len(t, list, n, name)
		assert.Less(t, n, len(r.Links)/4)
	}
	assert.Nil(t, r.Named("line 9Z"))
	assert.Nil(t, r.lineNamed(""))
}

// A chain of a wall shows uplift from joint to joint; links of their own, as of the upper
// plate over a joint, are not counted among the joint's.
func TestChainsCountEachJointOnce(t *testing.T) {
	r := demoReport(t)
	for _, c := range r.Chains {
		for _, g := range c.Links {
			if g.Wall == nil || g.Kind != plan.RafterPlate || strings.HasPrefix(g.Title, "upper plate") {
				continue
			}
			joints := map[string]bool{}
			for _, j := range r.Placement.House.Joints {
				if j.Wall == g.Wall && j.Kind == g.Kind && len(r.Joint(j.ID)) > 0 {
					joints[j.ID] = true
				}
			}
			assert.Equal(t, len(joints), g.Joints, "%s, %s", c.Name, g.Title)
		}
	}
}

// Long straps from story to story hold the ends of the upper segments at the feet of their
// posts, where nothing else holds those: the same strap is asked for the post's own uplift
// too, at both levels of stress. The stud it is nailed to is asked for as much.
func TestStrapAtThePostsFootCarriesBoth(t *testing.T) {
	text := strings.Replace(storm.plan(), "kind = \"strap\"", "kind = \"long strap\"", 1)
	require.NotEqual(t, storm.plan(), text)
	r := reported(t, text)
	ends, posts, both := 0, 0, 0
	for _, l := range r.Links {
		upper := l.Wall != nil && l.Wall.Level.Index == 1
		switch {
		case l.Check.ID == postCheck && upper:
			posts++
			require.NotNil(t, l.Capacity)
			// 60 in of 19 ga on 2x6 studs: Ft of pine, 600 psi x 1.6 x 8.25 in².
			assert.InDelta(t, 600*1.6*8.25, l.Capacity.Value, 1e-6, l.ID)
		case l.Check.ID == "overturning" && upper && l.Joint != nil:
			ends++
			foot := r.work.footOf[l.Joint.First()]
			up := math.Max(0, r.work.peaks[foot].demand)
			net := l.Terms[7].Value
			assert.InDelta(t, math.Max(0, net)+up, l.Demand, 1e-6, l.ID)
			assert.Equal(t, "strap", l.Capacity.Mark)
			assert.InDelta(t, l.Demand/l.Capacity.Value, l.Ratio, 1e-9)
			assert.Contains(t, strings.Join(l.Notes, "; "), "held by strap at joint "+foot.ID)
			if up > 0 {
				both++
				assert.Equal(t, sameUplift, l.Terms[len(l.Terms)-2].Text)
				assert.InDelta(t, up, l.Terms[len(l.Terms)-2].Value, 1e-6)
				assert.InDelta(t, l.Demand, l.Terms[len(l.Terms)-1].Value, 1e-6)
				// 1.0 of the wind less 0.9 of the weight at strength level, and the post's
				// uplift over 0.6.
				lifts, relief := l.Terms[5].Value, l.Terms[6].Value
				assert.InDelta(t, math.Max(0, lifts-1.5*relief)+up/0.6, l.Strength, 1e-6, l.ID)
			}
		}
	}
	assert.Equal(t, 8, ends)
	assert.Positive(t, both)
	assert.Positive(t, posts)
}

// What a pile under shear wall ends is asked for is told: each end, the wind, its tension and
// couple, and how much of it comes to the pile.
func TestPullsOnAPileAreTold(t *testing.T) {
	r := demoReport(t)
	told := 0
	for _, l := range r.Links {
		if l.Check.ID != "pile-overturning" || l.Demand <= 0 {
			continue
		}
		pulls := r.work.pullWorkings(l.Joint)
		require.NotEmpty(t, pulls, l.ID)
		work := r.Workings(l)
		for _, s := range pulls {
			assert.Contains(t, s, "of tension and")
			assert.Contains(t, work, s, l.ID)
			told++
		}
	}
	assert.Positive(t, told)
}

// The JSON compares each row of the report's table under the same other assumptions.
func TestComparisonInJSON(t *testing.T) {
	r := reportOf(placed(t, sample.plan()))
	c := r.compare()
	require.NotEmpty(t, c.Alts)
	rows := map[string]jsonComparison{}
	for _, x := range r.comparisonJSON() {
		rows[x.What] = x
	}
	seen := 0
	for i, row := range c.Rows {
		x, ok := rows[row.Name]
		assert.Equal(t, !math.IsNaN(c.As[i]), ok, row.Name)
		if !ok {
			continue
		}
		seen++
		assert.InDelta(t, c.As[i], x.Planned, 0.05)
		require.Len(t, x.Others, len(c.Alts), row.Name)
		for k, alt := range c.Alts {
			assert.Equal(t, alt.Name, x.Others[k].Assumption)
			if v := alt.Values[i]; math.IsNaN(v) {
				assert.Nil(t, x.Others[k].Largest)
			} else {
				assert.InDelta(t, v, *x.Others[k].Largest, 0.05)
			}
		}
	}
	assert.Greater(t, seen, 3)
}

// The deck over a line between two stretches: what comes from both sides over their depths is
// what one row of its nails is asked for.
func TestDeckOverALineAddsBothSides(t *testing.T) {
	n := 0
	for _, name := range []string{"marsh-wren.toml", "sanderling.toml", "dunlin.toml", "turnstone.toml"} {
		for _, l := range exampleReport(t, name).Links {
			if !strings.HasPrefix(l.ID, "roof deck into line ") {
				continue
			}
			n++
			require.Len(t, l.Terms, 4, l.ID)
			assert.InDelta(t, l.Terms[2].Value, math.Max(0, l.Terms[0].Value)+math.Max(0, l.Terms[1].Value), 1e-6, l.ID)
			assert.InDelta(t, 0.6*l.Terms[2].Value, l.Terms[3].Value, 1e-6)
			assert.InDelta(t, l.Terms[3].Value, l.Demand, 1e-6)
			assert.InDelta(t, l.Terms[2].Value, l.Strength, 1e-6)
		}
	}
	assert.Positive(t, n)
}

// A line beside a court gathers over the 20 ft where its deck is, from 240 to 480 in, and its
// collectors say so; the open roof of a lean-to says how it stands to the figure's limits:
// 8 ft deep and 24 ft long, by the mean of its own eave's edge or of the plates of its level
// and its own top, whichever is nearer to a limit.
func TestLengthsInWords(t *testing.T) {
	said := 0
	for _, l := range exampleReport(t, "sanderling.toml").Links {
		if l.Check.ID == "collector" && strings.HasSuffix(l.Terms[0].Text, ", S") {
			said++
			assert.Contains(t, l.Terms[1].Text, "uniform over 20.0 ft", l.ID)
		}
	}
	a := analyzed(t, leanTo)
	got := map[string]float64{}
	for _, b := range a.openBounds() {
		got[b.What] = b.Value
	}
	var roof *plan.Roof
	for _, r := range a.plan.Roofs {
		if a.open[r] {
			roof = r
		}
	}
	require.NotNil(t, roof)
	// Its rafters of 7-1/4 in lie on the beam at 6 ft 9 in and climb 12 in over its 8 ft.
	assert.InDelta(t, 81+7.25+12, a.house.RidgeHeight(roof), 1)
	// Along the house 0.25 is near: its own mean height is asked; across 1 is: the plates'.
	assert.InDelta(t, 81+7.25-roof.Overhang/8, a.house.EaveHeight(roof), 1)
	own, plates := (a.house.EaveHeight(roof)+a.house.RidgeHeight(roof))/2, (108+a.house.RidgeHeight(roof))/2
	assert.InDelta(t, own/288, got["h/L of open roof porch, wind x"], 1e-9)
	assert.InDelta(t, plates/96, got["h/L of open roof porch, wind y"], 1e-9)
	assert.InDelta(t, 7.125, got["angle of open roof porch, free roof"], 0.001)
	assert.Len(t, got, 3)
}
