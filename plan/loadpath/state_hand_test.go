package loadpath

import (
	"bufio"
	"bytes"
	"math"
	"testing"

	"galewright/plan"
	"galewright/plan/framing"
	"galewright/plan/geom"
	"galewright/plan/placement"
	"galewright/plan/units"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"
)

// A rafter on a porch beam with posts at 0 and 100: 30 in along, seven tenths of its 100 lb go to
// the first and three tenths to the other; past an end or over a post all to one; of a porch
// without posts 0.6 x 100 is told as held by nothing.
func TestARafterOnAPorchBeam(t *testing.T) {
	porch := &plan.Porch{Name: "P"}
	for _, c := range []struct {
		at   float64
		want [2]float64
	}{{30, [2]float64{70, 30}}, {100, [2]float64{0, 100}}, {0, [2]float64{100, 0}}, {120, [2]float64{0, 100}}, {-10, [2]float64{100, 0}}} {
		m := &model{porches: []*porchPost{{n: 0, porch: porch}, {n: 1, porch: porch, station: 100}}}
		s := &caseState{m: m, posts: make([]Force, 2), unheld: map[*framing.Member]float64{}}
		rafter := &framing.Member{}
		s.onPlate(&framing.Joint{Host: "P", Station: c.at, Members: []*framing.Member{rafter}}, Force{W: 100})
		for i, want := range c.want {
			assert.InDelta(t, want, s.posts[i].W, 1e-9, "at %v, post %d", c.at, i)
		}
		assert.Empty(t, s.unheld)
		s.onPlate(&framing.Joint{Host: "Q", Station: c.at, Members: []*framing.Member{rafter}}, Force{W: 100})
		assert.InDelta(t, 60, s.unheld[rafter], 1e-9)
	}
}

// A ridge beam along x over walls at 20 and 120 takes 100 lb at 45: three quarters to the
// first, a quarter to the other; over one wall all; over none the plates under the rafters
// that lean on it share it alike, and without these it is lost.
func TestAForceOnARidgeBeam(t *testing.T) {
	roof := &plan.Roof{Ridge: plan.AxisX}
	for _, c := range []struct {
		name  string
		walls []float64
		feet  int
		at    float64
		want  []float64
		lost  float64
	}{
		{"between two walls", []float64{20, 120}, 0, 45, []float64{75, 25}, 0},
		{"past the second", []float64{20, 120}, 0, 170, []float64{-50, 150}, 0},
		{"three walls, by those on both sides", []float64{20, 70, 120}, 0, 45, []float64{50, 50, 0}, 0},
		{"one wall", []float64{20}, 0, 170, []float64{100}, 0},
		{"no wall, four feet", nil, 4, 45, nil, 0},
		{"no wall, no feet", nil, 0, 45, nil, 60},
	} {
		m := &model{porches: []*porchPost{{porch: &plan.Porch{Name: "P"}}}}
		s := &caseState{m: m, posts: make([]Force, 1), rafters: map[*framing.Joint]Force{}, ridgeLost: map[*plan.Roof]float64{}}
		r := &ridge{roof: roof, bearing: true}
		for i, at := range c.walls {
			s.walls = append(s.walls, wallForce{})
			r.ends = append(r.ends, ridgeEnd{at: at, wall: &wallPath{n: i}})
		}
		for range c.feet {
			r.feet = append(r.feet, &framing.Joint{Host: "P"})
		}
		s.onRidge(r, geom.Vec2{X: c.at, Y: 7}, Force{W: 100})
		for i, want := range c.want {
			assert.InDelta(t, want, s.walls[i].roof.W, 1e-9, "%s: wall %d", c.name, i)
		}
		for _, j := range r.feet {
			assert.InDelta(t, 25, s.rafters[j].W, 1e-9, c.name)
		}
		assert.InDelta(t, 25*float64(c.feet), s.posts[0].W, 1e-9, c.name)
		assert.InDelta(t, c.lost, s.ridgeLost[roof], 1e-9, c.name)
	}
}

