package geom

import (
	"math"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"
)

// below, above and so on are half spaces square to an axis.
func below(z float64) Plane { return Plane{Vec3{Z: 1}, z} }
func above(z float64) Plane { return Plane{Vec3{Z: -1}, -z} }
func east(x float64) Plane  { return Plane{Vec3{X: -1}, -x} }
func west(x float64) Plane  { return Plane{Vec3{X: 1}, x} }

func volume(list []Solid) (v float64) {
	for _, s := range list {
		v += s.Volume()
	}
	return v
}

func TestCarveTakesTheInsideOfAllPlanes(t *testing.T) {
	c := cube(0, 0, 0, 4) // 64 in³
	for _, x := range []struct {
		name   string
		planes []Plane
		left   float64
		parts  int
	}{
		// x > 1 and z < 3 leaves the slab x < 1, 1 x 4 x 4 = 16, and over the
		// rest the slab z > 3, 3 x 4 x 1 = 12.
		{"a corner", []Plane{east(1), below(3)}, 28, 2},
		// The slot x 1..3 goes right through: 1 x 4 x 4 stands on each side.
		{"a slot", []Plane{east(1), west(3)}, 32, 2},
		{"all of it", []Plane{west(5)}, 0, 0},
		{"nothing, it stands aside", []Plane{east(5)}, 64, 1},
		{"nothing, it only touches", []Plane{east(4)}, 64, 1},
		{"nothing, though a plane that does not matter cuts it", []Plane{east(1), east(5)}, 64, 1},
		{"a sliver is no part: 4 x 4 x 0.000005 = 0.00008", []Plane{below(4 - 5e-6)}, 0, 0},
	} {
		t.Run(x.name, func(t *testing.T) {
			got := Carve([]Solid{c}, x.planes)
			assert.Len(t, got, x.parts)
			assert.InDelta(t, x.left, volume(got), 1e-6)
			for i, a := range got {
				for _, b := range got[:i] {
					assert.False(t, Overlap(a, b, 1e-3))
				}
			}
		})
	}
	// Each solid of a list is carved by itself; those aside stay in their place.
	got := Carve([]Solid{cube(9, 0, 0, 1), c, cube(9, 9, 0, 2)}, []Plane{west(2)})
	require.Len(t, got, 3)
	assert.InDeltaSlice(t, []float64{1, 32, 8}, []float64{got[0].Volume(), got[1].Volume(), got[2].Volume()}, 1e-6)
}

func TestPlanesOfACubeHoldItAndNoMore(t *testing.T) {
	p := cube(1, 2, 3, 2).Planes()
	require.Len(t, p, 6)
	in := func(v Vec3) bool {
		for _, q := range p {
			if q.N.Dot(v) > q.C+Eps {
				return false
			}
		}
		return true
	}
	assert.True(t, in(Vec3{1, 2, 3}) && in(Vec3{3, 4, 5}) && in(Vec3{2, 3, 4}))
	for _, v := range []Vec3{{0.9, 3, 4}, {3.1, 3, 4}, {2, 1.9, 4}, {2, 4.1, 4}, {2, 3, 2.9}, {2, 3, 5.1}} {
		assert.False(t, in(v), "%v", v)
	}
	for _, q := range p {
		assert.InDelta(t, 1, q.N.Len(), Eps)
	}
	flat := Solid{Faces: [][]Vec3{{{}, {X: 1}, {X: 2}}}} // a face without area has no normal
	assert.Empty(t, flat.Planes())
}

