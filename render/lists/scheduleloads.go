package lists

import (
	"fmt"
	"strings"

	"galewright/plan/capacity"
	"galewright/plan/loadpath"
	"galewright/plan/source"
	"galewright/render/page"
	"galewright/render/sheet"
	"galewright/render/table"
)

// LoadPages lays out what each part of the load path is asked and what it can
// do. Without a report there is no sheet.
func LoadPages(c *page.Context) []*page.Page {
	if c.Loads == nil || len(c.Loads.Links) == 0 {
		return nil
	}
	return c.Largest(loadLaid)
}

func loadLaid(c *page.Context) []*page.Page {
	f := c.NewFlow("Load path: demand and capacity", "load path")
	f.ColumnsOf(max(82*c.ReadingCap(), f.Area.W/4))
	for _, t := range []*table.Table{windLoads(c), gapTable(c), governTable(c), chainTable(c), loadNotes(c)} {
		if len(t.Rows) > 0 {
			f.Put(t)
		}
	}
	return f.Done()
}

// windLoads says by which procedure the wind was worked out, with what
// coefficients and zones.
func windLoads(c *page.Context) *table.Table {
	t := &table.Table{Title: "Wind: procedure, coefficients, zones", Plain: true, Cols: []table.Column{{}, {Wrap: true, Grow: true}}}
	for _, r := range c.Loads.WindRows() {
		t.Rows = append(t.Rows, table.Row{Cells: table.Texts(r[0], r[1])})
	}
	return t
}

// loadNotes says what the numbers are, and what they leave out.
func loadNotes(c *page.Context) *table.Table {
	list := []string{
		"Preliminary numbers for the engineer of record, from the plan and the catalog as given. They do not replace sealed calculations.",
		"Demand is net of dead load, " + loadpath.ASD.Name + " (" + loadpath.ASD.Source + "). Ratio is demand over capacity; a ratio above 1 is in bold: demand exceeds capacity.",
		capacity.StarNote,
		"For each part of the path the joint with the largest ratio on each wall, roof or girder is shown; where there is no demand, none.",
	}
	list = append(list, prefixed("Assumed: ", c.Loads.Assumed)...)
	list = append(list, prefixed("Limit of the method: ", c.Loads.Limits)...)
	list = append(list, prefixed("Not checked: ", c.Loads.Unchecked)...)
	list = append(list, gradesIn(list)...)
	return table.Numbered("What these numbers are", list)
}

// gradesIn returns a line for each grade of source that the notes use.
func gradesIn(notes []string) []string {
	return strings.FieldsFunc(source.Key(strings.Join(notes, "\n")), func(r rune) bool { return r == '\n' })
}

func prefixed(s string, list []string) (out []string) {
	for _, x := range list {
		out = append(out, s+x)
	}
	return out
}

// loadPart is all links of one check on one wall, roof or girder.
type loadPart struct {
	check *loadpath.Check
	host  string
	links []*loadpath.Link
	worst *loadpath.Link // of those without a gap
	gaps  []*loadpath.Link
}

// loadParts gathers the links by check and host, in the order of the report.
func loadParts(c *page.Context) (out []*loadPart) {
	at := map[[2]string]*loadPart{}
	for _, l := range c.Loads.Links {
		k := [2]string{l.Check.ID, l.Host}
		p := at[k]
		if p == nil {
			p = &loadPart{check: l.Check, host: l.Host}
			at[k] = p
			out = append(out, p)
		}
		p.links = append(p.links, l)
		switch {
		case l.Gap != "":
			p.gaps = append(p.gaps, l)
		case l.Capacity != nil && l.Capacity.Unknown == "" && (p.worst == nil || l.Ratio > p.worst.Ratio):
			p.worst = l
		}
	}
	return out
}

// governTable shows the governing joint of each part; a ratio over 1 is bold.
func governTable(c *page.Context) *table.Table {
	t := &table.Table{Title: "Demand and capacity, where the ratio is largest", Cols: []table.Column{
		{Head: "On"},
		{Head: "Places", Align: sheet.Right},
		{Head: "Governs at", Wrap: true},
		{Head: "Demand", Align: sheet.Right},
		{Head: "Capacity", Align: sheet.Right},
		{Head: "Ratio", Align: sheet.Right},
		{Head: "What governs", Wrap: true, Grow: true},
	}}
	check := ""
	for _, p := range loadParts(c) {
		if p.worst == nil || p.worst.Demand == 0 {
			continue
		}
		if p.check.ID != check {
			check = p.check.ID
			t.Rows = append(t.Rows, table.Row{Group: true, Cells: table.Texts(p.check.Title)})
		}
		l := p.worst
		t.Rows = append(t.Rows, table.Row{Bold: l.Ratio > 1, Cells: table.Texts(p.host, fmt.Sprint(len(p.links)-len(p.gaps)), l.ID,
			force(c, l.Demand, l.Unit), force(c, l.Capacity.Value, l.Unit), starred(l), page.Join(l.Capacity.Mark, l.Governs()))})
	}
	return t
}

// gapTable lists where the path has no link.
func gapTable(c *page.Context) *table.Table {
	t := &table.Table{Title: "Gaps: demand that nothing known resists", Cols: []table.Column{
		{Head: "On"}, {Head: "Places", Align: sheet.Right}, {Head: "Largest at", Wrap: true}, {Head: "Demand", Align: sheet.Right}, {Head: "Why", Wrap: true, Grow: true},
	}}
	check := ""
	for _, p := range loadParts(c) {
		if len(p.gaps) == 0 {
			continue
		}
		if p.check.ID != check {
			check = p.check.ID
			t.Rows = append(t.Rows, table.Row{Group: true, Cells: table.Texts(p.check.Title)})
		}
		l := p.gaps[0]
		for _, g := range p.gaps {
			if g.Demand > l.Demand {
				l = g
			}
		}
		t.Rows = append(t.Rows, table.Row{Bold: true, Cells: table.Texts(p.host, fmt.Sprint(len(p.gaps)), l.ID, force(c, l.Demand, l.Unit), l.Gap)})
	}
	return t
}

// chainTable shows the weakest link of each chain from ridge to foundation.
func chainTable(c *page.Context) *table.Table {
	t := &table.Table{Title: "Chains from ridge to foundation: the weakest link", Cols: []table.Column{
		{Head: "Walls"}, {Head: "Weakest link", Wrap: true, Grow: true}, {Head: "At", Wrap: true}, {Head: "Gaps", Align: sheet.Right}, {Head: "Ratio", Align: sheet.Right},
	}}
	for _, ch := range c.Loads.Chains {
		gaps := 0
		for _, r := range ch.Links {
			gaps += r.Gaps
		}
		if ch.Weak < 0 {
			continue
		}
		r := ch.Links[ch.Weak]
		cells := table.Texts(ch.Name, r.Title, "", fmt.Sprint(gaps), "")
		if r.Worst != nil {
			cells[2].S, cells[4].S = r.Worst.ID, starred(r.Worst)
		}
		t.Rows = append(t.Rows, table.Row{Bold: gaps > 0 || r.Worst != nil && r.Worst.Ratio > 1, Cells: cells})
	}
	return t
}

// force prints a force to the pound.
func force(c *page.Context, v float64, unit string) string {
	return loadpath.Amount(c.Units(), v, unit)
}

// starred is the ratio of a link with the mark of one that is not a maker's.
func starred(l *loadpath.Link) string { return page.Ratio(l.Ratio) + l.Capacity.Starred() }
