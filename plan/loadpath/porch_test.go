package loadpath

import (
	"math"
	"testing"

	"galewright/plan"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"
)

// porchHouse has a gable roof that reaches over a porch beam along its south
// side.
const porchHouse = `
level = [{ name = "floor", plate_height = "9'", studs = "2x6 @ 16in" }]
wall = [
  { name = "S", from = ["0'", "0'"], to = ["24'", "0'"] },
  { name = "E", to = ["24'", "16'"] },
  { name = "N", to = ["0'", "16'"] },
  { name = "W", to = ["0'", "0'"] },
]
roof = [{ name = "main", kind = "gable", area = [["0'", "-8'"], ["24'", "16'"]], ridge = "x", pitch = "4:12", overhang = "1'", rake = "1'", rafters = "2x8 @ 16in" }]
porch = [{ name = "P", from = ["0'", "-8'"], to = ["24'", "-8'"], beam = "2-2x10", post = "6x6", posts = ["0' 3in", "8'", "16'", "23' 9in"], base = "0'", top = "9'" }]
[project]
name = "porch"
date = 2026-01-05
[site]
wind_speed = "150 mph"
exposure = "D"
`

func TestPorchBeamHandsItsUpliftToThePosts(t *testing.T) {
	a := analyzed(t, porchHouse)
	for _, c := range cases() {
		s := a.run(c)
		onBeam, posts := Force{}, Force{}
		for j, f := range s.rafters {
			if j.Kind == plan.RafterPlate && j.Host == "P" {
				onBeam.take(f)
			}
		}
		for _, p := range a.porches {
			posts.take(s.posts[p.n])
		}
		require.InDelta(t, onBeam.W, posts.W, 1e-6, c.String())
		require.InDelta(t, onBeam.D, posts.D, 1e-6, c.String())
	}
	r, _ := Run(placed(t, porchHouse))
	posts := 0
	for _, l := range r.Links {
		if l.Check.ID == "porch-base-uplift" || l.Check.ID == "porch-cap-uplift" {
			posts++
			assert.Positive(t, l.Demand, l.ID)
			assert.NotEmpty(t, l.Gap, "nothing is placed there")
		}
	}
	assert.Equal(t, 8, posts)
}

func TestRoofOverAPorchIsOpenBelow(t *testing.T) {
	// Wind from the south presses 0.7 q from below on the roof over the porch;
	// behind the wall the inside of the house does, 0.18 q.
	a := analyzed(t, porchHouse)
	south := windCase{axis: 1, sign: 1, corner: 1, pi: 1}
	rc := a.onRoof(south, a.main)
	var rafter *strip
	for _, s := range a.rafters {
		if s.Up.Y > 0.9 && s.Low.X > 140 && s.Low.X < 150 {
			rafter = s
		}
	}
	require.NotNil(t, rafter)
	a.roofLoads(rafter, south, rc, func(p patch) {
		u, f := p.mid(), p.force
		g := rc.coefs.Interior[rafter.zone(u, rc, a.model)-1]
		below := 0.18
		if u < 12+96 { // overhang and porch
			below = 0.7
		}
		assert.InDelta(t, below-g, f.W/(a.q*rafter.Width*stretchOf(rafter, rc, a, u)/144), 1e-6, "at %v", u)
	})
}

// stretchOf returns the length of the stretch whose middle is u.
func stretchOf(s *strip, rc roofCase, a *analysis, u float64) float64 {
	cuts := s.cuts(rc, a.basis.ZoneTwoReach()*12)
	for i := 1; i < len(cuts); i++ {
		if math.Abs((cuts[i]+cuts[i-1])/2-u) < 1e-9 {
			return cuts[i] - cuts[i-1]
		}
	}
	return 0
}
