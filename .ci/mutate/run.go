package main

import (
	"bytes"
	"encoding/json"
	"errors"
	"fmt"
	"go/ast"
	"go/importer"
	"go/parser"
	"go/token"
	"go/types"
	"io"
	"os"
	"os/exec"
	"path/filepath"
	"slices"
	"strings"
	"time"
)

// fate is what became of a mutant.
type fate int

const (
	survived     fate = iota
	killed            // a test of the package failed, or did not end
	goldenKilled      // only golden noticed
	uncovered         // no test of the package runs the line
	unbuilt           // not counted
)

func (f fate) String() string {
	return [...]string{"survived", "killed", "killed by golden", "not covered", "does not build"}[f]
}

// memory is what one mutant's tests may take: a loop that a mutant keeps from
// ending may append, KiB.
const memory = 4 << 20

// target is a package under test.
type target struct {
	Dir, ImportPath           string
	GoFiles                   []string
	TestImports, XTestImports []string

	fset  *token.FileSet
	files []*ast.File
	src   map[string][]byte
	info  *types.Info

	tests  []test             // the quickest first
	blocks map[string][]block // of all code, by base name
	failed []string           // tests that fail before any change, which judge nothing
}

// load reads a package with its types.
func load(name string) (*target, error) {
	p := &target{fset: token.NewFileSet(), src: map[string][]byte{}}
	if err := goJSON(&p, "list", "-json", name); err != nil {
		return nil, err
	}
	for _, f := range p.GoFiles {
		path := filepath.Join(p.Dir, f)
		src, err := os.ReadFile(path)
		if err != nil {
			return nil, err
		}
		file, err := parser.ParseFile(p.fset, path, src, parser.SkipObjectResolution)
		if err != nil {
			return nil, err
		}
		p.files, p.src[path] = append(p.files, file), src
	}
	p.info = &types.Info{Types: map[ast.Expr]types.TypeAndValue{}, Uses: map[*ast.Ident]types.Object{}}
	conf := types.Config{Importer: importer.ForCompiler(p.fset, "gc", export)}
	_, err := conf.Check(p.ImportPath, p.fset, p.files, p.info)
	return p, err
}

// export opens the compiler's export data of a package.
func export(path string) (io.ReadCloser, error) {
	var e struct{ Export string }
	if err := goJSON(&e, "list", "-export", "-json=Export", path); err != nil {
		return nil, err
	}
	return os.Open(e.Export)
}

func goJSON(v any, args ...string) error {
	out, err := exec.Command("go", args...).Output()
	var exit *exec.ExitError
	if errors.As(err, &exit) {
		return fmt.Errorf("go %v: %s", args, exit.Stderr)
	}
	if err != nil {
		return err
	}
	return json.Unmarshal(out, v)
}

// flags are those of the test binary: stop at the first failure; property
// tests draw the same cases each time, a fifth of those that they draw by
// themselves, and neither shrink nor write a file.
func (p *target) flags() []string {
	f := []string{"-test.failfast"}
	if slices.Contains(slices.Concat(p.TestImports, p.XTestImports), "pgregory.net/rapid") {
		f = append(f, "-rapid.seed=1", "-rapid.checks=20", "-rapid.shrinktime=0s", "-rapid.nofailfile")
	}
	return f
}

// judge builds and runs the tests over one mutant; stem names its files.
func (p *target) judge(m mutant, stem, golden string) fate {
	src := p.src[m.file]
	text := slices.Concat(src[:m.from], []byte(m.text), src[m.to:])
	overlay, err := json.Marshal(map[string]any{"Replace": map[string]string{m.file: stem + ".go"}})
	must(err)
	must(os.WriteFile(stem+".go", text, 0o600))
	must(os.WriteFile(stem+".json", overlay, 0o600))
	bin := stem + ".test"
	if !build(stem, bin, p.ImportPath) {
		return unbuilt
	}
	tests := p.reaching(m)
	switch {
	case p.notice(bin, tests):
		return killed
	case golden != "" && build(stem, bin, golden) && fails(bin, golden, goldenTime, "-test.failfast"):
		return goldenKilled
	case len(tests) == 0:
		return uncovered
	}
	return survived
}

// goldenTime is how long golden may take over one mutant.
const goldenTime = 30 * time.Minute

// quick is how long a test may take to be asked in the first round; in each round
// after it four times as long.
const quick = 300 * time.Millisecond

// notice tells whether one of the tests fails: the quick ones are asked first,
// since most mutants fall to them. Tests of one round run in one process and stop at
// the first that fails, so that what they share is worked out once.
func (p *target) notice(bin string, tests []test) bool {
	for bound := quick; len(tests) > 0; bound *= 4 {
		n := slices.IndexFunc(tests, func(t test) bool { return t.time >= bound })
		if n < 0 {
			n = len(tests)
		}
		if n > 0 && p.fail(bin, tests[:n]) {
			return true
		}
		tests = tests[n:]
	}
	return false
}

// fail runs some tests of the package; they may take eight times as long as
// they did before the change.
func (p *target) fail(bin string, tests []test) bool {
	names, limit := make([]string, len(tests)), 10*time.Second
	for i, t := range tests {
		names[i], limit = t.name, limit+8*t.time
	}
	return fails(bin, p.Dir, limit, append(p.flags(), only(names...))...)
}

// only is the flag that runs the tests of these names.
func only(names ...string) string { return "-test.run=^(" + strings.Join(names, "|") + ")$" }

func build(stem, bin, pkg string) bool {
	cmd := exec.Command("go", "test", "-c", "-vet=off", "-ldflags=-s -w", "-overlay", stem+".json", "-o", bin, pkg)
	out, err := cmd.CombinedOutput()
	if err != nil && !bytes.Contains(out, []byte(".go:")) {
		must(fmt.Errorf("%w\n%s", err, out)) // not the compiler's complaint
	}
	return err == nil
}

// fails runs a test binary in a folder.
func fails(bin, dir string, limit time.Duration, flags ...string) bool {
	args := []string{"-c", fmt.Sprintf(`ulimit -v %d; exec "$@"`, memory), "sh", bin, "-test.timeout=" + limit.String()}
	cmd := exec.Command("sh", append(args, flags...)...)
	cmd.Dir = dir
	return cmd.Run() != nil
}

// must stops the tool at what is no fault of a mutant, such as a full disk.
func must(err error) {
	if err != nil {
		panic(err)
	}
}
