package steel_test

import (
	"os"
	"testing"

	"galewright/plan/geom"
	"galewright/plan/pipeline"
	"galewright/plan/steel"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"
)

func exampleBody(t *testing.T, name, tag string) *steel.Body {
	t.Helper()
	src, err := os.ReadFile("../../examples/" + name + ".toml")
	require.NoError(t, err)
	r, ds := pipeline.Run(name, src, func(n string) ([]byte, error) { return os.ReadFile("../../examples/" + n) })
	require.False(t, ds.Errors(), "%v", ds)
	return steel.New(r.Placement).Body(r.Placement.Piece(tag))
}

func inMembers(b *steel.Body) map[string]int {
	n := map[string]int{}
	for _, f := range b.Fasteners {
		if len(f.Runs) == 0 {
			n["none"]++
			continue
		}
		n[f.Runs[0].Member.ID]++
	}
	return n
}

// A hip 1 1/2 in thick comes up at 45 degrees into the corner of two rafters of 1 1/2 in
// whose middles cross at (144, 144): its sides end at their faces, half a thickness off, at
// 143.25 - 1.5 x sqrt(1/2) = 142.189. Flanges of 3 1/4 in on the rafters have their middles
// half of that farther out, and half the nails each; none lies where the ridge is, behind
// the rafters.
func TestAHipsHangerLiesInTheCornerOfTwoRafters(t *testing.T) {
	b := exampleBody(t, "dunlin", "main-144c-RR-hanger")
	const out = 142.18934 - 3.25/2
	at := map[geom.Vec2]geom.Vec2{{Y: -1}: {X: out, Y: 143.25}, {X: -1}: {X: 143.25, Y: out}}
	require.Len(t, b.Bands, 4)
	for _, band := range b.Bands {
		for n, p := range at {
			if band[0].N.Flat().Sub(n).Len() < 1e-6 {
				assert.InDelta(t, 0, band[0].A.Flat().Sub(p).Len(), 1e-4, "%v", band[0].A)
				delete(at, n)
			}
		}
	}
	assert.Empty(t, at, "a flange on each of the two rafters")
	assert.Equal(t, map[string]int{"main/hip@-16": 8, "main/S/rafter@144": 5, "main/W/rafter@144": 5}, inMembers(b))
}

// Where a wing's ridge ends, its valley comes up on one side of the joint and the foot of
// the short hip of the roof above comes down on the other: each has one flange on the
// ridge, on its own side, and none through the other.
func TestValleyAndHipAtTheEndOfAWingsRidge(t *testing.T) {
	valley, hip := exampleBody(t, "sanderling", "wing-312-RR-hanger"), exampleBody(t, "sanderling", "wing-312b-RR-hanger")
	assert.Equal(t, map[string]int{"main/valley@228": 8, "wing/ridge@224": 8}, inMembers(valley))
	assert.Equal(t, map[string]int{"main/hip@359.25": 8, "wing/ridge@224": 5}, inMembers(hip))
}
