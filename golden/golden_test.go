package golden

import (
	"bytes"
	"flag"
	"io"
	"os"
	"path/filepath"
	"slices"
	"strings"
	"testing"

	"galewright/plan/calculation"
	"galewright/plan/pipeline"
	"galewright/plan/schedule"
	"galewright/render"
	"galewright/render/sheet"
	"galewright/render/svg"

	"github.com/stretchr/testify/require"
)

var update = flag.Bool("update", false, "write the golden files anew")

// papers names the paper of each example's golden sheets, so that every
// series of papers is covered; the others are on arch-d.
var papers = map[string]string{"shed": "letter"}

// examples returns the names of all plans in examples/, in order.
func examples(t testing.TB) (names []string) {
	files, err := filepath.Glob("../examples/*.toml")
	require.NoError(t, err)
	for _, f := range files {
		b, err := os.ReadFile(f)
		require.NoError(t, err)
		if bytes.Contains(b, []byte("\n[project]")) || bytes.HasPrefix(b, []byte("[project]")) {
			names = append(names, strings.TrimSuffix(filepath.Base(f), ".toml"))
		}
	}
	require.NotEmpty(t, names)
	return names
}

// build runs the example through the pipeline.
func build(t testing.TB, name string) *pipeline.Result {
	r, faults := run(t, name)
	require.False(t, faults != "", "%s has faults:\n%s", name, faults)
	return r
}

// run returns the result and the errors, one a line.
func run(t testing.TB, name string) (*pipeline.Result, string) {
	file := "examples/" + name + ".toml"
	src, err := os.ReadFile("../" + file)
	require.NoError(t, err)
	r, faults := pipeline.Run(file, src, func(n string) ([]byte, error) {
		return os.ReadFile(filepath.Join("../examples", n))
	})
	var errors strings.Builder
	for _, d := range faults {
		if d.Severity.String() == "error" {
			errors.WriteString(d.String() + "\n")
		}
	}
	return r, errors.String()
}

// draw returns the sheets of an example.
func draw(t testing.TB, r *pipeline.Result, paper string) *sheet.Set {
	set, faults := render.Draw(model(r), render.Options{Paper: paper})
	require.False(t, faults.Errors(), "%v", faults)
	return set
}

// drawFiled returns the calculation sheets of an example, on arch-d.
func drawFiled(t testing.TB, r *pipeline.Result) *sheet.Set {
	set, faults := render.Draw(model(r), render.Options{Paper: "arch-d", Sheets: []string{"8xx"}})
	require.False(t, faults.Errors(), "%v", faults)
	return set
}

// model returns what the sheets of an example show, load path included where
// the plan gives a wind basis.
func model(r *pipeline.Result) *render.Model {
	loads, _ := r.Loads()
	return &render.Model{House: r.House, Placement: r.Placement, Schedule: r.Schedule, Salt: r.Salt, Loads: loads}
}

func paperOf(name string) string {
	if p, ok := papers[name]; ok {
		return p
	}
	return "arch-d"
}

