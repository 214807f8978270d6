package timber

import "math"

// round50 rounds to the nearest 50 psi, as the published tables do.
func round50(x float64) float64 { return math.Round(x/50) * 50 }

// DowelBearing returns Fe of wood of specific gravity g for a dowel of
// diameter d at the angle to grain (degrees), psi: NDS 2018 Table 12.3.3
// footnotes 2 and 3, p.86, rounded to 50 psi as the table is, and the
// Hankinson formula 12.3.4 between the grain directions (transcribed). Below 1/4 in the angle does not matter.
func DowelBearing(g, d, angle float64) float64 {
	if d < 0.25 {
		return round50(16_600 * math.Pow(g, 1.84))
	}
	par, perp := round50(11_200*g), round50(6_100*math.Pow(g, 1.45)/math.Sqrt(d))
	sin, cos := math.Sincos(angle * math.Pi / 180)
	return par * perp / (par*sin*sin + perp*cos*cos)
}

// SteelBearing returns Fe of a steel side member of thickness t, psi, and
// the steel it stands for: ASTM A653 SS Gr 33 under 1/4 in (NDS 2018 Table
// 12P footnote 2), ASTM A36 from there on (Table 12B footnote 2); transcribed.
func SteelBearing(t float64) (fe float64, steel string) {
	if t < 0.25 {
		return 61_850, "ASTM A653 SS Gr 33"
	}
	return 87_000, "ASTM A36"
}
