package nailing

import (
	"testing"

	"galewright/plan"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"
)

// clipped is a box of 2x6 walls with its southeast corner cut off at 45°.
const clipped = `
level = [{ name = "floor", plate_height = "8' 1 1/8in", studs = "2x6 @ 16in" }]
wall = [
  { name = "S", from = ["0'", "0'"], to = ["16'", "0'"] },
  { name = "D", to = ["20'", "4'"] },
  { name = "E", to = ["20'", "12'"] },
  { name = "N", to = ["0'", "12'"] },
  { name = "W", to = ["0'", "0'"] },
]
[project]
name = "Invented box"
`

// The walls turn by 45° at both ends of D: two corners of beveled studs, three of
// posts. A beveled stud is 5.5 tan 22.5° = 2.278 in at its broad side, half of that, 1.139,
// half way through the wall, and 1.139 cos 22.5° = 1.052 square to the bevel: that is all
// the wood that a nail between them is counted in. Each is nailed to its end stud.
func TestBeveledStudsAreNailedToEachOtherAndToTheirEndStuds(t *testing.T) {
	found := connections(frameText(t, clipped))
	beveled := 0
	for _, s := range found[plan.CornerStuds] {
		if s.Side.Role != plan.BeveledStud {
			continue
		}
		beveled++
		s.Row = plan.CornerStuds.Row()
		side, main := s.sides()
		assert.InDelta(t, 1.0524, side, 1e-4)
		assert.InDelta(t, 1.0524, main, 1e-4)
		assert.InDelta(t, 97.125-4.5, s.Touch, 1e-6, "from plate to plate")
	}
	assert.Equal(t, 2, beveled)
	assert.Len(t, found[plan.CornerStuds], 5)
	own := 0
	for _, s := range found[plan.BuiltUpStuds] {
		if s.Side.Role == plan.BeveledStud || s.Main.Role == plan.BeveledStud {
			own++
			require.Equal(t, s.Side.Wall, s.Main.Wall)
		}
	}
	assert.Equal(t, 4, own, "two of D, one of S, one of E")
}

// Upper plates lap over the lower ones of another wall at the three right angles, at
// the cut corners none does: what is cut to one line ends there.
func TestMiteredPlatesDoNotLap(t *testing.T) {
	for _, s := range connections(frameText(t, clipped))[plan.TopPlateLap] {
		assert.NotEqual(t, "D", s.Side.Wall.Name)
		assert.NotEqual(t, "D", s.Main.Wall.Name)
	}
	assert.Len(t, connections(frameText(t, clipped))[plan.TopPlateLap], 3)
}
