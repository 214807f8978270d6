package framing

import (
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"galewright/plan"
	"galewright/plan/geom"
)

// runsAbove adds a member over a wall that runs along x: from x0 to x1, its middle at y, from
// z0 to z1.
func runsAbove(b *builder, id string, role plan.Role, x0, x1, y, z0, z1 float64) *Member {
	return b.member(&Member{
		ID: id, Role: role, Section: plan.Lumber{Ply: 1, Breadth: 1.5, Depth: z1 - z0}, Length: x1 - x0,
		A: geom.Vec3{X: x0, Y: y, Z: z0}, B: geom.Vec3{X: x1, Y: y, Z: z0},
		Solid: []geom.Solid{geom.Box(geom.Vec3{X: x0, Y: y - 0.75, Z: z0}, geom.Vec3{X: x1 - x0}, geom.Vec3{Y: 1.5}, geom.Vec3{Z: z1 - z0})},
	})
}

// An interior wall of 2x6 from x = 0 to 100, its top at 100. What carries its line on past a
// segment's end is, within its own length, its plates a foot on; past its end a wall in line,
// at an outside wall nothing is asked; else a member over it that runs its way, and where it
// ends free and none does a collector with nothing to tie to, which tells the lack.
func TestWhatCarriesAShearWallsLineOn(t *testing.T) {
	first, second, low := &Member{ID: "first", S1: 55}, &Member{ID: "second", S0: 55, S1: 100}, &Member{ID: "low", S1: 100}
	only := &Member{ID: "only", S1: 100}
	line := &framedWall{Wall: &plan.Wall{Name: "L"}, caps: []*Member{{ID: "near"}, {ID: "far"}}}
	inner := &framedWall{Wall: &plan.Wall{Name: "I"}}
	outer := &framedWall{Wall: &plan.Wall{Name: "O", Exterior: true, From: geom.Vec2{X: 100, Y: 50}, To: geom.Vec2{X: 100, Y: -10}}}
	court := &framedWall{Wall: &plan.Wall{Name: "C", Exterior: true, From: geom.Vec2{X: 100}, To: geom.Vec2{X: 100, Y: -80}}}
	for _, c := range []struct {
		name     string
		caps     []*Member
		end, dir float64
		exterior bool
		meets    []meeting
		joist    bool
		want     string
		need     bool
	}{
		{"on its next plate", []*Member{first, second}, 50, 1, false, nil, false, "second", true},
		{"on its next plate, backward", []*Member{first, second}, 60, -1, false, nil, false, "first", true},
		{"on its lower plate under one that runs on", []*Member{only}, 50, 1, false, nil, true, "low", true},
		{"on a wall in line", []*Member{only}, 100, 1, false, []meeting{{other: line, end: 1, line: true}}, true, "near", true},
		{"on a wall in line whose end it is", []*Member{only}, 100, 1, false, []meeting{{other: line, end: 1, line: true, tail: true}}, true, "far", true},
		{"on none that is in line at its start", []*Member{only}, 100, 1, false, []meeting{{other: line, end: -1, line: true}}, false, "", true},
		{"on a wall in line before its start", []*Member{only}, 0, -1, false, []meeting{{other: line, end: -1, line: true}}, true, "near", true},
		{"at an outside wall", []*Member{only}, 100, 1, false, []meeting{{other: outer, end: 1}}, true, "", false},
		{"at an outside wall at its other end", []*Member{only}, 100, 1, false, []meeting{{other: outer, end: -1}}, true, "joist", true},
		{"an outside wall's end", []*Member{only}, 100, 1, true, nil, true, "", false},
		{"an outside wall's end in a court", []*Member{only}, 100, 1, true, []meeting{{other: court, end: 1}}, true, "joist", true},
		{"an outside wall's end in a court, nothing over it", []*Member{only}, 100, 1, true, []meeting{{other: court, end: 1}}, false, "", false},
		{"an outside wall's end in a court at its start", []*Member{only}, 100, 1, true, []meeting{{other: court, end: -1}}, true, "", false},
		{"free under a joist", []*Member{only}, 100, 1, false, nil, true, "joist", true},
		{"free", []*Member{only}, 100, 1, false, nil, false, "", true},
		{"at an inside wall under a joist", []*Member{only}, 100, 1, false, []meeting{{other: inner, end: 1}}, true, "joist", true},
		{"at an inside wall", []*Member{only}, 100, 1, false, []meeting{{other: inner, end: 1}}, false, "", false},
	} {
		t.Run(c.name, func(t *testing.T) {
			b := newBuilder(stories(1))
			if c.joist {
				runsAbove(b, "joist", plan.Joist, 60, 200, 2.75, 100, 109.25)
			}
			w := &framedWall{Wall: &plan.Wall{To: geom.Vec2{X: 100}, Studs: twoBySix, Exterior: c.exterior}, top: 100, s1: 100, meets: c.meets, caps: c.caps, plates: []*Member{low}}
			w.frame = w.Frame()
			on, need := b.goesOn(w, w.caps[0], c.end, c.dir)
			if len(c.caps) > 1 && c.dir < 0 {
				on, need = b.goesOn(w, w.caps[1], c.end, c.dir)
			}
			assert.Equal(t, c.need, need)
			if c.want == "" {
				assert.Empty(t, on)
				return
			}
			require.Len(t, on, 1)
			assert.Equal(t, c.want, on[0].ID)
		})
	}
}

