package steel

import (
	"testing"

	"galewright/plan"
	"galewright/plan/framing"
	"galewright/plan/geom"
	"galewright/plan/hardware"
	"galewright/plan/length"
	"galewright/plan/placement"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"
)

// lying is a plate of a wall along x between two corners.
func lying(id string, role plan.Role, lo, hi geom.Vec3) *framing.Member {
	m := stick(id, lo, hi)
	m.Role = role
	y, z := (lo.Y+hi.Y)/2, (lo.Z+hi.Z)/2
	m.A, m.B = geom.Vec3{X: lo.X, Y: y, Z: z}, geom.Vec3{X: hi.X, Y: y, Z: z}
	return m
}

// storied is two posts of 2x6 at 40 in, one over the other, with the plates of
// their walls from west to 96 in: 1 1/2 in each, two below the floor and one above.
func storied(west float64) []*framing.Member {
	post := func(id string, z0, z1 float64) *framing.Member {
		m := stick(id, geom.Vec3{X: 40, Z: z0}, geom.Vec3{X: 41.5, Y: 5.5, Z: z1})
		m.Role = plan.Post
		return m
	}
	at := func(id string, role plan.Role, z float64) *framing.Member {
		return lying(id, role, geom.Vec3{X: west, Z: z}, geom.Vec3{X: 96, Y: 5.5, Z: z + 1.5})
	}
	return []*framing.Member{
		post("low", 0, 94), at("top", plan.TopPlate, 94), at("upper", plan.UpperPlate, 95.5),
		at("bottom", plan.BottomPlate, 109), post("high", 110.5, 200),
	}
}

// side is a strap of 2 1/8 by 0.09 in on the left side of the posts of storied, its
// middle line at y, with its body.
func side(y float64) *Body {
	band := geom.Band{{A: geom.Vec3{X: 40, Y: y, Z: 72}, B: geom.Vec3{X: 40, Y: y, Z: 133}, N: geom.Vec3{X: -1}, Width: 2.125, Thickness: 0.09}}
	p := &placement.Piece{Item: &hardware.Item{Item: &plan.Item{Mark: "s"}, Kind: hardware.KindNamed(plan.LongStrapItem)}, Joint: &framing.Joint{Kind: plan.WallEnd}}
	return &Body{Piece: p, Bands: []geom.Band{band}}
}

// 2 1/8 in and 1/4 in of play make 2 3/8 across the plates; 0.09 and 1/4 in 3/8 on a
// tape along them. In 5 1/2 in there are (5.5 - 2.375)/2 = 1 9/16 in left on either
// side, and 43% of the breadth are cut.
func TestAStrapOnAPostsSideSlotsThePlates(t *testing.T) {
	s := &Steel{Wood: NewWood(storied(0))}
	b := side(2.75)
	s.slots(b)
	var ids []string
	for _, x := range b.Slots {
		ids = append(ids, x.Member.ID)
		assert.InDeltaSlice(t, []float64{0.375, 2.375}, x.Size[:], 1e-9)
		assert.InDeltaSlice(t, []float64{1.5625, 1.5625}, x.Left[:], 1e-9)
		assert.InDelta(t, 1.5, x.Deep, 1e-9)
		assert.False(t, x.Open())
		assert.InDelta(t, 2.375/5.5, x.Cut(), 1e-9)
		assert.InDelta(t, x.Member.Z0, x.At.Z, 1e-9)
		assert.InDelta(t, 2.75, x.At.Y, 1e-9)
		assert.Equal(t, `a slot 2 3/8" across and 3/8" along it, 1 9/16" left on either side`, x.Words(length.Feet))
	}
	assert.Equal(t, []string{"top", "upper", "bottom"}, ids)
}

// At y = 1 1/4 in the steel reaches to 3/16 in from the plate's edge, the slot past
// it: a notch of 1.25 + 2.375/2 = 2 7/16 in into the edge.
func TestASlotAtTheEdgeIsANotch(t *testing.T) {
	s := &Steel{Wood: NewWood(storied(0))}
	b := side(1.25)
	s.slots(b)
	require.Len(t, b.Slots, 3)
	x := b.Slots[0]
	require.True(t, x.Open())
	assert.InDelta(t, 2.4375, x.Size[1], 1e-9)
	assert.InDelta(t, 5.5-2.4375, x.Left[0]+x.Left[1], 1e-9)
	assert.InDelta(t, 2.4375/2, x.At.Y, 1e-9)
	assert.Equal(t, `a notch 2 7/16" into its edge and 3/8" along it`, x.Words(length.Feet))
}

