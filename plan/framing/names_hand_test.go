package framing

import (
	"testing"

	"github.com/stretchr/testify/assert"

	"galewright/plan"
)

// A roof whose ridge is cut in two where another crosses it has a second ridge of its name.
func TestASecondRidgeHasANumber(t *testing.T) {
	for _, c := range roofHouses {
		if c.name != "cross of two gables" {
			continue
		}
		h, _ := Frame(c.plan())
		hosts := map[string]bool{}
		for _, j := range h.Joints {
			if j.Kind == plan.RafterRidge && (j.First().Role == plan.Rafter && len(j.Members) == 3) {
				hosts[j.Host] = true
			}
		}
		assert.Equal(t, map[string]bool{"main": true, "cross": true, "cross/ridge2": true}, hosts)
	}
}

// A top plate is spliced over a header, 100 to 140, or within 6 in of its ends, only for want of
// another place: 10 more there. Whole feet cost 3 and full-height studs nothing, over a lap 30 more.
func TestWhatAPlaceForASpliceCosts(t *testing.T) {
	w := &framedWall{openings: []*framedOpening{{h0: 100, h1: 140}}}
	for _, s := range []float64{93.5, 94.5, 120, 145.5, 146.5, 200} {
		w.uprights = append(w.uprights, &Member{Role: plan.Stud, S0: s - 0.75, S1: s + 0.75})
	}
	cost := map[float64]float64{}
	for _, p := range splicePlaces(w, span{88, 210}, 1, nil, []float64{220}) {
		if _, ok := cost[p.s]; !ok || p.cost < cost[p.s] {
			cost[p.s] = p.cost
		}
	}
	assert.Equal(t, map[float64]float64{
		93.5: 0, 94.5: 10, 120: 10, 145.5: 10, 146.5: 0, 200: 30,
		100: 13, 112: 13, 124: 13, 136: 13, 148: 3, 160: 3, 172: 3, 184: 3, 196: 3, 208: 33,
	}, cost)
}
