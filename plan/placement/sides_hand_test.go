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

// A strap goes on the left side of a stud; within 1/2 in of the wall's start, and on a stud
// after an opening, on the right, away from the end and from the opening. Where a window is, from
// its sill to its head, the side that it needs is none.
func TestTheBetterSideOfAStud(t *testing.T) {
	left, right := []plan.Face{plan.Left, plan.Right}, []plan.Face{plan.Right, plan.Left}
	o := &plan.Opening{At: 30, Width: 20, Sill: 24, Height: 36}
	for _, c := range []struct {
		name string
		s0   float64
		o    *plan.Opening
		z    float64 // over the floor
		want []plan.Face
	}{
		{"at the start", 0, nil, 50, right},
		{"1/2 in from it", 0.5, nil, 50, right},
		{"5/8 in from it", 0.625, nil, 50, left},
		{"farther in", 20, nil, 50, left},
		{"before a window, at its sill", 28.5, o, 24, []plan.Face{plan.Left}},
		{"before a window, at its head", 28.5, o, 60, []plan.Face{plan.Left}},
		{"before a window, under it", 28.5, o, 23.9, left},
		{"before a window, over it", 28.5, o, 60.1, left},
		{"after a window", 50, o, 40, []plan.Face{plan.Right}},
		{"after a window, under it", 50, o, 10, right},
		{"a king before a window, a jack's breadth off", 27, o, 40, left},
		{"a king after it", 51.5, o, 40, right},
	} {
		h := newHand()
		m := h.member(0, plan.Stud, c.s0, c.s0+1.5, floor1+1.5, top1-3)
		m.Opening = c.o
		x := &placer{world: newWorld(h.House)}
		j := h.joint(h.walls[0], plan.StudTop, c.s0+0.75, top1-3, m)
		assert.Equal(t, c.want, x.freeSides(j, m, floor1+c.z), c.name)
	}
}

// In a mirrored house the right side is the better one of a stud of 1 1/2 in; within 1/2 in of the end
// of the wall, 96 long and 4 past its end, from a right side at 99 1/2 on, and beside an opening, of
// middle 40, before it, the left.
func TestTheBetterSideOfAStudInAMirroredHouse(t *testing.T) {
	o := &plan.Opening{At: 30, Width: 20, Sill: 24, Height: 36}
	for _, c := range []struct {
		name  string
		s0    float64
		o     *plan.Opening
		off   bool // at a joint of no wall
		right bool
	}{
		{"at the start", 0, nil, false, true},
		{"farther in", 60, nil, false, true},
		{"9/16 in from the end", 97.9375, nil, false, true},
		{"1/2 in from it", 98, nil, false, false},
		{"7/16 in from it", 98.0625, nil, false, false},
		{"at the end", 98.5, nil, false, false},
		{"at no wall, its stud the same", 98.5, nil, true, true},
		{"before an opening", 28.5, o, false, false},
		{"after it", 50, o, false, true},
		{"after it at the wall's end", 98.5, o, false, false},
	} {
		h := newHand()
		h.Plan.Lay = plan.MirrorX
		h.walls[0].Past = 4
		m := h.member(0, plan.Stud, c.s0, c.s0+1.5, floor1+1.5, top1-3)
		m.Opening = c.o
		x := &placer{world: newWorld(h.House)}
		j := h.joint(h.walls[0], plan.StudTop, c.s0+0.75, top1-3, m)
		if c.off {
			j.Wall = nil
		}
		assert.Equal(t, c.right, x.rightFirst(j, m), c.name)
	}
}

