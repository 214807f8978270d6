package roofplan

import (
	"fmt"
	"slices"

	"galewright/plan"
)

func init() { kinds[plan.ShedRoof] = shed }

// shed has one plane that climbs from the low wall to the high one.
func shed(s Shape) (out [4]float64, err error) {
	high := slices.Index(SideNames[:], s.High)
	if high < 0 {
		return out, fmt.Errorf("a shed roof whose high wall is on side %q, which is none", s.High)
	}
	out[(high+2)%4] = s.Slope
	return out, nil
}
