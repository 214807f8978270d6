package render

import (
	"galewright/render/page"
	"galewright/render/sheet"
)

// posterLine is the pitch of the lines in the lower rim of a page, mm.
const posterLine = page.MinLetter + 0.6

// foot sets what a page is and the caution in its lower rim, above the part
// that a printer leaves white.
func (t tile) foot(what string) (out []sheet.Mark) {
	lines := append([]string{what}, page.Wrap(page.Caution, page.MinLetter, false, t.small.W-2*posterRim)...)
	for i, s := range lines {
		out = append(out, sheet.Text{
			Style: sheet.Style{Fill: sheet.Black, Layer: sheet.LayerNote}, Role: "note",
			At:   sheet.Pt{X: posterRim, Y: t.small.H - posterRim + 0.6 + page.MinLetter + posterLine*sheet.MM(i)},
			Size: sheet.Em(page.MinLetter), S: s,
		})
	}
	return out
}
