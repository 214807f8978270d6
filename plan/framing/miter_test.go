package framing

import (
	"math"
	"testing"

	"galewright/plan"
	"galewright/plan/geom"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"
)

// bayPlan is 1A to 1E of a house with a bay at 45° in its south side: inside
// corners at (120, 0) and (276, 0), outside ones at (156, -36) and (240, -36).
func bayPlan() *plan.Plan {
	p := onSlabPlan()
	ring(p, 0, geom.Vec2{}, geom.Vec2{X: 120}, geom.Vec2{X: 156, Y: -36}, geom.Vec2{X: 240, Y: -36}, geom.Vec2{X: 276}, geom.Vec2{X: 400}, geom.Vec2{X: 400, Y: 240}, geom.Vec2{Y: 240})
	return p
}

// Plates of 2x6 are cut at 22 1/2°, which takes 5.5 tan 22.5° = 2.2782 in: more than a
// 2-by, so that the beveled studs are ripped from 4x6. 1C lies between two outside
// corners: its plates reach to both (0 and 84), its studs stand 2.2782 short of them.
func TestOutsideCornerAt45DegreesIsClosed(t *testing.T) {
	h := frame(t, bayPlan())
	off := 5.5 * math.Tan(math.Pi/8)
	require.InDelta(t, 2.2782, off, 1e-4)
	lo, hi := extent(of(h, "1C", plan.TopPlate))
	assert.InDelta(t, 0, lo, 1e-6)
	assert.InDelta(t, 84, hi, 1e-6)
	posts := of(h, "1C", plan.Post)
	require.Len(t, posts, 2)
	assert.InDelta(t, off, posts[0].S0, 1e-6)
	assert.InDelta(t, 84-off, posts[1].S1, 1e-6)
	bevels := of(h, "1C", plan.BeveledStud)
	require.Len(t, bevels, 2)
	for _, m := range bevels {
		assert.Equal(t, "4x6", m.Section.Text)
		assert.InDelta(t, 22.5, m.Bevel, 1e-6)
		assert.InDelta(t, 5.5*off/2*m.Length, m.Solid[0].Volume(), 1e-3, "a triangle as deep as the wall")
		assert.InDelta(t, off, m.S1-m.S0, 1e-6)
	}
	for _, m := range of(h, "1C", plan.TopPlate) {
		assert.InDelta(t, 22.5, m.Bevel, 1e-6)
		assert.InDelta(t, (84-off)*5.5*1.5, m.Solid[0].Volume(), 1e-3, "a trapeze: 84 outside, 84 - 2 x 2.2782 inside")
	}
}

// At the inside corner the plates of 1A go 2.2782 past (120, 0) on their inner edge,
// its last stud ends at 120, and the wedge opens to the inside.
func TestInsideCornerAt45DegreesIsClosed(t *testing.T) {
	h := frame(t, bayPlan())
	off := 5.5 * math.Tan(math.Pi/8)
	_, hi := extent(of(h, "1A", plan.TopPlate))
	assert.InDelta(t, 120+off, hi, 1e-6)
	posts := of(h, "1A", plan.Post)
	assert.InDelta(t, 120, posts[len(posts)-1].S1, 1e-6)
	m := of(h, "1A", plan.BeveledStud)[0]
	lo, up := m.Solid[0].Bounds()
	assert.InDelta(t, 120, lo.X, 1e-6)
	assert.InDelta(t, 120+off, up.X, 1e-6)
}

// At each of the four corners of the bay two beveled studs, or the studs that are
// beveled, meet over the whole line of the cut, 5.5 / cos 22.5° = 5.9532 in, so that the
// wood goes round: between the outer and inner faces nothing of the corner is open.
func TestBevelsMeetAndFillTheCorner(t *testing.T) {
	h := frame(t, bayPlan())
	n := 0
	for _, j := range h.Joints {
		if j.Kind != plan.WallCorner || j.Members[0].Role != plan.BeveledStud {
			continue
		}
		n++
		a, b := j.Members[0], j.Members[1]
		require.Equal(t, plan.BeveledStud, b.Role)
		require.NotEqual(t, a.Wall, b.Wall)
		shared := 0
		for _, p := range corners(a) {
			for _, q := range corners(b) {
				if p.Sub(q).Len() < 1e-6 {
					shared++
				}
			}
		}
		assert.Equal(t, 2, shared, "%s and %s share the cut's two ends", a.ID, b.ID)
	}
	assert.Equal(t, 4, n)
}

