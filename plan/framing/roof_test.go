package framing

import (
	"math"
	"slices"
	"testing"

	"github.com/stretchr/testify/require"
	"pgregory.net/rapid"

	"galewright/plan"
	"galewright/plan/geom"
)

var twoByEight = plan.Lumber{Ply: 1, Breadth: 1.5, Depth: 7.25, Text: "2x8"}

// roofOn adds a roof over level 0 of p with the corners given.
func roofOn(p *plan.Plan, name, kind, ridge string, pitch float64, area []geom.Vec2) *plan.Roof {
	r := &plan.Roof{Name: name, Over: p.Levels[0], Kind: kind, Area: [2]geom.Vec2{area[0], area[2]}, AreaGiven: true,
		Ridge: ridge, Pitch: pitch, Overhang: 18, Rake: 12, Rafters: twoByEight, Spacing: 16,
		RidgeMember: plan.Lumber{Ply: 1, Breadth: 1.75, Depth: 11.875, Text: "1.75x11.875"},
		GableEnd:    [2]string{"rake", "rake"}, CeilingTies: true, Pos: plan.Pos{File: "plan.toml", Line: 50 + len(p.Roofs)}}
	if kind == "hip" {
		r.GableEnd = [2]string{"hip", "hip"}
	}
	p.Roofs = append(p.Roofs, r)
	return r
}

