package framing

import (
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"galewright/plan"
	"galewright/plan/geom"
	"galewright/plan/plantest"
)

// The upper plate is broken for the one of a wall that meets it only where a
// piece of 24 in at least is left on each side: the distance that IRC R602.3.2,
// from memory, asks for between the joints of the two plates.
func TestUpperPlateIsBrokenAtATeeOffTheCorners(t *testing.T) {
	for _, c := range []struct {
		name   string
		lo     float64 // where the partition, 5.5 wide, begins
		broken bool
	}{
		{"the first piece would be 23 in", 23, false},
		{"the first piece is 25 in", 25, true},
		{"in the middle", 120, true},
		{"the last piece is 25 in", 240 - 25 - 5.5, true},
		{"the last piece would be 23 in", 240 - 23 - 5.5, false},
	} {
		t.Run(c.name, func(t *testing.T) {
			p, _ := straight(240)
			p.Lumber.Plate = 288 // one length, so that only the partition breaks it
			wall(p, "1P", 0, geom.Vec2{X: c.lo + 5.5, Y: 5.5}, geom.Vec2{X: c.lo + 5.5, Y: 100})
			h := frame(t, p)
			caps, own := of(h, "1A", plan.UpperPlate), of(h, "1P", plan.UpperPlate)
			require.Len(t, own, 1)
			assert.Len(t, of(h, "1A", plan.TopPlate), 1, "the lower plate runs on")
			if !c.broken {
				require.Len(t, caps, 1)
				assert.InDelta(t, 0, own[0].S0, 1e-9, "it stops at the wall's face")
				return
			}
			require.Len(t, caps, 2)
			plantest.Near(t, []float64{0, c.lo, c.lo + 5.5, 240}, []float64{caps[0].S0, caps[0].S1, caps[1].S0, caps[1].S1}, 1e-9)
			assert.InDelta(t, -5.5, own[0].S0, 1e-9, "and the partition's own runs over to the far face")
		})
	}
}

// twoTall is one wall of 240 in under one that is longer by over at its end.
func twoTall(over float64, openings ...*plan.Opening) *plan.Plan {
	p := stories(2)
	girders(p, 0, 336, 2.75)
	low := wall(p, "1A", 0, geom.Vec2{}, geom.Vec2{X: 240})
	low.Exterior, low.Bearing, low.Openings = true, true, openings
	up := wall(p, "2A", 1, geom.Vec2{}, geom.Vec2{X: 240 + over})
	up.Exterior, up.Bearing = true, true
	return p
}

func TestStudJustPastTheWallBelowStillStandsOnIt(t *testing.T) {
	// The last stud's middle is 0.75 in from the end of its wall; half an inch
	// past the wall below counts as over it, for that is how near two places on a
	// plan are one.
	for over, kind := range map[float64]plan.JointKind{0: plan.StudStud, 1.2: plan.StudStud, 1.3: plan.StudBase, 6: plan.StudBase} {
		h, _ := Frame(twoTall(over)) // a floor that hangs over may be told; the joint is looked at
		studs := of(h, "2A", plan.Stud)
		require.NotEmpty(t, studs)
		last := studs[len(studs)-1]
		assert.InDelta(t, 240+over-0.75, last.Mid(), 1e-9)
		var got plan.JointKind
		for _, j := range h.Joints {
			if j.First() == last && (j.Kind == plan.StudStud || j.Kind == plan.StudBase) {
				got = j.Kind
			}
		}
		assert.Equal(t, kind, got, "%v in past the end", over)
	}
}

func TestStudFindsWhatItStandsOver(t *testing.T) {
	// Below, an opening of 60 in at 90: jacks 88.5 to 90 and 150 to 151.5, kings
	// 87 to 88.5 and 151.5 to 153 about 87.75 and 152.25. The header lies on the
	// jacks, 88.5 to 151.5, its top at 120 + 30 + 54 + 9.25 = 213.25.
	h, _ := Frame(twoTall(0, window("w", 90, 60)))
	for _, c := range []struct {
		station float64
		role    plan.Role
		offset  float64
		gap     float64
	}{
		// The stud at 80 stands over the one at 80, gap 3 + 10 + 1.5.
		{80, plan.Stud, 0, 14.5},
		{96, plan.Header, 0, 119.125 + 120 + 1.5 - 213.25},
		{112, plan.Header, 0, 119.125 + 120 + 1.5 - 213.25},
		{144, plan.Header, 0, 119.125 + 120 + 1.5 - 213.25},
		{160, plan.Stud, 0, 14.5},
	} {
		j := jointAt(h, "2A", plan.StudStud, c.station)
		require.NotNil(t, j, "%v", c.station)
		require.Greater(t, len(j.Members), 1)
		assert.Equal(t, c.role, j.Members[1].Role, "at %v", c.station)
		assert.InDelta(t, c.offset, j.Offset, 1e-9)
		assert.InDelta(t, c.gap, j.Gap, 1e-9)
		assert.InDelta(t, 240.625-c.gap/2, j.At.Z, 1e-9, "half way over the gap")
		assert.True(t, j.Below)
	}
}

