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
	"galewright/plan/units"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"
)

// Bolts of 3/4 in 3 in apart one over the other, pulled up across the grain of a
// beam 5 1/2 in thick. In one row the group is 3D = 2.25 in wide, so the wood is
// 5.5 x 2.25 = 12.375 in²; in two rows 4 in apart 5.5 x 4 = 22 in² (NDS 2018
// 11.3.6, transcribed, as timber.Group says it). One row on steel of 3 x 1/4 in:
// EA 13.6125e6 and 22.5e6 lb, ratio 0.605; u = 1 + 175,370 x 1.5 x (1/13.6125e6 +
// 1/22.5e6) = 1.031016, m = 0.780030, m² = 0.608447, m^4 = 0.370208; Cg = 0.780030 x
// 0.629792 / (2 x (1.368110 x 1.780030 - 1 + 0.370208)) x 1.605 / 0.219970 = 0.9926.
func TestAGroupAcrossTheGrainIsAsWideAsItsRows(t *testing.T) {
	for _, c := range []struct {
		count, rows int
		width       float64
		want        string
	}{
		{2, 1, 3, "Cg 0.993 for 2 in a row 3.00 in apart, wood 12.4 in² at E 1.1 million psi from memory, steel 0.75 in²"},
		{4, 2, 8, "for 2 in a row 3.00 in apart, wood 22.0 in² at E 1.1 million psi from memory, steel 2.00 in²"},
	} {
		beam := upright(plan.Beam, geom.Vec3{X: -60}, geom.Vec3{X: 60, Y: 5.5, Z: 24})
		beam.A, beam.B = geom.Vec3{X: -60, Y: 2.75, Z: 12}, geom.Vec3{X: 60, Y: 2.75, Z: 12}
		beam.Section = plan.Lumber{Ply: 1, Breadth: 5.5, Depth: 24}
		a, p := bolted(t, beam, c.count, c.rows, c.width)
		got := a.One(p, Upward)
		require.Empty(t, got.Unknown)
		assert.Contains(t, fmt.Sprint(got.Terms), c.want)
	}
}

// bolted is a body of 1/4 in steel on the y = 0 face of a member, 3/4 in bolts 3 in
// apart up from 9 in.
func bolted(t *testing.T, m *framing.Member, count, rows int, width float64) (*Allowables, *placement.Piece) {
	c, ds := hardware.New([]*plan.Item{{
		Mark: "h", Kind: plan.HoldDownItem, Length: 13.5, Width: width, Thickness: 0.25, Rod: 1, Standoff: 2, Center: 2,
		Fasteners: []plan.Fasteners{{Part: "all", Nail: "bolt 3/4 x 6", Count: count, Parts: 1, Rows: rows, Spacing: 3, EndDist: 1}},
	}})
	require.False(t, ds.Errors(), "%v", ds)
	band := geom.Band{{A: geom.Vec3{Z: 8}, B: geom.Vec3{Z: 21.5}, N: geom.Vec3{Y: -1}, Width: width, Thickness: 0.25}}
	p := &placement.Piece{
		Tag: "h", Joint: &framing.Joint{ID: "j", Kind: plan.WallEnd, Members: []*framing.Member{m}}, Item: c.Items[0],
		Lie: placement.Lie{
			Face: plan.Right, Bands: []geom.Band{band}, Laid: []placement.Laid{{Member: m, Lap: 13.5, Room: 24}},
			Ends: []placement.EndAt{{Laid: 0, Starts: []placement.Start{{}}}},
		},
	}
	pine, _ := timber.SpeciesOf("southern pine")
	return New(steel.New(placement.Of(&framing.House{Members: []*framing.Member{m}}, p)), Context{Species: pine}), p
}

