package loadpath

import (
	"math"
	"os"
	"path/filepath"
	"strings"
	"testing"

	"galewright/plan"
	"galewright/plan/plantest"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"
)

// The demo house worked by hand, from the plan's numbers and the tables alone
// (coefficients: ASCE 7-22 Tables 26.10-1, 26.11-1, Fig. 27.3-1, sources as in
// package wind). Its mean roof height of 32.6 ft is more than its 28 ft of
// width: the directional procedure. Nothing here calls the package's own
// arithmetic.
const (
	handQ    = 58.00           // psf: 0.00256 x 2.41 (32.60/1935)^(2/11.5) x 0.85 x 150²
	handRoof = 6.990           // psf on plan: (2.00 + 3 x 19/32 + 0.244 x 9.25) sqrt(12² + 7²)/12
	handCeil = 2.2             // psf
	handWall = 4.948           // psf: 3 x 15/32 + 2.20 + 0.244 x 5.5
	handSeat = 20.31           // in from the rafter's tail: 18 and half a seat of 4.62
	handApex = 15.5*12 - 20.31 // in from seat to ridge
	// Wind along the ridge, h/L 32.60/44 = 0.741: to h/2 = 16.3 ft from the edge Cp
	// lies between -0.9 at 0.5 and -1.3 at 1.0: -1.093; with G 0.929 upward.
	handTop = 0.85 * (0.9 + 0.4*(32.603/44-0.5)/0.5)
	// From there to h = 32.6 ft it lies between -0.9 and -0.7: -0.804; 0.683 upward.
	handMid    = 0.85 * (0.9 - 0.2*(32.603/44-0.5)/0.5)
	handSoffit = 0.85 * 0.8
	// The leeward wall, L/B 44/28 = 1.571: between -0.5 at 1 and -0.3 at 2: -0.386.
	handLee = 0.5 - 0.2*(44.0/28-1)
)

// handWind is windward and leeward wall pressure together, psf, as the mean
// between two heights above grade in ft, wind along the ridge.
func handWind(lo, hi float64) float64 {
	mean := 0.0
	for i := range 1000 {
		z := lo + (hi-lo)*(float64(i)+0.5)/1000
		mean += handQ * math.Pow(math.Max(z, 15)/32.603, 2/11.5) / 1000
	}
	return 0.85 * (0.8*mean + handLee*handQ)
}

// handThin is the part of a gauge that counts for strength: no structural sheet
// has 9, 13, 15 or 17 gauge, so 0.1242 of 0.1345 in, as of 10 gauge.
const handThin = 0.1242 / 0.1345

// handStiff is the force, lb, that moves the top of a segment an inch: h high and
// b long, ft, the lesser of its end posts of an area, in², of pine, E 1.4 million
// psi; v = 1 plf deflects it 8 h³/(E A b) + h/(1000 Ga) + h Δ/b (SDPWS 2015 equation 4.3-1,
// second-hand), its anchorage stretching 1/8 in at the allowable shear (assumed).
func handStiff(h, b, area, ga, allow float64) float64 {
	return b / (8*h*h*h/(1.4e6*area*b) + h/(1000*ga) + h*0.125/allow/b)
}

// handRafter returns the reaction at the south plate of a pair of common
// rafters at 16 in under a suction of top (G Cp) on both slopes, wind along the
// ridge, corner south, and the horizontal tension at the ridge: wind (strength)
// and dead, lb.
// What presses under the south eave relieves the ridge, so the ridge is worked
// without it.
func handRafter(top float64) (plate, ridge Force) {
	strip := 16.0 / 12
	load := func(u0, u1, c float64) (sum, moment float64) { // in up the plan, net coefficient
		sum = c * handQ * strip * (u1 - u0) / 12
		return sum, sum * ((u0+u1)/2 - handSeat) * (1 + 49.0/144)
	}
	side := func(stretches [][3]float64) (sum, moment float64) {
		for _, s := range stretches {
			f, m := load(s[0], s[1], s[2])
			sum, moment = sum+f, moment+m
		}
		return sum, moment
	}
	// Both slopes have one value on top; +0.18 inside; the south eave meets the
	// wind at its corner, the north one does not.
	south, ms := side([][3]float64{{0, 18, top + handSoffit}, {18, 186, top + 0.18}})
	_, mn := side([][3]float64{{0, 18, top}, {18, 186, top + 0.18}})
	span, rise := 2*handApex, handApex*7/12
	over := (ms - mn) / span
	_, calm := side([][3]float64{{0, 18, top}, {18, 186, top + 0.18}})
	least := (calm - mn) / span
	roof := handRoof * strip * 15.5
	md := roof * (93 - handSeat)
	return Force{south - over, roof}, Force{(calm - least*handApex) / rise, md / rise}
}

