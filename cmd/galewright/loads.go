package main

import (
	"galewright/plan"
	"galewright/plan/calculation"
	"galewright/plan/loadpath"

	"github.com/spf13/pflag"
)

var loadsCommand = command{
	name: "loads", args: "PLAN", short: "print wind basis, pressures, uplift and lateral lines",
	long: `Prints the wind basis, the pressures by zone, and the uplift and lateral forces
on each line, with every intermediate number and the table it comes from. The
numbers are preliminary and for the engineer of record. They need no hardware:
where only hardware is at fault they are printed all the same, after the errors,
and the exit code is 1. With --weakest it prints instead at which wind speed each
link of the load path is overtaken, the first ones named; --swap shows beside it
what another item of the catalog would bring. With --calculations it prints the
calculation set that an engineer files: basis, limits, pressures, tributary widths,
dead loads, lateral lines, every link with its whole arithmetic, assumptions, what
was not checked, all sources; draw --sheets 8xx has it as sheets.`,
	example: "galewright loads examples/marsh-wren.toml --weakest --swap story-strap=coil-strap",
	setup: func(f *pflag.FlagSet) func([]string, streams) error {
		asJSON := f.Bool("json", false, "print as JSON")
		weakest := f.Bool("weakest", false, "print in which order wind overtakes the links, by its side")
		swap := f.StringSlice("swap", nil, "with --weakest: MARK=MARK, the second in place of the first; several with commas")
		whole := f.Bool("calculations", false, "print the calculation set: all of it, with the arithmetic of every link and all sources")
		return func(args []string, s streams) error {
			switch {
			case *weakest && *whole:
				return usagef("loads: --weakest or --calculations, not both")
			case *weakest && *asJSON:
				return usagef("loads: --weakest is text; without it, --json has all numbers")
			case *weakest:
				return printWeakest(args, *swap, s)
			case len(*swap) > 0:
				return usagef("loads: --swap goes with --weakest")
			}
			return printLoads(args, *asJSON, *whole, s)
		}
	},
}

// printLoads prints the loads of a plan. Errors of hardware do not keep them
// back.
func printLoads(args []string, asJSON, whole bool, s streams) error {
	r, faults, src, err := runPlan(args)
	if err != nil {
		return err
	}
	if asJSON {
		r.InUS()
	}
	loads := r.Loads
	if faults.Errors() {
		loads = r.BareLoads
	}
	report, more := loads()
	if faults = append(faults, more...); len(faults) > 0 {
		if err := src.print(s.err, faults, asJSON); err != nil {
			return err
		}
	}
	if report != nil {
		write := report.WriteWind
		if whole {
			write = calculation.New(report).Write
		}
		if err := write(s.out, textOrJSON(asJSON)); err != nil {
			return err
		}
	}
	if faults.Errors() {
		return errFault
	}
	return nil
}

// loadReport runs the plan and its load path, and prints what both have to
// tell of it: as JSON in one object, and none when there is nothing to tell.
func loadReport(args []string, asJSON bool, s streams) (*loadpath.Report, error) {
	r, faults, src, err := runPlan(args)
	if err != nil {
		return nil, err
	}
	if asJSON {
		r.InUS()
	}
	var report *loadpath.Report
	if !faults.Errors() {
		var more plan.Diagnostics
		report, more = r.Loads()
		faults = append(faults, more...)
	}
	if len(faults) > 0 {
		if err := src.print(s.err, faults, asJSON); err != nil {
			return nil, err
		}
	}
	if faults.Errors() {
		return nil, errFault
	}
	return report, nil
}
