package table

import (
	"fmt"
	"strings"
	"testing"

	"galewright/render/page"
	"galewright/render/page/pagetest"
	"galewright/render/sheet"

	"github.com/stretchr/testify/require"
	"pgregory.net/rapid"
)

// A table of any text, on any width, parted at any height: each row stands
// once and in order, no text leaves its part, and parts are not too high.
func TestTableHoldsItsTextHoweverNarrow(t *testing.T) {
	m := pagetest.TextHouse()
	rapid.Check(t, func(t *rapid.T) {
		c := pagetest.Context(t, m, "letter")
		words := rapid.StringMatching(`[a-zA-Z0-9'"/ -]{0,40}`)
		tb := &Table{Title: "T", Cols: []Column{{Head: "No.", Align: sheet.Middle}, {Head: "What it is", Wrap: true}, {Head: "Count", Align: sheet.Right}}}
		n := rapid.IntRange(1, 30).Draw(t, "rows")
		for i := range n {
			tb.Rows = append(tb.Rows, Row{
				Join:  i > 0 && rapid.IntRange(0, 4).Draw(t, "join") == 0,
				Cells: []Cell{{S: fmt.Sprintf("r%d", i)}, {S: words.Draw(t, "text")}, {S: fmt.Sprint(i)}},
			})
		}
		w := sheet.MM(rapid.Float64Range(40, 200).Draw(t, "width"))
		h := sheet.MM(rapid.Float64Range(60, 200).Draw(t, "height"))
		rest := tb.Lay(c, w)
		var seen []string
		for rest != nil {
			var part page.Laid
			part, rest = rest.Split(h)
			if part == nil {
				return // a run of joined rows higher than the part
			}
			require.LessOrEqual(t, float64(part.Height()), float64(h)+1e-9)
			p := c.NewPage("", "")
			part.DrawAt(p, sheet.Pt{X: 10, Y: 10})
			box := sheet.Rect{X: 10, Y: 10, W: w, H: part.Height()}
			for _, mk := range p.Marks {
				x, ok := mk.(sheet.Text)
				if !ok {
					continue
				}
				require.True(t, box.Holds(x.Box(), 0.1), "%q in %v, not %v", x.S, x.Box(), box)
				if strings.HasPrefix(x.S, "r") && x.Anchor == sheet.Middle {
					seen = append(seen, x.S)
				}
			}
		}
		require.Len(t, seen, n)
		for i, s := range seen {
			require.Equal(t, fmt.Sprintf("r%d", i), s)
		}
	})
}

func TestTableFootIsNeverAlone(t *testing.T) {
	c := pagetest.Context(t, pagetest.TextHouse(), "letter")
	tb := &Table{Title: "T", Cols: []Column{{Head: "A"}}, Foot: &page.Figure{W: 20, H: 20, Draw: func(*page.Page, sheet.Pt) {}}}
	for range 10 {
		tb.Rows = append(tb.Rows, Row{Cells: Texts("x")})
	}
	whole := tb.Lay(c, 50)
	first, rest := whole.Split(whole.Height() - 1)
	require.NotNil(t, first)
	l := rest.(*laidTable)
	require.Positive(t, l.to-l.from, "a row goes along with the foot")
	require.Positive(t, float64(l.footH()))
	require.Zero(t, float64(first.(*laidTable).footH()))
}