// handCeiling returns what a ceiling joist beside every rafter brings to the south
// plate, lb: half of the 28 ft between the walls' outside faces, or where a bearing
// wall's middle lies at a place, in from the south face, the lever of what lies up to
// there about that: the joist's seat is the rafter's, 2.31 in from the face.
func handCeiling(wall float64) Force {
	w := handCeil * 16 / 144
	if wall == 0 {
		return down(w * 168)
	}
	return down(w * wall * (wall / 2) / (wall - (handSeat - 18)))
}

func demoReport(t *testing.T) *Report { return demoWith(t) }

// demoWith is the demo with strings of its plan replaced.
func demoWith(t *testing.T, edits ...string) *Report {
	return exampleWith(t, "marsh-wren.toml", edits...)
}

// exampleWith is an example with strings of its plan replaced, old before new.
func exampleWith(t *testing.T, name string, edits ...string) *Report {
	t.Helper()
	w := WorkOut(name, string(plantest.Edit(t, Source(t, name), edits...)))
	require.False(t, w.Faults.Errors())
	r, ds := w.Loads()
	require.False(t, ds.Errors())
	return r
}

// elbow is the plan of an L whose two lines end at the corner of its court with nothing
// there to carry them on, and whose ridges' ends nothing holds.
func elbow(t *testing.T) []byte {
	t.Helper()
	src, err := os.ReadFile(filepath.Join("testdata", "elbow.toml"))
	require.NoError(t, err)
	return src
}

// elbowWith is that L with strings of its plan replaced, old before new.
func elbowWith(t *testing.T, edits ...string) *Report {
	t.Helper()
	w := WorkOut("elbow.toml", string(plantest.Edit(t, elbow(t), edits...)))
	require.False(t, w.Faults.Errors())
	r, ds := w.Loads()
	require.False(t, ds.Errors())
	return r
}

func demand(t *testing.T, r *Report, id, check string) *Link {
	for _, l := range r.Joint(id) {
		if l.Check.ID == check {
			return l
		}
	}
	t.Fatalf("no %s at %s", check, id)
	return nil
}

func TestDemoHouseUpliftByHand(t *testing.T) {
	r := demoReport(t)
	kh := 2.41 * math.Pow(32.603/1935, 2/11.5)
	assert.InDelta(t, handQ, 0.00256*kh*0.85*150*150, 0.01)
	assert.InDelta(t, handQ, r.Basis.Direct().QKd, 0.01)
	assert.Equal(t, []plan.Procedure{plan.Directional}, r.Choice.Use)
	plate, ridge := handRafter(handTop)
	asd := func(f Force) float64 { return 0.6*f.W - 0.6*f.D }
	assert.InDelta(t, asd(plate), demand(t, r, "2S-112-RP", "rafter-uplift").Demand, 1)
	assert.InDelta(t, asd(ridge)*math.Sqrt(144+49)/12, demand(t, r, "main-112-RR", "ridge-tie").Demand, 1)
	// The ceiling hangs on the joists beside the rafters and comes to the plate: the clip
	// and the ridge's strap feel nothing of it, the header and what is below it do.
	// Header of w1, from 110-1/2 to 152 in; rafters at 112, 128 and 144 in.
	plate = plate.add(handCeiling(0))
	left := plate.times((40 + 24 + 8) / 41.5)
	assert.InDelta(t, asd(left), demand(t, r, "2S-111-OH", "header-uplift").Demand, 1)
	// King at 109-3/4 in beside a post at 95-1/4 in: the rafter at 96 in brings
	// a twentieth. Its wall is 28.75 in long (half way to 95-1/4 and to the
	// king at 152-3/4) and 97-1/8 in high.
	king := left.add(plate.times(0.75 / 14.5))
	upper := king.add(down(handWall * 28.75 * 97.125 / 144))
	assert.InDelta(t, asd(upper), demand(t, r, "2S-110-SS", "story-uplift").Demand, 1)
	// Below it: floor of 2.16 + 0.244 x 11.25 psf on 7 ft of joists, and the
	// wall of the first story, 109-1/8 in high.
	// There a second stud at 96-3/4 in thickens the shear wall's post: 28 in of each.
	lower := upper.add(down(4.905 * 7 * 28 / 12)).add(down(handWall * 28 * 109.125 / 144))
	assert.InDelta(t, asd(lower), demand(t, r, "1S-110-SB", "base-uplift").Demand, 1)
}

