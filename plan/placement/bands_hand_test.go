package placement

import (
	"testing"

	"galewright/plan"
	"galewright/plan/framing"
	"galewright/plan/geom"
	"galewright/plan/hardware"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"
)

func TestBandSeenSquareToItsFace(t *testing.T) {
	// A strap 2 wide up the south face at x = 10 from z 5 to 25: level it covers 9
	// to 11, up the face 5 to 25.
	b := geom.Plate{N: geom.Vec3{Y: -1}, A: geom.Vec3{X: 10, Z: 5}, B: geom.Vec3{X: 10, Z: 25}, Width: 2}
	pl, r := flat(b)
	assert.Equal(t, plane{y: -1000}, pl)
	assert.Equal(t, rect{9, 11, 5, 25, 0}, r)
	// Laid the other way it is the same.
	b.A, b.B = b.B, b.A
	_, again := flat(b)
	assert.Equal(t, r, again)
	// Level along the face: 1 in up and down.
	b = geom.Plate{N: geom.Vec3{Y: -1}, A: geom.Vec3{X: 5, Y: 3, Z: 20}, B: geom.Vec3{X: 25, Y: 3, Z: 20}, Width: 2}
	pl, r = flat(b)
	assert.Equal(t, plane{y: -1000, off: -24}, pl, "3 in off the origin, in eighths")
	assert.Equal(t, rect{5, 25, 19, 21, -3}, r)
	lo, hi := heights(b)
	assert.Equal(t, [2]float64{19, 21}, [2]float64{lo, hi}, "a level band is as high as it is wide")
	// Up the face it is as high as it is long.
	lo, hi = heights(geom.Plate{N: geom.Vec3{Y: -1}, A: geom.Vec3{Z: 25}, B: geom.Vec3{Z: 5}, Width: 2})
	assert.Equal(t, [2]float64{5, 25}, [2]float64{lo, hi})
	// Flat on a plate's top it has no height.
	lo, hi = heights(geom.Plate{N: geom.Vec3{Z: 1}, A: geom.Vec3{Z: 9}, B: geom.Vec3{X: 5, Z: 9}, Width: 2})
	assert.Equal(t, [2]float64{9, 9}, [2]float64{lo, hi})
}

// Whether two pieces meet does not go by where the house stands: faces 0.01 in apart are flush on
// both sides of an odd sixteenth too, where the index parts them.
func TestFlushFacesOnBothSidesOfAnEighth(t *testing.T) {
	for _, from := range []float64{0, 3.05, 3.0575, 3.0625, -3.0675} {
		at := func(y float64) *Piece {
			return &Piece{Item: &hardware.Item{Item: &plan.Item{}}, Lie: Lie{Bands: []geom.Band{{{N: geom.Vec3{Y: -1}, A: geom.Vec3{X: 10, Y: y, Z: 5}, B: geom.Vec3{X: 10, Y: y, Z: 25}, Width: 2}}}}}
		}
		x := &placer{p: &Placement{Pieces: []*Piece{at(from), at(from + 0.01), at(from + 0.1)}}}
		x.fill()
		assert.Len(t, x.overlaps, 1, "%g", from)
	}
}

func TestBandsOnTopLieInOneFrame(t *testing.T) {
	// Two straps along x on top of a plate, the second laid the other way: their
	// rectangles are of one frame and overlap where the straps do.
	top := func(x0, x1, y float64) rect {
		_, r := flat(geom.Plate{N: geom.Vec3{Z: 1}, A: geom.Vec3{X: x0, Y: y, Z: 9}, B: geom.Vec3{X: x1, Y: y, Z: 9}, Width: 2})
		return r
	}
	assert.True(t, top(0, 20, 0).overlaps(top(30, 10, 1)))
	assert.False(t, top(0, 20, 0).overlaps(top(30, 20, 1)))
	assert.False(t, top(0, 20, 0).overlaps(top(30, 10, 2)))
	along := func(y0, y1 float64) rect {
		_, r := flat(geom.Plate{N: geom.Vec3{Z: 1}, A: geom.Vec3{X: 5, Y: y0, Z: 9}, B: geom.Vec3{X: 5, Y: y1, Z: 9}, Width: 2})
		return r
	}
	assert.True(t, along(0, 20).overlaps(along(30, 10)))
	assert.False(t, along(0, 20).overlaps(along(30, 20)))
}

