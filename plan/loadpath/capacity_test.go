package loadpath

import (
	"testing"

	"galewright/plan"
	"galewright/plan/framing"
	"galewright/plan/hardware"
	"galewright/plan/placement"
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

// pine is an analysis that needs no house.
func pine() *analysis {
	s, _ := timber.SpeciesOf("southern pine")
	return &analysis{species: s, plan: &plan.Plan{}, capacities: map[capacityKey]Capacity{}}
}

func TestCapacityOfPieces(t *testing.T) {
	nails := func(nail string, count, parts, rows int) []plan.Fasteners {
		return []plan.Fasteners{{Part: "each end", Nail: nail, Count: count, Parts: parts, Rows: rows}}
	}
	// Nail values by the equations that the timber package checks against the
	// published tables; strap limits are AISI S100-16 on 19 gauge base steel, 1.875 in
	// wide: gross 1.875 x 0.0418 x 33,000/1.67 = 1,549 lb; net with two holes of
	// 0.17 in (1.875 - 0.34) x 0.0418 x 45,000/2 = 1,444 lb, with one 1,604 lb.
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
			plan.StudStud, 1444, "strap, net rupture",
		},
		{
			"the gross section governs",
			plan.Item{Mark: "s", Kind: "strap", Length: 61.5, Width: 1.875, Gauge: "19 ga", Fasteners: nails("10d x 1 1/2", 14, 2, 1)},
			plan.StudStud, 1549, "strap, gross yielding",
		},
		{
			"the weaker leg of a clip",
			plan.Item{Mark: "c", Kind: "clip", Gauge: "17 ga", Fasteners: []plan.Fasteners{
				{Part: "to rafter", Nail: "8d x 1 1/2", Count: 4, Parts: 1}, {Part: "to plate", Nail: "8d x 1 1/2", Count: 7, Parts: 1},
			}},
			plan.RafterPlate, 4 * 103.4 * 1.6, "nails to rafter, mode IIIs",
		},
		// No. 12 wood screws, D 0.216, root 0.171 (NDS 2018 Table L3), Fyb 80,000:
		// KD 10 x 0.171 + 0.5 = 2.21; through 13 gauge, 0.0897 in, re 5,550/61,850
		// = 0.0897, k3 = -1 + sqrt(2 x 1.0897/0.0897 + 2 x 80,000 x 2.0897 x 0.171²
		// / (3 x 5,550 x 0.0897²)) = 8.862; Z = 8.862 x 0.171 x 0.0897 x 5,550 /
		// (2.0897 x 2.21) = 163.4 lb.
		{
			"the screws of a hold-down",
			plan.Item{
				Mark: "h", Kind: "hold-down", Length: 13.625, Width: 2.375, Gauge: "13 ga", Rod: 0.875, Standoff: 1.625, Center: 1.4375,
				Fasteners: []plan.Fasteners{{Part: "to post", Nail: "screw No. 12 x 1 1/2", Count: 15, Parts: 1}},
			},
			plan.WallEnd, 15 * 163.4 * 1.6, "screws to post, mode IIIs",
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
		got := pine().pieceCapacity(pieceOf(t, c.item, c.kind, "outside"), upward)
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
		got := pine().pieceCapacity(p, upward)
		assert.Contains(t, got.Unknown, c.why, name)
		assert.Zero(t, got.Value, name)
		l := &Link{Demand: 100}
		l.close(&got)
		assert.Contains(t, l.Gap, "no capacity known", name)
	}
}

func TestBoltAcrossGirderAndPile(t *testing.T) {
	// The girder's grain lies across the load: its bearing is the smaller, and
	// Kθ is 1.25, so the bolt is worth less than one along the grain of both.
	it := plan.Item{Mark: "b", Kind: "anchor bolt", Length: 16, Rod: 0.75, Washer: 3}
	got := pine().pieceCapacity(pieceOf(t, it, plan.GirderPile, "through"), upward)
	require.Empty(t, got.Unknown)
	assert.Contains(t, got.Governs, "across the grain")
	along := timber.Dowel{D: 0.75, Fyb: boltYield, Fem: timber.DowelBearing(0.55, 0.75, 0), Fes: timber.DowelBearing(0.55, 0.75, 0), Lm: 8, Ls: 3}
	assert.Less(t, got.Value, along.SingleShear().Z*1.6)
	assert.Positive(t, got.Value)
	// At a sill plate the same bolt pulls: its washer on the wood governs.
	got = pine().pieceCapacity(pieceOf(t, it, plan.StudBase, "through"), upward)
	assert.Equal(t, "bearing under the washer", got.Governs)
}

