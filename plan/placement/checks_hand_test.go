package placement

import (
	"testing"

	"galewright/plan"
	"galewright/plan/framing"
	"galewright/plan/geom"
	"galewright/plan/hardware"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"
)

// Nails of 1 1/2 in through 0.0418 in of steel, on the side of a stud 1 1/2 in thick: 1.458 in
// of them are in it. Of a 2 1/2 in nail 0.958 in come out; not where another stud stands
// against the far side, nor where no end of the piece is laid, and a bolt is to come out.
func TestWhichNailsComeOut(t *testing.T) {
	const steel = 0.0418
	for _, c := range []struct {
		name   string
		nail   string
		length float64
		face   plan.Face
		beside bool
		out    float64 // 0: none
	}{
		{"1 1/2 in", "10d x 1 1/2", 1.5, plan.Left, false, 0},
		{"to a 1/32", "x", 1.5 + steel + 1./32, plan.Left, false, 0},
		{"past a 1/32", "x", 1.5 + steel + 1./16, plan.Left, false, 1. / 16},
		{"2 1/2 in", "8d common", 2.5, plan.Left, false, 2.5 - steel - 1.5},
		{"2 1/2 in from the right", "8d common", 2.5, plan.Right, false, 2.5 - steel - 1.5},
		{"into the next stud", "8d common", 2.5, plan.Left, true, 0},
		{"on its edge", "8d common", 2.5, plan.Outside, false, 0},
		{"6 in on its edge", "x", 6, plan.Outside, true, 6 - steel - 5.5},
		{"no length is known", "8d common", 0, plan.Left, false, 0},
		{"a bolt", "bolt 1/2 x 6", 6, plan.Left, false, 0},
	} {
		h := newHand()
		m := h.member(0, plan.Stud, 40, 41.5, floor1+1.5, top1-3)
		if c.beside {
			h.member(0, plan.King, 41.5, 43, floor1+1.5, top1-3)
		}
		f := h.walls[0].Frame()
		g := facingOf(f, m.S0, m.S1, 5.5, c.face)
		p := &Piece{Item: &hardware.Item{Item: &plan.Item{Thickness: steel}}, Lie: Lie{
			Face: c.face, Z0: 150, Z1: 160, Laid: []Laid{{Member: m}}, Ends: []EndAt{{Laid: 0, Starts: []Start{{}}}},
			Bands: []geom.Band{{{A: g.at(150, 0), B: g.at(160, 0), N: g.n, Width: 1.25}}},
		}}
		x := &placer{world: newWorld(h.House)}
		e := hardware.End{Fasteners: plan.Fasteners{Nail: c.nail, Length: c.length}}
		got, deep, out := x.tip(p, 0, e)
		assert.InDelta(t, c.out, out, 1e-9, c.name)
		assert.Equal(t, c.out > 0, got == m, c.name)
		if c.out > 0 {
			assert.InDelta(t, map[bool]float64{true: 5.5, false: 1.5}[c.face == plan.Outside], deep, 1e-9, c.name)
		}
		got, _, _ = x.tip(p, 1, e)
		assert.Nil(t, got, "%s: an end that lies nowhere", c.name)
		p.Ends[0].Starts = nil
		got, _, _ = x.tip(p, 0, e)
		assert.Nil(t, got, "%s: an end without a start", c.name)
	}
	plate := &framing.Member{Role: plan.UpperPlate}
	x := &placer{}
	assert.True(t, x.backed(&Piece{}, plate, geom.Vec3{Z: 1}), "down through the two plates")
	assert.False(t, x.backed(&Piece{}, plate, geom.Vec3{Y: -1}), "from their edge")
	assert.False(t, x.backed(&Piece{Lie: Lie{Face: plan.Left}}, &framing.Member{Role: plan.Joist}, geom.Vec3{Y: -1}), "off the walls")
}

