package wood

import (
	"fmt"

	"galewright/plan"
	"galewright/plan/framing"
	"galewright/plan/geom"
)

// Landing is how a rod comes down: what it meets, and what its lower washer
// would lie against.
type Landing struct {
	Runs []Run // all that its line meets, from its top
	At   int   // of Runs: the member that carries; -1 for none
	// Blocked is what stands where washer and nut would be; nil for nothing.
	Blocked *framing.Member
}

// Member returns the member that carries; nil for none.
func (l Landing) Member() *framing.Member {
	if l.At < 0 {
		return nil
	}
	return l.Runs[l.At].Member
}

// Deep returns how far under the rod's top the face is that its washer lies
// on, in; 0 where there is none.
func (l Landing) Deep() float64 {
	if l.At < 0 {
		return 0
	}
	return l.Runs[l.At].To
}

// Sill returns the run through the sill plate where that is the last on the
// line, which lies on a slab or stem wall; else its member is nil. A pier that
// stands there under a girder's end is in the wall.
func (l Landing) Sill() Run {
	for i := len(l.Runs) - 1; i >= 0; i-- {
		switch l.Runs[i].Member.Role {
		case plan.Pile:
		case plan.SillPlate:
			return l.Runs[i]
		default:
			return Run{}
		}
	}
	return Run{}
}

// OnSill tells whether the line ends in a sill plate.
func (l Landing) OnSill() bool { return l.Sill().Member != nil }

// Below runs a rod down from a seat or nut at top: through all that lies under
// it to the underside of the lowest member that takes a washer of the side, no
// deeper than reach. Washer and nut take room below that face, in.
func (w *Index) Below(top geom.Vec3, reach float64, washer Washer, room float64, takes func(*framing.Member) bool) Landing {
	l := Landing{Runs: w.Through(top, top.Sub(geom.Vec3{Z: reach})), At: -1}
	for i, r := range l.Runs {
		if l.At >= 0 && r.From > l.Runs[l.At].To+Hair {
			break // a washer has room there
		}
		if takes(r.Member) {
			l.At = i
		}
	}
	if m := l.Member(); m != nil {
		l.Blocked = w.blocks(m, top.Sub(geom.Vec3{Z: l.Deep()}), washer, room)
	}
	return l
}

// Carries tells whether the washer under a rod may bear on a member: a girder,
// beam, header, plate or blocking, but not a joist or a subfloor.
func Carries(m *framing.Member) bool {
	switch m.Role {
	case plan.GirderBeam, plan.Beam, plan.PlateBeam, plan.FlushBeam, plan.Header, plan.UpperPlate, plan.TopPlate, plan.Blocking:
		return true
	}
	return false
}

// Nearest returns the member of those that satisfy want whose middle line
// comes nearest to the line from a to b, and how far that is, in; nil when there
// is none.
func Nearest(members []*framing.Member, a, b geom.Vec3, want func(*framing.Member) bool) (near *framing.Member, far float64) {
	for _, m := range members {
		if !want(m) {
			continue
		}
		if d := geom.Apart(a, b, m.A, m.B); near == nil || d < far-geom.Eps {
			near, far = m, d
		}
	}
	return near, far
}

// Passed names what a rod meets on its way, for messages.
func Passed(runs []Run) string {
	s := ""
	for _, r := range runs {
		s += fmt.Sprintf(", %s", r.Member.Role)
	}
	if s == "" {
		return "nothing"
	}
	return s[2:]
}
