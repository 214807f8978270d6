package loadpath

import (
	"galewright/plan"
	"galewright/plan/capacity"
	"galewright/plan/deck"
	"galewright/plan/placement"
	"galewright/plan/timber"
)

// analysis is a model with what its wind cases came to and what its hardware
// holds. Nothing changes it once analyze has returned it: checks and
// explanations only read.
type analysis struct {
	*model
	*uplift
	lateral *lateral
	allowed *capacity.Allowables
	deck    *deck.Winds
	flow    *nailFlow
}

// analyze works the uplift and the lateral load path out.
func analyze(pl *placement.Placement) *analysis { return analyzeFrom(pl, "") }

// analyzeFrom is analyze for wind from one side alone; "" for any.
func analyzeFrom(pl *placement.Placement, side plan.Side) *analysis {
	m := newModel(pl)
	m.side = side
	a := &analysis{
		model: m, uplift: m.allUplift(), lateral: m.allGusts(),
		allowed: capacity.New(m.steel, capacity.Context{Species: m.species, Pile: m.plan.Foundation.Pile, Wet: m.plan.Loads.Wet, Units: m.u}),
		deck:    deck.New(m.house).Blow(m.basis),
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
