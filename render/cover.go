package render

import (
	"cmp"
	"fmt"
	"slices"
	"strings"

	"galewright/render/sheet"
)

var _ = register(view{Series: 0, Order: 10, Name: "cover", Pages: coverPages})

const coverName = "Cover: legend, index, key plan"

// coverPages lays out what everyone reads first: the project and its wind
// basis, the legend, how to read the sheets, cautions, the key plan, the
// index of sheets and the list of revisions.
func coverPages(c *context) []*page {
	rest := c.foreseen[1:]
	pages := c.largest(coverLaid)
	if len(pages) > 1 { // the index lists the cover's own sheets too
		c.foreseen = nil
		for i, p := range pages {
			c.foreseen = append(c.foreseen, foreseen{number: fmt.Sprintf("S-%03d", i+1), name: p.Name, scale: p.Scale, keys: p.Keys})
		}
		c.foreseen = append(c.foreseen, rest...)
		pages = coverLaid(c)
	}
	return pages
}

func coverLaid(c *context) []*page {
	f := c.newFlow(coverName, "cover")
	f.put(c.banner(f.colW))
	groups := [][]block{
		{c.legendTable(), c.revisionTable()},
		{c.projectTable(), c.windTable(), c.readingTable(), c.cautionTable()},
		nil, // key plans
		{c.indexTable()},
	}
	if large(c.Paper) {
		f.columns(4)
	} else {
		f.put(c.legendTable())
		f.columnsOf(48 * c.readingCap()) // some 60 letters
		groups[0] = nil
		groups[1] = slices.Insert(groups[1], 2, block(c.revisionTable()))
	}
	groups[2] = c.keyPlans(f.colW)
	for i, g := range groups {
		if i > 0 && large(c.Paper) {
			f.next()
		}
		for _, b := range g {
			f.put(b)
		}
	}
	return f.done()
}

// banner sets the project's name large over the whole width.
func (c *context) banner(w sheet.MM) *figure {
	pr := c.House.Plan.Project
	title, sub := c.Size.Title*1.2, c.Size.Head
	what := join("Hardware location sheets", pr.Site)
	return &figure{W: w, H: title*1.3 + sub*1.6 + 4, Draw: func(p *page, at sheet.Pt) {
		y := at.Y + title
		p.text(lettered{S: fitText(pr.Name, title, true, w), Cap: title, At: sheet.Pt{X: at.X, Y: y}, Bold: true, Role: "title", Layer: sheet.LayerNote})
		y += title*0.3 + 2 + sub
		p.text(lettered{S: fitText(what, sub, false, w), Cap: sub, At: sheet.Pt{X: at.X, Y: y}, Role: "title", Layer: sheet.LayerNote})
		y += sub*0.6 + 1
		p.line(sheet.PenCut, sheet.LayerNote, sheet.Pt{X: at.X, Y: y}, sheet.Pt{X: at.X + w, Y: y})
	}}
}

// pairs makes a table of names and values; empty values are left out.
func pairs(title string, kv ...string) *table {
	t := &table{Title: title, Plain: true, Cols: []tableColumn{{}, {Wrap: true, Grow: true}}}
	for i := 0; i+1 < len(kv); i += 2 {
		if kv[i+1] != "" {
			t.Rows = append(t.Rows, tableRow{Cells: texts(kv[i], kv[i+1])})
		}
	}
	return t
}

func (c *context) projectTable() *table {
	pl, pr := c.House.Plan, c.House.Plan.Project
	var levels []string
	for _, l := range pl.Levels {
		levels = append(levels, fmt.Sprintf("%s: floor at %s, plates' top at %s above grade", l.Name, c.length(l.Floor), c.length(l.Top())))
	}
	t := pairs("Project", "Project", pr.Name, "Number", pr.Number, "Site", pr.Site, "Date of the plan", pr.Date,
		"Revision", pr.Revision, "Drawn by", pr.DrawnBy, "Checked by", pr.CheckedBy, "Engineer of record", pr.Engineer,
		"Measured in", map[bool]string{true: "millimeters", false: "feet and inches, to the tape's 1/16"}[pr.Metric])
	for i, l := range levels {
		name := "Levels"
		if i > 0 {
			name = ""
		}
		t.Rows = append(t.Rows, tableRow{Cells: texts(name, l)})
	}
	t.Rows = append(t.Rows, tableRow{Cells: texts("Hardware", fmt.Sprintf("%d pieces of %d marks", len(c.Placement.Pieces), len(c.Schedule.Lines)))})
	for i, n := range pr.Notes {
		t.Rows = append(t.Rows, tableRow{Cells: texts(fmt.Sprintf("Note %d", i+1), n)})
	}
	return t
}

