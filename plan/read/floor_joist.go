package read

import (
	"galewright/plan"
	"galewright/plan/geom"
)

// floorJoistKeys fill one joist beside those at the spacing.
var floorJoistKeys = []binding[plan.FloorJoist]{
	nameKey("name", `"J1"`, "name in lists", func(x *plan.FloorJoist) *string { return &x.Name }).must(),
	custom("level", "name of a level", `"second"`, "the level in whose floor it is", func(v value, x *plan.FloorJoist) { x.Level = v.level() }).
		otherwise("the only level"),
	field("from", "point", `["12'", "0'"]`, "where its center line begins, [east, north]: over a girder, bearing wall or dropped beam, or past the rim, ledger or flush beam that joists end at, where it is cut; joists at the spacing that are in its way are left out", value.point,
		func(x *plan.FloorJoist) *geom.Vec2 { return &x.From }).within(-12000, 12000).must(),
	field("to", "point", `["12'", "14'"]`, "where it ends, in the same way", value.point, func(x *plan.FloorJoist) *geom.Vec2 { return &x.To }).within(-12000, 12000).must(),
	lumberKey("member", `"2-2x12"`, "section, with its plies, as deep as the joists", func(x *plan.FloorJoist) *plan.Lumber { return &x.Member }).otherwise("as the joists"),
}

// readFloorJoists reads one [[joist]].
func readFloorJoists(n node, _ int, p *plan.Plan) {
	x := &plan.FloorJoist{Pos: n.pos()}
	if len(p.Levels) == 1 {
		x.Level = p.Levels[0]
	}
	read(n, floorJoistKeys, x)
	if x.Level == nil && !n.has("level") {
		n.fault("", "missing-key", `add level = "..."`, "level is missing, and the plan has %d levels", len(p.Levels))
	}
	if x.Name != "" && x.Level != nil && n.has("from") && n.has("to") && x.From != x.To {
		p.FloorJoists = append(p.FloorJoists, x)
	}
}

// floorBlockKeys fill one row of blocks in a floor.
var floorBlockKeys = []binding[plan.FloorBlocks]{
	nameKey("name", `"K1"`, "name in lists", func(x *plan.FloorBlocks) *string { return &x.Name }).must(),
	custom("level", "name of a level", `"second"`, "the level in whose floor they are", func(v value, x *plan.FloorBlocks) { x.Level = v.level() }).
		otherwise("the only level"),
	field("from", "point", `["4'", "14' 3in"]`, "where the row's center line begins, [east, north]: blocks as deep as the joists stand in each bay that it crosses whole", value.point,
		func(x *plan.FloorBlocks) *geom.Vec2 { return &x.From }).within(-12000, 12000).must(),
	field("to", "point", `["16'", "14' 3in"]`, "where it ends, square across the joists", value.point, func(x *plan.FloorBlocks) *geom.Vec2 { return &x.To }).within(-12000, 12000).must(),
}

// readFloorBlocks reads one [[blocking]].
func readFloorBlocks(n node, _ int, p *plan.Plan) {
	x := &plan.FloorBlocks{Pos: n.pos()}
	if len(p.Levels) == 1 {
		x.Level = p.Levels[0]
	}
	read(n, floorBlockKeys, x)
	if x.Level == nil && !n.has("level") {
		n.fault("", "missing-key", `add level = "..."`, "level is missing, and the plan has %d levels", len(p.Levels))
	}
	if x.Name != "" && x.Level != nil && n.has("from") && n.has("to") && x.From != x.To {
		p.FloorBlocks = append(p.FloorBlocks, x)
	}
}
