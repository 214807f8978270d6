package frame

import (
	"math"
	"testing"

	"galewright/plan"
	"galewright/plan/framing"
	"galewright/plan/geom"

	"galewright/render/page/pagetest"
	"galewright/render/project"
	"galewright/render/scene"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"
)

// The path of the demo goes from a ridge strap to a pile strap, member after member,
// each joint sharing a member with the one before: nothing is jumped over.
func TestPathHangsTogether(t *testing.T) {
	c := pagetest.Context(t, pagetest.Example(t, "marsh-wren.toml"), "arch-d")
	for _, k := range corners {
		p := pathOf(c, k.view().Toward)
		require.NotNil(t, p, k.name)
		var marks []string
		for _, s := range p.stops {
			for _, pc := range s.pieces {
				marks = append(marks, pc.Item.Mark)
			}
		}
		require.NotEmpty(t, marks)
		assert.Contains(t, marks, "ridge-strap", k.name)
		assert.Contains(t, marks, "rafter-clip", k.name)
		assert.Contains(t, marks, "story-strap", k.name)
		assert.Contains(t, marks, "base-strap", k.name)
		roles := map[plan.Role]bool{}
		for m := range p.members {
			roles[m.Role] = true
		}
		for _, r := range []plan.Role{plan.Rafter, plan.Stud, plan.TopPlate, plan.Rim, plan.GirderBeam, plan.Pile} {
			assert.True(t, roles[r], "%s: no %s", k.name, r)
		}
	}
}

// Every picture of every example stays on its paper and lies on nothing.
func TestFramesOfAllExamples(t *testing.T) {
	for _, file := range pagetest.ExampleFiles() {
		m := pagetest.Model(file)
		for _, paper := range []string{"arch-d", "letter"} {
			c := pagetest.Context(t, m, paper)
			sheets := pagetest.Drawn(c, Pages(c))
			require.Len(t, sheets, 2, file)
			for _, s := range sheets {
				pagetest.OnPaper(t, s)
				pagetest.NoOverlaps(t, s, paper)
			}
		}
	}
}

// What is drawn is what stands: a stud of a wall toward the eye, with nothing
// before it, shows its outside edges at full length; seen lines are those of the
// full picture that are not hidden.
func TestSeenLinesAreThoseNothingHides(t *testing.T) {
	box := func(x, y, z, high float64) []geom.Solid {
		return []geom.Solid{geom.Box(geom.Vec3{X: x, Y: y, Z: z}, geom.Vec3{X: 10}, geom.Vec3{Y: 10}, geom.Vec3{Z: high})}
	}
	var s project.Scene
	near, far := &framing.Member{ID: "near"}, &framing.Member{ID: "far"}
	s.Add(project.Thing{Solids: box(0, 0, 0, 50), Owner: scene.Part{Member: near}}, project.Thing{Solids: box(3, 40, 5, 40), Owner: scene.Part{Member: far}})
	front := project.Looking(geom.Vec3{Y: 1}, geom.Vec3{Z: 1})
	long := map[*framing.Member]float64{}
	for _, l := range project.Project(&s, front).SeenLines() {
		require.NotEqual(t, project.Hidden, l.State)
		long[l.Owner.(scene.Part).Member] += l.B.Sub(l.A).Len()
	}
	assert.InDelta(t, 2*50+2*10, long[near], 1e-6, "a rectangle of 10 by 50")
	assert.InDelta(t, 40+2*3, long[far], 0.01, "3 in of it stick out to the right: one edge, and 3 in of its top and foot")

	all, seen := 0.0, 0.0
	sw := corners[0].view()
	for _, l := range project.Project(&s, sw).Lines() {
		if l.State != project.Hidden {
			all += l.B.Sub(l.A).Len()
		}
	}
	for _, l := range project.Project(&s, sw).SeenLines() {
		seen += l.B.Sub(l.A).Len()
	}
	assert.InDelta(t, all, seen, 0.02, "but for a hair's breadth of edges behind their own body")
}

// The eye of each corner stands over the side it is named for: what is nearest to it
// there comes out lowest and in the middle.
func TestCornersLookFromWhereTheySay(t *testing.T) {
	for _, k := range corners {
		v := k.view()
		near := v.At(geom.Vec3{X: math.Copysign(100, k.from.X), Y: math.Copysign(100, k.from.Y)})
		far := v.At(geom.Vec3{X: -math.Copysign(100, k.from.X), Y: -math.Copysign(100, k.from.Y)})
		assert.Less(t, near.Y, far.Y, k.name)
		assert.Greater(t, v.At(geom.Vec3{Z: 100}).Y, 0.0, "up is up")
		assert.Greater(t, v.Depth(geom.Vec3{X: k.from.X, Y: k.from.Y}), 0.0, k.name)
	}
	south := corners[0].view()
	assert.Greater(t, south.At(geom.Vec3{X: 1, Y: -1}).X, south.At(geom.Vec3{X: -1, Y: 1}).X, "from the south-west the south-east is at the right")
}
