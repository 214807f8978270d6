package framing

import (
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"galewright/plan"
	"galewright/plan/geom"
)

// A wall of 336 in from 0 with studs on 16: plates of 192 at most.
func TestPlatesBreakWhereThePlanSays(t *testing.T) {
	p, w := straight(336)
	w.Breaks = &plan.PlateBreaks{Bottom: []float64{100, 200}, Top: []float64{160}, Upper: []float64{192}}
	h := frame(t, p)
	assert.Equal(t, [][2]float64{{0, 100}, {100, 200}, {200, 336}}, spans(h, w.Name, plan.SillPlate))
	assert.Equal(t, [][2]float64{{0, 160}, {160, 336}}, spans(h, w.Name, plan.TopPlate))
	assert.Equal(t, [][2]float64{{0, 192}, {192, 336}}, spans(h, w.Name, plan.UpperPlate))
	assert.NotNil(t, jointAt(h, w.Name, plan.PlateSplice, 160))
	assert.NotNil(t, jointAt(h, w.Name, plan.PlateSplice, 192))
}

// What the plan leaves out is by rule, 24 in or more from what it gives.
func TestAPlateWithoutBreaksOfItsOwnKeepsClearOfThePlans(t *testing.T) {
	p, w := straight(336)
	w.Breaks = &plan.PlateBreaks{Upper: []float64{176}}
	h := frame(t, p)
	for _, s := range spans(h, w.Name, plan.TopPlate)[1:] {
		assert.GreaterOrEqual(t, abs(s[0]-176), 24.0)
	}
	assert.Equal(t, [][2]float64{{0, 192}, {192, 336}}, spans(h, w.Name, plan.SillPlate))
}

func TestBreaksThatCannotBe(t *testing.T) {
	for name, c := range map[string]struct {
		breaks plan.PlateBreaks
		code   plan.Code
		text   string
	}{
		"off the wall":   {plan.PlateBreaks{Bottom: []float64{150, 340}}, "break-off-plate", `there is no bottom plate to break at 28'-4"`},
		"in the door":    {plan.PlateBreaks{Bottom: []float64{70, 200}}, "break-off-plate", `there is no bottom plate to break at 5'-10"`},
		"over stock":     {plan.PlateBreaks{Top: []float64{}}, "plate-over-stock", `the lower top plate is 28'-0" long from 0" on, and the longest stock is 16'-0"`},
		"too near":       {plan.PlateBreaks{Top: []float64{160}, Upper: []float64{176}}, "breaks-too-near", `the top plates break at 13'-4" and 14'-8", 1'-4" apart`},
		"between studs":  {plan.PlateBreaks{Upper: []float64{168}}, "break-off-stud", `the upper top plate breaks at 14'-0", between studs`},
		"at the header":  {plan.PlateBreaks{Upper: []float64{105, 192}}, "break-at-header", `the upper top plate breaks at 8'-9", at the header of opening d`},
		"over the plank": {plan.PlateBreaks{Upper: []float64{80, 192}}, "break-at-header", `the upper top plate breaks at 6'-8", at the header of opening d`},
	} {
		t.Run(name, func(t *testing.T) {
			p, w := straight(336)
			w.Openings = []*plan.Opening{door("d", 60, 38.5)}
			w.Breaks = &c.breaks
			_, faults := Frame(p)
			require.Len(t, faults, 1)
			assert.Equal(t, c.code, faults[0].Code)
			assert.Equal(t, c.text, faults[0].Summary)
		})
	}
}

// The plate of a wall that meets at 100 to 105.5 laps over: 24 in from 94.5 is 70.5, and from
// 100 is 124. Its faces are at 94.5 and 100.
func TestABreakNearALapIsTold(t *testing.T) {
	for s, told := range map[float64]bool{64: false, 80: true, 112: true, 128: false} {
		p := onSlabPlan()
		ring(p, 0, rect(0, 0, 256, 240)...)
		wall(p, "1P", 0, geom.Vec2{X: 100, Y: 5.5}, geom.Vec2{X: 100, Y: 150})
		p.Walls[0].Breaks = &plan.PlateBreaks{Top: []float64{s}}
		_, faults := Frame(p)
		if assert.Len(t, faults, map[bool]int{true: 1}[told], "%v", s) && told {
			assert.Equal(t, plan.Code("break-near-lap"), faults[0].Code)
		}
	}
}
