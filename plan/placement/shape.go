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

// shape gives the kth of n pieces of an ask its line in space; a fault tells
// why it cannot be had.
func (x *placer) shape(p *Piece, k, n int) *plan.Diagnostic {
	j := p.Joint
	p.gap = j.Gap
	if p.Face == "" && len(p.Item.Kind.Faces) > 0 {
		p.Face = p.Item.Kind.Faces[0]
	}
	p.toOpenFace()
	if len(j.Members) == 0 {
		return &plan.Diagnostic{Code: "joint-without-member", Summary: "no member stands at the joint", Mend: "leave the joint out with except"}
	}
	if len(j.Members) < 2 && j.Kind.Lies() == plan.LiesOver {
		return &plan.Diagnostic{
			Code: "nothing-below", Summary: fmt.Sprintf("nothing lies below the %s to tie it to: nothing is placed", j.First().Role),
			Mend: "put a joist or blocking there, or leave these joints out with except",
		}
	}
	switch p.Item.Kind.Shape {
	case hardware.Band:
		return x.flat(p, k, n)
	case hardware.Over:
		return x.over(p, k, n)
	case hardware.Rod:
		return x.rod(p, k, n)
	case hardware.Pair:
		return x.pair(p, k, n)
	}
	if p.Item.Kind.Name == plan.HoldDownItem {
		return x.holdDown(p, k, n)
	}
	return x.body(p, k, n)
}

// toOpenFace moves a piece from the top of a joint whose broken member is covered
// there, as that of a lower plate is by the upper one, to the first face that
// reaches it.
func (p *Piece) toOpenFace() {
	faces := p.Joint.Faces
	if p.onTop || p.Face != plan.Top || len(faces) == 0 || slices.Contains(faces, p.Face) {
		return
	}
	p.Face = faces[0]
	p.moved = fmt.Sprintf("moved there because the %s breaks here, and the plate over it covers its top", p.Joint.First().Role)
}

// flat lays a flat band: along the wall at plates and sills, round a corner,
// else upright.
func (x *placer) flat(p *Piece, k, n int) *plan.Diagnostic {
	switch p.Joint.Kind.Lies() {
	case plan.LiesAlong:
		return x.level(p, k, n)
	case plan.LiesRound:
		return x.corner(p, k, n)
	case plan.LiesOverRidge:
		return x.ridge(p, k, n)
	case plan.LiesAtRafter:
		return x.besideRafter(p, k, n)
	case plan.LiesToPlate:
		return x.toPlate(p, k, n)
	case plan.LiesStandalone:
		return x.standalone(p, k, n)
	case plan.LiesUpright:
		return x.upright(p, k, n)
	case plan.LiesOver:
		return x.acrossGap(p, k, n)
	}
	return noWay(p)
}

// noWay tells that a strap has no way to lie at the kind of joint.
func noWay(p *Piece) *plan.Diagnostic {
	return &plan.Diagnostic{
		Code:    "no-way-to-lie",
		Summary: fmt.Sprintf("a %s has no way to lie at a %s joint", p.Item.Kind.Name, p.Joint.Kind), Mend: "use an item of another kind there",
	}
}

// over lays a strap that goes over something.
func (x *placer) over(p *Piece, k, n int) *plan.Diagnostic {
	switch p.Joint.Kind.Lies() {
	case plan.LiesOverRidge:
		return x.ridge(p, k, n)
	case plan.LiesAtRafter:
		return x.overRafter(p, k, n)
	case plan.LiesToPlate:
		return x.overPlate(p, k, n)
	}
	return noWay(p)
}

// cut sets the piece's length: for a coil without a length of its own what
// the joint needs.
func (p *Piece) cut(gap, laps float64) float64 {
	it := p.Item
	if it.Coil <= 0 {
		return it.Length
	}
	p.Cut = it.Length
	if p.Cut == 0 {
		p.Cut = gap + laps
	}
	return p.Cut
}

// lay adds a stretch of steel.
func (p *Piece) lay(n, a, b geom.Vec3) {
	if len(p.Path) == 0 {
		p.Path = append(p.Path, a)
	}
	p.Path = append(p.Path, b)
	p.bands = append(p.bands, band{n, a, b, p.wide()})
}

// wide returns the width a piece takes on its face; where the catalog does
// not say, that of a stud's edge.
func (p *Piece) wide() float64 {
	if p.Item.Width > 0 {
		return p.Item.Width
	}
	return 1.5
}

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
func (x *placer) pick(p *Piece, m *framing.Member, z float64, k, n int) (face plan.Face, kk, nn int) {
	if p.Face != "" && p.Face != plan.Top && p.Face != plan.Through {
		return p.Face, k, n
	}
	sides := x.freeSides(p.Joint, m, z)
	if len(sides) == 0 {
		return plan.Inside, k, n
	}
	per := (n + len(sides) - 1) / len(sides)
	return sides[k/per%len(sides)], k % per, min(per, n)
}

// freeSides lists the sides of an upright that no other member covers and that
// no rough opening needs clear, the better first: away from the opening, away
// from the wall's end.
func (x *placer) freeSides(j *framing.Joint, m *framing.Member, z float64) (out []plan.Face) {
	s0, _ := span2(j, m)
	order := []plan.Face{plan.Left, plan.Right}
	if s0 <= 0.5 || m.Wall != nil && m.Opening != nil && m.Opening.At+m.Opening.Width/2 < s0 {
		order = []plan.Face{plan.Right, plan.Left}
	}
	for _, side := range order {
		if m.Wall == nil || !x.beside(m, side, z) && !inOpening(m, side, z) {
			out = append(out, side)
		}
	}
	return out
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
