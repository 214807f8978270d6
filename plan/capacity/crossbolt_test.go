package capacity

import (
	"fmt"
	"slices"
	"testing"

	"galewright/plan"
	"galewright/plan/framing"
	"galewright/plan/geom"
	"galewright/plan/hardware"
	"galewright/plan/placement"
	"galewright/plan/steel"
	"galewright/plan/timber"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"
)

// halfGirder is a girder along x, its top at 0, from y0 to y1.
func halfGirder(name string, y0, y1, deep float64) *framing.Member {
	m := upright(plan.GirderBeam, geom.Vec3{X: -60, Y: y0, Z: -deep}, geom.Vec3{X: 60, Y: y1})
	m.ID, m.A, m.B = name, geom.Vec3{X: -60, Y: (y0 + y1) / 2, Z: -deep / 2}, geom.Vec3{X: 60, Y: (y0 + y1) / 2, Z: -deep / 2}
	m.Section = plan.Lumber{Ply: 2, Breadth: (y1 - y0) / 2, Depth: deep}
	return m
}

// acrossPile is a house of a girder's pieces and a pile, with a bolt of 3/4 in across at x and z,
// and what else is on it.
func acrossPile(t *testing.T, x, z float64, pile *framing.Member, girder []*framing.Member, more ...*placement.Piece) Capacity {
	return besidePiles(t, x, z, nil, pile, girder, more...)
}

// besidePiles is the same beside joints at other piles.
func besidePiles(t *testing.T, x, z float64, others []*framing.Joint, pile *framing.Member, girder []*framing.Member, more ...*placement.Piece) Capacity {
	c, ds := hardware.New([]*plan.Item{{Mark: "b", Kind: plan.AnchorBoltItem, Length: 24, Rod: 0.75, Washer: 3}})
	require.False(t, ds.Errors(), "%v", ds)
	p := &placement.Piece{
		Tag: "b", Joint: &framing.Joint{ID: "j", Kind: plan.GirderPile, Members: append(girder, pile)}, Item: c.Items[0],
		Lie: placement.Lie{Face: plan.Through, Rod: &placement.Axis{A: geom.Vec3{X: x, Y: -0.25, Z: z}, B: geom.Vec3{X: x, Y: 23.75, Z: z}}},
	}
	pine, _ := timber.SpeciesOf("southern pine")
	members := append(append([]*framing.Member{}, girder...), pile)
	for _, q := range more {
		members = append(members, q.Joint.Members[0])
	}
	return New(steel.New(placement.Of(&framing.House{Members: members, Joints: others}, append(more, p)...)), Context{Species: pine, Pile: plan.Lumber{Ply: 1, Breadth: 9.25, Depth: 9.25}}).One(p, Upward)
}

// pileFrom is a pile 9 1/4 in wide from y0 to y1, up to the top.
func pileFrom(y0, y1, top float64) *framing.Member {
	return upright(plan.Pile, geom.Vec3{X: -4.625, Y: y0, Z: -120}, geom.Vec3{X: 4.625, Y: y1, Z: top})
}

// The wood that a notch leaves of its pile counts, not the pile: behind a girder of 3 in 1 in
// of it. Southern pine, 3/4 in, Fe 6,150 along the pile, Re 2.0847, Rt 1/3; mode Im = 0.75 x 1 x
// 6,150 / 5 = 922.5, II and IIIm less; with the whole pile behind it IIIs rules as in
// TestABoltAcrossGirderAndPileByHand.
func TestABoltInWhatANotchLeaves(t *testing.T) {
	girder := []*framing.Member{halfGirder("g", 0, 3, 11.25)}
	thin, whole := acrossPile(t, 0, -5.625, pileFrom(3, 4, 0), girder), acrossPile(t, 0, -5.625, pileFrom(3, 12.25, 0), girder)
	assert.InDelta(t, 996.5, whole.Value, 0.7)
	assert.Contains(t, fmt.Sprint(whole.Terms), "pile (9.25 in")
	assert.Contains(t, fmt.Sprint(thin.Terms), "pile (1.00 in")
	assert.Less(t, thin.Value, 922.5*1.12)
	want := timber.Dowel{D: 0.75, Fyb: 45000, Fem: timber.DowelBearing(0.55, 0.75, 0), Fes: timber.DowelBearing(0.55, 0.75, 90), Lm: 1, Ls: 3, Angle: 90}.SingleShear()
	assert.InDelta(t, want.Z*1.6*0.7, thin.Value, 1e-6)
}

// Uplift pushes the bolt toward the pile's top: of 7 diameters, 5 1/4 in, 4 are there, and
// 4/5.25 of it count; under 3 1/2 of them, 2 5/8 in, it holds nothing (NDS 2018 Table 12.5.1A,
// transcribed). Nearer than 4 diameters, 3 in, to the girder's underside it holds nothing
// (Table 12.5.1C, transcribed).
func TestABoltNearThePilesTop(t *testing.T) {
	girder := []*framing.Member{halfGirder("g", 0, 3, 11.25)}
	pile := pileFrom(3, 12.25, 0)
	full := acrossPile(t, 0, -6, pile, girder).Value
	got := acrossPile(t, 0, -4, pile, girder)
	assert.InDelta(t, full*4/5.25, got.Value, 1e-6)
	assert.Contains(t, fmt.Sprint(got.Terms), "Cdelta 0.76 end distance, load toward the end of the pile")
	got = acrossPile(t, 0, -2.5, pile, girder)
	assert.Zero(t, got.Value)
	assert.Contains(t, got.Unknown, "the bolt stands too near an edge or end, in the pile: end distance, load toward the end")
	assert.Zero(t, acrossPile(t, 0, -11.25+2.9, pile, girder).Value)
	assert.NotZero(t, acrossPile(t, 0, -11.25+3.1, pile, girder).Value)
}

