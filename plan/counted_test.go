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
