package main

import (
	"fmt"
	"slices"
	"strings"
	"text/tabwriter"

	"galewright/plan"

	"github.com/spf13/pflag"
)

var keysCommand = command{
	name: "keys", args: "TABLE", short: "print the keys a plan may write, with what each means",
	long: `Prints every key of a plan: its type, what it means, and what is taken when it is
left out. Name a table, such as wall.opening, for that one alone.`,
	example: "galewright keys wall.opening",
	setup: func(*pflag.FlagSet) func([]string, streams) error {
		return func(args []string, s streams) error {
			keys := plan.Keys()
			if len(args) > 0 {
				keys = slices.DeleteFunc(keys, func(k plan.Key) bool { return k.Table != args[0] })
				if len(keys) == 0 {
					return usagef("keys: there is no table %q; there are %s", args[0], strings.Join(tables(), ", "))
				}
			}
			return printKeys(keys, s)
		}
	},
}

// tables returns the names of the tables in the order a plan has them.
func tables() (list []string) {
	for _, k := range plan.Keys() {
		if k.Table != "" && !slices.Contains(list, k.Table) {
			list = append(list, k.Table)
		}
	}
	return list
}

func printKeys(keys []plan.Key, s streams) error {
	w := tabwriter.NewWriter(s.out, 0, 0, 2, ' ', 0)
	table := "\x00"
	for _, k := range keys {
		if k.Table != table {
			if table != "\x00" {
				fmt.Fprintln(w)
			}
			table = k.Table
			fmt.Fprintln(w, heading(table))
		}
		fmt.Fprintf(w, "  %s\t%s\t%s\n", k.Example, k.Type, meaning(k))
	}
	return w.Flush()
}

func heading(table string) string {
	if table == "" {
		return "at the top of the file"
	}
	return "[" + table + "]"
}

func meaning(k plan.Key) string {
	text := k.Doc
	if len(k.Values) > 0 {
		text += ": " + strings.Join(k.Values, ", ")
	}
	switch {
	case k.Required:
		text += " (needed)"
	case k.Default != "":
		text += " (left out: " + k.Default + ")"
	}
	return text
}