var roofHouses = []struct {
	name string
	plan func() *plan.Plan
}{
	{"gable on rake walls", func() *plan.Plan {
		p := storeys(1)
		w := ring(p, 0, rect(0, 0, 288, 192)...)
		w[1].Top, w[3].Top = "rake", "rake"
		roofOn(p, "main", "gable", "x", 7, rect(0, 0, 288, 192))
		return p
	}},
	{"gable with gable trusses, unequal pitches", func() *plan.Plan {
		p := storeys(1)
		ring(p, 0, rect(0, 0, 192, 288)...)
		r := roofOn(p, "main", "gable", "y", 7, rect(0, 0, 192, 288))
		r.GableEnd = [2]string{"gable truss", "gable truss"}
		r.PitchOther = 10
		return p
	}},
	{"trusses", func() *plan.Plan {
		p := storeys(1)
		ring(p, 0, rect(0, 0, 288, 192)...)
		r := roofOn(p, "main", "gable", "x", 6, rect(0, 0, 288, 192))
		r.GableEnd = [2]string{"gable truss", "gable truss"}
		r.Trusses = true
		return p
	}},
	{"hip", func() *plan.Plan {
		p := storeys(1)
		ring(p, 0, rect(0, 0, 288, 192)...)
		roofOn(p, "main", "hip", "x", 8, rect(0, 0, 288, 192))
		return p
	}},
	{"pyramid", func() *plan.Plan {
		p := storeys(1)
		ring(p, 0, rect(0, 0, 192, 192)...)
		roofOn(p, "main", "hip", "x", 8, rect(0, 0, 192, 192))
		return p
	}},
	{"shed", func() *plan.Plan {
		p := storeys(1)
		w := ring(p, 0, rect(0, 0, 192, 120)...)
		w[1].Top, w[2].Top, w[3].Top = "rake", "rake", "rake"
		r := roofOn(p, "main", "shed", "x", 3, rect(0, 0, 192, 120))
		r.High = "N"
		return p
	}},
	{"L with gables and a carried valley", func() *plan.Plan {
		p := storeys(1)
		w := ring(p, 0, geom.Vec2{}, geom.Vec2{X: 120}, geom.Vec2{X: 120, Y: -120}, geom.Vec2{X: 264, Y: -120}, geom.Vec2{X: 264, Y: 0}, geom.Vec2{X: 360, Y: 0}, geom.Vec2{X: 360, Y: 192}, geom.Vec2{X: 0, Y: 192})
		w[2].Top, w[5].Top, w[7].Top = "rake", "rake", "rake"
		roofOn(p, "main", "gable", "x", 6, rect(0, 0, 360, 192))
		roofOn(p, "wing", "gable", "y", 6, rect(120, -120, 264, 0))
		return p
	}},
	{"L with hips, broken hip", func() *plan.Plan {
		p := storeys(1)
		ring(p, 0, geom.Vec2{}, geom.Vec2{X: 144}, geom.Vec2{X: 144, Y: -120}, geom.Vec2{X: 288, Y: -120}, geom.Vec2{X: 288, Y: 192}, geom.Vec2{X: 0, Y: 192})
		roofOn(p, "main", "hip", "x", 6, rect(0, 0, 288, 192))
		roofOn(p, "wing", "hip", "y", 6, rect(144, -120, 288, 0))
		return p
	}},
	{"T with equal ridges", func() *plan.Plan {
		p := storeys(1)
		w := ring(p, 0, geom.Vec2{}, geom.Vec2{X: 120}, geom.Vec2{X: 120, Y: -120}, geom.Vec2{X: 312, Y: -120}, geom.Vec2{X: 312, Y: 0}, geom.Vec2{X: 432, Y: 0}, geom.Vec2{X: 432, Y: 192}, geom.Vec2{X: 0, Y: 192})
		w[2].Top, w[5].Top, w[7].Top = "rake", "rake", "rake"
		roofOn(p, "main", "gable", "x", 6, rect(0, 0, 432, 192))
		roofOn(p, "wing", "gable", "y", 6, rect(120, -120, 312, 0))
		return p
	}},
	{"cross of two gables", func() *plan.Plan {
		p := storeys(1)
		w := ring(p, 0, geom.Vec2{}, geom.Vec2{X: 120}, geom.Vec2{X: 120, Y: -120}, geom.Vec2{X: 264, Y: -120}, geom.Vec2{X: 264, Y: 0}, geom.Vec2{X: 384, Y: 0}, geom.Vec2{X: 384, Y: 144}, geom.Vec2{X: 264, Y: 144}, geom.Vec2{X: 264, Y: 264}, geom.Vec2{X: 120, Y: 264}, geom.Vec2{X: 120, Y: 144}, geom.Vec2{X: 0, Y: 144})
		w[2].Top, w[5].Top, w[8].Top, w[11].Top = "rake", "rake", "rake", "rake"
		roofOn(p, "main", "gable", "x", 6, rect(0, 0, 384, 144))
		roofOn(p, "cross", "gable", "y", 6, rect(120, -120, 264, 264))
		return p
	}},
	{"U with two lower wings and gable trusses", func() *plan.Plan {
		p := storeys(1)
		ring(p, 0, geom.Vec2{}, geom.Vec2{X: 0, Y: -120}, geom.Vec2{X: 120, Y: -120}, geom.Vec2{X: 120}, geom.Vec2{X: 312}, geom.Vec2{X: 312, Y: -96}, geom.Vec2{X: 432, Y: -96}, geom.Vec2{X: 432, Y: 192}, geom.Vec2{X: 0, Y: 192})
		roofOn(p, "main", "gable", "x", 8, rect(0, 0, 432, 192))
		roofOn(p, "west", "gable", "y", 8, rect(0, -120, 120, 0))
		roofOn(p, "east", "gable", "y", 5, rect(312, -96, 432, 0))
		for _, r := range p.Roofs {
			r.GableEnd = [2]string{"gable truss", "gable truss"}
		}
		return p
	}},
	{"hip main, gable wing to the north, steeper", func() *plan.Plan {
		p := storeys(1)
		w := ring(p, 0, geom.Vec2{}, geom.Vec2{X: 360}, geom.Vec2{X: 360, Y: 192}, geom.Vec2{X: 240, Y: 192}, geom.Vec2{X: 240, Y: 300}, geom.Vec2{X: 120, Y: 300}, geom.Vec2{X: 120, Y: 192}, geom.Vec2{Y: 192})
		w[4].Top = "rake"
		roofOn(p, "main", "hip", "x", 6, rect(0, 0, 360, 192))
		roofOn(p, "wing", "gable", "y", 8, rect(120, 192, 240, 300))
		return p
	}},
	{"shed porch against a wall, on a beam", func() *plan.Plan {
		p := storeys(1)
		w := ring(p, 0, rect(0, 0, 288, 192)...)
		w[1].Top, w[3].Top = "rake", "rake"
		roofOn(p, "main", "gable", "x", 7, rect(0, 0, 288, 192)).Overhang = 6
		p.Porches = append(p.Porches, &plan.Porch{Name: "porch", From: geom.Vec2{X: 24, Y: -96}, To: geom.Vec2{X: 264, Y: -96},
			Beam: plan.Lumber{Ply: 2, Breadth: 1.5, Depth: 9.25, Text: "2-2x10"}, Post: plan.Lumber{Ply: 1, Breadth: 5.5, Depth: 5.5, Text: "6x6"},
			Posts: []float64{2.75, 120, 237.25}, Base: 60, Top: 196, Pos: plan.Pos{File: "plan.toml", Line: 40}})
		r := roofOn(p, "lean", "shed", "x", 2, rect(24, -96, 264, 0))
		r.High, r.Overhang = "N", 12
		return p
	}},
	{"low wing against a wall of two storeys", func() *plan.Plan {
		p := storeys(2)
		w := ring(p, 0, geom.Vec2{}, geom.Vec2{X: 288}, geom.Vec2{X: 288, Y: 24}, geom.Vec2{X: 408, Y: 24}, geom.Vec2{X: 408, Y: 168}, geom.Vec2{X: 288, Y: 168}, geom.Vec2{X: 288, Y: 192}, geom.Vec2{Y: 192})
		w[3].Top = "rake"
		w2 := ring(p, 1, rect(0, 0, 288, 192)...)
		w2[1].Top, w2[3].Top = "rake", "rake"
		roofOn(p, "main", "gable", "x", 7, rect(0, 0, 288, 192)).Over = p.Levels[1]
		roofOn(p, "wing", "gable", "x", 7, rect(288, 24, 408, 168))
		return p
	}},
	{"lean-to over a setback", func() *plan.Plan {
		p := storeys(2)
		ring(p, 0, rect(0, 0, 288, 192)...)
		w := ring(p, 1, rect(0, 60, 288, 192)...)
		w[1].Top, w[3].Top = "rake", "rake"
		roofOn(p, "main", "gable", "x", 5, rect(0, 60, 288, 192)).Over = p.Levels[1]
		r := roofOn(p, "lean", "shed", "x", 4, rect(0, 0, 288, 60))
		r.High = "N"
		return p
	}},
	{"ridge beam, no ties, steep", func() *plan.Plan {
		p := simple(12, 3.5, 12, 240)
		p.Roofs[0].RidgeBearing, p.Roofs[0].CeilingTies = true, false
		return p
	}},
	{"shed on plates, high wall to the west, gable ends trussed", func() *plan.Plan {
		p := storeys(1)
		w := ring(p, 0, rect(0, 0, 120, 192)...)
		w[3].Top = "rake"
		r := roofOn(p, "main", "shed", "y", 3, rect(0, 0, 120, 192))
		r.High = "W"
		return p
	}},
	{"walls of two depths", func() *plan.Plan {
		p := simple(6, 1.75, 12, 240)
		p.Walls[2].Studs = twoByFour
		return p
	}},
	{"walls of two heights", func() *plan.Plan {
		p := simple(6, 1.75, 12, 240)
		p.Walls[2].Height = 121.125
		return p
	}},
	{"L flush with a gable", func() *plan.Plan {
		p := storeys(1)
		w := ring(p, 0, geom.Vec2{}, geom.Vec2{X: 144}, geom.Vec2{X: 144, Y: -120}, geom.Vec2{X: 288, Y: -120}, geom.Vec2{X: 288, Y: 0}, geom.Vec2{X: 288, Y: 192}, geom.Vec2{X: 0, Y: 192})
		w[2].Top, w[4].Top, w[6].Top = "rake", "rake", "rake"
		roofOn(p, "main", "gable", "x", 6, rect(0, 0, 288, 192))
		roofOn(p, "wing", "gable", "y", 6, rect(144, -120, 288, 0))
		return p
	}},
}

