package steel

import (
	"fmt"
	"math"
	"testing"

	"galewright/plan"
	"galewright/plan/framing"
	"galewright/plan/geom"
	"galewright/plan/hardware"
	"galewright/plan/placement"
	"galewright/plan/timber"
	"galewright/plan/units"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"
)

// nailedOn is a piece of 1/4 in steel 14 in long up the y = 0 face of a member from
// (x, z) on, fastened as its catalog row says.
func nailedOn(t *testing.T, m *framing.Member, kind plan.ItemKind, f plan.Fasteners, width, x, z float64) (*Steel, *Body) {
	if f.Part, f.Parts = "all", 1; kind == plan.StrapItem {
		f.Part, f.Parts = "each end", 2
	}
	row := plan.Item{Mark: "h", Kind: kind, Length: 14, Width: width, Thickness: 0.25, Fasteners: []plan.Fasteners{f}}
	if kind == plan.HoldDownItem {
		row.Rod, row.Standoff, row.Center = 1, 2, 2
	}
	p := &placement.Piece{
		Tag: "tag", Item: itemOf(t, row), Rule: &plan.Rule{Pos: plan.Pos{Line: 3}}, Joint: &framing.Joint{ID: "j", Kind: plan.WallEnd, Members: []*framing.Member{m}},
		Lie: placement.Lie{
			Face: plan.Right, Bands: []geom.Band{{{A: geom.Vec3{X: x, Z: z}, B: geom.Vec3{X: x, Z: z + 14}, N: geom.Vec3{Y: -1}, Width: width, Thickness: 0.25}}},
			Laid: []placement.Laid{{Member: m, Lap: 14, Room: 14}}, Ends: []placement.EndAt{{Laid: 0, Starts: []placement.Start{{}}}},
		},
	}
	s := New(placement.Of(&framing.House{Members: []*framing.Member{m}}, p))
	return s, s.Body(p)
}

// post is 5 1/2 in square and 96 in tall, beam as deep as it says and along x.
func post() *framing.Member {
	return roled(plan.Post, stick("post", geom.Vec3{}, geom.Vec3{X: 5.5, Y: 5.5, Z: 96}))
}

// Bolts of 3/4 in that push down on a post from 20 in up, one row on its middle: the
// distance toward the foot is that of the lowest bolt, 21 in; edges are 2 3/4 in; Cdelta 1.
// Spacing of 2 1/2 in is 2.5/3 of the full 4D. At 3 in over the foot the end distance is 3
// of 7D = 5.25 in. On a beam the load is across the grain: 4D = 3 in want to be between
// bolt and the loaded edge, its lower one; the group may be 5 in high (NDS 2018 Tables
// 12.5.1A to C and 12.5.1.3, transcribed, as timber.LargePlace has them).
func TestBoltsByTheirDistances(t *testing.T) {
	beam := func(deep float64) *framing.Member {
		return lying("beam", plan.Beam, geom.Vec3{X: -48}, geom.Vec3{X: 48, Y: 5.5, Z: deep})
	}
	for name, c := range map[string]struct {
		m                    *framing.Member
		count, rows          int
		spacing, width, x, z float64
		want                 float64
		rules                string
	}{
		"well placed":                    {post(), 2, 1, 3, 3, 2.75, 20, 1, ""},
		"one alone":                      {post(), 1, 1, 3, 3, 2.75, 20, 1, ""},
		"closer in the row":              {post(), 2, 1, 2.5, 3, 2.75, 20, 2.5 / 3, "spacing in a row along the grain"},
		"under the floor":                {post(), 2, 1, 2.2, 3, 2.75, 20, 0, "spacing in a row along the grain"},
		"near the foot":                  {post(), 1, 1, 3, 3, 2.75, 2, 3 / 5.25, "end distance, load toward the end"},
		"near the edge":                  {post(), 1, 1, 3, 3, 1, 20, 0, "edge distance, load along the grain"},
		"two rows 1 1/2 in apart":        {post(), 2, 2, 3, 3, 2.75, 20, 1, ""},
		"across a beam":                  {beam(24), 2, 1, 3, 3, 0, 8, 1, ""},
		"across it, near its lower edge": {beam(24), 1, 1, 3, 3, 0, 1, 0, "loaded edge, load across the grain"},
		"just off that edge":             {beam(24), 1, 1, 3, 3, 0, 2, 1, ""},
		"5 in of it":                     {beam(24), 2, 1, 5, 3, 0, 8, 1, ""},
		"more than 5 in of it":           {beam(24), 3, 1, 3, 3, 0, 8, 0, "outermost fasteners across the grain of sawn lumber, at most"},
		"near the beam's end":            {beam(24), 1, 1, 3, 3, -46, 8, 2 / 3.0, "end distance, load across the grain"},
	} {
		s, b := nailedOn(t, c.m, plan.HoldDownItem, plan.Fasteners{Nail: "bolt 3/4 x 6", Count: c.count, Rows: c.rows, Spacing: c.spacing, EndDist: 1}, c.width, c.x, c.z)
		got := s.Cdelta(b, b.Fasteners[0])
		assert.InDelta(t, c.want, got.Cdelta, 1e-9, name)
		assert.Equal(t, c.rules, got.Rules, name)
		assert.Equal(t, got.Unmet, s.Unmet(b, b.Fasteners[0]), name)
		assert.Equal(t, c.want == 0, len(got.Unmet) > 0, name)
	}
}

