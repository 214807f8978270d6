package lists

import (
	"cmp"
	"fmt"
	"slices"
	"strings"

	"galewright/plan"
	"galewright/render/page"
	"galewright/render/sheet"
	"galewright/render/table"
)

// CoverName is the title of the first sheet.
const CoverName = "Cover: legend, index, key plan"

// CoverPages lays out what everyone reads first: the project and its wind
// basis, the legend, how to read the sheets, cautions, the key plan, the
// index of sheets and the list of revisions.
func CoverPages(c *page.Context) []*page.Page {
	rest := c.Foreseen[1:]
	pages := c.Largest(coverLaid)
	if len(pages) > 1 { // the index lists the cover's own sheets too
		c.Foreseen = nil
		for i, p := range pages {
			c.Foreseen = append(c.Foreseen, page.Foreseen{Number: fmt.Sprintf("S-%03d", i+1), Name: p.Name, Base: p.Base, Scale: p.Scale, Keys: p.Keys})
		}
		c.Foreseen = append(c.Foreseen, rest...)
		pages = coverLaid(c)
	}
	return pages
}

func coverLaid(c *page.Context) []*page.Page {
	f := c.NewFlow(CoverName, "cover")
	f.Put(banner(c, f.ColumnWidth))
	groups := [][]page.Block{
		{legendTable(c), revisionTable(c)},
		{projectTable(c), windTable(c), readingTable(c), cautionTable(c)},
		nil, // key plans
		{indexTable(c)},
	}
	if page.Large(c.Paper) {
		f.Columns(4)
	} else {
		f.Put(legendTable(c))
		f.ColumnsOf(48 * c.ReadingCap()) // some 60 letters
		groups[0] = nil
		groups[1] = slices.Insert(groups[1], 2, page.Block(revisionTable(c)))
	}
	groups[2] = keyPlans(c, f.ColumnWidth)
	for i, g := range groups {
		if i > 0 && page.Large(c.Paper) {
			f.Next()
		}
		for _, b := range g {
			f.Put(b)
		}
	}
	return f.Done()
}

// banner sets the project's name large over the whole width.
func banner(c *page.Context, w sheet.MM) *page.Figure {
	pr := c.House.Plan.Project
	title, sub := c.Size.Title*1.2, c.Size.Head
	what := page.Join("Hardware location sheets", pr.Site)
	return &page.Figure{W: w, H: title*1.3 + sub*1.6 + 4, Draw: func(p *page.Page, at sheet.Pt) {
		y := at.Y + title
		p.Text(page.Lettered{S: page.FitText(pr.Name, title, true, w), Cap: title, At: sheet.Pt{X: at.X, Y: y}, Bold: true, Role: "title", Layer: sheet.LayerNote})
		y += title*0.3 + 2 + sub
		p.Text(page.Lettered{S: page.FitText(what, sub, false, w), Cap: sub, At: sheet.Pt{X: at.X, Y: y}, Role: "title", Layer: sheet.LayerNote})
		y += sub*0.6 + 1
		p.Line(sheet.PenCut, sheet.LayerNote, sheet.Pt{X: at.X, Y: y}, sheet.Pt{X: at.X + w, Y: y})
	}}
}

func projectTable(c *page.Context) *table.Table {
	pl, pr := c.House.Plan, c.House.Plan.Project
	var levels []string
	for _, l := range pl.Levels {
		levels = append(levels, fmt.Sprintf("%s: floor at %s, top of plates at %s above grade", l.Name, c.Length(l.Floor), c.Length(l.Top())))
	}
	t := table.Pairs("Project", "Project", pr.Name, "Number", pr.Number, "Site", pr.Site, "Date of the plan", pr.Date,
		"Revision", pr.Revision, "Drawn by", pr.DrawnBy, "Checked by", pr.CheckedBy, "Engineer of record", pr.Engineer,
		"Measured in", map[bool]string{true: "millimeters and meters, kN, kPa; hardware, nails and lumber are bought by US sizes, with millimeters beside them", false: "feet and inches, to the tape's 1/16"}[pr.Units.Is()])
	for i, l := range levels {
		name := "Levels"
		if i > 0 {
			name = ""
		}
		t.Rows = append(t.Rows, table.Row{Cells: table.Texts(name, l)})
	}
	t.Rows = append(t.Rows, table.Row{Cells: table.Texts("Hardware", fmt.Sprintf("%d pieces of %d marks", len(c.Placement.Pieces), len(c.Schedule.Lines)))})
	if ft := pl.Site.Shore; ft > 0 {
		t.Rows = append(t.Rows, table.Row{Cells: table.Texts("Salt water", away(c, ft)+" away; coatings and classes of place are on the schedule sheet")})
	}
	for i, n := range pr.Notes {
		t.Rows = append(t.Rows, table.Row{Cells: table.Texts(fmt.Sprintf("Note %d", i+1), n)})
	}
	return t
}

