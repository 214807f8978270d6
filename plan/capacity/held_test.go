package capacity

import (
	"math"
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

// upright is a stud of a box with its grain along z.
func upright(role plan.Role, lo, hi geom.Vec3) *framing.Member {
	d, mid := hi.Sub(lo), lo.Add(hi).Mul(0.5)
	return &framing.Member{
		Role: role, Solid: []geom.Solid{geom.Box(lo, geom.Vec3{X: d.X}, geom.Vec3{Y: d.Y}, geom.Vec3{Z: d.Z})},
		A: geom.Vec3{X: mid.X, Y: mid.Y, Z: lo.Z}, B: geom.Vec3{X: mid.X, Y: mid.Y, Z: hi.Z},
	}
}

// driven makes a body of one plate with fasteners at heights along it.
func driven(t *testing.T, w *steel.Wood, it plan.Item, p geom.Plate, at ...float64) *steel.Body {
	c, ds := hardware.New([]*plan.Item{&it})
	require.False(t, ds.Errors(), "%v", ds)
	b := &steel.Body{Piece: &placement.Piece{Item: c.Items[0]}, Bands: []geom.Band{{p}}}
	e := c.Items[0].Ends()[0]
	for _, z := range at {
		f := w.Drive(p, p.At(z, 0), e.Size.Length)
		f.Diameter = e.Size.Diameter
		b.Fasteners = append(b.Fasteners, f)
	}
	return b
}

func strapOf(nail string) plan.Item {
	return plan.Item{
		Mark: "band", Kind: plan.StrapItem, Length: 30, Width: 1.375, Gauge: "17 ga",
		Fasteners: []plan.Fasteners{{Part: "each end", Nail: nail, Count: 3, Parts: 2}},
	}
}

// 10d x 1 1/2 through 17 gauge, 0.0538 in, into southern pine G 0.55: 1.446
// in, under 10D = 1.48. Fe 16,600 x 0.55^1.84 = 5,526, to 50: 5,550; KD 2.2.
// By the table at full penetration and p/10D, or by the equations with lm =
// 1.446 − 0.148 = 1.298: mode IIIs does not know lm, so the table's way, 1.446 /
// 1.48 = 0.977 of the same Z, is the lower. Re 5,550/61,850 = 0.0897; k3 = −1 +
// sqrt(2 x 1.0897/0.0897 + 2 x 90,000 x 2.0897 x 0.148² / (3 x 5,550 x 0.0538²))
// = −1 + sqrt(24.288 + 170.95) = 12.973; Z = 12.973 x 0.148 x 0.0538 x 5,550 /
// (2.0897 x 2.2) = 124.7; x 1.6 x 0.977 = 194.9 lb each.
func TestANailIsWorthTheWoodItFinds(t *testing.T) {
	pine, _ := timber.SpeciesOf("southern pine")
	x := Fastening{Species: pine}
	stud := upright(plan.Stud, geom.Vec3{}, geom.Vec3{X: 1.5, Y: 5.5, Z: 96})
	w := steel.NewWood([]*framing.Member{stud})
	p := geom.Plate{A: geom.Vec3{X: 0.75}, B: geom.Vec3{X: 0.75, Z: 30}, N: geom.Vec3{Y: -1}, Width: 1.375, Thickness: 0.0538}
	h := x.Of(driven(t, w, strapOf("10d x 1 1/2"), p, 3, 6, 9), stud, geom.Vec3{Z: 1})
	z := 12.973 * 0.148 * 0.0538 * 5550 / (2.0897 * 2.2)
	assert.InDelta(t, 3*1.6*z*(1.5-0.0538)/1.48, h.Value, 1.5)
	assert.Equal(t, 3, h.Count)
	assert.Equal(t, "mode IIIs", h.Mode)
	require.Len(t, h.Terms, 1)

	// An inch of air under the steel: 0.446 in of wood is under 6D = 0.888.
	off := p
	off.A, off.B = p.A.Add(geom.Vec3{Y: -1}), p.B.Add(geom.Vec3{Y: -1})
	h = x.Of(driven(t, w, strapOf("10d x 1 1/2"), off, 3, 6), stud, geom.Vec3{Z: 1})
	assert.Zero(t, h.Value)
	assert.Equal(t, 2, h.None)
	assert.Contains(t, h.Why, "least 0.89 in")

	// Beside the stud nothing is held, and nothing is counted.
	off = p
	off.A, off.B = p.A.Add(geom.Vec3{X: 2}), p.B.Add(geom.Vec3{X: 2})
	assert.Zero(t, x.Of(driven(t, w, strapOf("10d x 1 1/2"), off, 3), stud, geom.Vec3{Z: 1}).Count)
}

// The same nails driven up into a plate that is pulled off them: withdrawal,
// W = 1380 x 0.55^2.5 x 0.148 = 45.8 lb an inch (NDS 2018 12.2-3, transcribed),
// times 1.446 in and 1.6.
func TestAForceAlongANailDrawsIt(t *testing.T) {
	pine, _ := timber.SpeciesOf("southern pine")
	plate := upright(plan.TopPlate, geom.Vec3{X: -40, Z: 96}, geom.Vec3{X: 40, Y: 5.5, Z: 97.5})
	plate.A, plate.B = geom.Vec3{X: -40, Y: 2.75, Z: 96.75}, geom.Vec3{X: 40, Y: 2.75, Z: 96.75}
	w := steel.NewWood([]*framing.Member{plate})
	p := geom.Plate{A: geom.Vec3{X: 2, Y: 2.75, Z: 96}, B: geom.Vec3{X: 32, Y: 2.75, Z: 96}, N: geom.Vec3{Z: -1}, Width: 1.375, Thickness: 0.0538}
	h := Fastening{Species: pine}.Of(driven(t, w, strapOf("10d x 1 1/2"), p, 3, 6), plate, geom.Vec3{Z: 1})
	assert.InDelta(t, 2*1.6*1380*math.Pow(0.55, 2.5)*0.148*1.45, h.Value, 3)
	assert.Equal(t, "withdrawal", h.Mode)
	// Down the nail's side it is lateral again.
	assert.Equal(t, "mode IIIs", Fastening{Species: pine}.Of(driven(t, w, strapOf("10d x 1 1/2"), p, 3, 6), plate, geom.Vec3{X: 1}).Mode)
}

// A screw of 1 1/2 in with 1.41 in in the wood is under six of its 0.242 in.
func TestAShortScrewHoldsNothing(t *testing.T) {
	pine, _ := timber.SpeciesOf("southern pine")
	stud := upright(plan.Post, geom.Vec3{}, geom.Vec3{X: 1.5, Y: 5.5, Z: 96})
	w := steel.NewWood([]*framing.Member{stud})
	p := geom.Plate{A: geom.Vec3{Y: 2.75}, B: geom.Vec3{Y: 2.75, Z: 30}, N: geom.Vec3{X: -1}, Width: 3, Thickness: 0.0897}
	x := Fastening{Species: pine}
	h := x.Of(driven(t, w, strapOf("No. 14 x 1 1/2"), p, 3, 6), stud, geom.Vec3{Z: 1})
	assert.Zero(t, h.Value)
	assert.Contains(t, h.Why, "least 1.45 in")
	assert.Positive(t, x.Of(driven(t, w, strapOf("No. 12 x 1 1/2"), p, 3, 6), stud, geom.Vec3{Z: 1}).Value)
}

// Two pieces at one joint, one of them beside the wood: together they hold what
// the good one does, and the other is named.
func TestAPieceThatMissesAddsNothing(t *testing.T) {
	pine, _ := timber.SpeciesOf("southern pine")
	stud := upright(plan.Stud, geom.Vec3{}, geom.Vec3{X: 1.5, Y: 5.5, Z: 96})
	post := upright(plan.Post, geom.Vec3{Z: 110}, geom.Vec3{X: 1.5, Y: 5.5, Z: 206})
	j := &framing.Joint{ID: "j", Kind: plan.StudStud, Members: []*framing.Member{post, stud}}
	it := strapOf("10d x 1 1/2")
	c, ds := hardware.New([]*plan.Item{&it})
	require.False(t, ds.Errors())
	piece := func(tag string, x, y float64) *placement.Piece {
		band := geom.Band{{A: geom.Vec3{X: x, Y: y, Z: 88}, B: geom.Vec3{X: x, Y: y, Z: 118}, N: geom.Vec3{Y: y - 1}.Unit(), Width: 1.375, Thickness: 0.0538}}
		return &placement.Piece{Tag: tag, Joint: j, Item: c.Items[0], Lie: placement.Lie{
			Face: plan.Outside, Bands: []geom.Band{band}, Laid: []placement.Laid{{Member: post, Lap: 8, Room: 96}, {Member: stud, Lap: 8, Room: 96}},
			Ends: []placement.EndAt{{Laid: 0, Starts: []placement.Start{{Far: true}}}, {Laid: 1, Starts: []placement.Start{{}}}},
		}}
	}
	hold := func(pieces ...*placement.Piece) *Capacity {
		house := &framing.House{Members: []*framing.Member{stud, post}}
		return New(steel.New(placement.Of(house, pieces...)), Context{Species: pine}).At(j, Upward)
	}
	good, off := piece("good", 0.75, 0), piece("off", 9, 0)
	one := hold(good)
	require.Empty(t, one.Unknown)
	assert.Positive(t, one.Value)
	assert.NotEmpty(t, hold(off).Unknown)
	both := hold(good, off)
	assert.InDelta(t, one.Value, both.Value, 1e-9)
	assert.Equal(t, one.Governs, both.Governs)
	assert.Contains(t, both.Terms[len(both.Terms)-2].Text, "off holds nothing")
	assert.InDelta(t, 2*one.Value, hold(good, piece("other", 0.75, 5.5)).Value, 1e-9)

	// One more on the same face has its nails where the first one's are: none counts.
	inTheWay := hold(good, piece("other", 0.75, 0))
	assert.Zero(t, inTheWay.Value)
	assert.Contains(t, inTheWay.Unknown, "it meets another fastener there")
}

// The same nails of stainless steel, smooth, draw out by the lower equation: W
// = 465 x 0.55^1.5 x 0.148 = 28.07 lb an inch (NDS 2018 12.2-4, transcribed)
// against 45.8; across their shanks they hold as before. Screws have no such rule.
func TestASmoothStainlessNailDrawsOutSooner(t *testing.T) {
	pine, _ := timber.SpeciesOf("southern pine")
	plate := upright(plan.TopPlate, geom.Vec3{X: -40, Z: 96}, geom.Vec3{X: 40, Y: 5.5, Z: 97.5})
	plate.A, plate.B = geom.Vec3{X: -40, Y: 2.75, Z: 96.75}, geom.Vec3{X: 40, Y: 2.75, Z: 96.75}
	w := steel.NewWood([]*framing.Member{plate})
	p := geom.Plate{A: geom.Vec3{X: 2, Y: 2.75, Z: 96}, B: geom.Vec3{X: 32, Y: 2.75, Z: 96}, N: geom.Vec3{Z: -1}, Width: 1.375, Thickness: 0.0538}
	of := func(nail string, c plan.Coating, force geom.Vec3) float64 {
		it := strapOf(nail)
		it.Fasteners[0].Coating = c
		return Fastening{Species: pine}.Of(driven(t, w, it, p, 3, 6), plate, force).Value
	}
	up, side := geom.Vec3{Z: 1}, geom.Vec3{X: 1}
	assert.InDelta(t, 2*1.6*28.07*1.45, of("10d x 1 1/2", plan.Stainless316, up), 1)
	assert.InDelta(t, 2*1.6*45.82*1.45, of("10d x 1 1/2", plan.HotDip, up), 1)
	assert.InDelta(t, of("10d x 1 1/2", plan.HotDip, side), of("10d x 1 1/2", plan.Stainless304, side), 1e-9)
	assert.InDelta(t, of("No. 10 x 1 1/2", plan.HotDip, up), of("No. 10 x 1 1/2", plan.Stainless304, up), 1e-9)
}

// Bolts of 3/4 in through a 1/4 in plate 3 in wide into a 5 1/2 in post, pulled up.
// Two in a row 3 in apart, E 1.1 million psi: 270,000 x 0.75^1.5 = 175,370; EA of
// the wood 33.275e6, of the steel 22.5e6 lb, ratio 0.67618; u = 1 + 175,370 x 1.5 x
// (1/33.275e6 + 1/22.5e6) = 1.019597, m = 0.820656, Cg = 0.9963 (NDS 2018 eq. 11.3-1).
// Spacing wants 4D = 3 in: at 2.5 in Cdelta is 0.833; under 3D = 2.25 in they hold
// nothing. End distance toward the foot wants 7D = 5.25 in: with the lowest bolt 3 in
// over it 0.571.
func TestBoltsInARowShareUnevenly(t *testing.T) {
	hold := func(n int, spacing, seat float64) Capacity {
		post := upright(plan.Post, geom.Vec3{}, geom.Vec3{X: 5.5, Y: 5.5, Z: 96})
		post.Section = plan.Lumber{Ply: 1, Breadth: 5.5, Depth: 5.5}
		c, ds := hardware.New([]*plan.Item{{
			Mark: "h", Kind: plan.HoldDownItem, Length: 13.5, Width: 3, Thickness: 0.25, Rod: 1, Standoff: 2, Center: 2,
			Fasteners: []plan.Fasteners{{Part: "all", Nail: "bolt 3/4 x 6", Count: n, Parts: 1, Rows: 1, Spacing: spacing, EndDist: 1}},
		}})
		require.False(t, ds.Errors(), "%v", ds)
		j := &framing.Joint{ID: "j", Kind: plan.WallEnd, Members: []*framing.Member{post}}
		band := geom.Band{{A: geom.Vec3{X: 2.75, Z: seat}, B: geom.Vec3{X: 2.75, Z: seat + 13.5}, N: geom.Vec3{Y: -1}, Width: 3, Thickness: 0.25}}
		p := &placement.Piece{Tag: "h", Joint: j, Item: c.Items[0], Lie: placement.Lie{
			Face: plan.Right, Bands: []geom.Band{band}, Laid: []placement.Laid{{Member: post, Lap: 13.5, Room: 96}},
			Ends: []placement.EndAt{{Laid: 0, Starts: []placement.Start{{Far: true}}}},
		}}
		s := steel.New(placement.Of(&framing.House{Members: []*framing.Member{post}}, p))
		pine, _ := timber.SpeciesOf("southern pine")
		return New(s, Context{Species: pine}).One(p, Upward)
	}
	one := hold(1, 3, 20)
	require.Empty(t, one.Unknown)
	require.Positive(t, one.Value)
	assert.InDelta(t, 2*one.Value*0.9963, hold(2, 3, 20).Value, 1)
	assert.InDelta(t, 2*one.Value*0.8333, hold(2, 2.5, 20).Value, one.Value*0.01)
	assert.InDelta(t, 2*one.Value*0.9963*3/5.25, hold(2, 3, -6.5).Value, 1) // bolts at 6 and 3 in
	near := hold(2, 2, 20)
	assert.Zero(t, near.Value)
	assert.Contains(t, near.Unknown, "spacing in a row along the grain")
}

// wetAre takes members of some roles as wet; nil leaves the usual ones.
func wetAre(roles []plan.Role) Damp {
	if roles == nil {
		return nil
	}
	return &framing.House{Plan: &plan.Plan{Loads: plan.Loads{Wet: roles}}}
}

// A pile stands wet unless the plan says otherwise: CM 0.7 across a nail's shank
// (NDS 2018 Table 11.3.3, transcribed), and 0.25 on one drawn out of wood that was
// dry when it was nailed. A list of the plan's own stands for the usual one.
func TestWetWoodHoldsLess(t *testing.T) {
	pine, _ := timber.SpeciesOf("southern pine")
	of := func(role plan.Role, wet []plan.Role, force geom.Vec3) float64 {
		m := upright(role, geom.Vec3{}, geom.Vec3{X: 9.25, Y: 9.25, Z: 96})
		p := geom.Plate{A: geom.Vec3{X: 4}, B: geom.Vec3{X: 4, Z: 30}, N: geom.Vec3{Y: -1}, Width: 1.375, Thickness: 0.0538}
		return Fastening{Species: pine, Wet: wetAre(wet)}.Of(driven(t, steel.NewWood([]*framing.Member{m}), strapOf("10d"), p, 9, 12), m, force).Value
	}
	up, out := geom.Vec3{Z: 1}, geom.Vec3{Y: -1}
	dry := of(plan.Post, nil, up)
	assert.InDelta(t, 0.7*dry, of(plan.Pile, nil, up), 1e-9)
	assert.InDelta(t, 0.7*dry, of(plan.GirderBeam, nil, up), 1e-9)
	assert.InDelta(t, dry, of(plan.GirderBeam, []plan.Role{plan.Pile}, up), 1e-9)
	assert.InDelta(t, 0.7*dry, of(plan.Post, []plan.Role{plan.Post}, up), 1e-9)
	assert.InDelta(t, dry, of(plan.Pile, []plan.Role{}, up), 1e-9)
	assert.InDelta(t, 0.25*of(plan.Post, nil, out), of(plan.Pile, nil, out), 1e-9)
}

// A nail whose shank is nearer to the wood's edge than its own diameter is taken
// to split out: it holds nothing and is named.
func TestANailAtTheEdgeHoldsNothing(t *testing.T) {
	pine, _ := timber.SpeciesOf("southern pine")
	stud := upright(plan.Stud, geom.Vec3{}, geom.Vec3{X: 1.5, Y: 5.5, Z: 96})
	w := steel.NewWood([]*framing.Member{stud})
	at := func(x float64) Held {
		p := geom.Plate{A: geom.Vec3{X: x}, B: geom.Vec3{X: x, Z: 30}, N: geom.Vec3{Y: -1}, Width: 1.375, Thickness: 0.0538}
		return Fastening{Species: pine}.Of(driven(t, w, strapOf("10d x 1 1/2"), p, 3, 6), stud, geom.Vec3{Z: 1})
	}
	assert.Zero(t, at(0.147).Value)
	assert.Equal(t, 2, at(0.147).None)
	assert.Contains(t, at(0.147).Why, "its own diameter")
	assert.Positive(t, at(0.149).Value)
}