// roofed frames p and wants no error (warnings about floors may come) and a
// sound house.
func roofed(t testing.TB, p *plan.Plan) *House {
	t.Helper()
	h, faults := Frame(p)
	for _, d := range faults {
		require.NotEqual(t, plan.Error, d.Severity, d.String())
	}
	sound(t, h)
	return h
}

func TestRoofsStandWithoutOverlap(t *testing.T) {
	for _, c := range roofHouses {
		t.Run(c.name, func(t *testing.T) {
			h := roofed(t, c.plan())
			rafters := withRole(h, Rafter, Truss)
			require.NotEmpty(t, rafters)
			for _, m := range rafters {
				require.True(t, bears(h, m), "%s bears on nothing", m.ID)
			}
			require.NotEmpty(t, h.Roof)
		})
	}
}

func withRole(h *House, roles ...Role) (out []*Member) {
	for _, m := range h.Members {
		if m.Roof != nil && slices.Contains(roles, m.Role) {
			out = append(out, m)
		}
	}
	return out
}

// bears tells whether a rafter has a plate joint, or its low end lies at a
// valley, within the valley's thickness.
func bears(h *House, m *Member) bool {
	for _, j := range h.Joints {
		if j.Kind == RafterPlate && j.First() == m {
			return true
		}
	}
	for _, v := range withRole(h, Valley) {
		d := v.B.Sub(v.A).Flat().Unit()
		w := m.A.Sub(v.A).Flat()
		if math.Abs(w.Cross(d)) < 2 && w.Dot(d) > -2 && w.Dot(d) < v.B.Sub(v.A).Flat().Len()+2 {
			return true
		}
	}
	return false
}

