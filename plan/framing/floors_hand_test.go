package framing

import (
	"slices"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"galewright/plan"
	"galewright/plan/geom"
)

// A stud over a wall with studs at 16 in stands over the nearest within half a space and half
// a stud, 8.75; farther off, and over no opening's header, there is nothing below.
func TestHowFarOffAStudBelowMayStand(t *testing.T) {
	for off, below := range map[float64]bool{0: true, 8.75: true, -8.75: true, 8.76: false, -9: false} {
		hit := &Member{Role: plan.Stud, S0: 49.25, S1: 50.75, Z1: 200}
		low := &framedWall{Wall: &plan.Wall{Spacing: 16, Studs: twoBySix}, s1: 100, head: 200, uprights: []*Member{hit}}
		up := &framedWall{Wall: &plan.Wall{Studs: twoBySix}}
		m := &Member{Role: plan.Stud, Z0: 214.5}
		f := (&builder{}).onWall(up, low, m, 50+off)
		assert.Equal(t, below, f.below, "%v", off)
		assert.Equal(t, plan.StudStud, f.kind)
		assert.InDelta(t, -off, f.offset, 1e-9)
		assert.InDelta(t, 14.5, f.gap, 1e-9)
		if below {
			assert.Same(t, hit, f.member)
		} else {
			assert.Nil(t, f.member)
		}
	}
}

// Over an opening from 50 to 90 that has kings at 49.25 and 90.75 a stud stands on a king as long as
// the middles are no farther apart than a stud is thick, else on the header, whose top is 4 under the
// studs'. Where the opening has no header it is the king, half a stud space off.
func TestAStudOverAnOpeningStandsOnItsHeader(t *testing.T) {
	first, second, header := &Member{Role: plan.King, S0: 48.5, S1: 50, Z1: 200}, &Member{Role: plan.King, S0: 90, S1: 91.5, Z1: 200}, &Member{Role: plan.Header}
	low := &framedWall{Wall: &plan.Wall{Spacing: 16, Studs: twoBySix}, s1: 140, head: 200}
	up := &framedWall{Wall: &plan.Wall{Studs: twoBySix}}
	for _, c := range []struct {
		s      float64
		kings  []*Member
		header *Member
		want   *Member
		offset float64
		gap    float64
	}{
		{49.25, []*Member{first, second}, header, first, 0, 14.5},
		{50.7, []*Member{first, second}, header, first, -1.45, 14.5},
		{50.8, []*Member{first, second}, header, header, 0, 18.5},
		{70, []*Member{first, second}, header, header, 0, 18.5},
		{89.2, []*Member{first, second}, header, header, 0, 18.5},
		{89.3, []*Member{first, second}, header, second, 1.45, 14.5},
		{47, []*Member{first, second}, header, first, 2.25, 14.5}, // beside the opening
		{93, []*Member{first, second}, header, second, -2.25, 14.5},
		{55, []*Member{first, second}, nil, first, -5.75, 14.5},
		{70, []*Member{first, second}, nil, nil, -20.75, 14.5},
		{70, nil, header, header, 0, 18.5},
		{40, nil, header, nil, 0, 14.5},
		{100, nil, header, nil, 0, 14.5},
		{70, nil, nil, nil, 0, 14.5},
	} {
		low.uprights = c.kings
		low.openings = []*framedOpening{{h0: 50, h1: 90, top: 196, header: c.header}}
		f := (&builder{}).onWall(up, low, &Member{Role: plan.Stud, Z0: 214.5}, c.s)
		assert.Equal(t, plan.StudStud, f.kind)
		assert.Same(t, c.want, f.member, "%v", c)
		assert.Equal(t, c.want != nil, f.below, "%v", c)
		assert.InDelta(t, c.offset, f.offset, 1e-9, "%v", c)
		assert.InDelta(t, c.gap, f.gap, 1e-9, "%v", c)
	}
}

// Without a section of piles none are set, and no girder is tied to one.
func TestGirdersWithoutPiles(t *testing.T) {
	p := elevated(1)
	p.Foundation.Pile = plan.Lumber{}
	h := frame(t, p)
	for _, m := range h.Members {
		assert.NotEqual(t, plan.Pile, m.Role, m.ID)
	}
	for _, j := range h.Joints {
		assert.NotEqual(t, plan.GirderPile, j.Kind, j.ID)
	}
	assert.True(t, slices.ContainsFunc(h.Members, func(m *Member) bool { return m.Role == plan.GirderBeam }))
}

