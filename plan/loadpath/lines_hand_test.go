package loadpath

import (
	"fmt"
	"math"
	"strings"
	"testing"

	"galewright/plan"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"
)

func seg(lo, hi float64) *Segment { return &Segment{Lo: lo, Hi: hi} }

func TestSegmentsStandOnEachOtherOnlyEndOverEnd(t *testing.T) {
	for _, c := range []struct {
		name     string
		at       float64 // of the line above; the one below is at 0
		lo, hi   float64 // of the segment above; the one below is 0 to 96
		standsOn bool
	}{
		{"the same place", 0, 0, 96, true},
		{"both ends within 18 in", 11.9, 17.9, 78.1, true},
		{"the first end 18 in off", 0, 18, 96, false},
		{"the last end 18 in off", 0, 0, 114, false},
		{"the other way", 0, -17.9, 113.9, true},
		{"a line 12 in off is another line", 12, 0, 96, false},
		{"and on the other side", -12, 0, 96, false},
	} {
		t.Run(c.name, func(t *testing.T) {
			below, far := &ShearLine{At: 0, Segments: []*Segment{seg(0, 96)}}, &ShearLine{At: 300, Segments: []*Segment{seg(0, 96)}}
			up := &ShearLine{At: c.at, Segments: []*Segment{seg(c.lo, c.hi)}}
			bringDown(up, []*ShearLine{below, far})
			stackSegments([]*ShearLine{below, far})
			assert.Equal(t, c.standsOn, len(below.Segments[0].above) == 1)
			assert.Equal(t, c.standsOn, up.Segments[0].stacked)
			assert.Empty(t, far.Segments[0].above)
		})
	}
}

func TestForceOfAnUpperLineFindsItsWayDown(t *testing.T) {
	lines := func() []*ShearLine { return []*ShearLine{{At: 0}, {At: 120}, {At: 240}} }
	for at, want := range map[float64][3]float64{
		-50: {1, 0, 0},       // beyond the first
		0:   {1, 0, 0},       // over it
		30:  {0.75, 0.25, 0}, // 30 of 120
		150: {0, 0.75, 0.25},
		228: {0, 0.1, 0.9}, // 12 off is between: 12 of 120
		229: {0, 0, 1},     // 11 off is over it
		300: {0, 0, 1},
	} {
		l := lines()
		bringDown(&ShearLine{At: at}, l)
		var got [3]float64
		for i, x := range l {
			for _, u := range x.uppers {
				got[i] += u.k
			}
		}
		assert.InDeltaSlice(t, want[:], got[:], 1e-12, "%v", at)
	}
	bringDown(&ShearLine{At: 5}, nil) // nothing below: the story's own check tells it
}

// The collector's force along a line with one segment, from one deck: what the
// deck brings, even over its length, less what the segment takes.
func TestCollectorForceByHand(t *testing.T) {
	b := storm
	b.stories, b.windows = 1, 0
	r := reported(t, b.plan())
	require.Len(t, r.Lines, 4)
	for _, x := range r.Lines {
		require.Len(t, x.Segments, 1)
		g := x.Segments[0]
		assert.InDelta(t, 1, g.Share, 1e-12)
		long := []float64{480, 288}[x.Axis]
		// The segment is 6 in to a third of the wall from its start; walls N and W run
		// toward lower coordinates.
		lo, hi := 6.0, long/3
		if strings.HasSuffix(x.Name, "N") || strings.HasSuffix(x.Name, "W") {
			lo, hi = long-hi, long-lo
		}
		assert.InDelta(t, lo, g.Lo, 1e-9, x.Name)
		assert.InDelta(t, hi, g.Hi, 1e-9, x.Name)
		force := func(p float64) float64 {
			took := math.Min(math.Max((p-lo)/(hi-lo), 0), 1)
			return x.Force * (p/long - took)
		}
		for _, p := range []float64{0, lo / 2, lo, (lo + hi) / 2, hi, (hi + long) / 2, long} {
			assert.InDelta(t, math.Abs(force(p)), math.Abs(x.DragAt(p)), 1e-6, "%s at %v", x.Name, p)
		}
		assert.Zero(t, x.DragAt(-1))
		assert.Zero(t, x.DragAt(long+1))
		assert.InDelta(t, x.Force, x.Deck+x.Brought, 1e-6)
		assert.InDelta(t, x.Force, g.V, 1e-6, "one segment takes it all")
		assert.InDelta(t, 0.6*x.Force/((hi-lo)/12), g.Demand, 1e-6, "plf, ASD")
		// One story: its chord tension is V h over the lever arm, the wall 109 in high.
		// Nothing is placed at its ends: from the middle of one post to that of the
		// other. The last is half a stud before the segment's end; the first the stud
		// next to the corner: of a wall that runs through at 5-3/4 in, of one that butts
		// at 5-1/2 + 3/4 = 6-1/4 in.
		arm := []float64{160 - 0.75 - 5.75, 96 - 0.75 - 6.25}[x.Axis]
		assert.InDelta(t, g.V*109/arm, g.Lifts, 1e-6)
	}
}