func TestPartOfALineWithinPlanes(t *testing.T) {
	p := cube(1, 1, 1, 2).Planes() // 1..3 each way
	for _, x := range []struct {
		name   string
		a, d   Vec3
		lo, hi float64
		t0, t1 float64
		ok     bool
	}{
		{"through it", Vec3{0, 2, 2}, Vec3{X: 1}, 0, 9, 1, 3, true},
		{"the other way", Vec3{9, 2, 2}, Vec3{X: -2}, 0, 9, 3, 4, true}, // (9 - 3) / 2 to (9 - 1) / 2
		{"it starts inside", Vec3{2, 2, 2}, Vec3{Z: 1}, 0, 9, 0, 1, true},
		{"it ends inside", Vec3{2, 0, 2}, Vec3{Y: 1}, 0, 2, 1, 2, true},
		{"beside it", Vec3{0, 4, 2}, Vec3{X: 1}, 0, 9, 0, 0, false},
		{"short of it", Vec3{0, 2, 2}, Vec3{X: 1}, 0, 0.5, 0, 0, false},
		// y = 2.5 + t passes 3 at 0.5; x = t enters at 1: they never hold at once.
		{"past its corner", Vec3{0, 2.5, 2}, Vec3{1, 1, 0}, 0, 9, 0, 0, false},
	} {
		t.Run(x.name, func(t *testing.T) {
			t0, t1, ok := Within(p, x.a, x.d, x.lo, x.hi)
			require.Equal(t, x.ok, ok)
			assert.InDelta(t, x.t0, t0, 1e-9)
			assert.InDelta(t, x.t1, t1, 1e-9)
		})
	}
}

func TestGridFindsWhatTouches(t *testing.T) {
	g := NewGrid[string]()
	box := func(x0, y0, z0, x1, y1, z1 float64) (lo, hi Vec3) { return Vec3{x0, y0, z0}, Vec3{x1, y1, z1} }
	add := func(name string, lo, hi Vec3) { g.Add(name, lo, hi, nil) }
	lo, hi := box(0, 0, 0, 10, 10, 10)
	add("first", lo, hi)
	lo, hi = box(-80, 5, 0, 200, 6, 10) // over nine cells of 36 in
	add("long", lo, hi)
	lo, hi = box(100, 100, 20, 110, 110, 30)
	add("far", lo, hi)
	find := func(x0, y0, z0, x1, y1, z1 float64) []string { return g.Within(box(x0, y0, z0, x1, y1, z1)) }
	assert.Equal(t, []string{"first", "long"}, find(0, 0, 0, 300, 10, 10), "each once, as added")
	assert.Equal(t, []string{"long"}, find(150, 0, 0, 160, 10, 10))
	assert.Equal(t, []string{"long"}, find(-75, 0, 0, -70, 10, 10))
	assert.Equal(t, []string{"far"}, find(110, 110, 30, 120, 120, 40), "a corner that touches")
	assert.Equal(t, []string{"far"}, find(90, 90, 10, 100, 100, 20), "and the opposite one")
	for _, aside := range [][6]float64{
		{110.1, 100, 20, 111, 110, 30},
		{98, 100, 20, 99.9, 110, 30},
		{100, 110.1, 20, 110, 111, 30},
		{100, 98, 20, 110, 99.9, 30},
		{100, 100, 30.1, 110, 110, 31},
		{100, 100, 18, 110, 110, 19.9},
	} {
		assert.Empty(t, find(aside[0], aside[1], aside[2], aside[3], aside[4], aside[5]), "%v", aside)
	}
}

// A thing taken out is found no more and the others are; a search that is told
// to stop does.
func TestGridLetsGo(t *testing.T) {
	g := NewGridOf[string](8)
	long := g.Add("long", Vec3{X: -20, Y: 1}, Vec3{X: 20, Y: 2}, nil)
	slant := g.Add("slant", Vec3{}, Vec3{X: 20, Y: 20}, func(x, y int) bool { return x == y })
	found := func() (names []string) {
		g.Each(Vec3{X: -9, Y: -9}, Vec3{X: 30, Y: 30}, func(_ int, name string) bool { names = append(names, name); return true })
		return names
	}
	assert.Equal(t, []string{"long", "slant"}, found(), "each once")
	told := 0
	g.Each(Vec3{X: -9, Y: -9}, Vec3{X: 30, Y: 30}, func(int, string) bool { told++; return false })
	assert.Equal(t, 1, told)
	g.Remove(long)
	assert.Equal(t, []string{"slant"}, found())
	g.Remove(slant)
	assert.Empty(t, found())
}

