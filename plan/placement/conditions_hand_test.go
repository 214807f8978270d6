package placement

import (
	"testing"

	"galewright/plan"
	"galewright/plan/framing"
	"galewright/plan/geom"
	"galewright/plan/units"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"
)

func conditionNamed(t *testing.T, key string) condition {
	t.Helper()
	for _, c := range conditions {
		if c.key == key {
			return c
		}
	}
	require.Fail(t, key)
	return condition{}
}

// What each condition finds at joints that have it and at joints that have none of it:
// off the walls and roofs, without members, on no story.
func TestWhatConditionsFindWhereThereIsNone(t *testing.T) {
	level := &plan.Level{Name: "first", Floor: 120}
	wall := &plan.Wall{Name: "1S", Level: level, ToLevel: level, To: geom.Vec2{X: 96}, Exterior: true, Bearing: true, Studs: two6, Spacing: 16, Shear: []*plan.Shear{{From: 20, To: 60}}}
	partition := &plan.Wall{Name: "1P", Level: level, ToLevel: level, To: geom.Vec2{X: 96}, Studs: two6, Spacing: 24}
	roof := &plan.Roof{Name: "main", Spacing: 24}
	stud := &framing.Member{Role: plan.Stud, Wall: wall, S0: 39.25, S1: 40.75, Z0: 121.5, B: geom.Vec3{Z: 90}}
	rafter := &framing.Member{Role: plan.Rafter, Roof: roof}
	plate := &framing.Member{Role: plan.TopPlate}
	window := &framing.Member{Role: plan.Jack, Opening: &plan.Opening{Width: 36}}
	bare := &framing.Joint{Kind: plan.PostBase, At: geom.Vec3{Z: 12}}
	onWall := &framing.Joint{Kind: plan.StudBase, Wall: wall, Level: level, Station: 40, At: geom.Vec3{X: 40, Z: 121.5}, Members: []*framing.Member{stud, plate, plate}}
	inside := &framing.Joint{Kind: plan.StudBase, Wall: partition, Level: level, Station: 2}
	atRafter := &framing.Joint{Kind: plan.RafterPlate, Wall: wall, Roof: roof, Members: []*framing.Member{rafter, plate}, At: geom.Vec3{Z: 230}}
	hung := &framing.Joint{Kind: plan.RafterLedger, Members: []*framing.Member{rafter}}
	head := &framing.Joint{Kind: plan.OpeningHead, Wall: wall, Members: []*framing.Member{stud, window}}
	w := newWorld(&framing.House{Plan: &plan.Plan{Levels: []*plan.Level{level}}})
	w.byHost[hostKind{"", plan.PostBase}] = []*framing.Joint{bare}
	for _, c := range []struct {
		key  string
		j    *framing.Joint
		have string
	}{
		{"level", onWall, "first"},
		{"level", bare, "none"},
		{"wall", onWall, "1S"},
		{"wall", bare, "none"},
		{"roof", atRafter, "main"},
		{"roof", hung, "main"},
		{"roof", bare, "none"},
		{"role", onWall, "stud"},
		{"role", bare, "none"},
		{"stud", onWall, "2x6"},
		{"stud", bare, "none"},
		{"against", onWall, "top plate"},
		{"against", atRafter, "top plate"},
		{"against", hung, ""},
		{"against", bare, ""},
		{"exterior", onWall, "true"},
		{"exterior", inside, "false"},
		{"exterior", bare, "false"},
		{"bearing", onWall, "true"},
		{"bearing", inside, "false"},
		{"bearing", bare, "false"},
		{"balloon", onWall, "false"},
		{"balloon", bare, "false"},
		{"covered", onWall, "false"},
		{"covered", inside, "false"},
		{"covered", bare, "false"},
		{"end_zone", inside, "false"},
		{"shear", onWall, "true"},
		{"shear", inside, "false"},
		{"shear", bare, "false"},
		{"spacing", onWall, `1'-4"`},
		{"spacing", inside, `2'-0"`},
		{"spacing", atRafter, `2'-0"`},
		{"spacing", hung, `2'-0"`},
		{"spacing", bare, "none"},
		{"opening", onWall, "none"},
		{"opening", bare, "none"},
		{"opening_width", head, `3'-0"`},
		{"opening_width", onWall, "none"},
		{"opening_width", bare, "none"},
		{"height", onWall, `1 1/2"`},
		{"height", bare, `1'-0"`},
		{"corner", onWall, `3'-4"`},
		{"corner", bare, `0"`},
	} {
		assert.Equal(t, c.have, conditionNamed(t, c.key).have(w, c.j), "%s at %s", c.key, c.j.Kind)
	}
}

