package schema_test

import (
	"bytes"
	"encoding/json"
	"flag"
	"io"
	"os"
	"path/filepath"
	"regexp"
	"slices"
	"strings"
	"testing"

	"github.com/BurntSushi/toml"
	"github.com/stretchr/testify/require"

	"galewright/plan/schema"
)

var update = flag.Bool("update", false, "write the committed schema anew")

// written gives each committed schema with what writes it.
var written = map[string]func(io.Writer) error{"../../examples/plan.schema.json": schema.Write, "../../examples/difference.schema.json": schema.WriteDifference}

func write(t *testing.T, by func(io.Writer) error) []byte {
	var b bytes.Buffer
	require.NoError(t, by(&b))
	return b.Bytes()
}

func TestCommittedSchemaIsTheReaders(t *testing.T) {
	for committed, by := range written {
		got := write(t, by)
		if *update {
			require.NoError(t, os.WriteFile(committed, got, 0o644))
		}
		want, err := os.ReadFile(committed)
		require.NoError(t, err)
		require.Equal(t, string(want), string(got), "run go test ./plan/schema -update")
	}
}

// A difference says no more than what it changes or takes out; a slip in it is one all the same.
func TestADifferenceFitsItsOwnSchema(t *testing.T) {
	var v, whole validator
	require.NoError(t, json.Unmarshal(write(t, schema.WriteDifference), &v.root))
	require.NoError(t, json.Unmarshal(write(t, schema.Write), &whole.root))
	check := func(v validator, src string) string {
		var m map[string]any
		_, err := toml.Decode(src, &m)
		require.NoError(t, err)
		return v.fits(v.root, plain(m), "plan")
	}
	src, err := os.ReadFile("../../examples/shed-mirrored.toml")
	require.NoError(t, err)
	require.Empty(t, check(v, string(src)))
	require.Contains(t, check(whole, string(src)), "lacks")
	require.Empty(t, check(v, "base = \"a.toml\"\nturn = 90\n[[wall]]\nname = \"S\"\nopening = [{ name = \"w1\", remove = true }]\n"))
	for slip, want := range map[string]string{
		"mirror = \"x\"\n":                                "plan lacks base",
		"base = \"a.toml\"\nmirror = \"z\"\n":             "plan.mirror is none of its words",
		"base = \"a.toml\"\n[project]\nremove = true\n":   "plan.project.remove is unknown",
		"base = \"a.toml\"\n[[wall]]\nremove = \"yes\"\n": "plan.wall[].remove is no boolean",
		"base = \"a.toml\"\n[[place]]\nremove = true\n":   "plan.place[].remove is unknown",
	} {
		require.Contains(t, check(v, slip), want)
	}
}

// validator knows the part of JSON Schema that the package writes.
type validator struct {
	root map[string]any
}

// fits returns "" or what does not fit, and where.
func (v validator) fits(s map[string]any, x any, at string) string {
	if r, ok := s["$ref"].(string); ok {
		name := strings.TrimPrefix(r, "#/definitions/")
		return v.fits(v.root["definitions"].(map[string]any)[name].(map[string]any), x, at)
	}
	for _, o := range listOf(s["allOf"]) {
		if bad := v.fits(o, x, at); bad != "" {
			return bad
		}
	}
	if options := listOf(s["anyOf"]); options != nil {
		if !slices.ContainsFunc(options, func(o map[string]any) bool { return v.fits(o, x, at) == "" }) {
			return at + " fits none of its shapes"
		}
	}
	if words, ok := s["enum"].([]any); ok && !slices.Contains(words, x) {
		return at + " is none of its words"
	}
	if want, ok := s["type"].(string); ok && want != typeOf(x) && !(want == "number" && typeOf(x) == "integer") {
		return at + " is no " + want
	}
	if p, ok := s["pattern"].(string); ok && !regexp.MustCompile(p).MatchString(x.(string)) {
		return at + " does not match " + p
	}
	return v.parts(s, x, at)
}

// parts checks what stands inside an array or object.
func (v validator) parts(s map[string]any, x any, at string) string {
	switch x := x.(type) {
	case []any:
		item, ok := s["items"].(map[string]any)
		for _, e := range x {
			if !ok {
				break
			}
			if bad := v.fits(item, e, at+"[]"); bad != "" {
				return bad
			}
		}
		if n, ok := s["minItems"].(float64); ok && len(x) < int(n) {
			return at + " is too short"
		}
	case map[string]any:
		props, ok := s["properties"].(map[string]any)
		for k, e := range x {
			p, known := props[k].(map[string]any)
			if ok && !known {
				return at + "." + k + " is unknown"
			}
			if known {
				if bad := v.fits(p, e, at+"."+k); bad != "" {
					return bad
				}
			}
		}
		for _, k := range anyList(s["required"]) {
			if _, ok := x[k.(string)]; !ok {
				return at + " lacks " + k.(string)
			}
		}
	}
	return ""
}

func anyList(x any) []any { l, _ := x.([]any); return l }

func listOf(x any) (out []map[string]any) {
	for _, e := range anyList(x) {
		out = append(out, e.(map[string]any))
	}
	return out
}

func typeOf(x any) string {
	switch x.(type) {
	case string:
		return "string"
	case bool:
		return "boolean"
	case int64:
		return "integer"
	case float64:
		return "number"
	case []any:
		return "array"
	case map[string]any:
		return "object"
	}
	return "date"
}

// plain turns the decoder's arrays of tables into plain arrays.
func plain(x any) any {
	switch x := x.(type) {
	case []map[string]any:
		out := make([]any, len(x))
		for i, e := range x {
			out[i] = plain(e)
		}
		return out
	case []any:
		for i, e := range x {
			x[i] = plain(e)
		}
	case map[string]any:
		for k, e := range x {
			x[k] = plain(e)
		}
	}
	return x
}

func TestExamplesFitTheSchemaAndSlipsDoNot(t *testing.T) {
	var v validator
	require.NoError(t, json.Unmarshal(write(t, schema.Write), &v.root))
	check := func(src string) string {
		var m map[string]any
		_, err := toml.Decode(src, &m)
		require.NoError(t, err)
		return v.fits(v.root, plain(m), "plan")
	}
	files, err := filepath.Glob("../../examples/*.toml")
	require.NoError(t, err)
	n := 0
	for _, f := range files {
		src, err := os.ReadFile(f)
		require.NoError(t, err)
		if filepath.Base(f) == "hardware.toml" || strings.Contains(string(src), "\nbase = ") {
			continue
		}
		n++
		require.Empty(t, check(string(src)), f)
	}
	require.Greater(t, n, 2)

	const small = "wall = []\n[project]\nname = \"x\"\n[[level]]\nname = \"a\"\nplate_height = \"9'\"\n"
	require.Empty(t, check(small))
	for slip, want := range map[string]string{
		"stories = 2\n" + small:                               "plan.stories is unknown",
		strings.Replace(small, `"9'"`, "9", 1):                "plan.level[].plate_height is no string",
		strings.Replace(small, `"9'"`, `"9"`, 1):              "plan.level[].plate_height does not match",
		strings.Replace(small, `name = "a"`, "", 1):           "plan.level[] lacks name",
		small + "[[roof]]\nkind = \"dome\"\npitch=\"7:12\"\n": "plan.roof[].kind is none of its words",
	} {
		require.Contains(t, check(slip), want)
	}
}
