package read

import (
	"galewright/plan"
	"galewright/plan/geom"
)

// beamKeys fill one flush beam.
var beamKeys = []binding[plan.FlushBeam]{
	nameKey("name", `"B1"`, "name in lists and on sheets", func(x *plan.FlushBeam) *string { return &x.Name }).must(),
	custom("level", "name of a level", `"first"`, "the level at whose top plates it lies, its top flush with theirs", func(v value, x *plan.FlushBeam) { x.Level = v.level() }).
		otherwise("the only level"),
	field("from", "point", `["20' 5 1/2in", "2in"]`, "where its center line begins, [east, north]: in a wall, or less than 1/2 in short of its face, where it is cut", value.point,
		func(x *plan.FlushBeam) *geom.Vec2 { return &x.From }).must(),
	field("to", "point", `["39' 6 1/2in", "2in"]`, "where its center line ends, in the same way", value.point, func(x *plan.FlushBeam) *geom.Vec2 { return &x.To }).must(),
	lumberKey("member", `"2-2x8"`, "section, with its plies", func(x *plan.FlushBeam) *plan.Lumber { return &x.Member }).must(),
}

// readBeams reads one [[beam]].
func readBeams(n node, _ int, p *plan.Plan) {
	x := &plan.FlushBeam{Pos: n.pos()}
	if len(p.Levels) == 1 {
		x.Level = p.Levels[0]
	}
	read(n, beamKeys, x)
	if x.Level == nil && !n.has("level") {
		n.fault("", "missing-key", `add level = "..."`, "level is missing, and the plan has %d levels", len(p.Levels))
	}
	if x.Name != "" && x.Level != nil && x.Member.Depth > 0 && n.has("from") && n.has("to") {
		p.Beams = append(p.Beams, x)
	}
}
