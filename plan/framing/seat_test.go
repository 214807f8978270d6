package framing

import (
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"galewright/plan"
	"galewright/plan/geom"
)

// seated frames the elevated house with its girders seated so, piles 9.25 in.
func seated(t *testing.T, seat plan.GirderSeat) *House {
	p := elevated(1)
	p.Foundation.Pile = plan.Lumber{Ply: 1, Breadth: 9.25, Depth: 9.25, Text: "10x10"}
	for _, g := range p.Girders {
		g.Seat = seat
	}
	return frame(t, p)
}

// Girder G1 is 4.5 in wide over piles of 9.25 in: on top in their middle; in a
// notch flush with their outer face, 4.75 in of each behind it up to its top;
// beside them all of each behind it.
func TestPilesStandAsTheirGirderIsSeated(t *testing.T) {
	for seat, c := range map[plan.GirderSeat]struct {
		is           Seat
		lo, hi       float64 // of the pile, from the girder's outer face in
		above, solid float64 // of it over the girder's underside, in; parts
	}{
		plan.SeatTop:    {OnTop, 2.25 - 4.625, 2.25 + 4.625, 0, 1},
		plan.SeatNotch:  {Notched, 0, 9.25, 1, 2},
		plan.SeatBeside: {Beside, 4.5, 4.5 + 9.25, 1, 1},
	} {
		t.Run(string(seat), func(t *testing.T) {
			h := seated(t, seat)
			list := joints(h, "G1", plan.GirderPile)
			require.NotEmpty(t, list)
			for _, j := range list {
				girder, pile := j.First(), j.Members[len(j.Members)-1]
				require.Equal(t, plan.Pile, pile.Role)
				assert.Equal(t, c.is, j.Seat)
				assert.Zero(t, j.Gap)
				lo, hi := pile.Bounds()
				g, _ := girder.Bounds()
				assert.InDelta(t, g.Y+c.lo, lo.Y, 1e-9)
				assert.InDelta(t, g.Y+c.hi, hi.Y, 1e-9)
				assert.InDelta(t, girder.Z0+c.above*(girder.Z1-girder.Z0), pile.Z1, 1e-9)
				assert.Len(t, pile.Solid, int(c.solid))
				for _, s := range pile.Solid {
					for _, m := range girder.Solid {
						assert.False(t, geom.Overlap(s, m, 0.01), "the pile is cut out for the girder")
					}
				}
			}
		})
	}
}

// A notch 3 in deep and 8 in high for a girder of 4.5 in: the pile's face 1.5 in inside of
// the girder's, 6.25 in of 9.25 left behind it, 8 in up from the seat.
func TestANotchOfItsOwnDepthAndHeight(t *testing.T) {
	p := elevated(1)
	p.Foundation.Pile = plan.Lumber{Ply: 1, Breadth: 9.25, Depth: 9.25, Text: "10x10"}
	for _, g := range p.Girders {
		g.Seat, g.Notch, g.NotchHeight = plan.SeatNotch, 3, 8
	}
	h := frame(t, p)
	list := joints(h, "G1", plan.GirderPile)
	require.NotEmpty(t, list)
	for _, j := range list {
		girder, pile := j.First(), j.Members[len(j.Members)-1]
		g, _ := girder.Bounds()
		lo, hi := pile.Bounds()
		assert.Equal(t, Notched, j.Seat)
		assert.InDelta(t, g.Y+1.5, lo.Y, 1e-9)
		assert.InDelta(t, g.Y+1.5+9.25, hi.Y, 1e-9)
		assert.InDelta(t, girder.Z0+8, pile.Z1, 1e-9)
		behind, _ := pile.Solid[1].Bounds()
		assert.InDelta(t, g.Y+4.5, behind.Y, 1e-9)
		assert.InDelta(t, 6.25, hi.Y-behind.Y, 1e-9)
	}
	assert.Empty(t, h.Overlaps(0.01))
}

