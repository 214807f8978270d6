package nailing

import (
	"fmt"
	"testing"

	"galewright/plan"
	"galewright/plan/framing"
	"galewright/plan/geom"
	"galewright/plan/read"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"
)

// cottage is 16 by 12 ft on a stem wall, 2x4 walls, joists 2x8 at 16 in from
// south to north.
const cottage = `
foundation = { kind = "stem" }
level = [{ name = "floor", floor = "3'", plate_height = "8' 1 1/8in", studs = "2x4 @ 16in", joists = "2x8 @ 16in", joist_run = "y" }]
wall = [
  { name = "S", from = ["0'", "0'"], to = ["16'", "0'"], opening = [
    { name = "w", at = "6'", width = "4'", height = "4'", sill = "3'", header = "2-2x8" } ] },
  { name = "E", to = ["16'", "12'"] },
  { name = "N", to = ["0'", "12'"] },
  { name = "W", to = ["0'", "0'"] },
  { name = "P", interior = true, from = ["3 1/2in", "6'"], to = ["10'", "6'"] },
  { name = "Q", interior = true, from = ["8'", "6' 3 1/2in"], to = ["8'", "11' 8 1/2in"] },
]
roof = [{ kind = "gable", pitch = "5:12", ridge = "x", rafters = "2x6 @ 16in" }]
[project]
name = "Invented cottage"
`

func frameText(t *testing.T, text string) *framing.House {
	t.Helper()
	p, ds := read.Plan("cottage.toml", []byte(text), nil)
	require.False(t, ds.Errors(), "%v", ds)
	h, ds := framing.Frame(p)
	require.False(t, ds.Errors(), "%v", ds)
	return h
}

// spots writes connections as the wall and the place on it, or of spaced ones
// the wall and the length, in; of those on no wall the ends' names.
func spots(list []*Spot) (out []string) {
	for _, s := range list {
		switch {
		case s.Wall == nil:
			out = append(out, s.Side.ID+" "+s.Main.ID)
		case s.Row.Spaced:
			out = append(out, fmt.Sprintf("%s %.4g", s.Wall.Name, s.Touch))
		default:
			out = append(out, fmt.Sprintf("%s at %.4g", s.Wall.Name, s.Station))
		}
	}
	return out
}

