package loadpath

import (
	"slices"
	"testing"

	"galewright/plan"
	"galewright/plan/framing"

	"github.com/stretchr/testify/assert"
)

// Whatever has a capacity from pieces at a joint has a piece there that ties two
// members of the house together, or one to the ground: one that the joint is about
// and another. A collector's strap may lie on one plate, and what a
// porch post's base stands on is the engineer's.
func TestACapacityIsATie(t *testing.T) {
	eachExample(t, func(t *testing.T, a *analysis) {
		r := reportOf(a.placed)
		for _, l := range r.Links {
			j := l.Joint
			if j == nil || j.Kind == plan.Collector || j.Kind == plan.PostBase || l.Capacity == nil || l.Capacity.Value <= 0 || l.Capacity.Source == "ordered nailing" || len(a.placed.At(j)) == 0 {
				continue
			}
			tied := false
			for _, p := range a.placed.At(j) {
				for _, x := range a.steel.Body(p).Ties() {
					about := func(m *framing.Member) bool { return slices.Contains(j.Members, m) }
					tied = tied || about(x.A) || x.B != nil && about(x.B)
				}
			}
			assert.True(t, tied, "%s %s: %s", l.Check.ID, l.ID, l.Capacity.Governs)
		}
	})
}
