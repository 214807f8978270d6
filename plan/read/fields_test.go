package read_test

import (
	"os"
	"path/filepath"
	"reflect"
	"slices"
	"strings"
	"testing"

	"github.com/stretchr/testify/require"

	"galewright/plan"
	"galewright/plan/read"
)

// fields notes type.Field of every field that v or something in it fills.
func fields(v reflect.Value, filled map[string]bool) {
	switch v.Kind() {
	case reflect.Pointer:
		if !v.IsNil() {
			fields(v.Elem(), filled)
		}
	case reflect.Slice, reflect.Array:
		for i := range v.Len() {
			fields(v.Index(i), filled)
		}
	case reflect.Struct:
		for i := range v.NumField() {
			if f := v.Field(i); !f.IsZero() {
				filled[v.Type().Name()+"."+v.Type().Field(i).Name] = true
				fields(f, filled)
			}
		}
	}
}

// all lists type.Field of every struct of the package that t reaches.
func all(t reflect.Type, seen map[reflect.Type]bool) (out []string) {
	switch t.Kind() {
	case reflect.Pointer, reflect.Slice, reflect.Array:
		return all(t.Elem(), seen)
	case reflect.Struct:
		if seen[t] || t.PkgPath() != reflect.TypeFor[plan.Plan]().PkgPath() {
			return nil
		}
		seen[t] = true
		for f := range t.NumField() {
			if t.Field(f).IsExported() {
				out = append(out, t.Name()+"."+t.Field(f).Name)
				out = append(out, all(t.Field(f).Type, seen)...)
			}
		}
	}
	return out
}

// Nothing in the model is out of a plan's reach: each field is filled by an
// example plan or by the example of some key.
func TestEveryFieldOfTheModelCanBeWritten(t *testing.T) {
	filled := map[string]bool{}
	note := func(src, dir string) {
		p, _ := read.Plan("plan.toml", []byte(src), func(n string) ([]byte, error) { return os.ReadFile(filepath.Join(dir, n)) })
		fields(reflect.ValueOf(p), filled)
	}
	files, err := filepath.Glob("../../examples/*.toml")
	require.NoError(t, err)
	for _, f := range files {
		src, err := os.ReadFile(f)
		require.NoError(t, err)
		note(string(src), "../../examples")
	}
	names := strings.NewReplacer("[[wall]]", "[[wall]]\nname = \"w\"\nto = [\"9'\", \"0'\"]", "[[roof.post]]", "[[roof.post]]\nat = \"28'\"", "[[girder]]", "[[girder]]\nname = \"g\"",
		"[[dormer]]", "[[roof]]\nname = \"main\"\nkind = \"gable\"\npitch = \"9:12\"\n[[dormer]]\nname = \"d\"\nside = \"S\"\nwidth = \"6'\"\nplate_height = \"5'\"\npitch = \"6:12\"",
		"[[brace]]", "[[girder]]\nname = \"GS\"\n[[brace]]\nname = \"x\"\nkind = \"boards\"\ngirder = \"GS\"", "[[breakaway]]", "[[girder]]\nname = \"GS\"\n[[breakaway]]\nname = \"k\"\ngirder = \"GS\"",
		"[[floor_opening]]", "[[level]]\nname = \"first\"\nplate_height = \"8'\"\n[[floor_opening]]\nname = \"s\"\narea = [[\"1'\", \"1'\"], [\"2'\", \"2'\"]]",
		"[[joist]]", "[[level]]\nname = \"first\"\nplate_height = \"8'\"\n[[joist]]\nname = \"j\"\nfrom = [\"1'\", \"1'\"]\nto = [\"1'\", \"9'\"]",
		"[[blocking]]", "[[level]]\nname = \"second\"\nplate_height = \"8'\"\n[[blocking]]\nname = \"k\"\nfrom = [\"1'\", \"1'\"]\nto = [\"9'\", \"1'\"]",
		"[[roof.post]]", "[[roof.post]]\nat = \"9'\"", "[[porch]]", "[[porch]]\nname = \"p\"", "[[beam]]", "[[level]]\nname = \"first\"\nplate_height = \"8'\"\n[[beam]]\nname = \"b\"\nmember = \"2-2x8\"\nfrom = [\"2'\", \"1'\"]\nto = [\"9'\", \"1'\"]", "[[item]]", "[[item]]\nmark = \"m\"\nkind = \"clip\"")
	for _, k := range read.Keys() {
		note(names.Replace(headers[k.Table])+"\n"+k.Example+"\n", "../../examples")
	}
	shed, err := os.ReadFile("../../examples/shed.toml")
	require.NoError(t, err)
	note("mirror = \"x\"\nturn = 90\n"+string(shed), "../../examples")
	filled["Wall.Hook"], filled["Wall.Past"] = true, true // no key's: framing finds them
	want := all(reflect.TypeFor[plan.Plan](), map[reflect.Type]bool{})
	require.Contains(t, want, "Fasteners.Stagger")
	require.Empty(t, slices.DeleteFunc(want, func(f string) bool { return filled[f] }), "fields that no key fills")
}
