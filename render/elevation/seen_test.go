package elevation

import (
	"os"
	"slices"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"galewright/plan"
	"galewright/plan/framing"
	"galewright/plan/read"
	"galewright/plan/steel"
)

// Joists that are tied down to a wall's plates are among what is seen of that wall, over them: in the odd house along those of the story that stands out over wall 1F.
func TestJoistsOverAWallThatTheyPass(t *testing.T) {
	src, err := os.ReadFile("../../plan/framing/testdata/odd/along.toml")
	require.NoError(t, err)
	p, ds := read.Plan("along.toml", src, nil)
	require.False(t, ds.Errors())
	h, _ := framing.Frame(p)
	x := newIndex(h, &steel.Steel{})
	n := 0
	for _, j := range h.Joints {
		if j.Kind != plan.JoistPlate || j.First().Role != plan.Joist {
			continue
		}
		n++
		e := &elev{line: &framing.Line{Frame: j.Wall.Frame()}, stories: []story{{wall: j.Wall}}}
		shapes := x.seen(e)
		assert.True(t, slices.ContainsFunc(shapes, func(s shape) bool { return s.m == j.First() }), j.ID)
	}
	assert.Greater(t, n, 10)
}