// simple returns a gable over walls of 2x6, 2x8 rafters and a ridge of the
// given thickness.
func simple(pitch, ridge, overhang, span float64) *plan.Plan {
	p := storeys(1)
	w := ring(p, 0, rect(0, 0, 240, span)...)
	w[1].Top, w[3].Top = "rake", "rake"
	r := roofOn(p, "main", "gable", "x", pitch, rect(0, 0, 240, span))
	r.Overhang, r.Rake = overhang, overhang
	r.RidgeMember = plan.Lumber{Ply: 1, Breadth: ridge, Depth: 11.25, Text: "ridge"}
	return p
}

func byID(t testing.TB, h *House, id string) *Member {
	for _, m := range h.Members {
		if m.ID == id {
			return m
		}
	}
	require.Fail(t, "no member "+id)
	return nil
}

// A common rafter is shortened by half of the ridge's thickness: published
// rule (NAVEDTRA 14044, grade A). A published example (a textbook of
// carpentry, its result recomputed there): 14 ft from wall to ridge centre, 1
// ft of overhang, half the ridge 3/4 in: the run is 14'-11 1/4" = 179 1/4 in.
func TestCommonRafterIsShortenedByHalfTheRidge(t *testing.T) {
	h := roofed(t, simple(8, 1.5, 12, 336))
	m := byID(t, h, "main/S/rafter@32")
	require.InDelta(t, 179.25, m.B.Sub(m.A).Flat().Len(), 1e-6)
	require.InDelta(t, 8.0/12, (m.B.Z-m.A.Z)/m.B.Sub(m.A).Flat().Len(), 1e-9)
	// long point to long point: the top edge, and what the plumb cuts of a
	// 7 1/4 in deep stick reach past each other, 7.25 tan: own arithmetic
	require.InDelta(t, 179.25*math.Hypot(1, 8.0/12)+7.25*8/12, m.Length, 1e-6)
}

// The birdsmouth: its depth square to the rafter is a quarter of the
// rafter's depth at most (IBC 2308.7.4, grade A: notches at the ends, 1/4 of
// the depth), its seat the whole plate at most, the plate's top its underside.
func TestBirdsmouth(t *testing.T) {
	for _, pitch := range []float64{2, 4, 7, 12} {
		h := roofed(t, simple(pitch, 1.75, 18, 240))
		m := byID(t, h, "main/S/rafter@32")
		theta := math.Atan(pitch / 12)
		volume := 0.0
		for _, s := range m.Solid {
			volume += s.Volume()
		}
		run := m.B.Sub(m.A).Flat().Len()
		full := 1.5 * run * 7.25 / math.Cos(theta)
		notch := (full - volume) / 1.5 // a triangle: seat x seat tan / 2
		seat := math.Sqrt(2 * notch / math.Tan(theta))
		require.LessOrEqual(t, seat*math.Sin(theta), 7.25/4+1e-6, "depth of the notch")
		require.LessOrEqual(t, seat, 5.5+1e-6)
		require.InDelta(t, min(5.5, 7.25/4/math.Sin(theta)), seat, 1e-3)
		j := joints(h, "1A", RafterPlate)[2]
		require.Equal(t, m, j.First())
		require.InDelta(t, p0Top, j.At.Z, 1e-9)
	}
}

// p0Top is the top of the plates of the first level of storeys: 120 in of
// floor and 109 1/8 in of wall.
const p0Top = 120 + 109.125