// Two studs line up that stand over each other within a 1/32; a stud over a header, or
// over nothing, does not; where no story is bridged there is nothing to be out of line.
func TestWhenStudsLineUp(t *testing.T) {
	holds := conditionNamed(t, "lines_up").holds
	stud, jack, header := &framing.Member{Role: plan.Stud}, &framing.Member{Role: plan.Jack}, &framing.Member{Role: plan.Header}
	for _, c := range []struct {
		name   string
		kind   plan.JointKind
		below  bool
		on     *framing.Member
		offset float64
		want   bool
	}{
		{"over a stud", plan.StudStud, true, stud, 0, true},
		{"over a jack", plan.StudStud, true, jack, 0, true},
		{"1/32 off", plan.StudStud, true, stud, 1. / 32, true},
		{"1/32 off to the left", plan.StudStud, true, stud, -1. / 32, true},
		{"1/16 off", plan.StudStud, true, stud, 1. / 16, false},
		{"1/16 off to the left", plan.StudStud, true, stud, -1. / 16, false},
		{"over a header", plan.StudStud, true, header, 0, false},
		{"with none below", plan.StudStud, false, stud, 0, false},
		{"with none named", plan.StudStud, true, nil, 0, false},
		{"at its foot", plan.StudBase, false, header, 3, true},
	} {
		j := &framing.Joint{Kind: c.kind, Below: c.below, Offset: c.offset, Members: present(stud, c.on)}
		yes := true
		assert.Equal(t, c.want, holds(nil, &plan.Where{LinesUp: &yes}, j), c.name)
		no := false
		assert.Equal(t, !c.want, holds(nil, &plan.Where{LinesUp: &no}, j), c.name)
	}
}

// Lengths between two others hold at both ends, and a 1/32 past them, the width of a
// pencil's line; an upper end of 0 asks nothing, and what is not there meets no length.
func TestLengthsHoldToAPencilsLine(t *testing.T) {
	wall := &plan.Wall{To: geom.Vec2{X: 960}, Shear: []*plan.Shear{{From: 20, To: 60}, {From: 100, To: 140}}}
	w := newWorld(&framing.House{Plan: &plan.Plan{}})
	for _, c := range []struct {
		key   string
		where plan.Where
		at    float64
		want  bool
	}{
		{"corner", plan.Where{Corner: [2]float64{16, 48}}, 16, true},
		{"corner", plan.Where{Corner: [2]float64{16, 48}}, 15.97, true},
		{"corner", plan.Where{Corner: [2]float64{16, 48}}, 15.95, false},
		{"corner", plan.Where{Corner: [2]float64{16, 48}}, 48, true},
		{"corner", plan.Where{Corner: [2]float64{16, 48}}, 48.03, true},
		{"corner", plan.Where{Corner: [2]float64{16, 48}}, 48.05, false},
		{"corner", plan.Where{Corner: [2]float64{16, 0}}, 480, true},
		{"from, to", plan.Where{From: 16, To: 48}, 15.97, true},
		{"from, to", plan.Where{From: 16, To: 48}, 15.95, false},
		{"from, to", plan.Where{From: 16, To: 48}, 48.03, true},
		{"from, to", plan.Where{From: 16, To: 48}, 48.05, false},
		{"from, to", plan.Where{From: 16}, 900, true},
		{"from, to", plan.Where{To: 48}, 0, true},
		{"shear", plan.Where{Shear: yes()}, 19.97, true},
		{"shear", plan.Where{Shear: yes()}, 19.95, false},
		{"shear", plan.Where{Shear: yes()}, 60.03, true},
		{"shear", plan.Where{Shear: yes()}, 60.05, false},
		{"shear", plan.Where{Shear: yes()}, 120, true},
		{"shear", plan.Where{Shear: yes()}, 80, false},
		{"opening", plan.Where{Opening: [2]float64{0, 12}}, 40, false},
		{"spacing", plan.Where{Spacing: [2]float64{16, 0}}, 40, false},
	} {
		j := &framing.Joint{Kind: plan.StudBase, Wall: wall, Station: c.at}
		assert.Equal(t, c.want, conditionNamed(t, c.key).holds(w, &c.where, j), "%s at %v: %+v", c.key, c.at, c.where)
	}
	far := plan.Where{From: 16, To: 48}
	assert.Equal(t, `1'-4" to 4'-0"`, conditionNamed(t, "from, to").want(units.Imperial, &far))
}