// What stands against a stud's left side at z is looked for from 7/8 in under z to 7/8 over it, 1 in
// less an eighth, and in the middle half of its depth of 5 1/2 less an eighth on each side: 1 1/2 to 4.
func TestHowMuchOfAStudsSideIsLookedAt(t *testing.T) {
	for _, c := range []struct {
		name           string
		y0, y1, z0, z1 float64 // of blocking against it, z over the height looked at
		want           bool
	}{
		{"all over it", 0, 5.5, -9, 9, true},
		{"up to 3/4 under", 0, 5.5, -9, -0.75, true},
		{"up to 15/16 under", 0, 5.5, -9, -0.9375, false},
		{"from 3/4 over", 0, 5.5, 0.75, 9, true},
		{"from 15/16 over", 0, 5.5, 0.9375, 9, false},
		{"its outer 1 5/8", 0, 1.625, -9, 9, true},
		{"its outer 1 3/8", 0, 1.375, -9, 9, false},
		{"its inner 1 5/8", 3.875, 5.5, -9, 9, true},
		{"its inner 1 3/8", 4.125, 5.5, -9, 9, false},
	} {
		h := newHand()
		m := h.member(0, plan.Stud, 40, 41.5, floor1+1.5, top1-3)
		o := h.member(0, plan.Blocking, 30, 40, 170+c.z0, 170+c.z1)
		o.Solid = []geom.Solid{h.walls[0].Frame().Box(30, 40, c.y0, c.y1, 170+c.z0, 170+c.z1)}
		w := newWorld(h.House)
		assert.Equal(t, c.want, w.beside(m, plan.Left, 170), c.name)
		assert.False(t, w.beside(m, plan.Right, 170), c.name)
	}
}

// Of several pieces on two free sides one each goes on both; of four two on each, beside each
// other; a face that is asked for stays, and where no side is free they go inside.
func TestTheSidesOfSeveralPieces(t *testing.T) {
	h := newHand()
	m := h.member(0, plan.Stud, 40, 41.5, floor1+1.5, top1-3)
	tight := h.member(0, plan.Stud, 60, 61.5, floor1+1.5, top1-3)
	h.member(0, plan.Stud, 58.5, 60, floor1+1.5, top1-3)
	h.member(0, plan.Stud, 61.5, 63, floor1+1.5, top1-3)
	x := &placer{world: newWorld(h.House)}
	type got struct {
		face plan.Face
		k, n int
	}
	for _, c := range []struct {
		m    *framing.Member
		face plan.Face
		n    int
		want []got
	}{
		{m, "", 1, []got{{plan.Left, 0, 1}}},
		{m, plan.Top, 2, []got{{plan.Left, 0, 2}, {plan.Right, 1, 2}}},
		{m, plan.Through, 4, []got{{plan.Left, 0, 2}, {plan.Left, 1, 2}, {plan.Right, 0, 2}, {plan.Right, 1, 2}}},
		{m, "", 3, []got{{plan.Left, 0, 2}, {plan.Left, 1, 2}, {plan.Right, 0, 2}}},
		{m, plan.Outside, 2, []got{{plan.Outside, 0, 2}, {plan.Outside, 1, 2}}},
		{tight, "", 1, []got{{plan.Inside, 0, 1}}},
	} {
		for k, goes := range c.want {
			j := h.joint(h.walls[0], plan.StudTop, c.m.Mid(), top1-3, c.m)
			w := x.pick(want{joint: j, face: c.face, k: k, n: c.n}, c.m, floor1+50)
			assert.Equal(t, goes, got{w.face, w.k, w.n}, "%d of %d at %v", k, c.n, c.m.Mid())
		}
	}
}