// corners are the points of a member's outline on plan, each once.
func corners(m *Member) (out []geom.Vec2) {
	m.Solid[0].Points(func(p geom.Vec3) {
		for _, q := range out {
			if q.Sub(p.Flat()).Len() < 1e-6 {
				return
			}
		}
		out = append(out, p.Flat())
	})
	return out
}

// At 16° the cut takes 5.5 tan 8° = 0.773 in, at 2x4 3.5 tan 8° = 0.492: the end stud of
// a 2x4 wall is beveled itself, that of a 2x6 wall gets one ripped from 2x6 beside it.
// A turn of 87° is butted as a right angle is, and so is what the plan wants butted.
func TestWhatIsMitered(t *testing.T) {
	turned := func(deg float64, studs plan.Lumber, join plan.Join) *House {
		p := onSlabPlan()
		sin, cos := math.Sincos(deg * math.Pi / 180)
		for i, w := range ring(p, 0, geom.Vec2{}, geom.Vec2{X: 200}, geom.Vec2{X: 200 + 120*cos, Y: 120 * sin}, geom.Vec2{X: 200, Y: 300}, geom.Vec2{Y: 300}) {
			w.Studs = studs
			if i == 0 {
				w.End.Join = join
			}
		}
		h, faults := Frame(p)
		require.False(t, faults.Errors(), "%v", faults)
		sound(t, h)
		return h
	}
	h := turned(16, twoByFour, "")
	assert.Empty(t, of(h, "1A", plan.BeveledStud))
	posts := of(h, "1A", plan.Post)
	last := posts[len(posts)-1]
	assert.InDelta(t, 8, last.Bevel, 1e-6)
	assert.InDelta(t, (1.5-3.5*math.Tan(8*math.Pi/180)/2)*3.5*last.Length, last.Solid[0].Volume(), 1e-3)
	h = turned(16, twoBySix, "")
	require.Len(t, of(h, "1A", plan.BeveledStud), 1)
	assert.Equal(t, "2x6", of(h, "1A", plan.BeveledStud)[0].Section.Text)
	assert.Empty(t, of(turned(87, twoBySix, ""), "1A", plan.BeveledStud))
	assert.Empty(t, of(turned(45, twoBySix, plan.JoinThrough), "1A", plan.BeveledStud))
}

// A bay of two stories on girders stands as one on a slab does: nothing overlaps, no joint
// has a negative station, and every full-height member is tied at top and foot once.
func TestRaisedBay(t *testing.T) {
	p := stories(2)
	girders(p, 0, 400, 20, 220)
	for level := range 2 {
		ring(p, level, geom.Vec2{}, geom.Vec2{X: 120}, geom.Vec2{X: 156, Y: -36}, geom.Vec2{X: 240, Y: -36}, geom.Vec2{X: 276}, geom.Vec2{X: 400}, geom.Vec2{X: 400, Y: 240}, geom.Vec2{Y: 240})
	}
	h, faults := Frame(p)
	require.False(t, faults.Errors(), "%v", faults)
	sound(t, h)
	ends := map[*Member]int{}
	for _, j := range h.Joints {
		assert.GreaterOrEqual(t, j.Station, 0.0, j.ID)
		switch j.Kind {
		case plan.StudTop, plan.StudBase, plan.StudStud:
			ends[j.First()]++
		}
	}
	for _, m := range h.Members {
		assert.NotContains(t, m.ID, "@-")
		if m.Role.FullHeight() {
			assert.Equal(t, 2, ends[m], m.ID)
		}
	}
	assert.Len(t, of(h, "2C", plan.BeveledStud), 2)
}
