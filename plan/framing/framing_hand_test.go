package framing

import (
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"galewright/plan"
	"galewright/plan/geom"
	"galewright/plan/plantest"
)

// Jacks: the plan's number; by the table (2-2x10 in a building of 20 ft spans 8 ft 5 in on two,
// 3-2x8 8 ft 4 in on one) only of an exterior bearing wall, and told where the header is too
// long for it by however little; else one up to 6 ft and two above.
func TestJacksOfAnOpening(t *testing.T) {
	three := plan.Lumber{Ply: 3, Breadth: 1.5, Depth: 7.25, Text: "3-2x8"}
	for _, c := range []struct {
		name            string
		jacks           int
		width           float64
		header          plan.Lumber
		exterior, carry bool
		want            int
		told            string
	}{
		{"the plan's", 3, 40, headerThin, true, true, 3, ""},
		{"in the table", plan.AutoCount, 100, three, true, true, 1, ""},
		{"a hair over its span", plan.AutoCount, 100.01, three, true, true, 2, `a 3-2x8 carries 8'-4" at most there`},
		{"in the table on two", plan.AutoCount, 101, headerThin, true, true, 2, ""},
		{"interior", plan.AutoCount, 72, three, false, true, 1, ""},
		{"carries nothing", plan.AutoCount, 72.1, three, true, false, 2, ""},
		{"by the rule", 0, 72, three, true, true, 1, ""},
		{"wide, by the rule", 0, 72.1, three, true, true, 2, ""},
	} {
		t.Run(c.name, func(t *testing.T) {
			p := stories(1)
			for i, w := range ring(p, 0, rect(0, 0, 480, 240)...) {
				w.Exterior, w.Bearing = i > 0 || c.exterior, i > 0 || c.carry
			}
			b := newBuilder(p)
			b.setUp()
			o := &plan.Opening{Name: "w", Jacks: c.jacks, Width: c.width, Header: c.header}
			assert.Equal(t, c.want, b.jacks(b.walls[0], o))
			if c.told == "" {
				assert.Empty(t, b.faults)
				return
			}
			require.Len(t, b.faults, 1)
			assert.Contains(t, b.faults[0].Summary, c.told)
		})
	}
}

// An opening too near an end is told with what it leaves there, what it needs and by how much
// it must move: one jack and the end stud are 3 in.
func TestAnOpeningNearAnEndSaysByHowMuch(t *testing.T) {
	for at, end := range map[float64]string{2.5: "start", 192 - 2.5 - 38.5: "end"} {
		p, _ := straight(192, window("w", at, 38.5))
		_, ds := Frame(p)
		require.Len(t, ds, 1)
		assert.Equal(t, `opening w leaves 2 1/2" to the `+end+` of wall 1A; 1 jack and the end stud need 3"`, ds[0].Summary)
		assert.Equal(t, `move it by 1/2" or more, or make it narrower`, ds[0].Mend)
	}
}

// Kings, jacks, cripples, header and sill name their opening; studs and plates none.
func TestMembersNameTheirOpening(t *testing.T) {
	p, _ := straight(192, window("w", 64, 38.5))
	n := map[plan.Role]int{}
	for _, m := range frame(t, p).Members {
		if m.Opening != nil {
			assert.Equal(t, "w", m.Opening.Name)
			n[m.Role]++
		}
	}
	assert.Equal(t, map[plan.Role]int{plan.King: 2, plan.Jack: 2, plan.Cripple: 7, plan.Header: 1, plan.Sill: 1}, n)
}

