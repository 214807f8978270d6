package placement

import (
	"math"
	"testing"

	"galewright/plan"
	"galewright/plan/framing"
	"galewright/plan/geom"
	"galewright/plan/hardware"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"
)

// A place that removes takes what it names and nothing else, and what another place took
// before keeps its reason; where nothing of it stands that is told.
func TestWhatARemovalTakes(t *testing.T) {
	story := plan.Rule{Name: "story", At: plan.StudStud, Use: "story-strap"}
	for _, c := range []struct {
		name   string
		places []any
		pieces []string
		why    string // of the rule's ask
		told   int
	}{
		{"what it names", []any{plan.Place{Use: "story-strap", Wall: "2S", On: plan.StudStud, At: []float64{16}, Action: plan.Remove}}, nil, "removed by the engineer's place (t.toml:200)", 0},
		{"all", []any{plan.Place{Wall: "2S", On: plan.StudStud, At: []float64{16}, Action: plan.Remove}}, nil, "removed by the engineer's place (t.toml:200)", 0},
		{"what does not stand there", []any{plan.Place{Use: "coil", Wall: "2S", On: plan.StudStud, At: []float64{16}, Action: plan.Remove}}, []string{"2S-16-SS-strap"}, "", 1},
		{"all, twice", []any{
			plan.Place{Wall: "2S", On: plan.StudStud, At: []float64{16}, Action: plan.Remove},
			plan.Place{Wall: "2S", On: plan.StudStud, At: []float64{16}, Action: plan.Remove},
		}, nil, "removed by the engineer's place (t.toml:200)", 1},
	} {
		h := standard().with(story).with(c.places...)
		p, ds := placed(t, h)
		assert.Len(t, only(ds, "place-without-effect"), c.told, c.name)
		var got []string
		var why string
		for j, asks := range p.asks {
			if j.Kind != plan.StudStud || j.Station != 16 {
				continue
			}
			for _, a := range asks {
				if a.rule != nil {
					why = a.why
				}
			}
		}
		for _, q := range p.Pieces {
			if q.Joint.Station == 16 {
				got = append(got, q.Tag)
			}
		}
		assert.Equal(t, c.pieces, got, c.name)
		assert.Equal(t, c.why, why, c.name)
	}
}

// Of the joints that a rule could be at, the nearest is the first of those that hold most of
// its conditions; each wall has seven stud tops, the first at 3/4 in.
func TestTheNearestJointOfARuleWithoutAny(t *testing.T) {
	for _, c := range []struct {
		where plan.Where
		says  string
	}{
		// 1S-32 and 2S-32 each hold one of wall and level, and the stretch.
		{plan.Where{Wall: []string{"1S"}, Level: []string{"second"}, From: 31, To: 33}, "of 14 such joints the nearest is 1S-32-ST: "},
		// Only the level holds, at the upper wall's.
		{plan.Where{Level: []string{"second"}, From: 300, To: 400}, "of 14 such joints the nearest is 2S-1-ST: "},
		// None holds: the first of all.
		{plan.Where{Wall: []string{"3S"}}, "of 14 such joints the nearest is 1S-1-ST: "},
	} {
		_, ds := placed(t, standard().with(plan.Rule{Name: "r", At: plan.StudTop, Use: "wrap-strap", Where: c.where}))
		var mends []string
		for _, d := range ds {
			mends = append(mends, d.Mend)
		}
		require.NotEmpty(t, mends)
		assert.Contains(t, mends[0], c.says)
	}
}

// A wrap has steel on both sides of what it goes over: of a wall along x, whose inside is
// north, each stretch is on the face that it looks out of. A strap has one face.
func TestTheFaceOfEachStretch(t *testing.T) {
	wall := &plan.Wall{To: geom.Vec2{X: 96}}
	in := wall.Frame().In.Up(0)
	for _, c := range []struct {
		n    geom.Vec3
		face plan.Face
	}{
		{in, plan.Inside},
		{in.Mul(-1), plan.Outside},
		{geom.Vec3{X: -1}, plan.Left},
		{geom.Vec3{X: 1}, plan.Right},
	} {
		p := &Piece{
			Joint: &framing.Joint{Kind: plan.StudTop, Wall: wall}, Item: &hardware.Item{Item: &plan.Item{}, Kind: hardware.KindNamed(plan.WrapStrapItem)},
			Lie: Lie{Face: plan.Top, Bands: []geom.Band{make(geom.Band, 3)}},
		}
		assert.Equal(t, c.face, p.faceOf(geom.Plate{N: c.n}), "%v", c.n)
		p.Bands = []geom.Band{make(geom.Band, 2)}
		assert.Equal(t, plan.Top, p.faceOf(geom.Plate{N: c.n}), "%v: two stretches", c.n)
	}
}

