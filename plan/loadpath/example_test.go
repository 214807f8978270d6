package loadpath_test

import (
	"bytes"
	"fmt"
	"math"
	"strings"
	"testing"

	"galewright/plan/loadpath"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"
)

// cabin is small enough to work by hand: 24 x 16 ft, walls of 8 ft, a gable
// roof of 4:12 without overhang, one 8 ft shear wall segment in each wall.
const cabin = `
level = [{ name = "floor", plate_height = "8'", studs = "2x6 @ 16in" }]
wall = [
  { name = "S", from = ["0'", "0'"], to = ["24'", "0'"], shear = [{ name = "A", from = "0'", to = "8'", panel = "7/16", nail = "8d common", edge = "6in" }] },
  { name = "E", to = ["24'", "16'"], shear = [{ name = "A", from = "0'", to = "8'", panel = "7/16", nail = "8d common", edge = "6in" }] },
  { name = "N", to = ["0'", "16'"], shear = [{ name = "A", from = "0'", to = "8'", panel = "7/16", nail = "8d common", edge = "6in" }] },
  { name = "W", to = ["0'", "0'"], shear = [{ name = "A", from = "0'", to = "8'", panel = "7/16", nail = "8d common", edge = "6in" }] },
]
roof = [{ kind = "gable", pitch = "4:12", overhang = "0'", rake = "0'", rafters = "2x8 @ 16in" }]
item = [{ mark = "clip", kind = "clip", thickness = "17 ga", nails = { type = "8d x 1 1/2", to_rafter = 4, to_plate = 7 } }]
rule = [{ at = "rafter-plate", use = "clip" }]
[project]
name = "Hand-worked cabin"
date = 2026-01-05
[site]
wind_speed = "120 mph"
exposure = "C"
edition = "7-16"
procedure = "envelope"
[loads]
dead = [
  { part = "roof", name = "all of it", weight = "10 psf" },
  { part = "ceiling", name = "none", weight = "0 psf" },
  { part = "wall", name = "all of it", weight = "5 psf" },
]
`

func cabinReport() *loadpath.Report { return cabinWith("", "") }

// cabinWith is the cabin with one of its keys changed.
func cabinWith(old, new string) *loadpath.Report {
	report, _ := loadpath.WorkOut("cabin.toml", strings.Replace(cabin, old, new, 1)).Loads()
	return report
}

