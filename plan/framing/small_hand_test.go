package framing

import (
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"galewright/plan"
	"galewright/plan/geom"
	"galewright/plan/plantest"
	"galewright/plan/roofplan"
)

// A king, 10 to 11.5, whose face is within a sixteenth of the header's end holds it; one that
// stands off does not, and the joint has nothing to tie to. Likewise at the right end.
func TestAHeaderIsTiedToTheKingAtItsEnd(t *testing.T) {
	for gap, tied := range map[float64]bool{0: true, 0.06: true, 0.07: false, 0.5: false} {
		b := newBuilder(stories(1))
		left, right := &Member{Role: plan.King, S0: 10, S1: 11.5}, &Member{Role: plan.King, S0: 60, S1: 61.5}
		w := &framedWall{Wall: &plan.Wall{Name: "A", To: geom.Vec2{X: 100}, Studs: twoBySix}, uprights: []*Member{left, right}}
		w.frame = w.Frame()
		header := &Member{Role: plan.Header, Z0: 80, Z1: 90, A: geom.Vec3{X: 12, Y: 1.5, Z: 85}}
		b.headerJoints(w, &framedOpening{Opening: &plan.Opening{}, header: header, h0: 11.5 + gap, h1: 60 - gap})
		require.Len(t, b.house.Joints, 2)
		for i, j := range b.house.Joints {
			king := []*Member{left, right}[i]
			assert.Equal(t, tied, j.Below, "%v", gap)
			if tied {
				assert.Equal(t, []*Member{header, king}, j.Members)
			} else {
				assert.Equal(t, []*Member{header}, j.Members)
			}
			assert.InDelta(t, (48.5-2*gap)/2, j.Tributary, 1e-9)
			plantest.Near(t, []float64{[]float64{11.5 + gap, 60 - gap}[i], 1.5, 85}, []float64{j.At.X, j.At.Y, j.At.Z}, 1e-9)
		}
	}
}

// Three studs at each end of a segment: they stand tight, away from the segment where there is
// room, else toward it; the tie is at the one that faces the segment. From 20 to 90 of a
// wall of 160 those are 20.75 with 19.25 and 17.75 beside it, and 89.25, 90.75, 92.25; over
// the whole wall 0.75, 2.25, 3.75 and 156.25 ... 159.25, tied at 3.75 and 156.25.
func TestSegmentsPostsOfSeveralStuds(t *testing.T) {
	for _, c := range []struct {
		from, to float64
		studs    []float64
		ties     [2]float64
	}{
		{20, 90, []float64{17.75, 19.25, 20.75, 89.25, 90.75, 92.25}, [2]float64{20.75, 89.25}},
		{0, 160, []float64{2.25, 3.75, 156.25, 157.75}, [2]float64{3.75, 156.25}},
	} {
		p, w := straight(160)
		w.Shear = []*plan.Shear{{Name: "s", From: c.from, To: c.to, Posts: 3}}
		h := frame(t, p)
		assert.Equal(t, c.studs, mids(of(h, "1A", plan.Post)))
		ends := joints(h, "1A", plan.WallEnd)
		require.Len(t, ends, 2)
		for i, j := range ends {
			assert.InDelta(t, c.ties[i], j.First().Mid(), 1e-9)
			assert.InDelta(t, c.ties[i], j.Station, 1e-9)
		}
	}
}

// The innermost of a post is counted over studs that stand tight only.
func TestInnermostStudOfAPost(t *testing.T) {
	w := &framedWall{}
	for _, s := range []float64{0.75, 2.25, 3.75, 16} {
		w.uprights = append(w.uprights, &Member{Role: plan.Post, S0: s - 0.75, S1: s + 0.75})
	}
	for _, c := range []struct {
		from, dir float64
		n         int
		want      float64
	}{
		{0.75, -1, 1, 0.75}, {0.75, -1, 2, 2.25}, {0.75, -1, 3, 3.75}, {0.75, -1, 6, 3.75}, {3.75, 1, 3, 0.75}, {3.75, 1, 9, 0.75}, {16, 1, 3, 16},
	} {
		assert.Equal(t, c.want, w.innermost(w.nearest(w.uprights, c.from), c.dir, c.n).Mid(), "%+v", c)
	}
}

// A pile reaches from grade to its girder's underside, or from a foot under that where the
// girder lies lower than a foot.
func TestHowDeepAPileIsDrawn(t *testing.T) {
	for z0, want := range map[float64]float64{100: 0, 12: 0, 6: -6} {
		b := newBuilder(stories(1))
		g := &framedGirder{Girder: &plan.Girder{Name: "G"}, body: body{d: 4.5}, z0: z0, z1: z0 + 10}
		m := b.pile(g, geom.NewFrame(geom.Vec2{}, geom.Vec2{X: 100}), 30, plan.Lumber{Ply: 1, Breadth: 7.5, Depth: 7.5})
		assert.Equal(t, [3]float64{want, z0, z0 - want}, [3]float64{m.Z0, m.Z1, m.Length})
		lo, hi := m.Bounds()
		assert.Equal(t, [2]geom.Vec3{{X: 26.25, Y: -3.75, Z: want}, {X: 33.75, Y: 3.75, Z: z0}}, [2]geom.Vec3{lo, hi})
	}
}

