package loadpath

import (
	"strings"
	"testing"

	"galewright/plan"
	"galewright/plan/framing"
	"galewright/plan/geom"
	"galewright/plan/hardware"
	"galewright/plan/placement"
	"galewright/plan/steel"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"
)

// Where 100 lb of wind and 20 of weight go from the foot of a stud: to piles by their
// shares, into the stud below, onto the plates of a wall below, or, where nothing is below,
// they are lost and told: 0.6 of 80.
func TestWhereAFootHandsItsForceByHand(t *testing.T) {
	first, second := &plan.Level{Name: "first"}, &plan.Level{Name: "second", Index: 1}
	f, lost := Force{W: 100, D: 20}, 48.0
	foot := func(kind plan.JointKind) *framing.Joint { return &framing.Joint{Kind: kind} }
	on := func(l *plan.Level) *wallPath { return &wallPath{w: &plan.Wall{Level: l}} }
	below := &carrier{n: 0, station: 0}
	wall := &wallPath{n: 0, w: &plan.Wall{Level: first}, carriers: []*carrier{below, {n: 1, station: 16}}}
	for name, c := range map[string]struct {
		k      *carrier
		piles  [2]Force
		direct Force
		tops   [2]Force
		lost   float64
	}{
		"piles":                {k: &carrier{base: foot(plan.StudBase), wall: on(first), ground: []pilePart{{&pile{n: 0}, 1.25}, {&pile{n: 1}, -0.25}}}, piles: [2]Force{{125, 25}, {-25, -5}}},
		"a slab":               {k: &carrier{base: foot(plan.StudBase), wall: on(first)}},
		"joists of a floor":    {k: &carrier{base: foot(plan.StudBase), wall: on(second)}, lost: lost},
		"a stud below":         {k: &carrier{base: foot(plan.StudStud), wall: on(second), below: []partOf{{c: below}}}, direct: f},
		"plates below":         {k: &carrier{base: foot(plan.StudStud), wall: on(second), below: []partOf{{wall: wall, station: 4}}}, tops: [2]Force{{75, 15}, {25, 5}}},
		"nothing":              {k: &carrier{base: foot(plan.StudStud), wall: on(second)}, lost: lost},
		"nothing, and no foot": {k: &carrier{wall: on(second)}, lost: lost},
	} {
		s := &caseState{piles: make([]Force, 2), carriers: make([]carried, 2), walls: make([]wallForce, 1), lost: map[*plan.Level]Force{}, orphans: map[*plan.Wall]float64{}}
		s.handDown(c.k, f)
		assert.Equal(t, c.piles[:], s.piles, name)
		assert.Equal(t, c.direct, s.carriers[0].direct, name)
		assert.Equal(t, c.tops, [2]Force{s.carriers[0].top, s.carriers[1].top}, name)
		assert.InDelta(t, c.tops[0].W+c.tops[1].W, s.walls[0].above.W, 1e-9, name)
		assert.Zero(t, s.walls[0].roof, name)
		assert.InDelta(t, c.lost, s.orphans[c.k.wall.w], 1e-9, name)
		if c.lost > 0 {
			assert.Equal(t, f, s.lost[second], name)
			s.handDown(c.k, Force{W: 10})
			assert.InDelta(t, c.lost, s.orphans[c.k.wall.w], 1e-9, "the largest of one stud")
			assert.Equal(t, f.add(Force{W: 10}), s.lost[second], "and all of them")
		} else {
			assert.Empty(t, s.lost, name)
		}
	}
}

