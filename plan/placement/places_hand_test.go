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

// Steel that lies along or square to one way has one direction, south of east or on it:
// of all that runs along x or y it is south, and of 3 in 4 it is 4 east and 3 south.
func TestOneDirectionOfSteelThatCrosses(t *testing.T) {
	for _, c := range []struct{ d, want geom.Vec3 }{
		{geom.Vec3{X: 1}, geom.Vec3{Y: -1}},
		{geom.Vec3{X: -1}, geom.Vec3{Y: -1}},
		{geom.Vec3{Y: 1}, geom.Vec3{Y: -1}},
		{geom.Vec3{Y: -2}, geom.Vec3{Y: -1}},
		{geom.Vec3{Z: 1}, geom.Vec3{Y: -1}},
		{geom.Vec3{X: 3, Y: 4}, geom.Vec3{X: 0.8, Y: -0.6}},
		{geom.Vec3{X: -3, Y: -4, Z: 9}, geom.Vec3{X: 0.8, Y: -0.6}},
		{geom.Vec3{X: -4, Y: 3}, geom.Vec3{X: 0.8, Y: -0.6}},
		{geom.Vec3{X: 4, Y: -3}, geom.Vec3{X: 0.8, Y: -0.6}},
	} {
		assert.InDelta(t, 0, quarter(c.d).Sub(c.want).Len(), 1e-9, "%v: %v", c.d, quarter(c.d))
	}
}

// Whether a place is outside of an L of 100 by 100 less its north-east quarter.
func TestOutsideOfAnL(t *testing.T) {
	l, other := &plan.Level{Name: "first"}, &plan.Level{Name: "second", Index: 1}
	walls := func(exterior bool, on *plan.Level) (out []*plan.Wall) {
		pts := []geom.Vec2{{}, {X: 100}, {X: 100, Y: 50}, {X: 50, Y: 50}, {X: 50, Y: 100}, {Y: 100}}
		for i, a := range pts {
			out = append(out, &plan.Wall{Level: on, ToLevel: on, From: a, To: pts[(i+1)%len(pts)], Exterior: exterior})
		}
		return out
	}
	for _, c := range []struct {
		p   geom.Vec2
		out bool
	}{
		{geom.Vec2{X: 25, Y: 25}, false},
		{geom.Vec2{X: 25, Y: 75}, false},
		{geom.Vec2{X: 75, Y: 25}, false},
		{geom.Vec2{X: 75, Y: 75}, true},
		{geom.Vec2{X: -5, Y: 25}, true},
		{geom.Vec2{X: 105, Y: 25}, true},
		{geom.Vec2{X: 25, Y: -5}, true},
		{geom.Vec2{X: 25, Y: 105}, true},
		{geom.Vec2{X: 120, Y: 130}, true},
	} {
		assert.Equal(t, c.out, beyond(walls(true, l), l, c.p), "%v", c.p)
		assert.False(t, beyond(walls(false, l), l, c.p), "partitions bound no floor")
		assert.False(t, beyond(walls(true, other), l, c.p), "nor do walls of another level")
	}
}

// Outside of an outline with slanted walls is where its corners, seen around, do not add up to a turn.
func TestOutsideOfSlantedWalls(t *testing.T) {
	l := &plan.Level{Name: "first"}
	for name, pts := range map[string][]geom.Vec2{
		"kite": {{X: 0, Y: 0}, {X: 70, Y: -10}, {X: 100, Y: 40}, {X: 30, Y: 70}, {X: -10, Y: 40}},
		"dart": {{X: 0, Y: 0}, {X: 90, Y: 30}, {X: 10, Y: 80}, {X: 35, Y: 35}},
		"bay":  {{X: 0, Y: 0}, {X: 30, Y: 0}, {X: 45, Y: -17}, {X: 60, Y: -17}, {X: 75, Y: 0}, {X: 100, Y: 0}, {X: 100, Y: 60}, {X: 0, Y: 60}},
	} {
		var walls []*plan.Wall
		for i, a := range pts {
			walls = append(walls, &plan.Wall{Level: l, ToLevel: l, From: a, To: pts[(i+1)%len(pts)], Exterior: true})
		}
		n := map[bool]int{}
		for x := -25.3; x < 115; x += 4.7 {
			for y := -30.1; y < 95; y += 4.3 {
				p, turn := geom.Vec2{X: x, Y: y}, 0.0
				for i, a := range pts {
					a, z := a.Sub(p), pts[(i+1)%len(pts)].Sub(p)
					turn += math.Atan2(a.Cross(z), a.Dot(z))
				}
				out := math.Abs(turn) < math.Pi
				n[out]++
				require.Equal(t, out, beyond(walls, l, p), "%s %v", name, p)
			}
		}
		assert.Greater(t, n[true], 100, name)
		assert.Greater(t, n[false], 100, name)
	}
}

