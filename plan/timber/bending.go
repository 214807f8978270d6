package timber

import "strings"

// Bend is what lumber bears in bending and in shear across its grain, reference values,
// psi.
type Bend struct{ Fb, Fv float64 }

// bendFb is Fb of No. 2 lumber 2 to 4 in thick, NDS 2018 Supplement Tables 4A and 4B,
// from memory. Of southern pine it is by depth; of the others the size factor, no less
// than 1 up to 12 in nominal, is left out, and so is the factor for flat use, which is
// more than 1.
var bendFb = map[string]float64{
	"Douglas fir-larch": 900, "hem-fir": 850, "spruce-pine-fir": 875, "spruce-pine-fir (south)": 775,
}

// pineFb is Fb of No. 2 southern pine by its largest dressed depth, in (NDS 2018
// Supplement Table 4B, from memory).
var pineFb = []struct{ depth, fb float64 }{{3.5, 1100}, {5.5, 1000}, {7.25, 925}, {9.25, 800}, {11.25, 750}}

// Bend returns what No. 2 lumber of the species and of a depth, in, bears in bending and
// shear; ok is false where it is not carried here.
func (s Species) Bend(depth float64) (b Bend, ok bool) {
	along, ok := s.Along()
	if !ok {
		return b, false
	}
	b.Fv = along.Fv
	if !strings.EqualFold(s.Name, "southern pine") {
		b.Fb = bendFb[s.Name]
		return b, b.Fb > 0 && depth <= 11.25+1e-6
	}
	for _, r := range pineFb {
		if depth <= r.depth+1e-6 {
			b.Fb = r.fb
			return b, true
		}
	}
	return b, false
}

// Moment is what a rectangle of wood bears in bending at wind duration, lb-in: Fb CD b
// d²/6, stable by itself (CL 1), with d along the load, in.
func (b Bend) Moment(wide, deep float64) float64 {
	return b.Fb * float64(WindDuration) * wide * deep * deep / 6
}

// Shear is what a rectangle of wood bears across its grain at wind duration, lb: 2/3 Fv
// CD b d.
func (b Bend) Shear(wide, deep float64) float64 {
	return 2.0 / 3 * b.Fv * float64(WindDuration) * wide * deep
}
