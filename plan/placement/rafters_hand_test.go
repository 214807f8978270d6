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

// Both sides of a rafter 1 1/2 in thick where it passes a wall's face: 3/4 in off its middle
// line, of a hip at 45 degrees 3/4 x 1.4142 = 1.0607 along the wall; whichever end it is
// given from, its left is on the left of who looks in over the wall.
func TestBothSidesOfARafterAtItsWall(t *testing.T) {
	wall, other := &plan.Wall{To: geom.Vec2{X: 96}}, &plan.Wall{}
	r := 0.75 * math.Sqrt2
	k := math.Sqrt2 / 2
	for _, c := range []struct {
		name           string
		a, b           geom.Vec3
		section        plan.Lumber
		wall           *plan.Wall // of the member
		deep           float64
		left, right    float64
		n, run         geom.Vec3 // of the left side
		s0, s1, middle float64
	}{
		{name: "square to it", a: geom.Vec3{X: 48, Y: -20}, b: geom.Vec3{X: 48, Y: 90, Z: 60}, section: two6, left: 47.25, right: 48.75, n: geom.Vec3{X: -1}, run: geom.Vec3{Y: 1}},
		{name: "given from its head", a: geom.Vec3{X: 48, Y: 90, Z: 60}, b: geom.Vec3{X: 48, Y: -20}, section: two6, left: 47.25, right: 48.75, n: geom.Vec3{X: -1}, run: geom.Vec3{Y: 1}},
		{name: "of two plies", a: geom.Vec3{X: 48, Y: -20}, b: geom.Vec3{X: 48, Y: 90}, section: plan.Lumber{Ply: 2, Breadth: 1.5, Depth: 7.25}, left: 46.5, right: 49.5, n: geom.Vec3{X: -1}, run: geom.Vec3{Y: 1}},
		{name: "of no section", a: geom.Vec3{X: 48, Y: -20}, b: geom.Vec3{X: 48, Y: 90}, left: 47.25, right: 48.75, n: geom.Vec3{X: -1}, run: geom.Vec3{Y: 1}},
		{name: "a hip", a: geom.Vec3{X: -10, Y: -10}, b: geom.Vec3{X: 60, Y: 60}, section: two6, left: -r, right: r, n: geom.Vec3{X: -k, Y: k}, run: geom.Vec3{X: k, Y: k}},
		{name: "a hip 10 in deep", a: geom.Vec3{X: -10, Y: -10}, b: geom.Vec3{X: 60, Y: 60}, section: two6, deep: 10, left: 10 - r, right: 10 + r, n: geom.Vec3{X: -k, Y: k}, run: geom.Vec3{X: k, Y: k}},
		{name: "a hip the other way", a: geom.Vec3{X: 60, Y: -10}, b: geom.Vec3{X: 10, Y: 40}, section: two6, deep: 10, left: 40 - r, right: 40 + r, n: geom.Vec3{X: -k, Y: -k}, run: geom.Vec3{X: -k, Y: k}},
		{name: "along the wall", a: geom.Vec3{X: 20, Y: 2}, b: geom.Vec3{X: 90, Y: 2}, section: two6, left: 19.25, right: 20.75, n: geom.Vec3{X: -1}, run: geom.Vec3{Y: 1}},
		{name: "of the wall itself", a: geom.Vec3{X: 20, Y: 2}, b: geom.Vec3{X: 90, Y: 2}, section: two6, wall: wall, s0: 30, s1: 40, left: 34.25, right: 35.75, n: geom.Vec3{X: -1}, run: geom.Vec3{Y: 1}},
		{name: "of another wall", a: geom.Vec3{X: 20, Y: 2}, b: geom.Vec3{X: 90, Y: 2}, section: two6, wall: other, s0: 30, s1: 40, left: 19.25, right: 20.75, n: geom.Vec3{X: -1}, run: geom.Vec3{Y: 1}},
	} {
		m := &framing.Member{A: c.a, B: c.b, Section: c.section, Wall: c.wall, S0: c.s0, S1: c.s1}
		got := sidesAt(wall.Frame(), m, c.deep, &framing.Joint{Wall: wall})
		left, right := got[plan.Left], got[plan.Right]
		assert.InDelta(t, c.left, left.s, 1e-9, c.name)
		assert.InDelta(t, c.right, right.s, 1e-9, c.name)
		assert.Equal(t, [2]float64{-1, 1}, [2]float64{left.way, right.way}, c.name)
		assert.InDelta(t, 0, left.n.Sub(c.n).Len(), 1e-9, "%s: %v", c.name, left.n)
		assert.InDelta(t, 0, right.n.Add(c.n).Len(), 1e-9, "%s: %v", c.name, right.n)
		for _, s := range got {
			assert.InDelta(t, 0, s.run.Sub(c.run).Len(), 1e-9, "%s: %v", c.name, s.run)
		}
	}
}