// A bolt 5/8 in down through a header bears on washers at both ends: a 3 in
// square less its hole of 11/16, 9 - pi/4 x 0.6875² = 8.629 in², times Fc perpendicular
// 565 psi (southern pine, from memory), 4,875 lb. Cut so short that it ends in the
// wood, or beside it, it holds nothing.
func TestABoltThatBearsOnNothingHoldsNothing(t *testing.T) {
	c, ds := hardware.New([]*plan.Item{{Mark: "b", Kind: "anchor bolt", Length: 12, Rod: 0.625, Washer: 3}})
	require.False(t, ds.Errors(), "%v", ds)
	at := func(y, long float64) Capacity {
		girder := upright(plan.Header, geom.Vec3{X: -60}, geom.Vec3{X: 60, Y: 5.5, Z: 9.25})
		girder.A, girder.B = geom.Vec3{X: -60, Y: 2.75, Z: 4.6}, geom.Vec3{X: 60, Y: 2.75, Z: 4.6}
		a, b := geom.Vec3{Y: y, Z: 10.5}, geom.Vec3{Y: y, Z: 10.5 - long}
		p := &placement.Piece{
			Tag: "b", Joint: &framing.Joint{ID: "j", Kind: plan.StudStud, Members: []*framing.Member{girder}}, Item: c.Items[0],
			Lie: placement.Lie{Face: plan.Through, Rod: &placement.Axis{A: a, B: b}},
		}
		pine, _ := timber.SpeciesOf("southern pine")
		return New(steel.New(placement.Of(&framing.House{Members: []*framing.Member{girder}}, p)), Context{Species: pine}).One(p, Upward)
	}
	whole := at(2.75, 12)
	require.Empty(t, whole.Unknown)
	assert.InDelta(t, 4875, whole.Value, 1)
	assert.Equal(t, "bearing under the washer", whole.Governs)
	for _, c := range []struct{ y, long float64 }{{2.75, 8}, {9, 12}} {
		none := at(c.y, c.long)
		assert.Contains(t, none.Unknown, "its rod bears on nothing at one end", "%v", c)
		assert.Zero(t, none.Value, "%v", c)
	}
}

// What a fastener's value depends on, in a stud on its edge: a force up runs along
// the grain, one sideways across it, both square to the nail; one that leans out by 0.55
// of itself draws it at asin 0.55 = 33.4, taken as 33 degrees, straight out at 90, where
// there is no grain to speak of. Over 7/16 in of air 0.4375 is taken as 0.438 and of the 1.5 in
// nail 1.5 - 0.0538 - 0.4375 = 1.0087 as 1.01.
func TestWhatAFastenerDependsOn(t *testing.T) {
	stud := upright(plan.Stud, geom.Vec3{}, geom.Vec3{X: 1.5, Y: 5.5, Z: 96})
	p := geom.Plate{A: geom.Vec3{X: 0.75, Y: -0.4375}, B: geom.Vec3{X: 0.75, Y: -0.4375, Z: 30}, N: geom.Vec3{Y: -1}, Width: 1.375, Thickness: 0.0538}
	b := driven(t, steel.NewWood([]*framing.Member{stud}), strapOf("10d x 1 1/2"), p, 6)
	lean := math.Sqrt(1 - 0.55*0.55)
	for _, c := range []struct {
		force       geom.Vec3
		pull, grain float64
	}{
		{geom.Vec3{Z: 1}, 0, 0},
		{geom.Vec3{X: 1}, 0, 90},
		{geom.Vec3{Y: -0.55, Z: lean}, 33, 0},
		{geom.Vec3{X: lean, Y: -0.55}, 33, 90},
		{geom.Vec3{X: 0.55, Z: lean}, 0, 33},
		{geom.Vec3{Y: -1}, 90, 0},
	} {
		got := Fastening{}.alike(b, b.Fasteners[0], c.force)
		assert.InDelta(t, c.pull, got.pull, 1e-9, "%v", c.force)
		assert.InDelta(t, c.grain, got.grain, 1e-9, "%v", c.force)
		assert.InDelta(t, 0.438, got.air, 1e-9)
		assert.InDelta(t, 1.01, got.deep, 1e-9)
		assert.False(t, got.endGrain || got.wet || got.out)
	}
	assert.InDelta(t, 90, degrees(1+1e-9), 1e-6, "rounding past 1 is square")
}

// A nail pulled at 45 degrees out of its plate holds Z W / (W cos + Z sin) (NDS 2018
// 12.4-2, transcribed): across its shank 194.9 lb and drawn 106.0 lb, as worked out
// by TestANailIsWorthTheWoodItFinds and TestAForceAlongANailDrawsIt, give 194.9 x
// 106.0 / ((194.9 + 106.0) x 0.7071) = 97.1 lb.
func TestANailPulledAtASlantHoldsLess(t *testing.T) {
	pine, _ := timber.SpeciesOf("southern pine")
	stud := upright(plan.Stud, geom.Vec3{}, geom.Vec3{X: 1.5, Y: 5.5, Z: 96})
	p := geom.Plate{A: geom.Vec3{X: 0.75}, B: geom.Vec3{X: 0.75, Z: 30}, N: geom.Vec3{Y: -1}, Width: 1.375, Thickness: 0.0538}
	b := driven(t, steel.NewWood([]*framing.Member{stud}), strapOf("10d x 1 1/2"), p, 6)
	h := Fastening{Species: pine}.Of(b, stud, geom.Vec3{Y: -1, Z: 1}.Unit())
	assert.InDelta(t, 97.1, h.Value, 0.5)
	assert.Equal(t, "lateral with withdrawal", h.Mode)
}

