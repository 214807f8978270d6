package wind

import (
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"galewright/plan"
)

// free returns the pressures of an open roof by case: windward, leeward half.
func (b Basis) free(kind plan.RoofKind, theta float64, high bool) map[string][2]float64 {
	out := map[string][2]float64{}
	for _, f := range FreeSlope(kind, theta, high) {
		out[f.Case] = [2]float64{b.FreePressure(f.Windward), b.FreePressure(f.Lee)}
	}
	return out
}

func TestFreeMonoslopeWorked(t *testing.T) {
	// ASCE 7-16 Fig. 27.3-4 and 27.3-7, worked in a check record (second-hand): V 115,
	// C, h 20 ft, 15 degrees, clear. It has Kz 0.90, qh 25.90; the formula's is 0.902.
	b := Basis{Edition: "7-16", Speed: 115, Exposure: "C", Height: 20, Length: 100, Width: 40}
	require.InDelta(t, 25.90, b.Direct().Q, 0.06)
	for high, cases := range map[bool]map[string][2]float64{
		true:  {"A, clear": {-19.81, -28.62}, "B, clear": {-41.83, 0}},
		false: {"A, clear": {28.62, 35.22}, "B, clear": {39.63, 13.21}},
	} {
		got := b.free(plan.ShedRoof, 15, high)
		for name, want := range cases {
			assert.InDelta(t, want[0], got[name][0], 0.12, "%v %s", high, name)
			assert.InDelta(t, want[1], got[name][1], 0.12, "%v %s", high, name)
		}
	}
	along := FreeAlong()
	for i, want := range [][3]float64{{-17.61, -13.21, -6.60}, {17.61, 11.01, 6.60}} {
		for k, p := range want {
			assert.InDelta(t, p, b.FreePressure(along[i].CN[k]), 0.06)
		}
	}
}

func TestFreePitchedWorked(t *testing.T) {
	// ASCE 7-16 Fig. 27.3-5, worked in a check record (second-hand): V 130, D, h 18,
	// 22.5 degrees, obstructed, Kz 1.060, qh 38.98; and V 110, B, h 16, 4:12, clear:
	// Kz 0.58 for the formula's 0.585, CN 1.1 / -0.171 and 0.0084 / -0.963.
	b := Basis{Edition: "7-16", Speed: 130, Exposure: "D", Height: 18, Length: 120, Width: 50}
	got := b.free(plan.GableRoof, 22.5, true)
	for name, want := range map[string][2]float64{"A, obstructed": {-39.76, -39.76}, "B, obstructed": {-26.51, -56.33}} {
		assert.InDeltaSlice(t, want[:], []float64{got[name][0], got[name][1]}, 0.2, name)
	}
	for i, want := range [][3]float64{{-39.76, -29.82, -19.88}, {16.57, 16.57, 9.94}} {
		for k, p := range want {
			assert.InDelta(t, p, b.FreePressure(FreeAlong()[2+i].CN[k]), 0.15)
		}
	}
	b = Basis{Edition: "7-16", Speed: 110, Exposure: "B", Height: 16, Length: 40, Width: 30}
	got = b.free(plan.GableRoof, 18.435, true)
	for name, want := range map[string][2]float64{"A, clear": {14.28, -2.22}, "B, clear": {0.109, -12.495}} {
		assert.InDeltaSlice(t, want[:], []float64{got[name][0], got[name][1]}, 0.15, name)
	}
	// ASCE 7-22, worked in a list of changes (second-hand): V 120, B, h 40, 22.5
	// degrees, clear: qh 27.279 without Kd.
	b = Basis{Edition: "7-22", Speed: 120, Exposure: "B", Height: 40, Length: 80, Width: 60}
	got = b.free(plan.GableRoof, 22.5, true)
	for name, want := range map[string][2]float64{"A, clear": {21.680, 1.971}, "B, clear": {-1.971, -15.767}} {
		assert.InDeltaSlice(t, want[:], []float64{got[name][0], got[name][1]}, 0.15, name)
	}
}