// By hand: walls S and N run through at the corners, 192 in; E and W stand
// between them, 137, and their upper plates run over them, 144. P (116 1/2 in)
// laps over W, whose upper plate is broken at 68 1/2 to 72, and Q (65) over N,
// broken at 96 to 99 1/2; Q stands 24 in from P's end, too near for a break there.
func TestACottageCountedByHand(t *testing.T) {
	found := connections(frameText(t, cottage))
	for c, want := range map[plan.Connection][]string{
		plan.TopPlates:         {"S 185", "E 137", "N 92.5", "N 89", "W 65", "W 68.5", "P 116.5", "Q 65"},
		plan.TopPlateLap:       {"E at 1.75", "E at 142.2", "W at 1.75", "W at 142.2", "P at -1.75", "Q at 66.75"},
		plan.CornerStuds:       {"S 92.62", "S 92.62", "N 92.62", "N 92.62", "N 92.62", "W 92.62", "P 92.62"},
		plan.BuiltUpStuds:      nil, // posts at the corners stand a stud apart
		plan.JackToKing:        {"S 82.5", "S 82.5"},
		plan.HeaderToKing:      {"S at 70.5", "S at 121.5"},
		plan.HeaderPlies:       {"S 51"},
		plan.CrippleToPlate:    {"S at 80", "S at 96", "S at 112"},
		plan.CrippleToHeader:   {"S at 80", "S at 96", "S at 112"},
		plan.CrippleToSill:     {"S at 72.75", "S at 119.2", "S at 80", "S at 96", "S at 112"},
		plan.SillToJack:        {"S at 72", "S at 120"},
		plan.RafterAlongPlate:  {"E 144", "W 68.5", "W 72"}, // the gables' trusses
		plan.SoleToFloor:       {"S 192", "E 137", "N 192", "W 137", "P 20.5", "P 16", "P 16", "P 16", "P 16", "P 16", "P 16", "Q 65"},
		plan.RimToSupport:      {"S 192", "E 137", "N 192", "W 137"},
		plan.JoistAlongSupport: {"Q 68.5"}, // the tie that lies over Q
	} {
		assert.Equal(t, want, spots(found[c]), c)
	}
	// Bottom plates lie on rims along their whole length: S and N from corner to corner, E
	// and W between them.
	for i, want := range []float64{96, 72, 96, 72} {
		assert.InDelta(t, want, found[plan.SoleToFloor][i].Station, 1e-9)
	}
	// Studs under the plate: posts 4, studs 8, kings 2 in S; 2 and 8 in E; 6 and 10
	// in N; 4 and 8 in W; 2 and 9 in P; 5 in Q. In S two jacks and five cripples
	// stand on the bottom plate besides. 11 rafters and a truss at each end on S and N.
	for c, want := range map[plan.Connection]map[string]int{
		plan.TopPlateToStud: {"S": 14, "E": 10, "N": 16, "W": 12, "P": 11, "Q": 5},
		plan.SoleToStud:     {"S": 21, "E": 10, "N": 16, "W": 12, "P": 11, "Q": 5},
		plan.RafterToPlate:  {"S": 13, "N": 13},
		plan.RimToJoist:     {"S": 11, "N": 11},
	} {
		got := map[string]int{}
		for _, s := range found[c] {
			got[s.Wall.Name]++
		}
		assert.Equal(t, want, got, c)
	}
}

// Floor joists lie on the sill plates of S and N; the roof's ties on the upper
// plates of S and N, at the broken one on the piece that is there, and on P's to
// its end at 10 ft. At 94 1/2 in Q's plate lies on N, along the tie.
func TestWhatACottagesJoistsLieOn(t *testing.T) {
	on := map[string][]string{}
	for _, s := range connections(frameText(t, cottage))[plan.JoistToSupport] {
		assert.Zero(t, s.Touch)
		on[s.Side.ID] = append(on[s.Side.ID], s.Main.ID)
	}
	assert.Len(t, on, 22)
	assert.ElementsMatch(t, []string{"S/sill plate@0", "N/sill plate@0"}, on["floor/joist@96"])
	assert.ElementsMatch(t, []string{"S/upper plate@3.5", "N/upper plate@99.5", "P/upper plate@0"}, on["roof/tie@81.5"])
	assert.ElementsMatch(t, []string{"S/upper plate@3.5", "P/upper plate@0"}, on["roof/tie@94.5"])
	assert.ElementsMatch(t, []string{"S/upper plate@3.5", "N/upper plate@3.5", "P/upper plate@0"}, on["roof/tie@110.5"])
	assert.ElementsMatch(t, []string{"S/upper plate@3.5", "N/upper plate@3.5"}, on["roof/tie@126.5"])
}

// bar is a lying member 1 1/2 in wide and 9 1/4 deep, its foot at z, between two
// points on plan.
func bar(role plan.Role, x0, y0, x1, y1, z float64) *framing.Member {
	f := geom.NewFrame(geom.Vec2{X: x0, Y: y0}, geom.Vec2{X: x1, Y: y1})
	l := geom.Vec2{X: x1 - x0, Y: y1 - y0}.Len()
	m := &framing.Member{ID: string(role), Role: role, A: geom.Vec3{X: x0, Y: y0, Z: z + 4.625}, B: geom.Vec3{X: x1, Y: y1, Z: z + 4.625}, Z0: z, Z1: z + 9.25, S1: l, Length: l}
	m.Section = plan.Lumber{Ply: 1, Breadth: 1.5, Depth: 9.25}
	m.Solid = []geom.Solid{f.Box(0, l, -0.75, 0.75, z, z+9.25)}
	return m
}

