package calculations

import (
	"fmt"
	"slices"
	"strings"

	"galewright/plan"
	"galewright/plan/calculation"
	"galewright/plan/loadpath"
	"galewright/render/page"
	"galewright/render/sheet"
	"galewright/render/table"
)

// check puts the links of a check, and the arithmetic of the worst.
func (s *setter) check(x *calculation.Check) {
	t := &table.Table{Title: s.title(fmt.Sprintf("%s: %s", x.Title, plan.Counted(len(x.Links), "place"))), Cols: []table.Column{
		{Head: "Link", Wrap: true, Grow: true}, {Head: "Demand", Align: sheet.Right}, {Head: "Capacity", Align: sheet.Right}, {Head: "Ratio", Align: sheet.Right}, {Head: "Governs", Wrap: true},
	}}
	for _, a := range alike(x.Links) {
		for some := range slices.Chunk(a.names, atOnce) {
			t.Rows = append(t.Rows, table.Row{Bold: a.over, Cells: table.Texts(strings.Join(some, ", "), a.demand, a.holds, a.ratio, a.governs)})
		}
	}
	s.put(t)
	if x.Worst != nil {
		s.arithmetic(x, x.Worst)
	}
}

// atOnce is how many names one row has: more would be parted by no sheet and would
// take the room of what governs.
const atOnce = 8

// same is links that print alike.
type same struct {
	demand, holds, ratio, governs string
	over                          bool
	names                         []string
}

// alike gathers links that print the same figures, in their order.
func alike(list []*calculation.Link) (out []*same) {
	for _, l := range list {
		x := printed(l)
		found := false
		for _, y := range out {
			if y.demand == x.demand && y.holds == x.holds && y.ratio == x.ratio && y.governs == x.governs {
				y.names, found = append(y.names, l.ID), true
				break
			}
		}
		if !found {
			x.names = []string{l.ID}
			out = append(out, x)
		}
	}
	return out
}

// printed is the figures of a link as they are lettered.
func printed(l *calculation.Link) *same {
	x := &same{demand: loadpath.Amount(l.Units, l.Demand, l.Unit), ratio: l.RatioText(), governs: l.Governs(), over: l.Over(1)}
	if c := l.Capacity; c != nil && c.Unknown == "" {
		x.holds, x.governs = loadpath.Amount(l.Units, c.Value, l.Unit), page.Join(c.Mark, l.Governs())
	}
	if l.Demand <= 0 {
		x.demand, x.ratio = "none", ""
	}
	return x
}

// arithmetic puts the whole sum of one link.
func (s *setter) arithmetic(x *calculation.Check, l *calculation.Link) {
	t := &table.Table{Title: fmt.Sprintf("%s, the worst: %s", x.Title, l.ID), Plain: true, Cols: []table.Column{{Align: sheet.Right}, {Wrap: true, Grow: true}}}
	add := func(value, text string) {
		t.Rows = append(t.Rows, table.Row{Cells: table.Texts(value, text)})
	}
	add("", x.Doc)
	add("", l.Where+"; case: "+l.Case)
	for _, r := range l.Arithmetic() {
		add(strings.TrimSpace(r.Value+" "+r.Unit), stepped(r.Text))
	}
	add("", "ratio: "+l.RatioText())
	s.put(t)
}

// lines puts what the force of each shear wall line is made of.
func (s *setter) lines(list []calculation.Line) {
	t := &table.Table{Title: s.title("What the force of each shear wall line is made of"), Plain: true, Cols: []table.Column{{Wrap: true, Grow: true}}}
	for _, x := range list {
		for i, w := range x.Workings {
			t.Rows = append(t.Rows, table.Row{Bold: i == 0, Cells: table.Texts(stepped(w))})
		}
	}
	if len(t.Rows) > 0 {
		s.put(t)
	}
}

// stepped shows how far a line stands in by dashes, for lettering drops spaces at
// the start of a line.
func stepped(s string) string {
	text := strings.TrimLeft(s, " ")
	return strings.TrimSpace(strings.Repeat("-", (len(s)-len(text))/2) + " " + text)
}
