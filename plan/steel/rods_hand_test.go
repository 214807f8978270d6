package steel

import (
	"testing"

	"galewright/plan"
	"galewright/plan/framing"
	"galewright/plan/geom"
	"galewright/plan/hardware"
	"galewright/plan/placement"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"
)

// itemOf is an item of the catalog.
func itemOf(t *testing.T, it plan.Item) *hardware.Item {
	c, ds := hardware.New([]*plan.Item{&it})
	require.False(t, ds.Errors(), "%v", ds)
	return c.Items[0]
}

// rodded is a piece with a rod from a to b at a joint.
func rodded(it *hardware.Item, j *framing.Joint, tag string, a, b geom.Vec3) *placement.Piece {
	return &placement.Piece{Tag: tag, Item: it, Joint: j, Rule: &plan.Rule{}, Lie: placement.Lie{Face: plan.Through, Rod: &placement.Axis{A: a, B: b}}}
}

// roled gives a member its role.
func roled(role plan.Role, m *framing.Member) *framing.Member {
	m.Role = role
	return m
}

// sill lies on the slab at 0, 1 1/2 in thick and 5 1/2 in wide.
func sill() *framing.Member {
	return lying("sill", plan.SillPlate, geom.Vec3{X: -40}, geom.Vec3{X: 40, Y: 5.5, Z: 1.5})
}

// A bolt of 5/8 in with a 3 in square plate of 1/4 in down through a sill: the plate on
// 9 - pi/4 x 0.6875² = 8.629 in² of it, at 1 1/2 in; cut to 7 in under the slab's face it
// is cast in by 7 in, cut to end in the sill by nothing. Beside the sill it passes no
// member and is set into concrete alone: with a post base at the joint its nut is on
// the base's seat, 3/16 + 5/8 + 1/4 = 1 1/16 in under its end.
func TestBoltsDownIntoConcrete(t *testing.T) {
	bolt := itemOf(t, plan.Item{Mark: "b", Kind: "anchor bolt", Length: 12, Rod: 0.625, Washer: 3})
	base := itemOf(t, plan.Item{Mark: "base", Kind: plan.PostBaseItem, Gauge: "12 ga", Rod: 0.625, Fasteners: []plan.Fasteners{{Part: "to post", Nail: "10d", Count: 4, Parts: 1}}})
	for name, c := range map[string]struct {
		y, low  float64
		footed  bool
		kinds   [2]BearingKind
		embed   float64
		why     string
		seat    float64
		passing int
	}{
		"through the sill": {2.75, -7, false, [2]BearingKind{OnWasher, CastIn}, 7, "", 1.5, 1},
		"just through it":  {2.75, -0.25, false, [2]BearingKind{OnWasher, CastIn}, 0.25, "", 1.5, 1},
		"into it":          {2.75, 0.5, false, [2]BearingKind{OnWasher, Nothing}, -0.5, "it does not reach through the sill plate", 1.5, 1},
		"beside it":        {9, -7, false, [2]BearingKind{Nothing, CastIn}, 0, "it goes through no member", 3, 0},
		"under a base":     {9, -7, true, [2]BearingKind{OnSeat, CastIn}, 0, "", 3 - 1.0625, 0},
	} {
		j := &framing.Joint{ID: "j", Kind: plan.StudBase}
		p := rodded(bolt, j, "b", geom.Vec3{Y: c.y, Z: 3}, geom.Vec3{Y: c.y, Z: c.low})
		pieces := []*placement.Piece{p}
		if c.footed {
			pieces = append(pieces, &placement.Piece{Tag: "base", Item: base, Joint: j})
		}
		s := New(placement.Of(&framing.House{Members: []*framing.Member{sill()}}, pieces...))
		require.Len(t, s.Body(p).Rods, 1, name)
		r := s.Body(p).Rods[0]
		assert.Equal(t, c.kinds, [2]BearingKind{r.Ends[0].Kind, r.Ends[1].Kind}, name)
		assert.Equal(t, c.kinds[0] != Nothing && c.kinds[1] != Nothing, r.Bears(), name)
		assert.InDelta(t, c.embed, r.Ends[1].Embed, 1e-9, name)
		assert.Equal(t, c.why, r.Why, name)
		assert.InDelta(t, c.seat, r.Ends[0].At.Z, 1e-9, name)
		assert.Len(t, r.Passes, c.passing, name)
		assert.Equal(t, c.kinds[0] == OnWasher, s.OnWood(p), name)
		assert.InDelta(t, 3-c.low, r.Length(), 1e-9, name)
		assert.InDelta(t, 0.6875, r.Hole(), 1e-9, name)
		if c.passing > 0 {
			assert.InDelta(t, 8.629, r.Ends[0].Area, 5e-4, name)
			assert.InDelta(t, 1.5, r.Passes[0].From, 1e-9, name)
		}
	}
}