// Three girders along x, at y = 0, 120 and 288, with joists along y: the middle one takes
// the floor half way to both, 10 psf x (120 + 168)/2 in x a pile's 96 in. Over an opening
// 48 in long beside it the joists behind it that are cut bring that much less.
func TestFloorOnPilesByHand(t *testing.T) {
	p := &piling{joists: 1, cells: map[[2]int][]*girderPath{}}
	for _, y := range []float64{0, 120, 288} {
		g := &plan.Girder{From: geom.Vec2{X: 0, Y: y}, To: geom.Vec2{X: 384, Y: y}}
		gp := &girderPath{g: g, frame: geom.NewFrame(g.From, g.To), len: 384}
		for _, s := range []float64{96, 192} {
			gp.piles = append(gp.piles, &pile{station: s, joint: &framing.Joint{Tributary: 96}})
		}
		p.girders = append(p.girders, gp)
		p.enter(gp)
	}
	upper, lowest := &plan.Level{Index: 1}, &plan.Level{Index: 0}
	opening := func(l *plan.Level) *plan.FloorOpening {
		return &plan.FloorOpening{Level: l, Lo: geom.Vec2{X: 72, Y: 160}, Hi: geom.Vec2{X: 120, Y: 220}}
	}
	for i, want := range []float64{120.0 / 2, (120 + 168) / 2.0, 168.0 / 2} {
		p.weigh(p.girders[i], 10, []*plan.FloorOpening{opening(upper)})
		assert.InDelta(t, 10*want*96/144, p.girders[i].piles[0].weight, 1e-9, "girder %d", i)
		assert.InDelta(t, 10*want*96/144, p.girders[i].piles[1].weight, 1e-9, "girder %d", i)
	}
	// The opening begins 40 in from the middle girder: of 168 in of joists behind it 128 are
	// gone, and half of that was on it; of those of the last girder, which end at 220, 68 in
	// off, 100. All 48 in of its length lie in the stretch of the pile at 96.
	p.weigh(p.girders[1], 10, []*plan.FloorOpening{opening(lowest)})
	assert.InDelta(t, 10*(144*96-128/2.0*48)/144, p.girders[1].piles[0].weight, 1e-9)
	assert.InDelta(t, 10*144*96/144.0, p.girders[1].piles[1].weight, 1e-9, "the other pile's stretch begins at 144")
	p.weigh(p.girders[2], 10, []*plan.FloorOpening{opening(lowest)})
	assert.InDelta(t, 10*(84*96-100/2.0*48)/144, p.girders[2].piles[0].weight, 1e-9)
	p.weigh(p.girders[0], 10, []*plan.FloorOpening{opening(lowest)})
	assert.InDelta(t, 10*60*96/144.0, p.girders[0].piles[0].weight, 1e-9, "the first is not touched")

	along := &girderPath{g: &plan.Girder{From: geom.Vec2{X: 50, Y: 0}, To: geom.Vec2{X: 50, Y: 288}}, frame: geom.NewFrame(geom.Vec2{X: 50}, geom.Vec2{X: 50, Y: 288}), len: 288, piles: []*pile{{joint: &framing.Joint{Tributary: 96}}}}
	p.weigh(along, 10, nil)
	assert.Zero(t, along.piles[0].weight, "no joists rest on one that runs as they do")
}

