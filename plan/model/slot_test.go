package model_test

import (
	"testing"

	"galewright/plan/plantest"

	"github.com/stretchr/testify/assert"
)

// The middle line of each long strap of the demo, half of its thickness out of its
// face, is walked through the solids of the JSON: what wood it goes through are its
// slots, as long as they say. Those at the outer ends of walls and on their inside
// faces have none.
func TestLongStrapsAreSlottedThroughTheWoodInTheirWay(t *testing.T) {
	m := decoded(t, run(t, "marsh-wren", plantest.Slotted...))
	all := parts(m)
	slotted, clear := 0, 0
	each(m, "pieces", func(p object) {
		if p["mark"] != "floor-strap" {
			return
		}
		found := map[string]float64{}
		each(p, "plates", func(x object) {
			c, n := x["corners_in"].([]any), point(x["normal"])
			half := x["thickness_in"].(float64) / 2
			a, b := point(c[0]).to(point(c[3]), 0.5), point(c[1]).to(point(c[2]), 0.5)
			for i := range n {
				a[i], b[i] = a[i]+half*n[i], b[i]+half*n[i]
			}
			for id, l := range sampled(all, a, b) {
				found[id] += l
			}
		})
		said := map[string]float64{}
		each(p, "slots", func(x object) {
			said[x["member"].(string)] = x["length_in"].(float64)
			assert.Less(t, x["left_in"].([]any)[0].(float64)+x["across_in"].(float64)+x["left_in"].([]any)[1].(float64), 5.5+2e-4, "three lengths rounded to 1/10,000 in")
		})
		assert.Len(t, said, len(found), p["tag"])
		for id, l := range found {
			assert.InDelta(t, l, said[id], 2*step, "%v in %s", p["tag"], id)
		}
		if len(said) == 0 {
			clear++
		} else {
			slotted++
		}
	})
	// 2S-449, 2N-95, 2N-433 and 2W-168 through their own plates, 2E and 2W at both
	// ends along those of the walls that they meet; four outer ends, three inside.
	assert.Equal(t, [2]int{8, 7}, [2]int{slotted, clear})
}