// floorOf finds the connections of members without walls.
func floorOf(members ...*framing.Member) map[plan.Connection][]*Spot {
	return connections(&framing.House{Plan: &plan.Plan{}, Members: members})
}

// A girder 4 1/2 in wide from x = 0 to 100 along y = 50. A joist lies on it
// whose line comes over it or ends on it by more than a sixteenth, within the
// girder's length, and whose foot is at its top.
func TestWhichJoistsLieOnAGirder(t *testing.T) {
	for _, c := range []struct {
		name           string
		x0, y0, x1, y1 float64
		z              float64
		crosses        bool
		along          float64
	}{
		{"across", 40, 0, 40, 100, 10, true, 0},
		{"from behind", 40, 100, 40, 0, 10, true, 0},
		{"ends on it", 40, 0, 40, 49, 10, true, 0},
		{"begins on it", 40, 52, 40, 90, 10, true, 0},
		{"ends before it", 40, 0, 40, 47.7, 10, false, 0},
		{"begins beyond it", 40, 52.3, 40, 90, 10, false, 0},
		{"past its end", 101, 0, 101, 100, 10, false, 0},
		{"before its start", -1, 0, -1, 100, 10, false, 0},
		{"skew, over it where it crosses", 10, 0, 110, 100, 10, true, 0},
		{"skew, past its end where it crosses", 51, 0, 151, 100, 10, false, 0},
		{"an inch above", 40, 0, 40, 100, 11, false, 0},
		{"along its middle, half of it", 50, 50, 120, 50, 10, false, 50},
		{"back along its edge, 20 in", 40, 52.9, 20, 52.9, 10, false, 20},
		{"along beside it", 0, 53.1, 100, 53.1, 10, false, 0},
	} {
		g := bar(plan.GirderBeam, 0, 50, 100, 50, 0.75)
		g.Section.Ply, g.Solid = 3, []geom.Solid{geom.NewFrame(geom.Vec2{Y: 50}, geom.Vec2{X: 100, Y: 50}).Box(0, 100, -2.25, 2.25, 0.75, 10)}
		joist := bar(plan.Joist, c.x0, c.y0, c.x1, c.y1, c.z)
		if c.z == 10 && !along(joist, g) {
			assert.Equal(t, c.crosses, crosses(joist, g, false), c.name)
		}
		found := floorOf(g, joist)
		assert.Len(t, found[plan.JoistToSupport], map[bool]int{true: 1}[c.crosses], c.name)
		along := 0.0
		for _, s := range found[plan.JoistAlongSupport] {
			along += s.Touch
		}
		assert.InDelta(t, c.along, along, 1e-9, c.name)
	}
}

// A rim 1 1/2 in thick along y = 0: a joist is nailed to it whose end lies at
// its face, 3/4 in off its middle line, within 0.3 in, and at its height.
func TestWhichJoistsARimIsNailedTo(t *testing.T) {
	for _, c := range []struct {
		x, y, z float64
		want    int
	}{
		{40, 0.75, 0, 1},
		{40, 1, 0, 1},
		{40, 1.1, 0, 0},    // 0.35 in off
		{40, 0.4, 0, 0},    // in it
		{40, -0.75, 0, 1},  // from its other side
		{0.1, 0.75, 0, 1},  // at its end
		{-0.5, 0.75, 0, 0}, // past it
		{100.5, 0.75, 0, 0},
		{40, 0.75, 8, 1},   // they share 1 1/4 in of height
		{40, 0.75, 8.5, 0}, // 3/4 in
	} {
		y1 := 90.0
		if c.y < 0 {
			y1 = -90
		}
		found := floorOf(bar(plan.Rim, 0, 0, 100, 0, 0), bar(plan.Joist, c.x, c.y, c.x, y1, c.z))
		list := found[plan.RimToJoist]
		if assert.Len(t, list, c.want, "%+v", c) && c.want > 0 {
			assert.InDelta(t, c.x, list[0].Station, 1e-9)
			assert.Equal(t, plan.Rim, list[0].Side.Role)
		}
	}
	along := floorOf(bar(plan.Rim, 0, 0, 100, 0, 0), bar(plan.Joist, 40, 0.75, 90, 0.75, 0))
	assert.Empty(t, along[plan.RimToJoist], "a joist that runs the rim's way does not end at it")
}

