package framing

import (
	"math"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"galewright/plan"
	"galewright/plan/geom"
	"galewright/plan/plantest"
	"galewright/plan/roofplan"
)

// emptyFrame is a roof without anything in it yet, over one level.
func emptyFrame() (*roofFrame, *roofBody) {
	p := stories(1)
	f := &roofFrame{builder: newBuilder(p), level: p.Levels[0]}
	return f, &roofBody{Roof: &plan.Roof{Name: "main", Spacing: 16}, body: &roofplan.Body{Axis: plan.AxisX}}
}

// bedOn is the top of a wall of 2x6 from a to z, one upper plate over all of it; the tape
// hooks 5.5 in before a, so that a is at station 5.5.
func bedOn(name string, a, z geom.Vec2) *bed {
	w := &framedWall{Wall: &plan.Wall{Name: name, From: a, To: z, Studs: twoBySix, Hook: 5.5}}
	w.frame = w.Frame()
	w.s1 = w.Length()
	w.caps = []*Member{{ID: name + "/cap", Role: plan.UpperPlate, S1: w.s1}}
	return &bed{wall: w, frame: w.frame, z: 100, column: w.frame.Box(0, w.s1, 0, 5.5, -0.5, 0.5)}
}

// A rafter northward from y = 0 is joined to each wall it crosses on more than half an inch;
// to one that it runs along it is not. A hip or valley bears on a corner: it has one joint,
// on the wall under more of it, the one written first where they are alike to the hundredth,
// however short that is.
func TestWhichPlatesARafterIsJoinedTo(t *testing.T) {
	v := func(x, y float64) geom.Vec2 { return geom.Vec2{X: x, Y: y} }
	north, hip := bar{at: v(50, 0), dir: v(0, 1)}, bar{at: v(50, 0), dir: v(math.Sqrt2/2, math.Sqrt2/2)}
	first, second := bedOn("A", v(0, 0), v(200, 0)), bedOn("B", v(0, 60), v(200, 60))
	along := bedOn("C", v(50, 0), v(50, 200))
	porch := &bed{porch: &plan.Porch{Name: "P"}, frame: geom.NewFrame(v(0, 30), v(200, 30))}
	for _, c := range []struct {
		name   string
		bar    bar
		seats  []bearing
		corner bool
		want   []string
	}{
		{"none", north, nil, false, nil},
		{"one", north, []bearing{{notch{0, 3, 100}, first}}, false, []string{"A"}},
		{"two", north, []bearing{{notch{0, 3, 100}, first}, {notch{60, 63, 100}, second}}, false, []string{"A", "B"}},
		{"half an inch is none", north, []bearing{{notch{0, 0.5, 100}, first}, {notch{60, 60.6, 100}, second}}, false, []string{"B"}},
		{"along the wall", north, []bearing{{notch{0, 100, 100}, along}}, false, nil},
		{"a porch without a beam", north, []bearing{{notch{30, 33, 100}, porch}}, false, nil},
		{"a hip on a hair", hip, []bearing{{notch{0, 0.3, 100}, first}}, true, []string{"A"}},
		{"a hip where it is longer", hip, []bearing{{notch{0, 3, 100}, first}, {notch{0, 4, 100}, along}}, true, []string{"C"}},
		{"a hip where they are alike", hip, []bearing{{notch{0, 3, 100}, first}, {notch{0, 3.004, 100}, along}}, true, []string{"A"}},
	} {
		t.Run(c.name, func(t *testing.T) {
			f, rb := emptyFrame()
			m := &Member{Role: plan.Rafter}
			assert.Equal(t, len(c.want) > 0, f.plateJoint(m, c.bar, c.seats, rb, c.corner))
			var got []string
			for _, j := range f.joints {
				got = append(got, j.Host)
				assert.Same(t, m, j.First())
				assert.Equal(t, j.Host+"/cap", j.Members[1].ID)
				assert.Equal(t, plan.RafterPlate, j.Kind)
			}
			assert.Equal(t, c.want, got)
			assert.Len(t, f.house.Joints, len(c.want))
		})
	}
}

