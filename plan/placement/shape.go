package placement

import (
	"fmt"
	"math"
	"slices"

	"galewright/plan"
	"galewright/plan/framing"
	"galewright/plan/geom"
	"galewright/plan/hardware"
)

// shape lays a piece; a fault tells why it cannot be had.
func (x *placer) shape(w want) (Lie, *plan.Diagnostic) {
	if w.face == "" && len(w.item.Kind.Faces) > 0 {
		w.face = w.item.Kind.Faces[0]
	}
	if len(w.joint.Members) == 0 {
		return Lie{}, &plan.Diagnostic{Code: "joint-without-member", Summary: "no member stands at the joint", Mend: "leave the joint out with except"}
	}
	if len(w.joint.Members) < 2 && w.joint.Kind.Lies() == plan.LiesOver {
		return Lie{}, &plan.Diagnostic{
			Code: "nothing-below", Summary: fmt.Sprintf("nothing lies below the %s to tie it to: nothing is placed", w.joint.First().Role),
			Mend: "put a joist or blocking there, or leave these joints out with except",
		}
	}
	if w.seatedLast() {
		return Lie{}, nil
	}
	w, moved := w.toOpenFace()
	l, fault := x.lie(w)
	if fault != nil {
		return l, fault
	}
	if moved != "" {
		l.Moved = moved
	}
	return w.whole(l)
}

// lie is the choice of a shape.
func (x *placer) lie(w want) (Lie, *plan.Diagnostic) {
	switch w.item.Kind.Shape {
	case hardware.Band:
		return x.flat(w)
	case hardware.Over:
		return x.over(w)
	case hardware.Rod:
		return x.rod(w)
	case hardware.Pair:
		return x.pair(w)
	}
	if w.item.Kind.Name == plan.HoldDownItem {
		return x.holdDown(w)
	}
	return x.body(w)
}

// toOpenFace moves a piece from the top of a joint whose broken member is covered
// there, as that of a lower plate is by the upper one, to the first face that
// reaches it, and says so.
func (w want) toOpenFace() (want, string) {
	faces := w.joint.Faces
	if w.onTop || w.face != plan.Top || len(faces) == 0 || slices.Contains(faces, w.face) {
		return w, ""
	}
	return w.on(faces[0]), fmt.Sprintf("moved there because the %s breaks here, and the plate over it covers its top", w.joint.First().Role)
}

// flat lays a flat band: along the wall at plates and sills, round a corner,
// else upright.
func (x *placer) flat(w want) (Lie, *plan.Diagnostic) {
	if ofDormer(w.joint) {
		return x.dormerFace(w)
	}
	switch w.joint.Kind.Lies() {
	case plan.LiesAlong:
		return x.level(w)
	case plan.LiesRound:
		return x.corner(w)
	case plan.LiesOverRidge:
		return x.ridge(w)
	case plan.LiesAtRafter:
		return x.besideRafter(w)
	case plan.LiesToPlate:
		return x.toPlate(w)
	case plan.LiesStandalone:
		return x.standalone(w)
	case plan.LiesUpright:
		return x.upright(w)
	case plan.LiesOver:
		return x.acrossGap(w)
	}
	return noWay(w)
}

// noWay tells that a piece has no way to lie at the kind of joint, or on the
// face asked for there.
func noWay(w want) (Lie, *plan.Diagnostic) {
	on := ""
	if w.face != "" {
		on = fmt.Sprintf(" on the %s face", w.face)
	}
	return Lie{}, &plan.Diagnostic{
		Code:    "no-way-to-lie",
		Summary: fmt.Sprintf("a %s has no way to lie%s at a %s joint", w.item.Kind.Name, on, w.joint.Kind), Mend: "use another face, or an item of another kind there",
	}
}

// over lays a strap that goes over something.
func (x *placer) over(w want) (Lie, *plan.Diagnostic) {
	switch w.joint.Kind.Lies() {
	case plan.LiesOverRidge:
		return x.ridge(w)
	case plan.LiesAtRafter:
		return x.overRafter(w)
	case plan.LiesToPlate:
		return x.overPlate(w)
	}
	return noWay(w)
}

// cut returns the length of the steel and what of it is cut from a coil, 0
// for none: for a coil without a length of its own what the joint needs.
func (w want) cut(gap, laps float64) (total, cut float64) {
	it := w.item
	if it.Coil <= 0 {
		return it.Length, 0
	}
	if it.Length > 0 {
		return it.Length, it.Length
	}
	return gap + laps, gap + laps
}

// wide returns the width a piece takes on its face, in.
func (p *Piece) wide() float64 { return p.Item.Across() }