func TestOverlapIsMoreThanAnEighthBothWays(t *testing.T) {
	a := rect{0, 10, 0, 10, 3.05}
	for _, c := range []struct {
		b    rect
		want bool
	}{
		{rect{9.8, 20, 9.8, 20, 3.05}, true},
		{rect{9.9, 20, 0, 10, 3.05}, false},
		{rect{0, 10, 9.9, 20, 3.05}, false},
		{rect{-10, 0.2, -10, 0.2, 3.05}, true},
		{rect{-10, 0.1, 0, 10, 3.05}, false},
		{rect{4, 5, 4, 5, 3.05}, true},
		{rect{4, 5, 4, 5, 3.1}, true},   // flush to a sixteenth, on both sides of 3 1/16
		{rect{4, 5, 4, 5, 3.12}, false}, // 0.07 apart
	} {
		assert.Equal(t, c.want, a.overlaps(c.b), "%v", c.b)
		assert.Equal(t, c.want, c.b.overlaps(a), "%v", c.b)
	}
	// A sixteenth off to the last bit is flush still.
	assert.True(t, rect{0, 10, 0, 10, 3.0625}.overlaps(rect{0, 10, 0, 10, 3.125}))
	assert.False(t, rect{0, 10, 0, 10, 3.0625}.overlaps(rect{0, 10, 0, 10, 3.126}))
}

func TestFacesOfAStud(t *testing.T) {
	// A wall along y: from outside, that is from the east, stations run north. The
	// stud stands at 15.25 to 16.75 in 5.5 of depth, which goes west.
	f := geom.NewFrame(geom.Vec2{X: 100}, geom.Vec2{X: 100, Y: 200})
	for face, want := range map[plan.Face]struct {
		at, n, along geom.Vec3
		breadth      float64
	}{
		"outside": {geom.Vec3{X: 100, Y: 16, Z: 7}, geom.Vec3{X: 1}, geom.Vec3{Y: 1}, 1.5},
		"inside":  {geom.Vec3{X: 94.5, Y: 16, Z: 7}, geom.Vec3{X: -1}, geom.Vec3{Y: 1}, 1.5},
		"left":    {geom.Vec3{X: 97.25, Y: 15.25, Z: 7}, geom.Vec3{Y: -1}, geom.Vec3{X: -1}, 5.5},
		"right":   {geom.Vec3{X: 97.25, Y: 16.75, Z: 7}, geom.Vec3{Y: 1}, geom.Vec3{X: -1}, 5.5},
	} {
		g := facingOf(f, 15.25, 16.75, 5.5, face)
		assert.InDelta(t, 0, g.at(7, 0).Sub(want.at).Len(), 1e-9, face)
		assert.InDelta(t, 0, g.n.Sub(want.n).Len(), 1e-9, face)
		assert.InDelta(t, 0, g.at(7, 2).Sub(want.at.Add(want.along.Mul(2))).Len(), 1e-9, face)
		assert.Equal(t, want.breadth, g.breadth, face)
	}
}

func TestPiecesSideBySide(t *testing.T) {
	// Of 2 in with an eighth between: one in the middle, two at 1.0625 to each
	// side, three at 2.125.
	assert.Equal(t, 0.0, spread(0, 1, 2))
	assert.Equal(t, []float64{-1.0625, 1.0625}, []float64{spread(0, 2, 2), spread(1, 2, 2)})
	assert.Equal(t, []float64{-2.125, 0, 2.125}, []float64{spread(0, 3, 2), spread(1, 3, 2), spread(2, 3, 2)})
	// Without a width a piece takes a stud's edge.
	p := &Piece{Item: &hardware.Item{Item: &plan.Item{}}}
	assert.Equal(t, 1.5, p.Item.Across())
	p.Item.Width = 0.5
	assert.Equal(t, 0.5, p.Item.Across())
}