// Plies of a girder and of a header are nailed, a single member is not; a
// block of a wall goes in between two studs, one of a floor between two joists, at both
// ends.
func TestPliesAndBlocks(t *testing.T) {
	g, one, b := bar(plan.GirderBeam, 0, 50, 100, 50, 0), bar(plan.Beam, 0, 90, 100, 90, 0), bar(plan.Blocking, 0, 20, 14.5, 20, 0)
	h, single := bar(plan.Header, 0, 70, 41, 70, 0), bar(plan.Header, 0, 72, 41, 72, 0)
	between := bar(plan.Blocking, 0, 30, 14.5, 30, 0)
	g.Section.Ply, h.Section.Ply, b.Wall = 3, 2, &plan.Wall{Name: "1S"}
	found := floorOf(g, one, b, h, single, between)
	require.Len(t, found[plan.GirderPlies], 1)
	assert.Equal(t, 2, found[plan.GirderPlies][0].Times, "two faces between three plies")
	assert.InDelta(t, 100, found[plan.GirderPlies][0].Touch, 1e-9)
	require.Len(t, found[plan.HeaderPlies], 1)
	assert.Equal(t, 1, found[plan.HeaderPlies][0].Times)
	require.Len(t, found[plan.BlockingToStud], 1)
	assert.Equal(t, 2, found[plan.BlockingToStud][0].Times)
	require.Len(t, found[plan.BlockingToJoist], 1)
	assert.Same(t, between, found[plan.BlockingToJoist][0].Main)
	assert.Equal(t, 2, found[plan.BlockingToJoist][0].Times)
}

// Three joists cross a part of a plate from 0 to 60 at 10, 26 and 55: the first
// has the way from 0 to 18, the second to 40 1/2, the last to 60. One at 70 is not
// in the part.
func TestJoistsShareAPlate(t *testing.T) {
	m := func() *framing.Member { return bar(plan.Joist, 0, 0, 1, 0, 0) }
	got := shared([]crossing{{55, m()}, {10, m()}, {70, m()}, {26, m()}, {-5, m()}}, span{0, 60, false})
	require.Len(t, got, 3)
	for i, want := range [][2]float64{{10, 18}, {26, 22.5}, {55, 19.5}} {
		assert.InDelta(t, want[0], got[i].Station, 1e-9)
		assert.InDelta(t, want[1], got[i].Touch, 1e-9)
	}
	at := shared([]crossing{{0, m()}, {60, m()}}, span{0, 60, false})
	assert.InDelta(t, 1.0/32, at[0].Station, 1e-9, "on the edge it counts for this part")
	assert.InDelta(t, 60-1.0/32, at[1].Station, 1e-9)
}

// A joist under a wall 3 1/2 in deep: where it crosses the middle; one that ends
// under the wall, its end; one that stops short of it is not under it.
func TestWhereAJoistCrossesAWall(t *testing.T) {
	for _, c := range []struct {
		s0, t0, s1, t1, want float64
		ok                   bool
	}{
		{40, -50, 40, 50, 40, true},
		{0, -48.25, 100, 51.75, 50, true}, // t 1.75 is half of the way
		{40, -50, 50, 0.75, 50, true},
		{60, 1.25 + 1.75, 40, 50, 60, true},
		{40, -50, 40, 0.05, 0, false},
		{40, 3.45, 40, 50, 0, false},
		{20, 1, 60, 1, 40, true},
	} {
		s, ok := stationOver(c.s0, c.t0, c.s1, c.t1, 3.5)
		assert.Equal(t, c.ok, ok, "%+v", c)
		assert.InDelta(t, c.want, s, 1e-9, "%+v", c)
	}
}

