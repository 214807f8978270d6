package framing

import (
	"slices"

	"galewright/plan"
	"galewright/plan/geom"
)

// openingMembers puts header, sill and cripples into each opening.
func (b *builder) openingMembers(w *framedWall, l *layout) {
	for _, o := range w.openings {
		b.header(w, o)
		b.above(w, o, l)
		if o.Sill > geom.Eps {
			b.sill(w, o, l)
		}
	}
}

// header puts the header flush with the wall's outside face, from king to
// king on the jacks.
func (b *builder) header(w *framedWall, o *framedOpening) {
	p := piece{role: plan.Header, s0: o.h0, s1: o.h1, z0: o.head, z1: o.top, opening: o.Opening, section: o.Header, t1: o.Header.Width()}
	if o.Header.Ply == 0 {
		p.section, p.t1 = w.Studs, w.Depth()
	}
	o.header = b.wallMember(w, p)
	if w.rake() && (o.header == nil || o.header.Solid[0].Volume() < (p.s1-p.s0)*p.t1*(p.z1-p.z0)-1e-3) {
		b.openingFault(w, o.Opening, "header-too-high", "the header over "+o.Name+" reaches into the sloping top plates",
			"lower its head, move it toward the ridge, or take a shallower header")
	}
}

// above puts cripples on the module between header and plate. A header tight
// to the plate has none.
func (b *builder) above(w *framedWall, o *framedOpening, l *layout) {
	if !w.rake() && w.head-o.top < sixteenth {
		return
	}
	for _, s := range l.module {
		if s-plate/2 > o.h0-geom.Eps && s+plate/2 < o.h1+geom.Eps {
			b.cripple(w, o, "cripple", s, o.top, w.head)
		}
	}
}

func (b *builder) cripple(w *framedWall, o *framedOpening, name string, s, z0, z1 float64) {
	if z1-z0 < geom.Eps {
		return
	}
	m := b.wallMember(w, piece{
		role: plan.Cripple, name: name, s0: s - plate/2, s1: s + plate/2, z0: z0, z1: z1,
		section: w.Studs, opening: o.Opening,
	})
	if m != nil {
		w.uprights = append(w.uprights, m)
	}
}

// sill puts the rough sill between the jacks, with a cripple below each of
// its ends (common practice, no published source) and on the module between.
func (b *builder) sill(w *framedWall, o *framedOpening, l *layout) {
	flat := plan.Lumber{Ply: 1, Breadth: plate, Depth: w.Depth(), Text: w.Studs.Text}
	o.sillPlate = b.wallMember(w, piece{role: plan.Sill, s0: o.lo, s1: o.hi, z0: o.sill - plate, z1: o.sill, section: flat, opening: o.Opening})
	at := []float64{o.lo + plate/2}
	if o.hi-o.lo >= 2*plate {
		at = append(at, o.hi-plate/2)
	}
	for _, s := range l.module {
		clear := !slices.ContainsFunc(at, func(x float64) bool { return x-s < plate-geom.Eps && s-x < plate-geom.Eps })
		if clear && s > o.lo && s < o.hi {
			at = append(at, s)
		}
	}
	for _, s := range at {
		b.cripple(w, o, "sill cripple", s, w.base, o.sill-plate)
	}
}
