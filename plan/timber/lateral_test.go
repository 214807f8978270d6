package timber

import (
	"math"
	"math/rand/v2"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"
)

// of returns the table's nail as a fastener.
func of(t *testing.T, name string) Fastener {
	t.Helper()
	f, ok := FastenerOf(nail(t, name))
	require.True(t, ok)
	return f
}

// windy is the load duration of wind.
var windy = Condition{Duration: WindDuration}

func TestLeastPenetrationBoundary(t *testing.T) {
	// Boundary tests worked by hand beside a transcription of NDS 2018
	// 12.1.4.6, 12.1.5.6, 12.1.6.4 (transcribed).
	lag := func(l float64) Fastener { f, _ := LagOf(0.5, l); return f }
	screw := func(l float64) Fastener { f, _ := ScrewOf(10, l); return f }
	for _, c := range []struct {
		f     Fastener
		main  float64
		p     float64
		holds bool
	}{
		{lag(3.8125), 6, 2.000, true},
		{lag(3.8025), 6, 1.990, false},
		{screw(2.64), 6, 1.14, true},
		{screw(2.63), 6, 1.13, false},
		{of(t, "16d common"), 0.75, 0.75, false},
		{of(t, "16d common"), 0, 0, false},
	} {
		v, err := Lateral{Fastener: c.f, Side: Part{Thickness: 1.5, G: 0.5}, Main: Part{Thickness: c.main, G: 0.5}, Condition: windy}.Value()
		require.NoError(t, err)
		assert.InDelta(t, c.p, v.Driven.P, 1e-9, "%v", c.f)
		assert.Equal(t, c.holds, v.Nothing == "", "%v: %s", c.f, v.Nothing)
		assert.Equal(t, c.holds, v.Allow > 0)
		if !c.holds {
			assert.Contains(t, v.Nothing, "transcribed")
		}
	}
}

func TestFullPenetrationIsTheOldAnswer(t *testing.T) {
	// AWC Structural Wood Design Examples 2015/2018, E2.2, pp.86-90
	// (transcribed): 105 lb, mode IIIs; p 2.25 in is beyond 10D.
	v, err := Lateral{Fastener: of(t, "10d common"), Side: Part{Thickness: 0.75, G: 0.5}, Main: Part{Thickness: 2.5, G: 0.5}, Condition: Condition{Duration: TenYears}}.Value()
	require.NoError(t, err)
	assert.Equal(t, 105.0, math.Round(v.Allow))
	assert.Equal(t, "IIIs", v.Mode)
	assert.Equal(t, "full penetration", v.Way)
	assert.Equal(t, "no factor", v.Factors.String())
}

func TestShortNailTakesTheLowerWay(t *testing.T) {
	// Arithmetic of the rules, not published: 10d x 1-1/2 through a steel strap
	// of 0.036 in and 7/16 in of sheathing. p = 1.0265 in, between 6D = 0.888
	// and 1.48 = 10D.
	l := Lateral{Fastener: of(t, "10d x 1-1/2"), Side: Part{Thickness: 0.036, Steel: true}, Gap: 7. / 16, Main: Part{Thickness: 3.5, G: 0.55}, Condition: windy}
	v, err := l.Value()
	require.NoError(t, err)
	assert.InDelta(t, 1.0265, v.Driven.P, 1e-9)
	assert.InDelta(t, v.Driven.P-0.148, v.Driven.Bearing, 1e-9)
	assert.Equal(t, "table value times p/10D", v.Way)
	assert.Less(t, v.Table, v.Equation)
	assert.Equal(t, "p/10D", v.Factors[0].Name)
	assert.InDelta(t, 1.0265/1.48, v.Factors[0].Value, 1e-9)
	assert.InDelta(t, v.Table*1.6, v.Allow, 1e-9)
	assert.InDelta(t, v.Z*v.Factors.Product(), v.Allow, 1e-9)

	// The same nail straight on the wood of a 2x has its 123.2 lb less the
	// little that p = 1.464 of 1.48 in takes.
	l.Gap, l.Main.Thickness = 0, 1.5
	v, err = l.Value()
	require.NoError(t, err)
	assert.InDelta(t, 123.2*1.464/1.48, v.Table, 0.05)
}

