package roofplan

import (
	"fmt"
	"slices"

	"galewright/plan"
)

func init() { kinds[plan.GableRoof] = gable }

// gable slopes both sides along the ridge, the low side (south or west) with
// Slope and the other with Other, so that a gable may have unequal pitches.
// An end may be a hip instead of a gable.
func gable(s Shape) (out [4]float64, err error) {
	if !slices.Contains(plan.Axes, s.Axis) {
		return out, fmt.Errorf("a ridge that runs along %q, which is no axis", s.Axis)
	}
	sides, ends := eaves(s.Axis)
	out[sides[0]], out[sides[1]] = s.Slope, s.Slope
	if s.Other > 0 {
		out[sides[1]] = s.Other
	}
	for i, e := range ends {
		if s.HipEnd[i] {
			out[e] = s.Slope
		}
	}
	return out, nil
}
