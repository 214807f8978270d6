package framing

import (
	"fmt"
	"math"
	"slices"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"
	"pgregory.net/rapid"

	"galewright/plan"
	"galewright/plan/geom"
)

var twoTwoByTen = plan.Lumber{Ply: 2, Breadth: 1.5, Depth: 9.25, Text: "2-2x10"}

// twoFloors is a house of two stories, 336 by 240 in, joists of the second floor
// running north at 16 in, with one beam over the first story.
func twoFloors(set plan.BeamSet, from, to geom.Vec2, section plan.Lumber, posts ...float64) *plan.Plan {
	p := stories(2)
	for i := range 2 {
		ring(p, i, rect(0, 0, 336, 240)...)
	}
	p.Lumber.Stock = []float64{400}
	p.Beams = []*plan.FloorBeam{{
		Name: "B1", Level: p.Levels[0], Set: set, From: from, To: to, Member: section, Posts: posts,
		Post: plan.Lumber{Ply: 1, Breadth: 5.5, Depth: 5.5, Text: "6x6"}, Pos: plan.Pos{File: "plan.toml", Line: 77},
	}}
	return p
}

func roled(h *House, r plan.Role, level string) (out []*Member) {
	for _, m := range h.Members {
		if m.Role == r && (m.Level != nil && m.Level.Name == level) {
			out = append(out, m)
		}
	}
	return out
}

// The beam runs between the rims, from 1.5 to 334.5, and lies on 4 in of the plates
// beyond them: 1.5 to 5.5 and 330.5 to 334.5. The joists at 16 ... 320, 20 of them, are
// cut at its faces, 118.5 and 121.5: from the rim's face at 1.5 117 in, and 117 to the
// other. The plates' top is 120 + 109 1/8, the joists' middle 4 5/8 above it.
func TestJoistsHangOnAFlushBeamByHand(t *testing.T) {
	h := frame(t, twoFloors(plan.SetFlush, geom.Vec2{Y: 120}, geom.Vec2{X: 336, Y: 120}, twoTwoByTen))
	require.Len(t, h.Beams, 1)
	m := h.Beams[0].Pieces[0]
	assert.Equal(t, plan.FlushBeam, m.Role)
	assert.InDelta(t, 333, m.Length, 1e-9)
	assert.InDelta(t, 229.125+9.25, m.Z1, 1e-9)
	joists := roled(h, plan.Joist, "second")
	require.Len(t, joists, 40)
	for _, j := range joists {
		assert.InDelta(t, 117, j.Length, 1e-9, j.ID)
	}
	hung := joints(h, "B1", plan.JoistHung)
	require.Len(t, hung, 40)
	for _, j := range hung {
		assert.Equal(t, []plan.Role{plan.Joist, plan.FlushBeam}, rolesOf(j))
		assert.InDelta(t, 1.5, math.Abs(j.At.Y-120), 1e-9)
		assert.InDelta(t, 229.125+4.625, j.At.Z, 1e-9)
		assert.InDelta(t, 16, j.Tributary, 1e-9)
	}
	assert.Equal(t, "B1-16-JH", hung[0].ID)
	assert.Equal(t, "B1-16b-JH", hung[1].ID)
	seats := append(joints(h, "1B", plan.BeamSeat), joints(h, "1D", plan.BeamSeat)...)
	require.Len(t, seats, 2)
	for _, j := range seats {
		assert.Equal(t, []plan.Role{plan.FlushBeam, plan.UpperPlate}, rolesOf(j))
		assert.InDelta(t, 120, j.Station, 1e-9)
		assert.InDelta(t, 229.125, j.At.Z, 1e-9)
		assert.InDelta(t, 164.5, math.Abs(j.At.X-168), 1e-9, "at 3.5 and 332.5")
	}
}

