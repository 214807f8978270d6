package floorplan

import (
	"fmt"
	"slices"
	"strings"

	"galewright/plan"
	"galewright/plan/framing"
	"galewright/plan/lumber"
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
	if c.House.StepsUp() {
		notes = append(notes, stepNote)
	}
	if len(c.House.TrussEnds) > 0 {
		notes = append(notes, "Pieces at girder trusses and corner jacks are counted here too; the sheet of trusses tells where each of these stands.")
	}
	for _, r := range c.House.Plan.Roofs {
		if r.Trusses {
			return append(notes, trussCaution)
		}
	}
	return notes
}

// TrussPages is the sheet of the trusses: those to order by shape, where those of a hip
// end stand, and what each brings to what holds it.
func TrussPages(c *page.Context) []*page.Page {
	list := lumber.Trusses(c.House)
	if len(list) == 0 || !c.House.Plan.Trussed() {
		return nil
	}
	f := c.NewFlow("Trusses", "trusses")
	f.ColumnsOf(210)
	f.Put(table.Numbered("Trusses", trussRules(c)))
	f.Put(shapeTable(c, list))
	for _, e := range c.House.TrussEnds {
		f.Put(trussTable(c, e))
	}
	if t := trussUplift(c); t != nil {
		f.Put(t)
	}
	return f.Done()
}

// trussRules are the notes of the sheet of trusses.
func trussRules(c *page.Context) (notes []string) {
	if c.House.StepsUp() {
		notes = append(notes, stepNote)
	}
	if slices.ContainsFunc(c.House.TrussEnds, func(e *framing.TrussEnd) bool { return e.Mouth }) {
		notes = append(notes, mouthNote)
	}
	return append(notes, trussCaution)
}

// mouthNote says what stands across the mouth of a wing.
const mouthNote = "Where a wing opens into another roof and no bearing wall stands across its mouth, a girder truss of the wing stands there on the wing's walls and carries the ends of that roof's trusses; the frames of the valley set stand on those."

// shapeTable lists the trusses to order.
func shapeTable(c *page.Context, list []*lumber.Truss) *table.Table {
	t := &table.Table{Title: "To order, by shape", Cols: []table.Column{
		{Head: "Truss"},
		{Head: "Chords"},
		{Head: "Plies", Align: sheet.Right},
		{Head: "Span", Align: sheet.Right},
		{Head: "Slope"},
		{Head: "Height", Align: sheet.Right},
		{Head: "Level top", Align: sheet.Right},
		{Head: "Pieces", Align: sheet.Right},
		{Head: "Numbers", Wrap: true},
	}}
	for _, x := range list {
		var cells []table.Cell
		for _, s := range x.Row(c.House.Plan.Project.Units) {
			cells = append(cells, table.Cell{S: s})
		}
		t.Rows = append(t.Rows, table.Row{Cells: cells})
	}
	return t
}

// trussUplift tells the net uplift at each bearing of each truss and where it hangs; nil
// without loads.
func trussUplift(c *page.Context) *table.Table {
	if c.Loads == nil {
		return nil
	}
	t := &table.Table{Title: "Uplift of each truss where it is held, net of dead load, ASD", Cols: []table.Column{
		{Head: "No.", Align: sheet.Middle}, {Head: "Truss"}, {Head: "Joint and uplift", Wrap: true},
	}}
	at := map[*framing.Member][]string{}
	for _, l := range c.Loads.Links {
		if j := l.Joint; j != nil && j.First() != nil && j.First().Role.IsTruss() && l.Check.ID == j.Kind.Row().Check && holdsTruss(j.Kind) {
			at[j.First()] = append(at[j.First()], c.Units().Sprintf("%s: %.0f {lb}", j.ID, l.Demand))
		}
	}
	for _, m := range c.House.Members {
		if len(at[m]) > 0 {
			t.Rows = append(t.Rows, table.Row{Cells: []table.Cell{{S: m.Ref}, {S: string(m.Role)}, {S: strings.Join(at[m], ", ")}}})
		}
	}
	return t
}

// trussTable tells where each truss of a hip end stands, by its number.
func trussTable(c *page.Context, e *framing.TrussEnd) *table.Table {
	where, base := string(e.Side)+" end", "from the outside face of the end wall's studs"
	if e.Mouth {
		where, base = "its mouth, "+string(e.Side), "from the end of the wing's walls, which the other roof's trusses end at"
	}
	t := &table.Table{
		Title: fmt.Sprintf("Trusses, roof %s, %s", e.Roof.Name, where),
		Cols:  []table.Column{{Head: "No.", Align: sheet.Middle}, {Head: "Truss"}, {Head: "At", Align: sheet.Right}},
	}
	row := func(m *framing.Member, words string, at float64) {
		t.Rows = append(t.Rows, table.Row{Cells: []table.Cell{{S: m.Ref}, {S: words}, {S: c.Length(at)}}})
	}
	part := func(words string, r framing.TrussRow) {
		for i, x := range r {
			if i == 0 && words != "" {
				t.Rows = append(t.Rows, table.Row{Group: true, Cells: []table.Cell{{S: words}}})
			}
			row(x.Member, string(x.Member.Role), x.At)
		}
	}
	t.Rows = append(t.Rows, table.Row{Group: true, Cells: []table.Cell{{S: base}}})
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

// holdsTruss tells whether joints of a kind hold a truss down.
func holdsTruss(k plan.JointKind) bool {
	return k.OnPlate() || k == plan.JackGirder || k == plan.JackCorner || k == plan.ValleyTruss
}
