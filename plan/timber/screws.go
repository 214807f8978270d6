package timber

import (
	"fmt"
	"math"
)

// woodScrews is NDS 2018 Table L3, p.182 (transcribed): standard wood screws
// by gauge number, in.
var woodScrews = []struct {
	number        int
	d, root, head float64
}{
	{6, 0.138, 0.113, 0.262},
	{8, 0.164, 0.131, 0.312},
	{10, 0.190, 0.152, 0.363},
	{12, 0.216, 0.171, 0.414},
	{14, 0.242, 0.196, 0.480},
}

// lagScrews is NDS 2018 Table L2, p.181 (transcribed): diameter, root of the
// thread and length of the tapered tip E, in.
var lagScrews = []struct{ d, root, tip float64 }{
	{1. / 4, 0.173, 5. / 32},
	{5. / 16, 0.227, 3. / 16},
	{3. / 8, 0.265, 7. / 32},
	{1. / 2, 0.371, 5. / 16},
	{5. / 8, 0.471, 13. / 32},
	{3. / 4, 0.579, 1. / 2},
	{7. / 8, 0.683, 19. / 32},
	{1, 0.780, 11. / 16},
}

// sameSize is how near a diameter has to be to a row of a table, in.
const sameSize = 1e-6

// ScrewOf makes a wood screw of the gauge number (6, 8, 10, 12, 14) and
// length, in. Tip 2D; thread the larger of 4D and two thirds of the length
// (Table L3, transcribed). Fyb goes by the nominal diameter in the steps of
// nails: 90,000 psi for No. 8 and 80,000 for No. 10 stand under NDS 2018
// Table 12L (transcribed), the other numbers by the same steps (from memory).
func ScrewOf(number int, length float64) (Fastener, bool) {
	for _, s := range woodScrews {
		if s.number == number {
			return Fastener{
				Kind: WoodScrew, Name: fmt.Sprintf("No. %d x %s wood screw", number, trim(length)),
				D: s.d, Root: s.root, Length: length, Head: s.head, Tip: 2 * s.d,
				Thread: math.Min(length, math.Max(4*s.d, 2*length/3)), Fyb: BendingYield(s.d),
			}, true
		}
	}
	return Fastener{}, false
}

// LagOf makes a lag screw of the diameter and length, in. Thread the smaller
// of 6 in and half the length and 1/2 in (Table L2, transcribed). Fyb 70,000
// psi for 1/4 and 45,000 from 3/8 in up stand under NDS 2018 Table 12J
// (transcribed); 60,000 for 5/16 is from memory.
func LagOf(d, length float64) (Fastener, bool) {
	for _, s := range lagScrews {
		if math.Abs(s.d-d) < sameSize {
			return Fastener{
				Kind: LagScrew, Name: fmt.Sprintf("%s x %s in lag screw", trim(d), trim(length)),
				D: s.d, Root: s.root, Length: length, Tip: s.tip,
				Thread: math.Min(length, math.Min(6, length/2+0.5)), Fyb: lagYield(d),
			}, true
		}
	}
	return Fastener{}, false
}

func lagYield(d float64) float64 {
	if d < 0.375-sameSize {
		return BendingYield(d)
	}
	return 45_000
}
