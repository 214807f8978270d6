package read

import (
	"errors"
	"fmt"
	"io/fs"
	"maps"
	"path"
	"path/filepath"
	"strings"

	"galewright/plan"
)

// Plan reads and checks a plan. File names it in places; load reads a
// catalog file by the name the plan gives it, relative to the plan. All
// faults are returned at once, sorted by place; when one is an error the plan
// is as far as it could be read and must not be framed.
func Plan(file string, src []byte, load func(name string) ([]byte, error)) (*plan.Plan, plan.Diagnostics) {
	return readPlan(file, src, load)
}

// hardwareTables are the keys at the top of a plan that are about hardware.
var hardwareTables = []string{"catalog", "item", "rule", "place"}

// House reads a plan without its hardware, as if none of it were written.
func House(file string, src []byte, load func(name string) ([]byte, error)) (*plan.Plan, plan.Diagnostics) {
	return readPlan(file, src, load, hardwareTables...)
}

// readPlan reads a plan but for the tables that are left out.
func readPlan(file string, src []byte, load func(name string) ([]byte, error), without ...string) (*plan.Plan, plan.Diagnostics) {
	p := &plan.Plan{File: file}
	var found plan.Diagnostics
	r := newReader(file, p, &found)
	r.load = load
	m, ok := r.decode(src)
	if ok {
		m, ok = r.compose(m, nil)
	}
	for _, table := range without {
		delete(m, table)
	}
	if ok {
		read(node{r: r, m: m}, rootKeys(), p)
		r.finish(func(table, key string) bool {
			t, ok := m[table].(map[string]any)
			if ok && key != "" {
				_, ok = t[key]
			}
			return ok
		})
		r.check(m)
	}
	if !found.Errors() {
		r.layHouse()
	}
	return p, found.Sorted()
}

// rootKeys are the keys at the top of a plan, in the order of reading: what
// is referred to comes before what refers to it. A function, because the
// tables refer to one another.
func rootKeys() []binding[plan.Plan] {
	return []binding[plan.Plan]{
		baseKey(), layKey(layKeys[0]), layKey(layKeys[1]), layKey(layKeys[2]),
		tableKey("project", "[project]", "what the title block says", projectKeys,
			func(p *plan.Plan) *plan.Project { return &p.Project }).must(),
		tableKey("site", "[site]", "the wind basis; load computing needs it", siteKeys,
			func(p *plan.Plan) *plan.Site { return &p.Site }).or(nil, ""),
		tableKey("foundation", "[foundation]", "what carries the lowest floor", foundationKeys,
			func(p *plan.Plan) *plan.Foundation { return &p.Foundation }).otherwise("piles when there are girders, else a slab"),
		tableKey("lumber", "[lumber]", "what the yard stocks", lumberKeys,
			func(p *plan.Plan) *plan.LumberYard { return &p.Lumber }),
		tableKey("loads", "[loads]", "how the load path is computed", loadsKeys,
			func(p *plan.Plan) *plan.Loads { return &p.Loads }),
		tablesKey("opening_type", "rough openings that are alike, once", readOpeningTypes),
		tablesKey("shear_type", "sheathed segments that are nailed alike, once", readShearTypes),
		tablesKey("level", "the stories, lowest first", readLevels).must(),
		tablesKey("wall", "the walls; exterior walls go counterclockwise around the house", readWalls).must(),
		tablesKey("floor_opening", "openings in floors, as for stairs", readFloorOpenings),
		tablesKey("joist", "joists of floors beside those at the spacing, as doubled under a wall", readFloorJoists),
		tablesKey("blocking", "rows of blocks between the joists of floors", readFloorBlocks),
		tablesKey("roof", "the roofs; roofs over one level meet in valleys", readRoofs),
		tablesKey("dormer", "dormers on roofs of rafters", readDormers),
		custom("deck", "table", "", "sheathing of the roofs and its nails; without it the load path says that nothing is known of them", readDeck).showing("[deck]"),
		custom("floor", "table", "", "nails of the floors' panels; without it nothing is known of the shear that they bear", readFloorDeck).showing("[floor]"),
		tablesKey("girder", "beams or stringers on piles under the lowest floor", readGirders),
		tablesKey("brace", "bracing between piles: crossed rods or boards, knees", readBraces),
		tablesKey("breakaway", "light walls between piles below the lowest floor that give way to flood: drawn, in no load path", readBreakaways),
		tablesKey("porch", "post and beam porches", readPorches),
		tablesKey("beam", "beams between walls or on posts, under a floor's or ceiling's joists or flush with them; a collector past an inside corner", readBeams),
		nailingKey(),
		tableKey("salt", "[salt]", "salt air: how the house is closed, and the engineer's materials for each class of place", saltKeys,
			func(p *plan.Plan) *plan.Salt { return &p.Salt }),
		tablesKey("treated", "what members are treated with, beyond sill plates, piles, girders over open piles and porches", readTreated),
		custom("catalog", "texts", `"hardware.toml"`, "files of [[item]]s, relative to the plan", readCatalogs),
		tablesKey("item", "the catalog: one piece of hardware each", readItems),
		tablesKey("rule", "what goes at which joints; a later rule overrides an earlier one of the same purpose", readRules),
		tablesKey("place", "hardware the engineer places; it overrides every rule", readPlaces),
	}
}

