package framing

import (
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"
	"pgregory.net/rapid"

	"galewright/plan"
	"galewright/plan/geom"
)

// crossed is a slab house of 28 by 20 ft with walls I along x at 100 and J along y at 90.
func crossed() (p *plan.Plan, i, j *plan.Wall) {
	p = onSlabPlan()
	ring(p, 0, rect(0, 0, 336, 240)...)
	i = wall(p, "I", 0, geom.Vec2{X: 40, Y: 100}, geom.Vec2{X: 240, Y: 100})
	j = wall(p, "J", 0, geom.Vec2{X: 90, Y: 60}, geom.Vec2{X: 90, Y: 180})
	return p, i, j
}

// spans returns the stations of the members of a wall in one role.
func spans(h *House, wall string, role plan.Role) (out [][2]float64) {
	for _, m := range of(h, wall, role) {
		out = append(out, [2]float64{m.S0, m.S1})
	}
	return out
}

// J is the shorter: it stops at I's faces, y 100 and 105.5, stations 40 and 45.5, with an
// end stud at each; its upper plate runs on, and I's is broken over J, x 84.5 to 90.
func TestOfTwoCrossingWallsTheLongerRunsThrough(t *testing.T) {
	p, _, _ := crossed()
	h := frame(t, p)
	assert.Equal(t, [][2]float64{{0, 40}, {45.5, 120}}, spans(h, "J", plan.TopPlate))
	assert.Equal(t, [][2]float64{{0, 40}, {45.5, 120}}, spans(h, "J", plan.SillPlate))
	assert.Equal(t, [][2]float64{{0, 120}}, spans(h, "J", plan.UpperPlate))
	assert.Equal(t, [][2]float64{{38.5, 40}, {45.5, 47}}, spans(h, "J", plan.Post))
	assert.Equal(t, [][2]float64{{0, 44.5}, {50, 200}}, spans(h, "I", plan.UpperPlate))
	assert.Equal(t, [][2]float64{{0, 192}, {192, 200}}, spans(h, "I", plan.SillPlate))
	assert.Equal(t, [][2]float64{{43.5, 45}, {49.5, 51}}, spans(h, "I", plan.Post), "backing, an inch past J's faces")
	js := joints(h, "I", plan.WallCorner)
	require.Len(t, js, 2)
	assert.Equal(t, []float64{39.25, 46.25}, []float64{js[0].First().Mid(), js[1].First().Mid()})
	assert.Empty(t, joints(h, "J", plan.PlateSplice), "its upper plate runs on over I")
}

func TestWhichCrossingWallRunsThrough(t *testing.T) {
	for name, c := range map[string]struct {
		change func(i, j *plan.Wall)
		stops  string
	}{
		"the longer":      {func(*plan.Wall, *plan.Wall) {}, "J"},
		"the bearing one": {func(_, j *plan.Wall) { j.Bearing = true }, "I"},
		"the higher":      {func(_, j *plan.Wall) { j.Height = 112 }, "I"},
		"higher first":    {func(i, j *plan.Wall) { i.Bearing, j.Height = true, 112 }, "I"},
		"the plan's word": {func(i, j *plan.Wall) { i.Bearing, j.Through = true, true }, "I"},
	} {
		t.Run(name, func(t *testing.T) {
			p, i, j := crossed()
			c.change(i, j)
			h := frame(t, p)
			for _, w := range []string{"I", "J"} {
				n := len(of(h, w, plan.TopPlate))
				if w == c.stops {
					assert.Equal(t, 2+map[string]int{"I": 0, "J": 0}[w], n, w)
				}
			}
			stops := of(h, c.stops, plan.TopPlate)
			assert.Greater(t, stops[1].S0-stops[0].S1, 5.0, "%s stops at the other", c.stops)
		})
	}
}

