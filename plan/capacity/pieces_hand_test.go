package capacity

import (
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

// Fc perpendicular of southern pine is 565 psi (from memory): 8.629 in² under a
// washer bear 4,875.4 lb on a header, 0.67 of it, 3,266.5, on a girder, which is
// wet; where the plan says that headers are wet, they are.
func TestAWasherBearsLessOnWetWood(t *testing.T) {
	pine, _ := timber.SpeciesOf("southern pine")
	bears := func(r plan.Role, wet ...plan.Role) Term {
		a := New(steel.New(&placement.Placement{House: &framing.House{}}), Context{Species: pine, Wet: wetAre(wet)})
		return a.washer(steel.Bearing{Member: &framing.Member{Role: r}, Area: 8.629})
	}
	assert.InDelta(t, 4875.4, bears(plan.Header).Value, 0.05)
	assert.NotContains(t, bears(plan.Header).Text, "wet")
	assert.InDelta(t, 3266.5, bears(plan.GirderBeam).Value, 0.05)
	assert.Contains(t, bears(plan.GirderBeam).Text, "CM 0.67 wet")
	assert.InDelta(t, 3266.5, bears(plan.Header, plan.Header).Value, 0.05)
	assert.InDelta(t, 4875.4, bears(plan.GirderBeam, plan.Header).Value, 0.05)
}

// NDS 2018 12.3.1 (transcribed), southern pine G 0.55, bolt 3/4 in: Fe along the
// grain 11,200 x 0.55 = 6,150, across 6,100 x 0.55^1.45 / sqrt 0.75 = 2,950, Re
// 2.0847; Fyb 45,000; load at 90 degrees, Rd 4 in modes III and IV. Girder of 3 in:
// k3 = -1 + sqrt(2 x 3.0847/2.0847 + 2 x 45,000 x 4.0847 x 0.5625 / (3 x 6,150 x
// 9)) = 1.0505, IIIs = 1.0505 x 0.75 x 3 x 6,150 / (4.0847 x 4) = 889.7 lb. Girder
// of 4 1/2: IIIs 1,110.6, IV = 0.5625/4 x sqrt(2 x 6,150 x 45,000 / (3 x 3.0847)) =
// 1,087.6 lb. Times 1.6 and 0.7.
func TestABoltAcrossGirderAndPileByHand(t *testing.T) {
	pine, _ := timber.SpeciesOf("southern pine")
	it := plan.Item{Mark: "b", Kind: "anchor bolt", Length: 16, Rod: 0.75, Washer: 3}
	for _, c := range []struct {
		ply  int
		role plan.Role
		pile float64
		want float64
		says string
	}{
		{2, plan.GirderBeam, 0, 996.5, "girder (3.00 in, Fe 2950) and pile (8.00 in, Fe 6150)"},
		{3, plan.GirderBeam, 9.5, 1218.1, "girder (4.50 in, Fe 2950) and pile (9.50 in, Fe 6150)"},
		{3, plan.Beam, 9.5, 996.5, "girder (3.00 in"}, // no girder is named: 3 in is taken
	} {
		p := pieceOf(t, it, plan.GirderPile, "through")
		p.Joint.Members[0] = &framing.Member{Role: c.role, Section: plan.Lumber{Ply: c.ply, Breadth: 1.5, Depth: 11.25}}
		a := New(steel.New(&placement.Placement{House: &framing.House{}}), Context{Species: pine, Pile: plan.Lumber{Ply: 1, Breadth: c.pile, Depth: c.pile}})
		got := a.One(p, Upward)
		assert.InDelta(t, c.want, got.Value, 0.7, "%+v", c)
		assert.Contains(t, got.Terms[0].Text, c.says)
	}
}

// Which values are not the maker's: those computed for bent bodies, not for
// straps, and none that the maker gives.
func TestWhichValuesAreStarred(t *testing.T) {
	nails := func(part string, parts int) []plan.Fasteners {
		return []plan.Fasteners{{Part: part, Nail: "10d x 1 1/2", Count: 14, Parts: parts}}
	}
	clip := plan.Item{Mark: "c", Kind: "clip", Gauge: "17 ga", Fasteners: nails("to plate", 1)}
	made := clip
	made.Load = plan.Load{Uplift: 523, Source: "invented sheet"}
	pair := plan.Item{Mark: "h", Kind: "hold-down pair", Length: 13.625, Width: 3.125, Gauge: "9 ga", Rod: 0.5, Standoff: 1.625, Center: 1.4375, Fasteners: nails("each body", 2)}
	strap := plan.Item{Mark: "s", Kind: "strap", Length: 37.25, Width: 1.875, Gauge: "19 ga", Fasteners: nails("each end", 2)}
	for _, c := range []struct {
		name string
		item plan.Item
		kind plan.JointKind
		star string
	}{{"clip", clip, plan.RafterPlate, "*"}, {"pair", pair, plan.WallEnd, "*"}, {"strap", strap, plan.StudStud, ""}, {"maker's", made, plan.RafterPlate, ""}} {
		got := pine().One(pieceOf(t, c.item, c.kind, plan.Outside), Upward)
		require.Empty(t, got.Unknown, c.name)
		assert.Equal(t, c.star, got.Starred(), c.name)
		assert.Equal(t, 1, got.Pieces, c.name)
		assert.Equal(t, c.item.Mark, got.Mark, c.name)
	}
	p := pieceOf(t, pair, plan.WallEnd, plan.Outside)
	p.Item.Fasteners, p.Item.Nails = nil, nil
	none := pine().One(p, Upward)
	assert.Contains(t, none.Unknown, "no nails", "a rod between two bodies that nothing holds to the posts")
	assert.Empty(t, none.Starred(), "there is no value to mark")
	assert.Empty(t, (*Capacity)(nil).Starred())
}

// Any one of the maker's loads is a table of loads; with none, the value is
// computed. Uplift and along are each its own way but for a strap, whose larger
// one is taken where its own is none.
func TestWhatTheMakerGives(t *testing.T) {
	item := func(k plan.ItemKind, l plan.Load) *hardware.Item {
		return &hardware.Item{Item: &plan.Item{Load: l}, Kind: hardware.KindNamed(k)}
	}
	for _, c := range []struct {
		kind          plan.ItemKind
		up, along, ac float64
		dir           Direction
		given         bool
		want          float64
	}{
		{plan.ClipItem, 0, 0, 0, Upward, false, 0},
		{plan.ClipItem, 500, 0, 0, Upward, true, 500},
		{plan.ClipItem, 500, 300, 0, Upward, true, 500},
		{plan.ClipItem, 500, 300, 0, Endways, true, 300},
		{plan.ClipItem, 0, 300, 0, Upward, true, 0},
		{plan.ClipItem, 0, 0, 200, Endways, true, 0},
		{plan.StrapItem, 0, 300, 0, Upward, true, 300},
		{plan.StrapItem, 500, 0, 0, Endways, true, 500},
		{plan.StrapItem, 0, 0, 200, Upward, true, 0},
		{plan.StrapItem, 500, 300, 0, Endways, true, 300},
	} {
		got, ok := given(item(c.kind, plan.Load{Uplift: c.up, Along: c.along, Across: c.ac}), c.dir)
		assert.Equal(t, c.given, ok, "%+v", c)
		assert.InDelta(t, c.want, got.Value, 1e-9, "%+v", c)
		assert.Equal(t, c.given && c.want == 0, got.Unknown != "", "%+v", c)
	}
}

// Wood that a nail finds, where the piece lies on nothing in particular: that of
// the first member of its joint, on the face it is on; none known, 1 1/2 in.
func TestWoodOfAJointIsTheFirstMembers(t *testing.T) {
	p := pieceOf(t, strapOf("10d x 1 1/2"), plan.StudStud, plan.Outside)
	p.Joint.Members = append(p.Joint.Members, &framing.Member{Role: plan.Rim, Section: plan.Lumber{Ply: 1, Breadth: 1.5, Depth: 9.25}})
	assert.Equal(t, 5.5, behindSteel(p), "not of the rim, which comes second")
	p.Joint.Members = nil
	assert.Equal(t, 1.5, behindSteel(p))
}

// Sheathing is told where the nails pass it, on the outside of an exterior wall
// by steel that goes on after it, and nowhere else.
func TestSheathingIsTold(t *testing.T) {
	for _, c := range []struct {
		phase    plan.Phase
		face     plan.Face
		exterior bool
		want     bool
	}{
		{plan.AfterSheathing, plan.Outside, true, true},
		{plan.AfterSheathing, plan.Inside, true, false},
		{plan.AfterSheathing, plan.Outside, false, false},
		{plan.BeforeSheathing, plan.Outside, true, false},
	} {
		it := strapOf("10d x 1 1/2")
		it.Phase = c.phase
		p := pieceOf(t, it, plan.StudStud, c.face)
		p.Joint.Wall = &plan.Wall{Exterior: c.exterior}
		text := pine().One(p, Upward).Terms[0].Text
		assert.Equal(t, c.want, pine().panel(p) == 7.0/16, "%+v", c)
		if c.want {
			assert.Contains(t, text, "behind 7/16 in of sheathing, assumed, which is counted as nothing")
		} else {
			assert.NotContains(t, text, "sheathing")
		}
	}
	p := pieceOf(t, strapOf("10d x 1 1/2"), plan.RafterRidge, plan.Outside)
	p.Item.Phase = nil
	assert.Zero(t, pine().panel(p), "off the walls there is no sheathing")
}

// A screw by its size has the root 0.75 of it, and bends as a nail of the root:
// 0.25 in is 0.1875, Fyb 80,000 psi to 0.236 (NDS 2018 Table I1, as
// timber.BendingYield has it); 0.242 as a size is 0.1815.
func TestTheRootOfAScrewBySize(t *testing.T) {
	f, err := fastener(hardware.Nail{Name: "screw 0.25 x 3", Diameter: 0.25, Length: 3})
	require.NoError(t, err)
	assert.InDelta(t, 0.1875, f.Root, 1e-9)
	assert.InDelta(t, 80_000, f.Fyb, 1e-9)
	assert.InDelta(t, 3, f.Length, 1e-9)
}

// strapBody is a strap on a 5 1/2 in post, nailed at places along it and off its
// middle, in.
func strapBody(t *testing.T, width float64, holes ...[2]float64) (*Allowables, *steel.Body) {
	post := upright(plan.Post, geom.Vec3{}, geom.Vec3{X: 5.5, Y: 5.5, Z: 96})
	it := strapOf("10d x 1 1/2")
	it.Width = width
	p := geom.Plate{A: geom.Vec3{X: 2.75}, B: geom.Vec3{X: 2.75, Z: 30}, N: geom.Vec3{Y: -1}, Width: width, Thickness: 0.0538}
	w := steel.NewWood([]*framing.Member{post})
	b := driven(t, w, it, p)
	for _, h := range holes {
		f := w.Drive(p, p.At(h[0], h[1]), 1.5)
		f.Diameter = 0.148
		b.Fasteners = append(b.Fasteners, f)
	}
	return pine(), b
}

// A strap 2 in wide of 17 gauge, 0.04968 in for strength: gross 2 x 0.04968 x
// 33,000/1.67 = 1,963 lb; through one hole of 0.17 (2 - 0.17) x 0.04968 x 45,000/2
// = 2,045; through two in a row (2 - 0.34) x 0.04968 x 22,500 = 1,856 lb (AISI
// S100-16 D2, D3), whether they are the first row or the last.
func TestAStrapIsWeakestAtItsWidestRow(t *testing.T) {
	for name, holes := range map[string][][2]float64{
		"first": {{3, -0.5}, {3, 0.5}, {9, 0}},
		"last":  {{3, 0}, {9, -0.5}, {9, 0.5}},
	} {
		a, b := strapBody(t, 2, holes...)
		c := Capacity{Value: 1e9}
		a.sectionTerm(&c, b)
		require.Empty(t, c.Unknown, name)
		require.Len(t, c.Terms, 1, name)
		assert.InDelta(t, 1856, c.Value, 1, name)
		assert.Contains(t, c.Terms[0].Text, "2 holes", name)
		assert.Equal(t, "strap, net rupture", c.Governs)
	}
	a, b := strapBody(t, 2)
	c := Capacity{Value: 1e9}
	a.sectionTerm(&c, b)
	assert.Empty(t, c.Terms, "without holes there is no section to look at")
	a, b = strapBody(t, 2, [2]float64{3, 0.95})
	a.sectionTerm(&c, b)
	assert.Contains(t, c.Unknown, "breaks the edge")
	c = Capacity{Value: 1e9, Source: "maker's value: invented sheet"}
	a.sectionTerm(&c, b)
	assert.Empty(t, c.Unknown, "of the maker's own strap his value tells")
}
