package loadpath

import (
	"fmt"
	"slices"
	"strings"

	"galewright/plan"
	"galewright/plan/nailing"
)

// deckShearCheck is the ID of the check of what hands a line its force.
const deckShearCheck = "deck-shear"

// deckShear checks the ordered nails that hand a line's force from the deck to
// its top plates, and of the lowest line on from the floor's edge to girders or to
// the sill of a stem wall: rims, joists and rafters on what they lie on. Clips and
// straps there are not counted. Under the lowest floor the wind on the lower half
// of its walls and on its edge comes in too.
func deckShear(c *Check, a *analysis) (out []*Link) {
	for _, x := range a.lateral.lines {
		if ASD.W*x.Force <= least {
			continue
		}
		out = append(out, a.plateLink(c, x))
		if x.Level.Index == 0 && a.onFloor(x.Segments[0].Wall) {
			out = append(out, a.floorLink(c, x))
		}
	}
	return out
}

// plateLink is the link of a line's force on its way from the deck to its plates.
func (a *analysis) plateLink(c *Check, x *LineShear) *Link {
	e := a.eaveOf(x)
	terms := []Term{{"force of the line, strength level", x.Force, "lb"}}
	if e != nil {
		terms = append(terms, e.terms(a)...)
	}
	terms = append(terms, Term{"0.6 of the line's force", ASD.W * x.Force, "lb"})
	if e == nil {
		return a.withoutDeck(x, a.handLink(c, x, "deck to the plates", x.Force, x.Case, terms, a.handed(onPlates(x, deckRole))))
	}
	l := a.handLink(c, x, "deck to the plates", x.Force, x.Case, terms, a.overEave(x, e))
	l.Notes = append(l.Notes, e.note(a))
	if l.Capacity == nil && e.Roof.Blocking == plan.FullBlocking {
		l.Gap = fmt.Sprintf("no nails are ordered there (%s, %s)", plan.DeckToBlocking, plan.BlockingToPlate)
	}
	return a.withoutDeck(x, l)
}

// withoutDeck says of a line that hangs on ceiling joists alone what is missing.
func (a *analysis) withoutDeck(x *LineShear, l *Link) *Link {
	if l.Capacity == nil && a.handed(onPlates(x, ceiling)) != nil {
		l.Gap = "only ceiling joists are nailed to its plates, and no ceiling is a diaphragm here: the roof deck does not come down to this line"
		l.Notes = append(l.Notes, "its force stays as the diaphragm gives it to it; give its walls top = \"rake\", so that their plates run up under a rafter and its nails count, or have the engineer bring the deck's shear down otherwise")
	}
	return l
}

// floorLink is the link of the force of a lowest line on its way from the floor's
// edge to what carries the floor.
func (a *analysis) floorLink(c *Check, x *LineShear) *Link {
	what := "floor to the sills"
	if a.plan.Foundation.Kind == plan.Piles {
		what = "floor to the girders"
	}
	return a.handLink(c, x, what, x.Under, x.UnderCase, x.underTerms(), a.handed(a.overGirders(x)))
}

// underTerms is what makes up the force of a lowest line under its floor.
func (x *LineShear) underTerms() []Term {
	return []Term{
		{"force of the line, strength level", x.Under - x.Floor, "lb"},
		{"wind on the lower half of the walls on this floor and on its edge, as the floor hands it to the line, strength level", x.Floor, "lb"},
		{"0.6 of both", ASD.W * x.Under, "lb"},
	}
}

// handLink is the link of one place where a line hands on a demand, lb at strength
// level in its case, made up of terms, to what holds it there.
func (a *analysis) handLink(c *Check, x *LineShear, what string, strength float64, from string, terms []Term, held *Capacity) *Link {
	l := &Link{
		Check: c, ID: what + ", line " + x.Name, Wall: x.Segments[0].Wall, Unit: "lb", Host: "line " + x.Name,
		Where: fmt.Sprintf("line %s, story %s", x.Name, x.Level.Name), Case: from, Demand: ASD.W * strength, Strength: strength, Terms: terms,
	}
	l.close(held)
	if l.Capacity == nil {
		l.Gap = fmt.Sprintf("no nails are ordered there (%s, %s, %s, %s, %s)", plan.RimToSupport, plan.JoistAlongSupport, plan.JoistToSupport, plan.RafterToPlate, plan.RafterAlongPlate)
	}
	return l
}

// handed is what all ordered nails of the places asked for hold across; nil
// where there are none.
func (a *analysis) handed(here places) *Capacity {
	out := &Capacity{Source: "ordered nailing"}
	var governs []string
	for _, l := range a.nails.Lines {
		n, sum := 0, 0.0
		for _, s := range a.alike(l, here) {
			n, sum = n+s.n, sum+s.sum
			out.Terms = append(out.Terms, ofCapacity(Term{a.u.Sprintf("%s of %s, %s: one holds %.0f lb, %s", plan.Counted(s.n, "nail"), l.Mark(), l.Row.One, s.one.Lateral, s.one.Text), s.sum, "lb"})...)
		}
		if sum == 0 {
			continue
		}
		by := fmt.Sprintf("%s of %s, %s", plan.Counted(n, "nail"), l.Mark(), l.Row.One)
		if wood, terms := a.alongWood(l, here); wood > 0 {
			out.Terms = append(out.Terms, ofCapacity(terms...)...)
			if wood < sum {
				sum, by = wood, "shear in the wood over "+l.Mark()+", "+l.Row.One
			}
		}
		out.Value, out.Pieces = out.Value+sum, out.Pieces+n
		governs = append(governs, by)
	}
	if out.Value == 0 {
		return nil
	}
	if len(out.Terms) > 1 {
		out.Terms = append(out.Terms, ofCapacity(Term{"together", out.Value, "lb"})...)
	}
	out.Governs = strings.Join(governs, " + ")
	return out
}

// nailsAlike are nails of a line that hold the same: how many, one, and all, lb.
type nailsAlike struct {
	n   int
	one nailing.Value
	sum float64
}

// alike gathers the nails of a line at the places asked for by what one holds, in the
// order of the house.
func (a *analysis) alike(l *nailing.Line, here places) (out []nailsAlike) {
	for _, s := range a.spots(l, here) {
		if s.Side == s.Main {
			continue
		}
		one, n := l.One(s, a.species), s.Nails(l.Order)
		if one.Lateral == 0 {
			continue
		}
		i := slices.IndexFunc(out, func(x nailsAlike) bool { return x.one.Text == one.Text })
		if i < 0 {
			i, out = len(out), append(out, nailsAlike{one: one})
		}
		out[i].n, out[i].sum = out[i].n+n, out[i].sum+float64(n)*one.Lateral
	}
	return out
}
