package loadpath

import (
	"testing"

	"galewright/plan"
	"galewright/plan/framing"
	"galewright/plan/placement"
	"galewright/plan/timber"
	"galewright/plan/wind"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"
)

// A perforated wall of 40 ft and 8 ft high, SDPWS 2021 4.3 (transcribed), its openings written
// in any order. Of 480 in openings of 36 x 84 at 100 and 60 x 48 at 300 leave 100, 164 and 120:
// 384; their area, 3024 and 2880, makes r = 1/(1 + 5904/(96 x 384)) = 0.86195 and Co =
// r/(3 - 2r) x 480/384 = 0.84433. What stands half an inch into the segment is none of it. A
// piece of 40 counts 40 x 2 x 40/96 = 33.333; an opening of 60 x 20 as 32 high, a third of
// the wall, and Co would be 1.014: 1.
func TestLengthOfAPerforatedWallByHand(t *testing.T) {
	at := func(s, w, h float64) *plan.Opening { return &plan.Opening{At: s, Width: w, Height: h} }
	for _, c := range []struct {
		open []*plan.Opening
		sum  float64
		area float64
		co   float64
	}{
		{[]*plan.Opening{at(300, 60, 48), at(479.5, 30, 84), at(100, 36, 84)}, 384, 5904, 0.844328},
		{[]*plan.Opening{at(40, 60, 20)}, 380 + 100./3, 1920, 1},
		{nil, 480, 0, 1},
	} {
		g := &Segment{Wall: &plan.Wall{Openings: c.open}, Shear: &plan.Shear{To: 480, Perforated: true}, Height: 96, Length: 480}
		g.work()
		require.NotNil(t, g.Pierced)
		assert.InDelta(t, c.sum, g.Pierced.SumLi, 1e-9)
		assert.InDelta(t, c.area, g.Pierced.Ao, 1e-9)
		assert.InDelta(t, c.co, g.Pierced.Co, 1e-6)
		assert.InDelta(t, c.co*c.sum, g.Working, 1e-3)
		assert.InDelta(t, g.Working, g.arm(), 1e-9, "its lever arm")
		assert.Empty(t, g.Trouble)
	}
}

// A segment 96 in high counts whole up to 2:1, less by 1.25 - h/8b to 3.5:1, and not at all
// beyond: by its tallest stud. An opening of which more than an inch lies in it is told.
func TestLengthOfASegmentByHand(t *testing.T) {
	for _, c := range []struct {
		length, tallest float64
		at              float64 // of an opening of 30
		factor, working float64
		trouble         bool
	}{
		{48, 0, 400, 1, 48, false},
		{30, 0, 400, 0.85, 30, false},
		{96. / 3.5, 0, 400, 0.8125, 96. / 3.5, false},
		{27, 0, 400, 0, 0, false},
		{48, 120, 400, 1.25 - 2.5/8, 48, false},
		{48, 0, 47, 1, 48, false},
		{48, 0, 46.9, 1, 48, true},
	} {
		g := &Segment{Wall: &plan.Wall{Openings: []*plan.Opening{{Name: "o", At: c.at, Width: 30}}}, Shear: &plan.Shear{To: c.length}, Height: 96, Tallest: c.tallest, Length: c.length}
		g.work()
		assert.InDelta(t, c.factor, g.Factor, 1e-9, "%+v", c)
		assert.InDelta(t, c.working, g.Working, 1e-9, "%+v", c)
		assert.Equal(t, c.trouble, g.Trouble != "", "%+v", c)
	}
}

// Under a gable the roof hands a segment its shear at the mean of its studs and plates, no
// lower than the story's wall: studs up to 197 and 209 over a floor at 100, two plates of 1.5
// on them: 100 and 112, 106 on the mean, of which 112 is the tallest.
func TestHeightOfASegmentOfAGableWall(t *testing.T) {
	studs := func(tops ...float64) (out []*carrier) {
		for _, z := range tops {
			out = append(out, &carrier{m: &framing.Member{Z1: z}})
		}
		return out
	}
	for _, c := range []struct {
		top      plan.WallTop
		height   float64
		studs    []*carrier
		h, tall  float64
		whatever string
	}{
		{plan.RakeTop, 97, studs(197, 209), 106, 112, "rake"},
		{plan.RakeTop, 110, studs(197, 209), 110, 112, "the story's wall is higher than the mean"},
		{plan.RakeTop, 150, studs(197, 209), 150, 150, "and than all"},
		{plan.RakeTop, 97, nil, 97, 97, "no studs"},
		{plan.PlateTop, 97, studs(197, 209), 97, 97, "on its plates"},
	} {
		g := &Segment{Wall: &plan.Wall{Top: c.top, Level: &plan.Level{Floor: 100}}, Height: c.height, carriers: c.studs}
		g.rake()
		assert.Equal(t, [2]float64{c.h, c.tall}, [2]float64{g.Height, g.Tallest}, c.whatever)
	}
}

