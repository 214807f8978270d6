package timber

import (
	"math"
	"math/rand/v2"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"
)

func TestStrapNetWorked(t *testing.T) {
	// Arithmetic of AISI S100-16 D2 and D3 beside the reference notes, not
	// published: hole 0.161 in.
	two := func(y1, y2 float64) []Hole { return []Hole{{2, y1, 0.161}, {2, y2, 0.161}} }
	for _, c := range []struct {
		width, t    float64
		holes       []Hole
		s           Steel
		yield, rupt float64
	}{
		{1.25, 0.0346, []Hole{{1, 0.6, 0.161}}, Gr33, 855, 848},
		{1.25, 0.0346, two(0.3, 0.95), Gr33, 855, 722},
		{1.5, 0.0566, two(0.4, 1.1), Gr33, 1678, 1500},
		{2, 0.0566, two(0.5, 1.5), Gr50, 3389, 3087},
	} {
		v, err := StrapTensionAt(c.width, c.t, c.holes, c.s)
		require.NoError(t, err)
		assert.InDelta(t, c.yield, v.Yield, 1)
		assert.InDelta(t, c.rupt, v.Rupture, 1)
		assert.Equal(t, "net rupture", v.Governs)
	}
}

func TestStrapRows(t *testing.T) {
	// Worked by hand: rows of one, two and one hole of 0.2 in far apart.
	holes := []Hole{{9, 1, 0.2}, {1, 0.5, 0.2}, {5, 0.5, 0.2}, {5, 1.5, 0.2}}
	v, err := StrapTensionAt(2, 0.05, holes, Gr33)
	require.NoError(t, err)
	require.Len(t, v.Rows, 3)
	assert.Equal(t, []float64{1, 5, 9}, []float64{v.Rows[0].X, v.Rows[1].X, v.Rows[2].X})
	assert.Equal(t, []int{1, 2, 1}, []int{v.Rows[0].Holes, v.Rows[1].Holes, v.Rows[2].Holes})
	assert.Equal(t, 1, v.Least)
	assert.InDelta(t, 1.6*0.05, v.Net, 1e-12)
	assert.InDelta(t, 1.6*0.05*45_000/2, v.Rupture, 1e-9)
	none, err := StrapTensionAt(2, 0.05, nil, Gr33)
	require.NoError(t, err)
	assert.Equal(t, -1, none.Least)
	assert.Equal(t, "gross yielding", none.Governs)
	_, err = StrapTensionAt(1, 0.05, []Hole{{1, 0.05, 0.2}}, Gr33)
	assert.ErrorContains(t, err, "breaks the edge")
}

func TestStrapZigzag(t *testing.T) {
	// s²/4g worked by hand: s 0.5, g 1: 0.0625 in gained. Straight 2 - 0.2;
	// zigzag 0.9 (2 - 0.4 + 0.0625) = 1.49625.
	v, err := StrapTensionAt(2, 0.1, []Hole{{1, 0.5, 0.2}, {1.5, 1.5, 0.2}}, Gr33)
	require.NoError(t, err)
	for _, r := range v.Rows {
		assert.True(t, r.Staggered)
		assert.Equal(t, 2, r.Holes)
		assert.InDelta(t, 0.3375, r.Removed, 1e-9)
		assert.InDelta(t, 0.149625, r.Net, 1e-9)
	}
	// Far enough along, the straight section rules again: s 1.6 gains 0.64.
	v, err = StrapTensionAt(2, 0.1, []Hole{{1, 0.5, 0.2}, {2.6, 1.5, 0.2}}, Gr33)
	require.NoError(t, err)
	assert.False(t, v.Rows[0].Staggered)
	assert.InDelta(t, 0.18, v.Net, 1e-9)
}

// slow tries every set of holes in order across, as the rule is written.
func slow(width float64, hs []Hole) float64 {
	least := width
	var walk func(last int, removed float64, aside bool)
	walk = func(last int, removed float64, aside bool) {
		if last >= 0 {
			least = math.Min(least, math.Max(0, width-removed)*pick(aside, zigzag, 1))
		}
		for i, h := range hs {
			switch {
			case last < 0:
				walk(i, h.D, false)
			case h.Y > hs[last].Y+slack:
				s, g := h.X-hs[last].X, h.Y-hs[last].Y
				walk(i, removed+h.D-s*s/(4*g), aside || math.Abs(s) > slack)
			}
		}
	}
	walk(-1, 0, false)
	return least
}

func TestStrapNetAgainstEverySection(t *testing.T) {
	// Property: the section found is the least of all sections there are, and
	// a strap turned over or end for end is the same strap.
	r := rand.New(rand.NewPCG(9, 9))
	for range 400 {
		var holes, turned []Hole
		for range 1 + r.IntN(8) {
			h := Hole{float64(r.IntN(6)) / 2, 0.25 + float64(r.IntN(7))/4, 0.05 + 0.1*r.Float64()}
			holes, turned = append(holes, h), append(turned, Hole{3 - h.X, 2.25 - h.Y, h.D})
		}
		v, err := StrapTensionAt(2.25, 1, holes, Gr33)
		require.NoError(t, err)
		assert.InDelta(t, slow(2.25, holes), v.Net, 1e-9)
		w, err := StrapTensionAt(2.25, 1, turned, Gr33)
		require.NoError(t, err)
		assert.InDelta(t, v.Net, w.Net, 1e-9)
		assert.Len(t, w.Rows, len(v.Rows))
	}
}

func TestSheetTable(t *testing.T) {
	// The minimum is 95 % of design (AISI S220 A5.1.1, second-hand) and the mil
	// name the minimum (AISI S400 A2.1, transcribed).
	for _, s := range sheets {
		assert.InDelta(t, s.Design*0.95, s.Minimum, 0.0002, "%d mil", s.Mil)
		assert.InDelta(t, float64(s.Mil)/1000, s.Minimum, 0.0006, "%d mil", s.Mil)
	}
	s, ok := SheetOf(0, 16)
	assert.True(t, ok)
	assert.Equal(t, 54, s.Mil)
	s, ok = SheetOf(33, 0)
	assert.True(t, ok)
	assert.Equal(t, 0.0346, s.Design)
	_, ok = SheetOf(0, 0)
	assert.False(t, ok)
}

// Three holes of 0.2 in across 2 in of steel, the middle one 0.2 in along from the line of
// the others: its own row is weakest aside both ways, 0.6 less 2 x 0.2²/(4 x 0.5) = 0.56 in of
// width, and 0.9 of that section; straight through the two others 0.4 in are lost.
func TestAHoleAsideBothWays(t *testing.T) {
	v, err := StrapTensionAt(2, 0.1, []Hole{{1, 0.5, 0.2}, {1.2, 1, 0.2}, {1, 1.5, 0.2}}, Gr33)
	require.NoError(t, err)
	for _, r := range v.Rows {
		assert.Equal(t, 3, r.Holes, "at %v", r.X)
		assert.InDelta(t, 0.56, r.Removed, 1e-9, "at %v", r.X)
		assert.InDelta(t, 0.9*(2-0.56)*0.1, r.Net, 1e-9, "at %v", r.X)
		assert.True(t, r.Staggered)
	}
	assert.Len(t, v.Rows, 2)
}