// A nail has no such factor; nor has a bolt in no wood.
func TestWhatHasNoGeometryFactor(t *testing.T) {
	s, b := nailedOn(t, post(), plan.HoldDownItem, plan.Fasteners{Nail: "10d", Count: 1, Rows: 1, Spacing: 1, EndDist: 1}, 3, 0.1, 20)
	assert.InDelta(t, 1, s.Cdelta(b, b.Fasteners[0]).Cdelta, 1e-9)
	assert.NotEmpty(t, s.Unmet(b, b.Fasteners[0]), "though it is 0.1 in off the edge")
	s, b = nailedOn(t, post(), plan.HoldDownItem, plan.Fasteners{Nail: "bolt 3/4 x 6", Count: 1, Spacing: 3, EndDist: 1}, 3, 20, 20)
	assert.InDelta(t, 1, s.Cdelta(b, b.Fasteners[0]).Cdelta, 1e-9)
	assert.Empty(t, s.Unmet(b, b.Fasteners[0]))
}

// Nails of 0.148 in through steel in two rows 1 in apart, 2 in along them: the commentary
// advises 10D = 1.48 in along and 3D = 0.444 in between rows. Staggered by 1 in they are
// 1.41 in apart aslant, and 2.5D between rows. Strap ends push inward, along the grain.
func TestNailsInRows(t *testing.T) {
	for name, c := range map[string]struct {
		f           plan.Fasteners
		inRow, rows float64
		staggered   bool
	}{
		"one nail":       {plan.Fasteners{Nail: "10d", Count: 1, Rows: 1, Spacing: 2, EndDist: 1}, math.Inf(1), math.Inf(1), false},
		"one row":        {plan.Fasteners{Nail: "10d", Count: 3, Rows: 1, Spacing: 2, EndDist: 1}, 2, math.Inf(1), false},
		"two rows":       {plan.Fasteners{Nail: "10d", Count: 6, Rows: 2, Spacing: 2, EndDist: 1}, 2, 1, false},
		"two, staggered": {plan.Fasteners{Nail: "10d", Count: 6, Rows: 2, Spacing: 2, EndDist: 1, Stagger: true, Offset: 1}, 2, 1, true},
	} {
		s, b := nailedOn(t, post(), plan.StrapItem, c.f, 2, 2.75, 60)
		got := s.place(b, b.Fasteners[0])
		assert.InDelta(t, 0, got.angle, 1e-6, name)
		assertSame(t, c.inRow, got.inRow, name+": in the row")
		assertSame(t, c.rows, got.rows, name+": between rows")
		assert.Equal(t, c.staggered, got.staggered, name)
		assert.True(t, got.towardEnd, name)
		assert.InDelta(t, 96-61, got.end, 0.01, "%s: the strap's end pushes up along it", name)
	}
}

// assertSame holds two distances, of which both may be without end.
func assertSame(t *testing.T, want, got float64, name string) {
	if math.IsInf(want, 1) {
		assert.True(t, math.IsInf(got, 1), "%s: %v", name, got)
		return
	}
	assert.InDelta(t, want, got, 1e-6, name)
}

