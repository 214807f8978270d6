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
		{geom.Vec2{X: 25, Y: 25}, false}, {geom.Vec2{X: 25, Y: 75}, false}, {geom.Vec2{X: 75, Y: 25}, false}, {geom.Vec2{X: 75, Y: 75}, true},
		{geom.Vec2{X: -5, Y: 25}, true}, {geom.Vec2{X: 105, Y: 25}, true}, {geom.Vec2{X: 25, Y: -5}, true}, {geom.Vec2{X: 25, Y: 105}, true}, {geom.Vec2{X: 120, Y: 130}, true},
	} {
		assert.Equal(t, c.out, beyond(walls(true, l), l, c.p), "%v", c.p)
		assert.False(t, beyond(walls(false, l), l, c.p), "partitions bound no floor")
		assert.False(t, beyond(walls(true, other), l, c.p), "nor do walls of another level")
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
		{plan.PlateSplice, 40, true}, {plan.PlateSplice, 20, false}, {plan.Collector, 60, true}, {plan.Collector, 20, false},
		{plan.Collector, 80, false}, {plan.Collector, 96, true}, {plan.Collector, 99, false},
	} {
		m := &framing.Member{A: geom.Vec3{X: 10}, B: geom.Vec3{X: 50}}
		j := &framing.Joint{Kind: c.kind, Wall: wall, At: geom.Vec3{X: c.at}, Members: []*framing.Member{m}}
		assert.Equal(t, c.want, firstAtStart(j, f), "%s at %v", c.kind, c.at)
	}
}
