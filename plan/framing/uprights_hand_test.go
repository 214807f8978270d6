package framing

import (
	"math"
	"testing"

	"galewright/plan"
	"galewright/plan/geom"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"
)

// The nth thing of a name: the first without a letter, then b to z, then its number.
func TestSuffixes(t *testing.T) {
	for n, want := range map[int]string{0: "", 1: "", 2: "b", 3: "c", 25: "y", 26: "z", 27: "27", 100: "100"} {
		assert.Equal(t, want, suffix(n), "%d", n)
	}
	for s, want := range map[float64]string{16: "16", 16.25: "16.25", 16.004: "16", 16.006: "16.01", -0.001: "0", -4: "-4"} {
		assert.Equal(t, want, at(s), "%v", s)
	}
}

// More studs at the end of a segment stand outside of it, tight to the stud there: in a
// wall from 0 to 96 in with a stud from 48 to 49-1/2, two more at the end of a segment
// that comes from the left are at 49-1/2 to 52-1/2, of one from the right at 45 to 48.
// At the wall's own end there is no room outside: there they go inward, or are left to the
// corner where the wall runs through over another.
func TestMoreStudsAtTheEndOfASegment(t *testing.T) {
	for _, c := range []struct {
		name    string
		at, out float64
		n       int
		role    plan.Role
		through bool
		want    []float64 // where the further studs begin
	}{
		{"the end of a segment from the left", 49.5, 1, 2, plan.Stud, false, []float64{49.5, 51}},
		{"the start of a segment to the right", 48, -1, 2, plan.Stud, false, []float64{46.5, 45}},
		{"none asked", 48, 1, 0, plan.Stud, false, nil},
		{"3 in off, it is still the stud there", 52.5, 1, 1, plan.Stud, false, []float64{49.5}},
		{"3 in off on the other side", 45, -1, 1, plan.Stud, false, []float64{46.5}},
		{"farther off it is none", 52.6, 1, 1, plan.Stud, false, nil},
		{"a jack carries no hold-down", 49.5, 1, 1, plan.Jack, false, nil},
		{"the wall's last end: inward", 96, 1, 2, plan.Stud, false, []float64{93, 91.5}},
		{"the wall's first end: inward", 0, -1, 2, plan.Stud, false, []float64{1.5, 3}},
		{"at the last end of a wall that runs through", 96, 1, 2, plan.Stud, true, nil},
		{"at its first end, which butts", 0, -1, 1, plan.Stud, true, []float64{1.5}},
	} {
		l := &layout{wall: span{0, 96}}
		for _, lo := range []float64{0, 48, 94.5} {
			require.True(t, l.put(slot{span: span{lo, lo + 1.5}, role: map[bool]plan.Role{true: c.role, false: plan.Stud}[lo == 48]}))
		}
		w := &framedWall{Wall: &plan.Wall{}}
		if c.through {
			w.meets = []meeting{{end: 1, over: true}, {end: -1}}
		}
		l.thicken(w, c.at, c.out, c.n)
		var got []float64
		for _, x := range l.slots[3:] {
			assert.Equal(t, plan.Post, x.role, c.name)
			assert.InDelta(t, 1.5, x.hi-x.lo, 1e-9, c.name)
			got = append(got, x.lo)
		}
		require.Len(t, got, len(c.want), c.name)
		for i := range got {
			assert.InDelta(t, c.want[i], got[i], 1e-9, c.name)
		}
	}
}

// Studs of a post are set tight from a place on, each way; what stands there is passed over, and what
// has no room in the wall is left out.
func TestStudsSetTightFromAPlaceOn(t *testing.T) {
	for _, c := range []struct {
		name   string
		at, to float64
		n      int
		there  []span
		want   []span
	}{
		{"to the right", 10, 1, 2, nil, []span{{10, 11.5}, {11.5, 13}}},
		{"to the left", 20, -1, 2, nil, []span{{18.5, 20}, {17, 18.5}}},
		{"past a stud to the right", 10, 1, 2, []span{{12, 13.5}}, []span{{10, 11.5}, {13.5, 15}}},
		{"past a stud to the left", 20, -1, 2, []span{{16.5, 18}}, []span{{18.5, 20}, {15, 16.5}}},
		{"past two that touch", 10, 1, 1, []span{{11, 12.5}, {12.5, 14}}, []span{{14, 15.5}}},
		{"past two that touch, to the left", 20, -1, 1, []span{{17.5, 19}, {16, 17.5}}, []span{{14.5, 16}}},
		{"up to the wall's end", 45, 1, 3, nil, []span{{45, 46.5}, {46.5, 48}}},
		{"up to the wall's start", 3, -1, 3, nil, []span{{1.5, 3}, {0, 1.5}}},
		{"none", 10, 1, 0, nil, nil},
	} {
		l := &layout{wall: span{0, 48}}
		for _, s := range c.there {
			require.True(t, l.put(slot{span: s, role: plan.Stud}), c.name)
		}
		l.beside(c.at, c.to, c.n)
		var got []span
		for _, x := range l.slots[len(c.there):] {
			assert.Equal(t, plan.Post, x.role, c.name)
			got = append(got, x.span)
		}
		require.Len(t, got, len(c.want), c.name)
		for i := range got {
			assert.InDelta(t, c.want[i].lo, got[i].lo, 1e-6, c.name)
			assert.InDelta(t, c.want[i].hi, got[i].hi, 1e-6, c.name)
		}
	}
}