// What goes along a plate lies on its outside unless it is asked for inside or on top; left
// and right of a wall are ends, no faces of a plate.
func TestFacesOfAStrapAlongAPlate(t *testing.T) {
	for asked, want := range map[plan.Face]plan.Face{"": plan.Outside, plan.Left: plan.Outside, plan.Right: plan.Outside, plan.Outside: plan.Outside, plan.Inside: plan.Inside, plan.Top: plan.Top} {
		h := spliced(plan.PlateSplice, 0)
		x := &placer{world: newWorld(h.House)}
		l, fault := x.level(strap24(h.Joints[0], asked))
		require.Nil(t, fault)
		assert.Equal(t, want, l.Face, "asked for %q", asked)
	}
}

// strap24 asks for one strap of 24 in at a joint.
func strap24(j *framing.Joint, face plan.Face) want {
	return want{joint: j, face: face, n: 1, item: &hardware.Item{Item: &plan.Item{Length: 24, Width: 1.25}, Kind: hardware.KindNamed(plan.StrapItem)}}
}

// A strap for the top of a plate that an upper one covers goes to the first face that
// reaches the break, and says why; where the engineer wants it on top all the same, or the
// joint can be reached there, it stays.
func TestAStrapThatLeavesACoveredTop(t *testing.T) {
	const why = "moved there because the top plate breaks here, and the plate over it covers its top"
	for _, c := range []struct {
		name  string
		faces []plan.Face
		face  plan.Face
		onTop bool
		want  plan.Face
		moved string
	}{
		{"covered", []plan.Face{plan.Inside, plan.Outside}, plan.Top, false, plan.Inside, why},
		{"open", []plan.Face{plan.Outside, plan.Top}, plan.Top, false, plan.Top, ""},
		{"no face is known", nil, plan.Top, false, plan.Top, ""},
		{"another face asked for", []plan.Face{plan.Inside}, plan.Outside, false, plan.Outside, ""},
		{"on top all the same", []plan.Face{plan.Inside}, plan.Top, true, plan.Top, ""},
	} {
		h := spliced(plan.PlateSplice, 0)
		j := h.Joints[0]
		j.Faces = c.faces
		x := &placer{world: newWorld(h.House)}
		w := strap24(j, c.face)
		w.onTop = c.onTop
		l, fault := x.shape(w)
		require.Nil(t, fault, c.name)
		assert.Equal(t, c.want, l.Face, c.name)
		assert.Equal(t, c.moved, l.Moved, c.name)
	}
}

// A strap over a rafter lies on three lengths of wood: the rafter, and of the plates under it
// what each leg comes down on. Its two ends are the legs, the second and the third.
func TestEndsOfAStrapOverARafter(t *testing.T) {
	h, _ := seated(top2 + 6)
	p, _ := placed(t, h.with(plan.Rule{Name: "o", At: plan.RafterPlate, Use: "wrap-strap"}))
	q := one(t, p)
	require.Len(t, q.Laid, 3)
	require.Len(t, q.Ends, 2)
	assert.Equal(t, [2]int{1, 2}, [2]int{q.Ends[0].Laid, q.Ends[1].Laid})
	assert.Equal(t, []Start{{0, false}}, q.Ends[0].Starts, "from the foot of the first leg")
	assert.Equal(t, []Start{{0, true}}, q.Ends[1].Starts, "from that of the last")
}

// A coil round a corner is cut to a lap of 15 on each wall, 30 in all.
func TestACoilRoundACorner(t *testing.T) {
	h := newHand()
	e := &plan.Wall{Name: "1E", Level: h.walls[0].Level, ToLevel: h.walls[0].Level, From: geom.Vec2{X: 96}, To: geom.Vec2{X: 96, Y: 120}, Studs: two6, Spacing: 16}
	h.Plan.Walls = append(h.Plan.Walls, e)
	own := h.member(0, plan.UpperPlate, 0, 90.5, top1-1.5, top1)
	its := h.member(0, plan.UpperPlate, 0, 120, top1-1.5, top1)
	its.Wall, its.Solid = e, []geom.Solid{e.Frame().Box(0, 120, 0, 5.5, top1-1.5, top1)}
	j := h.joint(h.walls[0], plan.WallCorner, 96, top1-3, own, its)
	h.Joints = []*framing.Joint{j}
	p, _ := placed(t, h.with(plan.Rule{Name: "c", At: plan.WallCorner, Use: "coil"}))
	q := one(t, p)
	assert.InDelta(t, 30, q.Cut, 1e-9)
	assertPath(t, q.Path, geom.Vec3{X: 81, Z: top1 - 1.5}, geom.Vec3{X: 96, Z: top1 - 1.5}, geom.Vec3{X: 96, Y: 15, Z: top1 - 1.5})
}

