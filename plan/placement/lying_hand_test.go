package placement

import (
	"testing"

	"galewright/plan"
	"galewright/plan/framing"
	"galewright/plan/geom"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"
)

// spliced is the hand-framed house with the upper wall's lower plate broken at
// 40: plates from 336.125 to 337.625, joint at their middle, 336.875.
func spliced(kind plan.JointKind, gap float64) *hand {
	h := newHand()
	a := h.member(1, plan.TopPlate, 0, 40, top2-3, top2-1.5)
	b := h.member(1, plan.TopPlate, 40, 96, top2-3, top2-1.5)
	j := h.joint(h.walls[1], kind, 40, top2-2.25, a, b)
	j.ID, j.Gap = "2S-40-"+kind.Code(), gap
	h.Joints = []*framing.Joint{j}
	return h
}

func TestStrapAlongAPlate(t *testing.T) {
	mid := top2 - 2.25
	for _, c := range []struct {
		name string
		face plan.Face
		mark string
		gap  float64
		a, b geom.Vec3
		lap  float64
	}{
		// Two laps of 15: 25 to 55, on the outside face.
		{"coil", "", "coil", 0, geom.Vec3{X: 25, Z: mid}, geom.Vec3{X: 55, Z: mid}, 15},
		{"coil over a gap of 2", "", "coil", 2, geom.Vec3{X: 24, Z: mid}, geom.Vec3{X: 56, Z: mid}, 15},
		{"strap of 24 over a gap of 2", "", "short-strap", 2, geom.Vec3{X: 28, Z: mid}, geom.Vec3{X: 52, Z: mid}, 11},
		{"inside", "inside", "short-strap", 0, geom.Vec3{X: 28, Y: 5.5, Z: mid}, geom.Vec3{X: 52, Y: 5.5, Z: mid}, 12},
		{"on top of both plates", "top", "short-strap", 0, geom.Vec3{X: 28, Y: 2.75, Z: top2}, geom.Vec3{X: 52, Y: 2.75, Z: top2}, 12},
	} {
		t.Run(c.name, func(t *testing.T) {
			p, _ := placed(t, spliced(plan.PlateSplice, c.gap).with(plan.Rule{Name: "s", At: "plate-splice", Use: c.mark, Face: c.face}))
			q := one(t, p)
			assertPath(t, q.Path, c.a, c.b)
			assert.Equal(t, [2]float64{c.lap, c.lap}, q.Laps())
			require.Len(t, q.Laid, 2)
			n := map[plan.Face]geom.Vec3{"": {Y: -1}, "inside": {Y: 1}, "top": {Z: 1}}[c.face]
			assert.InDelta(t, 0, q.plates()[0].N.Sub(n).Len(), 1e-9, "%v", q.plates()[0].N)
		})
	}
}

func TestTwoStrapsAlongAPlateLieOverEachOther(t *testing.T) {
	// 1.5 apart: up and down on a face, across the wall on top.
	mid := top2 - 2.25
	two := func(face plan.Face) []*Piece {
		p, _ := placed(t, spliced(plan.PlateSplice, 0).with(plan.Rule{Name: "s", At: "plate-splice", Use: "short-strap", Face: face, Count: 2}))
		require.Len(t, p.Pieces, 2)
		return p.Pieces
	}
	for i, d := range []float64{-0.75, 0.75} {
		assert.InDelta(t, mid+d, two("")[i].Path[0].Z, 1e-9)
		assert.InDelta(t, 2.75+d, two("top")[i].Path[0].Y, 1e-9)
	}
}

func TestCollectorStrapNeedsSomethingToGoInto(t *testing.T) {
	use := plan.Rule{Name: "c", At: "collector", Use: "coil"}
	p, ds := placed(t, spliced(plan.Collector, 0).with(use))
	assert.Empty(t, ds)
	assertPath(t, one(t, p).Path, geom.Vec3{X: 25, Z: top2 - 2.25}, geom.Vec3{X: 55, Z: top2 - 2.25})
	h := spliced(plan.Collector, 0)
	h.Joints[0].Members = h.Joints[0].Members[:1]
	p, ds = placed(t, h.with(use))
	assert.Len(t, only(ds, "collector-to-nothing"), 1)
	assert.Empty(t, p.Pieces)
}

