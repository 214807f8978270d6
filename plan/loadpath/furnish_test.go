package loadpath

import (
	"os"
	"path/filepath"
	"sync"

	"galewright/plan"
	"galewright/plan/placement"

	"github.com/stretchr/testify/require"
	"pgregory.net/rapid"
)

// Furnish runs a plan through the stages before the load path. The pipeline,
// which owns their order, runs the load path as well, so that tests inside this
// package cannot import it: those outside do, and set this.
var Furnish func(file string, src []byte, load func(string) ([]byte, error)) (*placement.Placement, plan.Diagnostics)

// examples is the folder whose plans and catalogs tests read.
var examples = filepath.Join("..", "..", "examples")

// Worked is a plan that a test binary works out once, however many tests look at it.
// All of it is only read: a test that changes a plan or a house takes Furnish.
type Worked struct {
	Placed *placement.Placement
	Faults plan.Diagnostics                   // of the stages before the load path
	Loads  func() (*Report, plan.Diagnostics) // when it is first asked for
}

// worked holds the plans that were worked out, by their text, and by placement.
var worked, workedAt sync.Map

func furnish(file, text string) (*placement.Placement, plan.Diagnostics) {
	return Furnish(file, []byte(text), func(n string) ([]byte, error) { return os.ReadFile(filepath.Join(examples, n)) })
}

// WorkOut works out the text of a plan that stands among the examples.
func WorkOut(file string, text string) *Worked {
	once, _ := worked.LoadOrStore(file+"\x00"+text, sync.OnceValue(func() *Worked { return workOut(file, text) }))
	return once.(func() *Worked)()
}

func workOut(file, text string) *Worked {
	pl, ds := furnish(file, text)
	w := &Worked{pl, ds, sync.OnceValues(func() (*Report, plan.Diagnostics) { return Run(pl) })}
	workedAt.Store(pl, w)
	return w
}

// Source is the text of an example, by the name of its file.
func Source(t require.TestingT, file string) []byte {
	src, err := os.ReadFile(filepath.Join(examples, file))
	require.NoError(t, err)
	return src
}

// placed frames and furnishes a plan, once; errors of it fail the test. Plans drawn
// at random are not kept.
func placed(t require.TestingT, text string) *placement.Placement {
	if _, drawn := t.(*rapid.T); drawn {
		return fresh(t, text)
	}
	w := WorkOut("generated.toml", text)
	sound(t, w.Faults, text)
	return w.Placed
}

// fresh is placed for a test that changes what it gets.
func fresh(t require.TestingT, text string) *placement.Placement {
	pl, ds := furnish("generated.toml", text)
	if r, drawn := t.(*rapid.T); drawn && ds.Errors() {
		r.Skip("framing refuses the plan") // not every one can stand
	}
	sound(t, ds, text)
	return pl
}

func sound(t require.TestingT, ds plan.Diagnostics, text string) {
	for _, d := range ds {
		require.NotEqual(t, "error", d.Severity.String(), "%s\n%s", d, text)
	}
}

// analyzed is the load path of a plan, worked out.
func analyzed(t require.TestingT, text string) *analysis {
	pl := placed(t, text)
	if _, kept := workedAt.Load(pl); !kept {
		return analyze(pl)
	}
	return reportOf(pl).work
}

// reportOf is the report of a placement; one that was worked out before is not worked
// out again.
func reportOf(p *placement.Placement) *Report {
	r, _ := loadsOf(p)
	return r
}

func loadsOf(p *placement.Placement) (*Report, plan.Diagnostics) {
	if w, ok := workedAt.Load(p); ok {
		return w.(*Worked).Loads()
	}
	return Run(p)
}
