package framing

import (
	"cmp"
	"math"
	"slices"

	"galewright/plan"
)

// TrussEnd is a hip end of a truss roof, from the girder truss in and out, or the mouth of a
// wing with a girder truss across it.
type TrussEnd struct {
	Roof    *plan.Roof
	Side    plan.Side
	Setback float64 // of the middle of the girder's outer ply from the outside face of the end wall's studs, in
	Girder  *Member
	Steps   TrussRow // hip trusses, from the outside face of the end wall's studs
	Hung    TrussRow // jack trusses on the girder, from the wall at its west or south end
	Corners []*TrussCorner
	Mouth   bool // of a wing: Setback is from the end of its walls
}

// StepsUp tells whether hip trusses step up somewhere from a girder truss to the ridge.
func (h *House) StepsUp() bool {
	return slices.ContainsFunc(h.TrussEnds, func(e *TrussEnd) bool { return !e.Mouth })
}

// TrussCorner is a corner jack with the jack trusses on it, on plan from its tail.
type TrussCorner struct {
	Member *Member
	Jacks  TrussRow
}

// TrussRow is a row of trusses.
type TrussRow []TrussAt

// TrussAt is a truss with the place of its middle, in.
type TrussAt struct {
	Member *Member
	At     float64
}

// add adds a truss, where it is one.
func (r *TrussRow) add(m *Member, at float64) {
	if m != nil {
		*r = append(*r, TrussAt{m, at})
	}
}

// inOrder sorts a row by place.
func (r TrussRow) inOrder() {
	slices.SortStableFunc(r, func(a, b TrussAt) int { return cmp.Compare(math.Round(a.At/near), math.Round(b.At/near)) })
}

// inOrder sorts what hangs by place.
func (e *TrussEnd) inOrder() {
	e.Hung.inOrder()
	for _, c := range e.Corners {
		c.Jacks.inOrder()
	}
}
