package plan_test

import (
	"testing"

	"galewright/plan"
	"galewright/plan/geom"

	"github.com/stretchr/testify/assert"
)

// A wall of 240 in sheathed outside of its segments.
func TestPanelsCoverWhatNoSegmentDoes(t *testing.T) {
	for name, c := range map[string]struct {
		hook  float64
		shear [][2]float64
		want  [][2]float64
	}{
		"all of it":                      {0, nil, [][2]float64{{0, 240}}},
		"between, whatever their order":  {0, [][2]float64{{192, 240}, {0, 48}}, [][2]float64{{48, 192}}},
		"around one":                     {0, [][2]float64{{96, 144}}, [][2]float64{{0, 96}, {144, 240}}},
		"none":                           {0, [][2]float64{{0, 240}}, nil},
		"no strip of half an inch":       {0, [][2]float64{{0.5, 239.5}}, nil},
		"from where the tape hooks":      {5.5, [][2]float64{{5.5, 53.5}}, [][2]float64{{53.5, 245.5}}},
		"two segments beside each other": {0, [][2]float64{{48, 96}, {96, 144}}, [][2]float64{{0, 48}, {144, 240}}},
	} {
		w := &plan.Wall{Hook: c.hook, To: geom.Vec2{X: 240}, Sheathing: &plan.Sheathing{Panel: "7/16", Nail: "8d common", Edge: 6, Field: 12}}
		for _, s := range c.shear {
			w.Shear = append(w.Shear, &plan.Shear{From: s[0], To: s[1]})
		}
		var got [][2]float64
		for _, s := range w.Panels() {
			got = append(got, [2]float64{s.From, s.To})
			assert.Equal(t, plan.Shear{From: s.From, To: s.To, Panel: "7/16", Nail: "8d common", Edge: 6, Field: 12}, *s)
		}
		assert.Equal(t, c.want, got, name)
		w.Sheathing = nil
		assert.Empty(t, w.Panels(), "the plan says nothing of it")
	}
}

func TestBreaksMoveWithTheTapeAndTurnInAMirror(t *testing.T) {
	w := &plan.Wall{To: geom.Vec2{X: 240}, Breaks: &plan.PlateBreaks{Bottom: []float64{96, 144}, Upper: []float64{}}}
	h := w.Hooked(5.5)
	assert.Equal(t, plan.PlateBreaks{Bottom: []float64{101.5, 149.5}, Upper: []float64{}}, *h.Breaks)
	assert.Equal(t, []float64{96, 144}, w.Breaks.Bottom, "the plan's own stay")
	p := &plan.Plan{Walls: []*plan.Wall{{To: geom.Vec2{X: 240}, Breaks: &plan.PlateBreaks{Bottom: []float64{96, 100}, Top: []float64{12}}}}}
	p.LieBy(plan.MirrorX, geom.Vec2{})
	assert.Equal(t, plan.PlateBreaks{Bottom: []float64{140, 144}, Top: []float64{228}}, *p.Walls[0].Breaks)
}
