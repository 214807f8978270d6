package framing

import (
	"testing"

	"github.com/stretchr/testify/assert"

	"galewright/plan"
	"galewright/plan/geom"
)

// The upper plate of a wall from corner to corner, 5.5 to 330.5 where the walls at its ends lap over it, is
// broken by that of a partition 3.5 deep if more than 24 is left of it on either side: from 29.5 to 306.5.
func TestHowNearACornerAPlateIsBroken(t *testing.T) {
	for x, broken := range map[float64]bool{29.4: false, 29.6: true, 150: true, 302.9: true, 303.1: false} {
		p := onSlabPlan()
		p.Lumber.Plate = 1000
		ring(p, 0, rect(0, 0, 336, 240)...)
		w := wall(p, "1P", 0, geom.Vec2{X: x, Y: 150}, geom.Vec2{X: x, Y: 5.5}) // southward, its inside to the east
		w.Studs = twoByFour
		h := frame(t, p)
		assert.Len(t, of(h, "1A", plan.UpperPlate), map[bool]int{true: 2, false: 1}[broken], "%v", x)
	}
}

// On a slab an outline that all but closes, by up to 2 ft, is told of; a larger gap is meant.
func TestAnOutlineThatAllButCloses(t *testing.T) {
	for gap, want := range map[float64]int{0.4: 0, 0.6: 1, 24: 1, 24.1: 0, 100: 0} {
		p := onSlabPlan()
		ring(p, 0, rect(0, 0, 336, 240)...)[3].To = geom.Vec2{Y: gap}
		n := 0
		_, faults := Frame(p)
		for _, d := range faults {
			if d.Code == "walls-open" {
				n++
			}
		}
		assert.Equal(t, want, n, "%v: %v", gap, faults)
	}
}
