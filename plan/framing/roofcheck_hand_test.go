package framing

import (
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"galewright/plan"
	"galewright/plan/geom"
	"galewright/plan/roofplan"
)

// told returns the faults of one code that framing a plan tells.
func told(p *plan.Plan, code plan.Code) (out []plan.Diagnostic) {
	_, ds := Frame(p)
	for _, d := range ds {
		if d.Code == code {
			out = append(out, d)
		}
	}
	return out
}

// highHouse is a house 288 by 192 whose walls are 60 in higher than the story's, under a
// gable of 4 in 12 that hangs over by 24, and a gable wing 160 wide and 100 long that ends
// at its south wall.
func highHouse(pitch float64) *plan.Plan {
	p := stories(1)
	pts := []geom.Vec2{{}, {X: 60}, {X: 60, Y: -100}, {X: 220, Y: -100}, {X: 220}, {X: 288}, {X: 288, Y: 192}, {Y: 192}}
	for i, w := range ring(p, 0, pts...) {
		switch i {
		case 1, 2, 3:
		default:
			w.Height = 109.125 + 60
		}
	}
	p.Walls[2].Top, p.Walls[5].Top, p.Walls[7].Top = plan.RakeTop, plan.RakeTop, plan.RakeTop
	m := wall(p, "M", 0, pts[1], pts[4])
	m.Height, m.Bearing = 109.125+60, true
	roofOn(p, "main", "gable", "x", 4, rect(0, 0, 288, 192)).Overhang = 24
	roofOn(p, "wing", "gable", "y", pitch, rect(60, -100, 220, 0))
	return p
}

// A wing's ridge stands higher than its eaves, and it is what runs into the overhang first.
// The main rafters, 7 1/4 deep at 4 in 12, are 7.642 plumb; they sit 5.5 on plates at
// 289.125, so their underside over the wall's face is at 289.125 - 5.5/3 = 287.292, and 24
// out at 279.292. The wing's peak: 229.125 + 7.25/cos - seat tan + 80 tan, the seat
// 7.25/(4 sin): at 6 in 12 229.125 + 8.106 - 2.026 + 40 = 275.204, clear by 4.09; at 7 in 12
// 229.125 + 8.393 - 2.098 + 46.667 = 282.087, 2.795 in; at 8 in 12 288.993, 9.70 in.
func TestAWingsRidgeInTheOverhangIsTold(t *testing.T) {
	for pitch, much := range map[float64]string{6: "", 7: `reaches 2 13/16" into the overhang of roof main`, 8: `reaches 9 11/16" into the overhang of roof main`} {
		ds := told(highHouse(pitch), "roof-in-overhang")
		if much == "" {
			assert.Empty(t, ds)
			continue
		}
		require.Len(t, ds, 1, "%v in 12", pitch)
		assert.Contains(t, ds[0].Summary, much)
		assert.Equal(t, "roof wing", ds[0].Where)
		assert.Equal(t, 51, ds[0].Pos.Line)
	}
}

// slopes makes a body over an area, each side with its slope, top of the rafters at the
// walls' faces and overhang.
func slopes(lo, hi geom.Vec2, sides [4]roofplan.Side) *roofBody {
	return &roofBody{Roof: &plan.Roof{Rafters: plan.Lumber{Ply: 1, Breadth: 1.5, Depth: 4}}, body: &roofplan.Body{Lo: lo, Hi: hi, Sides: sides, Axis: plan.AxisX}}
}

