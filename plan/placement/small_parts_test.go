package placement

import (
	"math"
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
	b := band{n: geom.Vec3{Y: -1}, a: geom.Vec3{X: 10, Z: 5}, b: geom.Vec3{X: 10, Z: 25}, width: 2}
	pl, r := b.flat()
	assert.Equal(t, plane{y: -1000}, pl)
	assert.Equal(t, rect{9, 11, 5, 25}, r)
	// Laid the other way it is the same.
	b.a, b.b = b.b, b.a
	_, again := b.flat()
	assert.Equal(t, r, again)
	// Level along the face: 1 in up and down.
	b = band{n: geom.Vec3{Y: -1}, a: geom.Vec3{X: 5, Y: 3, Z: 20}, b: geom.Vec3{X: 25, Y: 3, Z: 20}, width: 2}
	pl, r = b.flat()
	assert.Equal(t, plane{y: -1000, off: -24}, pl, "3 in off the origin, in eighths")
	assert.Equal(t, rect{5, 25, 19, 21}, r)
	lo, hi := b.heights()
	assert.Equal(t, [2]float64{19, 21}, [2]float64{lo, hi}, "a level band is as high as it is wide")
	// Up the face it is as high as it is long.
	lo, hi = band{n: geom.Vec3{Y: -1}, a: geom.Vec3{Z: 25}, b: geom.Vec3{Z: 5}, width: 2}.heights()
	assert.Equal(t, [2]float64{5, 25}, [2]float64{lo, hi})
	// Flat on a plate's top it has no height.
	lo, hi = band{n: geom.Vec3{Z: 1}, a: geom.Vec3{Z: 9}, b: geom.Vec3{X: 5, Z: 9}, width: 2}.heights()
	assert.Equal(t, [2]float64{9, 9}, [2]float64{lo, hi})
}

func TestBandsOnTopLieInOneFrame(t *testing.T) {
	// Two straps along x on top of a plate, the second laid the other way: their
	// rectangles are of one frame and overlap where the straps do.
	top := func(x0, x1, y float64) rect {
		_, r := band{n: geom.Vec3{Z: 1}, a: geom.Vec3{X: x0, Y: y, Z: 9}, b: geom.Vec3{X: x1, Y: y, Z: 9}, width: 2}.flat()
		return r
	}
	assert.True(t, top(0, 20, 0).overlaps(top(30, 10, 1)))
	assert.False(t, top(0, 20, 0).overlaps(top(30, 20, 1)))
	assert.False(t, top(0, 20, 0).overlaps(top(30, 10, 2)))
	along := func(y0, y1 float64) rect {
		_, r := band{n: geom.Vec3{Z: 1}, a: geom.Vec3{X: 5, Y: y0, Z: 9}, b: geom.Vec3{X: 5, Y: y1, Z: 9}, width: 2}.flat()
		return r
	}
	assert.True(t, along(0, 20).overlaps(along(30, 10)))
	assert.False(t, along(0, 20).overlaps(along(30, 20)))
}

func TestOverlapIsMoreThanAnEighthBothWays(t *testing.T) {
	a := rect{0, 10, 0, 10}
	for _, c := range []struct {
		b    rect
		want bool
	}{
		{rect{9.8, 20, 9.8, 20}, true},
		{rect{9.9, 20, 0, 10}, false},
		{rect{0, 10, 9.9, 20}, false},
		{rect{-10, 0.2, -10, 0.2}, true},
		{rect{-10, 0.1, 0, 10}, false},
		{rect{4, 5, 4, 5}, true},
	} {
		assert.Equal(t, c.want, a.overlaps(c.b), "%v", c.b)
		assert.Equal(t, c.want, c.b.overlaps(a), "%v", c.b)
	}
}

