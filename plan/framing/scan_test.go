package framing

import (
	"cmp"
	"math"
	"slices"
	"testing"

	"github.com/stretchr/testify/require"

	"galewright/plan"
	"galewright/plan/geom"
)

// A floor is scanned by bands as wide as a joist: a joist lies where its whole
// band is inside of the rims. The figures are by hand: rims are 1 1/2 in, the
// joists run north, 16 in on center from the west.
func TestJoistsFillTheOutlineAndNothingElse(t *testing.T) {
	type row struct{ lo, hi float64 }
	cases := []struct {
		name  string
		loops [][]geom.Vec2
		want  map[float64][]row // joists at an x: from and to, south to north
		rows  int               // joists in all
	}{
		{"L", [][]geom.Vec2{{{}, {X: 320}, {X: 320, Y: 160}, {X: 160, Y: 160}, {X: 160, Y: 320}, {Y: 320}}}, map[float64][]row{
			16: {{1.5, 318.5}}, 144: {{1.5, 318.5}},
			160: {{1.5, 158.5}}, // half of it would lie in the upper part's rim
			176: {{1.5, 158.5}}, 304: {{1.5, 158.5}},
		}, 19},
		{"L that faces the other way", [][]geom.Vec2{{{}, {X: 320}, {X: 320, Y: 320}, {X: 160, Y: 320}, {X: 160, Y: 160}, {Y: 160}}}, map[float64][]row{
			16: {{1.5, 158.5}}, 160: {{1.5, 158.5}}, 176: {{1.5, 318.5}}, 304: {{1.5, 318.5}},
		}, 19},
		{"U open to the north", [][]geom.Vec2{{{}, {X: 480}, {X: 480, Y: 320}, {X: 320, Y: 320}, {X: 320, Y: 120}, {X: 160, Y: 120}, {X: 160, Y: 320}, {Y: 320}}}, map[float64][]row{
			144: {{1.5, 318.5}}, 176: {{1.5, 118.5}}, 304: {{1.5, 118.5}}, 336: {{1.5, 318.5}}, 464: {{1.5, 318.5}},
		}, 29},
		{"U open to the east", [][]geom.Vec2{{{}, {X: 320}, {X: 320, Y: 100}, {X: 120, Y: 100}, {X: 120, Y: 220}, {X: 320, Y: 220}, {X: 320, Y: 320}, {Y: 320}}}, map[float64][]row{
			112: {{1.5, 318.5}},
			128: {{1.5, 98.5}, {221.5, 318.5}}, 304: {{1.5, 98.5}, {221.5, 318.5}},
		}, 7 + 2*12},
		{"court", [][]geom.Vec2{rect(0, 0, 480, 480), {{X: 160, Y: 160}, {X: 160, Y: 320}, {X: 320, Y: 320}, {X: 320, Y: 160}}}, map[float64][]row{
			144: {{1.5, 478.5}}, 176: {{1.5, 158.5}, {321.5, 478.5}}, 304: {{1.5, 158.5}, {321.5, 478.5}}, 336: {{1.5, 478.5}},
			160: {{1.5, 158.5}, {321.5, 478.5}},
		}, 9 + 2*11 + 9},
		{"two houses side by side", [][]geom.Vec2{rect(0, 0, 160, 200), rect(240, 40, 400, 300)}, map[float64][]row{
			144: {{1.5, 198.5}}, 256: {{41.5, 298.5}}, 384: {{41.5, 298.5}},
		}, 9 + 9},
	}
	for _, c := range cases {
		t.Run(c.name, func(t *testing.T) {
			h := frame(t, scanned(c.loops, ""))
			got := map[float64][]row{}
			for _, m := range roles(h, plan.Joist) {
				got[m.A.X] = append(got[m.A.X], row{m.A.Y, m.B.Y})
			}
			n := 0
			for _, list := range got {
				slices.SortFunc(list, func(a, b row) int { return cmp.Compare(a.lo, b.lo) })
				n += len(list)
			}
			require.Equal(t, c.rows, n)
			for x, want := range c.want {
				require.Len(t, got[x], len(want), "x %g", x)
				for i, r := range want {
					require.InDelta(t, r.lo, got[x][i].lo, 1e-5, "x %g", x)
					require.InDelta(t, r.hi, got[x][i].hi, 1e-5, "x %g", x)
				}
			}
			sound(t, h)
		})
	}
}

