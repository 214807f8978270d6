package framing

import (
	"fmt"
	"slices"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"
	"pgregory.net/rapid"

	"galewright/plan"
	"galewright/plan/geom"
)

// wellPlan is a house of 30 by 20 ft and two stories, its joists 2x10 at 16 in along
// y, with one opening in the upper floor.
func wellPlan(x ...*plan.FloorOpening) *plan.Plan {
	p := stories(2)
	ring(p, 0, rect(0, 0, 360, 240)...)
	ring(p, 1, rect(0, 0, 360, 240)...)
	p.Levels[1].FloorDepth = 10
	girders(p, 0, 360, 6, 120, 234)
	for _, o := range x {
		o.Level, o.Pos = p.Levels[1], plan.Pos{File: "plan.toml", Line: 70}
	}
	p.FloorOpenings = x
	return p
}

func well(name string, x0, y0, x1, y1 float64) *plan.FloorOpening {
	return &plan.FloorOpening{Name: name, Lo: geom.Vec2{X: x0, Y: y0}, Hi: geom.Vec2{X: x1, Y: y1}}
}

// upper lists the joists of the upper floor with their bounds on plan, in.
func upper(h *House) map[string][4]float64 {
	out := map[string][4]float64{}
	for _, m := range h.Members {
		if m.Role == plan.Joist && m.Level == h.Plan.Levels[1] {
			lo, hi := m.Bounds()
			out[m.ID] = [4]float64{lo.X, lo.Y, hi.X, hi.Y}
		}
	}
	return out
}

// The opening from 100 to 190 along x and 60 to 150 along y, by hand. Joists run from
// rim to rim, 1-1/2 to 238-1/2. Header and trimmers are doubled (7'-6" is over 4 ft): 3 in.
// Trimmers stand from 97 to 100 and from 190 to 193, headers from 57 to 60 and 150 to 153.
// Joists are on 16, 32 ... : that on 96 reaches from 95-1/4 to 96-3/4 and stays, clear of
// the trimmer; those on 112, 128, 144, 160 and 176 are cut; that on 192 lies in a trimmer.
func TestFloorOpeningByHand(t *testing.T) {
	h := frame(t, wellPlan(well("stair", 100, 60, 190, 150)))
	got := upper(h)
	want := map[string][4]float64{
		"second/stair trimmer@98.5":  {97, 1.5, 100, 238.5},
		"second/stair trimmer@191.5": {190, 1.5, 193, 238.5},
		"second/stair header@58.5":   {100, 57, 190, 60},
		"second/stair header@151.5":  {100, 150, 190, 153},
	}
	for x := 16.0; x < 357; x += 16 {
		id := "second/joist@" + at(x)
		switch {
		case x == 192:
		case x > 100 && x < 190:
			want[id] = [4]float64{x - 0.75, 1.5, x + 0.75, 57}
			want[id+"b"] = [4]float64{x - 0.75, 153, x + 0.75, 238.5}
		default:
			want[id] = [4]float64{x - 0.75, 1.5, x + 0.75, 238.5}
		}
	}
	require.Len(t, got, len(want))
	for id, b := range want {
		require.Contains(t, got, id)
		assert.InDeltaSlice(t, b[:], func() []float64 { g := got[id]; return g[:] }(), 1e-9, id)
	}
	for _, m := range h.Members {
		if m.Role == plan.Joist && (m.ID == "second/stair header@58.5" || m.ID == "second/stair trimmer@98.5") {
			assert.Equal(t, "2-2x10", m.Section.Text)
			assert.InDelta(t, 219.125+9.25+120-120, m.Z1-m.Z0+219.125, 1e-9, "9-1/4 in deep")
		}
	}
}

// Its joints: two ends of each of two headers, five tails at each; stations run from
// the clear opening's west edge, 100.
func TestJointsOfAFloorOpening(t *testing.T) {
	h := frame(t, wellPlan(well("stair", 100, 60, 190, 150)))
	var ids []string
	for _, j := range h.Joints {
		if j.Host != "stair" {
			continue
		}
		ids = append(ids, j.ID)
		assert.Equal(t, "floor opening stair", j.HostName())
		for _, m := range j.Members { // both reach the joint
			lo, hi := m.Bounds()
			assert.True(t, j.At.X > lo.X-1e-6 && j.At.X < hi.X+1e-6 && j.At.Y > lo.Y-1e-6 && j.At.Y < hi.Y+1e-6, "%s %s", j.ID, m.ID)
		}
		if j.Kind == plan.TailHeader {
			assert.Contains(t, j.Members[1].ID, "header")
			assert.InDelta(t, j.Station+100, j.At.X, 1e-9)
			assert.True(t, j.At.Y == 57 || j.At.Y == 153)
		} else {
			assert.Contains(t, j.Members[0].ID, "header")
			assert.Contains(t, j.Members[1].ID, "trimmer")
		}
	}
	assert.Equal(t, []string{
		"stair-0-HT", "stair-0b-HT", "stair-12-TH", "stair-12b-TH", "stair-28-TH", "stair-28b-TH", "stair-44-TH", "stair-44b-TH",
		"stair-60-TH", "stair-60b-TH", "stair-76-TH", "stair-76b-TH", "stair-90-HT", "stair-90b-HT",
	}, ids)
}

