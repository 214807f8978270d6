package loadpath

import (
	"math"
	"strings"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"galewright/plan"
	"galewright/plan/framing"
	"galewright/plan/lift"
)

// handMode is NDS 2018 12.3.1, mode IIIs with a steel side plate: Fem 5,550 (G
// 0.55), Fes 61,850, Rd 2.2 under 0.17 in (transcribed); times 1.6 for wind.
func handMode(d, fyb, ls float64) float64 {
	re := 5550 / 61850.0
	k3 := -1 + math.Sqrt(2*(1+re)/re+2*fyb*(2+re)*d*d/(3*5550*ls*ls))
	return 1.6 * k3 * d * ls * 5550 / ((2 + re) * 2.2)
}

// bites counts the fasteners of a joint's pieces in a member.
func bites(a *analysis, j *framing.Joint, m *framing.Member) (n int) {
	for _, p := range a.placed.At(j) {
		n += len(a.steel.Body(p).Holds(m))
	}
	return n
}

func jointOf(t *testing.T, h *framing.House, id string) *framing.Joint {
	for _, j := range h.Joints {
		if j.ID == id {
			return j
		}
	}
	t.Fatalf("no joint %s", id)
	return nil
}

func roleAt(j *framing.Joint, role plan.Role) *framing.Member {
	for _, m := range j.Members {
		if m.Role == role {
			return m
		}
	}
	return nil
}

// From the ridge strap to the pile at the stud 18 ft 8 in along wall 1S/2S of the
// demo. The rafter at 224 in stands over it and its neighbors over headers, so
// that the stud carries the whole of one rafter:
//
//	ridge       strap over it, 9 of 10d a side; its steel governs, 1-3/8 in of 15
//	            gauge less one hole of 0.17 in: 1.205 x 0.0621 x 45,000 / 2 = 1,685 lb
//	plate       clip, 5 of 8d in the rafter: 5 x 164.7 = 823 lb
//	stud top    clip, 5 of 8d in the stud
//	story       strap, the same steel as at the ridge: 1,685 lb
//	base        strap from the stud over sole plate and rim to girder GS:
//	            foot of the stud at 120 + 1.5 in, top of the girder at
//	            120 - 11.969 in: 13.47 in between; 10 nails take 0.5 + 9 x 0.75 +
//	            0.5 = 7.75 in of the girder; 37.25 - 13.47 - 7.75 = 16.03 in lie on
//	            the stud. 10 nails in each: in the girder, which is wet, 10 x 0.7 x 195
//	            = 1,363 lb; the steel, of 17 gauge, governs: 1.205 x 0.0497 x 45,000 / 2
//	            = 1,347 lb
//	pile        two straps of 13 of 16d at the pile's edges, wet, 2 x 13 x 0.7 x 247 lb, at
//	            the piles on both sides of the stud: at 184 and 268 in by lever
//
// The stud is 18.7 ft from the west end and 25.3 from the east one: past h/2 = 16.3 ft of
// both, within h. What it carries grows by nothing downward but loses weight: 11.5 in of wall
// (half way to the kings at 216-3/4 and 239-3/4 in) in each story and of floor.
func TestDemoChainByHand(t *testing.T) {
	r := demoReport(t)
	a := r.work
	plate, ridge := handRafter(handMid)
	asd := func(f Force) float64 { return 0.6*f.W - 0.6*f.D }
	steel := func(gauge float64) float64 { return (1.375 - 0.17) * handThin * gauge * 45_000 / 2 }
	// Its ceiling joist lies on the stair wall too, 14 ft from the south face and 5-1/2 in
	// deep: half as much of the ceiling comes to the south plate.
	onStud := plate.add(handCeiling(168 + 5.5/2))
	upper := onStud.add(down(handWall * 11.5 * 97.125 / 144))
	lower := upper.add(down(4.905 * 7 * 11.5 / 12)).add(down(handWall * 11.5 * 109.125 / 144))
	for _, c := range []struct {
		id, check        string
		demand, capacity float64
	}{
		{"main-224-RR", "ridge-tie", asd(ridge) * math.Sqrt(144+49) / 12, steel(0.0673)},
		{"2S-224-RP", "rafter-uplift", asd(plate), 5 * handMode(0.131, 100_000, handThin*0.0538)},
		{"2S-224-SS", "story-uplift", asd(upper), steel(0.0673)},
		{"1S-224-SB", "base-uplift", asd(lower), steel(0.0538)},
	} {
		l := demand(t, r, c.id, c.check)
		assert.InDelta(t, c.demand, l.Demand, 1, c.id)
		assert.InDelta(t, c.capacity, l.Capacity.Value, 1, c.id)
		assert.Less(t, l.Ratio, 1.0, c.id)
	}
	assert.InDelta(t, asd(onStud), demand(t, r, "2S-224-ST", "stud-top-uplift").Demand, 1)

	base := jointOf(t, r.Placement.House, "1S-224-SB")
	stud, girder := base.First(), roleAt(base, plan.GirderBeam)
	assert.Equal(t, 10, bites(a, base, stud))
	assert.Equal(t, 10, bites(a, base, girder))
	assert.Zero(t, bites(a, base, roleAt(base, plan.Rim)), "between its ends the strap takes no nails")
	lie := a.placed.At(base)[0]
	assert.InDelta(t, 13.469, lie.Gap, 0.01)
	assert.InDelta(t, 7.75, lie.Laps()[1], 1e-9)
	assert.InDelta(t, 37.25-13.469-7.75, lie.Laps()[0], 0.01)

	graph := lift.New(a.house.Members, a.lift().Ties)
	rafter := jointOf(t, r.Placement.House, "2S-224-RP").First()
	top := jointOf(t, r.Placement.House, "2S-224-ST")
	assert.True(t, graph.Tied(top.First(), stud), "story strap")
	assert.True(t, graph.Tied(stud, girder), "base strap")
	for k, id := range map[float64]string{(268 - 224) / 84.0: "GS-184-GP", (224 - 184) / 84.0: "GS-268-GP"} {
		j := jointOf(t, r.Placement.House, id)
		assert.True(t, graph.Tied(girder, roleAt(j, plan.Pile)), id)
		l := demand(t, r, id, "girder-pile-uplift")
		assert.InDelta(t, 2*13*0.7*handMode(0.162, 90_000, handThin*0.0897), l.Capacity.Value, 2, id)
		assert.Less(t, l.Ratio, 1.0, id)
		for _, x := range a.piles.at(stud.A.Flat()) {
			if x.pile.joint == j {
				assert.InDelta(t, k, x.k, 1e-3, id)
			}
		}
	}
	for _, m := range []*framing.Member{rafter, top.First(), stud, girder} {
		assert.True(t, graph.Held(m), m.ID)
	}
}

