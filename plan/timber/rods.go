package timber

import (
	"fmt"
	"math"

	"galewright/plan/source"
)

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

// StressArea returns the tensile stress area of the thread, in²: 0.7854 (d -
// 0.9743/n)² (ASME B1.1, from memory).
func (r RodSize) StressArea() float64 {
	x := r.D - 0.9743/r.Threads
	return math.Pi / 4 * x * x
}

// Pitch is how far a nut goes in one turn, in.
func (r RodSize) Pitch() float64 { return 1 / r.Threads }

// RodValue is the allowable tension of a threaded rod, lb.
type RodValue struct {
	Gross   float64 // area, in²
	Present float64 // 0.75 Fu on the gross area over 2
	Older   float64 // 0.33 Fu on the gross area, for comparison
	// Allow is Present: the form in force.
	Allow  float64
	Source string
}

// RodTensionOf returns the allowable tension of a rod threaded anywhere along
// it. Present form AISC 360 J3 (second-hand); older form AISC Manual 9th ed.,
// "Tension, allowable loads" (read: 19.1 ksi for A36, 20.0 for A307). The
// concrete or wood that the rod pulls on is not looked at.
func RodTensionOf(d float64, s Steel) (RodValue, error) {
	if d <= 0 || s.Fu <= 0 {
		return RodValue{}, fmt.Errorf("a rod of %.3f in of a steel with Fu %.0f psi", d, s.Fu)
	}
	a := math.Pi * d * d / 4
	v := RodValue{Gross: a, Present: RodTension(d, s), Older: 0.33 * s.Fu * a, Source: cite("AISC 360 J3", source.SecondHand)}
	v.Allow = v.Present
	return v, nil
}
