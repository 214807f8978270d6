package main

import (
	"fmt"
	"slices"

	"galewright/plan"
	"galewright/plan/faults"
)

// printFaults lists the faults, or those with the code named.
func printFaults(args []string, s streams) error {
	list := faults.All()
	if len(args) > 0 {
		list = slices.DeleteFunc(list, func(f faults.Fault) bool { return string(f.Code) != args[0] })
		if len(list) == 0 {
			return usagef("keys: no message has the code %q%s", args[0], meantCode(args[0]))
		}
	}
	for i, f := range list {
		if i == 0 || f.Stage != list[i-1].Stage {
			if i > 0 {
				fmt.Fprintln(s.out)
			}
			fmt.Fprintln(s.out, f.Stage)
		}
		if _, err := fmt.Fprintf(s.out, "  %s (%s): %s\n", f.Code, f.Severity, f.Text()); err != nil {
			return err
		}
		if f.Example != "" {
			fmt.Fprintf(s.out, "    e.g. %s\n", f.Example)
		}
	}
	return nil
}

// meantCode suggests the nearest code.
func meantCode(code string) string {
	var all []string
	for _, f := range faults.All() {
		all = append(all, string(f.Code))
	}
	if near := plan.Nearest(code, all); near != "" {
		return fmt.Sprintf("; did you mean %q?", near)
	}
	return "; `galewright keys --faults` lists them"
}
