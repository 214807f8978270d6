package render

import (
	"fmt"
	"path"
	"strings"

	"galewright/plan"
	"galewright/render/lists"
	"galewright/render/page"
	"galewright/render/sheet"
	"galewright/symbols"
)

// Model is everything the sheets show.
type Model = page.Model

// Options chooses what is drawn and on what.
type Options = page.Options

// Draw makes the drawing set: all views are laid out, every sheet gets its
// number, then the sheets asked for are drawn. Sheet numbers and "k of n" are
// those of the whole set, whatever is asked for.
func Draw(m *Model, o Options) (*sheet.Set, plan.Diagnostics) {
	c, ok := page.NewContext(m, o)
	if !ok {
		return nil, c.Diags
	}
	set := &sheet.Set{}
	drawn(c, func(s *sheet.Sheet) bool {
		set.Sheets = append(set.Sheets, s)
		return true
	})
	set.Symbols = symbols.Used(set.Sheets)
	return set, c.Diags
}

// Each draws as Draw does and hands each sheet over as a set of it alone, until take
// returns false. No sheet is kept, so that many need no more room than the largest,
// beside what is laid out.
func Each(m *Model, o Options, take func(*sheet.Set) bool) plan.Diagnostics {
	c, ok := page.NewContext(m, o)
	if ok {
		drawn(c, func(s *sheet.Sheet) bool {
			one := []*sheet.Sheet{s}
			return take(&sheet.Set{Sheets: one, Symbols: symbols.Used(one)})
		})
	}
	return c.Diags
}

// drawn draws the sheets asked for, one after the other, and lets go of each once it
// is taken.
func drawn(c *page.Context, take func(*sheet.Sheet) bool) {
	for _, p := range chosen(c, layOut(c)) {
		p.DrawFrame()
		p.Draw(p)
		if !take(p.Sheet) {
			return
		}
		p.Draw, p.Sheet = nil, &sheet.Sheet{Paper: p.Sheet.Paper, Title: p.Sheet.Title}
	}
}

// layOut lays all views out, numbers the pages and keeps them. The cover comes
// last, for it lists the others; sheets are numbered by series, so its own
// number of pages does not matter to them.
func layOut(c *page.Context) []*page.Page {
	rest := pagesOf(c, func(v view) bool { return v.Series > 0 })
	foresee(c, rest)
	c.Pages = append(pagesOf(c, func(v view) bool { return v.Series == 0 }), rest...)
	page.Number(c.Pages)
	return c.Pages
}

// pagesOf lays out the views that are wanted.
func pagesOf(c *page.Context, wanted func(view) bool) (pages []*page.Page) {
	for _, v := range views {
		if !wanted(v) {
			continue
		}
		for _, p := range v.Pages(c) {
			p.Series = v.Series
			pages = append(pages, p)
		}
	}
	return pages
}

// NoSuchSheet is the code of what is told of a filter that names no sheet.
const NoSuchSheet plan.Code = "no-such-sheet"

// chosen returns the pages that the options ask for. A filter that matches
// nothing is told.
func chosen(c *page.Context, pages []*page.Page) (out []*page.Page) {
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
			c.Tell(plan.Diagnostic{
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

// foresee keeps what the sheets after the cover will be called.
func foresee(c *page.Context, rest []*page.Page) {
	page.Number(rest)
	c.Foreseen = page.Outlook{{Number: "S-001", Name: lists.CoverName, Scale: "none", Keys: []string{"cover"}}}
	for _, p := range rest {
		c.Foreseen = append(c.Foreseen, page.Foreseen{Number: p.Number, Name: p.Name, Base: p.Base, Scale: p.Scale, Series: p.Series, Keys: p.Keys})
	}
}
