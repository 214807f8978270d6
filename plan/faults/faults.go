package faults

import (
	_ "embed"
	"slices"
	"strings"

	"galewright/plan"
	"galewright/plan/placement"
)

// Fault is what the list says of one code.
type Fault struct {
	Code     plan.Code
	Stage    string // the stage that tells it
	Severity string // "error", "warning"; "error or warning" where both occur
	Means    string // what it means, in one or two sentences
	Mend     string // how to fix it; "" where Means says it
	Example  string // one as it was told, with what mends that
}

// Text says what a fault means and how to fix it.
func (f Fault) Text() string { return strings.TrimSuffix(f.Means+" "+f.Mend, " ") }

// row is what is written of a code by hand.
type row struct {
	code        plan.Code
	means, mend string
}

// examples has one line for each code: code, severity and an example, told
// by the plans of the tests.
//
//go:embed examples.txt
var examples string

// All lists all faults in the order of the stages.
func All() (out []Fault) {
	told := exampleOf()
	add := func(stage string, r row) {
		e := told[r.code]
		out = append(out, Fault{r.code, stage, e[0], r.means, r.mend, e[1]})
	}
	for _, r := range reading {
		add("reading the plan", r)
	}
	for _, r := range framed {
		add("framing", r)
	}
	for _, r := range items {
		add("items of the catalog", r)
	}
	for _, c := range placement.Checks {
		if !slices.ContainsFunc(out, func(f Fault) bool { return f.Code == c.ID }) { // told by the reader as well
			add("placing hardware", row{c.ID, c.Doc, ""})
		}
	}
	for _, r := range bodies {
		add("steel in space", r)
	}
	for _, r := range loads {
		add("the load path", r)
	}
	for _, r := range saltAir {
		add("salt air and treated wood", r)
	}
	for _, r := range drawing {
		add("drawing", r)
	}
	return out
}

// exampleOf reads severity and example of each code.
func exampleOf() map[plan.Code][2]string {
	out := map[plan.Code][2]string{}
	for line := range strings.Lines(examples) {
		f := strings.SplitN(strings.TrimSuffix(line, "\n"), "\t", 3)
		if len(f) == 3 {
			out[plan.Code(f[0])] = [2]string{f[1], f[2]}
		}
	}
	return out
}
