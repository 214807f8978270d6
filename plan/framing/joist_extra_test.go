package framing

import (
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"
	"pgregory.net/rapid"

	"galewright/plan"
	"galewright/plan/geom"
)

// floorOnly is a house of two stories, 336 by 240 in, joists of the second floor running
// north at 16 in, a bearing wall below at y = 114.5 to 120.
func floorOnly() *plan.Plan {
	p := stories(2)
	for i := range 2 {
		ring(p, i, rect(0, 0, 336, 240)...)
	}
	w := wall(p, "1I", 0, geom.Vec2{X: 330.5, Y: 120}, geom.Vec2{X: 5.5, Y: 120})
	w.Bearing = true
	p.Lumber.Stock = []float64{400}
	return p
}

func joistFrom(x0, y0, x1, y1 float64, plies int) *plan.FloorJoist {
	p := &plan.FloorJoist{Name: "J1", From: geom.Vec2{X: x0, Y: y0}, To: geom.Vec2{X: x1, Y: y1}, Pos: plan.Pos{File: "plan.toml", Line: 70}}
	if plies > 0 {
		p.Member = plan.Lumber{Ply: plies, Breadth: 1.5, Depth: 9.25, Text: "2-2x10"}
	}
	return p
}

// A double joist in the place of that at 96 from rim to rim, 1.5 to 238.5; one between
// two joists is one more; one that ends over the bearing wall is cut at its middle, and the joist in
// its way begins there.
func TestAddedJoistsByHand(t *testing.T) {
	lay := func(x *plan.FloorJoist) (own, others []*Member) {
		p := floorOnly()
		x.Level = p.Levels[1]
		p.FloorJoists = []*plan.FloorJoist{x}
		h := frame(t, p)
		borne(t, h)
		for _, m := range roled(h, plan.Joist, "second") {
			if m.Section.Ply == 2 || m.A.X == 88 {
				own = append(own, m)
			} else {
				others = append(others, m)
			}
		}
		return own, others
	}
	own, others := lay(joistFrom(96, 0, 96, 240, 2))
	require.Len(t, own, 1)
	assert.Equal(t, "second/J1 joist@96", own[0].ID)
	assert.InDelta(t, 237, own[0].Length, 1e-9)
	assert.Len(t, others, 19)
	own, others = lay(joistFrom(88, 240, 88, 0, 0))
	require.Len(t, own, 1)
	assert.InDelta(t, 1.5, own[0].Section.Width(), 1e-9)
	assert.Len(t, others, 20)
	own, others = lay(joistFrom(96, 0, 96, 116, 2))
	require.Len(t, own, 1)
	assert.InDelta(t, 115.75, own[0].Length, 1e-9, "1.5 to the middle of the wall from 114.5 to 120")
	require.Len(t, others, 20)
	short := 0
	for _, m := range others {
		if m.Length < 200 {
			assert.InDelta(t, 121.25, m.Length, 1e-9)
			short++
		}
	}
	assert.Equal(t, 1, short)
}

// Blocks stand in each bay that the row crosses: from 20 to 60 between the joists at 16,
// 32, 48 and 64 only those at 32 and 48 close a bay whole, and the row's ends reach to
// the others' faces where they come within an inch.
func TestBlocksBetweenJoistsByHand(t *testing.T) {
	for _, c := range []struct {
		from, to float64
		want     int
	}{{16, 64, 3}, {20, 60, 1}, {0, 336, 21}, {17.5, 47.5, 2}} {
		p := floorOnly()
		p.FloorBlocks = []*plan.FloorBlocks{{Name: "K1", Level: p.Levels[1], From: geom.Vec2{X: c.from, Y: 60}, To: geom.Vec2{X: c.to, Y: 60}}}
		h := frame(t, p)
		blocks := roled(h, plan.Blocking, "second")
		require.Len(t, blocks, c.want, "%v", c)
		for _, m := range blocks {
			assert.LessOrEqual(t, m.Length, 14.5+1e-9)
			assert.InDelta(t, 9.25, m.Z1-m.Z0, 1e-9)
			assert.InDelta(t, 60, m.A.Y, 1e-9)
		}
	}
}