// Terms stand by end, the deepest first, whatever order the fasteners are in.
func TestTermsStandByEndAndDepth(t *testing.T) {
	pine, _ := timber.SpeciesOf("southern pine")
	post := upright(plan.Post, geom.Vec3{}, geom.Vec3{X: 5.5, Y: 5.5, Z: 96})
	p := geom.Plate{A: geom.Vec3{X: 2.75}, B: geom.Vec3{X: 2.75, Z: 30}, N: geom.Vec3{Y: -1}, Width: 1.375, Thickness: 0.0538}
	w := steel.NewWood([]*framing.Member{post})
	b := driven(t, w, strapOf("10d"), p, 6, 8)
	b.Fasteners[0].End = 1
	b.Fasteners[1].End = 0
	off := p
	off.A, off.B = p.A.Add(geom.Vec3{Y: -0.5}), p.B.Add(geom.Vec3{Y: -0.5})
	b.Fasteners = append(driven(t, w, strapOf("10d"), off, 10, 11, 12).Fasteners, b.Fasteners...)
	h := Fastening{Species: pine}.Of(b, post, geom.Vec3{Z: 1})
	require.Len(t, h.Terms, 3)
	assert.Contains(t, h.Terms[0].Text, "1 of 10d in the post, 2.95 in deep:")
	assert.Contains(t, h.Terms[1].Text, "3 of 10d in the post, 2.45 in deep, 0.500 in of sheathing, packing or air under the steel:")
	assert.Contains(t, h.Terms[2].Text, "1 of 10d in the post, 2.95 in deep:")
	assert.Equal(t, 5, h.Count)
}

// A force is taken as along the grain up to 45 degrees, cos 45 = 0.7: of a member 5 1/2
// by 24 in the whole section, 132 in², shares its pull. Steeper it is across: 3D = 2.25 in
// of the 5 1/2 in under the bolt.
func TestWhenAGroupIsAcrossTheGrain(t *testing.T) {
	for _, c := range []struct {
		rise, want float64 // of the member, cos of its grain to the upright force
	}{{1, 132}, {0.8, 132}, {0.72, 132}, {0.68, 12.375}, {0, 12.375}} {
		m := &framing.Member{Role: plan.Rafter, B: geom.Vec3{X: math.Sqrt(1 - c.rise*c.rise), Z: c.rise}, Section: plan.Lumber{Ply: 1, Breadth: 5.5, Depth: 24}}
		_, p := bolted(t, m, 1, 1, 3)
		b := &steel.Body{Piece: p, Bands: p.Bands}
		f := steel.Fastener{Diameter: 0.75, Runs: []steel.Run{{Member: m, From: 0.25, To: 5.75}}}
		got, _ := group(units.Imperial, b, []steel.Fastener{f}, Upward)
		assert.InDelta(t, c.want, got.Am, 1e-9, "rise %v", c.rise)
	}
}

// Group action wants the section of the wood: where none is known the bolts hold
// nothing, and it is said. An end that a bend holds down needs no fasteners.
func TestWhatCannotBeWorkedOutHoldsNothing(t *testing.T) {
	post := upright(plan.Post, geom.Vec3{X: -2.75}, geom.Vec3{X: 2.75, Y: 5.5, Z: 96})
	a, p := bolted(t, post, 2, 1, 3)
	assert.Contains(t, a.One(p, Upward).Unknown, "group of 2 fasteners of 0.750 in at 3.00 in")
	assert.Zero(t, a.One(p, Upward).Value)

	post.Section = plan.Lumber{Ply: 1, Breadth: 5.5, Depth: 5.5}
	for name, change := range map[string]func(*placement.Piece){
		"no end is laid":         func(p *placement.Piece) { p.Ends = nil },
		"it takes no fasteners":  func(p *placement.Piece) { p.Item.Fasteners[0].Count = 0 },
		"it takes none, of none": func(p *placement.Piece) { p.Item.Fasteners[0].Count, p.Ends = 0, nil },
	} {
		a, p := bolted(t, post, 2, 1, 3)
		change(p)
		c := Capacity{Value: 1e9}
		a.endTerms(&c, a.steel.Body(p), Upward)
		assert.Equal(t, Capacity{Value: 1e9}, c, name)
	}
}

