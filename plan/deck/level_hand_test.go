package deck

import (
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"galewright/plan"
)

// hipped is a hip of trusses of 2x4 at 24 in over 34 ft by 26 ft, 5 in 12: a slope of an
// end is 13/12 as long as its plan.
const hipped = `
level = [{ name = "one", plate_height = "9' 1 1/8in", studs = "2x6 @ 16in" }]
wall = [
  { name = "S", from = ["0'", "0'"], to = ["34'", "0'"] }, { name = "E", to = ["34'", "26'"] },
  { name = "N", to = ["0'", "26'"] }, { name = "W", to = ["0'", "0'"] },
]
roof = [{ name = "main", kind = "hip", ridge = "x", pitch = "5:12", rafters = "2x4 @ 24in", trusses = true, overhang = "12in", hip_girder = "8'" }]
project = { name = "Invented" }
deck = { panel = "19/32", nail = "8d common", edge = "6in", field = "12in" }
`

// The deck of the west end lies on the girder truss's level top, its arris at 95.25 from the
// wall, and on those of hip trusses at 119.25 and 143.25: the middles of the plies that carry
// it are 0.75 farther in, and on the slope 96 x 13/12 = 104, 130 and 156 up from over the wall's
// face. Courses begin 13 lower, at the eave: the third is from 83 to 131. The girder's nails hold
// from there half way to the next, 13; those of the hip truss at 130 half way down, 13, and 1 up
// to the panel's edge.
func TestNailsOfLevelTopsByHand(t *testing.T) {
	d := New(framed(t, hipped, ""))
	want := map[float64][2]float64{104: {0, 13}, 130: {13, 1}}
	n := 0
	for _, x := range d.Faces {
		if x.Name != "main W" {
			continue
		}
		var ups []float64
		for _, l := range x.lines {
			if l.level {
				ups = append(ups, l.a.Y)
				assert.InDelta(t, l.a.Y, l.b.Y, 1e-9)
			}
		}
		assert.InDeltaSlice(t, []float64{104, 130, 156}, ups, 1e-6)
		for _, p := range x.Pieces {
			for _, nail := range p.Nails {
				w, told := want[float64(int(x.own(nail.At).Y+0.5))]
				if !told || nail.Into.Role != plan.GirderTruss && nail.Into.Role != plan.HipTruss || p.Hi.Y > 131+touch {
					continue
				}
				n++
				assert.Equal(t, EndRow, nail.Row)
				assert.LessOrEqual(t, nail.Along, 6.0+1e-6)
				assert.InDelta(t, nail.Along, nail.Width, 1e-9)
				assert.InDelta(t, w[0]+w[1], nail.rise, 1e-6)
			}
		}
	}
	require.Greater(t, n, 30)
}
