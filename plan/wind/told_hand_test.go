package wind

import (
	"math"
	"testing"

	"galewright/plan"
	"galewright/plan/units"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"
)

// worked is 60 by 40 ft, h 20 ft with an eave of 16, 140 mph in Exposure C.
func worked(e plan.Edition) Basis {
	return Basis{Edition: e, Speed: 140, Exposure: plan.ExposureC, Kzt: 1, Height: 20, Eave: 16, Theta: 30, Length: 60, Width: 40}
}

// The numbers that are told, by hand. Kz of 7-16 is 2.01 (20/900)^(2/9.5) = 0.9019, q =
// 0.00256 x 0.9019 x 0.85 x 140² = 38.47 psf with Kd; 7-22 tells it without, its own Kz over
// 0.85. a is the lesser of 4 and 8 ft; zone 2 reaches half of 40 and of 60 ft, under 2.5
// eaves of 16. h/L 0.5 and 0.333, L/B 0.667 and 1.5.
func TestTheNumbersThatAreTold(t *testing.T) {
	for _, e := range []plan.Edition{plan.ASCE716, plan.ASCE722} {
		b := worked(e)
		both, err := b.Choose("", nil)
		require.NoError(t, err)
		got := map[string]Coefficient{}
		for _, c := range b.Coefficients(both) {
			got[c.Name] = c
		}
		for name, want := range map[string]float64{
			"V": 140, "h, mean roof height": 20, "eave, top of plates": 16, "roof angle": 30, "length along the ridge": 60, "width across the ridge": 40,
			"Kzt": 1, "Kd": 0.85, "Ke": 1, "GCpi, both signs": 0.18, "a": 4, "end zone 2a": 8, "zone 2, wind across ridge": 20, "zone 2, wind along ridge": 30,
			"G": 0.85, "h/L, wind across ridge": 0.5, "h/L, wind along ridge": 20.0 / 60, "L/B, wind across ridge": 40.0 / 60, "L/B, wind along ridge": 1.5,
		} {
			require.Contains(t, got, name)
			assert.InDelta(t, want, got[name].Value, 1e-9, "%s %s", e, name)
		}
		for _, p := range []string{"envelope", "directional"} {
			kz, q, qkd := got[p+" Kh"].Value, got[p+" qh"].Value, got[p+" qh Kd"].Value
			assert.InDelta(t, 0.00256*kz*0.85*140*140, qkd, 1e-9, "%s %s", e, p)
			if e == plan.ASCE716 {
				assert.InDelta(t, 0.9019, kz, 5e-5)
				assert.InDelta(t, 38.47, q, 5e-3)
				assert.InDelta(t, q, qkd, 1e-9)
				assert.Contains(t, got[p+" qh"].Table, "7-16 Eq. 26.10-1, Kd in q")
			} else {
				assert.InDelta(t, qkd/0.85, q, 1e-9)
				assert.Contains(t, got[p+" qh"].Table, "7-22 Eq. 26.10-1, Kd not in q")
			}
		}
		assert.NotContains(t, got["envelope Kh"].Table, "least value")
	}
	low := worked(plan.ASCE716)
	low.Exposure, low.Height = plan.ExposureB, 15
	for _, c := range low.envelopeCoefficients() {
		if c.Name == "envelope Kh" {
			assert.InDelta(t, 0.7, c.Value, 1e-9)
			assert.Contains(t, c.Table, "least value of chapter 28")
		}
	}
	one := worked(plan.ASCE716).Coefficients(Choice{Use: []plan.Procedure{plan.Directional}})
	for _, c := range one {
		assert.NotContains(t, c.Name, "envelope")
	}
}

// The windward wall is told at 15 ft, every 5 ft on and at h, which a height within half a
// foot of the last stands for.
func TestHeightsOfTheWindwardWall(t *testing.T) {
	for h, want := range map[float64][]float64{12: {15}, 15: {15}, 15.4: {15.4}, 15.6: {15, 15.6}, 20: {15, 20}, 20.6: {15, 20, 20.6}, 33: {15, 20, 25, 30, 33}} {
		assert.Equal(t, want, Basis{Height: h}.Heights(), "%v", h)
	}
}

