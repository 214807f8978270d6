package read

import (
	"errors"
	"fmt"
	"io/fs"
	"maps"
	"path"
	"path/filepath"
	"slices"
	"strings"

	"galewright/plan"
	"galewright/plan/geom"
	"galewright/plan/pos"
)

// step is how one file lays its house: mirrored and turned, then moved, in.
type step struct {
	lay  plan.Lay
	move geom.Vec2
}

// layKeys say how the house of a file lies.
var layKeys = []binding[step]{
	custom("mirror", "word", `"x"`, "the house is mirrored: along x east and west change places, along y north and south", func(v value, s *step) {
		if a, ok := choice(v, plan.Axes); ok {
			s.lay = map[plan.Axis]plan.Lay{plan.AxisX: plan.MirrorX, plan.AxisY: plan.MirrorY}[a].Then(s.lay)
		}
	}).words(plan.Words(plan.Axes)).otherwise("not mirrored"),
	custom("turn", "whole number", "90", "degrees to the left by which it is turned then: 90, 180 or 270; the southwest corner of the box around its walls stays where it is", func(v value, s *step) {
		n, ok := v.whole(0, 360)
		if ok && n%90 != 0 {
			v.bad("out-of-range", "roofs and floors run along x and y", "%d is not a number of right angles", n)
			return
		}
		s.lay = s.lay.Then(plan.Turned(n / 90))
	}).otherwise("not turned"),
	custom("move", "point", `["60'", "0'"]`, "how far it is moved then, [east, north]", func(v value, s *step) {
		s.move, _ = v.point()
	}).within(-12000, 12000).otherwise("not moved"),
}

// mostBases is how many files a plan may be built up from.
const mostBases = 8

// source is one file of a plan with the places in it.
type source struct {
	file  string
	index *pos.Index
}

// origin is where a part of a plan stands that is not in its first base.
type origin struct {
	source
	path string
}

// baseKey documents base; compose has taken it.
func baseKey() binding[plan.Plan] {
	return custom("base", "text", `"marsh-wren.toml"`, "another plan that this one begins with, relative to it: what is written here changes that. A table with a name changes the one of that name or is a new one; remove = true in it takes it out", func(value, *plan.Plan) {})
}

// layKey documents one of the keys that say how a house lies; compose has taken it.
func layKey(b binding[step]) binding[plan.Plan] {
	return binding[plan.Plan]{Key: b.Key, values: b.values, read: func(value, *plan.Plan) {}}
}

// compose puts a plan on its base: it returns the tables of both in one, notes where each
// part stands, and how each file lays the house, the first base's first.
func (r *reader) compose(m map[string]any, names []string) (map[string]any, bool) {
	own := source{r.file, r.index}
	s := r.step(m)
	raw, based := m["base"]
	delete(m, "base")
	if !based {
		r.steps = append(r.steps, s)
		return m, true
	}
	below, ok := r.under(value{node{r: r, m: m}, "base", -1, raw}, names)
	if !ok {
		return m, false
	}
	r.steps = append(r.steps, s)
	r.merge(below, "", m, "", own)
	return below, true
}

// step reads how a file lays its house, and takes those keys out of it.
func (r *reader) step(m map[string]any) (s step) {
	own := map[string]any{}
	for _, k := range layKeys {
		if x, ok := m[k.Name]; ok {
			own[k.Name] = x
			delete(m, k.Name)
		}
	}
	amend(node{r: r, m: own}, layKeys, &s)
	return s
}

// under reads the file that a plan names as its base. After it the reader's own file is the
// first base.
func (r *reader) under(v value, names []string) (map[string]any, bool) {
	name, ok := v.text()
	if !ok {
		return nil, false
	}
	file := path.Join(path.Dir(filepath.ToSlash(r.file)), filepath.ToSlash(name))
	rel := path.Clean(filepath.ToSlash(name))
	if len(names) > 0 {
		rel = path.Join(path.Dir(names[len(names)-1]), rel)
	}
	switch {
	case path.IsAbs(filepath.ToSlash(name)) || filepath.IsAbs(name):
		v.bad("absolute-path", "write its place relative to the plan, so that the two can move together", "%q is a place on this machine only", name)
		return nil, false
	case slices.Contains(names, rel) || rel == path.Base(filepath.ToSlash(r.plan.File)) || len(names) >= mostBases:
		v.bad("base-circle", "begin with a plan that has no base, or with one that does not come back to this one", "%q begins with the plan that begins with it", name)
		return nil, false
	}
	if r.load == nil {
		v.bad("no-file", "", "%q is not there to be read", name)
		return nil, false
	}
	src, err := r.load(rel)
	if err != nil {
		if e, is := errors.AsType[*fs.PathError](err); is {
			err = e.Err // without the path, which may be absolute
		}
		v.bad("no-file", "the name is relative to the plan", "cannot read %q: %s", name, oneLine(err.Error()))
		return nil, false
	}
	r.file = file
	m, ok := r.decode(src)
	if !ok {
		return nil, false
	}
	rebase(m, path.Dir(rel))
	return r.compose(m, append(names, rel))
}