func TestPilesThatAreNotSquare(t *testing.T) {
	// Piles of 8 x 12, 7.5 along the girder and 11.5 across: they are shared by
	// girders whose points are within 5.75 in of each other.
	plans := func(apart float64) *plan.Plan {
		p := stories(1)
		p.Foundation.Pile = plan.Lumber{Ply: 1, Breadth: 7.5, Depth: 11.5, Text: "8x12"}
		p.Girders = []*plan.Girder{
			{Name: "A", From: geom.Vec2{Y: 100}, To: geom.Vec2{X: 200, Y: 100}, Member: headerWide, Piles: []float64{40, 160}},
			// B ends at A's side over the pile at 40.
			{Name: "B", From: geom.Vec2{X: 40, Y: 100 + apart}, To: geom.Vec2{X: 40, Y: 300}, Member: headerWide, Piles: []float64{0, 150}},
		}
		return p
	}
	h, _ := Frame(plans(5))
	assert.Len(t, roles(h, plan.Pile), 3, "one under both")
	h, _ = Frame(plans(6))
	piles := roles(h, plan.Pile)
	require.Len(t, piles, 4)
	lo, hi := piles[0].Solid[0].Bounds()
	plantest.Near(t, []float64{40 - 3.75, 40 + 3.75, 100 - 5.75, 100 + 5.75}, []float64{lo.X, hi.X, lo.Y, hi.Y}, 1e-9)
	lo, hi = piles[3].Solid[0].Bounds() // of B, which runs along y
	plantest.Near(t, []float64{40 - 5.75, 40 + 5.75, 106 + 150 - 3.75, 106 + 150 + 3.75}, []float64{lo.X, hi.X, lo.Y, hi.Y}, 1e-9)
	// The girder's underside: floor 120, 10 of floor, 9.25 of girder.
	for _, m := range piles {
		assert.InDelta(t, 120-10-9.25, m.Z1, 1e-9)
	}
}

func TestShareOfAPile(t *testing.T) {
	// Piles at 6, 66 and 150 of a girder from 0 to 160: half way to each
	// neighbor, 0 to 36, 36 to 108, 108 to 160.
	at := []float64{6, 66, 150}
	for i, want := range []float64{36, 72, 52} {
		assert.InDelta(t, want, shareOf(at, at[i], 0, 160), 1e-9)
	}
}

func TestCutsOverSupports(t *testing.T) {
	// Stock of 100 over supports at 30, 90, 170: from 0 the farthest within 100 is
	// 90, from there 170 (80 on), then 200 is 30 off.
	assert.Equal(t, []float64{90, 170}, cutsOver([]float64{170, 30, 90}, 0, 200, 100))
	assert.Empty(t, cutsOver([]float64{30, 90}, 0, 100, 100), "it is had in one length")
	assert.Equal(t, []float64{90}, cutsOver([]float64{90}, 0, 300, 100), "no support to break over: it stays in one length from there")
	assert.Equal(t, []float64{100}, cutsOver([]float64{100}, 0, 150, 100), "a support just at the stock's end serves")
}

func TestOneGirderEndsAtAnother(t *testing.T) {
	// A, 4.5 wide about y = 100, runs through; B from y = 100 is cut back to its
	// side at 102.25, and another that ends there from below to 97.75.
	p := stories(1)
	p.Girders = []*plan.Girder{
		{Name: "A", From: geom.Vec2{Y: 100}, To: geom.Vec2{X: 200, Y: 100}, Member: headerWide},
		{Name: "B", From: geom.Vec2{X: 80, Y: 100}, To: geom.Vec2{X: 80, Y: 200}, Member: headerWide},
		{Name: "C", From: geom.Vec2{X: 120}, To: geom.Vec2{X: 120, Y: 100}, Member: headerWide},
	}
	h, faults := Frame(p)
	require.Empty(t, faults)
	found := map[string][2]float64{}
	for _, m := range roles(h, plan.GirderBeam) {
		lo, hi := m.Solid[0].Bounds()
		found[m.ID[:1]] = [2]float64{lo.Y, hi.Y}
	}
	assert.Equal(t, map[string][2]float64{"A": {97.75, 102.25}, "B": {102.25, 200}, "C": {0, 97.75}}, found)
	p.Girders[2].To.Y = 200 // through A
	_, faults = Frame(p)
	require.NotEmpty(t, faults)
	assert.Equal(t, "girders-cross", string(faults[0].Code))
	p.Girders = p.Girders[:1]
	p.Girders = append(p.Girders, &plan.Girder{Name: "D", From: geom.Vec2{X: 150, Y: 101}, To: geom.Vec2{X: 300, Y: 101}, Member: headerWide})
	_, faults = Frame(p)
	require.NotEmpty(t, faults)
	assert.Equal(t, "girders-overlap", string(faults[0].Code))
	p.Girders[1].From.X = 200 // end to end
	_, faults = Frame(p)
	assert.Empty(t, faults)
}
