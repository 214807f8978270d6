package framing

import (
	"slices"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"galewright/plan"
	"galewright/plan/geom"
	"galewright/plan/plantest"
	"galewright/plan/roofplan"
)

// Trusses of a wing that runs into another roof stand at its spacing from its low end. Where the next
// one would stand less than half of its thickness, 0.75, beyond the end of its walls, it is no
// frame on the other roof, and one stands at that end. One that would stand in a rake wall 5.5 deep
// stands beside it: 6.25 in.
func TestWhereTrussesStand(t *testing.T) {
	for _, c := range []struct {
		name   string
		length float64
		west   bool // the rake wall is at the west end, and no wing is there
		rakes  bool
		want   []float64
	}{
		{"with room", 60, false, false, []float64{24, 48}},
		{"its spacing just at the end, where no frame follows within it", 72, false, false, []float64{24, 48, 71.25}},
		{"half an inch short of the end", 72.5, false, false, []float64{24, 48, 71.75}},
		{"a frame of its own spacing 0.75 beyond", 71.25, false, false, []float64{24, 48}},
		{"that would lie in its end", 71.3, false, false, []float64{24, 48, 70.55}},
		{"with room for one", 76, false, false, []float64{24, 48, 72}},
		{"at the west, where the module begins", 72, true, false, []float64{0.75, 24, 48}},
		{"shorter than a spacing, but for its gable's own", 20, false, false, nil},
		{"in a rake wall", 75, false, true, []float64{24, 48, 68.75}},
		{"beside it", 78.25, false, true, []float64{24, 48, 72}},
		{"in the rake wall at the west", 60, true, true, []float64{24, 48}},
	} {
		t.Run(c.name, func(t *testing.T) {
			body := &roofplan.Body{Hi: geom.Vec2{X: c.length, Y: 96}, Axis: plan.AxisX, Spacing: 24, Thick: 1.5}
			for i := range body.Sides {
				body.Sides[i] = roofplan.Side{Height: 200, Over: 2}
			}
			body.Sides[roofplan.South].Slope, body.Sides[roofplan.North].Slope = 0.5, 0.5
			rb := &roofBody{Roof: &plan.Roof{Rafters: twoByFour, Spacing: 24, Kind: plan.GableRoof}, body: body}
			rb.solo = rb.alone()
			end := roofplan.East
			if c.west {
				end = roofplan.West
			}
			rb.sides[end].rake, rb.sides[end].depth = c.rakes, 5.5
			body.Sides[end].RunsIn = !c.rakes
			plantest.Near(t, c.want, rb.trussStations(), 1e-9)
		})
	}
}

// A rim along y over a girder that breaks at y = 48: it touches 47 to 50 of the girder's 4.5 in,
// more of it on the second piece, its middle at 48.5, half way in from the girder's face.
func TestARimOverTheBreakOfItsGirder(t *testing.T) {
	f := geom.NewFrame(geom.Vec2{}, geom.Vec2{Y: 96})
	piece := func(s0, s1 float64) *Member {
		return &Member{A: f.At(s0, 2.25, 5), B: f.At(s1, 2.25, 5), Length: s1 - s0}
	}
	for _, c := range []struct {
		y0, y1 float64
		want   int
	}{{47, 50, 1}, {45, 50, 0}} {
		for _, order := range [][2]int{{0, 1}, {1, 0}} {
			both := [2]*Member{piece(0, 48), piece(48, 96)}
			g := &framedGirder{body: body{f: f, s1: 96, d: 4.5}, z1: 10, pieces: []*Member{both[order[0]], both[order[1]]}}
			at, on, ok := g.carries(geom.Box(geom.Vec3{X: -3, Y: c.y0, Z: 10}, geom.Vec3{X: 2}, geom.Vec3{Y: c.y1 - c.y0}, geom.Vec3{Z: 9}))
			require.True(t, ok)
			assert.Same(t, both[c.want], on)
			plantest.Near(t, []float64{-2, (c.y0 + c.y1) / 2, 10}, []float64{at.X, at.Y, at.Z}, 1e-9)
		}
	}
}

