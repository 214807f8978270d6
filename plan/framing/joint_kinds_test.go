package framing

import (
	"fmt"
	"math"
	"os"
	"path/filepath"
	"slices"
	"strings"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"
	"pgregory.net/rapid"

	"galewright/plan"
	"galewright/plan/geom"
	"galewright/plan/read"
)

// exampleHouse frames one of the example plans.
func exampleHouse(t testing.TB, name string) *House {
	t.Helper()
	h, err := frameExample(name)
	require.NoError(t, err)
	return h
}

func frameExample(name string) (*House, error) {
	dir := filepath.Join("..", "..", "examples")
	src, err := os.ReadFile(filepath.Join(dir, name))
	if err != nil {
		return nil, err
	}
	p, faults := read.Plan(name, src, func(n string) ([]byte, error) { return os.ReadFile(filepath.Join(dir, n)) })
	if faults.Errors() {
		return nil, fmt.Errorf("%s: %v", name, faults)
	}
	h, faults := Frame(p)
	if faults.Errors() {
		return nil, fmt.Errorf("%s: %v", name, faults)
	}
	return h, nil
}

// The joints of the demo house counted by hand from its plan.
func TestJointsOfTheDemoByHand(t *testing.T) {
	h := exampleHouse(t, "marsh-wren.toml")
	count := func(host string, k plan.JointKind) int { return len(joints(h, host, k)) }
	// Wall 1S is 44 ft (528 in) over girder GS. Module studs at 16, 32 … 512 in:
	// 32. Openings swallow those over their widths or where a king stands: w1
	// 112 128 144, w2 176 192 208, d1 240 256 272, w3 304 320 336, w4 400 416
	// 432; the posts of the shear walls' ends at 96 and 448 in take two more:
	// 32 - 15 - 2 = 15. Kings: 5 openings, one a side: 10. Those two posts, of two studs
	// each: 4. Corner posts of two studs in line at each end: 4. Backing of 1P: 2.
	// 15 + 10 + 4 + 4 + 2 = 35.
	assert.Equal(t, 35, count("1S", plan.RimGirder))
	assert.Equal(t, 35, count("1S", plan.SoleRim))
	// 1E runs along GES and GEN, at each of its 26 full studs, four of them the second
	// studs of the posts at 96 and 240 in and at both its ends, and across the three
	// others.
	assert.Equal(t, 26+3, count("1E", plan.RimGirder))
	assert.Equal(t, 0, count("2S", plan.RimGirder), "no girder is up there")
	// Joists run north over GS, GC and GN at 16 … 512 in: 32 of them; the floor
	// is 28 ft deep and the longest stock 20 ft, so each is two, lapped on GC.
	assert.Equal(t, 32, count("GS", plan.JoistGirder))
	assert.Equal(t, 64, count("GC", plan.JoistGirder))
	assert.Equal(t, 32, count("GN", plan.JoistGirder))
	// Girders of 44 ft from 20 ft stock break over the piles at 14 ft 6 in and
	// 29 ft 2 in: 174 and 350 - 174 = 176 and 528 - 350 = 178 in long.
	assert.Equal(t, 2, count("GC", plan.GirderSplice))
	assert.InDelta(t, 350, joints(h, "GC", plan.GirderSplice)[1].Station, 1e-9)
	assert.Equal(t, plan.Pile, joints(h, "GC", plan.GirderSplice)[0].Members[2].Role)
	// Five headers with two ends; cripples on the module: 3 over each window and
	// 256, 272 over the door, whose king stands on 240.
	assert.Equal(t, 10, count("1S", plan.HeaderKing))
	assert.Equal(t, 14, count("1S", plan.CrippleHeader))
	assert.Equal(t, 14, count("1S", plan.CripplePlate))
	// 1P stands from 5 1/2 in to 14 ft over the joist at 31 ft: studs at its two
	// ends, of two studs each, and at 16 … 160 in.
	assert.Equal(t, 14, count("1P", plan.SoleRim))
	assert.Equal(t, plan.Joist, joints(h, "1P", plan.SoleRim)[0].Members[1].Role)
	// The stair wall's studs are 8 in apart over 12 ft, 18 spaces, and the floor
	// hangs on both its sides.
	assert.Equal(t, 2*19, count("ST", plan.LedgerWall))
	// Gable 2E has studs at 8 in: at 16 to 88 ten, at 104, 160, 176 and 184, at 248 to 320
	// ten; three kings at each side of two windows; two at each of the four ends of its
	// segments, and two behind the wall that meets it; one of all stands under the ridge.
	assert.Equal(t, 24+12+8+2-1, count("2E", plan.GableStud))
}

