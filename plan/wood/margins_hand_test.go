package wood

import (
	"math"
	"testing"

	"galewright/plan"
	"galewright/plan/framing"
	"galewright/plan/geom"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"
)

// lying is a member of a box along x from x0 to x1.
func lying(role plan.Role, x0, x1, y0, y1, z0, z1 float64) *framing.Member {
	m := stick(string(role), geom.Vec3{X: x0, Y: y0, Z: z0}, geom.Vec3{X: x1, Y: y1, Z: z1})
	m.Role, m.A, m.B = role, geom.Vec3{X: x0, Y: (y0 + y1) / 2, Z: (z0 + z1) / 2}, geom.Vec3{X: x1, Y: (y0 + y1) / 2, Z: (z0 + z1) / 2}
	return m
}

// A stud 1 1/2 by 5 1/2 in, 96 high. On its edge the margins are to its sides
// and along it to the nearer end; on its side to its edges; into its head, which is
// end grain, to its sides and edges, whichever way round.
func TestMarginsOnEachFaceOfAStud(t *testing.T) {
	m := stick("stud", geom.Vec3{}, geom.Vec3{X: 1.5, Y: 5.5, Z: 96})
	w := New([]*framing.Member{m})
	for _, c := range []struct {
		name      string
		p, n      geom.Vec3
		edge, end float64
	}{
		{"edge, low", geom.Vec3{X: 0.4, Y: 0, Z: 10}, geom.Vec3{Y: -1}, 0.4, 10},
		{"edge, high, past the middle", geom.Vec3{X: 1.2, Y: 5.5, Z: 90}, geom.Vec3{Y: 1}, 0.3, 6},
		{"side", geom.Vec3{X: 1.5, Y: 2, Z: 30}, geom.Vec3{X: 1}, 2, 30},
		{"middle of a long member: followed 4 ft at most", geom.Vec3{X: 0.75, Y: 0, Z: 48}, geom.Vec3{Y: -1}, 0.75, 48},
	} {
		got := w.Around(m, c.p, c.n)
		assert.InDelta(t, c.edge, got.Edge, 1e-9, c.name)
		assert.InDelta(t, c.end, got.End, 1e-9, c.name)
	}
	head := w.Around(m, geom.Vec3{X: 0.5, Y: 2, Z: 96}, geom.Vec3{Z: 1})
	both := []float64{head.Edge, head.End}
	assert.InDelta(t, 0.5, math.Min(both[0], both[1]), 1e-9)
	assert.InDelta(t, 2, math.Max(both[0], both[1]), 1e-9)
	for _, way := range []float64{-1, 1} { // a plate along y, 2 in from its side and 1/2 in from its face
		plate := stick("plate", geom.Vec3{}, geom.Vec3{X: 5.5, Y: 60, Z: 1.5})
		plate.A, plate.B = geom.Vec3{X: 2.75, Z: 0.75}, geom.Vec3{X: 2.75, Y: 60, Z: 0.75}
		got := New([]*framing.Member{plate}).Around(plate, geom.Vec3{X: 2, Y: 30 + 30*way, Z: 0.5}, geom.Vec3{Y: way})
		assert.ElementsMatch(t, []float64{0.5, 2}, []float64{math.Round(got.Edge*1e6) / 1e6, math.Round(got.End*1e6) / 1e6})
	}
	long := stick("pile", geom.Vec3{}, geom.Vec3{X: 9.5, Y: 9.5, Z: 240})
	assert.InDelta(t, 48, New([]*framing.Member{long}).Around(long, geom.Vec3{X: 4, Z: 120}, geom.Vec3{Y: -1}).End, 1e-9)
}

// On a face askew to the grain the end is measured in the face: a brace up at 45
// degrees has its grain half out of a level face.
func TestMarginsInASlopingFace(t *testing.T) {
	d := geom.Vec3{X: 1, Z: 1}.Unit()
	up := geom.Vec3{X: -1, Z: 1}.Unit()
	m := &framing.Member{Solid: []geom.Solid{geom.Box(geom.Vec3{}, d.Mul(60), geom.Vec3{Y: 3.5}, up.Mul(5.5))}, A: geom.Vec3{}, B: d.Mul(60)}
	w := New([]*framing.Member{m})
	got := w.Around(m, d.Mul(20).Add(geom.Vec3{Y: 1}).Add(up.Mul(5.5)), up)
	assert.InDelta(t, 1, got.Edge, 1e-9)
	assert.InDelta(t, 20, got.End, 1e-9)
}

