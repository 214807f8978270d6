package roofplan

import (
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"galewright/plan"
	"galewright/plan/geom"
	"galewright/plan/plantest"
)

// aroundACorner is a porch 96 in deep at 3 in 12 around the corner of a house at (1000, 2000): one shed south
// of the house, 240 in long and 96 past the corner with a hip at its east end, and one east of it, 200 in long.
func aroundACorner(t require.TestingT) (south, east *Body) {
	south = body(t, "south", plan.ShedRoof, plan.AxisX, pt(760, 1904), pt(1096, 2000), 3, 12)
	south.Sides[East].Slope = 0.25
	east = &Body{Name: "east", Axis: plan.AxisY, Lo: pt(1000, 2000), Hi: pt(1096, 2200), Spacing: 16, Thick: 1.5}
	for i := range east.Sides {
		east.Sides[i] = Side{Height: 100, Over: 12}
	}
	east.Sides[East].Slope = 0.25
	return south, east
}

// turned is b a quarter turn to the left about the origin.
func turned(b *Body) *Body {
	c := *b
	c.Lo, c.Hi = pt(-b.Hi.Y, b.Lo.X), pt(-b.Lo.Y, b.Hi.X)
	c.Axis = across(b.Axis)
	for i, s := range b.Sides {
		c.Sides[(i+1)%4] = s
	}
	return &c
}

// The second shed goes on past its south end as the hip end of the first one, whichever way the house is turned; no
// other end of either goes on anywhere.
func TestAShedGoesOnAroundACorner(t *testing.T) {
	a, b := aroundACorner(t)
	for turn := range 4 {
		for e := range 4 {
			assert.Equal(t, e == (South+turn)%4, b.GoesOn(e, a), "east shed, side %d, turn %d", e, turn)
			assert.False(t, a.GoesOn(e, b), "south shed, side %d, turn %d", e, turn)
			assert.False(t, a.GoesOn(e, a) || b.GoesOn(e, b), "neither is its own other part")
		}
		_, faults := New([]*Body{a, b})
		assert.Empty(t, faults)
		for e := range 4 {
			assert.Equal(t, e == (South+turn)%4, b.Sides[e].RunsIn, "east shed, side %d, turn %d", e, turn)
			assert.False(t, a.Sides[e].RunsIn)
			b.Sides[e].RunsIn = false
		}
		a, b = turned(a), turned(b)
	}
}

// What keeps a shed from going on: no hip at the end of the other, one 1 in lower, one of another pitch, a gap
// of 1 in between, a roof with a ridge on either side.
func TestWhereAShedDoesNotGoOn(t *testing.T) {
	for name, change := range map[string]func(a, b *Body){
		"no hip":                  func(a, _ *Body) { a.Sides[East].Slope = 0 },
		"lower":                   func(a, _ *Body) { a.Sides[East].Height-- },
		"of another pitch":        func(a, _ *Body) { a.Sides[East].Slope = 0.5 },
		"it has a hip of its own": func(_, b *Body) { b.Sides[South].Slope = 0.25 },
		"apart":                   func(a, b *Body) { a.Hi.Y, b.Lo.Y = 1999, 2000 },
		"the other has a ridge":   func(a, _ *Body) { a.Sides[North].Slope = 0.25 },
		"it has a ridge":          func(_, b *Body) { b.Sides[West].Slope = 0.25 },
		"it climbs the other way": func(_, b *Body) { b.Sides[East], b.Sides[West] = b.Sides[West], b.Sides[East] },
	} {
		a, b := aroundACorner(t)
		change(a, b)
		b.goOn([]*Body{a, b})
		for e := range 4 {
			assert.False(t, b.Sides[e].RunsIn, "%s, side %d", name, e)
		}
	}
	// A gable is no shed even where its south plane is that of the other's hip end.
	gable := body(t, "gable", plan.GableRoof, plan.AxisX, pt(0, 0), pt(100, 96), 3, 12)
	shed := &Body{Name: "shed", Axis: plan.AxisY, Lo: pt(100, 0), Hi: pt(200, 300)}
	for i := range shed.Sides {
		shed.Sides[i].Height = 100
	}
	shed.Sides[South].Slope, shed.Sides[East].Slope = 0.25, 0.25
	assert.False(t, gable.GoesOn(East, shed))
	gable.Sides[North].Slope = 0
	assert.True(t, gable.GoesOn(East, shed), "as a shed it goes on")
}

