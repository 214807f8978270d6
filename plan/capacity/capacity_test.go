package capacity

import (
	"testing"

	"galewright/plan"
	"galewright/plan/framing"
	"galewright/plan/hardware"
	"galewright/plan/placement"
	"galewright/plan/steel"
	"galewright/plan/timber"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"
)

// pieceOf makes one piece of an item at a joint of the kind.
func pieceOf(t *testing.T, it plan.Item, k plan.JointKind, face plan.Face) *placement.Piece {
	c, ds := hardware.New([]*plan.Item{&it})
	require.False(t, ds.Errors(), "%v", ds)
	stud := &framing.Member{Role: plan.Stud, Wall: &plan.Wall{}, Section: plan.Lumber{Ply: 1, Breadth: 1.5, Depth: 5.5}}
	return &placement.Piece{Item: c.Items[0], Lie: placement.Lie{Face: face}, Joint: &framing.Joint{Kind: k, Members: []*framing.Member{stud}}}
}

// pine holds pieces of no house in southern pine.
func pine() *Allowables {
	s, _ := timber.SpeciesOf("southern pine")
	return New(steel.New(&placement.Placement{House: &framing.House{}}), Context{Species: s})
}

func TestCapacityOfPieces(t *testing.T) {
	nails := func(nail string, count, parts, rows int) []plan.Fasteners {
		return []plan.Fasteners{{Part: "each end", Nail: nail, Count: count, Parts: parts, Rows: rows}}
	}
	// Nail values by the equations that the timber package checks against the
	// published tables; strap limits are AISI S100-16 on 19 gauge base steel, 1.875 in
	// wide: gross 1.875 x 0.0386 x 33,000/1.67 = 1,430 lb; net with two holes of
	// 0.17 in (1.875 - 0.34) x 0.0386 x 45,000/2 = 1,333 lb, with one 1,481 lb. 19
	// gauge is 0.0418 in, and 0.1242/0.1345 of it, as of 10 gauge, is 0.0386.
	for _, c := range []struct {
		name    string
		item    plan.Item
		kind    plan.JointKind
		want    float64
		governs string
	}{
		{
			"few nails govern a strap",
			plan.Item{Mark: "s", Kind: "strap", Length: 37.25, Width: 1.875, Gauge: "19 ga", Fasteners: nails("10d x 1 1/2", 4, 2, 1)},
			plan.StudStud, 4 * 123.5 * 1.6, "nails each end, mode IIIs",
		},
		{
			"the net section governs",
			plan.Item{Mark: "s", Kind: "strap", Length: 61.5, Width: 1.875, Gauge: "19 ga", Fasteners: nails("10d x 1 1/2", 14, 2, 2)},
			plan.StudStud, 1333, "strap, net rupture",
		},
		{
			"the gross section governs",
			plan.Item{Mark: "s", Kind: "strap", Length: 61.5, Width: 1.875, Gauge: "19 ga", Fasteners: nails("10d x 1 1/2", 14, 2, 1)},
			plan.StudStud, 1430, "strap, gross yielding",
		},
		{
			"the weaker leg of a clip",
			plan.Item{Mark: "c", Kind: "clip", Gauge: "17 ga", Fasteners: []plan.Fasteners{
				{Part: "to rafter", Nail: "8d x 1 1/2", Count: 4, Parts: 1}, {Part: "to plate", Nail: "8d x 1 1/2", Count: 7, Parts: 1},
			}},
			plan.RafterPlate, 4 * 102.92 * 1.6, "nails to rafter, mode IIIs",
		},
		// No. 12 wood screws, D 0.216, root 0.171 (NDS 2018 Table L3), Fyb 80,000:
		// KD 10 x 0.171 + 0.5 = 2.21; through 13 gauge, 0.9234 x 0.0897 = 0.0828
		// in, re 5,550/61,850 = 0.0897, k3 = -1 + sqrt(2 x 1.0897/0.0897 + 2 x 80,000 x
		// 2.0897 x 0.171² / (3 x 5,550 x 0.0828²)) = 9.482; Z = 9.482 x 0.171 x 0.0828 x
		// 5,550 / (2.0897 x 2.21) = 161.4 lb.
		{
			"the screws of a hold-down",
			plan.Item{
				Mark: "h", Kind: "hold-down", Length: 13.625, Width: 2.375, Gauge: "13 ga", Rod: 0.875, Standoff: 1.625, Center: 1.4375,
				Fasteners: []plan.Fasteners{{Part: "to post", Nail: "screw No. 12 x 1 1/2", Count: 15, Parts: 1}},
			},
			plan.WallEnd, 15 * 161.4 * 1.6, "screws to post, mode IIIs",
		},
		{"the maker's value beats all", plan.Item{
			Mark: "s", Kind: "strap", Length: 37.25, Width: 1.875, Gauge: "19 ga", Fasteners: nails("10d x 1 1/2", 4, 2, 1),
			Load: plan.Load{Uplift: 683, Source: "invented sheet"},
		}, plan.StudStud, 683, "maker's allowable load, uplift"},
		{"the rod of a pair", plan.Item{
			Mark: "h", Kind: "hold-down pair", Length: 13.625, Width: 3.125, Gauge: "9 ga", Rod: 0.5, Standoff: 1.625, Center: 1.4375,
			Fasteners: []plan.Fasteners{{Part: "each body", Nail: "10d common", Count: 41, Parts: 2}},
		}, plan.WallEnd, 4271, "rod tension"},
	} {
		got := pine().One(pieceOf(t, c.item, c.kind, "outside"), Upward)
		require.Empty(t, got.Unknown, c.name)
		assert.InDelta(t, c.want, got.Value, 3, c.name)
		assert.Equal(t, c.governs, got.Governs, c.name)
		assert.NotEmpty(t, got.Terms, c.name)
	}
}

