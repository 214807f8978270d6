package deck

import (
	"math"
	"slices"

	"galewright/plan"
	"galewright/plan/framing"
	"galewright/plan/geom"
)

// Deck is the sheathing of all roofs of a house.
type Deck struct {
	House *framing.House
	Spec  *plan.Deck // nil where the plan says nothing of it: then there are faces and no panels
	Faces []*Face    // in the order of the house
}

// New lays and nails the deck of a house.
func New(h *framing.House) *Deck {
	d := &Deck{House: h, Spec: h.Plan.Deck}
	for _, f := range h.Roof {
		if f.Roof != nil && len(f.Outline) > 2 {
			x := newFace(f, h.Plan.Lay)
			x.n = len(d.Faces)
			d.Faces = append(d.Faces, x)
		}
	}
	d.share()
	for _, x := range d.Faces {
		if d.Spec == nil {
			continue
		}
		x.lines = linesOf(h, x)
		x.lay()
		for _, p := range x.Pieces {
			d.nail(p)
		}
	}
	return d
}

// ZoneAt returns the number of the plan's nail zone at a plan point of a
// face; 0 is the deck outside of all of them.
func (d *Deck) ZoneAt(x *Face, p geom.Vec2) int {
	for i := len(d.Spec.Zones); i > 0; i-- {
		z := d.Spec.Zones[i-1]
		var met [8]plan.RoofEdge // kinds of edges near it, each once
		near, kinds := met[:0], 0
		x.edges.near(p, z.Within, func(e *edge) {
			if !slices.Contains(near, e.Kind) {
				near = append(near, e.Kind)
			}
		})
		for _, k := range z.Near {
			if slices.Contains(near, k) {
				kinds++
			}
		}
		if kinds > 1 || kinds == 1 && !z.Corners {
			return i
		}
	}
	return 0
}

// ZoneLetter names a nail zone on sheets: A is the deck's own spacing.
func ZoneLetter(i int) string { return string(rune('A' + i)) }

// Spacing returns the nails of a row in a nail zone, on center, in.
func (d *Deck) Spacing(zone int, row Row) float64 {
	edge, field := d.Spec.Edge, d.Spec.Field
	if zone > 0 {
		edge, field = d.Spec.Zones[zone-1].Edge, d.Spec.Zones[zone-1].Field
	}
	switch row {
	case FieldRow, LookRow:
		return field
	case GableRow:
		if d.Spec.Gable > 0 {
			return math.Min(edge, d.Spec.Gable)
		}
	}
	return edge
}

// Nails returns the nails of all panels.
func (d *Deck) Nails() (n int) {
	for _, x := range d.Faces {
		for _, p := range x.Pieces {
			n += len(p.Nails)
		}
	}
	return n
}
