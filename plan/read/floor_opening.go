package read

import (
	"cmp"

	"galewright/plan"
	"galewright/plan/geom"
)

// floorOpeningKeys fill one opening in a floor.
var floorOpeningKeys = []binding[plan.FloorOpening]{
	nameKey("name", `"stair"`, "name in tags and on sheets", func(x *plan.FloorOpening) *string { return &x.Name }).must(),
	custom("level", "name of a level", `"second"`, "the level in whose floor it is", func(v value, x *plan.FloorOpening) { x.Level = v.level() }).
		otherwise("the only level"),
	custom("area", "two points", `[["14' 6in", "14' 7in"], ["25' 6in", "18'"]]`, "southwest and northeast corners of the clear opening; where an edge lies at the rim or ledger that joists end at, no header stands there", func(v value, x *plan.FloorOpening) {
		x.Lo, x.Hi, _ = v.corners()
	}).within(-12000, 12000).must(),
	lumberKey("header", `"2-2x12"`, "the header joist across the ends of the joists that it cuts", func(x *plan.FloorOpening) *plan.Lumber { return &x.Header }).
		otherwise("as the joists, doubled where it spans more than 4 ft"),
	lumberKey("trimmer", `"2-2x12"`, "the trimmer joists along its sides", func(x *plan.FloorOpening) *plan.Lumber { return &x.Trimmer }).
		otherwise("as the joists, doubled where the header is, or stands more than 3 ft from their bearing"),
}

// readFloorOpenings reads one [[floor_opening]].
func readFloorOpenings(n node, _ int, p *plan.Plan) {
	x := &plan.FloorOpening{Pos: n.pos()}
	if len(p.Levels) == 1 {
		x.Level = p.Levels[0]
	}
	read(n, floorOpeningKeys, x)
	if x.Level == nil && !n.has("level") {
		n.fault("", "missing-key", `add level = "..."`, "level is missing, and the plan has %d levels", len(p.Levels))
	}
	if x.Name != "" && x.Level != nil && x.Lo != x.Hi {
		p.FloorOpenings = append(p.FloorOpenings, x)
	}
}

// corners reads two points as the southwest and the northeast corner of a rectangle.
func (v value) corners() (lo, hi geom.Vec2, ok bool) {
	list, isList := v.raw.([]any)
	if !isList || len(list) != 2 {
		v.bad("wrong-type", `write it like [["0'", "0'"], ["28'", "44'"]]`, "must be two points")
		return lo, hi, false
	}
	a, ok1 := value{v.node, v.key, 0, list[0]}.point()
	b, ok2 := value{v.node, v.key, 1, list[1]}.point()
	lo = geom.Vec2{X: min(a.X, b.X), Y: min(a.Y, b.Y)}
	hi = geom.Vec2{X: max(a.X, b.X), Y: max(a.Y, b.Y)}
	return lo, hi, ok1 && ok2
}

// checkFloorOpenings looks at the sizes of openings in floors.
func (r *reader) checkFloorOpenings() {
	for _, x := range r.plan.FloorOpenings {
		where, size := "floor opening "+x.Name, x.Hi.Sub(x.Lo)
		if size.X < 12 || size.Y < 12 {
			r.fail(x.Pos, "opening-no-size", where, "area is the southwest and the northeast corner", "area covers %s by %s", r.units().Length(size.X), r.units().Length(size.Y))
		}
		deep := x.Level.Joists.Depth
		if deep == 0 {
			r.fail(x.Pos, "floor-opening-no-joists", where, "give the level joists, or leave the opening out", "the floor of level %s has no joists", x.Level.Name)
			continue
		}
		for _, m := range []struct {
			key    string
			lumber plan.Lumber
		}{{"header", x.Header}, {"trimmer", x.Trimmer}} {
			if m.lumber.Depth > 0 && cmp.Compare(m.lumber.Depth, deep) != 0 {
				r.fail(x.Pos, "floor-opening-depth", where, "take lumber as deep as the joists", "its %s is %s deep, the joists %s", m.key, r.units().Length(m.lumber.Depth), r.units().Length(deep))
			}
		}
	}
}