// Which way a fastener pushes its wood: a strap's from the end that it starts at inward;
// of all else down on the member that is held, up on the other.
func TestWhichWayAFastenerPushes(t *testing.T) {
	for _, c := range []struct {
		kind plan.ItemKind
		back bool
		laid int
		want geom.Vec3
	}{
		{plan.StrapItem, false, 0, geom.Vec3{Z: 1}},
		{plan.StrapItem, true, 0, geom.Vec3{Z: -1}},
		{plan.ClipItem, false, 0, geom.Vec3{Z: -1}},
		{plan.ClipItem, false, 1, geom.Vec3{Z: 1}},
	} {
		b := &Body{Bands: []geom.Band{{facing(geom.Vec3{Y: -1})}}, Piece: &placement.Piece{
			Item: &hardware.Item{Item: &plan.Item{}, Kind: hardware.KindNamed(c.kind)}, Lie: placement.Lie{Ends: []placement.EndAt{{Laid: c.laid}}},
		}}
		assert.Equal(t, c.want, b.Push(Fastener{Back: c.back}), "%+v", c)
	}
}

// Holes without a nail stay open on the outer side of the steel: of five holes 2 in apart
// from 1 in on, three take a nail, and those at 7 and 9 in none.
func TestOpenHoles(t *testing.T) {
	_, b := nailedOn(t, post(), plan.StrapItem, plan.Fasteners{Nail: "10d", Count: 3, Holes: 5, Rows: 1, Spacing: 2, EndDist: 1}, 1.5, 2.75, 20)
	require.Len(t, b.Open, 2)
	for i, z := range []float64{27, 29} {
		assert.InDelta(t, z, b.Open[i].At.Z, 1e-9)
		assert.InDelta(t, -0.25, b.Open[i].At.Y, 1e-9)
		assert.InDelta(t, 0.148, b.Open[i].Diameter, 1e-9)
	}
	assert.Equal(t, Pattern{Count: 3, Holes: 5, Rows: 1, Spacing: 2, EndDist: 1}, b.Pattern(0))
	w := NewWood(nil)
	first, second := facing(geom.Vec3{Y: -1}), facing(geom.Vec3{Y: -1})
	second.A, second.B = first.B, first.B.Add(geom.Vec3{Z: 4})
	far := &Body{Bands: []geom.Band{{first, second}}}
	e := end(1, 1)
	e.Holes = 3
	w.fasten(far, 0, e, Seat{Back: true}, 1.5, 0)
	require.Len(t, far.Open, 2)
	assert.Equal(t, 1, far.Open[0].Plate, "3 in from its far end, on the second plate")
	assert.Equal(t, 0, far.Open[1].Plate, "5 in from it, past the bend at 4")
	assert.Equal(t, 1, far.Fasteners[0].Plate)
}

// A nail splits out nearer to an edge or an end than its own diameter; one in no wood is
// out of it by its whole length.
func TestNailsAtTheEndOfTheWood(t *testing.T) {
	for _, c := range []struct {
		edge, end float64
		out       bool
	}{{0.75, 4, false}, {0.148, 4, false}, {0.147, 4, true}, {4, 0.147, true}, {0.1, 0.1, true}} {
		assert.Equal(t, c.out, SplitsOut(Fastener{Diameter: 0.148, Margin: Margin{Edge: c.edge, End: c.end}}), "%+v", c)
	}
	assert.InDelta(t, 3, Fastener{Head: geom.Vec3{Z: 3}}.Beyond(), 1e-9)
	m, o := post(), post()
	in := func(list ...*framing.Member) (f Fastener) {
		for _, x := range list {
			f.Runs = append(f.Runs, Run{Member: x})
		}
		return f
	}
	assert.True(t, shared(in(m, o), in(o)))
	assert.False(t, shared(in(m), in(o)))
	assert.False(t, shared(in(), in(o)))
}

// What explain says of one piece: a hold-down on a post whose lowest bolt is 3 in over the
// foot, 5.25 in wanted; and of a strap that runs off its post.
func TestWhatExplainSays(t *testing.T) {
	s, _ := nailedOn(t, post(), plan.HoldDownItem, plan.Fasteners{Nail: "bolt 3/4 x 6", Count: 2, Rows: 1, Spacing: 2, EndDist: 1}, 3, 2.75, 20)
	assert.Equal(t, "where the steel is:\ntag\n  2 fasteners in the post post\n"+
		"  2 fasteners nearer than the standard allows: spacing in a row along the grain down to 2.00 in where 2.25 in is wanted (NDS 2018 Table 12.5.1B (transcribed))\n", s.Explain("tag"))
	assert.Equal(t, s.Explain("tag"), s.Explain("j"), "by the joint's ID too")
	assert.Empty(t, s.Explain("other"))

	s, _ = nailedOn(t, post(), plan.StrapItem, plan.Fasteners{Nail: "10d", Count: 3, Rows: 1}, 1.5, 2.75, 94.5)
	got := s.Explain("tag")
	assert.Contains(t, got, "\n  1 fastener in the post post\n  2 fasteners in no wood\n")
	assert.Contains(t, got, "1 fastener nearer than advised: ")
	assert.Contains(t, got, "the catalog gives no spacing of its holes: they are taken as far apart as steel and wood are long for, up to 10 diameters")
}