// A bolt of 3/4 in with 3 in plates through a girder of 3 in and a pile of 8: 1/4 in
// under its head, 11 in of wood, and plate, nut and thread of 1/4 + 3/4 + 1/4 in make
// 12 1/2 in. Shorter, or set too deep for the plate under its head, it bears on one side
// only; over the girder on none.
func TestABoltAcrossBearsOnBothSides(t *testing.T) {
	bolt := itemOf(t, plan.Item{Mark: "b", Kind: "anchor bolt", Length: 12.5, Rod: 0.75, Washer: 3})
	girder := lying("girder", plan.GirderBeam, geom.Vec3{X: -40, Z: 90}, geom.Vec3{X: 40, Y: 3, Z: 101.25})
	pile := roled(plan.Pile, stick("pile", geom.Vec3{X: -4, Y: 3}, geom.Vec3{X: 4, Y: 11, Z: 101.25}))
	for name, c := range map[string]struct {
		a, b, z float64
		kinds   [2]BearingKind
		why     string
	}{
		"long enough":  {-0.25, 12.25, 96, [2]BearingKind{OnWasher, OnWasher}, ""},
		"too short":    {-0.25, 12.125, 96, [2]BearingKind{OnWasher, Nothing}, `cut to 1'-0 3/8" it ends in the wood, to a washer and nut on both sides it takes 1'-0 1/2"`},
		"set too deep": {-0.125, 12.375, 96, [2]BearingKind{Nothing, OnWasher}, `cut to 1'-0 1/2" it ends in the wood, to a washer and nut on both sides it takes 1'-0 1/2"`},
		"over it":      {-0.25, 12.25, 103, [2]BearingKind{Nothing, Nothing}, "it goes through no member"},
	} {
		p := rodded(bolt, &framing.Joint{ID: "j", Kind: plan.GirderPile}, "b", geom.Vec3{Y: c.a, Z: c.z}, geom.Vec3{Y: c.b, Z: c.z})
		s := New(placement.Of(&framing.House{Members: []*framing.Member{girder, pile}}, p))
		r := s.Body(p).Rods[0]
		assert.Equal(t, c.kinds, [2]BearingKind{r.Ends[0].Kind, r.Ends[1].Kind}, name)
		assert.Equal(t, c.why, r.Why, name)
		if c.z > 101.25 {
			continue
		}
		require.Len(t, r.Passes, 2, name)
		assert.Equal(t, "girder pile", r.Passes[0].Member.ID+" "+r.Passes[1].Member.ID, name)
		assert.Equal(t, [2]float64{0, 11}, [2]float64{r.Ends[0].At.Y, r.Ends[1].At.Y}, name)
		assert.Zero(t, r.Ends[0].Nuts, "its head")
		if r.Bears() {
			assert.Equal(t, 1, r.Ends[1].Nuts, name)
			assert.InDelta(t, 9-0.518, r.Ends[0].Area, 1e-3, "less pi/4 x 0.8125²")
			assert.Equal(t, []string{"girder", "pile"}, []string{r.Ends[0].Member.ID, r.Ends[1].Member.ID})
		}
	}
}

