package render

import (
	"strings"
	"testing"

	"galewright/plan"
	"galewright/render/page"
	"galewright/render/sheet"

	"github.com/stretchr/testify/require"
)

// TestTilesCoverTheSheet lays the pages of a poster back together: every
// point of the big sheet shows on a page at its own place, neighbors share
// the glue strip, and no page draws outside its printable part.
func TestTilesCoverTheSheet(t *testing.T) {
	big, _ := sheet.PaperNamed("arch-d")
	small, _ := sheet.PaperNamed("letter")
	pages := tiles(&sheet.Sheet{Paper: big, Title: sheet.Title{Sheet: "S-201"}}, small, page.LetteringFor(big))
	require.Len(t, pages, 4*4, "914.4 by 609.6 mm in steps of 235.4 by 171.9")
	for x := sheet.MM(0.5); x < big.W; x += 7 {
		for y := sheet.MM(0.5); y < big.H; y += 7 {
			shown := 0
			for _, p := range pages {
				w := p.Marks[0].(sheet.Window)
				q := sheet.Pt{X: x + w.Shift.X, Y: y + w.Shift.Y}
				if w.Rect.Holds(sheet.Rect{X: q.X, Y: q.Y}, 0) {
					shown++
				}
			}
			require.Contains(t, []int{1, 2, 4}, shown, "at %.1f, %.1f", x, y)
		}
	}
	for _, p := range pages {
		w := p.Marks[0].(sheet.Window)
		require.True(t, small.Rect().Inset(posterRim-0.01).Holds(w.Rect, 0.02), p.Title.Sheet)
		requireCaution(t, p, small)
	}
}

// requireCaution: the page says the whole caution below the drawing, where an
// office printer still prints.
func requireCaution(t *testing.T, p *sheet.Sheet, paper sheet.Paper) {
	var words []string
	for _, m := range p.Marks {
		if x, ok := m.(sheet.Text); ok {
			words = append(words, x.S)
			require.GreaterOrEqual(t, x.At.Y-page.MinLetter, paper.H-posterRim)
			require.LessOrEqual(t, x.At.Y, paper.H-25.4/4, p.Title.Sheet)
		}
	}
	require.Contains(t, strings.Join(words, " "), plan.Caution)
}

// TestTilesShowPiecesAsRepeats: a page that shows part of a piece must not
// stand for it.
func TestTilesShowPiecesAsRepeats(t *testing.T) {
	big, _ := sheet.PaperNamed("arch-d")
	small, _ := sheet.PaperNamed("letter")
	p := &sheet.Piece{Tag: "1S-64-SB-strap", Legend: 3, Mark: "base-strap", Home: true}
	at := sheet.Pt{X: 20, Y: 20}
	s := &sheet.Sheet{Paper: big, Marks: []sheet.Mark{
		sheet.Line{Style: page.Style(sheet.PenHardware, sheet.LayerHardware), A: at, B: sheet.Pt{X: 20, Y: 30}, Piece: p},
		sheet.Line{Style: page.Style(sheet.PenHardware, sheet.LayerHardware), A: sheet.Pt{X: 700, Y: 500}, B: sheet.Pt{X: 710, Y: 500}, Piece: p},
	}}
	pages := tiles(s, small, page.LetteringFor(big))
	first := pages[0].Marks[0].(sheet.Window)
	require.Len(t, first.Marks, 1, "marks of other pages are left out")
	require.False(t, sheet.PieceOf(first.Marks[0]).Home)
	require.True(t, p.Home, "the sheet itself is not changed")
}
