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

// hung is a joist 1 1/2 in thick and 7 1/4 deep about x = 50, from y = 0 up to the face of a
// beam at y = 100, 1 1/2 thick, that runs along x from x0 to x1; both stand at z = hungAt. More
// members stand in the same house.
func hung(x0, x1 float64, more ...*framing.Member) (*placer, *framing.Joint) {
	joist := boxed("joist", plan.Joist, geom.Vec3{X: 49.25, Z: hungAt}, geom.Vec3{X: 50.75, Y: 100, Z: hungAt + 7.25})
	joist.A, joist.B, joist.Section = geom.Vec3{X: 50, Z: hungAt + 7.25}, geom.Vec3{X: 50, Y: 100, Z: hungAt + 7.25}, plan.Lumber{Ply: 1, Breadth: 1.5, Depth: 7.25}
	beam := boxed("beam", plan.Beam, geom.Vec3{X: x0, Y: 100, Z: hungAt}, geom.Vec3{X: x1, Y: 101.5, Z: hungAt + 9.25})
	beam.A, beam.B = geom.Vec3{X: x0, Y: 100.75, Z: hungAt + 9.25}, geom.Vec3{X: x1, Y: 100.75, Z: hungAt + 9.25}
	j := &framing.Joint{Kind: plan.RafterRidge, Host: "H", Station: 50, At: geom.Vec3{X: 50, Y: 100, Z: hungAt + 7.25}, Members: []*framing.Member{joist, beam}}
	return &placer{world: newWorld(&framing.House{Plan: &plan.Plan{}, Members: append(more, joist, beam)})}, j
}

const hungAt = 110.0

// A hanger 5 in tall has a flange 2 wide on each side of the joist, its middle 1 in back from
// the beam, from the joist's foot up, and one 1 1/2 wide on the beam's face beside each,
// its middle 3/4 out from the joist's side. Where the beam ends at the joist's left side, or
// another joist stands tight to it there, that side has none on the beam: its share of the
// fasteners is not driven, of two. Where neither has wood both are laid all the same.
func TestAHangerByHand(t *testing.T) {
	next := boxed("next", plan.Joist, geom.Vec3{X: 47.5, Z: hungAt}, geom.Vec3{X: 49, Y: 100, Z: hungAt + 7.25})
	item := &hardware.Item{Item: &plan.Item{Length: 5, Legs: [2]float64{2, 1.5}, Width: 1.5}, Kind: hardware.KindNamed(plan.HangerItem)}
	type flange struct{ x, y, wide, nx, ny float64 }
	left, right := flange{49.25, 99, 2, -1, 0}, flange{50.75, 99, 2, 1, 0}
	onLeft, onRight := flange{48.5, 100, 1.5, 0, -1}, flange{51.5, 100, 1.5, 0, -1}
	for _, c := range []struct {
		name   string
		x0, x1 float64
		more   []*framing.Member
		want   []flange
		of     int
	}{
		{"in the middle of a beam", 0, 100, nil, []flange{left, onLeft, right, onRight}, 0},
		{"at the beam's start", 49.25, 100, nil, []flange{left, right, onRight}, 2},
		{"3/8 in of beam past the middle of the flange", 48.125, 100, nil, []flange{left, onLeft, right, onRight}, 0},
		{"less of it", 48.2, 100, nil, []flange{left, right, onRight}, 2},
		{"beside another joist", 0, 100, []*framing.Member{next}, []flange{left, right, onRight}, 2},
		{"on a beam's end that is no wider", 49.25, 50.75, nil, []flange{left, onLeft, right, onRight}, 0},
	} {
		t.Run(c.name, func(t *testing.T) {
			x, j := hung(c.x0, c.x1, c.more...)
			l, fault := x.hanger(want{joint: j, item: item, n: 1})
			require.Nil(t, fault)
			var got []flange
			for _, b := range l.Bands {
				require.Len(t, b, 1)
				p := b[0]
				assert.Equal(t, [2]float64{hungAt, hungAt + 5}, [2]float64{p.A.Z, p.B.Z})
				assert.InDelta(t, p.A.X, p.B.X, 1e-9)
				round := func(v float64) float64 { return math.Round(v*1e6)/1e6 + 0 }
				got = append(got, flange{round(p.A.X), round(p.A.Y), p.Width, round(p.N.X), round(p.N.Y)})
			}
			assert.Equal(t, c.want, got)
			require.Len(t, l.Laid, 2)
			assert.Same(t, j.Members[0], l.Laid[0].Member)
			assert.Same(t, j.Members[1], l.Laid[1].Member)
			assert.Equal(t, [2]float64{5, 5}, [2]float64{l.Laid[0].Lap, l.Laid[1].Lap})
			assert.InDelta(t, 5, l.Laid[0].Room, 1e-6, "from the hanger's head down to the joist's foot")
			assert.Len(t, l.Laid[0].starts, 2)
			assert.Len(t, l.Laid[1].starts, len(c.want)-2)
			l, fault = want{joint: j, item: &hardware.Item{Item: &plan.Item{Length: 5, Fasteners: nails("each half", 4, 2)}, Kind: item.Kind}}.whole(l)
			require.Nil(t, fault)
			require.Len(t, l.Ends, 2)
			assert.Equal(t, [2]int{0, c.of}, [2]int{l.Ends[0].Of, l.Ends[1].Of})
		})
	}
	// Without a length it is 7/10 of the joist's depth tall.
	x, j := hung(0, 100)
	l, _ := x.hanger(want{joint: j, item: &hardware.Item{Item: &plan.Item{Width: 1.5}, Kind: item.Kind}, n: 1})
	assert.InDelta(t, 0.7*7.25, l.Bands[0].Len(), 1e-9)
	j.Members = j.Members[:1]
	_, fault := x.hanger(want{joint: j, item: item, n: 1})
	require.NotNil(t, fault, "it hangs from nothing")
}