func TestFreeRoofsCellByCell(t *testing.T) {
	// ASCE 7-16 and 7-22 Figs. 27.3-4 and 27.3-5 (transcribed, four copies agree): A
	// clear, A obstructed, B clear, B obstructed, windward and leeward half.
	names := []string{"A, clear", "A, obstructed", "B, clear", "B, obstructed"}
	flat := [4][2]float64{{1.2, 0.3}, {-0.5, -1.2}, {-1.1, -0.1}, {-1.1, -0.6}}
	for _, c := range []struct {
		kind plan.RoofKind
		high bool
		rows map[float64][4][2]float64
	}{
		{plan.ShedRoof, true, map[float64][4][2]float64{
			0: flat, 7.4: flat,
			7.5: {{-0.6, -1.0}, {-1.0, -1.5}, {-1.4, 0}, {-1.7, -0.8}}, 15: {{-0.9, -1.3}, {-1.1, -1.5}, {-1.9, 0}, {-2.1, -0.6}},
			22.5: {{-1.5, -1.6}, {-1.5, -1.7}, {-2.4, -0.3}, {-2.3, -0.9}}, 30: {{-1.8, -1.8}, {-1.5, -1.8}, {-2.5, -0.5}, {-2.3, -1.1}},
			37.5: {{-1.8, -1.8}, {-1.5, -1.8}, {-2.4, -0.6}, {-2.2, -1.1}}, 45: {{-1.6, -1.8}, {-1.3, -1.8}, {-2.3, -0.7}, {-1.9, -1.2}},
		}},
		{plan.ShedRoof, false, map[float64][4][2]float64{
			0: flat, 7.5: {{0.9, 1.5}, {-0.2, -1.2}, {1.6, 0.3}, {0.8, -0.3}}, 15: {{1.3, 1.6}, {0.4, -1.1}, {1.8, 0.6}, {1.2, -0.3}},
			22.5: {{1.7, 1.8}, {0.5, -1.0}, {2.2, 0.7}, {1.3, 0}}, 30: {{2.1, 2.1}, {0.6, -1.0}, {2.6, 1.0}, {1.6, 0.1}},
			37.5: {{2.1, 2.2}, {0.7, -0.9}, {2.7, 1.1}, {1.9, 0.3}}, 45: {{2.2, 2.5}, {0.8, -0.9}, {2.6, 1.4}, {2.1, 0.4}},
		}},
		{plan.GableRoof, true, map[float64][4][2]float64{
			0: flat, 7.5: {{1.1, -0.3}, {-1.6, -1.0}, {0.2, -1.2}, {-0.9, -1.7}}, 15: {{1.1, -0.4}, {-1.2, -1.0}, {0.1, -1.1}, {-0.6, -1.6}},
			22.5: {{1.1, 0.1}, {-1.2, -1.2}, {-0.1, -0.8}, {-0.8, -1.7}}, 30: {{1.3, 0.3}, {-0.7, -0.7}, {-0.1, -0.9}, {-0.2, -1.1}},
			37.5: {{1.3, 0.6}, {-0.6, -0.6}, {-0.2, -0.6}, {-0.3, -0.9}}, 45: {{1.1, 0.9}, {-0.5, -0.5}, {-0.3, -0.5}, {-0.3, -0.7}},
		}},
	} {
		for theta, want := range c.rows {
			got := map[string][2]float64{}
			for _, f := range FreeSlope(c.kind, theta, c.high) {
				got[f.Case] = [2]float64{f.Windward, f.Lee}
			}
			for i, name := range names {
				assert.InDeltaSlice(t, want[i][:], []float64{got[name][0], got[name][1]}, 1e-9, "%s %v, %v degrees, %s", c.kind, c.high, theta, name)
			}
		}
	}
}

func TestOverhangsOfCladding(t *testing.T) {
	// ASCE 7-22 30.7 (transcribed): roof zone less the wall's positive value. A hip
	// of 20 to 27 degrees, zone 2, to 10 ft²: -2.0 of Fig. 30.3-2F (second-hand) - 1.0 of
	// Fig. 30.3-1 (transcribed) = -3.0.
	b := Basis{Edition: "7-22", Speed: 150, Exposure: "D", Height: 20, Theta: 24}
	f, err := RoofFigure("7-22", plan.HipRoof, 24, 0.5)
	require.NoError(t, err)
	for _, o := range b.CladOverhangs(f, 10) {
		if o.Zone == "2" {
			assert.InDelta(t, -3.0, o.GCp, 1e-9)
			assert.InDelta(t, 3.0*b.At(20).QKd, o.Up, 1e-9)
		}
	}
	// Fig. 30.3-2A has curves of its own with both faces: zone 3 at 10 ft² -3.2.
	f, err = RoofFigure("7-22", plan.GableRoof, 5, 0.5)
	require.NoError(t, err)
	for _, o := range b.CladOverhangs(f, 10) {
		if o.Zone == "3" {
			assert.InDelta(t, -3.2, o.GCp, 1e-9)
		}
	}
	// ASCE 7-16 Fig. 30.3-2B (second-hand): zone 3r at 10 ft² -4.7.
	b.Edition = "7-16"
	f, err = RoofFigure("7-16", plan.GableRoof, 18, 0.5)
	require.NoError(t, err)
	for _, o := range b.CladOverhangs(f, 10) {
		if o.Zone == "3r" {
			assert.InDelta(t, -4.7, o.GCp, 1e-9)
		}
	}
	f, err = RoofFigure("7-16", plan.HipRoof, 24, 0.5)
	require.NoError(t, err)
	assert.Contains(t, b.CladOverhangs(f, 10)[0].Source, "not read")
}

func TestUndersideOfAnElevatedHouse(t *testing.T) {
	// ASCE 7-22 30.3.2.1 and Fig. 30.3-1A (second-hand): positive wall zone 4, +1.0
	// to 10 ft² and +0.7 from 500; 7-16 has no rule.
	b := Basis{Edition: "7-22", Speed: 150, Exposure: "C", Height: 20}
	q := b.At(20).QKd
	for area, gcp := range map[float64]float64{10: 1.0, 500: 0.7} {
		psf, ok := b.CladUnder(area)
		require.True(t, ok)
		assert.InDelta(t, q*(gcp+0.18), psf, 1e-9)
	}
	b.Edition = "7-16"
	_, ok := b.CladUnder(10)
	assert.False(t, ok)
}