// onWall returns the joint's frame and wall depth.
func onWall(j *framing.Joint) (geom.Frame, float64, *plan.Diagnostic) {
	if j.Wall == nil {
		return geom.Frame{}, 0, &plan.Diagnostic{
			Code:    "joint-off-wall",
			Summary: fmt.Sprintf("a %s joint of %s has no wall for this item", j.Kind, j.Host), Mend: "use an item that goes at joints without a wall",
		}
	}
	return j.Wall.Frame(), j.Wall.Depth(), nil
}

// pick resolves a face for an upright member: "" takes the side that is
// free, an "inside" or "outside" stays, and of two at one joint the second
// goes to the other side.
func (x *placer) pick(w want, m *framing.Member, z float64) want {
	if w.face != "" && w.face != plan.Top && w.face != plan.Through {
		return w
	}
	sides := x.freeSides(w.joint, m, z)
	if len(sides) == 0 {
		return w.on(plan.Inside)
	}
	per := (w.n + len(sides) - 1) / len(sides)
	if per == 1 && len(sides) > 1 { // one on each side, beside each other in depth: their nails do not meet
		return w.on(sides[w.k%len(sides)])
	}
	w.face, w.k, w.n = sides[w.k/per%len(sides)], w.k%per, min(per, w.n)
	return w
}

// freeSides lists the sides of an upright that no other member covers and that
// no rough opening needs clear, the better first: away from the opening, away
// from the wall's end.
func (x *placer) freeSides(j *framing.Joint, m *framing.Member, z float64) (out []plan.Face) {
	order := []plan.Face{plan.Left, plan.Right}
	if x.rightFirst(j, m) {
		order = []plan.Face{plan.Right, plan.Left}
	}
	for _, side := range order {
		if m.Wall == nil || !x.beside(m, side, z) && !inOpening(m, side, z) {
			out = append(out, side)
		}
	}
	return out
}

// rightFirst tells whether the right side of an upright is the better one: the left one is,
// and in a mirrored house the right one, but at the end of the wall and beside an opening.
func (x *placer) rightFirst(j *framing.Joint, m *framing.Member) bool {
	s0, s1 := breadthAt(j, m)
	mid, opening := 0.0, m.Wall != nil && m.Opening != nil
	if opening {
		mid = m.Opening.At + m.Opening.Width/2
	}
	if !x.house.Plan.Lay.Mirrored {
		return s0 <= 0.5 || opening && mid < s0
	}
	end := math.Inf(1)
	if j.Wall != nil {
		end = j.Wall.Length() + j.Wall.Past
	}
	return end-s1 > 0.5 && !(opening && mid > s1)
}

// first is the side that is taken where nothing else decides.
func (x *placer) first() plan.Face {
	if x.house.Plan.Lay.Mirrored {
		return plan.Right
	}
	return plan.Left
}

// inOpening tells whether a side of an upright is the edge of its rough
// opening at height z: a window or door goes there.
func inOpening(m *framing.Member, side plan.Face, z float64) bool {
	o := m.Opening
	if o == nil || m.Wall == nil {
		return false
	}
	foot := m.Wall.Level.Floor + o.Sill
	if z < foot || z > foot+o.Height {
		return false
	}
	if side == plan.Left {
		return math.Abs(m.S0-o.At-o.Width) < touch
	}
	return math.Abs(m.S1-o.At) < touch
}

// role returns the first member of the joint with one of the roles, or nil.
func role(j *framing.Joint, roles ...plan.Role) *framing.Member {
	for _, r := range roles {
		for _, m := range j.Members {
			if m.Role == r {
				return m
			}
		}
	}
	return nil
}

// plates returns the height of the top of the two plates over what stands at
// the joint, and the highest plate the joint names. Where the plates slope,
// as on a rake wall, the height is that over the member.
func plates(j *framing.Joint) (top float64, plate *framing.Member) {
	for _, m := range j.Members {
		if (m.Role == plan.TopPlate || m.Role == plan.UpperPlate) && (plate == nil || m.Z1 > top) {
			top, plate = m.Z1, m
		}
	}
	if plate == nil {
		return j.At.Z, nil
	}
	thick := plate.Section.Breadth
	if run := plate.B.Sub(plate.A); math.Abs(run.Z) > touch {
		k := run.Len() / math.Max(run.Flat().Len(), touch)
		if j.Kind.Lies() == plan.LiesAtRafter {
			return j.At.Z, plate
		}
		return stud(j).Z1 + 2*thick*k, plate
	}
	if plate.Role == plan.TopPlate && j.Wall != nil && j.Level != nil {
		// The upper plate lies on the lower one even where the joint names
		// only the plate the stud meets.
		top += thick
	}
	return top, plate
}