// A clip of legs 2 and 3 in the angle between the joist's side and the beam: folded at the
// corner, half-way up the joist, 3 5/8; the first on its left, the second on its right, two
// on one side by their width, 1 5/8, and an eighth over each other. Asked for on the left or
// right of a beam that runs along x, that is west or east, whichever way the joist runs.
func TestAClipInTheAngleOfAHungJoist(t *testing.T) {
	item := &hardware.Item{Item: &plan.Item{Length: 5, Legs: [2]float64{2, 3}, Width: 1.625}, Kind: hardware.KindNamed(plan.ClipItem)}
	for _, c := range []struct {
		name  string
		face  plan.Face
		k, n  int
		other bool
		side  float64 // -1 west, 1 east
		up    float64
	}{
		{"one", "", 0, 1, false, -1, 0},
		{"one on its other side", "", 0, 1, true, 1, 0},
		{"the second of two", "", 1, 2, false, 1, 0},
		{"the first of three", "", 0, 3, false, -1, -0.875},
		{"the third of three", "", 2, 3, false, -1, 0.875},
		{"the last of four", "", 3, 4, false, 1, 0.875},
		{"left", plan.Left, 0, 1, false, -1, 0},
		{"right", plan.Right, 0, 1, false, 1, 0},
	} {
		t.Run(c.name, func(t *testing.T) {
			x, j := hung(0, 100)
			l, fault := x.angle(want{joint: j, item: item, face: c.face, k: c.k, n: c.n, other: c.other})
			require.Nil(t, fault)
			require.Len(t, l.Bands, 1)
			require.Len(t, l.Bands[0], 2)
			on, held := l.Bands[0][0], l.Bands[0][1]
			fold := geom.Vec3{X: 50 + 0.75*c.side, Y: 100, Z: hungAt + 3.625 + c.up}
			for what, d := range map[string][2]geom.Vec3{
				"on the beam": {on.A, fold.Add(geom.Vec3{X: 3 * c.side})}, "fold": {on.B, fold}, "fold again": {held.A, fold}, "up the joist": {held.B, fold.Sub(geom.Vec3{Y: 2})},
				"out of the beam": {on.N, {Y: -1}}, "out of the joist": {held.N, {X: c.side}},
			} {
				assert.InDelta(t, 0, d[0].Sub(d[1]).Len(), 1e-9, "%s: %v, want %v", what, d[0], d[1])
			}
			assert.Same(t, j.Members[0], l.Laid[0].Member)
			assert.Same(t, j.Members[1], l.Laid[1].Member)
			assert.InDelta(t, 50, l.Station, 1e-9)
		})
	}
	for face, side := range map[plan.Face]float64{plan.Left: -1, plan.Right: 1} {
		x, j := hung(0, 100) // the beam named from east to west: its stations count from there
		on := j.Members[1]
		on.A, on.B = on.B, on.A
		l, _ := x.angle(want{joint: j, item: item, face: face, n: 1})
		assert.InDelta(t, 50-0.75*side, l.Bands[0][0].B.X, 1e-9, "%s as seen along the stations", face)
	}
}

