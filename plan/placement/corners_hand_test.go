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

// inCorner is a hip 1 1/2 thick that comes up at 45 degrees to (100, 100), cut to two members of
// 9 in: one whose face looks south at y = 100 and one whose face looks west at x, from x1 on
// and up to that face. Both sides of the hip's middle end there. More stands behind.
func inCorner(x float64, carrier string) (*placer, *framing.Joint) {
	south := boxed("south", plan.Rafter, geom.Vec3{Y: 100}, geom.Vec3{X: 110, Y: 101.5, Z: 9})
	west := boxed("west", plan.Rafter, geom.Vec3{X: x, Y: 0}, geom.Vec3{X: x + 1.5, Y: 100, Z: 9})
	behind := boxed("behind", plan.Ridge, geom.Vec3{X: 90, Y: 104}, geom.Vec3{X: 200, Y: 105.5, Z: 9})
	for _, m := range []*framing.Member{south, west, behind} {
		m.A.Z, m.B.Z = 9, 9
	}
	d := geom.Vec3{X: math.Sqrt2 / 2, Y: math.Sqrt2 / 2}
	hip := &framing.Member{ID: "hip", Role: plan.HipRafter, Roof: &plan.Roof{}, Section: plan.Lumber{Ply: 1, Breadth: 1.5, Depth: 9}, A: geom.Vec3{X: 20, Y: 20, Z: 9}, B: geom.Vec3{X: 100, Y: 100, Z: 9}, Z1: 9}
	side := geom.Vec3{X: -d.Y, Y: d.X}.Mul(0.75)
	s := geom.Box(hip.A.Sub(geom.Vec3{Z: 9}).Sub(side), d.Mul(120), side.Mul(2), geom.Vec3{Z: 9})
	s = s.Clip(geom.PlaneAt(geom.Vec3{Y: 100}, geom.Vec3{Y: 1})).Clip(geom.PlaneAt(geom.Vec3{X: x}, geom.Vec3{X: 1}))
	hip.Solid = []geom.Solid{s}
	on := map[string]*framing.Member{"south": south, "behind": behind}[carrier]
	j := &framing.Joint{Kind: plan.RafterRidge, Host: "H", At: hip.B, Members: []*framing.Member{hip, on}}
	return &placer{world: newWorld(&framing.House{Plan: &plan.Plan{}, Members: []*framing.Member{hip, south, west, behind}})}, j
}

