package placement

import (
	"math"
	"testing"

	"galewright/plan"
	"galewright/plan/framing"
	"galewright/plan/geom"
	"galewright/plan/hardware"

	"github.com/stretchr/testify/assert"
)

// boxed is a member of one box, its grain along x, y or z as the box is longest.
func boxed(id string, role plan.Role, lo, hi geom.Vec3) *framing.Member {
	d, mid := hi.Sub(lo), lo.Add(hi).Mul(0.5)
	m := &framing.Member{ID: id, Role: role, Section: two6, Z0: lo.Z, Z1: hi.Z, Solid: []geom.Solid{geom.Box(lo, geom.Vec3{X: d.X}, geom.Vec3{Y: d.Y}, geom.Vec3{Z: d.Z})}}
	m.A, m.B = mid, mid
	switch {
	case d.X >= d.Y && d.X >= d.Z:
		m.A.X, m.B.X = lo.X, hi.X
	case d.Y >= d.Z:
		m.A.Y, m.B.Y = lo.Y, hi.Y
	default:
		m.A.Z, m.B.Z = lo.Z, hi.Z
	}
	return m
}

// A girder 3 in thick along x: what lies north of its middle line is nearer to
// its north face, 1 1/2 in off, and the other way about.
func TestTheNearerFaceOfAGirder(t *testing.T) {
	girder := boxed("g", plan.GirderBeam, geom.Vec3{Y: -1.5, Z: 70}, geom.Vec3{X: 100, Y: 1.5, Z: 80})
	for y, want := range map[float64]float64{0.2: 1.5, 4: 1.5, -0.2: -1.5, -4: -1.5} {
		face := nearFace(girder, geom.Vec3{X: 50, Y: y, Z: 80})
		assert.InDelta(t, 0, face.at.Sub(geom.Vec3{X: 50, Y: want, Z: 80}).Len(), 1e-9, "from %v", y)
		assert.InDelta(t, 0, face.n.Sub(geom.Vec3{Y: math.Copysign(1, want)}).Len(), 1e-9, "from %v", y)
	}
	assert.InDelta(t, 100, reachAlong(girder, geom.Vec3{X: 1}), 1e-9)
	assert.InDelta(t, 0, reachAlong(girder, geom.Vec3{X: -1}), 1e-9)
	assert.InDelta(t, 80, reachAlong(girder, geom.Vec3{Z: 1}), 1e-9)
}

// Members that run within 30 degrees of one way have faces that steel can lie
// flat over; an upright crosses none.
func TestMembersThatCross(t *testing.T) {
	run := func(deg float64) *framing.Member {
		a := deg * math.Pi / 180
		return &framing.Member{B: geom.Vec3{X: 60 * math.Cos(a), Y: 60 * math.Sin(a)}}
	}
	for deg, want := range map[float64]bool{0: false, 29: false, 31: true, 90: true, 149: true, 151: false, 180: false} {
		assert.Equal(t, want, crosses(run(0), run(deg)), "%v degrees", deg)
	}
	assert.False(t, crosses(run(0), &framing.Member{B: geom.Vec3{Z: 90}}))
}

