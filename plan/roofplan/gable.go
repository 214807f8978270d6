package roofplan

func init() { kinds["gable"] = gable }

// gable slopes both sides along the ridge, the low side (south or west) with
// Slope and the other with Other, so that a gable may have unequal pitches.
// An end may be a hip instead of a gable.
func gable(s Shape) (out [4]float64, ok bool) {
	if s.Axis != "x" && s.Axis != "y" || s.Slope <= 0 {
		return out, false
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
	return out, true
}