// The left side of a hip in a corner ends at the face that looks south, its right side at the one
// that looks west: half of its thickness at 45 degrees, 0.75 x 1.4142 = 1.0607, off the corner.
// A hanger has a flange on each of both, 1 1/2 wide, its middle 3/4 from where the side meets
// the face. The catalog's carrier is one of them, or neither where the joint names what stands
// behind. Where the second only rounds the corner, 0.4 past it, so that less than 7/10 of the
// half ends there, that side is the first one's and no flange has room.
func TestAHipsEndInACorner(t *testing.T) {
	const off = 1.0606602
	item := &hardware.Item{Item: &plan.Item{Length: 5, Legs: [2]float64{2, 1.5}, Width: 1.5}, Kind: hardware.KindNamed(plan.HangerItem)}
	for _, c := range []struct {
		name    string
		x       float64
		carrier string
		on      [2]string
		corner  [2]geom.Vec2
		none    bool
		laid    string
		others  []string
		tabs    int
	}{
		{"both faces", 100, "south", [2]string{"south", "west"}, [2]geom.Vec2{{X: 100 - off, Y: 100}, {X: 100, Y: 100 - off}}, false, "south", []string{"west"}, 2},
		{"both faces of what the joint does not name", 100, "behind", [2]string{"south", "west"}, [2]geom.Vec2{{X: 100 - off, Y: 100}, {X: 100, Y: 100 - off}}, false, "south", []string{"west"}, 2},
		{"one that rounds the corner", 100.4, "south", [2]string{"south", "south"}, [2]geom.Vec2{{X: 100 - off, Y: 100}, {X: 100.4, Y: 100.4 - off}}, true, "south", nil, 1},
		{"one past the corner, that stands where the flange would", 101.2, "south", [2]string{"south", "south"}, [2]geom.Vec2{{X: 100 - off, Y: 100}, {X: 100 + off, Y: 100}}, false, "south", nil, 1},
		{"one far off", 110, "south", [2]string{"south", "south"}, [2]geom.Vec2{{X: 100 - off, Y: 100}, {X: 100 + off, Y: 100}}, false, "south", nil, 2},
	} {
		t.Run(c.name, func(t *testing.T) {
			x, j := inCorner(c.x, c.carrier)
			b, ok := x.butts(want{joint: j, item: item})
			require.True(t, ok)
			for i, s := range b.sides {
				assert.Equal(t, c.on[i], s.on.ID, "side %d", i)
				assert.InDelta(t, 0, s.corner.Sub(c.corner[i]).Len(), 1e-6, "side %d: %v", i, s.corner)
				assert.Equal(t, c.none && i == 1, s.none)
				n := geom.Vec3{Y: -1}
				if s.on.ID == "west" {
					n = geom.Vec3{X: -1}
				}
				assert.InDelta(t, 0, s.n.Sub(n).Len(), 1e-9, "side %d: %v", i, s.n)
			}
			l, fault := x.hanger(want{joint: j, item: item, n: 1})
			require.Nil(t, fault)
			require.Len(t, l.Laid, 2)
			assert.Equal(t, c.laid, l.Laid[1].Member.ID)
			var others []string
			for _, m := range l.Laid[1].Others {
				others = append(others, m.ID)
			}
			assert.Equal(t, c.others, others)
			assert.Len(t, l.Laid[1].starts, c.tabs)
			for _, s := range l.Laid[0].starts {
				assert.False(t, s.Far, "fasteners are laid from its head")
			}
			if c.x == 100 {
				tab := l.Bands[3][0]
				assert.InDelta(t, 0, tab.A.Sub(geom.Vec3{X: 100, Y: 100 - off - 0.75}).Len(), 1e-6, "%v", tab.A)
				assert.InDelta(t, 0, tab.N.Sub(geom.Vec3{X: -1}).Len(), 1e-9)
			}
		})
	}
}

// Over the splice of a girder from y = 10 to 14.5 a strap of 20 lies on its outer face, or on its
// inner one, at the middle of its depth, 10 in to each side.
func TestAStrapOverAGirdersSplice(t *testing.T) {
	a := boxed("a", plan.GirderBeam, geom.Vec3{Y: 10}, geom.Vec3{X: 48, Y: 14.5, Z: 11.25})
	b := boxed("b", plan.GirderBeam, geom.Vec3{X: 48, Y: 10}, geom.Vec3{X: 120, Y: 14.5, Z: 11.25})
	item := &hardware.Item{Item: &plan.Item{Length: 20, Width: 1.25}, Kind: hardware.KindNamed(plan.StrapItem)}
	for face, y := range map[plan.Face]float64{plan.Outside: 10, plan.Inside: 14.5, "": 10} {
		j := &framing.Joint{Kind: plan.GirderSplice, Host: "G", Station: 48, At: geom.Vec3{X: 48, Y: 12.25, Z: 5.625}, Members: []*framing.Member{a, b}}
		x := &placer{world: newWorld(&framing.House{Plan: &plan.Plan{}, Members: j.Members})}
		l, fault := x.level(want{joint: j, item: item, face: face, n: 1})
		require.Nil(t, fault)
		p := l.Bands[0][0]
		assert.InDelta(t, 0, p.A.Sub(geom.Vec3{X: 38, Y: y, Z: 5.625}).Len()+p.B.Sub(geom.Vec3{X: 58, Y: y, Z: 5.625}).Len(), 1e-9, "%v", p)
		assert.Equal(t, y > 12, p.N.Y > 0)
		assert.Same(t, a, l.Laid[0].Member)
		assert.Same(t, b, l.Laid[1].Member)
		assert.Equal(t, [2]float64{10, 10}, l.Laps())
		assert.InDelta(t, 48, l.Laid[0].Room, 0.01)
		assert.InDelta(t, 72, l.Laid[1].Room, 0.01)
	}
}