func TestRimToGirderIsWhereItTouches(t *testing.T) {
	h := frame(t, elevated(1))
	j := jointAt(h, "1A", plan.RimGirder, 16)
	require.NotNil(t, j)
	assert.Equal(t, []plan.Role{plan.Rim, plan.GirderBeam}, rolesOf(j))
	// floor 120, 10 of floor: joists and rim stand on 110; the girder's center
	// is at 3, 4 1/2 wide, so 3/4 to 5 1/4; the rim is 0 to 1 1/2: they share 3/4
	// to 1 1/2
	assert.InDelta(t, 110, j.At.Z, 1e-9)
	assert.InDelta(t, 1.125, j.At.Y, 1e-9)
	assert.InDelta(t, 16, j.At.X, 1e-9)
	assert.InDelta(t, 13.125, j.Tributary, 1e-9, "that of the stud: from 5.75 to 32, half way each")
	assert.Zero(t, j.Gap)
	cross := joints(h, "1B", plan.RimGirder)
	require.Len(t, cross, 3, "girders at 3, 120 and 237")
	assert.InDelta(t, 120, cross[1].Station, 1e-9)
	assert.InDelta(t, (237-3)/2.0, cross[1].Tributary, 1, "half way to the girders beside it; the ends are cut to the rim")
	j = joints(h, "G2", plan.JoistGirder)[0]
	assert.Equal(t, "G2-16-JG", j.ID)
	assert.InDelta(t, 16, j.Tributary, 1e-9)
	assert.Equal(t, geom.Vec3{X: 16, Y: 120, Z: 110}, j.At)
	sole := jointAt(h, "1A", plan.SoleRim, 16)
	assert.Equal(t, []plan.Role{plan.BottomPlate, plan.Rim}, rolesOf(sole))
	assert.InDelta(t, 0.75, sole.Gap, 1e-9, "the subfloor")
}

// A rim that no girder runs under has none, and a partition between two
// joists has nothing but the subfloor below.
func TestNothingIsTiedToWhatIsNotThere(t *testing.T) {
	p := elevated(1)
	p.Girders[0].From.Y, p.Girders[0].To.Y = 30, 30
	w := wall(p, "1P", 0, geom.Vec2{X: 120.5, Y: 60}, geom.Vec2{X: 120.5, Y: 100})
	w.Studs = twoByFour
	h := frame(t, p)
	assert.Empty(t, joints(h, "1A", plan.RimGirder))
	list := joints(h, "1P", plan.SoleRim)
	require.NotEmpty(t, list)
	for _, j := range list { // joists at 112 and 128; the wall from 117 to 120 1/2 or from 120 1/2 to 124
		assert.False(t, j.Below, j.ID)
		assert.Equal(t, []plan.Role{plan.BottomPlate}, rolesOf(j))
	}
}

func TestHeaderEndsAndCripples(t *testing.T) {
	p, w := straight(160)
	w.Openings = []*plan.Opening{window("w", 40, 62)}
	h := frame(t, p)
	ends := joints(h, "1A", plan.HeaderKing)
	require.Len(t, ends, 2)
	for i, s := range []float64{40 - 1.5, 40 + 62 + 1.5} { // one jack on each side of 62 in
		assert.InDelta(t, s, ends[i].Station, 1e-9)
		assert.Equal(t, []plan.Role{plan.Header, plan.King}, rolesOf(ends[i]))
		assert.InDelta(t, ends[i].First().Z0+9.25/2, ends[i].At.Z, 1e-9)
		assert.InDelta(t, 65/2.0, ends[i].Tributary, 1e-9)
	}
	down, up := joints(h, "1A", plan.CrippleHeader), joints(h, "1A", plan.CripplePlate)
	require.Len(t, down, 4, "48, 64, 80 and 96")
	require.Len(t, up, 4)
	assert.Equal(t, []plan.Role{plan.Cripple, plan.Header}, rolesOf(down[0]))
	assert.Equal(t, []plan.Role{plan.Cripple, plan.TopPlate, plan.UpperPlate}, rolesOf(up[0]))
	assert.InDelta(t, 56-38.5, down[0].Tributary, 1e-9, "from the king to half way to 64")
	assert.InDelta(t, down[0].First().Z0, down[0].At.Z, 1e-9)
	assert.InDelta(t, up[0].First().Z1, up[0].At.Z, 1e-9)
}

