package roofplan

import (
	"math"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"galewright/plan"
	"galewright/plan/geom"
	"galewright/plan/plantest"
)

// A rafter's kind by what it meets; none of these stands outside a wall.
func TestKindsOfRafters(t *testing.T) {
	for _, c := range []struct {
		low, high EdgeKind
		want      RunKind
	}{
		{Eave, Ridge, Common},
		{Eave, Wall, Common},
		{Eave, Valley, Common},
		{Eave, Hip, HipJack},
		{Rake, Hip, HipJack},
		{Valley, Ridge, ValleyJack},
		{Valley, Wall, ValleyJack},
		{Valley, Hip, Cripple},
		{Valley, Valley, Cripple},
	} {
		run := &Run{Face: &Face{}, LowEnd: End{Kind: c.low}, HighEnd: End{Kind: c.high}}
		assert.Equal(t, c.want, run.kindOf(), "%v to %v", c.low, c.high)
	}
}

// A shed 3 in 12 with a hip at either end of its high wall.
func TestAShedWithHipEnds(t *testing.T) {
	for _, c := range []struct {
		high plan.Side
		ends [2]bool
		want [4]float64
	}{
		{plan.North, [2]bool{true, false}, [4]float64{South: 0.25, West: 0.25}},
		{plan.North, [2]bool{false, true}, [4]float64{South: 0.25, East: 0.25}},
		{plan.South, [2]bool{true, true}, [4]float64{North: 0.25, West: 0.25, East: 0.25}},
		{plan.West, [2]bool{true, false}, [4]float64{East: 0.25, South: 0.25}},
		{plan.East, [2]bool{false, true}, [4]float64{West: 0.25, North: 0.25}},
	} {
		got, err := Slopes(plan.ShedRoof, Shape{Slope: 0.25, High: c.high, HipEnd: c.ends})
		require.NoError(t, err)
		assert.Equal(t, c.want, got, "high side %s, ends %v", c.high, c.ends)
	}
}

// The sides in the order south, east, north, west of the house as written: turned to the left its south side looks east.
func TestSidesOfAHouseAsItLies(t *testing.T) {
	for _, c := range []struct {
		lay  plan.Lay
		want [4]int
	}{
		{plan.Lay{}, [4]int{South, East, North, West}},
		{plan.Turned(1), [4]int{East, North, West, South}},
		{plan.Turned(2), [4]int{North, West, South, East}},
		{plan.MirrorX, [4]int{South, West, North, East}},
		{plan.MirrorY, [4]int{North, East, South, West}},
	} {
		assert.Equal(t, c.want, SidesOf(c.lay), "%+v", c.lay)
	}
}

// A layout counts as the same within a sixteenth of an inch, as a tape shows it, of one that starts at 5; whole
// spaces off it is the same, and one of another spacing is not asked.
func TestLayoutsAreOneWithinASixteenth(t *testing.T) {
	for _, c := range []struct {
		second, spacing float64
		faults          int
	}{{0.061, 16, 0}, {0.065, 16, 1}, {-0.061, 16, 0}, {-0.065, 16, 1}, {16.061, 16, 0}, {15.93, 16, 1}, {8, 16, 1}, {8, 24, 0}} {
		a, b := body(t, "a", "gable", "x", pt(5, 0), pt(245, 144), 6, 0), body(t, "b", "gable", "x", pt(245, 0), pt(400, 144), 6, 0)
		zero := 0.0
		a.Layout, b.Layout, b.Spacing = &zero, &c.second, c.spacing
		_, faults := New([]*Body{a, b})
		require.Len(t, faults, c.faults, "%+v", c)
		for _, f := range faults {
			assert.Same(t, b, f.Body)
			assert.Equal(t, "the layout of roof b is not that of roof a, and rafters of both meet at one ridge or lie in one plane", f.Summary)
		}
	}
}

// The layout of a roof along its ridge says nothing of the face of its hip end, which stays counted from its middle.
func TestALayoutIsNotThatOfAHipsFace(t *testing.T) {
	bodies, at := corner(t), 5.0
	bodies[0].Layout = &at
	r, faults := New(bodies)
	require.Empty(t, faults)
	west, _ := stationsOf(faceOf(t, r, "wing", West))
	plantest.Near(t, append([]float64{-215.25}, every(-204, 116)...), west, 1e-9)
	south, _ := stationsOf(faceOf(t, r, "main", South))
	assert.Contains(t, south, 21.0)
}

