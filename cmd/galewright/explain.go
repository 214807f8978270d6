package main

import (
	"fmt"

	"galewright/plan"
	"galewright/plan/pipeline"
	"galewright/plan/source"

	"github.com/spf13/pflag"
)

var explainCommand = command{
	name: "explain", args: "PLAN TAG", short: "explain why a piece is there, or why none is",
	long: `Explains one piece or one joint: the joint and the members it ties,
the rules that matched, with their lines in the plan, which of them was used and
why the others were not, and the arithmetic of its demand and capacity. TAG is
the tag of a piece as sheets and check sheets print it, or the name of a joint. With
--wall it lists the joints of a wall that have no hardware.`,
	example: "galewright explain examples/shed.toml S-16-RP-clip",
	setup: func(f *pflag.FlagSet) func([]string, streams) error {
		wall := f.String("wall", "", "list the joints of this wall that have no hardware")
		return func(args []string, s streams) error {
			switch {
			case len(args) < 1 || *wall == "" && len(args) < 2:
				return usagef("explain: name the plan and a tag, or the plan and --wall NAME")
			case *wall != "" && len(args) > 1:
				return usagef("explain: give a tag or --wall, not both")
			}
			r, fault := load(args, false, s)
			if fault != nil && (r == nil || r.Placement == nil) {
				return fault
			}
			if err := explain(r, args, *wall, s); err != nil {
				return err
			}
			return fault // a piece at fault is explained all the same
		}
	},
}

func explain(r *pipeline.Result, args []string, wall string, s streams) (err error) {
	var text string
	if wall != "" {
		text, err = r.Placement.ExplainWall(wall)
	} else {
		text, err = r.Placement.Explain(args[1])
	}
	if err != nil {
		return usagef("explain: %s", err)
	}
	if _, err := fmt.Fprint(s.out, text); err != nil {
		return err
	}
	if wall == "" {
		if err := explainSalt(r, args[1], s); err != nil {
			return err
		}
		if err := explainLoad(r, args[1], s); err != nil {
			return err
		}
	}
	_, err = fmt.Fprintf(s.out, "\n%s\n", plan.Caution)
	return err
}

// explainSalt prints the class of the place that a piece is in, its coatings
// and the treated wood it meets; of a joint, those of each of its pieces.
func explainSalt(r *pipeline.Result, tag string, s streams) error {
	if r.Salt == nil {
		return nil
	}
	for _, p := range r.Placement.Pieces {
		if p.Tag != tag && p.Joint.ID != tag {
			continue
		}
		text := r.Salt.Explain(p)
		if _, err := fmt.Fprintf(s.out, "\n%s%s", text, source.Key(text)); err != nil {
			return err
		}
	}
	return nil
}

// explainLoad prints the arithmetic of the joint that tag names or belongs to.
// What the load path has to tell of the plan is for check and loads to print.
func explainLoad(r *pipeline.Result, tag string, s streams) error {
	if p := r.Placement.Piece(tag); p != nil {
		tag = p.Joint.ID
	}
	report, faults := r.Loads()
	if report == nil {
		return (sources{}).print(s.err, faults, false)
	}
	text := report.Explain(tag)
	if text == "" {
		return nil
	}
	_, err := fmt.Fprintf(s.out, "\n%s%s", text, source.Key(text))
	return err
}
