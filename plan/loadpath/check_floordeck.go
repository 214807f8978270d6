package loadpath

import (
	"fmt"
	"math"
	"slices"

	"galewright/plan"
	"galewright/plan/framing"
	"galewright/plan/timber"
)

// The widest spacings that the table of unblocked decks holds for, in.
const (
	deckEdge  = 6
	deckField = 12
)

// held is what a story's deck bears in shear and what it is: the roof's, or the floor
// of the story over it; nil capacity where the plan orders no nails of it.
func (a *analysis) heldDeck(story *plan.Level) (what string, held *Capacity) {
	next := a.plan.Above(story)
	switch {
	case next != nil:
		return "floor", a.floorUnit(next)
	case a.plan.Deck == nil:
		return "roof", nil
	}
	return "roof", a.deckUnit()
}

// floorUnit is what the ordered floor of a level bears in shear, plf; nil where the
// plan orders none.
func (a *analysis) floorUnit(l *plan.Level) *Capacity {
	d := a.plan.FloorDeck
	if d == nil {
		return nil
	}
	dia, long, err := plan.NailSize(d.Nail)
	if err != nil {
		return &Capacity{Unknown: "the floor's nail has no size"}
	}
	return a.unblocked("floor", plan.PanelOfInches(l.Subfloor), timber.Nail{Name: d.Nail, Diameter: dia, Length: long}, d.Edge, d.Field)
}

// wetNails is CM of nails across their shanks where the wood is wet (NDS 2018 Table
// 11.3.3, transcribed).
const wetNails = 0.7

// lowestUnit is floorUnit of the lowest floor, whose joists may be taken as wet.
func (a *analysis) lowestUnit(l *plan.Level) *Capacity {
	held := a.floorUnit(l)
	wet := slices.ContainsFunc(a.house.Members, func(m *framing.Member) bool {
		return m.Role == plan.Joist && m.Roof == nil && m.Level == l && a.house.Wet(m)
	})
	if held == nil || held.Unknown != "" || !wet {
		return held
	}
	held.Value *= wetNails
	held.Terms = append(held.Terms, ofCapacity(Term{"the same in wet joists, CM 0.7 (NDS 2018 Table 11.3.3, transcribed)", held.Value, "plf"})...)
	return held
}

// unblocked is what a deck of panels on framing without blocking under their edges
// bears in shear, plf; nothing is known of nails farther apart than its table has.
func (a *analysis) unblocked(what string, panel plan.Panel, nail timber.Nail, edge, field float64) *Capacity {
	if edge > deckEdge+1e-6 || field > deckField+1e-6 {
		return &Capacity{Unknown: a.u.Sprintf("no unit shear of a deck is carried for nails farther apart than {6 in} along the ends of panels and {12 in} between")}
	}
	u, err := timber.DeckShear{Panel: panel.Thick, Nail: nail, G: a.species.G}.UnitShear()
	if err != nil {
		return &Capacity{Unknown: err.Error()}
	}
	return &Capacity{
		Value: u.Allow, Source: "computed", Pieces: 1, Governs: "unblocked " + what + ", " + u.Row,
		Terms: ofCapacity(Term{a.u.Sprintf("%s %s with %s at {6 in} as %s, unblocked: nominal %.0f plf, nail %.2f of the row's, species %.2f, over 2.0 (%s)", what, panel.Text, nail.Name, u.Row, u.Nominal, u.Ratio, u.Species, u.Source), u.Allow, "plf"}),
	}
}

// closeDeck closes a link of a deck, and says what must be ordered where nothing is.
func closeDeck(l *Link, what string, held *Capacity) {
	l.close(held)
	if l.Demand > least && held == nil {
		l.Gap = fmt.Sprintf("the plan orders no nails of the %s's deck ([%s])", what, map[string]string{"floor": "floor", "roof": "deck"}[what])
	}
}

// lowestFloor begins the names of links of the lowest floor's deck.
const lowestFloor = "lowest floor, line "

// lowestFloors checks the shear with which the lowest floor hands the wind on its walls'
// lower half and on its edge to each line over it: its own wind alone, for what comes down
// in the walls goes on to girders or sills.
func (a *analysis) lowestFloors(c *Check) (out []*Link) {
	for _, x := range a.lateral.lines {
		long := x.hi - x.lo
		if x.Level.Index != 0 || len(x.Segments) == 0 || !a.onFloor(x.Segments[0].Wall) || long <= 0 || ASD.W*math.Abs(x.Floor) <= least {
			continue
		}
		v := math.Abs(x.Floor) / long * 12
		l := &Link{
			Check: c, ID: lowestFloor + x.Name, Host: "line " + x.Name, Where: fmt.Sprintf("floor of story %s, line %s", x.Level.Name, x.Name), Unit: "plf", Case: x.UnderCase, Demand: ASD.W * v, Strength: v,
			Terms: []Term{
				{"wind on the lower half of the walls on this floor and on its edge, as the floor hands it to the line, strength level", math.Abs(x.Floor), "lb"},
				{"length of the floor along the line", long / 12, "ft"},
				{"all of it, from whichever side, 0.6 of the strength level", ASD.W * v, "plf"},
			},
		}
		closeDeck(l, "floor", a.lowestUnit(x.Level))
		out = append(out, l)
	}
	return out
}