func TestSpliceSaysWhichPlateBreaksAndWhereItIsInReach(t *testing.T) {
	p, _ := straight(400)
	h := frame(t, p)
	seen := map[plan.Role]int{}
	for _, j := range joints(h, "1A", plan.PlateSplice) {
		broken := j.First().Role
		seen[broken]++
		require.Equal(t, broken, j.Members[1].Role)
		require.NotEqual(t, broken, j.Members[2].Role)
		assert.Equal(t, broken == plan.UpperPlate, slices.Contains(j.Faces, plan.Top))
		assert.Contains(t, j.Faces, plan.Outside)
		assert.InDelta(t, (j.First().Z0+j.First().Z1)/2, j.At.Z, 1e-9)
	}
	assert.Equal(t, map[plan.Role]int{plan.TopPlate: 2, plan.UpperPlate: 2}, seen, "400 in of 192 in stock is three pieces")
}

func TestGirderSitsOnItsPiles(t *testing.T) {
	h := frame(t, elevated(1))
	for _, j := range joints(h, "G1", plan.GirderPile) {
		assert.Equal(t, OnTop, j.Seat)
	}
	g := &framedGirder{z0: 100}
	box := func(x0, x1, z0, z1 float64) *Member {
		f := geom.NewFrame(geom.Vec2{}, geom.Vec2{X: 1})
		return &Member{Z0: z0, Z1: z1, Solid: []geom.Solid{f.Box(x0, x1, 0, 6, z0, z1)}}
	}
	girder := []*Member{box(0, 60, 100, 110)}
	for want, pile := range map[Seat]*Member{
		OnTop: box(10, 16, 0, 100), Clear: box(10, 16, 0, 98), Notched: box(10, 16, 0, 105), Beside: box(60, 66, 0, 105), Apart: box(70, 76, 0, 100),
	} {
		assert.Equal(t, want, g.seatOn(girder, pile))
	}
	// A pile of 6 by 6 around a girder of 60 by 6, from any side: a tenth of an inch apart, touching, a tenth of one over it.
	for _, to := range []geom.Vec2{{X: 1}, {Y: 1}, {X: -1}, {Y: -1}} {
		far := geom.Vec2{X: 27, Y: 0}.Add(geom.Vec2{X: to.X * 33, Y: to.Y * 6}) // its corner where it touches
		for by, want := range map[float64]Seat{0.1: Apart, 0: Beside, -0.1: Notched} {
			at := far.Add(to.Mul(by))
			pile := &Member{Z1: 105, Solid: []geom.Solid{geom.Box(at.Up(0), geom.Vec3{X: 6}, geom.Vec3{Y: 6}, geom.Vec3{Z: 105})}}
			assert.Equal(t, want, g.seatOn(girder, pile), "%v %v", to, by)
		}
	}
}

// leanTo is a house of two stories with a lean-to on the lower one's south
// side, its ledger's top at about z.
func leanTo(z float64) *plan.Plan {
	p := stories(2)
	ring(p, 0, rect(0, 0, 288, 192)...)
	w := ring(p, 1, rect(0, 0, 288, 192)...)
	w[1].Top, w[3].Top = plan.RakeTop, plan.RakeTop
	main := roofOn(p, "main", plan.GableRoof, plan.AxisX, 7, rect(0, 0, 288, 192))
	main.Over, main.Overhang = p.Levels[1], 0
	p.Porches = append(p.Porches, &plan.Porch{
		Name: "porch", From: geom.Vec2{X: 24, Y: -96}, To: geom.Vec2{X: 264, Y: -96},
		Beam: plan.Lumber{Ply: 2, Breadth: 1.5, Depth: 9.25, Text: "2-2x10"}, Post: plan.Lumber{Ply: 1, Breadth: 5.5, Depth: 5.5, Text: "6x6"},
		Posts: []float64{2.75, 120, 237.25}, Base: 60, Top: z - 96*2.0/12 - 7, Pos: plan.Pos{File: "plan.toml", Line: 40},
	})
	r := roofOn(p, "lean", plan.ShedRoof, plan.AxisX, 2, rect(24, -96, 264, 0))
	r.High, r.Overhang = plan.North, 12
	return p
}

