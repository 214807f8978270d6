package piling

import (
	"slices"
	"strings"
	"testing"

	"galewright/plan"
	"galewright/render/page/pagetest"
	"galewright/render/project"
	"galewright/render/scene"
	"galewright/render/sheet"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"
)

// Of dunlin the south girder's line has rods in two bays and breakaway walls in two, and a
// cross of boards goes over to the middle one; the north girder's has boards. A house without
// bracing has no such sheet.
func TestLinesOfTheHouse(t *testing.T) {
	c := pagetest.Context(t, pagetest.Example(t, "dunlin.toml"), "arch-d")
	var titles []string
	for _, l := range linesOf(c) {
		titles = append(titles, l.title)
		assert.NotEmpty(t, l.lines, l.title)
	}
	assert.Equal(t, []string{"Piles of girder GS, from outside", "Brace XC, from girder GS to girder GC", "Piles of girder GN, from outside"}, titles)
	south := linesOf(c)[0]
	assert.Len(t, south.walls, 2)
	assert.Len(t, south.bays, 4)
	for _, x := range south.walls {
		assert.InDelta(t, 3, x.v0, 1e-9)
		assert.Greater(t, x.u1, x.u0)
	}
	assert.Empty(t, Pages(pagetest.Context(t, pagetest.Example(t, "marsh-wren.toml"), "arch-d")))
}

// Every board and every rod is seen on a line, whole or in part, at the slope that it has.
func TestEveryBraceIsSeen(t *testing.T) {
	c := pagetest.Context(t, pagetest.Example(t, "dunlin.toml"), "arch-d")
	boards, rods := map[string]bool{}, map[string]bool{}
	for _, l := range linesOf(c) {
		for _, x := range l.lines {
			part := x.Owner.(scene.Part)
			if x.State != project.Seen {
				continue
			}
			if part.Member != nil && part.Member.Role == plan.BraceBoard {
				boards[part.Member.ID] = true
			}
			if part.Body != nil && part.Kind == scene.Rod && part.Body.Piece.Joint.Kind == plan.BraceRod {
				rods[part.Body.Piece.Tag] = true
			}
		}
	}
	assert.Len(t, boards, 6)
	assert.Len(t, rods, 4)
}

// The list has a row for each board and rod, with the length that it is cut to: of XN's
// boards in the bay of 67 1/4 in what lumber is cut to.
func TestTheListOfBraces(t *testing.T) {
	c := pagetest.Context(t, pagetest.Example(t, "dunlin.toml"), "arch-d")
	rows := braceTable(c).Rows
	require.Len(t, rows, 10)
	for _, r := range rows {
		assert.NotEqual(t, "-", r.Cells[6].S)
	}
	lengths := map[string]bool{}
	for _, m := range c.House.Members {
		if m.Role == plan.BraceBoard {
			lengths[c.Length(m.Length)] = true
		}
	}
	for _, r := range rows {
		if strings.HasPrefix(r.Cells[1].S, "2x8") {
			assert.True(t, lengths[r.Cells[6].S], r.Cells[6].S)
		}
	}
}

// On every paper the lines stay on their sheets, nothing lies on anything, and it is said that
// none of it is in the load path.
func TestSheets(t *testing.T) {
	m := pagetest.Example(t, "dunlin.toml")
	for _, paper := range []string{"arch-d", "tabloid", "letter", "a4", "a3"} {
		c := pagetest.Context(t, m, paper)
		sheets := pagetest.Drawn(c, Pages(c))
		require.NotEmpty(t, sheets, paper)
		var all []string
		for _, s := range sheets {
			pagetest.OnPaper(t, s)
			pagetest.NoOverlaps(t, s, paper)
		}
		for _, x := range pagetest.Texts(sheets) {
			all = append(all, x.S)
		}
		words := strings.Join(all, " ")
		for _, want := range []string{"No load of this set's load path is taken by them", "It carries nothing, is in no load path", "bay 2: XS rods", "bay 1: KS breakaway wall", "XC: boards 2x8"} {
			assert.Contains(t, strings.ReplaceAll(words, "\n", " "), want, paper)
		}
		assert.True(t, slices.ContainsFunc(sheets, func(s *sheet.Sheet) bool { return len(s.Marks) > 50 }))
	}
}