// A wall from 0 to 60 that passes a floor from 100 to 109 has blocks in its bays from 100 to 101-1/2: between
// studs at 0, 16 and 40 and the wall's end at 60, but not in a crack of a fifth of an inch beside the post at
// 41.7, under a window from 42 to 58 whose sill is at 90, or at a cripple that ends in the block's height.
func TestBlocksInTheBaysOfAWallThatPassesAFloor(t *testing.T) {
	p := stories(2)
	w := &framedWall{Wall: wall(p, "W", 0, geom.Vec2{}, geom.Vec2{X: 60}), s1: 60}
	w.frame = w.Frame()
	up := func(s, z0, z1 float64) { w.uprights = append(w.uprights, &Member{S0: s, S1: s + 1.5, Z0: z0, Z1: z1}) }
	up(0, 1.5, 200)
	up(1.7, 1.5, 200) // a fifth after it
	up(3.5, 1.5, 200) // 0.3 after that
	up(10, 150, 200)  // over the floor
	up(16, 1.5, 200)
	up(24, 101, 200) // begins in the block's height
	up(30, 1.5, 101) // ends in it
	up(40, 1.5, 200)
	for _, c := range []struct {
		opening *framedOpening
		want    []float64
	}{
		{nil, []float64{3.2, 3.5, 5, 16, 17.5, 40, 41.5, 60}},
		{&framedOpening{h0: 42, h1: 58, sill: 90, top: 130}, []float64{3.2, 3.5, 5, 16, 17.5, 40}},
		{&framedOpening{h0: 42, h1: 58, sill: 103, top: 130}, []float64{3.2, 3.5, 5, 16, 17.5, 40, 41.5, 60}},
		{&framedOpening{h0: 42, h1: 58, sill: 102.9, top: 130}, []float64{3.2, 3.5, 5, 16, 17.5, 40}},
		{&framedOpening{h0: 42, h1: 58, sill: 30, top: 100}, []float64{3.2, 3.5, 5, 16, 17.5, 40, 41.5, 60}},
		{&framedOpening{h0: 18, h1: 39, sill: 30, top: 120}, []float64{3.2, 3.5, 5, 16, 41.5, 60}},
		{&framedOpening{h0: 5, h1: 16, sill: 30, top: 120}, []float64{3.2, 3.5, 17.5, 40, 41.5, 60}},
	} {
		b := newBuilder(p)
		w.openings = nil
		if c.opening != nil {
			w.openings = []*framedOpening{c.opening}
		}
		b.fireBlocks(&deck{level: p.Levels[1], z0: 100, z1: 109}, w)
		var got []float64
		for _, m := range b.house.Members {
			assert.Equal(t, plan.Blocking, m.Role)
			assert.Same(t, p.Levels[1], m.Level)
			assert.Equal(t, [2]float64{100, 101.5}, [2]float64{m.Z0, m.Z1})
			got = append(got, m.S0, m.S1)
		}
		require.Len(t, got, len(c.want), "%v", c.opening)
		assert.InDeltaSlice(t, c.want, got, 1e-9, "%v", c.opening)
	}
}

// Of three stories over each other each wall stands on that of the story below it, and no lower one.
func TestAWallStandsOnTheStoryBelow(t *testing.T) {
	p := stories(3)
	for l := range 3 {
		ring(p, l, rect(0, 0, 160, 120)...)
	}
	h, _ := Frame(p)
	n := 0
	for _, j := range h.Joints {
		if j.Kind == plan.StudStud {
			n++
			require.True(t, j.Below, j.ID)
			assert.Equal(t, j.First().Level.Index-1, j.Members[1].Level.Index, "%s on %s", j.First().ID, j.Members[1].ID)
			assert.InDelta(t, 3+10+1.5, j.Gap, 1e-9, j.ID) // plates, floor, bottom plate
		}
	}
	assert.Greater(t, n, 60)
}

