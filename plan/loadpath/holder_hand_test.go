package loadpath

import (
	"testing"

	"galewright/plan"
	"galewright/plan/framing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"
)

// stand is a ridge along x with pairs on two plates, and posts, at places.
func stand(bearing bool, pairs, poles []float64) *ridge {
	r := &ridge{roof: &plan.Roof{Ridge: plan.AxisX}, bearing: bearing}
	foot := func() *strip { return &strip{ends: []support{{plate: &framing.Joint{}}}} }
	for _, at := range pairs {
		r.pairs = append(r.pairs, &pair{along: at, a: foot(), b: foot()})
	}
	for _, at := range poles {
		r.poles = append(r.poles, &pole{at: at})
	}
	return r
}

// What holds a ridge takes a force by lever: between two pairs the nearer has all, a post
// and its neighbor share by distance, and past the last holder the one before it is pressed
// down. Past a pair the lever goes back as far as the force is out.
func TestWhatHoldsARidgeAtAPlace(t *testing.T) {
	for _, c := range []struct {
		name         string
		pairs, poles []float64
		at           float64
		want         map[float64]float64
	}{
		{"nothing", nil, nil, 10, map[float64]float64{}},
		{"one pair", []float64{16}, nil, 100, map[float64]float64{16: 1}},
		{"nearer the first of two", []float64{0, 16}, nil, 7, map[float64]float64{0: 1}},
		{"nearer the second", []float64{0, 16}, nil, 9, map[float64]float64{16: 1}},
		{"half way: the lower", []float64{0, 16}, nil, 8, map[float64]float64{0: 1}},
		{"at a pair", []float64{0, 16, 32}, nil, 16, map[float64]float64{16: 1}},
		{"between a pair and a post", []float64{0, 16}, []float64{116}, 41, map[float64]float64{16: 0.75, 116: 0.25}},
		{"past the post", []float64{0, 16}, []float64{116}, 126, map[float64]float64{116: 1.1, 16: -0.1}},
		{"past the last pair: as far back as it is out", []float64{0, 16, 32, 48, 64, 80}, nil, 112, map[float64]float64{80: 2, 48: -1}},
		{"further out than the pairs go back", []float64{0, 16, 32}, nil, 96, map[float64]float64{32: 3, 0: -2}},
		{"before the first pair", []float64{64, 80, 96}, nil, 48, map[float64]float64{64: 2, 80: -1}},
		{"before a post", []float64{100}, []float64{50}, 25, map[float64]float64{50: 1.5, 100: -0.5}},
	} {
		got := map[float64]float64{}
		sum := 0.0
		for _, p := range stand(false, c.pairs, c.poles).held(c.at) {
			got[p.at] += p.k
			sum += p.k
		}
		for at, k := range got {
			if k == 0 {
				delete(got, at)
			}
		}
		assert.InDeltaMapValues(t, c.want, got, 1e-9, c.name)
		if len(got) > 0 {
			assert.InDelta(t, 1, sum, 1e-9, "%s: nothing is lost", c.name)
		}
	}
}

// A pair of rafters does not hold a ridge beam; posts and walls do.
func TestPostsHoldARidgeBeam(t *testing.T) {
	r := stand(true, []float64{0, 16}, []float64{100})
	r.ends = []ridgeEnd{{at: 20}}
	got := r.held(60)
	require.Len(t, got, 2)
	assert.Equal(t, 20.0, got[0].at)
	assert.NotNil(t, got[0].wall)
	assert.InDelta(t, 0.5, got[1].k, 1e-9)
	assert.NotNil(t, got[1].pole)
}