// What comes to the two sides of a pair goes to the lowest support of each; of a side without
// one it is lost, at allowable stress.
func TestAPairsReactions(t *testing.T) {
	a, b := &strip{Share: &framing.Share{Member: &framing.Member{}}}, &strip{Share: &framing.Share{Member: &framing.Member{}}}
	first, top := &framing.Joint{}, &framing.Joint{}
	a.ends = []support{{joint: first}, {u: 90, joint: top}}
	s := &caseState{rafters: map[*framing.Joint]Force{}, unheld: map[*framing.Member]float64{}}
	s.reactPair(&pair{a: a, b: b}, Force{W: 125}, Force{W: 75})
	assert.Equal(t, map[*framing.Joint]Force{first: {W: 125}}, s.rafters)
	assert.Len(t, s.unheld, 1)
	assert.InDelta(t, 45, s.unheld[b.Member], 1e-9)
}

// The largest uplift of each kind of joint and the shear of the lowest story each way; what
// only presses down counts as none, and what the house has none of has no number.
func TestNumbersOfAComparison(t *testing.T) {
	low, high := &plan.Level{Name: "first"}, &plan.Level{Name: "second"}
	m := &model{givens: givens{plan: &plan.Plan{Levels: []*plan.Level{low, high}}}}
	at := func(k plan.JointKind) *framing.Joint { return &framing.Joint{Kind: k} }
	u := &uplift{peaks: map[*framing.Joint]*peak{
		at(plan.RafterPlate): {demand: 300}, at(plan.RafterPlate): {demand: 500}, at(plan.RafterPlate): {demand: -900},
		at(plan.StudBase): {demand: -40}, at(plan.StudBase): {demand: -60},
	}}
	story := func(l *plan.Level, ax plan.Axis, lb float64) StoryShear {
		return StoryShear{Level: l, Axis: ax, ASD: lb}
	}
	got := m.figures(u, &lateral{stories: []StoryShear{story(high, plan.AxisX, 900), story(low, plan.AxisX, 1500), story(high, plan.AxisY, 700)}})
	require.Len(t, got, len(upliftRows)+2)
	for i, k := range upliftRows {
		switch k {
		case plan.RafterPlate:
			assert.InDelta(t, 500, got[i], 0)
		case plan.StudBase:
			assert.InDelta(t, 0, got[i], 0)
		default:
			assert.True(t, math.IsNaN(got[i]), k)
		}
	}
	assert.InDelta(t, 1500, got[len(upliftRows)], 0)
	assert.True(t, math.IsNaN(got[len(upliftRows)+1]), "no story is known along y")
	none := (&model{givens: givens{plan: &plan.Plan{}}}).figures(u, &lateral{stories: []StoryShear{story(low, plan.AxisX, 1500)}})
	assert.True(t, math.IsNaN(none[len(upliftRows)]), "of a plan without levels")
}

// An open gable of 4:12 is listed across with four cases of two halves and along with four of
// three stretches; in words it is headed once, and a house without an open roof has nothing.
func TestOpenRoofsInWords(t *testing.T) {
	roof := &plan.Roof{Name: "carport", Kind: plan.GableRoof}
	for open, heads := range map[bool]int{true: 1, false: 0} {
		m := &model{givens: givens{plan: &plan.Plan{Roofs: []*plan.Roof{roof}}}}
		m.open = map[*plan.Roof]bool{roof: open}
		r := &Report{work: &analysis{model: m}, Placement: &placement.Placement{House: &framing.House{Plan: m.plan}}}
		var out bytes.Buffer
		w := bufio.NewWriter(&out)
		r.writeOpen(printer{w, units.Imperial})
		require.NoError(t, w.Flush())
		assert.Equal(t, heads, bytes.Count(out.Bytes(), []byte("Open roofs, net pressure")))
		assert.Equal(t, open, out.Len() > 0)
		assert.Equal(t, 12*heads, bytes.Count(out.Bytes(), []byte("carport      along ")))
	}
}