func TestBreadthOfAMemberAtAJoint(t *testing.T) {
	w, other := &plan.Wall{Name: "a"}, &plan.Wall{Name: "b"}
	j := &framing.Joint{Wall: w, Station: 10}
	two := plan.Lumber{Ply: 2, Breadth: 1.5, Depth: 5.5}
	check := func(m *framing.Member, a, b float64) {
		t.Helper()
		s0, s1 := breadthAt(j, m)
		assert.Equal(t, [2]float64{a, b}, [2]float64{s0, s1})
	}
	check(&framing.Member{Wall: w, S0: 3, S1: 5, B: geom.Vec3{Z: 92}}, 3, 5)
	check(&framing.Member{Wall: other, S0: 3, S1: 5, Section: two}, 8.5, 11.5)
	check(&framing.Member{Section: two}, 8.5, 11.5)
	check(&framing.Member{}, 9.25, 10.75)
	check(nil, 9.25, 10.75)
}

func TestHeightsOfThePlates(t *testing.T) {
	w := &plan.Wall{}
	plate := func(r plan.Role, z0 float64) *framing.Member {
		return &framing.Member{Role: r, Section: two6, Z0: z0, Z1: z0 + 1.5, A: geom.Vec3{Z: z0}, B: geom.Vec3{X: 90, Z: z0}}
	}
	stud := &framing.Member{Role: plan.Stud, Z1: 100}
	lower, upper := plate(plan.TopPlate, 100), plate(plan.UpperPlate, 101.5)
	j := func(ms ...*framing.Member) *framing.Joint {
		return &framing.Joint{Kind: plan.StudTop, Wall: w, Level: &plan.Level{}, At: geom.Vec3{Z: 77}, Members: ms}
	}
	top, p := plates(j(stud, lower, upper))
	assert.Equal(t, 103.0, top)
	assert.Same(t, upper, p)
	top, p = plates(j(stud, upper, lower))
	assert.Equal(t, 103.0, top)
	assert.Same(t, upper, p)
	top, p = plates(j(stud, lower))
	assert.Equal(t, 103.0, top, "the upper plate lies on it, named or not")
	assert.Same(t, lower, p)
	off := j(stud, lower)
	off.Wall = nil
	top, _ = plates(off)
	assert.Equal(t, 101.5, top)
	top, p = plates(j(stud))
	assert.Equal(t, 77.0, top)
	assert.Nil(t, p)
	// On a plate that climbs 3 in 4 the two, 1.5 each, are 1.25 times as thick plumb:
	// 100 + 3.75.
	rake := plate(plan.UpperPlate, 101.5)
	rake.A, rake.B = geom.Vec3{Z: 60}, geom.Vec3{X: 80, Z: 120}
	top, _ = plates(j(stud, rake))
	assert.InDelta(t, 103.75, top, 1e-9)
	on := j(stud, rake)
	on.Kind = plan.RafterPlate
	top, _ = plates(on)
	assert.Equal(t, 77.0, top, "a rafter sits where the joint says")
}

func TestWallsMeetAndWhichWayTheyGo(t *testing.T) {
	s := geom.NewFrame(geom.Vec2{X: 10, Y: 5}, geom.Vec2{X: 110, Y: 5})
	e := geom.NewFrame(geom.Vec2{X: 110, Y: 5}, geom.Vec2{X: 110, Y: 95})
	p, ok := meet(s, e)
	require.True(t, ok)
	assert.InDelta(t, 0, p.Sub(geom.Vec2{X: 110, Y: 5}).Len(), 1e-9)
	p, ok = meet(e, s)
	require.True(t, ok)
	assert.InDelta(t, 0, p.Sub(geom.Vec2{X: 110, Y: 5}).Len(), 1e-9)
	_, ok = meet(s, geom.NewFrame(geom.Vec2{Y: 9}, geom.Vec2{X: 50, Y: 9}))
	assert.False(t, ok)
	w := &plan.Wall{From: geom.Vec2{X: 10, Y: 5}, To: geom.Vec2{X: 110, Y: 5}}
	assert.Equal(t, geom.Vec2{X: -1}, away(s, w, geom.Vec2{X: 110, Y: 5}).Mul(1))
	assert.Equal(t, geom.Vec2{X: 1}, away(s, w, geom.Vec2{X: 10, Y: 5}))
}