// A strap of 42 in over 17 3/8: laps of 12 5/16. What each end takes is the room of its
// nails, 0.5 + 8 x 0.75 = 6 1/2 in for nine, and the lap asked for as far as the member goes;
// over the plates' edges nothing. What is missing of laps alike is missing twice.
func TestWhatAStrapsLapsWant(t *testing.T) {
	stud, rim := &framing.Member{Role: plan.Stud}, &framing.Member{Role: plan.Rim}
	for _, c := range []struct {
		name       string
		kind       plan.JointKind
		counts     [2]int
		lap        float64 // asked for
		laps, room [2]float64
		low        *framing.Member
		need       [2]float64
		says       string // of what is told; none when empty
		mendsTo    string
		length     float64
	}{
		{name: "enough", kind: plan.StudStud, counts: [2]int{9, 9}, laps: [2]float64{12.3125, 12.3125}, room: [2]float64{90, 90}, low: stud, need: [2]float64{6.5, 6.5}, length: 42},
		{name: "just enough", kind: plan.StudStud, counts: [2]int{9, 9}, laps: [2]float64{6.5, 6.5}, room: [2]float64{90, 90}, low: stud, need: [2]float64{6.5, 6.5}, length: 30.375},
		{name: "a pencil's line short at each", kind: plan.StudStud, counts: [2]int{9, 9}, laps: [2]float64{6.46875, 6.46875}, room: [2]float64{90, 90}, low: stud, need: [2]float64{6.5, 6.5}, length: 30.3125},
		{name: "1/2 short at each", kind: plan.StudStud, counts: [2]int{9, 9}, laps: [2]float64{6, 6}, room: [2]float64{90, 90}, low: stud, need: [2]float64{6.5, 6.5}, length: 29.375, says: `short by 1"`, mendsTo: `2'-6 3/8"`},
		{name: "short at one of two alike", kind: plan.StudStud, counts: [2]int{9, 5}, laps: [2]float64{6, 6}, room: [2]float64{90, 90}, low: stud, need: [2]float64{6.5, 3.5}, length: 29.375, says: `short by 1"`, mendsTo: `2'-6 3/8"`},
		{name: "short at one of two unlike", kind: plan.StudStud, counts: [2]int{9, 5}, laps: [2]float64{6, 8}, room: [2]float64{90, 90}, low: stud, need: [2]float64{6.5, 3.5}, length: 31.375, says: `short by 1/2"`, mendsTo: `2'-7 7/8"`},
		{name: "the lap asked for", kind: plan.StudStud, counts: [2]int{9, 9}, lap: 15, laps: [2]float64{14, 14}, room: [2]float64{90, 90}, low: stud, need: [2]float64{15, 15}, length: 45.375, says: `short by 2"`, mendsTo: `3'-11 3/8"`},
		{name: "no more lap than there is wood", kind: plan.StudStud, counts: [2]int{9, 9}, lap: 15, laps: [2]float64{20, 8}, room: [2]float64{90, 8}, low: stud, need: [2]float64{15, 8}, length: 45.375},
		{name: "over the plates' edges", kind: plan.StudTop, counts: [2]int{9, 9}, laps: [2]float64{8, 3}, room: [2]float64{90, 3}, low: rim, need: [2]float64{6.5, 0}, length: 28.375},
		{name: "no nails known", kind: plan.StudStud, counts: [2]int{0, 0}, laps: [2]float64{1, 1}, room: [2]float64{90, 90}, low: stud, need: [2]float64{0, 0}, length: 19.375},
		{name: "a rim that gives no more", kind: plan.StudBase, counts: [2]int{9, 9}, laps: [2]float64{12, 6}, room: [2]float64{90, 6}, low: rim, need: [2]float64{6.5, 6.5}, length: 35.375, says: `the rim gives 6" to nail to, the nails of that end take 6 1/2"`, mendsTo: "a deeper member"},
		{name: "a rim that gives more", kind: plan.StudBase, counts: [2]int{9, 9}, laps: [2]float64{12, 6}, room: [2]float64{90, 11}, low: rim, need: [2]float64{6.5, 6.5}, length: 35.375, says: `short by 1/2"`, mendsTo: `2'-11 7/8"`},
		{name: "a stud that gives no more", kind: plan.StudStud, counts: [2]int{9, 9}, laps: [2]float64{12, 6}, room: [2]float64{90, 6}, low: stud, need: [2]float64{6.5, 6.5}, length: 35.375, says: `short by 1/2"`, mendsTo: `2'-11 7/8"`},
	} {
		it := &plan.Item{Mark: "s", Length: c.length, Lap: c.lap, Width: 1.25, Fasteners: []plan.Fasteners{{Part: "each end", Count: c.counts[0], Parts: 1}, {Part: "each end", Count: c.counts[1], Parts: 1}}}
		p := &Piece{
			Joint: &framing.Joint{Kind: c.kind}, Item: &hardware.Item{Item: it, Kind: hardware.KindNamed(plan.StrapItem)}, Rule: &plan.Rule{},
			Lie: Lie{Gap: c.length - c.laps[0] - c.laps[1], Bands: []geom.Band{make(geom.Band, 1)}, Laid: []Laid{{Member: stud, Lap: c.laps[0], Room: c.room[0]}, {Member: c.low, Lap: c.laps[1], Room: c.room[1]}}, tied: [2]int{0, 1}},
		}
		assert.Equal(t, c.need, needs(p), c.name)
		x := &placer{world: &world{house: &framing.House{Plan: &plan.Plan{}}}}
		x.tooShort(strapTooShort, p)
		ds := x.tell.list()
		if c.says == "" {
			assert.Empty(t, ds, c.name)
			continue
		}
		require.Len(t, ds, 1, c.name)
		assert.Contains(t, ds[0].Summary, c.says, c.name)
		assert.Contains(t, ds[0].Mend, c.mendsTo, c.name)
	}
}