// tableKey binds a single table to a field with a Pos.
func tableKey[T any](name, example, doc string, keys []binding[T], at func(*plan.Plan) *T) binding[plan.Plan] {
	b := custom(name, "table", "", doc, func(v value, p *plan.Plan) {
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
func setPos(t any, p plan.Pos) {
	switch t := t.(type) {
	case *plan.Project:
		t.Pos = p
	case *plan.Site:
		t.Pos = p
	case *plan.Foundation:
		t.Pos = p
	case *plan.LumberYard:
		t.Pos = p
	case *plan.Loads:
		t.Pos = p
	case *plan.Salt:
		t.Pos = p
	}
}

// tablesKey binds an array of tables.
func tablesKey(name, doc string, each func(n node, i int, p *plan.Plan)) binding[plan.Plan] {
	b := custom(name, "tables", "", doc, func(v value, p *plan.Plan) {
		for i, n := range v.nodes(strings.ReplaceAll(name, "_", " ")) {
			each(n, i, p)
		}
	})
	b.Example = "[[" + name + "]]"
	return b
}

// readCatalogs reads the catalog files that the plan names.
func readCatalogs(v value, p *plan.Plan) {
	seen := map[string]bool{}
	for _, x := range v.list() {
		name, ok := x.text()
		if !ok {
			continue
		}
		switch clean := path.Clean(filepath.ToSlash(name)); {
		case path.IsAbs(clean) || filepath.IsAbs(name):
			x.bad("absolute-path", "write its place relative to the plan, so that the two can move together", "%q is a place on this machine only", name)
			v.r.lost = true
			continue
		case seen[clean]:
			x.bad("named-twice", "take one of them out", "%q is named twice", name)
			continue
		default:
			seen[clean] = true
		}
		src, err := v.r.load(name)
		if err != nil {
			if e, is := errors.AsType[*fs.PathError](err); is {
				err = e.Err // without the path, which may be absolute
			}
			v.r.lost = true
			x.bad("no-file", "the name is relative to the plan", "cannot read %q: %s", name, oneLine(err.Error()))
			continue
		}
		sub := newReader(path.Join(path.Dir(v.r.file), name), p, v.r.found)
		if m, ok := sub.decode(src); ok {
			keys := []binding[plan.Plan]{tablesKey("item", "", readItems).must()}
			read(node{r: sub, where: fmt.Sprintf("catalog %s", name), m: m}, keys, p)
		} else {
			v.r.lost = true
		}
		maps.Copy(v.r.spoiled, sub.spoiled)
	}
}
