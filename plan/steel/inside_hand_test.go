package steel

import (
	"testing"

	"galewright/plan"
	"galewright/plan/framing"
	"galewright/plan/geom"
	"galewright/plan/hardware"
	"galewright/plan/placement"
	"galewright/plan/units"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"
)

// flatOn is a piece of 1 3/8 in steel, 0.05 thick, on the y = 0 face from 50 to 80 in up at x.
func flatOn(kind plan.ItemKind, x float64, on ...*framing.Member) *Body {
	p := &placement.Piece{Tag: "t", Item: &hardware.Item{Item: &plan.Item{Mark: "s"}, Kind: hardware.KindNamed(kind)}, Joint: &framing.Joint{ID: "j", Kind: plan.StudStud}, Rule: &plan.Rule{}}
	for _, m := range on {
		p.Laid = append(p.Laid, placement.Laid{Member: m})
	}
	return &Body{Piece: p, Bands: []geom.Band{{{A: geom.Vec3{X: x, Z: 50}, B: geom.Vec3{X: x, Z: 80}, N: geom.Vec3{Y: -1}, Width: 1.375, Thickness: 0.05}}}}
}

// Steel lies inside a member where its wood is on both sides of it, a sixteenth in and a
// sixteenth out, over more than 0.3 in; the member where it does so longest is told. On a
// face, or flat between two members that touch, it lies inside of none.
func TestWhenSteelLiesInsideAMember(t *testing.T) {
	post := stick("post", geom.Vec3{}, geom.Vec3{X: 5.5, Y: 5.5, Z: 90})
	block := func(id string, y0, z0, z1, x1 float64) *framing.Member {
		return stick(id, geom.Vec3{Y: y0, Z: z0}, geom.Vec3{X: x1, Y: 3, Z: z1})
	}
	for _, c := range []struct {
		name string
		wood []*framing.Member
		in   string
		deep float64
	}{
		{"on its face", []*framing.Member{post}, "", 0},
		{"between two that touch", []*framing.Member{post, stick("before", geom.Vec3{Y: -3, Z: 40}, geom.Vec3{X: 5.5, Z: 90})}, "", 0},
		{"10 in of it in a beam", []*framing.Member{block("beam", -2, 60, 70, 5.5)}, "beam", 10},
		{"its ends in one", []*framing.Member{block("beam", -2, 70, 90, 5.5)}, "beam", 10},
		{"1/4 in of it in one", []*framing.Member{block("beam", -2, 60, 60.25, 5.5)}, "", 0},
		{"3/8 in of it in one", []*framing.Member{block("beam", -2, 60, 60.375, 5.5)}, "beam", 0.375},
		{"the longer of two", []*framing.Member{block("short", -2, 52, 56, 5.5), block("long", -2, 60, 70, 5.5)}, "long", 10},
		{"the longer of two, first", []*framing.Member{block("long", -2, 60, 70, 5.5), block("short", -2, 72, 76, 5.5)}, "long", 10},
		{"a member that ends 1/32 out of the steel", []*framing.Member{block("beam", -0.05-1./32, 60, 70, 5.5)}, "", 0},
		{"one that reaches 1/8 out of it", []*framing.Member{block("beam", -0.05-1./8, 60, 70, 5.5)}, "beam", 10},
		{"only its left edge", []*framing.Member{block("beam", -2, 60, 70, 2.3)}, "beam", 10},
		{"less than its edge", []*framing.Member{block("beam", -2, 60, 70, 2.1)}, "", 0},
	} {
		s := &Steel{Wood: NewWood(c.wood)}
		b := flatOn(plan.StrapItem, 2.75)
		m, deep := s.inside(b)
		if c.in == "" {
			assert.Nil(t, m, c.name)
			assert.Empty(t, found(steelInWood, &Steel{Wood: s.Wood, Bodies: []*Body{b}}), c.name)
			continue
		}
		require.NotNil(t, m, c.name)
		assert.Equal(t, c.in, m.ID, c.name)
		assert.InDelta(t, c.deep, deep, 1e-6, c.name)
		s.Bodies = []*Body{b, flatOn(plan.LongStrapItem, 2.75)}
		got := found(steelInWood, s)
		require.Len(t, got, 1, "%s: for a long strap slots are cut", c.name)
		assert.Contains(t, got[0].detail, c.in+", over ", c.name)
	}
}

