package faults_test

import (
	"flag"
	"maps"
	"os"
	"path/filepath"
	"regexp"
	"slices"
	"strings"
	"testing"

	"github.com/rogpeppe/go-internal/txtar"
	"github.com/stretchr/testify/require"

	"galewright/plan"
	"galewright/plan/faults"
	"galewright/plan/pipeline"
	"galewright/plan/read"
)

// edited applies an edit to the base plan: runs of "- " lines stand there once
// and are replaced by the "+ " lines that follow them; "+ " lines alone are
// added at the end. Comments open with "# ".
func edited(t *testing.T, base, edit string) string {
	var old, with, whole []string
	out := base
	apply := func() {
		o, w := strings.Join(old, "\n"), strings.Join(with, "\n")
		switch {
		case len(old) > 0:
			require.Equal(t, 1, strings.Count(out, o), "the base must have this once:\n%s", o)
			out = strings.Replace(out, o, w, 1)
		case len(with) > 0:
			out += w + "\n"
		}
		old, with = nil, nil
	}
	for line := range strings.Lines(edit) {
		line = strings.TrimSuffix(line, "\n")
		switch {
		case strings.HasPrefix(line, "- "):
			if len(with) > 0 {
				apply()
			}
			old = append(old, line[2:])
		case strings.HasPrefix(line, "= "):
			whole = append(whole, line[2:])
		case strings.HasPrefix(line, "+ "):
			with = append(with, line[2:])
		}
	}
	if len(whole) > 0 {
		return strings.Join(whole, "\n") + "\n"
	}
	apply()
	return out
}

// told runs a plan through all stages but drawing.
func told(file, src string) plan.Diagnostics {
	r, ds := pipeline.Run(filepath.Base(file), []byte(src), func(n string) ([]byte, error) { return os.ReadFile(filepath.Join(filepath.Dir(file), n)) })
	_, more := r.Loads()
	return append(ds, more...)
}

// guards are codes that no plan and no house is known to bring about, with
// their severity: what tells them holds against a slip of the program.
//
//   - no-way-to-lie: an item kind that goes at a joint kind without a shape
//     for it; a test of placement finds that there is none
//   - ridge-without-support: a ridge on which nothing leans that stands on a
//     plate
var guards = map[plan.Code]plan.Severity{"no-way-to-lie": plan.Error, "ridge-without-support": plan.Warning}

var update = flag.Bool("update", false, "write the examples anew")

// catalog reads a file beside the base.
func catalog(n string) ([]byte, error) { return os.ReadFile("testdata/" + n) }

// provoked runs every plan there is for a fault and notes what is told, by
// code; first comes a plan that is named for the code.
func provoked(t *testing.T) map[plan.Code]plan.Diagnostics {
	b, err := os.ReadFile("testdata/base.toml")
	require.NoError(t, err)
	base := string(b)
	require.Empty(t, told("testdata/base.toml", base), "the base is sound")
	seen := map[plan.Code]plan.Diagnostics{}
	note := func(code plan.Code, ds plan.Diagnostics) {
		own := slices.DeleteFunc(slices.Clone(ds), func(d plan.Diagnostic) bool { return d.Code != code })
		require.NotEmpty(t, own, "no %s among %v", code, ds)
		seen[code] = append(own, seen[code]...)
	}
	archive, err := txtar.ParseFile("testdata/edits.txtar")
	require.NoError(t, err)
	for _, f := range archive.Files {
		note(plan.Code(f.Name), told("testdata/base.toml", edited(t, base, string(f.Data))))
	}
	for code, text := range vast(base) {
		note(code, told("testdata/base.toml", text))
	}
	read := func(edit string) *plan.Plan {
		p, ds := read.Plan("base.toml", []byte(edited(t, base, edit)), catalog)
		require.Empty(t, ds)
		return p
	}
	for code, spoil := range made {
		p := read("")
		spoil(p)
		note(code, ofMade(p))
	}
	for code, c := range bare {
		note(code, ofBare(read(c.edit), c.bend))
	}
	for code, draw := range drawn {
		note(code, draw(t, base))
	}
	others(t, seen)
	return seen
}