// Whatever its height, a ledger has a joint for each rafter, and is tied to
// the studs, rim or plates behind it.
func TestLedgerIsTiedAtAnyHeight(t *testing.T) {
	band := stories(2).Levels[1] // its floor's foot is at 229.125, its top at 239.125
	seen := map[plan.Role]bool{}
	for z := 180.0; z < 340; z += 2.5 {
		h := frame(t, leanTo(z))
		var ledger *Member
		rafters := 0
		for _, m := range h.Members {
			if m.Role == plan.Ledger {
				ledger = m
			}
			if m.Role == plan.Rafter && m.Roof.Name == "lean" {
				rafters++
			}
		}
		require.NotNil(t, ledger)
		hosts := map[string]int{}
		wall := 0
		for _, j := range h.Joints {
			switch j.Kind {
			case plan.RafterLedger:
				hosts[j.Host]++
				require.Equal(t, ledger, j.Members[1])
				require.InDelta(t, 16, j.Tributary, 8.1)
			case plan.LedgerWall:
				wall++
				seen[j.Members[1].Role] = true
				require.Equal(t, ledger, j.First())
				require.InDelta(t, 0, j.At.Y, 1e-6, "on the wall's face")
				require.Greater(t, j.At.Z, ledger.Z0)
				require.Less(t, j.At.Z, ledger.Z1)
			}
		}
		host := "1A"
		if ledger.Z1 >= band.Floor-band.FloorDepth {
			host = "2A"
		}
		require.Equal(t, map[string]int{host: rafters}, hosts, "ledger top at %v", ledger.Z1)
		// studs of 1A or 2A from 24 to 264: 32 … 256 on the module
		require.Equal(t, 15, wall, "ledger top at %v", ledger.Z1)
	}
	assert.True(t, seen[plan.Rim] && seen[plan.Stud], "%v", seen)
}

// withGirders puts girders under the first level of a drawn house.
func withGirders(p *plan.Plan) *plan.Plan {
	lo, hi := p.Walls[0].From, p.Walls[0].From
	for _, w := range p.Walls {
		for _, q := range []geom.Vec2{w.From, w.To} {
			lo = geom.Vec2{X: min(lo.X, q.X), Y: min(lo.Y, q.Y)}
			hi = geom.Vec2{X: max(hi.X, q.X), Y: max(hi.Y, q.Y)}
		}
	}
	for i, y := range []float64{lo.Y + 3, (lo.Y + hi.Y) / 2, hi.Y - 3} {
		p.Girders = append(p.Girders, &plan.Girder{
			Name: fmt.Sprintf("G%d", i+1), From: geom.Vec2{X: lo.X, Y: y}, To: geom.Vec2{X: hi.X, Y: y},
			Member: plan.Lumber{Ply: 3, Breadth: 1.5, Depth: 11.25, Text: "3-2x12"}, Piles: []float64{6, hi.X - lo.X - 6},
		})
	}
	return p
}

// Each joist and rim over a girder, each header's end, cripple and ledger has
// its joint, and no two are one.
func TestEveryPlaceHasItsJointOnce(t *testing.T) {
	for _, name := range []string{"marsh-wren.toml", "turnstone.toml", "dunlin.toml", "sanderling.toml", "curlew-row.toml"} {
		require.Empty(t, withoutJoint(exampleHouse(t, name)), name)
	}
	rapid.Check(t, func(t *rapid.T) {
		h := frameDrawn(t, withGirders(drawShape(t).plan(same, false)))
		if lack := withoutJoint(h); len(lack) > 0 {
			t.Fatalf("%v", lack)
		}
	})
}