// Where the plates begin at the post's side the strap hangs beside their ends: no slot;
// nor in what it is nailed to, in plates that it lies on, or in a stud beside it.
func TestNoSlotWhereNothingIsPassed(t *testing.T) {
	b := side(2.75)
	(&Steel{Wood: NewWood(storied(40))}).slots(b)
	assert.Empty(t, b.Slots, "at the plates' end")

	flush := side(2.75)
	flush.Bands[0][0].A, flush.Bands[0][0].B, flush.Bands[0][0].N = geom.Vec3{X: 40.75, Z: 72}, geom.Vec3{X: 40.75, Z: 133}, geom.Vec3{Y: -1}
	(&Steel{Wood: NewWood(storied(0))}).slots(flush)
	assert.Empty(t, flush.Slots, "on the wall's face")

	beside := stick("stud", geom.Vec3{X: 38.5, Z: 80}, geom.Vec3{X: 40, Y: 5.5, Z: 93})
	b = side(2.75)
	(&Steel{Wood: NewWood(append(storied(40), beside))}).slots(b)
	assert.Empty(t, b.Slots, "a stud against it is another fault")

	b = side(2.75)
	b.Piece.Item.Kind = hardware.KindNamed(plan.ClipItem)
	(&Steel{Wood: NewWood(storied(0))}).slots(b)
	assert.Empty(t, b.Slots, "no strap")
}

// found runs a check over bodies.
func found(c *Check, s *Steel) (out []finding) {
	c.run(s, func(f finding) { out = append(out, f) })
	return out
}

// Slots in top plates are told, in a bottom plate alone not; and a splice strap
// on top of the plates that the strap comes out under.
func TestAStrapThroughTopPlatesIsTold(t *testing.T) {
	s := &Steel{Wood: NewWood(storied(0)), Bodies: []*Body{side(2.75)}}
	s.slots(s.Bodies[0])
	got := found(strapThroughPlate, s)
	require.Len(t, got, 1)
	assert.Equal(t, "it goes through top plates, which are chord and collector", got[0].cause)
	assert.Contains(t, got[0].detail, "takes 43% of its breadth")

	splice := &Body{Piece: &placement.Piece{Tag: "over", Item: &hardware.Item{Item: &plan.Item{}, Kind: hardware.KindNamed(plan.CollectorStrapItem)}}}
	lay := func(x0, x1 float64) {
		splice.Bands = []geom.Band{{{A: geom.Vec3{X: x0, Y: 2.75, Z: 97}, B: geom.Vec3{X: x1, Y: 2.75, Z: 97}, N: geom.Vec3{Z: 1}, Width: 1.875, Thickness: 0.06}}}
	}
	s.Bodies = append(s.Bodies, splice)
	lay(30, 60)
	got = found(strapThroughPlate, s)
	require.Len(t, got, 1)
	assert.Contains(t, got[0].cause, "under the strap of a collector or splice")
	assert.Contains(t, got[0].detail, "it comes out under over")
	lay(44, 60)
	assert.NotContains(t, found(strapThroughPlate, s)[0].detail, "over", "clear of the slot")

	none := &Steel{Wood: NewWood(storied(0)[3:]), Bodies: []*Body{side(2.75)}}
	none.slots(none.Bodies[0])
	require.Len(t, none.Bodies[0].Slots, 1)
	assert.Empty(t, found(strapThroughPlate, none), "the bottom plate is no chord")
}

