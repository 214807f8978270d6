package roofplan

import "galewright/plan"

func init() { kinds[plan.HipRoof] = hip }

// hip slopes all four sides; a square one ends in a point.
func hip(s Shape) (out [4]float64, err error) {
	s.HipEnd = [2]bool{true, true}
	return gable(s)
}