// On a hip of 6 in 12 with 2x8 the seat is 4.05, and a jack shorter than an inch more inside of
// the wall's face would be cut into its own seat: one at 6 from the corner is 6 - 1.06 = 4.94
// long there, the hip's half thickness at 45 degrees off, and left out; at 6.2 it is 5.14. Jacks
// are counted from the ridge's end, at half of the width of the house: 102 less 6 times 16.
func TestTheShortestJack(t *testing.T) {
	for at, made := range map[float64]bool{6: false, 6.2: true} {
		p := stories(1)
		ring(p, 0, rect(0, 0, 288, 2*(96+at))...)
		roofOn(p, "main", "hip", "x", 6, rect(0, 0, 288, 2*(96+at)))
		found := false
		for _, m := range withRole(roofed(t, p), plan.Rafter) {
			found = found || m.A.Y < 0 && m.A.X > at-0.01 && m.A.X < at+0.01
		}
		assert.Equal(t, made, found, "%v", at)
	}
}

// A wall of 3 in has room for two studs; a shorter one is told.
func TestTheShortestWall(t *testing.T) {
	for length, ok := range map[float64]bool{3: true, 2.9: false} {
		b := newBuilder(stories(1))
		wall(b.plan, "A", 0, geom.Vec2{}, geom.Vec2{X: length})
		b.setUp()
		assert.Equal(t, ok, len(b.walls) == 1, "%v", length)
		assert.Equal(t, !ok, len(b.faults) == 1, "%v", length)
	}
}

// A wall lies under a roof of 100 by 100 when some of it is within the overhang, 12, and half
// an inch of it, on both axes.
func TestWhatLiesUnderARoof(t *testing.T) {
	f := &roofFrame{bodies: []*roofBody{{Roof: &plan.Roof{Area: [2]geom.Vec2{{}, {X: 100, Y: 100}}, Overhang: 12, Rake: 6}}}}
	for _, c := range []struct {
		a, z geom.Vec2
		want bool
	}{
		{geom.Vec2{X: 10, Y: 10}, geom.Vec2{X: 90, Y: 10}, true},
		{geom.Vec2{X: -50, Y: 50}, geom.Vec2{X: 150, Y: 50}, true},
		{geom.Vec2{X: -50, Y: 50}, geom.Vec2{X: -12.4, Y: 50}, true},
		{geom.Vec2{X: -12.6, Y: 50}, geom.Vec2{X: -50, Y: 50}, false},
		{geom.Vec2{X: 112.4, Y: 50}, geom.Vec2{X: 150, Y: 50}, true},
		{geom.Vec2{X: 112.6, Y: 50}, geom.Vec2{X: 150, Y: 50}, false},
		{geom.Vec2{X: 50, Y: -12.4}, geom.Vec2{X: 50, Y: -50}, true},
		{geom.Vec2{X: 50, Y: -12.6}, geom.Vec2{X: 50, Y: -50}, false},
		{geom.Vec2{X: 50, Y: 150}, geom.Vec2{X: 50, Y: 112.4}, true},
		{geom.Vec2{X: 50, Y: 150}, geom.Vec2{X: 50, Y: 112.6}, false},
	} {
		assert.Equal(t, c.want, f.under(c.a, c.z), "%+v", c)
	}
}

// Walls in a line along x within an inch of y = 10 are those at 9 and 10.9 and not what runs
// the other way, in the plan's order; the caller asks how near they are.
func TestWallsNearALine(t *testing.T) {
	at := func(name string, a, z geom.Vec2) *plan.Wall { return &plan.Wall{Name: name, From: a, To: z} }
	x := indexWalls([]*plan.Wall{
		at("late", geom.Vec2{Y: 10.9}, geom.Vec2{X: 50, Y: 10.9}), at("same", geom.Vec2{Y: 10}, geom.Vec2{X: 50, Y: 10}),
		at("before", geom.Vec2{Y: 9.2}, geom.Vec2{X: 50, Y: 9.2}), at("after", geom.Vec2{Y: 11.2}, geom.Vec2{X: 50, Y: 11.2}), at("far", geom.Vec2{Y: 12}, geom.Vec2{X: 50, Y: 12}),
		at("near", geom.Vec2{Y: 8}, geom.Vec2{X: 50, Y: 8}), at("across", geom.Vec2{X: 10}, geom.Vec2{X: 10, Y: 50}),
		at("slant", geom.Vec2{Y: 10}, geom.Vec2{X: 50, Y: 30}), at("west", geom.Vec2{X: -10.3}, geom.Vec2{X: -10.3, Y: 50}),
	})
	names := func(alongX bool, c float64) (out []string) {
		for _, w := range x.near(alongX, c) {
			out = append(out, w.Name)
		}
		return out
	}
	assert.Equal(t, []string{"late", "same", "before", "after"}, names(true, 10.4))
	assert.Equal(t, []string{"across"}, names(false, 10))
	assert.Equal(t, []string{"west"}, names(false, -9.9))
	assert.Empty(t, names(false, -8.9))
}

