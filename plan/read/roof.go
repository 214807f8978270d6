package read

import (
	"fmt"
	"math"
	"strings"

	"galewright/plan"
	"galewright/plan/geom"
)

// roofDraft is a roof with what must wait for its other keys.
type roofDraft struct {
	*plan.Roof
	rake    bool // given
	area    bool // given
	oneSize bool
}

// roofKeys fill one roof body.
var roofKeys = []binding[roofDraft]{
	nameKey("name", `"main"`, "name in tags and on sheets", func(d *roofDraft) *string { return &d.Name }).or("roof", `"roof"`),
	custom("over", "name of a level", `"second"`, "the level whose walls carry it", func(v value, d *roofDraft) { d.Over = v.level() }).
		otherwise("the highest"),
	choiceKey("kind", plan.RoofKinds, "gable, hip or shed", func(d *roofDraft) *plan.RoofKind { return &d.Kind }).must(),
	custom("area", "two points", `[["0'", "0'"], ["28'", "44'"]]`, "southwest and northeast corners of what it covers, outside faces of the studs", readArea).within(-12000, 12000).
		otherwise("the extent of the level's exterior walls"),
	choiceKey("ridge", plan.Axes, "the way the ridge runs (of a shed: its high wall)", func(d *roofDraft) *plan.Axis { return &d.Ridge }).
		otherwise("along the longer side"),
	choiceKey("high", plan.Sides, "the side of a shed's high wall", func(d *roofDraft) *plan.Side { return &d.High }),
	pitchKey("pitch", "rise in run", func(d *roofDraft) *float64 { return &d.Pitch }).must(),
	pitchKey("pitch_other", "pitch of the other side (east or north) of an unequal gable", func(d *roofDraft) *float64 { return &d.PitchOther }).
		otherwise("pitch"),
	lengthKey("overhang", `"1' 6in"`, "at the eaves, horizontal, from the outside face of the studs", func(d *roofDraft) *float64 { return &d.Overhang }).within(0, 120).usual(0, 48).
		or("1'", `"1'"`),
	custom("rake", "length", `"1'"`, "overhang at gable ends, horizontal", func(v value, d *roofDraft) { d.Rake, d.rake = v.length() }).within(0, 120).usual(0, 48).
		otherwise("overhang"),
	custom("rafters", "lumber @ spacing", `"2x8 @ 16in"`, "rafters, with their spacing on center", func(v value, d *roofDraft) {
		d.Rafters, d.Spacing, _ = v.spaced()
	}).or("2x8 @ 16in", `"2x8 @ 16in"`),
	custom("layout", "length", `"8in"`, "where the module of the rafters or trusses starts, along the ridge from the outside face at its west or south end; rafters of all roofs that share a ridge or lie in one plane stand on one module",
		func(v value, d *roofDraft) { d.Layout = v.station() }).within(0, 24000).
		otherwise("the end of the ridge at a hip, else the outside face of the west or south gable; of roofs on one module that of a hip's own face, else the first one's"),
	lumberKey("ridge_member", `"1.75x11.875"`, "ridge board or beam", func(d *roofDraft) *plan.Lumber { return &d.RidgeMember }).
		otherwise("the shallowest 2x that takes the rafters' plumb cut"),
	sizeKey("ridge_stock", `"16'"`, "longest piece of a ridge board: it breaks over a pair of rafters within that, counted from the ridge's west or south end", func(d *roofDraft) *float64 { return &d.RidgeStock }).within(24, 1200).usual(96, 720).
		otherwise("the longest stock of [lumber]"),
	flagKey("ridge_beam", "the ridge member is a beam that carries, not a board", func(d *roofDraft) *bool { return &d.RidgeBearing }),
	flagKey("trusses", "trusses at the same spacing instead of rafters", func(d *roofDraft) *bool { return &d.Trusses }),
	sizeKey("hip_girder", `"8'"`, "of a truss roof: the girder truss of each hip end, from the outside face of the end wall's studs to the middle of its outer ply; jack trusses hang on it, hip trusses step up from it", func(d *roofDraft) *float64 { return &d.HipGirder }).within(24, 480).usual(48, 144).
		otherwise("whole spaces, up to 8' or two thirds of the way to the end of the ridge"),
	wholeKey("hip_girder_plies", "3", 1, 4, "plies of each girder truss; how they are fastened to each other is the truss designer's", func(d *roofDraft) *int { return &d.HipGirderPlies }).or(int64(2), "2"),
	custom("gable_ends", "words", `["rake", "gable truss"]`, "how the low and the high end of the ridge are closed; one word for both; of a shed a hip past the corner of the house, where another shed goes on", readGableEnds).
		words(plan.Words(plan.GableEnds)).otherwise("rake over a wall with top = \"rake\", else a gable truss"),
	field("ceiling_ties", "true or false", "true", "ceiling joists or ties at the plate", value.flag,
		func(d *roofDraft) *bool { return &d.CeilingTies }).or(true, "true"),
	custom("ceiling_joists", "lumber @ spacing", `"2x6 @ 32in"`, "ceiling joists (ties), each beside a pair of rafters: the spacing is a multiple of the rafters'", func(v value, d *roofDraft) {
		d.Ceiling, d.CeilingSpace, _ = v.spaced()
	}).otherwise(`"2x6", at each pair of rafters`),
	lengthKey("ceiling_splice", `"2'"`, "how far the splice piece beside a break in a ceiling joist laps each side; where it is given, joists longer than the stock may break between bearing walls",
		func(d *roofDraft) *float64 { return &d.CeilingSplice }).within(0, 240).usual(12, 96).otherwise("1' over a bearing wall; no break anywhere else"),
	custom("post", "tables", `[{ at = "28'" }]`, "posts under its ridge, each from a footing of its own up through the floors", func(v value, d *roofDraft) {
		for _, n := range v.nodes("post") {
			readRidgePost(n, d.Roof)
		}
	}),
	choiceKey("blocking", plan.EaveBlockings, "blocks between the rafters or trusses over the plates at the eaves: full, beveled up to the deck, which is nailed to them; or vented, 2 in lower for air, which keep the rafters upright and take no nails of the deck",
		func(d *roofDraft) *plan.EaveBlocking { return &d.Blocking }).orWord(string(plan.NoBlocking)),
	custom("blocking_set", "length", `"1 1/2in"`, "how far the blocks stand back from the outside face of the plates", func(v value, d *roofDraft) { d.BlockingSet = v.station() }).
		otherwise("flush with the plates' inside face: clear of clips outside and of straps over the plates"),
}

