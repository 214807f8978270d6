package plan

import (
	"cmp"
	"fmt"
	"slices"
	"strings"
)

// Severity tells an error from a warning.
type Severity uint8

// An error stops the drawing of sheets; a warning is printed and does not.
const (
	Error Severity = iota
	Warning
)

func (s Severity) String() string {
	if s == Error {
		return "error"
	}
	return "warning"
}

// Code names a kind of fault: stable, readable, and by one stage alone
// ("strap-too-short"). Package faults says what each means; its tests find
// every code in the program by this type and refuse one that is not there.
type Code string

// Diagnostic is one fault of a plan, as data.
type Diagnostic struct {
	Severity Severity
	Code     Code
	Summary  string // what is wrong, in one clause
	Where    string // where in the house: `wall 1S, stud at 5'-4"`
	Mend     string // how to fix it
	Pos      Pos
	Related  []Pos
}

// Diagnostics is a list of faults; stages return it beside their value.
type Diagnostics []Diagnostic

// Errors tells whether one of them is an error.
func (d Diagnostics) Errors() bool {
	return slices.ContainsFunc(d, func(x Diagnostic) bool { return x.Severity == Error })
}

// Sorted returns the list in order of place, without doubles.
func (d Diagnostics) Sorted() Diagnostics {
	out := slices.Clone(d)
	slices.SortStableFunc(out, func(a, b Diagnostic) int {
		return cmp.Or(
			cmp.Compare(a.Pos.File, b.Pos.File),
			cmp.Compare(a.Pos.Line, b.Pos.Line),
			cmp.Compare(a.Pos.Col, b.Pos.Col),
			cmp.Compare(a.Code, b.Code),
			cmp.Compare(a.Where, b.Where),
			cmp.Compare(a.Summary, b.Summary))
	})
	return slices.CompactFunc(out, func(a, b Diagnostic) bool {
		return a.Pos == b.Pos && a.Code == b.Code && a.Where == b.Where && a.Summary == b.Summary
	})
}

func (p Pos) String() string { return fmt.Sprintf("%s:%d:%d", p.File, p.Line, p.Col) }

// String returns the one line that a user reads.
func (d Diagnostic) String() string {
	var b strings.Builder
	fmt.Fprintf(&b, "%s: %s: %s", d.Pos, d.Severity, d.Summary)
	if d.Where != "" {
		fmt.Fprintf(&b, " (%s)", d.Where)
	}
	if d.Mend != "" {
		fmt.Fprintf(&b, "; %s", d.Mend)
	}
	fmt.Fprintf(&b, " [%s]", d.Code)
	return b.String()
}