func TestCapacityUnknownIsSaid(t *testing.T) {
	for name, c := range map[string]struct {
		item plan.Item
		why  string
	}{
		"no steel":     {plan.Item{Mark: "c", Kind: "clip", Fasteners: []plan.Fasteners{{Part: "to plate", Nail: "8d x 1 1/2", Count: 7, Parts: 1}}}, "no thickness"},
		"no nails":     {plan.Item{Mark: "c", Kind: "clip", Gauge: "17 ga"}, "neither"},
		"short nail":   {plan.Item{Mark: "c", Kind: "clip", Gauge: "17 ga", Fasteners: []plan.Fasteners{{Part: "to plate", Nail: "0.148 x 3/4", Count: 7, Parts: 1}}}, "6 diameters"},
		"unknown nail": {plan.Item{Mark: "c", Kind: "clip", Gauge: "17 ga", Fasteners: []plan.Fasteners{{Part: "to plate", Nail: "0.06 x 1 1/2", Count: 7, Parts: 1}}}, "bending yield"},
	} {
		catalog, _ := hardware.New([]*plan.Item{&c.item})
		require.Len(t, catalog.Items, 1, name)
		p := &placement.Piece{Item: catalog.Items[0], Joint: &framing.Joint{Kind: plan.RafterPlate}}
		got := pine().One(p, Upward)
		assert.Contains(t, got.Unknown, c.why, name)
		assert.Zero(t, got.Value, name)
	}
}

func TestBoltAcrossGirderAndPile(t *testing.T) {
	// The girder's grain lies across the load: its bearing is the smaller, and
	// Kθ is 1.25, so the bolt is worth less than one along the grain of both.
	it := plan.Item{Mark: "b", Kind: "anchor bolt", Length: 16, Rod: 0.75, Washer: 3}
	got := pine().One(pieceOf(t, it, plan.GirderPile, "through"), Upward)
	require.Empty(t, got.Unknown)
	assert.Contains(t, got.Governs, "across the grain")
	along := timber.Dowel{D: 0.75, Fyb: boltYield, Fem: timber.DowelBearing(0.55, 0.75, 0), Fes: timber.DowelBearing(0.55, 0.75, 0), Lm: 8, Ls: 3}
	assert.Less(t, got.Value, along.SingleShear().Z*1.6)
	assert.Positive(t, got.Value)
	// At a sill plate the same bolt pulls: 0.75 x 58,000 psi x 0.4418 in² / 2. What
	// its washer bears on is known only where it is.
	got = pine().One(pieceOf(t, it, plan.StudBase, "through"), Upward)
	assert.Equal(t, "rod tension", got.Governs)
	assert.InDelta(t, 9609, got.Value, 1)
}

func TestBoltsOfAHoldDown(t *testing.T) {
	it := plan.Item{
		Mark: "h", Kind: "hold-down", Length: 13.625, Width: 3.125, Gauge: "9 ga", Rod: 1, Standoff: 1.625, Center: 1.4375,
		Fasteners: []plan.Fasteners{{Part: "to post", Nail: "bolt 3/4 x 6", Count: 2, Parts: 1}},
	}
	got := pine().One(pieceOf(t, it, plan.WallEnd, "left"), Upward)
	require.Empty(t, got.Unknown)
	assert.Contains(t, got.Governs, "bolts to post")
	more := it
	more.Fasteners = []plan.Fasteners{{Part: "to post", Nail: "bolt 3/4 x 6", Count: 3, Parts: 1}}
	assert.InDelta(t, 1.5, pine().One(pieceOf(t, more, plan.WallEnd, "left"), Upward).Value/got.Value, 1e-9)
}

