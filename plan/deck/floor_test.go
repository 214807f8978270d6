package deck

import (
	"math"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"galewright/plan"
)

// floored is a floor of 16 by 12 ft on a stem wall, joists along y at 16 in.
const floored = `
level = [{ name = "floor", floor = "2'", plate_height = "8' 1 1/8in", joists = "2x10 @ 16in", joist_run = "y" }]
wall = [
  { name = "S", from = ["0'", "0'"], to = ["16'", "0'"] },
  { name = "E", to = ["16'", "12'"] },
  { name = "N", to = ["0'", "12'"] },
  { name = "W", to = ["0'", "0'"] },
]
foundation = { kind = "stem" }
[project]
name = "Invented"
[floor]
nail = "10d common"
edge = "6in"
field = "12in"
`

// Joists at 16, 32 ... 176 in between rims at 0.75 and 191.25; courses of 48 in. The first
// and third course: panels end over 96 and at the last rim; the second begins with half a
// panel: 48, 144 and the end. A row of 48 in takes (48 - 0.75)/6, begun, + 1 = 9 nails at
// 6 in and 5 at 12 in; those of 46.5 in, where a rim across takes 1.5, as many. First and third:
// two rims 18, a joint 18, ten joists 50. Second: 18, two joints 36, nine joists 45. Along
// the rims across at 6 in: begun (length - 0.75)/6, + 1.
func TestFloorIsLaidAndNailedByHand(t *testing.T) {
	h := framed(t, floored, "")
	floors := Floors(h)
	require.Len(t, floors, 1)
	f := floors[0]
	across := 0
	for _, m := range h.Members {
		if m.Role == plan.Rim && math.Abs(m.B.X-m.A.X) > 1 {
			across += int(math.Ceil((math.Abs(m.B.X-m.A.X)-0.75)/6)) + 1
		}
	}
	assert.Greater(t, across, 60)
	assert.Equal(t, 2+3+2, f.Pieces)
	assert.Equal(t, 3*2, f.Sheets)
	assert.Equal(t, 2*(18+18+50)+(18+36+45)+across, f.Nails)
	assert.InDelta(t, 16*12, f.Area, 0.1)

	h.Plan.FloorDeck.Field = 6
	assert.Equal(t, 2*(18+18+90)+(18+36+81)+across, Floors(h)[0].Nails)
	h.Plan.FloorDeck = nil
	assert.Empty(t, Floors(h), "what no plan orders is counted nowhere")
}

// Joists along x: the same floor turned has its courses the other way.
func TestFloorFollowsItsJoists(t *testing.T) {
	h := framed(t, floored, "")
	turned := framed(t, "level = [{ name = \"floor\", floor = \"2'\", plate_height = \"8' 1 1/8in\", joists = \"2x10 @ 16in\", joist_run = \"x\" }]"+floored[len("\nlevel = [{ name = \"floor\", floor = \"2'\", plate_height = \"8' 1 1/8in\", joists = \"2x10 @ 16in\", joist_run = \"y\" }]"):], "")
	a, b := Floors(h)[0], Floors(turned)[0]
	assert.Equal(t, 4*2, b.Sheets, "four courses of 12 ft, each of two panels")
	assert.NotEqual(t, a.Nails, b.Nails)
}

// A second floor of the same size over a beam in its middle: the joists of the second
// course are 3 in shorter, 45 in takes five nails at 12 in as 48 does, and the beam, 189 in
// between the rims, takes (189 - 0.75)/6, begun, + 1 = 33 more.
func TestFloorIsNailedToAFlushBeamByHand(t *testing.T) {
	const two = `
level = [
  { name = "one", floor = "0'", plate_height = "8' 1 1/8in" },
  { name = "two", plate_height = "8' 1 1/8in", joists = "2x10 @ 16in", joist_run = "y" },
]
wall = [
  { name = "S", level = "one", from = ["0'", "0'"], to = ["16'", "0'"] }, { name = "E", level = "one", to = ["16'", "12'"] },
  { name = "N", level = "one", to = ["0'", "12'"] }, { name = "W", level = "one", to = ["0'", "0'"] },
  { name = "2S", level = "two", from = ["0'", "0'"], to = ["16'", "0'"] }, { name = "2E", level = "two", to = ["16'", "12'"] },
  { name = "2N", level = "two", to = ["0'", "12'"] }, { name = "2W", level = "two", to = ["0'", "0'"] },
]
foundation = { kind = "slab" }
[project]
name = "Invented"
[floor]
nail = "10d common"
edge = "6in"
field = "12in"
`
	without, with := Floors(framed(t, two, "")), Floors(framed(t, two+`
[[beam]]
name = "B1"
level = "one"
set = "flush"
member = "2-2x10"
from = ["0'", "6'"]
to = ["16'", "6'"]
`, ""))
	require.Len(t, without, 1)
	require.Len(t, with, 1)
	assert.Equal(t, without[0].Nails+33, with[0].Nails)
	assert.Equal(t, without[0].Pieces, with[0].Pieces)
}