// Where the heights differ both plates of the lower stop: 5 1/2 in for a strap to bridge.
func TestALowerCrossingWallStopsWhole(t *testing.T) {
	p, _, j := crossed()
	j.Height = 100
	h := frame(t, p)
	assert.Equal(t, [][2]float64{{0, 40}, {45.5, 120}}, spans(h, "J", plan.UpperPlate))
	assert.Equal(t, [][2]float64{{0, 200}}, [][2]float64{{of(h, "I", plan.UpperPlate)[0].S0, of(h, "I", plan.UpperPlate)[len(of(h, "I", plan.UpperPlate))-1].S1}})
	js := joints(h, "J", plan.PlateSplice)
	require.Len(t, js, 1)
	assert.Equal(t, []float64{42.75, 5.5, 0}, []float64{js[0].Station, js[0].Gap, js[0].Step})
	assert.Len(t, js[0].Members, 2)
}

func TestCrossingsThatCannotBeFramed(t *testing.T) {
	for name, c := range map[string]struct {
		change func(i, j *plan.Wall)
		code   plan.Code
	}{
		"lower runs through": {func(_, j *plan.Wall) { j.Height, j.Through = 100, true }, "walls-cross"},
		"both":               {func(i, j *plan.Wall) { i.Through, j.Through = true, true }, "crossing-contradicts"},
		"shear":              {func(_, j *plan.Wall) { j.Shear = []*plan.Shear{{Name: "JA", From: 20, To: 60}} }, "shear-across-wall"},
		"exterior":           {func(_, j *plan.Wall) { j.Exterior = true }, "walls-cross"},
		"no room":            {func(_, j *plan.Wall) { j.To.Y = 107 }, "walls-cross"},
	} {
		t.Run(name, func(t *testing.T) {
			p, i, j := crossed()
			c.change(i, j)
			_, faults := Frame(p)
			require.NotEmpty(t, faults)
			assert.Equal(t, c.code, faults[0].Code)
		})
	}
}

// Wherever two or three walls cross, in whatever depth and at whatever slant, no two members
// share space, and each wall's plates reach its ends.
func TestCrossingWallsNeverShareSpace(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		p := onSlabPlan()
		ring(p, 0, rect(0, 0, 480, 480)...)
		depths := []plan.Lumber{twoBySix, twoByFour}
		x := rapid.Float64Range(120, 300).Draw(t, "x")
		slant := rapid.SampledFrom([]float64{0, 0, 30, -60}).Draw(t, "slant")
		i := wall(p, "I", 0, geom.Vec2{X: 60, Y: rapid.Float64Range(150, 200).Draw(t, "y")}, geom.Vec2{X: 420})
		i.To.Y = i.From.Y
		k := wall(p, "K", 0, geom.Vec2{X: 60, Y: 290}, geom.Vec2{X: 420, Y: 290})
		j := wall(p, "J", 0, geom.Vec2{X: x, Y: 60}, geom.Vec2{X: x + slant, Y: 420})
		for _, w := range []*plan.Wall{i, j, k} {
			w.Studs = rapid.SampledFrom(depths).Draw(t, "studs")
			w.Bearing = rapid.Bool().Draw(t, "bearing")
			w.Height = rapid.SampledFrom([]float64{0, 0, 100}).Draw(t, "height")
			w.Spacing = rapid.SampledFrom([]float64{12, 16, 24}).Draw(t, "spacing")
		}
		h, faults := Frame(p)
		if len(faults) > 0 {
			t.Fatalf("%v", faults)
		}
		for _, pair := range h.Overlaps(0.01) {
			t.Fatalf("%s reaches into %s", pair[0].ID, pair[1].ID)
		}
		for _, w := range []*plan.Wall{i, j, k} {
			plates := of(h, w.Name, plan.TopPlate)
			if plates[0].S0 != 0 || plates[len(plates)-1].S1 < w.Length()-1e-6 {
				t.Fatalf("the plates of %s reach from %v to %v", w.Name, plates[0].S0, plates[len(plates)-1].S1)
			}
		}
	})
}
