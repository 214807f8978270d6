package geom

import (
	"math"
	"testing"

	"github.com/stretchr/testify/assert"
)

// at returns the unit direction at an angle from the x axis, degrees.
func at(deg float64) Vec2 {
	return Vec2{X: math.Cos(deg * math.Pi / 180), Y: math.Sin(deg * math.Pi / 180)}
}

func TestDirectionsAgreeWithinTheirAngle(t *testing.T) {
	x := at(0)
	for name, c := range map[string]struct {
		in, out float64 // degrees: just inside, just outside
		holds   func(d Vec2) bool
	}{
		"with":          {25, 27, func(d Vec2) bool { return With(x, d) }},
		"against":       {155, 153, func(d Vec2) bool { return Against(x, d) }},
		"square":        {83, 81, func(d Vec2) bool { return Square(x, d) }},
		"crosses":       {31, 29, func(d Vec2) bool { return Crosses(x, d) }},
		"one line":      {0.7, 0.9, func(d Vec2) bool { return OneLine(x, d) }},
		"parallel":      {2.8, 2.9, func(d Vec2) bool { return Parallel(x, d) }},
		"parallel back": {177.2, 177.1, func(d Vec2) bool { return Parallel(x, d) }},
		"skims":         {5.7, 5.8, func(d Vec2) bool { return Skims(x, d) }},
		"same":          {0.05, 0.06, func(d Vec2) bool { return Same(x, d) }},
		"runs along":    {11, 12, func(d Vec2) bool { return d.RunsAlong(0) }},
		"leans":         {72, 73, func(d Vec2) bool { return d.Leans(0) }},
		"lengthways":    {45, 46, func(d Vec2) bool { return Lengthways(x, d) }},
		"athwart":       {45, 44, func(d Vec2) bool { return Athwart(x, d) }},
		"toward":        {59, 61, func(d Vec2) bool { return Toward(d, x) }},
		"not toward":    {121, 119, func(d Vec2) bool { return Toward(d, x.Mul(-1)) }},
		"in line":       {15, 16, func(d Vec2) bool { return InLine(x, d) }},
		"in line back":  {165, 164, func(d Vec2) bool { return InLine(x, d) }},
		"mainly":        {45, 46, func(d Vec2) bool { return d.Mainly(0) }},
	} {
		assert.True(t, c.holds(at(c.in)), "%s at %v", name, c.in)
		assert.False(t, c.holds(at(c.out)), "%s at %v", name, c.out)
	}
	assert.Equal(t, 1, at(45).MainAxis())
	assert.Equal(t, 0, at(44).MainAxis())
	assert.False(t, OneLine(x, at(180)), "a line that looks back is another")
}

// A member stands from 45° on; a roof's top is a top up to 60°, 20.8 in 12, and
// what is steeper is a wall's face.
func TestUprightAndFlatInSpace(t *testing.T) {
	slope := func(deg float64) Vec3 { a := at(deg); return Vec3{X: a.X, Z: a.Y} }
	assert.True(t, Upright(slope(46)))
	assert.True(t, Upright(slope(-46)), "down as up")
	assert.False(t, Upright(slope(44)))
	for _, off := range []float64{-1e-6, 0, 1e-6} {
		assert.False(t, Upright(slope(45+off)), "a rafter of 12:12, however it is rounded")
	}
	assert.True(t, LiesFlat(slope(90-59)))
	assert.True(t, LiesFlat(slope(-(90 - 59))), "an underside lies too")
	assert.False(t, LiesFlat(slope(90-61)))
	assert.True(t, LooksUp(slope(90-59)))
	assert.False(t, LooksUp(slope(-90)))
}