func TestSlantThingLiesInTheCellsAlongItsAxis(t *testing.T) {
	// From (0, 0) to (360, 360) the cells on the diagonal are touched. The middle
	// of cell (i, j) lies 36 |i - j| / sqrt 2 = 25.46 |i - j| from the axis; half a
	// cell's diagonal is 36 sqrt 2 / 2 = 25.46 as well, and twice 1.5 makes
	// 28.46: one cell aside is in, two, 50.9, are not.
	on := Slant(Vec2{}, Vec2{360, 360}, 1.5)
	require.NotNil(t, on)
	for i := range 10 {
		for j := range 10 {
			assert.Equal(t, i-j <= 1 && j-i <= 1, on(i, j), "%d %d", i, j)
		}
	}
	assert.Nil(t, Slant(Vec2{}, Vec2{35, 0}, 1.5), "short: all cells")
	assert.NotNil(t, Slant(Vec2{}, Vec2{37, 0}, 1.5))
	// Along y = 0 from x = 100: the row y -36..0 and 0..36 have their middles 18 in
	// off, the next ones 54, past 25.46 + 3.
	on = Slant(Vec2{100, 0}, Vec2{300, 0}, 1.5)
	assert.True(t, on(4, 0) && on(4, -1))
	assert.False(t, on(4, 1) || on(4, -2))
}

func TestVectorsByHand(t *testing.T) {
	a, b := Vec2{3, 4}, Vec2{-2, 5}
	assert.Equal(t, Vec2{1, 9}, a.Add(b))
	assert.Equal(t, Vec2{5, -1}, a.Sub(b))
	assert.Equal(t, 14.0, a.Dot(b))   // -6 + 20
	assert.Equal(t, 23.0, a.Cross(b)) // 15 + 8: b lies to the left
	assert.Equal(t, 5.0, a.Len())
	assert.InDelta(t, 0, a.Unit().Sub(Vec2{0.6, 0.8}).Len(), 1e-12)
	assert.Equal(t, Vec2{}, Vec2{}.Unit())
	assert.Equal(t, Vec2{-4, 3}, a.Left())
	p, q := Vec3{1, 2, 3}, Vec3{4, -5, 6}
	assert.Equal(t, 12.0, p.Dot(q))                   // 4 - 10 + 18
	assert.Equal(t, Vec3{27, 6, -13}, p.Cross(q))     // 12 + 15, 12 - 6, -5 - 8
	assert.Equal(t, Vec3{0, 0, 1}, Vec3{Z: 7}.Unit()) // along an axis
	assert.Equal(t, Vec3{}, Vec3{}.Unit())            // no direction
	assert.InDelta(t, 7, Vec3{2, 3, 6}.Len(), 1e-12)  // 4 + 9 + 36 = 49
	assert.Equal(t, Vec2{1, 2}, p.Flat())             // the height is dropped
	assert.Equal(t, Vec3{3, 4, 9}, a.Up(9))           // and given
}

func TestFrameOfASlantWall(t *testing.T) {
	// A wall toward (3, 4): 5 in along it from (10, 20) is (13, 24); its inside is
	// to the left, toward (-4, 3).
	f := NewFrame(Vec2{10, 20}, Vec2{40, 60})
	got := f.At(5, 10, 7) // 10 in deep: (-8, 6) farther
	assert.InDelta(t, 0, got.Sub(Vec3{5, 30, 7}).Len(), 1e-9)
	s, d := f.Local(Vec2{5, 30})
	assert.InDelta(t, 5, s, 1e-9)
	assert.InDelta(t, 10, d, 1e-9)
	// 2..6 along, 1..4 deep, 5..10 up: 4 x 3 x 5.
	b := f.Box(2, 6, 1, 4, 5, 10)
	assert.InDelta(t, 60, b.Volume(), 1e-9)
	lo, hi := b.Along(Vec3{0.6, 0.8, 0}) // (10, 20) lies at 6 + 16 = 22
	assert.InDelta(t, 24, lo, 1e-9)
	assert.InDelta(t, 28, hi, 1e-9)
	lo, hi = b.Along(Vec3{Z: 1})
	assert.InDeltaSlice(t, []float64{5, 10}, []float64{lo, hi}, 1e-9)
}