// Procedures and ranges in words.
func TestProceduresInWords(t *testing.T) {
	assert.Equal(t, "envelope (chapter 28) and directional (chapter 27)", Choice{Use: []plan.Procedure{plan.Envelope, plan.Directional}}.String())
	assert.Equal(t, "directional (chapter 27)", Choice{Use: []plan.Procedure{plan.Directional}}.String())
	for want, b := range map[string]Bound{
		"0.25 to 1":      {Least: 0.25, Most: 1},
		"7 to 27 deg":    {Least: 7, Most: 27, Unit: "deg"},
		"at least 3 ft":  {Least: 3, Unit: "ft"},
		"at most 60 ft":  {Most: 60, Unit: "ft"},
		"at most 2":      {Most: 2},
		"at least 0.125": {Least: 0.125},
	} {
		assert.Equal(t, want, b.Range(units.Imperial))
	}
	assert.Equal(t, "h 75.5 ft is outside of what the method holds for, at most 60 ft: use another", Bound{What: "h", Value: 75.5, Most: 60, Unit: "ft", Beyond: "use another"}.Told(units.Imperial))
	for _, c := range []struct {
		b    Bound
		want float64
	}{{Bound{Most: 60, Value: 30}, 0.5}, {Bound{Least: 3, Value: 6}, 0.5}, {Bound{Least: 3, Value: 2}, 1.5}, {Bound{Least: 3, Most: 5, Value: 10}, 2}, {Bound{Least: 4, Most: 8, Value: 5}, 0.8}, {Bound{Least: 3}, 0}} {
		assert.InDelta(t, c.want, c.b.Ratio(), 1e-9, "%+v", c.b)
	}
}

// What has no number says so: no curve, no class of enclosure, no figure for a roof.
func TestWhatHasNoNumber(t *testing.T) {
	assert.Zero(t, Curve(nil).At(10))
	assert.True(t, math.IsNaN(GCpi("half open")))
	for change, want := range map[string]func(*Basis){
		"no wind edition": func(b *Basis) { b.Edition = "7-05" },
		"no exposure":     func(b *Basis) { b.Exposure = "A" },
		"no enclosure":    func(b *Basis) { b.Enclosure = "half open" },
		"must be above 0": func(b *Basis) { b.Width = 0 },
		"be above 0":      func(b *Basis) { b.Length = -1 },
		"above 0":         func(b *Basis) { b.Height = 0 },
		"wind speed":      func(b *Basis) { b.Speed = 0 },
	} {
		b := worked(plan.ASCE716)
		require.NoError(t, b.Check())
		want(&b)
		assert.ErrorContains(t, b.Check(), change)
	}
	for _, c := range []struct {
		kind  plan.RoofKind
		theta float64
		why   string
	}{{plan.GableRoof, 45.1, "the steepest is 45"}, {"dome", 20, `kind "dome"`}, {plan.ShedRoof, 30.1, "the steepest is 30"}, {plan.GableRoof, 45, ""}, {plan.ShedRoof, 30, ""}} {
		_, err := RoofFigure(plan.ASCE716, c.kind, c.theta, 0.5)
		if c.why == "" {
			assert.NoError(t, err)
			continue
		}
		assert.ErrorContains(t, err, c.why)
	}
}

// Net pressures of each surface at 140 mph: with q = 38.47 psf and GCpi 0.18, 6.92 psf, the
// side walls of Cp -0.7 have 0.85 x -0.7 x 38.47 = -22.89, net -29.81 and -15.96; the soffit
// has nothing inside. The strips end at h/2, h and 2h: 10, 20 and 40 ft.
func TestSurfacesByHand(t *testing.T) {
	by := func(ridge bool, kind plan.RoofKind, theta float64) map[string]Surface {
		b := worked(plan.ASCE716)
		b.Theta = theta
		out := map[string]Surface{}
		for _, s := range b.Surfaces(ridge, kind) {
			out[s.Name] = s
		}
		return out
	}
	across := by(false, plan.GableRoof, 30)
	side := across["side walls"]
	assert.InDelta(t, -22.89, side.External, 5e-3)
	assert.InDelta(t, -29.81, side.Plus, 5e-3)
	assert.InDelta(t, -15.96, side.Minus, 6e-3)
	soffit := across["soffit, windward"]
	assert.Equal(t, [2]float64{soffit.External, soffit.External}, [2]float64{soffit.Plus, soffit.Minus})
	assert.InDelta(t, 38.47*0.85*0.8, soffit.External, 5e-3)
	slopes, strips := []string{"windward slope, first", "windward slope, second", "leeward slope"}, []string{"roof to 10.0 ft", "roof to 20.0 ft", "roof to 40.0 ft", "roof beyond 40.0 ft", "roof, second"}
	for _, c := range []struct {
		name         string
		got          map[string]Surface
		slope, strip bool
	}{
		{"across the ridge", across, true, false},
		{"along it", by(true, plan.GableRoof, 30), false, true},
		{"along it, hip", by(true, plan.HipRoof, 30), true, true},
		{"across, just under 10 degrees", by(false, plan.GableRoof, 9.9), false, true},
		{"across, 10 degrees", by(false, plan.GableRoof, 10), true, false},
		{"along, hip of 9.9 degrees", by(true, plan.HipRoof, 9.9), false, true},
	} {
		for _, s := range slopes {
			assert.Equal(t, c.slope, c.got[s] != Surface{}, "%s: %s", c.name, s)
		}
		for _, s := range strips {
			assert.Equal(t, c.strip, c.got[s] != Surface{}, "%s: %s", c.name, s)
		}
	}
}
