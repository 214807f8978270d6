package plan_test

import (
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"galewright/plan"
)

func TestMetricLumberAndFasteners(t *testing.T) {
	// 2x6 is dressed 1 1/2 by 5 1/2 in (PS 20): 38.1 by 139.7 mm.
	for text, want := range map[string][2]float64{
		"38x140mm": {1.5, 5.5}, "2-38 x 235 mm": {1.5, 9.25}, "45x240mm": {45 / 25.4, 240 / 25.4},
	} {
		l, err := plan.ParseLumber(text)
		require.NoError(t, err, text)
		assert.InDeltaSlice(t, want[:], []float64{l.Breadth, l.Depth}, 1e-9, text)
	}
	for _, text := range []string{"ax140mm", "38mm", "2x6000mm"} {
		_, err := plan.ParseLumber(text)
		assert.Error(t, err, text)
	}
	for text, want := range map[string][2]float64{
		"8d x 38mm": {0.131, 38 / 25.4}, "3.3mm x 64mm": {3.3 / 25.4, 64 / 25.4}, "bolt 16mm x 200mm": {16 / 25.4, 200 / 25.4},
	} {
		d, l, err := plan.NailSize(text)
		require.NoError(t, err, text)
		assert.InDeltaSlice(t, want[:], []float64{d, l}, 1e-9, text)
	}
}
