package placement

import (
	"fmt"
	"testing"

	"galewright/plan"
	"galewright/plan/framing"
	"galewright/plan/geom"
	"galewright/plan/hardware"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"
)

// onSill is a wall of 96 in of 2x6 on a sill plate, its top at 121.5, with studs at
// stations; each has a joint at its base with the sill.
func onSill(stations ...float64) (*hand, *framing.Member) {
	h := newHand()
	sill := h.member(0, plan.SillPlate, 0, 96, floor1, floor1+1.5)
	for _, s := range stations {
		m := h.member(0, plan.Stud, s-0.75, s+0.75, floor1+1.5, top1-3)
		j := h.joint(h.walls[0], plan.StudBase, s, m.Z0, m, sill)
		j.ID = fmt.Sprintf("1S-%g-SB", s)
		h.Joints = append(h.Joints, j)
	}
	return h, sill
}

// bolts are an anchor bolt of 1/2 in with a 3 in plate, a rod of 5/8 in and a hold-down
// for it, in the place of three items of the test's catalog.
func bolts(m map[string]*plan.Item) {
	at := func(mark string) plan.Pos { return m[mark].Pos }
	*m["plate-clip"] = plan.Item{Mark: "plate-clip", Kind: plan.AnchorBoltItem, Length: 12, Rod: 0.5, Washer: 3, Pos: at("plate-clip")}
	*m["wrap-strap"] = plan.Item{Mark: "wrap-strap", Kind: plan.AnchorRodItem, Length: 18, Rod: 0.625, Washer: 3, Pos: at("wrap-strap")}
	*m["hold-down-pair"] = plan.Item{
		Mark: "hold-down-pair", Kind: plan.HoldDownItem, Length: 10.625, Width: 2.375, Rod: 0.625, Standoff: 1.5, Center: 1.4375,
		Fasteners: nails("to post", 11, 1), Pos: at("hold-down-pair"),
	}
}

// A bolt of 1/2 in beside a stud at 48: half the stud, half the 3 in washer and half an inch
// of air are 2.75 from its middle: 50.75, or as far to the left; a washer and an inch, 4 in,
// from the middle of any rod that is there, seven diameters, 3 1/2 in, from the plate's
// ends. Where that is nowhere the air and the seven diameters are given up, but not that the
// washer lies on the plate.
func TestWhereABoltFindsRoomOnItsPlate(t *testing.T) {
	const foot = floor1 + 1.5
	for _, c := range []struct {
		name   string
		plate  [2]float64
		taken  []float64
		stands [2]float64 // of another upright, 0 for none
		from   float64    // over the plate, where that begins
		deep   [2]float64 // across the wall, 0 for all of it
		want   float64
		clear  bool
	}{
		{name: "first on the right", plate: [2]float64{0, 96}, want: 50.75, clear: true},
		{name: "then on the left", plate: [2]float64{0, 96}, taken: []float64{50.75}, want: 45.25, clear: true},
		{name: "a washer and an inch from both", plate: [2]float64{0, 96}, taken: []float64{50.75, 45.25}, want: 54.75, clear: true},
		{name: "a rod just that far off", plate: [2]float64{0, 96}, taken: []float64{54.75}, want: 50.75, clear: true},
		{name: "a rod a little nearer", plate: [2]float64{0, 96}, taken: []float64{54.5}, want: 45.25, clear: true},
		{name: "a king on the right", plate: [2]float64{0, 96}, stands: [2]float64{49.5, 51}, want: 45.25, clear: true},
		{name: "half an inch clear of it", plate: [2]float64{0, 96}, stands: [2]float64{52.75, 54}, want: 50.75, clear: true},
		{name: "a little less", plate: [2]float64{0, 96}, stands: [2]float64{52.65, 54}, want: 45.25, clear: true},
		{name: "what begins 3 in over the plate", plate: [2]float64{0, 96}, stands: [2]float64{49.5, 51}, from: 3, want: 50.75, clear: true},
		{name: "what begins under 3 in", plate: [2]float64{0, 96}, stands: [2]float64{49.5, 51}, from: 2.9, want: 45.25, clear: true},
		{name: "beside the washer", plate: [2]float64{0, 96}, stands: [2]float64{49.5, 51}, deep: [2]float64{4.25, 5.5}, want: 50.75, clear: true},
		{name: "on its edge", plate: [2]float64{0, 96}, stands: [2]float64{49.5, 51}, deep: [2]float64{4.2, 5.5}, want: 45.25, clear: true},
		{name: "seven diameters from the right end", plate: [2]float64{0, 54.25}, want: 50.75, clear: true},
		{name: "a little less from it", plate: [2]float64{0, 54.2}, want: 45.25, clear: true},
		{name: "seven diameters from the left end", plate: [2]float64{41.75, 54}, want: 45.25, clear: true},
		{name: "a washer from the end", plate: [2]float64{46, 52}, want: 50.25, clear: true},
		{name: "half of one beyond it", plate: [2]float64{46, 51.5}, want: 50.75, clear: false},
	} {
		h := newHand()
		m := h.member(0, plan.Stud, 47.25, 48.75, foot, top1-3)
		plate := h.member(0, plan.SillPlate, c.plate[0], c.plate[1], floor1, foot)
		if c.stands[1] > 0 {
			o := h.member(0, plan.King, c.stands[0], c.stands[1], foot+c.from, top1-3)
			if c.deep[1] > 0 {
				o.Solid = []geom.Solid{h.walls[0].Frame().Box(o.S0, o.S1, c.deep[0], c.deep[1], o.Z0, o.Z1)}
			}
		}
		x := &placer{world: newWorld(h.House)}
		j := h.joint(h.walls[0], plan.StudBase, 48, foot, m, plate)
		item := &hardware.Item{Item: &plan.Item{Rod: 0.5, Washer: 3}}
		s, clear := x.roomOnPlate(want{joint: j, item: item}, link{s0: 47.25, s1: 48.75}, plate, 2.75, foot, c.taken)
		assert.InDelta(t, c.want, s, 1e-9, c.name)
		assert.Equal(t, c.clear, clear, c.name)
	}
}

