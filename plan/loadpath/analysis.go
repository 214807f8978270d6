package loadpath

import (
	"galewright/plan"
	"galewright/plan/capacity"
	"galewright/plan/deck"
	"galewright/plan/nailing"
	"galewright/plan/placement"
	"galewright/plan/steel"
	"galewright/plan/timber"
)

// analysis is a model with what its wind cases came to and what its hardware
// holds. Nothing changes it once analyze has returned it: checks and
// explanations only read.
type analysis struct {
	*model
	*uplift
	lateral *lateral
	deck    *deck.Winds
	flow    *nailFlow
	index   map[*nailing.Line]*spotIndex
}

// fittings is what of a house no wind changes: worked out once, and read at each
// speed that it is worked out for.
type fittings struct {
	steel   *steel.Steel
	nails   *nailing.Nailing
	species timber.Species
	dead    *deadLoads
	allowed *capacity.Allowables
	panels  *deck.Deck
}

func fittingsOf(bodies *steel.Steel) *fittings {
	pl := bodies.Placed
	p := pl.House.Plan
	f := &fittings{steel: bodies, nails: nailing.New(pl.House), species: speciesOf(p), dead: deadOf(p), panels: deck.New(pl.House)}
	f.allowed = capacity.New(f.steel, capacity.Context{Species: f.species, Pile: p.Foundation.Pile, Wet: pl.House, Units: p.Project.Units})
	return f
}

// analyze works the uplift and the lateral load path out.
func analyze(pl *placement.Placement) *analysis { return fittingsOf(steel.New(pl)).analyze(pl, "") }

// analyze works the load path of the house that the fittings are of out, for wind
// from one side alone; "" for any. Nothing of its plan may differ but [site].
func (f *fittings) analyze(pl *placement.Placement, side plan.Side) *analysis {
	m := newModel(pl, f)
	m.side = side
	a := &analysis{model: m, uplift: m.allUplift(), lateral: m.allGusts(), deck: f.panels.Blow(m.basis), index: map[*nailing.Line]*spotIndex{}}
	for _, l := range a.nails.Lines {
		a.index[l] = indexOf(l)
	}
	a.flow = a.nailFlow(a.steel.Ties())
	return a
}

// speciesOf returns the species of the framing: the plan's, or southern pine.
func speciesOf(p *plan.Plan) timber.Species {
	s, ok := timber.SpeciesOf(p.Lumber.Species)
	if !ok {
		s, _ = timber.SpeciesOf("southern pine")
	}
	return s
}
