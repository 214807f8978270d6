package read

import (
	"maps"
	"slices"

	"galewright/plan"
)

// The keys of types: those of what they are the types of, but its own name and place.
var (
	openingTypeKeys = typeKeys(openingKeys, "name", "at", "type")
	shearTypeKeys   = typeKeys(shearKeys, "name", "from", "to", "type")
)

// typeKeys are the keys that a type may lend, none of them needed, after its name.
func typeKeys[T any](keys []binding[T], own ...string) []binding[T] {
	out := []binding[T]{custom("name", "name", `"W1"`, "name by which others take it", func(v value, _ *T) { v.name() }).must()}
	for _, k := range keys {
		if !slices.Contains(own, k.Name) {
			k.Required, k.fallback, k.Default = false, nil, ""
			out = append(out, k)
		}
	}
	return out
}

// readOpeningTypes reads one [[opening_type]].
func readOpeningTypes(n node, _ int, _ *plan.Plan) {
	read(n, openingTypeKeys, &plan.Opening{})
	n.lend("opening")
}

// readShearTypes reads one [[shear_type]].
func readShearTypes(n node, _ int, _ *plan.Plan) {
	read(n, shearTypeKeys, &shearDraft{Shear: &plan.Shear{}})
	n.lend("shear")
}

// lend notes a type of a kind.
func (n node) lend(kind string) {
	name, _ := n.m["name"].(string)
	if n.r.types[kind] == nil {
		n.r.types[kind] = map[string]node{}
	}
	if first, ok := n.r.types[kind][name]; ok && name != "" {
		n.twice("type of "+kind, name, first.pos())
		return
	}
	n.r.types[kind][name] = n
}

// typed returns the node with what its type of a kind lends it: keys that it does
// not write itself. Faults of those are told where the type writes them.
func (n node) typed(kind string) node {
	raw, ok := n.m["type"]
	if !ok {
		return n
	}
	v := value{n, "type", -1, raw}
	name, ok := v.name()
	if !ok {
		return n
	}
	t, ok := n.r.types[kind][name]
	if !ok {
		v.bad("unknown-type", nearest(name, slices.Sorted(maps.Keys(n.r.types[kind]))), "there is no [[%s_type]] %q", kind, name)
		return n
	}
	own := n.m
	n.m, n.lent = maps.Clone(own), map[string]string{}
	for key, x := range t.m {
		if _, has := own[key]; !has && key != "name" {
			n.m[key], n.lent[key] = x, t.at(key)
		}
	}
	return n
}

// needs tells of keys that neither a node nor its type gives. Of a type that is not
// there nobody knows what it would have given.
func needs[T any](n node, keys []binding[T], names ...string) {
	if n.has("type") && n.lent == nil {
		return
	}
	for _, k := range keys {
		if slices.Contains(names, k.Name) && !n.has(k.Name) && !n.slip(k.Name, namesOf(keys)) {
			n.fault("", "missing-key", "add "+k.Example, "%s is missing", k.Name)
		}
	}
}

// typeKey names the type of a thing; typed has taken it.
func typeKey[T any](kind, example string) binding[T] {
	return custom("type", "name of a type", example, "the [["+kind+"_type]] that gives the keys it does not write itself", func(value, *T) {})
}