// A hold-down over concrete has no rod of its own: it takes the anchor of its diameter
// that is set at its joint, within 1/4 in of its seat's middle and high enough, and its
// nut is on the seat: 3/16 + 7/8 + 1/4 = 1 5/16 in under the rod's end.
func TestAHoldDownTakesTheAnchorUnderIt(t *testing.T) {
	hold := itemOf(t, plan.Item{
		Mark: "h", Kind: plan.HoldDownItem, Length: 13.5, Width: 3, Gauge: "9 ga", Rod: 0.875, Standoff: 2, Center: 2,
		Fasteners: []plan.Fasteners{{Part: "to post", Nail: "10d", Count: 20, Parts: 1}},
	})
	for name, c := range map[string]struct {
		x, top, rod float64
		takes       bool
	}{
		"right under":      {0, 20, 0.875, true},
		"1/4 in off":       {0.25, 20, 0.875, true},
		"5/16 in off":      {0.3125, 20, 0.875, false},
		"longer":           {0, 22, 0.875, true},
		"shorter":          {0, 19.9, 0.875, false},
		"another diameter": {0, 20, 0.75, false},
	} {
		anchor := itemOf(t, plan.Item{Mark: "a", Kind: "anchor bolt", Length: 30, Rod: c.rod})
		j := &framing.Joint{ID: "j", Kind: plan.WallEnd}
		p := rodded(hold, j, "h", geom.Vec3{Y: 2.75, Z: 20}, geom.Vec3{Y: 2.75})
		q := rodded(anchor, j, "a", geom.Vec3{X: c.x, Y: 2.75, Z: c.top}, geom.Vec3{X: c.x, Y: 2.75, Z: -10})
		s := New(placement.Of(&framing.House{Members: []*framing.Member{sill()}}, p, q))
		require.Len(t, s.Body(p).Rods, 1, name)
		r := s.Body(p).Rods[0]
		assert.Equal(t, c.takes, r == s.Body(q).Rods[0], name)
		assert.Equal(t, c.takes, r.Bears(), name)
		assert.Len(t, s.Rods(), 1, "%s: the anchor's alone is bought", name)
		if c.takes {
			assert.Equal(t, OnSeat, r.Ends[0].Kind, name)
			assert.InDelta(t, 20-1.3125, r.Ends[0].At.Z, 1e-9, name)
			continue
		}
		assert.Equal(t, "no rod of its diameter is set under its seat", r.Why, name)
		assert.Nil(t, r.For, name)
		assert.InDelta(t, 20, r.Length(), 1e-9, name)
	}
}

// The rod of a hold-down pair has a nut on the seat of each body, at 1/4 + 1/2 + 1/4 = 1
// in from its ends; what it passes on the way is the floor.
func TestTheRodOfAPairRunsFromSeatToSeat(t *testing.T) {
	pair := itemOf(t, plan.Item{
		Mark: "p", Kind: "hold-down pair", Length: 13.5, Width: 3, Gauge: "9 ga", Rod: 0.5, Washer: 2, Standoff: 2, Center: 2,
		Fasteners: []plan.Fasteners{{Part: "each body", Nail: "10d", Count: 20, Parts: 2}},
	})
	p := rodded(pair, &framing.Joint{ID: "j", Kind: plan.WallEnd}, "p", geom.Vec3{Y: 2.75, Z: 20}, geom.Vec3{Y: 2.75, Z: -20})
	s := New(placement.Of(&framing.House{Members: []*framing.Member{sill()}}, p))
	r := s.Body(p).Rods[0]
	require.True(t, r.Bears())
	assert.Equal(t, [2]BearingKind{OnSeat, OnSeat}, [2]BearingKind{r.Ends[0].Kind, r.Ends[1].Kind})
	assert.Equal(t, [2]float64{19, -19}, [2]float64{r.Ends[0].At.Z, r.Ends[1].At.Z})
	assert.Equal(t, [4]int{1, 1, 1, 1}, [4]int{r.Ends[0].Nuts, r.Ends[1].Nuts, r.Ends[0].Washers, r.Ends[1].Washers})
	require.Len(t, r.Passes, 1)
	assert.InDelta(t, 18.5, r.Passes[0].From, 1e-9)
	assert.False(t, s.OnWood(p))
}

