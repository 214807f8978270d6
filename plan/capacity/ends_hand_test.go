package capacity

import (
	"fmt"
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

// storyStrap is a strap of two rows up the middle of x = 1.5, over the foot of a post of
// 3 in and the tops of what stands below, six nails at each end, three a row.
func storyStrap(t *testing.T, meant *framing.Member, below ...*framing.Member) (*Allowables, *placement.Piece) {
	post := upright(plan.Post, geom.Vec3{Z: 110}, geom.Vec3{X: 3, Y: 5.5, Z: 206})
	it := strapOf("10d x 1 1/2")
	it.Width, it.Fasteners = 2.75, []plan.Fasteners{{Part: "each end", Nail: "10d x 1 1/2", Count: 6, Parts: 2, Rows: 2, Spacing: 2, EndDist: 1}}
	c, ds := hardware.New([]*plan.Item{&it})
	require.False(t, ds.Errors(), "%v", ds)
	band := geom.Band{{A: geom.Vec3{X: 1.5, Z: 88}, B: geom.Vec3{X: 1.5, Z: 118}, N: geom.Vec3{Y: -1}, Width: 2.75, Thickness: 0.0538}}
	p := &placement.Piece{
		Tag: "s", Joint: &framing.Joint{ID: "j", Kind: plan.StudStud, Members: []*framing.Member{post, meant}}, Item: c.Items[0],
		Lie: placement.Lie{
			Face: plan.Outside, Bands: []geom.Band{band}, Laid: []placement.Laid{{Member: post, Lap: 8, Room: 96}, {Member: meant, Lap: 8, Room: 96}},
			Ends: []placement.EndAt{{Laid: 0, Starts: []placement.Start{{Far: true}}}, {Laid: 1, Starts: []placement.Start{{}}}},
		},
	}
	pine, _ := timber.SpeciesOf("southern pine")
	return New(steel.New(placement.Of(&framing.House{Members: append(below, post)}, p)), Context{Species: pine}), p
}

// Nails of an end that go into another member than it is meant for hold nothing of the
// joint, and the member they are in is named. A row on the stud and one on the king beside
// it: half of the end counts. Both on the king, or past the wood: none does.
func TestNailsInAnotherMemberDoNotCount(t *testing.T) {
	stud := func(x0, x1 float64) *framing.Member {
		return upright(plan.Stud, geom.Vec3{X: x0}, geom.Vec3{X: x1, Y: 5.5, Z: 96})
	}
	king := func(x0, x1 float64) *framing.Member {
		return upright(plan.King, geom.Vec3{X: x0}, geom.Vec3{X: x1, Y: 5.5, Z: 96})
	}
	whole := stud(0, 3)
	a, p := storyStrap(t, whole, whole)
	all := a.One(p, Upward)
	require.Empty(t, all.Unknown)
	require.NotContains(t, fmt.Sprint(all.Terms), "nothing")

	left, right := stud(0, 1.5), king(1.5, 3)
	a, p = storyStrap(t, left, left, right)
	half := a.One(p, Upward)
	require.Empty(t, half.Unknown)
	assert.InDelta(t, all.Value/2, half.Value, 1e-9)
	assert.Contains(t, fmt.Sprint(half.Terms), "3 fasteners in the king: nothing")
	assert.Contains(t, fmt.Sprint(half.Terms), "fasteners each end, 3 in the stud")
	assert.Contains(t, half.Governs, "fasteners each end in the stud, mode ")

	a, p = storyStrap(t, left, left)
	half = a.One(p, Upward)
	assert.InDelta(t, all.Value/2, half.Value, 1e-9)
	assert.Contains(t, fmt.Sprint(half.Terms), "3 fasteners in no wood: nothing")

	off := stud(40, 41.5)
	a, p = storyStrap(t, off, off, king(0, 3))
	none := a.One(p, Upward)
	assert.Equal(t, "no fastener each end holds the stud: 6 are in the king", none.Unknown)
	assert.Zero(t, none.Value)
	a, p = storyStrap(t, off, off)
	assert.Equal(t, "no fastener each end holds the stud: 6 are in no wood", a.One(p, Upward).Unknown)
}

// A nail at the stud's edge splits it: of an end's six, the three of the row 0.1 in from
// the edge are for nothing, and it is said.
func TestNailsForNothingAreCounted(t *testing.T) {
	left := upright(plan.Stud, geom.Vec3{X: 0.7125}, geom.Vec3{X: 3, Y: 5.5, Z: 96}) // rows at 0.8125 and 2.1875
	a, p := storyStrap(t, left, left)
	got := a.One(p, Upward)
	require.Empty(t, got.Unknown)
	assert.Contains(t, fmt.Sprint(got.Terms), "fasteners each end, 6 in the stud, 3 of them for nothing")
	assert.Empty(t, idle(0))
	assert.Equal(t, ", 1 of them for nothing", idle(1))
}

// Steel nailed to one member alone ties it to nothing, unless it wraps another, or its
// rod goes on; a collector's strap may lie on one long plate. One end is a seat or foot
// of its own; ends that take no nails, or lie nowhere, are none.
func TestSteelOnOneMemberTiesItToNothing(t *testing.T) {
	stud, plate := &framing.Member{Role: plan.Stud}, &framing.Member{Role: plan.TopPlate}
	for _, c := range []struct {
		name string
		on   []*framing.Member // of each end
		edit func(*steel.Body)
		want *framing.Member
	}{
		{"two ends on two", []*framing.Member{stud, plate}, nil, nil},
		{"two ends on one", []*framing.Member{stud, stud}, nil, stud},
		{"three ends on one", []*framing.Member{stud, stud, stud}, nil, stud},
		{"the last on another", []*framing.Member{stud, stud, plate}, nil, nil},
		{"one end", []*framing.Member{stud}, nil, nil},
		{"it wraps a plate", []*framing.Member{stud, stud}, func(b *steel.Body) { b.Over = []*framing.Member{plate} }, nil},
		{"it has a rod", []*framing.Member{stud, stud}, func(b *steel.Body) { b.Rods = []*steel.Rod{{}} }, nil},
		{"a collector", []*framing.Member{plate, plate}, func(b *steel.Body) { b.Piece.Joint.Kind = plan.Collector }, nil},
		{"the other takes no nails", []*framing.Member{stud, stud, plate}, func(b *steel.Body) { b.Piece.Item.Fasteners[2].Count = 0 }, stud},
		{"only one takes nails", []*framing.Member{stud, stud}, func(b *steel.Body) { b.Piece.Item.Fasteners[1].Count = 0 }, nil},
		{"the other lies nowhere", []*framing.Member{stud, stud, plate}, func(b *steel.Body) { b.Piece.Ends = b.Piece.Ends[:2] }, stud},
		{"nothing lies", []*framing.Member{stud, stud}, func(b *steel.Body) { b.Piece.Ends = nil }, nil},
	} {
		it := &hardware.Item{Item: &plan.Item{}, Kind: hardware.KindNamed(plan.ClipItem)}
		p := &placement.Piece{Item: it, Joint: &framing.Joint{Kind: plan.RafterPlate}}
		for i, m := range c.on {
			it.Fasteners = append(it.Fasteners, plan.Fasteners{Part: "each leg", Count: 3, Parts: 1})
			p.Laid = append(p.Laid, placement.Laid{Member: m})
			p.Ends = append(p.Ends, placement.EndAt{Laid: i})
		}
		b := &steel.Body{Piece: p}
		if c.edit != nil {
			c.edit(b)
		}
		assert.Same(t, c.want, onlyOne(b), c.name)
	}
	stud = upright(plan.Stud, geom.Vec3{}, geom.Vec3{X: 3, Y: 5.5, Z: 206})
	a, p := storyStrap(t, stud, stud)
	p.Laid[0].Member = stud
	c := Capacity{Value: 1e9}
	a.endTerms(&c, a.steel.Body(p), Upward)
	assert.Equal(t, "all its ends are for the stud: it ties that to nothing", c.Unknown)
}

// A bolt across girder and pile works in shear: it must pass both, washers bear nothing
// of the pull, and its value is that of TestABoltAcrossGirderAndPileByHand, 996.5 lb. Beside
// the pile it holds nothing, and what it goes through is told.
func TestABoltThatMissesThePile(t *testing.T) {
	c, ds := hardware.New([]*plan.Item{{Mark: "b", Kind: plan.AnchorBoltItem, Length: 14, Rod: 0.75, Washer: 3}})
	require.False(t, ds.Errors(), "%v", ds)
	hold := func(x float64, kind plan.JointKind) Capacity {
		girder := upright(plan.GirderBeam, geom.Vec3{X: -60}, geom.Vec3{X: 60, Y: 3, Z: 11.25})
		girder.A, girder.B = geom.Vec3{X: -60, Y: 1.5, Z: 5.6}, geom.Vec3{X: 60, Y: 1.5, Z: 5.6}
		girder.Section = plan.Lumber{Ply: 2, Breadth: 1.5, Depth: 11.25}
		pile := upright(plan.Pile, geom.Vec3{X: -4, Y: 3, Z: -90}, geom.Vec3{X: 4, Y: 11, Z: 11.25})
		post := upright(plan.Post, geom.Vec3{X: 16, Y: 3, Z: -90}, geom.Vec3{X: 24, Y: 11, Z: 11.25})
		p := &placement.Piece{
			Tag: "b", Joint: &framing.Joint{ID: "j", Kind: kind, Members: []*framing.Member{girder, pile}}, Item: c.Items[0],
			Lie: placement.Lie{Face: plan.Through, Rod: &placement.Axis{A: geom.Vec3{X: x, Y: -0.25, Z: 6}, B: geom.Vec3{X: x, Y: 13.75, Z: 6}}},
		}
		pine, _ := timber.SpeciesOf("southern pine")
		return New(steel.New(placement.Of(&framing.House{Members: []*framing.Member{girder, pile, post}}, p)), Context{Species: pine}).One(p, Upward)
	}
	got := hold(0, plan.GirderPile)
	require.Empty(t, got.Unknown)
	assert.InDelta(t, 996.5, got.Value, 0.7)
	assert.NotContains(t, fmt.Sprint(got.Terms), "washer", "there it does not pull")
	got = hold(20, plan.GirderPile)
	assert.Contains(t, got.Unknown, "the bolt does not pass the pile; it goes through: ")
	assert.Contains(t, got.Unknown, "post")
	assert.Zero(t, got.Value)
	// Of a ledger's bolt, which pulls, the washers bear, on 9 in² less pi/4 x 0.8125² = 0.5185:
	// on dry pine 8.4815 x 565 psi = 4,792 lb, on the girder, wet, 0.67 of it, 3,211.
	got = hold(20, plan.LedgerWall)
	require.Empty(t, got.Unknown)
	assert.InDelta(t, 8.4815*565*0.67, got.Value, 2)
	assert.Equal(t, "bearing under the washer", got.Governs)
}

func TestWhetherABoltPassesAPile(t *testing.T) {
	run := func(roles ...plan.Role) *steel.Rod {
		r := &steel.Rod{}
		for _, x := range roles {
			r.Passes = append(r.Passes, steel.Run{Member: &framing.Member{Role: x}})
		}
		return r
	}
	assert.True(t, passesPile(run(plan.Pile)))
	assert.True(t, passesPile(run(plan.GirderBeam, plan.Pile)))
	assert.False(t, passesPile(run(plan.GirderBeam, plan.Post)))
	assert.False(t, passesPile(run()))
}

// A bolt of 3/4 in through 1/4 in of A36 steel, Fe 87,000 psi, into southern pine, single
// shear (NDS 2018 Table 12.3.1A, transcribed), Fyb 45,000. Along the grain of a post 5 1/2 in
// thick, Fe 6,150: Re 0.07069, k3 = -1 + sqrt(2 x 1.07069/0.07069 + 2 x 45,000 x 2.07069 x
// 0.5625 / (3 x 6,150 x 0.0625)) = 10.009; IIIs = 10.009 x 0.75 x 0.25 x 6,150 / (2.07069 x 3.2)
// = 1,741.8 lb. Across that of a beam, Fe 2,950, Kθ 1.25: IIIs 1,000.8. Times 1.6 for wind.
func TestBoltsOfABodyByHand(t *testing.T) {
	for _, c := range []struct {
		part  string
		count int
		want  float64
		says  string
	}{
		{"to post", 2, 2 * 1.6 * 1741.8, "2 bolts bolt 3/4 x 6 to post, load at 0 degrees to grain: Z 1742 lb (mode IIIs)"},
		{"to post", 1, 1.6 * 1741.8, "1 bolt bolt 3/4 x 6 to post"},
		{"to beam", 2, 2 * 1.6 * 1000.8, "load at 90 degrees to grain: Z 1001 lb (mode IIIs)"},
		{"to girder", 2, 2 * 1.6 * 1000.8, "load at 90 degrees"},
		{"to header", 2, 2 * 1.6 * 1000.8, "load at 90 degrees"},
	} {
		p := pieceOf(t, plan.Item{
			Mark: "p", Kind: "post cap", Length: 10.5, Width: 5.25, Thickness: 0.25,
			Fasteners: []plan.Fasteners{{Part: c.part, Nail: "bolt 3/4 x 6", Count: c.count, Parts: 1}},
		}, plan.PostCap, plan.Outside)
		got := pine().One(p, Upward)
		require.Empty(t, got.Unknown)
		assert.InDelta(t, c.want, got.Value, 0.5, "%+v", c)
		assert.Contains(t, fmt.Sprint(got.Terms), c.says)
		assert.Equal(t, "bolts "+c.part+", mode IIIs", got.Governs)
	}
	p := pieceOf(t, plan.Item{Mark: "p", Kind: "post cap", Fasteners: []plan.Fasteners{{Part: "to post", Nail: "bolt 3/4 x 6", Count: 2, Parts: 1}}}, plan.PostCap, plan.Outside)
	assert.Equal(t, "the catalog gives no thickness of the steel", pine().One(p, Upward).Unknown)
}

// Each end has its own term; two alike have one between them.
func TestEndsAlikeHaveOneTerm(t *testing.T) {
	terms := func(fs ...plan.Fasteners) int {
		p := pieceOf(t, plan.Item{Mark: "c", Kind: "clip", Gauge: "17 ga", Fasteners: fs}, plan.RafterPlate, plan.Left)
		return len(pine().One(p, Upward).Terms)
	}
	end := func(part string, n int) plan.Fasteners {
		return plan.Fasteners{Part: part, Nail: "8d x 1 1/2", Count: n, Parts: 1}
	}
	assert.Equal(t, 1, terms(plan.Fasteners{Part: "each leg", Nail: "8d x 1 1/2", Count: 4, Parts: 2}))
	assert.Equal(t, 2, terms(end("to rafter", 4), end("to plate", 4)))
	assert.Equal(t, 2, terms(end("each leg", 4), end("each leg", 5)))
	assert.Equal(t, 3, terms(end("to rafter", 4), end("to plate", 4), end("to rafter", 4)))
}

// Up to 5 degrees a force counts as square to a nail, and from 86 as along it: between them
// it does both. At 6 degrees 194.9 x 106.0 / (194.9 sin 6 + 106.0 cos 6) by the standard's
// interaction (NDS 2018 12.4-2 as timber.Together has it, transcribed).
func TestAForceNearlySquareOrAlong(t *testing.T) {
	pine, _ := timber.SpeciesOf("southern pine")
	stud := upright(plan.Stud, geom.Vec3{}, geom.Vec3{X: 1.5, Y: 5.5, Z: 96})
	p := geom.Plate{A: geom.Vec3{X: 0.75}, B: geom.Vec3{X: 0.75, Z: 30}, N: geom.Vec3{Y: -1}, Width: 1.375, Thickness: 0.0538}
	b := driven(t, steel.NewWood([]*framing.Member{stud}), strapOf("10d x 1 1/2"), p, 6)
	x := Fastening{Species: pine}
	for _, c := range []struct {
		pull  float64
		mode  string
		value float64
	}{
		{0, "mode IIIs", 194.9},
		{5, "mode IIIs", 194.9},
		{6, "lateral with withdrawal", 194.9 * 106.0 / (194.9*0.10453 + 106.0*0.99452)},
		{45, "lateral with withdrawal", 194.9 * 106.0 / ((194.9 + 106.0) * 0.70711)},
		{85, "lateral with withdrawal", 194.9 * 106.0 / (194.9*0.99619 + 106.0*0.08716)},
		{86, "withdrawal", 106.0},
		{90, "withdrawal", 106.0},
	} {
		k := x.alike(b, b.Fasteners[0], geom.Vec3{Z: 1})
		k.pull = c.pull
		got := x.work(b, k)
		assert.Equal(t, c.mode, got.mode, "%v", c.pull)
		assert.InDelta(t, c.value, got.value, 0.5, "%v", c.pull)
	}
	// To the last figure, of what it holds square and drawn, at 60 degrees.
	at := func(pull float64) float64 {
		k := x.alike(b, b.Fasteners[0], geom.Vec3{Z: 1})
		k.pull = pull
		return x.work(b, k).value
	}
	square, drawn := at(0), at(90)
	assert.InDelta(t, square*drawn/(square*math.Sqrt(3)/2+drawn/2), at(60), 1e-6)
}

// A strap's section is looked at where both its width and its thickness are known; a clip
// is no strap.
func TestWhatHasNoSection(t *testing.T) {
	for name, edit := range map[string]func(*hardware.Item){
		"a clip":       func(i *hardware.Item) { i.Kind = hardware.KindNamed(plan.ClipItem) },
		"no width":     func(i *hardware.Item) { i.Width = 0 },
		"no thickness": func(i *hardware.Item) { i.Gauge, i.Thickness = "", 0 },
	} {
		a, b := strapBody(t, 2, [2]float64{3, 0})
		edit(b.Piece.Item)
		c := Capacity{Value: 1e9}
		a.sectionTerm(&c, b)
		assert.Equal(t, Capacity{Value: 1e9}, c, name)
		a.steelTerms(&c, b.Piece.Item)
		assert.Equal(t, Capacity{Value: 1e9}, c, name)
	}
}

// What holds nothing is a term of its own, 0 lb, with the reason, beside what holds.
func TestWhatHoldsNothingIsATerm(t *testing.T) {
	pine, _ := timber.SpeciesOf("southern pine")
	stud := upright(plan.Stud, geom.Vec3{}, geom.Vec3{X: 1.5, Y: 5.5, Z: 96})
	w := steel.NewWood([]*framing.Member{stud})
	at := func(x float64, z ...float64) *steel.Body {
		p := geom.Plate{A: geom.Vec3{X: x}, B: geom.Vec3{X: x, Z: 30}, N: geom.Vec3{Y: -1}, Width: 1.375, Thickness: 0.0538}
		return driven(t, w, strapOf("10d x 1 1/2"), p, z...)
	}
	b := at(0.75, 3)
	b.Fasteners = append(b.Fasteners, at(0.1, 6, 9).Fasteners...)
	h := Fastening{Species: pine}.Of(b, stud, geom.Vec3{Z: 1})
	assert.Equal(t, [2]int{3, 2}, [2]int{h.Count, h.None})
	require.Len(t, h.Terms, 2)
	var none, some Term
	for _, x := range h.Terms {
		if x.Value == 0 {
			none = x
		} else {
			some = x
		}
	}
	assert.Contains(t, none.Text, "2 of 10d x 1 1/2 in the stud: nothing, nearer to the wood's edge or end than its own diameter")
	assert.Equal(t, "lb", none.Unit)
	assert.InDelta(t, h.Value, some.Value, 1e-9)
	assert.Contains(t, some.Text, "1 of 10d x 1 1/2 in the stud, 1.45 in deep: Z ")
}

// How far apart the outermost of some fasteners are: those at 3, 9 and 5 up are 6.
func TestHowFarFastenersSpread(t *testing.T) {
	var list []steel.Fastener
	for _, z := range []float64{3, 9, 5} {
		list = append(list, steel.Fastener{Head: geom.Vec3{X: 1, Z: z}})
	}
	assert.InDelta(t, 6, spread(list, geom.Vec3{Z: 1}), 1e-9)
	assert.InDelta(t, 6, spread(list, geom.Vec3{Z: -1}), 1e-9)
	assert.Zero(t, spread(list, geom.Vec3{X: 1}))
	assert.Zero(t, spread(list[:1], geom.Vec3{Z: 1}))
}

// Wood screws by their number are those of NDS 2018 Table L3 (transcribed, as timber has
// it): No. 6 is 0.138 in, 8 is 0.164, 10 0.190, 12 0.216 and 14 0.242; their roots are known, so
// that no part of the size is assumed.
func TestScrewsByTheirNumbers(t *testing.T) {
	for number, d := range map[int]float64{6: 0.138, 8: 0.164, 10: 0.190, 12: 0.216, 14: 0.242} {
		for _, name := range []string{"No. %d x 2", "screw No. %d x 2"} {
			f, err := fastener(hardware.Nail{Name: fmt.Sprintf(name, number), Diameter: d, Length: 2})
			require.NoError(t, err)
			assert.Equal(t, timber.WoodScrew, f.Kind, number)
			assert.InDelta(t, d, f.D, 1e-9, number)
			assert.InDelta(t, timber.ScrewRoot(d), f.Root, 1e-9, number)
			assert.Greater(t, f.Root, 0.6*d)
			assert.NotEqual(t, screwRoot*d, f.Root, "not the part that is assumed for others")
		}
	}
}

// A strap 1.375 in wide of 17 gauge, 0.04968 in for strength, of whose rows the catalog says
// nothing has one: through one hole of 0.17 in (1.375 - 0.17) x 0.04968 x 45,000/2 = 1,347 lb,
// just under the gross 1,350 (AISI S100-16 D2, D3).
func TestAStrapHasOneRowAtLeast(t *testing.T) {
	for _, rows := range []int{0, 1} {
		it := strapOf("10d x 1 1/2")
		it.Fasteners[0].Rows = rows
		c := Capacity{Value: 1e9}
		pine().steelTerms(&c, pieceOf(t, it, plan.StudStud, plan.Outside).Item)
		assert.InDelta(t, 1347, c.Value, 1)
		assert.Equal(t, "strap, net rupture", c.Governs)
		assert.Contains(t, c.Terms[0].Text, "1 hole of 0.170 in across")
	}
}