func TestFacesOfAStud(t *testing.T) {
	// A wall along y: from outside, that is from the east, stations run north. The
	// stud stands at 15.25 to 16.75 in 5.5 of depth, which goes west.
	f := geom.NewFrame(geom.Vec2{X: 100}, geom.Vec2{X: 100, Y: 200})
	for face, want := range map[string]struct {
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
	assert.Equal(t, 1.5, p.wide())
	p.Item.Width = 0.5
	assert.Equal(t, 0.5, p.wide())
}

func TestBreadthOfAMemberAtAJoint(t *testing.T) {
	w, other := &plan.Wall{Name: "a"}, &plan.Wall{Name: "b"}
	j := &framing.Joint{Wall: w, Station: 10}
	two := plan.Lumber{Ply: 2, Breadth: 1.5, Depth: 5.5}
	check := func(m *framing.Member, a, b float64) {
		t.Helper()
		s0, s1 := span2(j, m)
		assert.Equal(t, [2]float64{a, b}, [2]float64{s0, s1})
	}
	check(&framing.Member{Wall: w, S0: 3, S1: 5}, 3, 5)
	check(&framing.Member{Wall: other, S0: 3, S1: 5, Section: two}, 8.5, 11.5)
	check(&framing.Member{Section: two}, 8.5, 11.5)
	check(&framing.Member{}, 9.25, 10.75)
	check(nil, 9.25, 10.75)
}

func TestWidthOfTheEndZone(t *testing.T) {
	// ASCE 7-16 Fig. 28.3-1 note 9, from memory: of 400 by 600 a tenth is 40; of a
	// mean height of 90, 0.4 are 36; 4 percent are 16; 36 at least.
	house := func(x, y, plate, top float64) *framing.House {
		l := &plan.Level{PlateHeight: plate}
		at := []geom.Vec2{{X: 5, Y: 7}, {X: 5 + x, Y: 7}, {X: 5 + x, Y: 7 + y}, {X: 5, Y: 7 + y}}
		h := &framing.House{Plan: &plan.Plan{}}
		for i, a := range at {
			h.Plan.Walls = append(h.Plan.Walls, &plan.Wall{Level: l, From: a, To: at[(i+1)%4], Exterior: true})
		}
		h.Plan.Walls = append(h.Plan.Walls, &plan.Wall{Level: l, From: geom.Vec2{X: -999}, To: geom.Vec2{X: 999}})
		h.Members = []*framing.Member{{A: geom.Vec3{Z: top - 20}, B: geom.Vec3{Z: top}}, {A: geom.Vec3{Z: 1}, B: geom.Vec3{Z: 2}}}
		return h
	}
	for _, c := range []struct {
		name             string
		x, y, plate, top float64
		want             float64
	}{
		{"a tenth of the least side", 400, 600, 110, 190, 40}, // 0.4 x 150 = 60
		{"of the other side", 600, 420, 110, 190, 42},
		{"0.4 of the mean height", 800, 900, 90, 120, 42}, // 0.4 x 105, a tenth is 80
		{"4 percent", 1200, 1500, 60, 60, 48},             // 0.4 x 60 = 24
		{"36 at least", 240, 480, 110, 190, 36},
		{"members under the plate do not count", 900, 900, 110, 50, 44}, // 0.4 x 110
	} {
		assert.InDelta(t, c.want, endZone(house(c.x, c.y, c.plate, c.top)), 1e-9, c.name)
	}
	assert.Equal(t, 36.0, endZone(&framing.House{Plan: &plan.Plan{}}), "without exterior walls")
}

func TestConditionsSayWhatTheyAskAndFind(t *testing.T) {
	h := standard()
	w := newWorld(h.House)
	j := w.byID["1S-16-SB"]
	find := func(key string) condition {
		for _, c := range conditions {
			if c.key == key {
				return c
			}
		}
		t.Fatal(key)
		return condition{}
	}
	for _, c := range []struct {
		key        string
		where      plan.Where
		holds      bool
		want, have string
	}{
		{"corner", plan.Where{Corner: [2]float64{0, 16}}, true, `0" to 1'-4"`, `1'-4"`},
		{"corner", plan.Where{Corner: [2]float64{0, 15.9}}, false, `0" to 1'-3 7/8"`, `1'-4"`},
		{"corner", plan.Where{Corner: [2]float64{16, 0}}, true, `from 1'-4"`, `1'-4"`},
		{"corner", plan.Where{Corner: [2]float64{16.1, 0}}, false, `from 1'-4 1/8"`, `1'-4"`},
		{"spacing", plan.Where{Spacing: [2]float64{16, 16}}, true, `1'-4" to 1'-4"`, `1'-4"`},
		{"opening", plan.Where{Opening: [2]float64{1, 0}}, false, `from 1"`, "none"},
		{"opening_width", plan.Where{OpeningWidth: [2]float64{1, 0}}, false, `from 1"`, "none"},
		{"height", plan.Where{Height: [2]float64{1.5, 1.5}}, true, `1 1/2" to 1 1/2"`, `1 1/2"`},
		{"from, to", plan.Where{From: 16}, true, `from 1'-4"`, `1'-4"`},
		{"from, to", plan.Where{From: 16.1}, false, `from 1'-4 1/8"`, `1'-4"`},
		{"from, to", plan.Where{To: 16}, true, `0" to 1'-4"`, `1'-4"`},
		{"from, to", plan.Where{From: 2, To: 15.9}, false, `2" to 1'-3 7/8"`, `1'-4"`},
		{"exterior", plan.Where{Exterior: yes()}, true, "true", "true"},
		{"shear", plan.Where{Shear: yes()}, false, "true", "false"},
		{"end_zone", plan.Where{EndZone: yes()}, true, "true", "true"},
		{"roof", plan.Where{Roof: []string{"a", "b"}}, false, "a or b", "none"},
		{"wall", plan.Where{Wall: []string{"1S"}}, true, "1S", "1S"},
		{"role", plan.Where{Role: []string{"king", "stud"}}, true, "king or stud", "stud"},
		{"against", plan.Where{Against: []string{"rim"}}, true, "rim", "bottom plate and rim"},
		{"against", plan.Where{Against: []string{"joist", "beam"}}, false, "joist or beam", "bottom plate and rim"},
		{"stud", plan.Where{Stud: []string{"2x4"}}, false, "2x4", "2x6"},
	} {
		k := find(c.key)
		require.True(t, k.given(&c.where), "%+v", c.where)
		assert.False(t, k.given(&plan.Where{}), c.key)
		assert.Equal(t, c.holds, k.holds(w, &c.where, j), "%s %+v", c.key, c.where)
		assert.Equal(t, c.want, k.want(&c.where), c.key)
		assert.Equal(t, c.have, k.have(w, j), c.key)
	}
	assert.Equal(t, "anything", describe(&plan.Where{}))
	assert.Equal(t, `wall = 1S, corner = 0" to 1'-4"`, describe(&plan.Where{Wall: []string{"1S"}, Corner: [2]float64{0, 16}}))
}

func TestDistancesThatConditionsMeasure(t *testing.T) {
	h := standard()
	h.walls[0].Openings = []*plan.Opening{{At: 40, Width: 30}, {At: 86, Width: 5}}
	h.walls[0].Shear = []*plan.Shear{{From: 16, To: 48}}
	w := newWorld(h.House)
	for station, want := range map[string]struct {
		corner, opening float64
		shear           bool
	}{
		"1S-1-SB":  {0.75, 39.25, false},
		"1S-16-SB": {16, 24, true},
		"1S-48-SB": {48, 0, true}, // in the opening, and at the segment's end
		"1S-64-SB": {32, 0, false},
		"1S-80-SB": {16, 6, false}, // 6 to the second, 10 to the first
		"1S-95-SB": {0.75, 4.25, false},
	} {
		j := w.byID[station]
		assert.InDelta(t, want.corner, w.fromCorner(j), 1e-9, station)
		assert.InDelta(t, want.opening, fromOpening(w, j), 1e-9, station)
		assert.Equal(t, want.shear, inShear(w, j), station)
	}
	off := &framing.Joint{Host: "G", Kind: framing.GirderPile, Station: 30}
	assert.True(t, math.IsNaN(fromOpening(w, off)))
	assert.False(t, inShear(w, off))
	// Off the walls, from the first or the last joint along the host.
	w.byHost[hostKind{"G", framing.GirderPile}] = []*framing.Joint{{Station: 6}, off, {Station: 40}}
	assert.Equal(t, 10.0, w.fromCorner(off))
}

func TestEngineersStationMeansTheMemberThere(t *testing.T) {
	// Within half the member's breadth, 0.75, and 1 in: 1.75, and a thirty-second.
	for at, ok := range map[float64]bool{16: true, 17.75: true, 14.25: true, 17.85: false, 14.15: false, 24: false} {
		p, ds := placed(t, standard().with(plan.Place{Use: "coil", Wall: "2S", On: "stud-stud", At: []float64{at}}))
		assert.Equal(t, ok, len(p.Pieces) == 1, "%v", at)
		assert.Equal(t, !ok, len(only(ds, "place-off-member")) == 1, "%v", at)
	}
	three := plan.Lumber{Ply: 3, Breadth: 1.5, Depth: 5.5}
	for _, c := range []struct {
		m    *framing.Member
		want float64
	}{
		{&framing.Member{S0: 10, S1: 14.5, Section: two6}, 2.25},
		{&framing.Member{S0: 10, S1: 100, Section: three}, 2.25}, // along the wall: the section's breadth
		{&framing.Member{Section: three}, 2.25},
		{&framing.Member{S0: 10, S1: 22, Section: two6}, 0.75},
	} {
		assert.Equal(t, c.want, half(&framing.Joint{Members: []*framing.Member{c.m}}))
	}
	assert.Equal(t, 0.75, half(&framing.Joint{}))
}

func TestGroupsNameEightAndCountTheRest(t *testing.T) {
	var tell teller
	w := &plan.Wall{Name: "1S"}
	add := func(code string, n int) {
		for i := range n {
			m := &framing.Member{Role: framing.Stud}
			j := &framing.Joint{ID: string(rune('a' + i)), Host: "1S", Wall: w, Kind: framing.StudBase, Station: 12 * float64(i), Members: []*framing.Member{m}}
			tell.at(j, "", plan.Diagnostic{Code: code})
		}
	}
	add("one", 1)
	add("two", 2)
	add("eight", 8)
	add("ten", 10)
	var where []string
	for _, d := range tell.list() {
		where = append(where, d.Where)
	}
	assert.Equal(t, []string{
		`wall 1S, stud at 0", a`,
		`wall 1S, 2 joints from 0" to 1'-0": a, b`,
		`wall 1S, 8 joints from 0" to 7'-0": a, b, c, d, e, f, g, h`,
		`wall 1S, 10 joints from 0" to 9'-0": a, b, c, d, e, f, g, h and 2 more to j`,
	}, where)
}

func TestHostsAreNamedByWhatTheyAre(t *testing.T) {
	for want, j := range map[string]*framing.Joint{
		"wall 1S":   {Host: "1S", Wall: &plan.Wall{Name: "1S"}},
		"girder G":  {Host: "G", Kind: framing.GirderPile},
		"porch P":   {Host: "P", Kind: framing.PostBase},
		"porch Q":   {Host: "Q", Kind: framing.PostCap},
		"porch R":   {Host: "R", Kind: framing.RafterPlate, Roof: &plan.Roof{}},
		"roof main": {Host: "main", Kind: framing.RafterRidge, Roof: &plan.Roof{}},
		"X":         {Host: "X", Kind: framing.StudBase},
	} {
		assert.Equal(t, want, hostName(j))
	}
	assert.Equal(t, `X, joint at 1'-0", X-1`, jointName(&framing.Joint{ID: "X-1", Host: "X", Station: 12}))
}

func TestListsInWords(t *testing.T) {
	k := []framing.Kind{"a", "b", "c", "d", "e"}
	assert.Equal(t, "no joint", list(nil))
	assert.Equal(t, "a", list(k[:1]))
	assert.Equal(t, "a or b", list(k[:2]))
	assert.Equal(t, "a, b, c or d", list(k[:4]))
	assert.Equal(t, "a, b, c, d and others", list(k))
	assert.Equal(t, "there is none yet", meant("x", nil))
	names := []string{"n01", "n02", "n03", "n04", "n05", "n06", "n07", "n08", "n09", "n10", "n11", "n12", "n13", "n14", "n15"}
	assert.Equal(t, "use one of n01, n02, n03, n04, n05, n06, n07, n08, n09, n10, n11, n12, n13, n14", meant("unlike", names[:14]))
	assert.Equal(t, "use one of n01, n02, n03, n04, n05, n06, n07, n08, n09, n10, n11, n12, n13, n14, ...", meant("unlike", names))
	assert.Equal(t, `did you mean "strap"?`, meant("strop", []string{"clip", "strap"}))
}

// run makes joints at stations; a plate each, or one for all.
func run(plate *framing.Member, stations ...float64) (out []*framing.Joint) {
	for _, s := range stations {
		j := &framing.Joint{Kind: framing.StudBase, Station: s}
		if plate != nil {
			j.Members = []*framing.Member{{Role: framing.Stud}, plate}
		}
		out = append(out, j)
	}
	return out
}

func at2(run []*framing.Joint) (out []float64) {
	for _, j := range run {
		out = append(out, j.Station)
	}
	return out
}

func TestThinningARun(t *testing.T) {
	plate := func(s0, s1 float64) *framing.Member {
		return &framing.Member{Role: framing.SillPlate, S0: s0, S1: s1}
	}
	for _, c := range []struct {
		name string
		rule plan.Rule
		run  []*framing.Joint
		want []float64
	}{
		{"every third", plan.Rule{Every: 3}, run(nil, 0, 1, 2, 3, 4, 5, 6), []float64{0, 3, 6}},
		// 0 to 96 in bays of 48 at most: two bays.
		{"two equal bays", plan.Rule{AtMost: 48}, run(nil, 0, 16, 32, 48, 64, 80, 96), []float64{0, 48, 96}},
		// 0 to 112: three bays of 37.3; 32 (5.3 off) and 80 (5.3 off 74.7).
		{"three bays, as even as can be", plan.Rule{AtMost: 48}, run(nil, 0, 16, 32, 48, 64, 80, 96, 112), []float64{0, 32, 80, 112}},
		{"a gap wider than asked for stays", plan.Rule{AtMost: 30}, run(nil, 0, 16, 80, 96), []float64{0, 16, 80, 96}},
		{"one joint", plan.Rule{AtMost: 48}, run(nil, 7), []float64{7}},
		{"two joints", plan.Rule{AtMost: 48}, run(nil, 7, 9), []float64{7, 9}},
		// A plate of 24 in is held by one bolt in its middle, one of 25 by two.
		{"a short plate", plan.Rule{AtMost: 48}, run(plate(0, 24), 1, 12, 23), []float64{12}},
		{"not so short a plate", plan.Rule{AtMost: 48}, run(plate(0, 25), 1, 12, 23), []float64{1, 23}},
		// Of 0 30 64 96 the one nearest to 48 is 64, 16 off.
		{"every second, 64 at most", plan.Rule{Every: 2, AtMost: 64}, run(nil, 0, 10, 30, 50, 64, 80, 96), []float64{0, 64, 96}},
	} {
		t.Run(c.name, func(t *testing.T) { assert.Equal(t, c.want, at2(thin(&c.rule, c.run))) })
	}
	a, b := plate(0, 40), plate(60, 100)
	parts := stretches(append(run(a, 1, 20, 39), run(b, 61, 99)...))
	require.Len(t, parts, 2)
	assert.Equal(t, []float64{1, 20, 39}, at2(parts[0]))
	assert.Equal(t, []float64{61, 99}, at2(parts[1]))
	assert.Equal(t, 38.0, widest(run(nil, 1, 20, 58, 60)))
	assert.Zero(t, widest(run(nil, 5)))
}

func TestNearestFreePlaceForABolt(t *testing.T) {
	// Right before left, a quarter inch at a time, 24 in at most.
	s, ok := nearestFree(50, 2, func(float64) bool { return true })
	assert.True(t, ok)
	assert.Equal(t, 52.0, s)
	s, _ = nearestFree(50, 2, func(s float64) bool { return s < 50 })
	assert.Equal(t, 48.0, s)
	s, _ = nearestFree(50, 2, func(s float64) bool { return s >= 53.1 })
	assert.Equal(t, 53.25, s)
	s, ok = nearestFree(50, 2, func(s float64) bool { return s >= 74 })
	assert.True(t, ok)
	assert.Equal(t, 74.0, s)
	_, ok = nearestFree(50, 2, func(s float64) bool { return s > 74 })
	assert.False(t, ok)
}

func TestSideOfAnOpeningStaysClear(t *testing.T) {
	// A rough opening from 40 to 70, its sill 30 over the floor at 120, 50 high: 150
	// to 200. The jack on its left has its right side there, the one on its right
	// its left.
	w := &plan.Wall{Level: &plan.Level{Floor: 120}}
	o := &plan.Opening{At: 40, Width: 30, Sill: 30, Height: 50}
	left := &framing.Member{Wall: w, Opening: o, S0: 38.5, S1: 40}
	right := &framing.Member{Wall: w, Opening: o, S0: 70, S1: 71.5}
	for _, c := range []struct {
		m    *framing.Member
		side string
		z    float64
		want bool
	}{
		{left, "right", 160, true},
		{left, "left", 160, false},
		{right, "left", 160, true},
		{right, "right", 160, false},
		{left, "right", 150, true},
		{left, "right", 149.9, false},
		{left, "right", 200, true},
		{left, "right", 200.1, false},
		{&framing.Member{Wall: w, S0: 38.5, S1: 40}, "right", 160, false},
		{&framing.Member{Opening: o, S0: 38.5, S1: 40}, "right", 160, false},
	} {
		assert.Equal(t, c.want, inOpening(c.m, c.side, c.z), "%+v", c)
	}
}

func TestNailsOfTheEndsOfAStrap(t *testing.T) {
	f := func(parts ...plan.Fasteners) *hardware.Item {
		return &hardware.Item{Item: &plan.Item{Fasteners: parts}}
	}
	for _, c := range []struct {
		item *hardware.Item
		want [2]int
		ok   [2]bool
	}{
		{f(plan.Fasteners{Count: 9, Parts: 2}), [2]int{9, 9}, [2]bool{true, true}},
		{f(plan.Fasteners{Count: 9, Parts: 1}), [2]int{5, 5}, [2]bool{true, true}}, // half of them, rounded up
		{f(plan.Fasteners{Count: 8, Parts: 1}), [2]int{4, 4}, [2]bool{true, true}},
		{f(plan.Fasteners{Count: 8, Parts: 1}, plan.Fasteners{Count: 6, Parts: 1}), [2]int{8, 6}, [2]bool{true, true}},
		{f(plan.Fasteners{Count: 3, Parts: 1}, plan.Fasteners{Count: 6, Parts: 2}), [2]int{6, 6}, [2]bool{true, true}},
		{f(), [2]int{}, [2]bool{}},
	} {
		for i := range 2 {
			got, ok := endNails(c.item, i)
			assert.Equal(t, c.ok[i], ok)
			assert.Equal(t, c.want[i], got.Count, "%+v", c.item.Fasteners)
		}
	}
}

func TestWhatANailGoesInto(t *testing.T) {
	m := func(r framing.Role) *framing.Member { return &framing.Member{Role: r} }
	for _, c := range []struct {
		part string
		role framing.Role
		want bool
	}{
		{"each end", framing.Rim, true},
		{"to stud", framing.Stud, true},
		{"to stud", framing.Jack, true},
		{"to stud", framing.King, true},
		{"to stud", framing.TopPlate, false},
		{"to plate", framing.TopPlate, true},
		{"to plate", framing.Stud, false},
		{"to rafter", framing.Rafter, true},
	} {
		assert.Equal(t, c.want, takes(plan.Fasteners{Part: c.part}, m(c.role)), "%s %s", c.part, c.role)
	}
	box := func(x, y, z float64) geom.Solid {
		return geom.Box(geom.Vec3{}, geom.Vec3{X: x}, geom.Vec3{Y: y}, geom.Vec3{Z: z})
	}
	stud := &framing.Member{Solid: []geom.Solid{box(1.5, 5.5, 40), box(1, 3, 90)}}
	assert.InDelta(t, 1.5, thick(stud, geom.Vec3{X: -1}), 1e-9)
	assert.InDelta(t, 5.5, thick(stud, geom.Vec3{Y: 3}), 1e-9, "the thickest part, whatever the normal's length")
	sloped := &framing.Member{Roof: &plan.Roof{}, Section: plan.Lumber{Depth: 7.25}, Solid: stud.Solid}
	assert.InDelta(t, 7.25, thick(sloped, geom.Vec3{Y: -0.6, Z: 0.8}), 1e-9)
	assert.InDelta(t, 1.5, thick(sloped, geom.Vec3{X: 1}), 1e-9)
}

func TestHeightsOfThePlates(t *testing.T) {
	w := &plan.Wall{}
	plate := func(r framing.Role, z0 float64) *framing.Member {
		return &framing.Member{Role: r, Section: two6, Z0: z0, Z1: z0 + 1.5, A: geom.Vec3{Z: z0}, B: geom.Vec3{X: 90, Z: z0}}
	}
	stud := &framing.Member{Role: framing.Stud, Z1: 100}
	lower, upper := plate(framing.TopPlate, 100), plate(framing.CapPlate, 101.5)
	j := func(ms ...*framing.Member) *framing.Joint {
		return &framing.Joint{Kind: framing.StudTop, Wall: w, Level: &plan.Level{}, At: geom.Vec3{Z: 77}, Members: ms}
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
	rake := plate(framing.CapPlate, 101.5)
	rake.A, rake.B = geom.Vec3{Z: 60}, geom.Vec3{X: 80, Z: 120}
	top, _ = plates(j(stud, rake))
	assert.InDelta(t, 103.75, top, 1e-9)
	on := j(stud, rake)
	on.Kind = framing.RafterPlate
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
	w := &plan.Wall{To: geom.Vec2{X: 96}}
	it := func(k string, i plan.Item) *hardware.Item {
		return &hardware.Item{Item: &i, Kind: hardware.KindNamed(k)}
	}
	piece := func(i *hardware.Item, face string, n geom.Vec3, z0, z1 float64) *Piece {
		return &Piece{
			Joint: &framing.Joint{Wall: w, Level: l}, Item: i, Face: face, Z0: z0, Z1: z1, Path: []geom.Vec3{{X: 16, Y: 5.5, Z: z0}},
			bands: []band{{n: n}},
		}
	}
	long := it("long strap", plan.Item{Width: 2, Thickness: 0.06})
	h := holes(piece(long, "inside", geom.Vec3{Y: 1}, 80, 120))
	require.Len(t, h, 1)
	assert.InDeltaSlice(t, []float64{2.5, 0.56}, h[0].Size[:], 1e-9)
	assert.InDelta(t, 0, h[0].At.Sub(geom.Vec3{X: 16, Y: 5.78, Z: 100}).Len(), 1e-9)
	// On a stud's side the hole is as long across the wall.
	for face, n := range map[string]float64{"left": -1, "right": 1} {
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
}