// A hold-down goes toward the middle of the nearest shear segment, else of the wall.
func TestTheSegmentThatAHoldDownIsFor(t *testing.T) {
	seg := func(a, b float64) *plan.Shear { return &plan.Shear{From: a, To: b} }
	for _, c := range []struct {
		at    float64
		shear []*plan.Shear
		want  float64
	}{
		{10, nil, 48},
		{10, []*plan.Shear{seg(60, 90)}, 75},
		{10, []*plan.Shear{seg(60, 90), seg(20, 40)}, 30},
		{70, []*plan.Shear{seg(0, 40), seg(60, 90)}, 75},
		{48, []*plan.Shear{seg(0, 40), seg(60, 90)}, 20},
		{54, []*plan.Shear{seg(0, 40), seg(60, 90)}, 75},
	} {
		j := &framing.Joint{Wall: &plan.Wall{To: geom.Vec2{X: 96}, Shear: c.shear}}
		assert.InDelta(t, c.want, (&placer{}).shearMiddle(j, link{s0: c.at - 0.75, s1: c.at + 0.75}), 1e-9, "%+v", c)
	}
}

// Bolts of a girder on a pile: each in the middle of its share of the pile, no nearer than
// a washer is wide, or 3 in.
func TestBoltsOnAPileStandApart(t *testing.T) {
	pile := &framing.Member{Section: plan.Lumber{Ply: 1, Breadth: 9.5, Depth: 9.5}}
	for _, c := range []struct {
		n      int
		washer float64
		pile   *framing.Member
		want   float64
	}{{1, 3, pile, 3}, {2, 3, pile, 4.75}, {2, 0, pile, 4.75}, {3, 0, pile, 9.5 / 3}, {4, 0, pile, 3}, {4, 4, pile, 4}, {2, 0, nil, 3}, {1, 0, pile, 3}} {
		w := want{n: c.n, item: &hardware.Item{Item: &plan.Item{Washer: c.washer}}}
		assert.InDelta(t, c.want, boltsApart(w, c.pile), 1e-9, "%+v", c)
	}
}

// How far a joint is from the corner and the nearest opening of its wall; of a girder from
// its first or last joint of the kind. Without an opening there is no distance.
func TestDistancesAlongAHost(t *testing.T) {
	wall := &plan.Wall{To: geom.Vec2{X: 96}, Openings: []*plan.Opening{{At: 30, Width: 20}, {At: 70, Width: 10}}}
	host := func(s float64) *framing.Joint { return &framing.Joint{Host: "G", Kind: plan.GirderPile, Station: s} }
	list := []*framing.Joint{host(6), host(100), host(206)}
	w := &world{byHost: map[hostKind][]*framing.Joint{{"G", plan.GirderPile}: list}}
	for _, c := range []struct{ at, corner, opening float64 }{{0, 0, 30}, {20, 20, 10}, {40, 40, 0}, {58, 38, 8}, {64, 32, 6}, {90, 6, 10}, {96, 0, 16}} {
		j := &framing.Joint{Wall: wall, Station: c.at}
		assert.InDelta(t, c.corner, w.fromCorner(j), 1e-9, "%v", c.at)
		assert.InDelta(t, c.opening, fromOpening(w, j), 1e-9, "%v", c.at)
	}
	for i, want := range []float64{0, 94, 0} {
		assert.InDelta(t, want, w.fromCorner(list[i]), 1e-9)
	}
	assert.True(t, math.IsNaN(fromOpening(w, list[0])), "on no wall")
	assert.True(t, math.IsNaN(fromOpening(w, &framing.Joint{Wall: &plan.Wall{To: geom.Vec2{X: 96}}})))
	roof, other := &plan.Roof{Name: "a"}, &plan.Roof{Name: "b"}
	assert.Same(t, roof, roofOf(&framing.Joint{Roof: roof, Members: []*framing.Member{{Roof: other}}}))
	assert.Same(t, other, roofOf(&framing.Joint{Members: []*framing.Member{{Roof: other}}}))
	assert.Nil(t, roofOf(&framing.Joint{}))
}

