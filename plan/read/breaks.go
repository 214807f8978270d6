package read

import (
	"slices"

	"galewright/plan"
)

// breakKeys fill where the plates of a wall are spliced.
var breakKeys = []binding[plan.PlateBreaks]{
	breaksKey("bottom", `["12'"]`, "the bottom plate, or the sill plate on a slab", func(x *plan.PlateBreaks) *[]float64 { return &x.Bottom }),
	breaksKey("top", `["8'"]`, "the lower top plate", func(x *plan.PlateBreaks) *[]float64 { return &x.Top }),
	breaksKey("upper", `["12'"]`, "the upper top plate, beside where plates of other walls lap over", func(x *plan.PlateBreaks) *[]float64 { return &x.Upper }),
}

func breaksKey(name, example, doc string, at func(*plan.PlateBreaks) *[]float64) binding[plan.PlateBreaks] {
	return custom(name, "lengths", example, "stations of the breaks in "+doc+", from the wall's point from; [] for none", func(v value, x *plan.PlateBreaks) {
		list, _ := v.lengths()
		slices.Sort(list)
		*at(x) = append([]float64{}, list...) // an empty list is not none
	}).within(0, 24000).otherwise("by rule")
}

// breaks reads where the plates of a wall are spliced; nil after a fault.
func (v value) breaks() *plan.PlateBreaks {
	n, ok := v.table()
	if !ok {
		return nil
	}
	n.where += ", breaks"
	x := &plan.PlateBreaks{Pos: n.pos()}
	n.r.whole(x, func() { read(n, breakKeys, x) })
	if n.r.broken[x] {
		return nil
	}
	return x
}
