package framing

import (
	"testing"

	"galewright/plan"

	"github.com/stretchr/testify/assert"
)

// Found by index or by looking at all, also where one was taken away, it is the
// wall's own members in their order.
func TestMembersInAWall(t *testing.T) {
	a, b := &plan.Wall{Name: "a"}, &plan.Wall{Name: "b"}
	list := []*Member{{ID: "1", Wall: a}, {ID: "2", Wall: b}, {ID: "3"}, {ID: "4", Wall: a}}
	h := &House{Members: list}
	want := []*Member{list[0], list[3]}
	assert.Equal(t, want, h.In(a))
	h.indexWalls()
	assert.NotNil(t, h.walls)
	assert.Equal(t, want, h.In(a))
	assert.Equal(t, list[1:2], h.In(b))
	assert.Empty(t, h.In(&plan.Wall{}))
	h.Members = list[:3]
	assert.Equal(t, list[:1], h.In(a))
	(&House{}).indexWalls()
}
