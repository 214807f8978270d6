package wind

import (
	"math"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"galewright/plan"
	"galewright/plan/units"
)

func TestKzTables(t *testing.T) {
	// ASCE 7-22 Table 26.10-1 (second-hand) and ASCE 7-16 (second-hand for B from 30 ft
	// and for C and D; the three lowest of B are from memory): B, C, D by height.
	for _, c := range []struct {
		edition plan.Edition
		z       float64
		want    [3]float64
	}{
		{"7-22", 15, [3]float64{0.57, 0.85, 1.03}},
		{"7-22", 20, [3]float64{0.62, 0.90, 1.08}},
		{"7-22", 25, [3]float64{0.66, 0.94, 1.12}},
		{"7-22", 30, [3]float64{0.70, 0.98, 1.16}},
		{"7-22", 40, [3]float64{0.74, 1.04, 1.22}},
		{"7-22", 50, [3]float64{0.79, 1.09, 1.27}},
		{"7-22", 60, [3]float64{0.83, 1.13, 1.31}},
		{"7-16", 15, [3]float64{0.57, 0.85, 1.03}},
		{"7-16", 20, [3]float64{0.62, 0.90, 1.08}},
		{"7-16", 25, [3]float64{0.66, 0.94, 1.12}},
		{"7-16", 30, [3]float64{0.70, 0.98, 1.16}},
		{"7-16", 40, [3]float64{0.76, 1.04, 1.22}},
		{"7-16", 50, [3]float64{0.81, 1.09, 1.27}},
		{"7-16", 60, [3]float64{0.85, 1.13, 1.31}},
	} {
		for i, e := range plan.Exposures {
			got := Kz(c.edition, e, c.z)
			// The printed tables round to 0.01; those of 7-22 for Exposure D lie up
			// to 0.011 under the formula, which errs upward. In 7-22 the 0.70 of
			// Exposure B at 30 ft is the least value; the formula gives 0.689.
			if c.edition == "7-22" && e == "B" && c.z == 30 {
				got = Basis{Edition: "7-22", Exposure: "B", Height: 30}.Envelope().Kz
			}
			assert.InDelta(t, c.want[i], got, 0.0115, "%s %s at %v ft: %.4f", c.edition, e, c.z, got)
		}
	}
	assert.Equal(t, Kz("7-22", "C", 15), Kz("7-22", "C", 4), "15 ft at least")
}

func TestKeTable(t *testing.T) {
	// ASCE 7-22 Table 26.9-1 (second-hand).
	for z, want := range map[float64]float64{0: 1, 2000: 0.93, 3000: 0.90, 4000: 0.86, 5000: 0.83, 6000: 0.80} {
		assert.InDelta(t, want, Ke(z), 0.0056, "%v ft", z)
	}
}

func TestVelocityPressureValues(t *testing.T) {
	// ASCE 7-22 unit check (second-hand): V 115, every K 1, Kd 0.85: 28.78 psf.
	v := Basis{Edition: "7-22", Speed: 115, Exposure: "C"}.velocity(30, 1)
	assert.InDelta(t, 28.78, v.QKd, 0.005)
	assert.InDelta(t, v.QKd/0.85, v.Q, 1e-9)
	// ASCE 7-22 Eqs. 26.10-1 and 27.3-1 by hand: V 120, C, 30 ft: Kz 2.41 (30/2460)^(2/9.8)
	// = 0.981, q Kd 0.00256 x 0.981 x 0.85 x 120² = 30.74 psf, times G Cp = 0.85 x 0.8:
	// 20.9 psf.
	w := Basis{Edition: "7-22", Speed: 120, Exposure: "C"}.At(30)
	assert.InDelta(t, 0.98, w.Kz, 0.005)
	assert.InDelta(t, 30.74, w.QKd, 0.03)
	assert.InDelta(t, 20.9, w.QKd*0.85*0.8, 0.06)
}

