package loadpath

import (
	"math"
	"testing"

	"galewright/plan"
	"galewright/plan/capacity"
	"galewright/plan/framing"
	"galewright/plan/geom"
	"galewright/plan/hardware"
	"galewright/plan/nailing"
	"galewright/plan/placement"
	"galewright/plan/steel"
	"galewright/plan/timber"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"
)

// A rafter over supports at 0, 40 and 100 in along it: 100 lb go by lever to the two beside
// them, past an end to the two nearest: 30 in past 100 presses 40 down by half and lifts 100
// by one and a half of itself.
func TestAForceOnARafterOverThreeSupports(t *testing.T) {
	for _, c := range []struct {
		at   []float64
		u    float64
		want []float64
		lost float64
	}{
		{[]float64{0, 40, 100}, 20, []float64{50, 50, 0}, 0},
		{[]float64{0, 40, 100}, 70, []float64{0, 50, 50}, 0},
		{[]float64{0, 40, 100}, 130, []float64{0, -50, 150}, 0},
		{[]float64{0, 40, 100}, -20, []float64{150, -50, 0}, 0},
		{[]float64{0, 40, 100, 120}, 115, []float64{0, 0, 25, 75}, 0},
		{[]float64{0, 0.5}, 90, []float64{100, 0}, 0}, // one support, however many say so
		{[]float64{40}, 90, []float64{100}, 0},
		{nil, 90, nil, 60},
	} {
		m := &framing.Member{}
		x := &strip{Share: &framing.Share{Member: m}}
		var joints []*framing.Joint
		for _, u := range c.at {
			j := &framing.Joint{}
			joints = append(joints, j)
			x.ends = append(x.ends, support{u: u, joint: j})
		}
		s := &caseState{rafters: map[*framing.Joint]Force{}, unheld: map[*framing.Member]float64{}}
		s.rest(x, c.u, Force{W: 100}, 0)
		for i, j := range joints {
			assert.InDelta(t, c.want[i], s.rafters[j].W, 1e-9, "%v at %v: support %d", c.at, c.u, i)
		}
		assert.InDelta(t, c.lost, s.unheld[m], 1e-9, "%v", c.at)
	}
}

// Two girders 48 in apart with a pile each 96 in: a force goes to the girder that is named
// among its members, wherever it stands; without one to that under it.
func TestTheGirderThatIsNamed(t *testing.T) {
	p := &plan.Plan{}
	h := &framing.House{Plan: p}
	var beams []*framing.Member
	for i, name := range []string{"G1", "G2"} {
		y := 48 * float64(i)
		p.Girders = append(p.Girders, &plan.Girder{Name: name, From: geom.Vec2{Y: y}, To: geom.Vec2{X: 96, Y: y}})
		m, pile := &framing.Member{Role: plan.GirderBeam}, &framing.Member{Role: plan.Pile}
		beams = append(beams, m)
		for _, s := range []float64{0, 96} {
			h.Joints = append(h.Joints, &framing.Joint{ID: name, Kind: plan.GirderPile, Host: name, Station: s, Members: []*framing.Member{m, pile}})
		}
	}
	g := (&builder{model: &model{givens: givens{plan: p, house: h}}}).newPiling()
	for _, c := range []struct {
		members []*framing.Member
		want    string
	}{{beams[:1], "G1"}, {beams[1:], "G2"}, {nil, "G1"}, {[]*framing.Member{{Role: plan.Rim}, beams[1]}, "G2"}} {
		got := g.under(geom.Vec2{X: 24, Y: 1}, c.members)
		require.Len(t, got, 2)
		for i, k := range []float64{0.75, 0.25} { // 24 of 96 in from the first pile
			assert.Equal(t, c.want, got[i].pile.joint.ID)
			assert.InDelta(t, k, got[i].k, 1e-9)
		}
	}
}

