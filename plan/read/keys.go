package read

import (
	"maps"
	"slices"
	"strconv"

	"galewright/plan"
)

// Key is one key of the plan file, as the reader knows it.
type Key struct {
	Table    string   // "wall.opening"; "" at the top of the file
	Name     string   // "width"
	Type     string   // "length", "text", "number", ...
	Default  string   // as the plan would write it, or in words; "" = none
	Doc      string   // what it means, with the unit where it has one
	Example  string   // the whole line
	Required bool     // there is no plan without it
	Values   []string // the words it takes, when they are fixed
	Bounds   *Bounds  // of what it measures; nil = none of its own
}

// binding ties a key to the field it fills.
type binding[T any] struct {
	Key
	fallback any             // read when the key is left out; nil = nothing
	values   func() []string // fills Values, of a list that is no constant
	read     func(v value, t *T)
}

func (b binding[T]) must() binding[T] { b.Required = true; return b }

// or gives the value that is read when the key is left out.
func (b binding[T]) or(x any, text string) binding[T] {
	b.fallback, b.Default = x, text
	return b
}

// orWord is or for a word.
func (b binding[T]) orWord(word string) binding[T] { return b.or(word, strconv.Quote(word)) }

// otherwise says in words what happens when the key is left out.
func (b binding[T]) otherwise(words string) binding[T] { b.Default = words; return b }

// showing gives an example that is no key and value.
func (b binding[T]) showing(line string) binding[T] { b.Example = line; return b }

// within bounds what is measured: less or more is an error.
func (b binding[T]) within(least, most float64) binding[T] {
	b.Bounds = &Bounds{Least: least, Most: most}
	return b
}

// usual says what is met on houses: less or more within the bounds is a warning.
func (b binding[T]) usual(low, high float64) binding[T] {
	b.Bounds.Low, b.Bounds.High = low, high
	return b
}

// words lists the fixed values.
func (b binding[T]) words(list []string) binding[T] { b.Values = list; return b }

// field makes a binding of a reading function that returns a value.
func field[T, V any](name, typ, example, doc string, get func(value) (V, bool), at func(*T) *V) binding[T] {
	return custom(name, typ, example, doc, func(v value, t *T) {
		if x, ok := get(v); ok {
			*at(t) = x
		}
	})
}

// custom makes a binding that fills what it likes.
func custom[T any](name, typ, example, doc string, read func(v value, t *T)) binding[T] {
	return binding[T]{Key: Key{Name: name, Type: typ, Example: name + " = " + example, Doc: doc}, read: read}
}

func textKey[T any](name, example, doc string, at func(*T) *string) binding[T] {
	return field(name, "text", example, doc, value.text, at)
}

func nameKey[T any](name, example, doc string, at func(*T) *string) binding[T] {
	return field(name, "name", example, doc, value.name, at)
}

// choiceKey reads one word of a list.
func choiceKey[T any, W ~string](name string, list []W, doc string, at func(*T) *W) binding[T] {
	get := func(v value) (W, bool) { return choice(v, list) }
	return field(name, "word", `"`+string(list[0])+`"`, doc, get, at).words(plan.Words(list))
}

// coatingKey is choiceKey for a coating, with an example of its own.
func coatingKey[T any](name, example string, list []plan.Coating, doc string, at func(*T) *plan.Coating) binding[T] {
	b := choiceKey(name, list, doc, at)
	b.Example = name + " = " + example
	return b
}

// jointKey reads one of the kinds of joints that the table has.
func jointKey[T any](name string, at func(*T) *plan.JointKind) binding[T] {
	get := func(v value) (plan.JointKind, bool) { return choice(v, plan.JointKinds()) }
	b := field(name, "word", `"`+string(plan.RafterRidge)+`"`, "kind of joint", get, at)
	b.values = func() []string { return plan.Words(plan.JointKinds()) }
	return b
}

// choicesKey reads one word of a list, or several.
func choicesKey[T any, W ~string](name, example string, list []W, doc string, at func(*T) *[]W) binding[T] {
	return custom(name, "words", example, doc, func(v value, t *T) {
		for _, x := range v.list() {
			if w, ok := choice(x, list); ok {
				*at(t) = append(*at(t), w)
			}
		}
	}).words(plan.Words(list))
}

// lengthKey reads a length of 0 or more.
func lengthKey[T any](name, example, doc string, at func(*T) *float64) binding[T] {
	return field(name, "length", example, doc, value.length, at)
}

// sizeKey reads a length of more than 0.
func sizeKey[T any](name, example, doc string, at func(*T) *float64) binding[T] {
	get := func(v value) (float64, bool) {
		in, ok := v.length()
		if ok && in <= 0 {
			v.bad("out-of-range", "", "must be more than 0")
		}
		return in, ok && in > 0
	}
	return field(name, "length", example, doc, get, at)
}

func numberKey[T any](name, example string, lo, hi float64, doc string, at func(*T) *float64) binding[T] {
	get := func(v value) (float64, bool) { return v.number(lo, hi) }
	return field(name, "number", example, doc, get, at)
}