func TestVelocityPressureMetric(t *testing.T) {
	// ASCE 7-16 Eq. 26.10-1 in metric units with Tables 26.9-1 and 26.10-1, worked
	// in a check record (second-hand): V 52 m/s, C,
	// site 110 m above sea; Ke 0.98700, Kz 0.86503 at 5 m, 0.91415 at 6.5 m;
	// q 1202.9 and 1271.2 Pa with 0.613 in metric units. 0.00256 psf for a mph
	// is 0.6133 Pa for a m/s, so pressures agree to 0.1 %.
	const ft, mph, psf = 3.280839895, 2.236936292, 47.88025898
	b := Basis{Edition: "7-16", Speed: 52 * mph, Exposure: "C", Elevation: 110 * ft}
	for z, want := range map[float64][2]float64{5: {0.86503, 1202.9}, 6.5: {0.91415, 1271.2}} {
		v := b.At(z * ft)
		assert.InDelta(t, 0.98700, v.Ke, 5e-5)
		assert.InDelta(t, want[0], v.Kz, 2e-4)
		assert.InEpsilon(t, want[1], v.Q*psf, 1e-3)
	}
}

func TestHeightAndExposureFactors(t *testing.T) {
	// Residential code Table R301.2(3) as printed in the Florida code, 8th ed.
	// (second-hand): pressures relative to Exposure B at 30 ft, whose Kz is
	// 0.70. The rows are those of 7-22 but for Exposure B at 35 ft, where 1.05
	// is the ratio of 7-16; it is checked against that.
	heights := []float64{15, 20, 25, 30, 35, 40, 45, 50, 55, 60}
	table := map[plan.Exposure][]float64{
		"B": {0.82, 0.89, 0.94, 1.00, 1.05, 1.06, 1.10, 1.13, 1.16, 1.19},
		"C": {1.21, 1.29, 1.35, 1.40, 1.45, 1.49, 1.53, 1.56, 1.59, 1.62},
		"D": {1.47, 1.55, 1.61, 1.66, 1.70, 1.74, 1.78, 1.81, 1.84, 1.87},
	}
	for exposure, row := range table {
		for i, h := range heights {
			got := Kz("7-22", exposure, h) / 0.70
			if exposure == "B" && h == 30 {
				got = Basis{Edition: "7-22", Exposure: "B", Height: 30}.Envelope().Kz / 0.70
			}
			if exposure == "B" && h == 35 {
				got = Kz("7-16", exposure, h) / 0.70
			}
			assert.InDelta(t, row[i], got, map[plan.Exposure]float64{"B": 0.008, "C": 0.0101, "D": 0.0145}[exposure], "%s %v ft", exposure, h)
		}
	}
}

func TestInternalPressure(t *testing.T) {
	// ASCE 7-22 Table 26.13-1 (second-hand).
	for enclosure, want := range map[plan.Enclosure]float64{"enclosed": 0.18, "partially enclosed": 0.55, "partially open": 0.18, "open": 0} {
		assert.Equal(t, want, GCpi(enclosure))
	}
}

// gable is the building of the worked envelope example.
var gable = Basis{
	Edition: "7-22", Speed: 115, Exposure: "C", Enclosure: "enclosed", Kzt: 1,
	Height: 36.63, Eave: 20, Theta: 18.4, Length: 250, Width: 200,
}

func TestEnvelopeWorkedExample(t *testing.T) {
	// ASCE 7-22 Eq. 28.3-1 and Fig. 28.3-1; answers of the Guide to the Wind Load
	// Provisions of ASCE 7-22, Example 4.1, by a check record (second-hand; the
	// Guide was not seen): 200 x 250 ft,
	// eave 20 ft, 18.4 degrees, h 36.63 ft, V 115, C, enclosed. Kh is printed
	// 1.02, coefficients to two decimals, pressures to 0.1 psf.
	v := gable.Envelope()
	assert.InDelta(t, 1.02, v.Kz, 0.005)
	assert.InDelta(t, 34.5, v.Q, 0.1)
	want := map[string][3]float64{
		"1": {0.52, 9.9, 20.4}, "2": {-0.69, -25.5, -15.0}, "3": {-0.47, -19.0, -8.5}, "4": {-0.42, -17.5, -6.9},
		"1E": {0.78, 17.6, 28.2}, "2E": {-1.07, -36.7, -26.1}, "3E": {-0.67, -25.0, -14.5}, "4E": {-0.62, -23.4, -12.8},
	}
	zones := gable.Zones(CaseA(gable.Theta))
	require.Len(t, zones, 8)
	for _, z := range zones {
		w := want[z.Name]
		assert.InDelta(t, w[0], z.GCpf, 0.0051, z.Name)
		assert.InDelta(t, w[1], z.Plus, 0.16, z.Name)
		assert.InDelta(t, w[2], z.Minus, 0.16, z.Name)
	}
}