// The base and the cap of one post of a porch, the one at 11.8 and the other at 12.2, are of
// one post; what is at another station, or of no porch, is not.
func TestPostsOfAPorch(t *testing.T) {
	porch := &plan.Porch{Name: "P"}
	joint := func(k plan.JointKind, host string, s float64) *framing.Joint {
		return &framing.Joint{Kind: k, Host: host, Station: s}
	}
	base, top, next := joint(plan.PostBase, "P", 11.8), joint(plan.PostCap, "P", 12.2), joint(plan.PostCap, "P", 96)
	b := &builder{model: &model{givens: givens{plan: &plan.Plan{Porches: []*plan.Porch{porch}}, house: &framing.House{Joints: []*framing.Joint{
		base, joint(plan.PostBase, "deck", 12), joint(plan.RafterPlate, "P", 12), top, next,
	}}}}}
	b.porchPosts()
	require.Len(t, b.porches, 2)
	assert.Same(t, base, b.porches[0].base)
	assert.Same(t, top, b.porches[0].cap)
	assert.Nil(t, b.porches[1].base)
	assert.Same(t, next, b.porches[1].cap)
	for at, want := range map[float64][2]int{0: {-1, 0}, 11.8: {0, 0}, 50: {0, 1}, 96: {1, 1}, 120: {1, -1}} {
		l, r := b.postsBeside(joint(plan.RafterPlate, "P", at))
		for i, got := range []*porchPost{l, r} {
			if want[i] < 0 {
				assert.Nil(t, got, "%v", at)
				continue
			}
			assert.Same(t, b.porches[want[i]], got, "%v", at)
		}
	}
}

// beside is three studs of a wall, nailed tight, whose tops are held by these, lb; less
// than 0 for none.
func beside(t *testing.T, held, demand [3]float64) (*analysis, [3]*framing.Joint) {
	t.Helper()
	w := &plan.Wall{Name: "S", To: geom.Vec2{X: 96}, Level: &plan.Level{}}
	p := &plan.Plan{Walls: []*plan.Wall{w}, Nailing: []*plan.NailLine{{At: plan.BuiltUpStuds, Nail: "10d common", Size: plan.NailDim{Diameter: 0.148, Length: 3}, Spacing: 3, Rows: 2, Drive: plan.FaceNail}}}
	h := &framing.House{Plan: p}
	a := &analysis{model: &model{lookups: lookups{byFirst: map[*framing.Member][]*framing.Joint{}}}, uplift: &uplift{peaks: map[*framing.Joint]*peak{}}}
	var joints [3]*framing.Joint
	var pieces []*placement.Piece
	for i := range joints {
		s := 1.5 * float64(i)
		m := &framing.Member{Role: plan.Stud, Wall: w, Level: w.Level, S0: s, S1: s + 1.5, Z1: 96, Length: 96, Section: plan.Lumber{Ply: 1, Breadth: 1.5, Depth: 5.5}}
		m.Solid = []geom.Solid{w.Frame().Box(s, s+1.5, 0, 5.5, 0, 96)}
		h.Members = append(h.Members, m)
		joints[i] = &framing.Joint{Kind: plan.StudTop, Wall: w, Members: []*framing.Member{m}}
		a.byFirst[m] = []*framing.Joint{{Kind: plan.StudBase}, joints[i]}
		a.peaks[joints[i]] = &peak{demand: demand[i]}
		if held[i] >= 0 {
			it := &hardware.Item{Item: &plan.Item{Mark: "clip", Load: plan.Load{Uplift: held[i], Source: "invented"}}, Kind: hardware.KindNamed(plan.ClipItem)}
			pieces = append(pieces, &placement.Piece{Joint: joints[i], Item: it, Rule: &plan.Rule{}, Lie: placement.Lie{Laid: []placement.Laid{{Member: m}}}})
		}
	}
	a.fittings = &fittings{nails: nailing.New(h), allowed: capacity.New(steel.New(placement.Of(h, pieces...)), capacity.Context{})}
	a.species, _ = timber.SpeciesOf("southern pine")
	return a, joints
}