// The end zone of 36 in is measured from the outside corner: the wall's own hook, where it
// runs past another, does not count; a partition has none; off the walls, as on a roof, it is
// from the first and last of the joints.
func TestWhatLiesInTheEndZone(t *testing.T) {
	wall := &plan.Wall{To: geom.Vec2{X: 200}, Exterior: true}
	hooked := &plan.Wall{To: geom.Vec2{X: 200}, Exterior: true, Hook: 5.5}
	partition := &plan.Wall{To: geom.Vec2{X: 200}}
	w := newWorld(&framing.House{Plan: &plan.Plan{}})
	require.InDelta(t, 36, w.endZone, 1e-9)
	var roof []*framing.Joint
	for _, s := range []float64{0, 30, 80, 200} {
		roof = append(roof, &framing.Joint{Kind: plan.RafterRidge, Host: "main", Station: s})
	}
	w.byHost[hostKind{"main", plan.RafterRidge}] = roof
	for _, c := range []struct {
		wall *plan.Wall
		at   float64
		want bool
	}{
		{wall, 0, true},
		{wall, 36.03, true},
		{wall, 36.05, false},
		{wall, 163.9, false},
		{wall, 163.97, true},
		{hooked, 41.5, true},
		{hooked, 41.6, false},
		{hooked, 2, true},
		{partition, 2, false},
	} {
		assert.Equal(t, c.want, w.inEndZone(&framing.Joint{Kind: plan.StudBase, Wall: c.wall, Station: c.at}), "%v", c.at)
	}
	for i, want := range []bool{true, true, false, true} {
		assert.Equal(t, want, w.inEndZone(roof[i]), "%v", roof[i].Station)
	}
}

// The outside face of a stud is covered where another member stands against it in the hand's
// breadth over its foot, as the end of a wall that butts does; what begins over that, or stands
// half an inch off, covers nothing.
func TestWhenAStudsOutsideIsCovered(t *testing.T) {
	for _, c := range []struct {
		name        string
		role        plan.Role
		y0, y1      float64 // of the other member, out from the face at 0
		over        float64 // its foot over the stud's
		first, want bool
	}{
		{"against it", plan.Stud, -5.5, 0, 0, true, true},
		{"half an inch off", plan.Stud, -5.5, -0.5, 0, true, false},
		{"on the inside", plan.Stud, 5.5, 11, 0, true, false},
		{"3 in over its foot", plan.Stud, -5.5, 0, 3, true, true},
		{"4 in over its foot", plan.Stud, -5.5, 0, 4, true, false},
		{"a plate, which lies", plan.TopPlate, -5.5, 0, 0, true, false},
		{"of a joint without members", plan.Stud, -5.5, 0, 0, false, false},
	} {
		h := newHand()
		m := h.member(0, plan.Stud, 39.25, 40.75, floor1+1.5, top1-3)
		o := h.member(0, c.role, 39.25, 40.75, m.Z0+c.over, top1-3)
		o.Solid = []geom.Solid{geom.Box(geom.Vec3{X: 38, Y: c.y0, Z: o.Z0}, geom.Vec3{X: 4}, geom.Vec3{Y: c.y1 - c.y0}, geom.Vec3{Z: o.Z1 - o.Z0})}
		j := h.joint(h.walls[0], plan.StudBase, 40, m.Z0)
		if c.first {
			j.Members = []*framing.Member{m}
		}
		assert.Equal(t, c.want, newWorld(h.House).coveredOutside(j), c.name)
	}
}

// The first of a rule's exceptions that holds takes a joint out; the first condition that
// does not hold is the one that is told.
func TestExceptionsAndFaultsInTheirOrder(t *testing.T) {
	h := standard()
	w := newWorld(h.House)
	j := w.byID["1S-16-SB"]
	r := &plan.Rule{Except: []plan.Where{{Wall: []string{"2S"}}, {From: 10}, {To: 20}}}
	assert.Same(t, &r.Except[1], w.excepted(r, j))
	assert.Nil(t, w.excepted(&plan.Rule{Except: []plan.Where{{Wall: []string{"2S"}}}}, j))
	assert.Nil(t, w.excepted(&plan.Rule{}, j))
	assert.Equal(t, "wall", w.fails(&plan.Where{Level: []string{"first"}, Wall: []string{"2S"}, From: 40}, j).key)
	assert.Nil(t, w.fails(&plan.Where{Level: []string{"first"}}, j))
	assert.Equal(t, "1S-16-SB", w.matches(&plan.Rule{Where: plan.Where{From: 10, To: 20}}, w.byKind[plan.StudBase])[0].ID)
	assert.Empty(t, w.matches(&plan.Rule{Except: []plan.Where{{}}}, w.byKind[plan.StudBase]), "an exception that asks nothing takes all")
}

