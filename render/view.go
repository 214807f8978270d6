package render

import (
	"slices"

	"galewright/plan"
	"galewright/plan/placement"
	"galewright/render/sheet"
)

// context is what every view may read while it lays out and draws.
type context struct {
	*Model
	Options Options
	Paper   sheet.Paper
	Size    lettering
	Pages   []*page // all pages of the set, numbered; empty while views lay out
	diags   plan.Diagnostics
	// foreseen holds the sheets of the set for the cover to list: all others,
	// and the cover's own as far as they are known.
	foreseen outlook
	// reading is the capital height of text sheets, mm; 0 = the paper's own.
	reading sheet.MM
}

// tell adds a diagnostic.
func (c *context) tell(d plan.Diagnostic) { c.diags = append(c.diags, d) }

// sheetsOf returns the numbers of the pages that carry the key, in order. Use
// it in Draw only. Keys by agreement: "wall 1S" for a wall's elevation,
// "line 1S/2S" for a line's, "level first" for a plan, "roof" for the roof
// plan, "foundation", "mark strap-42" for a detail, "schedule", "check 1S".
func (c *context) sheetsOf(key string) (numbers []string) {
	for _, p := range c.Pages {
		if slices.Contains(p.Keys, key) {
			numbers = append(numbers, p.Number)
		}
	}
	return numbers
}

// legend returns the legend number of a piece.
func (c *context) legend(pc *placement.Piece) int { return c.Schedule.Number(pc.Item.Mark) }

// pieceMark returns what ties marks to a piece. home is set for the one
// instance in the set that stands for the piece.
func (c *context) pieceMark(pc *placement.Piece, home bool) *sheet.Piece {
	return &sheet.Piece{
		Tag:    pc.Tag,
		Legend: c.legend(pc),
		Mark:   pc.Item.Mark,
		Title:  c.pieceTitle(pc),
		Home:   home,
	}
}

// pieceTitle says what a browser shows for a piece: legend number, mark,
// host, station, face.
func (c *context) pieceTitle(pc *placement.Piece) string {
	j := pc.Joint
	where := j.Host
	if j.Wall != nil {
		where = "wall " + where
	}
	s := c.legendText(pc) + " " + pc.Item.Mark + ", " + where + " at " + c.length(pc.Station)
	if pc.Face != "" {
		s += ", " + pc.Face
	}
	return s
}