// A wall t northward at x = 100 ends at wall u along x, whose faces are at y = 0 and 5.5, where one of
// its ends lies in it or within half an inch of it.
func TestWhichWallEndsOnAnother(t *testing.T) {
	wall := func(a, z geom.Vec2) *framedWall {
		w := &framedWall{Wall: &plan.Wall{From: a, To: z, Studs: twoBySix, Level: &plan.Level{}}}
		w.frame, w.s1 = w.Frame(), w.Length()
		return w
	}
	u := wall(geom.Vec2{}, geom.Vec2{X: 200})
	for _, c := range []struct {
		a, z float64
		want bool
	}{
		{5.5, 200, true},
		{5.9, 200, true},
		{6.1, 200, false},
		{3, 200, true},
		{0, 200, true},
		{-0.5, 200, true},
		{-0.6, 200, false},
		{-200, 0, true},
		{-200, -0.5, true},
		{-200, -0.6, false},
		{-200, 3, true},
		{-200, 5.5, true},
		{-200, 5.9, true},
		{-200, 6.1, false},
		{-100, 100, false},
		{50, 200, false},
	} {
		b := &builder{}
		assert.Equal(t, c.want, b.endsOn(wall(geom.Vec2{X: 100, Y: c.a}, geom.Vec2{X: 100, Y: c.z}), u), "%v", c)
		assert.Equal(t, c.want, b.endsOn(wall(geom.Vec2{X: 100, Y: c.z}, geom.Vec2{X: 100, Y: c.a}), u), "%v, written the other way", c)
	}
}

// Walls are of one line when they run one way in one plane, to half an inch, and share some of
// their length.
func TestWallsInOnePlane(t *testing.T) {
	wall := func(a, z geom.Vec2) *framedWall {
		w := &framedWall{Wall: &plan.Wall{From: a, To: z, Studs: twoBySix, Level: &plan.Level{}}, floor: 240, top: 340}
		w.frame, w.s1 = w.Frame(), w.Length()
		return w
	}
	v := func(x, y float64) geom.Vec2 { return geom.Vec2{X: x, Y: y} }
	low := wall(v(0, 0), v(100, 0))
	low.floor, low.top = 100, 200
	for _, c := range []struct {
		a, z geom.Vec2
		want bool
	}{
		{v(0, 0), v(100, 0), true},
		{v(40, 0), v(60, 0), true},
		{v(-50, 0), v(150, 0), true},
		{v(90, 0.4), v(150, 0.4), true},
		{v(0, 0.6), v(100, 0.6), false},
		{v(0, -0.6), v(100, -0.6), false},
		{v(100, 0), v(200, 0), false},
		{v(99.6, 0), v(200, 0), false},
		{v(99.4, 0), v(200, 0), true},
		{v(-80, 0), v(0.4, 0), false},
		{v(-80, 0), v(0.6, 0), true},
		{v(100, 0), v(0, 0), false},
		{v(0, 0), v(0, 100), false},
		{v(0, 0.4), v(100, 0.7), false},
	} {
		assert.Equal(t, c.want, inPlane(low, wall(c.a, c.z)), "%+v", c)
	}
}

// Girder B, broken at its pile at 120 and cut back from A and C at its ends, is held to the piles
// under those ends by its first and its last piece.
func TestPilesUnderTheEndsOfAGirderThatIsCutBack(t *testing.T) {
	p := stories(1)
	p.Lumber.Stock = []float64{120}
	at := func(name string, a, z geom.Vec2, piles ...float64) *plan.Girder {
		return &plan.Girder{Name: name, From: a, To: z, Member: headerWide, Piles: piles}
	}
	p.Girders = []*plan.Girder{
		at("A", geom.Vec2{Y: 0}, geom.Vec2{X: 100, Y: 0}, 0, 100),
		at("C", geom.Vec2{Y: 240}, geom.Vec2{X: 100, Y: 240}, 0, 100),
		at("B", geom.Vec2{X: 50}, geom.Vec2{X: 50, Y: 240}, 0, 120, 240),
	}
	h, _ := Frame(p)
	got := map[float64][]string{}
	for _, j := range joints(h, "B", plan.GirderPile) {
		for _, m := range j.Members {
			got[j.Station] = append(got[j.Station], m.ID)
		}
		assert.True(t, j.Below)
	}
	assert.Equal(t, map[float64][]string{
		0: {"B/girder@2.25", "B/pile@0"}, 120: {"B/girder@2.25", "B/girder@120", "B/pile@120"}, 240: {"B/girder@120", "B/pile@240"},
	}, got)
}

