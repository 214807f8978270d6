package main

import (
	"galewright/plan/loadpath"
	"galewright/plan/pipeline"

	"github.com/spf13/pflag"
)

var loadsCommand = command{
	name: "loads", args: "PLAN", short: "print wind basis, pressures, uplift and lateral lines",
	long: `Prints the wind basis, the pressures by zone, and the uplift and lateral forces
on each line, with every intermediate number and the table it comes from. The
numbers are preliminary and for the engineer of record.`,
	example: "galewright loads examples/shed.toml",
	setup: func(f *pflag.FlagSet) func([]string, streams) error {
		asJSON := f.Bool("json", false, "print as JSON")
		return func(args []string, s streams) error {
			r, err := load(args, *asJSON, s)
			if err != nil {
				return err
			}
			report, err := loadReport(args, r, *asJSON, s)
			if err != nil {
				return err
			}
			return report.WriteWind(s.out, textOrJSON(*asJSON))
		}
	},
}

// loadReport runs the load path and prints what it has to tell of the plan.
func loadReport(args []string, r *pipeline.Result, asJSON bool, s streams) (*loadpath.Report, error) {
	report, faults := loadpath.Run(r.Placement)
	if err := (sources{}).print(s.err, faults.Sorted(), asJSON); err != nil {
		return nil, err
	}
	if faults.Errors() {
		return nil, errFault
	}
	return report, nil
}