// What goes flat up a stud and over the plates' edges needs no lap of them; a strap in two
// stretches that turns over the plates does: nine nails take 0.5 + 8 x 0.75 = 6 1/2 in.
func TestTheLapOverThePlates(t *testing.T) {
	stud, plate := &framing.Member{Role: plan.Stud}, &framing.Member{Role: plan.TopPlate}
	for n, want := range map[int]float64{1: 0, 2: 6.5} {
		it := &plan.Item{Width: 1.25, Fasteners: nails("each end", 9, 2)}
		p := &Piece{
			Joint: &framing.Joint{Kind: plan.StudTop}, Item: &hardware.Item{Item: it, Kind: hardware.KindNamed(plan.StrapItem)},
			Lie: Lie{Bands: []geom.Band{make(geom.Band, n)}, Laid: []Laid{{Member: stud, Room: 90}, {Member: plate, Room: 90}}, tied: [2]int{0, 1}},
		}
		assert.Equal(t, [2]float64{6.5, want}, needs(p), "%d", n)
	}
}

// Off a roll a strap is cut to what it goes over and a lap of 15 at each end: over a wall of 5 1/2
// and two plates of 3 on both its faces 5.5 + 2 x 3 + 2 x 15; down one face alone 5.5 + 3 + 15; over
// a rafter of 1 1/2 whose top is 6 over the plates 1.5 + 2 x 6 + 2 x 15; up a rafter's side 30.
func TestCoilsOverWhatTheyHold(t *testing.T) {
	coil := &plan.Item{Coil: 1800, Lap: 15, Width: 1.375, Thickness: .0418, Fasteners: nails("each leg", 6, 2)}
	wrap := &hardware.Item{Item: coil, Kind: hardware.KindNamed(plan.WrapStrapItem)}
	flat := &hardware.Item{Item: coil, Kind: hardware.KindNamed(plan.CoilStrapItem)}
	h := newHand()
	h.column(16, 16)
	h.Joints = h.held(1)
	over, _ := seated(top2 + 6)
	for _, c := range []struct {
		name string
		h    *hand
		at   int
		want want
		cut  float64
		laps [2]float64
	}{
		{"over a wall, both faces", h, 1, want{item: wrap}, 41.5, [2]float64{15, 15}},
		{"over a wall, one face", h, 1, want{item: wrap, face: plan.Inside}, 23.5, [2]float64{15, 5.5}},
		{"over a rafter", over, 0, want{item: wrap}, 43.5, [2]float64{15, 15}},
		{"beside a rafter", over, 0, want{item: flat}, 30, [2]float64{15, 15}},
	} {
		w := c.want
		w.joint, w.n = c.h.Joints[c.at], 1
		l, fault := (&placer{world: newWorld(c.h.House)}).shape(w)
		require.Nil(t, fault, c.name)
		assert.InDelta(t, c.cut, l.Cut, 1e-9, c.name)
		assertPair(t, c.laps, l.Laps(), c.name)
		sum := 0.0
		for _, p := range l.plates() {
			sum += p.Len()
		}
		assert.InDelta(t, c.cut, sum, 1e-9, "%s: its stretches make its length", c.name)
	}
}

// A strap of 24 from a header down on its jack has half of itself on the header where that is
// deep enough, else the header's depth, and the rest on the jack.
func TestAStrapFromAHeaderToItsJack(t *testing.T) {
	for deep, want := range map[float64][2]float64{14: {12, 12}, 12: {12, 12}, 9.25: {14.75, 9.25}} {
		h := newHand()
		jack := h.member(0, plan.Jack, 40, 41.5, floor1+1.5, 200)
		header := h.member(0, plan.Header, 40, 80, 200, 200+deep)
		j := h.joint(h.walls[0], plan.OpeningHead, 40.75, 200, jack, header)
		l, fault := (&placer{world: newWorld(h.House)}).shape(strap24(j, ""))
		require.Nil(t, fault)
		assertPair(t, want, l.Laps(), "%v", deep)
		assert.InDelta(t, 200-want[0], l.Z0, 1e-9)
		assert.InDelta(t, 200+want[1], l.Z1, 1e-9)
	}
}

// Two straps of 1 1/4 in over a ridge that a rafter meets at 45 degrees lie an 1/8 in apart, square to the rafter's
// way on plan.
func TestTwoStrapsOverASkewRidge(t *testing.T) {
	r := rafter("r", plan.Rafter, geom.Vec3{Z: 100}, geom.Vec3{X: 60, Y: 60, Z: 160})
	beam := &framing.Member{Role: plan.Ridge, A: geom.Vec3{X: 0, Y: 120, Z: 160}, B: geom.Vec3{X: 120, Z: 160}, Section: plan.Lumber{Ply: 1, Breadth: 1.5, Depth: 9.25}}
	j := &framing.Joint{Kind: plan.RafterRidge, Host: "R", At: r.B, Members: []*framing.Member{r, beam}}
	x := &placer{world: newWorld(&framing.House{Plan: &plan.Plan{}, Members: j.Members})}
	for k, off := range []float64{-0.6875, 0.6875} {
		w := strap24(j, "")
		w.k, w.n = k, 2
		l, fault := x.ridge(w)
		require.Nil(t, fault)
		at := l.Bands[0][0].B.Sub(r.B)
		assert.InDelta(t, 0, at.X+at.Y, 1e-9, "none of it along the rafter")
		assert.InDelta(t, off*math.Sqrt2, at.Y-at.X, 1e-9)
	}
}