// Dropped between the walls' inside faces, 5.5 and 330.5, on a post at 168 in the middle
// of its line. Joists of stock up to 192 break over its center line, 118.5 each; of 240
// they pass.
func TestJoistsLieOnADroppedBeamByHand(t *testing.T) {
	p := twoFloors(plan.SetDropped, geom.Vec2{X: 0, Y: 120}, geom.Vec2{X: 336, Y: 120}, twoTwoByTen, 168)
	p.Levels[0].JoistRun = plan.AxisX // a joist at 112 in runs under the post, from 109.25 ... 120.75? no: 120 on
	h, faults := Frame(p)
	for _, f := range faults {
		require.Equal(t, plan.Code("beam-post-on-subfloor"), f.Code, "%s", f)
	}
	sound(t, h)
	require.Len(t, h.Beams[0].Pieces, 1)
	assert.InDelta(t, 325, h.Beams[0].Pieces[0].Length, 1e-9)
	assert.Len(t, joints(h, "B1", plan.JoistBeam), 20)
	assert.Len(t, joints(h, "B1", plan.BeamToPost), 1)
	post := roled(h, plan.BeamPost, "first")[0]
	assert.InDelta(t, 109.125-9.25, post.Length, 1e-9)
	p.Lumber.Stock = []float64{192}
	h, _ = Frame(p)
	sound(t, h)
	require.Len(t, h.Beams[0].Pieces, 2)
	assert.InDelta(t, 162.5, h.Beams[0].Pieces[0].Length, 1e-9, "5.5 to 168")
	list := joints(h, "B1", plan.JoistBeam)
	assert.Len(t, list, 40)
	for _, j := range list {
		assert.InDelta(t, 118.5, j.First().Length, 1e-9)
		assert.InDelta(t, 229.125, j.At.Z, 1e-9)
	}
	cap := joints(h, "B1", plan.BeamToPost)[0]
	assert.Equal(t, []plan.Role{plan.PlateBeam, plan.BeamPost, plan.PlateBeam}, rolesOf(cap))
}

// A post over a joist stands on it through the subfloor; between two joists that is told.
func TestAPostStandsOnAJoistOrIsTold(t *testing.T) {
	p := twoFloors(plan.SetDropped, geom.Vec2{Y: 120}, geom.Vec2{X: 336, Y: 120}, twoTwoByTen, 160)
	h := frame(t, p)
	foot := joints(h, "B1", plan.BeamPostBase)
	require.Len(t, foot, 1)
	assert.Equal(t, []plan.Role{plan.BeamPost, plan.Joist}, rolesOf(foot[0]))
	assert.InDelta(t, 0.75, foot[0].Gap, 1e-9)
	p.Beams[0].Posts[0] = 168
	_, faults := Frame(p)
	require.Len(t, faults, 1)
	assert.Equal(t, plan.Code("beam-post-on-subfloor"), faults[0].Code)
	assert.Equal(t, plan.Warning, faults[0].Severity)
}

// What cannot be built is told, each by its code.
func TestBeamsThatCannotCarryAreTold(t *testing.T) {
	at := func(x, y float64) geom.Vec2 { return geom.Vec2{X: x, Y: y} }
	for _, c := range []struct {
		code plan.Code
		p    *plan.Plan
	}{
		{"beam-off-square", twoFloors(plan.SetFlush, at(100, 0), at(140, 240), twoTwoByTen)},
		{"beam-shallow", twoFloors(plan.SetFlush, at(0, 120), at(336, 120), twoTwoByEight)},
		{"beam-in-the-air", twoFloors(plan.SetFlush, at(0, 120), at(200, 120), twoTwoByTen)},
		{"beam-off-floor", twoFloors(plan.SetFlush, at(400, 120), at(600, 120), twoTwoByTen)},
		{"beam-post-off", twoFloors(plan.SetFlush, at(0, 120), at(336, 120), twoTwoByTen, 400)},
		{"beam-post-no-room", twoFloors(plan.SetDropped, at(0, 120), at(336, 120), plan.Lumber{Ply: 1, Breadth: 5.25, Depth: 100, Text: "deep"}, 160)},
	} {
		h, faults := Frame(c.p)
		require.Len(t, faults, 1, "%s: %v", c.code, faults)
		assert.Equal(t, c.code, faults[0].Code)
		assert.Equal(t, 77, faults[0].Pos.Line)
		assert.Empty(t, h.Beams)
	}
}