// Rafters of one roof with one fault are told together, at the first; another fault, mend or roof
// is told by itself.
func TestFaultsThatRaftersShare(t *testing.T) {
	f, rb := emptyFrame()
	other := &plan.Roof{Name: "wing"}
	at := func(r *plan.Roof, x float64) *Member {
		return &Member{Role: plan.Rafter, Roof: r, A: geom.Vec3{X: x}, B: geom.Vec3{X: x, Y: 50, Z: 30}}
	}
	f.rafterFault(at(rb.Roof, 16), plan.Error, "notch-too-deep", "is so", "do so")
	f.rafterFault(at(rb.Roof, 32), plan.Error, "notch-too-deep", "is so", "do so")
	f.rafterFault(at(rb.Roof, 48), plan.Error, "notch-too-deep", "is so", "do so")
	f.rafterFault(at(rb.Roof, 64), plan.Error, "short-seat", "is so", "do so")
	f.rafterFault(at(rb.Roof, 80), plan.Error, "notch-too-deep", "is worse", "do so")
	f.rafterFault(at(rb.Roof, 96), plan.Error, "notch-too-deep", "is so", "do that")
	f.rafterFault(at(other, 112), plan.Warning, "notch-too-deep", "is so", "do so")
	f.rafterFault(at(other, 128), plan.Warning, "notch-too-deep", "is so", "do so")
	f.tellShared()
	var got []string
	for _, d := range f.faults {
		got = append(got, d.String())
	}
	assert.Equal(t, []string{
		`:0:0: error: roof main is so (roof main, rafter, S side, 1'-4" from the west end, and 2 more); do so [notch-too-deep]`,
		`:0:0: error: roof main is so (roof main, rafter, S side, 5'-4" from the west end); do so [short-seat]`,
		`:0:0: error: roof main is worse (roof main, rafter, S side, 6'-8" from the west end); do so [notch-too-deep]`,
		`:0:0: error: roof main is so (roof main, rafter, S side, 8'-0" from the west end); do that [notch-too-deep]`,
		`:0:0: warning: roof wing is so (roof wing, rafter, S side, 9'-4" from the west end, and 1 more); do so [notch-too-deep]`,
	}, got)
}

// Where a member of a roof is, in a framer's words: rafters by the side on which they come down,
// level ones by their end, hips and valleys by their low end, a ridge by its name alone.
func TestPlacesOnARoof(t *testing.T) {
	r := &plan.Roof{Area: [2]geom.Vec2{{X: 10, Y: 20}, {X: 110, Y: 120}}}
	v := func(x, y, z float64) geom.Vec3 { return geom.Vec3{X: x, Y: y, Z: z} }
	for _, c := range []struct {
		role plan.Role
		ref  string
		a, b geom.Vec3
		want string
	}{
		{plan.Rafter, "7", v(34, 20, 0), v(34, 70, 20), `rafter 7, S side, 2'-0" from the west end`},
		{plan.Rafter, "", v(34, 120, 0), v(34, 70, 20), `rafter, N side, 2'-0" from the west end`},
		{plan.Rafter, "", v(10, 44, 0), v(60, 44, 20), `rafter, W side, 2'-0" from the south end`},
		{plan.FlyRafter, "", v(110, 44, 0), v(60, 44, 20), `fly rafter, E side, 2'-0" from the south end`},
		{plan.Joist, "", v(34, 20, 8), v(34, 120, 8.4), `ceiling joist, 2'-0" from the west end`},
		{plan.Joist, "", v(10, 44, 8), v(110, 44, 8), `ceiling joist, 2'-0" from the south end`},
		{plan.Joist, "", v(34, 20, 8), v(34, 120, 8.6), `ceiling joist, S side, 2'-0" from the west end`},
		{plan.HipRafter, "3", v(16, 32, 0), v(46, 62, 20), `hip rafter 3, its low end 6" east and 1'-0" north of the roof's southwest corner`},
		{plan.Ridge, "", v(10, 70, 20), v(110, 70, 20), `ridge`},
	} {
		assert.Equal(t, c.want, (&Member{Role: c.role, Ref: c.ref, Roof: r, A: c.a, B: c.b}).PlaceOnRoof("imperial"))
	}
	assert.Equal(t, "rafter 2", (&Member{Role: plan.Rafter, Ref: "2"}).PlaceOnRoof("imperial"))
}

// A wall that stands too high under a rafter: one of a side of the roof is to be as high as the
// others there, one under the overhang, or a porch, is to be lower.
func TestHowAHighWallIsMended(t *testing.T) {
	f, rb := emptyFrame()
	f.bodies = []*roofBody{rb}
	own, other := bedOn("A", geom.Vec2{}, geom.Vec2{X: 100}), bedOn("B", geom.Vec2{Y: -10}, geom.Vec2{X: 100, Y: -10})
	rb.sides[roofplan.North].walls = []*plan.Wall{own.wall.Wall}
	assert.Equal(t, "give the walls under one side one height", f.lowerIt(bearing{bed: own}))
	assert.Equal(t, "make wall B lower, or let the overhang end before it", f.lowerIt(bearing{bed: other}))
}