// Over the same wall, a foot past its end, the nearest joist, beam, truss, girder or rim that
// runs its way counts, a foot off the wall's middle at most (2.75 + 12 = 14.75), and from just
// under its top, as a beam flush with the plates, to a foot over it.
func TestWhatRunsOnAboveAWall(t *testing.T) {
	for _, c := range []struct {
		name      string
		role      plan.Role
		x0, x1, y float64
		z0, z1    float64
		want      bool
	}{
		{"a joist on the plates", plan.Joist, 60, 200, 2.75, 100, 109.25, true},
		{"a beam flush with the plates", plan.Beam, 100, 200, 2.75, 90, 100, true},
		{"a truss", plan.Truss, 60, 200, 2.75, 100, 150, true},
		{"a girder", plan.GirderBeam, 60, 200, 2.75, 100, 109.25, true},
		{"a rim", plan.Rim, 60, 200, 2.75, 100, 109.25, true},
		{"a rafter is none", plan.Rafter, 60, 200, 2.75, 100, 109.25, false},
		{"under the plates", plan.Beam, 100, 200, 2.75, 88, 98.5, false},
		{"10 in over the plates", plan.Joist, 60, 200, 2.75, 110, 119, true},
		{"14 in over the plates", plan.Joist, 60, 200, 2.75, 114, 123, false},
		{"a foot off", plan.Joist, 60, 200, 14.75, 100, 109.25, true},
		{"more than a foot off", plan.Joist, 60, 200, 14.8, 100, 109.25, false},
		{"it ends there", plan.Joist, 60, 112, 2.75, 100, 109.25, true},
		{"it ends before", plan.Joist, 60, 111.9, 2.75, 100, 109.25, false},
		{"it begins there", plan.Joist, 112, 200, 2.75, 100, 109.25, true},
		{"it begins after", plan.Joist, 112.1, 200, 2.75, 100, 109.25, false},
	} {
		b := newBuilder(stories(1))
		m := runsAbove(b, "m", c.role, c.x0, c.x1, c.y, c.z0, c.z1)
		w := &framedWall{Wall: &plan.Wall{To: geom.Vec2{X: 100}, Studs: twoBySix}, top: 100, s1: 100}
		w.frame = w.Frame()
		got := b.inLineAbove(w, 112, 1)
		if !c.want {
			assert.Nil(t, got, c.name)
			continue
		}
		assert.Same(t, m, got, c.name)
		near := runsAbove(b, "near", plan.Joist, 60, 200, 3, 100, 109.25)
		if off := c.y - 2.75; off > 0.25 {
			assert.Same(t, near, b.inLineAbove(w, 112, 1), "the nearer one")
		} else {
			assert.Same(t, m, b.inLineAbove(w, 112, 1), "the nearer one")
		}
	}
	b := newBuilder(stories(1))
	m := runsAbove(b, "across", plan.Joist, 60, 200, 2.75, 100, 109.25)
	m.B = m.A.Add(geom.Vec3{X: 1, Y: 100})
	w := &framedWall{Wall: &plan.Wall{To: geom.Vec2{X: 100}, Studs: twoBySix}, top: 100, s1: 100}
	w.frame = w.Frame()
	assert.Nil(t, b.inLineAbove(w, 112, 1), "one that runs across")
}
