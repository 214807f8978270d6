package loadpath_test

import (
	"galewright/plan"
	"galewright/plan/loadpath"
	"galewright/plan/pipeline"
	"galewright/plan/placement"
)

func init() {
	loadpath.Furnish = func(file string, src []byte, load func(string) ([]byte, error)) (*placement.Placement, plan.Diagnostics) {
		r, ds := pipeline.Run(file, src, load)
		return r.Placement, ds
	}
}
