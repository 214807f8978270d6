package main

import (
	"fmt"

	"galewright/plan"
	"galewright/plan/capacity"
	"galewright/plan/pipeline"
)

// printCandidates prints what the items of the catalog would hold at a joint, by
// its name or by the tag of a piece there.
func printCandidates(r *pipeline.Result, tag string, s streams) error {
	if p := r.Placement.Piece(tag); p != nil {
		tag = p.Joint.ID
	}
	list := r.Candidates(tag)
	if len(list) == 0 {
		return usagef("explain: no item of the catalog can be placed and loaded at %q; --candidates takes the tag of a piece or the name of a joint with a demand", tag)
	}
	fmt.Fprintf(s.out, "%s\n\nItems of the catalog tried at joint %s, by their usual face, one at a time, in place of what is there; ASD, lb. The engineer of record chooses.\n", plan.Caution, tag)
	fmt.Fprintf(s.out, "  %-22s %9s %9s %7s\n", "mark", "demand", "capacity", "ratio")
	for _, c := range list {
		if c.Gap != "" {
			fmt.Fprintf(s.out, "  %-22s %9.0f %9s %7s  %s\n", c.Mark, c.Demand, "-", "gap", c.Gap)
			continue
		}
		star := ""
		if c.Stars {
			star = capacity.Star
		}
		fmt.Fprintf(s.out, "  %-22s %9.0f %9.0f %7.2f%s\n", c.Mark, c.Demand, c.Capacity, c.Ratio, star)
	}
	_, err := fmt.Fprintf(s.out, "%s not a maker's value: computed from fasteners and rod where they are\n", capacity.Star)
	return err
}