func TestEquationsCanGovern(t *testing.T) {
	// Arithmetic, not published: a thin nail that reaches 6.2D into light wood
	// behind sheathing turns over in it (mode II) before p/10D of a full nail.
	const d = 0.099
	l := Lateral{
		Fastener: Fastener{Kind: NailKind, D: d, Root: d, Length: 0.036 + 0.4375 + 6.2*d, Tip: 2 * d, Fyb: 1e5},
		Side:     Part{Thickness: 0.036, Steel: true}, Gap: 0.4375, Main: Part{Thickness: 3, G: 0.31}, Condition: windy,
	}
	v, err := l.Value()
	require.NoError(t, err)
	assert.Equal(t, "yield equations with the true length", v.Way)
	assert.Equal(t, "II", v.Mode)
	assert.Less(t, v.Equation, v.Table)
	assert.InDelta(t, v.Equation*1.6, v.Allow, 1e-9)
	assert.Equal(t, 1.0, v.Factors[0].Value)
}

func TestLateralProperties(t *testing.T) {
	// Properties of the rules: never more than the equations alone; a longer
	// fastener, less gap, more wood never hold less.
	r := rand.New(rand.NewPCG(2, 6))
	for range 1_000 {
		g := 0.35 + 0.25*r.Float64()
		l := Lateral{Side: Part{Thickness: 0.03 + 0.2*r.Float64(), Steel: true}, Gap: r.Float64(), Main: Part{Thickness: 0.5 + 5*r.Float64(), G: g}, MainAngle: 90 * r.Float64(), Condition: windy}
		switch r.IntN(3) {
		case 0:
			l.Fastener = of(t, nails[r.IntN(len(nails))].Name)
		case 1:
			l.Fastener, _ = ScrewOf(10, 1+4*r.Float64())
		case 2:
			l.Fastener, _ = LagOf(0.375, 2+4*r.Float64())
		}
		v, err := l.Value()
		require.NoError(t, err)
		if v.Nothing == "" {
			assert.LessOrEqual(t, v.Z*v.Factors[0].Value, v.Equation+1e-9)
		}
		more := l
		more.Gap *= 0.9
		more.Main.Thickness *= 1.1
		w, err := more.Value()
		require.NoError(t, err)
		assert.GreaterOrEqual(t, w.Allow, v.Allow-1e-9, "%+v", l)
	}
}

func TestEndGrain(t *testing.T) {
	// NDS 2018 12.5.2.2: Ceg 0.67, and Fe across the grain from 1/4 in up
	// (transcribed).
	strap, post := Part{Thickness: 0.06, Steel: true}, Part{Thickness: 8, G: 0.5}
	into := Condition{Duration: TenYears, EndGrain: true}
	n, err := Lateral{Fastener: of(t, "16d common"), Side: strap, Main: post, Condition: into}.Value()
	require.NoError(t, err)
	assert.InDelta(t, 138*0.67, n.Allow, 0.5) // 138: Table 12P, transcribed
	assert.Equal(t, "Ceg 0.67", n.Factors.String())

	lag, _ := LagOf(0.5, 6)
	v, err := Lateral{Fastener: lag, Side: Part{Thickness: 0.25, Steel: true}, Main: post, Condition: into}.Value()
	require.NoError(t, err)
	assert.InDelta(t, 320*0.67, v.Allow, 5) // 320: Table 12K across the grain, transcribed
	assert.Equal(t, 90.0, v.Dowel.Angle)
}

