package floorplan

import (
	"fmt"
	"testing"

	"galewright/plan"
	"galewright/render/label"
	"galewright/render/page/pagetest"
	"galewright/render/sheet"
	"galewright/symbols"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"
)

func TestStretchesPartMarksThatLookAlikeOnly(t *testing.T) {
	for name, c := range map[string]struct {
		marks string // one letter each; symbols are a for a and b, c for c
		want  [][]int
	}{
		"one mark is one stretch":                      {"aaaa", [][]int{{0, 1, 2, 3}}},
		"another symbol between does not part":         {"aaca", [][]int{{0, 1, 3}, {2}}},
		"another mark with the symbol between does":    {"aabaa", [][]int{{0, 1}, {2}, {3, 4}}},
		"a mark that comes twice has two stretches":    {"abab", [][]int{{0}, {1}, {2}, {3}}},
		"the other symbol goes on past what is parted": {"acbca", [][]int{{0}, {1, 3}, {2}, {4}}},
	} {
		symbol := func(i int) string {
			if c.marks[i] == 'c' {
				return "c"
			}
			return "a"
		}
		got := stretches(len(c.marks), func(i int) string { return c.marks[i : i+1] }, symbol)
		assert.Equal(t, c.want, got, name)
	}
}

// No piece on a level's plan stands farther than circleReach and a symbol's
// surroundings from a circle with its number, unless no room was left.
func TestNumbersStandNearTheirSymbols(t *testing.T) {
	m := pagetest.Example(t, "marsh-wren.toml")
	c := pagetest.Context(t, m, "arch-d")
	near, far := 0, 0
	for _, p := range pagetest.Drawn(c, FloorPages(c)) {
		circles := map[int][]sheet.Pt{}
		for _, mk := range p.Marks {
			if x, ok := mk.(sheet.Text); ok && x.Role == "legend" {
				for _, l := range m.Schedule.Lines {
					if x.S == fmt.Sprint(l.Number) {
						circles[l.Number] = append(circles[l.Number], x.At)
					}
				}
			}
		}
		for _, mk := range p.Marks {
			u, ok := mk.(sheet.Use)
			if !ok || u.Piece == nil || m.Placement.Piece(u.Piece.Tag).Joint.Kind == plan.Collector {
				continue
			}
			if distance(u.At, circles[u.Piece.Legend]) < circleReach(c)+12 {
				near++
			} else {
				far++
			}
		}
	}
	require.Greater(t, near, 300)
	assert.Less(t, far*50, near, "%d of %d symbols stand far from their number", far, near+far)
}

func TestPlacesInsideLieInTheOutline(t *testing.T) {
	tri := []sheet.Pt{{X: 0, Y: 0}, {X: 60, Y: 0}, {X: 0, Y: 60}}
	all := sheet.Rect{X: -100, Y: -100, W: 300, H: 300}
	places := placesInside(tri, all, 20, 10, sheet.Pt{X: 20, Y: 20})
	require.NotEmpty(t, places)
	for _, p := range places {
		// the corner nearest to the long side: x + y <= 60
		assert.LessOrEqual(t, float64(p.X+10+p.Y+5), 60.0+1e-9)
		assert.GreaterOrEqual(t, float64(p.X-10), -1e-9)
		assert.GreaterOrEqual(t, float64(p.Y-5), -1e-9)
	}
	assert.Equal(t, sheet.Pt{X: 20, Y: 20}, places[0], "the middle itself is best")
	assert.Empty(t, placesInside(tri, all, 50, 30, sheet.Pt{X: 20, Y: 20}), "what does not fit has no place")
	assert.Empty(t, placesInside(tri, sheet.Rect{X: 100, W: 10, H: 10}, 5, 5, sheet.Pt{}), "nor what is on another sheet")
}

// At corners, where two walls' lanes meet, and at built-up posts no symbol
// stands upon another.
func TestSymbolsOfALevelDoNotCoverEachOther(t *testing.T) {
	for _, name := range []string{"curlew-row", "marsh-wren", "dunlin"} {
		m := pagetest.Example(t, name+".toml")
		for _, paper := range []string{"arch-d", "letter"} {
			c := pagetest.Context(t, m, paper)
			for _, p := range pagetest.Drawn(c, FloorPages(c)) {
				spots, upon := label.NewBoard(sheet.Rect{X: -1e4, Y: -1e4, W: 2e4, H: 2e4}), 0
				for _, mk := range p.Marks {
					u, ok := mk.(sheet.Use)
					if !ok || u.Piece == nil || m.Placement.Piece(u.Piece.Tag).Joint.Kind == plan.Collector {
						continue
					}
					sym, _ := symbols.For(u.Symbol)
					r := symbolBox(sym, u.At, u.Scale).Inset(label.Gap + 0.05)
					if !spots.Free(r) {
						upon++
					}
					spots.Block(r)
				}
				assert.Zero(t, upon, "%s on %s, %s: symbols upon others", name, paper, p.Title.Sheet)
			}
		}
	}
}