// A lap past the end of its member is told with what to take off: twice that where both laps
// are alike, since the strap is set in the middle; up to the play of a sixteenth it is none.
func TestAStrapPastItsMember(t *testing.T) {
	stud := &framing.Member{Role: plan.Stud}
	for _, c := range []struct {
		laps, room [2]float64
		mends      []string
	}{
		{[2]float64{12, 12}, [2]float64{12, 12}, nil},
		{[2]float64{12 + play, 12}, [2]float64{12, 12}, nil},
		{[2]float64{13, 12}, [2]float64{12, 12}, []string{`at least 1" shorter`}},
		{[2]float64{13, 13}, [2]float64{12, 90}, []string{`at least 2" shorter`}},
		{[2]float64{13, 14}, [2]float64{12, 12}, []string{`at least 1" shorter`, `at least 2" shorter`}},
	} {
		p := &Piece{
			Joint: &framing.Joint{Kind: plan.StudStud}, Item: &hardware.Item{Item: &plan.Item{Mark: "s"}, Kind: hardware.KindNamed(plan.StrapItem)}, Rule: &plan.Rule{},
			Lie: Lie{Laid: []Laid{{Member: stud, Lap: c.laps[0], Room: c.room[0]}, {Member: stud, Lap: c.laps[1], Room: c.room[1]}}, tied: [2]int{0, 1}},
		}
		x := &placer{world: &world{house: &framing.House{Plan: &plan.Plan{}}}}
		x.pastMember(strapPastMember, p)
		ds := x.tell.list()
		require.Len(t, ds, len(c.mends), "%+v", c)
		for i, m := range c.mends {
			assert.Contains(t, ds[i].Mend, m, "%+v", c)
		}
	}
}

// A roll of 150 in gives a strap of that length and no longer one; what is no strap, or comes
// off no roll, is not asked.
func TestAStrapOffItsRoll(t *testing.T) {
	for _, c := range []struct {
		kind      plan.ItemKind
		cut, coil float64
		told      bool
	}{
		{plan.CoilStrapItem, 150, 150, false},
		{plan.CoilStrapItem, 150.03, 150, false},
		{plan.CoilStrapItem, 151, 150, true},
		{plan.StrapItem, 151, 0, false},
		{plan.HoldDownItem, 151, 150, false},
	} {
		p := &Piece{
			Joint: &framing.Joint{}, Item: &hardware.Item{Item: &plan.Item{Mark: "s", Coil: c.coil}, Kind: hardware.KindNamed(c.kind)}, Rule: &plan.Rule{}, Lie: Lie{Cut: c.cut},
		}
		x := &placer{world: &world{house: &framing.House{Plan: &plan.Plan{}}}, p: Of(&framing.House{}, p)}
		cutPastRoll.run(x)
		assert.Len(t, x.tell.list(), map[bool]int{true: 1}[c.told], "%+v", c)
	}
}

