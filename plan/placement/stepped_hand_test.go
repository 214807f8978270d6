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

// A strap of 24 in on the outside of a girder 11 1/4 in deep, half an inch over its pile: no
// more of it on the girder than that is deep. Flush with the pile, 12 on the pile; where the pile
// stands 1 in back it bends in under the girder, where it stands 1 in out over the pile's top: of
// the 24 in the gap of 1/2 and the step of 1 leave 22 1/2, 11 1/4 for each.
func TestAStrapFromGirderToPile(t *testing.T) {
	const z = 96.0 // of the girder's underside
	for _, c := range []struct {
		name     string
		y        float64 // of the pile's outer face
		bend     float64 // over the girder's underside, where it bends
		n        float64 // of what lies level, up or down
		gap, low float64
	}{
		{"flush", 0, 0, 0, 0.5, 12.25},
		{"the pile stands back", 1, 0, -1, 1.5, 11.25},
		{"the pile stands out", -1, -0.5, 1, 1.5, 11.25},
	} {
		girder := boxed("girder", plan.GirderBeam, geom.Vec3{X: -60, Z: z}, geom.Vec3{X: 60, Y: 3, Z: z + 11.25})
		girder.A, girder.B = geom.Vec3{X: -60, Y: 1.5, Z: z + 5.6}, geom.Vec3{X: 60, Y: 1.5, Z: z + 5.6}
		girder.Z0, girder.Z1 = z, z+11.25
		pile := boxed("pile", plan.Pile, geom.Vec3{X: -4, Y: c.y, Z: z - 90}, geom.Vec3{X: 4, Y: c.y + 8, Z: z - 0.5})
		pile.A, pile.B = geom.Vec3{Y: c.y + 4, Z: z - 90}, geom.Vec3{Y: c.y + 4, Z: z - 0.5}
		pile.Z0, pile.Z1 = z-90, z-0.5
		j := &framing.Joint{Kind: plan.GirderPile, Gap: 0.5, At: geom.Vec3{Z: z}, Members: []*framing.Member{girder, pile}}
		x := &placer{world: newWorld(&framing.House{Plan: &plan.Plan{}, Members: j.Members})}
		item := &hardware.Item{Item: &plan.Item{Length: 24, Width: 1.25}, Kind: hardware.KindNamed(plan.StrapItem)}
		l, fault := x.standalone(want{joint: j, item: item, face: plan.Outside, n: 1})
		require.Nil(t, fault, c.name)
		foot, head := geom.Vec3{Y: c.y, Z: z - 0.5 - c.low}, geom.Vec3{Z: z + 11.25}
		if c.n == 0 {
			assertPath(t, l.Path, foot, head)
		} else {
			assertPath(t, l.Path, foot, geom.Vec3{Y: c.y, Z: z + c.bend}, geom.Vec3{Z: z + c.bend}, head)
			assert.InDelta(t, c.n, l.Bands[0][1].N.Z, 1e-9, c.name)
		}
		assert.InDelta(t, c.gap, l.Gap, 1e-9, c.name)
		assert.InDelta(t, 24, l.Steel(), 1e-9, c.name)
		assert.InDelta(t, 11.25, l.Laid[0].Lap, 1e-9, c.name)
		assert.InDelta(t, c.low, l.Laid[1].Lap, 1e-9, c.name)
		assert.Same(t, girder, l.Laid[0].Member)
		assert.Same(t, pile, l.Laid[1].Member)
	}
}