// Fasteners in no wood are counted and told; of a row without a spacing, that they may lie
// elsewhere. One end of three nails past the post's head, at 90: those at 91 and 93.
func TestFastenersInNoWoodAreTold(t *testing.T) {
	for _, c := range []struct {
		spacing float64
		detail  string
	}{{2, ""}, {0, "the catalog gives no spacing of its holes: they may lie elsewhere"}} {
		post := stick("post", geom.Vec3{}, geom.Vec3{X: 1.5, Y: 5.5, Z: 90})
		b := flatOn(plan.StrapItem, 0.75, post)
		b.Bands[0][0].A.Z, b.Bands[0][0].B.Z = 88, 100
		b.Piece.Item.Fasteners = []plan.Fasteners{{Part: "each end", Count: 3, Spacing: c.spacing, Parts: 2}}
		s := &Steel{Wood: NewWood([]*framing.Member{post}), Bodies: []*Body{b, flatOn(plan.StrapItem, 0.75, post)}}
		s.Wood.fasten(b, 0, end(3, 1), Seat{}, 1.375, 0)
		got := found(fastenersInAir, s)
		require.Len(t, got, 1)
		assert.Equal(t, 2, got[0].count)
		assert.Equal(t, c.detail, got[0].detail)
		assert.Same(t, b.Piece, got[0].piece)
	}
}

// A fastener whose steel lies inside of the member that stands before it is told as that,
// not as covered.
func TestCoveredOrInside(t *testing.T) {
	post := stick("post", geom.Vec3{}, geom.Vec3{X: 1.5, Y: 5.5, Z: 90})
	for _, c := range []struct {
		y1   float64 // of what stands there, out of the face up to -0.05
		told int
	}{{0, 1}, {1, 0}} {
		tail := stick("tail", geom.Vec3{X: -2, Y: -6, Z: 40}, geom.Vec3{X: 3, Y: c.y1, Z: 70})
		b := flatOn(plan.StrapItem, 0.75, post)
		s := &Steel{Wood: NewWood([]*framing.Member{tail, post}), Bodies: []*Body{b}}
		s.Wood.fasten(b, 0, end(4, 1), Seat{}, 1.375, 0)
		n, by := b.covered()
		assert.Equal(t, 4, n)
		assert.Same(t, tail, by)
		assert.Len(t, found(fastenersCovered, s), c.told)
	}
}

// A strap on top of the plates is over a slot where the two share ground: a slot of 3/8 by
// 2 3/8 in whose middle is at (40, 2.75), that is 1 3/16 in round it, in a plate whose top is not
// more than two plates, 3 in, under the strap.
func TestWhatLiesOverASlot(t *testing.T) {
	slot := Slot{At: geom.Vec3{X: 40, Y: 2.75, Z: 94}, Size: [2]float64{0.375, 2.375}}
	for _, c := range []struct {
		name             string
		x0, x1, y, z, up float64
		want             bool
	}{
		{"over it", 30, 60, 2.75, 97, 1, true},
		{"on the other way", 60, 30, 2.75, 97, 1, true},
		{"ends 1 in short of its middle", 30, 39, 2.75, 97, 1, true},
		{"ends 1 1/4 in short of it", 30, 38.75, 2.75, 97, 1, false},
		{"begins 1 in past it", 41, 60, 2.75, 97, 1, true},
		{"begins 1 1/4 in past it", 41.25, 60, 2.75, 97, 1, false},
		{"beside it by 2 in", 30, 60, 4.75, 97, 1, true},
		{"beside it by 2 1/4 in", 30, 60, 5, 97, 1, false},
		{"beside it the other way", 30, 60, 0.5, 97, 1, false},
		{"on the other side of it", 30, 60, 0.75, 97, 1, true},
		{"3 1/4 in over it", 30, 60, 2.75, 97.2, 1, true},
		{"4 in over it", 30, 60, 2.75, 98, 1, false},
		{"at its height", 30, 60, 2.75, 94, 1, true},
		{"under it", 30, 60, 2.75, 93, 1, false},
	} {
		p := geom.Plate{A: geom.Vec3{X: c.x0, Y: c.y, Z: c.z}, B: geom.Vec3{X: c.x1, Y: c.y, Z: c.z}, N: geom.Vec3{Z: c.up}, Width: 1.875}
		assert.Equal(t, c.want, covers(p, slot), c.name)
	}
}