// Where the piece that breaks is only 4 in long, the strap's nails go into what lies under the
// middle of its lap, the piece before it; so on the other side.
func TestAStrapLiesOnThePieceUnderItsLap(t *testing.T) {
	h := newHand()
	before := h.member(1, plan.TopPlate, 0, 36, top2-3, top2-1.5)
	a := h.member(1, plan.TopPlate, 36, 40, top2-3, top2-1.5)
	b := h.member(1, plan.TopPlate, 40, 44, top2-3, top2-1.5)
	after := h.member(1, plan.TopPlate, 44, 96, top2-3, top2-1.5)
	j := h.joint(h.walls[1], plan.PlateSplice, 40, top2-2.25, a, b)
	j.ID = "2S-40-PS"
	h.Joints = []*framing.Joint{j}
	p, _ := placed(t, h.with(plan.Rule{Name: "s", At: plan.PlateSplice, Use: "short-strap"}))
	q := one(t, p)
	assert.Same(t, before, q.Laid[0].Member)
	assert.Same(t, after, q.Laid[1].Member)
}

// Two wraps down one face of a stud stand 1.5 apart and are told by their own stations; two
// straps up a rafter's side lie 1.5 apart along it.
func TestTwoPiecesBesideEachOther(t *testing.T) {
	p, _ := placed(t, standard().with(plan.Rule{Name: "w", At: plan.StudTop, Use: "wrap-strap", Face: plan.Inside, Count: 2, Where: plan.Where{Level: []string{"second"}, From: 31, To: 33}}))
	require.Len(t, p.Pieces, 2)
	for i, x := range []float64{31.25, 32.75} {
		assert.InDelta(t, x, p.Pieces[i].Station, 1e-9)
		assert.InDelta(t, x, p.Pieces[i].Bands[0][0].A.X, 1e-9)
	}
	h, _ := seated(top2 + 6)
	p, _ = placed(t, h.with(plan.Rule{Name: "s", At: plan.RafterPlate, Use: "short-strap", Face: plan.Right, Count: 2}))
	require.Len(t, p.Pieces, 2)
	for i, y := range []float64{-0.75, 0.75} { // half the width, 11/16, in from the wall's face
		up := p.Pieces[i].Bands[0][1]
		assert.InDelta(t, y+0.6875, up.A.Y, 1e-9)
		assert.InDelta(t, y+0.6875, up.B.Y, 1e-9)
		assert.InDelta(t, top2, up.A.Z, 1e-9)
		assert.InDelta(t, top2+12, up.B.Z, 1e-9)
		assert.InDelta(t, 32.75, up.A.X, 1e-9)
	}
}

// Bolts of a ledger stand over each other by what a washer takes, 3 in at least, and an eighth.
func TestBoltsOverEachOtherInALedger(t *testing.T) {
	ledger := boxed("ledger", plan.Ledger, geom.Vec3{Y: -1.5, Z: 200}, geom.Vec3{X: 96, Z: 211.25})
	rim := boxed("rim", plan.Rim, geom.Vec3{Z: 200}, geom.Vec3{X: 96, Y: 1.5, Z: 211.25})
	for washer, apart := range map[float64]float64{0: 3.125, 2: 3.125, 4: 4.125} {
		item := &hardware.Item{Item: &plan.Item{Length: 8, Rod: 0.5, Washer: washer}, Kind: hardware.KindNamed(plan.AnchorBoltItem)}
		j := &framing.Joint{Kind: plan.LedgerWall, Wall: &plan.Wall{To: geom.Vec2{X: 96}}, Station: 40, At: geom.Vec3{X: 40, Z: 205}, Members: []*framing.Member{ledger, rim}}
		x := &placer{world: newWorld(&framing.House{Plan: &plan.Plan{}, Members: j.Members})}
		for k, z := range []float64{205 - apart/2, 205 + apart/2} {
			l, fault := x.crossing(want{joint: j, item: item, k: k, n: 2})
			require.Nil(t, fault)
			assert.InDelta(t, z, l.Rod.A.Z, 1e-9)
			assert.InDelta(t, z, l.Rod.B.Z, 1e-9)
			assert.InDelta(t, -1.5-hardware.WasherThick(washer), l.Rod.A.Y, 1e-9, "its head on the ledger")
			assert.InDelta(t, 8, l.Rod.B.Y-l.Rod.A.Y, 1e-9)
			assert.InDelta(t, 40, l.Rod.A.X, 1e-9)
		}
	}
}

