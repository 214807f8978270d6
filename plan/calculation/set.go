package calculation

import (
	"cmp"
	"fmt"

	"galewright/plan/loadpath"
	"galewright/plan/units"
)

// Set is the calculation set of a house.
type Set struct {
	Report   *loadpath.Report
	Sections []*Section // before the links; none without numbers
	Lines    []Line
	Checks   []*Check
	Sources  []Source
}

// New gathers the calculation set from a load path.
func New(r *loadpath.Report) *Set {
	s := &Set{Report: r}
	if r.Missing != "" {
		return s
	}
	for _, make := range []func(*loadpath.Report) []*Section{basis, geometry, pressures, cladding, widths, weights, uplift, lateral} {
		for _, x := range make(r) {
			if len(x.Rows) > 0 {
				x.in(r.Units())
				s.Sections = append(s.Sections, x)
			}
		}
	}
	for _, x := range r.Lines {
		s.Lines = append(s.Lines, Line{x, r.LineWorkings(x)})
	}
	s.Checks = checks(r)
	s.Sources = sources(s)
	return s
}

// Section is one table of the set.
type Section struct {
	ID    string // "velocity_pressure"
	Title string
	Cols  []Column
	Rows  [][]Cell
	Notes []string
	Short *Section // the same in fewer rows, for sheets; nil where it is short
}

// Column is one column of a table.
type Column struct {
	Key    string // in JSON, its unit at its end: "q_psf"
	Head   string
	Unit   string // "" of words and plain numbers
	Places int    // digits after the point, of numbers
	Words  bool   // it holds words
	Units  units.System
}

// in sets the system that the section's numbers are printed in; JSON keeps the
// units that its keys name.
func (s *Section) in(u units.System) {
	for i := range s.Cols {
		s.Cols[i].Units = u
	}
	if s.Short != nil {
		s.Short.in(u)
	}
}

// Cell is a word or a number; one that is neither is blank.
type Cell struct {
	Text   string
	Number float64
	Is     bool   // a number
	Own    string // Text in the plan's units, where they are others; not in JSON
}

// word and number make cells.
func word(format string, args ...any) Cell { return Cell{Text: fmt.Sprintf(format, args...)} }
func number(v float64) Cell                { return Cell{Number: v, Is: true} }

// either is a word in US units, and in the plan's.
func either(us, own string) Cell { return Cell{Text: us, Own: own} }

// words and numbers make columns.
func words(key, head string) Column { return Column{Key: key, Head: head, Words: true} }

func numbers(key, head, unit string, places int) Column {
	return Column{Key: key, Head: head, Unit: unit, Places: places}
}

// String prints a cell as its column has it, without the unit.
func (c Column) String(x Cell) string {
	if !x.Is {
		return cmp.Or(x.Own, x.Text)
	}
	return c.Units.Number(x.Number+0, c.Unit, c.Places)
}

// Full is the head of a column with its unit.
func (c Column) Full() string {
	if c.Unit == "" {
		return c.Head
	}
	return c.Head + ", " + c.Units.Unit(c.Unit)
}

// add adds a row.
func (s *Section) add(cells ...Cell) { s.Rows = append(s.Rows, cells) }

// Line is a shear wall line with what its force is made of.
type Line struct {
	*loadpath.LineShear
	Workings []string
}
