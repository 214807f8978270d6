package framing

import (
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"galewright/plan"
	"galewright/plan/geom"
)

// elevated returns a house of n stories on girders.
func elevated(n int) *plan.Plan {
	p := stories(n)
	girders(p, 0, 336, 3, 120, 237)
	for l := range n {
		ring(p, l, rect(0, 0, 336, 240)...)
	}
	return p
}

func roles(h *House, r plan.Role) (out []*Member) {
	for _, m := range h.Members {
		if m.Role == r {
			out = append(out, m)
		}
	}
	return out
}

func TestJoistsOnTheModuleFromTheWestWall(t *testing.T) {
	h := frame(t, elevated(1))
	at := map[float64]bool{}
	for _, m := range roles(h, plan.Joist) {
		at[m.A.X] = true
		assert.InDelta(t, 110, m.Z0, 1e-9)
		assert.InDelta(t, 119.25, m.Z1, 1e-9)
	}
	assert.Len(t, at, 20) // 336/16 spaces, the rims at both sides are the ends
	assert.True(t, at[16] && at[320])
}

func TestLongJoistsBreakOverAGirder(t *testing.T) {
	p := elevated(1)
	p.Lumber.Stock = []float64{144}
	for _, m := range roles(frame(t, p), plan.Joist) {
		assert.True(t, m.A.Y == 120 || m.B.Y == 120, m.ID)
	}
}

func TestJoistsWithoutSupportAreTold(t *testing.T) {
	p := elevated(1)
	p.Lumber.Stock = []float64{120}
	p.Girders = p.Girders[:1]
	_, faults := Frame(p)
	require.NotEmpty(t, faults)
	assert.Equal(t, "joist-too-long", string(faults[0].Code))
	assert.Equal(t, plan.Warning, faults[0].Severity)
}

func TestRimsMeetAtCorners(t *testing.T) {
	h := frame(t, elevated(1))
	total := 0.0
	for _, m := range roles(h, plan.Rim) {
		total += m.Length
	}
	assert.InDelta(t, 2*336+2*(240-3), total, 1e-9)
}

func TestFloorsOfLAndCourtyard(t *testing.T) {
	p := stories(1)
	girders(p, 0, 480, 3, 160, 320, 477)
	p.Lumber.Stock = []float64{480}
	ring(p, 0, rect(0, 0, 480, 480)...)
	yard := ring(p, 0, geom.Vec2{X: 160, Y: 160}, geom.Vec2{X: 160, Y: 320}, geom.Vec2{X: 320, Y: 320}, geom.Vec2{X: 320, Y: 160})
	for i, w := range yard {
		w.Name = string(rune('p' + i))
	}
	for _, m := range roles(frame(t, p), plan.Joist) {
		mid := m.A.Add(m.B).Mul(0.5)
		assert.False(t, mid.X > 160 && mid.X < 320 && mid.Y > 160 && mid.Y < 320, m.ID)
	}
}

func TestStemWallHasSillPlates(t *testing.T) {
	p := elevated(1)
	p.Foundation = plan.Foundation{Kind: "stem", Sill: twoBySix}
	p.Girders = p.Girders[1:2]
	p.Girders[0].Piles = nil
	h := frame(t, p)
	sills := roles(h, plan.SillPlate)
	require.NotEmpty(t, sills)
	for _, m := range sills {
		assert.InDelta(t, 110, m.Z1, 1e-9)
	}
	assert.Len(t, of(h, "1B", plan.SillPlate), 2, "cut out for the girder's pocket")
	j := joints(h, "1A", plan.StudBase)[3]
	assert.Equal(t, []plan.Role{plan.Stud, plan.Rim, plan.BottomPlate, plan.SillPlate}, rolesOf(j))
}

func rolesOf(j *Joint) (out []plan.Role) {
	for _, m := range j.Members {
		out = append(out, m.Role)
	}
	return out
}

func TestFloorHeightsThatDisagreeAreTold(t *testing.T) {
	p := elevated(2)
	p.Levels[1].Floor += 2
	_, faults := Frame(p)
	require.NotEmpty(t, faults)
	assert.Equal(t, "floor-heights", string(faults[0].Code))
}

func TestGirdersAndPiles(t *testing.T) {
	h := frame(t, elevated(1))
	piles := roles(h, plan.Pile)
	require.Len(t, piles, 9)
	for _, m := range piles {
		assert.InDelta(t, 110-11.25, m.Z1, 1e-9)
		assert.Zero(t, m.Z0)
	}
	gp := joints(h, "G2", plan.GirderPile)
	require.Len(t, gp, 3)
	assert.Equal(t, []plan.Role{plan.GirderBeam, plan.GirderBeam, plan.Pile}, rolesOf(gp[1]), "spliced over the middle pile")
	assert.InDelta(t, 162, gp[1].Tributary, 1e-9)
}

func TestGirdersMeetSideOn(t *testing.T) {
	p := elevated(1)
	p.Girders = append(p.Girders, &plan.Girder{Name: "X", From: geom.Vec2{X: 168, Y: 3}, To: geom.Vec2{X: 168, Y: 120}, Member: headerWide, Piles: []float64{0, 60, 117}})
	h := frame(t, p)
	assert.Len(t, roles(h, plan.Pile), 10, "the girders share the piles where they meet")
	assert.Len(t, joints(h, "X", plan.GirderPile), 3)
	p.Girders[3].To.Y = 200
	_, faults := Frame(p)
	require.Len(t, faults, 1)
	assert.Equal(t, "girders-cross", string(faults[0].Code))
}

func TestPorch(t *testing.T) {
	p := onSlabPlan()
	ring(p, 0, rect(0, 0, 336, 240)...)
	p.Porches = []*plan.Porch{{
		Name: "porch", From: geom.Vec2{X: 0, Y: -96}, To: geom.Vec2{X: 336, Y: -96}, Beam: headerThin,
		Post: plan.Lumber{Ply: 1, Breadth: 5.5, Depth: 5.5, Text: "6x6"}, Posts: []float64{3, 168, 333}, Base: 0, Top: 210,
	}}
	h := frame(t, p)
	assert.Len(t, roles(h, plan.PorchPost), 3)
	assert.Len(t, joints(h, "porch", plan.PostBase), 3)
	caps := joints(h, "porch", plan.PostCap)
	require.Len(t, caps, 3)
	assert.Equal(t, []plan.Role{plan.Beam, plan.PorchPost, plan.Beam}, rolesOf(caps[1]))
	assert.InDelta(t, 165, caps[1].Tributary, 1e-9)
}

func TestPileTopsThatDoNotMeetTheGirdersAreTold(t *testing.T) {
	p := elevated(1)
	p.Foundation.PileTop = 110 - 11.25
	frame(t, p)
	p.Foundation.PileTop = 110
	_, faults := Frame(p)
	require.Len(t, faults, 1)
	assert.Equal(t, "pile-top", string(faults[0].Code))
	p.Girders[1].Member.Depth = 9.25 // on other piles, whose tops are higher
	_, faults = Frame(p)
	require.Len(t, faults, 1)
	assert.Equal(t, `the piles' tops are given at 9'-2" and the underside of girder G1 is at 8'-2 3/4"`, faults[0].Summary)
	p.Foundation.PileTop = 110 - 9.25
	frame(t, p)
}