// In a mirrored house the rafters of a gable from 10 to 107 are counted from its east end down, the first as written
// first: 106.25 flush, 91 ... 11 would stand in the one flush at 10.75 and goes. Along y the mirror changes nothing, and
// a half turn does the same there.
func TestRaftersOfAMirroredHouse(t *testing.T) {
	down := []float64{106.25, 91, 75, 59, 43, 27, 10.75}
	up := []float64{10.75, 26, 42, 58, 74, 90, 106.25}
	for _, c := range []struct {
		axis plan.Axis
		lay  plan.Lay
		want []float64
	}{
		{plan.AxisX, plan.Lay{}, up},
		{plan.AxisX, plan.MirrorX, down},
		{plan.AxisX, plan.MirrorY, up},
		{plan.AxisX, plan.Turned(2), down},
		{plan.AxisY, plan.Lay{}, up},
		{plan.AxisY, plan.MirrorX, up},
		{plan.AxisY, plan.MirrorY, down},
		{plan.AxisY, plan.Turned(2), down},
	} {
		b := body(t, "a", plan.GableRoof, c.axis, pt(10, 10), pt(107, 107), 6, 12)
		b.Lay = c.lay
		r, faults := New([]*Body{b})
		require.Empty(t, faults)
		require.Len(t, r.Faces, 2)
		for _, f := range r.Faces {
			at, _ := stationsOf(f)
			plantest.Near(t, c.want, at, 1e-9)
		}
	}
}

// Where a valley that runs on past its end meets the edge of the face there: of one 100 by 80, from (20, 20) at 45
// degrees the north edge at (80, 80), from (50, 20) the east one at (100, 70); the plane climbs 1 in 2 from 100 at the
// south. Out of the roof it meets nothing.
func TestWhereAValleyRunsOn(t *testing.T) {
	f := &Face{Plane: Plane{G: pt(0, 0.5), C: 100}, Outline: square(0, 0, 100, 80)}
	r := &Roof{Faces: []*Face{f}}
	for _, c := range []struct {
		a, b geom.Vec2
		want geom.Vec3
		ok   bool
	}{
		{pt(10, 10), pt(20, 20), pt(80, 80).Up(140), true},
		{pt(40, 10), pt(50, 20), pt(100, 70).Up(135), true},
		{pt(40, 40), pt(30, 50), pt(0, 80).Up(140), true},
		{pt(60, 40), pt(50, 30), pt(20, 0).Up(100), true},
		{pt(40, 40), pt(30, 30), pt(0, 0).Up(100), true},
		{pt(50, 40), pt(60, 40), pt(100, 40).Up(120), true},
		{pt(40, 0), pt(50, 0), pt(100, 0).Up(100), true}, // along the eave to its end
		{pt(80, 60), pt(100, 80), geom.Vec3{}, false},
		{pt(150, 60), pt(160, 70), geom.Vec3{}, false},
	} {
		got, ok := r.onward(&Line{Kind: Valley, A: c.a.Up(0), B: c.b.Up(0)})
		assert.Equal(t, c.ok, ok, "from %v to %v", c.a, c.b)
		assert.InDelta(t, 0, got.Sub(c.want).Len(), 1e-9, "from %v to %v: %v", c.a, c.b, got)
	}
}

// The middle of a polygon is the mean of its corners.
func TestTheMiddleOfAPolygon(t *testing.T) {
	assert.InDelta(t, 0, middle(square(10, 20, 30, 60)).Sub(pt(20, 40)).Len(), 1e-12)
	assert.InDelta(t, 0, middle([]geom.Vec2{pt(0, 0), pt(9, 0), pt(0, 6)}).Sub(pt(3, 2)).Len(), 1e-12)
}

// A turn is the angle from one way to the other, left positive; places go by x, then y.
func TestTurnsAndOrder(t *testing.T) {
	assert.InDelta(t, math.Pi/2, angle(pt(2, 0), pt(0, 3)), 1e-12)
	assert.InDelta(t, -math.Pi/4, angle(pt(1, 0), pt(1, -1)), 1e-12)
	assert.InDelta(t, 3*math.Pi/4, angle(pt(1, 0), pt(-1, 1)), 1e-12)
	for _, c := range []struct {
		a, b geom.Vec2
		want int
	}{{pt(1, 9), pt(2, 0), -1}, {pt(2, 0), pt(1, 9), 1}, {pt(1, 1), pt(1, 2), -1}, {pt(1, 2), pt(1, 1), 1}, {pt(1, 1), pt(1, 1), 0}} {
		assert.Equal(t, c.want, byPlace(c.a, c.b), "%v %v", c.a, c.b)
	}
}