// The joint at an end of a segment is the nearest of its wall's within 18 in; one joint is not
// both ends.
func TestJointsAtTheEndsOfASegment(t *testing.T) {
	w := &plan.Wall{}
	for _, c := range []struct {
		from, to float64
		at       []float64
		want     [2]float64 // -1 for none
	}{
		{20, 60, []float64{25, 22, 90, 58}, [2]float64{22, 58}},
		{20, 60, []float64{37.9, 42.1}, [2]float64{37.9, 42.1}},
		{20, 60, []float64{2, 78}, [2]float64{-1, -1}},
		{20, 60, []float64{38, 41.9}, [2]float64{-1, -1}},
		{20, 40, []float64{30}, [2]float64{30, -1}},
		{20, 40, []float64{21, 39}, [2]float64{21, 39}},
	} {
		b := &builder{model: &model{}}
		b.wallEnds = map[*plan.Wall][]*framing.Joint{{}: {{Station: c.from}}}
		for _, s := range c.at {
			b.wallEnds[w] = append(b.wallEnds[w], &framing.Joint{Station: s})
		}
		g := &Segment{Wall: w, Shear: &plan.Shear{From: c.from, To: c.to}}
		b.ends(g)
		for i, j := range g.ends {
			if c.want[i] < 0 {
				assert.Nil(t, j, "%+v", c)
			} else if assert.NotNil(t, j, "%+v", c) {
				assert.Equal(t, c.want[i], j.Station, "%+v", c)
			}
		}
	}
}

// 1000 lb on a segment 96 high and 48 long, 45 from chord to chord, under one that brings 600 lb
// at the top of a floor 12 deep, 800 lb of chord tension and 50,000 lb in: the moment is
// 96,000 + 7,200, and 103,200/45 of tension are added. Of a perforated wall it is the moment of
// all stories, 153,200, over its own arm.
func TestChordTensionUnderAStoryAbove(t *testing.T) {
	up := &Segment{n: 1, depth: 12}
	for _, c := range []struct {
		g     Segment
		lifts float64
	}{
		{Segment{Height: 96, Length: 48, Lever: 45}, 800 + 103200./45},
		{Segment{Height: 96, Length: 48}, 800 + 103200./48},
		{Segment{Height: 96, Length: 48, Lever: 45, Working: 40, Pierced: &timber.Perforated{}}, 153200. / 40},
		{Segment{Height: 96}, 800},
	} {
		s := onOneLine(0)
		s.segments[1] = segmentForce{v: 600, lifts: 800, all: 50000}
		c.g.above = []*Segment{up}
		s.overturn(&c.g, 1000)
		got := s.segments[0]
		assert.InDelta(t, 1000, got.v, 1e-9)
		assert.InDelta(t, 103200, got.moment, 1e-9)
		assert.InDelta(t, 153200, got.all, 1e-9)
		assert.InDelta(t, c.lifts, got.lifts, 1e-6)
	}
}

// Of gusts the largest shear is kept with its case and what it asks of a foot, 0.6 V over the
// length that counts; the largest chord tension with its moment, of whichever gust.
func TestWorstGustsOfASegment(t *testing.T) {
	x := &SegmentShear{Segment: &Segment{Working: 48}}
	gusts := []struct {
		axis                int
		v, lifts, moment    float64
		wantV, wantL, wantM float64
		from                string
	}{
		{0, 1000, 500, 96000, 1000, 500, 96000, "W"},
		{1, 800, 900, 70000, 1000, 900, 70000, "W"},
		{1, 1200, 900, 80000, 1200, 900, 70000, "S"},
		{0, 1200, 100, 90000, 1200, 900, 70000, "S"},
	}
	for _, c := range gusts {
		s := onOneLine(0)
		s.gust = gust{proc: plan.Envelope, axis: c.axis, sign: 1}
		s.segments[0] = segmentForce{v: c.v, lifts: c.lifts, moment: c.moment}
		x.fold(s)
		assert.Equal(t, [3]float64{c.wantV, c.wantL, c.wantM}, [3]float64{x.V, x.Lifts, x.Moment})
		assert.InDelta(t, 0.6*c.wantV/48*12, x.Demand, 1e-9)
		assert.Contains(t, x.Case, "wind from "+c.from)
	}
}