// What is told of rods that bear on nothing: one that ends in the girder takes a longer
// one; with a pile where its nut would be, the pile is moved; with nothing under it, wood
// is put there. Pieces of one item with one cause are told once.
func TestWhatIsToldOfRods(t *testing.T) {
	hold := itemOf(t, plan.Item{
		Mark: "h", Kind: plan.HoldDownItem, Length: 13.5, Width: 3, Gauge: "9 ga", Rod: 0.875, Standoff: 2, Center: 2,
		Fasteners: []plan.Fasteners{{Part: "to post", Nail: "10d", Count: 20, Parts: 1}},
	})
	girder := lying("girder", plan.GirderBeam, geom.Vec3{X: -40, Z: -11}, geom.Vec3{X: 40, Y: 5.5, Z: 0})
	pile := roled(plan.Pile, stick("pile", geom.Vec3{X: -4, Y: -1, Z: -90}, geom.Vec3{X: 4, Y: 7, Z: -11}))
	at := func(x, long float64, tag string) *placement.Piece {
		p := rodded(hold, &framing.Joint{ID: tag, Kind: plan.WallEnd}, tag, geom.Vec3{X: x, Y: 2.75, Z: 20}, geom.Vec3{X: x, Y: 2.75, Z: 20 - long})
		p.Cut, p.Rule = long, &plan.Rule{Pos: plan.Pos{Line: 7}}
		return p
	}
	// Seat at 20 - 1.3125; to the girder's underside and cut washer, nut and thread below
	// it: 20 + 11 + 1.3125 = 32.3125 in.
	for name, c := range map[string]struct {
		pieces []*placement.Piece
		want   []string
	}{
		"long enough": {[]*placement.Piece{at(20, 32.3125, "a")}, nil},
		"too short": {[]*placement.Piece{at(20, 30, "a"), at(22, 30, "b")}, []string{
			`h: its rod ends in the wood: cut to 2'-6" it ends in the wood, to a washer and nut under the girder girder it takes 2'-8 5/16"|take a longer one`,
		}},
		"on the pile": {[]*placement.Piece{at(0, 34, "a")}, []string{
			"h: there is no room for the nut of its rod: where it comes out under the girder girder the pile pile leaves no room for washer and nut|move what is in the way, such as a pile, or place the piece beside it",
		}},
		"beside it": {[]*placement.Piece{at(90, 34, "a")}, []string{
			"h: its rod bears on nothing at one end: nothing under it takes a washer: it goes through nothing|put a girder, beam or blocking under it, place it where one lies, or leave the joint out with except",
		}},
	} {
		s := New(placement.Of(&framing.House{Members: []*framing.Member{girder, pile}}, c.pieces...))
		var got []string
		for _, d := range s.Check() {
			if d.Code == rodWithoutBearing.ID {
				assert.Equal(t, plan.Error, d.Severity, name)
				assert.Equal(t, 7, d.Pos.Line, name)
				got = append(got, d.Summary+"|"+d.Mend)
			}
		}
		if name == "beside it" {
			require.Len(t, got, 1)
			assert.Contains(t, got[0], "h: its rod bears on nothing at one end: nothing under it takes a washer: it goes through nothing")
			assert.Contains(t, got[0], "put a girder, beam or blocking under it")
			continue
		}
		assert.Equal(t, c.want, got, name)
	}
}

// Of many pieces the first four are named and the rest counted.
func TestWhereManyPiecesAre(t *testing.T) {
	it := &hardware.Item{Item: &plan.Item{Mark: "h"}}
	wall := &plan.Wall{Name: "W1"}
	told := &told{check: rodWithoutBearing, at: map[cause]*same{}}
	piece := func(tag string) *placement.Piece {
		return &placement.Piece{Tag: tag, Item: it, Rule: &plan.Rule{}, Joint: &framing.Joint{Kind: plan.WallEnd, Wall: wall, Station: 12}}
	}
	first := piece("a")
	told.add(finding{piece: first, cause: "x", count: 2})
	require.Len(t, told.list(), 1)
	assert.Contains(t, told.list()[0].Where, ", a")
	assert.Equal(t, "h: x (2 fasteners)", told.list()[0].Summary)
	told.add(finding{piece: first, cause: "x", count: 1})
	assert.Contains(t, told.list()[0].Where, ", a", "one piece told twice is one")
	assert.Equal(t, "h: x (3 fasteners)", told.list()[0].Summary)
	for _, tag := range []string{"b", "c", "d"} {
		told.add(finding{piece: piece(tag), cause: "x"})
	}
	where := told.list()[0].Where
	assert.Contains(t, where, "4 pieces at "+string(plan.WallEnd)+" joints, first ")
	assert.True(t, len(where) > 12 && where[len(where)-12:] == ": a, b, c, d", where)
	told.add(finding{piece: piece("e"), cause: "x"})
	told.add(finding{piece: piece("f"), cause: "x"})
	assert.Contains(t, told.list()[0].Where, ": a, b, c, d and 2 more")
	told.add(finding{piece: piece("g"), cause: "y", detail: "z"})
	require.Len(t, told.list(), 2)
	assert.Equal(t, "h: y: z", told.list()[1].Summary)
}