func wholeKey[T any](name, example string, lo, hi int, doc string, at func(*T) *int) binding[T] {
	get := func(v value) (int, bool) { return v.whole(lo, hi) }
	return field(name, "whole number", example, doc, get, at)
}

func flagKey[T any](name, doc string, at func(*T) *bool) binding[T] {
	return field(name, "true or false", "true", doc, value.flag, at).otherwise("false")
}

func lumberKey[T any](name, example, doc string, at func(*T) *plan.Lumber) binding[T] {
	return field(name, "lumber", example, doc, value.section, at)
}

func textsKey[T any](name, example, doc string, at func(*T) *[]string) binding[T] {
	return custom(name, "texts", example, doc, func(v value, t *T) { *at(t) = v.texts() })
}

// read fills t from the node: keys that are there, defaults for those that
// are not, and a fault for every key that is missing or unknown.
func read[T any](n node, keys []binding[T], t *T) {
	names := namesOf(keys)
	for _, k := range keys {
		raw, ok := n.m[k.Name]
		switch {
		case ok:
			k.take(value{n, k.Name, -1, raw}, t)
		case k.Required && !n.slip(k.Name, names):
			n.fault("", "missing-key", "add "+k.Example, "%s is missing", k.Name)
		case k.fallback != nil:
			k.read(value{n, k.Name, -1, k.fallback}, t)
		}
	}
	n.unknown(names)
}

// take reads what the plan gives; a value of the wrong type is mended after
// the key's example.
func (b binding[T]) take(v value, t *T) {
	before := len(*v.r.found)
	v.bounds = b.Bounds
	b.read(v, t)
	for i := range (*v.r.found)[before:] {
		if d := &(*v.r.found)[before+i]; d.Code == "wrong-type" && d.Mend == "" {
			d.Mend = "write it like " + b.Example
		}
	}
}

func namesOf[T any](keys []binding[T]) []string {
	names := make([]string, len(keys))
	for i, k := range keys {
		names[i] = k.Name
	}
	return names
}

// slip tells whether some unknown key of the node was likely meant to be
// name: saying that name is missing too would be one fault twice.
func (n node) slip(name string, names []string) bool {
	for key := range n.m {
		if !slices.Contains(names, key) && plan.Nearest(key, names) == name {
			return true
		}
	}
	return false
}

// amend is read for a table that changes something read before: what it does
// not give stays.
func amend[T any](n node, keys []binding[T], t *T) {
	for _, k := range keys {
		if raw, ok := n.m[k.Name]; ok {
			k.take(value{n, k.Name, -1, raw}, t)
		}
	}
	n.unknown(namesOf(keys))
}

// unknown reports every key that is not among names.
func (n node) unknown(names []string) {
	for _, key := range slices.Sorted(maps.Keys(n.m)) {
		if !slices.Contains(names, key) {
			n.fault(key, "unknown-key", nearest(key, names), "unknown key %q", key)
		}
	}
}

// of lists the keys of one table for the documentation.
func of[T any](table string, keys []binding[T]) []Key {
	out := make([]Key, len(keys))
	for i, k := range keys {
		out[i] = k.Key
		out[i].Table = table
		if k.values != nil {
			out[i].Values = k.values()
		}
	}
	return out
}

// Keys lists every key of a plan file, table by table, from the same values
// that the reader uses.
func Keys() []Key {
	return slices.Concat(
		of("", rootKeys()),
		of("project", projectKeys), of("site", siteKeys),
		of("level", levelKeys), of("level.sheathing", sheathingKeys), of("wall", wallKeys), of("opening_type", openingTypeKeys), of("shear_type", shearTypeKeys), of("wall.start", endKeys), of("wall.opening", openingKeys), of("wall.breaks", breakKeys), of("wall.sheathing", sheathingKeys), of("wall.shear", shearKeys), of("wall.post", postKeys),
		of("floor_opening", floorOpeningKeys), of("joist", floorJoistKeys), of("blocking", floorBlockKeys), of("roof", roofKeys), of("roof.post", ridgePostKeys), of("dormer", dormerKeys), of("dormer.opening", openingKeys), of("deck", deckKeys), of("deck.zone", nailZoneKeys), of("floor", floorDeckKeys), of("foundation", foundationKeys), of("girder", girderKeys), of("brace", braceKeys), of("breakaway", breakawayKeys), of("porch", porchKeys), of("porch.roof", porchRoofKeys), of("porch.deck", porchDeckKeys), of("beam", beamKeys),
		of("nailing", nailingKeys()), of("nailing.connection", nailLineKeys),
		of("lumber", lumberKeys), of("loads", loadsKeys), of("loads.dead", deadKeys), of("salt", saltKeys), of("salt.override", saltPlaceKeys), of("treated", treatedKeys), of("item", itemKeys), of("item.nails", nailKeys), of("item.loads", loadKeys),
		of("rule", ruleKeys), of("rule.where", whereKeys), of("place", placeKeys),
	)
}
