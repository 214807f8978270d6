package loadpath

import (
	"testing"

	"galewright/plan"
	"galewright/plan/framing"
	"galewright/plan/geom"
	"galewright/plan/hardware"
	"galewright/plan/placement"
	"galewright/plan/timber"

	"github.com/stretchr/testify/assert"
)

// Two segments of one line: a of 36 in that counts with 0.9 by aspect ratio, 96 in high, b of
// 96 in. By stiffness, 2,000 and 6,000 lb/in, they take a quarter and three; by length 3 and 8
// parts of 11, a with 2b/h = 0.75. What both can hold together: 3 x 250 x 0.9 + 8 x 300.
func TestForceIsSharedByStiffnessOrByLength(t *testing.T) {
	line := func() (*ShearLine, *Segment, *Segment) {
		a := &Segment{Working: 36, Length: 36, Tallest: 96, Factor: 0.9, Stiff: 2000, Unit: timber.UnitShear{Allow: 250}}
		b := &Segment{Working: 96, Length: 96, Tallest: 96, Factor: 1, Stiff: 6000, Unit: timber.UnitShear{Allow: 300}}
		return &ShearLine{Segments: []*Segment{a, b}}, a, b
	}
	x, a, b := line()
	x.shareOut("")
	assert.InDelta(t, 0.25, a.Share, 1e-9)
	assert.InDelta(t, 0.75, b.Share, 1e-9)
	assert.InDelta(t, 3.0/11, a.OtherShare, 1e-9)
	assert.Equal(t, [2]float64{0.9, 0.75}, [2]float64{a.Factor, a.OtherFactor})
	assert.InDelta(t, 3*225+8*300, x.byCapacity, 1e-9)
	assert.InDelta(t, 8000, x.stiff, 1e-9)
	assert.Contains(t, x.method(), "by stiffness")
	assert.InDelta(t, 0.6*4000/8000, (&LineShear{ShearLine: x, Force: 4000}).Drift(), 1e-9)

	x, a, b = line()
	x.shareOut(plan.ByLength)
	assert.InDelta(t, 3.0/11, a.Share, 1e-9)
	assert.InDelta(t, 8.0/11, b.Share, 1e-9)
	assert.InDelta(t, 0.25, a.OtherShare, 1e-9)
	assert.Equal(t, [2]float64{0.75, 0.9}, [2]float64{a.Factor, a.OtherFactor})
	assert.Contains(t, x.method(), "as the plan asks")

	x, a, _ = line()
	a.NoFlex, a.Unit.Allow = "no Ga was read", 0
	x.shareOut("")
	assert.True(t, x.ByLength)
	assert.InDelta(t, 3.0/11, a.Share, 1e-9)
	assert.Zero(t, x.stiff)
	assert.Zero(t, (&LineShear{ShearLine: x, Force: 4000}).Drift())
	assert.Contains(t, x.method(), "no Ga was read")
	assert.InDelta(t, 3+8*300, x.byCapacity, 1e-9, "what holds nothing counts for its length")

	x, a, _ = line()
	a.Pierced = &timber.Perforated{}
	x.shareOut("")
	assert.InDelta(t, 0.9, a.OtherFactor, 1e-9, "a perforated wall has its own factor")
	assert.Zero(t, share(5, 0))
}

// Ends of a segment from 20 to 68 along x: two studs at its start, 20 to 23, middle 21.5, one
// at its end, 66.5 to 68. The lever arm is from what pulls to the middle of what is pressed:
// 45.75 in; from the rod of a hold-down at 24.5 only 42.75, from a strap at 21 46.25, which is
// longer than the way back.
func TestLeverArmsOfASegment(t *testing.T) {
	wall := &plan.Wall{To: geom.Vec2{X: 96}, Studs: plan.Lumber{Ply: 1, Breadth: 1.5, Depth: 5.5}}
	stud := func(x float64) *framing.Member {
		return &framing.Member{A: geom.Vec3{X: x}, B: geom.Vec3{X: x, Z: 96}, Section: wall.Studs}
	}
	item := func(mark string) *hardware.Item { return &hardware.Item{Item: &plan.Item{Mark: mark}} }
	joint := &framing.Joint{ID: "end"}
	rod := &placement.Piece{Tag: "rod", Joint: joint, Item: item("hold-down"), Lie: placement.Lie{Rod: &placement.Axis{A: geom.Vec3{X: 24.5}}}}
	strap := &placement.Piece{Tag: "strap", Joint: joint, Item: item("strap"), Lie: placement.Lie{Bands: []geom.Band{{{A: geom.Vec3{X: 21}, B: geom.Vec3{X: 21, Z: 30}}}}}}
	bare := &placement.Piece{Tag: "bare", Joint: joint, Item: item("bare")}
	for name, c := range map[string]struct {
		pieces []*placement.Piece
		arm    float64
		to     string
	}{
		"nothing placed":      {nil, 45.75, "the middle of the post"},
		"a hold-down":         {[]*placement.Piece{rod}, 42.75, "hold-down"},
		"a strap":             {[]*placement.Piece{strap}, 45.75, "the middle of the post"},
		"both":                {[]*placement.Piece{strap, rod}, 42.75, "hold-down"},
		"both, the other way": {[]*placement.Piece{rod, strap}, 42.75, "hold-down"},
		"what has no steel":   {[]*placement.Piece{bare}, 45.75, "the middle of the post"},
	} {
		b := &builder{model: &model{givens: givens{placed: placement.Of(&framing.House{}, c.pieces...)}}}
		g := &Segment{Wall: wall, Shear: &plan.Shear{From: 20, To: 68}, Length: 48, posts: [2][]*framing.Member{{stud(20.75), stud(22.25)}, {stud(67.25)}}}
		g.ends[0] = joint
		b.levers(g, 0)
		assert.InDelta(t, c.arm, g.Lever, 1e-9, name)
		assert.Equal(t, c.to, g.LeverTo, name)
	}
	b := &builder{model: &model{}}
	g := &Segment{Wall: wall, Shear: &plan.Shear{From: 20, To: 68}, Length: 48}
	assert.InDelta(t, 20.75, g.postAt(0, 0), 1e-9, "half a stud in where no post is known")
	assert.InDelta(t, 67.25, g.postAt(1, 0), 1e-9)
	b.levers(g, 0)
	assert.InDelta(t, 46.5, g.Lever, 1e-9)
	assert.InDelta(t, 8.25, g.postArea(), 1e-9, "one stud of the wall")
	g.posts = [2][]*framing.Member{{stud(1), stud(2)}, {stud(3)}}
	assert.InDelta(t, 8.25, g.postArea(), 1e-9, "the smaller")
	g.posts[1] = nil
	assert.InDelta(t, 16.5, g.postArea(), 1e-9)
	g.Pierced = &timber.Perforated{}
	b.levers(g, 0)
	assert.InDelta(t, 48, g.Lever, 1e-9, "a perforated wall's is its length")
}