func TestBoltThroughASillHoldsNoStud(t *testing.T) {
	// A bolt holds the plate down; the stud hangs on its clip. The stronger of
	// the two is not the capacity of the joint: they stand in a row.
	bolt := pieceOf(t, plan.Item{Mark: "bolt", Kind: "anchor bolt", Length: 12, Rod: 0.625, Washer: 3}, plan.StudBase, "through")
	clip := pieceOf(t, plan.Item{Mark: "clip", Kind: "clip", Gauge: "19 ga", Fasteners: []plan.Fasteners{
		{Part: "to stud", Nail: "8d x 1 1/2", Count: 4, Parts: 1}, {Part: "to plate", Nail: "8d x 1 1/2", Count: 7, Parts: 1},
	}}, plan.StudBase, "left")
	for _, k := range []plan.JointKind{plan.StudBase, plan.WallEnd} {
		j := &framing.Joint{Kind: k}
		assert.False(t, holdsMember(bolt, j), k)
		assert.True(t, holdsMember(clip, j), k)
	}
	assert.True(t, holdsMember(bolt, &framing.Joint{Kind: plan.GirderPile}), "there it crosses both")
}

func TestNoNailsNoStrap(t *testing.T) {
	// Steel alone holds nothing to wood.
	for _, kind := range []plan.ItemKind{plan.StrapItem, plan.LongStrapItem} {
		p := pieceOf(t, plan.Item{
			Mark: "s", Kind: kind, Length: 37.25, Width: 1.875, Gauge: "19 ga",
			Fasteners: []plan.Fasteners{{Part: "each end", Nail: "10d x 1 1/2", Count: 4, Parts: 2}},
		}, plan.StudStud, "outside")
		p.Item.Fasteners, p.Item.Nails = nil, nil
		got := pine().One(p, Upward)
		assert.Contains(t, got.Unknown, "no nails", kind)
		assert.Zero(t, got.Value, kind)
	}
}

func TestMakersZeroIsZero(t *testing.T) {
	// A maker who gives a load sideways and none upward says that the piece
	// holds none upward; nails are not computed past him.
	clip := plan.Item{
		Mark: "c", Kind: "clip", Gauge: "17 ga", Fasteners: []plan.Fasteners{{Part: "to plate", Nail: "8d x 1 1/2", Count: 7, Parts: 1}},
		Load: plan.Load{Across: 187, Source: "invented sheet"},
	}
	assert.NotEmpty(t, pine().One(pieceOf(t, clip, plan.RafterPlate, "left"), Upward).Unknown)
	clip.Load = plan.Load{Uplift: 523, Source: "invented sheet"}
	assert.NotEmpty(t, pine().One(pieceOf(t, clip, plan.RafterRidge, "left"), Endways).Unknown, "uplift of a clip is no tension along the rafter")
	strap := plan.Item{
		Mark: "s", Kind: "ridge strap", Length: 23.25, Width: 1.375, Gauge: "19 ga", Load: plan.Load{Uplift: 437, Source: "invented sheet"},
		Fasteners: []plan.Fasteners{{Part: "each end", Nail: "10d x 1 1/2", Count: 4, Parts: 2}},
	}
	assert.Equal(t, 437.0, pine().One(pieceOf(t, strap, plan.RafterRidge, "top"), Endways).Value, "a strap pulls along itself")
	strap.Load = plan.Load{Pos: plan.Pos{Line: 7}, Source: "invented sheet"}
	assert.NotEmpty(t, pine().One(pieceOf(t, strap, plan.RafterRidge, "top"), Endways).Unknown, "a load of 0 lb is a load")
}

func TestSheathingTakesNailLength(t *testing.T) {
	// A strap over 7/16 in of sheathing: a nail of 1-1/2 in is left with 1.01
	// in of wood, a longer one is not the worse for it.
	strap := func(phase plan.Phase, nail string) float64 {
		it := plan.Item{
			Mark: "s", Kind: "strap", Length: 37.25, Width: 3.125, Gauge: "9 ga", Phase: phase,
			Fasteners: []plan.Fasteners{{Part: "each end", Nail: nail, Count: 8, Parts: 2}},
		}
		p := pieceOf(t, it, plan.StudStud, "outside")
		p.Joint.Wall = &plan.Wall{Exterior: true}
		c := pine().One(p, Upward)
		require.Empty(t, c.Unknown)
		return c.Value
	}
	assert.Less(t, strap("after sheathing", "10d x 1 1/2"), strap("before sheathing", "10d x 1 1/2"))
	assert.InDelta(t, strap("after sheathing", "16d"), strap("before sheathing", "16d"), 1e-9)
}

