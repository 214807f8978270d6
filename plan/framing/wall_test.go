package framing

import (
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"galewright/plan"
	"galewright/plan/geom"
)

func TestRectangle(t *testing.T) {
	p := stories(1)
	walls := ring(p, 0, rect(0, 0, 336, 528)...)
	walls[0].Openings = []*plan.Opening{window("w1", 64, 38.5), door("d1", 160, 38.5)}
	girders(p, 0, 336, 3, 180, 348, 525)
	h := frame(t, p)
	for _, m := range of(h, "1A", plan.Stud, plan.King, plan.Jack, plan.Post, plan.Cripple) {
		t.Log(m.ID, m.S0, m.S1, m.Z0, m.Z1)
	}
	require.NotEmpty(t, of(h, "1B", plan.Stud))
	assert.Len(t, h.Lines, 4)
}

// A straight wall of 148 ft at 16 in has 111 spaces and 112 studs.
// Source: Estimating in Building Construction, ch. 13, example 13-11 (read).
func TestStudCountOfStraightWall(t *testing.T) {
	p := stories(1)
	wall(p, "1A", 0, geom.Vec2{}, geom.Vec2{X: 148 * 12})
	h, _ := Frame(p)
	assert.Len(t, of(h, "1A", plan.Stud), 112)
}
