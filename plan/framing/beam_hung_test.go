package framing

import (
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"galewright/plan"
	"galewright/plan/geom"
)

// onAnother adds to a house of two floors a second beam, B0, first in the plan, from the
// middle of B1 north to the wall.
func onAnother(set plan.BeamSet, section plan.Lumber) *plan.Plan {
	p := twoFloors(set, geom.Vec2{Y: 120}, geom.Vec2{X: 336, Y: 120}, twoTwoByTen)
	one := *p.Beams[0]
	one.Name, one.Member = "B0", section
	one.From, one.To = geom.Vec2{X: 168, Y: 120}, geom.Vec2{X: 168, Y: 240}
	p.Beams = append([]*plan.FloorBeam{&one}, p.Beams...)
	return p
}

// B0 ends at the face of B1, 121.5, whatever the order in the plan, and at the inside face
// of the wall, 234.5, where it is dropped; at the rim, 238.5, where it is flush along the
// joists.
func TestABeamHangsOnAnotherByHand(t *testing.T) {
	for _, c := range []struct {
		set  plan.BeamSet
		to   float64
		z    float64 // of the middle of its end
		foot plan.JointKind
	}{
		{plan.SetDropped, 234.5, 229.125 - 4.625, plan.BeamEnd},
		{plan.SetFlush, 238.5, 229.125 + 4.625, plan.BeamSeat},
	} {
		h := frame(t, onAnother(c.set, twoTwoByTen))
		require.Len(t, h.Beams, 2, c.set)
		x := h.Beams[1]
		require.Equal(t, "B0", x.Name, "laid after what it hangs on")
		require.Len(t, x.Pieces, 1)
		assert.InDelta(t, c.to-121.5, x.Pieces[0].Length, 1e-9)
		hung := joints(h, "B1", plan.BeamHung)
		require.Len(t, hung, 1)
		j := hung[0]
		assert.Equal(t, []*Member{x.Pieces[0], h.Beams[0].Pieces[0]}, j.Members)
		assert.Equal(t, "B1-168-BH", j.ID)
		assert.InDelta(t, 168, j.Station, 1e-9)
		assert.InDelta(t, 121.5, j.At.Y, 1e-9)
		assert.InDelta(t, c.z, j.At.Z, 1e-9)
		assert.Len(t, joints(h, "1C", c.foot), 1)
		require.Len(t, x.Supports, 2)
		assert.Same(t, h.Beams[0], x.Supports[0].Beam)
		assert.InDelta(t, 168, x.Supports[0].Station, 1e-9)
		borne(t, h)
	}
}

// A beam deeper than the one that it ends at finds nothing to hang on with its foot.
func TestABeamDeeperThanItsCarrierIsInTheAir(t *testing.T) {
	p := onAnother(plan.SetDropped, plan.Lumber{Ply: 2, Breadth: 1.5, Depth: 11.25, Text: "2-2x12"})
	_, faults := Frame(p)
	require.Len(t, faults, 1)
	assert.Equal(t, plan.Code("beam-in-the-air"), faults[0].Code)
	assert.Contains(t, faults[0].Mend, "at the face of a beam no shallower than it")
}

// Two beams that end at each other have nothing to begin with: the first is told of.
func TestBeamsThatEndAtEachOtherAreTold(t *testing.T) {
	p := onAnother(plan.SetDropped, twoTwoByTen)
	p.Beams[1].To = geom.Vec2{X: 168, Y: 121}
	_, faults := Frame(p)
	require.NotEmpty(t, faults)
	assert.Equal(t, plan.Code("beam-in-the-air"), faults[0].Code)
}
