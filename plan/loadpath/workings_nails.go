package loadpath

import (
	"fmt"

	"galewright/plan/framing"
)

// bring puts uplift on a member that hangs on nails, lb ASD, and keeps where it
// comes from.
func (f *nailFlow) bring(m *framing.Member, lb float64, format string, args ...any) {
	f.load[m] += lb
	if lb > 0 {
		f.from[m] = append(f.from[m], fmt.Sprintf(format, args...)+f.a.u.Sprintf(": %.0f lb ASD", lb))
	}
}

// atLeast asks a hanging member for the largest uplift known of what ends at it.
func (f *nailFlow) atLeast(m *framing.Member, lb float64) {
	if lb > f.load[m] {
		f.from[m] = append(f.from[m], f.a.u.Sprintf("the largest uplift known of one thing that ends here is more, and is taken: %.0f lb ASD", lb))
		f.load[m] = lb
	}
}

// workings tells what comes on the member of a link.
func (f *nailFlow) workings(l *Link) []string {
	for _, m := range f.hanging() {
		if f.idOf(m) == l.ID {
			return f.from[m]
		}
	}
	return nil
}

// idOf names the link of a member that hangs on nails.
func (f *nailFlow) idOf(m *framing.Member) string { return m.ID + ", " + f.down[m][0].by() }
