package read

import (
	"maps"
	"slices"

	"galewright/plan"
)

// sheathingKeys fill the panels of a wall outside of its shear segments.
var sheathingKeys = []binding[plan.Sheathing]{
	typeKey[plan.Sheathing]("shear", `"P4"`),
	choiceKey("panel", panels, "panel thickness, in", func(x *plan.Sheathing) *string { return &x.Panel }).or("7/16", `"7/16"`),
	field("nail", "nail", `"8d common"`, "nail of the panels", value.nail, func(x *plan.Sheathing) *string { return &x.Nail }).or("8d common", `"8d common"`),
	sizeKey("edge", `"4in"`, "nails along panel edges and around openings, on center", func(x *plan.Sheathing) *float64 { return &x.Edge }).within(1.5, 12).usual(2, 6).or("6in", `"6in"`),
	sizeKey("field", `"12in"`, "nails along the studs between, on center", func(x *plan.Sheathing) *float64 { return &x.Field }).within(2, 24).usual(4, 12).or("12in", `"12in"`),
}

// sheathing reads the panels of a wall outside of its shear segments; nil after a fault.
func (v value) sheathing() *plan.Sheathing {
	n, ok := v.table()
	if !ok {
		return nil
	}
	n.where += ", sheathing"
	x := &plan.Sheathing{Pos: n.pos()}
	n.r.whole(x, func() {
		n = n.typed("shear")
		n.only(namesOf(sheathingKeys))
		read(n, sheathingKeys, x)
	})
	if n.r.broken[x] {
		return nil
	}
	return x
}

// only takes out what a type lends and this table has no key for.
func (n node) only(names []string) {
	for _, key := range slices.Sorted(maps.Keys(n.lent)) {
		if !slices.Contains(names, key) {
			delete(n.m, key)
			delete(n.lent, key)
		}
	}
}
