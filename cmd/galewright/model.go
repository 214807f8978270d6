package main

import (
	"galewright/plan"
	"galewright/plan/loadpath"
	"galewright/plan/model"

	"github.com/spf13/pflag"
)

var modelCommand = command{
	name: "model", args: "PLAN", short: "print members and hardware in space, for another program to check",
	long: `Prints the house as it stands: members as solids, joints, every piece with its
plates, each fastener from head to tip with the length in each member, rods with
what they pass and bear on, and the ties of the lift test. Without --json it only
says how many of each there are. ` + "`galewright schema model`" + ` prints what each
key means. All lengths are in inches, whatever units the plan is in: x and y on plan,
z above grade.`,
	example: "galewright model examples/shed.toml --json > shed.json",
	setup: func(f *pflag.FlagSet) func([]string, streams) error {
		asJSON := f.Bool("json", false, "print the model as JSON")
		return func(args []string, s streams) error {
			m, err := loadModel(args, *asJSON, s)
			if err != nil {
				return err
			}
			if *asJSON {
				return m.JSON(s.out)
			}
			return m.Text(s.out)
		}
	},
}

// loadModel runs the plan; one without a wind basis has a model without
// uplift, and its faults say why.
func loadModel(args []string, asJSON bool, s streams) (*model.Model, error) {
	r, faults, src, err := runPlan(args)
	if err != nil {
		return nil, err
	}
	if asJSON {
		r.InUS()
	}
	var loads *loadpath.Report
	if !faults.Errors() {
		var more plan.Diagnostics
		loads, more = loadpath.RunOn(r.Steel)
		for _, d := range more.Sorted() {
			d.Severity = plan.Warning // the model is whole without loads
			faults = append(faults, d)
		}
	}
	if len(faults) > 0 {
		if err := src.print(s.err, faults, asJSON); err != nil {
			return nil, err
		}
	}
	if faults.Errors() {
		return nil, errFault
	}
	return model.New(r.Schedule, loads), nil
}
