package timber

import "math"

// RodSize is a threaded rod or anchor bolt with coarse thread, its nut and
// its plain washer, in.
type RodSize struct {
	D           float64
	Threads     float64 // per inch
	AcrossFlats float64 // of a hex nut, the room a socket needs besides
	NutHeight   float64
	WasherOut   float64 // outer diameter of a plain washer
	WasherHole  float64
}

// rodSizes is coarse thread by ASME B1.1 (UNC), hex nuts by ASME B18.2.2 and
// plain washers type A, wide, by ASME B18.21.1: all from memory.
var rodSizes = []RodSize{
	{3. / 8, 16, 9. / 16, 21. / 64, 1, 7. / 16},
	{1. / 2, 13, 3. / 4, 7. / 16, 1.375, 9. / 16},
	{5. / 8, 11, 15. / 16, 35. / 64, 1.75, 11. / 16},
	{3. / 4, 10, 1.125, 41. / 64, 2, 13. / 16},
	{7. / 8, 9, 1.3125, 3. / 4, 2.25, 15. / 16},
	{1, 8, 1.5, 55. / 64, 2.5, 1.0625},
	{1.125, 7, 1.6875, 31. / 32, 2.75, 1.25},
	{1.25, 7, 1.875, 1 + 1./16, 3, 1.375},
}

// RodSizeOf returns the row of a diameter.
func RodSizeOf(d float64) (RodSize, bool) {
	for _, r := range rodSizes {
		if math.Abs(r.D-d) < sameSize {
			return r, true
		}
	}
	return RodSize{}, false
}
