package timber

import (
	"math"
	"math/rand/v2"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"
)

func TestWithdrawalPerInch(t *testing.T) {
	// NDS 2018 Tables 12.2A p.77, 12.2B p.78, 12.2C p.79 (transcribed).
	lag := func(d float64) Fastener { f, _ := LagOf(d, 6); return f }
	screw := func(n int) Fastener { f, _ := ScrewOf(n, 3); return f }
	for _, c := range []struct {
		f       Fastener
		g, want float64
	}{
		{lag(0.25), 0.50, 225},
		{lag(0.375), 0.42, 235},
		{screw(10), 0.50, 135},
		{screw(8), 0.42, 82},
		{of(t, "8d"), 0.50, 32},
	} {
		assert.Equal(t, c.want, math.Round(c.f.perInch(c.g)), "%v", c.f)
	}
	// Equations 12.2-4 and 12.2-5 (transcribed), worked by hand: 0.131 in, G 0.5.
	n := of(t, "8d")
	n.Shank = Ring
	assert.InDelta(t, 58.95, n.perInch(0.5), 1e-9)
	n.Shank = Stainless
	assert.InDelta(t, 21.537, n.perInch(0.5), 1e-3)
}

func TestPullThroughGoverns(t *testing.T) {
	// Hand calculation beside a transcription of NDS 2018 12.2.5: 20d through
	// 5/16 in, G 0.50: 68.75 lb of the head against 172.7 of the shank.
	v, err := Pull{Fastener: of(t, "20d"), Side: Part{Thickness: 5. / 16, G: 0.5}, Main: Part{Thickness: 5, G: 0.5}, Condition: windy}.Value()
	require.NoError(t, err)
	assert.Equal(t, "head pull-through", v.Governs)
	assert.InDelta(t, 68.75, v.Head, 0.01) // 68.757, printed cut off
	assert.InDelta(t, 172.7, v.Withdrawal, 0.05)
	assert.InDelta(t, v.Head*1.6, v.Allow, 1e-9)
}

func TestPullLengths(t *testing.T) {
	// Worked by hand by NDS 2018 12.2.1.2, 12.2.2.2 and Tables L2, L3
	// (transcribed): the thread that stands in the main member.
	lag, _ := LagOf(0.5, 6) // thread from 2.5 in to the tip, less 5/16
	v, err := Pull{Fastener: lag, Side: Part{Thickness: 0.25, Steel: true}, Main: Part{Thickness: 9, G: 0.5}, Condition: windy}.Value()
	require.NoError(t, err)
	assert.InDelta(t, 6-2.5-5./16, v.Length, 1e-9)
	lag.Length, lag.Thread = 6, 6
	v, err = Pull{Fastener: lag, Side: Part{Thickness: 0.25, Steel: true}, Main: Part{Thickness: 3.5, G: 0.5}, Condition: windy}.Value()
	require.NoError(t, err)
	assert.InDelta(t, 3.5, v.Length, 1e-9, "the tip is through")
	screw, _ := ScrewOf(10, 3)
	v, err = Pull{Fastener: screw, Side: Part{Thickness: 0.06, Steel: true}, Main: Part{Thickness: 5, G: 0.5}, Condition: windy}.Value()
	require.NoError(t, err)
	assert.InDelta(t, 2, v.Length, 1e-9)
	assert.Zero(t, v.Head)
}

func TestPullIntoEndGrain(t *testing.T) {
	// NDS 2018 12.2.3.3 and timber notes on 12.2.1, 12.2.2 (transcribed).
	into := Condition{Duration: TenYears, EndGrain: true}
	side, post := Part{Thickness: 0.06, Steel: true}, Part{Thickness: 5, G: 0.5}
	screw, _ := ScrewOf(10, 3)
	for _, f := range []Fastener{of(t, "16d"), screw} {
		v, err := Pull{Fastener: f, Side: side, Main: post, Condition: into}.Value()
		require.NoError(t, err)
		assert.Zero(t, v.Allow)
		assert.Contains(t, v.Nothing, "end grain")
	}
	lag, _ := LagOf(0.375, 4)
	v, err := Pull{Fastener: lag, Side: side, Main: post, Condition: into}.Value()
	require.NoError(t, err)
	assert.Equal(t, "Ceg 0.75", v.Factors.String())
	assert.InDelta(t, v.Withdrawal*0.75, v.Allow, 1e-9)
}

