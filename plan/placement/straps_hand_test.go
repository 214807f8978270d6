package placement

import (
	"testing"

	"galewright/plan"
	"galewright/plan/framing"
	"galewright/plan/geom"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"
)

// line2 is a level member along x, breadth wide, between two heights.
func line2(id string, role plan.Role, x0, x1, z0, z1 float64) *framing.Member {
	return &framing.Member{
		ID: id, Role: role, Section: two6, A: geom.Vec3{X: x0, Z: (z0 + z1) / 2}, B: geom.Vec3{X: x1, Z: (z0 + z1) / 2},
		Z0: z0, Z1: z1, S0: x0, S1: x1,
	}
}

// across is a level member along y, its middle at x.
func across(id string, role plan.Role, x, z0, z1 float64) *framing.Member {
	m := &framing.Member{
		ID: id, Role: role, Section: two6, A: geom.Vec3{X: x, Y: -48, Z: (z0 + z1) / 2}, B: geom.Vec3{X: x, Y: 48, Z: (z0 + z1) / 2}, Z0: z0, Z1: z1,
	}
	m.Solid = []geom.Solid{geom.Box(geom.Vec3{X: x - 0.75, Y: -48, Z: z0}, geom.Vec3{X: 1.5}, geom.Vec3{Y: 96}, geom.Vec3{Z: z1 - z0})}
	return m
}

// stick is an upright member off the walls.
func stick(id string, role plan.Role, x, z0, z1 float64) *framing.Member {
	return &framing.Member{ID: id, Role: role, Section: two6, A: geom.Vec3{X: x, Z: z0}, B: geom.Vec3{X: x, Z: z1}, Z0: z0, Z1: z1}
}

// rafter runs up from a to b.
func rafter(id string, role plan.Role, a, b geom.Vec3) *framing.Member {
	return &framing.Member{ID: id, Role: role, Section: two6, A: a, B: b}
}

// solid is the wood of a member of these tests: 1 1/2 in about its middle line;
// of a rafter 5 1/2 in plumb under its top edge.
func solid(m *framing.Member) geom.Solid {
	d := m.B.Sub(m.A)
	switch {
	case m.Z0 == m.Z1:
		thick := d.Flat().Unit().Left().Up(0).Mul(1.5)
		o, deep := m.A.Sub(thick.Mul(0.5)), geom.Vec3{Z: -5.5}
		return geom.Prism([]geom.Vec3{o, o.Add(d), o.Add(d).Add(deep), o.Add(deep)}, thick)
	case d.Flat().Len() < 1:
		return geom.Box(m.A.Flat().Up(m.Z0).Sub(geom.Vec3{X: 0.75, Y: 0.75}), geom.Vec3{X: 1.5}, geom.Vec3{Y: 1.5}, geom.Vec3{Z: m.Z1 - m.Z0})
	}
	return geom.Box(m.A.Flat().Up(m.Z0).Sub(geom.Vec3{Y: 0.75}), geom.Vec3{X: d.X}, geom.Vec3{Y: 1.5}, geom.Vec3{Z: m.Z1 - m.Z0})
}

// rooms are how far wood goes on under the two ends of a strap.
func rooms(p *Piece) [2]float64 {
	t := p.ties()
	return [2]float64{t[0].Room, t[1].Room}
}

func roomsOf(p *Piece) []float64 {
	r := rooms(p)
	return r[:]
}

// assertPair compares two lengths of each.
func assertPair(t *testing.T, want, got [2]float64, what ...any) {
	t.Helper()
	assert.InDeltaSlice(t, want[:], got[:], 1e-6, what...)
}

// lapsOf are the laps of a strap.
func lapsOf(p *Piece) []float64 {
	l := p.Laps()
	return l[:]
}

// at puts one joint off the walls into an empty house.
func at(k plan.JointKind, p geom.Vec3, gap float64, ms ...*framing.Member) *hand {
	h := newHand()
	for _, m := range ms {
		if m.A.Y == m.B.Y { // what runs along y has its own
			m.Solid = []geom.Solid{solid(m)}
		}
	}
	h.Members = append(h.Members, ms...)
	h.Joints = []*framing.Joint{{ID: "X-10-" + k.Code(), Kind: k, Host: "X", Level: h.walls[0].Level, Station: p.X, At: p, Gap: gap, Members: ms}}
	return h
}

func one(t *testing.T, p *Placement) *Piece {
	t.Helper()
	require.Len(t, p.Pieces, 1)
	return p.Pieces[0]
}

func assertPath(t *testing.T, got []geom.Vec3, want ...geom.Vec3) {
	t.Helper()
	require.Len(t, got, len(want), "%v", got)
	for i := range want {
		assert.InDelta(t, 0, want[i].Sub(got[i]).Len(), 1e-9, "point %d: %v, not %v", i, got[i], want[i])
	}
}

