package loadpath

import (
	"math"
	"strings"
	"testing"

	"galewright/plan"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"
)

// cornerPorch is a house of 24 by 24 ft with a porch 8 ft deep along its south and east sides, alike
// but for the order.
const cornerPorch = `
level = [{ name = "floor", plate_height = "12'", studs = "2x6 @ 16in" }]
wall = [
  { name = "S", from = ["0'", "0'"], to = ["24'", "0'"] },
  { name = "E", to = ["24'", "24'"] },
  { name = "N", to = ["0'", "24'"] },
  { name = "W", to = ["0'", "0'"] },
]
roof = [{ name = "main", kind = "hip", pitch = "4:12", overhang = "6in", rafters = "2x8 @ 16in" }]
porch = [{ name = "P", line = [["0'", "-8'"], ["32'", "-8'"], ["32'", "24'"]], beam = "3-2x10", post = "6x6", posts = "@ 8'", top = "9'", roof = { pitch = "2:12", overhang = "1'", rafters = "2x6 @ 16in" } }]
[project]
name = "porch"
date = 2026-01-05
[site]
wind_speed = "150 mph"
exposure = "C"
`

// What the porch's roof weighs goes to its beams and the house by the area on plan: 33 by 9 ft and
// 9 by 24 ft with 1 ft of overhang all around, but none at the house, at 1/cos of 2 in 12; what its
// beams take, posts take, and the corner post stands on one base with both sides' ends.
func TestAPorchAroundACornerHandsOnAllOfItsLoad(t *testing.T) {
	a := analyzed(t, cornerPorch)
	var corner *porchPost
	for _, x := range a.porches {
		if len(x.brings) > 0 {
			require.Nil(t, corner, "one corner")
			corner = x
		}
	}
	require.NotNil(t, corner)
	require.Len(t, corner.brings, 1)
	require.Equal(t, []string{"P-S", "P-E"}, []string{corner.porch.Name, corner.brings[0].porch.Name})
	most := 0.0
	for _, c := range a.cases() {
		s := a.run(c)
		beams, ledgers, posts := Force{}, Force{}, Force{}
		for j, f := range s.rafters {
			switch {
			case j.Roof == nil || !strings.HasPrefix(j.Roof.Name, "P-"):
			case j.Kind == plan.RafterPlate:
				beams.take(f)
			case j.Kind == plan.RafterLedger:
				ledgers.take(f)
			}
		}
		for _, x := range a.porches {
			posts.take(s.posts[x.n])
		}
		require.InDelta(t, beams.W, posts.W, 1e-6, c.String())
		require.InDelta(t, beams.D, posts.D, 1e-6, c.String())
		weight := a.dead.roof(a.plan.Roofs[1]) * math.Hypot(1, 2.0/12) * (34*9 + 9*25)
		require.InEpsilon(t, weight, beams.D+ledgers.D, 0.01, c.String())
		on := s.posts[corner.n]
		on.take(s.posts[corner.brings[0].n])
		most = max(most, on.net(ASD))
	}
	r, _ := loadsOf(placed(t, cornerPorch))
	bases := map[string]float64{}
	for _, l := range r.Links {
		if l.Check.ID == "porch-base-uplift" {
			bases[l.Joint.ID] = l.Demand
		}
	}
	require.Len(t, bases, len(a.porches)-1)
	assert.Positive(t, most)
	assert.InDelta(t, most, bases[corner.base.ID], 1e-6)
}

// The hip leans on the corner of the house: each of its two walls takes half of what it pulls up there.
func TestAHipAtACornerOfTheHouseIsHeldByBothWalls(t *testing.T) {
	a := analyzed(t, cornerPorch)
	for _, c := range a.cases() {
		s := a.run(c)
		var hip Force
		sum := map[string]Force{}
		for j, f := range s.rafters {
			if j.Wall == nil || j.Kind != plan.RafterLedger && j.Kind != plan.RafterPlate {
				continue
			}
			if j.Around != nil {
				require.Equal(t, []string{"S", "E"}, []string{j.Wall.Name, j.Around.Name})
				require.InDelta(t, 0, j.AroundAt, 1e-6)
				hip = f
				continue
			}
			g := sum[j.Wall.Name]
			g.take(f)
			sum[j.Wall.Name] = g
		}
		require.NotZero(t, hip.D)
		for _, w := range []string{"S", "E"} {
			for _, p := range a.paths {
				if p.w.Name == w {
					require.InDelta(t, sum[w].W+hip.W/2, s.walls[p.n].roof.W, 1e-6, "%s %s", w, c)
				}
			}
		}
	}
}