// The direction out of a sloping top: of 4 along and 3 up it leans back by 3 of 5; of what
// is plumb, along x.
func TestOutOfASlopingTop(t *testing.T) {
	for _, c := range []struct{ d, want geom.Vec3 }{
		{geom.Vec3{X: 4, Z: 3}, geom.Vec3{X: -0.6, Z: 0.8}},
		{geom.Vec3{X: -4, Z: -3}, geom.Vec3{X: -0.6, Z: 0.8}},
		{geom.Vec3{Y: -4, Z: 3}, geom.Vec3{Y: 0.6, Z: 0.8}},
		{geom.Vec3{X: 9}, geom.Vec3{Z: 1}},
		{geom.Vec3{Z: -2}, geom.Vec3{X: 1}},
	} {
		assert.InDelta(t, 0, upNormal(c.d).Sub(c.want).Len(), 1e-9, "%v", c.d)
	}
}

// A twisted clip at an outlooker 3 1/2 in thick whose upper corner is at 100: from the seat,
// 96 1/2, one leg of 2 or at most 3 1/2 in up its edge, half the clip's 1 5/8 in away from
// the face of the carrier, the other down that face, as far beside the edge.
func TestATwistedClipAtAnOutlooker(t *testing.T) {
	s := slope{corner: geom.Vec3{Z: 100}, thick: 3.5, normal: geom.Vec3{Z: 1}, edge: geom.Vec3{Y: -1}, face: geom.Vec3{X: 1}}
	w := want{item: &hardware.Item{Item: &plan.Item{Width: 1.625}, Kind: hardware.KindNamed(plan.ClipItem)}}
	for on, up := range map[float64]float64{2: 98.5, 3.5: 100, 5: 100} {
		a, b := s.twisted(w, on, 3)
		for what, d := range map[string][2]geom.Vec3{
			"rise": {a.A, {X: -0.8125, Z: 96.5}}, "its end": {a.B, {X: -0.8125, Z: up}}, "out of the edge": {a.N, {Y: -1}},
			"foot": {b.A, {Y: -0.8125, Z: 96.5}}, "its foot": {b.B, {Y: -0.8125, Z: 93.5}}, "out of the face": {b.N, {X: 1}},
		} {
			assert.InDelta(t, 0, d[0].Sub(d[1]).Len(), 1e-9, "%s: %v", what, d[0])
		}
	}
	a, b := s.legs(w, 2, 3) // not twisted: both from the middle of its thickness, 98 1/4
	assert.InDelta(t, 0, a.A.Sub(geom.Vec3{Z: 98.25}).Len()+a.B.Sub(geom.Vec3{X: 2, Z: 98.25}).Len(), 1e-9)
	assert.InDelta(t, 0, b.A.Sub(geom.Vec3{Z: 98.25}).Len()+b.B.Sub(geom.Vec3{Y: -3, Z: 98.25}).Len(), 1e-9)
}