// The low side of a body is the one side along its axis that climbs; one that climbs from both has none.
func TestTheLowSideOfABody(t *testing.T) {
	for _, c := range []struct {
		axis   plan.Axis
		sloped []int
		low    int
		shed   bool
	}{
		{plan.AxisX, []int{South}, South, true},
		{plan.AxisX, []int{North}, North, true},
		{plan.AxisX, []int{North, East}, North, true},
		{plan.AxisX, []int{South, East, West}, South, true},
		{plan.AxisX, []int{South, North}, 0, false},
		{plan.AxisY, []int{West}, West, true},
		{plan.AxisY, []int{East}, East, true},
		{plan.AxisY, []int{East, North, South}, East, true},
		{plan.AxisY, []int{East, West}, 0, false},
		{plan.AxisY, []int{South, East, North, West}, 0, false},
	} {
		b := &Body{Axis: c.axis}
		for _, i := range c.sloped {
			b.Sides[i].Slope = 0.25
		}
		low, shed := b.lowSide()
		assert.Equal(t, c.shed, shed, "%+v", c)
		assert.Equal(t, c.low, low, "%+v", c)
	}
}

// The hip of the porch runs from its outer corner up to the corner of the house, 96 in in both ways and 24 up; that
// of a hip roof 200 by 80 at 6 in 12 up to the ridge, 40 in in and 20 up. With an end of 12 in 12 under the same ridge
// it is 20 in in.
func TestTheUpperEndOfAHip(t *testing.T) {
	porch, _ := aroundACorner(t)
	roof := body(t, "hip", plan.HipRoof, plan.AxisX, pt(10, 20), pt(210, 100), 6, 12)
	steep := body(t, "steep", plan.HipRoof, plan.AxisX, pt(10, 20), pt(210, 100), 6, 12)
	steep.Sides[West].Slope = 1
	for _, c := range []struct {
		b   *Body
		end int
		p   geom.Vec2
		z   float64
		at  float64 // of the rafter at the ridge's end, along the axis
	}{
		{porch, East, pt(1000, 2000), 124, 997},
		{roof, West, pt(50, 60), 120, 50},
		{roof, East, pt(170, 60), 120, 170},
		{steep, West, pt(30, 60), 120, 30},
	} {
		for turn := range 4 {
			p, z := c.b.HighEnd(c.end)
			assert.InDelta(t, 0, p.Sub(c.p).Len(), 1e-9, "%s, turn %d: %v", c.b.Name, turn, p)
			assert.InDelta(t, c.z, z, 1e-9, c.b.Name)
			assert.InDelta(t, c.at, c.b.hipEnd(c.end), 1e-9, "%s, turn %d", c.b.Name, turn)
			c.b, c.end, c.p = turned(c.b), (c.end+1)%4, pt(-c.p.Y, c.p.X)
			if c.at = c.p.X; c.b.Axis == plan.AxisY {
				c.at = c.p.Y
			}
			if c.b.Name == "south" {
				c.at -= 3 * (outward[c.end].X + outward[c.end].Y)
			}
		}
	}
}

// Around the corner the last rafters on both sides of the hip stand 3 in clear of the house's corner: at 997 on the
// south face and at 2003 on the east one. From there the jacks stand every 16 in out to the hip's foot, the east shed's
// commons in to its far gable at 2200. The south shed's own are counted from its gable at 760.
func TestRaftersOfAPorchAroundACorner(t *testing.T) {
	a, b := aroundACorner(t)
	r, faults := New([]*Body{a, b})
	require.Empty(t, faults)
	require.Len(t, r.Faces, 2)
	at, flush := stationsOf(faceOf(t, r, "south", South))
	plantest.Near(t, append(append([]float64{760.75}, every(776, 984)...), every(997, 1096)...), at, 1e-9)
	assert.Equal(t, []float64{760.75}, flush)
	at, flush = stationsOf(faceOf(t, r, "south", East))
	plantest.Near(t, append(every(1907, 2195), 2199.25), at, 1e-9)
	assert.Equal(t, []float64{2199.25}, flush)
	assert.Equal(t, map[EdgeKind]int{Hip: 1}, lines(r))
	for _, run := range r.Runs() {
		kind, corner := Common, 1000.0
		if run.Face.Side == South && run.Station > corner || run.Face.Side == East && run.Station < 2000 {
			kind = HipJack
		}
		assert.Equal(t, kind, run.Kind, "side %d at %v", run.Face.Side, run.Station)
	}
}
