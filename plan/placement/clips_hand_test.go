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

// opened is the hand-framed house with a window from 32 to 64 in its upper wall: its sill
// from 270 to 271.5 between jacks 1 1/2 in wide, its header 9 1/4 in deep from 300 up over
// them, kings beside, and one joint of the kind at an end.
func opened(kind plan.JointKind, station float64, ms ...plan.Role) *hand {
	h := newHand()
	by := map[plan.Role]*framing.Member{
		plan.Sill:   h.member(1, plan.Sill, 32, 64, 270, 271.5),
		plan.Header: h.member(1, plan.Header, 30.5, 65.5, 300, 309.25),
	}
	for _, s := range []float64{30.5, 64} { // their grain upright
		m := h.member(1, plan.Jack, s, s+1.5, floor2+1.5, 300)
		m.A, m.B = h.walls[1].Frame().At(s+0.75, 2.75, m.Z0), h.walls[1].Frame().At(s+0.75, 2.75, m.Z1)
		if (s < 48) == (station < 48) {
			by[plan.Jack] = m
		}
	}
	for _, s := range []float64{29, 65.5} {
		m := h.member(1, plan.King, s, s+1.5, floor2+1.5, top2-3)
		m.A, m.B = h.walls[1].Frame().At(s+0.75, 2.75, m.Z0), h.walls[1].Frame().At(s+0.75, 2.75, m.Z1)
		if (s < 48) == (station < 48) {
			by[plan.King] = m
		}
	}
	var members []*framing.Member
	for _, r := range ms {
		members = append(members, by[r])
	}
	j := h.joint(h.walls[1], kind, station, members[0].Z0, members...)
	j.ID = "2S-end"
	h.Joints = []*framing.Joint{j}
	return h
}

// A clip of two legs of 2 3/16 in at a sill's end: in the angle under it one leg lies on
// the sill's underside, inward from the jack's side, the other down that side; on a face
// of the wall both lie flat at the sill's middle, one each way from its end.
func TestClipsUnderASill(t *testing.T) {
	const leg, z = 2.1875, 270.0
	for _, c := range []struct {
		name       string
		station    float64
		face, want plan.Face
		fold       geom.Vec3
		sill, jack geom.Vec3 // free ends of the two legs
		ns, nj     geom.Vec3
	}{
		{"left end", 32, "", plan.Right, geom.Vec3{X: 32, Y: 2.75, Z: z}, geom.Vec3{X: 32 + leg, Y: 2.75, Z: z}, geom.Vec3{X: 32, Y: 2.75, Z: z - leg}, geom.Vec3{Z: -1}, geom.Vec3{X: 1}},
		{"right end", 64, "", plan.Left, geom.Vec3{X: 64, Y: 2.75, Z: z}, geom.Vec3{X: 64 - leg, Y: 2.75, Z: z}, geom.Vec3{X: 64, Y: 2.75, Z: z - leg}, geom.Vec3{Z: -1}, geom.Vec3{X: -1}},
		{"outside", 32, plan.Outside, plan.Outside, geom.Vec3{X: 32, Z: z + 0.75}, geom.Vec3{X: 32 + leg, Z: z + 0.75}, geom.Vec3{X: 32 - leg, Z: z + 0.75}, geom.Vec3{Y: -1}, geom.Vec3{Y: -1}},
		{"inside", 64, plan.Inside, plan.Inside, geom.Vec3{X: 64, Y: 5.5, Z: z + 0.75}, geom.Vec3{X: 64 - leg, Y: 5.5, Z: z + 0.75}, geom.Vec3{X: 64 + leg, Y: 5.5, Z: z + 0.75}, geom.Vec3{Y: 1}, geom.Vec3{Y: 1}},
	} {
		p, _ := placed(t, opened(plan.OpeningSill, c.station, plan.Sill, plan.Jack, plan.King).with(plan.Rule{Name: "c", At: plan.OpeningSill, Use: "plate-clip", Face: c.face}))
		q := one(t, p)
		assertLegs(t, c.name, q, c.fold, c.jack, c.sill, c.nj, c.ns)
		assert.Equal(t, c.want, q.Face, c.name)
		assert.Equal(t, []plan.Role{plan.Sill, plan.Jack}, []plan.Role{q.Laid[0].Member.Role, q.Laid[1].Member.Role}, c.name)
		assert.InDelta(t, c.station, q.Station, 1e-9, c.name)
	}
}