// On which side of a joint along a wall its first member lies: that of its middle; at a
// shear wall's end that of the segment, which ends there or begins.
func TestTheSideOfAJointsFirstMember(t *testing.T) {
	wall := &plan.Wall{To: geom.Vec2{X: 96}, Shear: []*plan.Shear{{From: 20, To: 60}, {From: 80, To: 99}}}
	f := wall.Frame()
	for _, c := range []struct {
		kind plan.JointKind
		at   float64
		want bool
	}{
		{plan.PlateSplice, 40, true},
		{plan.PlateSplice, 20, false},
		{plan.Collector, 60, true},
		{plan.Collector, 20, false},
		{plan.Collector, 80, false},
		{plan.Collector, 96, true},
		{plan.Collector, 99, false},
	} {
		m := &framing.Member{A: geom.Vec3{X: 10}, B: geom.Vec3{X: 50}}
		j := &framing.Joint{Kind: c.kind, Wall: wall, At: geom.Vec3{X: c.at}, Members: []*framing.Member{m}}
		assert.Equal(t, c.want, firstAtStart(j, f), "%s at %v", c.kind, c.at)
	}
}

// How a rafter ends at a ridge board 1 1/2 in thick whose face is at 60: it climbs 45 in over
// 60, 75 along it, so that 7 1/4 in of depth are 9 1/16 plumb; its lower edge is that much
// under its end. Looked at from its foot it ends at what is there. What is of a wall is as
// high as it stands.
func TestHowAMemberEndsAtAnother(t *testing.T) {
	ridge := boxed("ridge", plan.Ridge, geom.Vec3{X: 60, Y: -50, Z: 130}, geom.Vec3{X: 61.5, Y: 50, Z: 146})
	ledger := boxed("ledger", plan.Ledger, geom.Vec3{X: -1.5, Y: -50, Z: 90}, geom.Vec3{Y: 50, Z: 100})
	r := &framing.Member{Role: plan.Rafter, Roof: &plan.Roof{}, A: geom.Vec3{Z: 100}, B: geom.Vec3{X: 60, Z: 145}, Section: plan.Lumber{Ply: 1, Breadth: 1.5, Depth: 7.25}, Z0: 90, Z1: 146}
	header := &framing.Member{Role: plan.Header, Wall: &plan.Wall{}, A: geom.Vec3{Z: 135}, B: geom.Vec3{X: 59.5, Z: 135}, Section: plan.Lumber{Ply: 2, Breadth: 1.5, Depth: 7.25}, Z0: 131.375, Z1: 138.625}
	for _, c := range []struct {
		name       string
		at         geom.Vec3
		held, on   *framing.Member
		d          geom.Vec2
		x, y       float64 // of the left corner
		foot, deep float64
	}{
		{"at the ridge", geom.Vec3{X: 60, Z: 145}, r, ridge, geom.Vec2{X: 1}, 60, 0.75, 145 - 9.0625, 9.0625},
		{"at a ledger under its foot", geom.Vec3{Z: 100}, r, ledger, geom.Vec2{X: -1}, 0, -0.75, 100 - 9.0625, 9.0625},
		{"a header, short of it", geom.Vec3{X: 60, Z: 135}, header, ridge, geom.Vec2{X: 1}, 60, 1.5, 131.375, 7.25},
	} {
		x := &placer{world: newWorld(&framing.House{Plan: &plan.Plan{}, Members: []*framing.Member{c.held, c.on}})}
		b, ok := x.butts(want{joint: &framing.Joint{At: c.at, Members: []*framing.Member{c.held, c.on}}})
		assert.True(t, ok, c.name)
		assert.Same(t, c.on, b.on, c.name)
		assert.InDelta(t, 0, b.d.Sub(c.d).Len(), 1e-9, c.name)
		assert.InDelta(t, 0, b.n.Sub(geom.Vec3{X: -c.d.X}).Len(), 1e-9, c.name)
		assert.InDelta(t, c.deep, b.deep, 1e-9, c.name)
		assert.InDelta(t, c.foot, b.foot, 1e-9, c.name)
		assert.InDelta(t, 0, b.corner[0].Sub(geom.Vec2{X: c.x, Y: c.y}).Len(), 1e-9, "%s: %v", c.name, b.corner)
		assert.InDelta(t, 0, b.corner[1].Sub(geom.Vec2{X: c.x, Y: -c.y}).Len(), 1e-9, "%s: %v", c.name, b.corner)
	}
	x := &placer{world: newWorld(&framing.House{Plan: &plan.Plan{}, Members: []*framing.Member{r, header, ridge}})}
	b, _ := x.butts(want{joint: &framing.Joint{At: geom.Vec3{X: 60, Z: 145}, Members: []*framing.Member{r, header, ridge}}})
	assert.Same(t, ridge, b.on, "a ridge before all else")
	b, _ = x.butts(want{joint: &framing.Joint{At: geom.Vec3{X: 60, Z: 145}, Members: []*framing.Member{ridge, header}}})
	assert.Same(t, header, b.on, "a ridge does not end at itself")
	_, ok := (&placer{}).butts(want{joint: &framing.Joint{Members: []*framing.Member{r}}})
	assert.False(t, ok, "at nothing")
	_, ok = (&placer{}).butts(want{joint: &framing.Joint{Members: []*framing.Member{{A: geom.Vec3{}, B: geom.Vec3{Z: 90}}, ridge}}})
	assert.False(t, ok, "an upright does not run toward anything")
}