// A wall 3.5 deep from (50, 100) down to (50, 5.5) meets 1A, 5.5 deep along y = 0, from its inside:
// its faces, at x = 50 and 53.5, do so at their own x. One that comes down at 3 in 4 over to x
// meets 1A's inner face, 5.5 up, 4.125 short of where its line meets the outer one; of its faces,
// 3.5 x 5/4 = 4.375 apart along it, the outer goes through its line. One that comes from outside
// meets y = 0.
func TestWhereTheFacesOfAWallMeetAnother(t *testing.T) {
	o := &framedWall{Wall: &plan.Wall{To: geom.Vec2{X: 200}, Studs: twoBySix}}
	o.frame, o.s1 = o.Frame(), 200
	for _, c := range []struct {
		name   string
		a, z   geom.Vec2
		tail   bool
		lo, hi float64
	}{
		{"square", geom.Vec2{X: 50, Y: 100}, geom.Vec2{X: 50, Y: 5.5}, true, 50, 53.5},
		{"square, its start", geom.Vec2{X: 50, Y: 5.5}, geom.Vec2{X: 50, Y: 100}, false, 46.5, 50},
		{"slanting from inside", geom.Vec2{X: 25, Y: 100}, geom.Vec2{X: 100}, true, 95.875, 100.25},
		{"slanting from inside, its start", geom.Vec2{X: 100}, geom.Vec2{X: 25, Y: 100}, false, 91.5, 95.875},
		{"slanting from outside", geom.Vec2{X: 25, Y: -100}, geom.Vec2{X: 100}, true, 95.625, 100},
	} {
		t.Run(c.name, func(t *testing.T) {
			u := &framedWall{Wall: &plan.Wall{From: c.a, To: c.z, Studs: twoByFour}}
			u.frame, u.s1 = u.Frame(), u.Length()
			lo, hi := facesOn(o, u, c.tail)
			plantest.Near(t, []float64{c.lo, c.hi}, []float64{lo, hi}, 1e-9)
		})
	}
}

// The shares of a roof without a face go to its rakes: of an area of 10 to 110 and 20 to 220 with
// rakes of 12 along x for what comes up northward, along y for what comes up eastward.
func TestEndsOfARoofWithoutAFace(t *testing.T) {
	m := &Member{Roof: &plan.Roof{Area: [2]geom.Vec2{{X: 10, Y: 20}, {X: 110, Y: 220}}, Rake: 12}}
	lo, hi := (&Share{Member: m, Up: geom.Vec2{Y: 1}}).edges()
	assert.Equal(t, [2]float64{-2, 122}, [2]float64{lo, hi})
	lo, hi = (&Share{Member: m, Up: geom.Vec2{X: 1}}).edges()
	assert.Equal(t, [2]float64{8, 232}, [2]float64{lo, hi})
	face := &Face{Outline: []geom.Vec3{{X: 5, Y: 7}, {X: 50, Y: 3}, {X: 60, Y: 90}}}
	lo, hi = (&Share{Member: m, Up: geom.Vec2{X: 1}, Face: face}).edges()
	assert.Equal(t, [2]float64{3, 90}, [2]float64{lo, hi})
}

// Joists of the second floor, 96 deep in a house of 120 by 96 and stock of 72, break over a bearing
// wall 5.5 deep at y = 40 under them; over one that bears nothing, or that stops an inch lower,
// they do not, and the 93 between the rims are told.
func TestJoistsBreakOverABearingWall(t *testing.T) {
	for _, c := range []struct {
		name      string
		bears     bool
		height    float64
		at        float64
		unsupport int
	}{
		{"bearing", true, 0, 42.75, 0}, {"not bearing", false, 0, 0, 1}, {"an inch too low", true, 108.125, 0, 1},
	} {
		t.Run(c.name, func(t *testing.T) {
			p := stories(2)
			ring(p, 0, rect(0, 0, 120, 96)...)
			ring(p, 1, rect(0, 0, 120, 96)...)
			girders(p, 0, 120, 2.25, 48, 93.75)
			w := wall(p, "I", 0, geom.Vec2{X: 5.5, Y: 40}, geom.Vec2{X: 114.5, Y: 40})
			w.Bearing, w.Height = c.bears, c.height
			p.Lumber.Stock = []float64{72}
			h, faults := Frame(p)
			var told int
			for _, d := range faults {
				if d.Code == "joist-too-long" && d.Where == "level second" {
					told++
				}
			}
			assert.Equal(t, c.unsupport, told)
			var breaks []float64
			for _, m := range roles(h, plan.Joist) {
				if m.Level == p.Levels[1] && m.A.Y > 2 && m.A.X < 20 {
					breaks = append(breaks, m.A.Y)
				}
			}
			if c.at > 0 {
				assert.Equal(t, []float64{c.at}, breaks)
			} else {
				assert.Empty(t, breaks)
			}
		})
	}
}

