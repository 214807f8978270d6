package framing

import (
	"fmt"
	"strings"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"galewright/plan"
	"galewright/plan/geom"
	"galewright/plan/units"
)

// printedHeaders is IRC Table R502.5(1) of 2000 to 2006 (edition from memory) as
// the page prints it (read, a scan
// of a Florida city's reprint; 2-2x10 at 36 ft differs among three copies, 6-5
// or 6-6): span in ft-in, a stroke, jacks; buildings of 20, 28 and 36 ft.
var printedHeaders = [2]string{
	`2-2x4 3-6/1 3-2/1 2-10/1
2-2x6 5-5/1 4-8/1 4-2/1
2-2x8 6-10/1 5-11/2 5-4/2
2-2x10 8-5/2 7-3/2 6-6/2
2-2x12 9-9/2 8-5/2 7-6/2
3-2x8 8-4/1 7-5/1 6-8/1
3-2x10 10-6/1 9-1/2 8-2/2
3-2x12 12-2/2 10-7/2 9-5/2
4-2x8 9-2/1 8-4/1 7-8/2
4-2x10 11-8/1 10-6/1 9-5/2
4-2x12 14-1/1 12-2/2 10-11/2`,
	`2-2x4 3-1/1 2-9/1 2-5/1
2-2x6 4-6/1 4-0/1 3-7/2
2-2x8 5-9/2 5-0/2 4-6/2
2-2x10 7-0/2 6-2/2 5-6/2
2-2x12 8-1/2 7-1/2 6-5/2
3-2x8 7-2/1 6-3/2 5-8/2
3-2x10 8-9/2 7-8/2 6-11/2
3-2x12 10-2/2 8-11/2 8-0/2`,
}

func TestEveryCellOfTheHeaderTable(t *testing.T) {
	// Dressed depths of 2x lumber: 3 1/2, 5 1/2, 7 1/4, 9 1/4, 11 1/4 in (PS 20).
	depth := map[int]float64{4: 3.5, 6: 5.5, 8: 7.25, 10: 9.25, 12: 11.25}
	for floors, table := range printedHeaders {
		lines := strings.Split(table, "\n")
		assert.Len(t, headerTable[floors], len(lines))
		for _, line := range lines {
			words := strings.Fields(line)
			var ply, size int
			_, err := fmt.Sscanf(words[0], "%d-2x%d", &ply, &size)
			require.NoError(t, err)
			for i, width := range []float64{20, 28, 36} {
				var feet, inch, jacks int
				_, err := fmt.Sscanf(words[1+i], "%d-%d/%d", &feet, &inch, &jacks)
				require.NoError(t, err)
				for _, w := range []float64{width, width - 7.9} { // as wide as the column says, and over the one before
					got, why := headerRow(units.Imperial, plan.Lumber{Ply: ply, Breadth: 1.5, Depth: depth[size]}, floors, w*12)
					require.Empty(t, why)
					assert.Equal(t, headerSpan{float64(feet*12 + inch), jacks}, got, "%s %v ft", words[0], w)
				}
			}
		}
	}
	_, why := headerRow(units.Imperial, headerThin, 0, 36*12+0.1)
	assert.NotEmpty(t, why)
	_, why = headerRow(units.Imperial, plan.Lumber{Ply: 4, Breadth: 1.5, Depth: 7.25, Text: "4-2x8"}, 1, 240)
	assert.NotEmpty(t, why, "no row under a floor")
}

func TestKingsByTheTable(t *testing.T) {
	// IRC 2015 Table R602.7.5: the row of 16 ft second-hand, the others from memory.
	for _, c := range []struct {
		feet   float64
		at, up int
	}{{2, 1, 1}, {3, 1, 1}, {3.1, 2, 1}, {4, 2, 1}, {4.1, 3, 2}, {8, 3, 2}, {8.1, 5, 3}, {12, 5, 3}, {12.1, 6, 4}, {16, 6, 4}, {18, 6, 4}} {
		assert.Equal(t, c.at, tableKings(c.feet*12, 16), "%v ft", c.feet)
		assert.Equal(t, c.at, tableKings(c.feet*12, 12), "%v ft", c.feet)
		assert.Equal(t, c.up, tableKings(c.feet*12, 24), "%v ft", c.feet)
	}
}

