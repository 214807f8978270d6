package floorplan

import (
	"slices"
	"strings"

	"galewright/plan"
	"galewright/plan/framing"
	"galewright/plan/geom"
	"galewright/render/page"
	"galewright/render/sheet"
)

// dashedBoard draws a brace of boards as it lies below the girders.
func (v *planView) dashedBoard(m *framing.Member) {
	n := m.B.Sub(m.A).Flat().Unit().Left().Mul(m.Section.Width() / 2)
	for _, d := range []geom.Vec2{n, n.Mul(-1)} {
		v.thin(sheet.PenHidden, m.A.Flat().Add(d), m.B.Flat().Add(d))
	}
}

// bracingLines draws rods between piles.
func (v *planView) bracingLines() {
	for _, j := range v.House.Joints {
		if j.Kind == plan.BraceRod {
			v.thin(sheet.PenHidden, j.Brace.A.Flat(), j.Brace.B.Flat())
		}
	}
}

// breakaways draws breakaway walls below the floor, between the piles, as two thin lines.
func (v *planView) breakaways() {
	half := v.House.Plan.Foundation.Pile.Width() / 2
	for _, x := range v.House.Plan.Breakaways {
		i := slices.IndexFunc(v.House.Plan.Girders, func(g *plan.Girder) bool { return g.Name == x.Girder })
		if i < 0 {
			continue
		}
		g := v.House.Plan.Girders[i]
		f, side := geom.NewFrame(g.From, g.To), g.Member.Width()/2
		for k := 1; k < len(g.Piles); k++ {
			if !plan.In(x.Bays, k) {
				continue
			}
			for _, t := range []float64{-side - breakawayOff, -side - 2*breakawayOff} {
				v.thin(sheet.PenDim, f.At(g.Piles[k-1]+half, t, 0).Flat(), f.At(g.Piles[k]-half, t, 0).Flat())
			}
		}
	}
}

// thin draws a line that lettering keeps off.
func (v *planView) thin(pen sheet.Pen, a, b geom.Vec2) {
	v.stroke(pen, sheet.LayerMember, a, b)
	if p, q, ok := v.vp.Segment(uv(a, v.turned), uv(b, v.turned)); ok {
		v.board.BlockLine(p, q)
	}
}

// breakawayOff is how far beside its girder a breakaway wall is drawn, in: it stands under it.
const breakawayOff = 3

// bracingNotes say what of bracing and breakaway walls the foundation plan shows.
func bracingNotes(c *page.Context) (notes []string) {
	p := c.House.Plan
	if len(p.Braces) > 0 {
		notes = append(notes, "Bracing between piles is dashed: "+listed(p.Braces, func(x *plan.Brace) string { return x.Name + " " + string(x.Kind) + " at " + x.Girder })+"; its elevations follow those of the walls. What it carries is the engineer's: it is in no load path here.")
	}
	if len(p.Breakaways) > 0 {
		notes = append(notes, "Two thin lines beside a girder: breakaway walls under it, "+listed(p.Breakaways, func(x *plan.Breakaway) string { return x.Name + " at " + x.Girder })+". They carry nothing and are in no load path.")
	}
	return notes
}

// listed joins the words of a list with commas.
func listed[T any](list []T, words func(T) string) string {
	out := make([]string, len(list))
	for i, x := range list {
		out[i] = words(x)
	}
	return strings.Join(out, ", ")
}
