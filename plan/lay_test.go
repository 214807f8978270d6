package plan

import (
	"testing"

	"galewright/plan/geom"

	"github.com/stretchr/testify/assert"
)

// A point east of a corner and one north of it, mirrored and turned by hand.
func TestHowAHouseLies(t *testing.T) {
	east, north := geom.Vec2{X: 1}, geom.Vec2{Y: 1}
	west, south := geom.Vec2{X: -1}, geom.Vec2{Y: -1}
	for _, c := range []struct {
		lay         Lay
		east, north geom.Vec2 // where they come to
		x, y        bool      // counted from the other end along x, y
	}{
		{Lay{}, east, north, false, false},
		{MirrorX, west, north, true, false},
		{MirrorY, east, south, false, true},
		{Turned(1), north, west, true, false}, // what counts east counted south
		{Turned(2), west, south, true, true},
		{Turned(-1), south, east, false, true},
		{MirrorX.Then(Turned(1)), south, west, true, true},
		{Turned(1).Then(MirrorX), north, east, false, false},
		{MirrorX.Then(MirrorY), west, south, true, true},
	} {
		assert.Equal(t, [2]geom.Vec2{c.east, c.north}, [2]geom.Vec2{c.lay.Way(east), c.lay.Way(north)}, "%v", c.lay)
		assert.Equal(t, east, c.lay.Back(c.lay.Way(east)), "%v", c.lay)
		assert.Equal(t, [2]bool{c.x, c.y}, [2]bool{c.lay.Reversed(AxisX), c.lay.Reversed(AxisY)}, "%v", c.lay)
	}
	for _, l := range []Lay{MirrorX, MirrorY, MirrorX.Then(Turned(1)), Turned(2)} {
		assert.Equal(t, Lay{}, l.Then(l), "%v twice", l)
	}
}

// Hips and valleys are named by the quarter that they run down into.
func TestTheNameOfAHipGoesByTheCompass(t *testing.T) {
	assert.Equal(t, "main/hipNW", MirrorX.edgeName("main/hipNE"))
	assert.Equal(t, "main/valleySE2", MirrorY.edgeName("main/valleyNE2"))
	assert.Equal(t, "a/b/hipNW", Turned(1).edgeName("a/b/hipNE"))
	assert.Equal(t, "main", MirrorX.edgeName("main"))
	assert.Equal(t, "main/ridge2", MirrorX.edgeName("main/ridge2"))
	assert.Equal(t, Right, MirrorX.face(Left))
	assert.Equal(t, Left, Turned(1).face(Left))
	assert.Equal(t, Outside, MirrorX.face(Outside))
}