// Pieces of one mark: terms are those of the weakest that holds anything, wherever it
// stands among them.
func TestTheWeakestPieceTells(t *testing.T) {
	j := &framing.Joint{ID: "j", Kind: plan.StudStud}
	it := &hardware.Item{Item: &plan.Item{Mark: "s"}, Kind: hardware.KindNamed(plan.StrapItem)}
	all := map[string]Capacity{"off": {Unknown: "it misses"}, "weak": {Value: 300, Governs: "weak"}, "strong": {Value: 500, Governs: "strong"}}
	for _, c := range []struct {
		order   []string
		want    float64
		governs string
	}{
		{[]string{"off", "strong", "weak"}, 800, "weak"},
		{[]string{"weak", "off", "strong"}, 800, "weak"},
		{[]string{"strong", "weak", "off"}, 800, "weak"},
		{[]string{"off", "off", "strong"}, 500, "strong"},
		{[]string{"strong", "weak"}, 800, "weak"},
	} {
		var pieces []*placement.Piece
		a := &Allowables{bodied: map[*placement.Piece][2]Capacity{}}
		for _, tag := range c.order {
			p := &placement.Piece{Tag: tag, Joint: j, Item: it}
			pieces = append(pieces, p)
			a.bodied[p] = [2]Capacity{all[tag]}
		}
		a.placed = placement.Of(&framing.House{}, pieces...)
		got := a.At(j, Upward)
		assert.InDelta(t, c.want, got.Value, 1e-9, "%v", c.order)
		assert.Equal(t, c.governs, got.Governs, "%v", c.order)
		assert.Empty(t, got.Unknown, "%v", c.order)
		assert.Equal(t, len(c.order), got.Pieces, "%v", c.order)
	}
}

// Which members an end's fasteners are in, each once and the meant one first.
func TestMembersOfAnEndInWords(t *testing.T) {
	in := func(roles ...plan.Role) (out []steel.Fastener) {
		for _, r := range roles {
			out = append(out, steel.Fastener{Runs: []steel.Run{{Member: &framing.Member{Role: r}}}})
		}
		return out
	}
	upper := &framing.Member{Role: plan.UpperPlate}
	assert.Equal(t, "0 in the upper plate", inWood(nil, upper))
	assert.Equal(t, "2 in the upper plate", inWood(in(plan.UpperPlate, plan.UpperPlate), upper))
	assert.Equal(t, "1 in the upper plate and 2 in the top plate", inWood(in(plan.TopPlate, plan.UpperPlate, plan.TopPlate), upper))
}

// What terms say of where a number comes from: the equation that a smooth stainless nail
// is drawn by, the root of a screw, the distance that rules a group.
func TestTermsSayWhereNumbersComeFrom(t *testing.T) {
	assert.Contains(t, equation(timber.Fastener{Shank: timber.Stainless}), "NDS 2018 12.2-4")
	assert.Empty(t, equation(timber.Fastener{}))

	screws := func(nail string) string {
		p := pieceOf(t, plan.Item{Mark: "c", Kind: "clip", Gauge: "17 ga", Fasteners: []plan.Fasteners{{Part: "to post", Nail: nail, Count: 4, Parts: 1}}}, plan.WallEnd, plan.Left)
		return fmt.Sprint(pine().One(p, Upward).Terms)
	}
	assert.Contains(t, screws("No. 12 x 1 1/2"), "(root 0.171 in, NDS 2018 Table L3)")
	assert.Contains(t, screws("screw 0.25 x 3"), "(root 0.75 of its size, assumed; Fyb as of a nail, from memory)")
	assert.NotContains(t, screws("10d x 1 1/2"), "root")

	for _, c := range []struct {
		z    float64 // of the post's foot: bolts at 9 and 12 in
		want string
	}{
		{0, "Cdelta 1.00; Cg"},
		{6, "Cdelta 0.57, end distance, load toward the end; Cg"},
	} {
		post := upright(plan.Post, geom.Vec3{X: -2.75, Z: c.z}, geom.Vec3{X: 2.75, Y: 5.5, Z: 96})
		post.Section = plan.Lumber{Ply: 1, Breadth: 5.5, Depth: 5.5}
		a, p := bolted(t, post, 2, 1, 3)
		assert.Contains(t, fmt.Sprint(a.One(p, Upward).Terms), c.want)
	}
}