// Room for the ridge does not hang on where the house stands, nor on the axis: 6 in 12 all round at (1000, 500), hip
// ends 50 in in each over 100 across have 6 in more than they need at 94 in long, and past a gable's 12 in overhang.
func TestRoomForARidgeAnywhere(t *testing.T) {
	for _, c := range []struct {
		hips [2]bool
		long float64
		room bool
	}{
		{[2]bool{true, true}, 94.5, true},
		{[2]bool{true, true}, 93.5, false},
		{[2]bool{true, false}, 32.5, true},
		{[2]bool{true, false}, 31.5, false}, // 50 of 32 + 12 + 6
		{[2]bool{false, true}, 32.5, true},
		{[2]bool{false, true}, 31.5, false},
	} {
		slopes, err := Slopes(plan.GableRoof, Shape{Axis: plan.AxisX, Slope: 0.5, HipEnd: c.hips})
		require.NoError(t, err)
		b := &Body{Name: "a", Axis: plan.AxisX, Lo: pt(1000, 500), Hi: pt(1000+c.long, 600), Spacing: 16, Thick: 1.5}
		for i, m := range slopes {
			b.Sides[i] = Side{Slope: m, Height: 100, Over: 12}
		}
		for turn := range 4 {
			assert.Equal(t, c.room, b.checkRidge() == nil, "%+v, turn %d", c, turn)
			b = turned(b)
		}
		_, faults := New([]*Body{b})
		assert.Equal(t, c.room, len(faults) == 0, "%+v: the roof tells it", c)
	}
}

// Of two gables that overlap, from 0 to 40 and from 30 to 70, the rafters flush with their ends come first, from the low
// end up and in a mirrored house from the high end down, then those of the module, of each side within its own walls.
func TestPlacesThatTheSidesOfAFaceAskFor(t *testing.T) {
	a, b := body(t, "a", "gable", "x", pt(0, 0), pt(40, 60), 6, 0), body(t, "b", "gable", "x", pt(30, 0), pt(70, 60), 6, 0)
	f := &Face{Body: a, Side: South, laid: []facet{{body: b, side: South}, {body: a, side: South}}}
	f.module = &module{zones: []zone{{lo: 0, hi: 70, origin: 0, spacing: 16}}}
	list := func() (at []float64, fixed int) {
		for _, s := range f.layouts() {
			at = append(at, s.at)
			assert.Equal(t, s.fixed, s.flush)
			if s.fixed {
				fixed++
			}
		}
		return at, fixed
	}
	at, fixed := list()
	assert.Equal(t, []float64{0.75, 30.75, 39.25, 69.25, 0, 16, 32, 32, 48, 64}, at)
	assert.Equal(t, 4, fixed)
	a.Lay = plan.MirrorX
	at, fixed = list()
	assert.Equal(t, []float64{69.25, 39.25, 30.75, 0.75, 64, 48, 32, 32, 16, 0}, at)
	assert.Equal(t, 4, fixed)
}

// At the peak of a pyramid of 144 by 144 at 6 in 12 a line up the middle of the south face meets the hip that is on the
// side where it is looked up, at the very peak.
func TestCrossingsAreLookedUpBeside(t *testing.T) {
	r, _ := New([]*Body{body(t, "a", "hip", "x", pt(0, 0), pt(144, 144), 6, 0)})
	for beside, x := range map[float64]float64{-probe: 0, probe: 144} {
		cs := r.crossings(faceOf(t, r, "a", South), 72, beside)
		require.Len(t, cs, 2)
		plantest.Near(t, []float64{0, 72}, []float64{cs[0].h, cs[1].h}, 1e-9)
		assert.Equal(t, Eave, cs[0].kind)
		assert.Equal(t, Hip, cs[1].kind)
		assert.InDelta(t, x, cs[1].line.A.X, 1e-6)
	}
	run := r.RunsAt(faceOf(t, r, "a", South), 72)
	require.Len(t, run, 1)
	assert.InDelta(t, 0, run[0].HighEnd.Line.A.X, 1e-6, "of two alike that on the low side")
}

