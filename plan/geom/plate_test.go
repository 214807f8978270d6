package geom

import (
	"testing"

	"github.com/stretchr/testify/assert"
)

func TestAcrossIsRightOfTheLineSeenFromOutside(t *testing.T) {
	p := Plate{A: Vec3{Z: 10}, B: Vec3{Z: 20}, N: Vec3{Y: -1}, Width: 2} // looked at from the south, x runs right
	assert.Equal(t, Vec3{X: 1}, p.Across())
	assert.Equal(t, Vec3{X: 0.5, Z: 13}, p.At(3, 0.5))
	area := Vec3{}
	c := p.Corners()
	for i, q := range c {
		area = area.Add(q.Cross(c[(i+1)%4]))
	}
	assert.Negative(t, area.Y, "counterclockwise seen from outside")
	assert.InDelta(t, 2*10*0.05, Plate{A: p.A, B: p.B, N: p.N, Width: 2, Thickness: 0.05}.Solid().Volume(), 1e-9)
}

func TestAHoleFallsOnThePlateOfItsDistance(t *testing.T) {
	over := Band{
		{A: Vec3{Z: 90}, B: Vec3{Z: 98}, N: Vec3{Y: -1}},
		{A: Vec3{Z: 98}, B: Vec3{Y: 5.5, Z: 98}, N: Vec3{Z: 1}},
		{A: Vec3{Y: 5.5, Z: 98}, B: Vec3{Y: 5.5, Z: 90}, N: Vec3{Y: 1}},
	}
	assert.InDelta(t, 21.5, over.Len(), 1e-9)
	for _, c := range []struct {
		s     float64
		plate int
		along float64
	}{{0, 0, 0}, {7.9, 0, 7.9}, {9, 1, 1}, {14, 2, 0.5}, {30, 2, 16.5}} {
		i, a := over.At(c.s)
		assert.Equal(t, c.plate, i)
		assert.InDelta(t, c.along, a, 1e-9)
	}
	assert.Equal(t, over[2].B, over.Turned()[0].A)
}
