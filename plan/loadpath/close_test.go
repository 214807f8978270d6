package loadpath

import (
	"math"
	"testing"

	"github.com/stretchr/testify/assert"
)

// What is left of a link when it is closed: what asks for something has a
// capacity or a gap; the outputs print one or the other.
func TestClosedLinkHasCapacityOrGap(t *testing.T) {
	held := &Capacity{Value: 400, Governs: "nails"}
	for _, c := range []struct {
		name          string
		demand        float64
		capacity      *Capacity
		left, ratio   float64
		gap, governed string
	}{
		{"rounding, nothing placed", 0.149, nil, 0, 0, "", "no demand"},
		{"rounding, a piece placed", 0.5, held, 0, 0, "", "nails"},
		{"pressed down", -3, nil, 0, 0, "", "no demand"},
		{"little, nothing placed", 0.6, nil, 0.6, math.Inf(1), "no hardware at this joint", "no hardware at this joint"},
		{"no number known", 90, &Capacity{Unknown: "no nails"}, 90, math.Inf(1), "no capacity known: no nails", "no capacity known: no nails"},
		{"held", 100, held, 100, 0.25, "", "nails"},
	} {
		l := &Link{Demand: c.demand}
		l.close(c.capacity)
		assert.Equal(t, c.left, l.Demand, c.name)
		assert.Equal(t, c.ratio, l.Ratio, c.name)
		assert.Equal(t, c.gap, l.Gap, c.name)
		assert.Equal(t, c.governed, l.Governs(), c.name)
		assert.True(t, l.Demand == 0 || l.Capacity != nil || l.Gap != "", c.name)
	}
}
