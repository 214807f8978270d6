package wind

import (
	"math"

	"galewright/plan"
)

// Coefs are the external pressure coefficients GCpf of one load case: index
// zone-1, interior zone and end zone (1E and so on).
type Coefs struct {
	Interior, End [6]float64
}

// caseA is load case A (7-22: case 1), wind across the ridge, ASCE 7-22 Fig.
// 28.3-1 (transcribed, the same in 7-10, 7-16 and 7-22): one roof angle a row,
// zones 1, 2, 3, 4, then 1E, 2E, 3E, 4E; linear between rows.
var caseA = []struct {
	theta         float64
	interior, end [4]float64
}{
	{5, [4]float64{0.40, -0.69, -0.37, -0.29}, [4]float64{0.61, -1.07, -0.53, -0.43}},
	{20, [4]float64{0.53, -0.69, -0.48, -0.43}, [4]float64{0.80, -1.07, -0.69, -0.64}},
	{30, [4]float64{0.56, 0.21, -0.43, -0.37}, [4]float64{0.69, 0.27, -0.53, -0.48}},
	{45, [4]float64{0.56, 0.21, -0.43, -0.37}, [4]float64{0.69, 0.27, -0.53, -0.48}},
	{90, [4]float64{0.56, 0.56, -0.37, -0.37}, [4]float64{0.69, 0.69, -0.48, -0.48}},
}

// CaseB is load case B (7-22: case 2), wind along the ridge, all roof angles:
// ASCE 7-22 Fig. 28.3-1 (transcribed).
var CaseB = Coefs{
	Interior: [6]float64{-0.45, -0.69, -0.37, -0.45, 0.40, -0.29},
	End:      [6]float64{-0.48, -1.07, -0.53, -0.48, 0.61, -0.43},
}

// CaseA returns GCpf of load case A at roof angle theta, degrees; zones 5 and
// 6 are not of this case and 0.
func CaseA(theta float64) (c Coefs) {
	lo, hi := 0, 0
	for i := range caseA {
		hi = i
		if theta <= caseA[i].theta {
			break
		}
		lo = i
	}
	f := 0.0
	if d := caseA[hi].theta - caseA[lo].theta; d > 0 && theta > caseA[lo].theta {
		f = math.Min(1, (theta-caseA[lo].theta)/d)
	}
	for i := range 4 {
		c.Interior[i] = caseA[lo].interior[i] + f*(caseA[hi].interior[i]-caseA[lo].interior[i])
		c.End[i] = caseA[lo].end[i] + f*(caseA[hi].end[i]-caseA[lo].end[i])
	}
	return c
}

// Torsion returns the coefficients of the torsion zones 1T to 6T, a quarter
// of the interior ones: ASCE 7-22 Fig. 28.3-2 (second-hand).
func (c Coefs) Torsion() (t [6]float64) {
	for i, x := range c.Interior {
		t[i] = x / 4
	}
	return t
}

// OverhangGCp is the coefficient added upward on the soffit of an overhang
// of the windward side: ASCE 7-16 28.3.3, from memory.
const OverhangGCp = 0.7

// The least loads of the main wind force resisting system, psf of vertical
// projection at strength level: ASCE 7-16 28.3.4, from memory.
const (
	LeastWall = 16.0
	LeastRoof = 8.0
)

// EdgeStrip returns a: the lesser of a tenth of the least plan dimension and
// 0.4 h, but at least 0.04 of the least dimension and 3 ft (ASCE 7-16 Fig.
// 28.3-1 notes, second-hand).
func (b Basis) EdgeStrip() float64 {
	least := math.Min(b.Length, b.Width)
	return math.Max(math.Min(0.1*least, 0.4*b.Height), math.Max(0.04*least, 3))
}

// ZoneTwoReach returns how far from the windward eave zone 2 reaches where
// its coefficient is negative, ft; beyond it zone 3 holds: the lesser of half
// the building's dimension parallel to the wind and 2.5 times the eave height.
// Note 8 of the low-rise figure to ASCE 7-16, in the text of 28.3.2 in 7-22
// (transcribed). ridge: the wind is along the ridge.
func (b Basis) ZoneTwoReach(ridge bool) float64 {
	along, _ := b.Along(ridge)
	return math.Min(0.5*along, 2.5*b.eave())
}

// eave returns the eave height, ft, or mean roof height when none is set.
func (b Basis) eave() float64 {
	if b.Eave == 0 {
		return b.Height
	}
	return b.Eave
}

// Pressure returns the net design pressure for an external and an internal
// coefficient, psf at strength level: ASCE 7-16 and 7-22 equation 28.3-1.
func (b Basis) Pressure(gcpf, gcpi float64) float64 { return b.Envelope().QKd * (gcpf - gcpi) }

// Zone is one zone of the envelope figure with its pressures, psf at
// strength level.
type Zone struct {
	Name     string // "1", "2E"
	GCpf     float64
	External float64
	// Plus and Minus are net, with internal pressure and with suction.
	Plus, Minus float64
}

// Zones lists the zones of a load case, interior ones first; those that are
// not of the case are left out.
func (b Basis) Zones(c Coefs) (out []Zone) {
	gi := GCpi(b.Enclosure)
	for e, set := range [][6]float64{c.Interior, c.End} {
		for i, g := range set {
			if g == 0 {
				continue
			}
			name := string(rune('1'+i)) + []string{"", "E"}[e]
			out = append(out, Zone{name, g, b.Pressure(g, 0), b.Pressure(g, gi), b.Pressure(g, -gi)})
		}
	}
	return out
}

// CaseName names load case A or B as the edition does.
func (b Basis) CaseName(c string) string {
	if b.Edition != plan.ASCE722 {
		return "load case " + c
	}
	if c == "A" {
		return "case 1"
	}
	return "case 2"
}
