package framing

import (
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"galewright/plan"
	"galewright/plan/geom"
)

// postPlan is a house of 30 by 20 ft and two stories with a post in the south wall of
// each, and one of an inner wall along x at 120 in.
func postPlan(studs, below int) *plan.Plan {
	p := wellPlan()
	for i, n := range []int{below, studs} {
		w := p.Walls[4*i]
		if n > 0 {
			w.Posts = []*plan.WallPost{{At: 100, Studs: n, Pos: plan.Pos{File: "plan.toml", Line: 80 + i}}}
		}
	}
	return p
}

// Three studs at 100 stand from 97-3/4 to 102-1/4, tight; the module's stud at 96 ends at
// 96-3/4 and stays, those at 112 and on too. Two studs stand from 98-1/2 to 101-1/2.
func TestAddedPostsByHand(t *testing.T) {
	h := frame(t, postPlan(3, 3))
	var got []float64
	for _, m := range h.Members {
		if m.Wall == h.Plan.Walls[4] && m.Role.FullHeight() && m.S0 > 90 && m.S1 < 120 {
			got = append(got, m.S0, m.S1)
		}
	}
	assert.InDeltaSlice(t, []float64{95.25, 96.75, 97.75, 99.25, 99.25, 100.75, 100.75, 102.25, 111.25, 112.75}, got, 1e-9)
	n := 0
	for _, j := range h.Joints { // each is tied as any stud
		if j.Wall == h.Plan.Walls[4] && j.Kind == plan.StudTop && j.Station > 97 && j.Station < 103 {
			n++
		}
	}
	assert.Equal(t, 3, n)
}

// The floor is 9-1/4 in of joists on plates at 229-1/8: blocks under the studs reach from
// there to 238-3/8, inside the rim, 1-1/2 to 5 of the wall's 5-1/2 in: a 2x4. No joist
// lies on 97-3/4 to 102-1/4: those on 96 and 112 end at 96-3/4 and begin at 111-1/4.
func TestSquashBlocksByHand(t *testing.T) {
	h := frame(t, postPlan(3, 3))
	var got []geom.Vec3
	for _, m := range h.Members {
		if m.Role == plan.SquashBlock {
			lo, hi := m.Bounds()
			got = append(got, lo, hi)
			assert.Equal(t, "2x4", m.Section.Text)
			assert.InDelta(t, 9.25, m.Length, 1e-9)
		}
	}
	require.Len(t, got, 6)
	for i, s := range []float64{97.75, 99.25, 100.75} {
		assert.InDelta(t, 0, got[2*i].Sub(geom.Vec3{X: s, Y: 1.5, Z: 229.125}).Len(), 1e-9)
		assert.InDelta(t, 0, got[2*i+1].Sub(geom.Vec3{X: s + 1.5, Y: 5, Z: 238.375}).Len(), 1e-9)
	}
}

// Under a post that stands over a joist the joist carries: of three studs about 96 the
// middle one has no block. On the lowest floor there are none.
func TestNoSquashBlockWhereAJoistLies(t *testing.T) {
	p := postPlan(3, 3)
	p.Walls[0].Posts[0].At, p.Walls[4].Posts[0].At = 96, 96
	h := frame(t, p)
	n := 0
	for _, m := range h.Members {
		if m.Role == plan.SquashBlock {
			n++
			assert.Greater(t, m.Z0, 200.0)
		}
	}
	assert.Equal(t, 2, n)
}

// Nor are there any on a floor whose joists the plan leaves out.
func TestNoSquashBlockInAFloorWithoutJoists(t *testing.T) {
	p := postPlan(3, 3)
	p.Levels[1].Joists = plan.Lumber{}
	h, _ := Frame(p)
	for _, m := range h.Members {
		assert.NotEqual(t, plan.SquashBlock, m.Role, m.ID)
	}
}

// A post over too few studs is told, one without room too.
func TestAddedPostsThatFailAreTold(t *testing.T) {
	_, faults := Frame(postPlan(3, 0))
	require.Len(t, faults, 1)
	assert.Equal(t, plan.Code("post-none-below"), faults[0].Code)
	assert.Contains(t, faults[0].Summary, "3 studs at 8'-4\" stands over 0 studs of wall 1A", "that on 96 ends an inch before it")
	assert.Equal(t, 81, faults[0].Pos.Line)

	p := postPlan(3, 3)
	p.Walls[4].Openings = []*plan.Opening{window("w", 101, 40)}
	_, faults = Frame(p)
	require.Len(t, faults, 1)
	assert.Equal(t, plan.Code("post-without-room"), faults[0].Code)
	assert.Contains(t, faults[0].Summary, `from 8'-1 3/4" to 8'-3 1/4"`, "the king stands from 98 to 99-1/2, the jack to 101")
}

// Measured from the first stud of a wall that begins behind its corner, a post moves with
// the openings.
func TestAPostMovesWithTheHook(t *testing.T) {
	w := &plan.Wall{From: geom.Vec2{}, To: geom.Vec2{X: 100}, Posts: []*plan.WallPost{{At: 40, Studs: 2}}}
	h := w.Hooked(5.5)
	assert.InDelta(t, 45.5, h.Posts[0].At, 1e-9)
	assert.InDelta(t, 40, w.Posts[0].At, 1e-9)
}