// ceilinged is a gable of 300 across with ceiling joists, 14 of them, and a beam along
// its middle.
func ceilinged(set plan.BeamSet, depth float64) *plan.Plan {
	p := wide()
	p.Levels[0].JoistRun = plan.AxisX
	p.Beams = []*plan.FloorBeam{{
		Name: "B1", Level: p.Levels[0], Set: set, From: geom.Vec2{X: 5.5, Y: 150}, To: geom.Vec2{X: 234.5, Y: 150}, Posts: []float64{0, 229},
		Member: plan.Lumber{Ply: 2, Breadth: 1.5, Depth: depth, Text: "2-2x"}, Post: plan.Lumber{Ply: 1, Breadth: 3.5, Depth: 3.5, Text: "4x4"},
	}}
	return p
}

// Ceiling joists break over a dropped beam's middle at 150, spliced as over a wall; at a
// flush one of 3 in they are cut at 148.5 and 151.5 and hang.
func TestCeilingJoistsAndBeamsByHand(t *testing.T) {
	h, _ := Frame(ceilinged(plan.SetDropped, 7.25))
	sound(t, h)
	require.Len(t, h.Ties, 14)
	for _, x := range h.Ties {
		require.Len(t, x.Pieces, 2)
		require.Len(t, x.Splices, 1)
		require.Len(t, x.Beams, 1)
		assert.InDelta(t, 150, x.Beams[0].Along, 1e-9)
		assert.InDelta(t, 150, x.Pieces[0].Length, 1e-9)
	}
	assert.Len(t, joints(h, "B1", plan.JoistBeam), 28)
	for _, deep := range []float64{5.5, 7.25} {
		h, _ = Frame(ceilinged(plan.SetFlush, deep))
		sound(t, h)
		require.Len(t, h.Beams, 1)
		assert.InDelta(t, 229.125+5.5, h.Beams[0].Pieces[0].Z1, 1e-9)
		for _, x := range h.Ties {
			require.Len(t, x.Pieces, 2)
			assert.Empty(t, x.Splices)
			assert.InDelta(t, 148.5, x.Pieces[0].Length, 1e-9)
			assert.InDelta(t, 148.5, x.Pieces[1].Length, 1e-9)
		}
		hung := joints(h, "B1", plan.JoistHung)
		assert.Len(t, hung, 28)
		assert.InDelta(t, 16, hung[8].Tributary, 1e-9)
	}
}

// borne wants each joist of an upper floor to lie on something or hang at both its ends,
// and each beam to be carried within 6 in of both its.
func borne(t require.TestingT, h *House) {
	held := map[*Member][]geom.Vec2{}
	for _, j := range h.Joints {
		switch j.Kind {
		case plan.JoistHung, plan.TailHeader, plan.HeaderTrimmer:
			held[j.First()] = append(held[j.First()], j.At.Flat())
		}
	}
	for _, m := range h.Members {
		if m.Role != plan.Joist || m.Roof != nil || m.Level.Index == 0 {
			continue
		}
		for _, p := range []geom.Vec3{m.A, m.B} {
			require.True(t, hangsAt(held[m], p.Flat()) || bearsAt(h, m, p) || hangsOver(h, m, p), "the end of %s at %v is in the air", m.ID, p)
		}
	}
	for _, x := range h.Beams {
		first, last := x.Pieces[0].A, x.Pieces[len(x.Pieces)-1].B
		for _, p := range []geom.Vec3{first, last} {
			near := false
			for _, u := range x.Supports {
				near = near || u.At.Flat().Sub(p.Flat()).Len() < 6
			}
			require.True(t, near, "an end of %s at %v is in the air", x.Name, p)
		}
	}
}

func hangsAt(at []geom.Vec2, p geom.Vec2) bool {
	for _, q := range at {
		if q.Sub(p).Len() < 4 {
			return true
		}
	}
	return false
}

// hangsOver tells whether the end of a joist reaches past something that it lies on by no
// more than its nominal depth, with three times as much of it from there to the next thing
// that it lies on or hangs at (IRC 2018 R502.3.3, from memory): felt for inch by inch.
func hangsOver(h *House, m *Member, p geom.Vec3) bool {
	far := m.A.Add(m.B).Sub(p)
	in, long := far.Sub(p).Unit(), far.Sub(p).Len()
	first, last := -1.0, -1.0
	for s := 0.0; s < long; s++ {
		if bearsAt(h, m, p.Add(in.Mul(s))) {
			if last = s; first < 0 {
				first = s
			}
		}
	}
	if bearsAt(h, m, far) {
		last = long
	}
	over := first + m.Level.Rim
	return first >= 0 && over <= calledDeep(m.Section.Depth)+1 && last-first >= backSpan*over-2
}

