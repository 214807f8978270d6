package roofplan

import (
	"math"
	"testing"

	"github.com/stretchr/testify/require"

	"galewright/plan"
	"galewright/plan/geom"
)

// body returns a body between two corners; heights are 100 in at all walls.
func body(t require.TestingT, name string, kind plan.RoofKind, axis plan.Axis, lo, hi geom.Vec2, pitch, over float64) *Body {
	b := &Body{Name: name, Axis: axis, Lo: lo, Hi: hi, Spacing: 16, Thick: 1.5}
	slopes, err := Slopes(kind, Shape{Axis: axis, Slope: pitch / 12, High: "N"})
	require.NoError(t, err)
	for i, m := range slopes {
		b.Sides[i] = Side{Slope: m, Height: 100, Over: over}
	}
	return b
}

// hipRoof returns a hip roof without overhang over a run and a rise in 12.
func hipRoof(t require.TestingT, run, rise float64) *Roof {
	r, faults := New([]*Body{body(t, "main", "hip", "x", geom.Vec2{}, geom.Vec2{X: 6 * run, Y: 2 * run}, rise, 0)})
	require.Empty(t, faults)
	return r
}

func firstOf(r *Roof, kind EdgeKind) *Line {
	for _, l := range r.Lines {
		if l.Kind == kind {
			return l
		}
	}
	return nil
}

// The published cells of the framing square: NAVEDTRA 14044 and EN0069A,
// read. The hip's unit run, 16.97, is in the first of them too.
func TestUnitLengthsOfTheFramingSquare(t *testing.T) {
	for _, c := range []struct {
		part      string
		rise      float64
		published float64
	}{
		{"common", 7, 13.89},
		{"common", 13, 17.69},
		{"common", 16, 20.00},
		{"hip", 8, 18.76},
		{"hip run", 8, 16.97},
	} {
		r := hipRoof(t, 12, c.rise)
		got := 0.0
		switch l := firstOf(r, Hip); c.part {
		case "hip":
			got = l.B.Sub(l.A).Len()
		case "hip run":
			got = l.Run()
		default:
			for _, run := range r.Runs() {
				if run.Kind == Common {
					got = run.Length()
				}
			}
		}
		require.InDelta(t, c.published, got, 0.005, "%s, %g in 12", c.part, c.rise)
	}
}

// NAVEDTRA 14044, fig. 2-17, read: rise 7, span 16 ft: 13.89 x 8 = 111.12
// in; the printed product carries the rounding of 13.89, 0.04 in.
func TestCommonRafterWorkedExample(t *testing.T) {
	r, _ := New([]*Body{body(t, "main", "gable", "x", geom.Vec2{}, geom.Vec2{X: 240, Y: 16 * 12}, 7, 0)})
	require.InDelta(t, 111.12, r.Runs()[0].Length(), 0.04)
}

// NAVEDTRA 14044, hip example, read: rise 8, run 15 ft: total rise 10 ft,
// hip run 21.21 ft, hip 23.45 ft.
func TestHipRafterWorkedExample(t *testing.T) {
	l := firstOf(hipRoof(t, 15*12, 8), Hip)
	require.InDelta(t, 10.0, (l.B.Z-l.A.Z)/12, 1e-9)
	require.InDelta(t, 21.21, l.Run()/12, 0.005)
	require.InDelta(t, 23.45, l.B.Sub(l.A).Len()/12, 0.005)
}

// Jacks differ by spacing x common unit length / 12: published rule (the
// same manuals, read); for rise 7 and 16 in that is 16 x 13.89 / 12.
func TestJacksDifferByTheCommonDifference(t *testing.T) {
	var jacks []float64
	r := hipRoof(t, 12*12, 7)
	for _, run := range r.Runs() {
		if run.Kind == HipJack && run.Face.Side == South && run.Station < 12*12 {
			jacks = append(jacks, run.Length())
		}
	}
	require.Greater(t, len(jacks), 5)
	for i := 1; i < len(jacks); i++ {
		require.InDelta(t, 16*13.89/12, jacks[i]-jacks[i-1], 0.01)
	}
}

// Jacks of both sides of a hip meet in pairs.
func TestJacksPairAtTheHip(t *testing.T) {
	r := hipRoof(t, 120, 6)
	ends := map[[2]int]int{}
	for _, run := range r.Runs() {
		if run.Kind == HipJack {
			ends[[2]int{int(math.Round(run.High.X)), int(math.Round(run.High.Y))}]++
		}
	}
	require.NotEmpty(t, ends)
	for p, n := range ends {
		require.Equal(t, 2, n, "jacks at %v", p)
	}
}