// Astride of its pile a girder is held in double shear only where both halves are tied
// down alike; by default all of the uplift is taken through one of them. The pile between is
// 7 1/4 in, each half 3 in: single 889.7 lb of 1,779 in double shear (no published source: our
// own arithmetic), times 1.12.
func TestABoltThroughBothHalves(t *testing.T) {
	first, last := halfGirder("a", 0, 3, 11.25), halfGirder("b", 10.25, 13.25, 11.25)
	halves := []*framing.Member{first, last}
	pile := pileFrom(3, 10.25, 0)
	one := acrossPile(t, 0, -5.625, pile, halves)
	assert.InDelta(t, 1779.0/2*1.12, one.Value, 1)
	assert.Contains(t, fmt.Sprint(one.Terms), "all through one half of the girder, single shear (both alike in double shear would be Z 1779 lb)")

	tie := func(on *framing.Member, wall *plan.Wall) *placement.Piece {
		y := on.A.Y
		joist := upright(plan.Joist, geom.Vec3{X: 40, Y: y - 8}, geom.Vec3{X: 41.5, Y: y + 8, Z: 9.25})
		c, ds := hardware.New([]*plan.Item{{Mark: "r" + on.ID, Kind: plan.AnchorBoltItem, Length: 30, Rod: 0.5}})
		require.False(t, ds.Errors(), "%v", ds)
		return &placement.Piece{
			Tag: "r" + on.ID, Item: c.Items[0], Joint: &framing.Joint{ID: "r" + on.ID, Kind: plan.JoistGirder, Wall: wall, Members: []*framing.Member{joist, on}},
			Lie: placement.Lie{Face: plan.Through, Rod: &placement.Axis{A: geom.Vec3{X: 40.75, Y: y, Z: 11}, B: geom.Vec3{X: 40.75, Y: y, Z: -13}}},
		}
	}
	both := acrossPile(t, 0, -5.625, pile, halves, tie(first, nil), tie(last, nil))
	assert.InDelta(t, 1779*1.12, both.Value, 1)
	assert.Contains(t, fmt.Sprint(both.Terms), "double shear, both halves of the girder tied down alike")
	assert.InDelta(t, one.Value, acrossPile(t, 0, -5.625, pile, halves, tie(first, nil)).Value, 1e-6)

	// Past the next pile, or a bay off, a tie says nothing of this one: two to the first half
	// here and two to the last half there are not alike. A quarter of the bay off three
	// quarters of it come here: 1 of 1.75, more than 0.55, through one half; a twentieth off
	// 1 of 1.95, 51.3%: 1779 / 2 / 0.513 = 1734.5.
	far := func(x float64) *placement.Piece {
		p := tie(last, nil)
		p.Joint.At = geom.Vec3{X: x}
		return p
	}
	next := func(x float64) *framing.Joint {
		return &framing.Joint{ID: "next", Kind: plan.GirderPile, At: geom.Vec3{X: x}}
	}
	for _, c := range []struct{ at, want float64 }{{96, one.Value}, {24, one.Value}, {4.8, 1734.5 * 1.12}, {0, 1779 * 1.12}} {
		assert.InDelta(t, c.want, besidePiles(t, 0, -5.625, []*framing.Joint{next(96), next(-96)}, pile, halves, tie(first, nil), far(c.at)).Value, 1, "%v", c.at)
	}
	assert.InDelta(t, one.Value, acrossPile(t, 0, -5.625, pile, halves, tie(first, &plan.Wall{Name: "W"}), tie(last, nil)).Value, 1e-6)
}

// Bolts beside each other across the pile's grain: the outermost may stand 5 in apart, and
// past that the standard holds none of them (NDS 2018 12.5.1.3, transcribed).
func TestOutermostBoltsAcrossThePile(t *testing.T) {
	girder := []*framing.Member{halfGirder("g", 0, 3, 11.25)}
	pile := upright(plan.Pile, geom.Vec3{X: -7, Y: 3, Z: -120}, geom.Vec3{X: 7, Y: 12.25})
	at := func(x float64) *placement.Piece {
		c, ds := hardware.New([]*plan.Item{{Mark: "b", Kind: plan.AnchorBoltItem, Length: 24, Rod: 0.75, Washer: 3}})
		require.False(t, ds.Errors(), "%v", ds)
		return &placement.Piece{Tag: fmt.Sprint("b", x), Item: c.Items[0], Lie: placement.Lie{Face: plan.Through, Rod: &placement.Axis{A: geom.Vec3{X: x, Y: -0.25, Z: -6}, B: geom.Vec3{X: x, Y: 23.75, Z: -6}}}}
	}
	several := func(xs ...float64) Capacity {
		joint := &framing.Joint{ID: "j", Kind: plan.GirderPile, Members: append(slices.Clone(girder), pile)}
		var all []*placement.Piece
		for _, x := range xs {
			p := at(x)
			p.Joint = joint
			all = append(all, p)
		}
		pine, _ := timber.SpeciesOf("southern pine")
		return New(steel.New(placement.Of(&framing.House{Members: append(slices.Clone(girder), pile)}, all...)), Context{Species: pine, Pile: plan.Lumber{Ply: 1, Breadth: 14, Depth: 9.25}}).One(all[0], Upward)
	}
	assert.NotZero(t, several(-2.5, 2.5).Value)
	wide := several(-3, 3)
	assert.Zero(t, wide.Value)
	assert.Contains(t, wide.Unknown, "outermost fasteners across the grain")
	assert.Zero(t, several(0, -4, 4).Value, "nor the one in the middle")
}