// A hip is shortened by half of the thickness, measured at 45 degrees, of the
// common rafters it bears on, a jack by half of the hip's: published rule
// (NAVEDTRA 14044, grade A). On plan that is t/2 times the root of 2.
func TestHipsAndJacksAreShortenedAt45Degrees(t *testing.T) {
	p := storeys(1)
	ring(p, 0, rect(0, 0, 288, 192)...)
	r := roofOn(p, "main", "hip", "x", 8, rect(0, 0, 288, 192))
	r.Overhang = 0
	h := roofed(t, p)
	for _, m := range withRole(h, Hip) {
		run := 96 * math.Sqrt2
		require.InDelta(t, run-1.5/2*math.Sqrt2, m.B.Sub(m.A).Flat().Len(), 1e-6, m.ID)
	}
	jack := byID(t, h, "main/S/rafter@80")
	require.InDelta(t, 80-1.5/2*math.Sqrt2, jack.B.Sub(jack.A).Flat().Len(), 1e-6)
	next := byID(t, h, "main/S/rafter@64")
	length := func(m *Member) float64 { return m.B.Sub(m.A).Len() }
	// common difference for 8 in 12 at 16 in: 16 x 14.42 / 12, the unit length of
	// the rafter tables (computed, sqrt(144+64) = 14.422)
	require.InDelta(t, 16*14.42/12, length(jack)-length(next), 0.01)
}

// A cripple between hip and valley loses half a 45 degree thickness at both
// ends (same rule, grade A).
func TestCrippleJackBetweenHipAndValley(t *testing.T) {
	for _, c := range roofHouses {
		if c.name != "L with hips, broken hip" {
			continue
		}
		h := roofed(t, c.plan())
		m := byID(t, h, "main/S/rafter@208") // from y 64 in the valley to y 80 in the hip
		require.InDelta(t, 16-2*0.75*math.Sqrt2, m.B.Sub(m.A).Flat().Len(), 1e-6)
	}
}

func TestRidgeAndPlateJoints(t *testing.T) {
	h := roofed(t, simple(7, 1.75, 12, 240))
	// 240 in at 16 in: 15 spaces, 16 pairs; both ends flush, so none is lost
	require.Len(t, joints(h, "main", RafterRidge), 16)
	require.Len(t, joints(h, "1A", RafterPlate), 16)
	require.Len(t, joints(h, "1C", RafterPlate), 16)
	for _, j := range joints(h, "main", RafterRidge) {
		require.Len(t, j.Members, 3)
		require.Equal(t, Ridge, j.Members[2].Role)
	}
	sum := 0.0
	for _, j := range joints(h, "1A", RafterPlate) {
		sum += j.Tributary
	}
	require.InDelta(t, 240, sum, 16, "the rafters share the wall")
}

func TestHipsMeetTheRidgeInJoints(t *testing.T) {
	p := storeys(1)
	ring(p, 0, rect(0, 0, 288, 192)...)
	roofOn(p, "main", "hip", "x", 8, rect(0, 0, 288, 192))
	h := roofed(t, p)
	hips := 0
	for _, j := range joints(h, "main", RafterRidge) {
		if j.First().Role == Hip {
			hips++
		}
	}
	require.Equal(t, 4, hips)
	corners := 0
	for _, j := range h.Joints {
		if j.Kind == RafterPlate && j.First().Role == Hip {
			corners++
		}
	}
	require.Equal(t, 4, corners)
}

func TestTrussesHaveRaftersJoints(t *testing.T) {
	p := storeys(1)
	ring(p, 0, rect(0, 0, 288, 192)...)
	r := roofOn(p, "main", "gable", "x", 6, rect(0, 0, 288, 192))
	r.Trusses, r.GableEnd = true, [2]string{"gable truss", "gable truss"}
	h := roofed(t, p)
	require.Len(t, withRole(h, Truss), 288/16+1)
	require.Len(t, joints(h, "1A", RafterPlate), 288/16+1)
	require.Empty(t, joints(h, "main", RafterRidge))
}