// The rule for single members (IRC 2018 R502.10: header to 4 ft; a single trimmer where the
// header stands no more than 3 ft from its bearing). The joists bear at 1-1/2 and 238-1/2.
func TestFloorOpeningIsDoubledByRule(t *testing.T) {
	for _, c := range []struct {
		y0, y1, long    float64
		header, trimmer int
	}{
		{37.5, 202.5, 48, 1, 1},   // both headers 36 in from their bearing
		{37.6, 202.5, 48, 1, 2},   // a tenth more
		{37.5, 202.4, 48, 1, 2},   // the other a tenth more
		{37.5, 202.5, 48.1, 2, 2}, // longer than 4 ft
		{120, 202.5, 90, 2, 2},    // both
	} {
		h := frame(t, wellPlan(well("w", 104, c.y0, 104+c.long, c.y1)))
		header, trimmer := 0, 0
		for _, j := range h.Joints {
			if j.Kind == plan.HeaderTrimmer {
				header, trimmer = j.Members[0].Section.Ply, j.Members[1].Section.Ply
			}
		}
		assert.Equal(t, [2]int{c.header, c.trimmer}, [2]int{header, trimmer}, "%v", c)
	}
}

// Beside an outer wall, whose inner face is 4 in from the rim, no joist has room behind
// the header: it stands against the rim, from 1-1/2 to 4-1/2, and no tail ends at it.
func TestFloorOpeningBesideAnOuterWall(t *testing.T) {
	h := frame(t, wellPlan(well("w", 104, 5.5, 164, 60)))
	n := map[plan.JointKind]int{}
	for _, j := range h.Joints {
		n[j.Kind]++
	}
	assert.Equal(t, 4, n[plan.HeaderTrimmer])
	assert.Equal(t, 4, n[plan.TailHeader], "112, 128, 144, 160")
	got := upper(h)
	assert.InDelta(t, 63, got["second/joist@112"][1], 1e-9)
	assert.Contains(t, got, "second/w header@3")
	assert.InDelta(t, 1.5, got["second/w header@3"][1], 1e-9)
}

// At a ledger on a wall that passes the floor the opening goes up to where joists end,
// and no header stands there.
func TestFloorOpeningAtALedger(t *testing.T) {
	p := wellPlan(well("w", 104, 127, 164, 190)) // the wall from 120 to 125-1/2, its ledger to 127
	w := wall(p, "B", 0, geom.Vec2{X: 5.5, Y: 120}, geom.Vec2{X: 354.5, Y: 120})
	w.ToLevel, w.Bearing = p.Levels[1], true
	h := frame(t, p)
	n := map[plan.JointKind]int{}
	for _, j := range h.Joints {
		n[j.Kind]++
	}
	assert.Equal(t, 2, n[plan.HeaderTrimmer])
	assert.Equal(t, 4, n[plan.TailHeader])
	got := upper(h)
	assert.InDelta(t, 127, got["second/w trimmer@102.5"][1], 1e-9)
	assert.InDelta(t, 193, got["second/joist@112b"][1], 1e-9)
}

