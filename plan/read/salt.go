package read

import (
	"fmt"
	"slices"

	"galewright/plan"
)

// finishKey reads one of some finishes.
func finishKey(name, doc string, at func(*plan.Salt) *plan.Finish, list ...plan.Finish) binding[plan.Salt] {
	return choiceKey(name, list, doc, at)
}

func materialKey(name, doc string, at func(*plan.Salt) *[]plan.Coating) binding[plan.Salt] {
	return choicesKey(name, `["G185", "hot-dip zinc"]`, plan.Coatings, "least materials that the engineer takes "+doc+"; heavier of a kind go as well", at).
		otherwise("a blank, which is reported")
}

// saltKeys fill what the plan says of salt air.
var saltKeys = []binding[plan.Salt]{
	finishKey("walls", "what closes the outside of the walls in the end; behind siding is unvented enclosed", func(s *plan.Salt) *plan.Finish { return &s.Walls },
		plan.OpenFinish, plan.SidingFinish).orWord(string(plan.OpenFinish)),
	finishKey("underside", "what closes the lowest floor from below: nothing, sheathing under its joists, or a crawl space vented or not", func(s *plan.Salt) *plan.Finish { return &s.Underside },
		plan.OpenFinish, plan.SheathingFinish, plan.VentedFinish, plan.UnventedFinish).otherwise("open on piles, vented on a stem wall"),
	finishKey("attic", "whether the space under the roof has vents", func(s *plan.Salt) *plan.Finish { return &s.Attic },
		plan.VentedFinish, plan.UnventedFinish).orWord(string(plan.VentedFinish)),
	finishKey("eaves", "what closes the eaves from below", func(s *plan.Salt) *plan.Finish { return &s.Eaves },
		plan.OpenFinish, plan.SoffitFinish).orWord(string(plan.OpenFinish)),
	materialKey("partially_sheltered", "where no rain rinses, as under a house on piles", func(s *plan.Salt) *[]plan.Coating { return &s.PartiallySheltered }),
	materialKey("open_exposed", "outside, where rain rinses", func(s *plan.Salt) *[]plan.Coating { return &s.OpenExposed }),
	materialKey("vented_enclosed", "in attics and the like with vents", func(s *plan.Salt) *[]plan.Coating { return &s.VentedEnclosed }),
	materialKey("unvented_enclosed", "inside closed walls and floors", func(s *plan.Salt) *[]plan.Coating { return &s.UnventedEnclosed }),
	materialKey("interior", "in living space", func(s *plan.Salt) *[]plan.Coating { return &s.Interior }),
	coatingKey("nailing", `"hot-dip zinc"`, plan.FastenerCoatings, "coating of the nails that no item brings: those of sheathing, of the roof's deck and of the nailing schedule", func(s *plan.Salt) *plan.Coating { return &s.Nailing }).
		otherwise("a blank, which is reported"),
	textKey("source", `"S1 note 7"`, "the engineer's own note", func(s *plan.Salt) *string { return &s.Source }),
	custom("override", "tables", `[{ class = "open exposed", on = "1S", why = "open porch" }]`, "the engineer's own class for some joints; a later one is used before an earlier", readSaltPlaces),
}

// saltPlaceKeys fill one class of the engineer's own.
var saltPlaceKeys = []binding[plan.SaltPlace]{
	choiceKey("class", plan.SaltClasses, "the class there", func(p *plan.SaltPlace) *plan.SaltClass { return &p.Class }).must(),
	textsKey("level", `"first"`, "joints of these levels", func(p *plan.SaltPlace) *[]string { return &p.Level }),
	textsKey("on", `["1S", "G1"]`, "joints on these walls, roofs, girders or porches", func(p *plan.SaltPlace) *[]string { return &p.On }),
	saltJointKey(),
	textKey("why", `"behind a sealed fascia"`, "why", func(p *plan.SaltPlace) *string { return &p.Why }),
}

// saltJointKey reads kinds of joints.
func saltJointKey() binding[plan.SaltPlace] {
	b := custom("at", "words", `["girder-pile"]`, "joints of these kinds", func(v value, p *plan.SaltPlace) {
		for _, x := range v.list() {
			if k, ok := choice(x, plan.JointKinds()); ok {
				p.At = append(p.At, k)
			}
		}
	})
	b.values = func() []string { return plan.Words(plan.JointKinds()) }
	return b
}

// readSaltPlaces reads the engineer's own classes.
func readSaltPlaces(v value, s *plan.Salt) {
	for i, n := range v.nodes("override") {
		n.where = fmt.Sprintf("salt override no. %d", i+1)
		p := &plan.SaltPlace{Pos: n.pos()}
		read(n, saltPlaceKeys, p)
		for _, name := range p.On {
			if names := hostNames(n.r.plan); !slices.Contains(names, bodyOf(n.r.plan, name)) {
				n.fault("on", "unknown-host", nearest(name, names), "no wall, roof, girder or porch is called %q", name)
			}
		}
		for _, name := range p.Level {
			n.known("level", name, levelNames)
		}
		s.Overrides = append(s.Overrides, p)
	}
}

// treatedKeys fill what some members are treated with.
var treatedKeys = []binding[plan.TreatedWood]{
	choicesKey("members", `["joist", "rim"]`, plan.Roles, "which members", func(t *plan.TreatedWood) *[]plan.Role { return &t.Members }).must(),
	textKey("level", `"first"`, "of this level alone", func(t *plan.TreatedWood) *string { return &t.Level }).otherwise("of all levels"),
	choiceKey("preservative", plan.Preservatives, "what with; treated stands for one that the plan does not name", func(t *plan.TreatedWood) *plan.Preservative { return &t.Preservative }).must(),
}

// readTreated reads one [[treated]].
func readTreated(n node, i int, p *plan.Plan) {
	n.where = fmt.Sprintf("treated no. %d", i+1)
	t := &plan.TreatedWood{Pos: n.pos()}
	read(n, treatedKeys, t)
	n.known("level", t.Level, levelNames)
	p.Treated = append(p.Treated, t)
}
