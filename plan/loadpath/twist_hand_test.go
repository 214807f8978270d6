package loadpath

import (
	"testing"

	"galewright/plan"
	"galewright/plan/framing"
	"galewright/plan/geom"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"
)

// What each role does when a house is pushed sideways: it is of the deck and hands it its
// force, it can gather force along a line, shear can go along and across it.
func TestWhatEachRoleDoesSideways(t *testing.T) {
	roof := &plan.Roof{}
	for role, want := range map[plan.Role][3]bool{
		plan.Rafter: {true, true, false}, plan.HipRafter: {true, false, false}, plan.ValleyRafter: {true, false, false}, plan.FlyRafter: {true, false, false},
		plan.Outlooker: {true, false, false}, plan.Truss: {true, true, false}, plan.Rim: {true, true, true}, plan.Blocking: {true, false, true},
		plan.Ledger: {true, false, true}, plan.Joist: {true, true, true}, plan.TopPlate: {false, true, true}, plan.UpperPlate: {false, true, true},
		plan.BottomPlate: {false, false, true}, plan.SillPlate: {false, false, true}, plan.Beam: {false, true, true}, plan.GirderBeam: {false, true, true},
		plan.PlateBeam: {false, true, false}, plan.FlushBeam: {false, true, false}, plan.BeamPost: {}, plan.Pile: {false, false, true}, plan.Stud: {}, plan.King: {}, plan.Jack: {}, plan.Post: {}, plan.PorchPost: {},
		plan.Cripple: {}, plan.Header: {}, plan.Sill: {}, plan.Ridge: {}, plan.BeveledStud: {}, plan.SquashBlock: {}, plan.Packing: {},
	} {
		m := &framing.Member{Role: role}
		assert.Equal(t, want, [3]bool{deckRole(m), gathers(m), lies(m)}, "%s", role)
	}
	assert.True(t, gathers(&framing.Member{Role: plan.Blocking, Roof: roof}), "at an eave; between joists nothing draws one block to the next")
	assert.True(t, gathers(&framing.Member{Role: plan.Blocking, Wall: &plan.Wall{}}), "of a wall")
	tie := &framing.Member{Role: plan.Joist, Roof: roof}
	assert.False(t, deckRole(tie), "nothing makes a ceiling a diaphragm")
	assert.True(t, ceiling(tie))
	assert.False(t, ceiling(&framing.Member{Role: plan.Rafter, Roof: roof}))
}

// lying is a member of a role along an axis, from lo to hi, at a place across and a height.
func lying(role plan.Role, ax int, lo, hi, across, z float64) *framing.Member {
	a, b := geom.Vec3{X: lo, Y: across, Z: z}, geom.Vec3{X: hi, Y: across, Z: z}
	if ax == 1 {
		a, b = geom.Vec3{X: across, Y: lo, Z: z}, geom.Vec3{X: across, Y: hi, Z: z}
	}
	return &framing.Member{Role: role, A: a, B: b}
}