// withoutJoint names what lacks a joint or has it twice.
func withoutJoint(h *House) (out []string) {
	type tie struct {
		kind plan.JointKind
		a, b *Member
		s    float64
	}
	count, held := map[tie]int{}, map[plan.JointKind]map[*Member]int{}
	for _, j := range h.Joints {
		if len(j.Members) > 1 {
			count[tie{j.Kind, j.Members[0], j.Members[1], math.Round(j.Station * 100)}]++
		}
		if held[j.Kind] == nil {
			held[j.Kind] = map[*Member]int{}
		}
		held[j.Kind][j.First()]++
		if held[j.Kind][j.First()] > 1 && (j.Kind == plan.CrippleHeader || j.Kind == plan.CripplePlate) {
			out = append(out, j.ID+" again")
		}
	}
	for k, n := range count {
		if n > 1 && (k.kind == plan.RimGirder || k.kind == plan.SoleRim || k.kind == plan.LedgerWall || k.kind == plan.JoistGirder) {
			out = append(out, fmt.Sprintf("%v twice", k))
		}
	}
	for _, m := range h.Members {
		switch {
		case m.Role == plan.Header && held[plan.HeaderKing][m] != 2:
			out = append(out, m.ID+" to its kings")
		case m.Role == plan.Cripple && overHeader(h, m) && (held[plan.CrippleHeader][m] != 1 || held[plan.CripplePlate][m] != 1):
			out = append(out, m.ID)
		case m.Role == plan.Ledger && held[plan.LedgerWall][m] == 0:
			out = append(out, m.ID+" to its wall")
		case m.Role == plan.Joist && m.Level.Index == 0 && held[plan.JoistGirder][m] != girdersUnder(h, m):
			out = append(out, m.ID+" to its girders")
		case m.Role == plan.Rim && m.Level.Index == 0 && held[plan.RimGirder][m] < min(1, girdersUnder(h, m)):
			out = append(out, m.ID+" to its girder")
		}
	}
	return out
}

func overHeader(h *House, c *Member) bool {
	return slices.ContainsFunc(h.Members, func(m *Member) bool {
		return m.Role == plan.Header && m.Opening == c.Opening && math.Abs(m.Z1-c.Z0) < 0.01
	})
}

// girdersUnder counts the girders, whose pieces go by the name before the
// slash, that a member's foot presses into when it is let down an inch.
func girdersUnder(h *House, m *Member) int {
	let := geom.Solid{}
	for _, f := range m.Solid[0].Faces {
		let.Faces = append(let.Faces, slices.Clone(f))
	}
	for i := range let.Faces {
		for k := range let.Faces[i] {
			let.Faces[i][k].Z--
		}
	}
	names := map[string]bool{}
	for _, g := range h.Members {
		if g.Role == plan.GirderBeam && geom.Overlap(let, g.Solid[0], 0.1) {
			name, _, _ := strings.Cut(g.ID, "/")
			names[name] = true
		}
	}
	return len(names)
}

// A mirrored house has the mirrored joints of these kinds.
func TestMirroredPlanGivesMirroredJoints(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		s := drawShapeOf(t, outlineNames[:4], []float64{12, 16, 24})
		s.inner = false
		flip := func(p geom.Vec2) geom.Vec2 { return geom.Vec2{X: -p.X, Y: p.Y} }
		a := jointPlaces(frameDrawn(t, withGirders(s.plan(same, false))), 1)
		b := jointPlaces(frameDrawn(t, withGirders(s.plan(flip, true))), -1)
		for i := range min(len(a), len(b)) {
			if a[i] != b[i] {
				t.Fatalf("%d and %d joints; first differ %s and %s", len(a), len(b), a[i], b[i])
			}
		}
		if len(a) != len(b) {
			t.Fatalf("%d and %d joints", len(a), len(b))
		}
	})
}

// jointPlaces lists kind, place, share and members of the joints.
func jointPlaces(h *House, flip float64) (out []string) {
	for _, j := range h.Joints {
		switch j.Kind {
		case plan.RimGirder, plan.JoistGirder, plan.SoleRim, plan.HeaderKing, plan.CrippleHeader, plan.LedgerWall:
			out = append(out, fmt.Sprintf("%s %.2f %.2f %.2f %.2f %v", j.Kind, j.At.X*flip+0.0001, j.At.Y+0.0001, j.At.Z, j.Tributary+0.0001, rolesOf(j)))
		}
	}
	slices.Sort(out)
	return out
}
