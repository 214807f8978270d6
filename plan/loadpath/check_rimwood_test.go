package loadpath

import (
	"strings"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"galewright/plan"
	"galewright/plan/framing"
	"galewright/plan/nailing"
)

// The rim over wall 1W's girder lies on it over 322.5 in and is 1-1/2 in thick, southern pine
// over an open underside: Fv 175 psi (NDS 2018 Supplement Table 4B, from memory) x 1.6 of
// wind x 0.97 wet x 1.5 x 322.5 = 131,386 lb. Twice the thickness bears twice that.
func TestRimsBearTheShearAlongTheirGrain(t *testing.T) {
	wood := func(r *Report) float64 {
		l := demand(t, r, "floor to the girders, line 1W", deckShearCheck)
		for _, x := range l.Capacity.Terms {
			if strings.HasPrefix(x.Text, "the wood over") {
				return x.Value
			}
		}
		return 0
	}
	one := wood(demoReport(t))
	assert.InDelta(t, 175*1.6*0.97*1.5*322.5, one, 1)
	for _, s := range demoReport(t).Unchecked {
		assert.NotContains(t, s, "Shear within rims")
	}
}

// It is the boards' own thickness and length, dry where nothing wets them; a member that lies
// flat, and nails that are counted, have none of it.
func TestWoodAlongALineOfNails(t *testing.T) {
	a := demoReport(t).work
	rim := &framing.Member{Role: plan.Rim, Section: plan.Lumber{Ply: 1, Breadth: 1.25}}
	girder := &framing.Member{Role: plan.GirderBeam}
	plate := &framing.Member{Role: plan.BottomPlate, Section: plan.Lumber{Ply: 1, Breadth: 1.5}}
	all := places{is: func(*nailing.Spot) bool { return true }}
	l := &nailing.Line{Row: plan.RimToSupport.Row(), Spots: []*nailing.Spot{{Side: rim, Main: girder, Touch: 40}, {Side: plate, Main: girder, Touch: 100}, {Side: rim, Main: girder, Touch: 60}}}
	lb, terms := a.alongWood(l, all)
	require.Len(t, terms, 1)
	assert.InDelta(t, 175*1.6*1.25*100, lb, 1e-6)
	l.Row = plan.JoistToSupport.Row()
	lb, _ = a.alongWood(l, all)
	assert.Zero(t, lb)
}