// An end of a segment without a stud, and one that no post stands under, are gaps with what
// is asked of them: at strength 1,000 lb, less 0.6 of weight.
func TestEndsOfSegmentsThatNothingStandsUnder(t *testing.T) {
	low := &plan.Level{Name: "first", PlateHeight: 96}
	high := &plan.Level{Name: "second", Index: 1, PlateHeight: 96}
	post, under := &framing.Member{ID: "post"}, &framing.Member{ID: "under"}
	at := func(m ...*framing.Member) *framing.Joint { return &framing.Joint{Kind: plan.WallEnd, Members: m} }
	run := func(l *plan.Level, end, foot *framing.Joint, stacked bool) (ends, feet []*Link) {
		a := &analysis{
			model:  &model{lookups: lookups{footOf: map[*framing.Member]*framing.Joint{post: foot}}},
			uplift: &uplift{peaks: map[*framing.Joint]*peak{}},
		}
		s := &SegmentShear{Segment: &Segment{Wall: &plan.Wall{Name: "S", Level: l}, Name: "S/A", base: true, stacked: stacked, ends: [2]*framing.Joint{end, end}}, Lifts: 1000}
		x := &LineShear{ShearLine: &ShearLine{Level: l}, Segments: []*SegmentShear{s}}
		for i := range 2 {
			if end == nil {
				ends = append(ends, a.endLink(&Check{}, x, s, i))
			}
			if f := a.footLink(&Check{}, s, i); f != nil {
				feet = append(feet, f)
			}
		}
		return ends, feet
	}
	got, feet := run(low, nil, nil, false)
	require.Len(t, got, 2)
	assert.Empty(t, feet)
	for i, id := range []string{"S/A, first end", "S/A, second end"} {
		assert.Equal(t, id, got[i].ID)
		assert.Equal(t, "wall S", got[i].Host)
		assert.InDelta(t, 600, got[i].Demand, 1e-9)
		assert.InDelta(t, 1000, got[i].Strength, 1e-9)
		assert.Equal(t, "no member to hold at this end", got[i].Gap)
	}
	for what, foot := range map[string]*framing.Joint{
		"a post below whose foot is unknown": {Below: true, Members: []*framing.Member{post, under}}, "nothing below": {Members: []*framing.Member{post, under}}, "no foot": nil,
	} {
		_, feet = run(high, at(post), foot, false)
		require.Len(t, feet, 2, what)
		for i, l := range feet {
			assert.Equal(t, []string{"S/A, below its first end", "S/A, below its second end"}[i], l.ID, what)
			assert.Equal(t, "no post below carries the end tension down", l.Gap, what)
			assert.InDelta(t, 600, l.Demand, 1e-9, what)
			assert.InDelta(t, 1000, l.Strength, 1e-9, what)
		}
	}
	_, feet = run(high, at(post), nil, true)
	assert.Empty(t, feet, "it stands on another segment")
	_, feet = run(low, at(post), nil, false)
	assert.Empty(t, feet, "it stands on the ground")
}

// A segment's height is its story's, or that of a wall with a height of its own; one without a
// name has its number.
func TestASegmentsNameAndHeight(t *testing.T) {
	l := &plan.Level{Name: "first", PlateHeight: 97, FloorDepth: 12}
	up := &plan.Level{Name: "second", Index: 1, PlateHeight: 90}
	b := &builder{model: analyzed(t, sample.plan()).model}
	s := &plan.Shear{From: 24, To: 120, Panel: "15/32", Nail: "8d common", Edge: 6}
	wall := func(h float64, to *plan.Level) *plan.Wall {
		return &plan.Wall{Name: "Q", Level: l, ToLevel: to, Height: h, From: geom.Vec2{X: 200}, To: geom.Vec2{}}
	}
	g := b.segment(wall(0, nil), s, 1, l, 0)
	assert.Equal(t, []any{"Q/2", 97.0, 96.0, 80.0, 176.0, 12.0, true}, []any{g.Name, g.Height, g.Length, g.Lo, g.Hi, g.depth, g.base})
	assert.InDelta(t, 120, b.segment(wall(120, nil), s, 0, l, 0).Height, 0)
	named := *s
	named.Name = "A"
	assert.Equal(t, "Q/A", b.segment(wall(0, nil), &named, 0, l, 0).Name)
	tall := b.segment(wall(200, up), &named, 0, up, 0)
	assert.Equal(t, []any{"Q/A@second", 90.0, false}, []any{tall.Name, tall.Height, tall.base})
	assert.Empty(t, g.Trouble)
	none := *s
	none.Nail = "6d common"
	assert.NotEmpty(t, b.segment(wall(0, nil), &none, 0, l, 0).Trouble)
}