// Of crossings as many, a wall at the top is better than a hip that ends there, and not than a ridge.
func TestAWallIsBetterThanAHip(t *testing.T) {
	at := func(k EdgeKind) []crossing { return []crossing{{kind: Eave}, {kind: k}} }
	for _, c := range []struct {
		a, b EdgeKind
		want bool
	}{{Wall, Hip, true}, {Hip, Wall, false}, {Wall, Ridge, false}, {Ridge, Wall, true}, {Wall, Wall, false}, {Wall, Valley, false}, {Valley, Hip, false}, {Eave, Hip, false}} {
		assert.Equal(t, c.want, better(at(c.a), at(c.b)), "%s, %s", c.a, c.b)
	}
}

// A line up a shed's face at the very end of a hip meets the shed's top, whichever side of it the hip is on: under a
// wall that wall, else the free edge.
func TestALineAtTheVeryEndOfAHip(t *testing.T) {
	for _, c := range []struct {
		end  int
		x    float64
		wall bool
		want EdgeKind
	}{{East, 104, true, Wall}, {West, 96, true, Wall}, {East, 104, false, Ridge}, {West, 96, false, Ridge}} {
		b := body(t, "a", plan.ShedRoof, plan.AxisX, pt(0, 0), pt(200, 96), 3, 0)
		b.Sides[c.end].Slope, b.Sides[North].Against = 0.25, c.wall
		r, faults := New([]*Body{b})
		require.Empty(t, faults)
		runs := r.RunsAt(faceOf(t, r, "a", South), c.x)
		require.Len(t, runs, 1)
		assert.Equal(t, c.want, runs[0].HighEnd.Kind, "%+v", c)
		assert.InDelta(t, 0, runs[0].High.Sub(pt(c.x, 96)).Len(), 1e-9)
		assert.Equal(t, Common, runs[0].Kind)
	}
}

// A place lies beside no more than the two sides next to one: out past that side or the one across it is well, past the
// corner is not, on the corner's own line it is.
func TestBetweenTheSidesNextToOne(t *testing.T) {
	b := &Body{Lo: pt(10, 20), Hi: pt(110, 70)}
	for _, c := range []struct {
		p           geom.Vec2
		south, east bool // between the sides next to the south and the north one, to the east and the west one
	}{
		{pt(50, 40), true, true},
		{pt(50, 0), true, false},
		{pt(50, 90), true, false},
		{pt(0, 40), false, true},
		{pt(120, 40), false, true},
		{pt(0, 0), false, false},
		{pt(120, 90), false, false},
		{pt(10, 0), true, false},
		{pt(110, 90), true, false},
		{pt(0, 70), false, true},
	} {
		for i, want := range [4]bool{South: c.south, East: c.east, North: c.south, West: c.east} {
			assert.Equal(t, want, b.beside(i, c.p), "side %d, %v", i, c.p)
		}
	}
}

// Of two hip ends in one module the first as written sets where it is counted from: the middle of its face; a layout
// along a ridge goes before either.
func TestTheFirstHipSetsTheModule(t *testing.T) {
	a := body(t, "a", plan.HipRoof, plan.AxisX, pt(0, 0), pt(200, 80), 6, 0)
	b := body(t, "b", plan.HipRoof, plan.AxisX, pt(0, 100), pt(200, 170), 6, 0)
	side := func(b *Body, i int) facet { return facet{body: b, side: i} }
	c := body(t, "c", plan.GableRoof, plan.AxisY, pt(0, 7), pt(80, 90), 6, 0)
	for name, want := range map[string]struct {
		sides  []facet
		origin float64
	}{
		"a first":    {[]facet{side(a, East), side(b, East)}, 40},
		"b first":    {[]facet{side(b, East), side(a, East)}, 135},
		"a gable":    {[]facet{side(c, East), side(b, East), side(a, East)}, 135},
		"only gable": {[]facet{side(c, East), side(c, West)}, 7},
	} {
		m := &module{sides: want.sides}
		assert.Empty(t, m.start(), name)
		assert.InDelta(t, want.origin, m.origin, 1e-9, name)
	}
	five := 5.0
	c.Layout = &five
	m := &module{sides: []facet{side(a, East), side(c, East)}}
	assert.Empty(t, m.start())
	assert.InDelta(t, 12, m.origin, 1e-9)
}