func TestStudsOfAnotherSpacingBelow(t *testing.T) {
	// Above at 16, below at 24 with an opening far off: the stud at 16 stands 8 off
	// the one at 24, within half a space and half a stud, 12.75; it goes there, not
	// to the opening's header.
	p := twoTall(0, window("w", 150, 40))
	p.Walls[0].Spacing = 24
	h, _ := Frame(p)
	for at, off := range map[float64]float64{16: 8, 32: -8, 48: 0, 64: 8} {
		j := jointAt(h, "2A", plan.StudStud, at)
		require.NotNil(t, j)
		assert.True(t, j.Below)
		assert.Equal(t, plan.Stud, j.Members[1].Role, "at %v", at)
		assert.InDelta(t, off, j.Offset, 1e-9, "at %v", at)
	}
}

func TestWhoOwnsAMember(t *testing.T) {
	b := &builder{plan: &plan.Plan{
		Porches: []*plan.Porch{{Name: "P", Pos: plan.Pos{Line: 3}}, {Name: "G", Pos: plan.Pos{Line: 4}}},
		Girders: []*plan.Girder{{Name: "G", Pos: plan.Pos{Line: 5}}, {Name: "P", Pos: plan.Pos{Line: 6}}},
	}}
	level := &plan.Level{Name: "first", Pos: plan.Pos{Line: 7}}
	for _, c := range []struct {
		m    *Member
		name string
		line int
	}{
		{&Member{ID: "1A/stud@4", Wall: &plan.Wall{Name: "1A", Pos: plan.Pos{Line: 1}}, Level: level}, "wall 1A", 1},
		{&Member{ID: "main/rafter@4", Roof: &plan.Roof{Name: "main", Pos: plan.Pos{Line: 2}}, Level: level}, "roof main", 2},
		{&Member{ID: "P/beam@4", Role: plan.Beam, Level: level}, "porch P", 3},
		{&Member{ID: "P/column@4", Role: plan.PorchPost, Level: level}, "porch P", 3},
		{&Member{ID: "G/girder@4", Role: plan.GirderBeam, Level: level}, "girder G", 5},
		{&Member{ID: "G/pile@4", Role: plan.Pile, Level: level}, "girder G", 5},
		{&Member{ID: "first/joist@4", Role: plan.Joist, Level: level}, "level first", 7},
	} {
		assert.Equal(t, c.name, owner(c.m))
		assert.Equal(t, c.line, b.posOf(c.m).Line, c.m.ID)
	}
}

func TestWallsThatCrossAreTold(t *testing.T) {
	p := onSlabPlan()
	wall(p, "A", 0, geom.Vec2{}, geom.Vec2{X: 120})
	wall(p, "B", 0, geom.Vec2{X: 60, Y: -60}, geom.Vec2{X: 60, Y: 60}).Exterior = true
	_, ds := Frame(p)
	require.NotEmpty(t, ds)
	assert.NotEmpty(t, ds[0].Mend)
}

func TestNamesOfHipSections(t *testing.T) {
	// A hip is one stock size deeper than the rafters: 2x8 over 2x6.
	for of, want := range map[float64]string{3.5: "2x6", 5.5: "2x8", 7.25: "2x10", 9.25: "2x12"} {
		assert.Equal(t, want, hipSection(plan.Lumber{Ply: 1, Breadth: 1.5, Depth: of}).Text)
	}
	assert.Equal(t, "2x4", nominal(1.5, 3.5))
	assert.Equal(t, "1.75x14", nominal(1.75, 14))
	assert.Equal(t, "1.5x8", nominal(1.5, 8))
}