// A pair of hold-downs on posts of 1 1/2 in, the lower one 1/8 in farther on: each body stands on its
// own post's face, at 48.75 and 48.875; its rod 1 7/16 in off the upper one, at the middle of the
// wall's 5 1/2, from 1 1/2 over the upper seat to as much under the lower one and what sticks out.
func TestBodiesOfAPairOnTheirOwnPosts(t *testing.T) {
	for face, at := range map[plan.Face]struct{ up, low, rod float64 }{
		plan.Right: {48.75, 48.875, 50.1875}, plan.Left: {47.25, 47.375, 45.8125},
	} {
		h := newHand()
		low, high := h.column(48.125, 48)
		j := h.joint(h.walls[1], plan.StudStud, 48, floor2+1.5, high, low)
		j.Gap, j.Below, j.Offset = storyGap, true, 0.125
		x := &placer{world: newWorld(h.House)}
		it := &hardware.Item{Item: &plan.Item{Length: 10.625, Width: 2.375, Rod: 0.625, Standoff: 1.5, Center: 1.4375, Washer: 2}, Kind: hardware.KindNamed(plan.HoldDownPairItem)}
		l, fault := x.pair(want{joint: j, item: it, face: face, n: 1})
		require.Nil(t, fault)
		require.Len(t, l.Bands, 2)
		assert.InDelta(t, at.up, l.Bands[0][0].A.X, 1e-9, "%s, above", face)
		assert.InDelta(t, at.low, l.Bands[1][0].A.X, 1e-9, "%s, below", face)
		assert.InDelta(t, floor2+1.5, l.Bands[0][0].A.Z, 1e-9)
		assert.InDelta(t, floor2+1.5+10.625, l.Bands[0][0].B.Z, 1e-9)
		assert.InDelta(t, top1-3, l.Bands[1][0].A.Z, 1e-9)
		assert.InDelta(t, top1-3-10.625, l.Bands[1][0].B.Z, 1e-9)
		for i, m := range []*framing.Member{high, low} {
			assert.Same(t, m, l.Laid[i].Member)
			assert.Equal(t, []Start{{i, true}}, l.Laid[i].starts, "its screws start at its free end")
			assert.InDelta(t, 10.625, l.Laid[i].Lap, 1e-9)
		}
		past := hardware.Past(0.625, 2)
		assert.InDelta(t, 0, l.Rod.A.Sub(geom.Vec3{X: at.rod, Y: 2.75, Z: floor2 + 3 + past}).Len(), 1e-9)
		assert.InDelta(t, 0, l.Rod.B.Sub(geom.Vec3{X: at.rod, Y: 2.75, Z: top1 - 4.5 - past}).Len(), 1e-9)
		assert.InDelta(t, storyGap+3+2*past, l.Cut, 1e-9)
		assert.InDelta(t, storyGap, l.Gap, 1e-9)
		assertPath(t, l.Path, geom.Vec3{X: at.rod, Y: 2.75, Z: top1 - 13.625}, geom.Vec3{X: at.rod, Y: 2.75, Z: top1 - 4.5}, geom.Vec3{X: at.rod, Y: 2.75, Z: floor2 + 3}, geom.Vec3{X: at.rod, Y: 2.75, Z: floor2 + 12.125})
	}
}

