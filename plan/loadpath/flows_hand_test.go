package loadpath

import (
	"testing"

	"galewright/plan"
	"galewright/plan/framing"
	"galewright/plan/geom"
	"galewright/plan/steel"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"
)

// A line 100 in long: the deck brings 1,000 lb along all of it, half of a line of 400 lb that
// stands beside it 200 along all of it, a line over it 300 from 20 to 40; its two segments,
// 0 to 25 and 75 to 100, take three quarters and a quarter of the 1,500.
func TestDragAlongALineByHand(t *testing.T) {
	over := &ShearLine{n: 1, Segments: []*Segment{{Lo: 20, Hi: 40, Share: 1}}}
	apart := &ShearLine{n: 2}
	x := &ShearLine{
		lo: 0, hi: 100, uppers: []upper{{line: over, k: 1, straight: true}, {line: apart, k: 0.5}},
		Segments: []*Segment{{Lo: 0, Hi: 25, Share: 0.75}, {Lo: 75, Hi: 100, Share: 0.25}},
	}
	s := &gustState{lines: []lineForce{{deck: 1000, brought: 500, floor: 70}, {deck: 300}, {deck: 100, brought: 300}}}
	got := s.drag(x)
	want := []DragPoint{
		{0, 0},
		{20, 240 - 900},                // 12 lb/in come, 45 lb/in go
		{25, 300 + 75 - 1125},          // and 15 lb/in from over it
		{40, 480 + 300 - 1125},         //
		{75, 900 + 300 - 1125},         //
		{100, 1200 + 300 - 1125 - 375}, // nothing is left
	}
	require.Len(t, got, len(want))
	for i, p := range want {
		assert.InDelta(t, p.At, got[i].At, 1e-9)
		assert.InDelta(t, p.Force, got[i].Force, 1e-6, "at %v", p.At)
	}
	l := &LineShear{ShearLine: x, Drag: got}
	for at, force := range map[float64]float64{0: 0, 10: -330, 20: -660, 32.5: -547.5, 75: 75, 87.5: 37.5, 100: 0, 120: 0, -5: 0} {
		assert.InDelta(t, force, l.DragAt(at), 1e-6, "at %v", at)
	}
}

// Girder nails hold on the length half way to the next piles, past the last to the end: of
// 200 in with piles at 20, 80 and 170: 50, 75 and 75. A pile that stands past an end reaches
// as far.
func TestTheStretchOfAGirder(t *testing.T) {
	for _, c := range []struct {
		len      float64
		at, want []float64
	}{
		{200, []float64{20, 80, 170}, []float64{50, 75, 75}},
		{200, []float64{90}, []float64{200}},
		{200, []float64{-6, 100, 210}, []float64{53, 108, 55}},
	} {
		g := &girderPath{len: c.len}
		for _, s := range c.at {
			g.piles = append(g.piles, &pile{station: s})
		}
		for i, want := range c.want {
			assert.InDelta(t, want, g.stretch(i), 1e-9, "%v, pile %d", c.at, i)
		}
	}
}

// A girder of three plies of 1 1/2: a nail 3 in long through a strap on its outside goes 2.9
// into it and holds two, one 1 1/2 long one; of a face the shallowest counts. What splits out,
// or meets something else first, is none of them.
func TestNailsOfStrapsInAGirdersPlies(t *testing.T) {
	girder := &framing.Member{Role: plan.GirderBeam, Section: plan.Lumber{Ply: 3, Breadth: 1.5, Depth: 11.25}}
	other := &framing.Member{Role: plan.Joist}
	in := geom.Vec3{Y: 1}
	nail := func(m *framing.Member, y, deep, edge float64) steel.Fastener {
		d := geom.Vec3{Y: y}
		return steel.Fastener{Tip: d.Mul(deep), Diameter: 0.148, Runs: []steel.Run{{Member: m, To: deep}}, Margin: steel.Margin{Edge: edge, End: 9}}
	}
	for _, c := range []struct {
		name           string
		list           []steel.Fastener
		nails, reached [2]int
		passed         float64
	}{
		{"outside, two plies", []steel.Fastener{nail(girder, 1, 2.9, 3), nail(girder, 1, 2.9, 3)}, [2]int{2, 0}, [2]int{2, 0}, 1. / 3},
		{"the shallowest counts", []steel.Fastener{nail(girder, 1, 2.9, 3), nail(girder, 1, 1.4, 3)}, [2]int{2, 0}, [2]int{1, 0}, 2. / 3},
		{"whichever is first", []steel.Fastener{nail(girder, 1, 1.4, 3), nail(girder, 1, 2.9, 3)}, [2]int{2, 0}, [2]int{1, 0}, 2. / 3},
		{"inside", []steel.Fastener{nail(girder, -1, 2.9, 3)}, [2]int{0, 1}, [2]int{0, 2}, 1. / 3},
		{"both", []steel.Fastener{nail(girder, 1, 1.4, 3), nail(girder, -1, 2.9, 3)}, [2]int{1, 1}, [2]int{1, 2}, 0},
		{"one that splits out", []steel.Fastener{nail(girder, 1, 2.9, 0.1)}, [2]int{}, [2]int{}, 0},
		{"one in a joist first", []steel.Fastener{nail(other, 1, 2.9, 3)}, [2]int{}, [2]int{}, 0},
		{"one in nothing", []steel.Fastener{{Diameter: 0.148, Margin: steel.Margin{Edge: 3, End: 3}}}, [2]int{}, [2]int{}, 0},
	} {
		var s strappedPlies
		for _, f := range c.list {
			s.count(f, in)
		}
		assert.Equal(t, c.nails, s.nails, c.name)
		assert.Equal(t, c.reached, s.reached, c.name)
		assert.InDelta(t, c.passed, s.passed(), 1e-9, c.name)
		assert.Equal(t, c.nails != [2]int{}, s.girder == girder, c.name)
	}
}

// Percent of one number against another; of what is no force there is none.
func TestChangeInPercent(t *testing.T) {
	for _, c := range []struct {
		was, is float64
		want    string
	}{{200, 300, " (+50%)"}, {200, 100, " (-50%)"}, {200, 200, " (+0%)"}, {0, 300, ""}, {0.5, 300, ""}, {0.6, 0.9, " (+50%)"}, {-10, 5, ""}} {
		assert.Equal(t, c.want, change(c.was, c.is), "%v", c)
	}
}
