package main

import (
	"fmt"

	"galewright/plan"

	"github.com/spf13/pflag"
)

var checkCommand = command{
	name: "check", args: "PLAN", short: "print what is wrong with a plan; with --loads, the demand and capacity of each joint",
	long: `Reads the plan, frames it, places the hardware and prints every error and warning,
each with its line and column in the plan and how to fix it. With --loads also every
joint on the load path: demand, capacity, their ratio, what governs, and the gaps.
Exit code 1 when there are errors, or with --loads when there is a gap or a
ratio above the limit.`,
	example: "galewright check examples/shed.toml --loads --limit 1.0",
	setup: func(f *pflag.FlagSet) func([]string, streams) error {
		asJSON := f.Bool("json", false, "print as JSON")
		loads := f.Bool("loads", false, "check demand and capacity of every joint on the load path")
		limit := f.Float64("limit", 1, "with --loads: highest ratio of demand to capacity that does not fail")
		return func(args []string, s streams) error {
			if !(*limit > 0) {
				return usagef("check: --limit must be a number above 0")
			}
			if *loads {
				return checkLoads(args, *asJSON, *limit, s)
			}
			return checkPlan(args, *asJSON, s)
		}
	},
}

func checkPlan(args []string, asJSON bool, s streams) error {
	_, faults, src, err := runPlan(args)
	if err != nil {
		return err
	}
	if err := src.print(s.out, faults, asJSON); err != nil {
		return err
	}
	if !asJSON {
		fmt.Fprintf(s.out, "%s\n\n%s\n", tally(faults), plan.Caution)
	}
	if faults.Errors() {
		return errFault
	}
	return nil
}

// severities counts errors and warnings.
func severities(faults plan.Diagnostics) map[plan.Severity]int {
	n := map[plan.Severity]int{}
	for _, d := range faults {
		n[d.Severity]++
	}
	return n
}

// tally counts errors and warnings in words.
func tally(faults plan.Diagnostics) string {
	n := severities(faults)
	return plural(n[plan.Error], "error") + ", " + plural(n[plan.Warning], "warning")
}

func plural(n int, word string) string {
	if n != 1 {
		word += "s"
	}
	return fmt.Sprintf("%d %s", n, word)
}

func checkLoads(args []string, asJSON bool, limit float64, s streams) error {
	report, err := loadReport(args, asJSON, s)
	if err != nil {
		return err
	}
	failed, err := report.WriteCheck(s.out, limit, textOrJSON(asJSON))
	if err != nil {
		return err
	}
	if failed {
		return errFault
	}
	return nil
}

func textOrJSON(asJSON bool) string {
	if asJSON {
		return "json"
	}
	return "text"
}
