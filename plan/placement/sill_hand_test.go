package placement

import (
	"testing"

	"galewright/plan"
	"galewright/plan/framing"
	"galewright/plan/geom"
	"galewright/plan/hardware"

	"github.com/stretchr/testify/assert"
)

// Bolts of a sill plate from 0 to the length, against what IRC 2006 R403.1.6 asks
// for (read): 6 ft apart at most, one within 12 in of each end, one enough for a
// piece of 24 in (from memory).
func TestWhereASillIsBare(t *testing.T) {
	wall := &plan.Wall{Name: "S"}
	bolt := &hardware.Item{Kind: hardware.KindNamed(plan.AnchorBoltItem)}
	strap := &hardware.Item{Kind: hardware.KindNamed(plan.StrapItem)}
	at := func(it *hardware.Item, s, top, foot float64) *Piece {
		return &Piece{Item: it, Joint: &framing.Joint{Wall: wall}, Lie: Lie{Station: s, Path: []geom.Vec3{{Z: top}, {Z: foot}}}}
	}
	for _, c := range []struct {
		name   string
		long   float64
		bolts  []float64
		others []*Piece
		want   string
	}{
		{"none", 100, nil, nil, "no bolt holds it to the foundation"},
		{"both ends at 12 in, 72 in apart", 96, []float64{84, 12}, nil, ""},
		{"first at 12 1/8 in", 96, []float64{12.125, 84}, nil, `its first bolt is 1'-0 1/8" from its end, at 1'-0 1/8"`},
		{"last 12 1/8 in from the end", 96, []float64{12, 83.875}, nil, `its last bolt is 1'-0 1/8" from its end, at 6'-11 7/8"`},
		{"72 1/8 in apart", 96.125, []float64{12, 84.125}, nil, `its bolts at 1'-0" and 7'-0 1/8" are 6'-0 1/8" apart`},
		{"a short piece with one in its middle", 24, []float64{12}, nil, ""},
		{"a longer one with one", 25, []float64{12}, nil, `its last bolt is 1'-1" from its end, at 1'-0"`},
		{
			"a strap is no bolt, nor one that ends in the plate or begins below it, nor one past the end", 24, nil,
			[]*Piece{at(strap, 12, 3, -8), at(bolt, 12, 3, 0.5), at(bolt, 12, -1, -8), at(bolt, 25, 3, -8)},
			"no bolt holds it to the foundation",
		},
	} {
		x := &placer{world: &world{house: &framing.House{Plan: &plan.Plan{}}}, p: &Placement{Pieces: c.others}}
		for _, s := range c.bolts {
			x.p.Pieces = append(x.p.Pieces, at(bolt, s, 3, -8))
		}
		assert.Equal(t, c.want, x.bareSill(&framing.Member{Wall: wall, S1: c.long, Z1: 1.5}), c.name)
	}
}
