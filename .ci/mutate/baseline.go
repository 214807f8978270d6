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

// test is one test of the package: how long it takes by itself, and the lines
// it comes to, first and last of each block, by base name.
type test struct {
	name  string
	time  time.Duration
	lines map[string][][2]int
}

// block is a line of a cover profile: file, the block's lines, its count.
var block = regexp.MustCompile(`(?m)^.*/([^/]+\.go):(\d+)\.\d+,(\d+)\.\d+ \d+ (\d+)$`)

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
	t = test{name, time.Since(start), map[string][][2]int{}}
	data, err := os.ReadFile(profile)
	all := map[string][][2]int{}
	for _, m := range block.FindAllStringSubmatch(string(data), -1) {
		lo, _ := strconv.Atoi(m[2])
		hi, _ := strconv.Atoi(m[3])
		b := [2]int{lo, hi}
		all[m[1]] = append(all[m[1]], b)
		if m[4] != "0" {
			t.lines[m[1]] = append(t.lines[m[1]], b)
		}
	}
	p.blocks = all
	return t, true, err
}

// reaching returns the tests that come to the mutant's line; all of them where
// the line is outside of every block, as in a table.
func (p *target) reaching(m mutant) (out []test) {
	file := filepath.Base(m.file)
	table := !within(p.blocks[file], m.line)
	for _, t := range p.tests {
		if table || within(t.lines[file], m.line) {
			out = append(out, t)
		}
	}
	return out
}

func within(blocks [][2]int, line int) bool {
	return slices.ContainsFunc(blocks, func(b [2]int) bool { return b[0] <= line && line <= b[1] })
}
