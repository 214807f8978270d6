package loadpath

import (
	"fmt"
	"math"

	"galewright/plan/timber"
)

// intoLines checks how the roof's deck hands what comes from both sides to an inner
// line of shear walls: through the nails into the one rafter over it. The shear of
// each side by itself is the bays'.
func (a *analysis) intoLines(c *Check) (out []*Link) {
	list := a.lateral.bays()
	for i := 1; i < len(list); i++ {
		lo, hi := list[i-1], list[i]
		if lo.Level != hi.Level || lo.Axis != hi.Axis || lo.Hi != hi.Lo || lo.Lines[0] == "" || hi.Lines[1] == "" {
			continue // not the two sides of an inner line
		}
		if !a.underRoof(lo.Level) || a.alongRidge(lo.Axis) {
			continue // rafters cross the line, and each hands it its share
		}
		if v := bothSides(lo, hi); ASD.W*v > 1 {
			l := &Link{
				Check: c, ID: intoLine(lo.Lines[1]), Host: "line " + lo.Lines[1], Where: fmt.Sprintf("roof over story %s, line %s", lo.Level.Name, lo.Lines[1]),
				Unit: "plf", Case: lo.Case, Demand: ASD.W * v, Strength: v,
				Terms: []Term{
					{a.u.Sprintf("from the deck on its low side, %.0f lb over %s", lo.Ends[1], a.u.Length(lo.Depth)), lo.Ends[1] / lo.Depth * 12, "plf"},
					{a.u.Sprintf("from that on its high side, %.0f lb over %s", hi.Ends[0], a.u.Length(hi.Depth)), hi.Ends[0] / hi.Depth * 12, "plf"},
					{"both, strength level", v, "plf"},
					{"0.6 of it", ASD.W * v, "plf"},
				},
			}
			l.close(a.deckRow())
			out = append(out, l)
		}
	}
	return out
}

// intoLine is the name of the link of the deck over an inner line.
func intoLine(line string) string { return "roof deck into line " + line }

// bothSides is what two bays that meet at a line hand to a foot of it, plf at strength
// level.
func bothSides(lo, hi Bay) float64 {
	return math.Max(0, lo.Ends[1]/lo.Depth*12) + math.Max(0, hi.Ends[0]/hi.Depth*12)
}

// deckRow is what one row of the deck's nails into a rafter holds along it, plf: at the
// widest spacing over rafters that the deck has, each nail through the panel into the
// rafter by NDS 2018 chapter 12, without its factor of 1.1 for diaphragms. Nails beside a joint of panels are not counted twice:
// where joints fall the plan does not say.
func (a *analysis) deckRow() *Capacity {
	nail, panel, err := a.deckNail()
	if err != nil {
		return &Capacity{Unknown: err.Error()}
	}
	wide := a.plan.Deck.Field
	for _, z := range a.plan.Deck.Zones {
		wide = math.Max(wide, z.Field)
	}
	z, err := timber.SingleNail(nail, timber.Part{Thickness: panel, G: deckPanelG}, timber.Part{Thickness: a.main.Rafters.Depth, G: a.species.G})
	if err != nil || wide <= 0 {
		return &Capacity{Unknown: "the deck's nails have no lateral value or spacing"}
	}
	each := z.Z * float64(timber.WindDuration)
	return &Capacity{
		Value: each * 12 / wide, Source: "computed", Pieces: 1, Governs: "one row of the deck's nails into the rafter over the line",
		Terms: ofCapacity(
			Term{a.u.Sprintf("one %s through %s in into the rafter: Z %.1f lb (mode %s), CD 1.6", a.plan.Deck.Nail, a.plan.Deck.Panel, z.Z, z.Mode), each, "lb"},
			Term{a.u.Sprintf("one row at %.1f in, the widest over rafters", wide), each * 12 / wide, "plf"},
		),
	}
}