func TestBoundsOfATurnedBox(t *testing.T) {
	// Edges (3, 3, 0), (-1, 1, 0) and (0, 0, 2) from (1, 1, 1).
	lo, hi := Box(Vec3{1, 1, 1}, Vec3{3, 3, 0}, Vec3{-1, 1, 0}, Vec3{Z: 2}).Bounds()
	assert.Equal(t, Vec3{0, 1, 1}, lo)
	assert.Equal(t, Vec3{4, 5, 3}, hi)
}

func TestBoundsOfABoxWhereAllIsNegative(t *testing.T) {
	lo, hi := cube(-9, -8, -7, 2).Bounds()
	assert.Equal(t, Vec3{-9, -8, -7}, lo)
	assert.Equal(t, Vec3{-7, -6, -5}, hi)
	lo, hi = cube(7, 8, 9, 2).Bounds()
	assert.Equal(t, Vec3{7, 8, 9}, lo)
	assert.Equal(t, Vec3{9, 10, 11}, hi)
}

func TestOverlapNeedsEveryKindOfAxis(t *testing.T) {
	// Two square bars turned to stand on their edges, one along x under one along
	// y: their boxes, 2 sqrt 2 = 2.83 in high, meet when the lower's axis is less than 2.83
	// under the upper's, and so do the bars, whose ridges cross there. The plane
	// between them is level and no face of either: only the cross product of the
	// bars' directions finds it.
	r := math.Sqrt2
	bar := func(z float64, along, side Vec3) Solid {
		low := Vec3{Z: z - r}.Sub(along.Mul(0.5))
		return Box(low, along, side.Mul(r).Add(Vec3{Z: r}), side.Mul(-r).Add(Vec3{Z: r}))
	}
	lower := bar(0, Vec3{X: 20}, Vec3{Y: 1})
	assert.True(t, Overlap(lower, bar(2.7, Vec3{Y: 20}, Vec3{X: 1}), 0.01))
	assert.False(t, Overlap(lower, bar(2.9, Vec3{Y: 20}, Vec3{X: 1}), 0.01))
	// Bars that lean: along (1, 0, 1) and (0, 1, 1) the parting direction, their
	// cross product (-1, -1, 1), is no axis of the plan.
	leanA := Box(Vec3{-10, 0, -10}, Vec3{20, 0, 20}, Vec3{0, 1, 0}, Vec3{-0.5, 0, 0.5})
	// Shift by 3 along (-1, -1, 1): farther than both bars are thick that way.
	leanB := Box(Vec3{-3, -13, -7}, Vec3{0, 20, 20}, Vec3{1, 0, 0}, Vec3{0, -0.5, 0.5})
	assert.False(t, Overlap(leanA, leanB, 0.01))
	assert.True(t, Overlap(leanA, Box(Vec3{0, -10, -10}, Vec3{0, 20, 20}, Vec3{1, 0, 0}, Vec3{0, -0.5, 0.5}), 0.01))
	// A wedge's sloping face parts it from a cube over it: z <= x over 0..4, and
	// the cube from (0, 0, 2.1) of side 2 stands clear of the slope, x - z < 0.
	wedge := Prism([]Vec3{{}, {X: 4}, {X: 4, Z: 4}}, Vec3{Y: 4})
	assert.False(t, Overlap(wedge, cube(0, 0, 2.1, 2), 0.01))
	assert.True(t, Overlap(wedge, cube(0, 0, 1.5, 2), 0.01)) // its corner (2, 2, 1.5) is under the slope
}

func TestPrismLeavesItsBaseAlone(t *testing.T) {
	base := []Vec3{{0, 0, 0}, {0, 3, 0}, {4, 0, 0}} // clockwise from above
	Prism(base, Vec3{Z: 1})
	assert.Equal(t, []Vec3{{0, 0, 0}, {0, 3, 0}, {4, 0, 0}}, base)
}

