package timber

import (
	"math/rand/v2"
	"testing"

	"github.com/stretchr/testify/assert"
)

// randomDowel draws a dowel from the range that house framing uses and a
// little beyond.
func randomDowel(r *rand.Rand) Dowel {
	span := func(lo, hi float64) float64 { return lo + (hi-lo)*r.Float64() }
	return Dowel{
		D: span(0.099, 1), Fyb: span(45_000, 130_000), Fem: span(1_500, 12_000), Fes: span(1_500, 87_000),
		Lm: span(0.3, 8), Ls: span(0.03, 4), Angle: span(0, 90),
	}
}

func TestGeneralEquationsWithoutGap(t *testing.T) {
	// Property: at g = 0 the general dowel equations (AWC TR12, from memory)
	// are NDS 2018 Table 12.3.1A mode by mode. The NDS form is checked against
	// published cells elsewhere in this package.
	r := rand.New(rand.NewPCG(12, 31))
	for range 5_000 {
		d := randomDowel(r)
		nds, general := d.SingleShear(), GapDowel{Dowel: d}.SingleShear()
		assert.Equal(t, nds.Mode, general.Mode, "%+v", d)
		for i, want := range nds.Modes {
			assert.Equal(t, want.Name, general.Modes[i].Name)
			assert.InEpsilon(t, want.Z, general.Modes[i].Z, 1e-9, "%s of %+v", want.Name, d)
		}
	}
}

func TestGapTakesStrengthAway(t *testing.T) {
	// Property of the equations: a gap never helps, and it changes nothing in
	// the two modes of plain bearing.
	r := rand.New(rand.NewPCG(5, 8))
	for range 2_000 {
		d := randomDowel(r)
		last := GapDowel{Dowel: d}.SingleShear()
		for _, gap := range []float64{0.1, 0.4375, 1, 2} {
			y := GapDowel{Dowel: d, Gap: gap}.SingleShear()
			assert.LessOrEqual(t, y.Z, last.Z)
			assert.Equal(t, last.Modes[0], y.Modes[0])
			assert.Equal(t, last.Modes[1], y.Modes[1])
			for i := 2; i < 6; i++ {
				assert.Less(t, y.Modes[i].Z, last.Modes[i].Z)
			}
			last = y
		}
	}
}

func TestGapBalance(t *testing.T) {
	// Statics worked by hand, not published: in mode IV the two hinges carry
	// P (g + P/2qs + P/2qm) = 2 M. With qs = qm = 1000 lb/in, M = 25 lb in and
	// g = 0.05 in, P = 200 lb: 200 (0.05 + 0.1 + 0.1) = 50.
	d := Dowel{D: 0.1, Fyb: 150_000, Fem: 10_000, Fes: 10_000, Lm: 50, Ls: 50}
	y := GapDowel{Dowel: d, Gap: 0.05}.SingleShear()
	assert.Equal(t, "IV", y.Mode)
	assert.InDelta(t, 200/2.2, y.Z, 1e-9)
}

func TestReductionOfThinRoots(t *testing.T) {
	// NDS 2018 Table 12.3.1B footnote 1 (transcribed): 1/4 lag, root 0.173.
	lag := GapDowel{Dowel: Dowel{D: 0.173, Angle: 90}, Nominal: 0.25}
	a, b, c := lag.reduction()
	assert.InDeltaSlice(t, []float64{2.23 * 1.25, 2.23 * 1.25, 2.23 * 1.25}, []float64{a, b, c}, 1e-12)
	lag.Angle = 0
	a, _, _ = lag.reduction()
	assert.InDelta(t, 2.23, a, 1e-12)
	nail := GapDowel{Dowel: Dowel{D: 0.162, Angle: 90}, Nominal: 0.162}
	a, _, _ = nail.reduction()
	assert.Equal(t, 2.2, a)
}