// The joint is over the middle of the seat, at its height: from 10 to 16 along a rafter that
// comes in at x = 50 that is y = 13. A valley that comes down past the end of a wall is tied
// at that end; before its first stud likewise.
func TestWhereARafterIsJoined(t *testing.T) {
	v := func(x, y float64) geom.Vec2 { return geom.Vec2{X: x, Y: y} }
	b := bedOn("A", v(0, 10), v(200, 10))
	for x, station := range map[float64]float64{50: 55.5, 204: 205.5, -2: 5.5} {
		f, rb := emptyFrame()
		require.True(t, f.bearingJoint(&Member{}, bar{at: v(x, 0), dir: v(0, 1)}, bearing{notch{10, 16, 100}, b}, rb))
		j := f.joints[0]
		assert.InDelta(t, station, j.Station, 1e-9)
		plantest.Near(t, []float64{x, 13, 100}, []float64{j.At.X, j.At.Y, j.At.Z}, 1e-9)
		assert.Same(t, f.level, j.Level)
		assert.Same(t, rb.Roof, j.Roof)
		assert.Same(t, b.wall.Wall, j.Wall)
	}
	f, rb := emptyFrame()
	b.wall.caps = nil
	assert.False(t, f.bearingJoint(&Member{}, bar{at: v(50, 0), dir: v(0, 1)}, bearing{notch{10, 16, 100}, b}, rb), "there is no plate")
	assert.Empty(t, f.joints)
}

// Where two porches meet at a corner, a rafter is joined to the beam of the porch it bears on,
// not to the other's that touches it there.
func TestARafterIsJoinedToTheBeamOfItsPorch(t *testing.T) {
	v := func(x, y float64) geom.Vec2 { return geom.Vec2{X: x, Y: y} }
	f, rb := emptyFrame()
	beam := func(id string, lo, hi geom.Vec3) *Member {
		return f.member(&Member{ID: id, Role: plan.Beam, A: lo, B: hi, Solid: []geom.Solid{geom.Box(lo, geom.Vec3{X: hi.X - lo.X}, geom.Vec3{Y: hi.Y - lo.Y}, geom.Vec3{Z: hi.Z - lo.Z})}})
	}
	f.member(&Member{ID: "A/porch post@0", Role: plan.PorchPost, Solid: []geom.Solid{geom.Box(geom.Vec3{}, geom.Vec3{X: 5}, geom.Vec3{Y: 5}, geom.Vec3{Z: 100})}})
	side := beam("B/beam@0", geom.Vec3{X: -3, Z: 90}, geom.Vec3{Y: 120, Z: 100})
	front := beam("A/beam@0", geom.Vec3{Z: 90}, geom.Vec3{X: 200, Y: 3, Z: 100})
	for _, c := range []struct {
		porch    string
		from, to geom.Vec2
		at       float64
		want     *Member
	}{
		{"A", v(0, 0), v(200, 0), 100, front},
		{"A", v(0, 0), v(200, 0), 0.75, front}, // 3/4 in from the side's beam
		{"B", v(-3, 120), v(-3, 0), 119.25, side},
	} {
		f.joints = nil
		b := &bed{porch: &plan.Porch{Name: c.porch}, frame: geom.NewFrame(c.from, c.to)}
		m := &Member{Role: plan.Rafter}
		r := bar{at: c.from.Add(b.frame.D.Mul(c.at)), dir: b.frame.In} // over the beam at a station
		require.True(t, f.bearingJoint(m, r, bearing{notch{0, 3, 100}, b}, rb))
		j := f.joints[0]
		assert.Equal(t, c.porch, j.Host)
		assert.Equal(t, []*Member{m, c.want}, j.Members)
		assert.Nil(t, j.Level)
		assert.Nil(t, j.Wall)
	}
}

