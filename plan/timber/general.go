package timber

import "math"

// GapDowel is a dowel in single shear with a gap between the members, and
// with a nominal diameter apart from the one that bends.
type GapDowel struct {
	Dowel           // D is the diameter that bends: the root of a screw, in
	Gap     float64 // between side and main member, in: sheathing under a strap counts as air
	Nominal float64 // nominal diameter, in; 0 = D
}

// SingleShear evaluates the six modes by the general dowel equations with a
// gap, AWC Technical Report 12 (from memory): each mode beyond bearing is the
// positive root of A P² + B P + C = 0. Without gap they are the six equations
// of NDS 2018 Table 12.3.1A, which a property test holds them to. K1 to K3 of
// the outcome belong to that other form and stay 0.
func (d GapDowel) SingleShear() Yield {
	var y Yield
	y.Re, y.Rt = d.Fem/d.Fes, d.Lm/d.Ls
	y.RdI, y.RdII, y.Rd3 = d.reduction()
	m, s := d.D*d.Fem, d.D*d.Fes // lb per inch of bearing
	bend := d.Fyb * d.D * d.D * d.D / 6
	crushM, crushS := m*d.Lm*d.Lm/4, s*d.Ls*d.Ls/4
	y.Modes = []Mode{
		{"Im", m * d.Lm / y.RdI},
		{"Is", s * d.Ls / y.RdI},
		{"II", root(1/(4*s)+1/(4*m), d.Ls/2+d.Gap+d.Lm/2, -crushS-crushM) / y.RdII},
		{"IIIm", root(1/(2*s)+1/(4*m), d.Gap+d.Lm/2, -bend-crushM) / y.Rd3},
		{"IIIs", root(1/(4*s)+1/(2*m), d.Ls/2+d.Gap, -crushS-bend) / y.Rd3},
		{"IV", root(1/(2*s)+1/(2*m), d.Gap, -2*bend) / y.Rd3},
	}
	return y.govern()
}

// root returns the positive root of a x² + b x + c for a > 0 and c < 0, in
// the form that loses no digits where b is large.
func root(a, b, c float64) float64 {
	return -2 * c / (b + math.Sqrt(b*b-4*a*c))
}

// reduction returns Rd by NDS 2018 Table 12.3.1B, p.84 (transcribed). Its
// footnote 1: where the nominal diameter is 1/4 in or more and the root is
// less, as in a 1/4 or 5/16 lag screw, KD of the root times Ktheta.
func (d GapDowel) reduction() (one, two, three float64) {
	one, two, three = Reduction(d.D, d.Angle)
	if d.D < 0.25 && d.Nominal >= 0.25 {
		k := 1 + 0.25*d.Angle/90
		return one * k, two * k, three * k
	}
	return one, two, three
}
