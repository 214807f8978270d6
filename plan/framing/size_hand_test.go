package framing

import (
	"testing"

	"galewright/plan"
	"galewright/plan/geom"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"
)

// roofedPlan is a story of 30 by 20 ft, plates at 120 + 109.125 = 229.125, with roofs.
func roofedPlan(roofs ...*plan.Roof) *House {
	p := stories(1)
	ring(p, 0, rect(0, 0, 360, 240)...)
	wall(p, "inner", 0, geom.Vec2{X: -500, Y: 60}, geom.Vec2{X: 900, Y: 60}) // of no account: it is interior
	for _, r := range roofs {
		r.Over = p.Levels[0]
	}
	p.Roofs = roofs
	return &House{Plan: p}
}

// A gable of 6 in 12 over 240 in rises 60 in: the ridge is at 289.125, the mean roof height
// half way, 259.125. At 2 in 12, 9.46 degrees, it is the eave's; at 2.2, 10.39 degrees, half
// of 22 over it (ASCE 7-16 26.2, from memory). A shed rises over all of its width.
func TestTheSizeOfAHouseInTheWind(t *testing.T) {
	const eave = 229.125
	area := [2]geom.Vec2{{}, {X: 360, Y: 240}}
	for name, c := range map[string]struct {
		roof                *plan.Roof
		length, width, mean float64
	}{
		"ridge along x":    {&plan.Roof{Kind: plan.GableRoof, Ridge: plan.AxisX, Pitch: 6, Area: area}, 360, 240, eave + 30},
		"ridge along y":    {&plan.Roof{Kind: plan.GableRoof, Ridge: plan.AxisY, Pitch: 6, Area: area}, 240, 360, eave + 45},
		"a low pitch":      {&plan.Roof{Kind: plan.GableRoof, Ridge: plan.AxisX, Pitch: 2, Area: area}, 360, 240, eave},
		"just over 10 deg": {&plan.Roof{Kind: plan.HipRoof, Ridge: plan.AxisX, Pitch: 2.2, Area: area}, 360, 240, eave + 11},
		"a shed":           {&plan.Roof{Kind: plan.ShedRoof, Ridge: plan.AxisX, Pitch: 3, Area: area}, 360, 240, eave + 30},
	} {
		got := roofedPlan(c.roof).Size()
		assert.Same(t, c.roof, got.Main, name)
		assert.InDelta(t, c.length, got.Length, 1e-9, name)
		assert.InDelta(t, c.width, got.Width, 1e-9, name)
		assert.InDelta(t, eave, got.Eave, 1e-9, name)
		assert.InDelta(t, c.mean, got.Mean, 1e-9, name)
	}
}

// The main roof is the largest; where its faces are framed their highest point is the
// ridge. Without a roof the longer side is the length and the highest plates are the eave;
// without walls there is no size.
func TestTheSizeOfAHouseWithoutARoof(t *testing.T) {
	small := &plan.Roof{Kind: plan.GableRoof, Ridge: plan.AxisY, Pitch: 12, Area: [2]geom.Vec2{{X: 100}, {X: 200, Y: 300}}}
	large := &plan.Roof{Kind: plan.GableRoof, Ridge: plan.AxisX, Pitch: 6, Area: [2]geom.Vec2{{}, {X: 360, Y: 240}}}
	h := roofedPlan(small, large)
	h.Roof = []*Face{
		{Roof: large, Outline: []geom.Vec3{{Z: 230}, {X: 1, Z: 269.125}, {Y: 1, Z: 240}}},
		{Roof: large, Outline: []geom.Vec3{{Z: 250}}},
		{Roof: small, Outline: []geom.Vec3{{Z: 400}}},
	}
	assert.Same(t, large, h.Size().Main)
	assert.InDelta(t, 269.125, h.RidgeHeight(large), 1e-9)
	assert.InDelta(t, 249.125, h.Size().Mean, 1e-9)

	p := stories(2)
	ring(p, 0, rect(0, 0, 240, 360)...)
	bare := (&House{Plan: p}).Size()
	assert.Nil(t, bare.Main)
	assert.Equal(t, [2]float64{360, 240}, [2]float64{bare.Length, bare.Width})
	assert.InDelta(t, 120+2*109.125+10, bare.Eave, 1e-9)
	assert.InDelta(t, bare.Eave, bare.Mean, 1e-9)
	p.Walls, p.Levels = nil, nil
	assert.Equal(t, Size{}, (&House{Plan: p}).Size())
}