func TestEditionsGiveOneNetPressure(t *testing.T) {
	// 7-16 has Kd in q, 7-22 in p: the net pressure differs only by Kz.
	old := gable
	old.Edition = "7-16"
	a, b := old.Pressure(-0.69, 0.18)/old.Envelope().Kz, gable.Pressure(-0.69, 0.18)/gable.Envelope().Kz
	assert.InDelta(t, a, b, 1e-9)
	assert.InDelta(t, old.Envelope().Q, old.Envelope().QKd, 1e-12)
}

func TestCaseAInterpolates(t *testing.T) {
	// ASCE 7-22 Fig. 28.3-1 (transcribed): rows as printed, linear between.
	assert.Equal(t, CaseA(5), CaseA(0))
	assert.InDeltaSlice(t, []float64{0.56, 0.21, -0.43, -0.37, 0, 0}, slicesOf(CaseA(38).Interior), 1e-12)
	assert.InDelta(t, (0.40+0.53)/2, CaseA(12.5).Interior[0], 1e-12)
	assert.InDelta(t, (-1.07+0.27)/2, CaseA(25).End[1], 1e-12)
	assert.InDelta(t, -0.40, CaseA(67.5).Interior[2], 1e-12)
	assert.Equal(t, [6]float64{0.56, 0.56, -0.37, -0.37, 0, 0}, CaseA(90).Interior)
	for _, theta := range []float64{0, 5, 20, 30, 45, 90} {
		for i := range 4 {
			assert.InDelta(t, CaseA(theta).Interior[i], CaseA(theta + 1e-7).Interior[i], 1e-6, "continuous at %v", theta)
		}
	}
}

func slicesOf(a [6]float64) []float64 { return a[:] }

func TestTorsionZones(t *testing.T) {
	// ASCE 7-22 Fig. 28.3-2 (second-hand), printed to 0.01: zones 1T to 4T at 5,
	// 20, 30 degrees; 5T, 6T of case B.
	for theta, want := range map[float64][4]float64{
		5: {0.10, -0.17, -0.09, -0.07}, 20: {0.13, -0.17, -0.12, -0.11}, 30: {0.14, 0.05, -0.11, -0.09}, 90: {0.14, 0.14, -0.09, -0.09},
	} {
		for i, w := range want {
			assert.InDelta(t, w, CaseA(theta).Torsion()[i], 0.0051)
		}
	}
	assert.InDelta(t, 0.10, CaseB.Torsion()[4], 0.0051)
	assert.InDelta(t, -0.07, CaseB.Torsion()[5], 0.0051)
}

func TestEdgeStrip(t *testing.T) {
	// ASCE 7-16 Fig. 28.3-1 notes (second-hand): 0.1 of the width, 0.4 h, 0.04 of the
	// width and 3 ft each govern once.
	for _, c := range []struct{ width, h, want float64 }{
		{40, 25, 4}, {100, 20, 8}, {28, 30, 3}, {300, 20, 12},
	} {
		assert.InDelta(t, c.want, Basis{Length: 400, Width: c.width, Height: c.h}.EdgeStrip(), 1e-9)
	}
}