// What explain says of rods and slots.
func TestWhatExplainSaysOfRods(t *testing.T) {
	bolt := itemOf(t, plan.Item{Mark: "b", Kind: "anchor bolt", Length: 12, Rod: 0.625, Washer: 3})
	j := &framing.Joint{ID: "j", Kind: plan.StudBase}
	p := rodded(bolt, j, "b", geom.Vec3{Y: 2.75, Z: 3}, geom.Vec3{Y: 2.75, Z: -7})
	s := New(placement.Of(&framing.House{Members: []*framing.Member{sill()}}, p))
	assert.Equal(t, "where the steel is:\nb\n  5/8\" rod, 10\" long: nut and 3\" square plate on the sill plate sill, bearing on 8.63 in² of wood; cast 7\" deep into what is below the sill plate\n", s.Explain("b"))
	for want, e := range map[string]Bearing{
		"nut on the seat of a body": {Kind: OnSeat, Nuts: 1},
		"head and cut washer on the post post, bearing on 2.00 in² of wood": {Kind: OnWasher, Member: post(), Area: 2},
		"cast in the footing":                     {Kind: CastIn, Nuts: 1},
		`nothing to bear on at 1'-0" above grade`: {Kind: Nothing, At: geom.Vec3{Z: 12}},
	} {
		assert.Equal(t, want, e.words(units.Imperial))
	}
	b := &Body{Piece: &placement.Piece{Tag: "x", Joint: j}, Rods: []*Rod{
		{Why: "no rod of its diameter is set under its seat"},
		{For: p, Diameter: 1, A: geom.Vec3{Z: 20}, Why: "it ends in the wood", Ends: [2]Bearing{{Kind: OnSeat, Nuts: 1}, {Kind: Nothing}}},
	}}
	s.Bodies = []*Body{b}
	assert.Equal(t, "where the steel is:\nx\n  no rod of its diameter is set under its seat\n"+
		"  1\" rod of b, 1'-8\" long: nut on the seat of a body; nothing to bear on at 0\" above grade\n  it ends in the wood\n", s.Explain("x"))

	strap := &Steel{Wood: NewWood(storied(0)), Bodies: []*Body{side(2.75)}}
	strap.slots(strap.Bodies[0])
	strap.Bodies[0].Piece.Tag = "s"
	strap.Bodies[0].Fasteners = []Fastener{{}}
	assert.Contains(t, strap.Explain("s"), "it passes the top plate top: cut a slot 2 3/8\" across and 3/8\" along it, 1 9/16\" left on either side, 1 1/2\" through\n")
}

// Of what is nearer than it should be the worst of each rule is told, by name of rule.
func TestTheWorstOfEachRuleIsTold(t *testing.T) {
	it := itemOf(t, plan.Item{Mark: "h", Kind: plan.StrapItem, Length: 14, Width: 2, Gauge: "17 ga", Fasteners: []plan.Fasteners{{Part: "each end", Nail: "10d", Count: 2, Parts: 2, Spacing: 2}}})
	body := func(tag string) *Body { return &Body{Piece: &placement.Piece{Tag: tag, Item: it}} }
	n := &nearness{worst: map[string]timber.Unmet{}}
	one, two := body("1"), body("2")
	n.add(one, Fastener{}, []timber.Unmet{{Rule: "row", Have: 1, Want: 2, Advisory: true, Source: "table"}, {Rule: "edge", Have: 0.3, Want: 0.4, Advisory: true, Source: "table"}})
	n.add(one, Fastener{}, []timber.Unmet{{Rule: "edge", Have: 0.1, Want: 0.4, Advisory: true, Source: "table"}})
	assert.False(t, n.hard)
	assert.Len(t, n.bodies, 1)
	n.add(two, Fastener{}, []timber.Unmet{{Rule: "edge", Have: 0.2, Want: 0.4, Source: "table"}})
	assert.True(t, n.hard)
	assert.False(t, n.guessed)
	assert.Equal(t, 3, n.count)
	assert.Len(t, n.bodies, 2)
	assert.Equal(t, "edge down to 0.10 in where 0.40 in is wanted, row down to 1.00 in where 2.00 in is wanted (table)", n.text())
	var told []string
	tellOf(n, finding{cause: "x"}, func(f finding) { told = append(told, fmt.Sprint(f.piece.Tag, " ", f.count)) })
	assert.Equal(t, []string{"1 3", "2 0"}, told)
}

