package steel

import (
	"math"

	"galewright/plan/framing"
	"galewright/plan/geom"
)

// Fastener is one nail, screw or bolt where it is.
type Fastener struct {
	Head, Tip geom.Vec3 // underside of the head, on the steel's outer side; the tip
	Diameter  float64   // in
	End       int       // of the item's ends
	Band      int       // of the body's bands, and
	Plate     int       // of that band's plates, that it passes
	Back      bool      // its end starts at the band's far end
	Runs      []Run     // members it runs through, from its head
	Margin    Margin    // of the wood around it where it enters the first
	Stop      float64   // from its head to where another fastener is in its way, in; 0 = nowhere
}

// Drive drives a fastener of a length through a plate at a point of the face,
// square to it.
func (w *Wood) Drive(p geom.Plate, at geom.Vec3, length float64) Fastener {
	f := Fastener{Head: at.Add(p.N.Mul(p.Thickness)), Tip: at.Add(p.N.Mul(p.Thickness - length))}
	f.Runs = w.Through(f.Head, f.Tip)
	if len(f.Runs) > 0 {
		r := f.Runs[0]
		f.Margin = w.Around(r.Member, f.Head.Sub(p.N.Mul(r.From)), p.N)
	}
	return f
}

// Length returns the length of the fastener from the underside of its head to
// its tip, in.
func (f Fastener) Length() float64 { return f.Tip.Sub(f.Head).Len() }

// Bite returns the member that the fastener holds, the wood next to the steel,
// how deep it goes into it, and the air or sheathing between the steel's inner
// side and the wood, in; ok is false when it finds no wood at all. What it
// reaches beyond that member is not counted: the shear plane is at the first. Nor
// is what it reaches beyond the place where another fastener is in its way.
func (f Fastener) Bite(steel float64) (m *framing.Member, deep, air float64, ok bool) {
	if len(f.Runs) == 0 {
		return nil, 0, 0, false
	}
	r := f.Runs[0]
	deep = r.Len()
	if f.Stop > 0 {
		deep = math.Max(0, math.Min(deep, f.Stop-r.From))
	}
	return r.Member, deep, math.Max(0, r.From-steel), true
}

// Beyond returns how far the tip comes out of the last wood it runs in, in; 0
// when it ends in wood.
func (f Fastener) Beyond() float64 {
	if len(f.Runs) == 0 {
		return f.Length()
	}
	return math.Max(0, f.Length()-f.Runs[len(f.Runs)-1].To)
}

// Apart returns the least distance between the middle lines of two fasteners,
// in.
func Apart(f, g Fastener) float64 {
	return geom.Apart(f.Head, f.Tip, g.Head, g.Tip)
}

// SplitsOut tells whether a fastener stands nearer to its wood's edge or end than
// its own diameter: it is taken to split the wood and hold nothing (assumed).
func SplitsOut(f Fastener) bool { return math.Min(f.Margin.Edge, f.Margin.End) < f.Diameter }