// Kings of an opening near a wall's end: two where two studs fit beside its jack and the end stud,
// one where one does, and where none does the end stud is king and the header reaches to it. In
// between two openings they share what fits.
func TestKingsAreLeftOutForWantOfRoom(t *testing.T) {
	for _, c := range []struct {
		name     string
		openings [][2]float64 // at, width
		kings    []float64    // their middles
		headers  []float64    // from and to
	}{
		{"room for both", [][2]float64{{40, 30}}, []float64{36.25, 37.75, 72.25, 73.75}, []float64{38.5, 71.5}},
		{"one at the start", [][2]float64{{5, 30}}, []float64{2.75, 37.25, 38.75}, []float64{3.5, 36.5}},
		{"none at the start", [][2]float64{{4, 30}}, []float64{36.25, 37.75}, []float64{1.5, 35.5}},
		{"one at the end", [][2]float64{{65, 30}}, []float64{61.25, 62.75, 97.25}, []float64{63.5, 96.5}},
		{"none at the end", [][2]float64{{66, 30}}, []float64{62.25, 63.75}, []float64{64.5, 98.5}},
		{"four between two", [][2]float64{{20, 20}, {49, 20}}, []float64{16.25, 17.75, 42.25, 43.75, 45.25, 46.75, 71.25, 72.75}, []float64{18.5, 41.5, 47.5, 70.5}},
		{"three between two", [][2]float64{{20, 20}, {48.9, 20}}, []float64{16.25, 17.75, 42.25, 43.75, 45.25, 71.15, 72.65}, []float64{18.5, 41.5, 46, 70.4}},
		{"one between two", [][2]float64{{20, 20}, {44.5, 20}}, []float64{16.25, 17.75, 42.25, 66.75, 68.25}, []float64{18.5, 41.5, 43, 66}},
	} {
		t.Run(c.name, func(t *testing.T) {
			var list []*plan.Opening
			for i, o := range c.openings {
				w := window(string(rune('a'+i)), o[0], o[1])
				w.Kings = 2
				list = append(list, w)
			}
			p, _ := straight(100, list...)
			h := frame(t, p)
			plantest.Near(t, c.kings, mids(of(h, "1A", plan.King)), 1e-9)
			var ends []float64
			for _, m := range of(h, "1A", plan.Header) {
				ends = append(ends, m.S0, m.S1)
			}
			plantest.Near(t, c.headers, ends, 1e-9)
		})
	}
}

// The end of a truss that crosses no wall is tied to one that runs along it, where that one lies
// under its end, to half an inch; not to one that crosses it, nor to a porch.
func TestTheEndOfATrussAlongAWall(t *testing.T) {
	v := func(x, y float64) geom.Vec2 { return geom.Vec2{X: x, Y: y} }
	along, across := bedOn("A", v(50, -5.5), v(50, 200)), bedOn("B", v(0, 0), v(200, 0))
	porch := &bed{porch: &plan.Porch{Name: "P"}, frame: geom.NewFrame(v(50, 0), v(50, 200))}
	bottom := bar{at: v(50, 0), dir: v(0, 1)}
	for _, c := range []struct {
		name  string
		u     float64
		seats []bearing
		host  string
	}{
		{"over all of it", 0, []bearing{{notch{0, 100, 100}, along}}, "A"},
		{"one that crosses", 0, []bearing{{notch{0, 5.5, 100}, across}}, ""},
		{"one that begins half an inch in", 0, []bearing{{notch{0.5, 60, 100}, along}}, "A"},
		{"one that begins farther in", 0, []bearing{{notch{0.6, 60, 100}, along}}, ""},
		{"at its other end", 100, []bearing{{notch{40, 99.5, 100}, along}}, "A"},
		{"one that ends before that", 100, []bearing{{notch{40, 99.4, 100}, along}}, ""},
		{"a porch", 0, []bearing{{notch{0, 100, 100}, porch}}, ""},
		{"the first that does", 0, []bearing{{notch{0, 5.5, 100}, across}, {notch{0, 100, 100}, along}, {notch{0, 100, 100}, along}}, "A"},
	} {
		t.Run(c.name, func(t *testing.T) {
			f, rb := emptyFrame()
			f.endAlong(&Member{}, bottom, c.seats, c.u, rb)
			if c.host == "" {
				assert.Empty(t, f.joints)
				return
			}
			require.Len(t, f.joints, 1)
			j := f.joints[0]
			assert.Equal(t, c.host, j.Host)
			plantest.Near(t, []float64{50, c.u, 100}, []float64{j.At.X, j.At.Y, j.At.Z}, 1e-9)
		})
	}
}

