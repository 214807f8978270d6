package loadpath

import (
	"math"
	"strings"
	"testing"

	"galewright/plan"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"
)

// The demo house in wind across its ridge, worked from the plan's numbers: windward
// wall 0.8, leeward wall 0.5 (L/B 28/44 = 0.64), slopes of 30 degrees at h/L 1.16:
// second value 0.2, leeward 0.6 (ASCE 7-22 Fig. 27.3-1, transcribed).
const (
	handWest  = 372.25 / 24                // ft of width that line 1W takes: half way to 1P at 31 ft 1/4 in
	handSlope = 0.85 * (0.2 + 0.6) * handQ // psf on the roof's vertical projection
)

// handAcross is windward and leeward wall pressure together, psf, between two
// heights above grade in ft, wind across the ridge.
func handAcross(lo, hi float64) float64 { return handWind(lo, hi) + 0.85*(0.5-handLee)*handQ }

// handHeights are the demo's, ft above grade: the lowest floor's joists, that
// floor, half way up its walls, their plates, the second story's mid height, its
// plates, the ridge.
var handHeights = func() (z struct{ under, floor, low, first, mid, plates, ridge float64 }) {
	const deep = 11.969 / 12 // 2x12 and 23/32 in of subfloor
	z.floor = 10
	z.under = z.floor - deep
	z.low, z.first = z.floor+109.125/24, z.floor+109.125/12
	z.mid = z.first + deep + 97.125/24
	z.plates = z.first + deep + 97.125/12
	z.ridge = z.plates + 8.836
	return z
}()

// handRoofAcross is the level wind on the demo's roof, plf: from the eave's edge, which
// is 14 + 1.5 ft of 7:12 below the ridge, 9.042 ft: 0.206 ft below the plates. At the
// rakes the plumb depth of the 2x10 fly rafters, 0.892 ft, stands besides, before no
// wall.
func handRoofAcross() (slope, rake float64) {
	slope = handSlope * 15.5 * 7 / 12
	return slope, slope + 9.25/12*1.15775*handAcross(handHeights.plates, handHeights.ridge)
}

func TestDemoRoofStandsAgainstTheWindWithItsOverhangs(t *testing.T) {
	// 44 ft of walls and a foot of rake at each end: about 697 lb more than the walls'
	// length alone gives, and 0.2 ft of eave under the plates.
	r := demoReport(t)
	slope, rake := handRoofAcross()
	assert.InDelta(t, 356.6, slope, 0.1)
	for _, s := range r.Stories {
		if s.Level.Name == "second" && s.Axis == plan.AxisY {
			assert.InDelta(t, 44*slope+2*rake, s.Roof, 5)
		}
	}
}

func TestFloorToGirdersCarriesWhatEntersAtTheFloorByHand(t *testing.T) {
	// Line 1W: half of the 31 ft to the next line, of both stories, and the west rake.
	// Above its segments: upper half of the first story, floor and lower half of the
	// second; upper half of the second and the roof. At the floor that they stand on:
	// lower half of the first story and that floor's edge, 5.54 ft at 59.1 psf.
	r, z := demoReport(t), handHeights
	slope, rake := handRoofAcross()
	above := handWest*(handAcross(z.low, z.first)*(z.first-z.low)+handAcross(z.first, z.mid)*(z.mid-z.first)+
		handAcross(z.mid, z.plates)*(z.plates-z.mid)+slope) + rake
	floor := handWest * (handAcross(z.floor, z.low)*(z.low-z.floor) + handAcross(z.under, z.floor)*(z.floor-z.under))
	assert.InDelta(t, 5083, floor, 10)
	var deck, girders *Link
	for _, l := range r.Links {
		switch l.ID {
		case "deck to the plates, line 1W":
			deck = l
		case "floor to the girders, line 1W":
			girders = l
		}
	}
	require.NotNil(t, deck)
	require.NotNil(t, girders)
	assert.InDelta(t, 0.6*above, deck.Demand, 5)
	assert.InDelta(t, 0.6*(above+floor), girders.Demand, 5)
	assert.InDelta(t, girders.Demand/girders.Capacity.Value, girders.Ratio, 1e-9)
	// All that the lines hand to girders is the foundation's, but for what the girders
	// meet themselves.
	for _, b := range r.Base {
		sum := 0.0
		for _, x := range r.Lines {
			if x.Level.Index == 0 && plan.Axes[x.Axis] == b.Axis {
				sum += x.Under
			}
		}
		near(t, b.Total-b.Girders, sum, 1e-9, "along %s", b.Axis)
	}
}

