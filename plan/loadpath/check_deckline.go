package loadpath

import (
	"fmt"
	"math"

	"galewright/plan"
	"galewright/plan/timber"
)

// intoLines checks how a deck hands what comes from both sides to an inner line of
// shear walls: through the nails into the one rafter or joist over it. The shear of
// each side by itself is the bays'.
func (a *analysis) intoLines(c *Check) (out []*Link) {
	list := a.lateral.bays()
	for i := 1; i < len(list); i++ {
		lo, hi := list[i-1], list[i]
		if lo.Level != hi.Level || lo.Axis != hi.Axis || lo.Hi != hi.Lo || lo.Lines[0] == "" || hi.Lines[1] == "" {
			continue // not the two sides of an inner line
		}
		deck, held := a.oneRow(lo)
		if deck == "" {
			continue // rafters or joists cross the line, and each hands it its share
		}
		if v := bothSides(lo, hi); ASD.W*v > 1 {
			l := &Link{
				Check: c, ID: intoLine(deck, lo.Lines[1]), Host: "line " + lo.Lines[1], Where: fmt.Sprintf("%s over story %s, line %s", deck, lo.Level.Name, lo.Lines[1]),
				Unit: "plf", Case: lo.Case, Demand: ASD.W * v, Strength: v,
				Terms: []Term{
					{a.u.Sprintf("from the deck on its low side, %.0f lb over %s", lo.Ends[1], a.u.Length(lo.Depth)), lo.Ends[1] / lo.Depth * 12, "plf"},
					{a.u.Sprintf("from that on its high side, %.0f lb over %s", hi.Ends[0], a.u.Length(hi.Depth)), hi.Ends[0] / hi.Depth * 12, "plf"},
					{"both, strength level", v, "plf"},
					{"0.6 of it", ASD.W * v, "plf"},
				},
			}
			closeDeck(l, deck, held)
			out = append(out, l)
		}
	}
	return out
}

// intoLine is the name of the link of a deck over an inner line.
func intoLine(deck, line string) string { return deck + " deck into line " + line }

// oneRow is what of a deck lies over a line along the wind, and what one row of its
// nails into the rafter or joist there holds; "" where rafters or joists cross the
// line, and of a roof whose deck the plan leaves out.
func (a *analysis) oneRow(b Bay) (deck string, held *Capacity) {
	next := a.plan.Above(b.Level)
	switch {
	case next == nil && (a.plan.Deck == nil || a.alongRidge(b.Axis)):
		return "", nil
	case next == nil:
		return "roof", a.deckRow()
	case next.JoistRun != plan.Axes[b.Axis] || next.Joists.Depth == 0:
		return "", nil
	case a.plan.FloorDeck == nil:
		return "floor", nil
	}
	d := a.plan.FloorDeck
	dia, long, err := plan.NailSize(d.Nail)
	if err != nil {
		return "floor", &Capacity{Unknown: err.Error()}
	}
	return "floor", a.row("floor", "joist", plan.PanelOfInches(next.Subfloor), timber.Nail{Name: d.Nail, Diameter: dia, Length: long}, next.Joists.Depth, math.Max(d.Edge, d.Field))
}

// bothSides is what two bays that meet at a line hand to a foot of it, plf at strength
// level.
func bothSides(lo, hi Bay) float64 {
	return math.Max(0, lo.Ends[1]/lo.Depth*12) + math.Max(0, hi.Ends[0]/hi.Depth*12)
}

// deckRow is what one row of the roof deck's nails into a rafter holds along it, plf: at
// the widest spacing over rafters that the deck has.
func (a *analysis) deckRow() *Capacity {
	nail, panel, err := a.deckNail()
	if err != nil {
		return &Capacity{Unknown: err.Error()}
	}
	wide := a.plan.Deck.Field
	for _, z := range a.plan.Deck.Zones {
		wide = math.Max(wide, z.Field)
	}
	return a.row("deck", "rafter", plan.Panel{Text: a.plan.Deck.Panel, Thick: panel}, nail, a.main.Rafters.Depth, wide)
}

// row is what one row of a deck's nails holds along a member, plf: each through the panel
// into wood of a depth by NDS 2018 chapter 12, without its factor of 1.1 for diaphragms.
// Nails beside a joint of panels are not counted twice: where joints fall the plan does
// not say.
func (a *analysis) row(deck, into string, panel plan.Panel, nail timber.Nail, depth, wide float64) *Capacity {
	z, err := timber.SingleNail(nail, timber.Part{Thickness: panel.Thick, G: deckPanelG}, timber.Part{Thickness: depth, G: a.species.G})
	if err != nil || wide <= 0 {
		return &Capacity{Unknown: "the " + deck + "'s nails have no lateral value or spacing"}
	}
	each := z.Z * float64(timber.WindDuration)
	return &Capacity{
		Value: each * 12 / wide, Source: "computed", Pieces: 1, Governs: "one row of the " + deck + "'s nails into the " + into + " over the line",
		Terms: ofCapacity(
			Term{a.u.Sprintf("one %s through %s in into the %s: Z %.1f lb (mode %s), CD 1.6", nail.Name, panel.Text, into, z.Z, z.Mode), each, "lb"},
			Term{a.u.Sprintf("one row at %.1f in, the widest over "+into+"s", wide), each * 12 / wide, "plf"},
		),
	}
}
