package loadpath

import (
	"testing"

	"galewright/plan"
	"galewright/plan/geom"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"
)

// notched is an L under one roof, whose corner in the southwest is a porch on
// a beam: 8 ft deep, 10 ft wide.
const notched = `
level = [{ name = "floor", plate_height = "9'", studs = "2x6 @ 16in" }]
wall = [
  { name = "S", from = ["10'", "0'"], to = ["24'", "0'"] },
  { name = "E", to = ["24'", "20'"] },
  { name = "N", to = ["0'", "20'"] },
  { name = "W", to = ["0'", "8'"] },
  { name = "S2", to = ["10'", "8'"] },
  { name = "W2", to = ["10'", "0'"] },
]
roof = [{ name = "main", kind = "gable", area = [["0'", "0'"], ["24'", "20'"]], ridge = "x", pitch = "4:12", overhang = "1'", rake = "1'", rafters = "2x8 @ 16in" }]
porch = [{ name = "P", from = ["0'", "0'"], to = ["10'", "0'"], beam = "2-2x10", post = "6x6", posts = ["0' 3in", "9' 6in"], base = "0'", top = "9'" }]
[project]
name = "notched"
date = 2026-01-05
[site]
wind_speed = "150 mph"
exposure = "D"
procedure = "envelope"
`

func TestOutlineOfAnL(t *testing.T) {
	a := analyzed(t, notched)
	o := a.indoors[a.plan.Levels[0]]
	require.Len(t, o, 6)
	at := func(x, y float64) geom.Vec2 { return geom.Vec2{X: x * 12, Y: y * 12} }
	for p, in := range map[geom.Vec2]bool{at(5, 4): false, at(5, 12): true, at(15, 4): true, at(-1, 12): false, at(15, -1): false, at(23.9, 19.9): true} {
		assert.Equal(t, in, o.inside(p), "%v", p)
	}
	// The corner's porch is open to south and west: wind from there is stopped by
	// the walls behind it; from north and east the house stands before it.
	p := at(5, 4)
	assert.True(t, o.faces(p, 0, -1), "from W")
	assert.True(t, o.faces(p, 1, -1), "from S")
	assert.False(t, o.faces(p, 0, 1), "from E")
	assert.False(t, o.faces(p, 1, 1), "from N")
	assert.True(t, outline(nil).inside(at(99, 99)), "walls that close no loop say nothing")
}

func TestPorchInTheCornerOfAnLIsOpenBelow(t *testing.T) {
	a := analyzed(t, notched)
	require.Equal(t, []plan.Procedure{plan.Envelope}, a.choice.Use)
	for _, c := range []struct {
		c     windCase
		under float64
	}{
		{windCase{proc: plan.Envelope, axis: 1, sign: 1, corner: 1, pi: 1}, 0.7},             // from S
		{windCase{proc: plan.Envelope, axis: 0, sign: 1, corner: 1, pi: 1}, 0.7},             // from W, corner N
		{windCase{proc: plan.Envelope, axis: 0, sign: -1, corner: -1, pi: 1}, 0.7},           // from E, corner S
		{windCase{proc: plan.Envelope, axis: 0, sign: -1, corner: -1, pi: 1, calm: true}, 0}, // the same, without
		{windCase{proc: plan.Envelope, axis: 1, sign: -1, corner: 1, pi: 1}, 0},              // from N, corner E
	} {
		rc := a.onRoof(c.c, a.main)
		for _, x := range []float64{62, 190} { // over the porch, beside it
			seen := map[bool]float64{}
			a.roofLoads(rafterAt(t, a, x), rc, func(p patch) {
				y := axis(rafterAt(t, a, x).At(p.mid()), 1) / 12
				if y < 0 {
					return // the eave
				}
				porch := x < 120 && y < 8
				want := 0.18
				if porch {
					want = c.under
				}
				assert.InDelta(t, want, p.below, 1e-9, "%s at %.1f, %.1f ft", c.c, x/12, y)
				seen[porch] += p.u1 - p.u0
			})
			if x < 120 {
				assert.InDelta(t, 96, seen[true], 1, "8 ft of it")
			}
		}
	}
}
