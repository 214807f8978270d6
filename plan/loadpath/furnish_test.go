package loadpath

import (
	"galewright/plan"
	"galewright/plan/placement"
)

// Furnish runs a plan through the stages before the load path. The pipeline,
// which owns their order, runs the load path as well, so that tests inside this
// package cannot import it: those outside do, and set this.
var Furnish func(file string, src []byte, load func(string) ([]byte, error)) (*placement.Placement, plan.Diagnostics)