// windTable prints the wind basis, and in bold what the plan left to be
// assumed.
func (c *context) windTable() *table {
	s := c.House.Plan.Site
	t := &table{Title: "Wind basis, as the plan gives it", Plain: true, Cols: []tableColumn{{}, {Wrap: true, Grow: true}}}
	for _, r := range c.windRows() {
		row := tableRow{Cells: texts(r.name, r.value)}
		if slices.ContainsFunc(s.Assumed, func(a string) bool { return strings.HasPrefix(a, r.key+" =") }) {
			row = tableRow{Bold: true, Cells: texts(r.name, r.value+" (assumed, not in the plan)")}
		}
		if r.value != "" {
			t.Rows = append(t.Rows, row)
		}
	}
	switch {
	case len(t.Rows) == 0:
		t.Rows = []tableRow{{Cells: texts("None", "the plan gives no wind basis")}}
	case len(s.Assumed) == 0:
		t.Rows = append(t.Rows, tableRow{Cells: texts("Assumed", "nothing: the plan gives every value")})
	}
	t.Rows = append(t.Rows, tableRow{Cells: texts("", "The engineer of record settles the wind basis; these lines repeat what the plan says.")})
	return t
}

// windRow is one value of the wind basis and the plan's key for it.
type windRow struct{ key, name, value string }

func (c *context) windRows() []windRow {
	s := c.House.Plan.Site
	speed, edition, kzt, ground := "", "", "", ""
	if s.WindSpeed != 0 {
		speed = fmt.Sprintf("%.4g mph, 3 second gust", s.WindSpeed)
		if c.metric() {
			speed = fmt.Sprintf("%.0f m/s (%.4g mph), 3 second gust", s.WindSpeed*0.44704, s.WindSpeed)
		}
		ground = c.above(s.Elevation) + " above sea level"
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
		{"enclosure", "Enclosure", string(s.Enclosure)},
		{"kzt", "Topographic factor", kzt},
		{"elevation", "Ground", ground},
	}
}

// above prints a height over the sea that is given in feet.
func (c *context) above(ft float64) string {
	if c.metric() {
		return fmt.Sprintf("%.1f m", ft*0.3048)
	}
	return fmt.Sprintf("%.4g ft", ft)
}

// legendTable explains every number and symbol, with its count.
func (c *context) legendTable() *table {
	t := &table{Title: "Legend", Cols: []tableColumn{
		{Head: "No.", Align: sheet.Middle},
		{Head: "Symbol", Align: sheet.Middle},
		{Head: "Mark"},
		{Head: "What it does", Wrap: true},
		{Head: "Pieces", Align: sheet.Right},
		{Head: "Detail"},
	}}
	details, any := c.foreseen, false
	for _, l := range c.Schedule.Lines {
		d := tableCell{}
		if ns := details.of("mark " + l.Item.Mark); len(ns) > 0 {
			d, any = tableCell{S: ns[0], Link: ns[0]}, true
		}
		what := string(l.Item.Kind.Name) + ": " + cmp.Or(l.Item.Note, l.Item.Kind.Doc)
		t.Rows = append(t.Rows, tableRow{Cells: []tableCell{{Legend: l.Number}, {Symbol: l.Item.Kind.Symbol}, {S: l.Item.Mark}, {S: what}, {S: fmt.Sprint(len(l.Pieces))}, d}})
	}
	if !any {
		t.dropLast()
	}
	return t
}

// dropLast takes the last column away.
func (t *table) dropLast() {
	n := len(t.Cols) - 1
	t.Cols = t.Cols[:n]
	for i := range t.Rows {
		t.Rows[i].Cells = t.Rows[i].Cells[:n]
	}
}

// numbered makes a plain table of numbered sentences.
func numbered(title string, list []string) *table {
	t := &table{Title: title, Plain: true, Cols: []tableColumn{{Align: sheet.Right}, {Wrap: true, Grow: true}}}
	for i, s := range list {
		t.Rows = append(t.Rows, tableRow{Cells: texts(fmt.Sprintf("%d", i+1), s)})
	}
	return t
}

