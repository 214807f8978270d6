package pagetest

import (
	"os"
	"path/filepath"
	"strings"
	"testing"

	"galewright/plan/pipeline"
	"galewright/plan/plantest"
	"galewright/render/page"

	"github.com/stretchr/testify/require"
)

// Papers are the papers every test of whole sheets runs on.
var Papers = []string{"arch-d", "tabloid", "letter"}

// Example runs an example plan through the stages before drawing.
func Example(t testing.TB, name string) *page.Model {
	t.Helper()
	return Model(filepath.Join(exampleFolder(), name))
}

// Edited runs an example plan with strings of it replaced, old before new.
func Edited(t testing.TB, name string, edits ...string) *page.Model {
	t.Helper()
	src, err := os.ReadFile(filepath.Join(exampleFolder(), name))
	require.NoError(t, err)
	return run(name, plantest.Edit(t, src, edits...), exampleFolder())
}

// exampleFolder is the folder of example plans, seen from the package under test.
func exampleFolder() string {
	up := ".."
	for range 4 {
		if _, err := os.Stat(filepath.Join(up, "go.mod")); err == nil {
			break
		}
		up = filepath.Join(up, "..")
	}
	return filepath.Join(up, "examples")
}

// ExampleFiles returns the files of all example plans.
func ExampleFiles() (plans []string) {
	files, _ := filepath.Glob(filepath.Join(exampleFolder(), "*.toml"))
	for _, file := range files {
		src, err := os.ReadFile(file)
		if err == nil && strings.Contains(string(src), "[[wall]]") { // not a catalog
			plans = append(plans, file)
		}
	}
	return plans
}

// Model runs a plan through the stages before drawing.
func Model(file string) *page.Model {
	src, err := os.ReadFile(file)
	if err != nil {
		panic(err)
	}
	return run(file, src, filepath.Dir(file))
}

// run takes a plan through the stages; its other files are in a folder.
func run(file string, src []byte, dir string) *page.Model {
	r, faults := pipeline.Run(file, src, func(name string) ([]byte, error) { return os.ReadFile(filepath.Join(dir, name)) })
	if faults.Errors() {
		panic(faults[0].String())
	}
	return &page.Model{House: r.House, Placement: r.Placement, Schedule: r.Schedule, Salt: r.Salt}
}

// Loaded returns an example with its load path.
func Loaded(t *testing.T, name string) *page.Model {
	dir := exampleFolder()
	src, err := os.ReadFile(filepath.Join(dir, name))
	require.NoError(t, err)
	r, faults := pipeline.Run(name, src, func(n string) ([]byte, error) { return os.ReadFile(filepath.Join(dir, n)) })
	require.False(t, faults.Errors(), "%v", faults)
	loads, faults := r.Loads()
	require.NotNil(t, loads, "%v", faults)
	return &page.Model{House: r.House, Placement: r.Placement, Schedule: r.Schedule, Salt: r.Salt, Loads: loads}
}
