package loadpath

import (
	"math"
	"strings"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"
)

// The tall studs under the gable of the demo's wall 2W, by hand: three kings from 12'-8 3/4"
// serve the stretch of wall that their joints do; wall zone 4 of ASCE 7-22 Fig. 30.3-1
// (transcribed), GCp -1.1 + 0.1766 log10(A/10) with A = h max(b, h/3), and GCpi 0.18; q Kd
// 58.00 psf; 0.6 W; w h²/8 against 1000 psi (No. 2 southern pine 2x6, NDS 2018 Supplement
// Table 4B, from memory) x 1.6 x 1.5 x 5.5²/6 = 12,100 lb-in each. Two 16d common nails in
// end grain at each plate: 153.9 x 1.6 x 0.67 = 165.0 lb each (NDS 2018 12.5.2.2, transcribed).
func TestGableStudsByHand(t *testing.T) {
	r := demoReport(t)
	l := demand(t, r, "2W-153, gable stud, bending", gableCheck)
	p := r.work.byWall[l.Wall]
	wide, tall := 0.0, 0.0
	for _, k := range p.carriers {
		if k.station > 152 && k.station < 157 {
			wide, tall = wide+k.share/12, math.Max(tall, (k.m.Z1-k.m.Z0)/12)
		}
	}
	require.InDelta(t, ((152.75-109.75)/2+(155.75-152.75)+(160-155.75)/2)/12, wide, 1e-6, "half way to the king across the window and to the next stud")
	area := tall * math.Max(wide, tall/3)
	psf := 58.00 * (1.1 - 0.1766*math.Log10(area/10) + 0.18)
	w := 0.6 * psf * wide
	assert.InDelta(t, w*tall*tall/8*12, l.Demand, 60)
	assert.InDelta(t, 3*12100, l.Capacity.Value, 1e-6)
	for _, end := range []string{"top", "bottom"} {
		n := demand(t, r, "2W-153, gable stud, "+end, gableCheck)
		assert.InDelta(t, w*tall/2, n.Demand, 2)
		assert.InDelta(t, 6*165.0, n.Capacity.Value, 2)
		assert.Equal(t, 6, n.Capacity.Pieces)
	}
}

// With one king beside its windows and studs at 16 in the same wall bends too much, and each
// stud that does is told once; without the nails' order its ends are gaps. Walls under eaves
// and hips are not asked.
func TestGableStudsThatBendAreTold(t *testing.T) {
	thin := demoWith(t, ", kings = 3", "")
	over := 0
	for _, l := range thin.Links {
		if l.Check.ID == gableCheck && strings.Contains(l.ID, "bending") && l.Ratio > 1 {
			over++
			assert.Contains(t, []string{"2E", "2W"}, l.Wall.Name)
			assert.InDelta(t, 12100, l.Capacity.Value, 1e-6)
		}
	}
	assert.Equal(t, 6, over, "both kings of three windows")

	bare := demoWith(t, `top_plate_to_stud = { nail = "16d common", count = 2 }`, "")
	gaps := 0
	for _, l := range bare.Links {
		if l.Check.ID == gableCheck && l.Gap != "" {
			gaps++
			assert.Contains(t, l.ID, "top")
			assert.Contains(t, l.Gap, "top_plate_to_stud")
		}
	}
	assert.Equal(t, 2, gaps, "one a wall")
	for _, l := range exampleReport(t, "curlew-row.toml").Links {
		assert.NotEqual(t, gableCheck, l.Check.ID)
	}
}

// Near the wall's ends the studs are in zone 5: within a, 3 ft there.
func TestGableStudsAtTheCornerTakeZoneFive(t *testing.T) {
	a := demoReport(t).work
	for _, w := range a.plan.Walls {
		if w.Name != "2W" {
			continue
		}
		sum := 0.0
		for _, g := range a.gablePosts(a.byWall[w]) {
			sum += g.wide
			want := "4"
			if s := g.first.Mid(); s < 36 || s > w.Length()-36 {
				want = "5"
			}
			assert.Equal(t, want, g.zone, g.first.ID)
		}
		assert.InDelta(t, w.Length(), sum, 1, "no stretch of the wall is lost or counted twice")
	}
}
