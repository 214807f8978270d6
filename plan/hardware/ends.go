package hardware

import (
	"fmt"
	"slices"
	"strings"

	"galewright/plan"
	"galewright/plan/framing"
)

// End is one place at which a piece is fastened: the end of a strap, the leg
// of a clip, the body of a hold-down, all that goes into one member. What
// force crosses a joint passes each end in turn, so each must hold it whole.
// Which fasteners are at which end is settled here, and only here.
type End struct {
	// Fasteners are those of this end alone: Count and Holes count the end,
	// Parts is 1, Part are the catalog's words ("each end", "to stud").
	plan.Fasteners
	// Role is the member it goes into as the catalog says it: "rafter",
	// "plate", "hip or valley"; "" where it names none.
	Role string
	Size Nail
	Row  int // which of the item's Fasteners it is of
}

// Into tells whether the end goes into m by the name of its role; an end that
// names none goes into any member.
func (e End) Into(m *framing.Member) bool { return e.Role == "" || e.names(m) }

// names tells whether the end's role is that of m.
func (e End) names(m *framing.Member) bool {
	if m == nil {
		return false
	}
	for _, w := range strings.Fields(e.Role) {
		switch {
		case w == "or":
		case w == "stud" && (m.Role.FullHeight() || m.Role == plan.Jack):
			return true
		case w == "truss" && m.Role.IsTruss():
			return true
		case w == "post" && (m.Role.FullHeight() || m.Role == plan.Pile):
			return true
		case strings.Contains(string(m.Role), w):
			return true
		}
	}
	return false
}

// roleOf returns the member that a part's words name: "rafter" of "to rafter".
func roleOf(part string) string {
	role, _ := strings.CutPrefix(part, "to ")
	if role == part {
		return ""
	}
	return role
}

// places returns how many ends a piece of the kind has: 2, or 1 where all its
// fasteners go into one member and a rod, a foot or nothing holds the rest; 0
// for sheathing, which is nailed all round.
func (k *Kind) places() int {
	switch {
	case k.Shape == Sheet:
		return 0
	case k.Shape == Rod || k.Name == plan.HoldDownItem || k.Name == plan.PostBaseItem:
		return 1
	}
	return 2
}

// Ends returns the ends of a piece: first the one written first, which is on
// the member held; see EndsOn.
func (it *Item) Ends() (out []End) {
	for i, f := range it.Fasteners {
		e := End{Fasteners: f, Row: i, Role: roleOf(f.Part), Size: Nail{Name: f.Nail, Diameter: f.Diameter, Length: f.Length, Coating: f.Coating}}
		if i < len(it.Nails) {
			e.Size = it.Nails[i]
		}
		n := max(f.Parts, 1)
		e.Parts = 1
		if it.Kind != nil && it.Kind.places() == 1 { // both flanges of a post base hold the one post
			e.Count, e.Holes, n = e.Count*n, e.Holes*n, 1
		}
		for range n {
			out = append(out, e)
		}
	}
	return out
}

// EndsOn returns the end on a member and the one on the other of the two that
// a piece ties: as they are written, or the other way round where their roles
// say so. A piece of one end has it on both; one without any has none.
func (it *Item) EndsOn(a, b *framing.Member) (onA, onB End) {
	ends := it.Ends()
	if len(ends) == 0 {
		return End{}, End{}
	}
	onA, onB = ends[0], ends[len(ends)-1]
	if turned(onA, onB, a, b) {
		return onB, onA
	}
	return onA, onB
}

// turned tells whether the first and last end as written are on b and a; never of two
// members of one role, as a beam that hangs on a beam, which no name tells apart.
func turned(first, last End, a, b *framing.Member) bool {
	if a != nil && b != nil && a.Role == b.Role {
		return false
	}
	return !first.names(a) && (last.names(a) || first.names(b))
}