func TestStrapFromABeamToItsPost(t *testing.T) {
	// A beam of 9.25 in, 1.5 wide about y = 0, on a post 40 in tall: of 24 in of
	// strap 9.25 find room on the beam and 14.75 lie on the post, which has 40.
	beam := line2("beam", plan.Beam, 0, 96, 100, 109.25)
	post := stick("post", plan.Post, 10, 60, 100)
	use := plan.Rule{Name: "s", At: "post-cap", Use: "short-strap"}
	p, ds := placed(t, at(plan.PostCap, geom.Vec3{X: 10, Z: 100}, 0, beam, post).with(use))
	require.Empty(t, ds)
	q := one(t, p)
	assertPair(t, [2]float64{9.25, 14.75}, q.Laps())
	assertPair(t, [2]float64{9.25, 40}, rooms(q))
	assert.Equal(t, []*framing.Member{beam, post}, q.Members())
	assertPath(t, q.Path, geom.Vec3{X: 10, Y: -0.75, Z: 109.25 - 24}, geom.Vec3{X: 10, Y: -0.75, Z: 109.25})

	// On a post of 10 in it runs 4.75 past the end.
	post.Z0 = 90
	_, ds = placed(t, at(plan.PostCap, geom.Vec3{X: 10, Z: 100}, 0, beam, post).with(use))
	past := only(ds, "strap-past-member")
	require.Len(t, past, 1, "%v", ds)
	assert.Contains(t, past[0].Summary, `laps 1'-2 3/4" on a post that gives 10" there`)
	assert.Contains(t, past[0].Mend, `at least 4 3/4" shorter`)

	// A gap of 2 in between: 24 - 2 is 22, half of it 11, but the beam gives 9.25
	// less nothing: 9.25 and 22 - 9.25 = 12.75.
	post.Z0, post.Z1 = 60, 98
	p, _ = placed(t, at(plan.PostCap, geom.Vec3{X: 10, Z: 100}, 2, beam, post).with(use))
	q = one(t, p)
	assertPair(t, [2]float64{9.25, 12.75}, q.Laps())
	assert.InDelta(t, 2, q.Gap, 1e-9)
	assert.InDelta(t, 38, rooms(q)[1], 1e-6)
	// On a beam of 20 in both laps are half.
	beam.Z1 = 120
	p, _ = placed(t, at(plan.PostCap, geom.Vec3{X: 10, Z: 100}, 2, beam, post).with(use))
	assert.Equal(t, [2]float64{11, 11}, one(t, p).Laps())
	assertPath(t, one(t, p).Path, geom.Vec3{X: 10, Y: -0.75, Z: 87}, geom.Vec3{X: 10, Y: -0.75, Z: 111})
}

func TestTwoStrapsOnOneBeamLieBesideEachOther(t *testing.T) {
	// Each 1.375 wide with an eighth between: 1.5 apart, about the joint.
	beam := line2("beam", plan.Beam, 0, 96, 100, 109.25)
	post := stick("post", plan.Post, 10, 60, 100)
	p, _ := placed(t, at(plan.PostCap, geom.Vec3{X: 10, Z: 100}, 0, beam, post).with(plan.Rule{Name: "s", At: "post-cap", Use: "short-strap", Count: 2}))
	require.Len(t, p.Pieces, 2)
	assert.InDelta(t, 10-0.75, p.Pieces[0].Path[0].X, 1e-9)
	assert.InDelta(t, 10+0.75, p.Pieces[1].Path[0].X, 1e-9)
	assert.Equal(t, []string{"X-10-PC-strap", "X-10-PC-strap-2"}, tags(p))
}