func TestHolesOfHoldDownsAndStraps(t *testing.T) {
	l := &plan.Level{Floor: 100, Subfloor: 0.75}
	w := &plan.Wall{To: geom.Vec2{X: 96}, Exterior: true, Level: l}
	around := ring(l, 96, 60)
	it := func(k plan.ItemKind, i plan.Item) *hardware.Item {
		return &hardware.Item{Item: &i, Kind: hardware.KindNamed(k)}
	}
	piece := func(i *hardware.Item, face plan.Face, n geom.Vec3, z0, z1 float64) *Piece {
		return &Piece{
			Joint: &framing.Joint{Wall: w, Level: l}, Item: i,
			Lie: Lie{Face: face, Z0: z0, Z1: z1, Path: []geom.Vec3{{X: 16, Y: 5.5, Z: z0}}, Bands: []geom.Band{{{N: n}}}},
		}
	}
	long := it("long strap", plan.Item{Width: 2, Thickness: 0.06})
	holes := func(p *Piece) []*Hole { return holes(p, around) }
	h := holes(piece(long, "inside", geom.Vec3{Y: 1}, 80, 120))
	require.Len(t, h, 1)
	assert.InDeltaSlice(t, []float64{2.5, 0.56}, h[0].Size[:], 1e-9)
	assert.InDelta(t, 0, h[0].At.Sub(geom.Vec3{X: 16, Y: 5.78, Z: 100}).Len(), 1e-9)
	// On a stud's side the hole is as long across the wall.
	for face, n := range map[plan.Face]float64{"left": -1, "right": 1} {
		h = holes(piece(long, face, geom.Vec3{X: n}, 80, 120))
		require.Len(t, h, 1)
		assert.InDeltaSlice(t, []float64{0.56, 2.5}, h[0].Size[:], 1e-9, face)
		assert.InDelta(t, 16+n*0.28, h[0].At.X, 1e-9, face)
	}
	for name, p := range map[string]*Piece{
		"outside":          piece(long, "outside", geom.Vec3{Y: -1}, 80, 120),
		"over the floor":   piece(long, "inside", geom.Vec3{Y: 1}, 99.5, 120),
		"under the floor":  piece(long, "inside", geom.Vec3{Y: 1}, 80, 99),
		"a single without": piece(it("hold-down", plan.Item{Rod: .625}), "right", geom.Vec3{X: 1}, 80, 120),
		"no strap":         piece(it("clip", plan.Item{}), "inside", geom.Vec3{Y: 1}, 80, 120),
	} {
		assert.Empty(t, holes(p), name)
	}
	single := piece(it("hold-down", plan.Item{Rod: .625}), "right", geom.Vec3{X: 1}, 80, 120)
	single.Cut = 20
	h = holes(single)
	require.Len(t, h, 1)
	assert.True(t, h[0].Round)
	assert.Equal(t, [2]float64{0.6875, 0.6875}, h[0].Size)
	slab := piece(long, "inside", geom.Vec3{Y: 1}, 80, 120)
	slab.Joint.Level = &plan.Level{Floor: 100}
	assert.Empty(t, holes(slab), "no subfloor, no hole")
	// Against the outer end of a wall the strap hangs down beside the floor.
	end := piece(long, "left", geom.Vec3{X: -1}, 80, 120)
	end.Path[0] = geom.Vec3{Y: 2.75}
	assert.Empty(t, holes(end), "outside of the walls")
	end.Bands[0][0].N = geom.Vec3{X: 1}
	assert.Len(t, holes(end), 1, "within them")
}

// ring is the exterior walls round a floor of x by y from the origin.
func ring(l *plan.Level, x, y float64) (out []*plan.Wall) {
	at := []geom.Vec2{{}, {X: x}, {X: x, Y: y}, {Y: y}, {}}
	for i, p := range at[:4] {
		out = append(out, &plan.Wall{From: p, To: at[i+1], Exterior: true, Level: l})
	}
	return out
}
