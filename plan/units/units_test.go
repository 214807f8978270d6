package units_test

import (
	"testing"

	"github.com/stretchr/testify/assert"

	"galewright/plan/units"
)

// Factors by definition: 1 lb is 0.45359237 kg and 1 in 25.4 mm (international yard
// and pound agreement, 1959), at 9.80665 m/s².
func TestQuantitiesByTheirUnits(t *testing.T) {
	for us, want := range map[string]string{
		"lb": "4.45 kN", "psf": "47.88 kPa", "psi": "6.89 MPa", "plf": "14.59 kN/m", "mph": "447.0 m/s", "lb-ft": "1.36 kN·m",
		"lb-in": "0.113 kN·m", "lb/in": "175.1 kN/m", "kip/in": "175.1 kN/mm", "ft": "304.8 m", "in": "25400 mm", "ft²": "92.90 m²", "in²": "645160 mm²",
	} {
		assert.Equal(t, want, units.Metric.Amount(1000, us, 0), us)
		assert.Equal(t, "1000 "+us, units.Imperial.Amount(1000, us, 0), us)
	}
	assert.Equal(t, "3.50 deg", units.Metric.Amount(3.5, "deg", 2))
	assert.Equal(t, "0.000 kN", units.Metric.Amount(-0.0001, "lb", 0), "no minus nought")
}

func TestSprintf(t *testing.T) {
	for _, c := range []struct {
		format, us, si string
		args           []any
	}{
		{"%s: %.0f lb, %d in the stud", "a: 1000 lb, 3 in the stud", "a: 4.45 kN, 3 in the stud", []any{"a", 1000.0, 3}},
		{"wind %.0f{lb}, dead %.0f lb", "wind 1000, dead 100 lb", "wind 4.45, dead 0.445 kN", []any{1000.0, 100.0}},
		{"Fyb %.0f{+psi}; G %.2f", "Fyb 90000; G 0.55", "Fyb 620.5 MPa; G 0.55", []any{90000.0, 0.55}},
		{"|%8.1f{psf}|%-8.1f{psf}|", "|    49.0|49.0    |", "|    2.35|2.35    |", []any{49.0, 49.0}},
		{"%+.2f ft of 100%%, {psf} on {10 ft²} and {1/8 in}", "+2.00 ft of 100%, psf on 10 ft² and 1/8 in", "+0.610 m of 100%, kPa on 0.93 m² and 3 mm", []any{2.0}},
		{"%.2f inches stay {as they are}", "1.00 inches stay {as they are}", "1.00 inches stay {as they are}", []any{1.0}},
		{"%-*s|%.1f psf", "ab  |49.0 psf", "ab  |2.35 kPa", []any{4, "ab", 49.0}},
	} {
		assert.Equal(t, c.us, units.Imperial.Sprintf(c.format, c.args...), c.format)
		assert.Equal(t, c.si, units.Metric.Sprintf(c.format, c.args...), c.format)
	}
	assert.Equal(t, "50% of 0.77 kPa", units.Metric.Words("50% of {16 psf}"))
}

func TestWhatIsBoughtByUSSizes(t *testing.T) {
	assert.Equal(t, `5/8"`, units.Imperial.Bought(0.625))
	assert.Equal(t, "5/8 in (16 mm)", units.Metric.Bought(0.625))
	assert.Equal(t, "24 in (610 mm)", units.Metric.Bought(24))
	assert.Equal(t, "1 1/2 in (38 mm)", units.Metric.Bought(1.5))
	assert.Equal(t, "2x6 (38 x 140 mm)", units.Metric.Beside("2x6", 1.5, 5.5))
	assert.Equal(t, "38x140mm", units.Metric.Beside("38x140mm", 1.5, 5.5))
	assert.Equal(t, "8d common (3.3 x 64 mm)", units.Metric.Sized("8d common (0.131 x 2 1/2)", "8d common", 0.131, 2.5))
	assert.Equal(t, "bolt 5/8 (16 mm)", units.Metric.Sized("bolt 5/8", "bolt 5/8", 0.625, 0))
	assert.Equal(t, `16'-0"`, units.Imperial.Stock(192))
	assert.Equal(t, "16 ft (4877 mm)", units.Metric.Stock(192))
	assert.Equal(t, "4800 mm", units.Metric.Stock(4800/25.4))
	assert.Equal(t, "5 lb (2.27 kg)", units.Metric.BoughtMass(5))
	assert.Equal(t, "220 per kg", units.Metric.PerMass(100))
	assert.Equal(t, `"0mm"`, units.Metric.Literal(`"0'"`))
	assert.Equal(t, `"7-22"`, units.Metric.Literal(`"7-22"`))
	assert.Equal(t, "67 m/s (149.9 mph)", units.Metric.Speed(67/0.44704))
}
