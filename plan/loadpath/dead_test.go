package loadpath

import (
	"testing"

	"galewright/plan"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"
)

// weighed returns the line of a part whose source is the panels'.
func weighed(t *testing.T, d *deadLoads, part plan.DeadPart) (out []DeadLine) {
	t.Helper()
	for _, x := range d.lines {
		if x.Part == part && x.Source == panelSource {
			out = append(out, x)
		}
	}
	require.NotEmpty(t, out, part)
	return out
}

// At 3 psf per inch of panel: 19/32 is 1.78125, 15/32 1.40625, 7/16 1.3125,
// 23/32 2.15625 psf.
func TestPanelsOfThePlanAreWeighed(t *testing.T) {
	joists := plan.Lumber{Ply: 1, Breadth: 1.5, Depth: 11.25}
	one := &plan.Level{Subfloor: 23. / 32, Joists: joists, JoistSpace: 16}
	two := &plan.Level{Subfloor: 1.125, Joists: joists, JoistSpace: 16}
	wall := &plan.Wall{Exterior: true, Studs: plan.Lumber{Depth: 5.5}, Spacing: 16}
	bare := deadOf(&plan.Plan{Levels: []*plan.Level{one}, Walls: []*plan.Wall{wall}})
	assert.Equal(t, []DeadLine{{plan.DeadRoof, "15/32 sheathing, assumed", 1.40625, panelSource}}, weighed(t, bare, plan.DeadRoof))
	assert.Equal(t, []DeadLine{{plan.DeadWall, "7/16 sheathing, assumed", 1.3125, panelSource}}, weighed(t, bare, plan.DeadWall))
	assert.InDelta(t, 1.3125+2.2+0.244*5.5, bare.wall(wall), 1e-9)

	sheathed := *wall
	sheathed.Shear = []*plan.Shear{{Panel: "15/32"}}
	given := deadOf(&plan.Plan{Deck: &plan.Deck{Panel: "19/32"}, Levels: []*plan.Level{one, two}, Walls: []*plan.Wall{wall, &sheathed}})
	assert.Equal(t, []DeadLine{{plan.DeadRoof, "19/32 sheathing of the deck", 1.78125, panelSource}}, weighed(t, given, plan.DeadRoof))
	assert.Equal(t, []DeadLine{{plan.DeadWall, "15/32 sheathing of the shear walls", 1.40625, panelSource}}, weighed(t, given, plan.DeadWall))
	assert.Equal(t, []DeadLine{{plan.DeadFloor, "23/32 subfloor", 2.15625, panelSource}, {plan.DeadFloor, "1 1/8 subfloor", 3.375, panelSource}}, weighed(t, given, plan.DeadFloor))
	assert.InDelta(t, 2+1.78125+0.244*9.25, given.roof(&plan.Roof{Rafters: plan.Lumber{Depth: 9.25}, Spacing: 16}), 1e-9)
	assert.InDelta(t, 1.40625+2.2+0.244*5.5, given.wall(wall), 1e-9, "sheathing goes on past the segments")
	assert.InDelta(t, 2.15625+0.244*11.25, given.floor(one), 1e-9, "each level its own")
	assert.InDelta(t, 3.375+0.244*11.25, given.floor(two), 1e-9)

	sheathed.Shear = append(sheathed.Shear, &plan.Shear{Panel: "19/32"})
	mixed := deadOf(&plan.Plan{Walls: []*plan.Wall{&sheathed}})
	assert.Equal(t, "15/32 sheathing, the thinnest panel", weighed(t, mixed, plan.DeadWall)[0].Name)

	own := deadOf(&plan.Plan{Deck: &plan.Deck{Panel: "19/32"}, Levels: []*plan.Level{one}, Loads: plan.Loads{Dead: []plan.Dead{
		{Part: plan.DeadRoof, Name: "all", Weight: 10}, {Part: plan.DeadFloor, Name: "all", Weight: 8},
	}}})
	assert.InDelta(t, 10.0, own.roof(&plan.Roof{Rafters: plan.Lumber{Depth: 9.25}, Spacing: 16}), 1e-9, "the plan's weight stands for all")
	assert.InDelta(t, 8.0, own.floor(one), 1e-9)
}

func TestSteelOverSheathingIsSaid(t *testing.T) {
	w := &plan.Wall{Exterior: true}
	assert.Contains(t, passedPanel(&plan.Plan{Walls: []*plan.Wall{w}}), "7/16 in (assumed")
	w.Shear = []*plan.Shear{{Panel: "15/32"}}
	assert.Contains(t, passedPanel(&plan.Plan{Walls: []*plan.Wall{w}}), "15/32 in (")
}