// Parts of a member that stand apart are not one: from between them there is
// no wood, and from one the way ends at its own face, whatever their order.
func TestAGapBetweenPartsEndsTheWood(t *testing.T) {
	a, b, c := stick("", geom.Vec3{}, geom.Vec3{X: 1.5, Y: 5.5, Z: 20}), stick("", geom.Vec3{Z: 20}, geom.Vec3{X: 1.5, Y: 5.5, Z: 30}), stick("", geom.Vec3{Z: 31}, geom.Vec3{X: 1.5, Y: 5.5, Z: 40})
	m := &framing.Member{A: geom.Vec3{X: 0.75, Y: 2.75}, B: geom.Vec3{X: 0.75, Y: 2.75, Z: 40}, Solid: []geom.Solid{c.Solid[0], b.Solid[0], a.Solid[0]}}
	w := New([]*framing.Member{m})
	up := geom.Vec3{Z: 1}
	at := func(z float64) geom.Vec3 { return geom.Vec3{X: 0.75, Y: 2, Z: z} }
	for z, want := range map[float64]float64{5: 25, 19: 11, 21: 9, 30.5: 0, 33: 7} {
		assert.InDelta(t, want, w.Out(m, at(z), up), 1e-9, "from %v up", z)
	}
	for z, want := range map[float64]float64{5: 5, 19: 19, 28: 28, 30.5: 0, 33: 2} {
		assert.InDelta(t, want, w.Out(m, at(z), up.Mul(-1)), 1e-9, "from %v down", z)
	}
	runs := w.Through(at(-10), at(50))
	require.Len(t, runs, 2, "two that touch are one run")
	assert.InDeltaSlice(t, []float64{10, 40, 41, 50}, []float64{runs[0].From, runs[0].To, runs[1].From, runs[1].To}, 1e-9)
	part := w.Stretches(at(-10), up, 60, func(x *framing.Member) bool { return x == m })
	require.Len(t, part, 3, "each part by itself, in order")
	assert.InDeltaSlice(t, []float64{10, 30, 40, 41}, []float64{part[0].From, part[1].From, part[1].To, part[2].From}, 1e-9)
	assert.Empty(t, w.Stretches(at(-10), up, 60, func(*framing.Member) bool { return false }))
}

// A line askew, from high to low in every coordinate, finds what it crosses, and
// its angle to the grain.
func TestALineAskew(t *testing.T) {
	m := stick("stud", geom.Vec3{}, geom.Vec3{X: 1.5, Y: 5.5, Z: 96})
	w := New([]*framing.Member{m})
	// From (3, 4, 44) by (-3, -3, -4) to (0, 1, 40): in the stud from x 1.5 on, half of sqrt 34.
	runs := w.Through(geom.Vec3{X: 3, Y: 4, Z: 44}, geom.Vec3{X: 0, Y: 1, Z: 40})
	require.Len(t, runs, 1)
	assert.InDelta(t, math.Sqrt(34)/2, runs[0].From, 1e-9)
	assert.InDelta(t, math.Sqrt(34), runs[0].To, 1e-9)
	assert.InDelta(t, 4/math.Sqrt(34), runs[0].Grain, 1e-9)
	assert.False(t, runs[0].EndGrain(), "47 degrees off it: nearer to the side")
	assert.True(t, Run{Grain: 0.71}.EndGrain())
	assert.False(t, Run{Grain: 0.70}.EndGrain())
}

// Whose underside takes a washer, and that a hole of more than a thirty-second of
// an inch between two members ends the way down.
func TestHowFarDownAWasherGoes(t *testing.T) {
	for r, want := range map[plan.Role]bool{
		plan.GirderBeam: true, plan.Beam: true, plan.Header: true, plan.UpperPlate: true, plan.TopPlate: true, plan.Blocking: true,
		plan.Joist: false, plan.Rim: false, plan.BottomPlate: false, plan.SillPlate: false, plan.Pile: false,
	} {
		assert.Equal(t, want, Carries(&framing.Member{Role: r}), r)
	}
	upper, top := lying(plan.UpperPlate, -20, 20, 0, 5.5, 98.5, 100), lying(plan.TopPlate, -20, 20, 0, 5.5, 97, 98.5)
	apart := lying(plan.TopPlate, -20, 20, 0, 5.5, 96.4, 97.9)
	from := geom.Vec3{Y: 2.75, Z: 102}
	x := Washer{Side: 3}
	land := New([]*framing.Member{upper, top}).Below(from, 60, x, 1.25, Carries)
	assert.Same(t, top, land.Member())
	assert.InDelta(t, 5, land.Deep(), 1e-9)
	land = New([]*framing.Member{upper, apart}).Below(from, 60, x, 1.25, Carries)
	assert.Same(t, upper, land.Member(), "0.6 in of air: the washer goes there")
	assert.InDelta(t, 3.5, land.Deep(), 1e-9)
	assert.Same(t, apart, land.Blocked, "where there is no room for the nut")
	none := New(nil).Below(from, 60, x, 1.25, Carries)
	assert.Nil(t, none.Member())
	assert.Zero(t, none.Deep())
	assert.False(t, none.OnSill())
}

