package framing

import (
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"galewright/plan"
	"galewright/plan/geom"
	"galewright/plan/roofplan"
)

// A gable truss of 2x4 on edge over 192 in at 6 in 12, flush with walls of 2x6 under rafters
// of 2x8. Its bottom chord lies on the plates, 229.125 to 232.625. Over the wall's face the
// roof is at 229.125 + 8.1057 - 2.0264 = 235.2043 (see TestSticksOfLinesByHand); the truss is
// dropped 1.5 for the outlookers and 3.5 deep, both square to the slope, 5 sqrt 1.25 = 5.5902:
// under its top chord is 229.6141 + u/2. Studs are laid flat, 3.5 wide, at 16, 32 ... 176 from
// the south: that at 16 is as high as its north edge, 17.75, lets it be.
func TestAGableTrussByHand(t *testing.T) {
	p := stories(1)
	ring(p, 0, rect(0, 0, 288, 192)...)
	roofOn(p, "main", "gable", "x", 6, rect(0, 0, 288, 192)).GableEnd = [2]plan.GableEnd{plan.TrussEnd, plan.TrussEnd}
	trusses := withRole(roofed(t, p), plan.Truss)
	require.Len(t, trusses, 2)
	for i, m := range trusses {
		lo, hi := m.Bounds()
		assert.InDelta(t, []float64{286.5, 0}[i], lo.X, 1e-9)
		assert.InDelta(t, []float64{288, 1.5}[i], hi.X, 1e-9)
		assert.InDelta(t, 192, m.Length, 1e-9)
		tops := map[float64]float64{} // of studs, by their middle
		bottom := 0
		for _, s := range m.Solid {
			a, b := s.Bounds()
			switch {
			case b.Y-a.Y < 3.6 && a.Z > 232:
				assert.InDelta(t, 232.625, a.Z, 1e-9)
				assert.InDelta(t, 3.5, b.Y-a.Y, 1e-9)
				tops[(a.Y+b.Y)/2] = b.Z
			case b.Z < 232.7:
				bottom++
				assert.InDelta(t, 229.125, a.Z, 1e-9)
				assert.InDelta(t, 192, b.Y-a.Y, 1e-9)
			}
		}
		assert.Equal(t, 1, bottom)
		require.Len(t, tops, 11)
		for u, z := range tops {
			want := 229.6141 + min(u+1.75, 192-u+1.75, 96)/2
			assert.InDelta(t, want, z, 1e-3, "%v", u)
		}
	}
}

// What a valley takes of a gable truss in its way is as wide as it is thick and reaches from
// its underside up: of a board 100 by 1.5 by 20, crossed in its middle by a level stick 1.5
// thick whose top is at 10 and which is 5 deep, 1.5 x 1.5 from 5 up to 20.
func TestWhatAStickTakesOfAGableTruss(t *testing.T) {
	f, _ := emptyFrame()
	f.takes = map[*Member][]geom.Plane{}
	r := &roofRafter{bar: bar{at: geom.Vec2{X: 50, Y: -50}, dir: geom.Vec2{Y: 1}, top: 10, depth: 5, half: 0.75}}
	r.run = &roofplan.Run{Low: geom.Vec2{X: 50, Y: -50}, High: geom.Vec2{X: 50, Y: 50}}
	m := f.member(&Member{A: r.point(0), B: r.point(100), Solid: []geom.Solid{r.solid(0, 100)}})
	board := geom.Box(geom.Vec3{}, geom.Vec3{X: 100}, geom.Vec3{Y: 1.5}, geom.Vec3{Z: 20})
	volume := func() (v float64) {
		for _, s := range f.trim([]geom.Solid{board}) {
			v += s.Volume()
		}
		return v
	}
	assert.InDelta(t, 100*1.5*20, volume(), 1e-6, "a stick that takes nothing, as an outlooker")
	f.takes[m] = r.space()
	assert.InDelta(t, 100*1.5*20-1.5*1.5*15, volume(), 1e-6)
	r.run.High.Y = 0.5 // it ends within the board
	f.takes[m] = r.space()
	assert.InDelta(t, 100*1.5*20-1.5*0.5*15, volume(), 1e-6)
}

