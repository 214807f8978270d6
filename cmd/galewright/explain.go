package main

import (
	"cmp"
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
the tag of a piece as sheets and check sheets print it, the name of a joint, or that
of any link in check --loads and loads --weakest: deck-main for the deck of a roof,
deck-main-3 for one of its zones, panel-1S-A for a segment's panels, "1S/A, bottom
plate", "floor to the girders, line 1W"; "line 1W" for all that hangs on a line. With
--wall it lists the joints of a wall that have no hardware, with --candidates the
items of the catalog that could be at a joint, each with the ratio it would have:
the engineer chooses.`,
	example: "galewright explain examples/shed.toml S-16-RP-clip",
	setup: func(f *pflag.FlagSet) func([]string, streams) error {
		wall := f.String("wall", "", "list the joints of this wall that have no hardware")
		candidates := f.Bool("candidates", false, "try the items of the catalog that belong at the joint")
		return func(args []string, s streams) error {
			switch {
			case *candidates && (*wall != "" || len(args) < 2):
				return usagef("explain: --candidates takes the plan and a tag or joint")
			case len(args) < 1 || *wall == "" && len(args) < 2:
				return usagef("explain: name the plan and a tag, or the plan and --wall NAME")
			case *wall != "" && len(args) > 1:
				return usagef("explain: give a tag or --wall, not both")
			}
			r, fault := load(args, false, s)
			if fault != nil && (r == nil || r.Placement == nil) {
				return fault
			}
			if *candidates {
				return cmp.Or(printCandidates(r, args[1], s), fault)
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
	if err != nil && wall == "" {
		if known, fault := explainLoad(r, args[1], s); known || fault != nil {
			_, err = fmt.Fprintf(s.out, "\n%s\n", plan.Caution)
			return cmp.Or(fault, err)
		}
	}
	if err != nil {
		return usagef("explain: %s%s", err, likelyLink(r, args[1:]))
	}
	if _, err := fmt.Fprint(s.out, text); err != nil {
		return err
	}
	if wall == "" {
		if r.Steel != nil {
			if _, err := fmt.Fprint(s.out, r.Steel.Explain(args[1])); err != nil {
				return err
			}
		}
		if err := explainSalt(r, args[1], s); err != nil {
			return err
		}
		if _, err := explainLoad(r, args[1], s); err != nil {
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

// explainLoad prints the arithmetic of the joint that tag names or belongs to,
// and tells whether the load path has it.
// What the load path has to tell of the plan is for check and loads to print.
func explainLoad(r *pipeline.Result, tag string, s streams) (known bool, err error) {
	if p := r.Placement.Piece(tag); p != nil {
		tag = p.Joint.ID
	}
	report, faults := r.Loads()
	if report == nil {
		return false, (sources{}).print(s.err, faults, false)
	}
	text := report.Explain(tag)
	if text == "" {
		return false, nil
	}
	_, err = fmt.Fprintf(s.out, "\n%s%s", text, source.Key(text))
	return true, err
}

// likelyLink suggests the link of the load path that was meant, "" where none is
// like it.
func likelyLink(r *pipeline.Result, name []string) string {
	report, _ := r.Loads()
	if report == nil || len(name) == 0 {
		return ""
	}
	var names []string
	for _, l := range report.Links {
		if l.Joint == nil || l.ID != l.Joint.ID {
			names = append(names, l.ID)
		}
	}
	if n := plan.Nearest(name[0], names); n != "" {
		return fmt.Sprintf("; or the link %q?", n)
	}
	return "; links of the load path are named in check --loads"
}
