package frame

import (
	"strconv"
	"testing"

	"galewright/render/page/pagetest"
	"galewright/render/sheet"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"
)

// A box has four corners, an L six: each is drawn once, looked at from outside, an
// inside corner from inside its angle. Stories of one wall that meet end to end are
// none.
func TestCornersOfTheHouse(t *testing.T) {
	for file, want := range map[string]int{"marsh-wren.toml": 4, "dunlin.toml": 4, "sanderling.toml": 6, "shed.toml": 4} {
		c := pagetest.Context(t, pagetest.Example(t, file), "arch-d")
		list := placesOf(c)
		require.Len(t, list, want, file)
		for _, p := range list {
			for _, w := range p.walls {
				assert.Positive(t, p.outward.Dot(outward(w)), "%s: %s", file, p.name())
			}
		}
	}
	c := pagetest.Context(t, pagetest.Example(t, "marsh-wren.toml"), "arch-d")
	assert.Equal(t, "Corner 1W, 1S, 2W, 2S", placesOf(c)[0].name())
}

// On every paper corners stay on their sheets, nothing lies on anything, and each
// number's line ends at a piece of that mark that is really seen: at the corner of
// the demo the straps of both stories and of the piles have theirs.
func TestCornerSheets(t *testing.T) {
	for _, file := range pagetest.ExampleFiles() {
		m := pagetest.Model(file)
		for _, paper := range []string{"arch-d", "tabloid", "letter"} {
			c := pagetest.Context(t, m, paper)
			for _, s := range pagetest.Drawn(c, CornerPages(c)) {
				pagetest.OnPaper(t, s)
				pagetest.NoOverlaps(t, s, paper)
			}
		}
	}
	m := pagetest.Example(t, "marsh-wren.toml")
	c := pagetest.Context(t, m, "arch-d")
	numbers := map[string]bool{}
	for _, s := range pagetest.Drawn(c, CornerPages(c)) {
		for _, mk := range s.Marks {
			if x, ok := mk.(sheet.Text); ok && x.Role == "legend" {
				numbers[x.S] = true
			}
		}
	}
	for _, mark := range []string{"base-strap", "story-strap", "rafter-clip", "pile-strap-heavy"} {
		n := m.Schedule.Number(mark)
		require.Positive(t, n, mark)
		assert.True(t, numbers[strconv.Itoa(n)], mark)
	}
}