// The last member of a line is the sill plate, or a pile beside it does not count.
func TestWhereALineEndsInASill(t *testing.T) {
	of := func(roles ...plan.Role) (l Landing) {
		for _, r := range roles {
			l.Runs = append(l.Runs, Run{Member: &framing.Member{Role: r}})
		}
		return l
	}
	for _, c := range []struct {
		roles []plan.Role
		want  bool
	}{
		{[]plan.Role{plan.BottomPlate, plan.Rim, plan.SillPlate}, true},
		{[]plan.Role{plan.BottomPlate, plan.SillPlate, plan.Pile}, true},
		{[]plan.Role{plan.SillPlate, plan.GirderBeam}, false},
		{[]plan.Role{plan.SillPlate, plan.GirderBeam, plan.Pile}, false},
		{[]plan.Role{plan.Pile}, false},
		{nil, false},
	} {
		assert.Equal(t, c.want, of(c.roles...).OnSill(), "%v", c.roles)
	}
	assert.Equal(t, "nothing", Passed(nil))
	assert.Equal(t, "bottom plate, rim", Passed(of(plan.BottomPlate, plan.Rim).Runs))
}

// A washer of 3 in on a stud's end, which is 1 1/2 by 5 1/2, bears on 3 by 1 1/2,
// or where it is turned less by no more than its corners; under a rod that leans
// it bears on the wood square to its normal.
func TestAWasherOnEndGrain(t *testing.T) {
	m := stick("post", geom.Vec3{X: -2.75, Y: -2.75}, geom.Vec3{X: 2.75, Y: 2.75, Z: 96})
	w := New([]*framing.Member{m})
	assert.InDelta(t, 9, w.Bears(m, geom.Vec3{Z: 96}, geom.Vec3{Z: 1}, Washer{Side: 3}), 1e-6)
	assert.InDelta(t, 9, w.Bears(m, geom.Vec3{Z: 96}, geom.Vec3{Z: 7}, Washer{Side: 3}), 1e-6, "a normal of any length")
	assert.InDelta(t, 9, w.Bears(m, geom.Vec3{Y: -2.75, Z: 40}, geom.Vec3{Y: -1}, Washer{Side: 3}), 1e-6)
	assert.Zero(t, w.Bears(m, geom.Vec3{X: 9, Z: 96}, geom.Vec3{Z: 1}, Washer{Side: 3, Hole: 1}), "beside it, and never less than nothing")
	// Its sides lie along the grain: at 2 in from the edge of a beam 3 in reach 1.25 + 1.5.
	b := lying(plan.Beam, -20, 20, 0, 5.5, 0, 9.25)
	assert.InDelta(t, 3*2.75, New([]*framing.Member{b}).Bears(b, geom.Vec3{Y: 1.25}, geom.Vec3{Z: -1}, Washer{Side: 3}), 1e-6)
	skew := &framing.Member{Solid: []geom.Solid{geom.Box(geom.Vec3{X: -9, Y: -9}, geom.Vec3{X: 30, Y: 30}, geom.Vec3{X: 1.5, Y: -1.5}, geom.Vec3{Z: 9})}, A: geom.Vec3{X: -9, Y: -9}, B: geom.Vec3{X: 21, Y: 21}}
	// A ply 2.121 in wide at 45 degrees: the washer turns with it, 2.121 x 3 or less its overhang.
	at := geom.Vec3{X: 0.75, Y: -0.75}
	assert.InDelta(t, 3*1.5*math.Sqrt2, New([]*framing.Member{skew}).Bears(skew, at, geom.Vec3{Z: -1}, Washer{Side: 3}), 1e-6)
}

