package framing

import (
	"math"

	"galewright/plan"
	"galewright/plan/geom"
	"galewright/plan/roofplan"
)

// Where a wing of trusses runs into another body over no bearing wall, a girder truss of the
// wing stands across its mouth, and the trusses of the other body hang on it (common practice,
// no published source); the valley set stands on those as ever.

// wingGirder is a girder truss across the mouth of a wing.
type wingGirder struct {
	rb     *roofBody
	end    int // of the wing
	member *Member
	hung   *TrussEnd
}

// host names it as what joints are at.
func (g *wingGirder) host() string {
	return g.rb.Name + "/" + string(plan.GirderHost) + string(roofplan.SideNames[g.end])
}

// wingGirders finds the mouths of wings that no wall carries, and stands their girders.
func (f *roofFrame) wingGirders() {
	for _, rb := range f.bodies {
		if !rb.Trusses {
			continue
		}
		for _, i := range roofplan.SidesOf(f.plan.Lay) {
			if rb.body.Sides[i].RunsIn && f.openMouth(rb, i) {
				rb.girder[i] = true
				f.wingGirder(rb, i)
			}
		}
	}
}

// openMouth tells whether trusses of the body that end i of a wing runs into end over the
// mouth and find no wall there.
func (f *roofFrame) openMouth(rb *roofBody, i int) bool {
	for _, o := range f.bodies {
		side := (i + 2) % 4
		if o == rb || !o.alongRidge(side) || math.Abs(o.body.Edge(side)+rb.body.Edge(i)) > near {
			continue
		}
		for _, s := range o.trussStations() {
			if rb.spans(s, o) && !f.seated(o, side, s) {
				return true
			}
		}
	}
	return false
}

// spans tells whether the coordinate s along the ridge of another body lies between the
// outside faces of the walls that carry a wing.
func (rb *roofBody) spans(s float64, o *roofBody) bool {
	lo, hi := o.axis(rb.body.Lo), o.axis(rb.body.Hi)
	return s > lo && s < hi
}

// axis returns the coordinate of p along the body's ridge.
func (rb *roofBody) axis(p geom.Vec2) float64 {
	if rb.body.Axis == plan.AxisY {
		return p.Y
	}
	return p.X
}

// seated tells whether a bearing wall or beam crosses under the end of a truss at s, on a side.
func (f *roofFrame) seated(rb *roofBody, side int, s float64) bool {
	bottom, length := f.bottom(rb, s, rb.Rafters)
	thin := rb.thin(bottom)
	for _, x := range f.bearings(thin, []geom.Plane{thin.after(0), thin.before(length)}) {
		at := x.u0
		if roofplan.Outward(side).Dot(bottom.dir) > 0 {
			at = length - x.u1
		}
		if at < near && x.crosses(bottom) && (x.bed.wall == nil || x.bed.wall.Exterior || x.bed.wall.Bearing) {
			return true
		}
	}
	return false
}

// wingGirder stands the girder across the mouth at end i: its face flush with the end of the
// wing, so that the other body's trusses end at it.
func (f *roofFrame) wingGirder(rb *roofBody, i int) {
	section := rb.girderSection()
	c := rb.coordinate(i, -section.Width()/2)
	tops := f.trussChords(rb, c, 0)
	if len(tops) == 0 {
		return
	}
	for k := range tops {
		tops[k].half = section.Width() / 2
	}
	bottom, length := f.bottom(rb, c, section)
	m := f.addTruss(rb, plan.GirderTruss, bottom, tops, f.trussParts(rb, tops, bottom, length, false), section, length)
	f.trussJoints(m, rb, bottom, length)
	hung := &TrussEnd{Roof: rb.Roof, Side: roofplan.SideNames[i], Setback: rb.Rafters.Width() / 2, Girder: m, Mouth: true}
	f.house.TrussEnds = append(f.house.TrussEnds, hung)
	f.wings = append(f.wings, &wingGirder{rb, i, m, hung})
}

// hangOnWing joins the end of a truss at plan point p, its bottom chord's underside at z, to
// the girder truss across a wing's mouth there.
func (f *roofFrame) hangOnWing(m *Member, p geom.Vec2, z float64) bool {
	for _, g := range f.wings {
		if g.member == m || math.Abs(g.rb.body.On(g.end, p)) > near || !g.rb.body.Within(p.Sub(roofplan.Outward(g.end).Mul(near))) {
			continue
		}
		f.joints = append(f.joints, f.joint(&Joint{
			Kind: plan.JackGirder, Host: g.host(), Level: f.level, Roof: g.rb.Roof, Members: []*Member{m, g.member},
			At: p.Up(z), Station: g.rb.alongTruss(g.member, p),
		}))
		g.hung.Hung.add(m, g.rb.alongTruss(g.member, p))
		g.hung.Hung.inOrder()
		return true
	}
	return false
}
