package lists

import (
	"cmp"
	"fmt"
	"slices"
	"strings"

	"galewright/plan"
	"galewright/plan/placement"
	"galewright/plan/salt"
	"galewright/render/page"
	"galewright/render/sheet"
	"galewright/render/table"
)

// saltTable lists the classes of places that salt air reaches, with what the
// engineer takes there and which pieces are in each, by their worst part.
func saltTable(c *page.Context) *table.Table {
	t := &table.Table{Title: "Salt air: class of place of every piece", Cols: []table.Column{
		{Head: "Class"}, {Head: "In this house", Wrap: true, Grow: true}, {Head: "The engineer takes", Wrap: true}, {Head: "Pieces", Align: sheet.Right}, {Head: "Of No.", Wrap: true},
	}}
	all := 0
	for _, r := range c.Salt.Rows() {
		name, takes := string(r.Class), salt.Takes(r.Materials)
		switch {
		case r.Class == "":
			name, takes = "in concrete", "as the engineer says"
		case takes == "":
			takes = "blank: ask the engineer"
		}
		t.Rows = append(t.Rows, table.Row{Bold: r.Class != "" && len(r.Materials) == 0, Cells: table.Texts(name, strings.Join(r.Where, "; "), takes, fmt.Sprint(len(r.Pieces)), ofNumbers(c, r.Pieces))})
		all += len(r.Pieces)
	}
	t.Rows = append(t.Rows, table.Row{Bold: true, Cells: table.Texts("All", "", "", fmt.Sprint(all), "")})
	return t
}

// ofNumbers counts pieces by legend number: "72 of 1, 18 of 9".
func ofNumbers(c *page.Context, ps []*salt.Piece) string {
	counts := make([]int, len(c.Schedule.Lines))
	for _, p := range ps {
		counts[c.Legend(p.Piece)-1]++
	}
	var out []string
	for i, n := range counts {
		if n > 0 {
			out = append(out, fmt.Sprintf("%d of %d", n, i+1))
		}
	}
	return strings.Join(out, ", ")
}

// saltNotes says what the classes are and what they rest on.
func saltNotes(c *page.Context) *table.Table {
	p := c.House.Plan
	shore := "The distance of salt water is a blank: ask the engineer."
	if p.Site.Shore > 0 {
		shore = "Salt water is " + away(c, p.Site.Shore) + " away."
		if near := salt.NearShore(p.Site); near != "" {
			shore += " " + title(near) + "."
		}
	}
	list := []string{
		shore,
		"A piece counts in the worst class that its steel, its fasteners or its rod are in when the house is closed as the plan says. Classes: NFIP Technical Bulletin 8, June 2019 (second-hand).",
		"Materials are the engineer's" + bracketed(p.Salt.Source) + "; where there is a blank, ask. One metal in one joint: stainless nails in stainless steel, hot-dip zinc in zinc.",
		"Fasteners in treated wood: hot-dip zinc, stainless, silicon bronze or copper (IBC 2018 2304.10.5.1, read); the hardware maker's current data govern.",
	}
	return table.Numbered("Salt air and treated wood", list)
}

func bracketed(s string) string {
	if s == "" {
		return ""
	}
	return " (" + s + ")"
}

// away prints a distance that is given in feet.
func away(c *page.Context, ft float64) string { return c.Units().Away(ft) }

// classCounts counts the pieces of a list by class of place; "" where that is
// not known.
func classCounts(c *page.Context, ps []*placement.Piece) string {
	if c.Salt == nil {
		return ""
	}
	count := map[plan.SaltClass]int{}
	for _, p := range ps {
		if x := c.Salt.Of(p); x != nil {
			count[x.Class]++
		}
	}
	var out []string
	for _, k := range slices.Concat(plan.SaltClasses, []plan.SaltClass{""}) {
		if n := count[k]; n > 0 {
			out = append(out, fmt.Sprintf("%d %s", n, cmp.Or(string(k), "in concrete")))
		}
	}
	return ". In salt air: " + strings.Join(out, ", ")
}