func TestRoofFaultsAreToldWithTheirPlace(t *testing.T) {
	for _, c := range []struct {
		name, code, where string
		bend              func(p *plan.Plan)
	}{
		{"no wall under an eave", "rafter-without-plate", "roof main, N side", func(p *plan.Plan) { p.Roofs[0].Area[1].Y = 300 }},
		{"trusses over a hip", "truss-roof-shape", "roof main", func(p *plan.Plan) { p.Roofs[0].Trusses, p.Roofs[0].GableEnd[0] = true, "hip" }},
		{"rake wanted, plate built", "gable-on-plate", "roof main", func(p *plan.Plan) { p.Walls[1].Top = "plate" }},
		{"too steep for its rafters", "short-seat", "roof main", func(p *plan.Plan) {
			p.Roofs[0].Pitch, p.Roofs[0].Rafters = 24, twoByFour
		}},
		{"rafters longer than the yard's", "rafter-too-long", "roof main", func(p *plan.Plan) { p.Lumber.Stock = []float64{96, 120} }},
		{"a ridge beam on nothing", "ridge-beam-unsupported", "roof main", func(p *plan.Plan) { p.Roofs[0].RidgeBearing, p.Walls[1].Top = true, "plate" }},
		{"no area", "bad-roof", "roof main", func(p *plan.Plan) { p.Roofs[0].Area[1] = p.Roofs[0].Area[0] }},
	} {
		t.Run(c.name, func(t *testing.T) {
			p := simple(7, 1.75, 12, 240)
			c.bend(p)
			_, faults := Frame(p)
			i := slices.IndexFunc(faults, func(d plan.Diagnostic) bool { return d.Code == c.code })
			require.GreaterOrEqual(t, i, 0, "%v", faults)
			require.Contains(t, faults[i].Where, c.where)
			require.Equal(t, 50, faults[i].Pos.Line)
			require.NotEmpty(t, faults[i].Mend)
		})
	}
}

// widest returns how wide a wing of a pitch may be, in whole feet, so that
// its ridge dies in the main roof, d deep.
func widest(main *plan.Roof, pitch, d float64) float64 {
	a, b := main.Pitch, main.PitchOther
	if b == 0 {
		b = a
	}
	if main.PitchOther == 0 {
		return 12 * math.Floor(d/12) // equal ridges
	}
	return 12*math.Floor((2*d*a*b/(a+b)/pitch)/12) - 12
}

// roofPlan draws a house under a gable or hip roof, maybe with a wing to the
// south that may stand flush with an end, and one to the north.
func roofPlan(t *rapid.T) *plan.Plan {
	foot := func(lo, hi int, name string) float64 { return 12 * float64(rapid.IntRange(lo, hi).Draw(t, name)) }
	kinds := rapid.SampledFrom([]string{"gable", "hip"})
	pitch := func(name string) float64 { return float64(rapid.IntRange(3, 12).Draw(t, name)) }
	p := storeys(1)
	p.Lumber.Stud = 360 // rake walls may be high
	w, d := foot(24, 40, "width"), foot(14, 26, "depth")
	rakes := rapid.Bool().Draw(t, "rake walls")
	main := roofOn(p, "main", kinds.Draw(t, "kind"), "x", pitch("pitch"), rect(0, 0, w, d))
	main.Overhang = 6 * float64(rapid.IntRange(0, 4).Draw(t, "overhang"))
	main.Spacing = rapid.SampledFrom([]float64{16, 19.2, 24}).Draw(t, "spacing")
	if main.Kind == "gable" && rapid.Bool().Draw(t, "unequal") {
		main.PitchOther = pitch("other pitch")
	}
	south, north := []geom.Vec2{{}, {X: w}}, []geom.Vec2{{X: w, Y: d}, {Y: d}}
	if rapid.Bool().Draw(t, "south wing") {
		ww, l := min(foot(8, 14, "south width"), widest(main, main.Pitch, d)), foot(6, 14, "south length")
		x := rapid.SampledFrom([]float64{36, 60, w - ww, w - ww - 36}).Draw(t, "south place")
		r := roofOn(p, "south", kinds.Draw(t, "south kind"), "y", main.Pitch, rect(x, -l, x+ww, 0))
		r.Overhang = main.Overhang
		south = []geom.Vec2{{}, {X: x}, {X: x, Y: -l}, {X: x + ww, Y: -l}, {X: x + ww}}
		if x+ww < w {
			south = append(south, geom.Vec2{X: w})
		}
	}
	if rapid.Bool().Draw(t, "north wing") {
		slope := max(main.PitchOther, main.Pitch)
		if main.PitchOther > 0 {
			slope = main.PitchOther
		}
		ww, l := min(foot(8, 12, "north width"), widest(main, slope, d)), foot(6, 10, "north length")
		r := roofOn(p, "north", "gable", "y", slope, rect(48, d, 48+ww, d+l))
		r.Overhang = main.Overhang
		north = []geom.Vec2{{X: w, Y: d}, {X: 48 + ww, Y: d}, {X: 48 + ww, Y: d + l}, {X: 48, Y: d + l}, {X: 48, Y: d}, {Y: d}}
	}
	walls := ring(p, 0, append(south, north...)...)
	for _, r := range p.Roofs {
		r.Rake = r.Overhang
		if !rakes && r.Kind == "gable" {
			r.GableEnd = [2]string{"gable truss", "gable truss"}
		}
		for _, x := range walls {
			along := x.From.Y == x.To.Y
			end := r.Ridge == "y" && along && (x.From.Y == r.Area[0].Y || x.From.Y == r.Area[1].Y) && x.From.X >= r.Area[0].X && x.From.X <= r.Area[1].X && x.To.X >= r.Area[0].X && x.To.X <= r.Area[1].X ||
				r.Ridge == "x" && !along && (x.From.X == 0 || x.From.X == w)
			if end && rakes && r.Kind == "gable" && (r.Ridge == "y" || x.From.Y >= 0 && x.To.Y >= 0) {
				x.Top = "rake"
			}
		}
	}
	return p
}

