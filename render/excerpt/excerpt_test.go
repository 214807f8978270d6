package excerpt

import (
	"testing"

	"galewright/plan"
	"galewright/render/page/pagetest"
	"galewright/render/project"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"
)

// Every joint of the examples that has steel shows some of it, and no picture
// reaches farther than its box: steel and 5 in, or 9 in about the joint.
func TestPicturesShowTheirOwnSteel(t *testing.T) {
	for _, file := range []string{"marsh-wren.toml", "dunlin.toml", "sanderling.toml"} {
		m := pagetest.Example(t, file)
		h := New(m)
		kinds := map[plan.JointKind]bool{}
		for _, j := range m.House.Joints {
			if len(m.Placement.At(j)) == 0 || kinds[j.Kind] {
				continue
			}
			kinds[j.Kind] = true // one of each kind: each is a projection of its own
			p := h.Of(j)
			require.NotNil(t, p, j.ID)
			assert.Positive(t, p.shown, "%s: nothing of its steel is seen", j.ID)
			for _, l := range p.lines {
				require.NotEqual(t, project.Hidden, l.State)
			}
		}
		assert.Greater(t, len(kinds), 6, file)
	}
}

// The side is that which shows the most steel: a clip on the inside of a wall is
// looked at from inside.
func TestTheSideThatShowsTheSteelIsTaken(t *testing.T) {
	m := pagetest.Example(t, "marsh-wren.toml")
	h := New(m)
	for _, j := range m.House.Joints {
		ps := m.Placement.At(j)
		if j.Kind != plan.StudStud || len(ps) != 1 || ps[0].Face != plan.Outside {
			continue
		}
		p := h.Of(j)
		b := h.steel.Body(ps[0])
		require.True(t, p.own[b])
		assert.Greater(t, p.shown, ps[0].Item.Length*1.5, "both long edges of a strap on the outside are seen")
		return
	}
	t.Fatal("no strap on the outside of a wall")
}