// A hold-down pair takes twice its rod's distance, 2 7/8, beside its post, over and under the
// floor: on the left of posts at 16 that is 12.375 to 15.25. A stud at 13 stands in its way,
// above or below; one at 11 does not, nor past the wall's end. Of a lower post 4 in to the right
// it is 16.375 to 19.25 below.
func TestRoomForAHoldDownPair(t *testing.T) {
	item := &hardware.Item{Item: &plan.Item{Length: 10.625, Width: 2.375, Rod: 0.625, Standoff: 1.5, Center: 1.4375}, Kind: hardware.KindNamed(plan.HoldDownPairItem)}
	for _, c := range []struct {
		name  string
		low   float64 // of the lower post
		above []float64
		below []float64
		left  bool
		right bool
	}{
		{"free", 16, nil, nil, true, true},
		{"a stud to the left above", 16, []float64{13}, nil, false, true},
		{"a stud to the left below", 16, nil, []float64{13}, false, true},
		{"a stud to the right above", 16, []float64{19}, nil, true, false},
		{"a stud to the right below", 16, nil, []float64{19}, true, false},
		{"studs farther off", 16, []float64{11.5, 20.5}, []float64{11.5, 20.5}, true, true},
		{"below it is 4 to the right", 20, nil, []float64{13}, true, true},
		{"below it is 4 to the right, a stud there", 20, nil, []float64{17}, false, true},
		{"above it is not", 20, []float64{17}, nil, true, false},
	} {
		h := newHand()
		low, high := h.column(c.low, 16)
		for _, s := range c.above {
			h.member(1, plan.Stud, s-.75, s+.75, floor2+1.5, top2-3)
		}
		for _, s := range c.below {
			h.member(0, plan.Stud, s-.75, s+.75, floor1+1.5, top1-3)
		}
		j := h.joint(h.walls[1], plan.StudStud, 16, floor2+1.5, high, low)
		j.Gap, j.Below, j.Offset = storyGap, true, c.low-16
		x := &placer{world: newWorld(h.House)}
		l := x.through(j)
		assert.Equal(t, c.left, x.holds(want{joint: j, item: item}, l, plan.Left), c.name)
		assert.Equal(t, c.right, x.holds(want{joint: j, item: item}, l, plan.Right), c.name)
	}
}

// Two wraps on one stud overlap on all of its faces and on the plate: they are told once.
func TestAnOverlapIsToldOnce(t *testing.T) {
	wrap := func(name, purpose string) plan.Rule {
		return plan.Rule{Name: name, At: plan.StudTop, Use: "wrap-strap", Purpose: purpose, Where: plan.Where{Level: []string{"second"}, From: 31, To: 33}}
	}
	_, ds := placed(t, standard().with(wrap("a", "one"), wrap("b", "two")))
	assert.Len(t, only(ds, "face-taken"), 1)
}

// An item whose ends are named goes on as named, whichever is written first: 9 nails to the stud
// that is held, 5 to the rim.
func TestEndsGoOnTheMembersTheyName(t *testing.T) {
	stud, rim := &framing.Member{Role: plan.Stud}, &framing.Member{Role: plan.Rim}
	to := func(part string, n int) plan.Fasteners { return plan.Fasteners{Part: part, Count: n, Parts: 1} }
	for _, list := range [][]plan.Fasteners{{to("to stud", 9), to("to rim", 5)}, {to("to rim", 5), to("to stud", 9)}} {
		p := &Piece{Item: &hardware.Item{Item: &plan.Item{Fasteners: list}, Kind: hardware.KindNamed(plan.StrapItem)}, Lie: Lie{Laid: []Laid{{Member: stud}, {Member: rim}}, tied: [2]int{0, 1}}}
		ends := p.ends()
		assert.Equal(t, [2]int{9, 5}, [2]int{ends[0].Count, ends[1].Count})
	}
}

// What cannot lie at its joint is told there, and an ask that came to nothing says why.
func TestAnAskThatCameToNothingSaysWhy(t *testing.T) {
	h := spliced(plan.Collector, 0)
	h.Joints[0].Members = h.Joints[0].Members[:1]
	p, ds := placed(t, h.with(plan.Rule{Name: "c", At: plan.Collector, Use: "coil"}))
	require.Len(t, only(ds, "collector-to-nothing"), 1)
	asks := p.asks[h.Joints[0]]
	require.Len(t, asks, 1)
	assert.Contains(t, asks[0].why, "nothing continues the shear wall's line")
	assert.Empty(t, asks[0].pieces)
}