// What cannot be framed is told, with the figures, and leaves the floor whole.
func TestFloorOpeningsThatCannotBeFramed(t *testing.T) {
	for _, c := range []struct {
		code plan.Code
		part string
		x    []*plan.FloorOpening
	}{
		{"floor-opening-off-floor", "does not lie in the floor", []*plan.FloorOpening{well("w", 400, 60, 460, 120)}},
		{"floor-opening-off-floor", "reaches past", []*plan.FloorOpening{well("w", 104, -20, 164, 120)}},
		{"floor-opening-no-header", `leaves 2" for a header of 3"`, []*plan.FloorOpening{well("w", 104, 3.5, 164, 120)}},
		{"floor-opening-no-trimmer", `3" thick`, []*plan.FloorOpening{well("w", 4, 60, 64, 120)}},
		{"floor-openings-meet", "a and w", []*plan.FloorOpening{well("a", 104, 60, 164, 120), well("w", 169, 60, 200, 120)}},
		// one behind the other in one bay: the trimmers of both would run from rim to rim
		{"floor-openings-meet", "a and w", []*plan.FloorOpening{well("a", 104, 30, 164, 80), well("w", 120, 140, 180, 200)}},
	} {
		h, faults := Frame(wellPlan(c.x...))
		require.Len(t, faults, 1, "%v", faults)
		assert.Equal(t, c.code, faults[0].Code)
		assert.Contains(t, faults[0].Summary, c.part)
		assert.Equal(t, 70, faults[0].Pos.Line)
		for _, m := range h.Members {
			assert.NotContains(t, m.ID, "w header")
		}
	}
	p := wellPlan(well("w", 104, 60, 164, 120))
	wall(p, "P", 1, geom.Vec2{X: 130, Y: 5.5}, geom.Vec2{X: 130, Y: 100})
	_, faults := Frame(p)
	require.Len(t, faults, 1)
	assert.Equal(t, plan.Code("floor-opening-under-wall"), faults[0].Code)
	for _, header := range []string{"2x10", "2-2x10"} {
		p = wellPlan(well("w", 104, 60, 164, 120))
		p.FloorOpenings[0].Header, _ = plan.ParseLumber(header)
		p.FloorOpenings[0].Trimmer, _ = plan.ParseLumber("2x10")
		_, faults = Frame(p)
		require.Len(t, faults, 1)
		assert.Equal(t, plan.Code("floor-opening-single"), faults[0].Code)
		assert.Equal(t, plan.Warning, faults[0].Severity)
		assert.Contains(t, faults[0].Summary, "5'-0\"")
	}
}

// Wherever an opening lies in a floor, no two members share space, nothing but its
// headers and trimmers touches it, and every joist that ends there has its joint.
func TestFloorOpeningsAnywhere(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		x0 := rapid.Float64Range(10, 250).Draw(t, "x0")
		y0 := rapid.Float64Range(5.5, 150).Draw(t, "y0")
		o := well("w", x0, y0, x0+rapid.Float64Range(24, 340-x0).Draw(t, "wide"), y0+rapid.Float64Range(24, 234.5-y0).Draw(t, "long"))
		p := wellPlan(o)
		if rapid.Bool().Draw(t, "joists along x") {
			p.Levels[1].JoistRun = plan.AxisX
			p.Lumber.Stock = append(p.Lumber.Stock, 480)
		}
		h, faults := Frame(p)
		require.Empty(t, faults)
		require.Empty(t, h.Overlaps(0.01))
		box := geom.Box(o.Lo.Up(0), geom.Vec3{X: o.Hi.X - o.Lo.X}, geom.Vec3{Y: o.Hi.Y - o.Lo.Y}, geom.Vec3{Z: 500})
		along := 1
		if p.Levels[1].JoistRun == plan.AxisX {
			along = 0
		}
		ends := 0
		for _, m := range h.Members {
			if m.Role != plan.Joist || m.Level != p.Levels[1] {
				continue
			}
			require.False(t, slices.ContainsFunc(m.Solid, func(s geom.Solid) bool { return geom.Overlap(box, s, 0.01) }), m.ID)
			for _, e := range []geom.Vec3{m.A, m.B} {
				if s := e.Flat().Along(along); s > 2 && s < [2]float64{358, 238}[along] && m.B.Sub(m.A).Flat().Unit().RunsAlong(along) {
					ends++
				}
			}
		}
		tails := 0
		for _, j := range h.Joints {
			if j.Kind == plan.TailHeader {
				tails++
			}
		}
		require.Equal(t, ends, tails, "joists that end inside the floor")
	})
}

// flipped is the well plan on 352 in, whose joists at 16, 32 .. 336 are the same seen from its east
// end, seen in a mirror along x, along y, or with x and y changed over; the last is of a square house.
func flippedWell(how string, o plan.FloorOpening) (*plan.Plan, func(geom.Vec3) geom.Vec3) {
	wide := map[string]float64{"as it is": 352, "x": 352, "y": 352}[how]
	if wide == 0 {
		wide = 240
	}
	flip := func(p geom.Vec3) geom.Vec3 {
		switch how {
		case "x":
			p.X = wide - p.X
		case "y":
			p.Y = 240 - p.Y
		case "changed over":
			p.X, p.Y = p.Y, p.X
		}
		return p
	}
	a, z := flip(o.Lo.Up(0)).Flat(), flip(o.Hi.Up(0)).Flat()
	p := stories(2)
	ring(p, 0, rect(0, 0, wide, 240)...)
	ring(p, 1, rect(0, 0, wide, 240)...)
	girders(p, 0, wide, 6, 120, 234)
	o.Lo, o.Hi, o.Level = geom.Vec2{X: min(a.X, z.X), Y: min(a.Y, z.Y)}, geom.Vec2{X: max(a.X, z.X), Y: max(a.Y, z.Y)}, p.Levels[1]
	p.FloorOpenings = []*plan.FloorOpening{&o}
	if how == "changed over" {
		p.Levels[1].JoistRun = plan.AxisX
	}
	return p, flip
}