func TestSpliceTakesChordAndCollectorAtOnceByHand(t *testing.T) {
	// The break at 197.5 in in the upper plate of 1S. Chord: the deck of the first
	// story, 28 ft deep, as a beam from 1W to 1P under 581 plf: w a b / 2 over 28.
	// Collector, wind along the wall: what the deck has brought in that far, evenly over
	// 44 ft, and the segment above, less what the segment below has taken.
	r, z := demoReport(t), handHeights
	const at, span = 197.5 / 12, 372.25 / 12
	w := handAcross(z.low, z.first)*(z.first-z.low) + handAcross(z.first, z.mid)*(z.mid-z.first)
	chord := w * at * (span - at) / 2 / 28
	deck := 14 * (handWind(z.low, z.first)*(z.first-z.low) + handWind(z.first, z.mid)*(z.mid-z.first))
	v := map[string]float64{}
	for _, x := range r.Lines {
		for _, s := range x.Segments {
			v[s.Name] = s.V
		}
	}
	drag := math.Abs(deck*at/44 + v["2S/A"] - v["1S/A"])
	l := demand(t, r, "1S-198-PS", "chord-splice")
	assert.InDelta(t, chord, l.Terms[0].Value, 2)
	assert.InDelta(t, drag, l.Terms[1].Value, 2)
	require.Greater(t, 0.75*(chord+drag), chord)
	assert.InDelta(t, 0.6*0.75*(chord+drag), l.Demand, 2)
	assert.Equal(t, "chord and collector, wind on both axes, 0.75 of each (case 3)", l.Case)
	// Where one of them is little, it governs alone: 1E-198, the chord of a short deck.
	e := demand(t, r, "1E-198-PS", "chord-splice")
	a, b := e.Terms[0].Value, e.Terms[1].Value
	require.Less(t, 0.75*(a+b), math.Max(a, b))
	assert.InDelta(t, 0.6*math.Max(a, b), e.Demand, 1e-6)
}

func TestCaseThreeIsOfTheDirectionalProcedure(t *testing.T) {
	a := demoReport(t).work
	lb, diagonal := a.atOnce(100, 60)
	assert.InDelta(t, 0.75*160, lb, 1e-9)
	assert.True(t, diagonal)
	lb, diagonal = a.atOnce(30, 100) // 97.5
	assert.InDelta(t, 100, lb, 1e-9)
	assert.False(t, diagonal)
	m := *a.model
	m.choice.Use = []plan.Procedure{plan.Envelope}
	lb, diagonal = m.atOnce(100, 60)
	assert.InDelta(t, 100, lb, 1e-9)
	assert.False(t, diagonal)
	assert.Empty(t, m.bothTerm(100, 60))
}

func TestCornerPostIsPressedByBothWallsAtOnceByHand(t *testing.T) {
	// The south-west corner of the first story: the two studs at the end of 1W and that
	// of 1S nailed to them are one post of three 2x6. In case 3 both segments press it
	// with 0.75 of their couples. 1S's comes in at its one stud, 8.25 in² at 565 psi =
	// 4,661 lb, and may spread to the others through 9 nails at 12 in, 16d, 228.1 lb each
	// (NDS 2018 12.3.1, 1.5 in into the other stud: 153.9 x 1.5/1.62 x 1.6): 6,714 lb.
	r := demoWith(t, `corner_studs = { nail = "16d common", spacing = "4in" }`, `corner_studs = { nail = "16d common", spacing = "12in" }`)
	lifts := map[string]float64{}
	for _, x := range r.Lines {
		for _, s := range x.Segments {
			lifts[s.Name] = s.Lifts
		}
	}
	wind := 0.75 * (lifts["1S/A"] + lifts["1W/B"])
	l := demand(t, r, "1W-328-WE", "chord-push")
	dead := -l.Force.D
	assert.Positive(t, dead)
	assert.InDelta(t, wind, l.Force.W, 1e-6)
	assert.InDelta(t, 0.6*wind+dead, l.Demand, 1e-6)
	reach := 8.25*565 + 9*153.9*1.5/1.62*1.6
	into := 0.6*0.75*lifts["1S/A"] + dead/2
	assert.InDelta(t, reach/into*l.Demand, l.Capacity.Value, 10)
	assert.Less(t, l.Capacity.Value, 24.75*565, "less than the plate bears under all three")
	assert.Equal(t, bothWords, l.Case)
	// By itself 1S presses its stud with 0.6 of its couple: more than gets through.
	alone := demand(t, r, "1S-1-WE", "chord-push")
	assert.InDelta(t, reach, alone.Capacity.Value, 5)
	assert.Equal(t, "nails between the studs of the post", alone.Capacity.Governs)
	// Three times the nails let through all that the other stud bears.
	more := demoReport(t)
	tight := demand(t, more, "1S-1-WE", "chord-push")
	assert.GreaterOrEqual(t, tight.Capacity.Value, 2*8.25*565)
	assert.Equal(t, "bearing of the post on its plate", tight.Capacity.Governs)
	// A post in the middle of the wall is pressed by one segment alone.
	one := demand(t, r, "1S-95-WE", "chord-push")
	assert.InDelta(t, lifts["1S/A"], one.Force.W, 1e-6)
}