// A chain from a sole plate over a joist and a girder to a pile in the ground. Force goes
// on over what may pass, and not up: half a plate at most.
func TestForceReachesTheGroundOverWhatMayPass(t *testing.T) {
	sole, joist, girder, pile := lying(plan.BottomPlate, 0, 0, 96, 0, 12.75), lying(plan.Joist, 0, 0, 96, 0, 6), lying(plan.GirderBeam, 0, 0, 96, 0, -6), lying(plan.Pile, 0, 0, 1, 0, -40)
	stud := lying(plan.Stud, 0, 0, 1, 0, 4)
	level, high := lying(plan.Rim, 0, 0, 96, 0, 13.25), lying(plan.Rim, 0, 0, 96, 0, 13.5)
	tied := func(pairs ...*framing.Member) *twister {
		tw := &twister{next: map[*framing.Member][]*framing.Member{}, ground: map[*framing.Member]bool{pile: true}}
		for i := 0; i < len(pairs); i += 2 {
			a, b := pairs[i], pairs[i+1]
			tw.next[a], tw.next[b] = append(tw.next[a], b), append(tw.next[b], a)
		}
		return tw
	}
	whole := tied(sole, joist, joist, girder, girder, pile)
	assert.True(t, whole.reaches(sole, anyMember, nil))
	assert.True(t, whole.reaches(pile, anyMember, nil), "it stands in it")
	assert.True(t, whole.reaches(sole, lies, nil))
	assert.False(t, whole.reaches(sole, func(m *framing.Member) bool { return m != joist }, nil))
	assert.False(t, tied(sole, joist, girder, pile).reaches(sole, anyMember, nil), "joist and girder are not tied")
	assert.False(t, tied(sole, stud, stud, pile).reaches(sole, lies, nil), "over a stud no shear goes")
	assert.True(t, tied(sole, stud, stud, pile).reaches(sole, anyMember, nil))
	assert.True(t, tied(sole, level, level, pile).reaches(sole, anyMember, nil), "half an inch up")
	assert.False(t, tied(sole, high, high, pile).reaches(sole, anyMember, nil), "and no more")
	assert.True(t, tied(sole, joist).reaches(sole, lies, func(m *framing.Member) bool { return m == joist }), "what was looked for")
	assert.False(t, tied(sole, joist).reaches(sole, lies, func(m *framing.Member) bool { return m == sole }), "where it starts is no way")
	assert.Same(t, pile, whole.lowest(sole))
	assert.Same(t, girder, tied(sole, joist, joist, girder).lowest(sole))
	assert.Same(t, sole, tied(sole, stud).lowest(sole))
	assert.Same(t, joist, tied(sole, joist, joist, stud).lowest(sole))

	lower, wall := &plan.Level{Index: 0}, &plan.Wall{}
	wall.Level = lower
	x := &LineShear{ShearLine: &ShearLine{Level: &plan.Level{Index: 1}}}
	for role, want := range map[plan.Role]bool{plan.TopPlate: true, plan.UpperPlate: true, plan.BottomPlate: false, plan.Rim: false} {
		m := &framing.Member{Role: role, Wall: wall}
		assert.Equal(t, want, whole.lower(x, m), "%s", role)
		assert.False(t, whole.lower(x, &framing.Member{Role: role}), "of no wall")
		assert.False(t, whole.lower(&LineShear{ShearLine: &ShearLine{Level: lower}}, m), "of its own story")
	}
}

// boxWalls is a house of 40 ft by 24 with its walls in a ring.
func boxWalls() outline {
	at := []geom.Vec2{{X: 0, Y: 0}, {X: 480, Y: 0}, {X: 480, Y: 288}, {X: 0, Y: 288}}
	var o outline
	for i := range at {
		o = append(o, [2]geom.Vec2{at[i], at[(i+1)%4]})
	}
	return o
}

// lineWith is a shear wall line with its collector's force at places along it.
func lineWith(ax int, at float64, drag ...DragPoint) *LineShear {
	l := &plan.Level{Name: "first", PlateHeight: 96}
	return &LineShear{ShearLine: &ShearLine{Level: l, Axis: ax, At: at, Name: "S", lo: drag[0].At, hi: drag[len(drag)-1].At}, Force: 3000, Drag: drag, Case: "wind from W"}
}

// A line has the deck beside it within the house and on its walls, to whichever side.
func TestALineIsUnderTheDeckWithinTheHouse(t *testing.T) {
	for ax, long := range []float64{480, 288} {
		across := 768 - long
		for at, want := range map[float64]bool{-9: false, -3: true, across / 2: true, across - 3: true, across + 3: true, across + 9: false} {
			x := &ShearLine{Axis: ax, At: at}
			assert.Equal(t, want, x.under(boxWalls(), long/2), "axis %d at %v", ax, at)
			assert.False(t, x.under(boxWalls(), -6), "before the house")
			assert.False(t, x.under(boxWalls(), long+6), "past it")
		}
	}
}

