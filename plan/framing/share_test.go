package framing

import (
	"math"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"galewright/plan"
	"galewright/plan/geom"
)

// houseUnder returns a house of 288 x 192 in under one roof.
func houseUnder(t *testing.T, kind plan.RoofKind, pitch float64) *House {
	p := stories(1)
	ring(p, 0, rect(0, 0, 288, 192)...)
	roofOn(p, "main", kind, "x", pitch, rect(0, 0, 288, 192))
	return roofed(t, p)
}

func TestSharesMakeUpTheRoof(t *testing.T) {
	for _, c := range roofHouses {
		if c.name == "T of trusses with a valley set" {
			continue // trusses under a valley set and its frames are both given that roof: too much, never too little
		}
		t.Run(c.name, func(t *testing.T) {
			h := roofed(t, c.plan())
			roof, served := 0.0, 0.0
			for _, f := range h.Roof {
				roof += f.AreaBetween(0, math.Inf(-1), math.Inf(1))
			}
			for _, s := range h.Shares {
				served += s.Width * s.Run
				if s.Gathers() {
					assert.Zero(t, s.Width, s.Member.ID)
				}
			}
			assert.InEpsilon(t, roof, served, 0.02)
		})
	}
}

func TestSharesOfAGableAreItsSpacing(t *testing.T) {
	// Rafters at 16 in o.c., rake of 12 in, the first in the face of the wall:
	// it serves the rake, half its own breadth and half the way to the next.
	h := houseUnder(t, "gable", 6)
	for _, s := range h.Shares {
		if s.Up.Y < 0.9 {
			continue
		}
		switch x := s.Low.X; {
		case x < 1:
			assert.InDelta(t, 12+(x+16)/2, s.Width, 1e-6)
			assert.InDelta(t, -12, s.From, 1e-6)
		case x > 32 && x < 250:
			assert.InDelta(t, 16, s.Width, 1e-6, s.Member.ID)
		}
		assert.InDelta(t, 18+96, s.Run, 1e-6, "from the eave to the middle of the ridge")
	}
}

func TestPlateJointsShareTheWall(t *testing.T) {
	// Their lengths of wall make up the wall and no more: none of the rake.
	h := houseUnder(t, "gable", 6)
	for _, w := range []string{"1A", "1C"} {
		list, sum := joints(h, w, plan.RafterPlate), 0.0
		require.NotEmpty(t, list)
		for _, j := range list {
			require.NotNil(t, j.Share)
			assert.Equal(t, j.First(), j.Share.Member)
			sum += j.Tributary
		}
		assert.InDelta(t, 288, sum, 1e-6, w)
		assert.Less(t, list[0].Tributary, list[1].Tributary, "half the way on one side only")
	}
}

func TestHipsOfAPyramidLeanOnEachOther(t *testing.T) {
	p := stories(1)
	ring(p, 0, rect(0, 0, 192, 192)...)
	roofOn(p, "main", "hip", "x", 8, rect(0, 0, 192, 192))
	peaks := 0
	for _, j := range roofed(t, p).Joints {
		if j.Peak {
			peaks++
			assert.Equal(t, []plan.Role{plan.HipRafter, plan.HipRafter}, rolesOf(j))
			assert.Less(t, j.At.Flat().Sub(geom.Vec2{X: 96, Y: 96}).Len(), 3.0)
		}
	}
	assert.Equal(t, 3, peaks, "three ties hold four hips together")
	for _, j := range houseUnder(t, "hip", 8).Joints {
		assert.False(t, j.Peak, "a ridge carries them: %s", j.ID)
	}
}

func TestGableTrussBesideAFlushWingIsHeld(t *testing.T) {
	// The east wall runs on under the wing: the truss over the main roof's end
	// crosses no wall at its south end and stands on that one.
	p := stories(1)
	ring(p, 0, geom.Vec2{}, geom.Vec2{X: 216}, geom.Vec2{X: 216, Y: -120}, geom.Vec2{X: 360, Y: -120}, geom.Vec2{X: 360, Y: 192}, geom.Vec2{Y: 192})
	for _, r := range []struct {
		name  string
		ridge plan.Axis
		area  []geom.Vec2
	}{{"main", "x", rect(0, 0, 360, 192)}, {"wing", "y", rect(216, -120, 360, 0)}} {
		roofOn(p, r.name, "gable", r.ridge, 6, r.area).GableEnd = [2]plan.GableEnd{"gable truss", "gable truss"}
	}
	h := roofed(t, p)
	for _, m := range withRole(h, plan.Truss) {
		ends := 0
		for _, j := range h.Joints {
			if j.Kind == plan.RafterPlate && j.First() == m {
				ends++
			}
		}
		assert.GreaterOrEqual(t, ends, 2, m.ID)
	}
}
