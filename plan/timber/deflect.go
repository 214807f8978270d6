package timber

import (
	"galewright/plan/source"
	"galewright/plan/units"
)

// WallDeflection is how far the top of a sheathed wall moves sideways for each
// plf of unit shear along it, in: bending of its end posts, shear of the
// panels with slip of their nails, and stretch of what anchors its ends.
type WallDeflection struct {
	Bending, Shear, Anchorage float64
	Source                    string
	of                        [5]float64 // h and b in ft, end post in in², E in million psi, Ga in kip/in
}

// Terms tells what the deflection is computed from.
func (d WallDeflection) Terms(u units.System) string {
	return u.Sprintf("h %.2f ft, b %.2f ft, end post %.2f in², E %.1f million psi, Ga %.1f kip/in", d.of[0], d.of[1], d.of[2], d.of[3], d.of[4])
}

// Per returns the deflection for each plf, in.
func (d WallDeflection) Per() float64 { return d.Bending + d.Shear + d.Anchorage }

// DeflectionOf takes a wall of height h and length b (ft) with end posts of
// area a (in²) and modulus e (psi), panels of apparent stiffness ga (kip/in) and
// an anchorage that stretches by stretch (in) for each plf:
//
//	δ = 8 v h³ / (E A b) + v h / (1000 Ga) + h Δa / b
//
// SDPWS 2015 equation 4.3-1 (second-hand: its form as the commentary of
// the American Wood Council names it).
func DeflectionOf(h, b, a, e, ga, stretch float64) WallDeflection {
	return WallDeflection{
		Bending: 8 * h * h * h / (e * a * b), Shear: h / (1000 * ga), Anchorage: h * stretch / b,
		of:     [5]float64{h, b, a, e / 1e6, ga},
		Source: cite("SDPWS 2015 equation 4.3-1", source.SecondHand),
	}
}

// ApparentStiffness returns Ga of a row of the shear wall table at an edge
// nailing of that table, kip/in: with oriented strand board and with plywood.
// ok is false where no value was read.
func (p Panel) ApparentStiffness(edge float64) (osb, plywood float64, ok bool) {
	for i, e := range edges {
		if e == edge && p.OSB[i] > 0 {
			return p.OSB[i], p.Plywood[i], true
		}
	}
	return 0, 0, false
}

// LengthFactor returns the factor on the unit shear of a segment whose share
// of a line's force is by its length alone: 1 up to 2:1, then 2b/h to 3.5:1,
// 0 beyond (second-hand; SDPWS 2021 4.3.5.5.1, exceptions, not read). The aspect
// ratio factor is then not applied as well.
func LengthFactor(h, b float64) float64 {
	switch r := h / b; {
	case r <= 2:
		return 1
	case r <= MaxAspect+1e-9:
		return 2 / r
	}
	return 0
}

// WideFraming says why adjoining panel edges of a wall want framing 3 in nominal
// or two members nailed together, with staggered nails, or "": edge nails at
// 2 in or less, or 10d nails at 3 in or less (read: an answer of the American
// Wood Council on SDPWS that names no edition; for wind too).
func (u UnitShear) WideFraming() string {
	switch {
	case u.Column <= 2:
		return "edge nails 2 in o.c. or less"
	case u.Row.Nail == "10d" && u.Column <= 3:
		return "10d edge nails 3 in o.c. or less"
	}
	return ""
}
