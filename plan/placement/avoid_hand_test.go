package placement

import (
	"testing"

	"galewright/plan"
	"galewright/plan/framing"
	"galewright/plan/hardware"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"
)

// moving is a placer of the hand-framed house that has laid nothing yet.
func moving(h *hand) *placer {
	x := &placer{world: newWorld(h.House), p: &Placement{}}
	x.fill()
	return x
}

// A clip with a leg of 2 3/16 in down a stud from its head at 226.125 has its middle at 225 1/32. It
// goes on no side that is the edge of an opening there, and where it has gone no second one goes.
func TestAClipIsNotMovedIntoAnOpening(t *testing.T) {
	// The opening's foot is 60 over the floor at 120: at 180.
	before := func(height float64) *plan.Opening {
		return &plan.Opening{At: 41.5, Width: 30, Sill: 60, Height: height}
	}
	after := &plan.Opening{At: 10, Width: 30, Sill: 60, Height: 47}
	for _, c := range []struct {
		name string
		o    *plan.Opening
		face plan.Face
		want bool
	}{
		{"no opening", nil, plan.Right, true},
		{"its side to the opening", before(47), plan.Right, false},
		{"an opening up to its middle", before(45.0625), plan.Right, false},
		{"an opening not up to its middle", before(45), plan.Right, true},
		{"away from the opening", before(47), plan.Left, true},
		{"on the face of the wall", before(47), plan.Outside, true},
		{"its left side to the opening", after, plan.Left, false},
		{"its right side away from it", after, plan.Right, true},
	} {
		h := newHand()
		m := h.member(0, plan.Stud, 40, 41.5, floor1+1.5, top1-3)
		m.Opening = c.o
		joints := h.held(0)
		item := &hardware.Item{Item: &plan.Item{Length: 4.375, Width: 1.625, Fasteners: nails("to stud", 7, 1)}, Kind: hardware.KindNamed(plan.ClipItem)}
		x := moving(h)
		p := &Piece{Joint: joints[1], Item: item}
		require.Equal(t, c.want, x.try(p, c.face, false), c.name)
		if c.want {
			assert.Equal(t, c.face, p.Face, c.name)
			assert.False(t, x.try(&Piece{Joint: joints[1], Item: item}, c.face, false), "%s: the first lies there", c.name)
			assert.True(t, x.try(p, c.face, false), "%s: it is in nobody's way but its own", c.name)
		}
	}
}

// A strap over the 17 3/8 in between two studs is moved only where both its ends find room for their
// nails. Of 42 in each end has 12 5/16, of 24 in 3 5/16: enough for one nail, not for nine.
func TestAStrapIsMovedOnlyWithRoomForItsNails(t *testing.T) {
	for _, c := range []struct {
		long       float64
		upper, low int // nails
		want       bool
	}{{42, 9, 9, true}, {24, 9, 9, false}, {24, 9, 1, false}, {24, 1, 9, false}, {24, 1, 1, true}} {
		h := newHand()
		h.column(40.75, 40.75)
		h.held(0)
		var joint *framing.Joint
		for _, j := range h.held(1) {
			if j.Kind == plan.StudStud {
				joint = j
			}
		}
		list, ds := hardware.New([]*plan.Item{{Mark: "s", Kind: plan.StrapItem, Length: c.long, Width: 1.375, Thickness: .0418, Fasteners: []plan.Fasteners{
			{Part: "to upper stud", Nail: "10d x 1 1/2", Count: c.upper, Parts: 1}, {Part: "to lower stud", Nail: "10d x 1 1/2", Count: c.low, Parts: 1},
		}}})
		require.Empty(t, ds)
		x := moving(h)
		p := &Piece{Joint: joint, Item: list.Item("s")}
		require.Equal(t, c.want, x.try(p, plan.Inside, false), "%+v", c)
	}
}