// bearsAt tells whether something touches a joist's end from below, or a ledger or rim
// its end.
func bearsAt(h *House, m *Member, p geom.Vec3) bool {
	out := p.Sub(m.A.Add(m.B).Mul(0.5)).Unit()
	f := geom.NewFrame(m.A.Flat(), m.B.Flat())
	half := m.Section.Width() / 2
	s, _ := f.Local(p.Flat())
	in := s - 5*out.Flat().Dot(f.D)
	foot := f.Box(min(s, in), max(s, in), -half, half, m.Z0-0.2, m.Z0+0.2)
	face := f.Box(s-0.2, s+0.2, -half, half, m.Z0, m.Z1)
	for _, o := range h.Members {
		for _, solid := range o.Solid {
			switch o.Role {
			case plan.UpperPlate, plan.PlateBeam:
				if geom.Overlap(foot, solid, 0.01) {
					return true
				}
			case plan.Ledger:
				if geom.Overlap(face, solid, 0.01) {
					return true
				}
			}
		}
	}
	return false
}

// In drawn houses with beams across their upper floors, flush and dropped, on posts and
// between walls, no two members share space, all joists are carried at both ends and so
// are the beams; so too beside balloon walls and along slanted ones. What a beam cannot do
// is told, and then it does not stand; so is an end of a joist that nothing near carries.
func TestDrawnHousesWithBeams(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		s := drawShapeOf(t, outlineNames, []float64{12, 16, 19.2, 24})
		s.stories, s.inner = 2, false
		p := s.plan(same, false)
		n := rapid.IntRange(1, 2).Draw(t, "beams")
		for i := range n {
			drawBeam(t, p, s, i)
		}
		h, faults := Frame(p)
		for _, f := range faults {
			switch string(f.Code) {
			case "wall-in-opening", "opening-near-end", "beam-in-the-air", "beam-post-off", "beam-too-short", "beam-post-on-subfloor", "members-overlap", "beam-off-floor", "beam-off-square", "joist-in-the-air", "joist-overhang":
			default:
				t.Fatalf("fault: %v", f)
			}
			if f.Code == "members-overlap" && !twoBeams(p) && !inAWall(p) && !atASlantedCorner(p) {
				t.Fatalf("fault: %v", f)
			}
			if f.Code == "members-overlap" {
				return // two beams that cross were drawn, or one in a wall or into a corner's post, and that is told
			}
		}
		if faults.Errors() {
			return // told: overlaps of what an error has told of are not told again
		}
		told := slices.ContainsFunc(faults, func(f plan.Diagnostic) bool { return f.Code == "joist-in-the-air" || f.Code == "joist-overhang" })
		for _, pair := range h.Overlaps(sixteenth) { // less of two things that the plan places is not told
			t.Fatalf("%s reaches into %s", pair[0].ID, pair[1].ID)
		}
		if !told {
			borne(t, h)
		}
	})
}

// inAWall tells whether the beam drawn lies along a wall, in it or against it.
func inAWall(p *plan.Plan) bool {
	for _, w := range p.Walls {
		a, t0 := w.Frame().Local(p.Beams[0].From)
		b, _ := w.Frame().Local(p.Beams[0].To)
		if geom.Parallel(p.Beams[0].To.Sub(p.Beams[0].From).Unit(), w.Frame().D) && min(a, b) < w.Length() && max(a, b) > 0 && t0 > -6 && t0 < w.Depth()+6 {
			return true
		}
	}
	return false
}

// atASlantedCorner tells whether the beam drawn ends at a corner that is not square, where
// its end, square as it is cut, meets the post of either wall.
func atASlantedCorner(p *plan.Plan) bool {
	for _, end := range []geom.Vec2{p.Beams[0].From, p.Beams[0].To} {
		for _, v := range p.Walls {
			for _, w := range p.Walls {
				if v.To == w.From && math.Abs(v.Frame().D.Dot(w.Frame().D)) > 0.01 && end.Sub(w.From).Len() < 12 {
					return true
				}
			}
		}
	}
	return false
}

func twoBeams(p *plan.Plan) bool { return len(p.Beams) > 1 }