// Distances of a pattern that the catalog gives are told, and those of bolts in any case;
// of nails laid by rule they are not.
func TestWhichDistancesAreTold(t *testing.T) {
	for name, c := range map[string]struct {
		f    plan.Fasteners
		want string
	}{
		"nails 1/2 in apart":      {plan.Fasteners{Nail: "10d", Count: 3, Rows: 1, Spacing: 0.5, EndDist: 1}, "fasteners nearer to the wood's edge or end, or to each other, than is advised"},
		"nails 2 in apart":        {plan.Fasteners{Nail: "10d", Count: 3, Rows: 1, Spacing: 2, EndDist: 1}, ""},
		"nails laid by rule":      {plan.Fasteners{Nail: "10d", Count: 40, Rows: 1}, ""},
		"bolts 2 in apart":        {plan.Fasteners{Nail: "bolt 3/4 x 6", Count: 2, Rows: 1, Spacing: 2, EndDist: 1}, "bolts or lags nearer to the wood's edge or end, or to each other, than the standard allows"},
		"bolts that laid by rule": {plan.Fasteners{Nail: "bolt 3/4 x 6", Count: 40, Rows: 1}, "bolts or lags nearer to the wood's edge or end, or to each other, than the standard allows"},
	} {
		s, _ := nailedOn(t, post(), plan.HoldDownItem, c.f, 3, 2.75, 40)
		var got []string
		s.tellDistances(func(f finding) { got = append(got, f.cause) })
		if c.want == "" {
			assert.Empty(t, got, name)
			continue
		}
		assert.Equal(t, []string{c.want}, got, name)
	}
}

// A leg that lies flat on a plate: the force runs along its nails, so their distances are
// those of a load along the plate's grain, 12 in to its near end and 2 in to its edge.
func TestNailsDownIntoAPlate(t *testing.T) {
	plate := lying("plate", plan.TopPlate, geom.Vec3{}, geom.Vec3{X: 30, Y: 5.5, Z: 1.5})
	w := NewWood([]*framing.Member{plate})
	p := geom.Plate{A: geom.Vec3{X: 10, Y: 2, Z: 1.5}, B: geom.Vec3{X: 14, Y: 2, Z: 1.5}, N: geom.Vec3{Z: 1}, Width: 1.5, Thickness: 0.05}
	b := &Body{Bands: []geom.Band{{p}}, Piece: &placement.Piece{
		Item: &hardware.Item{Item: &plan.Item{}, Kind: hardware.KindNamed(plan.ClipItem)}, Lie: placement.Lie{Ends: []placement.EndAt{{}}},
	}}
	f := w.Drive(p, p.At(2, 0), 1.5)
	f.Diameter = 0.148
	b.Fasteners = []Fastener{f, w.Drive(p, p.At(3, 0), 1.5), w.Drive(p, p.At(2, 0.5), 1.5)}
	got := (&Steel{Wood: w}).place(b, f)
	assert.InDelta(t, 0, got.angle, 1e-6)
	assert.InDelta(t, 1, got.inRow, 1e-9)
	assert.InDelta(t, 0.5, got.rows, 1e-9)
	assert.InDelta(t, 0.5, got.spread, 1e-9)
	assert.InDelta(t, 2, got.nearest, 1e-9)
	assert.InDelta(t, 18, got.end, 0.01)
	assert.ElementsMatch(t, []float64{2, 3.5}, []float64{math.Round(100*got.loaded) / 100, math.Round(100*got.unloaded) / 100})

	// Into the plate's end: all its grain is across, and no end is near.
	p = geom.Plate{A: geom.Vec3{Y: 2}, B: geom.Vec3{Y: 2, Z: 1.5}, N: geom.Vec3{X: -1}, Width: 1.5, Thickness: 0.05}
	f = w.Drive(p, p.At(0.5, 0), 1.5)
	b.Bands, b.Fasteners = []geom.Band{{p}}, []Fastener{f}
	got = (&Steel{Wood: w}).place(b, f)
	assert.InDelta(t, 90, got.angle, 1e-6)
	assert.InDelta(t, 0.5, got.loaded, 1e-9)
	assert.InDelta(t, 0.5, got.unloaded, 1e-9)
	assert.Zero(t, got.spread)
	assert.True(t, math.IsInf(got.end, 1))
}

