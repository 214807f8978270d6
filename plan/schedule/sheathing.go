package schedule

import (
	"math"

	"galewright/plan"
	"galewright/plan/hardware"
	"galewright/plan/length"
	"galewright/plan/placement"
)

// Sheathing is the panels and nails of one shear wall segment, all its faces, or of
// a stretch of wall outside of them.
type Sheathing struct {
	Wall   *plan.Wall
	Shear  *plan.Shear    // of a stretch outside of segments one without a name
	Own    bool           // outside of the shear segments: openings are cut out
	Item   *hardware.Item // a sheathing item of the same thickness, or nil
	Size   [2]float64     // of a panel, across and up, in
	Panels int
	Nails  int
	Nail   hardware.Nail
}

// A panel is 4 by 8 ft unless the catalog has one of the same thickness
// (common practice, no published source).
const panelWide, panelTall = 48, 96

// sheathing counts the panels and nails of all shear segments, and of what is outside of them.
func sheathing(p *placement.Placement) (out []*Sheathing) {
	for _, w := range p.House.Plan.Walls {
		for _, s := range w.Shear {
			h := newSheathing(p, w, s)
			h.count(w.TopHeight())
			out = append(out, h)
		}
		for _, s := range w.Panels() {
			h := newSheathing(p, w, s)
			h.Own = true
			h.countOwn(p.House)
			out = append(out, h)
		}
	}
	return out
}

func newSheathing(p *placement.Placement, w *plan.Wall, s *plan.Shear) *Sheathing {
	h := &Sheathing{Wall: w, Shear: s, Size: [2]float64{panelWide, panelTall}, Item: panelItem(p.Catalog, s.Panel)}
	if h.Item != nil {
		h.Size = [2]float64{min(h.Item.Width, h.Item.Length), max(h.Item.Width, h.Item.Length)}
	}
	h.Nail, _ = hardware.ParseNail(s.Nail)
	return h
}

func panelItem(c *hardware.Catalog, thick string) *hardware.Item {
	t, err := length.Parse(thick + "in")
	if err != nil {
		return nil
	}
	for _, it := range c.Items {
		if it.Kind.Shape == hardware.Sheet && math.Abs(it.Thickness-t) < 1e-3 {
			return it
		}
	}
	return nil
}

// count covers the segment with upright panels from its start, cut at its end
// and at its top, and nails each panel: along its four edges at the edge
// spacing, on each stud between at the field spacing.
func (h *Sheathing) count(height float64) {
	for x := 0.0; x < h.Shear.To-h.Shear.From-1e-6; x += h.Size[0] {
		for z := 0.0; z < height-1e-6; z += h.Size[1] {
			h.Panels++
			h.Nails += h.panelNails(min(h.Size[0], h.Shear.To-h.Shear.From-x), min(h.Size[1], height-z))
		}
	}
	if h.Shear.BothFaces {
		h.Panels *= 2
		h.Nails *= 2
	}
}

// panelNails returns the nails of one panel w by t in. Along an edge of
// length l at spacing e there are ceil(l/e)+1 nails, a corner counted once;
// a stud in the field takes ceil(t/f)-1, the edges' own left out.
func (h *Sheathing) panelNails(w, t float64) int {
	e, f := h.Shear.Edge, h.Shear.Field
	if e <= 0 || f <= 0 {
		return 0
	}
	bays := func(l, s float64) int { return int(math.Ceil(l/s - 1e-9)) }
	edges := 2*bays(w, e) + 2*bays(t, e)
	studs := bays(w, h.Wall.Spacing) - 1
	return edges + max(studs, 0)*max(bays(t, f)-1, 0)
}