// A ridge 1 3/4 thick whose end a hip of 1 1/2 comes down at, at 45 degrees: the hip is cut to
// the ridge's side 0.875 off its middle, and its far arris there lies 0.875 + 0.75 sqrt 2 =
// 1.9357 past the end; 3 1/2 more for a flange are 5.4357. A rafter that crosses 3 in past the
// end stops it 3/4 in short of that; one beside it does not, nor a hip that goes back.
func TestHowFarARidgeRunsPastAHip(t *testing.T) {
	v := func(x, y float64) geom.Vec2 { return geom.Vec2{X: x, Y: y} }
	cross := func(y float64, lo, hi float64) *roofplan.Run { return &roofplan.Run{Low: v(lo, y), High: v(hi, y)} }
	for _, c := range []struct {
		name     string
		hip      [2]geom.Vec2 // from its foot up
		runs     []*roofplan.Run
		u0, u1   float64
		reversed bool
	}{
		{"at its low end", [2]geom.Vec2{v(0, 0), v(-50, -50)}, nil, -5.4357, 100, false},
		{"at its high end", [2]geom.Vec2{v(0, 100), v(50, 150)}, nil, 0, 105.4357, false},
		{"before a rafter", [2]geom.Vec2{v(0, 0), v(-50, -50)}, []*roofplan.Run{cross(-3, -10, 10)}, -2.25, 100, false},
		{"before a rafter whose end is just beside its middle", [2]geom.Vec2{v(0, 0), v(-50, -50)}, []*roofplan.Run{cross(-3, 0.5, 10)}, -2.25, 100, false},
		{"with a rafter beside it", [2]geom.Vec2{v(0, 0), v(-50, -50)}, []*roofplan.Run{cross(-3, 1, 10)}, -5.4357, 100, false},
		{"with a rafter that runs up to it on its length", [2]geom.Vec2{v(0, 0), v(-50, -50)}, []*roofplan.Run{cross(40, 0, 10)}, -5.4357, 100, false},
		{"a hip that goes back over the ridge", [2]geom.Vec2{v(0, 0), v(-50, 50)}, nil, 0, 100, false},
		{"a hip with its top there", [2]geom.Vec2{v(-50, -50), v(0, 0)}, nil, 0, 100, false},
		{"a hip in line", [2]geom.Vec2{v(0, 0), v(0, -50)}, nil, 0, 100, false},
	} {
		t.Run(c.name, func(t *testing.T) {
			f, rb := emptyFrame()
			rb.Rafters = twoByEight
			ridge := run(roofplan.Ridge, v(0, 0), v(0, 100))
			ridge.half, ridge.owner, ridge.u1 = 0.875, rb, 100
			f.lines, f.runs = []*roofLine{ridge, run(roofplan.Hip, c.hip[0], c.hip[1])}, c.runs
			f.pastHips(ridge)
			assert.InDelta(t, c.u0, ridge.u0, 1e-4)
			assert.InDelta(t, c.u1, ridge.u1, 1e-4)
			f.lines[1].line.Kind = roofplan.Valley
			ridge.u0, ridge.u1 = 0, 100
			f.pastHips(ridge)
			assert.Equal(t, [2]float64{0, 100}, [2]float64{ridge.u0, ridge.u1}, "a valley asks for none")
		})
	}
}

