package placement

import (
	"fmt"
	"strings"

	"galewright/plan"
	"galewright/plan/framing"
)

// teller gathers diagnostics. What is the same at many joints of one host is
// told once, with how many and the first and last of them.
type teller struct {
	out    plan.Diagnostics
	groups map[groupKey]*group
	order  []*group
}

type groupKey struct {
	severity      plan.Severity
	code          plan.Code
	host          string
	summary, mend string
	pos           plan.Pos
}

type group struct {
	at     int // place in out
	joints []*framing.Joint
	tags   []string
}

func (t *teller) add(d plan.Diagnostic) { t.out = append(t.out, d) }

// at adds a diagnostic about a joint or piece there; tag may be "".
func (t *teller) at(j *framing.Joint, tag string, d plan.Diagnostic) {
	k := groupKey{d.Severity, d.Code, j.Host, d.Summary, d.Mend, d.Pos}
	g := t.groups[k]
	if g == nil {
		if t.groups == nil {
			t.groups = map[groupKey]*group{}
		}
		g = &group{at: len(t.out)}
		t.groups[k] = g
		t.order = append(t.order, g)
		t.out = append(t.out, d)
	}
	g.joints = append(g.joints, j)
	if tag == "" {
		tag = j.ID
	}
	g.tags = append(g.tags, tag)
}

// named is how many joints of a group are named before the rest is counted.
const named = 8

// list returns everything told, groups with their places filled in.
func (t *teller) list() plan.Diagnostics {
	for _, g := range t.order {
		d := &t.out[g.at]
		n := len(g.joints)
		if n == 1 {
			d.Where = fmt.Sprintf("%s, %s", JointPlace(g.joints[0]), g.tags[0])
			continue
		}
		first, last := g.joints[0], g.joints[n-1]
		d.Where = fmt.Sprintf("%s, %d joints from %s to %s: %s", first.HostName(), n,
			first.Units.Length(first.Station), first.Units.Length(last.Station), strings.Join(g.tags[:min(n, named)], ", "))
		if n > named {
			d.Where += fmt.Sprintf(" and %d more to %s", n-named, g.tags[n-1])
		}
	}
	return t.out
}

// JointPlace says where in the house a joint is: wall 1S, stud at 5'-4".
func JointPlace(j *framing.Joint) string {
	role := "joint"
	if m := j.First(); m != nil {
		role = string(m.Role)
	}
	return fmt.Sprintf("%s, %s at %s", j.HostName(), role, j.Units.Length(j.Station))
}

// jointName is JointPlace with the joint's id.
func jointName(j *framing.Joint) string { return JointPlace(j) + ", " + j.ID }

func list(kinds []plan.JointKind) string {
	s := plan.Words(kinds)
	switch n := len(s); {
	case n == 0:
		return "no joint"
	case n > 4:
		return strings.Join(s[:4], ", ") + " and others"
	case n > 1:
		return strings.Join(s[:n-1], ", ") + " or " + s[n-1]
	}
	return s[0]
}

// meant suggests the nearest of names, or lists them.
func meant[W ~string](word W, list []W) string {
	names := plan.Words(list)
	if n := plan.Nearest(string(word), names); n != "" {
		return fmt.Sprintf("did you mean %q?", n)
	}
	if len(names) == 0 {
		return "there is none yet"
	}
	if len(names) > 14 {
		names = append(append([]string{}, names[:14]...), "...")
	}
	return "use one of " + strings.Join(names, ", ")
}