// How far steel of 2 1/8 in hangs over the edges of what a fastener is in: wood that goes on
// flush counts, a gap ends it.
func TestHowFarSteelHangsOver(t *testing.T) {
	at := func(id string, x0, x1 float64) *framing.Member {
		return stick(id, geom.Vec3{X: x0}, geom.Vec3{X: x1, Y: 5.5, Z: 90})
	}
	for _, c := range []struct {
		name       string
		wood       []*framing.Member
		x          float64 // middle of the steel
		back, on   float64
		off        float64 // of the fastener from its middle
		both, text string
	}{
		{name: "in the middle of 1 1/2 in", wood: []*framing.Member{at("a", 0, 1.5)}, x: 0.75, back: 0.3125, on: 0.3125, text: `5/16" on either side`},
		{name: "1/4 in off it", wood: []*framing.Member{at("a", 0, 1.5)}, x: 1, back: 0.0625, on: 0.5625, text: `9/16" and 1/16"`},
		{name: "seen from a nail off its middle", wood: []*framing.Member{at("a", 0, 1.5)}, x: 1, off: -0.3, back: 0.0625, on: 0.5625, text: `9/16" and 1/16"`},
		{name: "another tight beside it", wood: []*framing.Member{at("a", 0, 1.5), at("b", 1.5, 3)}, x: 0.75, back: 0.3125, on: 0, text: `5/16"`},
		{name: "another past a gap of 1/4", wood: []*framing.Member{at("a", 0, 1.5), at("b", 1.75, 3)}, x: 0.75, back: 0.3125, on: 0.3125, text: `5/16" on either side`},
	} {
		p := geom.Plate{A: geom.Vec3{X: c.x, Z: 50}, B: geom.Vec3{X: c.x, Z: 80}, N: geom.Vec3{Y: -1}, Width: 2.125, Thickness: 0.09}
		w := NewWood(c.wood)
		back, on := (&Steel{Wood: w}).hangs(p, w.Drive(p, p.At(3, c.off), 1.5))
		assert.InDelta(t, c.back, back, 1e-6, c.name)
		assert.InDelta(t, c.on, on, 1e-6, c.name)
		assert.Equal(t, c.text, both(units.Imperial, back, on), c.name)
	}
}

// Two fasteners meet where their middle lines are nearer than half the sum of their
// diameters, 0.148 in of two nails alike; of one end they are left to its pattern, of two
// ends of a piece, or of two pieces, they are not.
func TestWhenFastenersMeet(t *testing.T) {
	m := stick("m", geom.Vec3{}, geom.Vec3{X: 5.5, Y: 5.5, Z: 90})
	nail := func(x float64, end int) Fastener {
		return Fastener{Head: geom.Vec3{X: x}, Tip: geom.Vec3{X: x, Y: 1.5}, Diameter: 0.148, End: end, Runs: []Run{{Member: m}}}
	}
	for _, c := range []struct {
		name string
		a, b []Fastener // of two pieces
		want int
	}{
		{"0.147 apart", []Fastener{nail(1, 0)}, []Fastener{nail(1.147, 0)}, 1},
		{"0.149 apart", []Fastener{nail(1, 0)}, []Fastener{nail(1.149, 0)}, 0},
		{"of one end", []Fastener{nail(1, 0), nail(1.1, 0)}, nil, 0},
		{"of two ends", []Fastener{nail(1, 0), nail(1.1, 1)}, nil, 1},
		{"one with two", []Fastener{nail(1, 0), nail(1.2, 0)}, []Fastener{nail(1.1, 0)}, 2},
	} {
		one, two := &Body{Fasteners: c.a}, &Body{Fasteners: c.b}
		got := Meetings([]*Body{one, two})
		require.Len(t, got, c.want, c.name)
		for _, x := range got {
			assert.True(t, x.InWood, c.name)
			assert.Same(t, one, x.A, c.name)
		}
	}
	got := Meetings([]*Body{{Fasteners: []Fastener{nail(1, 0)}}, {Fasteners: []Fastener{nail(1.1, 0)}}})
	assert.InDelta(t, 0.1, got[0].Apart, 1e-9)
}