// How wide a building is for its header table: its exterior walls on the level square to
// the ridge, the shorter way where no roof tells.
func TestTheWidthOfABuilding(t *testing.T) {
	for _, c := range []struct {
		ridges []plan.Axis
		want   float64
	}{{nil, 240}, {[]plan.Axis{plan.AxisX}, 240}, {[]plan.Axis{plan.AxisY}, 360}, {[]plan.Axis{"", plan.AxisY}, 360}, {[]plan.Axis{plan.AxisX, plan.AxisY}, 240}} {
		p := stories(2)
		b := newBuilder(p)
		for _, w := range append(ring(p, 0, rect(0, 0, 360, 240)...), ring(p, 1, rect(0, 0, 50, 60)...)...) {
			b.walls = append(b.walls, &framedWall{Wall: w})
		}
		b.walls = append(b.walls, &framedWall{Wall: wall(p, "inner", 0, geom.Vec2{X: -90}, geom.Vec2{X: 900, Y: 900})})
		for _, r := range c.ridges {
			p.Roofs = append(p.Roofs, &plan.Roof{Ridge: r})
		}
		assert.InDelta(t, c.want, b.measureWidth(p.Levels[0]), 1e-9, "%v", c.ridges)
		w := &framedWall{Wall: p.Walls[0]}
		assert.InDelta(t, c.want, b.buildingWidth(w), 1e-9)
		p.Roofs = []*plan.Roof{{Ridge: plan.AxisY}}
		assert.InDelta(t, c.want, b.buildingWidth(w), 1e-9, "measured once")
	}
}

// A bay with a window from 40 to 80 (header's ends 38.5 and 81.5), its sill at 150, which is
// 1 1/2 in thick, and the header's top at 210.
func TestABayWithoutAnOpening(t *testing.T) {
	w := &framedWall{openings: []*framedOpening{{h0: 38.5, h1: 81.5, sill: 150, top: 210}}}
	for _, c := range []struct {
		lo, hi, z0, z1 float64
		solid          bool
	}{
		{20, 38.5, 120, 220, true},
		{20, 39, 120, 220, false},
		{81.5, 96, 120, 220, true},
		{81, 96, 120, 220, false},
		{50, 64, 211, 220, true},
		{50, 64, 209, 220, false},
		{50, 64, 120, 148, true},
		{50, 64, 120, 149, false},
		{0, 200, 120, 220, false},
	} {
		assert.Equal(t, c.solid, w.solidBay(c.lo, c.hi, c.z0, c.z1), "%+v", c)
	}
	assert.True(t, (&framedWall{}).solidBay(0, 96, 0, 200))
}

// A notch may take half of a pile 7 1/2 in thick, 3 3/4 in, and a sixteenth or so; more is
// told once of a girder.
func TestADeepNotchIsToldOnce(t *testing.T) {
	pile := plan.Lumber{Ply: 1, Breadth: 7.5, Depth: 7.5}
	for _, c := range []struct {
		deep float64
		told int
	}{{3, 0}, {3.75, 0}, {3.75 + near, 1}, {4.5, 1}} {
		b := newBuilder(stories(1))
		g := &framedGirder{Girder: &plan.Girder{Name: "G", Seat: plan.SeatNotch, Notch: c.deep}}
		b.checkNotch(g, pile)
		b.checkNotch(g, pile)
		require.Len(t, b.faults, c.told, "%v", c.deep)
	}
	b := newBuilder(stories(1))
	b.checkNotch(&framedGirder{Girder: &plan.Girder{Name: "G", Seat: plan.SeatNotch, Member: plan.Lumber{Ply: 3, Breadth: 1.5}}}, pile)
	assert.Equal(t, plan.Code("notch-past-half"), b.faults[0].Code)
	assert.Contains(t, b.faults[0].Summary, `girder G: its notch of 4 1/2" leaves 3" of piles 7 1/2" thick, less than half`)
	// Of both faces the wood between counts: 7 1/2 less two seats of 2 1/4.
	b = newBuilder(stories(1))
	b.checkNotch(&framedGirder{Girder: &plan.Girder{Name: "G", Seat: plan.SeatAstride, Notch: 2.25}}, pile)
	assert.Contains(t, b.faults[0].Summary, `girder G: its seats of 2 1/4" in both faces leave 3" of piles 7 1/2" thick, less than half`)
}

