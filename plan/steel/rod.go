package steel

import (
	"cmp"
	"fmt"
	"math"
	"slices"

	"galewright/plan"
	"galewright/plan/framing"
	"galewright/plan/geom"
)

// Bearing is what one end of a rod pulls against.
type Bearing struct {
	Kind   BearingKind
	At     geom.Vec3       // where the nut's side of washer or seat lies
	Member *framing.Member // that a washer lies on; nil for a seat or concrete
	Washer float64         // side of a square plate, in; 0 = a cut washer
	Area   float64         // of washer on wood, less the hole, in²
	Nuts   int
}

// BearingKind says what holds the end of a rod.
type BearingKind string

// The bearings. Nothing is none: the rod ends in the air or in wood.
const (
	OnSeat   BearingKind = "seat of the body"
	OnWasher BearingKind = "washer on wood"
	CastIn   BearingKind = "cast in concrete"
	Nothing  BearingKind = "nothing"
)

// Rod is a threaded rod or bolt from bearing to bearing.
type Rod struct {
	A, B     geom.Vec3 // ends of the rod as it is cut; A the upper or outer one
	Diameter float64   // in
	Ends     [2]Bearing
	Passes   []Run // members between the bearings, from A
	// Need is the length that would reach a bearing with washer, nut and thread,
	// in; 0 where nothing on its line carries one.
	Need float64
}

// Length returns the length to cut, in.
func (r *Rod) Length() float64 { return r.B.Sub(r.A).Len() }

// Bears tells whether both ends pull against something.
func (r *Rod) Bears() bool { return r.Ends[0].Kind != Nothing && r.Ends[1].Kind != Nothing }

// Nut and Thread are what one end of a rod takes beyond the face that its
// washer lies on, in: a nut is as high as the rod is thick, a washer an
// eighth, and three turns of a coarse thread show (common practice, no
// published source).
func past(rod float64) float64 { return rod + WasherThick + 0.25 }

// WasherThick is the thickness of a washer, in: see past.
const WasherThick = 0.125

// cutWasher returns the outside diameter of a cut washer for a rod, in (ASME
// B18.21.1 type A plain, wide series, from memory).
func cutWasher(rod float64) float64 {
	for _, w := range []struct{ rod, od float64 }{{0.5, 1.375}, {0.625, 1.75}, {0.75, 2}, {0.875, 2.25}, {1, 2.5}, {1.125, 2.75}, {1.25, 3}} {
		if rod <= w.rod+1e-9 {
			return w.od
		}
	}
	return 2.5 * rod
}

// hole is how much wider than its rod a hole in wood is, in: the most that
// NDS 2018 12.1.3.2 allows for bolts (transcribed).
const hole = 1.0 / 16

// area returns what a washer bears on, in².
func area(washer, rod float64) float64 {
	d := rod + hole
	whole := washer * washer
	if washer == 0 {
		whole = math.Pi / 4 * cutWasher(rod) * cutWasher(rod)
	}
	return whole - math.Pi/4*d*d
}

// Below runs a rod down from a seat or nut at top: through all that lies
// under it to the underside of the lowest member of a role that takes a
// washer, no deeper than reach. ok is false when there is none; passed says
// what it met.
func (w *Wood) Below(top geom.Vec3, reach float64, takes func(*framing.Member) bool) (runs []Run, at int, ok bool) {
	runs = w.Through(top, top.Sub(geom.Vec3{Z: reach}))
	at = -1
	for i, r := range runs {
		if at >= 0 && r.From > runs[at].To+clear {
			break // what lies deeper is not reached from there
		}
		if takes(r.Member) {
			at = i
		}
	}
	return runs, at, at >= 0
}

// clear is the air between two members below which a rod goes on from one
// to the next, in: the depth of a floor's bay.
const clear = 14.0

// Carries tells whether a washer may bear on members of the role: girders,
// beams, headers, what is no wider than a joist only where the rod is beside
// nothing else.
func Carries(m *framing.Member) bool {
	switch m.Role {
	case plan.GirderBeam, plan.Beam, plan.Header, plan.UpperPlate, plan.TopPlate, plan.Blocking:
		return true
	}
	return false
}

// Nearest returns the member of those that satisfy want whose middle line
// comes nearest to p, and how far that is, in; nil when there is none.
func Nearest(members []*framing.Member, p geom.Vec3, want func(*framing.Member) bool) (*framing.Member, float64) {
	var near []*framing.Member
	for _, m := range members {
		if want(m) {
			near = append(near, m)
		}
	}
	if len(near) == 0 {
		return nil, 0
	}
	far := func(m *framing.Member) float64 { return segments(p, p, m.A, m.B) }
	m := slices.MinFunc(near, func(a, b *framing.Member) int { return cmp.Compare(far(a), far(b)) })
	return m, far(m)
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