func TestBoltsOfAHoldDown(t *testing.T) {
	it := plan.Item{
		Mark: "h", Kind: "hold-down", Length: 13.625, Width: 3.125, Gauge: "9 ga", Rod: 1, Standoff: 1.625, Center: 1.4375,
		Fasteners: []plan.Fasteners{{Part: "to post", Nail: "bolt 3/4 x 6", Count: 2, Parts: 1}},
	}
	got := pine().pieceCapacity(pieceOf(t, it, plan.WallEnd, "left"), upward)
	require.Empty(t, got.Unknown)
	assert.Contains(t, got.Governs, "bolts to post")
	more := it
	more.Fasteners = []plan.Fasteners{{Part: "to post", Nail: "bolt 3/4 x 6", Count: 3, Parts: 1}}
	assert.InDelta(t, 1.5, pine().pieceCapacity(pieceOf(t, more, plan.WallEnd, "left"), upward).Value/got.Value, 1e-9)
}

func TestSpliceNailingIsPublished(t *testing.T) {
	// Eight 16d box nails, each Z 0.135 in through 1-1/2 in: IRC 2009
	// or 2012 Table R602.3(1) row 14 (transcribed).
	c := pine().splicedByNails()
	require.NotNil(t, c)
	n, _ := timber.NailOf("16d box")
	z, err := timber.SingleNail(n, timber.Part{Thickness: 1.5, G: 0.55}, timber.Part{Thickness: 1.5, G: 0.55})
	require.NoError(t, err)
	assert.InDelta(t, 8*z.Z*1.6, c.Value, 1e-9)
}

func TestPerforatedWallOfTwoStories(t *testing.T) {
	// SDPWS 2021 4.3.6 (transcribed), a two-story perforated wall worked by
	// hand: 10 ft stories, 40 ft long; 8,000 lb above an
	// opening of 8 x 7 ft, 6,000 lb more above one of 24 x 8 ft.
	wall := func(width, height float64) *Segment {
		s := &Segment{
			Height: 120, Length: 480, Shear: &plan.Shear{From: 0, To: 480, Perforated: true},
			Wall: &plan.Wall{Openings: []*plan.Opening{{Name: "o", At: 240 - width*6, Width: width * 12, Height: height * 12}}},
		}
		s.work()
		require.Empty(t, s.Trouble)
		return s
	}
	up, low := wall(8, 7), wall(24, 8)
	assert.InDelta(t, 0.8197, up.Pierced.Co, 5e-5)
	assert.InDelta(t, 0.5435, low.Pierced.Co, 5e-5)
	low.above = []*Segment{up}
	up.v, low.v = 8000, 14_000
	up.overturn()
	low.overturn()
	assert.InDelta(t, 3050, up.lifts, 0.5)
	assert.InDelta(t, 25_300, low.lifts, 1)
	assert.InDelta(t, 305.0, 8000/(up.Working/12), 0.05)
	assert.InDelta(t, 1610, 14_000/(low.Working/12), 0.5)
}

func TestPerforatedLimits(t *testing.T) {
	narrow := &Segment{
		Height: 120, Length: 120, Shear: &plan.Shear{To: 120, Perforated: true},
		Wall: &plan.Wall{Openings: []*plan.Opening{{Name: "o", At: 20, Width: 80, Height: 84}}},
	}
	narrow.work()
	assert.NotEmpty(t, narrow.Trouble, "20 in beside an opening in a 10 ft wall counts for nothing")
	// SDPWS 2021 4.3.2.3 (transcribed): no more than 2,435 plf nominal.
	strong := &Segment{
		Height: 96, Length: 480, Shear: &plan.Shear{To: 480, Perforated: true}, Wall: &plan.Wall{},
		Unit: timber.UnitShear{Nominal: 2155, Species: 1, Faces: 2, Divisor: 2, Allow: 2155},
	}
	strong.work()
	assert.InDelta(t, 1217.5, strong.Unit.Allow, 1e-9)
	assert.Equal(t, 1.0, strong.Pierced.Co, "no opening, no loss")
	pierced := &Segment{Height: 96, Length: 96, Shear: &plan.Shear{To: 96}, Wall: &plan.Wall{Openings: []*plan.Opening{{Name: "o", At: 30, Width: 30}}}}
	pierced.work()
	assert.Contains(t, pierced.Trouble, "perforated")
}

func TestShearBetweenLinesIsLevered(t *testing.T) {
	// A line above that stands over none goes to the two beside it, by lever.
	up := &ShearLine{At: 30}
	l, r := &ShearLine{At: 0}, &ShearLine{At: 120}
	bringDown(up, []*ShearLine{l, r})
	require.Len(t, l.uppers, 1)
	assert.InDelta(t, 0.75, l.uppers[0].k, 1e-12)
	assert.InDelta(t, 0.25, r.uppers[0].k, 1e-12)
	over := &ShearLine{At: 2}
	bringDown(over, []*ShearLine{l, r})
	assert.True(t, l.uppers[1].straight)
	beyond := &ShearLine{At: 200}
	bringDown(beyond, []*ShearLine{l, r})
	assert.Equal(t, 1.0, r.uppers[1].k)
}
