package loadpath

import (
	"fmt"
	"math"
	"slices"
	"strings"

	"galewright/plan"
	"galewright/plan/deck"
	"galewright/plan/timber"
	"galewright/plan/units"
	"galewright/plan/wind"
)

// IDs of the checks of panels.
const (
	deckCheck  = "deck"
	panelCheck = "wall-panels"
)

// deckNails checks the nails of the roof deck: the worst of each zone of each
// roof.
func deckNails(c *Check, a *analysis) (out []*Link) {
	for _, r := range a.plan.Roofs {
		if err := a.deck.Faults[r]; err != nil {
			l := a.deckLink(c, r, "", 0)
			l.Gap, l.Ratio = err.Error(), math.Inf(1)
			out = append(out, l)
		}
	}
	if a.plan.Deck == nil {
		return append(out, a.unknownDeck(c)...)
	}
	for _, s := range a.deck.Weigh(a.species, ASD.W) {
		out = append(out, a.spotLink(c, s))
	}
	return out
}

// deckLink starts the link of a roof's deck, or of a zone of it.
func (a *analysis) deckLink(c *Check, r *plan.Roof, zone string, demand float64) *Link {
	l := &Link{Check: c, ID: "deck-" + r.Name, Host: "roof " + r.Name, Where: "roof " + r.Name, Unit: "lb", Demand: ASD.W * demand, Strength: demand, Case: "components and cladding, suction"}
	if zone != "" {
		l.ID += "-" + strings.ReplaceAll(zone, "'", "p") // a quote does not do on a command line
	}
	return l
}

// unknownDeck makes the gaps of a plan that says nothing of its deck: the
// suction is known, what holds against it is not.
func (a *analysis) unknownDeck(c *Check) (out []*Link) {
	for _, r := range a.plan.Roofs {
		z := a.deck.Most(r)
		if z.Suction == 0 {
			continue
		}
		l := a.deckLink(c, r, "", z.Suction)
		l.Unit, l.Force, l.Zone = "psf", Force{W: z.Suction}, &z
		l.Terms = append(a.zoneTerms(r, z), Term{"0.6 of it, ASD", l.Demand, "psf"})
		l.Gap, l.Ratio = "no [deck] in the plan: nothing is known of panels and nails", math.Inf(1)
		out = append(out, l)
	}
	return out
}

// zoneTerms tells what the suction of a zone is made of.
func (a *analysis) zoneTerms(r *plan.Roof, z deck.Zone) []Term {
	f := a.deck.Figure(r)
	terms := []Term{
		{"qh with Kd, at mean roof height", a.basis.At(a.basis.Height).QKd, "psf"},
		{fmt.Sprintf("GCp of zone %s, %s (%s) at the area of one nail", z.Name, f.Name, f.Grade), z.GCp, ""},
	}
	if z.Below != 0 {
		terms = append(terms, Term{z.From, z.Below, ""})
	}
	net := "net suction, strength level"
	if z.Raised {
		net = "net suction, the least of components and cladding, strength level"
	}
	return append(terms, Term{net, z.Suction, "psf"})
}

// spotLink makes the link of a zone from its worst nail.
func (a *analysis) spotLink(c *Check, s *deck.Spot) *Link {
	w := s.Worst
	zone, where := s.Zone.Name, "zone "+s.Zone.Name
	if s.Zone.Over {
		zone, where = zone+"-over", where+", overhang"
	}
	l := a.deckLink(c, s.Roof, zone, w.Demand)
	l.Force, l.Zone = Force{W: w.Demand}, &s.Zone
	l.Where += fmt.Sprintf(", %s: face %s, course %d, nail zone %s, %s row at x %s, y %s", where, w.Piece.Face.Name, w.Piece.Course, deck.ZoneLetter(w.Nail.Zone), w.Nail.Row, a.u.Length(w.Nail.At.X), a.u.Length(w.Nail.At.Y))
	l.Terms = append(a.zoneTerms(s.Roof, s.Zone),
		Term{"deck that the nail holds along its row", w.Nail.Along, "in"},
		Term{"deck that it holds across its row; what hangs out beyond, by lever arm", w.Nail.Width, "in"},
		Term{"area of both, along the slope", w.Nail.Area(), "ft²"},
		Term{"suction on it, strength level", w.Demand, "lb"},
		Term{"0.6 of it; the deck's own weight is not counted", l.Demand, "lb"})
	l.close(nailCapacity(a.u, w.Held))
	for _, row := range []deck.Row{deck.FieldRow, deck.EndRow, deck.GableRow} {
		if o, ok := s.Rows[row]; ok {
			l.Notes = append(l.Notes, a.u.Sprintf("%s: at most %.0f lb on a nail at %s o.c.", row, ASD.W*o.Demand, a.u.Length(o.Nail.Along)))
		}
	}
	return l
}

// nailCapacity is what one nail of a panel holds.
func nailCapacity(u units.System, h deck.Held) *Capacity {
	if h.Unknown != "" {
		return &Capacity{Unknown: h.Unknown}
	}
	pull, cd := h.Withdrawal, float64(timber.WindDuration)
	shank := "smooth"
	if h.Nail.Shank == timber.Ring {
		shank = "ring"
	}
	c := &Capacity{Value: h.Allow, Source: "computed", Governs: h.Governs, Pieces: 1}
	c.Terms = ofCapacity(
		Term{fmt.Sprintf("withdrawal of %s, %s shank, from wood of G %.2f: W, %s", h.Nail, shank, h.Wood, h.Source), h.PerInch, "lb/in"},
		Term{"length that holds in the wood", h.Length, "in"},
		Term{"withdrawal times CD 1.6", pull * cd, "lb"},
		Term{u.Sprintf("pull-through of the %.3f in head, panel %.3f in of G %.2f, times CD 1.6", h.Nail.Head, h.Thick, h.Panel), h.Head * cd, "lb"},
		Term{"the lesser", h.Allow, "lb"},
	)
	return c
}

