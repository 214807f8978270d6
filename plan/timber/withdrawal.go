package timber

import "math"

// Withdrawal returns W, the reference withdrawal of a smooth nail from side
// grain, lb per inch of penetration: NDS 2018 equation 12.2-3, p.77
// (transcribed). Nails in end grain count for nothing (12.2.3.3).
func Withdrawal(g, d float64) float64 { return 1_380 * math.Pow(g, 2.5) * d }

// PullThrough returns the reference head pull-through of a nail with a round
// head of diameter dh through a side member of specific gravity g and net
// thickness t, lb: NDS 2018 equations 12.2-6a and b, 12.2.5 (transcribed).
func PullThrough(g, dh, t float64) float64 {
	if t <= 2.5*dh {
		return 690 * math.Pi * dh * g * g * t
	}
	return 1_725 * math.Pi * dh * dh * g * g
}

// Interaction returns the sum of load ratios of one piece that carries loads
// in several directions at once: the linear interaction. A direction without
// load counts nothing; load on a capacity of zero makes it infinite.
func Interaction(pairs ...[2]float64) float64 {
	sum := 0.0
	for _, p := range pairs {
		if p[0] > 0 {
			sum += p[0] / p[1]
		}
	}
	return sum
}
