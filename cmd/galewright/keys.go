package main

import (
	"fmt"
	"io"
	"slices"
	"strings"
	"text/tabwriter"

	"galewright/plan"
	"galewright/plan/hardware"
	"galewright/plan/placement"
	"galewright/plan/read"
	"galewright/plan/steel"

	"github.com/spf13/pflag"
)

var keysCommand = command{
	name: "keys", args: "TABLE", short: "print the keys a plan may write, with what each means",
	long: `Prints every key of a plan: its type, what it means, and its default. Name
a table, such as wall.opening, for that one alone. After [item] come the kinds of
hardware with where each goes, after [rule] the kinds of joints, after [place] the
checks on placed hardware. With --faults it prints every message there is by the
code that ends it: what it means, how to fix it, and an example; name a code for
that one alone.`,
	example: "galewright keys wall.opening",
	setup: func(f *pflag.FlagSet) func([]string, streams) error {
		codes := f.Bool("faults", false, "print the codes of messages instead; TABLE is a code then")
		return func(args []string, s streams) error {
			if *codes {
				return printFaults(args, s)
			}
			keys := read.Keys()
			if len(args) > 0 {
				keys = slices.DeleteFunc(keys, func(k read.Key) bool { return k.Table != args[0] })
				if len(keys) == 0 {
					return usagef("keys: there is no table %q; the tables are %s", args[0], strings.Join(tables(), ", "))
				}
			}
			return printKeys(keys, s)
		}
	},
}

// tables returns the names of the tables in the order a plan has them.
func tables() (list []string) {
	for _, k := range read.Keys() {
		if k.Table != "" && !slices.Contains(list, k.Table) {
			list = append(list, k.Table)
		}
	}
	return list
}

func printKeys(keys []read.Key, s streams) error {
	w := tabwriter.NewWriter(s.out, 0, 0, 2, ' ', 0)
	for i, k := range keys {
		if i == 0 || k.Table != keys[i-1].Table {
			if i > 0 {
				fmt.Fprintln(w)
			}
			fmt.Fprintln(w, heading(k.Table))
		}
		fmt.Fprintf(w, "  %s\t%s\t%s\n", k.Example, k.Type, meaning(k))
		if i == len(keys)-1 || k.Table != keys[i+1].Table {
			glossary(w, k.Table)
		}
	}
	return w.Flush()
}

// glossary tells what the words of a table mean.
func glossary(w io.Writer, table string) {
	switch table {
	case "item":
		fmt.Fprintln(w, "\nkinds of items, where they go, and when")
		for _, k := range hardware.Kinds {
			at := make([]string, len(k.On))
			for i, j := range k.On {
				at[i] = string(j)
			}
			where := "at " + strings.Join(at, ", ")
			switch {
			case k.Shape == hardware.Sheet:
				where = "counted from [[wall.shear]]"
			case len(at) == 0:
				where = "at any joint"
			}
			fmt.Fprintf(w, "  %s\t%s\t%s; %s\n", k.Name, k.Phase, k.Doc, where)
		}
	case "rule":
		fmt.Fprintln(w, "\nkinds of joints")
		for _, k := range plan.Joints {
			fmt.Fprintf(w, "  %s\t%s\t%s\n", k.Kind, k.Code, k.Doc)
		}
	case "place":
		fmt.Fprintln(w, "\nchecks on placed hardware")
		for _, c := range placement.Checks {
			fmt.Fprintf(w, "  %s\t%s\t%s\n", c.ID, c.Severity, c.Doc)
		}
		for _, c := range steel.Checks {
			fmt.Fprintf(w, "  %s\t%s\t%s\n", c.ID, c.Severity, c.Doc)
		}
	}
}

func heading(table string) string {
	if table == "" {
		return "at the top of the file"
	}
	return "[" + table + "]"
}

func meaning(k read.Key) string {
	text := k.Doc
	if len(k.Values) > 0 {
		text += ": " + strings.Join(k.Values, ", ")
	}
	if limits := k.Limits(); limits != "" {
		text += ", " + limits
	}
	switch {
	case k.Required:
		text += " (required)"
	case k.Default != "":
		text += " (default: " + k.Default + ")"
	}
	return text
}