// A bolt of a sill by itself, with no stud at its place, stands right there, else at the nearest place that
// is a washer and an inch clear of a rod.
func TestASillsBoltStandsInItsPlace(t *testing.T) {
	for taken, at := range map[float64]float64{0: 48, 48.5: 44.5, 47.5: 51.5, 44: 48, 51.75: 47.75} {
		h := newHand()
		plate := h.member(0, plan.SillPlate, 0, 96, floor1, floor1+1.5)
		x := &placer{world: newWorld(h.House)}
		j := h.joint(h.walls[0], plan.SillFoundation, 48, plate.Z1, plate)
		item := &hardware.Item{Item: &plan.Item{Rod: 0.5, Washer: 3}}
		s, clear := x.roomOnPlate(want{joint: j, item: item}, link{s0: 48, s1: 48}, plate, 2.75, plate.Z1, []float64{taken})
		assert.InDelta(t, at, s, 1e-9, "%v", taken)
		assert.True(t, clear)
	}
}

// Where no plate of the wall is under it the wall's own ends count.
func TestABoltWithoutAPlateOfItsWall(t *testing.T) {
	h := newHand()
	m := h.member(0, plan.Stud, 0, 1.5, floor1+1.5, top1-3)
	j := h.joint(h.walls[0], plan.StudBase, 0.75, m.Z0, m)
	x := &placer{world: newWorld(h.House)}
	w := want{joint: j, item: &hardware.Item{Item: &plan.Item{Rod: 0.5, Washer: 3}}}
	others := &framing.Member{Role: plan.SillPlate, Wall: h.walls[1], S0: 40, S1: 60}
	for name, plate := range map[string]*framing.Member{"none": nil, "another wall's": others} {
		s, clear := x.roomOnPlate(w, link{s0: 0, s1: 1.5}, plate, 2.75, m.Z0, nil)
		assert.True(t, clear, name)
		assert.InDelta(t, 3.5, s, 1e-9, name)
	}
	assert.Equal(t, 2.0, washer(&hardware.Item{Item: &plan.Item{}}), "a bolt without one takes a cut washer of 2 in")
	assert.Equal(t, 3.0, washer(&hardware.Item{Item: &plan.Item{Washer: 3}}))
	assert.Zero(t, taken0(nil))
	assert.Equal(t, 7.0, taken0([]float64{7, 9}))
}