// The whole arithmetic of one rafter, its stud and one shear wall, as it is
// done with a pencil; the numbers beside it are the program's.
func Example() {
	r := cabinReport()
	link := func(id, check string) *loadpath.Link {
		for _, l := range r.Joint(id) {
			if l.Check.ID == check {
				return l
			}
		}
		return nil
	}
	fmt.Println("Kh = 2.01 (15/900)^(2/9.5) = 0.849, h under 15 ft")
	fmt.Printf("  %.3f\n", r.Basis.Envelope().Kz)
	fmt.Println("qh = 0.00256 x 0.849 x 0.85 x 120² = 26.6 psf")
	fmt.Printf("  %.1f\n", r.Basis.Envelope().Q)
	fmt.Println("a = 0.1 x 16 = 1.6, but 3 ft at least; end zone 6 ft; rafters at 1'-4\" to 4'-0\" lie in it")
	fmt.Printf("  %.0f\n", r.Basis.EdgeStrip())

	fmt.Println("rafter at 2'-8\", 16 in wide, 8 ft from face to ridge: 10.67 ft² a side")
	fmt.Println("near side, zone 2E: (1.07 + 0.18) x 26.6 x 10.67 = 355 lb")
	fmt.Println("far side, zone 3E at 18.4°: 0.53 + 0.16 x 13.4/15 = 0.673; (0.673 + 0.18) x 26.6 x 10.67 = 242 lb")
	fmt.Println("bearings 186.5 in apart, load 45.25 in from its own: far share 45.25 x (1 + 1/9)/186.5 = 0.27")
	fmt.Println("near plate: 355 x 0.73 + 242 x 0.27 = 324 lb; weight 10 x 1.054 x 10.67 = 112 lb")
	fmt.Println("0.6 x 324 - 0.6 x 112 = 127 lb")
	l := link("S-32-RP", "rafter-uplift")
	fmt.Printf("  %.0f, %.0f, %.0f\n", l.Force.W, l.Force.D, l.Demand)

	fmt.Println("clip, 4 nails 0.131 through 17 ga into southern pine: 4 x 102.9 x 1.6 = 659 lb; 127/659 = 0.19")
	fmt.Printf("  %.0f, %.2f\n", l.Capacity.Value, l.Ratio)

	fmt.Println("stud under it, 8 ft of wall 16 in wide: 5 x 10.67 = 53 lb; 127 - 0.6 x 53 = 95 lb")
	s := link("S-32-SB", "base-uplift")
	fmt.Printf("  %.0f; %s\n", s.Demand, s.Gap)

	fmt.Println("wind on the long side, 1 and 4: 0.516 + 0.415 = 0.932; in the end zone 0.780 + 0.618 = 1.398")
	fmt.Println("roof, 2 and 3: -0.69 + 0.469 is under 0, so 0; walls, upper 4 ft: 26.6 x 4 x (0.932 x 18 + 1.398 x 6) = 2,677 lb")
	for _, x := range r.Stories {
		if x.Axis == "y" {
			fmt.Printf("  %.0f\n", x.Total)
		}
	}
	fmt.Println("line W has half the width with the end zone: 26.6 x 4 x (0.932 x 6 + 1.398 x 6) = 1,487 lb")
	fmt.Println("0.6 x 1,487 / 8 = 112 plf; posts at 6 1/4 and 95 1/4 in, nothing placed: end tension 1,487 x 96 / 89 = 1,604 lb at strength level")
	for _, x := range r.Lines {
		if x.Name == "W" {
			fmt.Printf("  %.0f, %.0f, %.0f\n", x.Force, x.Segments[0].Demand, x.Segments[0].Lifts)
		}
	}
	// Output:
	// Kh = 2.01 (15/900)^(2/9.5) = 0.849, h under 15 ft
	//   0.849
	// qh = 0.00256 x 0.849 x 0.85 x 120² = 26.6 psf
	//   26.6
	// a = 0.1 x 16 = 1.6, but 3 ft at least; end zone 6 ft; rafters at 1'-4" to 4'-0" lie in it
	//   3
	// rafter at 2'-8", 16 in wide, 8 ft from face to ridge: 10.67 ft² a side
	// near side, zone 2E: (1.07 + 0.18) x 26.6 x 10.67 = 355 lb
	// far side, zone 3E at 18.4°: 0.53 + 0.16 x 13.4/15 = 0.673; (0.673 + 0.18) x 26.6 x 10.67 = 242 lb
	// bearings 186.5 in apart, load 45.25 in from its own: far share 45.25 x (1 + 1/9)/186.5 = 0.27
	// near plate: 355 x 0.73 + 242 x 0.27 = 324 lb; weight 10 x 1.054 x 10.67 = 112 lb
	// 0.6 x 324 - 0.6 x 112 = 127 lb
	//   324, 112, 127
	// clip, 4 nails 0.131 through 17 ga into southern pine: 4 x 102.9 x 1.6 = 659 lb; 127/659 = 0.19
	//   659, 0.19
	// stud under it, 8 ft of wall 16 in wide: 5 x 10.67 = 53 lb; 127 - 0.6 x 53 = 95 lb
	//   95; no hardware at this joint
	// wind on the long side, 1 and 4: 0.516 + 0.415 = 0.932; in the end zone 0.780 + 0.618 = 1.398
	// roof, 2 and 3: -0.69 + 0.469 is under 0, so 0; walls, upper 4 ft: 26.6 x 4 x (0.932 x 18 + 1.398 x 6) = 2,677 lb
	//   2677
	// line W has half the width with the end zone: 26.6 x 4 x (0.932 x 6 + 1.398 x 6) = 1,487 lb
	// 0.6 x 1,487 / 8 = 112 plf; posts at 6 1/4 and 95 1/4 in, nothing placed: end tension 1,487 x 96 / 89 = 1,604 lb at strength level
	//   1487, 112, 1604
}

