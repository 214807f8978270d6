package floorplan

import (
	"fmt"

	"galewright/plan"
	"galewright/plan/framing"
	"galewright/render/page"
	"galewright/render/sheet"
	"galewright/render/table"
)

// trussCaution says what of trusses is nobody's here.
const trussCaution = "Trusses are shown by their outer chords. Their design, webs and plates, and what fastens the plies of a girder truss to each other, are the truss designer of record's; give that designer the uplift at each bearing and hanger. Where the truss placement plan differs, ask before setting."

// stepNote says what a hip end of trusses is.
const stepNote = "At a hip end the hip trusses step up from the girder truss to the first full truss under the ridge's end, their level tops in the end's slope, and the deck there is nailed to those; jack trusses hang on the girder truss and on the corner jacks under the hips."

// trussNotes says what roofs of trusses leave to others.
func trussNotes(c *page.Context) (notes []string) {
	if len(c.House.TrussEnds) > 0 {
		notes = append(notes, "Pieces at girder trusses and corner jacks are counted here too.", stepNote)
	}
	for _, r := range c.House.Plan.Roofs {
		if r.Trusses {
			return append(notes, trussCaution)
		}
	}
	return notes
}

// trussTables are the tables of the hip ends of trusses, one an end.
func trussTables(c *page.Context) (out []*table.Table) {
	for _, e := range c.House.TrussEnds {
		out = append(out, trussTable(c, e))
	}
	return out
}

// trussTable tells where each truss of a hip end stands, by its number.
func trussTable(c *page.Context, e *framing.TrussEnd) *table.Table {
	t := &table.Table{
		Title: fmt.Sprintf("Trusses, roof %s, %s end", e.Roof.Name, e.Side),
		Cols:  []table.Column{{Head: "No.", Align: sheet.Middle}, {Head: "Truss"}, {Head: "At", Align: sheet.Right}},
	}
	row := func(m *framing.Member, words string, at float64) {
		t.Rows = append(t.Rows, table.Row{Cells: []table.Cell{{S: m.Ref}, {S: words}, {S: c.Length(at)}}})
	}
	part := func(words string, r framing.TrussRow) {
		for i, m := range r.Members {
			if i == 0 && words != "" {
				t.Rows = append(t.Rows, table.Row{Group: true, Cells: []table.Cell{{S: words}}})
			}
			row(m, string(m.Role), r.At[i])
		}
	}
	t.Rows = append(t.Rows, table.Row{Group: true, Cells: []table.Cell{{S: "from the outside face of the end wall's studs"}}})
	row(e.Girder, girderWords(e.Girder), e.Setback)
	part("", e.Steps)
	from := "south"
	if e.Roof.Ridge == plan.AxisY {
		from = "west"
	}
	part(fmt.Sprintf("hung on %s, from the outside face of the %s wall's studs", e.Girder.Ref, from), e.Hung)
	for _, x := range e.Corners {
		part(fmt.Sprintf("hung on corner jack %s, along it on plan from its tail", x.Member.Ref), x.Jacks)
	}
	return t
}

// girderWords names a girder truss with its plies.
func girderWords(m *framing.Member) string {
	if m.Section.Ply == 1 {
		return string(m.Role)
	}
	return fmt.Sprintf("%s, outer ply of %d", m.Role, m.Section.Ply)
}
