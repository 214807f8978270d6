package framing

import (
	"fmt"
	"math"
	"slices"

	"galewright/plan"
	"galewright/plan/geom"
	"galewright/plan/roofplan"
)

// ladder is the outlookers of one slope of one gable overhang.
type ladder struct {
	owner     *roofBody
	end, side int     // of the body: the gable, and the eave below the slope
	flush     float64 // coordinate of the end rafter's or gable truss's middle
	open      bool    // no wall below: rungs between the end rafter and the fly rafter
	lo, hi    float64 // the fly rafter's ends, up the slope on plan from the eave wall's face
	rungs     []*rung
}

// rung is one outlooker, and how far up the slope on plan from the eave wall's
// outside face its middle lies, in.
type rung struct {
	member *Member
	up     float64
}

// host names the overhang: "main/rakeSW" is that of the west gable's south
// slope.
func (l *ladder) host() string {
	a, z := roofplan.SideNames[l.side], roofplan.SideNames[l.end]
	if l.side == roofplan.East || l.side == roofplan.West { // north or south comes first
		a, z = z, a
	}
	return fmt.Sprintf("%s/rake%s%s", l.owner.Name, a, z)
}

// rakeJoints ties the outlookers of gable overhangs: each to the rafter that
// its inner end meets and to the end rafter or gable truss that it passes over,
// and the fly rafter to each of them.
func (f *roofFrame) rakeJoints() {
	for _, l := range f.ladders {
		var ups []float64
		for _, r := range l.rungs {
			ups = append(ups, r.up)
		}
		for _, r := range l.rungs {
			f.rungJoints(l, r, shareOf(ups, r.up, l.lo, l.hi))
		}
	}
}

// rungJoints adds the joints of one outlooker, which serves space inches up
// the slope.
func (f *roofFrame) rungJoints(l *ladder, r *rung, space float64) {
	m := r.member
	d := m.B.Sub(m.A).Unit() // level, from the inner end out
	normal := m.FlatTop()
	mid := func(p geom.Vec3) geom.Vec3 { return p.Sub(normal.Mul(m.Section.Breadth / 2)) }
	over := m.A.Add(d.Mul(math.Abs(l.flush - m.A.Flat().Dot(d.Flat())*sign(d))))
	inner := f.across(mid(m.A.Sub(d.Mul(near))), plan.Rafter, plan.Truss, plan.HipTruss, plan.GirderTruss)
	fly := f.across(mid(m.B.Add(d.Mul(near))), plan.FlyRafter)
	half := l.owner.Rafters.Width() / 2
	o := &Overhang{Space: space, Out: m.B.Sub(over).Len() + 2*half}
	if l.open {
		o.Out = m.Length + 3*half
	} else {
		o.Back = over.Sub(m.A).Len() + half
		below := over.Sub(normal.Mul(m.Section.Breadth + near))
		f.endJoint(l, r, plan.OutlookerGable, mid(over), o, m, f.across(below, plan.Rafter, plan.Truss))
	}
	f.endJoint(l, r, plan.OutlookerRafter, mid(m.A), o, m, inner)
	f.endJoint(l, r, plan.FlyOutlooker, mid(m.B), o, fly, m)
}

// sign returns 1 or -1 as a level direction along x or y grows or falls.
func sign(d geom.Vec3) float64 { return math.Copysign(1, d.X+d.Y) }

// FlatTop returns the normal of the upper broad face of a member laid flat, such
// as an outlooker, unit: square to its thickness, up.
func (m *Member) FlatTop() (n geom.Vec3) {
	for _, p := range m.Solid[0].Planes() {
		q := p.N.Unit()
		if lo, hi := m.Solid[0].Along(q); q.Z > n.Z && hi-lo < m.Section.Breadth+geom.Eps {
			n = q
		}
	}
	return n
}

// across returns the member of one of the roles whose body holds p, or nil.
func (f *roofFrame) across(p geom.Vec3, roles ...plan.Role) *Member {
	for _, m := range f.index.Within(p, p) {
		if slices.Contains(roles, m.Role) && slices.ContainsFunc(m.Solid, func(s geom.Solid) bool { return surrounds(s, p) }) {
			return m
		}
	}
	return nil
}

// surrounds tells whether a solid has a point in it.
func surrounds(s geom.Solid, p geom.Vec3) bool {
	return !slices.ContainsFunc(s.Planes(), func(q geom.Plane) bool { return q.N.Dot(p) > q.C })
}

// endJoint adds one joint of an overhang, unless one of its members is not
// there.
func (f *roofFrame) endJoint(l *ladder, r *rung, k plan.JointKind, at geom.Vec3, o *Overhang, members ...*Member) {
	for _, m := range members {
		if m == nil {
			return
		}
	}
	f.joint(&Joint{
		Kind: k, Host: l.host(), Level: f.level, Roof: l.owner.Roof, Station: r.up, Members: members,
		At: at, Below: true, Tributary: o.Space, Overhang: o,
	})
}