// Segments end over end add up: the upper shear over the lower's height and the
// floor between comes to the lower's ends too.
func TestEndTensionOfStackedSegmentsByHand(t *testing.T) {
	b := storm
	b.windows = 0
	r := reported(t, b.plan())
	seg := func(name string) (long, v, lifts float64) {
		for _, l := range r.Lines {
			for _, g := range l.Segments {
				if strings.HasPrefix(g.Name, name+"/") {
					return g.Length, g.V, g.Lifts
				}
			}
		}
		t.Fatal(name)
		return 0, 0, 0
	}
	for _, side := range []string{"S", "N"} {
		long, vUp, liftsUp := seg("2" + side)
		_, v, lifts := seg("1" + side)
		assert.InDelta(t, 154, long, 1e-9, "6 to 160 in")
		// From the middle of the post at 5-3/4 in to that at 160 - 3/4.
		const arm = 160 - 0.75 - 5.75
		assert.InDelta(t, vUp*109/arm, liftsUp, 1e-6)
		assert.InDelta(t, liftsUp+(v*109+vUp*12)/arm, lifts, 1e-6, "12 in of floor between")
		assert.Greater(t, v, vUp)
	}
}

// Two lines share a deck half way between them: each takes half of a house that
// is the same on both sides.
func TestTwoLinesShareADeckByHalves(t *testing.T) {
	b := storm
	b.windows, b.stories = 0, 1
	r := reported(t, b.plan())
	for ax := range 2 {
		var force []float64
		total := 0.0
		for _, x := range r.Lines {
			if x.Axis == ax {
				force = append(force, x.Force)
			}
		}
		for _, s := range r.Stories {
			if s.Axis == []plan.Axis{"x", "y"}[ax] {
				total = s.Total
				assert.InDelta(t, 0.6*total, s.ASD, 1e-6)
			}
		}
		require.Len(t, force, 2)
		assert.InDelta(t, force[0], force[1], 1e-6, "each in the gust whose end zone is on its side")
		assert.GreaterOrEqual(t, force[0]+force[1], total-1e-6)
		assert.Less(t, force[0], 0.6*total)
	}
}

func TestUnitShearLinksSayTheirArithmetic(t *testing.T) {
	b := storm
	b.width = 216 // the segment of a 9 ft wall: 6 to 72 in, 66 in for 109: 1.65 to 1
	r := reported(t, b.plan())
	n := 0
	for _, l := range r.Links {
		if l.Check.ID != "unit-shear" {
			continue
		}
		n++
		require.Len(t, l.Terms, 4)
		line, share, feet, plf := l.Terms[0].Value, l.Terms[1].Value, l.Terms[2].Value, l.Terms[3].Value
		assert.InDelta(t, 0.6*line*share/feet, plf, 1e-6, l.ID)
		assert.Equal(t, plf, l.Demand)
		assert.InDelta(t, l.Demand/0.6, l.Strength, 1e-9)
		// SDPWS 2008/2015 Table 4.3A (read): 15/32 with 8d at 4 in, 1,065 plf in the
		// wind column, half of it allowable on southern pine.
		require.NotNil(t, l.Capacity)
		assert.InDelta(t, 532.5, l.Capacity.Value, 1e-9, l.ID)
		assert.InDelta(t, l.Demand/532.5, l.Ratio, 1e-9)
		// Its deflection (SDPWS 2015 equation 4.3-1, second-hand), in: studs of 1.5 x 5.5
		// in of pine at its end, E 1.4 million psi, plywood's Ga 13 kip/in, an anchorage
		// that stretches 1/8 in at 532.5 plf.
		const h = 109 / 12.0
		bending, panel, anchor := 8*plf*h*h*h/(1.4e6*8.25*feet), plf*h/13_000, h*0.125*plf/532.5/feet
		require.Len(t, l.Notes, 1)
		assert.Contains(t, l.Notes[0], fmt.Sprintf("deflection %.2f in at this shear: bending %.3f, panel shear and nail slip %.3f, anchorage %.3f", bending+panel+anchor, bending, panel, anchor))
		assert.Equal(t, "wall "+l.Wall.Name+", story "+l.Wall.Level.Name, l.Where)
	}
	assert.Equal(t, 8, n)
	// Segments of 109 / 30 = 3.6 to 1 count for nothing: the line holds nobody.
	narrow := strings.ReplaceAll(b.plan(), `from = "6in", to = "72in"`, `from = "6in", to = "36in"`)
	r = reported(t, narrow)
	idle := 0
	for _, l := range r.Links {
		if l.Check.ID == "unit-shear" && strings.HasSuffix(l.Wall.Name, "E") {
			require.NotEmpty(t, l.Notes, l.ID)
			assert.Contains(t, l.Notes[0], "exceeds 3.5: not counted")
			assert.Zero(t, l.Terms[1].Value)
		}
		if l.Check.ID == "story-shear" {
			idle++
			assert.Equal(t, "none of its segments is wide enough to count", l.Gap)
			assert.InDelta(t, 0.6*l.Strength, l.Demand, 1e-9)
			assert.True(t, math.IsInf(l.Ratio, 1))
		}
	}
	assert.Equal(t, 4, idle, "E and W on both stories")
}