// A strap of 2 1/8 in on the 1 1/2 in edge of a post hangs (2.125 - 1.5)/2 = 5/16 in
// over either side; on two posts tight together over none; on the 5 1/2 in side
// over none; with its middle 1/4 in off 9/16 in over one and 1/16 in over the other.
func TestAStrapWiderThanItsFace(t *testing.T) {
	post := func(id string, x float64) *framing.Member {
		m := stick(id, geom.Vec3{X: x}, geom.Vec3{X: x + 1.5, Y: 5.5, Z: 90})
		m.Role = plan.Post
		return m
	}
	one, two := post("one", 0), post("two", 1.5)
	edge := geom.Plate{A: geom.Vec3{X: 0.75, Z: 50}, B: geom.Vec3{X: 0.75, Z: 80}, N: geom.Vec3{Y: -1}, Width: 2.125, Thickness: 0.09}
	flat := geom.Plate{A: geom.Vec3{Y: 2.75, Z: 50}, B: geom.Vec3{Y: 2.75, Z: 80}, N: geom.Vec3{X: -1}, Width: 2.125, Thickness: 0.09}
	off, pair := edge, edge
	off.A.X, off.B.X = 1, 1
	pair.A.X, pair.B.X = 1.5, 1.5
	for name, c := range map[string]struct {
		wood []*framing.Member
		at   geom.Plate
		want string
	}{
		"the edge of one":  {[]*framing.Member{one}, edge, `of 2 1/8" it hangs 5/16" on either side over the edge of the post one`},
		"off its middle":   {[]*framing.Member{one}, off, `of 2 1/8" it hangs 9/16" and 1/16" over the edge of the post one`},
		"two tight":        {[]*framing.Member{one, two}, pair, ""},
		"the side of one":  {[]*framing.Member{one}, flat, ""},
		"beside the other": {[]*framing.Member{one, two}, edge, `of 2 1/8" it hangs 5/16" over the edge of the post one`},
	} {
		s := &Steel{Wood: NewWood(c.wood)}
		b := side(0)
		b.Piece.Laid = []placement.Laid{{Member: one}}
		b.Bands = []geom.Band{{c.at}}
		s.Wood.fasten(b, 0, end(8, 2), Seat{}, c.at.Width, 0)
		s.Bodies = []*Body{b}
		got := found(strapOffFace, s)
		if c.want == "" {
			assert.Empty(t, got, name)
			continue
		}
		require.Len(t, got, 1, name)
		assert.Equal(t, c.want, got[0].detail, name)
		assert.Contains(t, got[0].mend, "[[wall.shear]]", name)
	}
}

// A block from 54 in up stands against the outer side of a strap whose four nails go in
// at 51, 53, 55 and 57 in: two are covered. The piece's own members cover nothing, nor does
// wood on steel that lies flat.
func TestFastenersThatAnotherMemberCovers(t *testing.T) {
	post := stick("post", geom.Vec3{}, geom.Vec3{X: 1.5, Y: 5.5, Z: 90})
	tail := stick("tail", geom.Vec3{X: -2, Y: -6, Z: 54}, geom.Vec3{X: 3, Z: 70})
	s := &Steel{Wood: NewWood([]*framing.Member{post, tail})}
	b := side(0)
	b.Piece.Laid = []placement.Laid{{Member: post}}
	b.Bands = []geom.Band{{{A: geom.Vec3{X: 0.75, Z: 50}, B: geom.Vec3{X: 0.75, Z: 80}, N: geom.Vec3{Y: -1}, Width: 1.375, Thickness: 0.05}}}
	s.Wood.fasten(b, 0, end(4, 1), Seat{}, 1.375, 0) // at 51, 53, 55 and 57
	s.Bodies = []*Body{b}
	got := found(fastenersCovered, s)
	require.Len(t, got, 1)
	assert.Equal(t, 2, got[0].count)
	assert.Contains(t, got[0].detail, "tail")
	b.Piece.Laid = append(b.Piece.Laid, placement.Laid{Member: tail})
	assert.Empty(t, found(fastenersCovered, s))

	plate := lying("plate", plan.TopPlate, geom.Vec3{X: 0}, geom.Vec3{X: 90, Y: 5.5, Z: 1.5})
	over := stick("rafter", geom.Vec3{X: 10, Z: 1.5}, geom.Vec3{X: 11.5, Y: 5.5, Z: 9})
	s = &Steel{Wood: NewWood([]*framing.Member{plate, over})}
	b = side(0)
	b.Piece.Laid = []placement.Laid{{Member: plate}}
	b.Bands = []geom.Band{{{A: geom.Vec3{X: 8, Y: 2.75, Z: 1.5}, B: geom.Vec3{X: 40, Y: 2.75, Z: 1.5}, N: geom.Vec3{Z: 1}, Width: 1.375, Thickness: 0.05}}}
	s.Wood.fasten(b, 0, end(4, 1), Seat{}, 1.375, 0) // the second at 11
	s.Bodies = []*Body{b}
	require.Same(t, over, b.Fasteners[1].Runs[0].Member)
	assert.Empty(t, found(fastenersCovered, s), "it goes on before what bears on it")
}