// The sill that a joint names, else the nearest of its wall not 24 in off.
func TestTheSillUnderAStud(t *testing.T) {
	wall, other := &plan.Wall{Name: "a"}, &plan.Wall{Name: "b"}
	sill := func(w *plan.Wall, s0, s1 float64) *framing.Member {
		return &framing.Member{Role: plan.SillPlate, Wall: w, S0: s0, S1: s1}
	}
	own := sill(other, 0, 1)
	for _, c := range []struct {
		name  string
		names []*framing.Member
		sills []*framing.Member
		want  int // of sills; -1 none, 9 the joint's own
	}{
		{"named", []*framing.Member{own}, []*framing.Member{sill(wall, 40, 60)}, 9},
		{"under it", nil, []*framing.Member{sill(wall, 0, 20), sill(wall, 40, 60)}, 1},
		{"the nearer on the left", nil, []*framing.Member{sill(wall, 0, 40), sill(wall, 60, 80)}, 0},
		{"the nearer on the right", nil, []*framing.Member{sill(wall, 0, 30), sill(wall, 55, 80)}, 1},
		{"23.9 in off", nil, []*framing.Member{sill(wall, 72.65, 96)}, 0},
		{"24 in off", nil, []*framing.Member{sill(wall, 72.75, 96)}, -1},
		{"another wall's", nil, []*framing.Member{sill(other, 40, 60)}, -1},
		{"none", nil, nil, -1},
	} {
		w := &world{sills: map[*plan.Wall][]*framing.Member{}}
		for _, m := range c.sills {
			w.sills[m.Wall] = append(w.sills[m.Wall], m)
		}
		j := &framing.Joint{Wall: wall, Members: append([]*framing.Member{{Role: plan.Stud}}, c.names...)}
		got := (&placer{world: w}).sillUnder(link{joint: j, s0: 47.25, s1: 48.75})
		switch c.want {
		case -1:
			assert.Nil(t, got, c.name)
		case 9:
			assert.Same(t, own, got, c.name)
		default:
			assert.Same(t, c.sills[c.want], got, c.name)
		}
	}
}

// An anchor bolt stands in the middle of its sill; with a rim on the sill's outer edge
// inside of that, half its washer on, but with the washer on the sill. On a 3 in washer it
// shows 1/4 + 1/2 + 1/4 in over the plate.
func TestHowFarInABoltStands(t *testing.T) {
	for _, c := range []struct {
		name               string
		rim, washer, depth float64 // breadth of the rim, 0 for none
		want               float64
	}{
		{"no rim", 0, 3, 5.5, 2.75},
		{"a rim of 1 1/2", 1.5, 3, 5.5, 3},
		{"a rim of 1 1/8", 1.125, 3, 5.5, 2.75},
		{"a wide washer", 1.5, 4, 5.5, 3.5},
		{"a wall of 3 1/2", 1.5, 3, 3.5, 2},
	} {
		h, _ := onSill(48)
		j := h.Joints[0]
		j.Wall.Studs.Depth = c.depth
		if c.rim > 0 {
			j.Level.Rim = c.rim
			j.Members = append(j.Members, &framing.Member{Role: plan.Rim, Wall: j.Wall})
		}
		x := &placer{world: newWorld(h.House), p: &Placement{}}
		item := &hardware.Item{Item: &plan.Item{Length: 12, Rod: 0.5, Washer: c.washer}, Kind: hardware.KindNamed(plan.AnchorBoltItem)}
		l := x.bolt(want{joint: j, item: item, n: 1}, nil, nil)
		s := 48 + 0.75 + c.washer/2 + 0.5
		past := map[float64]float64{3: 1, 4: 1.125}[c.washer]
		top := geom.Vec3{X: s, Y: c.want, Z: floor1 + 1.5 + past}
		assertPath(t, l.Path, top, top.Sub(geom.Vec3{Z: 12}))
		assert.InDelta(t, s, l.Station, 1e-9, c.name)
		assert.False(t, l.Tight, c.name)
	}
}

// Rods of a wall: the anchor rod at a hold-down's joint stands under it, on its line
// and up through its seat; the anchor bolts keep 4 in from that and from each other, each
// at its stud. The hold-down is on the right of its post of 1 1/2 in at 48, its rod 1 7/16 off
// the post: 50.1875.
func TestBoltsAndRodsOfAWall(t *testing.T) {
	h, _ := onSill(48, 64, 66)
	h.with(plan.Rule{Name: "b", At: plan.StudBase, Use: "plate-clip"},
		plan.Place{Use: "hold-down-pair", Wall: "1S", On: plan.StudBase, At: []float64{48}, Face: plan.Right},
		plan.Place{Use: "wrap-strap", Wall: "1S", On: plan.StudBase, At: []float64{48}, Action: plan.Add})
	p, ds := placed(t, h, bolts)
	ds = without(ds, "sill-unbolted") // so few bolts hold down no sill
	at := map[string]float64{}
	for _, q := range p.Pieces {
		at[q.Item.Mark+"@"+q.Joint.ID] = q.Station
		assert.False(t, q.Tight)
	}
	assert.Empty(t, ds)
	want := map[string]float64{
		"hold-down-pair@1S-48-SB": 50.1875,
		"wrap-strap@1S-48-SB":     50.1875,
		"plate-clip@1S-64-SB":     61.25, // 66.75 is against the stud at 66
		"plate-clip@1S-66-SB":     68.75,
	}
	for k, s := range want {
		assert.InDelta(t, s, at[k], 1e-9, k)
	}
	rod, body := p.Piece("1S-48-SB-rod"), p.Piece("1S-48-SB-hold-down")
	require.NotNil(t, rod)
	assert.InDelta(t, body.Rod.A.Z, rod.Rod.A.Z, 1e-9, "as high as the hold-down's")
	assert.InDelta(t, body.Rod.A.Z-18, rod.Rod.B.Z, 1e-9)
}

