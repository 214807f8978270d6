package plan

import (
	"errors"
	"fmt"
	"io/fs"
	"path"
	"strings"
	"unicode/utf8"

	"github.com/BurntSushi/toml"

	"galewright/plan/pos"
)

// Read reads and checks a plan. File names it in places; load reads a
// catalogue file by the name the plan gives it, relative to the plan. All
// faults are returned at once, sorted by place; when one is an error the plan
// is as far as it could be read and must not be framed.
func Read(file string, src []byte, load func(name string) ([]byte, error)) (*Plan, Diagnostics) {
	p := &Plan{File: file}
	var found Diagnostics
	r := newReader(file, p, &found)
	r.load = load
	m, ok := r.decode(src)
	if ok {
		read(node{r, "", "", m}, rootKeys(), p)
		r.finish(func(table, key string) bool {
			t, ok := m[table].(map[string]any)
			if ok && key != "" {
				_, ok = t[key]
			}
			return ok
		})
		r.check(m)
	}
	return p, found.Sorted()
}

// decode parses TOML and indexes its places.
func (r *reader) decode(src []byte) (m map[string]any, ok bool) {
	start := Pos{File: r.file, Line: 1, Col: 1}
	if i := badUTF8(src); i >= 0 {
		before := string(src[:i])
		start.Line += strings.Count(before, "\n")
		start.Col = i - strings.LastIndexByte(before, '\n')
		r.add(Diagnostic{Code: "encoding", Summary: "the file is not UTF-8", Mend: "save it as UTF-8 text", Pos: start})
		return nil, false
	}
	_, err := toml.Decode(string(src), &m)
	if e, is := errors.AsType[toml.ParseError](err); is {
		r.syntax(e, string(src))
		return nil, false
	}
	if err == nil {
		r.index, err = pos.NewIndex(string(src))
	}
	if err != nil {
		r.add(Diagnostic{Code: "syntax", Summary: oneLine(err.Error()), Pos: start})
	}
	return m, err == nil
}

// syntax reports a fault of TOML itself.
func (r *reader) syntax(e toml.ParseError, src string) {
	d := Diagnostic{Code: "syntax", Summary: oneLine(e.Message), Pos: Pos{r.file, max(e.Position.Line, 1), max(e.Position.Col, 1)}}
	if d.Summary == "" {
		d.Summary = oneLine(e.Error())
	}
	lines := strings.Split(src, "\n")
	if i := d.Pos.Line - 1; i < len(lines) && strings.Count(lines[i], `"`)-2*strings.Count(lines[i], `\"`) > 2 && strings.Contains(lines[i], "'") {
		d.Mend = `inside quotes write the inch mark as \" or as in: "5' 4in"`
	}
	r.add(d)
}

// badUTF8 returns the place of the first byte that is not UTF-8 text, or −1.
// TOML knows no other encoding; the decoder would drop a UTF-16 mark silently.
func badUTF8(src []byte) int {
	for i := 0; i < len(src); {
		c, n := utf8.DecodeRune(src[i:])
		if c == utf8.RuneError && n <= 1 {
			return i
		}
		i += n
	}
	return -1
}

func oneLine(s string) string { return strings.TrimSuffix(strings.Join(strings.Fields(s), " "), ".") }

// rootKeys are the keys at the top of a plan, in the order of reading: what
// is referred to comes before what refers to it. A function, because the
// tables refer to one another.
func rootKeys() []binding[Plan] {
	return []binding[Plan]{
		tableKey("project", "[project]", "what the title block says", projectKeys,
			func(p *Plan) *Project { return &p.Project }).must(),
		tableKey("site", "[site]", "the wind basis; load computing needs it", siteKeys,
			func(p *Plan) *Site { return &p.Site }).or(nil, ""),
		tableKey("foundation", "[foundation]", "what carries the lowest floor", foundationKeys,
			func(p *Plan) *Foundation { return &p.Foundation }).otherwise("piles when there are girders, else a slab"),
		tableKey("lumber", "[lumber]", "what the yard stocks", lumberKeys,
			func(p *Plan) *LumberYard { return &p.Lumber }),
		tableKey("loads", "[loads]", "how the load path is computed", loadsKeys,
			func(p *Plan) *Loads { return &p.Loads }),
		tablesKey("level", "the storeys, lowest first", readLevels).must(),
		tablesKey("wall", "the walls; those of the outside go counterclockwise round the house", readWalls).must(),
		tablesKey("roof", "the roof bodies; bodies over one level meet in valleys", readRoofs),
		tablesKey("girder", "beams or stringers on piles under the lowest floor", readGirders),
		tablesKey("porch", "post and beam porches", readPorches),
		custom("catalogue", "texts", `"hardware.toml"`, "files of [[item]]s, relative to the plan", readCatalogues),
		tablesKey("item", "the catalogue: one piece of hardware each", readItems),
		tablesKey("rule", "what goes at which joints; a later rule beats an earlier one of the same purpose", readRules),
		tablesKey("place", "what the engineer puts himself; it beats every rule", readPlaces),
	}
}

// tableKey binds a single table to a field with a Pos.
func tableKey[T any](name, example, doc string, keys []binding[T], at func(*Plan) *T) binding[Plan] {
	b := custom(name, "table", "", doc, func(v value, p *Plan) {
		n, ok := v.table()
		if !ok {
			return
		}
		n.where = name
		t := at(p)
		setPos(t, n.pos())
		read(n, keys, t)
	})
	b.Example = example
	b.fallback = map[string]any{} // so that the keys' own defaults are taken
	return b
}

// setPos notes where a single table stands.
func setPos(t any, p Pos) {
	switch t := t.(type) {
	case *Project:
		t.Pos = p
	case *Site:
		t.Pos = p
	case *Foundation:
		t.Pos = p
	case *LumberYard:
		t.Pos = p
	case *Loads:
		t.Pos = p
	}
}

// tablesKey binds an array of tables.
func tablesKey(name, doc string, each func(n node, i int, p *Plan)) binding[Plan] {
	b := custom(name, "tables", "", doc, func(v value, p *Plan) {
		for i, n := range v.nodes(name) {
			each(n, i, p)
		}
	})
	b.Example = "[[" + name + "]]"
	return b
}

// readCatalogues reads the catalogue files that the plan names.
func readCatalogues(v value, p *Plan) {
	for _, x := range v.list() {
		name, ok := x.text()
		if !ok {
			continue
		}
		src, err := v.r.load(name)
		if err != nil {
			if e, is := errors.AsType[*fs.PathError](err); is {
				err = e.Err // without the path, which may be absolute
			}
			x.bad("no-file", "the name is relative to the plan", "cannot read %q: %s", name, oneLine(err.Error()))
			continue
		}
		sub := newReader(path.Join(path.Dir(v.r.file), name), p, v.r.found)
		if m, ok := sub.decode(src); ok {
			keys := []binding[Plan]{tablesKey("item", "", readItems).must()}
			read(node{sub, "", fmt.Sprintf("catalogue %s", name), m}, keys, p)
		}
	}
}