func TestAnyRoofIsSound(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		h, faults := Frame(roofPlan(t))
		for _, d := range faults {
			require.NotEqual(t, plan.Error, d.Severity, d.String())
		}
		for _, pair := range h.Overlaps(0.01) {
			require.Fail(t, pair[0].ID+" reaches into "+pair[1].ID)
		}
		for _, m := range withRole(h, Rafter) {
			require.True(t, bears(h, m), "%s bears on nothing", m.ID)
		}
	})
}

// mirror returns the plan mirrored at the y axis: walls turned round, so that
// they still run counterclockwise.
func mirror(p *plan.Plan) *plan.Plan {
	q := *p
	q.Walls, q.Roofs = nil, nil
	for _, w := range p.Walls {
		c := *w
		c.From, c.To = geom.Vec2{X: -w.To.X, Y: w.To.Y}, geom.Vec2{X: -w.From.X, Y: w.From.Y}
		q.Walls = append(q.Walls, &c)
	}
	for _, r := range p.Roofs {
		c := *r
		c.Area = [2]geom.Vec2{{X: -r.Area[1].X, Y: r.Area[0].Y}, {X: -r.Area[0].X, Y: r.Area[1].Y}}
		q.Roofs = append(q.Roofs, &c)
	}
	return &q
}

// A mirrored hip house has the same rafters by length, hips and ridge alike.
func TestMirroredPlanMirrorsTheRafters(t *testing.T) {
	p := storeys(1)
	ring(p, 0, rect(0, 0, 300, 196)...)
	roofOn(p, "main", "hip", "x", 7, rect(0, 0, 300, 196))
	lengths := func(h *House) (out []float64) {
		for _, m := range withRole(h, Rafter, Hip, Ridge) {
			out = append(out, math.Round(m.Length*1000)/1000)
		}
		slices.Sort(out)
		return out
	}
	require.Equal(t, lengths(roofed(t, p)), lengths(roofed(t, mirror(p))))
}

// Moving the house moves every roof joint by the same vector and nothing else.
func TestMovedPlanMovesTheRoof(t *testing.T) {
	move := geom.Vec2{X: 1234.5, Y: -777}
	for _, c := range roofHouses {
		p, q := c.plan(), c.plan()
		for _, w := range q.Walls {
			w.From, w.To = w.From.Add(move), w.To.Add(move)
		}
		for _, r := range q.Roofs {
			r.Area[0], r.Area[1] = r.Area[0].Add(move), r.Area[1].Add(move)
		}
		for _, x := range q.Porches {
			x.From, x.To = x.From.Add(move), x.To.Add(move)
		}
		a, b := roofed(t, p), roofed(t, q)
		require.Equal(t, len(a.Joints), len(b.Joints), c.name)
		for i, j := range a.Joints {
			if j.Roof == nil {
				continue
			}
			require.Equal(t, j.ID, b.Joints[i].ID, c.name)
			require.Less(t, b.Joints[i].At.Sub(j.At).Sub(move.Up(0)).Len(), 1e-6, j.ID)
		}
	}
}