// A strap of 2 x 10 in on the left side of a stud is covered by a jack that
// stands within 1/4 in of it, unless only its outer 1/8 in is: no nail is there.
// Plates and headers cover nothing, straps go over them.
func TestWhatCoversASteelPlate(t *testing.T) {
	steel := geom.Plate{A: geom.Vec3{Y: 2.75, Z: 40}, B: geom.Vec3{Y: 2.75, Z: 50}, N: geom.Vec3{X: -1}, Width: 2}
	from := func(role plan.Role, gap, y0, z0, z1 float64) *framing.Member {
		return boxed("m", role, geom.Vec3{X: -gap - 1.5, Y: y0, Z: z0}, geom.Vec3{X: -gap, Y: 5.5, Z: z1})
	}
	for name, c := range map[string]struct {
		m    *framing.Member
		hits bool
	}{
		"a jack against it":                {from(plan.Jack, 0, 0, 0, 90), true},
		"a jack 3/16 in off":               {from(plan.Jack, 3.0/16, 0, 0, 90), true},
		"a jack 5/16 in off":               {from(plan.Jack, 5.0/16, 0, 0, 90), false},
		"blocking over its upper half":     {from(plan.Blocking, 0, 0, 45, 90), true},
		"blocking over its last 1/16 in":   {from(plan.Blocking, 0, 0, 50-1.0/16, 90), false},
		"blocking up to its first 1/16 in": {from(plan.Blocking, 0, 0, 20, 40+1.0/16), false},
		"a joist beside its edge":          {from(plan.Joist, 0, 3.75-1.0/16, 0, 90), false},
		"a joist over 1/2 in of it":        {from(plan.Joist, 0, 3.25, 0, 90), true},
		"a top plate":                      {from(plan.TopPlate, 0, 0, 0, 90), false},
		"a header":                         {from(plan.Header, 0, 0, 0, 90), false},
	} {
		w := newWorld(&framing.House{Plan: &plan.Plan{}, Members: []*framing.Member{c.m}})
		want := (*framing.Member)(nil)
		if c.hits {
			want = c.m
		}
		assert.Same(t, want, w.cover(steel, probeFar), name)
		assert.Nil(t, w.cover(steel, probeFar, c.m), "%s, left out", name)
	}
	tiny := steel
	tiny.B.Z = 40.2
	assert.Nil(t, newWorld(&framing.House{Plan: &plan.Plan{}, Members: []*framing.Member{from(plan.Jack, 0, 0, 0, 90)}}).cover(tiny, probeFar), "nothing of it is left to look at")
}

// A nail longer than a plate is thick runs on into the other plate when driven
// up or down, not when driven through its edge; one through a stud's side runs
// on into the jack beside it.
func TestWoodBehindANailsTip(t *testing.T) {
	wall := &plan.Wall{To: geom.Vec2{X: 120}, Studs: two6}
	king := boxed("king", plan.King, geom.Vec3{X: 10}, geom.Vec3{X: 11.5, Y: 5.5, Z: 90})
	jack := boxed("jack", plan.Jack, geom.Vec3{X: 11.5}, geom.Vec3{X: 13, Y: 5.5, Z: 80})
	king.Wall, king.S0, king.S1 = wall, 10, 11.5
	x := &placer{world: newWorld(&framing.House{Plan: &plan.Plan{}, Members: []*framing.Member{king, jack}})}
	for name, c := range map[string]struct {
		m    *framing.Member
		face plan.Face
		n    geom.Vec3
		z    float64
		want bool
	}{
		"down through the plates":        {&framing.Member{Role: plan.UpperPlate}, plan.Top, geom.Vec3{Z: 1}, 90, true},
		"up through the plates":          {&framing.Member{Role: plan.TopPlate}, plan.Outside, geom.Vec3{Z: -1}, 90, true},
		"through a plate's edge":         {&framing.Member{Role: plan.TopPlate}, plan.Outside, geom.Vec3{Y: -1}, 90, false},
		"from the left into the jack":    {king, plan.Left, geom.Vec3{X: -1}, 40, true},
		"over the jack's head":           {king, plan.Left, geom.Vec3{X: -1}, 85, false},
		"from the right, nothing behind": {king, plan.Right, geom.Vec3{X: 1}, 40, false},
		"through the face of the wall":   {king, plan.Outside, geom.Vec3{Y: -1}, 40, false},
		"a member of no wall":            {jack, plan.Left, geom.Vec3{X: -1}, 40, false},
	} {
		p := &Piece{Lie: Lie{Face: c.face, Z0: c.z, Z1: c.z}}
		assert.Equal(t, c.want, x.backed(p, c.m, c.n), name)
	}
}

// How long steel is where it is placed, and what is cut off a roll: a strap is as
// long as it comes, a coil as long as the item says or the laps ask for.
func TestHowLongSteelIsCut(t *testing.T) {
	for name, c := range map[string]struct {
		it         plan.Item
		total, cut float64
	}{
		"a strap":                 {plan.Item{Length: 24}, 24, 0},
		"a coil of a set length":  {plan.Item{Length: 30, Coil: 300}, 30, 30},
		"a coil cut to its joint": {plan.Item{Lap: 15, Coil: 300}, 12.5 + 30, 12.5 + 30},
	} {
		w := want{item: &hardware.Item{Item: &c.it}}
		total, cut := w.cut(12.5, 30)
		assert.Equal(t, [2]float64{c.total, c.cut}, [2]float64{total, cut}, name)
	}
}