func TestJoistsAndBlocksThatCannotLieAreTold(t *testing.T) {
	deep := joistFrom(96, 0, 96, 240, 2)
	deep.Member.Depth = 11.25
	block := func(x0, y0, x1, y1 float64) *plan.FloorBlocks {
		return &plan.FloorBlocks{Name: "K1", From: geom.Vec2{X: x0, Y: y0}, To: geom.Vec2{X: x1, Y: y1}}
	}
	for _, c := range []struct {
		code  plan.Code
		joist *plan.FloorJoist
		block *plan.FloorBlocks
	}{
		{"joist-off-run", joistFrom(96, 0, 120, 240, 2), nil},
		{"joist-depth", deep, nil},
		{"joist-in-the-air", joistFrom(96, 0, 96, 80, 2), nil},
		{"joist-off-floor", joistFrom(500, 0, 500, 240, 2), nil},
		{"joist-off-floor", joistFrom(1, 0, 1, 240, 2), nil},
		{"blocking-off-floor", nil, block(500, 60, 600, 60)},
		{"blocking-off-square", nil, block(96, 60, 96, 120)},
		{"blocking-no-bay", nil, block(20, 60, 30, 60)},
	} {
		p := floorOnly()
		if c.joist != nil {
			c.joist.Level = p.Levels[1]
			p.FloorJoists = []*plan.FloorJoist{c.joist}
		} else {
			c.block.Level = p.Levels[1]
			p.FloorBlocks = []*plan.FloorBlocks{c.block}
		}
		_, faults := Frame(p)
		require.Len(t, faults, 1, "%s: %v", c.code, faults)
		assert.Equal(t, c.code, faults[0].Code)
	}
}

// Two added joists, or one and an opening, in one place are told.
func TestAddedJoistsKeepClear(t *testing.T) {
	p := floorOnly()
	a, z := joistFrom(96, 0, 96, 240, 2), joistFrom(98, 0, 98, 240, 1)
	a.Level, z.Level, z.Name = p.Levels[1], p.Levels[1], "J2"
	p.FloorJoists = []*plan.FloorJoist{a, z}
	_, faults := Frame(p)
	require.Len(t, faults, 1)
	assert.Equal(t, plan.Code("joists-meet"), faults[0].Code)
	p = floorOnly()
	a.Level = p.Levels[1]
	p.FloorJoists = []*plan.FloorJoist{a}
	p.FloorOpenings = []*plan.FloorOpening{{Name: "well", Level: p.Levels[1], Lo: geom.Vec2{X: 80, Y: 40}, Hi: geom.Vec2{X: 120, Y: 90}}}
	_, faults = Frame(p)
	require.Len(t, faults, 1)
	assert.Equal(t, plan.Code("joists-meet"), faults[0].Code)
}

// Wherever added joists and blocks lie, beside beams too, all share no space and all
// joists are carried.
func TestDrawnFloorsWithAddedJoistsAndBlocks(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		p := floorOnly()
		if rapid.Bool().Draw(t, "beam") {
			p = twoFloors(rapid.SampledFrom(plan.BeamSets).Draw(t, "set"), geom.Vec2{Y: 120}, geom.Vec2{X: 336, Y: 120}, twoTwoByTen)
		}
		x := joistFrom(0, 0, 0, rapid.SampledFrom([]float64{120, 240}).Draw(t, "to"), rapid.IntRange(0, 3).Draw(t, "plies"))
		x.From.X = rapid.Float64Range(5, 331).Draw(t, "x")
		x.To.X, x.Level = x.From.X, p.Levels[1]
		p.FloorJoists = []*plan.FloorJoist{x}
		y := rapid.Float64Range(4, 110).Draw(t, "y")
		p.FloorBlocks = []*plan.FloorBlocks{{
			Name: "K1", Level: p.Levels[1], From: geom.Vec2{X: rapid.Float64Range(2, 100).Draw(t, "from"), Y: y}, To: geom.Vec2{X: rapid.Float64Range(140, 334).Draw(t, "to x"), Y: y},
		}}
		h, faults := Frame(p)
		require.Empty(t, faults)
		require.Empty(t, h.Overlaps(0.01))
		borne(t, h)
	})
}
