package read

import (
	"fmt"
	"math"

	"galewright/plan"
	"galewright/plan/geom"
)

// wallDraft is a wall with what must wait for its other keys.
type wallDraft struct {
	*plan.Wall
	fromGiven bool
	toGiven   bool
	interior  bool
	bearing   *bool
	toEnd     []*plan.Shear // segments that name no end
}

// wallKeys fill one wall. Openings come last: their headers depend on the studs.
var wallKeys []binding[wallDraft]

func init() { // refers to openings and shear walls, which refer to nothing here
	wallKeys = []binding[wallDraft]{
		nameKey("name", `"1S"`, "name in tags and on sheets", func(d *wallDraft) *string { return &d.Name }).must(),
		custom("level", "name of a level", `"first"`, "the level it stands on", func(v value, d *wallDraft) { d.Level = v.level() }).
			otherwise("the only one"),
		custom("from", "point", `["0'", "0'"]`, "where it begins, at the left as seen from outside: outside face of its studs, [east, north]",
			func(v value, d *wallDraft) { d.From, d.fromGiven = v.point() }).within(-12000, 12000).
			otherwise("where the wall before it on the same level ends"),
		custom("to", "point", `["28'", "0'"]`, "where it ends, at the right as seen from outside",
			func(v value, d *wallDraft) { d.To, d.toGiven = v.point() }).within(-12000, 12000).must(),
		field("interior", "true or false", "true", "an interior wall; from and to lie on the face on the viewing side", value.flag,
			func(d *wallDraft) *bool { return &d.interior }).otherwise("false"),
		custom("studs", "lumber @ spacing", `"2x6 @ 16in"`, "studs, with their spacing on center", value.studs).
			otherwise(`the level's outside, "2x4 @ 16in" inside`),
		custom("balloon_to", "name of a level", `"second"`, "the level whose top plates its studs reach in one piece",
			func(v value, d *wallDraft) { d.ToLevel = v.level() }).otherwise("its own level"),
		sizeKey("height", `"8' 1 1/8in"`, "subfloor to the top of its top plate, where it is not the level's own",
			func(d *wallDraft) *float64 { return &d.Height }).within(4, 720).usual(84, 432).otherwise("the level's plate_height"),
		choiceKey("top", plan.WallTops, "studs to the level's plates, or up to the rafters of a gable",
			func(d *wallDraft) *plan.WallTop { return &d.Top }).orWord(string(plan.PlateTop)),
		lengthKey("layout", `"8in"`, "where the stud module starts, from the point from", func(d *wallDraft) *float64 { return &d.Layout }).within(0, 24000).or("0in", `"0in"`),
		custom("start", "end", `{ join = "through", post = 4 }`, "how it begins: through or butt at the corner, and the studs in the corner post",
			func(v value, d *wallDraft) { d.Start = v.end() }).otherwise("the corner decides; a three-stud post"),
		custom("end", "end", `"butt"`, "how it ends", func(v value, d *wallDraft) { d.End = v.end() }).
			otherwise("the corner decides; a three-stud post"),
		custom("bearing", "true or false", "true", "carries floor or roof", func(v value, d *wallDraft) {
			if b, ok := v.flag(); ok {
				d.bearing = &b
			}
		}).otherwise("true outside, false inside"),
		choiceKey("under", plan.UnderWalls, "what goes into the floor under it, an inner wall, where it stands along the joists",
			func(d *wallDraft) *plan.UnderWall { return &d.Under }).otherwise("as under_walls of its level"),
		flagKey("through", "an interior wall that runs through where another interior wall crosses it", func(d *wallDraft) *bool { return &d.Through }).
			otherwise("the higher, else the bearing, else the longer of the two runs through"),
		sizeKey("stock", `"16'"`, "longest plate stock for this wall", func(d *wallDraft) *float64 { return &d.Stock }).within(24, 1200).usual(96, 480).
			otherwise("plate of [lumber]"),
		custom("breaks", "table", `{ top = ["8'"], upper = ["12'"] }`, "where its plates are spliced, for those that are named", func(v value, d *wallDraft) { d.Breaks = v.breaks() }).
			otherwise("by rule: the fewest pieces of stock, over studs, those of the two top plates 24 in apart or more"),
		custom("opening", "tables", "", "its rough openings", func(v value, d *wallDraft) {
			d.preset(v.node)
			for _, n := range v.nodes("opening") {
				readOpening(n, d.Wall)
			}
		}),
		custom("post", "tables", "", "studs added beside each other at a place, as under a beam's end", func(v value, d *wallDraft) {
			for _, n := range v.nodes("post") {
				readPost(n, d.Wall)
			}
		}),
		custom("sheathing", "table", `{ panel = "7/16", edge = "6in" }`, "panels on the outside of its studs outside of shear segments: counted, drawn and checked for suction, never a part of a shear wall",
			func(v value, d *wallDraft) { d.Sheathing = v.sheathing() }).otherwise("the level's outside, none inside"),
		custom("shear", "tables", "", "its sheathed segments that resist lateral load", func(v value, d *wallDraft) {
			for i, n := range v.nodes("shear") {
				readShear(n, i, d)
			}
		}),
	}
	for i := range wallKeys {
		if wallKeys[i].Type == "tables" {
			wallKeys[i].Example = "[[wall." + wallKeys[i].Name + "]]"
		}
	}
}