// scanned returns a house on the loops, with joists that need no support.
func scanned(loops [][]geom.Vec2, run plan.Axis) *plan.Plan {
	p := stories(1)
	p.Lumber.Stock = []float64{600}
	p.Levels[0].JoistRun = run
	for k, pts := range loops {
		for _, w := range ring(p, 0, pts...) {
			w.Name = string(rune('p'+k)) + w.Name
		}
	}
	return p
}

// Turned joists fill the same outline turned: what runs north in an L runs
// east in its mirror image about the diagonal.
func TestJoistsRunningEastFillTheMirroredOutline(t *testing.T) {
	shape := []geom.Vec2{{}, {X: 480}, {X: 480, Y: 320}, {X: 320, Y: 320}, {X: 320, Y: 120}, {X: 160, Y: 120}, {X: 160, Y: 240}, {Y: 240}}
	var swapped []geom.Vec2
	for _, p := range shape {
		swapped = append([]geom.Vec2{{X: p.Y, Y: p.X}}, swapped...)
	}
	type stick struct{ c, lo, hi float64 }
	places := func(h *House, north bool) (out []stick) {
		for _, m := range roles(h, plan.Joist) {
			s := stick{m.A.X, m.A.Y, m.B.Y}
			if !north {
				s = stick{m.A.Y, m.A.X, m.B.X}
			}
			out = append(out, s)
		}
		slices.SortFunc(out, func(a, b stick) int { return cmp.Or(cmp.Compare(a.c, b.c), cmp.Compare(a.lo, b.lo)) })
		return out
	}
	a := places(frame(t, scanned([][]geom.Vec2{shape}, "y")), true)
	b := places(frame(t, scanned([][]geom.Vec2{swapped}, "x")), false)
	require.NotEmpty(t, a)
	require.Len(t, b, len(a))
	for i := range a {
		require.InDelta(t, a[i].c, b[i].c, 1e-9)
		require.InDelta(t, a[i].lo, b[i].lo, 1e-5)
		require.InDelta(t, a[i].hi, b[i].hi, 1e-5)
	}
}

// A bay turns the outline by 45 degrees: its joists are cut along the slant rims, which
// their center lines meet.
func TestJoistsEndAtSlantRims(t *testing.T) {
	bay := []geom.Vec2{{}, {X: 120}, {X: 168, Y: -48}, {X: 264, Y: -48}, {X: 312}, {X: 432}, {X: 432, Y: 192}, {Y: 192}}
	h := frame(t, scanned([][]geom.Vec2{bay}, "y"))
	for _, m := range roles(h, plan.Joist) {
		x, south := m.A.X, 1.5
		switch slant := 1.5 * math.Sqrt2; {
		case x > 168 && x < 264:
			south = -48 + 1.5
		case x > 120 && x < 168:
			south = -(x - 120) + slant
		case x > 264 && x < 312:
			south = -(312 - x) + slant
		}
		require.InDelta(t, min(south, 1.5), m.A.Y, 1e-4, "x %g", x)
		require.InDelta(t, 190.5, m.B.Y, 1e-5)
	}
	sound(t, h)
}

// The point of a notch lies in the middle of a joist's band, so neither of
// the joist's sides sees it.
func TestJoistStopsAtAPointBetweenItsSides(t *testing.T) {
	notch := []geom.Vec2{{}, {X: 128}, {X: 176, Y: 48}, {X: 224}, {X: 352}, {X: 352, Y: 192}, {Y: 192}}
	h := frame(t, scanned([][]geom.Vec2{notch}, "y"))
	for _, m := range roles(h, plan.Joist) {
		if m.A.X == 176 {
			require.InDelta(t, 48+1.5*math.Sqrt2, m.A.Y, 1e-4)
			sound(t, h)
			return
		}
	}
	require.Fail(t, "no joist at 176")
}
