package framing

import (
	"fmt"
	"math"

	"galewright/plan"
	"galewright/plan/geom"
	"galewright/plan/roofplan"
	"galewright/plan/units"
)

// PlaceOnRoof says which member of a roof m is, by its number on the roof plan
// where it has one, and where a framer finds it: the side on which it comes
// down and how far along from that side's west or south end; of a hip or
// valley, where its low end is.
func (m *Member) PlaceOnRoof(u units.System) string {
	what := string(m.Role)
	if m.Role == plan.Joist {
		what = "ceiling joist"
	}
	if m.Ref != "" {
		what += " " + m.Ref
	}
	if m.Roof == nil || m.Role == plan.Ridge {
		return what
	}
	at := m.A.Flat().Sub(m.Roof.Area[0])
	d := m.B.Sub(m.A).Flat().Unit()
	level := math.Abs(m.B.Z-m.A.Z) < near
	for i, out := range [4]geom.Vec2{roofplan.Outward(0), roofplan.Outward(1), roofplan.Outward(2), roofplan.Outward(3)} {
		if !geom.Facing(d.Up(0), out.Up(0).Mul(-1)) {
			continue
		}
		along, end := at.X, "west"
		if out.Y == 0 {
			along, end = at.Y, "south"
		}
		if level {
			return fmt.Sprintf("%s, %s from the %s end", what, u.Length(along), end)
		}
		return fmt.Sprintf("%s, %s side, %s from the %s end", what, roofplan.SideNames[i], u.Length(along), end)
	}
	return fmt.Sprintf("%s, its low end %s east and %s north of the roof's southwest corner", what, u.Length(at.X), u.Length(at.Y))
}

// memberFault notes a fault of a roof at one of its members.
func (b *builder) memberFault(m *Member, s plan.Severity, code plan.Code, what, mend string) {
	b.roofFault(m.Roof, s, code, what, mend)
	b.faults[len(b.faults)-1].Where += ", " + m.PlaceOnRoof(b.plan.Project.Units)
}

// rafterFault is a fault that rafters of a roof share.
type rafterFault struct {
	severity   plan.Severity
	code       plan.Code
	what, mend string
	first      *Member
	count      int
}

// rafterFault notes a fault of a rafter; rafters with the same one are told
// together.
func (f *roofFrame) rafterFault(m *Member, s plan.Severity, code plan.Code, what, mend string) {
	for _, x := range f.shared {
		if x.first.Roof == m.Roof && x.code == code && x.what == what && x.mend == mend {
			x.count++
			return
		}
	}
	f.shared = append(f.shared, &rafterFault{s, code, what, mend, m, 1})
}

// tellShared reports the faults that rafters share, each at the first of them.
func (f *roofFrame) tellShared() {
	for _, x := range f.shared {
		f.memberFault(x.first, x.severity, x.code, x.what, x.mend)
		if x.count > 1 {
			f.faults[len(f.faults)-1].Where += fmt.Sprintf(", and %d more", x.count-1)
		}
	}
}
