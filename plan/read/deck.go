package read

import (
	"fmt"
	"slices"
	"strings"

	"galewright/plan"
	"galewright/plan/timber"
)

// deckPanels are the thicknesses of roof panels, in: those that both tables
// of the trade, walls and roofs, have, and thicker ones (common practice, no
// published source).
var deckPanels = []string{"3/8", "7/16", "15/32", "1/2", "19/32", "5/8", "23/32", "3/4"}

// deckKeys fill the roof deck.
var deckKeys = []binding[plan.Deck]{
	choiceKey("panel", deckPanels, "panel thickness, in; panels are 4 by 8 ft, laid across the rafters", func(d *plan.Deck) *string { return &d.Panel }).must(),
	choiceKey("kind", plan.PanelKinds, "what the panels are made of", func(d *plan.Deck) *plan.PanelKind { return &d.Kind }).orWord(string(plan.OSB)),
	field("nail", "nail", `"ring 0.113 x 2 3/8"`, "nail of the deck; \"ring\" for a ring shank", value.nail, func(d *plan.Deck) *string { return &d.Nail }).must(),
	sizeKey("head", `"0.281in"`, "diameter of the nail's head", func(d *plan.Deck) *float64 { return &d.Head }).otherwise("that of the standard nail; needed where the nail is none"),
	sizeKey("rings", `"1 1/2in"`, "length of a ring shank's rings, from the tip", func(d *plan.Deck) *float64 { return &d.Rings }).otherwise("1 1/2in for a ring shank"),
	sizeKey("edge", `"6in"`, "nails along the ends of panels, over hips and valleys, on center", func(d *plan.Deck) *float64 { return &d.Edge }).must(),
	sizeKey("field", `"6in"`, "nails over the rafters between, on center", func(d *plan.Deck) *float64 { return &d.Field }).must(),
	sizeKey("gable", `"4in"`, "nails into the framing over a gable end, on center", func(d *plan.Deck) *float64 { return &d.Gable }).otherwise("edge"),
	custom("zone", "tables", `[{ near = ["eave", "rake", "ridge"], within = "4'", edge = "4in", field = "4in" }]`,
		"parts of the deck with closer nails; a later one overrides an earlier one", readNailZones),
}

// nailZoneKeys fill one part of the deck.
var nailZoneKeys = []binding[plan.NailZone]{
	choicesKey("near", `["eave", "rake"]`, plan.RoofEdges, "edges of the roof that it lies along", func(z *plan.NailZone) *[]plan.RoofEdge { return &z.Near }).must(),
	sizeKey("within", `"4'"`, "how far from the edge it reaches, on plan", func(z *plan.NailZone) *float64 { return &z.Within }).must(),
	flagKey("corners", "only where two of these kinds of edges are both that near", func(z *plan.NailZone) *bool { return &z.Corners }),
	sizeKey("edge", `"4in"`, "nails along the ends of panels, over hips and valleys, on center", func(z *plan.NailZone) *float64 { return &z.Edge }).must(),
	sizeKey("field", `"4in"`, "nails over the rafters between, on center", func(z *plan.NailZone) *float64 { return &z.Field }).must(),
}

// rings is the length of the ringed shank of roof sheathing nails from the
// tip, in: a public job note of ASTM F1667 RSRS-01 nails, 1.5 in of rings
// (second-hand).
const rings = 1.5

// ringed tells whether a nail's name says that its shank is ringed.
func ringed(nail string) bool { return slices.Contains(strings.Fields(nail), "ring") }

// readDeck reads the roof deck.
func readDeck(v value, p *plan.Plan) {
	n, ok := v.table()
	if !ok {
		return
	}
	n.where = "deck"
	p.Deck = &plan.Deck{Pos: n.pos()}
	n.r.whole(p.Deck, func() { read(n, deckKeys, p.Deck) })
	d := p.Deck
	if ringed(d.Nail) && d.Rings == 0 {
		d.Rings = rings
	}
	if !ringed(d.Nail) && n.has("rings") {
		n.fault("rings", "idle-key", `take it out, or write nail = "ring ..."`, "rings is for a ring shank, and %s is smooth", d.Nail)
		d.Rings = 0
	}
	if _, standard := timber.NailOf(d.Nail); d.Nail != "" && !standard && !n.has("head") {
		n.fault("", "missing-key", `add head = "0.281in", or name a standard nail like "8d common"`, "head is missing: the head of %s is in no table", d.Nail)
	}
	n.near("edge", d.Edge)
	n.near("field", d.Field)
	n.near("gable", d.Gable)
}

// readNailZones reads the parts of the deck.
func readNailZones(v value, d *plan.Deck) {
	for i, n := range v.nodes("zone") {
		n.where = fmt.Sprintf("deck zone no. %d", i+1)
		z := plan.NailZone{Pos: n.pos()}
		read(n, nailZoneKeys, &z)
		slices.Sort(z.Near)
		z.Near = slices.Compact(z.Near)
		if z.Corners && len(z.Near) == 1 {
			n.fault("corners", "idle-key", "name the other kind of edge in near", "corners are where two kinds of edges meet, and near has one")
		}
		n.near("edge", z.Edge)
		n.near("field", z.Field)
		d.Zones = append(d.Zones, z)
	}
}

// closest is the spacing from which nails split a member of 2x lumber: FEMA
// P-499 Fact Sheet 7.1, 2010 (read).
const closest = 3.0

// near warns of nails that stand too close for a member of 2x lumber.
func (n node) near(key string, in float64) {
	if in > 0 && in < closest-1e-9 {
		n.r.warn(n.r.pos(n.at(key)), "deck-nails-close", n.where, "space them 3 in or more, take larger nails, or 3x framing with the nails staggered",
			"nails at %s on center split framing of one 2x (FEMA P-499 Fact Sheet 7.1)", n.r.units().Length(in))
	}
}
