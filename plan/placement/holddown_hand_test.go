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

// A body 2 3/8 in wide and 10 5/8 high whose rod stands 1 7/16 off the post takes 2 7/8 in
// beside it, on the wall and clear of what stands there over its height; a pair as much
// below the floor.
func TestWhereABodyFitsBesideItsPost(t *testing.T) {
	const foot = floor2 + 1.5
	for _, c := range []struct {
		name        string
		s           float64    // middle of the post
		stands      [2]float64 // of a king beside it
		z           [2]float64 // its foot and head over the post's foot
		wall        int        // on which it stands
		kind        plan.ItemKind
		left, right bool
	}{
		{name: "alone", s: 48, left: true, right: true},
		{name: "at the wall's start", s: 0.75, right: true},
		{name: "2 7/8 in from it", s: 3.625, left: true, right: true},
		{name: "a little less", s: 3.5, right: true},
		{name: "at the wall's end", s: 95.25, left: true},
		{name: "2 7/8 in from its end", s: 92.375, left: true, right: true},
		{name: "a king against it", s: 48, stands: [2]float64{48.75, 50.25}, z: [2]float64{0, 80}, wall: 1, left: true},
		{name: "a king 2 7/8 off", s: 48, stands: [2]float64{51.625, 53}, z: [2]float64{0, 80}, wall: 1, left: true, right: true},
		{name: "a king 2 1/2 off", s: 48, stands: [2]float64{51.25, 53}, z: [2]float64{0, 80}, wall: 1, left: true},
		{name: "a king on the left", s: 48, stands: [2]float64{45, 46}, z: [2]float64{0, 80}, wall: 1, right: true},
		{name: "what begins over the body", s: 48, stands: [2]float64{48.75, 50.25}, z: [2]float64{10.625, 80}, wall: 1, left: true, right: true},
		{name: "what begins just under its top", s: 48, stands: [2]float64{48.75, 50.25}, z: [2]float64{10.5, 80}, wall: 1, left: true},
		{name: "a king below, of a pair", s: 48, stands: [2]float64{48.75, 50.25}, z: [2]float64{-60, -storyGap}, wall: 0, left: true},
		{name: "a king below, of one body", s: 48, stands: [2]float64{48.75, 50.25}, z: [2]float64{-60, -storyGap}, wall: 0, kind: plan.HoldDownItem, left: true, right: true},
		{name: "one below that ends under the body", s: 48, stands: [2]float64{48.75, 50.25}, z: [2]float64{-60, -storyGap - 10.625}, wall: 0, left: true, right: true},
	} {
		h := newHand()
		low, high := h.column(c.s, c.s)
		if c.stands[1] > 0 {
			h.member(c.wall, plan.King, c.stands[0], c.stands[1], foot+c.z[0], foot+c.z[1])
		}
		j := h.joint(h.walls[1], plan.StudStud, c.s, foot, high, low)
		j.Gap, j.Below = storyGap, true
		kind := plan.HoldDownPairItem
		if c.kind != "" {
			kind = c.kind
		}
		x := &placer{world: newWorld(h.House)}
		w := want{joint: j, n: 1, item: &hardware.Item{Item: &plan.Item{Length: 10.625, Width: 2.375, Rod: 0.625, Standoff: 1.5, Center: 1.4375}, Kind: hardware.KindNamed(kind)}}
		l := x.through(j)
		assert.Equal(t, c.left, x.holds(w, l, plan.Left), "%s: left", c.name)
		assert.Equal(t, c.right, x.holds(w, l, plan.Right), "%s: right", c.name)
	}
}