// A 5/8 in bolt through a sill of 1-1/2 in southern pine holds 1,139 lb in wind (as in
// TestSillBoltsTakeTheSegmentsShearByHand), in a sill that the plan takes as wet 0.7 of that
// (CM, NDS 2018 Table 11.3.3, from memory), and no more than the catalog gives along.
func TestASillBoltInWetWoodByHand(t *testing.T) {
	dry := analyzed(t, sample.plan())
	bolt := func(along float64) castBolt {
		r := &steel.Rod{Diameter: 0.625}
		r.Ends[1].Embed = 7
		return castBolt{
			piece: &placement.Piece{Item: &hardware.Item{Item: &plan.Item{Load: plan.Load{Along: along}}}}, rod: r,
			sill: &framing.Member{Role: plan.SillPlate, Z0: 0, Z1: 1.5},
		}
	}
	for _, c := range []struct {
		wet   []plan.Role
		along float64
		want  float64
	}{{nil, 0, 1139}, {[]plan.Role{plan.Pile}, 0, 1139}, {[]plan.Role{plan.SillPlate}, 0, 0.7 * 1139}, {nil, 500, 500}, {nil, 1200, 1139}, {[]plan.Role{plan.SillPlate}, 800, 0.7 * 1139}} {
		p := &plan.Plan{}
		p.Loads.Wet = c.wet
		m := *dry.model
		m.house = &framing.House{Plan: p}
		lb, _, governs := (&analysis{model: &m}).pushed(bolt(c.along))
		assert.InDelta(t, c.want, lb, 1, "%+v", c)
		assert.Equal(t, c.want == c.along, strings.Contains(governs, "catalog"), "%+v", c)
	}
}

// A segment under which no spot of the ordered nails lies has no number, and says why.
func TestNailsOfABottomPlateThatLiesOnNothing(t *testing.T) {
	a := exampleReport(t, "marsh-wren.toml").work
	n := 0
	for _, x := range a.lateral.lines {
		for _, s := range x.Segments {
			if s.Wall.Name != "2S" {
				continue
			}
			n++
			whole := a.soleNails(s)
			require.NotNil(t, whole)
			assert.Empty(t, whole.Unknown)
			assert.Positive(t, whole.Pieces)
			off := *s.Segment
			off.Shear = &plan.Shear{From: -50, To: -40}
			got := a.soleNails(&SegmentShear{Segment: &off})
			require.NotNil(t, got)
			assert.Contains(t, got.Unknown, "no rim or joist under it")
		}
	}
	assert.Equal(t, 2, n)
}

// What passes from the deck into a wall at a rafter: 0.6 of the 4,800 lb that a line has from
// its deck, even over its 480 in from 100 to 580, on the rafter's 16 in: 96 lb; nothing where
// no line stands in the wall.
func TestShareOfTheDecksShearAtARafter(t *testing.T) {
	l := &plan.Level{Name: "first"}
	w := &plan.Wall{Name: "S", Level: l, From: geom.Vec2{X: 100, Y: 7}, To: geom.Vec2{X: 580, Y: 7}}
	x := &LineShear{ShearLine: &ShearLine{Level: l, At: 7, Name: "S", lo: 100, hi: 580}, Deck: -4800}
	d := &diaphragm{level: l, lines: [2][]*ShearLine{{x.ShearLine}, nil}}
	a := &analysis{model: &model{decks: []*diaphragm{d}}, lateral: &lateral{lines: []*LineShear{x}}}
	j := &framing.Joint{Wall: w, Tributary: 16}
	assert.InDelta(t, 96, a.alongWall(j), 1e-9)
	assert.Contains(t, a.alongTerm(j, 96).Text, "0.6 of 4800 lb from the deck over 40.00 ft of line S, on 1.33 ft")
	x.hi = 100
	assert.Zero(t, a.alongWall(j), "no deck lies beside it")
	d.lines[0] = nil
	assert.Zero(t, a.alongWall(j))
	assert.Contains(t, a.alongTerm(j, 0).Text, "no shear wall line stands in it")
}