// A flat-ish porch of 3 in 4 runs up to y = 0 under the eave of a house of 3 in 4 from there
// on, whose roof is at 200 over its wall and hangs over by 8; rafters 4 deep are 5 plumb. The
// underside falls from 195 at the wall to 189 at y = -8. The porch climbs from h at y = -40
// to h + 30 at the wall and is at h + 24 at -8, so both lines are parallel: the room is
// 195 - 30 - h all along.
func TestHowFarARoofReachesIntoAnothersOverhang(t *testing.T) {
	house := slopes(geom.Vec2{}, geom.Vec2{X: 100, Y: 100}, [4]roofplan.Side{roofplan.South: {Slope: 0.75, Height: 200, Over: 8}, roofplan.North: {Slope: 0.75, Height: 200, Over: 8}})
	porch := func(h, x0 float64) *roofBody {
		return slopes(geom.Vec2{X: x0, Y: -40}, geom.Vec2{X: x0 + 50}, [4]roofplan.Side{roofplan.South: {Slope: 0.75, Height: h, Over: 2}, roofplan.North: {Against: true}, roofplan.East: {Over: 3}, roofplan.West: {Over: 3}})
	}
	lo, hi := porch(160, 20).reach()
	assert.Equal(t, [2]geom.Vec2{{X: 17, Y: -42}, {X: 73}}, [2]geom.Vec2{lo, hi})
	assert.InDelta(t, -5, porch(160, 20).into(house), 1e-6)
	assert.InDelta(t, 2, porch(167, 20).into(house), 1e-6)
	assert.InDelta(t, 2, porch(167, 97).into(house), 1e-6, "the last 6 in of the house's 100")
	assert.Equal(t, -1.0, porch(167, 102.6).into(house), "0.4 in of its overhang, 3, are under the house: as good as none")
	assert.Equal(t, -1.0, porch(167, 150).into(house), "beside the house")
	far := porch(167, 20)
	far.body.Lo.Y, far.body.Hi.Y = -90, -50
	assert.Equal(t, -1.0, far.into(house), "before the overhang")
}

// A bay 60 deep whose roof was forgotten: its three walls are told at the first of them; with
// a roof of its own, or where the floor of a level above covers it, nothing is.
func TestWallsUnderOpenSkyAreTold(t *testing.T) {
	house := func(levels int) *plan.Plan {
		p := stories(levels)
		p.Lumber.Stock = append(p.Lumber.Stock, 480)
		pts := []geom.Vec2{{}, {X: 100}, {X: 100, Y: -60}, {X: 220, Y: -60}, {X: 220}, {X: 288}, {X: 288, Y: 192}, {Y: 192}}
		ring(p, 0, pts...)
		wall(p, "I", 0, geom.Vec2{X: 5.5, Y: 96}, geom.Vec2{X: 282.5, Y: 96})
		if levels > 1 {
			ring(p, 1, pts...)
		}
		roofOn(p, "main", "hip", "x", 6, rect(0, 0, 288, 192)).Over = p.Levels[levels-1]
		return p
	}
	p := house(1)
	ds := told(p, "wall-without-roof")
	require.Len(t, ds, 1)
	assert.Equal(t, "3 exterior walls of level first, 1B, 1C, 1D, have neither roof nor floor over them", ds[0].Summary)
	assert.Equal(t, p.Walls[1].Pos, ds[0].Pos)
	assert.Equal(t, "level first", ds[0].Where)
	assert.Equal(t, plan.Warning, ds[0].Severity)
	ds = told(house(2), "wall-without-roof")
	require.Len(t, ds, 1, "those of the first story stand under the floor of the second")
	assert.Contains(t, ds[0].Summary, "3 exterior walls of level second, 2B, 2C, 2D, have")
	p = house(1)
	p.Walls = p.Walls[:8]
	p.Walls[1].Exterior, p.Walls[3].Exterior = false, false
	ds = told(p, "wall-without-roof")
	require.Len(t, ds, 1)
	assert.Equal(t, "1 exterior wall of level first, 1C, has neither roof nor floor over it", ds[0].Summary)
	roofOn(p, "bay", "hip", "y", 6, rect(100, -60, 220, 0))
	assert.Empty(t, told(p, "wall-without-roof"))
	p.Roofs = nil
	assert.Empty(t, told(p, "wall-without-roof"), "a frame without any roof is one in the making")
}

// A floor lies over a place when an odd number of its outlines goes around it: within the
// outer one, not in a well in it.
func TestAFloorLiesOverAWallButForItsWells(t *testing.T) {
	low, mid, top := &plan.Level{Index: 0}, &plan.Level{Index: 1}, &plan.Level{Index: 2}
	outline := func(lo, hi float64) (out []edge) {
		for _, p := range rect(lo, lo, hi, hi) {
			out = append(out, edge{w: &framedWall{Wall: &plan.Wall{From: p}}})
		}
		return out
	}
	require.Equal(t, rect(0, 0, 100, 100), points(outline(0, 100)))
	b := newBuilder(stories(1))
	b.loops[mid] = [][]edge{outline(0, 100), outline(40, 60)}
	on := func(l *plan.Level) *framedWall { return &framedWall{Wall: &plan.Wall{Level: l, ToLevel: l}} }
	for p, want := range map[geom.Vec2]bool{{X: 20, Y: 20}: true, {X: 50, Y: 50}: false, {X: 70, Y: 50}: true, {X: 120, Y: 50}: false} {
		assert.Equal(t, want, b.floored(on(low), p), "%v", p)
		assert.False(t, b.floored(on(mid), p), "the floor it stands on is not over it")
		assert.False(t, b.floored(on(top), p))
		assert.False(t, b.floored(&framedWall{Wall: &plan.Wall{Level: low, ToLevel: mid}}, p), "a balloon wall runs past it")
	}
	d := &deck{inner: [][]geom.Vec2{rect(0, 0, 100, 100), rect(40, 40, 60, 60)}}
	for y, want := range map[float64]bool{17.25: true, 47.25: false, 117.25: false} {
		w := &framedWall{Wall: &plan.Wall{From: geom.Vec2{X: 45, Y: y}, To: geom.Vec2{X: 55, Y: y}, Studs: twoBySix}}
		w.frame = w.Frame()
		assert.Equal(t, want, d.covers(w), "y %v", y)
	}
}

