package read

import (
	"fmt"
	"strings"

	"galewright/plan"
	"galewright/plan/pos"
	"galewright/plan/units"
)

// reader reads one file of a plan and gathers its faults.
type reader struct {
	file  string // for places
	index *pos.Index
	plan  *plan.Plan // what is read so far: references are resolved in it
	found *plan.Diagnostics
	load  func(name string) ([]byte, error) // nil in a catalog file
	// origins are the parts of a plan with a base that do not stand in its first base, by
	// their paths; steps how each file lays the house.
	origins map[string]origin
	steps   []step
	own     map[string]bool // marks that this file defines
	// lost tells that a catalog could not be read, and spoiled has the marks
	// of items that could not: rules may well name what was in them.
	lost    bool
	spoiled map[string]bool
	// levels are p.Levels with what their floors need to be worked out.
	levels []*levelDraft
	// broken are openings, shear segments, levels and walls that could not be
	// read whole: comparing their numbers would only add false faults.
	broken map[any]bool
	// names are the names of walls, roofs, girders, porches, by kind, once
	// they are all read.
	names map[string]map[string]bool
	// types are the tables that others name as their type, by kind and name.
	types map[string]map[string]node
	// told are the faults so far, again counts those that were told before.
	told  map[faultKey]bool
	again int
}

// faultKey is what makes two faults the same.
type faultKey struct {
	pos     plan.Pos
	code    plan.Code
	summary string
}

func newReader(file string, p *plan.Plan, found *plan.Diagnostics) *reader {
	return &reader{file: file, plan: p, found: found, own: map[string]bool{}, spoiled: map[string]bool{}, broken: map[any]bool{}, names: map[string]map[string]bool{}, types: map[string]map[string]node{}, told: map[faultKey]bool{}, origins: map[string]origin{}}
}

// pos returns the place of a key path, or of its nearest ancestor.
func (r *reader) pos(path string) plan.Pos {
	from := origin{source{r.file, r.index}, path}
	for p := path; p != "" && len(r.origins) > 0; p = p[:max(strings.LastIndexAny(p, ".["), 0)] {
		if o, ok := r.origins[p]; ok {
			from = origin{o.source, o.path + path[len(p):]}
			break
		}
	}
	at, ok := from.index.Pos(from.path)
	if !ok {
		at = pos.Pos{Line: 1, Col: 1}
	}
	return plan.Pos{File: from.file, Line: at.Line, Col: at.Col}
}

// whole calls f and notes x as broken when f found errors.
func (r *reader) whole(x any, f func()) {
	before, again := len(*r.found), r.again
	f()
	if r.again > again || (*r.found)[before:].Errors() {
		r.broken[x] = true
	}
}

// units is the system that faults are told in: the plan's, which is read first.
func (r *reader) units() units.System { return r.plan.Project.Units }

// add records a fault; one that a type's key has is told once, however many take it.
func (r *reader) add(d plan.Diagnostic) {
	k := faultKey{d.Pos, d.Code, d.Summary}
	if r.told[k] {
		r.again++
		return
	}
	r.told[k] = true
	*r.found = append(*r.found, d)
}

// node is one TOML table being read.
type node struct {
	r     *reader
	path  string
	where string // the thing's name in the house
	m     map[string]any
	lent  map[string]string // keys that its type gives, with their paths there
	// bounds are those of the key that is being read.
	bounds *Bounds
}

func (n node) at(key string) string {
	if path, ok := n.lent[key]; ok {
		return path
	}
	if n.path == "" {
		return key
	}
	return n.path + "." + key
}

// pos returns the place where the table begins.
func (n node) pos() plan.Pos { return n.r.pos(n.path) }

// has tells whether the plan gives the key.
func (n node) has(key string) bool { _, ok := n.m[key]; return ok }

// fault records an error at one of the node's keys ("" for the table itself).
func (n node) fault(key string, code plan.Code, mend, format string, args ...any) {
	path := n.path
	if key != "" {
		path = n.at(key)
	}
	n.r.add(plan.Diagnostic{Code: code, Summary: fmt.Sprintf(format, args...), Where: n.where, Mend: mend, Pos: n.r.pos(path)})
}

// value is one value being read.
type value struct {
	node
	key   string
	index int // in an array, -1 outside of one
	raw   any
}

// path returns the value's own key path.
func (v value) path() string {
	if v.index >= 0 {
		return fmt.Sprintf("%s[%d]", v.at(v.key), v.index)
	}
	return v.at(v.key)
}

// place returns where the value stands.
func (v value) place() plan.Pos { return v.r.pos(v.path()) }

// bad records an error at the value.
func (v value) bad(code plan.Code, mend, format string, args ...any) {
	v.r.add(plan.Diagnostic{
		Code: code, Summary: v.key + ": " + fmt.Sprintf(format, args...),
		Where: v.where, Mend: mend, Pos: v.place(),
	})
}

// wrong records that the value has the wrong type.
func (v value) wrong(want string) {
	v.bad("wrong-type", "", "must be %s, not %s", want, kindOf(v.raw))
}

// kindOf names the TOML type of a decoded value.
func kindOf(raw any) string {
	switch raw.(type) {
	case string:
		return "a string"
	case bool:
		return "true or false"
	case int64, float64:
		return "a number"
	case map[string]any:
		return "a table"
	case []any:
		return "an array"
	case []map[string]any:
		return "an array of tables"
	}
	return "a date"
}

// element is the path of an element of the array at a path.
func element(path string, i int) string { return fmt.Sprintf("%s[%d]", path, i) }

// label names a table for messages: its own name when it has one.
func label(kind string, m map[string]any, i int) string {
	for _, key := range []string{"name", "mark"} {
		if s, ok := m[key].(string); ok && s != "" {
			return kind + " " + s
		}
	}
	return fmt.Sprintf("%s no. %d", kind, i+1)
}

// nodes returns the elements of an array of tables, named by kind.
func (v value) nodes(kind string) (out []node) {
	prefix := v.where
	if prefix != "" {
		prefix += ", "
	}
	one := func(m map[string]any, i int) {
		if _, gone := m[removed]; gone {
			return
		}
		path := element(v.at(v.key), i)
		out = append(out, node{r: v.r, path: path, where: prefix + label(kind, m, i), m: m})
	}
	if v.many() {
		return nil
	}
	switch list := v.raw.(type) {
	case []map[string]any:
		for i, m := range list {
			one(m, i)
		}
	case []any:
		for i, x := range list {
			if m, ok := x.(map[string]any); ok {
				one(m, i)
				continue
			}
			value{v.node, v.key, i, x}.wrong("a table")
		}
	case map[string]any:
		v.bad("wrong-type", fmt.Sprintf("write [[%s]] with two brackets: there can be several", v.key), "is one table")
	default:
		v.wrong("an array of tables")
	}
	return out
}

// table returns a single table.
func (v value) table() (node, bool) {
	m, ok := v.raw.(map[string]any)
	if !ok {
		v.wrong("a table")
	}
	return node{r: v.r, path: v.path(), where: v.where, m: m}, ok
}

// list returns the elements of an array; a single value stands for an array of one.
func (v value) list() []value {
	list, ok := v.raw.([]any)
	if !ok {
		return []value{v}
	}
	if v.many() {
		return nil
	}
	out := make([]value, len(list))
	for i, x := range list {
		out[i] = value{v.node, v.key, i, x}
	}
	return out
}
