package timber

import (
	"fmt"
	"math"

	"galewright/plan/source"
)

// Post is a post at the end of a shear wall that a hold-down is bolted to.
// Stresses are adjusted ones, psi; lengths inches.
type Post struct {
	Thickness float64 // along the bolts
	Width     float64
	Hole      float64 // diameter of the bolt holes; 0 = none
	Abreast   int     // holes side by side in one section
	Ft, Fc    float64 // tension and compression along the grain
	// FcStar is Fc without the column factor, 0 = not given: above 0.75 of it
	// the end wants a metal plate to bear on.
	FcStar float64
	// Plate is what the post stands on.
	PlateFcPerp float64 // reference, psi; 0 = not wood
	FromEnd     float64 // from the post to the end of the plate
	Tight       bool    // 0.02 in of crush, not 0.04
}

// PostValue is what the post is allowed, lb. Bending by a hold-down that sits
// on one face is not in it.
type PostValue struct {
	Gross, Net float64 // areas, in²
	Tension    float64 // on the net section
	// Compression is Fc on the net section at the bolts: whether the column
	// buckles is for whoever gives Fc.
	Compression float64
	Plate       Bearing // the plate under it; zero where it is not wood
	Push        float64 // the less of Compression and the plate
	Governs     string  // of Push: "post" or "plate"
	// PlateOfMetal tells that at Push the end stress is above 0.75 Fc*.
	PlateOfMetal bool
	Source       string
}

// Value returns the allowable tension and compression of the post: net section
// as in NDS example E.7 (read), end bearing and bearing across the grain by
// NDS 2018 3.10.1 and 3.10.4 (read in a course page). That holes are taken off
// in compression too, although a bolt may fill them, is the safe choice.
func (p Post) Value() (PostValue, error) {
	net := p.Width - float64(p.Abreast)*p.Hole
	if p.Thickness <= 0 || net <= 0 {
		return PostValue{}, fmt.Errorf("%d holes of %.3f in leave nothing of a post %.2f x %.2f in", p.Abreast, p.Hole, p.Thickness, p.Width)
	}
	v := PostValue{Gross: p.Thickness * p.Width, Net: p.Thickness * net, Governs: "post", Source: cite("net section as NDS 2018 Appendix E.7", source.Read)}
	v.Tension, v.Compression = p.Ft*v.Net, p.Fc*v.Net
	v.Push = v.Compression
	if p.PlateFcPerp > 0 {
		v.Plate = Bearing{Area: v.Gross}.stress(p.PlateFcPerp, BearingFactor(p.along(), p.FromEnd), p.Tight)
		if v.Plate.Allow < v.Push {
			v.Push, v.Governs = v.Plate.Allow, "plate"
		}
	}
	v.PlateOfMetal = p.FcStar > 0 && v.Push/v.Gross > 0.75*p.FcStar
	return v, nil
}

// along is the length of the post along the plate's grain: the longer side is
// taken, which gives the lower Cb.
func (p Post) along() float64 { return math.Max(p.Thickness, p.Width) }
