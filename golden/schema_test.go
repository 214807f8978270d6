package golden

import (
	"bytes"
	"encoding/json"
	"io"
	"regexp"
	"slices"
	"strings"
	"testing"

	"galewright/plan"
	"galewright/plan/calculation"
	"galewright/plan/loadpath"
	house "galewright/plan/model"
	"galewright/plan/pipeline"
	"galewright/plan/schedule"
	"galewright/plan/schema"

	"github.com/santhosh-tekuri/jsonschema/v6"
	"github.com/stretchr/testify/require"
)

// jsonExample is the example whose every JSON output is kept; those of the
// others are held to the schemas only.
const jsonExample = "shed"

// documents returns the JSON outputs of an example by file: the output's
// name, then what sets one of several apart.
func documents(t testing.TB, r *pipeline.Result) map[string][]byte {
	out := map[string][]byte{}
	put := func(file string, write func(io.Writer) error) {
		var b bytes.Buffer
		require.NoError(t, write(&b), file)
		out[file] = b.Bytes()
	}
	for _, by := range schedule.Keys {
		put("count.by-"+by+".json", func(w io.Writer) error { return schedule.Count(w, r.Schedule, by, "json") })
	}
	put("order.json", func(w io.Writer) error { return schedule.Order(w, r.Schedule, 0.05, "json") })
	put("lumber.json", func(w io.Writer) error { return r.Lumber().Write(w, "json") })
	report := model(r).Loads
	if report == nil {
		report, _ = loadpath.Run(r.Placement)
	}
	put("model.json", house.New(r.Schedule, report).JSON)
	if report.Missing == "" {
		put("calculations.json", func(w io.Writer) error { return calculation.New(report).Write(w, "json") })
		put("loads.json", func(w io.Writer) error { return report.WriteWind(w, "json") })
		put("check-loads.json", func(w io.Writer) error { _, err := report.WriteCheck(w, 1, "json"); return err })
	}
	return out
}

// compiled returns the schema of an output.
func compiled(t testing.TB, name string) *jsonschema.Schema {
	text, err := schema.Output(name)
	require.NoError(t, err)
	doc, err := jsonschema.UnmarshalJSON(bytes.NewReader(text))
	require.NoError(t, err)
	c := jsonschema.NewCompiler()
	require.NoError(t, c.AddResource(name, doc))
	s, err := c.Compile(name)
	require.NoError(t, err)
	return s
}

func outputOf(file string) string {
	name, _, _ := strings.Cut(file, ".")
	return name
}

// TestEveryJSONFitsItsSchema holds all JSON outputs of all examples to the
// schemas that `galewright schema` prints.
func TestEveryJSONFitsItsSchema(t *testing.T) {
	met := map[string]bool{"check": true} // the fault list, held to its schema in cmd/galewright
	for _, name := range examples(t) {
		for file, b := range documents(t, build(t, name)) {
			doc, err := jsonschema.UnmarshalJSON(bytes.NewReader(b))
			require.NoError(t, err, "%s %s", name, file)
			require.NoError(t, compiled(t, outputOf(file)).Validate(doc), "%s %s", name, file)
			require.Contains(t, string(b), plan.Caution, "%s %s", name, file)
			met[outputOf(file)] = true
		}
	}
	for _, name := range schema.Outputs() {
		require.True(t, met[name], "no output is held to the schema %s", name)
	}
}

// TestSchemasRefuse: a key more, a key less, another type or another version
// does not fit, at any depth.
func TestSchemasRefuse(t *testing.T) {
	for file, b := range documents(t, build(t, jsonExample)) {
		s := compiled(t, outputOf(file))
		for what, spoil := range map[string]func(map[string]any){
			"no caution":      func(m map[string]any) { delete(m, "caution") },
			"another version": func(m map[string]any) { m["schema"] = "galewright/" + outputOf(file) + "/9" },
			"a key more":      func(m map[string]any) { m["verdict"] = true },
			"a row with more": func(m map[string]any) { firstObject(m)["verdict"] = true },
			"a row with less": func(m map[string]any) { drop(firstObject(m)) },
		} {
			var m map[string]any
			require.NoError(t, json.Unmarshal(b, &m))
			spoil(m)
			require.Error(t, s.Validate(m), "%s with %s", file, what)
		}
	}
}

// firstObject returns the first object in the first list that has one, by name.
func firstObject(m map[string]any) map[string]any {
	for _, k := range sortedKeys(m) {
		if l, ok := m[k].([]any); ok && len(l) > 0 {
			if o, ok := l[0].(map[string]any); ok {
				return o
			}
		}
	}
	panic("no list of objects")
}

// drop takes away a key that every object of its kind has.
func drop(m map[string]any) {
	for _, k := range []string{"name", "text", "grade", "mark", "section", "check", "case", "line", "at_in"} {
		if _, ok := m[k]; ok {
			delete(m, k)
			return
		}
	}
	panic("no key to drop")
}

func sortedKeys(m map[string]any) (list []string) {
	for k := range m {
		list = append(list, k)
	}
	slices.Sort(list)
	return list
}

// TestKeysAreSnakeCase walks all JSON outputs.
func TestKeysAreSnakeCase(t *testing.T) {
	snake := regexp.MustCompile(`^[a-z][a-z0-9]*(_[a-z0-9]+)*$`)
	var walk func(file string, x any)
	walk = func(file string, x any) {
		switch x := x.(type) {
		case []any:
			for _, y := range x {
				walk(file, y)
			}
		case map[string]any:
			for k, y := range x {
				require.Regexp(t, snake, k, file)
				walk(file, y)
			}
		}
	}
	for file, b := range documents(t, build(t, "marsh-wren")) {
		var x any
		require.NoError(t, json.Unmarshal(b, &x))
		walk(file, x)
	}
}
