package calculation

import (
	"bufio"
	"fmt"
	"io"
	"strings"
	"unicode/utf8"

	"galewright/plan"
	"galewright/plan/capacity"
	"galewright/plan/loadpath"
	"galewright/plan/source"
)

// Preliminary says what the numbers are for.
const Preliminary = "Preliminary numbers for the engineer of record. They do not replace sealed calculations."

// Write writes the set as "text" or "json".
func (s *Set) Write(w io.Writer, format string) error {
	if format == "json" {
		return s.writeJSON(w)
	}
	b := bufio.NewWriter(w)
	fmt.Fprintf(b, "Calculations: %s\n%s\n%s\n", s.Report.Placement.House.Plan.Project.Name, plan.Caution, Preliminary)
	if s.Report.Missing != "" {
		fmt.Fprintf(b, "%s\n", s.Report.Missing)
		return b.Flush()
	}
	for i, x := range s.Sections {
		head(b, fmt.Sprintf("%d. %s", i+1, x.Title))
		x.write(b)
	}
	n := len(s.Sections)
	head(b, fmt.Sprintf("%d. What the force of each shear wall line is made of", n+1))
	for _, x := range s.Lines {
		for _, t := range x.Workings {
			fmt.Fprintf(b, "  %s\n", t)
		}
	}
	for i, c := range s.Checks {
		c.write(b, n+2+i)
	}
	s.writeEnd(b, n+2+len(s.Checks))
	return b.Flush()
}

func head(w io.Writer, title string) {
	fmt.Fprintf(w, "\n%s\n%s\n", title, strings.Repeat("-", utf8.RuneCountInString(title)))
}

// write prints a table with its columns under each other, then its notes.
func (x *Section) write(w io.Writer) {
	table := [][]string{make([]string, len(x.Cols))}
	for i, c := range x.Cols {
		table[0][i] = c.Full()
	}
	for _, row := range x.Rows {
		cells := make([]string, len(x.Cols))
		for i, c := range row {
			cells[i] = x.Cols[i].String(c)
		}
		table = append(table, cells)
	}
	wide := make([]int, len(x.Cols))
	for _, row := range table {
		for i, s := range row {
			wide[i] = max(wide[i], utf8.RuneCountInString(s))
		}
	}
	for _, row := range table {
		line := ""
		for i, s := range row {
			gap := strings.Repeat(" ", wide[i]-utf8.RuneCountInString(s))
			if x.Cols[i].Words {
				line += "  " + s + gap
			} else {
				line += "  " + gap + s
			}
		}
		fmt.Fprintln(w, strings.TrimRight(line, " "))
	}
	for _, s := range x.Notes {
		fmt.Fprintf(w, "  %s\n", s)
	}
}

// write prints the links of a check, each with its whole arithmetic.
func (c *Check) write(w io.Writer, n int) {
	head(w, fmt.Sprintf("%d. %s (%s): %s", n, c.Title, c.ID, plan.Counted(len(c.Links), "place")))
	fmt.Fprintf(w, "  %s\n", c.Doc)
	for _, l := range c.Links {
		fmt.Fprintf(w, "  %s: %s\n", l.ID, l.Sum())
		if l.Demand <= 0 {
			continue
		}
		fmt.Fprintf(w, "    at %s; case: %s\n", l.Where, l.Case)
		for _, r := range l.Arithmetic() {
			fmt.Fprintf(w, "    %10s %-5s %s\n", r.Value, r.Unit, r.Text)
		}
	}
}

// Sum is a link in one line: demand, capacity, ratio, what governs.
func (l *Link) Sum() string {
	switch {
	case l.Gap != "":
		return fmt.Sprintf("%s of nothing known, gap: %s", loadpath.Amount(l.Units, l.Demand, l.Unit), l.Gap)
	case l.Demand <= 0:
		return l.Governs()
	}
	return fmt.Sprintf("%s of %s, ratio %s; %s", loadpath.Amount(l.Units, l.Demand, l.Unit), loadpath.Amount(l.Units, l.Capacity.Value, l.Unit), l.RatioText(), marked(l.Capacity.Mark, l.Governs()))
}

// marked puts a mark before what governs.
func marked(mark, s string) string {
	if mark == "" {
		return s
	}
	return mark + ", " + s
}

// Row is one line of a link's arithmetic; of what is only told Value is blank.
type Row struct{ Value, Unit, Text string }

// Arithmetic returns the lines of a link in the order of explain: what its
// demand is made of, terms of the demand, terms of the capacity, notes.
func (l *Link) Arithmetic() (out []Row) {
	if l.Line != nil {
		out = append(out, Row{Text: l.Units.Sprintf("the force of line %s, story %s, %.0f lb at strength level, is made up with the lines", l.Line.Name, l.Line.Level.Name, l.Line.Force)})
	}
	for _, s := range l.Workings {
		out = append(out, Row{Text: s})
	}
	for _, t := range l.Terms {
		out = append(out, Row{loadpath.Number(l.Units, t.Value, t.Unit), l.Units.Unit(t.Unit), "demand: " + t.Text})
	}
	if c := l.Capacity; c != nil && c.Unknown == "" {
		for _, t := range c.Terms {
			out = append(out, Row{loadpath.Number(l.Units, t.Value, t.Unit), l.Units.Unit(t.Unit), "capacity: " + t.Text})
		}
		out = append(out, Row{loadpath.Number(l.Units, c.Value, l.Unit), l.Units.Unit(l.Unit), "capacity, " + c.Source + "; governs: " + c.Governs})
	}
	for _, n := range l.Notes {
		out = append(out, Row{Text: "note: " + n})
	}
	return out
}

// writeEnd prints assumptions, what was not checked and the sources.
func (s *Set) writeEnd(w io.Writer, n int) {
	list := func(title string, lines []string) {
		head(w, fmt.Sprintf("%d. %s", n, title))
		for _, x := range lines {
			fmt.Fprintf(w, "  - %s\n", x)
		}
		n++
	}
	list("Assumptions", s.Report.Assumed)
	list("Not checked", s.Report.Unchecked)
	list("Sources", s.SourceLines())
	list("Sources: what each word means", Grades())
	fmt.Fprintf(w, "\n%s\n", capacity.StarNote)
}

// SourceLines are the sources, one a line, with their grades.
func (s *Set) SourceLines() (out []string) {
	for _, x := range s.Sources {
		out = append(out, x.Name+" ("+x.Grade+")")
	}
	return out
}

// Grades is the key to the grades of sources.
func Grades() (out []string) {
	for _, g := range source.Grades() {
		out = append(out, string(g)+": "+g.Meaning())
	}
	return out
}
