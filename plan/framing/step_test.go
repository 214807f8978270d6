package framing

import (
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"galewright/plan"
	"galewright/plan/geom"
)

// inTwo is a slab house whose south wall goes on at x 144 in a second one of a height; 0 is
// the level's own, 109.125.
func inTwo(height float64) *plan.Plan {
	p := onSlabPlan()
	ring(p, 0, geom.Vec2{}, geom.Vec2{X: 144}, geom.Vec2{X: 336}, geom.Vec2{X: 336, Y: 240}, geom.Vec2{Y: 240})
	p.Walls[1].Height = height
	return p
}

// Both plates of two walls in line break where they meet.
func TestTwoWallsInLineAreSplicedWhereTheyMeet(t *testing.T) {
	j := jointAt(frame(t, inTwo(0)), "1A", plan.PlateSplice, 144)
	require.NotNil(t, j)
	assert.Equal(t, []string{"1A/upper plate@0", "1B/upper plate@0"}, []string{j.Members[0].ID, j.Members[1].ID})
	assert.Len(t, j.Members, 2, "no plate runs past")
	assert.Zero(t, j.Step)
	assert.InDelta(t, j.Members[0].Z1-0.75, j.At.Z, 1e-9)
}

// 120 less 109.125 is 10.875; the post is the end studs of both and one more of the higher.
func TestAStepInAWallsHeight(t *testing.T) {
	for _, c := range []struct{ height, step float64 }{{120, 10.875}, {100, 9.125}} {
		h := frame(t, inTwo(c.height))
		j := jointAt(h, "1A", plan.PlateSplice, 144)
		require.NotNil(t, j)
		assert.InDelta(t, c.step, j.Step, 1e-9)
		assert.InDelta(t, min(j.Members[0].Z1, j.Members[1].Z1)-0.75, j.At.Z, 1e-9, "at the lower plate")
		if c.height > 109.125 {
			assert.Equal(t, [][2]float64{{0, 1.5}, {1.5, 3}}, spans(h, "1B", plan.Post)[:2])
			continue
		}
		posts := spans(h, "1A", plan.Post)
		assert.Equal(t, [][2]float64{{141, 142.5}, {142.5, 144}}, posts[len(posts)-2:])
	}
}

// The plan's word for the post at the step: four studs are two more of the higher.
func TestThePostAtAStepIsThePlans(t *testing.T) {
	p := inTwo(120)
	p.Walls[1].Start.Post = 4
	assert.Equal(t, [][2]float64{{0, 1.5}, {1.5, 3}, {3, 4.5}}, spans(frame(t, p), "1B", plan.Post)[:3])
}

// A shear wall's line does not go on in plates at another height.
func TestACollectorEndsAtAStep(t *testing.T) {
	for height, on := range map[float64]bool{0: true, 120: false} {
		p := inTwo(height)
		p.Walls[0].Shear = []*plan.Shear{{Name: "SW", From: 96, To: 144}}
		h := frame(t, p)
		j := jointAt(h, "1A", plan.Collector, 144)
		require.NotNil(t, j)
		assert.Equal(t, on, j.Below)
		if on {
			assert.Nil(t, jointAt(h, "1A", plan.PlateSplice, 144), "the collector ties the same two plates")
		} else {
			assert.NotNil(t, jointAt(h, "1A", plan.PlateSplice, 144))
		}
	}
}

// An inside wall that is written up to the thinner of two walls in line reaches into the
// deeper one: it stops at that one's face, and does not cut it back from its neighbor.
func TestAnInsideWallWrittenToTheThinnerNeighbor(t *testing.T) {
	p := inTwo(0)
	p.Walls[0].Studs = plan.Lumber{Ply: 1, Breadth: 1.5, Depth: 7.25, Text: "2x8"}
	wall(p, "1P", 0, geom.Vec2{X: 144, Y: 5.5}, geom.Vec2{X: 144, Y: 180})
	h := frame(t, p)
	plates := of(h, "1A", plan.TopPlate)
	assert.InDelta(t, 144, plates[len(plates)-1].S1, 1e-9, "up to its neighbor")
	lo, _ := of(h, "1P", plan.SillPlate)[0].Solid[0].Bounds()
	assert.InDelta(t, 7.25, lo.Y, 1e-9, "from the deeper wall's face")
}