// A clip 1 1/2 in wide goes on a rafter's left, the second of two on its right, but never
// off the wall's end; a side asked for is taken where it is on the wall, or where neither is.
func TestOnWhichSideOfARafterAClipGoes(t *testing.T) {
	for _, c := range []struct {
		name   string
		length float64 // of the wall; 0 none
		at     float64
		w      want
		side   plan.Face
	}{
		{"first", 96, 48, want{n: 1}, plan.Left},
		{"second", 96, 48, want{n: 2, k: 1}, plan.Right},
		{"third", 96, 48, want{n: 3, k: 2}, plan.Left},
		{"on the other", 96, 48, want{n: 1, other: true}, plan.Right},
		{"right asked for", 96, 48, want{n: 1, face: plan.Right}, plan.Right},
		{"inside asked for", 96, 48, want{n: 1, face: plan.Inside}, plan.Left},
		{"at the wall's start", 96, 0.75, want{n: 1}, plan.Right},
		{"at its start, second", 96, 0.75, want{n: 2, k: 1}, plan.Right},
		{"at its start, left asked for", 96, 0.75, want{n: 1, face: plan.Left}, plan.Right},
		{"2 1/4 in from its start", 96, 2.25, want{n: 1}, plan.Left},
		{"2 1/8 in from its start", 96, 2.125, want{n: 1}, plan.Right},
		{"at its end", 96, 95.25, want{n: 1}, plan.Left},
		{"at its end, right asked for", 96, 95.25, want{n: 1, face: plan.Right}, plan.Left},
		{"2 1/4 in from its end, second", 96, 93.75, want{n: 2, k: 1}, plan.Right},
		{"2 1/8 in from its end, second", 96, 93.875, want{n: 2, k: 1}, plan.Left},
		{"on a wall as long as it is thick", 1.5, 0.75, want{n: 1}, plan.Left},
		{"on that, right asked for", 1.5, 0.75, want{n: 1, face: plan.Right}, plan.Right},
		{"off the walls", 0, 900, want{n: 2, k: 1}, plan.Right},
	} {
		m := &framing.Member{A: geom.Vec3{X: c.at, Y: -20}, B: geom.Vec3{X: c.at, Y: 90, Z: 60}, Section: two6}
		j := &framing.Joint{Kind: plan.RafterPlate, Station: c.at, Members: []*framing.Member{m}}
		f := geom.NewFrame(geom.Vec2{}, geom.Vec2{X: 1})
		if c.length > 0 {
			j.Wall = &plan.Wall{To: geom.Vec2{X: c.length}}
			f = j.Wall.Frame()
		}
		c.w.joint, c.w.item = j, &hardware.Item{Item: &plan.Item{Width: 1.5}}
		x := &placer{world: newWorld(&framing.House{Plan: &plan.Plan{}})}
		assert.Equal(t, c.side, x.rafterSide(c.w, f, m, sidesAt(f, m, 0, j), 100), c.name)
	}
}

// The engineer's place with a mark that is none, at a joint its item does not fit, and
// one that removes whatever is at the station.
func TestPlacesOfTheEngineer(t *testing.T) {
	at := []float64{16}
	_, ds := placed(t, standard().with(plan.Place{Use: "bass-strap", Wall: "2S", At: at}))
	require.Len(t, only(ds, "unknown-mark"), 1)
	assert.Equal(t, "place of bass-strap on 2S", ds[0].Where)
	assert.Equal(t, 200, ds[0].Pos.Line)
	p, ds := placed(t, standard().with(plan.Place{Use: "wrap-strap", Wall: "2S", On: "stud-stud", At: at}))
	require.Len(t, only(ds, "item-not-for-joint"), 1)
	assert.Empty(t, p.Pieces)
	rules := []any{plan.Rule{Name: "s", At: "stud-stud", Use: "story-strap"}, plan.Rule{Name: "c", At: "stud-top", Use: "plate-clip"}}
	p, _ = placed(t, standard().with(rules...))
	all := len(p.Pieces)
	p, ds = placed(t, standard().with(append(rules, plan.Place{Wall: "2S", At: at, Action: plan.Remove})...))
	assert.Empty(t, ds)
	assert.Len(t, p.Pieces, all-1)
	// Where several stations are at fault each is told at its own place in the file.
	pos := []plan.Pos{{File: "t.toml", Line: 200, Col: 20}, {File: "t.toml", Line: 200, Col: 24}}
	_, ds = placed(t, standard().with(plan.Place{Use: "coil", Wall: "2S", On: "stud-stud", At: []float64{24, 40, 56}, AtPos: pos}))
	found := only(ds, "place-off-member")
	require.Len(t, found, 3)
	assert.Equal(t, []int{20, 24, 1}, []int{found[0].Pos.Col, found[1].Pos.Col, found[2].Pos.Col})
}