// TestCabinByHand does the same arithmetic with every digit.
func TestCabinByHand(t *testing.T) {
	r := cabinReport()
	q := 0.00256 * 2.01 * math.Pow(15.0/900, 2/9.5) * 0.85 * 120 * 120
	assert.InDelta(t, q, r.Basis.Envelope().Q, 1e-9)
	theta := math.Atan(4.0/12) * 180 / math.Pi
	f := (theta - 5) / 15
	area := 8 * 16.0 / 12
	near, far := (1.07+0.18)*q*area, (0.53+0.16*f+0.18)*q*area
	k := 45.25 * (1 + 1.0/9) / 186.5
	wind, dead := near*(1-k)+far*k, 10*math.Hypot(1, 4.0/12)*area
	l := r.Joint("S-32-RP")
	require.NotEmpty(t, l)
	assert.InDelta(t, wind, l[0].Force.W, 0.5)
	assert.InDelta(t, dead, l[0].Force.D, 0.5)
	assert.InDelta(t, 0.6*wind-0.6*dead, l[0].Demand, 0.5)
	assert.Equal(t, "wind from S, corner W, internal pressure, envelope", l[0].Case)
	z1, z4, e1, e4 := 0.40+0.13*f, 0.29+0.14*f, 0.61+0.19*f, 0.43+0.21*f
	for _, x := range r.Lines {
		if x.Name == "W" || x.Name == "E" {
			assert.InDelta(t, q*4*6*(z1+z4+e1+e4), x.Force, 1e-6)
		}
	}
}

// The cabin by the directional procedure. Its mean roof height is 9.4 ft or so,
// L 16 ft across the ridge and 24 ft along it; q at 15 ft and below, 26.6 psf.
func TestCabinByHandDirectional(t *testing.T) {
	r := cabinWith(`procedure = "envelope"`, `procedure = "directional"`)
	q := 0.00256 * 2.01 * math.Pow(15.0/900, 2/9.5) * 0.85 * 120 * 120
	h := r.Basis.Height
	require.Less(t, h, 12.0)
	// Wind along the ridge: h/L under 0.5, so -0.9 on both slopes to h; the rafter
	// at 2 ft 8 in lies there. Across it h/L is between 0.5 and 1 and both slopes
	// lift less: -0.7 or so and -0.57. Both bearings hold (0.765 + 0.18) x 26.6 x
	// 10.67 = 268 lb.
	require.Less(t, h/24, 0.5)
	area := 8 * 16.0 / 12
	wind, dead := (0.85*0.9+0.18)*q*area, 10*math.Hypot(1, 4.0/12)*area
	l := r.Joint("S-32-RP")
	require.NotEmpty(t, l)
	assert.InDelta(t, wind, l[0].Force.W, 0.5)
	assert.InDelta(t, 0.6*wind-0.6*dead, l[0].Demand, 0.5)
	assert.Contains(t, l[0].Case, "internal pressure, directional, first Cp")
	// Walls of the long side: 0.85 x (0.8 + 0.5) q on the upper 4 ft; the roof's
	// rise takes the windward slope's second value and 0.57 of the leeward one.
	theta := math.Atan(4.0/12) * 180 / math.Pi
	between := func(at15, at20 float64) float64 { return at15 + (at20-at15)*(theta-15)/5 }
	f := (h/16 - 0.5) / 0.5
	second := between(-0.18, 0)*(1-f) - 0.18*f
	leeward := between(-0.5, -0.6)*(1-f) - 0.6*f
	rise := 2 * (h - 8)
	for _, x := range r.Stories {
		if x.Axis == "y" {
			assert.InDelta(t, 24*0.85*1.3*q*4, x.Wall, 1)
			assert.InDelta(t, 24*0.85*(second-leeward)*q*rise, x.Roof, 3)
			assert.Contains(t, x.Case, "second Cp")
		}
		// Along the ridge the leeward wall, L/B 1.5, has -0.4. The gable over the plates
		// is the rise high in the middle and 8 x 4/12 ft less over the walls, where the
		// roof lies that much above the plates.
		if x.Axis == "x" {
			assert.InDelta(t, 16*0.85*1.2*q*(4+rise-8*4/12.0/2), x.Total, 3)
		}
	}
}

