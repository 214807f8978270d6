package render

import (
	"fmt"
	"path"
	"strings"

	"galewright/plan"
	"galewright/plan/framing"
	"galewright/plan/loadpath"
	"galewright/plan/placement"
	"galewright/plan/schedule"
	"galewright/render/sheet"
	"galewright/symbols"
)

// Model is everything the sheets show.
type Model struct {
	House     *framing.House
	Placement *placement.Placement
	Schedule  *schedule.Schedule
	// Loads is the load path of the house; nil leaves its sheet out.
	Loads *loadpath.Report
}

// Options chooses what is drawn and on what.
type Options struct {
	Paper  string   // name of a paper; "" = arch-d
	Sheets []string // "2xx", "S-201", "S-2*"; none = all
}

// Draw makes the drawing set: all views are laid out, every sheet gets its
// number, then the sheets asked for are drawn. Sheet numbers and "k of n" are
// those of the whole set, whatever is asked for.
func Draw(m *Model, o Options) (*sheet.Set, plan.Diagnostics) {
	c, ok := newContext(m, o)
	if !ok {
		return nil, c.diags
	}
	pages := c.layOut()
	set := &sheet.Set{}
	for _, p := range chosen(c, pages) {
		p.drawFrame()
		p.Draw(p)
		set.Sheets = append(set.Sheets, p.Sheet)
	}
	set.Symbols = symbols.Used(set.Sheets)
	return set, c.diags
}

// layOut lays all views out, numbers the pages and keeps them. The cover comes
// last, for it lists the others; sheets are numbered by series, so its own
// number of pages does not matter to them.
func (c *context) layOut() []*page {
	rest := c.pagesOf(func(v view) bool { return v.Series > 0 })
	c.foresee(rest)
	c.Pages = append(c.pagesOf(func(v view) bool { return v.Series == 0 }), rest...)
	number(c.Pages)
	return c.Pages
}

// pagesOf lays out the views that are wanted.
func (c *context) pagesOf(wanted func(view) bool) (pages []*page) {
	for _, v := range sortedViews() {
		if !wanted(v) {
			continue
		}
		for _, p := range v.Pages(c) {
			p.series = v.Series
			pages = append(pages, p)
		}
	}
	return pages
}

func newContext(m *Model, o Options) (*context, bool) {
	c := &context{Model: m, Options: o}
	name := o.Paper
	if name == "" {
		name = "arch-d"
	}
	paper, ok := sheet.PaperNamed(name)
	if !ok {
		c.tell(plan.Diagnostic{
			Code: "unknown-paper", Summary: fmt.Sprintf("there is no paper %q", name),
			Mend: "take one of " + strings.Join(sheet.PaperNames(), ", "), Pos: m.House.Plan.Project.Pos,
		})
		return c, false
	}
	c.Paper, c.Size = paper, letteringFor(paper)
	return c, true
}

// number gives the sheets their numbers, S-001, S-101, S-201 ..., by series.
func number(pages []*page) {
	next := map[int]int{}
	for i, p := range pages {
		next[p.series]++
		p.Number = fmt.Sprintf("S-%d%02d", p.series, next[p.series])
		p.setTitle(i+1, len(pages))
	}
}

// NoSuchSheet is the code of what is told of a filter that names no sheet.
const NoSuchSheet = "no-such-sheet"

// chosen returns the pages that the options ask for. A filter that matches
// nothing is told.
func chosen(c *context, pages []*page) (out []*page) {
	if len(c.Options.Sheets) == 0 {
		return pages
	}
	hit := make([]bool, len(c.Options.Sheets))
	for _, p := range pages {
		take := false
		for i, f := range c.Options.Sheets {
			if matches(f, p.Number) {
				hit[i], take = true, true
			}
		}
		if take {
			out = append(out, p)
		}
	}
	for i, f := range c.Options.Sheets {
		if !hit[i] {
			c.tell(plan.Diagnostic{
				Severity: plan.Warning, Code: NoSuchSheet,
				Summary: fmt.Sprintf("no sheet matches %q", f),
				Mend:    fmt.Sprintf("the set runs from %s to %s", pages[0].Number, pages[len(pages)-1].Number),
				Pos:     c.House.Plan.Project.Pos,
			})
		}
	}
	return out
}

// matches tells whether a sheet number answers a filter: "2xx" is a series,
// "S-201" or "201" one sheet, "S-2*" a pattern.
func matches(filter, number string) bool {
	f := strings.ToUpper(strings.TrimSpace(filter))
	if !strings.HasPrefix(f, "S-") {
		f = "S-" + f
	}
	f = strings.ReplaceAll(f, "X", "?")
	ok, err := path.Match(f, number)
	return ok && err == nil
}
