package read

import (
	"galewright/plan"
)

// floorDeckKeys fill the nailing of the floors' decks.
var floorDeckKeys = []binding[plan.FloorDeck]{
	choiceKey("kind", plan.PanelKinds, "what the panels are made of; their thickness is the level's subfloor; 4 by 8 ft, laid across the joists", func(d *plan.FloorDeck) *plan.PanelKind { return &d.Kind }).orWord(string(plan.OSB)),
	field("nail", "nail", `"10d common"`, "nail of the floors' panels", value.nail, func(d *plan.FloorDeck) *string { return &d.Nail }).must(),
	sizeKey("edge", `"6in"`, "nails along the ends of panels, over rims and along the floor's edge, on center", func(d *plan.FloorDeck) *float64 { return &d.Edge }).must(),
	sizeKey("field", `"12in"`, "nails over the joists between, on center", func(d *plan.FloorDeck) *float64 { return &d.Field }).must(),
}

// readFloorDeck reads the nailing of the floors' decks.
func readFloorDeck(v value, p *plan.Plan) {
	n, ok := v.table()
	if !ok {
		return
	}
	n.where = "floor"
	p.FloorDeck = &plan.FloorDeck{Pos: n.pos()}
	n.r.whole(p.FloorDeck, func() { read(n, floorDeckKeys, p.FloorDeck) })
	n.near("edge", p.FloorDeck.Edge)
	n.near("field", p.FloorDeck.Field)
}