// Where a joist crosses a girder 3 in wide over it, a clip is twisted: a leg down the girder's
// outer face, which is nearer to the joint, beside the joist, and one up the joist's side, no
// more of it than the joist is high, each half the clip's width of 1 1/2 from their corner.
func TestAClipTwistedWhereAJoistCrossesAGirder(t *testing.T) {
	const z = 110.0 // of the girder's top
	joist := boxed("joist", plan.Joist, geom.Vec3{X: 49.25, Y: -20, Z: z}, geom.Vec3{X: 50.75, Y: 60, Z: z + 3.5})
	joist.A, joist.B, joist.Z0, joist.Z1 = geom.Vec3{X: 50, Y: -20, Z: z + 1.75}, geom.Vec3{X: 50, Y: 60, Z: z + 1.75}, z, z+3.5
	girder := boxed("girder", plan.GirderBeam, geom.Vec3{Z: z - 9.25}, geom.Vec3{X: 100, Y: 3, Z: z})
	girder.A, girder.B, girder.Z0, girder.Z1 = geom.Vec3{Y: 1.5, Z: z - 4.625}, geom.Vec3{X: 100, Y: 1.5, Z: z - 4.625}, z-9.25, z
	for _, c := range []struct {
		face plan.Face
		k    int
		y    float64 // the joint's, on plan
		side float64
		out  float64 // of the girder's face
	}{{"", 0, 1, -1, -1}, {"", 1, 1, 1, -1}, {plan.Right, 0, 1, 1, -1}, {plan.Left, 0, 1, -1, -1}, {"", 0, 2, -1, 1}} {
		j := &framing.Joint{Kind: plan.JoistGirder, Host: "G", Station: 50, At: geom.Vec3{X: 50, Y: c.y, Z: z}, Members: []*framing.Member{joist, girder}}
		x := &placer{world: newWorld(&framing.House{Plan: &plan.Plan{}, Members: j.Members})}
		item := &hardware.Item{Item: &plan.Item{Length: 5, Legs: [2]float64{4, 3}, Width: 1.5}, Kind: hardware.KindNamed(plan.ClipItem)}
		l := x.twisted(want{joint: j, item: item, face: c.face, k: c.k, n: 2})
		face := 0.0
		if c.out > 0 {
			face = 3
		}
		down, up := l.Bands[0][0], l.Bands[0][1]
		s := 50 + 0.75*c.side
		for what, d := range map[string][2]geom.Vec3{
			"down the girder": {down.A, {X: s + 0.75*c.side, Y: face, Z: z - 3}}, "to its top": {down.B, {X: s + 0.75*c.side, Y: face, Z: z}},
			"from the joist's foot": {up.A, {X: s, Y: face - 0.75*c.out, Z: z}}, "to its top, 3 1/2": {up.B, {X: s, Y: face - 0.75*c.out, Z: z + 3.5}},
			"out of the girder": {down.N, {Y: c.out}}, "out of the joist": {up.N, {X: c.side}},
		} {
			assert.InDelta(t, 0, d[0].Sub(d[1]).Len(), 1e-9, "%+v %s: %v, want %v", c, what, d[0], d[1])
		}
	}
}

