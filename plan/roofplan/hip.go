package roofplan

func init() { kinds["hip"] = hip }

// hip slopes all four sides; a square one ends in a point.
func hip(s Shape) (out [4]float64, ok bool) {
	s.HipEnd = [2]bool{true, true}
	return gable(s)
}
