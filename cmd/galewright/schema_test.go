package main

import (
	"bytes"
	"os"
	"path/filepath"
	"testing"

	"galewright/plan"
	"galewright/plan/schema"

	"github.com/santhosh-tekuri/jsonschema/v6"
	"github.com/stretchr/testify/require"
)

// fits holds a JSON text to the schema that the program prints.
func fits(t *testing.T, name string, text []byte) {
	s, err := jsonschema.UnmarshalJSON(bytes.NewReader(text))
	require.NoError(t, err)
	var printed bytes.Buffer
	require.Equal(t, exitDone, run([]string{"schema", name}, &printed, &printed))
	doc, err := jsonschema.UnmarshalJSON(&printed)
	require.NoError(t, err)
	c := jsonschema.NewCompiler()
	require.NoError(t, c.AddResource(name, doc))
	compiled, err := c.Compile(name)
	require.NoError(t, err)
	require.NoError(t, compiled.Validate(s), string(text))
}

// TestJSONFitsItsSchema runs each command that writes JSON: what it prints,
// and what it prints beside it of a plan with faults, fits its schema.
func TestJSONFitsItsSchema(t *testing.T) {
	shed := "../../examples/shed.toml"
	for name, args := range map[string][]string{
		"count": {"count", shed, "--format", "json"}, "order": {"count", shed, "--order", "--format", "json"},
		"lumber": {"count", shed, "--lumber", "--format", "json"}, "check": {"check", shed, "--json"},
		"check-loads": {"check", shed, "--loads", "--json"}, "loads": {"loads", shed, "--json"},
		"model": {"model", shed, "--json"}, "calculations": {"loads", shed, "--calculations", "--json"},
	} {
		var out, err bytes.Buffer
		run(args, &out, &err)
		fits(t, name, out.Bytes())
		if err.Len() > 0 && args[len(args)-1] == "--json" {
			fits(t, "check", err.Bytes()) // the load path's warnings
		}
	}
	text, err := os.ReadFile(shed)
	require.NoError(t, err)
	bad := filepath.Join(t.TempDir(), "bad.toml")
	require.NoError(t, os.WriteFile(bad, bytes.Replace(text, []byte("exposure = \"C\""), []byte("exposure = \"Q\""), 1), 0o644))
	for _, args := range [][]string{{"check", bad, "--json"}, {"check", bad, "--loads", "--json"}, {"loads", bad, "--json"}} {
		var out, err bytes.Buffer
		require.Equal(t, exitFault, run(args, &out, &err), args)
		if args[len(args)-2] == bad && args[0] == "check" {
			fits(t, "check", out.Bytes())
			continue
		}
		fits(t, "check", err.Bytes())
		require.Empty(t, out.String())
	}
}

// TestEveryCommandCarriesTheCaution: its help, and what it prints of a plan.
func TestEveryCommandCarriesTheCaution(t *testing.T) {
	for _, c := range commands() {
		var out bytes.Buffer
		require.Equal(t, exitDone, run([]string{c.name, "--help"}, &out, &out))
		require.Contains(t, out.String(), cautionLines(), c.name)
	}
	shed := "../../examples/shed.toml"
	dir := t.TempDir()
	for _, args := range [][]string{
		{"count", shed},
		{"count", shed, "--by", "wall"},
		{"count", shed, "--format", "csv"},
		{"count", shed, "--order"},
		{"count", shed, "--order", "--format", "csv"},
		{"count", shed, "--lumber"},
		{"count", shed, "--lumber", "--format", "csv"},
		{"check", shed},
		{"check", shed, "--loads"},
		{"loads", shed},
		{"loads", shed, "--calculations"},
		{"model", shed},
		{"model", shed, "--json"},
		{"explain", shed, "S-16-RP-clip"},
		{"explain", shed, "--wall", "S"},
	} {
		var out, err bytes.Buffer
		run(args, &out, &err)
		require.Contains(t, out.String(), plan.Caution, args)
	}
	var out, fault bytes.Buffer
	require.Equal(t, exitDone, run([]string{"draw", shed, "--out", dir, "--sheets", "S-201"}, &out, &fault), fault.String())
	for _, file := range []string{"sheets.txt", "S-201.svg"} {
		b, err := os.ReadFile(filepath.Join(dir, file))
		require.NoError(t, err)
		require.Contains(t, string(bytes.ReplaceAll(b, []byte("&#39;"), []byte("'"))), plan.Caution, file)
	}
}

func TestSchemaNamesWhatThereIs(t *testing.T) {
	for _, name := range append(schema.Outputs(), planSchema) {
		var out bytes.Buffer
		require.Equal(t, exitDone, run([]string{"schema", name}, &out, &out))
		require.True(t, bytes.HasPrefix(out.Bytes(), []byte("{")), name)
	}
	var out bytes.Buffer
	require.Equal(t, exitUsage, run([]string{"schema", "cuont"}, &out, &out))
	require.Contains(t, out.String(), "count")
}