// A segment from 20 to 68 wants posts whose middles are at 20.75 and 67.25; a full-height member up to 3 in
// from there does as well, a jack does not.
func TestPostsAtTheEndsOfASegment(t *testing.T) {
	for _, c := range []struct {
		name  string
		there slot
		want  []float64 // where posts are set
	}{
		{"nothing there", slot{span: span{40, 41.5}, role: plan.Stud}, []float64{20, 66.5}},
		{"3 in before the first", slot{span: span{17, 18.5}, role: plan.Stud}, []float64{66.5}},
		{"3 in after the first", slot{span: span{23, 24.5}, role: plan.King}, []float64{66.5}},
		{"farther before", slot{span: span{16.9, 18.4}, role: plan.Stud}, []float64{20, 66.5}},
		{"farther after", slot{span: span{23.1, 24.6}, role: plan.Stud}, []float64{20, 66.5}},
		{"a jack", slot{span: span{23, 24.5}, role: plan.Jack}, []float64{20, 66.5}},
		{"3 in before the last", slot{span: span{63.5, 65}, role: plan.Stud}, []float64{20}},
		{"3 in after the last", slot{span: span{69.5, 71}, role: plan.Post}, []float64{20}},
		{"farther after the last", slot{span: span{69.6, 71.1}, role: plan.Post}, []float64{20, 66.5}},
	} {
		l := &layout{wall: span{0, 96}}
		require.True(t, l.put(c.there))
		shearPosts(&framedWall{Wall: &plan.Wall{Shear: []*plan.Shear{{From: 20, To: 68, Posts: 1}}}, s1: 96}, l)
		var got []float64
		for _, x := range l.slots[1:] {
			assert.Equal(t, plan.Post, x.role, c.name)
			assert.InDelta(t, 1.5, x.hi-x.lo, 1e-9, c.name)
			got = append(got, x.lo)
		}
		assert.Equal(t, c.want, got, c.name)
	}
}

// The center line of a stud goes up the middle of the wall's depth, that of a plate along
// it, half way up its thickness: of a wall from (10, 20) north, with its inside to the
// west, 5-1/2 deep, 2-3/4 in in from its face.
func TestCenterLinesOfAWallsPieces(t *testing.T) {
	f := geom.NewFrame(geom.Vec2{X: 10, Y: 20}, geom.Vec2{X: 10, Y: 116})
	stud := &Member{S0: 16, S1: 17.5, Z0: 1.5, Z1: 94.125}
	axis(stud, f, piece{role: plan.Stud, s0: 16, s1: 17.5, t1: 5.5})
	assert.InDelta(t, 0, stud.A.Sub(geom.Vec3{X: 10 - 2.75, Y: 36.75, Z: 1.5}).Len(), 1e-9)
	assert.InDelta(t, 0, stud.B.Sub(geom.Vec3{X: 10 - 2.75, Y: 36.75, Z: 94.125}).Len(), 1e-9)
	assert.InDelta(t, 92.625, stud.Length, 1e-9)
	// A ledger board on the inside face, from 5-1/2 to 7 in.
	board := &Member{S0: 4, S1: 52, Z0: 94, Z1: 97}
	axis(board, f, piece{role: plan.Ledger, s0: 4, s1: 52, t0: 5.5, t1: 7})
	assert.InDelta(t, 0, board.A.Sub(geom.Vec3{X: 10 - 6.25, Y: 24, Z: 95.5}).Len(), 1e-9)
	assert.InDelta(t, 0, board.B.Sub(geom.Vec3{X: 10 - 6.25, Y: 72, Z: 95.5}).Len(), 1e-9)
	assert.InDelta(t, 48, board.Length, 1e-9)
}

