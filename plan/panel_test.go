package plan_test

import (
	"testing"

	"galewright/plan"
	"galewright/plan/geom"

	"github.com/stretchr/testify/assert"
)

// wallOf is an exterior or interior wall with segments of panels.
func wallOf(exterior bool, panels ...string) *plan.Wall {
	w := &plan.Wall{Exterior: exterior}
	for _, x := range panels {
		w.Shear = append(w.Shear, &plan.Shear{Panel: x})
	}
	return w
}

func TestWallPanelsAreThoseOfThePlan(t *testing.T) {
	own, bare, inside := wallOf(true, "15/32", "19/32"), wallOf(true), wallOf(false, "3/8")
	p := &plan.Plan{Walls: []*plan.Wall{own, bare, inside}}
	none := &plan.Plan{Walls: []*plan.Wall{bare, inside}}
	for name, c := range map[string]struct {
		plan        *plan.Plan
		wall        *plan.Wall
		thin, thick float64
		text        string
		given       bool
	}{
		"its own segments":             {p, own, 15. / 32, 19. / 32, "15/32", true},
		"no segments: the house's":     {p, bare, 15. / 32, 19. / 32, "15/32", true},
		"an inside wall's own":         {p, inside, 3. / 8, 3. / 8, "3/8", true},
		"of the house, outside alone":  {p, nil, 15. / 32, 19. / 32, "15/32", true},
		"no outside segment: assumed":  {none, bare, 7. / 16, 7. / 16, "7/16", false},
		"assumed for the house too":    {none, nil, 7. / 16, 7. / 16, "7/16", false},
		"a house without a plan's own": {nil, bare, 7. / 16, 7. / 16, "7/16", false},
		"outside of its segments":      {p, &plan.Wall{To: geom.Vec2{X: 96}, Sheathing: &plan.Sheathing{Panel: "3/8"}}, 3. / 8, 3. / 8, "3/8", true},
	} {
		thin, thick := c.plan.WallPanels(c.wall)
		assert.Equal(t, [2]float64{c.thin, c.thick}, [2]float64{thin.Thick, thick.Thick}, name)
		assert.Equal(t, c.text, thin.Text, name)
		assert.Equal(t, []bool{c.given, c.given}, []bool{thin.Given, thick.Given}, name)
	}
}

func TestPanelsInInches(t *testing.T) {
	for in, text := range map[float64]string{23. / 32: "23/32", 0.75: "3/4", 1.125: "1 1/8", 1: "1", 0.7: "0.700 in"} {
		assert.Equal(t, text, plan.PanelOfInches(in).Text)
	}
}
