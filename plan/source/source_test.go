package source

import (
	"testing"

	"github.com/stretchr/testify/assert"
)

func TestEveryGradeHasItsMeaning(t *testing.T) {
	seen := map[string]bool{}
	for _, g := range Grades() {
		assert.NotEmpty(t, g.Meaning(), g)
		assert.False(t, seen[g.Meaning()], g)
		seen[g.Meaning()] = true
	}
	assert.Len(t, meanings, len(Grades()))
	assert.Empty(t, Grade("read somewhere").Meaning())
}