// A rafter along x from (100, 50): a plane at x = 112 ends it 12 in on, one that looks
// back at x = 96 begins it 4 in before; planes along it cut nothing off, wherever they are.
func TestHowFarABarReaches(t *testing.T) {
	r := bar{at: geom.Vec2{X: 100, Y: 50}, dir: geom.Vec2{X: 1}, half: 0.75}
	at := func(n geom.Vec2, c float64) geom.Plane { return geom.Plane{N: n.Up(0), C: c} }
	east, west, north := at(geom.Vec2{X: 1}, 112), at(geom.Vec2{X: -1}, -96), at(geom.Vec2{Y: 1}, 7)
	for _, c := range []struct {
		planes []geom.Plane
		lo, hi float64
	}{
		{nil, -30, 60},
		{[]geom.Plane{east}, -30, 12},
		{[]geom.Plane{west}, -4, 60},
		{[]geom.Plane{north, flip(north)}, -30, 60},
		{[]geom.Plane{north, west, east}, -4, 12},
		{[]geom.Plane{east, at(geom.Vec2{X: 1}, 200)}, -30, 12}, // the nearer one
		{[]geom.Plane{at(geom.Vec2{X: 1, Y: 1}, 160)}, -30, 10}, // x + 50 = 160
	} {
		lo, hi := r.extent(-30, 60, c.planes)
		assert.InDelta(t, c.lo, lo, 1e-9, "%v", c.planes)
		assert.InDelta(t, c.hi, hi, 1e-9, "%v", c.planes)
	}
	lo, hi := r.box([]geom.Plane{west, east})
	assert.InDelta(t, 0, lo.Sub(geom.Vec3{X: 96 - 3.25, Y: 50 - 3.25, Z: -1}).Len(), 1e-9)
	assert.InDelta(t, 0, hi.Sub(geom.Vec3{X: 112 + 3.25, Y: 50 + 3.25, Z: 1}).Len(), 1e-9)
	assert.Equal(t, geom.Plane{N: geom.Vec3{Y: 1}, C: 49.25}, r.beside(geom.Vec2{Y: 9}))
	assert.Equal(t, geom.Plane{N: geom.Vec3{Y: -1}, C: -50.75}, r.beside(geom.Vec2{Y: 90}))
	assert.InDelta(t, math.Sqrt2*8, bar{depth: 8, rise: 1}.plumb(), 1e-9)
}

// Joints are named by host and station, halves rounded up. They go by the order that the
// plan names its walls in, then by station, by the order of the kinds, and of one kind at
// one station the lower one first; a second of one name has a letter.
func TestJointsAreNamedInOrder(t *testing.T) {
	p := &plan.Plan{Walls: []*plan.Wall{{Name: "N"}, {Name: "A"}}, Roofs: []*plan.Roof{{Name: "main"}}}
	b := &builder{plan: p, house: &House{Plan: p}}
	add := func(host string, s, z float64, k plan.JointKind) *Joint {
		return b.joint(&Joint{Host: host, Station: s, Kind: k, At: geom.Vec3{Z: z}})
	}
	hip := add("main/hip", 3, 0, plan.RafterRidge)
	a := add("A", 16, 0, plan.StudBase)
	high, low := add("N", 32.5, 109, plan.StudTop), add("N", 32.5, 12, plan.StudTop)
	first, base := add("N", 5.4, 200, plan.StudBase), add("N", 32.5, 300, plan.StudBase)
	roof := add("main", 90, 0, plan.RafterRidge)
	b.finish()
	code := func(k plan.JointKind) string { return k.Code() }
	assert.Equal(t, []string{
		"N-5-" + code(plan.StudBase), "N-33-" + code(plan.StudTop), "N-33b-" + code(plan.StudTop), "A-16-" + code(plan.StudBase),
		"main-90-" + code(plan.RafterRidge), "main/hip-3-" + code(plan.RafterRidge),
	}, []string{first.ID, low.ID, high.ID, a.ID, roof.ID, hip.ID})
	order := map[*Joint]int{}
	for i, j := range b.house.Joints {
		order[j] = i
	}
	assert.Less(t, order[low], order[high], "the lower one first")
	assert.Less(t, order[high], order[a], "as the plan names its walls, not by letter")
	assert.Less(t, order[roof], order[hip], "a hip goes with its roof, after it")
	kinds := plan.JointKinds()
	before := map[plan.JointKind]int{}
	for i, k := range kinds {
		before[k] = i
	}
	assert.Equal(t, before[plan.StudBase] < before[plan.StudTop], order[base] < order[low])
}