func TestChainOfLargeFasteners(t *testing.T) {
	// NDS 2018 Table 11.3.3 p.67 (transcribed).
	lag, _ := LagOf(0.5, 6)
	l := Lateral{Fastener: lag, Side: Part{Thickness: 1.5, G: 0.5}, Main: Part{Thickness: 5.5, G: 0.5}}
	for _, c := range []struct {
		cond Condition
		row  bool
		want float64
	}{
		{Condition{Duration: TenYears, WetMade: true}, false, 0.4},
		{Condition{Duration: TenYears, WetMade: true}, true, 1},
		{Condition{Duration: TenYears, WetMade: true, WetUse: true}, true, 0.7},
		{Condition{Duration: TenYears, Diaphragm: true}, false, 1},
	} {
		l.Condition, l.OneRow = c.cond, c.row
		assert.InDelta(t, c.want, l.chain().Product(), 1e-12)
	}
	l.Group, l.Geometry = Factor{"Cg", 0.96, "x"}, Factor{"Cdelta", 0.5, "y"}
	l.Condition = windy
	assert.Equal(t, "CD 1.6 x Cg 0.96 x Cdelta 0.5", l.chain().String())
	l.Group = Factor{}
	assert.Contains(t, l.chain()[3].Source, "assumed")
}

func TestBoltHasToComeThrough(t *testing.T) {
	l := Lateral{Fastener: Bolt(0.5, 5), Side: Part{Thickness: 1.5, G: 0.5}, Main: Part{Thickness: 3.5, G: 0.5}, Condition: windy}
	v, err := l.Value()
	require.NoError(t, err)
	assert.InDelta(t, 615*1.6, v.Allow, 1) // 615: arithmetic of the equations
	l.Fastener.Length = 4.9
	v, err = l.Value()
	require.NoError(t, err)
	assert.Contains(t, v.Nothing, "nut")
	assert.Zero(t, v.Allow)
}

func TestLateralRefusesNonsense(t *testing.T) {
	good := Lateral{Fastener: of(t, "8d"), Side: Part{Thickness: 0.06, Steel: true}, Main: Part{Thickness: 3, G: 0.5}, Condition: windy}
	for want, spoil := range map[string]func(l *Lateral){
		"has to be wood":   func(l *Lateral) { l.Main.Steel = true },
		"bending yield":    func(l *Lateral) { l.Fastener.Fyb = 0 },
		"gap of -0.5":      func(l *Lateral) { l.Gap = -0.5 },
		"specific gravity": func(l *Lateral) { l.Main.G = 0 },
		"duration":         func(l *Lateral) { l.Condition.Duration = 0 },
		"toe-nail":         func(l *Lateral) { l.Condition.ToeNail = true },
	} {
		l := good
		spoil(&l)
		_, err := l.Value()
		assert.ErrorContains(t, err, want)
	}
}

func TestEquationIsThatOfSingleNail(t *testing.T) {
	// Property: without a gap the equations of Lateral are those of SingleNail,
	// which is held to published cells, and both refuse the same nails.
	for _, n := range nails {
		f, ok := FastenerOf(n)
		require.True(t, ok, n.Name)
		for _, side := range []Part{{Thickness: 0.036, Steel: true}, {Thickness: 0.25, Steel: true}, {Thickness: 0.75, G: 0.42}, {Thickness: 1.5, G: 0.55}} {
			for _, main := range []float64{0.75, 1.5, 3.5, 7} {
				wood := Part{Thickness: main, G: 0.5}
				old, err := SingleNail(n, side, wood)
				v, bad := Lateral{Fastener: f, Side: side, Main: wood, Condition: windy}.Value()
				require.NoError(t, bad)
				assert.Equal(t, err == nil, v.Nothing == "", "%s %+v %v", n.Name, side, main)
				if err == nil {
					assert.InEpsilon(t, old.Z, v.Equation, 1e-9, "%s %+v %v", n.Name, side, main)
				}
			}
		}
	}
}