// Steel of 6 in on a plate and 8 on the rim 3/4 in under it, on a wall 5 1/2 in deep: flush it is one
// stretch; where the rim stands out it bends over its top, where it stands back under the plate, and what
// the bend takes is less on the rim.
func TestSteelOnTheStepBetweenTwoFaces(t *testing.T) {
	for _, c := range []struct {
		name   string
		face   plan.Face
		lo, hi float64   // the rim's faces
		y      float64   // of the plate's face
		step   []float64 // y of the rim's face and height of the bend
		up     float64   // normal of the step
	}{
		{"flush", "", 0, 1.5, 0, nil, 0},
		{"flush inside", plan.Inside, 4, 5.5, 5.5, nil, 0},
		{"out", plan.Outside, -0.5, 1, 0, []float64{-0.5, 99.25}, 1},
		{"back", plan.Outside, 0.5, 2, 0, []float64{0.5, 100}, -1},
		{"out on the inside", plan.Inside, 4.5, 6, 5.5, []float64{6, 99.25}, 1},
		{"back on the inside", plan.Inside, 3.5, 5, 5.5, []float64{5, 100}, -1},
	} {
		plate := boxed("plate", plan.BottomPlate, geom.Vec3{Z: 100}, geom.Vec3{X: 96, Y: 5.5, Z: 101.5})
		rim := boxed("rim", plan.Rim, geom.Vec3{Y: c.lo, Z: 90}, geom.Vec3{X: 96, Y: c.hi, Z: 99.25})
		for _, m := range []*framing.Member{plate, rim} {
			lo, hi := m.Bounds()
			m.Z0, m.Z1, m.A, m.B = lo.Z, hi.Z, geom.Vec3{Y: (lo.Y + hi.Y) / 2, Z: (lo.Z + hi.Z) / 2}, geom.Vec3{X: 96, Y: (lo.Y + hi.Y) / 2, Z: (lo.Z + hi.Z) / 2}
		}
		j := &framing.Joint{Kind: plan.SoleRim, Gap: 0.75, Members: []*framing.Member{plate, rim}, At: geom.Vec3{X: 40, Y: 2.75, Z: 100 - 0.375}}
		x := &placer{world: newWorld(&framing.House{Plan: &plan.Plan{}, Members: j.Members})}
		item := &hardware.Item{Item: &plan.Item{Length: 14, Width: 1.25}, Kind: hardware.KindNamed(plan.StrapItem)}
		f := geom.NewFrame(geom.Vec2{}, geom.Vec2{X: 96})
		l := x.stepped(want{joint: j, item: item, face: c.face, n: 1}, f, plate, rim, 6, 8, 3)
		at := func(y, z float64) geom.Vec3 { return geom.Vec3{X: 40, Y: y, Z: z} }
		if c.step == nil {
			assertPath(t, l.Path, at(c.y, 99.25-8), at(c.y, 106))
			assert.InDelta(t, 0.75, l.Gap, 1e-9, c.name)
		} else {
			assertPath(t, l.Path, at(c.step[0], 99.25-7.5), at(c.step[0], c.step[1]), at(c.y, c.step[1]), at(c.y, 106))
			assert.InDelta(t, c.up, l.Bands[0][1].N.Z, 1e-9, c.name)
			assert.InDelta(t, 1.25, l.Gap, 1e-9, c.name)
		}
		for _, p := range []geom.Plate{l.Bands[0][0], l.Bands[0][len(l.Bands[0])-1]} {
			assert.Equal(t, c.face == plan.Inside, p.N.Y > 0, c.name)
		}
		assert.InDelta(t, 40, l.Station, 1e-9, c.name)
		assert.InDelta(t, 3, l.Cut, 1e-9, c.name)
		assert.InDelta(t, 6, l.Laid[0].Lap, 1e-9, c.name)
	}
}