func TestPullRefusals(t *testing.T) {
	side := Part{Thickness: 0.06, Steel: true}
	_, err := Pull{Fastener: of(t, "8d"), Side: side, Main: Part{Thickness: 3, G: 0.3}, Condition: windy}.Value()
	assert.ErrorContains(t, err, "0.31")
	_, err = Pull{Fastener: of(t, "8d"), Side: side, Main: Part{Thickness: 3, G: 0.5}}.Value()
	assert.ErrorContains(t, err, "duration")
	v, err := Pull{Fastener: of(t, "8d"), Side: side, Main: Part{Thickness: 0.7, G: 0.5}, Condition: windy}.Value()
	require.NoError(t, err)
	assert.Contains(t, v.Nothing, "least")
	v, err = Pull{Fastener: Bolt(0.5, 9), Side: side, Main: Part{Thickness: 3, G: 0.5}, Condition: windy}.Value()
	require.NoError(t, err)
	assert.Contains(t, v.Nothing, "nut")
}

func TestPullMoisture(t *testing.T) {
	// NDS 2018 Table 11.3.3 (transcribed): nail that dries 0.25, screw 1.0, used
	// wet 0.7.
	side, main := Part{Thickness: 0.06, Steel: true}, Part{Thickness: 5, G: 0.5}
	dries, wet := Condition{Duration: TenYears, WetMade: true}, Condition{Duration: TenYears, WetMade: true, WetUse: true}
	lag, _ := LagOf(0.375, 4)
	for _, c := range []struct {
		f    Fastener
		cond Condition
		want float64
	}{{of(t, "8d"), dries, 0.25}, {of(t, "8d"), wet, 1}, {lag, dries, 1}, {lag, wet, 0.7}} {
		v, err := Pull{Fastener: c.f, Side: side, Main: main, Condition: c.cond}.Value()
		require.NoError(t, err)
		assert.InDelta(t, c.want, v.Factors.Product(), 1e-12)
	}
}

func TestTogether(t *testing.T) {
	// Hand test beside a transcription of NDS 2018 12.4-1 and 12.4-2: both
	// capacities 100 at 45 degrees.
	assert.InDelta(t, 70.71, Together(NailKind, 100, 100, 1, 1).Allow, 0.005)
	assert.InDelta(t, 100, Together(WoodScrew, 100, 100, 1, 1).Allow, 1e-9)
	assert.InDelta(t, 100, Together(LagScrew, 100, 100, 1, 1).Allow, 1e-9)

	// Equation 12.4-2 at pure lateral and pure withdrawal load.
	assert.InDelta(t, 100, Together(NailKind, 100, 40, 1, 0).Allow, 1e-9)
	assert.InDelta(t, 40, Together(NailKind, 100, 40, 0, 1).Allow, 1e-9)

	r := rand.New(rand.NewPCG(4, 12))
	for range 500 {
		z, w, v, u := 50+100*r.Float64(), 20+100*r.Float64(), 100*r.Float64(), 100*r.Float64()
		got := Together(NailKind, z, w, v, u)
		sin, cos := math.Sincos(math.Atan2(u, v)) // 12.4-2
		assert.InEpsilon(t, w*z/(w*cos+z*sin), got.Allow, 1e-9)
		// Along the resultant the nail's interaction is linear (property of 12.4-2).
		assert.InEpsilon(t, v/z+u/w, got.Ratio, 1e-9)
	}
	none := Together(NailKind, 100, 0, 30, 0)
	assert.InDelta(t, 0.3, none.Ratio, 1e-9, "no withdrawal is asked of end grain")
	assert.True(t, math.IsInf(Together(NailKind, 100, 0, 30, 1).Ratio, 1))
	assert.Zero(t, Together(NailKind, 100, 50, 0, 0).Ratio)
}