// A girder breaks at 100 over a pile. A bolt of 3/4 in wants 1 1/2 in of wood from the end of the piece
// that it passes; what lies past the end of the other piece passes that one no more.
func TestABoltAtTheEndOfAGirder(t *testing.T) {
	piece := func(from, to float64) *framing.Member {
		return &framing.Member{Role: plan.GirderBeam, A: geom.Vec3{X: from, Z: 80}, B: geom.Vec3{X: to, Z: 80}}
	}
	pile := &framing.Member{Role: plan.Pile, A: geom.Vec3{X: 100}, B: geom.Vec3{X: 100, Z: 75}}
	whole, two, apart := []*framing.Member{piece(0, 200), pile}, []*framing.Member{piece(0, 100), piece(100, 200), pile}, []*framing.Member{piece(0, 100), piece(100.25, 200), pile}
	for _, c := range []struct {
		name string
		kind plan.JointKind
		item plan.ItemKind
		on   []*framing.Member
		at   float64
		says string // none when empty
	}{
		{"through a girder that goes on", plan.GirderPile, plan.AnchorBoltItem, whole, 100, ""},
		{"at its end", plan.GirderPile, plan.AnchorBoltItem, whole, 1.25, `passes the girder 1 1/4" from its end, and needs 1 1/2"`},
		{"at its other end", plan.GirderPile, plan.AnchorBoltItem, whole, 199, `passes the girder 1" from its end`},
		{"where two meet", plan.GirderPile, plan.AnchorBoltItem, two, 100, `passes the girder 0" from its end`},
		{"in the gap between them", plan.GirderPile, plan.AnchorBoltItem, apart, 100.125, `passes the girder 0" from its end`},
		{"in the second, too near", plan.GirderPile, plan.AnchorBoltItem, two, 101.375, `passes the girder 1 3/8" from its end`},
		{"in the first, too near", plan.GirderPile, plan.AnchorBoltItem, two, 98.625, `passes the girder 1 3/8" from its end`},
		{"in the second", plan.GirderPile, plan.AnchorBoltItem, two, 101.625, ""},
		{"in the first", plan.GirderPile, plan.AnchorBoltItem, two, 98.375, ""},
		{"at another joint", plan.GirderSplice, plan.AnchorBoltItem, two, 100, ""},
		{"a strap", plan.GirderPile, plan.StrapItem, two, 100, ""},
	} {
		it := &hardware.Item{Item: &plan.Item{Mark: "b", Rod: 0.75}, Kind: hardware.KindNamed(c.item)}
		p := &Piece{Joint: &framing.Joint{Kind: c.kind, Members: c.on}, Item: it, Rule: &plan.Rule{}, Lie: Lie{Rod: &Axis{A: geom.Vec3{X: c.at, Y: -6, Z: 80}, B: geom.Vec3{X: c.at, Y: 6, Z: 80}}}}
		x := &placer{world: &world{house: &framing.House{Plan: &plan.Plan{}}}, p: &Placement{Pieces: []*Piece{{Joint: p.Joint, Item: it}, p}}}
		boltAtSplice.run(x)
		ds := x.tell.list()
		if c.says == "" {
			assert.Empty(t, ds, c.name)
			continue
		}
		require.Len(t, ds, 1, c.name)
		assert.Contains(t, ds[0].Summary, c.says, c.name)
	}
}

// A face told of two pieces is that of the later one, unless that is a place over or through a member.
func TestTheFaceOfAnOverlapThatIsTold(t *testing.T) {
	for _, c := range [][3]plan.Face{{plan.Left, plan.Outside, plan.Left}, {plan.Inside, plan.Top, plan.Inside}, {plan.Top, plan.Outside, plan.Outside}, {plan.Through, plan.Right, plan.Right}} {
		assert.Equal(t, c[2], cleared(c[0], c[1]), "%v", c)
	}
}