// Toward the segment it holds down, from 20 to 60 here; where that side is taken on the
// other; where both are, beside the next post of the same corner; with none of them free
// where it would be first, which the checks then tell. A face asked for is taken.
func TestOnWhichSideAHoldDownGoes(t *testing.T) {
	const foot = floor2 + 1.5
	for _, c := range []struct {
		name   string
		post   float64   // middle of the post
		others []float64 // middles of kings
		next   float64   // middle of another post, 0 for none
		role   plan.Role // of that
		face   plan.Face // asked for
		want   plan.Face
		at     float64 // middle of the post it is on
	}{
		{"toward the segment, right", 20.75, nil, 0, "", "", plan.Right, 20.75},
		{"toward the segment, left", 59.25, nil, 0, "", "", plan.Left, 59.25},
		{"away from it, as asked", 59.25, nil, 0, "", plan.Right, plan.Right, 59.25},
		{"taken on the right", 20.75, []float64{22.25}, 0, "", "", plan.Left, 20.75},
		{"taken on both", 20.75, []float64{19.25, 22.25}, 0, "", "", plan.Right, 20.75},
		{"past the second post", 20.75, []float64{19.25}, 23.75, plan.Post, "", plan.Right, 23.75},
		{"not past a stud", 20.75, []float64{19.25}, 23.75, plan.Stud, "", plan.Right, 20.75},
		{"not past a post 9 in off", 20.75, []float64{19.25, 22.25}, 29.75, plan.Post, "", plan.Right, 20.75},
	} {
		h := newHand()
		h.walls[1].Shear = []*plan.Shear{{From: 20, To: 60}}
		at := func(role plan.Role, s float64) *framing.Joint {
			low, high := h.column(s, s)
			high.Role = role
			j := h.joint(h.walls[1], plan.StudStud, s, foot, high, low)
			j.Gap, j.Below = storyGap, true
			h.Joints = append(h.Joints, j)
			return j
		}
		j := at(plan.Post, c.post)
		if c.next > 0 {
			at(c.role, c.next)
		}
		for _, s := range c.others {
			h.member(1, plan.King, s-0.75, s+0.75, foot, top2-3)
		}
		x := &placer{world: newWorld(h.House)}
		item := &hardware.Item{Item: &plan.Item{Length: 10.625, Width: 2.375, Rod: 0.625, Standoff: 1.5, Center: 1.4375}, Kind: hardware.KindNamed(plan.HoldDownItem)}
		w, l := x.side(want{joint: j, item: item, n: 1, face: c.face}, x.through(j))
		assert.Equal(t, c.want, w.face, c.name)
		assert.InDelta(t, c.at, l.above.Mid(), 1e-9, c.name)
		off := map[plan.Face]float64{plan.Left: -0.75 - 1.4375, plan.Right: 0.75 + 1.4375}[c.want]
		assert.InDelta(t, c.at+off, l.rodLine(w), 1e-9, "%s: its rod 1 7/16 in off the post's face", c.name)
	}
}

// The corner's other post is the next one of the host on that side, not 8 in off, that ties
// to the same floor.
func TestTheNextPostOfACorner(t *testing.T) {
	h := newHand()
	var js []*framing.Joint
	for _, s := range []float64{10, 18, 26.5, 90} {
		low, high := h.column(s, s)
		high.Role = plan.Post
		j := h.joint(h.walls[1], plan.StudStud, s, floor2+1.5, high, low)
		j.Gap, j.Below = storyGap, true
		js = append(js, j)
	}
	h.Joints = js
	x := &placer{world: newWorld(h.House)}
	for _, c := range []struct {
		from int
		side plan.Face
		want int // -1 for none
	}{{0, plan.Right, 1}, {0, plan.Left, -1}, {1, plan.Left, 0}, {1, plan.Right, -1}, {2, plan.Right, -1}, {3, plan.Right, -1}} {
		got, ok := x.next(x.through(js[c.from]), c.side)
		assert.Equal(t, c.want >= 0, ok, "%+v", c)
		if c.want >= 0 {
			assert.Same(t, js[c.want].First(), got.above, "%+v", c)
		}
	}
	js[1].Below = false
	_, ok := x.next(x.through(js[0]), plan.Right)
	assert.False(t, ok, "with nothing below")
}

// Off the walls there is no face to measure from: what needs one says so, each kind of
// piece at each kind of joint.
func TestPiecesThatNeedAWall(t *testing.T) {
	m := &framing.Member{Role: plan.Stud, Section: two6, B: geom.Vec3{Z: 96}, Z1: 96}
	for _, c := range []struct {
		item plan.ItemKind
		at   plan.JointKind
		code plan.Code
	}{
		{plan.StrapItem, plan.PlateSplice, "joint-off-wall"},
		{plan.StrapItem, plan.WallCorner, "joint-off-wall"},
		{plan.StrapItem, plan.StudBase, "joint-off-wall"},
		{plan.StrapItem, plan.StudTop, "joint-off-wall"},
		{plan.StrapItem, plan.RafterPlate, "joint-off-wall"},
		{plan.WrapStrapItem, plan.StudTop, "joint-off-wall"},
		{plan.WrapStrapItem, plan.RafterPlate, "joint-off-wall"},
		{plan.HoldDownItem, plan.WallEnd, "joint-off-wall"},
		{plan.HoldDownPairItem, plan.WallEnd, "joint-off-wall"},
		{plan.ClipItem, plan.StudTop, "joint-off-wall"},
		{plan.ClipItem, plan.StudBase, "joint-off-wall"},
		{plan.ClipItem, plan.OpeningHead, "joint-off-wall"},
		{plan.ClipItem, plan.RafterPlate, "no-way-to-lie"}, // of one member alone
	} {
		x := &placer{world: newWorld(&framing.House{Plan: &plan.Plan{}})}
		j := &framing.Joint{Kind: c.at, Host: "G", Members: []*framing.Member{m}}
		item := &hardware.Item{Item: &plan.Item{Length: 24, Width: 1.25}, Kind: hardware.KindNamed(c.item)}
		_, fault := x.shape(want{joint: j, item: item, n: 1})
		require.NotNil(t, fault, "%s at %s", c.item, c.at)
		assert.Equal(t, c.code, fault.Code, "%s at %s", c.item, c.at)
		assert.NotEmpty(t, fault.Mend)
	}
}