// vast are plans too large, or too odd, to be written out as edits.
func vast(base string) map[plan.Code]string {
	return map[plan.Code]string{
		"encoding":  strings.Replace(base, "Invented", "Inv\xe9nted", 1),
		"too-deep":  base + "deep = " + strings.Repeat("[", 100_000),
		"too-many":  base + strings.Repeat("[[rule]]\n", 2001),
		"too-long":  strings.Replace(base, "Invented", strings.Repeat("Invented", 600), 1),
		"too-large": base + strings.Repeat("[[wall]]\nname = \"9\"\nlevel = \"second\"\nfrom = [\"0'\", \"0'\"]\nto = [\"1000'\", \"0'\"]\nstuds = \"2x4 @ 3in\"\n", 200),
	}
}

// others adds what the plans of placement and framing tell.
func others(t *testing.T, seen map[plan.Code]plan.Diagnostics) {
	for _, folder := range []string{"../placement/testdata", "../framing/testdata/odd"} {
		files, err := filepath.Glob(folder + "/*.toml")
		require.NoError(t, err)
		require.NotEmpty(t, files)
		for _, f := range files {
			src, err := os.ReadFile(f)
			require.NoError(t, err)
			for _, d := range told(f, string(src)) {
				seen[d.Code] = append(seen[d.Code], d)
			}
		}
	}
}

// Every code of the program is in the list, and the list has no other; each
// is told at least once, and its example is one that was.
func TestEveryFaultIsListedAndProvoked(t *testing.T) {
	found, seen := codes(t), provoked(t)
	var lines []string
	listed := map[plan.Code]bool{}
	for _, f := range faults.All() {
		require.False(t, listed[f.Code], "%s is listed twice", f.Code)
		listed[f.Code] = true
		require.Contains(t, found, f.Code, "the list has a code that nothing tells")
		require.NotEmpty(t, f.Means, f.Code)
		switch ds := seen[f.Code]; {
		case len(ds) == 0:
			require.Contains(t, guards, f.Code, "no plan provokes it")
			lines = append(lines, string(f.Code)+"\t"+guards[f.Code].String()+"\t")
		default:
			require.NotContains(t, guards, f.Code, "a plan provokes it")
			lines = append(lines, exampleLine(t, ds))
		}
	}
	for code, at := range found {
		require.True(t, listed[code], "%s, at %s, is not in the list of plan/faults", code, at)
	}
	slices.Sort(lines)
	if *update {
		require.NoError(t, os.WriteFile("examples.txt", []byte(strings.Join(lines, "\n")+"\n"), 0o644))
	}
	kept, err := os.ReadFile("examples.txt")
	require.NoError(t, err)
	was := strings.Split(strings.TrimSuffix(string(kept), "\n"), "\n")
	for _, line := range lines {
		require.Contains(t, was, line, "renew examples.txt with -update")
	}
	require.Len(t, was, len(lines), "renew examples.txt with -update")
}

// saysWhat finds a summary that says itself what to write.
var saysWhat = regexp.MustCompile("; write |is not one of | is not between |must be more than ")

// exampleLine is the first one told of a code, with all its severities.
func exampleLine(t *testing.T, ds plan.Diagnostics) string {
	severity := map[string]bool{}
	for _, d := range ds {
		severity[d.Severity.String()] = true
		require.True(t, d.Mend != "" || saysWhat.MatchString(d.Summary), "%s does not say how to fix it", d)
		require.NotContains(t, d.String(), "\n")
	}
	d := ds[0]
	text := d.Summary
	if d.Where != "" {
		text += " (" + d.Where + ")"
	}
	if d.Mend != "" {
		text += "; " + d.Mend
	}
	return string(d.Code) + "\t" + strings.Join(slices.Sorted(maps.Keys(severity)), " or ") + "\t" + text
}
