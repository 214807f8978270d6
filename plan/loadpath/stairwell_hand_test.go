package loadpath

import (
	"testing"

	"github.com/stretchr/testify/assert"

	"galewright/plan"
	"galewright/plan/geom"
)

// What an opening leaves out of the joists on both sides of a support, by hand: supports
// at 0, 168 and 336 along the joists, the opening from 175 to 217. On the one at 168 the
// joists after it are cut 7 in on: 161 of 168 are gone. On the one at 336 those before it
// end 119 in off: 49 are gone. The first is not touched, nor is one on the far side of
// its neighbor.
func TestJoistsThatAnOpeningCutsByHand(t *testing.T) {
	x := &plan.FloorOpening{Lo: geom.Vec2{X: 100, Y: 175}, Hi: geom.Vec2{X: 220, Y: 217}}
	for _, c := range []struct{ at, before, after, want float64 }{
		{0, 0, 168, 0},
		{168, 168, 168, 161},
		{336, 168, 0, 49},
		{336, 168, 168, 49},
		{504, 168, 0, 0},
		{175, 100, 168, 168},
		{217, 168, 100, 168},
		{190, 100, 120, 220}, // it lies under the opening: nothing rests on it
	} {
		assert.InDelta(t, c.want, cutJoists(x, 1, c.at, c.before, c.after), 1e-9, "%v", c)
	}
	assert.InDelta(t, 40, cutJoists(x, 0, 60, 60, 80), 1e-9, "joists along x: the opening begins at 100, 40 in off")
}

// The floor over a wall of four studs at 0, 16, 32 and 48 that serve 8, 16, 16 and 8 in;
// beside stations 12 to 30 an opening leaves 3 of 5 lb an inch out. The second stud's
// length, 8 to 24, holds 12 in of that, the third's, 24 to 40, holds 6.
func TestFloorBesideAnOpeningByHand(t *testing.T) {
	p := &wallPath{floorPer: down(5), floorOut: []floorOut{{12, 30, down(3)}}}
	for _, c := range [][2]float64{{4, 8}, {16, 16}, {32, 16}, {44, 8}} {
		p.carriers = append(p.carriers, &carrier{station: c[0], share: c[1]})
	}
	p.carriers[0].station, p.carriers[3].station = 0, 48
	p.weighFloors()
	for i, want := range []float64{40, 80 - 36, 80 - 18, 40} {
		assert.InDelta(t, want, p.carriers[i].floor.D, 1e-9, "stud %d", i)
	}
	p.floorOut[0].less = down(9)
	p.weighFloors()
	assert.Zero(t, p.carriers[1].floor.D, "never less than nothing")
}

// On the demo's north wall the joists behind the stair bring 9'-11" by half where they
// brought 14'-0": at the floor's weight on the carriers beside it.
func TestTheStairIsNotCountedAsFloor(t *testing.T) {
	a := analyzed(t, string(Source(t, "marsh-wren.toml")))
	psf := a.dead.floor(a.plan.Levels[1])
	for _, p := range a.paths {
		if p.w.Name != "1N" {
			continue
		}
		whole, cut := 0, 0
		for i, c := range p.carriers {
			if i == 0 || i == len(p.carriers)-1 {
				continue
			}
			lo, hi := 528-(c.station+p.carriers[i+1].station)/2, 528-(c.station+p.carriers[i-1].station)/2 // from the west
			feet := 7.0
			switch {
			case lo > 177.5 && hi < 302.5:
				feet, cut = (119.0/12)/2, cut+1
			case hi > 177.5 && lo < 302.5:
				continue // partly
			default:
				whole++
			}
			assert.InDelta(t, psf*feet*c.share/12, c.floor.D, 0.01, "%v", c.station)
		}
		assert.True(t, cut > 2 && whole > 10, "%d %d", cut, whole)
	}
}
