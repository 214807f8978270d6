package roofplan

import (
	"fmt"
	"slices"

	"galewright/plan"
)

func init() { kinds[plan.ShedRoof] = shed }

// shed has one plane that climbs from the low wall to the high one. An end may be a
// hip, whose plane climbs to the high wall beside it, as where the roof of a porch
// turns a corner of the house.
func shed(s Shape) (out [4]float64, err error) {
	high := slices.Index(SideNames[:], s.High)
	if high < 0 {
		return out, fmt.Errorf("a shed roof whose high wall is on side %q, which is none", s.High)
	}
	out[(high+2)%4] = s.Slope
	_, ends := eaves(map[bool]plan.Axis{true: plan.AxisX, false: plan.AxisY}[high%2 == 0])
	for i, e := range ends {
		if s.HipEnd[i] {
			out[e] = s.Slope
		}
	}
	return out, nil
}