// A strap of 40 in over a rafter 1 1/2 in thick: its top is at 115 over the wall's face, 15 up
// from its foot 20 in out at 3 in 4, the plates' at 108. Over it and down both sides to the seat
// 1 1/2 + 2 x 7 = 15 1/2 in, and on down the wall (40 - 15 1/2)/2 = 12 1/4 on either side.
func TestAStrapOverARafter(t *testing.T) {
	wall := &plan.Wall{To: geom.Vec2{X: 96}, Studs: two6}
	rafter := &framing.Member{Role: plan.Rafter, A: geom.Vec3{X: 48, Y: -20, Z: 100}, B: geom.Vec3{X: 48, Y: 80, Z: 175}, Section: two6}
	plate := boxed("plate", plan.UpperPlate, geom.Vec3{Z: 106.5}, geom.Vec3{X: 96, Y: 5.5, Z: 108})
	plate.A, plate.B, plate.Z1, plate.Section = geom.Vec3{Y: 2.75, Z: 107.25}, geom.Vec3{X: 96, Y: 2.75, Z: 107.25}, 108, two6
	j := &framing.Joint{Kind: plan.RafterPlate, Wall: wall, Station: 48, At: geom.Vec3{X: 48, Z: 108}, Members: []*framing.Member{rafter, plate}}
	x := &placer{world: newWorld(&framing.House{Plan: &plan.Plan{}, Members: j.Members})}
	item := &hardware.Item{Item: &plan.Item{Length: 40, Width: 1.25}, Kind: hardware.KindNamed(plan.WrapStrapItem)}
	l, fault := x.overRafter(want{joint: j, item: item, n: 1})
	require.Nil(t, fault)
	assertPath(t, l.Path, geom.Vec3{X: 47.25, Z: 95.75}, geom.Vec3{X: 47.25, Z: 115}, geom.Vec3{X: 48.75, Z: 115}, geom.Vec3{X: 48.75, Z: 95.75})
	require.Len(t, l.Laid, 3)
	assert.Same(t, rafter, l.Laid[0].Member)
	assert.Equal(t, [2]float64{15.5, 15.5}, [2]float64{l.Laid[0].Lap, l.Laid[0].Room})
	for _, on := range l.Laid[1:] {
		assert.Same(t, plate, on.Member)
		assert.InDelta(t, 12.25, on.Lap, 1e-9)
	}
	assert.Equal(t, [2]float64{12.25, 12.25}, l.Laps(), "it holds the rafter, its laps are on the wall")
	assert.InDelta(t, 15.5, l.Gap, 1e-9)
	assert.InDelta(t, 48, l.Station, 1e-9)
	assert.InDelta(t, 40, l.Steel(), 1e-9)
	assert.Equal(t, plan.Top, l.Face)
}

// Where a strap meets another on its face the other one is suggested if it is free; with a
// third strap there none is.
func TestTheFaceThatIsFree(t *testing.T) {
	strap := func(name string, face plan.Face) plan.Rule {
		return plan.Rule{Name: name, At: "stud-stud", Use: "story-strap", Purpose: name, Face: face, Where: plan.Where{To: 4}}
	}
	_, ds := placed(t, standard().with(strap("a", plan.Outside), strap("b", plan.Outside)))
	found := only(ds, "face-taken")
	require.Len(t, found, 1)
	assert.Equal(t, `the inside face is free there: face = "inside"`, found[0].Mend)
	_, ds = placed(t, standard().with(strap("a", plan.Outside), strap("b", plan.Outside), strap("c", plan.Inside)))
	found = only(ds, "face-taken")
	require.Len(t, found, 1)
	assert.Contains(t, found[0].Mend, "no face of the member is free there")
}

