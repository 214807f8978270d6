package main

import (
	"slices"
	"strconv"
	"strings"

	"galewright/plan/schedule"

	"github.com/spf13/pflag"
)

// countFlags are the flags of count.
type countFlags struct {
	format, by, spare string
	order, lumber     bool
}

var countCommand = command{
	name: "count", args: "PLAN", short: "print the hardware schedule, the order list or the lumber list",
	long: `Counts the pieces placed, by the numbers of the legend, with their nails. With
--order it prints what to buy: pieces with spare and rounded up to packs, nails
in pounds and boxes, rods, coil rolls, install hours. With --lumber it prints
the members by size and length, cut to the yard's stock.

CSV and JSON keep these columns. A count (by wall, level or phase with that
column before them): ` + strings.Join(schedule.CountColumns(), ", ") + `;
a second fastener of an item is a row of its own with 0 pieces, so that columns
add up. The order list: ` + strings.Join(schedule.OrderColumns(), ", ") + `.
The last column of every CSV is caution, the same in each row; JSON says it once,
beside the name of its schema, which ` + "`galewright schema count`, order or lumber" + ` prints.`,
	example: "galewright count examples/shed.toml --format csv > schedule.csv",
	setup: func(f *pflag.FlagSet) func([]string, streams) error {
		var c countFlags
		f.StringVar(&c.format, "format", "table", "table, csv or json")
		f.StringVar(&c.by, "by", "item", "item, wall, level or phase")
		f.BoolVar(&c.order, "order", false, "print the order list")
		f.StringVar(&c.spare, "spare", "5%", "with --order: pieces and nails to spare")
		f.BoolVar(&c.lumber, "lumber", false, "print the lumber list")
		return func(args []string, s streams) error { return count(args, c, f, s) }
	},
}

func count(args []string, c countFlags, f *pflag.FlagSet, s streams) error {
	if err := oneOf("count: --format", c.format, schedule.Formats); err != nil {
		return err
	}
	if err := oneOf("count: --by", c.by, schedule.Keys); err != nil {
		return err
	}
	if c.order && c.lumber || (c.order || c.lumber) && f.Changed("by") {
		return usagef("count: --order, --lumber and --by are three different lists; ask for one")
	}
	if f.Changed("spare") && !c.order {
		return usagef("count: --spare belongs to --order")
	}
	spare, err := percent(c.spare)
	if err != nil {
		return err
	}
	r, err := load(args, false, s)
	if err != nil {
		return err
	}
	switch {
	case c.lumber:
		return r.Lumber().Write(s.out, c.format)
	case c.order:
		return schedule.Order(s.out, r.Schedule, spare, c.format)
	}
	return schedule.Count(s.out, r.Schedule, c.by, c.format)
}

func oneOf(what, got string, list []string) error {
	if slices.Contains(list, got) {
		return nil
	}
	return usagef("%s is %s, not %q", what, strings.Join(list, ", "), got)
}

// percent reads "5%" as 0.05.
func percent(text string) (float64, error) {
	v, err := strconv.ParseFloat(strings.TrimSuffix(text, "%"), 64)
	if err != nil || !strings.HasSuffix(text, "%") || !(v >= 0 && v <= 100) {
		return 0, usagef("count: --spare is a percentage from 0%% to 100%%, not %q", text)
	}
	return v / 100, nil
}
