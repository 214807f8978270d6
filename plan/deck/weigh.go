package deck

import (
	"slices"

	"galewright/plan"
	"galewright/plan/geom"
	"galewright/plan/timber"
)

// Load is one nail under wind.
type Load struct {
	Nail   Nail
	Piece  *Piece
	Zone   Zone
	Demand float64 // lb, of Suction over the nail's area, strength level
	Held   Held
}

// Ratio returns demand over what is held, both allowable stress: factor is
// that of wind in the combination.
func (l Load) Ratio(factor float64) float64 {
	if l.Held.Unknown != "" || l.Held.Allow <= 0 {
		return 0
	}
	return factor * l.Demand / l.Held.Allow
}

// Spot is the nail of the largest ratio among those of one zone of a roof.
type Spot struct {
	Roof  *plan.Roof
	Zone  Zone
	Worst Load
	Nails int          // with a load in the zone
	Rows  map[Row]Load // the largest of each row
}

// Panels returns the deck's panels over framing of a species.
func (d *Deck) Panels(s timber.Species) Panels {
	return Panels{Thickness: d.Spec.Panel, Kind: d.Spec.Kind, Nailing: d.Spec.Nailing, Species: s}
}

// Weigh weighs every nail of the deck: the worst of each zone of each roof,
// in the order of the plan's roofs and of the figures' zones, inside before
// overhangs.
func (w *Winds) Weigh(s timber.Species, factor float64) (out []*Spot) {
	type key struct {
		roof *plan.Roof
		zone string
		over bool
	}
	at, held := map[key]*Spot{}, map[float64]Held{}
	panels := w.Deck.Panels(s)
	w.each(func(l Load) {
		if _, ok := held[l.Nail.Depth]; !ok {
			held[l.Nail.Depth] = panels.Hold(l.Nail.Depth)
		}
		l.Held = held[l.Nail.Depth]
		k := key{l.Piece.Face.Roof, l.Zone.Name, l.Zone.Over}
		if at[k] == nil {
			at[k] = &Spot{Roof: k.roof, Zone: l.Zone, Worst: l, Rows: map[Row]Load{}}
		}
		at[k].take(l, factor)
	})
	for _, r := range w.Deck.House.Plan.Roofs {
		for _, over := range []bool{false, true} {
			for _, name := range w.zoneNames(r) {
				if spot := at[key{r, name, over}]; spot != nil {
					out = append(out, spot)
				}
			}
		}
	}
	return out
}

// take counts a load in the zone.
func (s *Spot) take(l Load, factor float64) {
	s.Nails++
	worse := func(b Load) bool {
		a, c := l.Ratio(factor), b.Ratio(factor)
		return a > c+1e-9 || a > c-1e-9 && l.Demand > b.Demand+1e-9
	}
	if worse(s.Worst) {
		s.Worst = l
	}
	if b, ok := s.Rows[l.Nail.Row]; !ok || worse(b) {
		s.Rows[l.Nail.Row] = l
	}
}

// each calls do with every nail that holds some of the deck.
func (w *Winds) each(do func(Load)) {
	for _, x := range w.Deck.Faces {
		if w.Faults[x.Roof] != nil {
			continue
		}
		for _, p := range x.Pieces {
			for _, n := range p.Nails {
				if n.Width > 0 {
					z := w.touched(x, n)
					do(Load{Nail: n, Piece: p, Zone: z, Demand: z.Suction * n.Area()})
				}
			}
		}
	}
}

// touched returns the worst zone that a nail's share of the deck reaches: at
// the nail, half way to its neighbors, and at the ends of its width.
func (w *Winds) touched(x *Face, n Nail) (worst Zone) {
	q := x.own(n.At)
	for _, d := range []geom.Vec2{{}, {Y: n.rise / 2}, {Y: -n.rise / 2}, {X: -n.reach[0]}, {X: n.reach[1]}} {
		p := q.Add(d)
		if !holds(x.shape, p, touch) {
			continue
		}
		if z := w.At(x, x.at(p)); z.Suction > worst.Suction {
			worst = z
		}
	}
	return worst
}

// zoneNames lists the zones of the figures of a roof's faces.
func (w *Winds) zoneNames(r *plan.Roof) (out []string) {
	for _, x := range w.Deck.Faces {
		if x.Roof != r {
			continue
		}
		for _, z := range w.figures[x.n].Zones {
			if !slices.Contains(out, z.Zone) {
				out = append(out, z.Zone)
			}
		}
	}
	return out
}
