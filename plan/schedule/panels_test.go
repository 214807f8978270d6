package schedule

import (
	"testing"

	"github.com/stretchr/testify/assert"

	"galewright/plan"
	"galewright/plan/framing"
)

// A stretch of 192 in from 48, 97.125 high, edge 6 in, field 12 in, studs at 16. Four columns
// of 48, each of a panel of 96 and a strip of 1.125. As in TestSheathingNails: 62 + 18 = 80.
// A door of 38 by 82 from 102 to 140 lies in the second column, 96 to 144: of its panel's edges
// 38/6, 6 nails, are gone; around the door are 2 x 82 + 38 = 202 in more, 34 nails; of its two
// studs' field nails 2 x 38/48 x 82/12, 10: 62 - 6 + 34 - 10 = 80, and the strip's 18.
func TestPanelsAroundADoor(t *testing.T) {
	w := &plan.Wall{Name: "S", Spacing: 16, Height: 97.125, Level: &plan.Level{}, Openings: []*plan.Opening{{At: 102, Width: 38, Height: 82}}}
	h := &Sheathing{Wall: w, Shear: &plan.Shear{From: 48, To: 240, Edge: 6, Field: 12}, Own: true, Size: [2]float64{48, 96}}
	h.countOwn(&framing.House{Plan: &plan.Plan{Walls: []*plan.Wall{w}}})
	assert.Equal(t, 8, h.Panels)
	assert.Equal(t, 3*80+80+18, h.Nails)
}

// A panel that lies in an opening whole is not bought: of 48 to 144 the second column.
func TestAPanelWithinAnOpeningIsNone(t *testing.T) {
	w := &plan.Wall{Spacing: 16, Height: 96, Level: &plan.Level{}, Openings: []*plan.Opening{{At: 90, Width: 60, Height: 96}}}
	h := &Sheathing{Wall: w, Shear: &plan.Shear{From: 48, To: 144, Edge: 6, Field: 12}, Own: true, Size: [2]float64{48, 96}}
	h.countOwn(&framing.House{Plan: &plan.Plan{Walls: []*plan.Wall{w}}})
	assert.Equal(t, 1, h.Panels)
}

// Under a slope from 100 at 0 to 140 at 80 in the highest place over 0 to 40 is 120.
func TestPanelsReachUpToTheSlope(t *testing.T) {
	top := tops{height: 90, pieces: [][4]float64{{0, 100, 80, 140}, {80, 140, 160, 100}}}
	assert.InDelta(t, 120, top.highest(0, 40), 1e-9)
	assert.InDelta(t, 140, top.highest(60, 100), 1e-9)
	assert.InDelta(t, 90, top.highest(200, 240), 1e-9, "no plate there")
}
