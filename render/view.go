package render

import (
	"cmp"
	"slices"

	"galewright/plan"
	"galewright/plan/placement"
	"galewright/render/sheet"
)

// view is one kind of sheet. A view's file registers it with
//
//	var _ = register(view{Series: 1, Order: 20, Name: "roof plan", Pages: roofPages})
type view struct {
	Series int // 0 general, 1 plans, 2 elevations, 5 details, 6 schedules, 7 check sheets
	Order  int // within the series
	Name   string
	// Pages lays the view out on c.Paper: makes pages with c.newPage and
	// gives each its title, scale, keys and Draw. Nothing is drawn yet, and
	// no sheet number is known.
	Pages func(c *context) []*page
}

var views []view

// register adds a view to the set.
func register(v view) struct{} {
	views = append(views, v)
	return struct{}{}
}

// sortedViews returns the views in the order of their sheets.
func sortedViews() []view {
	out := slices.Clone(views)
	slices.SortStableFunc(out, func(a, b view) int {
		return cmp.Or(cmp.Compare(a.Series, b.Series), cmp.Compare(a.Order, b.Order), cmp.Compare(a.Name, b.Name))
	})
	return out
}

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
		s += ", " + string(pc.Face)
	}
	return s
}