// assertLegs holds a clip's two legs: from the free end of the one on the other member to
// the fold, from there to the free end of that on the member held.
func assertLegs(t *testing.T, name string, q *Piece, fold, other, held, nother, nheld geom.Vec3) {
	t.Helper()
	require.Len(t, q.Bands, 1, name)
	require.Len(t, q.Bands[0], 2, name)
	a, b := q.Bands[0][0], q.Bands[0][1]
	for what, d := range map[string][2]geom.Vec3{"other": {a.A, other}, "fold": {a.B, fold}, "fold again": {b.A, fold}, "held": {b.B, held}, "normal of other": {a.N, nother}, "normal of held": {b.N, nheld}} {
		assert.InDelta(t, 0, d[0].Sub(d[1]).Len(), 1e-9, "%s, %s: %v, want %v", name, what, d[0], d[1])
	}
}

// At a header's end the clip lies flat on a face, low: its middle 1/2 in and half of its
// 1 5/8 in over the header's underside, or on the middle of a header that is less than
// twice as deep; outside unless inside is asked for.
func TestClipsAtAHeadersEnd(t *testing.T) {
	const leg, z = 2.1875, 300 + 0.5 + 0.8125
	for _, c := range []struct {
		name    string
		station float64
		face    plan.Face
		way     float64 // from the header to the king
		y, n    float64
	}{
		{"left end", 30.5, "", -1, 0, -1},
		{"right end", 65.5, plan.Outside, 1, 0, -1},
		{"inside", 65.5, plan.Inside, 1, 5.5, 1},
		{"its side, which it has not", 30.5, plan.Left, -1, 0, -1},
	} {
		p, _ := placed(t, opened(plan.HeaderKing, c.station, plan.Header, plan.King).with(plan.Rule{Name: "c", At: plan.HeaderKing, Use: "plate-clip", Face: c.face}))
		at := func(d float64) geom.Vec3 { return geom.Vec3{X: c.station + c.way*d, Y: c.y, Z: z} }
		assertLegs(t, c.name, one(t, p), at(0), at(leg), at(-leg), geom.Vec3{Y: c.n}, geom.Vec3{Y: c.n})
	}
	h := opened(plan.HeaderKing, 30.5, plan.Header, plan.King)
	header := h.Joints[0].Members[0]
	header.Z1 = 302 // 2 in deep: its middle, 301, is lower
	p, _ := placed(t, h.with(plan.Rule{Name: "c", At: plan.HeaderKing, Use: "plate-clip"}))
	assert.InDelta(t, 301, one(t, p).Path[0].Z, 1e-9)
	h = opened(plan.HeaderKing, 30.5, plan.Header)
	p, ds := placed(t, h.with(plan.Rule{Name: "c", At: plan.HeaderKing, Use: "plate-clip"}))
	assert.Empty(t, p.Pieces, "no king to tie it to")
	assert.NotEmpty(t, ds)
}

// A piece that lies on one member has all its fasteners there, one on two those of its
// second end on the second.
func TestEndsOfWhatLiesOnOneMember(t *testing.T) {
	m, o := &framing.Member{Role: plan.Stud}, &framing.Member{Role: plan.Rim}
	it := itemsOf(t, plan.Item{Mark: "c", Kind: plan.ClipItem, Gauge: "17 ga", Fasteners: []plan.Fasteners{{Part: "to stud", Nail: "8d", Count: 4, Parts: 1}, {Part: "to rim", Nail: "8d", Count: 3, Parts: 1}}})
	for _, c := range []struct {
		laid []Laid
		want []int
	}{{[]Laid{{Member: m}}, []int{0, 0}}, {[]Laid{{Member: m}, {Member: o}}, []int{0, 1}}} {
		for i := range c.laid {
			c.laid[i].starts = []Start{{}}
		}
		lie, fault := want{item: it, joint: &framing.Joint{Kind: plan.StudBase}}.whole(Lie{
			Face: plan.Outside, Bands: []geom.Band{{{B: geom.Vec3{Z: 10}, N: geom.Vec3{Y: -1}}}}, Laid: c.laid, Path: []geom.Vec3{{}},
		})
		require.Nil(t, fault)
		var got []int
		for _, e := range lie.Ends {
			got = append(got, e.Laid)
		}
		assert.Equal(t, c.want, got)
		assert.Equal(t, [2]float64{0, 10}, [2]float64{lie.Z0, lie.Z1})
	}
}