// A bolt with a washer of 3 in beside a stud of 1 1/2 at 50: 1/2 in clear of it, at 52 3/4, or to the
// left of it where something stands within 1 1/2 in of its line across the plate and 2 in of it
// along; what stands farther off, or is not on the plate, does not count. So do other bolts
// within 4 in, and the plate's end within 7 diameters.
func TestWhereABoltFindsRoomOnThePlate(t *testing.T) {
	const z = floor1 + 1.5
	for _, c := range []struct {
		name  string
		y     [2]float64 // what stands there, across the plate, at 53 to 54; nothing where 0
		z     [2]float64 // over the plate
		taken []float64
		ends  [2]float64 // of the plate
		at    float64
		free  bool
	}{
		{name: "nothing there", ends: [2]float64{0, 96}, at: 52.75, free: true},
		{name: "over its washer, outside", y: [2]float64{0, 1.5}, z: [2]float64{0, 90}, ends: [2]float64{0, 96}, at: 47.25, free: true},
		{name: "beside its washer, outside", y: [2]float64{0, 1.2}, z: [2]float64{0, 90}, ends: [2]float64{0, 96}, at: 52.75, free: true},
		{name: "over its washer, inside", y: [2]float64{4, 5.5}, z: [2]float64{0, 90}, ends: [2]float64{0, 96}, at: 47.25, free: true},
		{name: "beside its washer, inside", y: [2]float64{4.3, 5.5}, z: [2]float64{0, 90}, ends: [2]float64{0, 96}, at: 52.75, free: true},
		{name: "3 in over the plate", y: [2]float64{0, 5.5}, z: [2]float64{3, 90}, ends: [2]float64{0, 96}, at: 52.75, free: true},
		{name: "just under that", y: [2]float64{0, 5.5}, z: [2]float64{2.9, 90}, ends: [2]float64{0, 96}, at: 47.25, free: true},
		{name: "under the plate's top", y: [2]float64{0, 5.5}, z: [2]float64{-9, 0}, ends: [2]float64{0, 96}, at: 52.75, free: true},
		{name: "a bolt 3 1/4 off", taken: []float64{56}, ends: [2]float64{0, 96}, at: 47.25, free: true},
		{name: "a bolt 4 1/4 off", taken: []float64{57}, ends: [2]float64{0, 96}, at: 52.75, free: true},
		{name: "the plate ends 3 in past it", ends: [2]float64{0, 55.75}, at: 47.25, free: true},
		{name: "the plate ends 4 in past it", ends: [2]float64{0, 56.75}, at: 52.75, free: true},
		{name: "too short on both sides: nearer, over half a washer", ends: [2]float64{47, 53.75}, at: 52.25, free: true},
		{name: "no room at all", ends: [2]float64{48, 52}, at: 52.75},
	} {
		h := newHand()
		plate := h.member(0, plan.BottomPlate, c.ends[0], c.ends[1], floor1, z)
		stud := h.member(0, plan.Stud, 49.25, 50.75, z, top1-3)
		if c.y[1] > 0 {
			m := h.member(0, plan.Blocking, 53, 54, z+c.z[0], z+c.z[1])
			m.Solid = []geom.Solid{h.walls[0].Frame().Box(53, 54, c.y[0], c.y[1], z+c.z[0], z+c.z[1])}
		}
		x := &placer{world: newWorld(h.House)}
		w := want{joint: h.joint(h.walls[0], plan.StudBase, 50, z, stud), item: &hardware.Item{Item: &plan.Item{Rod: 0.5, Washer: 3}}, n: 1}
		s, free := x.roomOnPlate(w, link{s0: 49.25, s1: 50.75}, plate, 2.75, z, c.taken)
		assert.Equal(t, c.free, free, c.name)
		assert.InDelta(t, c.at, s, 1e-9, c.name)
	}
}

// Of a clip on the inside of a stud the outside is told as free, before its sides; of one on the outside the
// inside; off the walls, and of a piece that lies nowhere, no face is.
func TestTheFaceThatIsToldAsFree(t *testing.T) {
	const else0 = "move one of them, or change its face"
	clip := &hardware.Item{Item: &plan.Item{Length: 4.375, Width: 1.625, Fasteners: nails("to stud", 7, 1)}, Kind: hardware.KindNamed(plan.ClipItem)}
	for _, c := range []struct {
		name     string
		face     plan.Face
		off, lie bool
		want     string
	}{
		{"inside", plan.Inside, false, true, `the outside face is free there: face = "outside"`},
		{"outside", plan.Outside, false, true, `the inside face is free there: face = "inside"`},
		{"off the walls", plan.Inside, true, true, else0},
		{"nowhere", plan.Inside, false, false, else0},
	} {
		h := newHand()
		m := h.member(0, plan.Stud, 40, 41.5, floor1+1.5, top1-3)
		joints := h.held(0)
		x := moving(h)
		j := *joints[1]
		p := &Piece{Joint: &j, Item: clip, Lie: Lie{Face: c.face}}
		if c.lie {
			p.Laid = []Laid{{Member: m}}
		}
		if c.off {
			j.Wall = nil
		}
		assert.Equal(t, c.want, x.freeFace(p, "none"), c.name)
	}
}