// A bolt of 9 in through a ledger into a stud: its head on a 1/4 in plate on the ledger's
// outer face, on whichever side of the wall the ledger lies; two stand a washer and 1/8 in
// apart.
func TestABoltAcrossALedger(t *testing.T) {
	wall := &plan.Wall{To: geom.Vec2{X: 96}, Studs: two6}
	stud := boxed("stud", plan.Stud, geom.Vec3{X: 39.25, Z: 0}, geom.Vec3{X: 40.75, Y: 5.5, Z: 120})
	item := &hardware.Item{Item: &plan.Item{Mark: "b", Length: 9, Rod: 0.5, Washer: 3}, Kind: hardware.KindNamed(plan.AnchorBoltItem)}
	for _, c := range []struct{ y0, y1, face, head, tip float64 }{{-1.5, 0, 0, -1.75, 7.25}, {5.5, 7, 5.5, 7.25, -1.75}} {
		ledger := boxed("ledger", plan.Ledger, geom.Vec3{Y: c.y0, Z: 90}, geom.Vec3{X: 96, Y: c.y1, Z: 99.25})
		ledger.Section = plan.Lumber{Ply: 1, Breadth: 1.5, Depth: 9.25}
		house := &framing.House{Plan: &plan.Plan{}, Members: []*framing.Member{stud, ledger}}
		j := &framing.Joint{Kind: plan.LedgerWall, Wall: wall, Station: 40, At: geom.Vec3{X: 40, Y: c.face, Z: 94.625}, Members: []*framing.Member{ledger, stud}}
		for k, z := range []float64{94.625 - 1.5625, 94.625 + 1.5625} {
			lie, fault := (&placer{world: newWorld(house)}).crossing(want{joint: j, item: item, k: k, n: 2})
			assert.Nil(t, fault)
			assert.InDelta(t, 0, lie.Rod.A.Sub(geom.Vec3{X: 40, Y: c.head, Z: z}).Len(), 1e-9, "%v", lie.Rod.A)
			assert.InDelta(t, 0, lie.Rod.B.Sub(geom.Vec3{X: 40, Y: c.tip, Z: z}).Len(), 1e-9, "%v", lie.Rod.B)
			assert.Equal(t, []*framing.Member{ledger, stud}, lie.Members())
			assert.InDelta(t, 1.5, lie.Laid[0].Room, 1e-9)
			assert.InDelta(t, 5.5, lie.Laid[1].Room, 1e-9)
			assert.InDelta(t, 40, lie.Station, 1e-9)
		}
	}
}

