package schedule

import (
	"math"

	"galewright/plan/hardware"
)

// perPound is nails in a pound, common wire nails. Two nail charts that name
// no standard (second-hand): (a) 175 100 70 65 50 30, (b) 170 100 65 60 50 30
// for 6d to 20d; the lower of the two is taken, so the order is never short.
var perPound = []struct {
	diameter, length float64 // in, NDS 2018 Table L4
	count            float64
}{
	{.113, 2, 170}, // 6d
	{.131, 2.5, 100},
	{.148, 3, 65},
	{.148, 3.25, 60},
	{.162, 3.5, 50},
	{.192, 4, 30}, // 20d
}

// Steel is the density of steel, lb/in³ (7850 kg/m³).
const Steel = 0.2836

// head is the part of a nail's weight that is not shank. The published
// charts lie between 5 percent under and 2 percent over what the shank alone
// gives; the lower is taken.
const head = 0.05

// PerPound returns how many nails of a size weigh a pound, and where that
// number is from; 0 for what is not bought by weight.
func PerPound(n hardware.Nail) (count float64, source string) {
	if n.Bolt() || n.Diameter <= 0 || n.Length <= 0 {
		return 0, ""
	}
	for _, p := range perPound {
		if p.diameter == n.Diameter && p.length == n.Length {
			return p.count, "lower of two nail charts (second-hand)"
		}
	}
	shank := math.Pi / 4 * n.Diameter * n.Diameter * n.Length * Steel
	return math.Floor((1 - head) / shank), "computed: shank at {0.2836 lb/in3}, 5% for the head"
}
