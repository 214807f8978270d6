package schema

import (
	"embed"
	"fmt"
	"slices"
	"strings"
)

//go:embed outputs/*.json
var outputs embed.FS

// Outputs names the JSON outputs that have a schema.
func Outputs() (names []string) {
	files, err := outputs.ReadDir("outputs")
	if err != nil {
		panic(err) // embedded above: it is there
	}
	for _, f := range files {
		names = append(names, strings.TrimSuffix(f.Name(), ".json"))
	}
	return names
}

// Output returns the JSON Schema (draft 2020-12) of an output by name.
func Output(name string) ([]byte, error) {
	if !slices.Contains(Outputs(), name) {
		return nil, fmt.Errorf("no output %q has a schema; there are %s", name, strings.Join(Outputs(), ", "))
	}
	return outputs.ReadFile("outputs/" + name + ".json")
}