// A clip at an outlooker along x, 1 1/2 in thick: at its outer end on the inner side of the
// fly rafter, 22.5, at its inner end on the outer side of the rafter there, 1.5; over the wall
// on the inner side, 10, unless outside is asked for; on the lower edge first, then the upper.
func TestWhichCornerOfAnOutlooker(t *testing.T) {
	o := boxed("outlooker", "outlooker", geom.Vec3{Y: -2.75, Z: 98.5}, geom.Vec3{X: 24, Y: 2.75, Z: 100})
	o.Section = plan.Lumber{Ply: 1, Breadth: 1.5, Depth: 5.5}
	o.A, o.B = geom.Vec3{Z: 100}, geom.Vec3{X: 24, Z: 100}
	on := func(x float64) *framing.Member {
		return boxed("on", plan.Rafter, geom.Vec3{X: x, Y: -50, Z: 92}, geom.Vec3{X: x + 1.5, Y: 50, Z: 98.5})
	}
	for _, c := range []struct {
		name      string
		carrier   float64
		at        float64
		face      plan.Face
		k         int
		x, toward float64
	}{
		{"fly rafter", 22.5, 24, "", 0, 22.5, -1},
		{"fly rafter, outside", 22.5, 24, plan.Outside, 0, 22.5, -1},
		{"inner rafter", 0, 0, "", 0, 1.5, 1},
		{"over the wall", 10, 10.75, "", 0, 10, -1},
		{"over the wall, outside", 10, 10.75, plan.Outside, 0, 11.5, 1},
		{"the second of two", 10, 10.75, "", 1, 10, -1},
	} {
		s := slopeOf(o, on(c.carrier), geom.Vec3{X: c.at, Z: 98.5}, want{face: c.face, k: c.k, n: 2})
		assert.InDelta(t, c.x, s.corner.X, 1e-9, c.name)
		assert.InDelta(t, 0, s.face.Sub(geom.Vec3{X: c.toward}).Len(), 1e-9, c.name)
		assert.InDelta(t, 2.75, math.Abs(s.corner.Y), 1e-9, c.name)
		assert.Equal(t, s.corner.Y > 0, s.edge.Y > 0, c.name)
		assert.InDelta(t, 1, s.normal.Z, 1e-9, c.name)
		assert.InDelta(t, 1.5, s.thick, 1e-9, c.name)
		first := slopeOf(o, on(c.carrier), geom.Vec3{X: c.at, Z: 98.5}, want{face: c.face, n: 2})
		assert.Equal(t, c.k == 0, first.edge == s.edge, "%s: two lie on the two edges", c.name)
	}
}

// On a roof of 3 in 4 the lower edge of an outlooker comes first, the upper second; with a
// face asked for, that on its left or right as seen from outside, looking back at the house:
// south is on the left of who looks west.
func TestTheLowerEdgeOfAnOutlookerComesFirst(t *testing.T) {
	up, n := geom.Vec3{Y: 0.8, Z: 0.6}, geom.Vec3{Y: -0.6, Z: 0.8} // up the roof, out of it
	a := geom.Vec3{Z: 100}
	o := &framing.Member{
		A: a, B: a.Add(geom.Vec3{X: 24}), Section: plan.Lumber{Ply: 1, Breadth: 1.5, Depth: 5.5},
		Solid: []geom.Solid{geom.Box(a.Sub(up.Mul(2.75)).Sub(n.Mul(1.5)), geom.Vec3{X: 24}, up.Mul(5.5), n.Mul(1.5))},
	}
	on := boxed("on", plan.Rafter, geom.Vec3{X: 22.5, Y: -50, Z: 50}, geom.Vec3{X: 24, Y: 50, Z: 98.5})
	for _, c := range []struct {
		w     want
		lower bool
	}{
		{want{n: 1}, true},
		{want{n: 2, k: 1}, false},
		{want{n: 2, other: true}, false},
		{want{n: 2, other: true, k: 1}, true},
		{want{face: plan.Left}, true},
		{want{face: plan.Right}, false},
		{want{face: plan.Outside}, true},
	} {
		s := slopeOf(o, on, a.Add(geom.Vec3{X: 24}), c.w)
		assert.Equal(t, c.lower, s.edge.Z < 0, "%+v", c.w)
		assert.InDelta(t, 0, s.normal.Sub(n).Len(), 1e-9)
		assert.InDelta(t, 2.75, s.corner.Sub(a.Add(geom.Vec3{X: 22.5})).Dot(s.edge), 1e-9)
	}
}

