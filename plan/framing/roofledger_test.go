package framing

import (
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"galewright/plan"
	"galewright/plan/geom"
)

// againstHouse is a house 288 by 240 whose walls are 156 high, and a lean-to of
// the same story on its east side, 120 out and 144 long, its end walls cut to the
// rafters. What is the house's east wall there stands inside.
func againstHouse() *plan.Plan {
	p := stories(1)
	pts := []geom.Vec2{{}, {X: 288}, {X: 288, Y: 48}, {X: 408, Y: 48}, {X: 408, Y: 192}, {X: 288, Y: 192}, {X: 288, Y: 240}, {Y: 240}}
	for i, w := range ring(p, 0, pts...) {
		switch i {
		case 2, 4:
			w.Top = plan.RakeTop
		case 3:
		default:
			w.Height = 156
		}
	}
	m := wall(p, "M", 0, pts[2], pts[5])
	m.Height, m.Bearing = 156, true
	r := roofOn(p, "lean", "shed", "y", 3, rect(288, 48, 408, 192))
	r.High, r.CeilingTies = plan.West, false
	return p
}

// The end walls' plates run to the house's wall and carry the rafters over them:
// the ledger is what lies between their studs, 144 - 2 x 5.5 = 133, and the two
// flush rafters are tied to those plates, the others (at 64, 80 ... 176: 8) to the
// ledger. On the eave stand all ten.
func TestTheLedgerOfALeanToStopsAtItsRakeWalls(t *testing.T) {
	h, faults := Frame(againstHouse())
	for _, d := range faults {
		assert.NotEqual(t, plan.Error, d.Severity, "%s", d)
	}
	ledger := byID(t, h, "lean/ledger")
	assert.InDelta(t, 133, ledger.Length, 1e-9)
	n := map[string]int{}
	for _, j := range h.Joints {
		if j.Roof != nil && j.Roof.Name == "lean" && len(j.Members) > 0 && j.First().Role == plan.Rafter {
			n[j.Host+" "+string(j.Kind)]++
		}
	}
	assert.Equal(t, 10, n["1D rafter-plate"])
	assert.Equal(t, 8, n["M rafter-ledger"])
	assert.Equal(t, []int{1, 1}, []int{n["1C rafter-plate"], n["1E rafter-plate"]})
	for _, m := range h.Members {
		if m.Role == plan.Rafter && m.Roof.Name == "lean" {
			want := 289.5 // the ledger's face
			if s := m.A.Y; s < 50 || s > 190 {
				want = 288 // over a rake wall: the wall's own
			}
			lo, _ := m.Bounds()
			assert.InDelta(t, want, lo.X, 1e-6, m.ID)
		}
	}
}

// Without end walls the ledger runs through and carries all.
func TestALedgerRunsThroughWithoutRakeWalls(t *testing.T) {
	p := againstHouse()
	p.Walls[2].Top, p.Walls[4].Top = plan.PlateTop, plan.PlateTop
	h, _ := Frame(p)
	assert.InDelta(t, 144, byID(t, h, "lean/ledger").Length, 1e-9)
	n := 0
	for _, j := range h.Joints {
		if j.Kind == plan.RafterLedger {
			n++
		}
	}
	require.Equal(t, 8, n, "and two gable trusses")
}

// Of what lies behind a ledger from 100 to 107.25 the boards of the role count that share the most of its
// height with it: of a rim from 90 to 101.25 1 1/4 in, of plates from 101.25 on 1 1/2, of one from 106.5 3/4.
func TestTheBoardsThatALedgerIsMostlyOn(t *testing.T) {
	board := func(id string, r plan.Role, z0, z1 float64) *Member { return &Member{ID: id, Role: r, Z0: z0, Z1: z1} }
	rim, plates := board("rim", plan.Rim, 90, 101.25), []*Member{board("p1", plan.BottomPlate, 101.25, 102.75), board("p2", plan.BottomPlate, 101.25, 102.75)}
	high, deep := board("high", plan.UpperPlate, 106.5, 108), board("deep", plan.Rim, 96, 106)
	ledger := board("ledger", plan.Ledger, 100, 107.25)
	for _, c := range []struct{ lying, want []*Member }{
		{nil, nil},
		{[]*Member{rim}, []*Member{rim}},
		{[]*Member{rim, plates[0], plates[1]}, plates},
		{[]*Member{plates[0], rim, plates[1]}, plates},
		{[]*Member{high, rim}, []*Member{rim}},
		{[]*Member{rim, high}, []*Member{rim}},
		{[]*Member{plates[0], deep, high}, []*Member{deep}},
		{[]*Member{rim, plates[0], deep}, []*Member{rim, deep}},
	} {
		assert.Equal(t, c.want, most(ledger, c.lying))
	}
}