// On returns for each of Ends which of the two members that a piece ties it
// goes into: 0 for a, the one held, or 1 for b. It agrees with EndsOn; what
// stands between the first and the last goes by its role, else into b.
func (it *Item) On(a, b *framing.Member) []int {
	ends := it.Ends()
	out := make([]int, len(ends))
	if b == nil || len(ends) == 0 {
		return out
	}
	last := len(ends) - 1
	for i, e := range ends {
		if i > 0 && !(e.names(a) && !e.names(b)) {
			out[i] = 1
		}
	}
	if turned(ends[0], ends[last], a, b) {
		out[0], out[last] = 1, 0
		if last == 0 {
			out[0] = 1
		}
	}
	return out
}

// wholes says how the kinds whose one count is shared out write it for each
// end.
var wholes = map[plan.ItemKind]struct{ part, mend string }{
	plan.ClipItem:         {"each leg", "each_leg = %d"},
	plan.HoldDownPairItem: {"each body", `part = "each body", count = %d, parts = 2`},
	plan.PostCapItem:      {"each half", `to_post and to_beam, or part = "each half", count = %d, parts = 2`},
	plan.HangerItem:       {"each half", `to_joist and to_beam, or part = "each half", count = %d, parts = 2`},
	plan.GenericItem:      {"each half", `part = "each half", count = %d, parts = 2`},
}

// share settles a count that the catalog gives for the whole of a piece with
// two ends: half is at each. An odd one cannot be, and a strap must have
// nails for its two ends.
func (v *checker) share() {
	it := v.it
	if it.Kind.places() != 2 || len(it.Fasteners) == 0 {
		return
	}
	f := &it.Fasteners[0]
	if len(it.Fasteners) == 1 && f.Parts == 1 && f.Count > 0 && (f.Part == "" || f.Part == "all") {
		v.halve(f)
		return
	}
	if n := len(it.Ends()); (it.Kind.Strap || it.Kind.Shape == Pair) && n != 2 && !v.uncounted() {
		v.fault("not-two-ends", fmt.Sprintf("%s has two ends, and its nails are given for %d", article(it.Kind.Name), n),
			"write "+fmt.Sprintf(v.whole().mend, f.Count)+", or one count for each end")
		v.atNails(f)
	}
}

// uncounted tells whether a count is missing, which has its own fault.
func (v *checker) uncounted() bool {
	return slices.ContainsFunc(v.it.Fasteners, func(f plan.Fasteners) bool { return f.Count <= 0 })
}

func (v *checker) whole() struct{ part, mend string } {
	if w, ok := wholes[v.it.Kind.Name]; ok {
		return w
	}
	return struct{ part, mend string }{"each end", "each_end = %d"}
}

// halve shares a count out over the two ends and says so.
func (v *checker) halve(f *plan.Fasteners) {
	w, n := v.whole(), f.Count
	if f.Count%2 != 0 || f.Holes%2 != 0 {
		what := fmt.Sprintf("%d fasteners", f.Count)
		if f.Count%2 == 0 {
			what = fmt.Sprintf("%d holes", f.Holes)
		}
		v.fault("odd-count", fmt.Sprintf("%s for the whole %s do not divide evenly between its two ends", what, v.it.Kind.Name),
			"say how many are at each: "+fmt.Sprintf(w.mend, (n+1)/2))
		v.atNails(f)
		return
	}
	f.Count, f.Holes, f.Parts, f.Part = n/2, f.Holes/2, 2, w.part
	v.warn("count-shared", fmt.Sprintf("%d fasteners for the whole %s are taken as %d %s", n, v.it.Kind.Name, f.Count, w.part),
		"if that is so, write "+fmt.Sprintf(w.mend, f.Count))
	v.atNails(f)
}

// atNails moves the last diagnostic to where the fasteners are written.
func (v *checker) atNails(f *plan.Fasteners) {
	if f.Pos.Line > 0 {
		v.ds[len(v.ds)-1].Pos = f.Pos
	}
}
