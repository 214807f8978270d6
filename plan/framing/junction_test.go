package framing

import (
	"fmt"
	"math"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"
	"pgregory.net/rapid"

	"galewright/plan"
	"galewright/plan/geom"
)

// Any number of walls may meet in one point at any angles not too sharp.
func TestWallsMeetInOnePoint(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		p := onSlabPlan()
		n := rapid.IntRange(2, 5).Draw(t, "walls")
		turn := rapid.Float64Range(0, 2*math.Pi).Draw(t, "turn")
		for i := range n {
			a := turn + 2*math.Pi*float64(i)/float64(n) + rapid.Float64Range(-0.2, 0.2).Draw(t, "off")
			sin, cos := math.Sincos(a)
			from, to := geom.Vec2{}, geom.Vec2{X: 120 * cos, Y: 120 * sin}
			if rapid.Bool().Draw(t, "turned round") {
				from, to = to, from
			}
			w := wall(p, fmt.Sprint("P", i), 0, from, to)
			w.Studs = rapid.SampledFrom([]plan.Lumber{twoBySix, twoByFour}).Draw(t, "studs")
		}
		h := frameDrawn(t, p)
		for _, pair := range h.Overlaps(0.01) {
			t.Errorf("%s reaches into %s", pair[0].ID, pair[1].ID)
		}
	})
}

func TestPartitionIntoAnExteriorCorner(t *testing.T) {
	for _, off := range []geom.Vec2{{}, {X: 5.5, Y: 5.5}} {
		p := onSlabPlan()
		ring(p, 0, rect(0, 0, 336, 240)...)
		wall(p, "1P", 0, off, geom.Vec2{X: 100, Y: 100})
		h := frame(t, p)
		require.NotEmpty(t, of(h, "1P", plan.Stud))
	}
}

func TestWallsInLineShareOnePlane(t *testing.T) {
	p := onSlabPlan()
	a := wall(p, "A", 0, geom.Vec2{}, geom.Vec2{X: 120})
	b := wall(p, "B", 0, geom.Vec2{X: 120}, geom.Vec2{X: 240})
	a.Shear = []*plan.Shear{{Name: "s", From: 24, To: 120}}
	b.Studs = twoByFour
	h := frame(t, p)
	assert.Len(t, joints(h, "A", plan.WallCorner), 1)
	co := joints(h, "A", plan.Collector)
	require.Len(t, co, 2, "its own plate to the left, the next wall's to the right")
	assert.Equal(t, "B/upper plate@0", co[1].Members[1].ID)
}

func TestBalloonGableRunsToTheRafters(t *testing.T) {
	p := elevated(2)
	p.Lumber.Stud = 480
	p.Walls = append(p.Walls[:5], p.Walls[6], p.Walls[7]) // without 2B
	g := p.Walls[1]
	g.ToLevel, g.Top = p.Levels[1], "rake"
	p.Walls[6].Top = "rake"
	g.Openings = []*plan.Opening{window("low", 60, 40)}
	p.Roofs = []*plan.Roof{{
		Name: "roof", Over: p.Levels[1], Kind: "gable", Area: [2]geom.Vec2{{}, {X: 336, Y: 240}}, Ridge: "x", Pitch: 8,
		Overhang: 12, Rake: 12, Rafters: twoByTen, Spacing: 16, RidgeMember: plan.Lumber{Ply: 1, Breadth: 1.75, Depth: 14, Text: "1.75x14"},
		GableEnd: [2]plan.GableEnd{"rake", "rake"},
	}}
	h := frame(t, p)
	tallest := 0.0
	for _, m := range of(h, "1B", plan.Stud) {
		tallest = max(tallest, m.Length)
	}
	assert.Greater(t, tallest, 109.125*2+60)
	assert.NotEmpty(t, of(h, "1B", plan.Blocking))
	assert.Len(t, of(h, "1B", plan.UpperPlate), 2)
}

func TestWallInAWallIsTold(t *testing.T) {
	p := onSlabPlan()
	a := wall(p, "A", 0, geom.Vec2{}, geom.Vec2{X: 120})
	wall(p, "B", 0, geom.Vec2{}, geom.Vec2{X: 240})
	for _, from := range []geom.Vec2{{}, {X: 60}, {X: 60, Y: 4}} {
		a.From = from
		a.To.Y = from.Y
		_, faults := Frame(p)
		require.NotEmpty(t, faults)
		assert.Equal(t, "walls-overlap", string(faults[0].Code))
	}
	a.From.Y, a.To.Y = 5.5, 5.5
	frame(t, p)
}
