package wind

import (
	"fmt"

	"galewright/plan"
	"galewright/plan/source"
)

// Overhang is the net pressure of components and cladding on a roof
// overhang, both faces, psf at strength level, positive up.
type Overhang struct {
	Zone   string
	Area   float64 // effective wind area, ft²
	GCp    float64 // net, negative up
	Up     float64
	Source string
	Grade  source.Grade
}

// CladOverhangs returns the net uplift on an overhang in each zone of a roof
// figure on an effective wind area, ft². Where the figure has curves of
// overhangs they hold both faces (ASCE 7-16 Figs. 30.3-2A to 2C, 7-22 Fig.
// 30.3-2A). Else it is the roof's negative value less the positive value of the
// wall below, by ASCE 7-22 30.7 (transcribed); for the figures of 7-16 whose
// overhang curves were not read, 7-22's rule stands in, and the source says so.
func (b Basis) CladOverhangs(f Figure, area float64) (out []Overhang) {
	q := b.At(b.Height).QKd
	wall := WallFigure(b.Edition, 90).Zones[0].Positive.At(area) // not reduced for a low slope
	for _, z := range f.Zones {
		o := Overhang{Zone: z.Zone, Area: area, Source: f.Name + ", overhang", Grade: f.Grade}
		if z.Overhang != nil {
			o.GCp = z.Overhang.At(area)
		} else {
			o.GCp = z.Negative.At(area) - wall
			o.Source = fmt.Sprintf("%s less the wall's positive value (ASCE 7-22 30.7)", f.Name)
			if b.Edition == plan.ASCE716 {
				o.Source += "; the overhang curve of 7-16 was not read"
			}
		}
		o.Up = max(LeastClad, -q*o.GCp)
		out = append(out, o)
	}
	return out
}

// CladUnder returns the upward pressure of components and cladding on the
// underside of an elevated house on an effective wind area, ft², psf at
// strength level: the positive value of wall zone 4, by ASCE 7-22 30.3.2.1 and
// Fig. 30.3-1A (second-hand). 7-16 has no rule for it.
func (b Basis) CladUnder(area float64) (psf float64, ok bool) {
	if b.Edition != plan.ASCE722 {
		return 0, false
	}
	z := WallFigure(b.Edition, 90).Zones[0]
	return max(LeastClad, b.Cladding(z, area).Positive), true
}

// Below is the factor on q Kd G for what stands under an elevated house,
// columns and girders: ASCE 7-22 27.3.1.1 (second-hand).
const Below = 1.3