// A porch beam of two plies, 3 in, from (0, 0) to (200, 0) at 200: posts of 4x6, 3.5 along it
// and 5.5 across, stand under its middle, 1.5 in from its outer face, from 60 to its underside
// at 190.75. Of 200 the stock of 120 gives a piece to the post at 100 and one from there, and
// that post carries both: its cap joins it to each.
func TestAPorchByHand(t *testing.T) {
	p := stories(1)
	p.Lumber.Stock = []float64{120}
	ring(p, 0, rect(0, 40, 200, 240)...)
	porch := &plan.Porch{
		Name: "P", From: geom.Vec2{}, To: geom.Vec2{X: 200}, Beam: plan.Lumber{Ply: 2, Breadth: 1.5, Depth: 9.25, Text: "2-2x10"},
		Post: plan.Lumber{Ply: 1, Breadth: 3.5, Depth: 5.5, Text: "4x6"}, Posts: []float64{1.75, 100, 198.25}, Base: 60, Top: 200,
	}
	p.Porches = []*plan.Porch{porch}
	h, _ := Frame(p)
	var beams, posts [][]float64
	for _, m := range h.Members {
		lo, hi := m.Bounds()
		box := []float64{lo.X, hi.X, lo.Y, hi.Y, lo.Z, hi.Z}
		switch m.Role {
		case plan.Beam:
			beams = append(beams, box)
		case plan.PorchPost:
			posts = append(posts, box)
			assert.InDelta(t, 130.75, m.Length, 1e-9)
		}
	}
	require.Len(t, beams, 2)
	plantest.Near(t, []float64{0, 100, 0, 3, 190.75, 200}, beams[0], 1e-9)
	plantest.Near(t, []float64{100, 200, 0, 3, 190.75, 200}, beams[1], 1e-9)
	require.Len(t, posts, 3)
	for i, x := range []float64{1.75, 100, 198.25} {
		plantest.Near(t, []float64{x - 1.75, x + 1.75, 1.5 - 2.75, 1.5 + 2.75, 60, 190.75}, posts[i], 1e-9)
	}
	// Half of 98.25 and what is past the end; half of both ways.
	for i, j := range joints(h, "P", plan.PostCap) {
		assert.InDelta(t, []float64{1.75 + 98.25/2, 98.25, 1.75 + 98.25/2}[i], j.Tributary, 1e-9)
		assert.Len(t, j.Members, []int{2, 3, 2}[i])
		assert.Equal(t, plan.Beam, j.First().Role)
		assert.InDelta(t, 190.75, j.At.Z, 1e-9)
		assert.InDelta(t, 1.5, j.At.Y, 1e-9)
	}
	for i, j := range joints(h, "P", plan.PostBase) {
		assert.InDelta(t, []float64{1.75, 100, 198.25}[i], j.Station, 1e-9)
		assert.InDelta(t, 60, j.At.Z, 1e-9)
		assert.True(t, j.Below)
	}
	for _, c := range []struct {
		code plan.Code
		edit func(*plan.Porch)
	}{
		{"porch-no-size", func(p *plan.Porch) { p.To.X = 1.4 }},
		{"porch-no-size", func(p *plan.Porch) { p.Base = 189.3 }}, // 1.45 left for a post
		{"post-off-beam", func(p *plan.Porch) { p.Posts = []float64{-0.1, 100} }},
		{"post-off-beam", func(p *plan.Porch) { p.Posts = []float64{100, 200.1} }},
	} {
		bad := *porch
		c.edit(&bad)
		p.Porches = []*plan.Porch{&bad}
		assert.Len(t, told(p, c.code), 1)
	}
}

// A roof's area is two depths of its rafters wide at least, each way: 14.5 of 2x8.
func TestARoofMustHaveAnArea(t *testing.T) {
	for size, ok := range map[geom.Vec2]bool{{X: 14.5, Y: 14.5}: true, {X: 14.4, Y: 100}: false, {X: 100, Y: 14.4}: false} {
		p := stories(1)
		b := newBuilder(p)
		_, err := b.bodyOf(roofOn(p, "main", "gable", "x", 6, rect(0, 0, size.X, size.Y)))
		assert.Equal(t, ok, err == nil, "%v", size)
	}
}

// The joints that blocks at the eaves stand between are those of one roof on one bed: of two
// porches each has its own, and what is on a wall is on no porch.
func TestJointsOnABedAreInOrder(t *testing.T) {
	f, rb := emptyFrame()
	w := bedOn("A", geom.Vec2{}, geom.Vec2{X: 200})
	other := &plan.Roof{Name: "other"}
	add := func(kind plan.JointKind, host string, wall *plan.Wall, roof *plan.Roof, at ...float64) {
		for _, s := range at {
			f.joints = append(f.joints, &Joint{Kind: kind, Host: host, Wall: wall, Roof: roof, Station: s})
		}
	}
	add(plan.RafterPlate, "A", w.wall.Wall, rb.Roof, 48, 16, 32)
	add(plan.RafterPlate, "A", w.wall.Wall, other, 20)
	add(plan.GableStud, "A", w.wall.Wall, rb.Roof, 24)
	add(plan.RafterPlate, "P", nil, rb.Roof, 12, 4)
	add(plan.RafterPlate, "Q", nil, rb.Roof, 8)
	stations := func(b *bed) (out []float64) {
		for _, j := range f.bearingOn(rb, b) {
			out = append(out, j.Station)
		}
		return out
	}
	assert.Equal(t, []float64{16, 32, 48}, stations(w))
	assert.Equal(t, []float64{4, 12}, stations(&bed{porch: &plan.Porch{Name: "P"}}))
	assert.Equal(t, []float64{8}, stations(&bed{porch: &plan.Porch{Name: "Q"}}))
	assert.Empty(t, stations(&bed{porch: &plan.Porch{Name: "A"}}), "a porch of a wall's name")
}