func TestCabinTakesTheLargerOfBothProcedures(t *testing.T) {
	both := cabinWith("procedure = \"envelope\"\n", "")
	envelope, direct := cabinReport(), cabinWith(`procedure = "envelope"`, `procedure = "directional"`)
	largest := func(r *loadpath.Report, id string) float64 { return r.Joint(id)[0].Demand }
	n := 0
	for _, l := range both.Links {
		if l.Check.ID == "rafter-uplift" {
			assert.InDelta(t, math.Max(largest(envelope, l.ID), largest(direct, l.ID)), l.Demand, 1e-9, l.ID)
			n++
		}
	}
	assert.Positive(t, n)
	for i, x := range both.Lines {
		assert.InDelta(t, math.Max(envelope.Lines[i].Force, direct.Lines[i].Force), x.Force, 1e-9)
	}
}

func TestUpliftByTheFootByHand(t *testing.T) {
	// The cabin of the example: 24 x 16 ft, 4:12, qh 26.6 psf, roof 10 psf. A
	// force at the middle of one slope goes to the far plate by 45.25 (1 + 1/9)
	// of 186.5 in.
	q := 0.00256 * 2.01 * math.Pow(15.0/900, 2/9.5) * 0.85 * 120 * 120
	far := 45.25 * (1 + 1.0/9) / 186.5
	net := func(windward, leeward, width float64) float64 { // lb ASD at the windward plate: psf ft of the width, 8 ft a side
		wind := 8 * q * (windward*(1-far) + leeward*far)
		return 0.6*wind - 0.6*10*math.Hypot(1, 4.0/12)*8*width
	}
	theta := math.Atan(4.0/12) * 180 / math.Pi
	zone3 := 0.53 + 0.16*(theta-5)/15
	for name, c := range map[string]struct {
		rake  string
		width float64 // ft
		lb    float64
	}{
		// 16 in o.c., all in the end zone, wind across the ridge.
		"interior rafter": {"0in", 16.0 / 12, net((1.07+0.18)*16/12, (zone3+0.18)*16/12, 16.0/12)},
		// Wind across the ridge, its corner at the rake: 0.7 acts below the rake too.
		// The end rafter stands in the wall, 3/4 in from its
		// face: it serves 12 in of rake, with 0.7 from below, and 8-3/8 in of
		// house, half way to the rafter at 16 in. Its wall is 8-3/8 in long, its
		// roof 20-3/8 in wide.
		"end rafter": {"12in", 20.375 / 12, net((1.07+0.7)*1+(1.07+0.18)*8.375/12, (zone3+0.7)*1+(zone3+0.18)*8.375/12, 20.375/12)},
	} {
		t.Run(name, func(t *testing.T) {
			r := cabinWith(`rake = "0'"`, fmt.Sprintf("rake = %q", c.rake))
			u := r.Uplift[0]
			assert.InDelta(t, c.lb, 0.6*u.Largest.W-0.6*u.Largest.D, 0.5)
			assert.InDelta(t, c.width*12, u.Width, 1e-6)
			assert.InDelta(t, u.Largest.W-0.9*u.Largest.D, u.Strength, 1e-6, "1.0 W - 0.9 D")
			assert.InDelta(t, c.lb/c.width, u.PerFoot, 0.5)
			assert.Equal(t, "S", u.Wall.Name)
			assert.Positive(t, u.Joints)
			var printed bytes.Buffer
			require.NoError(t, r.WriteWind(&printed, "text"))
			assert.Contains(t, printed.String(), fmt.Sprintf("net %.0f lb ASD (%.0f plf)", c.lb, c.lb/c.width))
		})
	}
}