// A joist over the break of a girder at 48 is held where its middle lies, to the piece that has
// more of it; one that does not lie on the girder's top to none.
func TestTheGirderUnderAJoist(t *testing.T) {
	f := geom.NewFrame(geom.Vec2{}, geom.Vec2{X: 96})
	piece := func(s0, s1 float64) *Member {
		return &Member{A: f.At(s0, 2.25, 5), B: f.At(s1, 2.25, 5), Length: s1 - s0}
	}
	first, second := piece(0, 48), piece(48, 96)
	g := &framedGirder{body: body{f: f, s1: 96, d: 4.5}, z1: 10, pieces: []*Member{first, second}}
	joist := func(x0, x1, y0, z float64) geom.Solid {
		return geom.Box(geom.Vec3{X: x0, Y: y0, Z: z}, geom.Vec3{X: x1 - x0}, geom.Vec3{Y: 50}, geom.Vec3{Z: 9})
	}
	for _, c := range []struct {
		s    geom.Solid
		at   geom.Vec3
		want *Member
	}{
		{joist(20, 21.5, 1.5, 10), geom.Vec3{X: 20.75, Y: 3, Z: 10}, first},
		{joist(46.5, 48.5, 1.5, 10), geom.Vec3{X: 47.5, Y: 3, Z: 10}, first},
		{joist(47.5, 49.5, -10, 10), geom.Vec3{X: 48.5, Y: 2.25, Z: 10}, second},
		{joist(20, 21.5, 4, 10.05), geom.Vec3{X: 20.75, Y: 4.25, Z: 10}, first},
		{joist(20, 21.5, 1.5, 10.1), geom.Vec3{}, nil},
		{joist(20, 21.5, 4.6, 10), geom.Vec3{}, nil},
		{joist(20, 21.5, 4.45, 10), geom.Vec3{}, nil}, // a twentieth of an inch
	} {
		at, piece, ok := g.carries(c.s)
		assert.Equal(t, c.want != nil, ok)
		if c.want != nil {
			assert.Same(t, c.want, piece)
			assert.InDelta(t, 0, at.Sub(c.at).Len(), 1e-9, "%v", at)
		}
	}
}

// On a slab the lowest level has no joists, those above have; on piles all have, unless a level
// names none.
func TestWhichLevelsHaveJoists(t *testing.T) {
	for _, c := range []struct {
		kind plan.FoundationKind
		none int // a level whose joists are left out, -1 for none
		want [2]bool
	}{{plan.Slab, -1, [2]bool{false, true}}, {plan.Piles, -1, [2]bool{true, true}}, {plan.Piles, 1, [2]bool{true, false}}} {
		p := stories(2)
		p.Foundation.Kind = c.kind
		for l := range 2 {
			ring(p, l, rect(0, 0, 96, 72)...)
		}
		if c.none >= 0 {
			p.Levels[c.none].Joists = plan.Lumber{}
		}
		h, _ := Frame(p)
		var got [2]bool
		for _, m := range h.Members {
			if m.Role == plan.Joist {
				got[m.Level.Index] = true
			}
		}
		assert.Equal(t, c.want, got, "%+v", c)
	}
}

// Members of two that share a place are told once, with the first two and how many more.
func TestMembersInOnePlaceAreToldTogether(t *testing.T) {
	p := onSlabPlan()
	wall(p, "A", 0, geom.Vec2{}, geom.Vec2{X: 120})
	wall(p, "B", 0, geom.Vec2{X: 60, Y: -60}, geom.Vec2{X: 60, Y: 60})
	b := newBuilder(p)
	box := func(id string, w int, x float64) {
		b.member(&Member{ID: id, Wall: p.Walls[w], Solid: []geom.Solid{geom.Box(geom.Vec3{X: x}, geom.Vec3{X: 2}, geom.Vec3{Y: 2}, geom.Vec3{Z: 2})}})
	}
	box("A/one", 0, 0)
	box("B/one", 1, 1)
	box("A/two", 0, 10)
	box("B/two", 1, 11)
	box("B/far", 1, 30)
	b.checkOverlaps()
	require.Len(t, b.faults, 1)
	d := b.faults[0]
	assert.Equal(t, "A/one of wall A and B/one of wall B take the same place, and so does 1 more pair of theirs", d.Summary)
	assert.Equal(t, "wall B", d.Where)
	assert.Equal(t, []plan.Pos{p.Walls[1].Pos, p.Walls[0].Pos}, []plan.Pos{d.Pos, d.Related[0]})
}