func TestClipOfWhatIsClippedKeepsItsFaces(t *testing.T) {
	// A cube of 4 cut off at x + z = 6 is 64 - 2 x 2 / 2 x 4 = 56 with 7 faces; cut
	// again at z = 3 the slope is half as long: 48 - 1 x 1 / 2 x 4 = 46.
	c := cube(0, 0, 0, 4).Clip(PlaneAt(Vec3{3, 0, 3}, Vec3{1, 0, 1}))
	require.Len(t, c.Faces, 7)
	assert.InDelta(t, 56, c.Volume(), 1e-6)
	c = c.Clip(below(3))
	require.Len(t, c.Faces, 7)
	assert.InDelta(t, 46, c.Volume(), 1e-6)
	// Cut down to the edge z = 2, x = 4: a box of 2 with 6 faces.
	c = c.Clip(below(2))
	require.Len(t, c.Faces, 6)
	assert.InDelta(t, 32, c.Volume(), 1e-6)
	assert.True(t, c.Clip(below(0)).Volume() < 1e-9)
	assert.InDelta(t, 32, c.Clip(above(0)).Volume(), 1e-6)
}

// Of segments that pass each other the distance is between their middle parts, else from
// an end of one to the other, or from end to end: 3-4-5 where they stand so.
func TestHowFarSegmentsAreApart(t *testing.T) {
	base := [2]Vec3{{}, {X: 10}}
	for _, c := range []struct {
		name string
		p, q [2]Vec3
		want float64
	}{
		{"they pass, 3 over", base, [2]Vec3{{5, -5, 3}, {5, 5, 3}}, 3},
		{"they cross", base, [2]Vec3{{5, -5, 0}, {5, 5, 0}}, 0},
		{"aslant, 3 over", base, [2]Vec3{{2, -5, 3}, {8, 5, 3}}, 3},
		{"side by side", base, [2]Vec3{{2, 2, 0}, {8, 2, 0}}, 2},
		{"in one line", base, [2]Vec3{{11, 0, 0}, {20, 0, 0}}, 1},
		{"in one line, back", base, [2]Vec3{{20, 0, 0}, {11.5, 0, 0}}, 1.5},
		{"before its start", base, [2]Vec3{{-2, -5, 0}, {-2, 5, 0}}, 2},
		{"past its end", base, [2]Vec3{{12, -5, 0}, {12, 5, 0}}, 2},
		{"ends short of it", base, [2]Vec3{{5, 9, 0}, {5, 2, 0}}, 2},
		{"begins short of it", base, [2]Vec3{{5, 2, 0}, {5, 9, 0}}, 2},
		{"from below", base, [2]Vec3{{5, -9, 0}, {5, -2, 0}}, 2},
		{"end to end, 3-4-5", base, [2]Vec3{{13, 4, 0}, {13, 9, 0}}, 5},
		{"start to start, 3-4-5", base, [2]Vec3{{-3, 4, 0}, {-9, 9, 0}}, 5},
		{"two points, 3-4-5", [2]Vec3{}, [2]Vec3{{3, 4, 0}, {3, 4, 0}}, 5},
		{"a point beside it", base, [2]Vec3{{7, 3, 4}, {7, 3, 4}}, 5},
		{"a long one beside a short one", [2]Vec3{{-100, 2, 0}, {100, 2, 0}}, [2]Vec3{{1, 0, 0}, {1.5, 1, 0}}, 1},
	} {
		for i, got := range []float64{
			Apart(c.p[0], c.p[1], c.q[0], c.q[1]), Apart(c.q[0], c.q[1], c.p[0], c.p[1]),
			Apart(c.p[1], c.p[0], c.q[0], c.q[1]), Apart(c.q[1], c.q[0], c.p[0], c.p[1]),
		} {
			assert.InDelta(t, c.want, got, 1e-9, "%s, way %d", c.name, i)
		}
	}
}