// An anchor bolt goes 7 in into what is below its sill (IRC 2006 R403.1.6, read): of its
// length the sill takes 1 1/2, washer, nut and thread 1 in, so 9 1/2 in do and 9 7/16 do not.
// A sill that the joint does not name, as where a girder's end lies under the stud, is
// looked at too.
func TestHowDeepASillBoltGoes(t *testing.T) {
	for _, c := range []struct {
		length float64
		says   string
	}{
		{12, ""},
		{9.5, ""},
		{9.4375, `it goes 6 15/16" into what is below the sill plate; the minimum is 7"`},
		{4, `it goes 1 1/2" into`},
		{2, `it goes 0" into`},
	} {
		for _, named := range []bool{true, false} {
			h, _ := onSill(48)
			if !named {
				h.Joints[0].Members = []*framing.Member{h.Joints[0].Members[0], h.member(0, plan.GirderBeam, 40, 60, floor1-9.25, floor1)}
				h.Joints[0].Gap = 1.5
			}
			h.with(plan.Rule{Name: "b", At: plan.StudBase, Use: "plate-clip"})
			_, ds := placed(t, h, bolts, func(m map[string]*plan.Item) { m["plate-clip"].Length = c.length })
			ds = without(ds, "sill-unbolted")
			if c.says == "" {
				assert.Empty(t, ds, "%v in, named %v", c.length, named)
				continue
			}
			require.Len(t, only(ds, "bolt-too-short"), 1, "%v in, named %v: %v", c.length, named, ds)
			assert.Contains(t, ds[0].Summary, c.says)
			assert.Equal(t, `take a bolt of at least 9 1/2"`, ds[0].Mend)
			assert.Equal(t, plan.Warning, ds[0].Severity)
		}
	}
}

// Over a sill plate a hold-down has no rod of its own and wants one cast in at its post, in
// line with its seat; over a floor its rod goes down to a washer.
func TestAHoldDownWantsItsAnchor(t *testing.T) {
	for _, c := range []struct {
		name string
		off  float64 // of the rod from the hold-down's line
		rod  bool
		told bool
	}{{"none", 0, false, true}, {"in line", 0, true, false}, {"1/8 off", 0.125, true, false}, {"1/4 off", 0.25, true, true}, {"1/4 off to the left", -0.25, true, true}} {
		h, _ := onSill(48)
		c0, ds := hardware.New(items(bolts))
		require.Empty(t, ds)
		j := h.Joints[0]
		body := &Piece{Tag: "hd", Joint: j, Item: c0.Item("hold-down-pair"), Place: &plan.Place{}, Lie: Lie{Station: 50}}
		pieces := []*Piece{body}
		if c.rod {
			pieces = append(pieces, &Piece{Tag: "rod", Joint: j, Item: c0.Item("wrap-strap"), Place: &plan.Place{}, Lie: Lie{Station: 50 + c.off}})
		}
		x := &placer{world: newWorld(h.House), p: Of(h.House, pieces...)}
		assert.Equal(t, !c.told, x.anchored(body), c.name)
		holdDownWithoutAnchor.run(x)
		assert.Len(t, only(x.tell.list(), "hold-down-without-anchor"), map[bool]int{true: 1}[c.told], c.name)
		body.Cut = 24 // over a floor it has a rod of its own
		x = &placer{world: newWorld(h.House), p: Of(h.House, pieces...)}
		holdDownWithoutAnchor.run(x)
		assert.Empty(t, x.tell.list(), c.name)
	}
}

// The bodies of a pair may stand a quarter of an inch out of line, the play of the rod.
func TestHowFarAPairMayStandOutOfLine(t *testing.T) {
	for off, told := range map[float64]bool{0: false, 0.25: false, 0.3125: true, -0.3125: true} {
		h := newHand()
		h.column(16, 16+off)
		h.Joints = append(h.held(0), h.held(1)...)
		_, ds := placed(t, h.with(plan.Place{Use: "hold-down-pair", Wall: "2S", On: "stud-stud", At: []float64{16 + off}}))
		found := only(ds, "pair-out-of-line")
		if !told {
			assert.Empty(t, found, "%v", off)
			continue
		}
		require.Len(t, found, 1, "%v", off)
		assert.Contains(t, found[0].Summary, `the bodies stand 5/16" out of line, the rod's holes allow 1/4"`)
	}
}
