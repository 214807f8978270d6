package page

import (
	"testing"

	"galewright/render/sheet"

	"github.com/stretchr/testify/assert"
)

func TestSpreadKeepsOrderAndClears(t *testing.T) {
	got := Spread([]sheet.MM{0, 1, 2, 30}, []sheet.MM{4, 4, 4, 4})
	assert.InDeltaSlice(t, []float64{-3, 1, 5, 30}, []float64{float64(got[0]), float64(got[1]), float64(got[2]), float64(got[3])}, 1e-9)
}