func TestEndsOfSegmentsSayTheirArithmetic(t *testing.T) {
	r := reported(t, storm.plan())
	n := 0
	for _, l := range r.Links {
		if l.Check.ID != "overturning" || len(l.Terms) < 8 {
			continue
		}
		n++
		v, h, floor, moment, arm := l.Terms[0].Value, l.Terms[1].Value, l.Terms[2].Value, l.Terms[3].Value, l.Terms[4].Value
		lifts, relief, net := l.Terms[5].Value, l.Terms[6].Value, l.Terms[7].Value
		assert.InDelta(t, moment, v*h+floor, 1e-6, l.ID)
		assert.InDelta(t, net, 0.6*lifts-relief, 1e-6, l.ID)
		assert.GreaterOrEqual(t, lifts, moment/arm-1e-6, l.ID)
		if l.Wall.Level.Index == 1 {
			assert.InDelta(t, 0, floor, 1e-6, "nothing stands on the upper story")
			assert.InDelta(t, moment/arm, lifts, 1e-6, l.ID)
		} else {
			assert.Positive(t, floor, l.ID)
		}
		assert.InDelta(t, math.Max(0, net), l.Demand, 1e-6)
		assert.InDelta(t, math.Max(0, lifts-1.5*relief), l.Strength, 1e-6, "0.9 of the weight that 0.6 is the relief of")
	}
	assert.Equal(t, 16, n, "two ends of eight segments")
}

// The south end of sanderling's wing is 20 of the house's 40 ft long: its line gathers
// 2,788 lb over those, none in front of the court. By hand with shares 0.507 and 0.493:
// 7 ft in from its west end 2788 x 7/20 - 1413 = -437 lb, 13 ft in 399 lb.
func TestLineBesideACourtGathersWhereItsDeckIs(t *testing.T) {
	r := exampleReport(t, "sanderling.toml")
	for _, x := range r.Lines {
		if x.Name != "S" {
			continue
		}
		assert.InDelta(t, 240, x.lo, 1)
		assert.InDelta(t, 480, x.hi, 1)
		assert.InDelta(t, 0, x.DragAt(240), 1)
		assert.InDelta(t, -437, x.DragAt(27*12), 3)
		assert.InDelta(t, 399, x.DragAt(33*12), 3)
		return
	}
	t.Fatal("no line S")
}

// 1P's north post, two studs of its own at 165.75 and 167.25 in, has its rod at its
// inner face; its south one two at 6.25 and 7.75 in, and farther out, at 2.75 in, the
// stud of 1S that they are nailed to. The arm is from the rod to the middle of the two,
// 7.00 in, and not to that of the three, 5.58 in.
func TestLeverArmGoesToAWallsOwnStuds(t *testing.T) {
	r := demoReport(t)
	for _, x := range r.Lines {
		for _, s := range x.Segments {
			if s.Name != "1P/A" {
				continue
			}
			require.Len(t, s.posts[0], 3)
			assert.InDelta(t, 7, s.postAt(0, 1), 1e-6)
			assert.InDelta(t, 166.5, s.postAt(1, 1), 1e-6)
			rod := 165.75 - 0.75 - (10.0625 - 8.5) // as far from its post as the south end's
			assert.InDelta(t, min(rod-7, 166.5-10.0625), s.Lever, 0.05)
			assert.InDelta(t, s.Moment/s.Lever+6248*13.16/13.04, s.Lifts, 40)
			return
		}
	}
	t.Fatal("no segment 1P/A")
}