// A cube of half an inch has faces as any other; a line right along a face, and one a
// quarter of an inch inside of it, lie in the cube.
func TestASmallCubeIsACube(t *testing.T) {
	p := cube(0, 0, 0, 0.5).Planes()
	require.Len(t, p, 6)
	for _, y := range []float64{0, 0.25, 0.5} {
		t0, t1, ok := Within(p, Vec3{Y: y, Z: 0.25}, Vec3{X: 1}, -9, 9)
		assert.True(t, ok, "%v", y)
		assert.InDelta(t, 0, t0, 1e-9)
		assert.InDelta(t, 0.5, t1, 1e-9)
	}
	_, _, ok := Within(p, Vec3{Y: 0.75, Z: 0.25}, Vec3{X: 1}, -9, 9)
	assert.False(t, ok)
}

// A thing lies only in those of its cells that it is said to: here of two rows of three
// in the middle column, then in the lower row.
func TestAThingLiesInTheCellsItIsSaidTo(t *testing.T) {
	for name, c := range map[string]struct {
		on   func(x, y int) bool
		want [2][3]bool // by y and x
	}{
		"middle column": {func(x, _ int) bool { return x == 1 }, [2][3]bool{{false, true, false}, {false, true, false}}},
		"lower row":     {func(_, y int) bool { return y == 0 }, [2][3]bool{{true, true, true}, {false, false, false}}},
	} {
		g := NewGridOf[string](10)
		g.Add("it", Vec3{X: 1, Y: 1}, Vec3{X: 29, Y: 19}, c.on)
		for y := range 2 {
			for x := range 3 {
				at := Vec3{X: float64(10*x + 5), Y: float64(10*y + 5)}
				assert.Equal(t, c.want[y][x], len(g.Within(at, at)) > 0, "%s: cell %d, %d", name, x, y)
			}
		}
	}
}

// Of a band of 8, 5 1/2 and 8 in what lies past 9 in is 4 1/2 in of its second plate and
// the third; past 8 in the second and third whole; past its end nothing.
func TestWhatOfABandLiesPastAPlace(t *testing.T) {
	over := Band{
		{A: Vec3{Z: 90}, B: Vec3{Z: 98}, N: Vec3{Y: -1}},
		{A: Vec3{Z: 98}, B: Vec3{Y: 5.5, Z: 98}, N: Vec3{Z: 1}},
		{A: Vec3{Y: 5.5, Z: 98}, B: Vec3{Y: 5.5, Z: 90}, N: Vec3{Y: 1}},
	}
	for _, c := range []struct {
		s    float64
		want []float64 // lengths left
	}{{-1, []float64{8, 5.5, 8}}, {0, []float64{8, 5.5, 8}}, {2, []float64{6, 5.5, 8}}, {8, []float64{5.5, 8}}, {9, []float64{4.5, 8}}, {20, []float64{1.5}}, {21.5, nil}, {30, nil}} {
		var got []float64
		for _, p := range over.Past(c.s) {
			got = append(got, p.Len())
		}
		require.Len(t, got, len(c.want), "past %v", c.s)
		for i := range got {
			assert.InDelta(t, c.want[i], got[i], 1e-9, "past %v", c.s)
		}
	}
	assert.Equal(t, Vec3{Y: 1, Z: 98}, over.Past(9)[0].A)
	i, along := Band(nil).At(3)
	assert.Zero(t, i)
	assert.InDelta(t, 3, along, 1e-9)
}

// A slab touched by one of the planes that would carve it stays whole; of a cube of 2 in a
// corner of 1 in leaves 7 in³ in three parts.
func TestCarvingACorner(t *testing.T) {
	corner := []Plane{PlaneAt(Vec3{X: 2, Y: 2, Z: 2}, Vec3{X: -1}), PlaneAt(Vec3{X: 2, Y: 2, Z: 2}, Vec3{Y: -1}), PlaneAt(Vec3{X: 2, Y: 2, Z: 2}, Vec3{Z: -1})}
	left := Carve([]Solid{cube(1, 1, 1, 2)}, corner)
	total := 0.0
	for _, s := range left {
		total += s.Volume()
	}
	assert.Len(t, left, 3)
	assert.InDelta(t, 7, total, 1e-9)
	assert.Len(t, Carve([]Solid{cube(0, 0, 0, 2)}, corner), 1, "it only touches the corner")
}