// A ceiling joist of 100 from (50, 0) northward, on plates at 100, breaks over the middle of a bearing
// or exterior wall of its height between its ends; not over the walls at its ends, an inner one that
// bears nothing, one of another height or one that runs its way.
func TestWallsThatACeilingJoistCrosses(t *testing.T) {
	v := func(x, y float64) geom.Vec2 { return geom.Vec2{X: x, Y: y} }
	f, _ := emptyFrame()
	f.bedsAt = geom.NewGrid[*bed]()
	add := func(name string, a, z geom.Vec2, bears, exterior bool, top float64) {
		b := bedOn(name, a, z)
		b.wall.Bearing, b.wall.Exterior, b.z = bears, exterior, top
		lo, hi := b.column.Bounds()
		f.bedsAt.Add(b, lo, hi, nil)
	}
	add("far", v(0, 80), v(200, 80), false, true, 100)
	add("start", v(0, 0), v(200, 0), true, true, 100)
	add("end", v(0, 94.5), v(200, 94.5), true, true, 100)
	add("middle", v(0, 40), v(200, 40), true, false, 100.06)
	add("idle", v(0, 20), v(200, 20), false, false, 100)
	add("low", v(0, 30), v(200, 30), true, false, 99.9)
	add("along", v(47, 10), v(47, 60), true, false, 100)
	add("beside", v(60, 60), v(200, 60), true, false, 100)
	got := f.tieWalls(bar{at: v(50, 0), dir: v(0, 1), top: 105.5, depth: 5.5, half: 0.75}, 100)
	require.Len(t, got, 2)
	assert.Equal(t, []string{"middle", "far"}, []string{got[0].Wall.Name, got[1].Wall.Name})
	plantest.Near(t, []float64{42.75, 55.5, 82.75, 55.5}, []float64{got[0].Along, got[0].Station, got[1].Along, got[1].Station}, 1e-9)
}

// However long a wing of trusses is, its roof is carried at its spacing of 24 from its gable over
// the end of its walls to the last frame in its valley: on the main roof, 12 + 36 up from the south eave
// to where the wing's ridge dies; a frame lower than a plate, over the last 2 in, is none.
func TestNoGapBetweenTrussesAndFrames(t *testing.T) {
	for length := 20.0; length < 100; length++ {
		p := ell()
		for _, w := range p.Walls {
			w.Top = plan.PlateTop
			for _, v := range []*geom.Vec2{&w.From, &w.To} {
				if v.Y == -60 {
					v.Y = -length
				}
			}
		}
		p.Roofs[1].Area[0].Y = -length
		wall(p, "M", 0, geom.Vec2{X: 53.5}, geom.Vec2{X: 114.5}).Bearing = true
		for _, r := range p.Roofs {
			r.Trusses, r.GableEnd, r.Rafters = true, [2]plan.GableEnd{plan.TrussEnd, plan.TrussEnd}, twoByFour
		}
		h, faults := Frame(p)
		require.False(t, faults.Errors(), "%v", faults)
		at := []float64{}
		for _, m := range withRole(h, plan.Truss, plan.ValleyFrame) {
			if m.Roof.Name == "wing" {
				at = append(at, m.A.Y)
			}
		}
		slices.Sort(at)
		require.InDelta(t, 0.75-length, at[0], 1e-9)
		for i, y := range at[1:] {
			assert.LessOrEqual(t, y-at[i], 24.0, "%v: %v", length, at)
		}
		assert.Greater(t, at[len(at)-1], 12.0-2, "%v", length)
	}
}

// A mitered corner's post of five studs has two more than the end studs and the beveled ones between
// them: they stand tight to the end studs of both walls, 118.5 to 120 of 1A and 0 to 1.5 of 1B.
func TestPostsOfAMiteredCorner(t *testing.T) {
	p := bayPlan()
	p.Walls[0].End.Post = 5
	h := frame(t, p)
	var first, second []float64
	for _, m := range of(h, "1A", plan.Post) {
		if m.Mid() > 110 {
			first = append(first, m.Mid())
		}
	}
	for _, m := range of(h, "1B", plan.Post) {
		if m.Mid() < 10 {
			second = append(second, m.Mid())
		}
	}
	plantest.Near(t, []float64{116.25, 117.75, 119.25}, first, 1e-9)
	plantest.Near(t, []float64{0.75, 2.25, 3.75}, second, 1e-9)
}
