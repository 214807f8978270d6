package framing

import (
	"fmt"

	"galewright/plan"
	"galewright/plan/length"
)

// auto is the value of Opening.Jacks that asks for the code's table.
const auto = -1

// jacks returns the jack studs on each side of an opening: the plan's
// number, or by the plain rule. The rule is that of the older North Carolina
// code: openings up to 6 ft one jack, wider ones two.
func (b *builder) jacks(w *framedWall, o *plan.Opening) int {
	switch {
	case o.Jacks > 0:
		return o.Jacks
	case o.Width > 72:
		return 2
	}
	return 1
}

// kings returns the king studs on each side: the plan's number, or one up to
// 6 ft and two above (common practice, no published source).
func kings(o *plan.Opening) int {
	switch {
	case o.Kings > 0:
		return o.Kings
	case o.Width > 72:
		return 2
	}
	return 1
}

// inches prints a length as the tape reads it.
func inches(v float64) string { return length.Feet(v) }

// number prints a count of things.
func number(n int, thing string) string {
	if n == 1 {
		return "1 " + thing
	}
	return fmt.Sprintf("%d %ss", n, thing)
}
