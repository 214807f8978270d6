package read_test

import (
	"strings"
	"testing"

	"galewright/plan"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"
)

// sheathed is typedHouse whose level says how its exterior walls are sheathed, with an interior wall.
func sheathed(level, north string) string {
	s := strings.Replace(typedHouse, "name = \"first\"\n", "name = \"first\"\nsheathing = "+level+"\n", 1)
	s = strings.Replace(s, "name = \"N\"\n", "name = \"N\"\n"+north+"\n", 1)
	return s + "\n[[wall]]\nname = \"I\"\ninterior = true\nfrom = [\"10'\", \"6in\"]\nto = [\"10'\", \"19'\"]\n"
}

func TestSheathingOfALevelAndOfAWall(t *testing.T) {
	p, ds := parse(sheathed(`{ panel = "3/8", edge = "4in" }`, `sheathing = { field = "6in" }`), nil)
	require.False(t, ds.Errors(), "%v", ds)
	of := func(i int) plan.Sheathing { x := *p.Walls[i].Sheathing; x.Pos = plan.Pos{}; return x }
	level := plan.Sheathing{Panel: "3/8", Nail: "8d common", Edge: 4, Field: 12}
	assert.Equal(t, level, of(0))
	assert.Equal(t, plan.Sheathing{Panel: "7/16", Nail: "8d common", Edge: 6, Field: 6}, of(2), "its own")
	assert.Nil(t, p.Walls[4].Sheathing, "an interior wall has the level's not")
	p, _ = parse(typedHouse, nil)
	assert.Nil(t, p.Walls[0].Sheathing, "nobody said anything")
}

// A type of shear walls lends panel and nails; faces and posts are none of sheathing.
func TestSheathingTakesAShearType(t *testing.T) {
	p, ds := parse(sheathed(`{ type = "P4", field = "6in" }`, ""), nil)
	require.False(t, ds.Errors(), "%v", ds)
	assert.Equal(t, []any{"7/16", "10d common", 4.0, 6.0}, []any{p.Walls[0].Sheathing.Panel, p.Walls[0].Sheathing.Nail, p.Walls[0].Sheathing.Edge, p.Walls[0].Sheathing.Field})
	_, ds = parse(sheathed(`{ type = "P5", posts = 2 }`, ""), nil)
	var codes []plan.Code
	for _, d := range ds {
		codes = append(codes, d.Code)
	}
	assert.Contains(t, codes, plan.Code("unknown-type"))
	assert.Contains(t, codes, plan.Code("unknown-key"))
}

func TestBreaksOfPlates(t *testing.T) {
	p, ds := parse(strings.Replace(typedHouse, "name = \"N\"\n", "name = \"N\"\nbreaks = { bottom = [\"12'\", \"8'\"], upper = [] }\n", 1), nil)
	require.False(t, ds.Errors(), "%v", ds)
	x := p.Walls[2].Breaks
	assert.Equal(t, []float64{96, 144}, x.Bottom, "in order")
	assert.Nil(t, x.Top, "by rule")
	assert.NotNil(t, x.Upper, "no break")
	assert.Empty(t, x.Upper)
	assert.Nil(t, p.Walls[0].Breaks)
}
