package placement

import (
	"fmt"

	"galewright/plan"
	"galewright/plan/framing"
)

// openingUnhung is the check of what carries the joists around an opening in a floor.
var openingUnhung = newCheck("floor-opening-unhung", plan.Warning, "a long header or tail joist of a floor opening without a hanger",
	"A header joist longer than 6 ft hangs in hangers from its trimmers, a tail joist longer than 12 ft in one from its header, or lies on a ledger strip, which the plan cannot say (IRC 2018 R502.10, from memory; the same in IRC 2024 R802.9, transcribed).", func(x *placer, c *Check) {
		for _, j := range x.house.Joints {
			limit, role := 0.0, "header joist"
			switch j.Kind {
			case plan.HeaderTrimmer:
				limit = framing.UnhungHeader
			case plan.TailHeader:
				limit, role = framing.UnhungTail, "tail joist"
			default:
				continue
			}
			if m := j.First(); m.Length > limit+touch && !x.hung(j) {
				x.tell.at(j, "", plan.Diagnostic{
					Severity: c.Severity, Code: c.ID, Pos: openingPos(x.house.Plan, j.Host),
					Summary: fmt.Sprintf("a %s %s long has no hanger; one longer than %s wants it", role, x.units().Length(m.Length), x.units().Length(limit)),
					Mend:    fmt.Sprintf(`place hangers by a rule at = %q`, j.Kind),
				})
			}
		}
	})

// hung tells whether a hanger is placed at a joint.
func (x *placer) hung(j *framing.Joint) bool {
	for _, p := range x.p.Pieces {
		if p.Joint == j && p.Item.Kind.Name == plan.HangerItem {
			return true
		}
	}
	return false
}

// openingPos returns where the plan has a floor opening.
func openingPos(p *plan.Plan, name string) plan.Pos {
	for _, o := range p.FloorOpenings {
		if o.Name == name {
			return o.Pos
		}
	}
	return plan.Pos{}
}
