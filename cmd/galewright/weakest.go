package main

import (
	"strings"

	"galewright/plan/loadpath"
	"galewright/plan/pipeline"
	"galewright/render/page"
)

// printWeakest prints at which wind speeds the links of a plan are overtaken.
func printWeakest(args, swaps []string, s streams) error {
	marks, err := marksOf("loads", swaps)
	if err != nil {
		return err
	}
	r, faults, src, err := runPlan(args)
	if err != nil {
		return err
	}
	report, more := r.Loads()
	if faults = append(faults, more...); len(faults) > 0 {
		if err := src.print(s.err, faults, false); err != nil {
			return err
		}
	}
	if report == nil || faults.Errors() {
		return errFault
	}
	other, err := swapped(r, marks, src, s)
	if err != nil {
		return err
	}
	return report.WriteSpeeds(s.out, other, strings.Join(swaps, ", "))
}

// marksOf reads the items that stand for others.
func marksOf(command string, swaps []string) (map[string]string, error) {
	marks := map[string]string{}
	for _, x := range swaps {
		from, to, ok := strings.Cut(x, "=")
		if !ok || from == "" || to == "" {
			return nil, usagef("%s: --swap %q is not MARK=MARK", command, x)
		}
		marks[from] = to
	}
	return marks, nil
}

// storms works out the curves of a set's storm sheet.
func (d drawFlags) storms(r *pipeline.Result, loads *loadpath.Report, s streams) ([]page.Storm, error) {
	out := []page.Storm{{Name: "as planned", List: loads.Speeds("")}}
	marks, err := marksOf("draw", d.swaps)
	if err != nil {
		return nil, err
	}
	other, err := swapped(r, marks, sources{}, s)
	if err != nil {
		return nil, err
	}
	if other != nil {
		out = append(out, page.Storm{Name: "with " + strings.Join(d.swaps, ", "), List: other.Speeds("")})
	}
	return out, nil
}

// swapped returns the load path with other items in place of some; nil where none
// are asked for.
func swapped(r *pipeline.Result, marks map[string]string, src sources, s streams) (*loadpath.Report, error) {
	if len(marks) == 0 {
		return nil, nil
	}
	with, faults, err := r.Swap(marks)
	if err != nil {
		return nil, usagef("swap: %s", err)
	}
	if faults.Errors() {
		if err := src.print(s.err, faults, false); err != nil {
			return nil, err
		}
		return nil, errFault
	}
	report, _ := loadpath.Run(with)
	return report, nil
}