// Joists of 240 in over girders at 150 and 60, in no order, and stock of 120: the farthest
// within reach of 0 is 60, of 60 it is 150, and the last piece is 90. Without the one at 60
// there is none within 120, and the 240 in are told.
func TestJoistsBreakOverTheFarthestSupport(t *testing.T) {
	north := geom.Frame{D: geom.Vec2{Y: 1}, In: geom.Vec2{X: 1}}
	girder := func(y float64) body {
		return body{f: geom.NewFrame(geom.Vec2{X: -50, Y: y - 1.5}, geom.Vec2{X: 50, Y: y - 1.5}), s1: 100, d: 3}
	}
	along := body{f: geom.NewFrame(geom.Vec2{Y: 20}, geom.Vec2{Y: 200}), s1: 180, d: 3}
	for _, c := range []struct {
		name    string
		length  float64
		on      []body
		want    []float64
		unborne float64
	}{
		{"out of order", 240, []body{girder(150), girder(60)}, []float64{60, 150}, 0},
		{"as long as the stock", 120, []body{girder(60)}, nil, 0},
		{"just at the stock", 240, []body{girder(120)}, []float64{120}, 0},
		{"out of reach", 240, []body{girder(150)}, nil, 240},
		{"out of reach from the first", 240, []body{girder(60), girder(200)}, []float64{60}, 180},
		{"one that runs its way is none", 240, []body{along}, nil, 240},
		{"none", 240, nil, nil, 240},
	} {
		t.Run(c.name, func(t *testing.T) {
			p := stories(1)
			p.Lumber.Stock = []float64{96, 120}
			b, d := newBuilder(p), &deck{level: p.Levels[0], supports: c.on}
			assert.Equal(t, c.want, b.joistCuts(d, body{f: north, d: 1.5}, span{0, c.length}))
			assert.Equal(t, c.unborne, d.unborne)
		})
	}
}

// A ceiling joist is one piece up to the stock; over walls, where they are; else by an ordered
// splice in equal pieces, each longer than both laps.
func TestWhereACeilingJoistBreaks(t *testing.T) {
	for _, c := range []struct {
		name   string
		walls  []float64
		length float64
		splice float64
		cuts   []float64
		lap    float64
		ok     bool
	}{
		{"as long as the stock", nil, 120, 0, []float64{0, 120}, 0, true},
		{"over a wall", []float64{100}, 200, 0, []float64{0, 100, 200}, spliceLap, true},
		{"over a wall by an ordered lap", []float64{100}, 200, 20, []float64{0, 100, 200}, 20, true},
		{"just at the stock", []float64{120}, 240, 0, []float64{0, 120, 240}, spliceLap, true},
		{"in two by an ordered splice", nil, 200, 24, []float64{0, 100, 200}, 24, true},
		{"in three", nil, 300, 24, []float64{0, 100, 200, 300}, 24, true},
		{"no splice ordered", nil, 200, 0, []float64{0, 100, 200}, 0, false},
		{"pieces no longer than both laps", nil, 200, 50, []float64{0, 100, 200}, 50, false},
	} {
		rb := &roofBody{Roof: &plan.Roof{CeilingSplice: c.splice}}
		cuts, lap, ok := rb.tieCuts(c.walls, c.length, 120)
		assert.Equal(t, c.cuts, cuts, c.name)
		assert.Equal(t, c.lap, lap, c.name)
		assert.Equal(t, c.ok, ok, c.name)
	}
}

// The lean-to's ledger lies on two walls in line, parted at y = 120: rafters at 64 ... 112 are
// tied on the first, those at 128 ... 176 on the second.
func TestALedgersJointsAreOnTheWallBehindThem(t *testing.T) {
	p := againstHouse()
	m := p.Walls[len(p.Walls)-1]
	n := *m
	m.To.Y, n.From.Y, n.Name = 120, 120, "N"
	n.Pos.Line++
	p.Walls = append(p.Walls, &n)
	at := map[string][]float64{}
	h, _ := Frame(p)
	for _, j := range h.Joints {
		if j.Kind == plan.RafterLedger {
			at[j.Host] = append(at[j.Host], j.At.Y)
		}
	}
	assert.Equal(t, map[string][]float64{"M": {64, 80, 96, 112}, "N": {128, 144, 160, 176}}, at)
}

