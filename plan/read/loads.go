package read

import (
	"fmt"

	"galewright/plan"
)

// pressures are the units of dead weight, in psf: 1 lbf = 4.4482216152605 N
// and 1 ft = 0.3048 m exactly.
var pressures = []unit{{"psf", 1}, {"kPa", 1000 * 0.3048 * 0.3048 / 4.4482216152605}, {"Pa", 0.3048 * 0.3048 / 4.4482216152605}}

// loadsKeys say how the load path is computed.
var loadsKeys = []binding[plan.Loads]{
	choiceKey("combination", plan.Combinations, "allowable stress, or strength", func(l *plan.Loads) *plan.Combination { return &l.Combination }).orWord(string(plan.ASD)),
	choiceKey("distribution", plan.Distributions, "lateral load to shear walls by tributary width, or by stiffness", func(l *plan.Loads) *plan.Distribution { return &l.Distribution }).
		orWord(string(plan.Tributary)),
	choiceKey("segments", plan.SegmentShares, "force of a line of shear walls to its segments by their stiffness, or by length with 2b/h for narrow ones", func(l *plan.Loads) *plan.SegmentShare { return &l.Segments }).
		orWord(string(plan.ByStiffness)),
	choicesKey("wet", `["pile", "porch post", "beam", "girder"]`, plan.Roles, "members taken as wet when nailed or in service: what nails, bolts and washers hold there takes CM", func(l *plan.Loads) *[]plan.Role { return &l.Wet }).
		otherwise("piles, porch posts, porch beams and girders; over an open underside also rims, joists and blocking of the lowest floor"),
	field("floor_live", "weight", `"40 psf"`, "live load of floors, in psf, kPa or Pa, for what beams bring to what carries them", func(v value) (float64, bool) { return v.quantity(pressures) },
		func(l *plan.Loads) *float64 { return &l.FloorLive }).or("40 psf", `"40 psf"`),
	custom("dead", "tables", `[{ part = "roof", name = "standing seam", weight = "1.5 psf" }]`,
		"dead loads; those given for a part replace its defaults", readDead).otherwise("published weights"),
}

// deadKeys fill one item of dead weight.
var deadKeys = []binding[plan.Dead]{
	choiceKey("part", plan.DeadParts, "part of the house", func(d *plan.Dead) *plan.DeadPart { return &d.Part }).must(),
	textKey("name", `"standing seam"`, "what the material is", func(d *plan.Dead) *string { return &d.Name }).must(),
	field("weight", "weight", `"1.5 psf"`, "in psf, kPa or Pa of the part's own surface", func(v value) (float64, bool) { return v.quantity(pressures) },
		func(d *plan.Dead) *float64 { return &d.Weight }).must(),
}

// readDead reads the dead weights.
func readDead(v value, l *plan.Loads) {
	for i, n := range v.nodes("weight") {
		n.where = fmt.Sprintf("dead load no. %d", i+1)
		d := plan.Dead{Pos: n.pos()}
		read(n, deadKeys, &d)
		l.Dead = append(l.Dead, d)
	}
}