// Only rows beside each other are staggered; a fastener in the air is covered by nothing;
// a strap whose edge alone is in the plates, 9/64 in of it, cuts them all the same.
func TestAtTheEdgesOfSteel(t *testing.T) {
	assert.InDelta(t, 3, Pattern{Count: 3, Holes: 3, Rows: 1, Spacing: 1, EndDist: 1, Stagger: true, Offset: 0.5}.Need(), 1e-9)
	assert.InDelta(t, 2.5, Pattern{Count: 4, Holes: 4, Rows: 2, Spacing: 1, EndDist: 1, Stagger: true, Offset: 0.5}.Need(), 1e-9)
	n, by := (&Body{Fasteners: []Fastener{{}}, Bands: []geom.Band{{facing(geom.Vec3{Y: -1})}}}).covered()
	assert.Zero(t, n)
	assert.Nil(t, by)
	s := &Steel{Wood: NewWood(storied(0))}
	b := side(5.5 + 2.125/2 - 9.0/64)
	s.slots(b)
	require.Len(t, b.Slots, 3)
	assert.True(t, b.Slots[0].Open())
	b = side(5.5 + 2.125/2 + 1.0/64)
	s.slots(b)
	assert.Empty(t, b.Slots, "beside them")
	assert.Contains(t, mendOffFace(&framing.Member{Role: plan.Post}), "[[wall.shear]]")
	assert.Equal(t, "turn it to a wider face, or take a narrower strap", mendOffFace(&framing.Member{Role: plan.Header}))
	assert.Zero(t, s.Wood.through(facing(geom.Vec3{Y: -1}), geom.Vec3{X: -300}), "no wood behind the steel")
}

// A strap whose end stands in a plate passes that plate not: begun 1/2 in up in the lower top
// plate and ended 1/2 in short of the bottom plate's top, it slots the upper plate alone.
func TestWhatAStrapOnlyEndsInIsNotSlotted(t *testing.T) {
	s := &Steel{Wood: NewWood(storied(0))}
	for _, c := range []struct {
		z0, z1 float64
		want   []string
	}{
		{72, 133, []string{"top", "upper", "bottom"}},
		{94.5, 133, []string{"upper", "bottom"}},
		{72, 110, []string{"top", "upper"}},
		{94.5, 110, []string{"upper"}},
		{95.5, 133, []string{"bottom"}},
	} {
		b := side(2.75)
		b.Bands[0][0].A.Z, b.Bands[0][0].B.Z = c.z0, c.z1
		s.slots(b)
		var got []string
		for _, x := range b.Slots {
			got = append(got, x.Member.ID)
		}
		assert.Equal(t, c.want, got, "%v to %v", c.z0, c.z1)
	}
}

// Holes that do not fit are told once of an item, at its row or where its fasteners are given.
func TestHolesOffTheSteelAreToldOnceOfAnItem(t *testing.T) {
	for _, line := range []int{0, 12} {
		row := plan.Item{Mark: "s", Kind: plan.StrapItem, Length: 14, Width: 1.5, Gauge: "17 ga", Pos: plan.Pos{Line: 9}, Fasteners: []plan.Fasteners{{Part: "each end", Nail: "10d", Count: 4, Parts: 2, Pos: plan.Pos{Line: line}}}}
		it := itemOf(t, row)
		body := func() *Body { return &Body{Piece: &placement.Piece{Item: it}, Off: []OffSteel{{0, 7, 4}}} }
		got := found(holesOffSteel, &Steel{Bodies: []*Body{{Piece: &placement.Piece{Item: it}}, body(), body()}})
		require.Len(t, got, 1)
		assert.Equal(t, max(line, 9), got[0].pos.Line)
		assert.Equal(t, `the last of 4 fasteners each end is 7" from the end and there are 4" of steel`, got[0].detail)
	}
}