// outputs returns every golden file of an example by name.
func outputs(t testing.TB, name string) map[string][]byte {
	r := build(t, name)
	out := map[string][]byte{}
	put := func(file string, write func(io.Writer) error) {
		var b bytes.Buffer
		require.NoError(t, write(&b), file)
		out[file] = b.Bytes()
	}
	set, filed := draw(t, r, paperOf(name)), drawFiled(t, r)
	for i := range filed.Sheets {
		put(filed.Sheets[i].Title.Sheet+".svg", func(w io.Writer) error { return svg.Write(w, filed, i, svg.Options{}) })
	}
	for i, s := range set.Sheets {
		put(s.Title.Sheet+".svg", func(w io.Writer) error { return svg.Write(w, set, i, svg.Options{}) })
		if keptFlat(name, s.Title.Sheet) {
			put(s.Title.Sheet+".txt", func(w io.Writer) error { return writeFlat(w, s) })
		}
	}
	put("schedule.txt", func(w io.Writer) error { return schedule.Count(w, r.Schedule, "item", "table") })
	put("schedule.csv", func(w io.Writer) error { return schedule.Count(w, r.Schedule, "item", "csv") })
	put("schedule.json", func(w io.Writer) error { return schedule.Count(w, r.Schedule, "item", "json") })
	put("by-wall.txt", func(w io.Writer) error { return schedule.Count(w, r.Schedule, "wall", "table") })
	put("order.txt", func(w io.Writer) error { return schedule.Order(w, r.Schedule, 0.05, "table") })
	put("lumber.txt", func(w io.Writer) error { return r.Lumber().Write(w, "table") })
	if report := model(r).Loads; report != nil {
		put("loads.txt", func(w io.Writer) error { return report.WriteWind(w, "text") })
		if name == jsonExample { // of the others it is long, and the sheets have it
			put("calculations.txt", func(w io.Writer) error { return calculation.New(report).Write(w, "text") })
		}
		put("check-loads.txt", func(w io.Writer) error { _, err := report.WriteCheck(w, 1, "text"); return err })
	}
	if name == jsonExample {
		for file, b := range documents(t, r) {
			out[file] = b
		}
	}
	return out
}

// TestGolden compares every output of every example with the file kept here.
func TestGolden(t *testing.T) {
	for _, name := range examples(t) {
		t.Run(name, func(t *testing.T) {
			got := outputs(t, name)
			if *update {
				write(t, name, got)
			}
			kept, err := filepath.Glob(filepath.Join(name, "*"))
			require.NoError(t, err)
			for _, f := range kept {
				require.Contains(t, got, filepath.Base(f), "%s is kept here but no longer put out", f)
			}
			for file, b := range got {
				compare(t, filepath.Join(name, file), b)
				if !isFlat(file) { // its words are those of its SVG
					requireWords(t, filepath.Join(name, file), b)
				}
			}
		})
	}
}

func write(t *testing.T, name string, files map[string][]byte) {
	require.NoError(t, os.RemoveAll(name))
	require.NoError(t, os.MkdirAll(name, 0o755))
	for file, b := range files {
		require.NoError(t, os.WriteFile(filepath.Join(name, file), b, 0o644))
	}
}

func compare(t *testing.T, file string, got []byte) {
	want, err := os.ReadFile(file)
	if !os.IsNotExist(err) {
		require.NoError(t, err)
	}
	if bytes.Equal(want, got) {
		return
	}
	at := filepath.Join(t.ArtifactDir(), filepath.Base(file))
	require.NoError(t, os.WriteFile(at, got, 0o644))
	g, w := bytes.Split(got, []byte("\n")), bytes.Split(want, []byte("\n"))
	for i := range max(len(g), len(w)) {
		if i >= len(g) || i >= len(w) || !bytes.Equal(g[i], w[i]) {
			t.Errorf("%s differs from line %d on\n got: %s\nwant: %s\nrun `go test ./golden -update` and look at the change", file, i+1, lineAt(g, i), lineAt(w, i))
			return
		}
	}
}

func lineAt(lines [][]byte, i int) string {
	if i >= len(lines) {
		return "(end)"
	}
	return string(lines[i][:min(len(lines[i]), 200)])
}

// TestSameBytesTwice draws every example twice: no order of maps, clock or
// address may show in what is written.
func TestSameBytesTwice(t *testing.T) {
	for _, name := range examples(t) {
		a, b := outputs(t, name), outputs(t, name)
		require.Equal(t, keys(a), keys(b))
		for file := range a {
			require.True(t, bytes.Equal(a[file], b[file]), "%s/%s", name, file)
		}
	}
}

func keys(m map[string][]byte) (list []string) {
	for k := range m {
		list = append(list, k)
	}
	slices.Sort(list)
	return list
}
