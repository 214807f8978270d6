package framing

import (
	"testing"

	"galewright/plan"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"
)

// The wing's ridge of sanderling ends at y = 120 where a hip 1 1/2 in thick comes down at 45
// degrees. Cut to the ridge's side, 3/4 in off its middle, the hip's far arris lies 3/4 in
// and half its thickness times the square root of 2 past that: 1.81 in. The ridge goes on
// 3 1/2 in more for a flange, clear of the rafter at y = 128; the main ridge, at whose end
// hips come up, goes on 3/4 in, half a rafter, to the one in its line, which is cut back as much:
// 0.75 x 1/2 under the peak for 6 in 12, 0.375, it is flush there.
func TestARidgeRunsPastAHipsFoot(t *testing.T) {
	h := exampleHouse(t, "sanderling.toml")
	var wing, main *Member
	for _, m := range h.Members {
		if m.Role == plan.Ridge && m.Roof.Name == "wing" { // the last piece
			wing = m
		}
		if m.Role == plan.Ridge && m.Roof.Name == "main" {
			main = m
		}
	}
	require.NotNil(t, wing)
	require.NotNil(t, main)
	assert.InDelta(t, 120+0.75+1.06066+3.5, wing.B.Y, 1e-4)
	assert.InDelta(t, 336.75, main.B.X, 1e-4)
	for _, m := range h.Members {
		if m.ID == "main/E/rafter@144" {
			assert.InDelta(t, 336.75, m.B.X, 1e-4)
			assert.InDelta(t, main.B.Z, m.B.Z, 1e-4)
		}
	}
}
