package framing

import (
	"math"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"galewright/plan"
	"galewright/plan/geom"
)

// braced is the elevated house, its girders in notches of piles 9 1/4 in wide, with a brace
// on its first girder: that runs along x at the south, on piles each 112 in, its underside
// 98 3/4 in over grade.
func braced(x plan.Brace) *plan.Plan {
	p := elevated(1)
	p.Foundation.Pile = plan.Lumber{Ply: 1, Breadth: 9.25, Depth: 9.25, Text: "10x10"}
	for _, g := range p.Girders {
		g.Seat = plan.SeatNotch
		g.Piles = []float64{0, 112, 224, 336}
	}
	x.Name, x.Girder, x.Member = "X", "G1", plan.Lumber{Ply: 1, Breadth: 1.5, Depth: 7.25, Text: "2x8"}
	p.Braces = []*plan.Brace{&x}
	return p
}

// Crossed boards in the second bay, from 12 in over grade to 12 in under the girder: 112 in
// along and 74 3/4 in up make 134.66 in from bolt to bolt, and 5 1/4 in past each 145.16. One
// lies on the outside faces of the piles, 1 1/2 in thick, the other on their inside faces;
// each ends at both piles.
func TestCrossedBoards(t *testing.T) {
	h := frame(t, braced(plan.Brace{Kind: plan.BoardBrace, Bays: []int{2}, Top: 12, Bottom: 12}))
	assert.Empty(t, h.Overlaps(0.01))
	boards := roles(h, plan.BraceBoard)
	require.Len(t, boards, 2)
	girder := roles(h, plan.GirderBeam)[0]
	g, _ := girder.Bounds()
	rise := girder.Z0 - 12 - 12
	for i, m := range boards {
		assert.InDelta(t, math.Hypot(112, rise)+2*5.25, m.Length, 1e-9)
		lo, hi := m.Bounds()
		assert.InDelta(t, 1.5, hi.Y-lo.Y, 1e-9)
		assert.InDelta(t, [2]float64{g.Y - 1.5, g.Y + 9.25}[i], lo.Y, 1e-9)
		assert.InDelta(t, 168, (m.A.X+m.B.X)/2, 1e-9)
	}
	assert.Positive(t, boards[0].B.Sub(boards[0].A).Z*boards[0].B.Sub(boards[0].A).X, "the outer one rises toward the girder's end")
	ends := joints(h, "G1", plan.BraceEnd)
	require.Len(t, ends, 4)
	for _, j := range ends {
		require.Len(t, j.Members, 2)
		assert.Equal(t, plan.Pile, j.Members[1].Role)
		assert.InDelta(t, 1, math.Abs(j.Brace.Out.Y), 1e-9)
		assert.Contains(t, []float64{112, 224}, math.Round(j.Station))
	}
}

// Where the boards of two bays meet at a pile one bolt holds both: the outer of one bay ends
// there as high as the inner of the next. Three bays: 2 x 2 ends at the outer piles, 2 x 2
// shared at the inner ones.
func TestBoardsOfTwoBaysShareABolt(t *testing.T) {
	h := frame(t, braced(plan.Brace{Kind: plan.BoardBrace, Top: 12, Bottom: 12}))
	require.Len(t, roles(h, plan.BraceBoard), 6)
	shared := 0
	for _, j := range joints(h, "G1", plan.BraceEnd) {
		if len(j.Members) == 3 {
			shared++
			assert.Negative(t, j.Brace.Out.Y, "its head is outside")
			a, _ := j.Members[0].Bounds()
			b, _ := j.Members[1].Bounds()
			assert.Less(t, a.Y, b.Y)
		}
	}
	assert.Len(t, joints(h, "G1", plan.BraceEnd), 8)
	assert.Equal(t, 4, shared)
}

// Rods take no wood: two joints in each bay, the rods 1 1/2 in beside each other, each from
// the lower height at one pile to the upper at the next.
func TestCrossedRods(t *testing.T) {
	h := frame(t, braced(plan.Brace{Kind: plan.RodBrace, Bays: []int{1, 3}, Top: 20, Bottom: 10}))
	assert.Empty(t, roles(h, plan.BraceBoard))
	list := joints(h, "G1", plan.BraceRod)
	require.Len(t, list, 4)
	for i := 0; i < 4; i += 2 {
		a, b := list[i].Brace, list[i+1].Brace
		assert.InDelta(t, 1.5, math.Abs(a.A.Y-b.A.Y), 1e-9)
		for _, x := range []*Bracing{a, b} {
			assert.InDelta(t, 10, x.A.Z, 1e-9)
			assert.InDelta(t, roles(h, plan.GirderBeam)[0].Z0-20, x.B.Z, 1e-9)
			assert.InDelta(t, 112, math.Abs(x.B.X-x.A.X), 1e-9)
		}
		assert.InDelta(t, 0, (a.B.X-a.A.X)+(b.B.X-b.A.X), 1e-9, "they cross")
	}
}

