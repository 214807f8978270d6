package read

import (
	"slices"

	"galewright/plan"
	"galewright/plan/geom"
)

// beamKeys fill one beam of a floor or ceiling.
var beamKeys = []binding[plan.FloorBeam]{
	nameKey("name", `"B1"`, "name in tags and on sheets", func(x *plan.FloorBeam) *string { return &x.Name }).must(),
	custom("level", "name of a level", `"first"`, "the level at whose top plates it lies: what it carries are the joists over them", func(v value, x *plan.FloorBeam) { x.Level = v.level() }).
		otherwise("the only level"),
	choiceKey("set", plan.BeamSets, "how it lies to the joists over the level's plates: dropped under them, its top flush with the plates, or flush with them, so that they are cut at its faces and hung from it",
		func(x *plan.FloorBeam) *plan.BeamSet { return &x.Set }).orWord(string(plan.SetDropped)),
	field("from", "point", `["20' 5 1/2in", "2in"]`, "where its center line begins, [east, north]; a dropped beam in a wall, or less than 1/2 in short of its face, where it is cut, or on a post; a flush one over a plate or a post, or past the rim, where it is cut; either at the face of another beam of its kind, no shallower and square to it, where it hangs", value.point,
		func(x *plan.FloorBeam) *geom.Vec2 { return &x.From }).must(),
	field("to", "point", `["39' 6 1/2in", "2in"]`, "where its center line ends, in the same way", value.point, func(x *plan.FloorBeam) *geom.Vec2 { return &x.To }).must(),
	lumberKey("member", `"2-2x8"`, "section, with its plies; of a flush beam no shallower than the joists", func(x *plan.FloorBeam) *plan.Lumber { return &x.Member }).must(),
	custom("posts", "lengths or @ spacing", `["3in", "9'"]`, "stations of the centers of posts under it, from its beginning, or their greatest spacing from end to end", func(v value, x *plan.FloorBeam) {
		x.Posts = v.stations(x.To.Sub(x.From).Len())
		slices.Sort(x.Posts)
	}).otherwise("none"),
	lumberKey("post", `"6x6"`, "section of its posts, which stand on the level's floor", func(x *plan.FloorBeam) *plan.Lumber { return &x.Post }).or("6x6", `"6x6"`),
}

// readBeams reads one [[beam]].
func readBeams(n node, _ int, p *plan.Plan) {
	x := &plan.FloorBeam{Pos: n.pos()}
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