// A bolt whose line passes none of its members stays where it was; one that meets them
// has its head on a washer of 1/4 in on the first.
func TestABoltsHeadLiesOnTheFirstMember(t *testing.T) {
	girder := boxed("girder", plan.GirderBeam, geom.Vec3{Y: 10, Z: 0}, geom.Vec3{X: 96, Y: 13, Z: 11.25})
	x := &placer{world: newWorld(&framing.House{Plan: &plan.Plan{}, Members: []*framing.Member{girder}})}
	item := &hardware.Item{Item: &plan.Item{Length: 12, Rod: 0.5, Washer: 3}}
	for _, c := range []struct{ z, y float64 }{{6, 9.75}, {20, 4}} {
		a := Axis{geom.Vec3{X: 48, Y: 4, Z: c.z}, geom.Vec3{X: 48, Y: 16, Z: c.z}}
		got := x.headed(a, item, []*framing.Member{girder})
		assert.InDelta(t, c.y, got.A.Y, 1e-9)
		assert.InDelta(t, c.y+12, got.B.Y, 1e-9)
	}
	// Down through the girder of 11 1/4 in from 2 over it: 11 1/4 in of it, of which 4 in of
	// a rod of 6 are in it.
	for long, in := range map[float64]float64{20: 11.25, 6: 4, 1: 0} {
		l := x.rodLie(want{item: item}, Axis{geom.Vec3{X: 48, Y: 11, Z: 13.25}, geom.Vec3{X: 48, Y: 11, Z: 13.25 - long}}, []*framing.Member{girder}, 7)
		assert.InDelta(t, in, l.Laid[0].Room, 1e-9)
		assert.InDelta(t, in, l.Laid[0].Lap, 1e-9)
		assert.Equal(t, plan.Through, l.Face)
		assert.InDelta(t, 7, l.Station, 1e-9)
		assert.Zero(t, l.Steel())
	}
}

// Of a band of 12, 8 and 12 in that laps 12 on either side the middle only bridges; where
// a lap is longer than its first plate, 13 in, it reaches onto the middle and takes nails
// there. Of two bands every plate is nailed.
func TestWhichStretchesOnlyBridge(t *testing.T) {
	plates := func(long ...float64) (b geom.Band) {
		z := 0.0
		for _, l := range long {
			b = append(b, geom.Plate{A: geom.Vec3{Z: z}, B: geom.Vec3{Z: z + l}, N: geom.Vec3{Y: -1}, Width: 1.25})
			z += l
		}
		return b
	}
	for _, c := range []struct {
		near, far float64
		want      bool
	}{{12, 12, true}, {13, 12, false}, {12, 13, false}, {0, 0, true}} {
		l := Lie{
			Bands: []geom.Band{plates(12, 8, 12)},
			Laid:  []Laid{{Lap: c.near, starts: []Start{{0, false}}}, {Lap: c.far, starts: []Start{{0, true}}}, {Lap: 99, starts: []Start{{1, false}}}},
		}
		assert.Equal(t, c.want, l.bridges(0, 1), "%+v", c)
		assert.Len(t, l.nailed(), map[bool]int{true: 2, false: 3}[c.want])
		assert.Len(t, l.plates(), 3)
		assert.InDelta(t, 32, l.Steel(), 1e-9)
		l.Bands = append(l.Bands, plates(40))
		assert.Len(t, l.nailed(), 4, "of two bands")
		assert.InDelta(t, 40, l.Steel(), 1e-9, "the longest")
	}
}
