package read

import (
	"math"

	"galewright/plan"
	"galewright/plan/length"
)

// levelDraft is a level with what must wait for the others.
type levelDraft struct {
	*plan.Level
	node       node
	floorGiven bool
	depthGiven bool
	studs      string          // as written
	sheathing  *plan.Sheathing // of its exterior walls that give none; nil = not said
}

// tolerance is how far two statements of one height may differ, in: a mark
// of the tape.
const tolerance = length.Tape

// levelKeys fill one story.
var levelKeys = []binding[levelDraft]{
	nameKey("name", `"first"`, "name by which walls and rules speak of it", func(d *levelDraft) *string { return &d.Name }).must(),
	custom("floor", "length", `"10'"`, "top of the subfloor above grade", func(v value, d *levelDraft) {
		d.Floor, d.floorGiven = v.length()
	}).within(0, 1200).usual(0, 480).otherwise("on the plates below plus its floor; 0 for the lowest"),
	sizeKey("plate_height", `"9' 1 1/8in"`, "top of the subfloor to the top of the double top plate",
		func(d *levelDraft) *float64 { return &d.PlateHeight }).within(48, 480).usual(84, 156).must(),
	lengthKey("subfloor", `"23/32in"`, "thickness of the subfloor", func(d *levelDraft) *float64 { return &d.Subfloor }).within(0, 6).usual(0.5, 1.5).or("23/32in", `"23/32in"`),
	custom("joists", "lumber @ spacing", `"2x12 @ 16in"`, "floor joists", func(v value, d *levelDraft) {
		var ok bool
		if d.Joists, d.JoistSpace, ok = v.spaced(); ok && d.JoistSpace == 0 {
			d.JoistSpace = 16
		}
	}).otherwise(`"2x12 @ 16in", or as deep as floor_depth leaves; none on a slab`),
	custom("floor_depth", "length", `"12 7/8in"`, "subfloor and joists, below the top of the subfloor", func(v value, d *levelDraft) {
		d.FloorDepth, d.depthGiven = v.length()
	}).within(0, 60).usual(0, 30).otherwise("joists plus subfloor; 0 on a slab"),
	choiceKey("joist_run", plan.Axes, "the way the joists run", func(d *levelDraft) *plan.Axis { return &d.JoistRun }).
		otherwise("the shorter way across"),
	custom("studs", "lumber @ spacing", `"2x4 @ 16in"`, "studs of its exterior walls, where a wall names none", func(v value, d *levelDraft) {
		if _, _, ok := v.spaced(); ok {
			d.studs, _ = v.text()
		}
	}).otherwise(`"2x6 @ 16in"`),
	sizeKey("rim", `"1 1/2in"`, "thickness of the rim board", func(d *levelDraft) *float64 { return &d.Rim }).within(0.5, 12).usual(1, 4).or("1 1/2in", `"1 1/2in"`),
	choiceKey("under_walls", plan.UnderWalls, "what goes into its floor under each of its inner walls that stands along the joists: a joist of twice the plies under the middle of the wall, or blocks from joist to joist, at most 24 in apart, in the bay that it stands over",
		func(d *levelDraft) *plan.UnderWall { return &d.Under }).orWord(string(plan.UnderNothing)),
	custom("sheathing", "table", `{ panel = "7/16", edge = "6in" }`, "panels of its exterior walls outside of shear segments, where a wall gives none; the keys are those of [wall.sheathing]",
		func(v value, d *levelDraft) { d.sheathing = v.sheathing() }).otherwise("not said: no panel is counted, nothing of it is checked"),
}

// readLevels reads one [[level]].
func readLevels(n node, _ int, p *plan.Plan) {
	d := &levelDraft{Level: &plan.Level{Index: len(p.Levels), Pos: n.pos()}, node: n}
	n.r.whole(d.Level, func() { read(n, levelKeys, d) })
	for _, l := range p.Levels {
		if l.Name == d.Name && d.Name != "" {
			n.twice("level", d.Name, l.Pos)
			return
		}
	}
	p.Levels = append(p.Levels, d.Level)
	n.r.levels = append(n.r.levels, d)
}

// stackLevels works out floors and floor depths from the bottom up.
func (r *reader) stackLevels() {
	var below *levelDraft
	for _, d := range r.levels {
		d.floor(r.plan.Foundation.Kind == plan.Slab && below == nil)
		if below == nil {
			if !d.floorGiven {
				d.Floor = d.FloorDepth
			}
		} else {
			d.standOn(below)
		}
		below = d
	}
}

// floor completes joists and floor depth of one level.
func (d *levelDraft) floor(slab bool) {
	switch joists := d.Joists.Depth > 0; {
	case slab && !joists:
		d.Subfloor = 0
	case joists && !d.depthGiven:
		d.FloorDepth = d.Joists.Depth + d.Subfloor
	case joists:
		if want := d.Joists.Depth + d.Subfloor; math.Abs(want-d.FloorDepth) > tolerance {
			d.node.fault("floor_depth", "floor-depth", "correct one of them, or leave floor_depth out",
				"floor_depth is %s, but joists %s in deep and subfloor %s make %s",
				d.node.r.units().Length(d.FloorDepth), printNumber(d.Joists.Depth), d.node.r.units().Length(d.Subfloor), d.node.r.units().Length(want))
		}
	case d.depthGiven:
		depth := d.FloorDepth - d.Subfloor
		if depth < 3.5 {
			d.node.fault("floor_depth", "floor-depth", "it must hold the joists and the subfloor",
				"floor_depth %s leaves %s for joists under a subfloor of %s", d.node.r.units().Length(d.FloorDepth), d.node.r.units().Length(depth), d.node.r.units().Length(d.Subfloor))
		}
		d.Joists = plan.Lumber{Ply: 1, Breadth: 1.5, Depth: depth, Text: "1.5x" + printNumber(depth)}
		d.JoistSpace = 16
	default:
		d.Joists, _ = plan.ParseLumber("2x12")
		d.JoistSpace, d.FloorDepth = 16, d.Joists.Depth+d.Subfloor
	}
}

// standOn computes the floor from the level below, or compares it.
func (d *levelDraft) standOn(below *levelDraft) {
	want := below.Top() + d.FloorDepth
	switch {
	case !d.floorGiven:
		d.Floor = want
	case d.node.r.broken[d.Level] || d.node.r.broken[below.Level]:
	case math.Abs(want-d.Floor) > tolerance:
		d.node.fault("floor", "floor-height", "correct one of them, or leave floor out: it is computed",
			"floor is %s, but level %s has its plates at %s and this floor is %s deep, which makes %s",
			d.node.r.units().Length(d.Floor), below.Name, d.node.r.units().Length(below.Top()), d.node.r.units().Length(d.FloorDepth), d.node.r.units().Length(want))
	default:
		d.Floor = want // within a mark of the tape: stories must stack exactly
	}
}

// runJoists chooses the way of the joists where the plan does not.
func (r *reader) runJoists() {
	for _, l := range r.plan.Levels {
		lo, hi, ok := extent(r.plan, l)
		if l.JoistRun == "" && ok {
			l.JoistRun = plan.AxisY
			if hi.X-lo.X <= hi.Y-lo.Y {
				l.JoistRun = plan.AxisX
			}
		}
	}
}