// wallPanels checks the nails of the sheathed segments, and of what the plan says of the
// sheathing outside of them, against suction on the wall. Those of a segment are its own:
// the same that carry its shear.
func wallPanels(c *Check, a *analysis) (out []*Link) {
	for _, w := range a.plan.Walls {
		for _, s := range w.Shear {
			if w.Exterior {
				out = append(out, a.panelLink(c, w, s))
			}
		}
		for _, s := range w.Panels() {
			if w.Exterior {
				out = append(out, a.ownPanelLink(c, w, s))
			}
		}
	}
	return out
}

// panelLink makes the link of one segment: the worse of the nails between the
// edges of panels, each with its studs' spacing, and of those at the edges,
// with half of it.
func (a *analysis) panelLink(c *Check, w *plan.Wall, s *plan.Shear) *Link {
	zones, strip := wind.WallFigure(a.basis.Edition, a.basis.Theta).Zones, 12*a.basis.EdgeStrip()
	z := zones[0]
	if s.From-w.Hook < strip || s.To > w.Length()-strip {
		z = zones[1]
	}
	p := a.basis.Cladding(z, 1)
	field, edge := s.Field*w.Spacing/144, s.Edge*w.Spacing/2/144
	lb := -p.Negative * math.Max(field, edge)
	l := &Link{
		Check: c, ID: "panel-" + w.Name + "-" + s.Name, Wall: w, Host: "wall " + w.Name, Where: fmt.Sprintf("wall %s, segment %s, wall zone %s", w.Name, s.Name, z.Zone), Unit: "lb",
		Demand: ASD.W * lb, Strength: lb, Force: Force{W: lb}, Case: "components and cladding, suction",
	}
	l.Terms = []Term{
		{"qh with Kd, at mean roof height", a.basis.At(a.basis.Height).QKd, "psf"},
		{fmt.Sprintf("GCp of wall zone %s at the area of one nail", z.Zone), p.GCpNegative, ""},
		{"GCpi, internal pressure", wind.GCpi(a.basis.Enclosure), ""},
		{"net suction on it, strength level", -p.Negative, "psf"},
		{"wall that a nail between the edges holds: its spacing times that of the studs", field, "ft²"},
		{"wall that a nail at a panel edge holds: its spacing times half that of the studs", edge, "ft²"},
		{"0.6 of the suction on the larger", l.Demand, "lb"},
	}
	panels := deck.Panels{Thickness: s.Panel, Kind: plan.Plywood, Nailing: plan.Nailing{Nail: s.Nail}, Species: a.species}
	l.close(nailCapacity(a.u, panels.Hold(w.Depth())))
	l.Notes = append(l.Notes, "the kind of panel is not in the plan: G 0.42, the least, for the pull-through of heads")
	return l
}

// ownPanelLink makes the link of a stretch of sheathing outside of shear segments.
func (a *analysis) ownPanelLink(c *Check, w *plan.Wall, s *plan.Shear) *Link {
	l := a.panelLink(c, w, s)
	l.ID = fmt.Sprintf("panel-%s-%.4g", w.Name, s.From)
	_, zone, _ := strings.Cut(l.Where, ", wall zone ")
	l.Where = fmt.Sprintf("wall %s, sheathing from %s to %s, wall zone %s", w.Name, a.u.Length(s.From), a.u.Length(s.To), zone)
	l.Notes = append(l.Notes, "these panels are part of no shear wall, and nothing of them is taken to tie plates, studs or stories together")
	return l
}

// ownPanels tells whether the plan gives sheathing outside of shear segments.
func ownPanels(p *plan.Plan) bool {
	return slices.ContainsFunc(p.Walls, func(w *plan.Wall) bool { return len(w.Panels()) > 0 })
}

// deckAssumptions says how panels are weighed.
func (a *analysis) deckAssumptions() []string {
	return append([]string{"Panels: each nail holds the panel half way to its neighbors, at the worst pressure that this stretch reaches; continuity of panels over their supports is not counted, nor is their weight. Overhangs: suction above and what acts below together (ASCE 7-22 30.7, transcribed), open porch roofs alike."}, a.deckZones()...)
}

// deckZones says what the zones of each figure are measured by.
func (a *analysis) deckZones() (out []string) {
	told := map[string]bool{}
	for _, r := range a.plan.Roofs {
		f := a.deck.Figure(r)
		if s := a.deck.Layout(r); f.Name != "" && !told[f.Name] {
			told[f.Name] = true
			out = append(out, fmt.Sprintf("Roof zones by %s, a = %s: %s.", f.Name, a.u.Length(a.deck.A), s))
		}
	}
	return out
}

// DeckZones says what the zones of the roofs are measured by.
func (r *Report) DeckZones() []string { return r.work.deckZones() }

// DeckLinks returns the links of the roof deck.
func (r *Report) DeckLinks() (out []*Link) {
	for _, l := range r.Links {
		if l.Check.ID == deckCheck {
			out = append(out, l)
		}
	}
	return out
}