func TestCoilOverARidge(t *testing.T) {
	// Rafters of 3 in 4 meet at a ridge board of 1.5: their tops end at x = 100 and
	// 101.5. Two laps of 15 and 1.5 between are 31.5 of coil; 15 down the slope are
	// 12 on plan and 9 down.
	a := rafter("a", plan.Rafter, geom.Vec3{X: 20, Z: 40}, geom.Vec3{X: 100, Z: 100})
	b := rafter("b", plan.Rafter, geom.Vec3{X: 181.5, Z: 40}, geom.Vec3{X: 101.5, Z: 100})
	ridge := across("ridge", plan.Ridge, 100.75, 90, 100)
	use := plan.Rule{Name: "r", At: "rafter-ridge", Use: "coil"}
	p, ds := placed(t, at(plan.RafterRidge, geom.Vec3{X: 100, Z: 100}, 0, a, b, ridge).with(use))
	require.Empty(t, ds)
	q := one(t, p)
	assert.InDelta(t, 31.5, q.Cut, 1e-9)
	assert.InDeltaSlice(t, []float64{15, 15}, lapsOf(q), 1e-9)
	assert.InDelta(t, 1.5, q.Gap, 1e-9)
	assertPath(t, q.Path, geom.Vec3{X: 88, Z: 91}, geom.Vec3{X: 100, Z: 100}, geom.Vec3{X: 101.5, Z: 100}, geom.Vec3{X: 113.5, Z: 91})
	assert.InDeltaSlice(t, []float64{100, 100}, roomsOf(q), 0.05, "80 by 60 are 100 in of rafter; under its top the plumb end is a little farther")
	// The tops look up: square to the slopes and to the ridge.
	require.Len(t, q.plates(), 3)
	for i, n := range []geom.Vec3{{X: -0.6, Z: 0.8}, {Z: 1}, {X: 0.6, Z: 0.8}} {
		assert.InDelta(t, 0, q.plates()[i].N.Sub(n).Len(), 1e-9, "band %d: %v", i, q.plates()[i].N)
	}
	assert.Equal(t, []*framing.Member{a, b}, q.Members())

	// Where the rafters touch there is nothing between: 30 in and one bend.
	b.A.X, b.B.X = 180, 100
	p, _ = placed(t, at(plan.RafterRidge, geom.Vec3{X: 100, Z: 100}, 0, a, b, ridge).with(use))
	q = one(t, p)
	assert.InDelta(t, 30, q.Cut, 1e-9)
	require.Len(t, q.plates(), 2)
	assertPath(t, q.Path, geom.Vec3{X: 88, Z: 91}, geom.Vec3{X: 100, Z: 100}, geom.Vec3{X: 112, Z: 91})
}

func TestCoilOverABeamDownItsFarSide(t *testing.T) {
	// One rafter against a beam of 1.5: over it and 15 down the plumb side.
	a := rafter("a", plan.Rafter, geom.Vec3{X: 20, Z: 40}, geom.Vec3{X: 100, Z: 100})
	ridge := across("ridge", plan.Ridge, 100.75, 80, 100)
	p, _ := placed(t, at(plan.RafterRidge, geom.Vec3{X: 100, Z: 100}, 0, a, ridge).with(plan.Rule{Name: "r", At: "rafter-ridge", Use: "coil"}))
	q := one(t, p)
	assertPath(t, q.Path, geom.Vec3{X: 88, Z: 91}, geom.Vec3{X: 100, Z: 100}, geom.Vec3{X: 101.5, Z: 100}, geom.Vec3{X: 101.5, Z: 85})
	assert.Equal(t, []*framing.Member{a, ridge}, q.Members())
	assert.InDeltaSlice(t, []float64{100, 20}, roomsOf(q), 0.05, "the beam is 20 deep")
}

func TestTwoStrapsOverARidgeLieBesideEachOther(t *testing.T) {
	// Across the slope, that is along y: 1.5 apart.
	a := rafter("a", plan.Rafter, geom.Vec3{X: 20, Z: 40}, geom.Vec3{X: 100, Z: 100})
	b := rafter("b", plan.Rafter, geom.Vec3{X: 180, Z: 40}, geom.Vec3{X: 100, Z: 100})
	p, _ := placed(t, at(plan.RafterRidge, geom.Vec3{X: 100, Z: 100}, 0, a, b).with(plan.Rule{Name: "r", At: "rafter-ridge", Use: "short-strap", Count: 2}))
	require.Len(t, p.Pieces, 2)
	for i, y := range []float64{-0.75, 0.75} {
		// 24 in: 12 down each slope, 9.6 on plan and 7.2 down.
		assertPath(t, p.Pieces[i].Path, geom.Vec3{X: 90.4, Y: y, Z: 92.8}, geom.Vec3{X: 100, Y: y, Z: 100}, geom.Vec3{X: 109.6, Y: y, Z: 92.8})
	}
}

func TestNoStrapOverAJackOnAHip(t *testing.T) {
	a := rafter("jack", plan.Rafter, geom.Vec3{X: 20, Z: 40}, geom.Vec3{X: 100, Z: 100})
	for role, want := range map[plan.Role]int{plan.HipRafter: 1, plan.ValleyRafter: 1, plan.Rafter: 0} {
		on := rafter("on", role, geom.Vec3{X: 180, Y: 80, Z: 40}, geom.Vec3{X: 100, Z: 100})
		_, ds := placed(t, at(plan.RafterRidge, geom.Vec3{X: 100, Z: 100}, 0, a, on).with(plan.Rule{Name: "r", At: "rafter-ridge", Use: "coil"}))
		assert.Len(t, only(ds, "no-ridge"), want, role)
	}
	// Two hips that meet alone are a ridge of their own kind: the first is no jack.
	hip := rafter("hip", plan.HipRafter, geom.Vec3{X: 20, Z: 40}, geom.Vec3{X: 100, Z: 100})
	_, ds := placed(t, at(plan.RafterRidge, geom.Vec3{X: 100, Z: 100}, 0, hip).with(plan.Rule{Name: "r", At: "rafter-ridge", Use: "coil"}))
	assert.Empty(t, only(ds, "no-ridge"))
}

