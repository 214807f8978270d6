package floorplan

import (
	"fmt"
	"strings"

	"galewright/plan"
	"galewright/plan/framing"
	"galewright/render/page"
)

// miterNotes says of a level's corners that are no right angle how they are cut,
// one note for all that are cut alike.
func miterNotes(c *page.Context, l *plan.Level) (notes []string) {
	var order []string
	corners := map[string][]string{}
	for _, j := range c.House.Joints {
		if j.Kind != plan.WallCorner || j.Level != l || len(j.Members) < 2 || j.Members[0].Bevel == 0 {
			continue
		}
		how := howCut(j.Members[0], j.Members[1])
		if corners[how] == nil {
			order = append(order, how)
		}
		corners[how] = append(corners[how], j.Members[1].Wall.Name+" with "+j.Members[0].Wall.Name)
	}
	for _, how := range order {
		notes = append(notes, fmt.Sprintf("%s of %s: %s.", map[bool]string{true: "Corner", false: "Corners"}[len(corners[how]) == 1], strings.Join(corners[how], ", "), how))
	}
	return notes
}

// howCut says how a mitered corner is made of its two beveled studs.
func howCut(its, own *framing.Member) string {
	angle := fmt.Sprintf("%.1f°", own.Bevel)
	if a := fmt.Sprintf("%.1f°", its.Bevel); a != angle {
		angle += fmt.Sprintf(" in %s and %s in %s", own.Wall.Name, a, its.Wall.Name)
	}
	if own.Role != plan.BeveledStud && its.Role != plan.BeveledStud {
		return "all plates and both end studs are cut at " + angle + " off square and meet"
	}
	return "all plates are cut at " + angle + " off square and meet; the studs ripped to that bevel, from " + own.Section.Text +
		", fill the wedge between the end studs and are nailed to each other and to those"
}
