package timber

import "math"

// Steel is the strength of a sheet or rod steel, psi.
type Steel struct {
	Name   string
	Fy, Fu float64
}

// Gr33 is ASTM A653 SS Grade 33: Fy by its name, Fu the 45 ksi that NDS 2018
// Table 12P footnote 2 implies (Fe 61,850 is 1.375 Fu; transcribed).
var Gr33 = Steel{"ASTM A653 SS Gr 33", 33_000, 45_000}

// A36 is ASTM A36: Fu as NDS 2018 Table 12B footnote 2 implies (1.5 Fu =
// 87,000; transcribed), Fy by its name.
var A36 = Steel{"ASTM A36", 36_000, 58_000}

// Tension is the allowable tension of a strap.
type Tension struct {
	Gross, Net float64 // areas, in²
	Yield      float64 // gross yielding, lb
	Rupture    float64 // net rupture, lb
	Allow      float64 // the less of the two
	Governs    string  // "gross yielding" or "net rupture"
}

// StrapTension returns the allowable tension of a flat strap by AISI S100-16
// D2 (gross yielding, omega 1.67) and D3 (net rupture, omega 2.00); transcribed.
// Thickness is that of the base steel; holes are counted across the section
// that has most of them.
func StrapTension(width, thickness float64, holes int, hole float64, s Steel) Tension {
	ag := width * thickness
	return tension(ag, ag-float64(holes)*hole*thickness, s)
}

func tension(ag, an float64, s Steel) Tension {
	t := Tension{Gross: ag, Net: an, Yield: ag * s.Fy / 1.67, Rupture: an * s.Fu / 2}
	t.Allow, t.Governs = t.Yield, "gross yielding"
	if t.Rupture < t.Yield {
		t.Allow, t.Governs = t.Rupture, "net rupture"
	}
	return t
}

// RodTension returns the allowable tension of a threaded rod, lb: nominal
// 0.75 Fu on the gross area of the rod, safety factor 2.0 (AISC 360-16 Table
// J3.2, from memory).
func RodTension(d float64, s Steel) float64 {
	return 0.75 * s.Fu * math.Pi * d * d / 4 / 2
}