func TestLeastKhOfExposureB(t *testing.T) {
	for _, edition := range plan.Editions {
		b := Basis{Edition: edition, Speed: 115, Exposure: "B", Height: 20, Length: 40, Width: 30}
		assert.Equal(t, 0.70, b.Envelope().Kz)
		assert.True(t, b.Envelope().Floor)
		// The 0.70 is of chapter 28 only (ASCE 7-16 and 7-22 Table 26.10-1 footnote,
		// transcribed): the directional procedure and components and cladding keep the raw value: R301.2(3) prints 0.89 at
		// 20 ft relative to 30 ft.
		assert.InDelta(t, 0.62, b.At(20).Kz, 0.005)
		assert.InDelta(t, 0.62, b.Direct().Kz, 0.005)
	}
}

func TestBoundsAreTold(t *testing.T) {
	ok := Basis{Edition: "7-22", Speed: 150, Exposure: "D", Kzt: 1, Height: 25, Theta: 30, Length: 44, Width: 28}
	both := Choice{Use: []plan.Procedure{plan.Envelope, plan.Directional}}
	assert.Empty(t, outside(ok, both))
	for name, b := range map[string]Basis{
		"length over width":      {Edition: "7-22", Exposure: "D", Height: 20, Length: 120, Width: 28},
		"elevation":              {Edition: "7-22", Exposure: "D", Height: 20, Length: 44, Width: 28, Kzt: 1, Elevation: 2000},
		"height over width, low": {Edition: "7-22", Exposure: "D", Height: 30, Length: 44, Width: 28, Kzt: 1},
	} {
		got := outside(b, both)
		require.Len(t, got, 1, name)
		assert.Contains(t, got[0].Told(units.Imperial), name)
		assert.Greater(t, got[0].Ratio(), 1.0)
	}
	tall := Basis{Edition: "7-22", Exposure: "D", Height: 61, Length: 44, Width: 28, Kzt: 1}
	assert.Len(t, outside(tall, Choice{Use: []plan.Procedure{plan.Directional}}), 1)
	assert.Len(t, outside(tall, both), 3)
}

// outside lists the bounds that a building is outside of.
func outside(b Basis, c Choice) (out []Bound) {
	for _, x := range b.Bounds(c) {
		if x.Outside() {
			out = append(out, x)
		}
	}
	return out
}

func TestBoundsOfBothEnds(t *testing.T) {
	for hL, ratio := range map[float64]float64{0.125: 2, 0.25: 1, 0.5: 0.5, 1: 1, 1.5: 1.5} {
		assert.InDelta(t, ratio, FreeBound("h/L", hL).Ratio(), 1e-9, "%g", hL)
	}
	assert.Equal(t, "0.25 to 1", FreeBound("h/L", 1).Range(units.Imperial))
	assert.True(t, CladAngle("angle of roof main", plan.GableRoof, 46).Outside())
	assert.True(t, CladAngle("angle of roof main", plan.ShedRoof, 31).Outside())
	assert.False(t, CladAngle("angle of roof main", plan.HipRoof, 45).Outside())
	assert.Equal(t, "at most 45 deg", FreeAngle("angle", 7).Range(units.Imperial))
	assert.False(t, Stories(2).Outside())
	assert.True(t, Stories(3).Outside())
}

func TestBasisChecks(t *testing.T) {
	assert.NoError(t, gable.Check())
	bad := gable
	bad.Edition = "7-05"
	assert.ErrorContains(t, bad.Check(), "7-05")
	bad = gable
	bad.Exposure = "A"
	assert.ErrorContains(t, bad.Check(), "exposure")
	bad = gable
	bad.Speed = math.NaN()
	assert.Error(t, bad.Check())
}

func TestEveryCoefficientNamesItsTable(t *testing.T) {
	both, err := gable.Choose("", nil)
	require.NoError(t, err)
	require.Len(t, both.Use, 2)
	for _, c := range gable.Coefficients(both) {
		assert.NotEmpty(t, c.Table, c.Name)
		if c.Table != "plan" {
			assert.NotEmpty(t, c.Grade, c.Name)
		}
	}
}
