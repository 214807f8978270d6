package loadpath

import (
	"math"
	"strings"
	"testing"

	"galewright/plan/framing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"
)

// A nail holds a further ply from six diameters in it: 16d, 0.162 in, 0.972.
func TestPliesThatANailReaches(t *testing.T) {
	for _, c := range []struct {
		name     string
		deep     float64
		plies, n int
	}{
		{"3-1/2 less a strap of 0.15", 3.35, 3, 2},
		{"into the second by 0.972", 1.5 + 0.972, 3, 2},
		{"a little less", 1.5 + 0.97, 3, 1},
		{"within the first", 1.4, 3, 1},
		{"into the third by 0.98", 3.98, 3, 3},
		{"no more than there are", 6, 2, 2},
		{"one", 3.35, 1, 1},
	} {
		assert.Equal(t, c.n, pliesReached(c.deep, 0.162, 1.5, c.plies), c.name)
	}
}

// Of an uplift of 1, even on all plies: what the plies that nothing reaches hand on over one
// seam; with straps on both faces each holds its part of the nails. Girders 4-1/2 in wide.
func TestWhatPassesBetweenPliesByHand(t *testing.T) {
	for _, c := range []struct {
		name           string
		plies          int
		nails, reached [2]int
		passed, arm    float64
	}{
		{"one face, one of three", 3, [2]int{18, 0}, [2]int{1, 0}, 2.0 / 3, 2.25},
		{"one face, two of three", 3, [2]int{18, 0}, [2]int{2, 0}, 1.0 / 3, 2.25},
		{"the other face", 3, [2]int{0, 18}, [2]int{0, 2}, 1.0 / 3, 2.25},
		{"both, the middle one left: a third, half over each seam", 3, [2]int{9, 9}, [2]int{1, 1}, 1.0 / 6, 0},
		{"both, three to one: 3/4 less 1/3", 3, [2]int{27, 9}, [2]int{1, 1}, 5.0 / 12, 1.125},
		{"both, all reached", 3, [2]int{9, 9}, [2]int{2, 1}, 0, 0},
		{"one face, both of two", 2, [2]int{9, 0}, [2]int{2, 0}, 0, 2.25},
		{"one member", 1, [2]int{9, 0}, [2]int{1, 0}, 0, 2.25},
		{"no nails", 3, [2]int{}, [2]int{}, 0, 2.25},
	} {
		g := &framing.Member{}
		g.Section.Ply, g.Section.Breadth = 3, 1.5
		s := strappedPlies{girder: g, plies: c.plies, nails: c.nails, reached: c.reached}
		assert.InDelta(t, c.passed, s.passed(), 1e-12, c.name)
		if c.nails != [2]int{} {
			assert.InDelta(t, c.arm, s.arm(), 1e-12, c.name)
		}
	}
}

// The demo's pile GS-103: nails of 3-1/2 in through 9 gauge reach two plies of the 3-2x12,
// 3.35 in, so a third crosses the last seam. 16d common, 0.162 in, through 1-1/2 into
// 1-1/2 in of southern pine: mode IV, Z = d²/2.2 sqrt(2 x 5550 x 90000 / 6) (NDS 2018
// 12.3.1, transcribed) = 153.9, times 1.5/1.62 of penetration, 1.6 of wind, 0.7 wet:
// 159.6 lb. Three rows 5 in apart, half way to the piles at 10-15/16 and 184.
func TestPliesAtAPileByHand(t *testing.T) {
	r := demoReport(t)
	l := demand(t, r, "GS-103-GP", pliesCheck)
	both := demand(t, r, "GS-103-GP", "pile-overturning").Demand
	assert.InDelta(t, both/3, l.Demand, 0.01)
	assert.InDelta(t, demand(t, r, "GS-103-GP", "pile-overturning").Strength/3, l.Strength, 0.01)
	z := 0.162 * 0.162 / 2.2 * math.Sqrt(2*5550*90000/6.0) * 1.5 / 1.62 * 1.6 * 0.7
	assert.InDelta(t, 159.6, z, 0.1)
	assert.InDelta(t, 3*(184-10.9375)/2/5*z, l.Capacity.Value, 1)
	assert.InDelta(t, both*2.25, pliesTerm(l, "torsion"), 0.1)
	// An end pile: from the girder's end half way to the next.
	l = demand(t, r, "GS-11-GP", pliesCheck)
	assert.InDelta(t, 3*(10.9375+102.5)/2/5*z, l.Capacity.Value, 1)
	assert.Condition(t, func() bool {
		for _, s := range r.Unchecked {
			if strings.HasPrefix(s, "Torsion of girders") {
				return true
			}
		}
		return false
	}, "torsion is not checked, and told so")
}

// Without the order the third ply hangs on nothing: a gap. Twice the spacing leaves half of
// the nails; girders that are dry keep all that the nails hold.
func TestPliesByTheirOrder(t *testing.T) {
	const order = `girder_plies = { nail = "16d common", spacing = "5in", rows = 3 }`
	held := demand(t, demoReport(t), "GS-103-GP", pliesCheck).Capacity.Value
	require.Contains(t, demand(t, demoWith(t, order, "#"), "GS-103-GP", pliesCheck).Gap, "girder_plies")
	wide := demoWith(t, order, strings.Replace(order, "5in", "10in", 1))
	assert.InDelta(t, held/2, demand(t, wide, "GS-103-GP", pliesCheck).Capacity.Value, 1e-6)
	dry := demoWith(t, "[foundation]", "[loads]\nwet = [\"pile\"]\n\n[foundation]")
	assert.InDelta(t, held/0.7, demand(t, dry, "GS-103-GP", pliesCheck).Capacity.Value, 1e-6)
}

func pliesTerm(l *Link, word string) float64 {
	for _, x := range l.Terms {
		if strings.HasPrefix(x.Text, word) {
			return x.Value
		}
	}
	return math.NaN()
}