// A cube of 2 in clipped through its middle is half of it with five more faces of the cube and a
// lid; clipped where it only touches it is all or nothing; a corner of it is a tetrahedron of
// 1/6 in³ with four faces.
func TestClippingACube(t *testing.T) {
	c := cube(0, 0, 0, 2)
	for _, x := range []struct {
		name   string
		p      Plane
		volume float64
		faces  int
	}{
		{"its lower half", Plane{Vec3{Z: 1}, 1}, 4, 6},
		{"its upper half", Plane{Vec3{Z: -1}, -1}, 4, 6},
		{"all of it", Plane{Vec3{Z: 1}, 2}, 8, 6},
		{"none", Plane{Vec3{Z: 1}, -1}, 0, 0},
		{"a corner", Plane{Vec3{1, 1, 1}, 1}, 1.0 / 6, 4},
		{"all but a corner", Plane{Vec3{-1, -1, -1}, -1}, 8 - 1.0/6, 7},
		{"along its diagonal", Plane{Vec3{1, -1, 0}, 0}, 4, 5},
	} {
		got := c.Clip(x.p)
		assert.InDelta(t, x.volume, got.Volume(), 1e-9, x.name)
		assert.Len(t, got.Faces, x.faces, x.name)
	}
}

// The outline of points about a normal: counterclockwise seen against it, each point once; of
// fewer than three there is none.
func TestOutlineOfPoints(t *testing.T) {
	pts := []Vec3{{2, 2, 5}, {0, 0, 5}, {2, 0, 5}, {0, 2, 5}, {2, 2, 5}, {2, 0, 5}}
	for _, n := range []Vec3{{Z: 1}, {Z: -3}} {
		loop := hull(pts, n)
		require.Len(t, loop, 4)
		assert.InDelta(t, 8, math.Abs(normal(loop).Z), 1e-9, "twice the area: no edge crosses another")
		assert.Positive(t, normal(loop).Dot(n))
	}
	assert.Nil(t, hull(pts[:2], Vec3{Z: 1}))
	assert.Nil(t, hull([]Vec3{{}, {X: 1}, {X: 1}, {}}, Vec3{Z: 1}))
	assert.Len(t, hull([]Vec3{{}, {X: 1}, {Y: 1}}, Vec3{Z: 1}), 3)
}

// The corners of a plate 2 in wide lie an inch to either side of its middle line.
func TestCornersOfAPlate(t *testing.T) {
	got := Plate{A: Vec3{Z: 10}, B: Vec3{Z: 20}, N: Vec3{Y: -1}, Width: 2}.Corners()
	assert.ElementsMatch(t, []Vec3{{X: -1, Z: 10}, {X: 1, Z: 10}, {X: 1, Z: 20}, {X: -1, Z: 20}}, got[:])
}

// Cosines of 8° and of 9° are 0.9903 and 0.9877: within 8° a face looks a way, and a
// line runs along another, whichever end comes first.
func TestFacingAndAlignedWithinEightDegrees(t *testing.T) {
	at := func(deg float64) Vec3 {
		sin, cos := math.Sincos(deg * math.Pi / 180)
		return Vec3{X: cos, Z: sin}
	}
	for deg, want := range map[float64]bool{0: true, 8: true, -8: true, 9: false, 90: false} {
		assert.Equal(t, want, Facing(at(deg), Vec3{X: 1}), "%v", deg)
		assert.Equal(t, want, Aligned(at(deg), Vec3{X: 1}), "%v", deg)
		assert.False(t, Facing(at(deg+180), Vec3{X: 1}), "%v", deg)
		assert.Equal(t, want, Aligned(at(deg+180), Vec3{X: 1}), "%v", deg)
	}
}
