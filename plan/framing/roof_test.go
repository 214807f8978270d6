package framing

import (
	"math"
	"slices"
	"strings"
	"testing"

	"github.com/stretchr/testify/require"

	"galewright/plan"
	"galewright/plan/geom"
)

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
			rafters := withRole(h, plan.Rafter, plan.Truss)
			require.NotEmpty(t, rafters)
			for _, m := range rafters {
				require.True(t, bears(h, m) || strings.Contains(m.ID, "valley frame"), "%s bears on nothing", m.ID)
			}
			require.NotEmpty(t, h.Roof)
		})
	}
}

func withRole(h *House, roles ...plan.Role) (out []*Member) {
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
		if j.Kind == plan.RafterPlate && j.First() == m {
			return true
		}
	}
	for _, v := range withRole(h, plan.ValleyRafter) {
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
	p := stories(1)
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
// rule (NAVEDTRA 14044, read). By hand: 14 ft from wall to ridge center, 1
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
// rafter's depth at most (IBC 2308.7.4, read, edition not noted: notches at the ends, 1/4 of
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
		j := joints(h, "1A", plan.RafterPlate)[2]
		require.Equal(t, m, j.First())
		require.InDelta(t, p0Top, j.At.Z, 1e-9)
	}
}

// p0Top is the top of the plates of the first level of stories: 120 in of
// floor and 109 1/8 in of wall.
const p0Top = 120 + 109.125

