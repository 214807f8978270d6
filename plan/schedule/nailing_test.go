package schedule_test

import (
	"os"
	"testing"

	"galewright/plan/pipeline"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"
)

// Nails between members are bought with all others. The shed by hand: top
// plates S and N 9 each, four rakes of 61.2 in 4 each, 34; two jacks of 80 1/2
// in at 8 in 22 each, 44: 78 of 10d common, 65 to the pound; four corners of
// 92 5/8 in at 12 in, 32 of 16d common, 50 to the pound (two nail charts,
// second-hand).
func TestOrderedNailsAreBought(t *testing.T) {
	src, err := os.ReadFile("../../examples/shed.toml")
	require.NoError(t, err)
	r, ds := pipeline.Run("shed.toml", append(src, `
[nailing]
top_plates = { nail = "10d common", spacing = "16in" }
jack_to_king = { nail = "10d common", spacing = "8in", rows = 2 }
corner_studs = { nail = "16d common", spacing = "12in" }
`...), nil)
	require.False(t, ds.Errors(), "%v", ds)
	got := map[string][2]float64{}
	pieces := 0
	for _, o := range r.Schedule.Orders(0) {
		got[o.Name] = [2]float64{float64(o.Count), o.Order}
	}
	for _, n := range r.Schedule.Nails() {
		pieces += n.Count
	}
	assert.Equal(t, [2]float64{78, 1.2}, got["10d common (0.148 x 3)"])
	assert.Equal(t, [2]float64{32, 0.7}, got["16d common (0.162 x 3 1/2)"])
	bare, _ := pipeline.Run("shed.toml", src, nil)
	n := 0
	for _, x := range bare.Schedule.Nails() {
		n += x.Count
	}
	assert.Equal(t, n, pieces, "the nails of pieces are the same")
}
