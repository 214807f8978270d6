// Mutate measures what the tests of a package notice. It draws a seeded
// sample of small changes to the package (mutants), builds the package's own
// tests over each, and prints the share that a test caught and, for the rest,
// the file, the line and the change.
//
//	go run ./.ci/mutate [flags] ./plan/geom ./plan/length
//
// The tree is never touched: a mutant reaches the compiler through -overlay.
// A mutant that does not build is not counted, one that runs out of time or
// memory is caught. The same seed draws the same mutants from the same source.
package main

import (
	"flag"
	"fmt"
	"hash/fnv"
	"math/rand/v2"
	"os"
	"regexp"
	"runtime"
	"slices"
	"strings"
	"sync"
)

// options are the flags.
type options struct {
	seed   uint64
	n      int    // mutants a package
	jobs   int    // at once
	golden string // package whose tests also judge a survivor, or none
	tell   bool   // each fate as it comes, on stderr
	at     string // what file:line:column and the change must match, or empty
}

func main() {
	var o options
	flag.Uint64Var(&o.seed, "seed", 1, "draws the sample")
	flag.IntVar(&o.n, "n", 25, "mutants per package, 0 for all")
	flag.IntVar(&o.jobs, "jobs", runtime.NumCPU(), "mutants at once")
	flag.StringVar(&o.golden, "golden", "", "package whose tests also judge survivors, such as ./golden")
	flag.StringVar(&o.at, "at", "", "regular expression over file:line:column: change, such as '^coil\\.go:'")
	flag.BoolVar(&o.tell, "v", false, "tell each mutant's fate as it comes")
	flag.Parse()
	if flag.NArg() == 0 {
		flag.Usage()
		os.Exit(2)
	}
	if err := run(o, flag.Args()); err != nil {
		fmt.Fprintln(os.Stderr, "mutate:", err)
		os.Exit(1)
	}
}

func run(o options, packages []string) error {
	dir, err := os.MkdirTemp("", "mutate")
	if err != nil {
		return err
	}
	defer os.RemoveAll(dir)
	var all tally
	for _, name := range packages {
		t, err := measure(o, dir, name)
		if err != nil {
			return fmt.Errorf("%s: %w", name, err)
		}
		fmt.Printf("%-20s %s\n", name, t)
		if len(t.failed) > 0 {
			fmt.Println("    fail before any change:", strings.Join(t.failed, ", "))
		}
		for _, s := range t.survivors {
			fmt.Println("    " + s)
		}
		all.add(t)
	}
	fmt.Printf("%-20s %s\n", "all", all)
	return nil
}

// tally counts one package's mutants.
type tally struct {
	mutants, killed, golden int
	survivors, failed       []string
}

func (t *tally) add(o tally) {
	t.mutants, t.killed, t.golden = t.mutants+o.mutants, t.killed+o.killed, t.golden+o.golden
}

func (t tally) String() string {
	s := fmt.Sprintf("%4d mutants %4d killed %5.1f %%", t.mutants, t.killed, 100*float64(t.killed)/float64(max(1, t.mutants)))
	if t.golden > 0 {
		s += fmt.Sprintf(", %d more by golden", t.golden)
	}
	return s
}

// measure runs a sample of one package's mutants. It takes them in the drawn
// order, a round at a time, until n of them have built.
func measure(o options, dir, name string) (t tally, err error) {
	p, err := load(name)
	if err != nil {
		return t, err
	}
	if err := p.baseline(dir); err != nil {
		return t, err
	}
	t.failed = p.failed
	at, err := regexp.Compile(o.at)
	if err != nil {
		return t, err
	}
	drawn := slices.DeleteFunc(p.mutants(), func(m mutant) bool { return !at.MatchString(m.String()) })
	seed := fnv.New64a()
	seed.Write([]byte(p.ImportPath))
	rand.New(rand.NewPCG(o.seed, seed.Sum64())).Shuffle(len(drawn), func(i, j int) { drawn[i], drawn[j] = drawn[j], drawn[i] })
	if o.n == 0 {
		o.n = len(drawn)
	}
	for t.mutants < o.n && len(drawn) > 0 {
		round := drawn[:min(o.n-t.mutants, len(drawn))]
		drawn = drawn[len(round):]
		for i, f := range judgeAll(o, p, dir, round) {
			t.count(round[i], f)
		}
	}
	return t, nil
}

// count notes the fate of one mutant.
func (t *tally) count(m mutant, f fate) {
	if f == unbuilt {
		return
	}
	t.mutants++
	switch f {
	case killed:
		t.killed++
	case goldenKilled:
		t.golden++
		t.survivors = append(t.survivors, m.String()+"  (golden notices)")
	case uncovered:
		t.survivors = append(t.survivors, m.String()+"  (no test comes here)")
	default:
		t.survivors = append(t.survivors, m.String())
	}
}

// judgeAll finds the fates of a round's mutants, jobs at once.
func judgeAll(o options, p *target, dir string, round []mutant) []fate {
	out := make([]fate, len(round))
	slots := make(chan int, o.jobs)
	for i := range o.jobs {
		slots <- i
	}
	var wg sync.WaitGroup
	for i, m := range round {
		slot := <-slots
		wg.Go(func() {
			out[i] = p.judge(m, fmt.Sprintf("%s/%d", dir, slot), o.golden)
			if o.tell {
				fmt.Fprintln(os.Stderr, out[i], m)
			}
			slots <- slot
		})
	}
	wg.Wait()
	return out
}
