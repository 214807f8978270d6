package placement

import (
	"fmt"
	"slices"

	"galewright/plan"
	"galewright/plan/framing"
)

// beamUnhung is the check of what carries joists at flush beams, and beams at walls.
var beamUnhung = newCheck("beam-unhung", plan.Warning, "a joist at a flush beam, or a beam's end at a wall or another beam, without a hanger",
	"A joist that ends at a flush beam's face, and a beam that ends at a wall's or another beam's face with no post under it, hang there: without a hanger, a ledger strip, which the plan cannot say, or a bearing in the wall nothing carries them (common practice, no published source).", func(x *placer, c *Check) {
		for _, j := range x.house.Joints {
			what := "a joist"
			switch {
			case j.Kind == plan.JoistHung:
			case (j.Kind == plan.BeamEnd || j.Kind == plan.BeamHung) && !postAt(x.house, j):
				what = "a beam's end"
			default:
				continue
			}
			if !x.hung(j) {
				x.tell.at(j, "", plan.Diagnostic{
					Severity: c.Severity, Code: c.ID, Pos: beamPos(x.house, j.Members),
					Summary: what + " hangs here and has no hanger", Mend: fmt.Sprintf(`place hangers by a rule at = %q`, j.Kind),
				})
			}
		}
	})

// postReach is how far from a beam's end a post may stand that carries it, in.
const postReach = 6

// postAt tells whether a post stands under the end of the beam that is held at a joint.
func postAt(h *framing.House, j *framing.Joint) bool {
	b := beamOf(h, j.Members)
	return b != nil && slices.ContainsFunc(b.Supports, func(u framing.BeamSupport) bool {
		return u.On.Role == plan.BeamPost && u.At.Flat().Sub(j.At.Flat()).Len() < postReach
	})
}

// beamOf returns the beam of which a piece is the first among some members; nil for none.
func beamOf(h *framing.House, members []*framing.Member) *framing.Beam {
	for _, m := range members {
		for _, b := range h.Beams {
			if in(b.Pieces, m) {
				return b
			}
		}
	}
	return nil
}

// beamPos returns where the plan has the beam that is among some members.
func beamPos(h *framing.House, members []*framing.Member) plan.Pos {
	if b := beamOf(h, members); b != nil {
		return b.Pos
	}
	return plan.Pos{}
}