// readWalls reads one [[wall]].
func readWalls(n node, _ int, p *plan.Plan) {
	d := &wallDraft{Wall: &plan.Wall{Pos: n.pos()}}
	if len(p.Levels) == 1 {
		d.Level = p.Levels[0]
	}
	read(n, wallKeys, d)
	if d.Level == nil && !n.has("level") {
		n.fault("", "missing-key", `add level = "..."`, "level is missing, and the plan has %d levels", len(p.Levels))
	}
	d.Exterior, d.Bearing = !d.interior, !d.interior
	if d.bearing != nil {
		d.Bearing = *d.bearing
	}
	if !n.has("sheathing") && d.Exterior && d.Level != nil {
		d.Sheathing = n.r.levels[d.Level.Index].sheathing
	}
	d.preset(n)
	if d.Spacing == 0 {
		d.Spacing = 16
	}
	if d.ToLevel == nil {
		d.ToLevel = d.Level
	}
	if !n.has("from") {
		d.follow(n, p)
	}
	for _, s := range d.toEnd {
		s.To = d.Length()
	}
	n.r.wall(n, d)
}

// studs reads the studs of a wall.
func (v value) studs(d *wallDraft) {
	var ok bool
	if d.Studs, d.Spacing, ok = v.spaced(); ok && d.Studs.Ply != 1 {
		v.bad("bad-lumber", "openings and corners add their own studs", "studs are single pieces, not %d-ply", d.Studs.Ply)
	}
}

// preset gives studs to a wall that names none, before its openings are read:
// their headers depend on them.
func (d *wallDraft) preset(n node) {
	if n.has("studs") {
		return
	}
	text := "2x6 @ 16in"
	if d.interior {
		text = "2x4 @ 16in"
	} else if d.Level != nil && n.r.levels[d.Level.Index].studs != "" {
		text = n.r.levels[d.Level.Index].studs
	}
	value{n, "studs", -1, text}.studs(d)
}

// follow starts the wall where the one before it on its level ends.
func (d *wallDraft) follow(n node, p *plan.Plan) {
	for i := len(p.Walls) - 1; i >= 0; i-- {
		if p.Walls[i].Level == d.Level || p.Walls[i].Level == nil {
			d.From, d.fromGiven = p.Walls[i].To, true
			return
		}
	}
	n.fault("", "missing-key", `add from = ["0'", "0'"]`, "from is missing, and no wall on its level comes before it")
}

// wall keeps a wall that is whole enough to be checked.
func (r *reader) wall(n node, d *wallDraft) {
	if d.Name == "" {
		return
	}
	if !d.fromGiven || !d.toGiven {
		r.broken[d.Wall] = true
	} else if d.Length() < 2*d.Studs.Breadth {
		n.fault("to", "short-wall", "from and to must lie apart", "the wall is %s long", r.units().Length(d.Length()))
	}
	r.plan.Walls = append(r.plan.Walls, d.Wall)
}

// level reads the name of a level; nil after a fault.
func (v value) level() *plan.Level {
	s, ok := v.text()
	if !ok {
		return nil
	}
	names := make([]string, len(v.r.plan.Levels))
	for i, l := range v.r.plan.Levels {
		if names[i] = l.Name; l.Name == s {
			return l
		}
	}
	v.bad("unknown-level", nearest(s, names), "there is no level %q", s)
	return nil
}

// end reads "through", "butt" or { join = ..., post = ... }.
func (v value) end() (e plan.End) {
	e.Pos = v.place()
	if _, ok := v.raw.(string); ok {
		e.Join, _ = choice(v, plan.Joins)
		return e
	}
	if n, ok := v.table(); ok {
		n.where += ", " + v.key
		read(n, endKeys, &e)
	}
	return e
}

// endKeys fill one end of a wall.
var endKeys = []binding[plan.End]{
	choiceKey("join", plan.Joins, "whether the wall runs through at the corner or butts", func(e *plan.End) *plan.Join { return &e.Join }).
		otherwise("the corner decides"),
	wholeKey("post", "3", 2, 6, "studs in the corner post", func(e *plan.End) *int { return &e.Post }).otherwise("three outside, as the corner needs"),
}

// extent returns the extent on plan of the exterior walls round a level; zero
// when it has none.
func extent(p *plan.Plan, l *plan.Level) (lo, hi geom.Vec2, ok bool) {
	lo, hi = geom.Vec2{X: math.Inf(1), Y: math.Inf(1)}, geom.Vec2{X: math.Inf(-1), Y: math.Inf(-1)}
	for _, w := range p.Walls {
		if !w.On(l) || !w.Exterior {
			continue
		}
		for _, q := range []geom.Vec2{w.From, w.To} {
			lo = geom.Vec2{X: min(lo.X, q.X), Y: min(lo.Y, q.Y)}
			hi = geom.Vec2{X: max(hi.X, q.X), Y: max(hi.Y, q.Y)}
		}
		ok = true
	}
	if !ok {
		return geom.Vec2{}, geom.Vec2{}, false
	}
	return lo, hi, true
}

// lineIn names the line of a place for who reads at another one: with its file where that is
// another.
func lineIn(p, at plan.Pos) string {
	if p.File != at.File {
		return fmt.Sprintf("line %d of %s", p.Line, p.File)
	}
	return fmt.Sprintf("line %d", p.Line)
}

// twice reports a second thing of one name.
func (n node) twice(kind, name string, first plan.Pos) {
	n.r.add(plan.Diagnostic{
		Code: "same-name", Summary: fmt.Sprintf("a second %s is named %q; the first is in %s", kind, name, lineIn(first, n.r.pos(n.at("name")))),
		Where: n.where, Mend: "give it a name of its own", Pos: n.r.pos(n.at("name")), Related: []plan.Pos{first},
	})
}
