package plan

import (
	"testing"

	"github.com/stretchr/testify/assert"
)

func TestCounted(t *testing.T) {
	assert.Equal(t, "1 gap", Counted(1, "gap"))
	assert.Equal(t, "0 gaps", Counted(0, "gap"))
	assert.Equal(t, "2 boxes", Counted(2, "box"))
	assert.Equal(t, "2 inches", Counted(2, "inch"))
}

func TestCountedFasteners(t *testing.T) {
	assert.Equal(t, "9 of 10d x 1 1/2", CountedFasteners(9, "10d x 1 1/2"))
	assert.Equal(t, "27 screws No. 12 x 1 1/2", CountedFasteners(27, "screw No. 12 x 1 1/2"))
	assert.Equal(t, "1 bolt 3/4", CountedFasteners(1, "bolt 3/4"))
}