// What stands under a washer: a post right under it, turned any way, is in the
// nut's way as deep as the nut needs room, and no deeper.
func TestRoomForANut(t *testing.T) {
	b := lying(plan.Beam, -20, 20, 0, 3.5, 0, 9.25)
	for _, c := range []struct {
		top     float64 // of the post below
		blocked bool
	}{{-0.5, true}, {-1.2, true}, {-1.3, false}} {
		post := stick("post", geom.Vec3{X: -1, Y: 1, Z: -60}, geom.Vec3{X: 1, Y: 2.5, Z: c.top})
		land := New([]*framing.Member{b, post}).Below(geom.Vec3{Y: 1.75, Z: 12}, 40, Washer{Side: 3}, 1.25, Carries)
		require.Same(t, b, land.Member())
		assert.Equal(t, c.blocked, land.Blocked == post, "top at %v", c.top)
	}
	// Under a post's own foot there is no grain on plan: the washer is looked for square to x.
	foot := stick("foot", geom.Vec3{X: -2, Y: -2, Z: 0}, geom.Vec3{X: 2, Y: 2, Z: 40})
	near := stick("near", geom.Vec3{X: 1.4, Y: -1, Z: -9}, geom.Vec3{X: 3, Y: 1, Z: -0.1})
	far := stick("far", geom.Vec3{X: 1.6, Y: -1, Z: -9}, geom.Vec3{X: 3, Y: 1, Z: -0.1})
	all := func(*framing.Member) bool { return true }
	assert.Same(t, near, New([]*framing.Member{foot, near}).Below(geom.Vec3{Z: 50}, 50, Washer{Side: 3}, 1.25, all).Blocked)
	assert.Nil(t, New([]*framing.Member{foot, far}).Below(geom.Vec3{Z: 50}, 50, Washer{Side: 3}, 1.25, all).Blocked)
}

// Of two members as near the first is taken.
func TestTheNearestMember(t *testing.T) {
	a, b, c := lying(plan.Beam, 0, 9, 0, 2, 0, 2), lying(plan.Beam, 0, 9, 10, 12, 0, 2), lying(plan.Beam, 0, 9, 30, 32, 0, 2)
	line := [2]geom.Vec3{{X: 4, Y: 6, Z: 9}, {X: 4, Y: 6, Z: -9}}
	all := func(*framing.Member) bool { return true }
	m, d := Nearest([]*framing.Member{c, a, b}, line[0], line[1], all)
	assert.Same(t, a, m)
	assert.InDelta(t, 5, d, 1e-9)
	m, d = Nearest([]*framing.Member{c, a, b}, line[0], line[1], func(m *framing.Member) bool { return m != a })
	assert.Same(t, b, m)
	assert.InDelta(t, 5, d, 1e-9)
	m, _ = Nearest(nil, line[0], line[1], all)
	assert.Nil(t, m)
}

// Parts of a member that stand a thirty-second of an inch apart or less are one,
// as members that near are for a washer; 0.02 in³ of wood may be cut away for it.
func TestTheThicknessOfAHair(t *testing.T) {
	for gap, runs := range map[float64]int{0.030: 1, 0.033: 2} {
		a, b := stick("", geom.Vec3{}, geom.Vec3{X: 1.5, Y: 5.5, Z: 20}), stick("", geom.Vec3{Z: 20 + gap}, geom.Vec3{X: 1.5, Y: 5.5, Z: 30})
		m := &framing.Member{A: geom.Vec3{X: 0.75, Y: 2.75}, B: geom.Vec3{X: 0.75, Y: 2.75, Z: 30}, Solid: []geom.Solid{a.Solid[0], b.Solid[0]}}
		assert.Len(t, New([]*framing.Member{m}).Through(geom.Vec3{X: 0.5, Y: 2, Z: -5}, geom.Vec3{X: 0.5, Y: 2, Z: 40}), runs, "%v", gap)
	}
	// A 3 in washer and nut of 1 1/32 in room, 1 in of it under the hair: a post 3 in
	// wide reaches x in under it.
	b := lying(plan.Beam, -20, 20, 0, 3.5, 0, 9.25)
	for x, blocked := range map[float64]bool{0.0063: false, 0.0070: true} { // x 3 x 1: 0.019 and 0.021 in³
		post := stick("post", geom.Vec3{X: 1.5 - x, Y: -9, Z: -60}, geom.Vec3{X: 9, Y: 9, Z: -0.03125})
		land := New([]*framing.Member{b, post}).Below(geom.Vec3{Y: 1.75, Z: 12}, 40, Washer{Side: 3}, 1, Carries)
		assert.Equal(t, blocked, land.Blocked == post, "%v", x)
	}
}

