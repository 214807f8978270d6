package framing

import (
	"fmt"
	"math"

	"galewright/plan"
	"galewright/plan/geom"
)

// jacks returns the jack studs on each side of an opening: the plan's
// number, the code table's when the plan says auto, or by the plain rule.
// The rule is that of an older state code (North Carolina): openings up to
// 6 ft one jack, wider ones two.
func (b *builder) jacks(w *framedWall, o *plan.Opening) int {
	switch {
	case o.Jacks > 0:
		return o.Jacks
	case o.Jacks == plan.AutoCount && w.Exterior && w.Bearing:
		return b.tableJacks(w, o)
	case o.Width > 72:
		return 2
	}
	return 1
}

// tableJacks looks o up in the header table, or faults what it does not
// cover and takes two.
func (b *builder) tableJacks(w *framedWall, o *plan.Opening) int {
	above := b.floorsAbove(w)
	width := b.buildingWidth(w)
	row, why := headerRow(b.plan.Project.Units, o.Header, above, width)
	if why == "" && o.Width > row.Span+geom.Eps {
		why = fmt.Sprintf("a %s carries %s at most there", o.Header.Text, b.inches(row.Span))
	}
	if why != "" {
		b.openingFault(w, o, "jacks-not-in-table", fmt.Sprintf("the header table gives no jacks for %s, %s wide, in a building %s wide: %s", o.Name, b.inches(o.Width), b.inches(width), why),
			"take another header, or give the number of jacks")
		return 2
	}
	return row.Jacks
}

// floorsAbove counts the floors that an exterior wall carries.
func (b *builder) floorsAbove(w *framedWall) int {
	top := 0
	for _, l := range b.plan.Levels {
		top = max(top, l.Index)
	}
	return top - w.TopLevel().Index
}

// buildingWidth returns the extent of the exterior walls of w's level square
// to the ridge of the roof over the house, or the smaller extent when no
// roof tells.
func (b *builder) buildingWidth(w *framedWall) float64 {
	if v, ok := b.widths[w.Level]; ok {
		return v
	}
	v := b.measureWidth(w.Level)
	b.widths[w.Level] = v
	return v
}

func (b *builder) measureWidth(l *plan.Level) float64 {
	lo, hi := geom.Vec2{X: math.Inf(1), Y: math.Inf(1)}, geom.Vec2{X: math.Inf(-1), Y: math.Inf(-1)}
	for _, o := range b.walls {
		if o.Exterior && o.Level == l {
			for _, p := range []geom.Vec2{o.From, o.To} {
				lo = geom.Vec2{X: min(lo.X, p.X), Y: min(lo.Y, p.Y)}
				hi = geom.Vec2{X: max(hi.X, p.X), Y: max(hi.Y, p.Y)}
			}
		}
	}
	size := hi.Sub(lo)
	for _, r := range b.plan.Roofs {
		if r.Ridge == plan.AxisX {
			return size.Y
		} else if r.Ridge == plan.AxisY {
			return size.X
		}
	}
	return min(size.X, size.Y)
}

// kings returns the king studs on each side: the plan's number, the code
// table's when the plan says auto, or one up to 6 ft and two above (common
// practice, no published source).
func kings(w *framedWall, o *plan.Opening) int {
	switch {
	case o.Kings > 0:
		return o.Kings
	case o.Kings == plan.AutoCount && w.Exterior:
		return tableKings(o.Width, w.Spacing)
	case o.Width > 72:
		return 2
	}
	return 1
}

// inches prints a length as the tape reads it.
func (b *builder) inches(v float64) string { return b.plan.Project.Units.Length(v) }

// number prints a count of things.
func number(n int, thing string) string {
	if n == 1 {
		return "1 " + thing
	}
	return fmt.Sprintf("%d %ss", n, thing)
}
