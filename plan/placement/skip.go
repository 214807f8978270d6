package placement

import (
	"fmt"
	"slices"

	"galewright/plan"
	"galewright/plan/framing"
)

// skip takes out the straps of rules whose face another wall covers, as at each
// stud of an inside corner, and tells of them: a rule speaks of every stud of a
// wall and cannot know. What the engineer places stays, and is an error.
func (x *placer) skip() {
	for _, a := range x.asked {
		if a.rule == nil {
			continue
		}
		for _, p := range a.pieces {
			if m, face := x.coverOf(p); p.Item.Kind.Strap && ofOtherWall(m, p.Joint) {
				x.consequence(p, &plan.Diagnostic{
					Code:    "strap-skipped",
					Summary: fmt.Sprintf("the %s face is covered by wall %s: nothing is placed", face, m.Wall.Name),
					Mend:    x.freeFace(p, "no face is free there: tie these studs otherwise, or leave the joints out with except"),
				})
				a.why = fmt.Sprintf("the %s face is covered by the %s of wall %s", face, m.Role, m.Wall.Name)
			}
		}
		if a.why != "" {
			x.takeOut(a)
		}
	}
}

// ofOtherWall tells whether a member that covers a face at a joint belongs to
// another wall than those of the members that meet there.
func ofOtherWall(m *framing.Member, j *framing.Joint) bool {
	return m != nil && m.Wall != nil && m.Wall != j.Wall && standing(m) &&
		!slices.ContainsFunc(j.Members, func(o *framing.Member) bool { return o.Wall == m.Wall })
}

// takeOut takes all pieces of an ask out of the placement.
func (x *placer) takeOut(a *ask) {
	gone := func(p *Piece) bool { return slices.Contains(a.pieces, p) }
	for _, p := range a.pieces {
		delete(x.p.byTag, p.Tag)
	}
	x.p.byJoint[a.joint] = slices.DeleteFunc(x.p.byJoint[a.joint], gone)
	x.p.Pieces = slices.DeleteFunc(x.p.Pieces, gone)
	a.pieces = nil
}
