package roofplan

import (
	"testing"

	"galewright/plan/geom"

	"github.com/stretchr/testify/assert"
)

// An edge that one polygon has one way and another the other way is inside; what is left is there once.
func TestSharedEdgesCancel(t *testing.T) {
	type e = [2]int
	for _, c := range []struct{ edges, want []e }{
		{nil, nil},
		{[]e{{0, 1}, {1, 2}, {2, 0}}, []e{{0, 1}, {1, 2}, {2, 0}}},
		{[]e{{0, 1}, {1, 2}, {2, 0}, {2, 1}, {1, 3}, {3, 2}}, []e{{0, 1}, {2, 0}, {1, 3}, {3, 2}}},
		{[]e{{0, 1}, {1, 2}, {0, 1}}, []e{{0, 1}, {1, 2}}},
		{[]e{{0, 1}, {0, 1}, {1, 0}}, nil},
	} {
		assert.Equal(t, c.want, cancel(c.edges), "%v", c.edges)
	}
}

// An edge of 100 in is broken at the corners on it, in their order; at none at its ends, past them or 1/1000 off.
func TestAnEdgeIsBrokenAtCorners(t *testing.T) {
	corners := []geom.Vec2{pt(0, 0), pt(100, 0), pt(70, 0), pt(30, 0.00005), pt(50, 0.001), pt(-10, 0), pt(110, 0)}
	assert.Equal(t, [][2]int{{0, 3}, {3, 2}, {2, 1}}, split(corners, 0, 1))
	assert.Equal(t, [][2]int{{1, 2}, {2, 3}, {3, 0}}, split(corners, 1, 0))
	assert.Nil(t, split(corners, 0, 0))
}
