package loadpath

import (
	"testing"

	"galewright/plan"

	"github.com/stretchr/testify/assert"
)

// A deck of 20 by 40 ft, wind along x of 100 plf over its 20 ft: 2,000 lb. By width each
// line takes what is nearer to it than to the next, the outer ones all beyond them too.
func TestDeckHandedOutByWidth(t *testing.T) {
	m := &model{givens: givens{plan: &plan.Plan{}}}
	for _, c := range []struct {
		at   []float64
		load []stretch
		want []float64
	}{
		{[]float64{0, 240}, []stretch{{lo: 0, hi: 240, w: 100}}, []float64{1000, 1000}},
		{[]float64{0, 60, 240}, []stretch{{lo: 0, hi: 240, w: 100}}, []float64{250, 1000, 750}},
		{[]float64{0, 240}, []stretch{{lo: -24, hi: 264, w: 100}}, []float64{1200, 1200}},
		{[]float64{90}, []stretch{{lo: -24, hi: 264, w: 100}}, []float64{2400}},
		// The first 6 ft in the end zone, at 150 plf: 900 lb, then 400 lb to the middle and 1,000.
		{[]float64{0, 240}, []stretch{{lo: 0, hi: 72, w: 150}, {lo: 72, hi: 240, w: 100}}, []float64{900 + 400, 1000}},
		{nil, []stretch{{lo: 0, hi: 240, w: 100}}, []float64{}},
	} {
		d := &diaphragm{}
		for i, at := range c.at {
			d.lines[0] = append(d.lines[0], &ShearLine{n: i, At: at})
		}
		got := m.spread(d, 0, c.load)
		assert.InDeltaSlice(t, c.want, got, 1e-9, "%v", c)
		assert.Len(t, got, len(c.want))
	}
}

// By stiffness: lines along x at 0 and 240 in, three to one, have their middle at 60 in,
// and two along y at 0 and 480, 2 each, at 240. The 2,000 lb act at 120 in, 60 off that: a
// twist of 120,000 lb in. Against it stand 3 x 60² + 180² + 2 x 2 x 240² = 273,600. The
// first line has 1,500 - 120,000 x 3 x 60 / 273,600 = 1,421 lb, the other 500 + 79.
func TestDeckHandedOutByStiffness(t *testing.T) {
	deck := func(k ...float64) *diaphragm {
		d := &diaphragm{}
		for i, at := range []float64{0, 240} {
			d.lines[0] = append(d.lines[0], &ShearLine{n: i, At: at, stiff: k[i], byCapacity: 1})
		}
		for i, at := range []float64{0, 480} {
			d.lines[1] = append(d.lines[1], &ShearLine{n: i + 2, At: at, stiff: k[2+i], byCapacity: 1})
		}
		return d
	}
	m := &model{givens: givens{plan: &plan.Plan{Loads: plan.Loads{Distribution: plan.Stiffness}}}}
	load := []stretch{{lo: 0, hi: 240, w: 100}}
	assert.InDeltaSlice(t, []float64{1421.05, 578.95}, m.spread(deck(3, 1, 2, 2), 0, load), 0.01)
	assert.InDeltaSlice(t, []float64{1000, 1000}, m.spread(deck(3, 3, 2, 2), 0, load), 1e-9)
	// Of one whose deflection is not known no stiffness is taken, but length times capacity
	// of all, here alike.
	assert.InDeltaSlice(t, []float64{1000, 1000}, m.spread(deck(3, 0, 2, 2), 0, load), 1e-9)
	// Two stretches of 1,500 and 500 lb, at 60 and 180 in: together at 90, 30 off the middle.
	two := []stretch{{lo: 0, hi: 120, w: 150}, {lo: 120, hi: 240, w: 50}}
	assert.InDeltaSlice(t, []float64{1500 - 39.47, 500 + 39.47}, m.spread(deck(3, 1, 2, 2), 0, two), 0.01)
	// Wind along y: its two lines are alike and the load is in the middle of them.
	assert.InDeltaSlice(t, []float64{2000, 2000}, m.spread(deck(3, 1, 2, 2), 1, []stretch{{lo: 0, hi: 480, w: 100}}), 1e-9)
	assert.Equal(t, []float64{0, 0}, m.spread(deck(3, 1, 2, 2), 0, nil))
	one := &diaphragm{}
	one.lines[0] = []*ShearLine{{At: 0, stiff: 3}}
	assert.InDeltaSlice(t, []float64{2000}, m.spread(one, 0, load), 1e-9, "alone, it takes all and twists")
}

// A stretch of deck between two lines is a beam: of 10 ft under 100 plf 500 lb at each end
// and wL²/8 = 1,250 lb ft; under 500 lb on its first 5 ft 375 and 125, and its largest moment
// where the shear ends, 3.75 ft in, 703 lb ft. Past the last line it is held at that line
// alone.
func TestStretchesOfADeckAsBeams(t *testing.T) {
	all, half := []Band{{Lo: -60, Hi: 180, Load: 100}}, []Band{{Lo: 0, Hi: 60, Load: 100}}
	for _, c := range []struct {
		name   string
		lines  [2]string
		bands  []Band
		ends   [2]float64
		moment float64 // the largest, lb ft
		at     float64 // in, where it is asked for
		there  float64 // lb ft
	}{
		{"a beam under all", [2]string{"a", "b"}, all, [2]float64{500, 500}, 1250, 30, 500*2.5 - 250*1.25},
		{"a beam under its first half", [2]string{"a", "b"}, half, [2]float64{375, 125}, 375 * 3.75 / 2, 90, 125 * 2.5},
		{"two bands of it", [2]string{"a", "b"}, []Band{{Lo: 0, Hi: 60, Load: 50}, {Lo: 0, Hi: 60, Load: 50}}, [2]float64{375, 125}, 375 * 3.75 / 2, 0, 0},
		{"free at its low end", [2]string{"", "b"}, half, [2]float64{0, 500}, 500 * 7.5, 120, -500 * 7.5},
		{"free at its high end", [2]string{"a", ""}, half, [2]float64{500, 0}, 500 * 2.5, 0, -500 * 2.5},
		{"free there, at its tip", [2]string{"a", ""}, all, [2]float64{1000, 0}, 1000 * 5, 120, 0},
		{"no wind on it", [2]string{"a", "b"}, []Band{{Lo: 130, Hi: 200, Load: 100}}, [2]float64{}, 0, 60, 0},
	} {
		b := Bay{Lines: c.lines, Lo: 0, Hi: 120}
		b.load(c.bands)
		assert.InDeltaSlice(t, c.ends[:], b.Ends[:], 1e-9, c.name)
		assert.InDelta(t, c.moment, b.Moment/12, 1e-6, c.name)
		assert.InDelta(t, c.there, b.moment(c.bands, c.at)/12, 1e-6, c.name)
	}
	b := Bay{Lines: [2]string{"a", "b"}}
	assert.Equal(t, "roof deck, line a, from its high side", b.link("roof", 0))
	assert.Equal(t, "roof deck, line b, from its low side", b.link("roof", 1))
}
