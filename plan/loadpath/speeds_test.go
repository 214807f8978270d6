package loadpath

import (
	"bufio"
	"bytes"
	"math"
	"testing"

	"galewright/plan"
	"galewright/plan/units"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"
)

// Of a line by hand: wind alone on a link, ratio 0.64 at 150 mph; demand goes with
// the square of the speed, so it is met at 150/sqrt(0.64) = 187.5 mph. With dead load
// of half the design wind's demand: 0.6 W k² - 0.6 D = C.
func TestMeetByHand(t *testing.T) {
	square := func(at float64) (out []float64) {
		for _, k := range steps {
			out = append(out, at*k*k)
		}
		return out
	}
	var o Overtaken
	require.True(t, o.meet(150, square(0.64)))
	assert.InDelta(t, 187.5, o.Speed, 1e-9)

	var held []float64 // 0.6·1000 k² − 0.6·500 over 500: met at k² = 4/3
	for _, k := range steps {
		held = append(held, math.Max(0, 0.6*1000*k*k-0.6*500)/500)
	}
	o = Overtaken{}
	require.True(t, o.meet(150, held))
	assert.InDelta(t, 150*math.Sqrt(4.0/3), o.Speed, 1e-9)

	o = Overtaken{}
	require.True(t, o.meet(150, square(7)))
	assert.True(t, o.Under)
	o = Overtaken{}
	require.True(t, o.meet(150, square(0.01)))
	assert.True(t, o.Over)
	o = Overtaken{}
	assert.False(t, o.meet(150, make([]float64, len(steps))))
}

// At the speed told the load path itself, worked out anew, finds the ratio 1, or a
// little under where the chord lies over the curve; wind from a side alone never
// overtakes a link sooner than wind from any.
func TestSpeedsAreWhereRatiosComeToOne(t *testing.T) {
	r := demoReport(t)
	any := r.Speeds("")
	require.NotEmpty(t, any)
	tried := 0
	for i := 0; i < len(any) && tried < 4; i += 1 + len(any)/5 {
		o := any[i]
		if o.Under || o.Over {
			continue
		}
		tried++
		there := keyed(r.blown(o.Speed, ""))
		for k, l := range keyed(r.Links) {
			if l == o.Link {
				assert.LessOrEqual(t, there[k].Demand/l.Capacity.Value, 1+1e-6, o.ID)
				assert.Greater(t, there[k].Demand/l.Capacity.Value, 0.95, o.ID)
			}
		}
	}
	require.Positive(t, tried)
	soonest := map[*Link]float64{}
	for _, o := range any {
		soonest[o.Link] = o.Speed
	}
	for _, o := range r.Speeds(plan.North) {
		assert.GreaterOrEqual(t, o.Speed, soonest[o.Link]-1e-6, o.ID)
	}
}

// A link whose ratio is over 1 at the design wind is overtaken below it, any other
// not.
func TestDesignSpeedPartsTheLinks(t *testing.T) {
	r := demoReport(t)
	design := r.design()
	for _, o := range r.Speeds("") {
		assert.Equal(t, o.Ratio > 1, !o.Over && o.Speed < design, "%s: %.2f at %.0f mph", o.ID, o.Ratio, o.Speed)
	}
	var b bytes.Buffer
	require.NoError(t, r.WriteSpeeds(&b, r, "itself"))
	assert.Contains(t, b.String(), "With itself")
	assert.Contains(t, b.String(), "design")
	assert.NotContains(t, b.String(), "safe")
}

// Names of links are printed whole, however long, in columns that fit the longest; a
// link that no one mark holds says what holds it.
func TestWeakestPrintsWholeNames(t *testing.T) {
	r := &Report{}
	c := &Check{Title: "Decks to shear walls"}
	list := []Overtaken{
		{Link: &Link{Check: c, ID: "floor to the girders, line 1W/2W", Capacity: &Capacity{Governs: "82 nails of N22, rim to plate or girder"}}, Speed: 136},
		{Link: &Link{Check: c, ID: "1S-1-WE", Capacity: &Capacity{Mark: "hold-down", Governs: "bearing"}}, Speed: 150},
	}
	var out bytes.Buffer
	b := bufio.NewWriter(&out)
	r.writeFirst(printer{b, units.Imperial}, "First", list, 10)
	require.NoError(t, b.Flush())
	assert.Contains(t, out.String(), "   1    136  Decks to shear walls  floor to the girders, line 1W/2W  82 nails of N22, rim to plate or girder\n")
	assert.Contains(t, out.String(), "   2    150  Decks to shear walls  1S-1-WE                           hold-down\n")
}