func TestDemoHouseShearByHand(t *testing.T) {
	r := demoReport(t)
	// Wind along the ridge. On the upper deck: half of 97-1/8 in; the gable, which is
	// 8.836 ft high in the middle and 14 x 7/12 ft less over the walls; and the boxed
	// eave of 18 in, as deep as a 2x10 plumb at its edge and 7/12 of 18 in more at the
	// wall. Line 2S takes 14 ft of the 28, and its eave. Plates 28.185 ft above grade,
	// those of the first story 11.969 in of floor and 97-1/8 in below.
	const plates, half, rise = 28.185, 97.125 / 24, 8.836
	const heel, plumb = rise - 14*7/12.0, 9.25 / 12 * 1.15775 // sqrt(12² + 7²)/12
	line := 14*(handWind(plates-half, plates)*half+handWind(plates, plates+rise)*(heel+rise)/2) +
		1.5*(plumb+1.5*7/12/2)*handWind(plates, plates+rise)
	// Segments A of 8 ft and B of 6 ft 8 in share by stiffness: 15/32 in with 8d at 6
	// in above (Ga 10, 365 plf) and at 3 in below (Ga 15, 685 plf). The lesser post is
	// one 2x6 above, 8.25 in², and two below, 16.5.
	const b = 6 + 8.0/12
	shareOf := func(h, area, ga, allow float64) float64 {
		return handStiff(h, 8, area, ga, allow) / (handStiff(h, 8, area, ga, allow) + handStiff(h, b, area, ga, allow))
	}
	v := line * shareOf(97.125/12, 8.25, 10, 365)
	const first, over, under = plates - 97.125/12 - 11.969/12, 11.969/12 + 97.125/24, 109.125 / 24
	lower := 14 * (handWind(first-under, first)*under + handWind(first, first+over)*over)
	vLow := (line + lower) * shareOf(109.125/12, 16.5, 15, 685)
	find := func(name string) *SegmentShear {
		for _, x := range r.Lines {
			for _, s := range x.Segments {
				if s.Name == name {
					return s
				}
			}
		}
		t.Fatal(name)
		return nil
	}
	assert.InDelta(t, 0.6*v/8, find("2S/A").Demand, 1)
	assert.InDelta(t, 0.6*vLow/8, find("1S/A").Demand, 1)
	// End tension: each story's shear over its height, the upper one over the
	// floor between too. The far post is the end stud at 3/4 in and that of wall W
	// nailed to it at 2-3/4 in: its middle lies at 1-3/4. The lever arm runs there from
	// the rod, its hold-down's center off the face of the post at 95-1/4.
	arm := func(joint string) float64 {
		for _, p := range r.Placement.Pieces {
			if p.Joint.ID == joint && p.Rod != nil {
				return 95.25 - 0.75 - p.Item.Center - (0.75+2.75)/2
			}
		}
		t.Fatal(joint)
		return 0
	}
	up := v * 97.125 / arm("2S-95-WE")
	low := up + (vLow*109.125+v*11.969)/arm("1S-95-WE")
	assert.InDelta(t, up, find("2S/A").Lifts, 2)
	assert.InDelta(t, low, find("1S/A").Lifts, 4)
	// It comes to the pile at 8 ft 6 1/2 in by lever: the rod goes through the girder at
	// 95-1/4 in less half a stud and its center of 1-9/16, the pile before stands at 10-7/8 in.
	// With it goes the couple of the segment's own shear from the floor down to the
	// middle of the 3-2x12 girder: 11.969 + 11.25/2 in.
	rod := 95.25 - 0.75 - 25.0/16
	pull := 0.6 * (low + vLow*(11.969+11.25/2)/arm("1S-95-WE")) * (rod - 10.875) / (102.5 - 10.875)
	pile := demand(t, r, "GS-103-GP", "girder-pile-uplift").Demand
	assert.InDelta(t, pile+pull, demand(t, r, "GS-103-GP", "pile-overturning").Demand, 3)
	// Collector at 8 ft: what the deck brings on 8 of 44 ft less what the
	// segment takes.
	assert.InDelta(t, 0.6*math.Abs(line*8/44-v), demand(t, r, "2S-96-CO", "collector").Demand, 1)
	// Gable wall 2W: the first 8 ft of the rake, plates to 97-1/8 in and on up
	// at 7:12, so about 28 in more in the middle.
	rake := find("2W/A")
	assert.InDelta(t, 97.125+48*7/12.0, rake.Height, 6)
	// Straps hold it: from the one on the second stud beside the corner, 5-1/2 + 1-1/2 +
	// 3/4 in, to the middle of the two studs at 96 in.
	near(t, rake.V*rake.Height/(96-7.75), rake.Lifts, 1e-9, "gable end")
}