// windTable prints the wind basis, and in bold what the plan left to be
// assumed.
func windTable(c *page.Context) *table.Table {
	s := c.House.Plan.Site
	t := &table.Table{Title: "Wind basis, as the plan gives it", Plain: true, Cols: []table.Column{{}, {Wrap: true, Grow: true}}}
	for _, r := range windRows(c) {
		row := table.Row{Cells: table.Texts(r.name, r.value)}
		if slices.ContainsFunc(s.Assumed, func(a plan.Assumption) bool { return a.Key == r.key }) {
			row = table.Row{Bold: true, Cells: table.Texts(r.name, r.value+" (assumed, not in the plan)")}
		}
		if r.value != "" {
			t.Rows = append(t.Rows, row)
		}
	}
	switch {
	case len(t.Rows) == 0:
		t.Rows = []table.Row{{Cells: table.Texts("None", "the plan gives no wind basis")}}
	case len(s.Assumed) == 0:
		t.Rows = append(t.Rows, table.Row{Cells: table.Texts("Assumed", "nothing: the plan gives every value")})
	}
	t.Rows = append(t.Rows, table.Row{Cells: table.Texts("", "The engineer of record sets the wind basis; these lines repeat what the plan says; the procedure follows from it.")})
	return t
}

// windRow is one value of the wind basis and the plan's key for it.
type windRow struct{ key, name, value string }

func windRows(c *page.Context) []windRow {
	s := c.House.Plan.Site
	speed, edition, kzt, ground := "", "", "", ""
	if s.WindSpeed != 0 {
		speed = c.Units().Speed(s.WindSpeed) + ", 3 second gust"
		ground = above(c, s.Elevation) + " above sea level"
	}
	if s.Edition != "" {
		edition = "ASCE 7-" + strings.TrimPrefix(string(s.Edition), "7-")
	}
	if s.Kzt != 0 {
		kzt = fmt.Sprintf("%.4g", s.Kzt)
	}
	return []windRow{
		{"wind_speed", "Basic wind speed", speed},
		{"exposure", "Exposure", string(s.Exposure)},
		{"risk", "Risk category", string(s.Risk)},
		{"edition", "Standard", edition},
		{"enclosure", "Enclosure", protected(s.Enclosure)},
		{"procedure", "Procedure", procedure(c)},
		{"kzt", "Topographic factor", kzt},
		{"elevation", "Ground", ground},
	}
}

// protected says what the enclosure class asks of the openings.
func protected(e plan.Enclosure) string {
	switch e {
	case plan.Enclosed:
		return string(e) + ": holds only while every opening stays closed; glazing and doors impact resistant or covered, else the house counts as partially enclosed"
	case plan.PartiallyEnclosed:
		return string(e) + ": holds with a large opening broken in a storm"
	}
	return string(e)
}

// procedure says by which procedure of ASCE 7 loads are worked out, and why;
// without loads what the plan asks for.
func procedure(c *page.Context) string {
	if c.Loads != nil && c.Loads.Missing == "" {
		return c.Loads.Choice.String() + ": " + c.Loads.Choice.Why
	}
	return string(c.House.Plan.Site.Procedure)
}

// above prints a height over the sea that is given in feet.
func above(c *page.Context, ft float64) string {
	return c.Units().Feet(ft)
}

// legendTable explains every number and symbol, with its count.
func legendTable(c *page.Context) *table.Table {
	t := &table.Table{Title: "Legend", Cols: []table.Column{
		{Head: "No.", Align: sheet.Middle},
		{Head: "Symbol", Align: sheet.Middle},
		{Head: "Mark"},
		{Head: "What it does", Wrap: true},
		{Head: "Pieces", Align: sheet.Right},
		{Head: "Detail"},
	}}
	details, any := c.Foreseen, false
	for _, l := range c.Schedule.Lines {
		d := table.Cell{}
		if ns := details.Of("mark " + l.Item.Mark); len(ns) > 0 {
			d, any = table.Cell{S: ns[0], Link: ns[0]}, true
		}
		what := string(l.Item.Kind.Name) + ": " + cmp.Or(l.Item.Note, l.Item.Kind.Doc)
		t.Rows = append(t.Rows, table.Row{Cells: []table.Cell{{Legend: l.Number}, {Symbol: l.Item.Kind.Symbol}, {S: l.Item.Mark}, {S: what}, {S: fmt.Sprint(len(l.Pieces))}, d}})
	}
	if !any {
		t.DropLast()
	}
	return t
}

