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
// hips come up, does not.
func TestARidgeRunsPastAHipsFoot(t *testing.T) {
	h := exampleHouse(t, "sanderling.toml")
	var wing, main *Member
	for _, m := range h.Members {
		if m.Role == plan.Ridge && m.ID == "wing/ridge@224" {
			wing = m
		}
		if m.Role == plan.Ridge && m.ID == "main/ridge@224" {
			main = m
		}
	}
	require.NotNil(t, wing)
	require.NotNil(t, main)
	assert.InDelta(t, 120+0.75+1.06066+3.5, wing.B.Y, 1e-4)
	assert.InDelta(t, 336, main.B.X, 1e-4)
}