func TestStrapUpTheStudToThePlates(t *testing.T) {
	// The top of the plates is 3 over the stud. A coil: 15 on the stud and 3, 18 in
	// all; a strap of 24: 21 and 3.
	only1 := plan.Where{Level: []string{"first"}, From: 15, To: 17}
	for mark, want := range map[string]float64{"coil": 18, "short-strap": 24} {
		p, _ := placed(t, standard().with(plan.Rule{Name: "s", At: "stud-top", Use: mark, Where: only1}))
		q := one(t, p)
		assertPair(t, [2]float64{want - 3, 3}, q.Laps(), mark)
		assertPath(t, q.Path, geom.Vec3{X: 16, Z: top1 - want}, geom.Vec3{X: 16, Z: top1})
		assert.InDelta(t, top1-3-floor1-1.5, rooms(q)[0], 1e-9)
		assert.InDelta(t, 16, q.Station, 1e-9)
	}
}

func TestWrapDownOneFaceEndsAtTheFarEdge(t *testing.T) {
	// 30 in: 5.5 over the plates, 24.5 down the face asked for.
	for face, y := range map[plan.Face]float64{"outside": 0, "inside": 5.5} {
		p, _ := placed(t, standard().with(plan.Rule{
			Name: "w", At: "stud-top", Use: "wrap-strap", Face: face,
			Where: plan.Where{Level: []string{"second"}, From: 15, To: 17},
		}))
		q := one(t, p)
		assert.Equal(t, face, q.Face)
		assertPath(t, q.Path, geom.Vec3{X: 16, Y: 5.5 - y, Z: top2}, geom.Vec3{X: 16, Y: y, Z: top2}, geom.Vec3{X: 16, Y: y, Z: top2 - 24.5})
		assertPair(t, [2]float64{21.5, 5.5}, q.Laps())
		assert.InDelta(t, 5.5, rooms(q)[1], 1e-6, "the plates' breadth")
	}
}

func TestCoilIsCutShortWhereLittleRoomIs(t *testing.T) {
	// At the base a rim 11.25 deep takes less than the lap of 15; one of 20 takes
	// it all: 15 + 2.25 + 15 = 32.25.
	h := standard()
	for _, m := range h.Members {
		if m.Role == plan.Rim && m.Wall == h.walls[0] {
			m.Z0 = m.Z1 - 20
			m.Solid = []geom.Solid{m.Wall.Frame().Box(0, 96, 0, 1.5, m.Z0, m.Z1)}
		}
	}
	p, ds := placed(t, h.with(plan.Rule{Name: "b", At: "stud-base", Use: "coil", Where: plan.Where{From: 15, To: 17}}))
	require.Empty(t, ds)
	q := one(t, p)
	assert.InDelta(t, 32.25, q.Cut, 1e-9)
	assertPair(t, [2]float64{15, 15}, q.Laps())
	assertPair(t, [2]float64{top1 - 3 - floor1 - 1.5, 20}, rooms(q))
	assertPath(t, q.Path, geom.Vec3{X: 16, Z: floor1 - 0.75 - 15}, geom.Vec3{X: 16, Z: floor1 + 1.5 + 15})
}

func TestStrapFollowsAStudThatStandsAside(t *testing.T) {
	// Above at 16, below at 16.5: they share 15.75 to 16.75, and the strap goes down
	// their middle, 16.25. At 16.75 they share half an inch, less than 3/4.
	for beside, shared := range map[float64]bool{0.5: true, -0.5: true, 0.75: true, 0.8: false, 3: false} {
		h := newHand()
		h.column(16+beside, 16)
		h.held(0)
		h.Joints = h.held(1)
		p, ds := placed(t, h.with(plan.Rule{Name: "s", At: "stud-stud", Use: "story-strap"}))
		if !shared {
			assert.Len(t, only(ds, "studs-out-of-line"), 1, "%v", beside)
			assert.Empty(t, p.Pieces)
			continue
		}
		require.Empty(t, ds, "%v", beside)
		assert.InDelta(t, 16+beside/2, one(t, p).Path[0].X, 1e-9)
	}
}
