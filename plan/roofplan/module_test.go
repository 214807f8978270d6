package roofplan

import (
	"math"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"
	"pgregory.net/rapid"

	"galewright/plan"
	"galewright/plan/geom"
	"galewright/plan/plantest"
)

// corner is an L: main 0..432 by 0..264 with a hip at its east end, whose face
// lies in one plane with the east side of a wing 192..432 by -216..0.
func corner(t require.TestingT) []*Body {
	main := body(t, "main", "gable", "x", pt(0, 0), pt(432, 264), 6, 0)
	main.Sides[East] = Side{Slope: 0.5, Height: main.Sides[South].Height, Over: 0}
	return []*Body{main, body(t, "wing", "gable", "y", pt(192, -216), pt(432, 0), 6, 0)}
}

// every returns the places from lo to hi, 16 apart.
func every(lo, hi float64) (out []float64) {
	for s := lo; s <= hi; s += 16 {
		out = append(out, s)
	}
	return out
}

// The hip's face has a rafter in the ridge's line, at y = 132, and jacks 16 apart
// from there; the wing's gable starts at -216, and 132 + 216 = 348 is 21 3/4 spaces.
// Both sides of the wing's ridge, which dies at y = 120, go by the hip's: -204 to
// 116 in 21 places, and one flush with the gable, 22 in all. Counted from the gable
// the west side would stand 4 in off the east side at each of them.
func TestBothSidesOfARidgeStandOnOneModule(t *testing.T) {
	r, faults := New(corner(t))
	require.Empty(t, faults)
	west, _ := stationsOf(faceOf(t, r, "wing", West))
	plantest.Near(t, append([]float64{-215.25}, every(-204, 116)...), west, 1e-9)
	east, flush := stationsOf(faceOf(t, r, "main", East))
	plantest.Near(t, append([]float64{-215.25}, every(-204, 260)...), east, 1e-9)
	assert.Equal(t, []float64{-215.25}, flush)
}

// A layout of the wing, 8 in from its gable, is -208 and every 16 from there on
// both sides; the hip keeps its rafter in the ridge's line, 4 in past the module's
// at 128.
func TestALayoutHoldsForTheWholeModule(t *testing.T) {
	bodies := corner(t)
	at := 8.0
	bodies[1].Layout = &at
	r, faults := New(bodies)
	require.Empty(t, faults)
	west, _ := stationsOf(faceOf(t, r, "wing", West))
	plantest.Near(t, append([]float64{-215.25}, every(-208, 112)...), west, 1e-9)
	east, _ := stationsOf(faceOf(t, r, "main", East))
	plantest.Near(t, append(append([]float64{-215.25}, every(-208, 128)...), append([]float64{132}, every(144, 256)...)...), east, 1e-9)
}

// A hip of 300 by 96 has its ridge from 48 to 252. With a layout of 8 the commons
// stand at 56, 72 ... 248; the pairs at the ridge's ends and the jacks beyond them,
// counted from there, pair across the hips all the same.
func TestALayoutLeavesTheJacksOfAHip(t *testing.T) {
	b, at := body(t, "a", "hip", "x", pt(0, 0), pt(300, 96), 6, 0), 8.0
	b.Layout = &at
	r, faults := New([]*Body{b})
	require.Empty(t, faults)
	for _, side := range []int{South, North} {
		got, _ := stationsOf(faceOf(t, r, "a", side))
		plantest.Near(t, append(append([]float64{16, 32, 48}, every(56, 248)...), 252, 268, 284), got, 1e-9)
	}
	ends, _ := stationsOf(faceOf(t, r, "a", East))
	plantest.Near(t, []float64{16, 32, 48, 64, 80}, ends, 1e-9)
}

// Two sheds back to back share a ridge: the shorter one's module would start at 10.
func TestShedsBackToBackShareAModule(t *testing.T) {
	a, b := body(t, "a", "shed", "x", pt(0, 0), pt(300, 72), 6, 0), body(t, "b", "shed", "x", pt(10, 72), pt(300, 144), 6, 0)
	b.Sides[North], b.Sides[South] = b.Sides[South], Side{}
	b.Sides[North].Height = a.Sides[South].Height
	r, faults := New([]*Body{a, b})
	require.Empty(t, faults)
	got, _ := stationsOf(faceOf(t, r, "b", North))
	plantest.Near(t, append(append([]float64{10.75}, every(16, 288)...), 299.25), got, 1e-9)
}

// Of two layouts on one module the later is refused where it is off by more than
// a mark of the tape. The second roof starts at 240, 15 spaces from the first one's.
func TestLayoutsThatDifferAreTold(t *testing.T) {
	for _, c := range []struct {
		second float64
		faults int
	}{{0, 0}, {16, 0}, {4, 1}, {12, 1}} {
		a, b := body(t, "a", "gable", "x", pt(0, 0), pt(240, 144), 6, 0), body(t, "b", "gable", "x", pt(240, 0), pt(400, 144), 6, 0)
		zero := 0.0
		a.Layout, b.Layout = &zero, &c.second
		_, faults := New([]*Body{a, b})
		require.Len(t, faults, c.faults, "%v", c.second)
		for _, f := range faults {
			assert.Equal(t, plan.Code("rafter-layouts-differ"), f.Code)
			assert.Equal(t, "b", f.Body.Name)
		}
	}
}

// Wherever a face lies on the other side of a ridge, a rafter that comes up to the
// ridge has one opposite.
func TestRaftersMeetInPairsAtRidges(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		bodies := drawRoof(t)
		if rapid.Bool().Draw(t, "corner") {
			bodies = corner(t)
			bodies[1].Lo.Y = -12 * float64(rapid.IntRange(6, 20).Draw(t, "length"))
			bodies[1].Lo.X = 432 - 12*float64(rapid.IntRange(8, 20).Draw(t, "width"))
		}
		r, _ := New(bodies)
		paired := 0
		for _, run := range r.Runs() {
			if run.HighEnd.Kind != Ridge || run.HighEnd.Line == nil {
				continue
			}
			up := run.Face.Uphill()
			_, g, ok := r.Height(run.High.Add(up.Mul(2)))
			if !ok || g.Uphill().Dot(up) > -0.99 || ends(run, 4) {
				continue
			}
			has := func() bool {
				for _, s := range g.stations() {
					if math.Abs(s.at-run.Station) < 1e-6 {
						return true
					}
				}
				return false
			}()
			require.True(t, has, "%s at %v", run.Face.Body.Name, run.Station)
			paired++
		}
		if len(bodies) == 2 && bodies[1].Name == "wing" {
			require.Positive(t, paired)
		}
	})
}

// ends tells whether a run comes up to its ridge within d of the ridge's end.
func ends(run *Run, d float64) bool {
	l := run.HighEnd.Line
	near := func(p geom.Vec3) bool { return p.Flat().Sub(run.High).Len() < d }
	return near(l.A) || near(l.B)
}
