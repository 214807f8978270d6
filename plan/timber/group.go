package timber

import (
	"fmt"
	"math"
)

// Group is one row of fasteners that share a load, NDS 2018 11.3.6.
type Group struct {
	N      int     // fasteners in the row
	S      float64 // spacing in the row, in
	D      float64 // nominal diameter, in
	Am, As float64 // gross areas of main member and of all side members, in²
	Em, Es float64 // moduli of elasticity, psi
	Metal  bool    // the side members are metal
}

// GroupFactor is Cg and what it is made of.
type GroupFactor struct {
	Cg, REA, Gamma, U, M float64
}

// SteelModulus is E of steel in the group action tables, psi (NDS 2018 Table
// 11.3.6C, p.71, transcribed).
const SteelModulus = 30_000_000

// Value returns Cg by NDS 2018 equation 11.3-1, p.68 (transcribed; D^1.5 as
// the 2024 edition mends it). It is 1 for one fastener or D < 1/4 in. The
// area of a member loaded across its grain is its thickness times the width
// of the group, 3D where there is one row.
func (g Group) Value() (GroupFactor, error) {
	if g.N <= 1 || g.D < 0.25 {
		return GroupFactor{Cg: 1}, nil
	}
	em, es := g.Em*g.Am, g.Es*g.As
	if em <= 0 || es <= 0 || g.S <= 0 {
		return GroupFactor{}, fmt.Errorf("group of %d fasteners of %.3f in at %.2f in: EA %.0f and %.0f lb", g.N, g.D, g.S, em, es)
	}
	f := GroupFactor{REA: math.Min(em/es, es/em)}
	f.Gamma = pick(g.Metal, 270_000, 180_000) * math.Pow(g.D, 1.5)
	f.U = 1 + f.Gamma*g.S/2*(1/em+1/es)
	f.M = f.U - math.Sqrt(f.U*f.U-1)
	f.Cg = f.equation(float64(g.N))
	return f, nil
}

func (g GroupFactor) equation(n float64) float64 {
	m, rea := g.M, g.REA
	mn := math.Pow(m, n)
	return m * (1 - mn*mn) / (n * ((1+rea*mn)*(1+m) - 1 + mn*mn)) * (1 + rea) / (1 - m)
}
