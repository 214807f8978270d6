package timber

import (
	"cmp"
	"fmt"
	"math"
)

// Part is one member of a nailed joint.
type Part struct {
	Thickness float64 // along the nail, in
	G         float64 // specific gravity of wood; not used for steel
	Steel     bool
}

// Fe returns the part's dowel bearing strength for diameter d, psi.
func (p Part) Fe(d float64) float64 {
	if p.Steel {
		fe, _ := SteelBearing(p.Thickness)
		return fe
	}
	return DowelBearing(p.G, d, 0)
}

// Nailed is one nail in single shear: its yield and what it was computed
// from.
type Nailed struct {
	Yield
	Dowel
	Nail        Nail
	Penetration float64 // in the main member, tip included, in
	Toe         bool
}

// SingleNail returns the reference lateral value of one nail driven square
// through side into main. Penetration counts from the near face of main to
// the tip, or to the far face where the nail comes through; the bearing
// length is less by half the tip, 2D long, when the tip is inside (NDS 2018
// 12.3.5.3, transcribed). Under 6D it is an error (12.1.6.4); from 6D to 10D the
// equations are used with the true length, as Table 12N footnote 3 allows.
func SingleNail(n Nail, side, main Part) (Nailed, error) {
	p := n.Length - side.Thickness
	lm := min(p-n.Diameter, main.Thickness)
	return shear(n, side, main, min(p, main.Thickness), lm, side.Thickness)
}

// ToeNail returns the lateral value of one toe-nail, before the factor Ctn,
// by the geometry of NDS 2018 12.1.6.3 and commentary C12.5.4 (transcribed):
// driven at 30 degrees, a third of its length up the side member.
func ToeNail(n Nail, side, main Part) (Nailed, error) {
	lm, ls := ToeLengths(n.Length)
	ls = min(side.Thickness, ls)
	lm = min(lm, main.Thickness)
	out, err := shear(n, side, main, lm, lm, ls)
	out.Toe = true
	return out, err
}

// ToeLengths returns the bearing lengths of a toe-nail of the length in thick
// members, in: L cos 30 less a third of L in the main member, a third in the
// side member.
func ToeLengths(length float64) (lm, ls float64) {
	return length*math.Cos(math.Pi/6) - length/3, length / 3
}

func shear(n Nail, side, main Part, p, lm, ls float64) (Nailed, error) {
	out := Nailed{Nail: n, Penetration: p}
	fyb := BendingYield(n.Diameter)
	if fyb == 0 {
		return out, fmt.Errorf("no bending yield strength is known for a nail of diameter %.3f in (0.099 to 0.375 in)", n.Diameter)
	}
	if least := 6 * n.Diameter; p < least-1e-9 {
		return out, fmt.Errorf("the nail reaches %.2f in into the main member, under 6 diameters (%.2f in)", max(p, 0), least)
	}
	out.Dowel = Dowel{D: cmp.Or(n.Root, n.Diameter), Fyb: fyb, Fem: main.Fe(n.Diameter), Fes: side.Fe(n.Diameter), Lm: lm, Ls: ls}
	out.Yield = out.Dowel.SingleShear()
	return out, nil
}
