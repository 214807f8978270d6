package plan

import (
	"testing"

	"github.com/stretchr/testify/assert"
)

func TestHeightsOfAWall(t *testing.T) {
	first := &Level{Name: "first", Floor: 36, PlateHeight: 109}
	second := &Level{Name: "second", Index: 1, Floor: 157, PlateHeight: 97}
	p := &Plan{Levels: []*Level{first, second}}
	for name, c := range map[string]struct {
		wall          Wall
		height, plate float64
		top           *Level
		in, passes    bool // the second story
	}{
		"one story":   {Wall{Level: first, ToLevel: first}, 109, 145, first, false, false},
		"balloon":     {Wall{Level: first, ToLevel: second}, 218, 254, second, true, true},
		"its own":     {Wall{Level: first, ToLevel: first, Height: 60}, 60, 96, first, false, false},
		"own balloon": {Wall{Level: first, ToLevel: second, Height: 150}, 150, 186, second, true, true},
		"upper story": {Wall{Level: second, ToLevel: second}, 97, 254, second, true, false},
	} {
		assert.InDelta(t, c.height, c.wall.TopHeight(), 1e-9, name)
		assert.InDelta(t, c.plate, c.wall.PlateTop(), 1e-9, name)
		assert.Equal(t, c.top, c.wall.TopLevel(), name)
		assert.Equal(t, c.in, c.wall.On(second), name)
		assert.Equal(t, c.passes, c.wall.Passes(second), name)
	}
	plain := &Wall{Level: first}
	assert.Equal(t, first, plain.TopLevel())
	assert.True(t, plain.On(first))
	assert.False(t, plain.On(second))
	assert.Equal(t, second, p.Above(first))
	assert.Nil(t, p.Above(second))
	assert.InDelta(t, 96, (&Opening{At: 60, Width: 36}).End(), 1e-9)
}
