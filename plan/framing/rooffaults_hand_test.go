package framing

import (
	"strings"
	"testing"

	"github.com/stretchr/testify/assert"

	"galewright/plan"
	"galewright/plan/geom"
)

// gabled is a gable of 7 in 12 over 240 by 240 with a change.
func gabled(edit func(p *plan.Plan, r *plan.Roof)) *plan.Plan {
	p := simple(7, 1.75, 12, 240)
	edit(p, p.Roofs[0])
	return p
}

var roofFaultTexts = []struct {
	name string
	plan *plan.Plan
	want string
}{
	// Rafters at 0.75, 16, 32 ... 224 and 239.25.
	{"no wall under the north eave", gabled(func(p *plan.Plan, r *plan.Roof) { r.Area[1].Y = 300; p.Walls = p.Walls[:1]; r.CeilingTies = false }), `
plan.toml:10:0: error: wall 1A ends where no exterior wall of level first starts (wall 1A); close the outline; the floor needs it [walls-open]
plan.toml:50:0: error: 16 rafters of roof main have no plate under them (roof main, N side, from 3/4" off its west end); put a wall of level first or a porch beam under that side, or give the roof the area of its walls [rafter-without-plate]`},
	// The wall begins at 60: those at 0.75, 16, 32 and 48 are bare. sqrt(240² + 60²) = 247.386.
	{"one eave wall short", gabled(func(p *plan.Plan, r *plan.Roof) { p.Walls[0].From.X = 60; p.Walls = p.Walls[:3]; r.CeilingTies = false }), `
plan.toml:12:0: error: wall 1C ends 20'-7 3/8" from the start of wall 1A, and no exterior wall of level first starts there (wall 1C); set one of the two points right, so that the outline closes [walls-open]
plan.toml:50:0: error: 4 rafters of roof main have no plate under them (roof main, S side, from 3/4" off its west end); put a wall of level first or a porch beam under that side, or give the roof the area of its walls [rafter-without-plate]`},
	{"trusses of a shed", gabled(func(p *plan.Plan, r *plan.Roof) { r.Trusses, r.Kind, r.High, r.Pitch = true, "shed", "N", 2 }), `
plan.toml:50:0: error: roof main has trusses and is a shed, or meets a roof of rafters or one over the same walls: such roofs in trusses need their maker's layout (roof main); take rafters for all roofs that meet here, or gables and hips over areas side by side [truss-roof-shape]`},
	{"rake wanted", gabled(func(p *plan.Plan, r *plan.Roof) { p.Walls[1].Top = "plate" }), `
plan.toml:50:0: warning: roof main asks for a rake wall at its E end, but the wall there stops at the plate: a gable truss stands on it (roof main); give the wall top = "rake", or the roof gable_ends = "gable truss" [gable-on-plate]`},
	// 2 in 1: the seat is 3.5/(4 x 0.89443) = 0.978. A stud at 80 has its high edge at 80.75: the
	// roof over the wall's face is at 229.125 + 3.5 sqrt 5 - 2 x 0.978 = 234.995, there 161.5 over
	// that, less the rafter's plumb 7.826 and two plates' 3 sqrt 5: 381.960, less 121.5 is 260.46.
	// One rafter of the 32 lies over a rake wall at a corner and has no seat.
	{"short seat", gabled(func(p *plan.Plan, r *plan.Roof) {
		r.Pitch, r.Rafters, r.Rake = 24, twoByFour, 0
		p.Lumber.Stock = []float64{480}
	}), `
plan.toml:11:0: error: the studs of wall 1B are 21'-8 7/16" long and the longest stock is 20'-0" (wall 1B, stud at 6'-8"); name longer stud stock under [lumber], or stop the wall at a floor [stud-too-long]
plan.toml:13:0: error: the studs of wall 1D are 21'-8 7/16" long and the longest stock is 20'-0" (wall 1D, stud at 6'-8"); name longer stud stock under [lumber], or stop the wall at a floor [stud-too-long]
plan.toml:50:0: warning: roof main lets its rafters bear on 1" only; a notch within a quarter of their depth gives no more (roof main, rafter 1, S side, 3/4" from the west end, and 30 more); take deeper rafters, or a lower pitch [short-seat]`},
	// (132 - 0.875) x 13.892/12 + 7.25 x 7/12 = 156.03.
	{"long rafters", gabled(func(p *plan.Plan, r *plan.Roof) { p.Lumber.Stock = []float64{96, 120}; r.Rake = 0 }), `
plan.toml:2:0: warning: joists of level first run up to 19'-9" without a support within the longest stock, 10'-0" (level first); add a girder or a bearing wall below, or run the joists the other way [joist-too-long]
plan.toml:50:0: warning: roof main has ceiling joists 20'-0" long, the longest stock is 10'-0", and no bearing wall is under them to break over (roof main, ceiling joist, 1'-5 1/2" from the west end, and 13 more); put a bearing wall under them; or write ceiling_splice = "2'" for the roof and order nails as ceiling_splice under [nailing]; or name longer stock under [lumber] [ceiling-joist-too-long]
plan.toml:50:0: warning: roof main has a rafter 13'-0 1/16" long, and the longest stock is 10'-0" (roof main, rafter 1, S side, 3/4" from the west end); name longer stock under [lumber], order it to length, or let a wall or beam break the span [rafter-too-long]`},
	{"ridge beam", gabled(func(p *plan.Plan, r *plan.Roof) { r.RidgeBearing, p.Walls[1].Top = true, "plate" }), `
plan.toml:50:0: warning: roof main asks for a rake wall at its E end, but the wall there stops at the plate: a gable truss stands on it (roof main); give the wall top = "rake", or the roof gable_ends = "gable truss" [gable-on-plate]
plan.toml:50:0: warning: roof main has a ridge beam with no wall under its E end (roof main); give the gable wall there top = "rake", or leave ridge_beam out and keep the ceiling ties [ridge-beam-unsupported]`},
	// The seats are 5.5; the roof is 7.473 plumb. From the low wall's seat, 5.5 in, to the high
	// wall's inner face, 234.5, it climbs 57.25 + 1.375; the same seat there: 229.125 - 1.375 +
	// 58.625 + 1.375 = 287.75, less 120.
	{"high wall low", gabled(func(p *plan.Plan, r *plan.Roof) {
		r.Kind, r.High, r.Pitch = "shed", "N", 3
		p.Lumber.Stock = []float64{480}
	}), `
plan.toml:50:0: error: roof main needs the plates of its high side N at 13'-11 3/4" above the floor, and they are at 9'-1 1/8" (roof main); give the wall there top = "rake", or that height [high-wall-height]`},
	{"no high wall", gabled(func(p *plan.Plan, r *plan.Roof) {
		r.Kind, r.High, r.Pitch, r.Area[1].Y = "shed", "N", 3, 300
		p.Lumber.Stock = []float64{480}
	}), `
plan.toml:50:0: error: roof main has nothing under its high side N (roof main); put a wall or a porch beam there, or let the roof end against a higher wall [shed-without-high-wall]`},
	// Plates at 120 + 115 = 235; over the face the roof is at 229.125 + 8.393 - 3.597 x 7/12 =
	// 235.420 and its underside 8.393 lower: (235 - 227.027) / 1.1577 = 6.887. Rafters at 128, 144
	// ... 224 and 239.25 are 8.
	{"two heights", gabled(func(p *plan.Plan, r *plan.Roof) {
		w := *p.Walls[0]
		w.Name, w.From.X = "1S2", 120
		p.Walls[0].To.X, w.Height = 120, 115
		w.Pos.Line = 30
		p.Walls = append(p.Walls, &w)
	}), `
plan.toml:50:0: error: roof main needs a notch 6 7/8" deep in its rafters over wall 1S2, and a quarter of their depth is 1 13/16" (roof main, rafter 9, S side, 10'-8" from the west end, and 7 more); give the walls under one side one height [notch-too-deep]`},
	// 14 is less than twice 7 1/4.
	{"no area", gabled(func(p *plan.Plan, r *plan.Roof) { r.Area[1] = geom.Vec2{X: 240, Y: 14} }), `
plan.toml:10:0: warning: 4 exterior walls of level first, 1A, 1B, 1C, 1D, have neither roof nor floor over them (level first); give a roof the area that covers it, or add a roof there [wall-without-roof]
plan.toml:11:0: error: wall 1B has a rake top and no roof over it to follow (wall 1B); put a roof over it, or end it at the plate [rake-without-roof]
plan.toml:13:0: error: wall 1D has a rake top and no roof over it to follow (wall 1D); put a roof over it, or end it at the plate [rake-without-roof]
plan.toml:50:0: error: roof main has a shape that cannot be framed: an area of 20'-0" by 1'-2" (roof main); give it a kind that is known, an area some feet wide, a ridge "x" or "y" and, for a shed, its high side [bad-roof]`},
	// Joists of 1.5 to 238.5; the girder at 3 is within 100 of their start, the one at 120 is not
	// of 3: 235.5 are left.
	{"joists long", gabled(func(p *plan.Plan, r *plan.Roof) { p.Lumber.Stock = []float64{192} }), `
plan.toml:2:0: warning: joists of level first run up to 19'-9" without a support within the longest stock, 16'-0" (level first); add a girder or a bearing wall below, or run the joists the other way [joist-too-long]
plan.toml:50:0: warning: roof main has ceiling joists 20'-0" long, the longest stock is 16'-0", and no bearing wall is under them to break over (roof main, ceiling joist, 1'-5 1/2" from the west end, and 13 more); put a bearing wall under them; or write ceiling_splice = "2'" for the roof and order nails as ceiling_splice under [nailing]; or name longer stock under [lumber] [ceiling-joist-too-long]`},
	// The wall passes the area by 13, more than the rake of 12 and half an inch.
	{"rake past", gabled(func(p *plan.Plan, r *plan.Roof) { r.Area[0].Y, r.Area[1].Y = 13, 227 }), `
plan.toml:10:0: error: wall 1A ends 20'-0" from the start of wall 1C, and no exterior wall of level first starts there (wall 1A); set one of the two points right, so that the outline closes [walls-open]
plan.toml:11:0: error: wall 1B has a rake top and reaches 1'-1" out from under roof main at its start (wall 1B); end it at the roof, or give roof main the area of its walls [rake-past-roof]
plan.toml:12:0: error: wall 1C ends 20'-0" from the start of wall 1A, and no exterior wall of level first starts there (wall 1C); set one of the two points right, so that the outline closes [walls-open]
plan.toml:13:0: error: wall 1D has a rake top and reaches 1'-1" out from under roof main at its start (wall 1D); end it at the roof, or give roof main the area of its walls [rake-past-roof]
plan.toml:50:0: error: 16 rafters of roof main have no plate under them (roof main, N side, from 3/4" off its west end); put a wall of level first or a porch beam under that side, or give the roof the area of its walls [rafter-without-plate]
plan.toml:50:0: error: 16 rafters of roof main have no plate under them (roof main, S side, from 3/4" off its west end); put a wall of level first or a porch beam under that side, or give the roof the area of its walls [rafter-without-plate]`},
	// At y = -180 the roof is 105 lower than at the face. The fly rafter: (320 - 0.875) x 1.1577 +
	// 4.229 = 373.68.
	{"rake low", gabled(func(p *plan.Plan, r *plan.Roof) { r.Overhang = 200; p.Walls[1].From.Y = -180 }), `
plan.toml:10:0: error: wall 1A ends 20'-0" from the start of wall 1C, and no exterior wall of level first starts there (wall 1A); set one of the two points right, so that the outline closes [walls-open]
plan.toml:11:0: error: wall 1B has a rake top that leaves 0" for its studs at the low end (wall 1B); raise the roof's plate, or lower the wall's floor [wall-too-low]
plan.toml:50:0: warning: roof main has a fly rafter 31'-1 11/16" long, and the longest stock is 20'-0" (roof main, fly rafter, S side, 20'-11 1/4" from the west end); name longer stock under [lumber], order it to length, or let a wall or beam break the span [rafter-too-long]`},
	// 30 sqrt 2 = 42.43 are open.
	{"hip without plate", func() *plan.Plan {
		p := stories(1)
		w := ring(p, 0, rect(0, 0, 288, 192)...)
		roofOn(p, "main", "hip", "x", 6, rect(0, 0, 288, 192)).CeilingTies = false
		w[0].From.X, w[3].To.Y = 30, 30
		return p
	}(), `
plan.toml:13:0: error: wall 1D ends 3'-6 7/16" from the start of wall 1A, and no exterior wall of level first starts there (wall 1D); set one of the two points right, so that the outline closes [walls-open]
plan.toml:50:0: error: roof main has a hip rafter with no plate under its low end (roof main, hip rafter 1, its low end -1'-6" east and -1'-6" north of the roof's southwest corner); let the walls under the two roof planes meet there, or give the roof the area of its walls [hip-without-plate]
plan.toml:50:0: error: 1 rafter of roof main has no plate under it (roof main, S side, from 1'-4" off its west end); put a wall of level first or a porch beam under that side, or give the roof the area of its walls [rafter-without-plate]
plan.toml:50:0: error: 1 rafter of roof main has no plate under it (roof main, W side, from 1'-4" off its south end); put a wall of level first or a porch beam under that side, or give the roof the area of its walls [rafter-without-plate]`},
	// The plate is at 232.125. The hip's top at the corner is 235.2043 (see
	// TestSticksOfLinesByHand) in the middle of its thickness, its plumb depth 9.25 x 1.06066 =
	// 9.8112: it is cut (232.125 - 225.3931) / 1.06066 = 6.347 deep and keeps 2.903. The rafters:
	// (232.125 - 235.2043 + 8.1057) / 1.1180 = 4.496, at 224, 240, 256 and 272.
	{"hip notch", func() *plan.Plan {
		p := stories(1)
		w := ring(p, 0, geom.Vec2{}, geom.Vec2{X: 216}, geom.Vec2{X: 288}, geom.Vec2{X: 288, Y: 192}, geom.Vec2{Y: 192})
		w[1].Height = p.Levels[0].PlateHeight + 3
		roofOn(p, "main", "hip", "x", 6, rect(0, 0, 288, 192))
		return p
	}(), `
plan.toml:50:0: error: roof main keeps 2 7/8" of its hip rafter over wall 1B, and a rafter keeps 5 7/16" (roof main, hip rafter 3, its low end 25'-6" east and -1'-6" north of the roof's southwest corner); give the walls that meet there one height [notch-too-deep]
plan.toml:50:0: error: roof main needs a notch 4 1/2" deep in its rafters over wall 1B, and a quarter of their depth is 1 13/16" (roof main, rafter 18, S side, 18'-8" from the west end, and 3 more); give the walls under one side one height [notch-too-deep]`},
	// A post at 193 of 192. 70.7 - 9.25 - 60 = 1.45 for posts.
	{"porch", gabled(func(p *plan.Plan, r *plan.Roof) {
		p.Porches = append(p.Porches, &plan.Porch{
			Name: "porch", From: geom.Vec2{X: 24, Y: -96}, To: geom.Vec2{X: 216, Y: -96},
			Beam: plan.Lumber{Ply: 2, Breadth: 1.5, Depth: 9.25, Text: "2-2x10"}, Post: plan.Lumber{Ply: 1, Breadth: 5.5, Depth: 5.5, Text: "6x6"},
			Posts: []float64{2.75, 189.25, 193}, Base: 60, Top: 196, Pos: plan.Pos{File: "plan.toml", Line: 40},
		},
			&plan.Porch{
				Name: "low", From: geom.Vec2{X: 24, Y: -196}, To: geom.Vec2{X: 216, Y: -196},
				Beam: plan.Lumber{Ply: 2, Breadth: 1.5, Depth: 9.25, Text: "2-2x10"}, Post: plan.Lumber{Ply: 1, Breadth: 5.5, Depth: 5.5, Text: "6x6"},
				Posts: []float64{2.75}, Base: 60, Top: 70.7, Pos: plan.Pos{File: "plan.toml", Line: 41},
			})
	}), `
plan.toml:40:0: error: post 3 of porch porch stands off its beam (porch porch); give stations along the beam, from its start [post-off-beam]
plan.toml:41:0: error: porch low leaves no room for beam and posts (porch low); check from, to, base and top [porch-no-size]`},
}

func TestRoofFaultsInFull(t *testing.T) {
	for _, c := range roofFaultTexts {
		t.Run(c.name, func(t *testing.T) {
			_, ds := Frame(c.plan)
			var got []string
			for _, d := range ds {
				got = append(got, d.String())
			}
			assert.Equal(t, strings.TrimSpace(c.want), strings.Join(got, "\n"))
		})
	}
}