// Studs that stand as one post: tight beside each other, a sixteenth of an inch at most
// between, where the plan orders built-up studs nailed; and those of the other wall at a
// corner where it orders that.
func TestStudsThatStandAsOne(t *testing.T) {
	south, west := &plan.Wall{Name: "S"}, &plan.Wall{Name: "W"}
	at := func(w *plan.Wall, role plan.Role, s float64) *framing.Member {
		return &framing.Member{Wall: w, Role: role, S0: s, S1: s + 1.5}
	}
	a, b, c, far := at(south, plan.Post, 0), at(south, plan.Stud, 1.55), at(south, plan.King, 3.05), at(south, plan.Stud, 4.65)
	jack := at(south, plan.Jack, 4.6)
	end, loose := at(west, plan.Post, 120), &framing.Member{Role: plan.PorchPost}
	house := &framing.House{
		Members: []*framing.Member{far, c, b, a, jack, end, loose},
		Joints: []*framing.Joint{
			{Kind: plan.StudBase, Members: []*framing.Member{a, far}},
			{Kind: plan.WallCorner, Members: []*framing.Member{a}},
			{Kind: plan.WallCorner, Members: []*framing.Member{end, a, far}},
		},
	}
	for _, x := range []struct {
		name   string
		orders []plan.Connection
		of     *framing.Member
		want   []*framing.Member
	}{
		{"nothing ordered", nil, a, []*framing.Member{a}},
		{"built-up", []plan.Connection{plan.BuiltUpStuds}, a, []*framing.Member{a, b, c}},
		{"built-up, from the last", []plan.Connection{plan.BuiltUpStuds}, c, []*framing.Member{a, b, c}},
		{"one apart", []plan.Connection{plan.BuiltUpStuds}, far, []*framing.Member{far}},
		{"at the corner", []plan.Connection{plan.CornerStuds}, a, []*framing.Member{a, end}},
		{"from the other wall", []plan.Connection{plan.CornerStuds}, end, []*framing.Member{end, a}},
		{"both", []plan.Connection{plan.BuiltUpStuds, plan.CornerStuds}, b, []*framing.Member{a, b, c, end}},
		{"no wall's", []plan.Connection{plan.BuiltUpStuds}, loose, []*framing.Member{loose}},
		{"no upright", []plan.Connection{plan.BuiltUpStuds}, jack, []*framing.Member{jack}},
	} {
		p := &plan.Plan{}
		for _, o := range x.orders {
			p.Nailing = append(p.Nailing, &plan.NailLine{At: o})
		}
		b := &builder{model: &model{givens: givens{plan: p, house: house}}}
		assert.Equal(t, x.want, b.builtUp(x.of), x.name)
	}
}

// Which segment of a line a link is of: by the name that its ID begins with, or by its joint.
func TestTheSegmentOfALink(t *testing.T) {
	j, other := &framing.Joint{ID: "j"}, &framing.Joint{ID: "o"}
	one, two := &SegmentShear{Segment: &Segment{Name: "1S 0-40"}}, &SegmentShear{Segment: &Segment{Name: "1S 0-400", ends: [2]*framing.Joint{nil, j}}}
	x := &LineShear{Segments: []*SegmentShear{one, two}}
	for _, c := range []struct {
		link Link
		want *SegmentShear
	}{
		{Link{ID: "1S 0-40"}, one},
		{Link{ID: "1S 0-40, post"}, one},
		{Link{ID: "1S 0-40 start"}, one},
		{Link{ID: "1S 0-400"}, two},
		{Link{ID: "1S 0-4"}, nil},
		{Link{ID: "x", Joint: j}, two},
		{Link{ID: "x", Joint: other}, nil},
		{Link{ID: "1S 0-401"}, nil},
	} {
		assert.True(t, c.want == x.segmentOf(&c.link), c.link.ID)
	}
}