// Joints are thinned host by host, and only of those that the rule matches: of seven bases
// of each wall every second, from the first; with the two in the middle taken out by except,
// 32 and 48, of those that are left.
func TestThinningGoesHostByHost(t *testing.T) {
	h := newHand()
	for wall := range 2 {
		for _, s := range stations {
			h.Joints = append(h.Joints, h.joint(h.walls[wall], plan.StudBase, s, floor1))
		}
	}
	w := newWorld(h.House)
	for _, c := range []struct {
		rule plan.Rule
		want []float64 // of each wall
	}{
		{plan.Rule{}, stations},
		{plan.Rule{Every: 1}, stations},
		{plan.Rule{Every: 2}, []float64{0.75, 32, 64, 95.25}},
		{plan.Rule{Every: 2, Except: []plan.Where{{From: 30, To: 50}}}, []float64{0.75, 64, 95.25}},
		{plan.Rule{AtMost: 64}, []float64{0.75, 48, 95.25}},
		{plan.Rule{AtMost: 1}, stations},
	} {
		got := w.choose(&c.rule, w.matches(&c.rule, w.byKind[plan.StudBase]))
		assert.Equal(t, append(append([]float64{}, c.want...), c.want...), at2(got), "%+v", c.rule)
	}
	only := w.choose(&plan.Rule{Every: 2}, w.byKind[plan.StudBase][7:])
	assert.Equal(t, []float64{0.75, 32, 64, 95.25}, at2(only))
}

// The greedy run takes each as far off as at_most lets it, a pencil's line more; where the
// nearest to equal bays would be farther apart than that, it stays. Of 0 34 35 70 71 100 with
// 35 1/2 at most it is 0 35 70 100, while equal bays of 33 1/3 would be 0 34 70 100, 36 apart.
func TestEqualBaysOnlyWhereTheyAreNarrowEnough(t *testing.T) {
	for _, c := range []struct {
		at   []float64
		most float64
		want []float64
	}{
		{[]float64{0, 34, 35, 70, 71, 100}, 35.5, []float64{0, 35, 70, 100}},
		{[]float64{0, 34, 35, 70, 71, 100}, 36, []float64{0, 34, 70, 100}},
		{[]float64{0, 16, 48.03}, 48, []float64{0, 48.03}},
		{[]float64{0, 16, 48.05}, 48, []float64{0, 16, 48.05}},
		{[]float64{0, 10, 40, 90}, 50, []float64{0, 40, 90}},
	} {
		assert.Equal(t, c.want, at2(world0.thin(&plan.Rule{AtMost: c.most}, run(nil, c.at...))), "%v", c.at)
	}
	for _, c := range []struct {
		at   []float64
		n    int
		want []float64
	}{
		{[]float64{3, 9, 12}, 1, []float64{3}},
		{[]float64{3, 9, 12}, 2, []float64{3, 12}},
		{[]float64{0, 40, 60, 100}, 3, []float64{0, 60, 100}}, // both 10 off the middle: the later
		{[]float64{0, 1, 2, 99}, 4, []float64{0, 2, 99}},      // 33 and 66: 2 and 99, which is the last
		{[]float64{0, 20, 40, 60, 80}, 5, []float64{0, 20, 40, 60, 80}},
	} {
		assert.Equal(t, c.want, at2(world0.evenly(run(nil, c.at...), c.n)), "%v", c.at)
	}
}

// A stud's base has a plate, a sill's before a bottom plate; another joint has none that
// would be held by itself.
func TestThePlateUnderABase(t *testing.T) {
	bottom, sill := &framing.Member{Role: plan.BottomPlate}, &framing.Member{Role: plan.SillPlate}
	assert.Same(t, sill, basePlate(&framing.Joint{Kind: plan.StudBase, Members: []*framing.Member{bottom, sill}}))
	assert.Same(t, bottom, basePlate(&framing.Joint{Kind: plan.StudBase, Members: []*framing.Member{bottom}}))
	assert.Nil(t, basePlate(&framing.Joint{Kind: plan.StudStud, Members: []*framing.Member{bottom}}))
	assert.Same(t, sill, basePlate(&framing.Joint{Kind: plan.SillFoundation, Members: []*framing.Member{sill}}))
	assert.Nil(t, basePlate(&framing.Joint{Kind: plan.StudBase}))
}