// A plate that runs past a splice laps it where it reaches 24 in to both sides,
// less a sixteenth for the saw.
func TestHowFarALapReaches(t *testing.T) {
	piece := func(s0, s1 float64) *framing.Member { return &framing.Member{S0: s0, S1: s1} }
	for _, c := range []struct {
		s0, s1 float64
		want   bool
	}{
		{76, 124, true},
		{76.05, 123.95, true},
		{76.1, 124, false},
		{76, 123.9, false},
		{0, 192, true},
	} {
		j := &framing.Joint{Station: 100, Members: []*framing.Member{piece(0, 100), piece(100, 192), piece(c.s0, c.s1)}}
		assert.Equal(t, c.want, lapped(j), "%+v", c)
	}
	assert.False(t, lapped(&framing.Joint{Station: 100, Members: []*framing.Member{piece(0, 100), piece(0, 192)}}), "the other plate breaks there too")
}

// Of the members at a ridge joint each rafter is nailed; a hip or valley that
// comes last is what they are nailed to. One at least is there.
func TestRaftersAtARidgeJoint(t *testing.T) {
	for _, c := range []struct {
		roles []plan.Role
		want  int
	}{
		{[]plan.Role{plan.Rafter, plan.Rafter, plan.Ridge}, 2},
		{[]plan.Role{plan.Rafter, plan.Ridge}, 1},
		{[]plan.Role{plan.HipRafter, plan.HipRafter, plan.Ridge}, 2},
		{[]plan.Role{plan.Rafter, plan.Rafter, plan.HipRafter}, 2},
		{[]plan.Role{plan.Rafter, plan.Rafter, plan.ValleyRafter}, 2},
		{[]plan.Role{plan.ValleyRafter, plan.HipRafter}, 1},
		{[]plan.Role{plan.Ridge}, 1},
	} {
		j := &framing.Joint{}
		for _, r := range c.roles {
			j.Members = append(j.Members, &framing.Member{Role: r})
		}
		assert.Equal(t, c.want, rafters(j), "%v", c.roles)
	}
}

// The joints of framing and which of their two members the nails go through
// first: the king into its header, the plate into the cripple, the jack into the
// sill; a rafter, a ledger and a header's cripple are themselves nailed through.
func TestWhichMemberTheNailsGoThrough(t *testing.T) {
	for _, c := range []struct {
		kind  plan.JointKind
		at    plan.Connection
		first bool // the joint's first member
	}{
		{plan.RafterPlate, plan.RafterToPlate, true},
		{plan.LedgerWall, plan.LedgerToWall, true},
		{plan.HeaderKing, plan.HeaderToKing, false},
		{plan.CripplePlate, plan.CrippleToPlate, false},
		{plan.CrippleHeader, plan.CrippleToHeader, true},
		{plan.OpeningSill, plan.SillToJack, false},
	} {
		a, b := &framing.Member{ID: "a"}, &framing.Member{ID: "b"}
		j := &framing.Joint{Kind: c.kind, Members: []*framing.Member{a, b}, Station: 40}
		found := connections(&framing.House{Plan: &plan.Plan{}, Joints: []*framing.Joint{j}})
		require.Len(t, found, 1, c.kind)
		require.Len(t, found[c.at], 1, c.kind)
		s := found[c.at][0]
		assert.Equal(t, c.first, s.Side == a && s.Main == b, c.kind)
		assert.InDelta(t, 40, s.Station, 1e-9)
		assert.Equal(t, 1, s.Times)
		j.Members = j.Members[:1]
		assert.Empty(t, connections(&framing.House{Plan: &plan.Plan{}, Joints: []*framing.Joint{j}}), "nothing to nail it to")
	}
}