func TestStrapsRoundACorner(t *testing.T) {
	// Walls S, 0 to 96 along x, and E from (96, 0) north: their faces meet at x = 96.
	// A strap of 24 goes 12 in along each, at the middle of the two plates' height;
	// two of them are 1.5 apart in height.
	h := newHand()
	e := &plan.Wall{Name: "1E", Level: h.walls[0].Level, ToLevel: h.walls[0].Level, From: geom.Vec2{X: 96}, To: geom.Vec2{X: 96, Y: 120}, Studs: two6, Spacing: 16}
	h.Plan.Walls = append(h.Plan.Walls, e)
	own := h.member(0, plan.UpperPlate, 0, 90.5, top1-1.5, top1)
	h.member(0, plan.TopPlate, 0, 96, top1-3, top1-1.5)
	its := h.member(0, plan.UpperPlate, 0, 120, top1-1.5, top1)
	its.Wall, its.ID, its.Solid = e, "1E/cap", []geom.Solid{e.Frame().Box(0, 120, 0, 5.5, top1-1.5, top1)}
	j := h.joint(h.walls[0], plan.WallCorner, 96, top1-3, own, its)
	j.ID = "1S-96-WC"
	h.Joints = []*framing.Joint{j}
	p, ds := placed(t, h.with(plan.Rule{Name: "c", At: "wall-corner", Use: "short-strap", Count: 2}))
	assert.Empty(t, only(ds, "corner-of-one"))
	require.Len(t, p.Pieces, 2)
	for i, d := range []float64{-0.75, 0.75} {
		z := top1 - 1.5 + d
		assertPath(t, p.Pieces[i].Path, geom.Vec3{X: 84, Z: z}, geom.Vec3{X: 96, Z: z}, geom.Vec3{X: 96, Y: 12, Z: z})
		assert.Equal(t, [2]float64{12, 12}, p.Pieces[i].Laps())
		if i == 1 { // the lower one is on the plates below
			assert.Equal(t, []*framing.Member{own, its}, p.Pieces[i].Members())
		}
		assert.InDelta(t, 0, p.Pieces[i].plates()[1].N.Sub(geom.Vec3{X: 1}).Len(), 1e-9, "the east face")
	}
}

// seated is a rafter of 1.5 that climbs 3 in 4 over the outside face of the
// upper wall at station 32, its top there at the height z.
func seated(z float64) (*hand, *framing.Member) {
	h := newHand()
	plate := h.member(1, plan.UpperPlate, 0, 96, top2-1.5, top2)
	m := rafter("r", plan.Rafter, geom.Vec3{X: 32, Y: -16, Z: z - 12}, geom.Vec3{X: 32, Y: 80, Z: z + 60})
	j := h.joint(h.walls[1], plan.RafterPlate, 32, top2, m, plate)
	j.ID = "2S-32-RP"
	h.Members = append(h.Members, m)
	m.Solid = []geom.Solid{solid(m)}
	h.Joints = []*framing.Joint{j}
	return h, m
}

func TestStrapOverARafter(t *testing.T) {
	// Its top is 6 over the plates: 30 in are 1.5 over it and 14.25 down each side,
	// 8.25 of that below the plates' top.
	h, m := seated(top2 + 6)
	p, _ := placed(t, h.with(plan.Rule{Name: "w", At: "rafter-plate", Use: "wrap-strap"}))
	q := one(t, p)
	z := top2 + 6
	assertPath(t, q.Path, geom.Vec3{X: 31.25, Z: z - 14.25}, geom.Vec3{X: 31.25, Z: z}, geom.Vec3{X: 32.75, Z: z}, geom.Vec3{X: 32.75, Z: z - 14.25})
	assert.Equal(t, [2]float64{8.25, 8.25}, q.Laps())
	assert.InDelta(t, 13.5, q.Gap, 1e-9, "1.5 and 6 twice")
	assert.Equal(t, 32.0, q.Station)
	assert.Same(t, m, q.Laid[0].Member)
	// Below the seat its ends lie on the wall's face, beside the rafter.
	require.Len(t, q.plates(), 5)
	for i, n := range []geom.Vec3{{Y: -1}, {X: -1}, {Z: 1}, {X: 1}, {Y: -1}} {
		assert.InDelta(t, 0, q.plates()[i].N.Sub(n).Len(), 1e-9)
	}
	// From a roll it is cut to both laps: 13.5 + 2 x 9 = 31.5.
	coil := func(i map[string]*plan.Item) {
		i["wrap-strap"].Coil, i["wrap-strap"].Length, i["wrap-strap"].Lap = 300, 0, 9
	}
	h, _ = seated(top2 + 6)
	p, _ = placed(t, h.with(plan.Rule{Name: "w", At: "rafter-plate", Use: "wrap-strap"}), coil)
	assert.InDelta(t, 31.5, one(t, p).Cut, 1e-9)
	assert.Equal(t, [2]float64{9, 9}, one(t, p).Laps())
	// Two of them are 1.5 apart along the rafter.
	h, _ = seated(top2 + 6)
	p, _ = placed(t, h.with(plan.Rule{Name: "w", At: "rafter-plate", Use: "wrap-strap", Count: 2}))
	require.Len(t, p.Pieces, 2)
	assert.InDelta(t, -0.75, p.Pieces[0].Path[0].Y, 1e-9)
	assert.InDelta(t, 0.75, p.Pieces[1].Path[0].Y, 1e-9)
}

