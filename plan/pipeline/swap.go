package pipeline

import (
	"fmt"
	"maps"
	"slices"

	"galewright/plan"
	"galewright/plan/placement"
)

// Swap places the hardware anew with other items of the catalog in place of some,
// by their marks, wherever a rule or place asks for those. It is an error of use
// to name a mark that the catalog has not, or that nothing asks for. The result
// itself does not change.
func (r *Result) Swap(marks map[string]string) (*placement.Placement, plan.Diagnostics, error) {
	p, h := *r.House.Plan, *r.House
	h.Plan = &p
	used := map[string]bool{}
	put := func(use string) string {
		if to, ok := marks[use]; ok {
			used[use] = true
			return to
		}
		return use
	}
	p.Rules, p.Places = nil, nil
	for _, x := range r.House.Plan.Rules {
		y := *x
		y.Use = put(y.Use)
		p.Rules = append(p.Rules, &y)
	}
	for _, x := range r.House.Plan.Places {
		y := *x
		y.Use = put(y.Use)
		p.Places = append(p.Places, &y)
	}
	for _, from := range slices.Sorted(maps.Keys(marks)) {
		switch to := marks[from]; {
		case r.Catalog.Item(to) == nil:
			return nil, nil, fmt.Errorf("there is no item %q in the catalog", to)
		case !used[from]:
			return nil, nil, fmt.Errorf("no rule or place asks for %q", from)
		}
	}
	pl, faults := placement.Place(&h, r.Catalog)
	return pl, faults, nil
}
