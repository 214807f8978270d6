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
	"regexp"
	"slices"
	"strconv"
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

	covered map[string][]lines // by base name
	timeout time.Duration
}

// lines are those of one block of a cover profile.
type lines struct {
	lo, hi int
	run    bool
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

// block is a line of a cover profile: file, the block's lines, its count.
var block = regexp.MustCompile(`(?m)^.*/([^/]+\.go):(\d+)\.\d+,(\d+)\.\d+ \d+ (\d+)$`)

// baseline runs the tests of the package as it is: they must pass, and show
// which lines they come to and how long a mutant may take.
func (p *target) baseline(dir string) error {
	profile := filepath.Join(dir, "cover")
	bin := filepath.Join(dir, "cover.test")
	if out, err := exec.Command("go", "test", "-c", "-cover", "-o", bin, p.ImportPath).CombinedOutput(); err != nil {
		return fmt.Errorf("tests do not build:\n%s", out)
	}
	start := time.Now()
	cmd := exec.Command(bin, append(p.flags(), "-test.coverprofile="+profile)...)
	cmd.Dir = p.Dir
	if out, err := cmd.CombinedOutput(); err != nil {
		return fmt.Errorf("tests fail before any change:\n%s", out)
	}
	p.timeout = 15*time.Second + 8*time.Since(start)
	data, err := os.ReadFile(profile)
	p.covered = map[string][]lines{}
	for _, m := range block.FindAllStringSubmatch(string(data), -1) {
		lo, _ := strconv.Atoi(m[2])
		hi, _ := strconv.Atoi(m[3])
		p.covered[m[1]] = append(p.covered[m[1]], lines{lo, hi, m[4] != "0"})
	}
	return err
}

// reached tells whether a test comes to the mutant's line. Lines outside of
// every block, as of tables, count as reached.
func (p *target) reached(m mutant) bool {
	missed := false
	for _, b := range p.covered[filepath.Base(m.file)] {
		if b.lo <= m.line && m.line <= b.hi {
			if b.run {
				return true
			}
			missed = true
		}
	}
	return !missed
}

// flags are those of the test binary: stop at the first failure; property
// tests draw the same cases each time, and neither shrink nor write a file.
func (p *target) flags() []string {
	f := []string{"-test.failfast"}
	if slices.Contains(slices.Concat(p.TestImports, p.XTestImports), "pgregory.net/rapid") {
		f = append(f, "-rapid.seed=1", "-rapid.shrinktime=0s", "-rapid.nofailfile")
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
	switch {
	case p.reached(m) && p.fails(bin, p.Dir, p.flags()):
		return killed
	case golden != "" && build(stem, bin, golden) && p.fails(bin, golden, []string{"-test.failfast"}):
		return goldenKilled
	case !p.reached(m):
		return uncovered
	}
	return survived
}

func build(stem, bin, pkg string) bool {
	cmd := exec.Command("go", "test", "-c", "-vet=off", "-ldflags=-s -w", "-overlay", stem+".json", "-o", bin, pkg)
	out, err := cmd.CombinedOutput()
	if err != nil && !bytes.Contains(out, []byte(".go:")) {
		must(fmt.Errorf("%w\n%s", err, out)) // not the compiler's complaint
	}
	return err == nil
}

// fails runs a test binary in a package's folder.
func (p *target) fails(bin, dir string, flags []string) bool {
	args := []string{"-c", fmt.Sprintf(`ulimit -v %d; exec "$@"`, memory), "sh", bin, "-test.timeout=" + p.timeout.String()}
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