// The header over window w1 of wall 2S, both ends: three rafters bring it 72/41.5
// of one's uplift at its left end, 52.5/41.5 at its right one (rafters at 112, 128
// and 144 in; from 110-1/2 to 152 in). A flat clip on the outside, its lower edge
// half an inch over the header's, has 8 of 10d in the header and 8 in the king: 8 x
// 195 = 1,560 lb.
func TestHeaderOfTheDemoByHand(t *testing.T) {
	r := demoReport(t)
	a := r.work
	plate, _ := handRafter(handTop)
	plate = plate.add(handCeiling(0))
	graph := lift.New(a.house.Members, a.lift().Ties)
	for id, share := range map[string]float64{"2S-111-HK": (40 + 24 + 8) / 41.5, "2S-152-HK": (1.5 + 17.5 + 33.5) / 41.5} {
		j := jointOf(t, r.Placement.House, id)
		header, king := j.First(), j.Members[1]
		require.Equal(t, plan.King, king.Role)
		assert.Equal(t, 8, bites(a, j, header), id)
		assert.Equal(t, 8, bites(a, j, king), id)
		clip := a.placed.At(j)[0]
		assert.InDelta(t, header.Z0+0.5, clip.Path[0].Z-clip.Item.Width/2, 1e-9, id)
		force := share * (0.6*plate.W - 0.6*plate.D)
		assert.InDelta(t, force, demand(t, r, strings.Replace(id, "HK", "OH", 1), "header-uplift").Demand, 1, id)
		assert.Less(t, force, 8*handMode(0.148, 90_000, handThin*0.0538), id)
		assert.True(t, graph.Tied(header, king) && graph.Held(header), id)
	}
}

// An outlooker of the demo away from the eaves: 24 in apart, 12-3/4 in from the
// end rafter's middle to the roof's edge, 15-1/4 in back to the rafter behind. Zone
// 3 of ASCE 7-22 Fig. 30.3-2D (second-hand) to 10 ft²: -2.5; the wall's 1.0 on the
// soffit; 0.18 inside. Roof weight as above, 6.990 psf on plan.
func TestOverhangOfTheDemoByHand(t *testing.T) {
	r := demoReport(t)
	out, back := 12.75/12, 15.25/12
	eave, inside := 3.5*handQ, 2.68*handQ
	over := 2 * out * (0.6*eave - 0.6*handRoof)
	within := back * (0.6*inside - 0.6*handRoof) // half of 2 ft times back
	for kind, lb := range map[string]float64{"FO": over / 2, "OG": over*(1+out/(2*back)) + within, "OR": within} {
		for _, host := range []string{"main/rakeSW", "main/rakeSE", "main/rakeNW", "main/rakeNE"} {
			l := demand(t, r, host+"-74-"+kind, "overhang-uplift")
			assert.InDelta(t, lb, l.Demand, 0.5, l.ID)
			assert.Less(t, l.Ratio, 1.0, l.ID)
		}
	}
	// A clip of 5 of 8d a leg: in the rafter square to the force; in the
	// outlooker's edge, which leans with the slope, less.
	j := jointOf(t, r.Placement.House, "main/rakeSW-74-OG")
	assert.Equal(t, 10, bites(r.work, j, j.Members[0]), "two clips")
	assert.Equal(t, 10, bites(r.work, j, j.Members[1]))
}