// What an enclosure class rests on, and how a number changed.
func TestWordsOfProcedures(t *testing.T) {
	assert.Contains(t, protection(wind.Basis{Enclosure: plan.PartiallyEnclosed}), "GCpi 0.55 of both signs")
	assert.Contains(t, protection(wind.Basis{Enclosure: plan.Enclosed}), "GCpi 0.18 of both signs")
	for _, c := range []struct {
		was, is float64
		want    string
	}{{100, 150, " (+50%)"}, {200, 150, " (-25%)"}, {100, 100, " (+0%)"}, {0.5, 80, ""}, {0.51, 1.02, " (+100%)"}, {-3, 9, ""}} {
		assert.Equal(t, c.want, change(c.was, c.is))
	}
}

// A house of 40 by 24 ft, 15 ft high: a is a tenth of 24 ft, less than 0.4 x 15, but 3 ft at
// least. On a flat roof zones are by 0.6 h and 0.2 h, 9 and 3 ft; over 7 degrees by a.
func TestWidthsOfZonesInWords(t *testing.T) {
	b := wind.Basis{Length: 40, Width: 24, Height: 15, Theta: 20, Edition: plan.ASCE716}
	words := func(b wind.Basis, roof *plan.Roof) []string {
		return (&Report{Basis: b, Main: roof, work: &analysis{model: &model{givens: givens{plan: &plan.Plan{}}}}, Placement: &placement.Placement{House: &framing.House{Plan: &plan.Plan{}}}}).zoneWidths()
	}
	got := words(b, &plan.Roof{})
	require.Len(t, got, 2)
	assert.Contains(t, got[0], "a = 3'")
	assert.Contains(t, got[1], "within 3'")
	b.Theta = 7
	got = words(b, &plan.Roof{})
	assert.Contains(t, got[1], "0.6 h = 9'")
	assert.Contains(t, got[1], "0.2 h = 3'")
	assert.Len(t, words(b, nil), 1, "without a roof it has no zones")
	b.Edition = plan.ASCE722
	got = words(b, &plan.Roof{})
	require.Len(t, got, 3)
	assert.Contains(t, got[2], "outer edge of an overhang")
}

// Open roofs are listed one by one: a gable across and along, a shed at its high eave, its low
// eave and along; each by cases A and B of clear
// and of obstructed flow, and all parts.
func TestOpenRoofsAreListedByWindAndPart(t *testing.T) {
	gable := &plan.Roof{Name: "g", Kind: plan.GableRoof, Ridge: plan.AxisX, Pitch: 4}
	shed := &plan.Roof{Name: "s", Kind: plan.ShedRoof, Ridge: plan.AxisX, High: plan.North, Pitch: 2}
	closed := &plan.Roof{Name: "c", Kind: plan.GableRoof, Ridge: plan.AxisX, Pitch: 4}
	m := &model{givens: givens{plan: &plan.Plan{Roofs: []*plan.Roof{gable, closed, shed}}}}
	m.open = map[*plan.Roof]bool{gable: true, shed: true}
	r := &Report{work: &analysis{model: m}}
	n := map[string]int{}
	for _, x := range r.openRoofs() {
		n[x.roof+" "+x.wind+", "+x.part]++
	}
	assert.Equal(t, map[string]int{
		"g across, windward half": 4, "g across, leeward half": 4, "g along, to h": 4, "g along, h to 2h": 4, "g along, beyond 2h": 4,
		"s at the high eave, windward half": 4, "s at the high eave, leeward half": 4, "s at the low eave, windward half": 4, "s at the low eave, leeward half": 4,
		"s along, to h": 4, "s along, h to 2h": 4, "s along, beyond 2h": 4,
	}, n)
}