// A girder of 4-2x10 astride of piles 9.25 in thick: two plies on each of two faces, 3 in outside
// of them, or on seats of 1.5 in half of them; the pile between, up to their tops. A joist
// across is tied to one of the halves, a break of the girder is one of each.
func TestAGirderAstrideOfItsPiles(t *testing.T) {
	for _, cut := range []float64{0, 1.5} {
		p := elevated(1)
		p.Foundation.Pile = plan.Lumber{Ply: 1, Breadth: 9.25, Depth: 9.25, Text: "10x10"}
		for _, g := range p.Girders {
			g.Seat, g.Notch, g.Member = plan.SeatAstride, cut, plan.Lumber{Ply: 4, Breadth: 1.5, Depth: 9.25, Text: "4-2x10"}
		}
		h := frame(t, p)
		assert.Empty(t, h.Overlaps(0.01))
		list := joints(h, "G1", plan.GirderPile)
		require.NotEmpty(t, list)
		for _, j := range list {
			require.GreaterOrEqual(t, len(j.Members), 3)
			pile, girder := j.Members[len(j.Members)-1], j.Members[:len(j.Members)-1]
			assert.Equal(t, Astride, j.Seat)
			lo, hi := pile.Bounds()
			out, in := 1e9, -1e9
			for _, m := range girder {
				assert.Equal(t, "2-2x10", m.Section.Text)
				assert.InDelta(t, 3, m.Section.Width(), 1e-9)
				a, z := m.Bounds()
				out, in = min(out, a.Y), max(in, z.Y)
			}
			assert.InDelta(t, lo.Y-3+cut, out, 1e-9)
			assert.InDelta(t, hi.Y+3-cut, in, 1e-9)
			assert.InDelta(t, girder[0].Z1, pile.Z1, 1e-9)
		}
		over := map[*Member]bool{}
		for _, j := range joints(h, "G1", plan.JoistGirder) {
			require.Len(t, j.Members, 2)
			over[j.Members[1]] = true
		}
		assert.NotEmpty(t, over)
	}
}

// An outlooker's joints in a gable of 12 in by hand: end rafter's middle 3/4 in
// inside of the wall's face, the roof's edge 12 in outside of it, the rafter behind
// at 16 in; 24 in of slope each but at the ends.
func TestOutlookersAreTiedAtBothRaftersAndTheFly(t *testing.T) {
	h := exampleHouse(t, "marsh-wren.toml")
	for _, host := range []string{"main/rakeSW", "main/rakeSE", "main/rakeNW", "main/rakeNE"} {
		for kind, roles := range map[plan.JointKind][2]plan.Role{
			plan.OutlookerGable: {plan.Outlooker, plan.Rafter}, plan.OutlookerRafter: {plan.Outlooker, plan.Rafter}, plan.FlyOutlooker: {plan.FlyRafter, plan.Outlooker},
		} {
			list := joints(h, host, kind)
			require.Len(t, list, 7, "%s at %s", kind, host)
			sum := 0.0
			for i, j := range list {
				assert.Equal(t, roles[0], j.First().Role)
				assert.Equal(t, roles[1], j.Members[1].Role)
				assert.InDelta(t, 12.75, j.Overhang.Out, 1e-6)
				assert.InDelta(t, 16-0.75, j.Overhang.Back, 1e-6)
				if i > 0 && i < len(list)-1 {
					assert.InDelta(t, 24, j.Overhang.Space, 1e-6)
				}
				sum += j.Overhang.Space
			}
			// All of the slope is shared out: 18 in of eave and half of 28 ft.
			assert.InDelta(t, 18+168, sum, 1, "up to the ridge")
		}
	}
}

// On a roof as steep as 45 degrees and steeper an outlooker's broad face is still
// its top.
func TestFlatTopIsSquareToTheThickness(t *testing.T) {
	for _, rise := range []float64{0, 7, 12, 20} {
		slope := geom.Vec3{Y: 12, Z: rise}.Unit()
		n := geom.Vec3{Y: -rise, Z: 12}.Unit()
		m := &Member{Section: lookout, Solid: []geom.Solid{geom.Box(geom.Vec3{}, geom.Vec3{X: 30}, slope.Mul(3.5), n.Mul(-1.5))}}
		assert.InDelta(t, 1, m.FlatTop().Dot(n), 1e-9, rise)
	}
}
