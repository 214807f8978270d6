package wind

import (
	"fmt"
	"math"

	"galewright/plan"
)

// Limits tells where the building lies outside what the procedures were made
// for, one sentence a limit; nil when nothing does.
func (b Basis) Limits() (notes []string) {
	add := func(bad bool, format string, a ...any) {
		if bad {
			notes = append(notes, fmt.Sprintf(format, a...))
		}
	}
	least, most := math.Min(b.Length, b.Width), math.Max(b.Length, b.Width)
	add(b.Theta > 45, "roof angle %.1f degrees is over 45: no figure of components and cladding; envelope coefficients interpolated toward 90 degrees", b.Theta)
	add(most > 3*least, "plan %.0f by %.0f ft is longer than three times its width, the limit of the prescriptive high wind guides: diaphragm deflection is not checked", most, least)
	add(b.Enclosure == plan.Open, "the building is open: neither procedure is worked out here for one without walls")
	add(b.Kzt == 1 && b.Elevation > 1000, "topographic factor 1 at an elevation of %.0f ft: hills and ridges are not checked", b.Elevation)
	return notes
}