func TestCeilingJoistsAreNoRoofDeck(t *testing.T) {
	// On 2S lie 34 rafters with 3 nails each, and as many ceiling joists: the rafters'
	// nails hold the roof's shear, the joists' do not. With level plates no rafter
	// touches 2P and 2R, which then stand under ceiling joists alone.
	r := demoWith(t, "studs = \"2x6 @ 16in\"\ntop = \"rake\"\nshear", "studs = \"2x6 @ 16in\"\nshear")
	links := map[string]*Link{}
	for _, l := range r.Links {
		if l.Check.ID == deckShearCheck {
			links[l.ID] = l
		}
	}
	s := links["deck to the plates, line 2S"]
	require.NotNil(t, s)
	assert.Equal(t, 34*3, s.Capacity.Pieces)
	assert.Equal(t, "102 nails of N2, rafter to plate", s.Capacity.Governs)
	p := links["deck to the plates, line 2P/2R"]
	require.NotNil(t, p)
	assert.Nil(t, p.Capacity)
	assert.Contains(t, p.Gap, "only ceiling joists")
	assert.True(t, math.IsInf(p.Ratio, 1))
	// Floor joists are a deck: 1S has rim and joists, and both are named.
	f := links["deck to the plates, line 1S"]
	require.NotNil(t, f)
	assert.Equal(t, 1, strings.Count(f.Capacity.Governs, " + "))
	assert.Contains(t, f.Capacity.Governs, plan.RimToSupport.Row().One)
	assert.Contains(t, f.Capacity.Governs, plan.JoistToSupport.Row().One)
}

// exampleReport is the report of an example.
func exampleReport(t *testing.T, name string) *Report { return exampleWith(t, name) }

func TestSillBoltsTakeTheSegmentsShearByHand(t *testing.T) {
	// Wall W of the row house on its slab: 5/8 in bolts through a sill of 1-1/2 in
	// southern pine hold 1,139 lb each in wind (worked in package timber). Those within the
	// segment count, and neither the rods of its hold-downs nor a bolt past its ends.
	r := exampleReport(t, "curlew-row.toml")
	n := 0
	for _, l := range r.Links {
		if l.Check.ID != anchorCheck {
			continue
		}
		n++
		for _, x := range r.Lines {
			for _, s := range x.Segments {
				if l.ID != s.Name+", sill bolts" {
					continue
				}
				assert.InDelta(t, 0.6*s.V, l.Demand, 1e-6, l.ID)
				bolts := 0
				for _, p := range r.Placement.Pieces {
					if p.Item.Mark == "sill-bolt" && p.Joint.Wall == s.Wall && s.Shear.From <= p.Station && p.Station <= s.Shear.To {
						bolts++
					}
				}
				assert.Equal(t, bolts, l.Capacity.Pieces, l.ID)
				assert.InDelta(t, float64(bolts)*1139, l.Capacity.Value, float64(bolts), l.ID)
			}
		}
	}
	assert.Equal(t, 18, n)
}

func TestSillBoltsUnderAFloorTakeTheWholeLineByHand(t *testing.T) {
	// A house on a stem wall: what enters at the floor comes over the sill's bolts too,
	// of all of the line; the rods that go up through the floor are for uplift.
	r := exampleReport(t, "sanderling.toml")
	sum, under := 0.0, 0.0
	for _, l := range r.Links {
		if l.Check.ID == anchorCheck {
			sum += l.Strength
			assert.InDelta(t, float64(l.Capacity.Pieces)*1139, l.Capacity.Value, float64(l.Capacity.Pieces), l.ID)
			assert.Equal(t, "sill-bolt", l.Capacity.Mark)
		}
	}
	for _, b := range r.Base {
		assert.Positive(t, b.Edge)
		assert.Zero(t, b.Girders)
		under += b.Total
	}
	assert.InDelta(t, under, sum, 1, "both axes: all of the lines' force is the foundation's")
}

func TestSillWithoutBoltsIsAGap(t *testing.T) {
	b := storm
	b.piles, b.stories, b.floor = false, 1, 0
	r := reported(t, b.plan())
	n := 0
	for _, l := range r.Links {
		if l.Check.ID == anchorCheck {
			n++
			assert.Equal(t, "no bolt with its nut on the sill plate stands within the segment", l.Gap)
			assert.Positive(t, l.Demand)
		}
	}
	assert.Equal(t, 4, n)
}
