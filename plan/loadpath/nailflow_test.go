package loadpath

import (
	"testing"

	"galewright/plan"
	"galewright/plan/framing"
	"galewright/plan/lift"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"
)

// rimsHeld is the flow through the demo house's nails when its rims are held
// down, with only the connections named ordered.
func rimsHeld(t *testing.T, only ...plan.Connection) (*analysis, *nailFlow) {
	t.Helper()
	pl, ds := furnish("marsh-wren.toml", string(HungOnJacks(t, Source(t, "marsh-wren.toml"))))
	require.False(t, ds.Errors(), "%v", ds)
	var kept []*plan.NailLine
	for _, l := range pl.House.Plan.Nailing {
		for _, c := range only {
			if l.At == c {
				kept = append(kept, l)
			}
		}
	}
	pl.House.Plan.Nailing = kept
	a := analyze(pl)
	ties := a.steel.Ties()
	for _, m := range a.house.Members {
		if m.Role == plan.Rim {
			ties = append(ties, lift.Tie{A: m, By: "held for the test"})
		}
	}
	return a, a.nailFlow(ties)
}

// lost returns the members of a role at which the flow's lift test ends.
func lost(a *analysis, f *nailFlow, role plan.Role) (out []*framing.Member) {
	for _, g := range f.both.Gaps(a.lifted()) {
		if g.Member.Role == role {
			out = append(out, g.Member)
		}
	}
	return out
}

// In a house that is held everywhere else, headers strapped to jacks need the
// jacks' nails or their own: with neither each jack is a gap; with either none
// is, and what carries has a load, as many places as there were gaps.
func TestHeadersHangOnJackNailsOrTheirOwn(t *testing.T) {
	a, bare := rimsHeld(t)
	jacks := lost(a, bare, plan.Jack)
	require.NotEmpty(t, jacks)
	assert.Empty(t, bare.hanging())

	a, f := rimsHeld(t, plan.JackToKing)
	assert.Empty(t, lost(a, f, plan.Jack))
	loaded := 0
	for _, m := range f.hanging() {
		if f.load[m] > least {
			assert.Equal(t, plan.Jack, m.Role, m.ID)
			loaded++
		}
	}
	assert.GreaterOrEqual(t, loaded, len(jacks))

	a, f = rimsHeld(t, plan.HeaderToKing)
	assert.Empty(t, lost(a, f, plan.Jack))
	headers := 0
	for _, m := range f.hanging() {
		if f.load[m] > least {
			assert.Equal(t, plan.Header, m.Role, m.ID)
			assert.Positive(t, f.capacity(m))
			headers++
		}
	}
	assert.Positive(t, headers)
}

// Every member that nails alone hold to the ground, and that force goes
// through, carries a load: no nailing is an edge without a ratio.
func TestEveryNailedEdgeHasALoad(t *testing.T) {
	a, f := rimsHeld(t, plan.Connections()...)
	gaps := map[*framing.Member]bool{}
	for _, g := range f.steel.Gaps(a.lifted()) {
		gaps[g.Member] = true
	}
	for _, m := range f.hanging() {
		if gaps[m] && f.both.Held(m) {
			assert.Greater(t, f.load[m], 0.0, m.ID)
		}
	}
}