// The shed's end rafters over their rakes: from the plate's start, 3 1/2 in, to
// the ridge's face at 59 1/4, up a slope of 5:12: 55.75 x 13/12. The middle of the
// rafter, from 12 in outside to the ridge, is at 23 5/8 from its eave.
func TestARafterAlongItsRake(t *testing.T) {
	n := New(framed(t, "shed.toml", ""))
	list := connections(n.House)[plan.RafterAlongPlate]
	require.Len(t, list, 4)
	for i, at := range []float64{120 - 23.625, 23.625, 23.625, 120 - 23.625} {
		assert.InDelta(t, 55.75*13/12, list[i].Touch, 1e-6)
		assert.InDelta(t, at, list[i].Station, 1e-6)
	}
	missing := map[plan.Connection]int{}
	for _, m := range n.Missing {
		missing[m.Row.Connection] = m.Spots
	}
	assert.Equal(t, 4, missing[plan.RafterAlongPlate])
	assert.Equal(t, 1, missing[plan.HeaderPlies], "one is missing too")
}

// Under a wall 5 1/2 in deep along y = 0 a rim and, against it, a joist run its way, and a
// joist crosses: the plate is nailed to the rim, whichever the house names first, from 0 to
// 60; beyond it to the joist along, to 90; and from there to the one that crosses at 100.
func TestASoleGoesToTheRimFirst(t *testing.T) {
	level := &plan.Level{Floor: 12, FloorDepth: 11.25, Subfloor: 0.75}
	w := &plan.Wall{Name: "S", Level: level, To: geom.Vec2{X: 120}, Studs: plan.Lumber{Ply: 1, Breadth: 1.5, Depth: 5.5}}
	rim, beside, across := bar(plan.Rim, 0, 0.75, 60, 0.75, 2), bar(plan.Joist, 0, 2.25, 90, 2.25, 2), bar(plan.Joist, 100, 0, 100, 90, 2)
	sole := bar(plan.BottomPlate, 0, 2.75, 120, 2.75, 12)
	sole.Wall = w
	for _, m := range []*framing.Member{rim, beside, across} {
		m.Level = level
	}
	for _, order := range [][]*framing.Member{{rim, beside, across, sole}, {across, beside, rim, sole}} {
		found := connections(&framing.House{Plan: &plan.Plan{Walls: []*plan.Wall{w}}, Members: order})[plan.SoleToFloor]
		require.Len(t, found, 3)
		for i, want := range []struct {
			m         *framing.Member
			at, touch float64
		}{{rim, 30, 60}, {beside, 75, 30}, {across, 100, 30}} {
			assert.Same(t, want.m, found[i].Main)
			assert.InDelta(t, want.at, found[i].Station, 1e-9)
			assert.InDelta(t, want.touch, found[i].Touch, 1e-9)
			assert.InDelta(t, 0.75, found[i].Gap, 1e-9)
		}
	}
}

// A plan that names no species, or none that is known, has the nails judged in southern
// pine: long ones are fine, one of 1 1/2 in through a 1 1/2 in plate holds nothing.
func TestNailsAreJudgedInSomeWood(t *testing.T) {
	for _, species := range []string{"", "driftwood", "southern pine", "spruce-pine-fir"} {
		for nail, short := range map[string]bool{"16d common": false, "10d x 1 1/2": true} {
			l, s := lineOf(plan.SoleToStud, nail, plan.EndNail)
			s.Main, s.Side = s.Side, s.Main
			l.Spots = []*Spot{s}
			n := &Nailing{House: &framing.House{Plan: &plan.Plan{}}, Lines: []*Line{l}}
			n.House.Plan.Lumber.Species = species
			assert.Equal(t, short, len(n.Faults()) > 0, "%s in %q: %v", nail, species, n.Faults())
		}
	}
}
