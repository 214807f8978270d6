package floorplan

import (
	"fmt"
	"strings"

	"galewright/plan"
	"galewright/plan/framing"
	"galewright/render/page"
)

// trussNotes says where the trusses of each hip end stand, and whose their design is.
func trussNotes(c *page.Context) (notes []string) {
	for _, e := range c.House.TrussEnds {
		notes = append(notes, trussEndNote(c, e))
	}
	for _, r := range c.House.Plan.Roofs {
		if r.Trusses {
			return append(notes, trussCaution)
		}
	}
	return notes
}

// trussCaution says what of trusses is nobody's here.
const trussCaution = "Trusses are shown by their outer chords. Their design, webs and plates, and what fastens the plies of a girder truss to each other, are the truss designer of record's; the uplift at each bearing and hanger is for that designer too. Build to the truss placement plan where it differs."

// trussEndNote tells one hip end by its numbers and stations.
func trussEndNote(c *page.Context, e *framing.TrussEnd) string {
	parts := []string{fmt.Sprintf("girder truss %s, %s, the middle of its outer ply %s in from the outside face of the end wall's studs", e.Girder.Ref, plies(e.Girder), c.Length(e.Setback))}
	if len(e.Steps.Members) > 0 {
		parts = append(parts, "from there in hip "+numbered(c, e.Steps))
	}
	if len(e.Hung.Members) > 0 {
		from := "south"
		if e.Roof.Ridge == plan.AxisY {
			from = "west"
		}
		parts = append(parts, fmt.Sprintf("jack %s, from the %s wall's outside face, hang on it", numbered(c, e.Hung), from))
	}
	for _, x := range e.Corners {
		s := "corner jack " + x.Member.Ref + " hangs on it too"
		if len(x.Jacks.Members) > 0 {
			s += fmt.Sprintf(", and on that, along it on plan from its tail, jack %s", numbered(c, x.Jacks))
		}
		parts = append(parts, s)
	}
	return fmt.Sprintf("Roof %s, %s end: %s.", e.Roof.Name, e.Side, strings.Join(parts, "; "))
}

// plies counts the plies of a girder truss.
func plies(m *framing.Member) string {
	if m.Section.Ply == 1 {
		return "1 ply"
	}
	return fmt.Sprintf("%d plies", m.Section.Ply)
}

// numbered lists trusses by number with the place of each.
func numbered(c *page.Context, r framing.TrussRow) string {
	word := "trusses "
	if len(r.Members) == 1 {
		word = "truss "
	}
	var parts []string
	for i, m := range r.Members {
		parts = append(parts, fmt.Sprintf("%s at %s", m.Ref, c.Length(r.At[i])))
	}
	return word + strings.Join(parts, ", ")
}