// What to cut, in words: a slot with what is left of the plate beside it, the same on either
// side within the sixteenth that a tape shows; a notch where it is open to an edge.
func TestASlotInWords(t *testing.T) {
	for _, c := range []struct {
		left [2]float64
		want string
	}{
		{[2]float64{1.5, 1.5}, `a slot 2 3/8" across and 3/8" along it, 1 1/2" left on either side`},
		{[2]float64{1.5, 1.5625}, `a slot 2 3/8" across and 3/8" along it, 1 1/2" left on either side`},
		{[2]float64{2, 1}, `a slot 2 3/8" across and 3/8" along it, 1" left on one side and 2" on the other`},
		{[2]float64{1, 2}, `a slot 2 3/8" across and 3/8" along it, 1" left on one side and 2" on the other`},
		{[2]float64{0, 2}, `a notch 2 3/8" into its edge and 3/8" along it`},
		{[2]float64{2, 0}, `a notch 2 3/8" into its edge and 3/8" along it`},
	} {
		s := Slot{Size: [2]float64{0.375, 2.375}, Left: c.left}
		assert.Equal(t, c.want, s.Words(units.Imperial.Length))
		assert.InDelta(t, 2.375/(2.375+c.left[0]+c.left[1]), s.Cut(), 1e-9)
	}
}

// What is right below the middle of steel that lies on top goes on a hair along and across it,
// all four ways: of a member of four quarters each missing one is not below it.
func TestWhatIsRightBelow(t *testing.T) {
	quarter := func(x, y float64) geom.Solid {
		return geom.Box(geom.Vec3{X: min(x, 0), Y: min(y, 0), Z: -1.5}, geom.Vec3{X: 5}, geom.Vec3{Y: 5}, geom.Vec3{Z: 1.5})
	}
	all := []geom.Solid{quarter(-5, -5), quarter(-5, 5), quarter(5, -5), quarter(5, 5)}
	p := geom.Plate{A: geom.Vec3{X: -4}, B: geom.Vec3{X: 4}, N: geom.Vec3{Z: 1}, Width: 1.5, Thickness: 0.05}
	for missing := range 5 {
		m := &framing.Member{ID: "m", A: geom.Vec3{X: -5}, B: geom.Vec3{X: 5}}
		for i, s := range all {
			if i != missing {
				m.Solid = append(m.Solid, s)
			}
		}
		got := NewWood([]*framing.Member{m}).beneath(p)
		if missing == 4 {
			assert.Equal(t, []*framing.Member{m}, got)
		} else {
			assert.Empty(t, got, "without the quarter %d", missing)
		}
	}
}

// Of fasteners that have all their distances explain says nothing of them.
func TestWhatExplainLeavesOut(t *testing.T) {
	s, _ := nailedOn(t, post(), plan.HoldDownItem, plan.Fasteners{Nail: "bolt 3/4 x 6", Count: 2, Rows: 1, Spacing: 3, EndDist: 1}, 3, 2.75, 20)
	assert.Equal(t, "where the steel is:\ntag\n  2 fasteners in the post post\n", s.Explain("tag"))
}

// The angle of the push to the grain: up along a post none, across a beam 90 degrees, on a rafter
// that climbs 3 in 4, whose grain is 0.6 up, acos 0.6 = 53.13.
func TestTheAngleOfThePushToTheGrain(t *testing.T) {
	for _, c := range []struct {
		grain geom.Vec3
		want  float64
	}{{geom.Vec3{Z: 1}, 0}, {geom.Vec3{X: 1}, 90}, {geom.Vec3{X: 0.8, Z: 0.6}, 53.1301}, {geom.Vec3{X: -0.8, Z: -0.6}, 53.1301}} {
		m := stick("m", geom.Vec3{X: -40}, geom.Vec3{X: 40, Y: 5.5, Z: 96})
		m.A, m.B = geom.Vec3{}, c.grain.Mul(90)
		s, b := nailedOn(t, m, plan.HoldDownItem, plan.Fasteners{Nail: "bolt 3/4 x 6", Count: 1, Rows: 1, Spacing: 3, EndDist: 1}, 3, 0, 40)
		got := s.place(b, b.Fasteners[0])
		assert.InDelta(t, c.want, got.angle, 1e-3, "%v", c.grain)
		assert.Equal(t, c.want < 90, got.towardEnd, "%v", c.grain)
	}
}
