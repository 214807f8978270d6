package schema

import (
	"encoding/json"
	"fmt"
	"io"
	"strings"

	"galewright/plan"
	"galewright/plan/read"
)

// object is a JSON object; encoding/json writes its keys in order.
type object = map[string]any

// Patterns of quoted values: loose, because the reader says precisely what is
// wrong, and an editor only helps.
const (
	lengthPattern = `^\s*-?[0-9].*('|"|ft|in|mm|cm|m|feet|inch|inches)\s*$`
	lumberPattern = `^\s*([0-9]+\s*-\s*)?[0-9][0-9. /]*x\s*[0-9]`
	unitPattern   = `^\s*[0-9][0-9.,]*\s*[A-Za-z/]+\s*$`
	pitchPattern  = `^\s*[0-9][0-9. /]*:\s*[0-9]`
	stepPattern   = `^\s*@\s*[0-9]`
)

func text(pattern string) object { return object{"type": "string", "pattern": pattern} }

func either(options ...object) object { return object{"anyOf": options} }

func list(item object) object { return object{"type": "array", "items": item} }

// oneOrMore is an item, or an array of it.
func oneOrMore(item object) object { return either(item, list(item)) }

func ref(table string) object { return object{"$ref": "#/definitions/" + table} }

// shapes gives the schema of each type of read.Key.
var shapes = map[string]object{
	"text":                   {"type": "string"},
	"name":                   {"type": "string"},
	"name of a type":         {"type": "string"},
	"name of a level":        {"type": "string"},
	"name of a roof":         {"type": "string"},
	"texts":                  oneOrMore(object{"type": "string"}),
	"date":                   {},
	"number":                 {"type": "number"},
	"whole number":           {"type": "integer"},
	`whole number or "auto"`: either(object{"type": "integer"}, object{"enum": []string{"auto"}}),
	"true or false":          {"type": "boolean"},
	"length":                 text(lengthPattern),
	"lengths":                oneOrMore(text(lengthPattern)),
	"whole numbers":          {"type": "array", "items": object{"type": "integer", "minimum": 1}, "minItems": 1},
	"lengths or @ spacing":   either(oneOrMore(text(lengthPattern)), text(stepPattern)),
	"lengths, a list for each side, or @ spacing": either(list(text(lengthPattern)), list(list(text(lengthPattern))), text(lengthPattern), text(stepPattern)),
	"length or range":  either(object{"type": "string"}, list(text(lengthPattern))),
	"gauge or length":  {"type": "string"},
	"point":            point,
	"points":           {"type": "array", "items": point, "minItems": 2},
	"two points":       {"type": "array", "items": point, "minItems": 2, "maxItems": 2},
	"lumber":           text(lumberPattern),
	"lumbers":          oneOrMore(text(lumberPattern)),
	"lumber @ spacing": text(lumberPattern),
	"pitch":            text(pitchPattern),
	"speed":            text(unitPattern),
	"load":             text(unitPattern),
	"weight":           text(unitPattern),
	"stress":           text(unitPattern),
	"distance":         text(unitPattern),
	"nail":             {"type": "string"},
	"fastener":         {"type": "string"},
}

var point = object{"type": "array", "items": text(lengthPattern), "minItems": 2, "maxItems": 2}

// nested names the table of keys that a key holds, where it is not the key's
// own path.
var nested = map[string]string{"wall.end": "wall.start", "rule.except": "rule.where"}

// overridden is required of a whole item, but not of one that changes an item
// of a catalog file, which a schema cannot tell apart.
const overridden = "item.kind"

// of returns the schema of one key.
func of(k read.Key) (object, error) {
	path := strings.TrimPrefix(k.Table+"."+k.Name, ".")
	if t, ok := nested[path]; ok {
		path = t
	}
	var s object
	if k.Table == "nailing" {
		path = "nailing.connection"
	}
	switch k.Type {
	case "table":
		s = ref(path)
	case "tables":
		s = list(ref(path))
	case "table or tables":
		s = oneOrMore(ref(path))
	case "end":
		s = either(object{"enum": plan.Joins}, ref(path))
	case "word":
		s = object{"enum": k.Values}
	case "words":
		s = oneOrMore(object{"enum": k.Values})
	default:
		shape, ok := shapes[k.Type]
		if !ok {
			return nil, fmt.Errorf("key %s has the type %q, which has no schema", path, k.Type)
		}
		s = shape
	}
	doc := k.Doc
	if limits := k.Limits(); limits != "" {
		doc += ", " + limits
	}
	if k.Default != "" {
		doc += "; default: " + k.Default
	}
	return object{"description": doc, "allOf": []object{s}}, nil
}

// Write writes the schema of a plan file.
func Write(w io.Writer) error { return write(w, "galewright plan", true) }

// WriteDifference writes the schema of a plan file that begins with another one: nothing is
// required in it, and what has a name can be taken out.
func WriteDifference(w io.Writer) error { return write(w, "galewright difference", false) }

// remove is the key by which a difference takes a table out.
var remove = object{"type": "boolean", "description": "take the one of this name out of the plan that this one begins with"}

// write writes the schema of a plan file, whole or a difference.
func write(w io.Writer, title string, whole bool) error {
	tables := map[string]object{}
	for _, k := range read.Keys() {
		t := tables[k.Table]
		if t == nil {
			t = object{"type": "object", "additionalProperties": false, "properties": object{}}
			tables[k.Table] = t
		}
		s, err := of(k)
		if err != nil {
			return err
		}
		t["properties"].(object)[k.Name] = s
		if !whole && k.Table != "" && k.Table != "project" && (k.Name == "name" || k.Name == "mark") {
			t["properties"].(object)["remove"] = remove
		}
		if k.Required && whole && k.Table+"."+k.Name != overridden {
			required, _ := t["required"].([]string)
			t["required"] = append(required, k.Name)
		}
	}
	root := tables[""]
	delete(tables, "")
	root["$schema"] = "http://json-schema.org/draft-07/schema#"
	root["title"] = title
	if !whole {
		root["required"] = []string{"base"}
	}
	root["definitions"] = tables
	e := json.NewEncoder(w)
	e.SetEscapeHTML(false)
	e.SetIndent("", " ")
	return e.Encode(root)
}
