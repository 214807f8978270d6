package roofplan

import "slices"

func init() { kinds["shed"] = shed }

// shed has one plane that climbs from the low wall to the high one.
func shed(s Shape) (out [4]float64, ok bool) {
	high := slices.Index(SideNames[:], s.High)
	if high < 0 || s.Slope <= 0 {
		return out, false
	}
	out[(high+2)%4] = s.Slope
	return out, true
}