// The first of the sides that starts within half an inch of a point, whichever cells of an
// inch the two lie in.
func TestSideThatStartsAtAPoint(t *testing.T) {
	var sides []edge
	for _, p := range []geom.Vec2{{X: 50, Y: 50}, {X: 10.2, Y: -0.2}, {X: 9.9, Y: 0.1}} {
		sides = append(sides, edge{w: &framedWall{Wall: &plan.Wall{From: p}}})
	}
	start := startsOf(sides)
	for p, want := range map[geom.Vec2]int{{X: 50, Y: 50}: 0, {X: 49.8, Y: 49.8}: 0, {X: 49.4, Y: 50}: -1, {X: 50.4, Y: 50.2}: 0, {X: 9.9, Y: 0.1}: 1, {X: 9.6, Y: 0.3}: 2, {X: 10.5, Y: -0.5}: 1} {
		assert.Equal(t, want, start(p), "%v", p)
	}
}

// Ends of walls at 0, 0.8 and 0.4: the first two are apart, and the third, near both, is of
// the first's group alone.
func TestAnEndOfAWallIsOfOneCorner(t *testing.T) {
	b := newBuilder(stories(1))
	for i, x := range []float64{0, 0.8, 0.4} {
		p := geom.Vec2{X: x}
		wall(b.plan, string(rune('A'+i)), 0, p, geom.Vec2{X: x + 100*float64(i-1), Y: 100})
	}
	b.setUp()
	groups := b.endGroups()
	require.Len(t, groups, 1)
	var names string
	for _, e := range groups[0] {
		names += e.w.Name
		assert.False(t, e.tail)
	}
	assert.ElementsMatch(t, []rune("AC"), []rune(names))
}

// Roofs whose overhangs may touch are framed together: with 18 and 6 each, up to 36 in apart,
// along either axis; a third between two brings them together.
func TestRoofsThatMayTouchAreOneGroup(t *testing.T) {
	body := func(x, y float64) *roofBody {
		return &roofBody{Roof: &plan.Roof{Area: [2]geom.Vec2{{X: x, Y: y}, {X: x + 100, Y: y + 100}}, Overhang: 18, Rake: 6}, body: &roofplan.Body{}}
	}
	for _, c := range []struct {
		at   []geom.Vec2
		want []int // members of each group
	}{
		{[]geom.Vec2{{}, {X: 136}}, []int{2}},
		{[]geom.Vec2{{}, {X: 136.1}}, []int{1, 1}},
		{[]geom.Vec2{{}, {Y: -136}}, []int{2}},
		{[]geom.Vec2{{}, {Y: -136.1}}, []int{1, 1}},
		{[]geom.Vec2{{}, {X: 300}, {X: 120}}, []int{2, 1}},
		{[]geom.Vec2{{}, {X: 260}, {X: 130}}, []int{3}},
	} {
		var all []*roofBody
		for _, p := range c.at {
			all = append(all, body(p.X, p.Y))
		}
		var got []int
		for _, g := range cluster(all) {
			got = append(got, len(g))
		}
		assert.ElementsMatch(t, c.want, got, "%v", c.at)
	}
	low, high := body(0, 0), body(0, 100)
	low.body = &roofplan.Body{Hi: geom.Vec2{X: 100, Y: 100}}
	low.body.Sides[roofplan.North].Against = true
	high.body = &roofplan.Body{Lo: geom.Vec2{Y: 100}, Hi: geom.Vec2{X: 100, Y: 200}}
	assert.Len(t, cluster([]*roofBody{low, high}), 2, "one that ends at the other's wall passes under its roof")
}

// The depth of a floor is its joists and subfloor, and an upper floor stands its depth over the
// plates below, both to a sixteenth.
func TestHeightsOfFloors(t *testing.T) {
	for _, c := range []struct {
		name string
		edit func(low, up *plan.Level)
		told string
	}{
		{"as they are", func(_, _ *plan.Level) {}, ""},
		{"a sixteenth off", func(low, _ *plan.Level) { low.FloorDepth += 0.06 }, ""},
		{"a depth that is none", func(low, _ *plan.Level) { low.FloorDepth = 10.5 }, `floor_depth of level first is 10 1/2" and its joists and subfloor make 10"`},
		{"an upper floor too high", func(_, up *plan.Level) { up.Floor++ }, `the joists of level second stand at 19'-2 1/8" and the plates of level first at 19'-1 1/8"`},
		{"too low", func(_, up *plan.Level) { up.Floor -= 0.07 }, "the joists of level second stand at"},
		{"a sixteenth too low", func(_, up *plan.Level) { up.Floor -= 0.06 }, ""},
	} {
		p := stories(2)
		c.edit(p.Levels[0], p.Levels[1])
		b := newBuilder(p)
		ok := b.floorHeights(p.Levels[0]) && b.floorHeights(p.Levels[1])
		assert.Equal(t, c.told == "", ok, c.name)
		if c.told != "" {
			require.Len(t, b.faults, 1, c.name)
			assert.Contains(t, b.faults[0].Summary, c.told)
		}
	}
}