func (c *context) readingTable() *table {
	return numbered("How to read these sheets", []string{
		"The number in a circle is the mark's line in this legend and in the count schedule. It is the same on every sheet.",
		"A wall is seen from outside (an inner wall from the side its sheet names) and measured from its left end, along the outside face of its studs. Hook the tape once; every running dimension is from there.",
		"A long piece is drawn where it lies, to length; its symbol and number stand at its middle. On plans they stand at its foot. On elevations solid steel lies on the face toward you, open steel on the far face.",
		"Use the figures. Before you scale anything off a print, lay a rule on the scale bar: prints get shrunk.",
		"On an elevation a strip below the wall gives each piece's distance from the wall's start, in order; where it leaves out those at a stud's center or edge, the stud's own figure places them.",
		"Revise by hand: a cloud round what is changed, the revision's number in a triangle beside it, a line in the list of revisions.",
		"Sheets are numbered by what they show: 0 general, 1 plans, 2 wall elevations, 3 load path, 5 details, 6 schedules, 7 check sheets.",
	})
}

func (c *context) cautionTable() *table {
	return numbered("Cautions", []string{
		caution,
		"Where these sheets and the sealed drawings differ, the sealed drawings govern: stop and ask the engineer of record.",
		"Every hole the schedule counts takes its nail, of the diameter and length named. A shorter, thinner or missing nail is a weaker tie; a change of nail or mark is the engineer's to allow.",
		"Nails said to be driven by hand are not driven by a tool.",
		"A split stud or plate, a nail that missed the member behind it, or a bent strap is not a connection: replace it or ask.",
		"Cover nothing before its box on the check sheet is ticked and dated, and the inspector has seen it.",
		"Steel against preservative-treated wood, and steel in salt air, need the coating that the maker's current data ask for.",
	})
}

// revisionTable lists the plan's revision and leaves lines for those to come.
func (c *context) revisionTable() *table {
	pr := c.House.Plan.Project
	t := &table{Title: "Revisions", Grid: true, RowH: 7, Cols: []tableColumn{{Head: "No.", Align: sheet.Middle}, {Head: "Date"}, {Head: "What changed", Wrap: true, Grow: true}, {Head: "By"}}}
	rev, what := pr.Revision, ""
	if rev == "" || rev == "0" {
		rev, what = "0", "first issue"
	}
	by := pr.DrawnBy
	if len(by) > 12 {
		by = fitText(by, c.Size.Note, false, 24)
	}
	t.Rows = append(t.Rows, tableRow{Cells: texts(rev, pr.Date, what, by)})
	for range 3 {
		t.Rows = append(t.Rows, tableRow{Cells: texts("", "", "", "")})
	}
	return t
}

// indexTable lists all sheets of the set.
func (c *context) indexTable() *table {
	t := &table{Title: "Sheets of this set", Cols: []tableColumn{{Head: "Sheet"}, {Head: "Title", Wrap: true, Grow: true}, {Head: "Scale"}}}
	group, before := "", ""
	all := c.foreseen
	for i, s := range all {
		if g := seriesNames[s.series]; g != group {
			group = g
			t.Rows = append(t.Rows, tableRow{Group: true, Cells: texts(g)})
		}
		scale := s.scale
		if scale == "none" {
			scale = ""
		}
		name, last := partless(s.name), s.number
		if name == before {
			continue
		}
		for _, next := range all[i+1:] {
			if partless(next.name) != name {
				break
			}
			last = next.number
		}
		before = name
		number := s.number
		if last != s.number {
			number += " to " + last
		}
		t.Rows = append(t.Rows, tableRow{Cells: []tableCell{{S: number, Link: s.number}, {S: name}, {S: scale}}})
	}
	return t
}

// partless takes ", 2 of 3" off the name of a sheet.
func partless(name string) string {
	i := strings.LastIndex(name, ", ")
	var k, n int
	if i < 0 {
		return name
	}
	if c, _ := fmt.Sscanf(name[i:], ", %d of %d", &k, &n); c != 2 {
		return name
	}
	return name[:i]
}

// seriesNames names the series of sheets in the trade's usual order.
var seriesNames = map[int]string{
	0: "General", 1: "Plans", 2: "Wall elevations", 3: "Sections", 4: "Large-scale views", 5: "Details", 6: "Schedules", 7: "Check sheets",
}

// foreseen is a sheet as it will be in the set.
type foreseen struct {
	number, name, scale string
	series              int
	keys                []string
}

type outlook []foreseen

// of returns the numbers of the sheets that carry the key.
func (o outlook) of(key string) (ns []string) {
	for _, s := range o {
		if slices.Contains(s.keys, key) {
			ns = append(ns, s.number)
		}
	}
	return ns
}

// foresee keeps what the sheets after the cover will be called.
func (c *context) foresee(rest []*page) {
	number(rest)
	c.foreseen = outlook{{number: "S-001", name: coverName, scale: "none", keys: []string{"cover"}}}
	for _, p := range rest {
		c.foreseen = append(c.foreseen, foreseen{p.Number, p.Name, p.Scale, p.series, p.Keys})
	}
}
