package timber

import (
	"cmp"
	"math"
	"slices"
)

// Dowel is the input of the yield-limit equations, NDS 2018 12.3.1: lm and
// ls are dowel bearing lengths in main and side member, in.
type Dowel struct {
	D        float64 // diameter, in
	Fyb      float64 // bending yield strength, psi
	Fem, Fes float64 // dowel bearing strength of main and side member, psi
	Lm, Ls   float64
	Angle    float64 // largest angle of load to grain, degrees; matters from D = 1/4 in
}

// Mode is the value of one yield mode.
type Mode struct {
	Name string  // "Im", "Is", "II", "IIIm", "IIIs", "IV"
	Z    float64 // lb
}

// Yield is the outcome of the yield-limit equations.
type Yield struct {
	Z              float64 // reference lateral value, lb: the least of Modes
	Mode           string  // the mode that governs
	Modes          []Mode  // in the order of the standard's table
	Re, Rt         float64 // Fem/Fes, lm/ls
	K1, K2, K3     float64
	RdI, RdII, Rd3 float64 // reduction terms of modes I, II, and III with IV
}

// SingleShear evaluates the six modes of NDS 2018 Table 12.3.1A, equations
// 12.3-1 to 12.3-6 (transcribed).
func (d Dowel) SingleShear() Yield {
	y := d.terms()
	y.Modes = []Mode{
		{"Im", d.D * d.Lm * d.Fem / y.RdI},
		{"Is", d.D * d.Ls * d.Fes / y.RdI},
		{"II", y.K1 * d.D * d.Ls * d.Fes / y.RdII},
		{"IIIm", y.K2 * d.D * d.Lm * d.Fem / ((1 + 2*y.Re) * y.Rd3)},
		{"IIIs", y.K3 * d.D * d.Ls * d.Fem / ((2 + y.Re) * y.Rd3)},
		{"IV", d.D * d.D / y.Rd3 * math.Sqrt(2*d.Fem*d.Fyb/(3*(1+y.Re)))},
	}
	return y.govern()
}

// DoubleShear evaluates the four modes of NDS 2018 Table 12.3.1A for a main member
// between two equal side members, equations 12.3-7 to 12.3-10 (transcribed): ls is the
// bearing length in one of the sides, in.
func (d Dowel) DoubleShear() Yield {
	y := d.terms()
	y.Modes = []Mode{
		{"Im", d.D * d.Lm * d.Fem / y.RdI},
		{"Is", 2 * d.D * d.Ls * d.Fes / y.RdI},
		{"IIIs", 2 * y.K3 * d.D * d.Ls * d.Fem / ((2 + y.Re) * y.Rd3)},
		{"IV", 2 * d.D * d.D / y.Rd3 * math.Sqrt(2*d.Fem*d.Fyb/(3*(1+y.Re)))},
	}
	return y.govern()
}

// terms fills in the ratios and the coefficients k1 to k3 of Table 12.3.1A.
func (d Dowel) terms() (y Yield) {
	re, rt := d.Fem/d.Fes, d.Lm/d.Ls
	y.Re, y.Rt = re, rt
	y.RdI, y.RdII, y.Rd3 = Reduction(d.D, d.Angle)
	y.K1 = (math.Sqrt(re+2*re*re*(1+rt+rt*rt)+rt*rt*re*re*re) - re*(1+rt)) / (1 + re)
	y.K2 = -1 + math.Sqrt(2*(1+re)+2*d.Fyb*(1+2*re)*d.D*d.D/(3*d.Fem*d.Lm*d.Lm))
	y.K3 = -1 + math.Sqrt(2*(1+re)/re+2*d.Fyb*(2+re)*d.D*d.D/(3*d.Fem*d.Ls*d.Ls))
	return y
}

func (y Yield) govern() Yield {
	least := slices.MinFunc(y.Modes, func(a, b Mode) int { return cmp.Compare(a.Z, b.Z) })
	y.Z, y.Mode = least.Z, least.Name
	return y
}