// ridgePostKeys fill one post under a ridge.
var ridgePostKeys = []binding[plan.RidgePost]{
	lengthKey("at", `"28'"`, "place of its middle along the ridge, from the outside face of the wall at the ridge's west or south end", func(p *plan.RidgePost) *float64 { return &p.At }).within(-240, 24000).must(),
	lumberKey("member", `"6x6"`, "its size", func(p *plan.RidgePost) *plan.Lumber { return &p.Member }).or("6x6", `"6x6"`),
	lengthKey("base", `"8in"`, "top of its footing, above grade", func(p *plan.RidgePost) *float64 { return &p.Base }).within(-240, 1200).usual(-48, 480).or("0'", `"0'"`),
}

// readRidgePost reads one [[roof.post]].
func readRidgePost(n node, r *plan.Roof) {
	p := &plan.RidgePost{Pos: n.pos()}
	read(n, ridgePostKeys, p)
	if n.has("at") {
		r.Posts = append(r.Posts, p)
	}
}

// pitchKey reads "7:12".
func pitchKey(name, doc string, at func(*roofDraft) *float64) binding[roofDraft] {
	return field(name, "pitch", `"7:12"`, doc, value.pitch, at)
}

// pitch reads "7:12" as the rise in 12 of run.
func (v value) pitch() (float64, bool) {
	s, ok := v.raw.(string)
	a, b, colon := strings.Cut(s, ":")
	rise, err1 := plan.Inches(a)
	run, err2 := plan.Inches(b)
	if !ok || !colon || err1 != nil || err2 != nil || run <= 0 {
		v.bad("bad-pitch", `write it like "7:12"`, "is not a pitch")
		return 0, false
	}
	p := rise * 12 / run
	if p < 0.25 || p > 24 {
		v.bad("out-of-range", "", "%q is not between 1/4:12 and 24:12", s)
	}
	return p, p >= 0.25 && p <= 24
}

// station reads a place along a roof's ridge; nil where it is none.
func (v value) station() *float64 {
	if s, ok := v.length(); ok {
		return &s
	}
	return nil
}

func readArea(v value, d *roofDraft) {
	if lo, hi, ok := v.corners(); ok {
		d.area, d.Area = true, [2]geom.Vec2{lo, hi}
	}
}

func readGableEnds(v value, d *roofDraft) {
	list := v.list()
	if len(list) > 2 || len(list) == 0 {
		v.bad("wrong-type", "name one for both ends, or the low and the high end", "has %d words", len(list))
		return
	}
	for i, x := range list {
		s, _ := choice(x, plan.GableEnds)
		d.GableEnd[i], d.oneSize = s, len(list) == 1
	}
	if d.oneSize {
		d.GableEnd[1] = d.GableEnd[0]
	}
}