// A base of 8 in stands up the post from 10 on, one flange on its outside and one on its
// inside; a cap of 8 in has half of them on the beam over 10 and half on the post, down from
// the 1/2 in of air under the beam. Without a length it is 6 in.
func TestHowHighAShoeReaches(t *testing.T) {
	post := boxed("post", plan.PorchPost, geom.Vec3{X: -2.75, Y: -2.75}, geom.Vec3{X: 2.75, Y: 2.75, Z: 96})
	post.A, post.B = geom.Vec3{}, geom.Vec3{Z: 96}
	beam := boxed("beam", plan.Beam, geom.Vec3{X: -60, Y: -1.5, Z: 10}, geom.Vec3{X: 60, Y: 1.5, Z: 19})
	beam.A, beam.B = geom.Vec3{X: -60, Z: 14.5}, geom.Vec3{X: 60, Z: 14.5}
	for _, c := range []struct {
		kind   plan.ItemKind
		at     plan.JointKind
		length float64
		on     []*framing.Member
		want   [][3]float64 // of each flange: face, from, to
	}{
		{plan.PostBaseItem, plan.PostBase, 8, []*framing.Member{post}, [][3]float64{{-2.75, 10, 18}, {2.75, 10, 18}}},
		{plan.PostBaseItem, plan.PostBase, 0, []*framing.Member{post}, [][3]float64{{-2.75, 10, 16}, {2.75, 10, 16}}},
		{plan.PostCapItem, plan.PostCap, 8, []*framing.Member{beam, post}, [][3]float64{{-1.5, 10, 14}, {1.5, 10, 14}, {-2.75, 9.5, 5.5}, {2.75, 9.5, 5.5}}},
	} {
		j := &framing.Joint{Kind: c.at, At: geom.Vec3{Z: 10}, Gap: 0.5, Members: c.on}
		x := &placer{world: newWorld(&framing.House{Plan: &plan.Plan{}, Members: c.on})}
		item := &hardware.Item{Item: &plan.Item{Length: c.length, Width: 3}, Kind: hardware.KindNamed(c.kind)}
		l, fault := x.shoe(want{joint: j, item: item, n: 1})
		require.Nil(t, fault)
		var got [][3]float64
		for _, p := range l.plates() {
			got = append(got, [3]float64{p.A.Y, p.A.Z, p.B.Z})
			assert.InDelta(t, p.A.Y, p.B.Y, 1e-9)
			assert.Equal(t, p.A.Y > 0, p.N.Y > 0, "out of the face")
		}
		assert.Equal(t, c.want, got, "%s of %v", c.kind, c.length)
		assert.Len(t, l.Laid, len(c.on))
		for i, on := range l.Laid {
			assert.Same(t, c.on[i], on.Member)
			assert.InDelta(t, got[2*i][2]-got[2*i][1], map[int]float64{0: 1, 1: -1}[i]*on.Lap, 1e-9)
		}
	}
}

// Where the faces of two walls cross: at right angles, and of one at 45 degrees that passes
// (10, -5) at (15, 0); of walls that run one way nowhere.
func TestWhereTheFacesOfWallsCross(t *testing.T) {
	f := geom.NewFrame(geom.Vec2{}, geom.Vec2{X: 96})
	for _, c := range []struct {
		a, b geom.Vec2
		want float64
		ok   bool
	}{
		{geom.Vec2{X: 40, Y: -5}, geom.Vec2{X: 40, Y: 90}, 40, true},
		{geom.Vec2{X: 40, Y: 90}, geom.Vec2{X: 40, Y: 5}, 40, true},
		{geom.Vec2{X: 10, Y: -5}, geom.Vec2{X: 50, Y: 35}, 15, true},
		{geom.Vec2{X: 50, Y: 35}, geom.Vec2{X: 20, Y: 5}, 15, true},
		{geom.Vec2{Y: 9}, geom.Vec2{X: 50, Y: 9}, 0, false},
	} {
		got, ok := meet(f, geom.NewFrame(c.a, c.b))
		assert.Equal(t, c.ok, ok, "%+v", c)
		assert.InDelta(t, c.want, got.X, 1e-9, "%+v", c)
		assert.InDelta(t, 0, got.Y, 1e-9, "%+v", c)
	}
}

// A wrap off a coil with a lap of 9 in over a wall 5 1/2 in deep, two plates of 3 in: 5 1/2 + 2 x
// 3 + 2 x 9 = 29 1/2 in; down one face alone 5 1/2 + 3 + 9 = 17 1/2.
func TestAWrapCutFromACoil(t *testing.T) {
	for face, want := range map[plan.Face]float64{"": 29.5, plan.Inside: 17.5} {
		p, _ := placed(t, standard().with(first(plan.Rule{Name: "w", At: "stud-top", Use: "wrap-strap", Face: face, Where: plan.Where{Level: []string{"second"}}})),
			func(m map[string]*plan.Item) {
				m["wrap-strap"].Length, m["wrap-strap"].Coil, m["wrap-strap"].Lap = 0, 1800, 9
			})
		q := one(t, p)
		assert.InDelta(t, want, q.Cut, 1e-9, "%q", face)
		assert.InDelta(t, want, q.Steel(), 1e-9, "%q", face)
		assert.InDelta(t, 0.75, q.Station, 1e-9, "%q", face)
	}
}
