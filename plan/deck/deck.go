package deck

import (
	"math"

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
	for _, x := range d.Faces {
		x.edges = d.edgesOf(x)
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

// edgesOf returns the edges that the zones of a face are measured from: those
// of all gable and hip roofs over its level together, of a shed its own.
func (d *Deck) edgesOf(x *Face) (out []Edge) {
	for _, o := range d.Faces {
		shed := x.Roof.Kind == plan.ShedRoof || o.Roof.Kind == plan.ShedRoof
		if o != x && (shed || o.Roof.Over != x.Roof.Over) {
			continue
		}
		for i, e := range o.Edges {
			out = append(out, Edge{e.Kind, o.plan[i], o.plan[(i+1)%len(o.plan)]})
		}
	}
	return out
}

// near tells whether a plan point of a face lies within d of an edge of the
// kind.
func (x *Face) near(kind plan.RoofEdge, p geom.Vec2, d float64) bool {
	for _, e := range x.edges {
		if e.Kind == kind && e.within(p, d) {
			return true
		}
	}
	return false
}

// ZoneAt returns the number of the plan's nail zone at a plan point of a
// face; 0 is the deck outside of all of them.
func (d *Deck) ZoneAt(x *Face, p geom.Vec2) int {
	for i := len(d.Spec.Zones); i > 0; i-- {
		z := d.Spec.Zones[i-1]
		kinds := 0
		for _, k := range z.Near {
			if x.near(k, p, z.Within) {
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
