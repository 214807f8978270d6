package golden

import (
	"bytes"
	"strings"
	"testing"

	"galewright/render"
	"galewright/render/pdf"
	"galewright/render/sheet"
	"galewright/render/svg"

	"github.com/stretchr/testify/require"
)

// TestEveryPosterPageDraws makes a poster of every wall of every example on
// both office papers: each page passes the checks of a sheet, one that shows
// nothing says so, and both writers write them.
func TestEveryPosterPageDraws(t *testing.T) {
	for _, name := range examples(t) {
		r := build(t, name)
		m := model(r)
		done := map[string]bool{} // sheets: those of one elevation show several walls
		for _, w := range r.Plan.Walls {
			for _, paper := range []string{"letter", "a4"} {
				set, faults := render.Poster(m, w.Name, "arch-d", render.Options{Paper: paper})
				require.False(t, faults.Errors(), "%s, wall %s: %v", name, w.Name, faults)
				require.NotEmpty(t, set.Sheets)
				if key := paper + set.Sheets[0].Title.Sheet; !done[key] {
					done[key] = true
					requirePages(t, name+", wall "+w.Name+" on "+paper, set)
				}
			}
		}
	}
}

// requirePages: what a poster's pages show.
func requirePages(t *testing.T, what string, set *sheet.Set) {
	require.NoError(t, sheet.Check(set), what)
	for i, s := range set.Sheets {
		blank := len(s.Marks[0].(sheet.Window).Marks) == 0
		require.Equal(t, blank, strings.Contains(words(s), ", blank"), "%s: page %s", what, s.Title.Sheet)
		var b bytes.Buffer
		require.NoError(t, svg.Write(&b, set, i, svg.Options{}))
		require.Contains(t, b.String(), s.Title.Sheet)
	}
	var b bytes.Buffer
	require.NoError(t, pdf.Write(&b, set, pdf.Options{Date: set.Sheets[0].Title.Date}), what)
}

// words returns the lettering of a page outside of its window.
func words(s *sheet.Sheet) string {
	var b strings.Builder
	for _, m := range s.Marks {
		if x, ok := m.(sheet.Text); ok {
			b.WriteString(x.S + " ")
		}
	}
	return b.String()
}