// A clip on a rafter that lies along a rake wall's plate, both climbing 3 in 4: over the middle
// of the wall's length, 40 in on, the plate's middle line is at 130 and its top 3/4 in square to
// it, 15/16 plumb, higher; on the side where both are flush, half of it on each.
func TestAClipOnARafterAlongItsPlate(t *testing.T) {
	run := geom.Vec3{X: 80, Z: 60}
	sloping := func(y0, y1 float64) *framing.Member {
		return &framing.Member{
			A: geom.Vec3{Y: 2.75, Z: 100}, B: geom.Vec3{X: 80, Y: 2.75, Z: 160}, Section: plan.Lumber{Ply: 1, Breadth: 1.5, Depth: 5.5},
			Solid: []geom.Solid{geom.Box(geom.Vec3{Y: y0, Z: 99}, run, geom.Vec3{Y: y1 - y0}, geom.Vec3{Z: 1.875})},
		}
	}
	plate := sloping(0, 5.5)
	wall := &plan.Wall{To: geom.Vec2{X: 80}, Studs: two6}
	w := want{item: itemsOf(t, plan.Item{Mark: "c", Kind: plan.ClipItem, Length: 4, Width: 1.5, Gauge: "17 ga", Fasteners: nails("each leg", 3, 2)}), n: 1}
	for _, c := range []struct {
		y0, y1, y, n float64
		ok           bool
	}{{0, 1.5, 0, -1, true}, {4, 5.5, 5.5, 1, true}, {2, 3.5, 0, 0, false}} {
		w.joint = &framing.Joint{Wall: wall, At: geom.Vec3{X: 40, Y: 1, Z: 131}}
		l, ok := (&placer{world: newWorld(&framing.House{Plan: &plan.Plan{}})}).lengthways(w, sloping(c.y0, c.y1), plate)
		assert.Equal(t, c.ok, ok, "%+v", c)
		if !ok {
			continue
		}
		fold := geom.Vec3{X: 40, Y: c.y, Z: 130.9375}
		for what, d := range map[string][2]geom.Vec3{
			"foot": {l.Bands[0][0].A, fold.Sub(geom.Vec3{Z: 2})}, "fold": {l.Bands[0][0].B, fold}, "head": {l.Bands[0][1].B, fold.Add(geom.Vec3{Z: 2})}, "normal": {l.Bands[0][1].N, {Y: c.n}},
		} {
			assert.InDelta(t, 0, d[0].Sub(d[1]).Len(), 1e-9, "%s: %v", what, d[0])
		}
		assert.Equal(t, plan.Outside, l.Face)
		assert.InDelta(t, 40, l.Station, 1e-9)
	}
}

// A place at a jack means the one across the hip too, which stands at the same station; at a ridge
// it means its own joint, and so does one at a jack that stands alone.
func TestAPlaceMeansTheJacksOnBothSides(t *testing.T) {
	joint := func(role plan.Role, station float64) *framing.Joint {
		return &framing.Joint{Kind: plan.RafterRidge, Host: "H", Station: station, Members: []*framing.Member{{Role: plan.Rafter}, {Role: role}}}
	}
	a, b, alone := joint(plan.ValleyRafter, 27.25), joint(plan.ValleyRafter, 27.25), joint(plan.ValleyRafter, 50)
	c, d := joint(plan.Ridge, 27.25), joint(plan.HipRafter, 27.25)
	x := &placer{world: &world{byHost: map[hostKind][]*framing.Joint{{"H", plan.RafterRidge}: {a, b, alone, c}}}}
	assert.Equal(t, []*framing.Joint{a, b}, x.bothSides(a))
	assert.Len(t, x.bothSides(alone), 1)
	assert.Equal(t, []*framing.Joint{c}, x.bothSides(c))
	assert.Equal(t, []*framing.Joint{d}, x.bothSides(d))
	assert.Empty(t, x.bothSides(nil))
}