func TestDemoHouseCapacitiesByHand(t *testing.T) {
	// NDS 2018 12.3.1, mode IIIs with a steel side plate: Fem 5,550 (G 0.55), Fes
	// 61,850, Rd 2.2 under 0.17 in; times 1.6 (transcribed).
	mode := func(d, fyb, ls float64) float64 {
		re := 5550 / 61850.0
		k3 := -1 + math.Sqrt(2*(1+re)/re+2*fyb*(2+re)*d*d/(3*5550*ls*ls))
		return k3 * d * ls * 5550 / ((2 + re) * 2.2)
	}
	r := demoReport(t)
	term := func(id, check, word string) float64 {
		for _, x := range demand(t, r, id, check).Capacity.Terms {
			if strings.Contains(x.Text, word) {
				return x.Value
			}
		}
		t.Fatalf("no %q at %s", word, id)
		return 0
	}
	assert.InDelta(t, 5*1.6*mode(0.131, 100_000, handThin*0.0538), term("2S-112-RP", "rafter-uplift", "to rafter"), 1)
	assert.InDelta(t, 11*1.6*mode(0.148, 90_000, handThin*0.0673), term("2S-110-SS", "story-uplift", "each end"), 1)
	heavy := r.Placement.Piece("GS-103-GP-strap").Item
	end := heavy.Ends()[0]
	require.Equal(t, "9 ga", heavy.Gauge)
	require.Equal(t, plan.Stainless316, heavy.Coating)
	assert.InDelta(t, float64(end.Count)*1.6*mode(0.162, 90_000, handThin*0.1495), term("GS-103-GP", "pile-overturning", "each end"), 1)
	// AISI S100-16 D2 and D3 (transcribed): 9 gauge of stainless, Fy 30 ksi (from
	// memory), holes of 0.162 + 0.022 = 0.184 in across, as many as it has rows.
	gross, net := heavy.Width*handThin*0.1495*30_000/1.67, (heavy.Width-float64(end.Rows)*0.184)*handThin*0.1495*45_000/2
	assert.InDelta(t, math.Min(gross, net), term("GS-103-GP", "pile-overturning", "net rupture"), 1)
	// A 5 5/8 in plate under a girder of 4 1/2 in from the wall's outside: the rod in
	// the middle of the 2x6, 2-3/4 in in, leaves 1-3/4 and 2-3/4 of the 2-13/16 on its
	// sides; a hole of 15/16 in: (4.5 x 5.625 - 0.6903) in² at 565 psi across the grain of
	// southern pine, which is wet: CM 0.67.
	assert.InDelta(t, (4.5*5.625-math.Pi/4*0.9375*0.9375)*565*0.67, term("1S-1-WE", "overturning", "bears on 24.62 in²"), 5)
	// 1.6 is for wood: the strap of the story joint is held by its steel,
	// 1-3/8 in of 15 gauge with one hole of 0.17 in across: the net section.
	assert.InDelta(t, (1.375-0.17)*handThin*0.0673*45_000/2, demand(t, r, "2S-110-SS", "story-uplift").Capacity.Value, 1)
}