func readingTable(c *page.Context) *table.Table {
	return table.Numbered("How to read these sheets", []string{
		"The number in a circle is the mark's line in this legend and in the count schedule. It is the same on every sheet.",
		"A wall is seen from outside (an interior wall from the side its sheet names) and measured from its left end, along the outside face of its studs. Hook the tape once; every running dimension is from there.",
		"A long piece is drawn where it lies, to length; its symbol and number stand at its middle. On plans they are at its foot. On elevations solid steel lies on the face toward you, open steel on the far face.",
		"Use the figures. Before you scale anything off a print, check the scale bar with a rule: prints get shrunk.",
		"On an elevation a strip below the wall gives each piece's distance from the wall's start, in order; where it leaves out those at a stud's center or edge, the stud's own figure places them.",
		"Revise by hand: a cloud around what is changed, the revision's number in a triangle beside it, a line in the list of revisions.",
		"Sheets are numbered by what they show: 0 general, 1 plans, 2 wall elevations, 3 load path, 5 details, 6 schedules, 7 check sheets.",
	})
}

func cautionTable(c *page.Context) *table.Table {
	return table.Numbered("Cautions", []string{
		page.Caution,
		"Where these sheets and the sealed drawings differ, the sealed drawings govern: stop and ask the engineer of record.",
		"Every hole the schedule counts takes its nail, of the diameter and length named. A shorter, thinner or missing nail is a weaker tie; a change of nail or mark needs the engineer's approval.",
		"Drive by hand the nails that are marked so; a nail gun is not for them.",
		"A split stud or plate, a nail that missed the member behind it, or a bent strap is not a connection: replace it or ask.",
		"Cover nothing before its box on the check sheet is checked and dated, and the inspector has seen it.",
		"Steel against preservative-treated wood, and steel in salt air, need the coating that the maker's current data ask for.",
	})
}

// revisionTable lists the plan's revision and leaves lines for those to come.
func revisionTable(c *page.Context) *table.Table {
	pr := c.House.Plan.Project
	t := &table.Table{Title: "Revisions", Grid: true, RowH: 7, Cols: []table.Column{{Head: "No.", Align: sheet.Middle}, {Head: "Date"}, {Head: "What changed", Wrap: true, Grow: true}, {Head: "By"}}}
	rev, what := pr.Revision, ""
	if rev == "" || rev == "0" {
		rev, what = "0", "first issue"
	}
	by := pr.DrawnBy
	if len(by) > 12 {
		by = page.FitText(by, c.Size.Note, false, 24)
	}
	t.Rows = append(t.Rows, table.Row{Cells: table.Texts(rev, pr.Date, what, by)})
	for range 3 {
		t.Rows = append(t.Rows, table.Row{Cells: table.Texts("", "", "", "")})
	}
	return t
}

// indexTable lists all sheets of the set.
func indexTable(c *page.Context) *table.Table {
	t := &table.Table{Title: "Sheets of this set", Cols: []table.Column{{Head: "Sheet"}, {Head: "Title", Wrap: true, Grow: true}, {Head: "Scale"}}}
	group, before := "", ""
	all := c.Foreseen
	for i, s := range all {
		if g := seriesNames[s.Series]; g != group {
			group = g
			t.Rows = append(t.Rows, table.Row{Group: true, Cells: table.Texts(g)})
		}
		scale := s.Scale
		if scale == "none" {
			scale = ""
		}
		name, last := cmp.Or(s.Base, s.Name), s.Number
		if name == before {
			continue
		}
		for _, next := range all[i+1:] {
			if cmp.Or(next.Base, next.Name) != name {
				break
			}
			last = next.Number
		}
		before = name
		number := s.Number
		if last != s.Number {
			number += " to " + last
		}
		t.Rows = append(t.Rows, table.Row{Cells: []table.Cell{{S: number, Link: s.Number}, {S: name}, {S: scale}}})
	}
	return t
}

// seriesNames names the series of sheets in the trade's usual order.
var seriesNames = map[int]string{
	0: "General", 1: "Plans", 2: "Wall elevations", 3: "Sections", 4: "Large-scale views", 5: "Details", 6: "Schedules", 7: "Check sheets", 8: "Calculations",
}
