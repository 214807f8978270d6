package detail

import (
	"testing"

	"galewright/plan"
	"galewright/plan/length"
	"galewright/plan/plantest"
	"galewright/render/page/pagetest"
	"galewright/render/sheet"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"
)

// A strap of 1 3/8 in on a stud of 1 1/2 in, at 1:8 on paper: 1/16 in beside it are
// 0.2 mm, too little for two lines. The figure is the strap's.
func TestFiguresAreOfTheSteel(t *testing.T) {
	paper := func(v float64) sheet.MM { return sheet.MM(v * 25.4 / 8) }
	assert.Equal(t, []float64{-0.6875, 0.6875}, stopsOf([]float64{-0.6875, 0.6875, -0.75, 0.75}, paper))
	// At 1:1 they are told apart, and what a tape cannot tell is one.
	full := func(v float64) sheet.MM { return sheet.MM(v * 25.4) }
	assert.Equal(t, []float64{-0.75, -0.6875, 0.6875, 0.75}, stopsOf([]float64{-0.6875, 0.6875, -0.75, 0.75}, full))
	assert.Equal(t, []float64{0, 5, 10}, stopsOf([]float64{10, 0, 0.03, 5, 5.04, 9.96}, full))
	assert.Empty(t, stopsOf(nil, full))
}

// Of the base strap by hand: 7 3/4, 11 1/4, 23/32, 1 1/2 and the rest to 37 1/4 in.
// Rounded one by one they are 1/16 in more than the strap is long.
func TestChainsClose(t *testing.T) {
	stops := []float64{-10, -2.25, 9, 9.71875, 11.21875, 27.25}
	got := chain(stops, false)
	assert.InDeltaSlice(t, []float64{7.75, 11.25, 0.75, 1.5, 16}, got, 1e-9)
	one, all := 0.0, 0.0
	for i, v := range got {
		all += v
		one += length.Snap(stops[i+1] - stops[i])
	}
	assert.InDelta(t, 37.25, all, 1e-9)
	assert.InDelta(t, 37.3125, one, 1e-9)
	mm := 0.0
	for _, v := range chain(stops, true) {
		mm += v * 25.4
	}
	assert.InDelta(t, 946, mm, 1e-6, "946.15 mm")
}

// Where the demo's long straps pass plates the framer is told what to cut; the four
// at the outer ends of walls pass none, and nothing is said of holes there.
func TestDetailsSayWhatToCut(t *testing.T) {
	m := pagetest.Edited(t, "marsh-wren.toml", plantest.Slotted...)
	c := pagetest.Context(t, m, "arch-d")
	seen := map[string]int{}
	for _, s := range shots(m) {
		if s.Item.Kind.Name == plan.LongStrapItem {
			seen[s.cutting(c)] += len(s.Pieces)
		}
	}
	hole := `in the subfloor a hole 1 15/16" by 5/8".`
	slot := `a slot 1 11/16" across and 7/16" along it, 1 15/16" left on either side; `
	require.Equal(t, map[string]int{
		"": 4,
		"Cut for it, against the face it lies on: in the top plate 2x6, the upper plate 2x6, the bottom plate 2x6 " + slot + hole:                                                                                        4,
		"Cut for it, against the face it lies on: in the crossing wall's top plate 2x6, the crossing wall's bottom plate 2x6 a notch 5/16\" into its edge and 1 11/16\" along it; in the upper plate 2x6 " + slot + hole: 4,
		"Cut for it, against the face it lies on: " + hole: 3,
	}, seen)
}