// Whether a floor lies over a place: within an outline and not in a hole of it, on a level
// above the wall's top.
func TestWhatIsUnderAFloor(t *testing.T) {
	p := stories(2)
	b := newBuilder(p)
	loop := func(pts ...geom.Vec2) (out []edge) {
		for i, a := range pts {
			z := pts[(i+1)%len(pts)]
			out = append(out, edge{w: &framedWall{Wall: &plan.Wall{From: a, To: z}, frame: geom.NewFrame(a, z)}})
		}
		return out
	}
	well := []geom.Vec2{{X: 100, Y: 100}, {X: 150, Y: 100}, {X: 150, Y: 150}, {X: 100, Y: 150}}
	b.loops[p.Levels[1]] = [][]edge{loop(rect(0, 0, 360, 240)...), loop(well...)}
	low := &framedWall{Wall: &plan.Wall{Level: p.Levels[0], ToLevel: p.Levels[0]}}
	high := &framedWall{Wall: &plan.Wall{Level: p.Levels[0], ToLevel: p.Levels[1]}}
	d := &deck{inner: [][]geom.Vec2{rect(0, 0, 360, 240), well}}
	for _, c := range []struct {
		at   geom.Vec2
		want bool
	}{{geom.Vec2{X: 50, Y: 50}, true}, {geom.Vec2{X: 120, Y: 120}, false}, {geom.Vec2{X: 400, Y: 50}, false}} {
		assert.Equal(t, c.want, b.floored(low, c.at), "%v", c.at)
		assert.False(t, b.floored(high, c.at), "it goes past that floor")
		w := &framedWall{Wall: &plan.Wall{From: c.at.Sub(geom.Vec2{X: 10}), To: c.at.Add(geom.Vec2{X: 10}), Studs: plan.Lumber{Ply: 1, Breadth: 1.5}}}
		w.frame = geom.NewFrame(w.From, w.To)
		assert.Equal(t, c.want, d.covers(w), "%v", c.at)
	}
}

// The members at one end of a wall's upper plates, and those that are there at all.
func TestCapsNearAnEnd(t *testing.T) {
	a, b := &Member{ID: "a"}, &Member{ID: "b"}
	w := &framedWall{caps: []*Member{a, b}}
	assert.Same(t, a, nearCap(w, false))
	assert.Same(t, b, nearCap(w, true))
	assert.Nil(t, nearCap(&framedWall{}, true))
	assert.Nil(t, present(nil))
	assert.Equal(t, []*Member{a}, present(a))
}

// The stud of a post that faces its segment: of three tight ones from the wall's end the one
// farthest in, of as many as count; a stud of the module beyond a gap is not of the post.
func TestTheInnermostStudOfAPost(t *testing.T) {
	var list []*Member
	for _, s := range []float64{20, 21.5, 23, 26} {
		list = append(list, &Member{Role: plan.Stud, S0: s, S1: s + 1.5})
	}
	w := &framedWall{uprights: list}
	for _, c := range []struct{ from, n, want int }{{0, 1, 0}, {0, 2, 1}, {0, 3, 2}, {0, 4, 2}, {3, 3, 3}} {
		assert.Same(t, list[c.want], w.innermost(list[c.from], -1, c.n), "%+v", c)
	}
	assert.Same(t, list[0], w.innermost(list[2], 1, 5), "from the other end")
	assert.Same(t, list[3], w.innermost(list[3], 1, 2), "what stands beside it stands apart")
}