// A 3 in plate on the end of a plate 5 1/2 by 1 1/2 in, square to its sides: 3 x 1.5 in of
// wood less a hole of 0.5625 in, 4.5 - 0.2485 = 4.2515 in², whichever way the plate runs.
func TestASquareWasherOnEndGrainIsSquareToTheSides(t *testing.T) {
	for _, way := range []geom.Vec3{{X: 1}, {Y: 1}} {
		lo, hi := geom.Vec3{}, way.Mul(60).Add(way.Cross(geom.Vec3{Z: 1}).Mul(5.5)).Add(geom.Vec3{Z: 1.5})
		lo, hi = bounds(lo, hi)
		m := stick("plate", lo, hi)
		mid := lo.Add(hi).Mul(0.5)
		m.A, m.B = mid.Sub(way.Mul(30)), mid.Add(way.Mul(30))
		w := New([]*framing.Member{m})
		assert.InDelta(t, 4.2515, w.Bears(m, m.B, way, Washer{Side: 3, Hole: 0.5625}), 1e-3, "%v", way)
	}
}

// A round washer is reckoned as a figure of 48 sides on its circle, 24 r² sin(7.5°) =
// 3.1326 r²: by that no more than the circle, 0.29 percent less. One of 2 in on wide
// wood with no hole bears on 3.1326 in²; half over the edge on half of that.
func TestARoundWasherIsAFigureOf48Sides(t *testing.T) {
	girder := lying(plan.GirderBeam, -20, 20, -5, 5, 0, 9.25)
	w := New([]*framing.Member{girder})
	under := func(y float64) float64 {
		return w.Bears(girder, geom.Vec3{Y: y}, geom.Vec3{Z: -1}, Washer{Side: 2, Round: true})
	}
	assert.InDelta(t, 3.13263, under(0), 1e-4)
	assert.InDelta(t, 3.13263/2, under(5), 1e-4)
	assert.Zero(t, under(6.01))
}

// Where nothing that a rod passes takes a washer, none carries it: no member, no depth,
// nothing in the way.
func TestARodThatNothingCarries(t *testing.T) {
	sole := lying(plan.BottomPlate, -20, 20, 0, 5.5, 0, 1.5)
	land := New([]*framing.Member{sole}).Below(geom.Vec3{Y: 2.75, Z: 4}, 40, Washer{Side: 3}, 1.25, Carries)
	require.Len(t, land.Runs, 1)
	assert.Equal(t, -1, land.At)
	assert.Nil(t, land.Member())
	assert.Zero(t, land.Deep())
	assert.Nil(t, land.Blocked)
	assert.Equal(t, "bottom plate", Passed(land.Runs))
	assert.Equal(t, "nothing", Passed(nil))
}

// A line over a long way finds the members at both ends of it, whichever way it runs.
func TestALongLineBothWays(t *testing.T) {
	for _, way := range []geom.Vec3{{X: 1}, {Y: 1}, {Z: 1}, geom.Vec3{X: 1, Y: -1, Z: 1}.Unit()} {
		box := func(id string, at float64) *framing.Member {
			c := way.Mul(at)
			return stick(id, c.Sub(geom.Vec3{X: 2, Y: 2, Z: 2}), c.Add(geom.Vec3{X: 2, Y: 2, Z: 2}))
		}
		w := New([]*framing.Member{box("near", 10), box("far", 390)})
		there, back := w.Through(geom.Vec3{}, way.Mul(400)), w.Through(way.Mul(400), geom.Vec3{})
		require.Len(t, there, 2, "%v", way)
		require.Len(t, back, 2, "%v", way)
		assert.Equal(t, "near far", there[0].Member.ID+" "+there[1].Member.ID)
		assert.Equal(t, "far near", back[0].Member.ID+" "+back[1].Member.ID)
	}
}

// A sill alone under a rod is its sill; piles under it are in the wall; on anything else
// the rod does not end in a sill.
func TestTheSillAtTheEndOfALine(t *testing.T) {
	run := func(roles ...plan.Role) (out []Run) {
		for _, r := range roles {
			out = append(out, Run{Member: &framing.Member{Role: r}})
		}
		return out
	}
	for _, c := range []struct {
		runs []Run
		want int // of runs; -1 none
	}{
		{run(plan.SillPlate), 0},
		{run(plan.Rim, plan.SillPlate), 1},
		{run(plan.SillPlate, plan.Pile), 0},
		{run(plan.SillPlate, plan.SillPlate), 1},
		{run(plan.SillPlate, plan.GirderBeam), -1},
		{run(plan.Pile), -1},
		{nil, -1},
	} {
		l := Landing{Runs: c.runs, At: -1}
		assert.Equal(t, c.want >= 0, l.OnSill())
		if c.want >= 0 {
			assert.Same(t, c.runs[c.want].Member, l.Sill().Member)
		}
	}
}
