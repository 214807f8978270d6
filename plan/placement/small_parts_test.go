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

// run makes joints at stations; a plate each, or one for all.
func run(plate *framing.Member, stations ...float64) (out []*framing.Joint) {
	for _, s := range stations {
		j := &framing.Joint{Kind: plan.StudBase, Station: s}
		if plate != nil {
			j.Members = []*framing.Member{{Role: plan.Stud}, plate}
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
		return &framing.Member{Role: plan.SillPlate, S0: s0, S1: s1}
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
		t.Run(c.name, func(t *testing.T) { assert.Equal(t, c.want, at2(world0.thin(&c.rule, c.run))) })
	}
	a, b := plate(0, 40), plate(60, 100)
	parts := stretches(append(run(a, 1, 20, 39), run(b, 61, 99)...))
	require.Len(t, parts, 2)
	assert.Equal(t, []float64{1, 20, 39}, at2(parts[0]))
	assert.Equal(t, []float64{61, 99}, at2(parts[1]))
	assert.Equal(t, 38.0, world0.widest(run(nil, 1, 20, 58, 60)))
	assert.Zero(t, world0.widest(run(nil, 5)))
}

func TestNearestFreePlaceForABolt(t *testing.T) {
	// Right before left, a quarter inch at a time, 24 in at most.
	s, ok := nearestFree(50, 2, 1, func(float64) bool { return true })
	assert.True(t, ok)
	assert.Equal(t, 52.0, s)
	s, _ = nearestFree(50, 2, 1, func(s float64) bool { return s < 50 })
	assert.Equal(t, 48.0, s)
	s, _ = nearestFree(50, 2, 1, func(s float64) bool { return s >= 53.1 })
	assert.Equal(t, 53.25, s)
	s, ok = nearestFree(50, 2, 1, func(s float64) bool { return s >= 74 })
	assert.True(t, ok)
	assert.Equal(t, 74.0, s)
	_, ok = nearestFree(50, 2, 1, func(s float64) bool { return s > 74 })
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
		side plan.Face
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

func TestThicknessBehindAFace(t *testing.T) {
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

func TestBoltKeepsSevenDiametersFromThePlatesEnd(t *testing.T) {
	// Beside the stud at 0.75 a washer of 2 is clear from 0.75 + 0.75 + 1 + 0.5 = 3 on.
	// Seven diameters from the plate's end are 3.5 for 1/2 in, 4.375 for 5/8: the first
	// quarter inch past that, counted from 3. At 16 nothing is in the way: 18.25.
	for rod, want := range map[float64]float64{0.375: 3, 0.5: 3.5, 0.625: 4.5} {
		for from, at := range map[float64]float64{0: want, 15: 18.25} {
			p, _ := placed(t, standard().with(plan.Rule{Name: "b", At: "stud-base", Use: "plate-clip", Where: plan.Where{From: from, To: from + 2}}),
				func(m map[string]*plan.Item) {
					*m["plate-clip"] = plan.Item{Mark: "plate-clip", Kind: "anchor bolt", Length: 12, Rod: rod, Pos: m["plate-clip"].Pos}
				})
			q := one(t, p)
			assert.InDelta(t, at, q.Station, 1e-9, "%v in", rod)
			// A cut washer of 3/16, the nut, as high as the rod is thick, and 1/4 of thread
			// stand over the plate.
			assertPath(t, q.Path, geom.Vec3{X: at, Y: 2.75, Z: floor1 + 1.5 + rod + 0.4375}, geom.Vec3{X: at, Y: 2.75, Z: floor1 + 1.5 + rod + 0.4375 - 12})
		}
	}
}

// The body of a hold-down whose rod is 1 7/16 off its post takes twice that beside it, less a thirty-second
// from where wood is looked for; what has no body, its nails with it, a quarter of an inch.
func TestHowFarAPieceStandsOffItsFace(t *testing.T) {
	for _, c := range []struct {
		bodies int
		want   float64
	}{{0, 0.25}, {1, 2.875 - 1.0/32}, {2, 2.875 - 1.0/32}} {
		p := &Piece{Item: &hardware.Item{Item: &plan.Item{Center: 1.4375, Bodies: c.bodies}}}
		assert.InDelta(t, c.want, p.reach(), 1e-9)
	}
}

// world0 is that of a house which lies as written.
var world0 = &world{house: &framing.House{Plan: &plan.Plan{}}}

// That a piece has no way to lie says at what joint, and on what face where one is asked for.
func TestNoWayNamesTheFaceAskedFor(t *testing.T) {
	w := want{joint: &framing.Joint{Kind: plan.StudTop}, item: &hardware.Item{Item: &plan.Item{}, Kind: hardware.KindNamed(plan.StrapItem)}}
	_, plain := noWay(w)
	_, left := noWay(w.on(plan.Left))
	assert.NotContains(t, plain.Summary, "face")
	assert.Contains(t, left.Summary, "on the left face")
}