// A hip is shortened by half of the thickness, measured at 45 degrees, of the
// common rafters it bears on, a jack by half of the hip's: published rule
// (NAVEDTRA 14044, read). On plan that is t/2 times the root of 2.
func TestHipsAndJacksAreShortenedAt45Degrees(t *testing.T) {
	p := stories(1)
	ring(p, 0, rect(0, 0, 288, 192)...)
	r := roofOn(p, "main", "hip", "x", 8, rect(0, 0, 288, 192))
	r.Overhang = 0
	h := roofed(t, p)
	for _, m := range withRole(h, plan.HipRafter) {
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
// ends (same rule, read).
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

// The tops of hips and valleys lie in the roof with the rafters', so over the
// plate they keep as much wood, however deep they are.
func TestHipsKeepAsMuchWoodOverThePlateAsRafters(t *testing.T) {
	for _, pitch := range []float64{2, 4, 6, 8, 12, 18} {
		p := stories(1)
		ring(p, 0, rect(0, 0, 288, 192)...)
		roofOn(p, "main", "hip", "x", pitch, rect(0, 0, 288, 192))
		roofed(t, p) // refuses any error
	}
	p := stories(1)
	w := ring(p, 0, geom.Vec2{}, geom.Vec2{X: 216}, geom.Vec2{X: 288}, geom.Vec2{X: 288, Y: 192}, geom.Vec2{Y: 192})
	w[1].Height = p.Levels[0].PlateHeight + 3
	roofOn(p, "main", "hip", "x", 6, rect(0, 0, 288, 192))
	_, faults := Frame(p)
	var hips []string
	for _, d := range faults {
		if string(d.Code) == "notch-too-deep" && strings.Contains(d.Summary, "hip rafter") {
			hips = append(hips, d.Summary)
		}
	}
	require.Len(t, hips, 1)
	require.Contains(t, hips[0], "over wall 1B")
}

func TestRidgeAndPlateJoints(t *testing.T) {
	h := roofed(t, simple(7, 1.75, 12, 240))
	// 240 in at 16 in: 15 spaces, 16 pairs; both ends flush, so none is lost
	require.Len(t, joints(h, "main", plan.RafterRidge), 16)
	require.Len(t, joints(h, "1A", plan.RafterPlate), 16)
	require.Len(t, joints(h, "1C", plan.RafterPlate), 16)
	for _, j := range joints(h, "main", plan.RafterRidge) {
		require.Len(t, j.Members, 3)
		require.Equal(t, plan.Ridge, j.Members[2].Role)
	}
	sum := 0.0
	for _, j := range joints(h, "1A", plan.RafterPlate) {
		sum += j.Tributary
	}
	require.InDelta(t, 240, sum, 16, "the rafters share the wall")
}

func TestHipsMeetTheRidgeInJoints(t *testing.T) {
	p := stories(1)
	ring(p, 0, rect(0, 0, 288, 192)...)
	roofOn(p, "main", "hip", "x", 8, rect(0, 0, 288, 192))
	h := roofed(t, p)
	hips := 0
	for _, j := range joints(h, "main", plan.RafterRidge) {
		if j.First().Role == plan.HipRafter {
			hips++
		}
	}
	require.Equal(t, 4, hips)
	corners := 0
	for _, j := range h.Joints {
		if j.Kind == plan.RafterPlate && j.First().Role == plan.HipRafter {
			corners++
		}
	}
	require.Equal(t, 4, corners)
}

func TestTrussesHaveRaftersJoints(t *testing.T) {
	p := stories(1)
	ring(p, 0, rect(0, 0, 288, 192)...)
	r := roofOn(p, "main", "gable", "x", 6, rect(0, 0, 288, 192))
	r.Trusses, r.GableEnd = true, [2]plan.GableEnd{"gable truss", "gable truss"}
	h := roofed(t, p)
	require.Len(t, withRole(h, plan.Truss), 288/16+1)
	require.Len(t, joints(h, "1A", plan.RafterPlate), 288/16+1)
	require.Empty(t, joints(h, "main", plan.RafterRidge))
}

func TestRoofFaultsAreToldWithTheirPlace(t *testing.T) {
	for _, c := range []struct {
		name, code, where string
		bend              func(p *plan.Plan)
	}{
		{"no wall under an eave", "rafter-without-plate", "roof main, N side", func(p *plan.Plan) { p.Roofs[0].Area[1].Y = 300 }},
		{"trusses of a shed", "truss-roof-shape", "roof main", func(p *plan.Plan) {
			p.Roofs[0].Trusses, p.Roofs[0].Kind, p.Roofs[0].High = true, "shed", "N"
		}},
		{"a girder truss past the ridge's end", "hip-girder-place", "roof main", func(p *plan.Plan) {
			p.Roofs[0].Trusses, p.Roofs[0].GableEnd[0], p.Roofs[0].HipGirder = true, "hip", 120
		}},
		{"rake wanted, plate built", "gable-on-plate", "roof main", func(p *plan.Plan) { p.Walls[1].Top = "plate" }},
		{"too steep for its rafters", "short-seat", "roof main, rafter 1, S side, 3/4\" from the west end, and 30 more", func(p *plan.Plan) {
			p.Roofs[0].Pitch, p.Roofs[0].Rafters = 24, twoByFour
		}},
		{"rafters longer than the yard's", "rafter-too-long", "roof main, fly rafter, S side, 20'-11 1/4\" from the west end", func(p *plan.Plan) { p.Lumber.Stock = []float64{96, 120} }},
		{"a ridge beam on nothing", "ridge-beam-unsupported", "roof main", func(p *plan.Plan) { p.Roofs[0].RidgeBearing, p.Walls[1].Top = true, "plate" }},
		{"a shed whose high wall is low", "high-wall-height", "roof main", func(p *plan.Plan) {
			p.Roofs[0].Kind, p.Roofs[0].High, p.Roofs[0].Pitch = "shed", "N", 3
		}},
		{"a shed without a high wall", "shed-without-high-wall", "roof main", func(p *plan.Plan) {
			p.Roofs[0].Kind, p.Roofs[0].High, p.Roofs[0].Pitch, p.Roofs[0].Area[1].Y = "shed", "N", 3, 300
		}},
		{"walls of two heights on one side", "notch-too-deep", "roof main, rafter ", func(p *plan.Plan) {
			w := *p.Walls[0]
			w.Name, w.From.X = "1S2", 120
			p.Walls[0].To.X, w.Height = 120, 115
			w.Pos.Line = 30
			p.Walls = append(p.Walls, &w)
		}},
		{"no area", "bad-roof", "roof main", func(p *plan.Plan) { p.Roofs[0].Area[1] = p.Roofs[0].Area[0] }},
	} {
		t.Run(c.name, func(t *testing.T) {
			p := simple(7, 1.75, 12, 240)
			c.bend(p)
			_, faults := Frame(p)
			i := slices.IndexFunc(faults, func(d plan.Diagnostic) bool { return string(d.Code) == c.code })
			require.GreaterOrEqual(t, i, 0, "%v", faults)
			require.Contains(t, faults[i].Where, c.where)
			require.Equal(t, 50, faults[i].Pos.Line)
			require.NotEmpty(t, faults[i].Mend)
		})
	}
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
	p := stories(1)
	ring(p, 0, rect(0, 0, 300, 196)...)
	roofOn(p, "main", "hip", "x", 7, rect(0, 0, 300, 196))
	lengths := func(h *House) (out []float64) {
		for _, m := range withRole(h, plan.Rafter, plan.HipRafter, plan.Ridge) {
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