// A bar of 8 in on the level, its top at 100: it sits at 92, and a wall whose plates are at 94
// takes a quarter of it, more than that a fault. Its bearing is told when it is under 1 1/2 in
// and the side's own seat, which the pitch gives, is too.
func TestSeatsOfRaftersAreChecked(t *testing.T) {
	v := func(x, y float64) geom.Vec2 { return geom.Vec2{X: x, Y: y} }
	for _, c := range []struct {
		name     string
		z        float64
		wide     float64 // the bearing
		side     float64 // the seat that the side's pitch gives
		from, to geom.Vec2
		code     plan.Code
	}{
		{"a quarter", 94, 3, 3, v(0, 0), v(100, 0), ""},
		{"more than a quarter", 94.02, 3, 3, v(0, 0), v(100, 0), "notch-too-deep"},
		{"of a wall that it runs along", 95, 3, 3, v(50, 0), v(50, 100), ""},
		{"an inch and a half", 93, 1.5, 1.4, v(0, 0), v(100, 0), ""},
		{"less", 93, 1.48, 1.4, v(0, 0), v(100, 0), "short-seat"},
		{"less, of a wall in the way", 93, 1.48, 1.5, v(0, 0), v(100, 0), ""},
	} {
		t.Run(c.name, func(t *testing.T) {
			f, rb := emptyFrame()
			rb.sides[roofplan.South].seat = c.side
			r := &roofRafter{bar: bar{at: v(50, 0), dir: v(0, 1), top: 100, depth: 8}, owner: rb, member: &Member{Roof: rb.Roof}}
			r.run = &roofplan.Run{Face: &roofplan.Face{Side: roofplan.South}}
			f.checkSeat(r, []bearing{{notch{10, 10 + c.wide, c.z}, bedOn("A", c.from, c.to)}})
			if c.code == "" {
				assert.Empty(t, f.shared)
				return
			}
			require.Len(t, f.shared, 1)
			assert.Equal(t, c.code, f.shared[0].code)
			assert.Equal(t, c.code == "notch-too-deep", f.shared[0].severity == plan.Error)
		})
	}
}

// A hip of 10 in over rafters of 8 keeps three quarters of those, 6 in, and a quarter of an
// inch less where a valley beside the corner cuts a hair deeper: in the middle of its
// thickness, where it has climbed by half of that.
func TestWhatAHipKeepsOverThePlate(t *testing.T) {
	for rise, limits := range map[float64][2]float64{
		// Level: 100 - 6 = 94, and 1/4 more.
		0: {94.2, 94.3},
		// Climbing 3 in 4, 0.75 half its thickness: plumb depth 12.5, and a notch to z takes
		// (z - 100 - 0.5625 + 12.5) x 0.8. It keeps 5.75 at 4.25 / 0.8 + 88.0625 = 93.375.
		0.75: {93.3, 93.4},
	} {
		for i, z := range limits {
			f, rb := emptyFrame()
			rb.Rafters.Depth = 8
			l := &roofLine{bar: bar{at: geom.Vec2{}, dir: geom.Vec2{X: 1}, top: 100, rise: rise, depth: 10, half: 0.75}, owner: rb}
			l.member = &Member{Role: plan.HipRafter, Roof: rb.Roof, B: geom.Vec3{X: 1}}
			f.checkThroat(l, []bearing{{notch{0, 3, z}, bedOn("A", geom.Vec2{}, geom.Vec2{X: 100})}})
			assert.Len(t, f.faults, i, "rise %v, plate at %v", rise, z)
		}
	}
}
