package steel_test

import (
	"os"
	"testing"

	"galewright/plan"
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
	assert.Equal(t, map[string]int{"main/hip@-16": 8, "main/S/rafter@144": 7, "main/W/rafter@144": 7}, inMembers(b))
}

// Where a wing's ridge ends, its valley comes up on one side of the joint and the foot of
// the short hip of the roof above comes down on the other: each has one flange on the
// ridge, on its own side, and none through the other.
func TestValleyAndHipAtTheEndOfAWingsRidge(t *testing.T) {
	valley, hip := exampleBody(t, "sanderling", "wing-312-RR-hanger"), exampleBody(t, "sanderling", "wing-312b-RR-hanger")
	assert.Equal(t, map[string]int{"main/valley@228": 8, "wing/ridge@176": 8}, inMembers(valley))
	assert.Equal(t, map[string]int{"main/hip@359.25": 8, "wing/ridge@176": 7}, inMembers(hip))
}

// The strap over the last pair of a hip roof, 1 7/16 in wide, lies on the ridge whole: that
// goes on 3/4 in, half a rafter, past where the planes meet, and the rafter in its line
// is cut back as much. No steel of any example lies inside wood.
func TestTheStrapAtAHipsEndLiesOnTheRidge(t *testing.T) {
	b := exampleBody(t, "dunlin", "main-144-RR-ridge")
	require.Len(t, b.Over, 1)
	assert.Equal(t, "main/ridge@144", b.Over[0].ID)
	lo, _ := b.Over[0].Bounds()
	assert.InDelta(t, 143.25, lo.X, 1e-6)
	assert.Less(t, lo.X, 144-1.4375/2)
	for _, name := range []string{"shed", "marsh-wren", "curlew-row", "sanderling", "dunlin", "turnstone"} {
		for _, d := range steel.New(example(t, name)).Check() {
			assert.NotEqual(t, plan.Code("steel-in-wood"), d.Code, "%s: %s", name, d)
		}
	}
}