// Knees of 30 in: bolted to the pile 30 in under the girder's middle and to the girder 30 in
// from the pile's, 42.43 in apart; two in a bay, flat on the outside faces.
func TestKnees(t *testing.T) {
	h := frame(t, braced(plan.Brace{Kind: plan.KneeBrace, Bays: []int{1}, Reach: 30}))
	boards := roles(h, plan.BraceBoard)
	require.Len(t, boards, 2)
	for _, m := range boards {
		assert.InDelta(t, 30*math.Sqrt2+10.5, m.Length, 1e-9)
	}
	on := map[plan.Role]int{}
	for _, j := range joints(h, "G1", plan.BraceEnd) {
		on[j.Members[1].Role]++
	}
	assert.Equal(t, map[plan.Role]int{plan.Pile: 2, plan.GirderBeam: 2}, on)
}

// Two boards of 7 1/4 in that lean at 45 degrees go 5 1/4 in past their bolts: (5 1/4 + 3 5/8) / sqrt 2 =
// 6.28 in along the girder each, so that in a bay of 112 in two of 49 in fit and of 50 in do not; and on a
// pile between two bays the knees of both meet at one height.
func TestKneesWithoutRoom(t *testing.T) {
	for _, c := range []struct {
		reach float64
		bays  []int
		says  string
	}{
		{49, []int{1, 3}, ""},
		{50, []int{1}, "past their bolts they need 1'-0 9/16\" more"},
		{30, nil, "the knees of bays 1 and 2 take the same place on the pile between them"},
	} {
		h, ds := Frame(braced(plan.Brace{Kind: plan.KneeBrace, Bays: c.bays, Reach: c.reach}))
		told := ""
		for _, d := range ds {
			if d.Code == "brace-without-room" && told == "" {
				told = d.Summary
			}
		}
		if c.says == "" {
			assert.Empty(t, told)
			assert.Empty(t, h.Overlaps(0.01))
			continue
		}
		assert.Contains(t, told, c.says)
	}
}

// Across from the first girder's piles to those straight across of the second, on the sides
// of the piles: from middle to middle of them.
func TestBracingAcross(t *testing.T) {
	p := braced(plan.Brace{Kind: plan.BoardBrace, Across: "G2", Bays: []int{3}, Top: 12, Bottom: 12})
	h := frame(t, p)
	boards := roles(h, plan.BraceBoard)
	require.Len(t, boards, 2)
	assert.Empty(t, h.Overlaps(0.01))
	for i, m := range boards {
		lo, hi := m.Bounds()
		assert.InDelta(t, [2]float64{224 + 4.625, 224 - 4.625 - 1.5}[i], lo.X, 1e-9, "the first at its left, seen toward G2")
		assert.InDelta(t, 1.5, hi.X-lo.X, 1e-9)
	}
	for _, j := range joints(h, "G1", plan.BraceEnd) {
		assert.InDelta(t, 224, j.Station, 1e-9)
	}
	p.Girders[1].Piles[2] = 230
	_, ds := Frame(p)
	codes := []plan.Code{}
	for _, d := range ds {
		codes = append(codes, d.Code)
	}
	assert.Contains(t, codes, plan.Code("brace-out-of-line"))
}

// No brace shares space with a pile, and every end of it lies on one, wherever its heights
// are.
func TestBracesLieOnTheirPiles(t *testing.T) {
	for _, top := range []float64{6, 24, 50} {
		for _, bottom := range []float64{6, 20} {
			h := frame(t, braced(plan.Brace{Kind: plan.BoardBrace, Top: top, Bottom: bottom}))
			assert.Empty(t, h.Overlaps(0.01))
			for _, j := range joints(h, "G1", plan.BraceEnd) {
				on := j.Members[len(j.Members)-1]
				lo, hi := on.Bounds()
				in := j.At.Sub(j.Brace.Out.Mul(0.5))
				assert.True(t, geom.Vec3{X: in.X - lo.X, Y: in.Y - lo.Y}.Dot(geom.Vec3{X: 1, Y: 1}) > 0 && in.X < hi.X && in.Y < hi.Y && in.Y > lo.Y)
			}
		}
	}
}