// The stretch of a line with collector force that nothing lies along: more than a bay of 24
// in is a gap, from where to where it is, with the largest force there. The force is 0 at
// 0, 1,000 lb at 240 and 0 at 480.
func TestAStretchThatNothingLiesAlong(t *testing.T) {
	drag := []DragPoint{{0, 0}, {240, 1000}, {480, 0}}
	for ax := range 2 {
		run := func(list ...*framing.Member) []*Link {
			x := lineWith(ax, 144, drag...)
			a := &analysis{model: &model{
				givens:    givens{house: &framing.House{Members: list}},
				roofModel: roofModel{indoors: map[*plan.Level]outline{x.Level: {{{X: -1000, Y: -1000}, {X: 1000, Y: -1000}}, {{X: 1000, Y: -1000}, {X: 1000, Y: 1000}}, {{X: 1000, Y: 1000}, {X: -1000, Y: 1000}}, {{X: -1000, Y: 1000}, {X: -1000, Y: -1000}}}}},
			}}
			tw := &twister{a: a, c: &Check{ID: twistCheck}}
			tw.open(x)
			return tw.out
		}
		bar := func(lo, hi, across, z float64) *framing.Member { return lying(plan.Joist, ax, lo, hi, across, z) }
		assert.Empty(t, run(bar(0, 480, 144, 96)))
		assert.Empty(t, run(bar(0, 230, 144, 96), bar(252, 480, 144, 96)), "22 in between them")
		got := run(bar(0, 200, 144, 96), bar(300, 480, 144, 96))
		require.Len(t, got, 1)
		assert.InDelta(t, 1000, got[0].Strength, 1e-6)
		assert.InDelta(t, 600, got[0].Demand, 1e-6)
		assert.Contains(t, got[0].Gap, `from 16'-9" to 24'-10"`, "of the line: the members reach an inch farther")
		got = run(bar(0, 300, 144, 96))
		require.Len(t, got, 1)
		assert.InDelta(t, 1000*(480-302)/240.0, got[0].Strength, 1e-6, "an inch past the joist's end and one more")
		for what, m := range map[string]*framing.Member{
			"off the line": bar(0, 480, 144+oneLine+1, 96), "across it": lying(plan.Joist, 1-ax, 0, 480, 144, 96), "two feet too high": bar(0, 480, 144, 120), "too low": bar(0, 480, 144, 72),
			"a sill gathers nothing": lying(plan.Sill, ax, 0, 480, 144, 96),
		} {
			assert.Len(t, run(m), 1, what)
		}
		assert.Empty(t, run(bar(0, 480, 144+oneLine-1, 96)), "a foot beside it")
		assert.Empty(t, run(bar(480, 0, 144, 119)), "drawn the other way, just under two feet up")
		assert.Empty(t, run(bar(0, 480, 144, 73)))
	}
}

// The plate of the next wall carries a line on where it lies in the line and goes a foot
// past the segment's end; the segment ends at 120 and 240.
func TestAPlateGoesOnPastASegmentsEnd(t *testing.T) {
	w := &plan.Wall{Name: "S"}
	for ax := range 2 {
		x := lineWith(ax, 10, DragPoint{0, 0}, DragPoint{480, 0})
		x.Segments = []*SegmentShear{{Segment: &Segment{Wall: w, Lo: 120, Hi: 240}}}
		joint := func(at float64) *framing.Joint {
			return &framing.Joint{Wall: w, At: lying(plan.TopPlate, ax, at, at, 10, 96).A}
		}
		for _, c := range []struct {
			at, lo, hi, across float64
			want               bool
		}{
			{240, 200, 252, 10, true},
			{240, 200, 251, 10, false},
			{240, 252, 200, 10, true},
			{230, 200, 300, 10, true},
			{221, 0, 300, 10, false},
			{120, 108, 160, 10, true},
			{120, 109, 400, 10, false},
			{120, 160, 108, 10, true},
			{139, 0, 110, 10, false},
			{240, 200, 300, 10 + oneLine + 1, false},
			{240, 200, 300, 10 - oneLine + 1, true},
		} {
			assert.Equal(t, c.want, x.goesOn(joint(c.at), lying(plan.TopPlate, ax, c.lo, c.hi, c.across, 96)), "%+v", c)
		}
		assert.False(t, x.goesOn(&framing.Joint{Wall: &plan.Wall{}, At: joint(240).At}, lying(plan.TopPlate, ax, 200, 300, 10, 96)), "of another wall")
	}
}