// readRoofs reads one [[roof]].
func readRoofs(n node, _ int, p *plan.Plan) {
	d := &roofDraft{Roof: &plan.Roof{Pos: n.pos()}}
	if len(p.Levels) > 0 {
		d.Over = p.Levels[len(p.Levels)-1]
	}
	n.r.whole(d.Roof, func() { read(n, roofKeys, d) })
	if !d.rake {
		d.Rake = d.Overhang
	}
	if d.Spacing == 0 {
		d.Spacing = 16
	}
	if d.Kind == plan.ShedRoof && !n.has("high") {
		n.fault("", "missing-key", `add high = "N" (or E, S, W)`, "high is missing: a shed roof needs the side of its high wall")
	}
	if d.Kind != plan.ShedRoof && n.has("high") {
		n.fault("high", "idle-key", "take it out", "high is for a shed roof, and this is a %s", d.Kind)
	}
	d.ceiling(n)
	if n.has("blocking_set") && d.Blocking == plan.NoBlocking {
		n.fault("blocking_set", "idle-key", `take it out, or write blocking = "full"`, "blocking_set is for blocks at the eaves, and this roof has none")
	}
	d.settle(p)
	p.Roofs = append(p.Roofs, d.Roof)
}

// ceiling checks what is said of the ceiling joists.
func (d *roofDraft) ceiling(n node) {
	for _, key := range []string{"ceiling_joists", "ceiling_splice"} {
		if n.has(key) && (!d.CeilingTies || d.Trusses || d.Kind == plan.ShedRoof) {
			n.fault(key, "idle-key", "take it out", "%s is for ceiling joists between rafters, and this roof has none", key)
		}
	}
	if times := d.CeilingSpace / d.Spacing; d.CeilingSpace > 0 && (times < 0.99 || math.Abs(times-math.Round(times)) > 0.01) {
		n.fault("ceiling_joists", "ceiling-spacing", "write a multiple of the rafters' spacing, each joist is nailed to a rafter",
			"ceiling joists at %s on center cannot all stand beside rafters at %s", printNumber(d.CeilingSpace), printNumber(d.Spacing))
	}
}

// settle fills what follows from the other keys and the walls.
func (d *roofDraft) settle(p *plan.Plan) {
	if !d.area {
		d.Area[0], d.Area[1], _ = extent(p, d.Over)
	}
	size := d.Area[1].Sub(d.Area[0])
	if d.Kind == plan.ShedRoof {
		d.Ridge = map[plan.Side]plan.Axis{plan.North: plan.AxisX, plan.South: plan.AxisX, plan.East: plan.AxisY, plan.West: plan.AxisY}[d.High]
	} else if d.Ridge == "" {
		d.Ridge = plan.AxisX
		if size.Y > size.X {
			d.Ridge = plan.AxisY
		}
	}
	for i, end := range d.GableEnd {
		switch {
		case d.Kind == plan.HipRoof:
			d.GableEnd[i] = plan.HipEnd
		case end == "" && !d.Trusses && d.rakeWall(p, i):
			d.GableEnd[i] = plan.RakeEnd
		case end == "":
			d.GableEnd[i] = plan.TrussEnd
		}
	}
	if d.RidgeMember.Ply == 0 {
		steep := max(d.Pitch, d.PitchOther)
		d.RidgeMember = deepEnough(d.Rafters.Depth * math.Hypot(12, steep) / 12)
	}
}

// rakeWall tells whether a wall that goes up to the rafters closes the low
// (0) or the high (1) end of the ridge.
func (d *roofDraft) rakeWall(p *plan.Plan, end int) bool {
	across := func(v geom.Vec2) float64 {
		if d.Ridge == plan.AxisX {
			return v.X
		}
		return v.Y
	}
	at := across(d.Area[end])
	for _, w := range p.Walls {
		if w.Top == plan.RakeTop && w.On(d.Over) && math.Abs(across(w.From)-at) < tolerance && math.Abs(across(w.To)-at) < tolerance {
			return true
		}
	}
	return false
}

// deepEnough returns the shallowest nominal 2x section of at least depth in.
func deepEnough(depth float64) plan.Lumber {
	for n := 6; ; n += 2 {
		if l, _ := plan.ParseLumber(fmt.Sprintf("2x%d", n)); l.Depth >= depth || n == 16 {
			return l
		}
	}
}