// rebase makes the catalogs that a base names relative to the plan that begins with it.
func rebase(m map[string]any, dir string) {
	at := func(x any) any {
		if s, ok := x.(string); ok && dir != "." && !path.IsAbs(filepath.ToSlash(s)) {
			return path.Join(dir, s)
		}
		return x
	}
	switch x := m["catalog"].(type) {
	case string:
		m["catalog"] = at(x)
	case []any:
		for i := range x {
			x[i] = at(x[i])
		}
	}
}

// merge puts the keys of a table of a file into that of its base, at the two paths.
func (r *reader) merge(below map[string]any, at string, m map[string]any, own string, from source) {
	for _, key := range slices.Sorted(maps.Keys(m)) {
		x, to, path := m[key], keyPath(at, key), keyPath(own, key)
		had, is := below[key].(map[string]any)
		if t, ok := x.(map[string]any); ok && is {
			r.merge(had, to, t, path, from)
			continue
		}
		list, old := tables(x), tables(below[key])
		if list == nil || old == nil && below[key] != nil || at != "" && !slices.ContainsFunc(list, hasName) {
			r.place(to, origin{from, path})
			below[key] = x
			continue
		}
		below[key] = r.mergeTables(key, below, old, to, list, path, from)
	}
}

// keyPath is the path of a key of the table at a path.
func keyPath(at, key string) string {
	if at == "" {
		return key
	}
	return at + "." + key
}

// nameOf returns what tables of one list are told apart by.
func nameOf(t map[string]any) string {
	for _, key := range []string{"name", "mark"} {
		if s, ok := t[key].(string); ok {
			return s
		}
	}
	return ""
}

func hasName(t map[string]any) bool { return nameOf(t) != "" }

// removed marks a table that a difference takes out: its place in the list stays, so that
// those after it keep theirs.
const removed = "\x00removed"

// mergeTables puts a list of tables into that of the base: one with the name of a table there
// changes it, the others come after.
func (r *reader) mergeTables(key string, in map[string]any, old []map[string]any, at string, list []map[string]any, own string, from source) []any {
	out := make([]any, 0, len(old)+len(list))
	index := map[string]int{}
	for i, t := range old {
		name := nameOf(t)
		if wall := nameOf(in); name == "" && key == "shear" {
			name = shearName(wall, i)
		}
		if _, gone := t[removed]; name != "" && !gone {
			index[name] = i
		}
		out = append(out, t)
	}
	for i, t := range list {
		path := element(own, i)
		k, known := index[nameOf(t)]
		gone, _ := t["remove"].(bool)
		switch {
		case gone && !known:
			r.origins[element(at, len(out))] = origin{from, path}
			v := value{node{r: r, path: element(at, len(out)), where: label(strings.ReplaceAll(key, "_", " "), t, i), m: t}, "remove", -1, true}
			v.bad("nothing-to-remove", nearest(nameOf(t), slices.Sorted(maps.Keys(index))), "the base has no %s %q", strings.ReplaceAll(key, "_", " "), nameOf(t))
			t[removed] = true
			out = append(out, t)
		case gone:
			old[k][removed] = true
		case known:
			r.merge(old[k], element(at, k), t, path, from)
		default:
			r.place(element(at, len(out)), origin{from, path})
			out = append(out, t)
		}
	}
	return out
}

// place notes that what is at a path, and all in it, stands in another file.
func (r *reader) place(at string, from origin) {
	for p := range r.origins {
		if strings.HasPrefix(p, at) && (len(p) == len(at) || p[len(at)] == '.' || p[len(at)] == '[') {
			delete(r.origins, p)
		}
	}
	r.origins[at] = from
}

// tables returns the tables of an array of them; nil for anything else.
func tables(x any) (out []map[string]any) {
	switch list := x.(type) {
	case []map[string]any:
		return list
	case []any:
		for _, e := range list {
			t, ok := e.(map[string]any)
			if !ok {
				return nil
			}
			out = append(out, t)
		}
	}
	return out
}

// layHouse puts the house where the files of its plan lay it, and notes for the sheets what
// that means for who reads the plan beside them.
func (r *reader) layHouse() {
	p := r.plan
	for _, s := range r.steps {
		if s != (step{}) {
			p.LieBy(s.lay, s.move)
		}
	}
	note := ""
	switch l := p.Lay; {
	case l.Mirrored && l.Quarters == 0:
		note = "The house is mirrored from its plan: east and west have changed places."
	case l.Mirrored && l.Quarters == 2:
		note = "The house is mirrored from its plan: north and south have changed places."
	case l.Mirrored:
		note = fmt.Sprintf("The house is mirrored from its plan, east for west, and turned by %d° to the left.", 90*l.Quarters)
	case l.Quarters > 0:
		note = fmt.Sprintf("The house is turned from its plan by %d° to the left.", 90*l.Quarters)
	}
	if p.Lay.Mirrored {
		note += " Stations in the plan count from the other end of each wall, girder and porch, and left is right there; stations and tags on sheets count from the left end."
	}
	if note != "" {
		p.Project.Notes = append(p.Project.Notes, note)
	}
}