func TestStaggeredNailsAllCount(t *testing.T) {
	// AISI S100-16 D3 asks for the worst chain of holes; with no pitch given the
	// zigzag is taken as straight.
	strap := func(stagger bool) float64 {
		return pine().One(pieceOf(t, plan.Item{
			Mark: "s", Kind: "long strap", Length: 61.5, Width: 1.875, Gauge: "15 ga",
			Fasteners: []plan.Fasteners{{Part: "each end", Nail: "10d x 1 1/2", Count: 40, Parts: 2, Rows: 2, Stagger: stagger}},
		}, plan.StudStud, "outside"), Upward).Value
	}
	assert.Equal(t, strap(false), strap(true))
}

func TestThinnestMemberGovernsTheNails(t *testing.T) {
	// A strap from a stud 5-1/2 in deep down to a rim of 1-1/2 in: a nail of
	// 3-1/2 in finds 1-1/2 in at that end.
	p := pieceOf(t, plan.Item{
		Mark: "s", Kind: "strap", Length: 37.25, Width: 2.125, Gauge: "9 ga",
		Fasteners: []plan.Fasteners{{Part: "each end", Nail: "16d", Count: 8, Parts: 2}},
	}, plan.StudBase, "outside")
	stud := p.Joint.Members[0]
	rim := &framing.Member{Role: plan.Rim, Section: plan.Lumber{Ply: 1, Breadth: 1.5, Depth: 11.25}}
	p.Laid = []placement.Laid{{Member: stud}, {Member: rim}}
	assert.Equal(t, 1.5, behindSteel(p))
	p.Laid = []placement.Laid{{Member: stud}, {Member: stud}}
	assert.Equal(t, 5.5, behindSteel(p))
}

func TestBoltsThroughABeamBearAcrossItsGrain(t *testing.T) {
	// NDS 2018 Table 12.3.3 footnote 2 (transcribed): a bolt bears less across the
	// grain than along it.
	held := func(part string) float64 {
		c := pine().One(pieceOf(t, plan.Item{
			Mark: "p", Kind: "post cap", Length: 10.625, Width: 5.25, Gauge: "9 ga",
			Fasteners: []plan.Fasteners{{Part: part, Nail: "bolt 3/4 x 6", Count: 3, Parts: 1}},
		}, plan.PostCap, ""), Upward)
		require.Empty(t, c.Unknown)
		return c.Value
	}
	assert.Less(t, held("to beam"), 0.85*held("to post"))
}

func TestBoltsOfTwoGirdersAreTwo(t *testing.T) {
	// The bolt's side member is the girder: a thicker one bears more.
	it := plan.Item{Mark: "b", Kind: "anchor bolt", Length: 16, Rod: 0.75, Washer: 3}
	thin, thick := pieceOf(t, it, plan.GirderPile, "through"), pieceOf(t, it, plan.GirderPile, "through")
	thick.Item = thin.Item
	for p, ply := range map[*placement.Piece]int{thin: 2, thick: 4} {
		p.Joint.Members[0] = &framing.Member{Role: plan.GirderBeam, Section: plan.Lumber{Ply: ply, Breadth: 1.5, Depth: 11.25}}
	}
	s, _ := timber.SpeciesOf("southern pine")
	a := New(steel.New(&placement.Placement{House: &framing.House{}, Pieces: []*placement.Piece{thin, thick}}), Context{Species: s})
	assert.Contains(t, a.One(thin, Upward).Terms[0].Text, "girder (3.00 in")
	assert.Contains(t, a.One(thick, Upward).Terms[0].Text, "girder (6.00 in")
}

// Stainless sheet yields sooner. 17 gauge has no structural sheet: 0.0538 x
// 0.1242 / 0.1345 = 0.04968 in. 1.375 x 0.04968 x 30,000 / 1.67 (AISI S100-16
// D2, Fy from memory) is 1,227 lb, at 33 ksi 1,350 lb.
func TestAStainlessStrapYieldsSooner(t *testing.T) {
	of := func(c plan.Coating) (s string) {
		var got Capacity
		it := strapOf("10d x 1 1/2")
		it.Coating = c
		p := pieceOf(t, it, plan.StudStud, plan.Outside)
		got.Value = 1e9
		pine().steelTerms(&got, p.Item)
		return got.Terms[0].Text
	}
	assert.Contains(t, of(plan.Stainless304), "of stainless steel, Fy 30 ksi from memory")
	assert.Contains(t, of(plan.Stainless304), "gross yielding 1227")
	assert.Contains(t, of(plan.G185), "gross yielding 1350")
}