// What a stud's top lacks its neighbors' have to spare, half of it each where two want it;
// a neighbor that wants more than it holds, or holds nothing, gives nothing.
func TestWhatIsSpareBesideAStud(t *testing.T) {
	for _, c := range []struct {
		name         string
		held, demand [3]float64
		of           int
		want         float64
	}{
		{"one neighbor with 300 to spare", [3]float64{200, 500, -1}, [3]float64{400, 200, 0}, 0, 500},
		{"in the middle, 300 and 100", [3]float64{500, 200, 300}, [3]float64{200, 700, 200}, 1, 600},
		{"two that want the middle's 300", [3]float64{200, 500, 200}, [3]float64{400, 200, 400}, 0, 350},
		{"the other wants no more than it holds", [3]float64{200, 500, 200}, [3]float64{400, 200, 200}, 0, 500},
		{"the other is pressed down", [3]float64{200, 500, -1}, [3]float64{400, 200, -100}, 0, 500},
		{"the other has nothing of its own", [3]float64{200, 500, -1}, [3]float64{400, 200, 100}, 0, 350},
		{"the neighbor is pressed down: all of its own", [3]float64{200, 500, -1}, [3]float64{400, -200, 0}, 0, 700},
		{"the neighbor wants more than it holds", [3]float64{200, 500, -1}, [3]float64{400, 600, 0}, 0, 200},
		{"the neighbor has none", [3]float64{200, -1, 500}, [3]float64{400, 100, 0}, 0, 200},
	} {
		a, joints := beside(t, c.held, c.demand)
		own := a.allowed.Of(joints[c.of], capacity.Upward, ordinary)
		require.NotNil(t, own, c.name)
		require.InDelta(t, c.held[c.of], own.Value, 1e-9, c.name)
		got := a.withBeside(joints[c.of], own)
		assert.InDelta(t, c.want, got.Value, 1e-9, c.name)
		assert.InDelta(t, c.held[c.of], own.Value, 1e-9, "%s: what it had is not changed", c.name)
		if c.want > own.Value {
			assert.InDelta(t, c.want, got.Terms[len(got.Terms)-1].Value, 1e-9, c.name)
			assert.Contains(t, got.Governs, "nailed beside it")
		} else {
			assert.Equal(t, own.Governs, got.Governs)
		}
	}
	a, joints := beside(t, [3]float64{200, 1e6, -1}, [3]float64{400, 0, 0})
	got := a.withBeside(joints[0], a.allowed.Of(joints[0], capacity.Upward, ordinary))
	line := a.nails.Line(plan.BuiltUpStuds)
	require.Len(t, line.Spots, 2)
	assert.InDelta(t, 200+2*math.Ceil(96./3)*line.One(line.Spots[0], a.species).Lateral, got.Value, 1e-6, "no more than 64 nails pass")
	joints[0].Kind = plan.StudBase
	assert.InDelta(t, 200, a.withBeside(joints[0], &Capacity{Value: 200}).Value, 1e-9, "a foot has none")
}

// Only a stud whose own top holds less than it wants asks its neighbors: 400 lb against 200
// and 300 to spare beside it; of 100 or 200 lb its own 200 hold all. At
// strength wind of 900 lb less 0.9 of a weight of 200 leaves 720.
func TestAStudAsksItsNeighborsOnlyInNeed(t *testing.T) {
	for demand, want := range map[float64]float64{400: 500, 201: 500, 200: 200, 100: 200} {
		a, joints := beside(t, [3]float64{200, 500, -1}, [3]float64{demand, 200, 0})
		l := a.upliftLink(&Check{}, joints[0])
		assert.InDelta(t, want, l.Capacity.Value, 1e-9, "%v", demand)
		assert.InDelta(t, demand, l.Demand, 1e-9)
		assert.InDelta(t, demand/want, l.Ratio, 1e-9)
		assert.Empty(t, l.Gap)
	}
	a, joints := beside(t, [3]float64{200, -1, -1}, [3]float64{400, 30, 0.4})
	a.peaks[joints[0]].force = Force{W: 900, D: 200}
	l := a.upliftLink(&Check{}, joints[0])
	assert.InDelta(t, 720, l.Strength, 1e-9)
	assert.InDelta(t, 2, l.Ratio, 1e-9)
	l = a.upliftLink(&Check{}, joints[1])
	assert.Equal(t, "no hardware at this joint", l.Gap)
	assert.True(t, math.IsInf(l.Ratio, 1))
	l = a.upliftLink(&Check{}, joints[2])
	assert.Empty(t, l.Gap, "under half a pound nothing is asked")
	assert.Zero(t, l.Demand)
}