// drawBeam adds a beam across the joists of the second floor, over the whole of one span
// of the outline or from a wall to a post within.
func drawBeam(t *rapid.T, p *plan.Plan, s shape, i int) {
	f := geom.Frame{D: geom.Vec2{X: 1}, In: geom.Vec2{Y: 1}}
	if s.run == plan.AxisX {
		f = geom.Frame{D: geom.Vec2{Y: 1}, In: geom.Vec2{X: -1}}
	}
	lo, hi := math.Inf(1), math.Inf(-1)
	for _, q := range s.outline {
		_, at := f.Local(q)
		lo, hi = min(lo, at), max(hi, at)
	}
	at := lo + (hi-lo)*rapid.Float64Range(0.15, 0.85).Draw(t, fmt.Sprint("beam at ", i))
	spans := inside([][]geom.Vec2{s.outline}, f, at)
	one := spans[rapid.IntRange(0, len(spans)-1).Draw(t, "span")]
	x := &plan.FloorBeam{
		Name: fmt.Sprint("B", i), Level: p.Levels[0], Set: rapid.SampledFrom(plan.BeamSets).Draw(t, "set"), From: f.At(one.lo, at, 0).Flat(), To: f.At(one.hi, at, 0).Flat(),
		Member: plan.Lumber{Ply: rapid.IntRange(1, 3).Draw(t, "plies"), Breadth: 1.5, Depth: rapid.SampledFrom([]float64{9.25, 11.25}).Draw(t, "depth"), Text: "beam"},
		Post:   plan.Lumber{Ply: 1, Breadth: 3.5, Depth: 3.5, Text: "4x4"},
	}
	if rapid.Bool().Draw(t, "posts") {
		long := one.hi - one.lo
		x.Posts = []float64{24, long * rapid.Float64Range(0.3, 0.7).Draw(t, "post"), long - 24}
	}
	p.Beams = append(p.Beams, x)
}

// The end of a flush beam 3 in wide bears on a plate with 1 1/2 in of its length or more, a sixteenth less
// passes; on two plates at a splice with what they have together, told to be on the one with more of it.
// A plate that is not under its foot, here at 100, does not count, nor does any under a dropped beam.
func TestTheLeastThatAFlushBeamBears(t *testing.T) {
	f := geom.NewFrame(geom.Vec2{}, geom.Vec2{X: 200})
	plate := func(id string, role plan.Role, lo, hi, top float64) *Member {
		return &Member{ID: id, Role: role, Z0: top - 1.5, Z1: top, Solid: []geom.Solid{f.Box(lo, hi, -20, 20, top-1.5, top)}}
	}
	const upper = plan.UpperPlate
	for _, c := range []struct {
		name string
		set  plan.Role
		on   []*Member
		want string
	}{
		{"on a plate 5 1/2 in deep", plan.FlushBeam, []*Member{plate("a", upper, 0, 5.5, 100)}, "a"},
		{"1 15/32 in", plan.FlushBeam, []*Member{plate("a", upper, 0, 1.46875, 100)}, "a"},
		{"1 3/8 in", plan.FlushBeam, []*Member{plate("a", upper, 0, 1.375, 100)}, ""},
		{"3/4 and 1 in of two", plan.FlushBeam, []*Member{plate("a", upper, 0, 0.75, 100), plate("b", upper, 0.75, 1.75, 100)}, "b"},
		{"1 and 3/4 in of two", plan.FlushBeam, []*Member{plate("a", upper, 0, 1, 100), plate("b", upper, 1, 1.75, 100)}, "a"},
		{"of the lower plates", plan.FlushBeam, []*Member{plate("a", plan.TopPlate, 0, 5.5, 100)}, ""},
		{"a plate 1/8 in under it", plan.FlushBeam, []*Member{plate("a", upper, 0, 5.5, 99.875)}, ""},
		{"a dropped one", plan.PlateBeam, []*Member{plate("a", upper, 0, 5.5, 100)}, ""},
	} {
		b := newBuilder(stories(1))
		for _, m := range c.on {
			addMember(b.index, m)
		}
		fb := &framedBeam{Beam: &Beam{}, body: body{f, 0, 200, 3}, foot: 100, top: 109.25, role: c.set}
		got := ""
		if m := b.seatUnder(fb, 0, seatReach); m != nil {
			got = m.ID
		}
		assert.Equal(t, c.want, got, c.name)
	}
}
