package schedule

import (
	"testing"

	"github.com/stretchr/testify/assert"

	"galewright/plan/hardware"
)

// A ring shank nail is not the smooth one of its size.
func TestRingNailsAreCountedApart(t *testing.T) {
	nail := func(s string) hardware.Nail {
		n, err := hardware.ParseNail(s)
		assert.NoError(t, err)
		return n
	}
	var c tally
	c.add(nail("0.113 x 2 3/8"), false, 5)
	c.add(nail("ring 0.113 x 2 3/8"), false, 7)
	c.add(nail("ring 0.113 x 2 3/8"), false, 2)
	assert.Len(t, c.list, 2)
	assert.Equal(t, 9, c.list[1].Count)
	assert.Equal(t, "ring 0.113 x 2 3/8", c.list[1].Nail)
	assert.True(t, nail("ring 0.113 x 2 3/8").Ring())
	assert.False(t, nail("8d common").Ring())
}