// A deck that reaches past its last line by more than a foot has no line on that side.
func TestADeckPastItsLastLine(t *testing.T) {
	for ax := range 2 {
		run := func(force float64, at ...float64) (ids []string) {
			a := &analysis{model: &model{}, lateral: &lateral{}}
			d := &diaphragm{level: &plan.Level{Name: "first"}, extent: extent{hi: geom.Vec2{X: 288, Y: 288}}}
			for i, y := range at {
				x := &LineShear{ShearLine: &ShearLine{Level: d.level, Axis: ax, At: y, Name: "L", n: i}, Force: force}
				a.lateral.lines, d.lines[ax] = append(a.lateral.lines, x), append(d.lines[ax], x.ShearLine)
			}
			tw := &twister{a: a, c: &Check{}}
			tw.edges(d, ax)
			for _, l := range tw.out {
				assert.InDelta(t, 0.6*force, l.Demand, 1e-9)
				ids = append(ids, l.ID)
			}
			return ids
		}
		low, high := "deck over first, side "+string(sides[1-ax][0]), "deck over first, side "+string(sides[1-ax][1])
		assert.Empty(t, run(1000, 12, 276))
		assert.Equal(t, []string{high}, run(1000, 12, 275))
		assert.Equal(t, []string{low}, run(1000, 13, 276))
		assert.Equal(t, []string{low, high}, run(1000, 144))
		assert.Empty(t, run(0.8, 144), "less than half a pound ASD")
		assert.Empty(t, run(1000), "a story without lines has its own check")
	}
}

// The plates of a segment hand on their shares of its shear: to what lies below them, and
// there on to the plates of the wall below or to the ground.
func TestSolePlatesOfASegmentByHand(t *testing.T) {
	upper := &plan.Level{Name: "second", Index: 1, PlateHeight: 96}
	w, below := &plan.Wall{Name: "2S", Level: upper}, &plan.Wall{Name: "1S", Level: &plan.Level{Index: 0}}
	x := lineWith(0, 0, DragPoint{0, 0}, DragPoint{480, 0})
	x.Level = upper
	g := &SegmentShear{Segment: &Segment{Wall: w, Shear: &plan.Shear{From: 60, To: 180}, Name: "2S/A", Length: 120}, V: 2400}
	plate := func(id string, lo, hi float64) *framing.Member {
		m := lying(plan.BottomPlate, 0, lo, hi, 0, 120)
		m.ID, m.Wall, m.S0, m.S1 = id, w, lo, hi
		return m
	}
	left, right := plate("left", 0, 90), plate("right", 90, 240)
	past, other, stud := plate("past", 180, 400), plate("other", 0, 240), plate("stud", 0, 240)
	other.Wall, stud.Role = below, plan.Stud
	rim, top := lying(plan.Rim, 0, 0, 480, 0, 114), lying(plan.UpperPlate, 0, 0, 480, 0, 108)
	top.Wall = below
	beside := lying(plan.Rim, 0, 0, 480, 0, 119.75)
	run := func(ground *framing.Member, pairs ...*framing.Member) map[string]float64 {
		a := &analysis{model: &model{givens: givens{house: &framing.House{Members: []*framing.Member{left, right, past, other, stud, rim, top}}}}}
		tw := &twister{a: a, c: &Check{}, next: map[*framing.Member][]*framing.Member{}, ground: map[*framing.Member]bool{}}
		if ground != nil {
			tw.ground[ground] = true
		}
		for i := 0; i < len(pairs); i += 2 {
			p, q := pairs[i], pairs[i+1]
			tw.next[p], tw.next[q] = append(tw.next[p], q), append(tw.next[q], p)
		}
		tw.sole(x, g)
		out := map[string]float64{}
		for _, l := range tw.out {
			out[l.ID] = l.Strength
		}
		return out
	}
	// 30 of 120 in lie on the left plate, 90 on the right: 600 and 1,800 of 2,400 lb.
	assert.Equal(t, map[string]float64{"2S/A, left": 600, "2S/A, right": 1800}, run(nil))
	assert.Equal(t, map[string]float64{"2S/A, below left": 600, "2S/A, right": 1800}, run(nil, left, rim))
	assert.Equal(t, map[string]float64{"2S/A, right": 1800}, run(nil, left, rim, rim, top))
	assert.Empty(t, run(nil, left, rim, right, rim, rim, top))
	assert.Equal(t, map[string]float64{"2S/A, right": 1800}, run(left), "anchored to concrete")
	assert.Equal(t, map[string]float64{"2S/A, left": 600, "2S/A, right": 1800}, run(nil, left, beside, beside, top), "what is as high is not below")
	assert.Equal(t, map[string]float64{"2S/A, left": 600, "2S/A, right": 1800}, run(nil, left, stud, stud, top), "a stud does not lie")
}