// wellLines lists joists of the upper floor and joints of its opening as they would be without a flip.
func wellLines(h *House, flip func(geom.Vec3) geom.Vec3) (out []string) {
	for _, m := range h.Members {
		if m.Role == plan.Joist && m.Level == h.Plan.Levels[1] {
			lo, hi := m.Bounds()
			out = append(out, fmt.Sprintf("%s %g %s", m.Section.Text, mil(m.Length), three(flip(lo.Add(hi).Mul(0.5)))))
		}
	}
	for _, j := range h.Joints {
		if j.Host == "w" {
			a, z := j.First(), j.Members[1]
			out = append(out, fmt.Sprintf("%s %s %g: %g %s, %g %s", j.Kind, three(flip(j.At)), j.Tributary, mil(a.Length), a.Section.Text, mil(z.Length), z.Section.Text))
		}
	}
	slices.Sort(out)
	return out
}

// A floor opening near any side of the floor is framed alike, whichever side it is and whichever way
// the joists run; its stations count from its corner with the lowest coordinates.
func TestAFloorOpeningIsFramedAlikeFromAnySide(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		at := rapid.SampledFrom([]float64{5.5, 6, 7, 30, 60})
		x0, y0 := max(7, at.Draw(t, "x0")), at.Draw(t, "y0")
		long := rapid.SampledFrom([]float64{30, 48, 90, 130}).Draw(t, "long")
		wide := rapid.SampledFrom([]float64{20, 47, 60, 100}).Draw(t, "wide")
		o := well("w", x0, y0, x0+wide, y0+long)
		for _, pair := range [][2]string{{"as it is", "x"}, {"as it is", "y"}, {"square", "changed over"}} {
			p, same := flippedWell(pair[0], *o)
			h, faults := Frame(p)
			require.Empty(t, faults)
			q, flip := flippedWell(pair[1], *o)
			g, faults := Frame(q)
			require.Empty(t, faults)
			want := wellLines(h, same)
			require.Equal(t, want, wellLines(g, flip), pair[1])
			require.Greater(t, len(want), 20)
			for _, j := range g.Joints {
				if j.Host == "w" {
					across := 0
					if pair[1] == "changed over" {
						across = 1
					}
					require.InDelta(t, j.At.Flat().Sub(q.FloorOpenings[0].Lo).Along(across), j.Station, 1e-9, j.ID)
				}
			}
		}
	})
}

// An opening from bearing to bearing has no header, and nothing to double. Where the plan has its
// own sections, the rule (see above) is told of where they are single and an opening is too long
// (4 ft) or its header too far from its bearing (3 ft), not where both are doubled.
func TestSingleMembersOfFloorOpenings(t *testing.T) {
	joist, two := twoByTen, twoByTen.Times(2)
	for _, c := range []struct {
		name            string
		header, trimmer plan.Lumber
		long, behind    float64
		ends            [2]bool
		want            string
	}{
		{"no headers", joist, joist, 90, 60, [2]bool{}, ""},
		{"both doubled", two, two, 90, 60, [2]bool{true, true}, ""},
		{"short and near", joist, joist, 48, 36, [2]bool{true, true}, ""},
		{"long header", joist, two, 49, 10, [2]bool{true, true}, "header spans 4'-1\" and is a single joist"},
		{"long header at the low end", joist, two, 49, 10, [2]bool{true, false}, "header spans 4'-1\" and is a single joist"},
		{"long header at the high end", joist, two, 49, 10, [2]bool{false, true}, "header spans 4'-1\" and is a single joist"},
		{"both single", joist, joist, 49, 10, [2]bool{true, true}, "header spans 4'-1\" and is a single joist"},
		{"single trimmers", two, joist, 49, 10, [2]bool{true, true}, "header spans 4'-1\" and its trimmers are single"},
		{"far from bearing", two, joist, 48, 37, [2]bool{true, false}, "header stands 3'-1\" from the bearing"},
		{"far from bearing, both single", joist, joist, 48, 37, [2]bool{false, true}, "header stands 3'-1\" from the bearing"},
		{"far from bearing, doubled trimmers", joist, two, 48, 37, [2]bool{true, true}, ""},
	} {
		t.Run(c.name, func(t *testing.T) {
			b := newBuilder(wellPlan())
			b.single(&stairwell{
				FloorOpening: well("w", 0, 0, 1, 1), header: c.header, trimmer: c.trimmer, ends: c.ends,
				wide: span{100, 100 + c.long}, bay: span{1.5, 238.5}, clear: span{1.5 + c.behind, 238.5 - c.behind},
			})
			if c.want == "" {
				assert.Empty(t, b.faults)
				return
			}
			require.Len(t, b.faults, 1)
			assert.Contains(t, b.faults[0].Summary, c.want)
		})
	}
}
