package framing

import (
	"fmt"

	"galewright/plan"
	"galewright/plan/geom"
	"galewright/plan/units"
)

// headerSpan is one cell of the header table: the longest span, in, and the
// jack studs at each end.
type headerSpan struct {
	Span  float64
	Jacks int
}

func ft(feet, in float64, jacks int) headerSpan { return headerSpan{feet*12 + in, jacks} }

// headerWidths are the building widths of the table's columns, in.
var headerWidths = [3]float64{20 * 12, 28 * 12, 36 * 12}

// headerTable is IRC Table R502.5(1) of 2000 to 2006 (edition from memory),
// exterior bearing walls, as reprinted by a Florida city (read; its ground
// snow column is not legible there, 30 psf from memory). One row a line: ply, depth, then
// span and jacks for buildings 20, 28 and 36 ft wide; first under roof and
// ceiling, then under roof, ceiling and one center-bearing floor.
var headerTable = [2][]struct {
	ply   int
	depth float64
	at    [3]headerSpan
}{
	{
		{2, 3.5, [3]headerSpan{ft(3, 6, 1), ft(3, 2, 1), ft(2, 10, 1)}},
		{2, 5.5, [3]headerSpan{ft(5, 5, 1), ft(4, 8, 1), ft(4, 2, 1)}},
		{2, 7.25, [3]headerSpan{ft(6, 10, 1), ft(5, 11, 2), ft(5, 4, 2)}},
		{2, 9.25, [3]headerSpan{ft(8, 5, 2), ft(7, 3, 2), ft(6, 6, 2)}},
		{2, 11.25, [3]headerSpan{ft(9, 9, 2), ft(8, 5, 2), ft(7, 6, 2)}},
		{3, 7.25, [3]headerSpan{ft(8, 4, 1), ft(7, 5, 1), ft(6, 8, 1)}},
		{3, 9.25, [3]headerSpan{ft(10, 6, 1), ft(9, 1, 2), ft(8, 2, 2)}},
		{3, 11.25, [3]headerSpan{ft(12, 2, 2), ft(10, 7, 2), ft(9, 5, 2)}},
		{4, 7.25, [3]headerSpan{ft(9, 2, 1), ft(8, 4, 1), ft(7, 8, 2)}},
		{4, 9.25, [3]headerSpan{ft(11, 8, 1), ft(10, 6, 1), ft(9, 5, 2)}},
		{4, 11.25, [3]headerSpan{ft(14, 1, 1), ft(12, 2, 2), ft(10, 11, 2)}},
	},
	{
		{2, 3.5, [3]headerSpan{ft(3, 1, 1), ft(2, 9, 1), ft(2, 5, 1)}},
		{2, 5.5, [3]headerSpan{ft(4, 6, 1), ft(4, 0, 1), ft(3, 7, 2)}},
		{2, 7.25, [3]headerSpan{ft(5, 9, 2), ft(5, 0, 2), ft(4, 6, 2)}},
		{2, 9.25, [3]headerSpan{ft(7, 0, 2), ft(6, 2, 2), ft(5, 6, 2)}},
		{2, 11.25, [3]headerSpan{ft(8, 1, 2), ft(7, 1, 2), ft(6, 5, 2)}},
		{3, 7.25, [3]headerSpan{ft(7, 2, 1), ft(6, 3, 2), ft(5, 8, 2)}},
		{3, 9.25, [3]headerSpan{ft(8, 9, 2), ft(7, 8, 2), ft(6, 11, 2)}},
		{3, 11.25, [3]headerSpan{ft(10, 2, 2), ft(8, 11, 2), ft(8, 0, 2)}},
	},
}

// headerRow returns the table's cell for a header that carries a roof and
// the given number of floors (0 or 1) in a building of a width, that of the
// next wider column; why tells what the table does not cover.
func headerRow(u units.System, h plan.Lumber, floors int, width float64) (s headerSpan, why string) {
	if floors > 1 {
		return s, fmt.Sprintf("it has no row for %d floors above", floors)
	}
	col := -1
	for i, w := range headerWidths {
		if width <= w+geom.Eps {
			col = i
			break
		}
	}
	if col < 0 {
		return s, "its widest building is " + u.Length(headerWidths[2])
	}
	for _, r := range headerTable[floors] {
		if r.ply == h.Ply && h.Breadth == plate && r.depth == h.Depth {
			return r.at[col], ""
		}
	}
	return s, fmt.Sprintf("it has no row for %q", h.Text)
}

// kingTable is IRC 2015 Table R602.7.5: full-height studs at each end of a
// header in an exterior wall, for studs 16 and 24 in on center. The 16 ft
// row is second-hand, the others are from memory.
var kingTable = []struct {
	span   float64 // in
	at, up int     // at 16 in, at 24 in
}{
	{3 * 12, 1, 1},
	{4 * 12, 2, 1},
	{8 * 12, 3, 2},
	{12 * 12, 5, 3},
	{16 * 12, 6, 4},
}

// tableKings returns the king studs for a span, in; beyond the table its
// last row. Studs closer than 16 in take the column of 16 in.
func tableKings(span, spacing float64) int {
	row := kingTable[len(kingTable)-1]
	for _, r := range kingTable {
		if span <= r.span+geom.Eps {
			row = r
			break
		}
	}
	if spacing > 16+geom.Eps {
		return row.up
	}
	return row.at
}
