package calculations

import (
	"cmp"
	"fmt"
	"slices"
	"strconv"
	"strings"

	"galewright/plan/calculation"
	"galewright/plan/capacity"
	"galewright/render/page"
	"galewright/render/sheet"
	"galewright/render/table"
)

// Pages lays the calculation set out where sheets of its series are asked for by
// name: they are for the engineer's file, not for the crew. Without numbers there
// is none.
func Pages(c *page.Context) []*page.Page {
	if c.Loads == nil || c.Loads.Missing != "" || !asked(c.Options.Sheets) {
		return nil
	}
	s := &setter{c, c.NewFlow("Calculations", "calculations"), 0}
	s.f.ColumnsOf(min(s.f.Area.W, 72*c.Size.Note))
	s.whole(calculation.New(c.Loads))
	return s.f.Done()
}

// Series is the first digit of the sheets' numbers.
const Series = 8

// asked tells whether a filter of sheets names the series: "8xx", "S-801".
func asked(filters []string) bool {
	return slices.ContainsFunc(filters, func(f string) bool {
		f = strings.TrimPrefix(strings.ToUpper(strings.TrimSpace(f)), "S-")
		return strings.HasPrefix(f, strconv.Itoa(Series))
	})
}

// setter puts the blocks of the set one after the other, each with its number.
type setter struct {
	c *page.Context
	f *page.Flow
	n int
}

func (s *setter) whole(set *calculation.Set) {
	s.notes("What these sheets are", []string{
		calculation.Preliminary,
		"Computed from the plan as given. Pressures and forces are at strength level unless ASD (allowable stress level) is said; demand is ASD. A ratio above 1 and a gap are in bold.",
		"Every link is listed; the arithmetic is that of the worst of each kind. All of it: loads --calculations, of one link: explain with its name.",
	})
	for _, x := range set.Sections {
		s.section(cmp.Or(x.Short, x))
		if x.ID == "story_shear" {
			s.diagrams()
		}
	}
	s.lines(set.Lines)
	for _, x := range set.Checks {
		s.check(x)
	}
	s.notes(s.title("Assumptions"), set.Report.Assumed)
	s.notes(s.title("Not checked"), set.Report.Unchecked)
	s.notes(s.title("Sources"), append(set.SourceLines(), calculation.Grades()...))
	s.notes("", []string{capacity.StarNote})
}

// title numbers a part of the set.
func (s *setter) title(t string) string {
	s.n++
	return fmt.Sprintf("%d. %s", s.n, t)
}

// put sets a table in the set's lettering.
func (s *setter) put(t *table.Table) {
	t.Cap = s.c.Size.Note
	s.f.Put(t)
}

// notes puts numbered sentences.
func (s *setter) notes(title string, list []string) {
	if len(list) > 0 {
		s.put(table.Numbered(title, list))
	}
}

// long is how many letters a word cell may have before its column wraps.
const long = 14

// section puts a table of the set, and its notes under it.
func (s *setter) section(x *calculation.Section) {
	t := &table.Table{Title: s.title(x.Title)}
	for i, col := range x.Cols {
		c := table.Column{Head: col.Full(), Align: sheet.Right}
		if col.Words {
			c.Align, c.Wrap = 0, longest(x, i) > long
		}
		t.Cols = append(t.Cols, c)
	}
	for _, row := range x.Rows {
		cells := make([]string, len(row))
		for i, v := range row {
			cells[i] = x.Cols[i].String(v)
		}
		t.Rows = append(t.Rows, table.Row{Cells: table.Texts(cells...)})
	}
	s.put(t)
	if len(x.Notes) > 0 {
		s.put(plain(x.Notes))
	}
}

// longest is the length of the longest word cell of a column.
func longest(x *calculation.Section, i int) (n int) {
	for _, row := range x.Rows {
		n = max(n, len([]rune(row[i].Text)))
	}
	return n
}

// plain makes a table of sentences without numbers.
func plain(list []string) *table.Table {
	t := &table.Table{Plain: true, Cols: []table.Column{{Wrap: true, Grow: true}}}
	for _, x := range list {
		t.Rows = append(t.Rows, table.Row{Cells: table.Texts(x)})
	}
	return t
}