// A segment tells of sheathing without a number, of ends without posts where tension is
// left after relief, and of an upper line over nothing.
func TestEndsOfASegmentByHand(t *testing.T) {
	run := func(g *SegmentShear, story int, relief float64, uppers ...upper) (out []string) {
		post := &framing.Joint{}
		g.carriers = []*carrier{{base: post}}
		x := lineWith(0, 0, DragPoint{0, 0}, DragPoint{480, 0})
		x.Level.Index = story
		for i := range uppers {
			uppers[i].line = x.ShearLine
		}
		a := &analysis{
			model:  &model{givens: givens{house: &framing.House{}}, lines: []*ShearLine{{}, {uppers: uppers}}},
			uplift: &uplift{peaks: map[*framing.Joint]*peak{post: {demand: -2 * relief}}},
		}
		tw := &twister{a: a, c: &Check{}, next: map[*framing.Member][]*framing.Member{}}
		tw.segment(x, g)
		for _, l := range tw.out {
			out = append(out, l.ID)
		}
		return out
	}
	seg := func(lifts float64, base bool, trouble string) *SegmentShear {
		return &SegmentShear{Segment: &Segment{Wall: &plan.Wall{Name: "S"}, Name: "S/A", Shear: &plan.Shear{}, base: base, Trouble: trouble}, V: 1000, Lifts: lifts}
	}
	both := []string{"S/A, first end", "S/A, second end"}
	assert.Equal(t, both, run(seg(2000, true, ""), 0, 0))
	assert.Equal(t, both, run(seg(2000, true, ""), 0, 1199), "0.6 of 2,000 less 1,199 is a pound")
	assert.Empty(t, run(seg(2000, true, ""), 0, 1200))
	assert.Empty(t, run(seg(2000, true, ""), 0, 1199.6), "half a pound is rounding")
	assert.Empty(t, run(seg(2000, false, ""), 0, 0), "it goes on in the story below")
	assert.Equal(t, []string{"S/A"}, run(seg(0, false, "no table has it"), 0, 0))
	assert.Equal(t, []string{"S/A over nothing"}, run(seg(0, true, ""), 1, 0))
	assert.Empty(t, run(seg(0, true, ""), 1, 0, upper{}))
	assert.Empty(t, run(seg(0, true, ""), 0, 0), "the lowest story stands on the ground")
}