// On a girder packed out by 1/2 in a strap's nails are in its wood behind the packing: what lies
// over the packing is asked as if it lay on the girder, what lies beside it as it is.
func TestWoodBehindPacking(t *testing.T) {
	girder := boxed("girder", plan.GirderBeam, geom.Vec3{}, geom.Vec3{X: 100, Y: 3, Z: 10})
	pack := boxed("pack", plan.Packing, geom.Vec3{X: 40, Y: -0.5}, geom.Vec3{X: 60, Z: 10})
	pack.Section = plan.Lumber{Ply: 1, Breadth: 0.5, Depth: 10}
	x := newWorld(&framing.House{Plan: &plan.Plan{}, Members: []*framing.Member{girder, pack}})
	up := func(s, y, z float64) geom.Band {
		return geom.Band{{A: geom.Vec3{X: s, Y: y, Z: -5}, B: geom.Vec3{X: s, Y: y, Z: z}, N: geom.Vec3{Y: -1}, Width: 1}}
	}
	for _, c := range []struct {
		m    *framing.Member
		s, z float64
		want float64
	}{
		{girder, 50, 5, 0}, {girder, 40, 5, 0}, {girder, 60, 5, 0}, {girder, 50, 10, 0}, {girder, 39, 5, -0.5}, {girder, 61, 5, -0.5}, {girder, 50, 10.5, -0.5}, {girder, 50, -1, -0.5}, {pack, 50, 5, -0.5},
	} {
		got := x.through(c.m, up(c.s, -0.5, c.z))
		assert.InDelta(t, c.want, got[0].A.Y, 1e-9, "%+v", c)
		assert.InDelta(t, c.want, got[0].B.Y, 1e-9, "%+v", c)
	}
	assert.InDelta(t, -2.0, x.through(girder, up(50, -2, 5))[0].A.Y, 1e-9, "before the packing")
	assert.InDelta(t, 3.0, x.through(girder, up(50, 3, 5))[0].A.Y, 1e-9, "on the girder's far face")
}

// A pair of hold-downs on posts that stand 2 in out of line: each body is on the right side of
// its own, at 18.75 over the floor and at 16.75 under it; the rod is the upper one's, 1 7/16
// off it, from 1 1/2 over the floor's plate and what is past the nut, to as far below.
func TestAHoldDownPairOnPostsOutOfLine(t *testing.T) {
	h := newHand()
	h.column(16, 18)
	h.Joints = append(h.held(0), h.held(1)...)
	p, _ := placed(t, h.with(plan.Rule{Name: "p", At: plan.StudStud, Use: "hold-down-pair", Face: plan.Right}))
	q := one(t, p)
	require.Len(t, q.Bands, 2)
	for i, x := range []float64{18.75, 16.75} {
		assert.InDelta(t, x, q.Bands[i][0].A.X, 1e-9)
		assert.InDelta(t, x, q.Bands[i][0].B.X, 1e-9)
		assert.InDelta(t, 2.75, q.Bands[i][0].A.Y, 1e-9)
		assert.InDelta(t, 1, q.Bands[i][0].N.X, 1e-9)
	}
	plate, head := floor2+1.5, top1-3
	assert.InDelta(t, plate, q.Bands[0][0].A.Z, 1e-9)
	assert.InDelta(t, plate+10.625, q.Bands[0][0].B.Z, 1e-9)
	assert.InDelta(t, head, q.Bands[1][0].A.Z, 1e-9)
	assert.InDelta(t, head-10.625, q.Bands[1][0].B.Z, 1e-9)
	assert.InDelta(t, 18.75+1.4375, q.Station, 1e-9)
	past := hardware.Past(0.625, 2)
	assert.InDelta(t, plate+1.5+past, q.Rod.A.Z, 1e-9)
	assert.InDelta(t, head-1.5-past, q.Rod.B.Z, 1e-9)
	assert.InDelta(t, storyGap+2*(1.5+past), q.Cut, 1e-9)
}

// A wrap goes down both faces of a stud: the stretch on each is told by the wall's face that it
// looks out of, one on a side by that side.
func TestTheFaceThatAStretchOfAWrapLiesOn(t *testing.T) {
	w := &plan.Wall{To: geom.Vec2{X: 96}}
	b := make(geom.Band, 3)
	p := &Piece{Joint: &framing.Joint{Kind: plan.StudTop, Wall: w}, Item: &hardware.Item{Item: &plan.Item{}, Kind: hardware.KindNamed(plan.WrapStrapItem)}, Lie: Lie{Face: plan.Outside, Bands: []geom.Band{b}}}
	require.True(t, p.around())
	for n, want := range map[geom.Vec3]plan.Face{{Y: -1}: plan.Outside, {Y: 1}: plan.Inside, {X: -1}: plan.Left, {X: 1}: plan.Right} {
		assert.Equal(t, want, p.faceOf(geom.Plate{N: n}), "%v", n)
	}
	p.Bands[0] = b[:2]
	assert.Equal(t, plan.Outside, p.faceOf(geom.Plate{N: geom.Vec3{Y: 1}}), "one that goes down one face is told by its own")
	p.Bands[0], p.Joint.Wall = b, nil
	assert.Equal(t, plan.Outside, p.faceOf(geom.Plate{N: geom.Vec3{Y: 1}}))
}