func TestTopOfARafterOverAWall(t *testing.T) {
	f := geom.NewFrame(geom.Vec2{}, geom.Vec2{X: 96})
	m := rafter("r", plan.Rafter, geom.Vec3{X: 32, Y: -16, Z: 100}, geom.Vec3{X: 32, Y: 80, Z: 172})
	assert.InDelta(t, 112, topAt(m, f, 0), 1e-9, "16 in up at 3 in 4")
	assert.InDelta(t, 116.125, topAt(m, f, 5.5), 1e-9)
	along := rafter("r", plan.Rafter, geom.Vec3{Y: 3, Z: 100}, geom.Vec3{X: 50, Y: 3, Z: 130})
	assert.Equal(t, 130.0, topAt(along, f, 0), "along the wall there is no one height: the highest")
}

func TestStrapUpTheSideOfARafter(t *testing.T) {
	h, m := seated(top2 + 6)
	p, _ := placed(t, h.with(plan.Rule{Name: "s", At: "rafter-plate", Use: "short-strap", Face: "right"}))
	q := one(t, p)
	assertPath(t, q.Path, geom.Vec3{X: 32.75, Z: top2 - 12}, geom.Vec3{X: 32.75, Z: top2 + 12})
	assert.Equal(t, [2]float64{12, 12}, q.Laps())
	assert.Same(t, m, q.Laid[0].Member)
	h, _ = seated(top2 + 6)
	p, _ = placed(t, h.with(plan.Rule{Name: "s", At: "rafter-plate", Use: "short-strap"}))
	assert.Equal(t, plan.Left, one(t, p).Face, "a strap of no side of a rafter's takes the left")
	assert.InDelta(t, 31.25, one(t, p).Path[0].X, 1e-9)
}

func TestClipBesideARafter(t *testing.T) {
	// 4.375 long and 1.625 wide: one leg on the wall's face beside the rafter, its
	// middle at 31.25 - 0.8125 or 32.75 + 0.8125, from the plates' top down, the
	// other up the rafter's side.
	for face, c := range map[plan.Face]struct{ x, y float64 }{"": {30.4375, 0}, "outside": {30.4375, 0}, "inside": {30.4375, 5.5}, "left": {30.4375, 0}, "right": {33.5625, 0}} {
		h, _ := seated(top2 + 6)
		p, _ := placed(t, h.with(plan.Rule{Name: "c", At: "rafter-plate", Use: "plate-clip", Face: face}))
		q := one(t, p)
		assertPath(t, q.Path, geom.Vec3{X: c.x, Y: c.y, Z: top2})
		assert.Equal(t, c.x, q.Station)
		assert.Equal(t, [2]float64{top2 - 2.1875, top2 + 2.1875}, [2]float64{q.Z0, q.Z1}, "half of it on the plates, half on the rafter")
	}
	// Two of them go one to each side.
	h, _ := seated(top2 + 6)
	p, _ := placed(t, h.with(plan.Rule{Name: "c", At: "rafter-plate", Use: "plate-clip", Count: 2}))
	require.Len(t, p.Pieces, 2)
	assert.Equal(t, []float64{30.4375, 33.5625}, []float64{p.Pieces[0].Station, p.Pieces[1].Station})
}

func TestClipsOnAStud(t *testing.T) {
	// On its side at the top: one leg turned under the plate at 226.125, the other
	// 2.1875 down the stud. At the foot up from 121.5. On a face half of its height, 2.1875, lies past the end, but no more
	// than the plate there is thick.
	up := func(kind plan.JointKind, face plan.Face) *Piece {
		p, _ := placed(t, standard().with(plan.Rule{Name: "c", At: kind, Use: "plate-clip", Face: face, Where: plan.Where{Level: []string{"first"}, From: 31, To: 33}}))
		return one(t, p)
	}
	for _, c := range []struct {
		kind   plan.JointKind
		face   plan.Face
		z0, z1 float64
		at     geom.Vec3
	}{
		{"stud-top", "left", 223.9375, 226.125, geom.Vec3{X: 31.25, Y: 2.75, Z: 226.125}},
		{"stud-top", "right", 223.9375, 226.125, geom.Vec3{X: 32.75, Y: 2.75, Z: 226.125}},
		{"stud-top", "outside", 223.9375, 228.3125, geom.Vec3{X: 32, Z: 226.125}},
		{"stud-top", "inside", 223.9375, 228.3125, geom.Vec3{X: 32, Y: 5.5, Z: 226.125}},
		{"stud-base", "left", 121.5, 123.6875, geom.Vec3{X: 31.25, Y: 2.75, Z: 121.5}},
		{"stud-base", "outside", 120, 124.375, geom.Vec3{X: 32, Z: 121.5}}, // 1.5 on the plate
	} {
		q := up(c.kind, c.face)
		assertPath(t, q.Path, c.at)
		assert.InDeltaSlice(t, []float64{c.z0, c.z1}, []float64{q.Z0, q.Z1}, 1e-9, "%s %s", c.kind, c.face)
	}
}
