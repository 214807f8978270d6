package salt

import (
	"fmt"
	"slices"
	"strings"

	"galewright/plan"
)

// teller gathers what is told: what is the same of many pieces once, with
// their number and the first of their tags.
type teller struct {
	out    plan.Diagnostics
	groups []*group
}

// group is one fault with all pieces that have it.
type group struct {
	diag plan.Diagnostic
	tags []string
}

// of adds a piece to the fault that d is.
func (t *teller) of(tag string, d plan.Diagnostic) {
	d.Severity = plan.Warning
	i := slices.IndexFunc(t.groups, func(g *group) bool {
		return g.diag.Code == d.Code && g.diag.Pos == d.Pos && g.diag.Summary == d.Summary
	})
	if i < 0 {
		i = len(t.groups)
		t.groups = append(t.groups, &group{diag: d})
	}
	if g := t.groups[i]; !slices.Contains(g.tags, tag) {
		g.tags = append(g.tags, tag)
	}
}

// add tells of the plan as a whole.
func (t *teller) add(d plan.Diagnostic) {
	d.Severity = plan.Warning
	t.out = append(t.out, d)
}

// named is how many pieces of a group are named before the rest is counted.
const named = 3

func (t *teller) list() plan.Diagnostics {
	for _, g := range t.groups {
		n := len(g.tags)
		g.diag.Where = plan.Counted(n, "piece") + ": " + strings.Join(g.tags[:min(n, named)], ", ")
		if n > named {
			g.diag.Where += fmt.Sprintf(" and %d more", n-named)
		}
		t.out = append(t.out, g.diag)
	}
	return t.out
}