// itemsOf is an item of the catalog.
func itemsOf(t *testing.T, it plan.Item) *hardware.Item {
	c, ds := hardware.New([]*plan.Item{&it})
	require.False(t, ds.Errors(), "%v", ds)
	return c.Items[0]
}

// What a lie may lack, in the order it is asked: each is told before those below it.
func TestWhatALieLacks(t *testing.T) {
	m, o := &framing.Member{Role: plan.Stud}, &framing.Member{Role: plan.Rim}
	plate := geom.Plate{B: geom.Vec3{Z: 10}, N: geom.Vec3{Y: -1}, Width: 1.5}
	starts := []Start{{}}
	whole := func() Lie {
		return Lie{
			Face: plan.Outside, Bands: []geom.Band{{plate}}, Laid: []Laid{{Member: m, starts: starts}, {Member: o, starts: starts}},
			Ends: []EndAt{{Laid: 0, Starts: starts}, {Laid: 1, Starts: starts}}, Path: []geom.Vec3{{}, {Z: 10}}, Rod: &Axis{}, tied: [2]int{0, 1},
		}
	}
	for _, c := range []struct {
		kind plan.ItemKind
		take func(*Lie)
		want string
	}{
		{plan.StrapItem, func(*Lie) {}, ""},
		{plan.StrapItem, func(l *Lie) { l.Rod = nil }, ""},
		{plan.StrapItem, func(l *Lie) { l.Face = "" }, "no face to lie on"},
		{plan.StrapItem, func(l *Lie) { l.Laid = nil }, "no member to be fastened to"},
		{plan.StrapItem, func(l *Lie) { l.Laid[0].Member = nil }, "no member to be fastened to"},
		{plan.StrapItem, func(l *Lie) { l.Bands = nil }, "no place for its steel"},
		{plan.StrapItem, func(l *Lie) { l.Laid = l.Laid[:1] }, "nothing for its second end to be fastened to"},
		{plan.StrapItem, func(l *Lie) { l.Laid[1].Member = nil }, "nothing for its second end to be fastened to"},
		{plan.StrapItem, func(l *Lie) { l.Laid[1].Member = m }, ""}, // over it and down again
		{plan.ClipItem, func(l *Lie) { l.Laid = l.Laid[:1] }, ""},
		{plan.StrapItem, func(l *Lie) { l.Path = nil }, "no line in space"},
		{plan.StrapItem, func(l *Lie) { l.Ends[1].Starts = nil }, "no steel for one of its ends"},
		{plan.AnchorBoltItem, func(l *Lie) { l.Bands = nil }, ""},
		{plan.AnchorBoltItem, func(l *Lie) { l.Rod = nil }, "no line for its rod"},
		{plan.AnchorBoltItem, func(l *Lie) { l.Ends[1].Starts = nil }, ""},
		{plan.HoldDownItem, func(l *Lie) { l.Rod = nil }, "no line for its rod"},
		{plan.HoldDownItem, func(*Lie) {}, ""},
	} {
		l := whole()
		c.take(&l)
		kind := hardware.KindNamed(c.kind)
		w := want{item: &hardware.Item{Item: &plan.Item{Bodies: map[bool]int{true: 1}[c.kind == plan.HoldDownItem]}, Kind: kind}}
		assert.Equal(t, c.want, w.lacks(&l), "%s", c.kind)
	}
}

// A clip at a stud's head meets the lower of two plates of 1 1/2 in, whichever the joint names first,
// and 3 in of them; where only the upper one is named, that.
func TestThePlateThatAStudsHeadMeets(t *testing.T) {
	h := newHand()
	stud := h.member(0, plan.Stud, 40, 41.5, floor1+1.5, top1-3)
	lower := h.member(0, plan.TopPlate, 0, 96, top1-3, top1-1.5)
	upper := h.member(0, plan.UpperPlate, 0, 96, top1-1.5, top1)
	x := &placer{world: newWorld(h.House)}
	for _, c := range []struct {
		plates []*framing.Member
		want   *framing.Member
	}{
		{[]*framing.Member{lower}, lower},
		{[]*framing.Member{lower, upper}, lower},
		{[]*framing.Member{upper, lower}, lower},
		{[]*framing.Member{upper}, upper},
	} {
		j := h.joint(h.walls[0], plan.StudTop, 40.75, top1-3, append([]*framing.Member{stud}, c.plates...)...)
		m, thick := x.meets(j, -1)
		assert.Same(t, c.want, m)
		assert.InDelta(t, 3, thick, 1e-9)
	}
}