// A rake wall from (0, 100) to (0, 0), 5.5 deep toward x = 5.5, carries the end of a flush
// rafter that runs north from y = 0 to y = 100 at x = 0.75: the joint lies at the rafter's
// underside, over the end that p is near. Beside the wall and past its ends there is none.
func TestTheEndOfARafterOnARakeWall(t *testing.T) {
	v := func(x, y float64) geom.Vec2 { return geom.Vec2{X: x, Y: y} }
	for _, c := range []struct {
		name  string
		p     geom.Vec2
		joint bool
		at    geom.Vec3 // 8 in under the top, which climbs from 200 by half an inch an inch
	}{
		{"near its low end", v(0.75, 1), true, geom.Vec3{X: 0.75, Y: 0, Z: 192}},
		{"short of the middle", v(0.75, 49), true, geom.Vec3{X: 0.75, Y: 0, Z: 192}},
		{"near its high end", v(0.75, 96), true, geom.Vec3{X: 0.75, Y: 96, Z: 240}},
		{"outside the wall's face", v(-0.1, 50), false, geom.Vec3{}},
		{"inside its face", v(5.6, 50), false, geom.Vec3{}},
		{"past its end", v(0.75, -0.1), false, geom.Vec3{}},
		{"before its line, where the tape hooks", v(0.75, 100.1), false, geom.Vec3{}},
	} {
		t.Run(c.name, func(t *testing.T) {
			f, rb := emptyFrame()
			b := bedOn("R", v(0, 100), v(0, 0))
			require.InDelta(t, 1, b.frame.In.X, 1e-9)
			f.rakes = []*rakeBed{{b.wall, b.column}}
			r := &roofRafter{bar: bar{at: v(0.75, 0), dir: v(0, 1), top: 200, rise: 0.5, depth: 8 / cosInv(0.5)}, owner: rb}
			r.member = &Member{A: r.point(0), B: r.point(100)}
			f.rakeEnd(r, c.p)
			if !c.joint {
				require.Empty(t, f.joints)
				return
			}
			require.Len(t, f.joints, 1)
			j := f.joints[0]
			assert.InDelta(t, 0, j.At.Sub(c.at).Len(), 1e-9, "%v", j.At)
			assert.InDelta(t, 105.5-c.p.Y, j.Station, 1e-9)
			assert.Equal(t, "R", j.Host)
			assert.Same(t, rb.Roof, j.Roof)
		})
	}
}

// Without overhangs rafters end at the walls' outside faces, over the ends of the rake walls;
// each pair has one joint on each eave wall all the same, at 0.75, 16, 32 ... 224 and 239.25:
// 16, and none on a rake wall.
func TestRaftersWithoutOverhangAreTiedOnceAtEachEave(t *testing.T) {
	h := roofed(t, simple(7, 1.75, 0, 240))
	n := map[string]int{}
	for _, j := range h.Joints {
		if j.Kind == plan.RafterPlate {
			n[j.Host]++
		}
	}
	assert.Equal(t, map[string]int{"1A": 16, "1C": 16}, n)
}

// The upper plate at a station counts, where it stops short the lower, and past the ends of
// both the upper one whose end is within the wall's depth, 5.5 and half an inch.
func TestThePlateUnderAStation(t *testing.T) {
	upper, lower := &Member{S0: 5.5, S1: 100}, &Member{S0: 0, S1: 110}
	w := &framedWall{Wall: &plan.Wall{Studs: twoBySix}, caps: []*Member{upper}, plates: []*Member{lower}}
	for s, want := range map[float64]*Member{5.5: upper, 50: upper, 100: upper, 5.4: lower, 105: lower, 110: lower, 111: nil, -0.4: upper, -0.6: nil} {
		assert.Same(t, want, w.plateUnder(s), "%v", s)
	}
	w.plates = nil
	for s, want := range map[float64]*Member{105.9: upper, 106.1: nil} {
		assert.Same(t, want, w.plateUnder(s), "%v", s)
	}
}

// What lies within a tenth of an inch of a ridge from (0, 100) to (100, 100) is on it.
func TestWhatLiesOnARidge(t *testing.T) {
	l := run(roofplan.Ridge, geom.Vec2{Y: 100}, geom.Vec2{X: 100, Y: 100})
	for p, want := range map[geom.Vec2]bool{
		{Y: 100}: true, {X: 100, Y: 100}: true, {X: 50, Y: 100.09}: true, {X: 50, Y: 100.11}: false,
		{X: -0.09, Y: 100}: true, {X: -0.11, Y: 100}: false, {X: 100.09, Y: 100}: true, {X: 100.11, Y: 100}: false,
	} {
		assert.Equal(t, want, l.holds(p), "%v", p)
	}
}