// A joist at a flush beam and a beam's end at a wall want a hanger; not the end under which a post of
// the beam's own stands, less than 6 in from it on plan, and no joint of another kind.
func TestWhatHangsAtABeamWithoutAHanger(t *testing.T) {
	post, upright := &framing.Member{Role: plan.BeamPost}, &framing.Member{Role: plan.Stud}
	joist, one, two := &framing.Member{Role: plan.Joist}, &framing.Member{Role: plan.PlateBeam}, &framing.Member{Role: plan.PlateBeam}
	for _, c := range []struct {
		name   string
		kind   plan.JointKind
		first  *framing.Member
		on     *framing.Member // under the second beam, near the joint
		off    float64
		hanger bool
		says   string // none when empty
		line   int
	}{
		{"a joist", plan.JoistHung, joist, upright, 0, false, "a joist hangs here", 8},
		{"a joist at a post", plan.JoistHung, joist, post, 0, false, "a joist hangs here", 8},
		{"a joist in a hanger", plan.JoistHung, joist, upright, 0, true, "", 0},
		{"an end", plan.BeamEnd, two, upright, 0, false, "a beam's end hangs here", 8},
		{"an end in a hanger", plan.BeamEnd, two, upright, 0, true, "", 0},
		{"an end on a post", plan.BeamEnd, two, post, 5.9, false, "", 0},
		{"an end beside a post", plan.BeamEnd, two, post, 6, false, "a beam's end hangs here", 8},
		{"at the post of another beam", plan.BeamEnd, one, post, 0, false, "a beam's end hangs here", 7},
		{"a seat", plan.BeamSeat, two, upright, 0, false, "", 0},
	} {
		h := newHand()
		h.Beams = []*framing.Beam{
			{FloorBeam: &plan.FloorBeam{Pos: plan.Pos{File: "t.toml", Line: 7}}, Pieces: []*framing.Member{{}, one}},
			{FloorBeam: &plan.FloorBeam{Pos: plan.Pos{File: "t.toml", Line: 8}}, Pieces: []*framing.Member{{}, two}, Supports: []framing.BeamSupport{
				{On: upright, At: geom.Vec3{X: 200}}, {On: c.on, At: geom.Vec3{X: 40 + c.off, Z: 90}},
			}},
		}
		j := &framing.Joint{Kind: c.kind, At: geom.Vec3{X: 40, Z: 100}, Members: []*framing.Member{c.first, upright}}
		if c.first == joist {
			j.Members[1] = two
		}
		h.Joints = []*framing.Joint{j}
		x := &placer{world: newWorld(h.House), p: &Placement{Pieces: []*Piece{
			{Joint: j, Item: &hardware.Item{Kind: hardware.KindNamed(plan.ClipItem)}}, {Joint: &framing.Joint{}, Item: &hardware.Item{Kind: hardware.KindNamed(plan.HangerItem)}},
		}}}
		if c.hanger {
			x.p.Pieces = append(x.p.Pieces, &Piece{Joint: j, Item: &hardware.Item{Kind: hardware.KindNamed(plan.HangerItem)}})
		}
		beamUnhung.run(x)
		ds := x.tell.list()
		if c.says == "" {
			assert.Empty(t, ds, c.name)
			continue
		}
		require.Len(t, ds, 1, c.name)
		assert.Contains(t, ds[0].Summary, c.says, c.name)
		assert.Contains(t, ds[0].Mend, string(c.kind), c.name)
		assert.Equal(t, c.line, ds[0].Pos.Line, c.name)
	}
}

// A wrap strap goes over a plate or down its inside or outside face, on no side; a strap's kind lists no
// faces: where it lies is for its shape to say.
func TestFacesThatAnItemCanBeNailedTo(t *testing.T) {
	for _, c := range []struct {
		kind plan.ItemKind
		face plan.Face
		want bool
	}{
		{plan.WrapStrapItem, "", true},
		{plan.WrapStrapItem, plan.Both, true},
		{plan.WrapStrapItem, plan.Inside, true},
		{plan.WrapStrapItem, plan.Left, false},
		{plan.StrapItem, plan.Left, true},
		{plan.StrapItem, plan.Outside, true},
	} {
		x := &placer{found: map[plan.Code][]finding{}}
		it := &hardware.Item{Item: &plan.Item{Mark: "m"}, Kind: hardware.KindNamed(c.kind)}
		assert.Equal(t, c.want, x.faced(it, c.face, plan.Pos{}, "here"), "%s %s", c.kind, c.face)
		var told []string
		for _, f := range x.found["face-not-for-item"] {
			told = append(told, f.diag.Mend)
		}
		if c.want {
			assert.Empty(t, told)
		} else {
			assert.Equal(t, []string{"write one of inside, outside, or leave face out"}, told)
		}
	}
}
