package main

import (
	"cmp"
	"fmt"
	"os"
	"os/exec"
	"path/filepath"
	"regexp"
	"slices"
	"strconv"
	"strings"
	"time"
)

// test is one test of the package: how long it takes by itself, and the blocks
// it comes to, by base name.
type test struct {
	name   string
	time   time.Duration
	blocks map[string][]block
}

// block is a piece of code that runs as a whole, from one place to another.
type block struct{ from, to place }

// place is a line and a column.
type place [2]int

func (a place) before(b place) bool { return a[0] < b[0] || a[0] == b[0] && a[1] < b[1] }

// profiled is a line of a cover profile: file, the block, its count.
var profiled = regexp.MustCompile(`(?m)^.*/([^/]+\.go):(\d+)\.(\d+),(\d+)\.(\d+) \d+ (\d+)$`)

// baseline runs each test of the package as it is, by itself: so it shows how
// long the test takes and which lines it comes to. A test that fails already
// can judge no mutant.
func (p *target) baseline(dir string) error {
	bin := filepath.Join(dir, "cover.test")
	if out, err := exec.Command("go", "test", "-c", "-cover", "-o", bin, p.ImportPath).CombinedOutput(); err != nil {
		return fmt.Errorf("tests do not build:\n%s", out)
	}
	list := exec.Command(bin, "-test.list=^(Test|Example|Fuzz)")
	list.Dir = p.Dir
	names, err := list.Output()
	if err != nil {
		return err
	}
	for _, name := range strings.Fields(string(names)) {
		t, ok, err := p.alone(bin, name, filepath.Join(dir, "cover"))
		if err != nil {
			return err
		}
		if !ok {
			p.failed = append(p.failed, name)
			continue
		}
		p.tests = append(p.tests, t)
	}
	slices.SortStableFunc(p.tests, func(a, b test) int { return cmp.Compare(a.time, b.time) })
	return nil
}

// alone runs one test and tells whether it passes.
func (p *target) alone(bin, name, profile string) (t test, ok bool, err error) {
	start := time.Now()
	if fails(bin, p.Dir, 10*time.Minute, append(p.flags(), only(name), "-test.coverprofile="+profile)...) {
		return t, false, nil
	}
	t = test{name, time.Since(start), map[string][]block{}}
	data, err := os.ReadFile(profile)
	all := map[string][]block{}
	for _, m := range profiled.FindAllStringSubmatch(string(data), -1) {
		b := block{at(m[2], m[3]), at(m[4], m[5])}
		all[m[1]] = append(all[m[1]], b)
		if m[6] != "0" {
			t.blocks[m[1]] = append(t.blocks[m[1]], b)
		}
	}
	p.blocks = all
	return t, true, err
}

func at(line, col string) (p place) {
	p[0], _ = strconv.Atoi(line)
	p[1], _ = strconv.Atoi(col)
	return p
}

// reaching returns the tests that come to the mutant. What lies in no block, as
// the condition of a case, is reached by all that come into its function; what is
// in no function, as a table, by all.
func (p *target) reaching(m mutant) (out []test) {
	file, spot := filepath.Base(m.file), place{m.line, m.col}
	here := func(b block) bool { return !spot.before(b.from) && spot.before(b.to) }
	if !slices.ContainsFunc(p.blocks[file], here) {
		here = func(b block) bool { return m.within[0] <= b.from[0] && b.to[0] <= m.within[1] }
	}
	for _, t := range p.tests {
		if m.within == [2]int{} || slices.ContainsFunc(t.blocks[file], here) {
			out = append(out, t)
		}
	}
	return out
}
