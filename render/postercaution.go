package render

import "galewright/render/sheet"

// posterLine is the pitch of the lines in the lower rim of a page, mm.
const posterLine = minLetter + 0.6

// foot sets what a page is and the caution in its lower rim, above the part
// that a printer leaves white.
func (t tile) foot(what string) (out []sheet.Mark) {
	lines := append([]string{what}, wrap(caution, minLetter, false, t.small.W-2*posterRim)...)
	for i, s := range lines {
		out = append(out, sheet.Text{
			Style: sheet.Style{Fill: sheet.Black, Layer: sheet.LayerNote}, Role: "note",
			At:   sheet.Pt{X: posterRim, Y: t.small.H - posterRim + 0.6 + minLetter + posterLine*sheet.MM(i)},
			Size: sheet.Em(minLetter), S: s,
		})
	}
	return out
}