// The gable truss of a shed 120 across whose high wall, 5.5 deep, is to the west: its bottom
// chord lies on the low wall's plates and runs from the high wall's inner face to the low
// wall's outer one, 114.5 in; where the high side ends against a house's wall it stops at the
// ledger, 1.5 out.
func TestBottomChordOfAShedsGableTruss(t *testing.T) {
	p := stories(1)
	ring(p, 0, rect(0, 0, 120, 192)...)[3].Top = plan.RakeTop
	roofOn(p, "main", "shed", "y", 3, rect(0, 0, 120, 192)).High = plan.West
	h := roofed(t, p)
	n := 0
	for _, m := range withRole(h, plan.Truss) {
		assert.InDelta(t, 114.5, m.Length, 1e-9)
		for _, s := range m.Solid {
			if lo, hi := s.Bounds(); hi.X-lo.X > 100 && hi.Z < 232.7 {
				n++
				assert.Equal(t, [4]float64{5.5, 120, 229.125, 232.625}, [4]float64{lo.X, hi.X, lo.Z, hi.Z})
			}
		}
	}
	assert.Equal(t, 2, n)
	rb := &roofBody{Roof: p.Roofs[0], body: &roofplan.Body{Hi: geom.Vec2{X: 120, Y: 192}}}
	rb.body.Sides[roofplan.West].Against = true
	rb.sides[roofplan.West].depth, rb.sides[roofplan.East].plate = 5.5, 200
	r, length := (&roofFrame{}).bottom(rb, 0.75, lookout)
	assert.Equal(t, 118.5, length)
	assert.Equal(t, geom.Vec2{X: 1.5, Y: 0.75}, r.at)
	assert.Equal(t, 203.5, r.top)
	rb.High, rb.Ridge = plan.North, plan.AxisX
	rb.sides[roofplan.North].depth, rb.sides[roofplan.South].plate = 3.5, 210
	r, length = (&roofFrame{}).bottom(rb, 7, lookout)
	assert.Equal(t, 188.5, length)
	assert.Equal(t, geom.Vec2{X: 7}, r.at)
	assert.Equal(t, 213.5, r.top)
}

// A roof that asks for a rake wall at an end whose wall stops at its plates is told, of that
// end alone.
func TestARakeEndOnPlatesIsToldOfThatEnd(t *testing.T) {
	for _, c := range []struct {
		low, high plan.GableEnd
		tops      [2]plan.WallTop // of the west and the east wall
		want      string
	}{
		{plan.RakeEnd, plan.RakeEnd, [2]plan.WallTop{plan.RakeTop, plan.RakeTop}, ""},
		{plan.RakeEnd, plan.TrussEnd, [2]plan.WallTop{plan.PlateTop, plan.PlateTop}, "at its W end"},
		{plan.TrussEnd, plan.RakeEnd, [2]plan.WallTop{plan.PlateTop, plan.PlateTop}, "at its E end"},
		{plan.TrussEnd, plan.TrussEnd, [2]plan.WallTop{plan.PlateTop, plan.PlateTop}, ""},
		{plan.RakeEnd, plan.RakeEnd, [2]plan.WallTop{plan.RakeTop, plan.PlateTop}, "at its E end"},
	} {
		p := simple(7, 1.75, 12, 240)
		p.Roofs[0].GableEnd, p.Walls[3].Top, p.Walls[1].Top = [2]plan.GableEnd{c.low, c.high}, c.tops[0], c.tops[1]
		ds := told(p, "gable-on-plate")
		if c.want == "" {
			assert.Empty(t, ds, "%+v", c)
			continue
		}
		require.Len(t, ds, 1, "%+v", c)
		assert.Contains(t, ds[0].Summary, c.want)
	}
}
