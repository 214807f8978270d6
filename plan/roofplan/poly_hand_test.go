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

// Of two faces apart, one over the pieces from 0 to 100 and one over that from 200 to 300, each has the sides that reach
// over a piece of its own, a side over both is in both, and one that only touches a piece is in none.
func TestSidesOverAFace(t *testing.T) {
	square := func(x0, x1 float64) []geom.Vec2 { return []geom.Vec2{pt(x0, 0), pt(x1, 0), pt(x1, 50), pt(x0, 50)} }
	pieces := [][]geom.Vec2{square(0, 60), square(60, 100), square(200, 300)}
	part := func(side int, polys ...[]geom.Vec2) facet { return facet{side: side, polys: polys} }
	parts := []facet{part(0, square(0, 50)), part(1, square(250, 280)), part(2, square(70, 80), square(210, 220)), part(3, square(100, 200)), part(4, square(400, 500), square(90, 150))}
	for _, c := range []struct {
		loop []geom.Vec2
		want []int
	}{{square(0, 100), []int{0, 2, 4}}, {square(200, 300), []int{1, 2}}, {square(400, 500), nil}} {
		var got []int
		for _, f := range over(c.loop, pieces, parts) {
			got = append(got, f.side)
		}
		assert.Equal(t, c.want, got)
	}
	assert.Len(t, pieces, 3)
	assert.Len(t, parts, 5)
}
