package plan

import "fmt"

var (
	combinations  = []string{"asd", "strength"}
	distributions = []string{"tributary", "stiffness"}
)

// loadsKeys fill how the load path is computed.
var loadsKeys = []binding[Loads]{
	choiceKey("combination", combinations, "asd: 0.6 D + 0.6 W; strength: the uplift lines also at 0.9 D + 1.0 W",
		func(l *Loads) *string { return &l.Combination }).or("asd", `"asd"`),
	choiceKey("distribution", distributions, "how storey shear goes to shear walls: by tributary width, or by stiffness of a rigid floor",
		func(l *Loads) *string { return &l.Distribution }).or("tributary", `"tributary"`),
	custom("dead", "tables", "", "dead weights; those of a part stand for all its defaults", func(v value, l *Loads) {
		for i, n := range v.nodes("dead") {
			d := Dead{Pos: n.pos()}
			read(n, deadKeys, &d)
			if d.Name == "" {
				d.Name = fmt.Sprintf("%s, item %d", d.Part, i+1)
			}
			l.Dead = append(l.Dead, d)
		}
	}),
}

// deadKeys fill one dead weight.
var deadKeys = []binding[Dead]{
	choiceKey("part", DeadParts, "what it is part of", func(d *Dead) *string { return &d.Part }).must(),
	textKey("name", `"asphalt shingles"`, "what it is", func(d *Dead) *string { return &d.Name }),
	numberKey("psf", "2.0", 0, 200, "weight, lb per square foot of the part's own surface", func(d *Dead) *float64 { return &d.Weight }).must(),
}
