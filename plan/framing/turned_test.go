package framing

import (
	"fmt"
	"slices"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"galewright/plan"
	"galewright/plan/geom"
)

// quarters turns a point by quarter turns to the left about the origin.
func quarters(p geom.Vec2, k int) geom.Vec2 {
	for range k {
		p = geom.Vec2{X: -p.Y, Y: p.X}
	}
	return p
}

// turnedHouse is a plan turned by quarter turns to the left: every wall, porch and roof of it, with
// what a plan says by the compass.
func turnedHouse(p *plan.Plan, k int) *plan.Plan {
	for _, w := range p.Walls {
		w.From, w.To = quarters(w.From, k), quarters(w.To, k)
	}
	for _, x := range p.Porches {
		x.From, x.To = quarters(x.From, k), quarters(x.To, k)
	}
	other := map[plan.Axis]plan.Axis{plan.AxisX: plan.AxisY, plan.AxisY: plan.AxisX}
	left := map[plan.Side]plan.Side{plan.South: plan.East, plan.East: plan.North, plan.North: plan.West, plan.West: plan.South}
	for range k {
		for _, l := range p.Levels {
			l.JoistRun = other[l.JoistRun]
		}
		for _, r := range p.Roofs {
			a, z := quarters(r.Area[0], 1), quarters(r.Area[1], 1)
			r.Area = [2]geom.Vec2{{X: z.X, Y: a.Y}, {X: a.X, Y: z.Y}}
			if r.Ridge == plan.AxisY { // its south end looks east then, the high one
				r.GableEnd[0], r.GableEnd[1] = r.GableEnd[1], r.GableEnd[0]
			}
			r.Ridge, r.High = other[r.Ridge], left[r.High]
		}
	}
	return p
}

// turnedBack lists what stands and what meets in a house that was turned, as it would be without:
// members by role, section, length, heights, wood and middle, joints by kind, place, length served,
// share and the roles that meet.
func turnedBack(h *House, k int) (out []string) {
	at := func(p geom.Vec3) string { return three(quarters(p.Flat(), 4-k).Up(p.Z)) }
	for _, m := range h.Members {
		wood := 0.0
		for _, s := range m.Solid {
			wood += s.Volume()
		}
		lo, hi := m.Bounds()
		if m.Role.IsTruss() {
			wood = 0
		}
		out = append(out, fmt.Sprintf("%s %s %g long, %g to %g, %g at %s", m.Role, m.Section.Text, mil(m.Length), mil(m.Z0), mil(m.Z1), mil(wood), at(lo.Add(hi).Mul(0.5))))
	}
	for _, j := range h.Joints {
		s := fmt.Sprintf("%s of %s at %s, %g", j.Kind, j.Host[:min(4, len(j.Host))], at(j.At), mil(j.Tributary))
		for _, m := range j.Members {
			s += " " + string(m.Role)
		}
		if j.Share != nil {
			s += fmt.Sprintf(" %g", mil(j.Share.Width))
		}
		out = append(out, s)
	}
	slices.Sort(out)
	return out
}

// What the compass calls a side is framed as every other. Sizes are whole spacings, so that layouts
// begin alike at either end; floors, splices to stock and the studs of gable trusses begin at one, and
// are left out. Turned houses whose wings are no whole spacings, or whose ridges meet at one height, where the
// one first written runs through, are left out too.
func TestATurnedHouseIsFramedAlike(t *testing.T) {
	n := 0
	for _, c := range roofHouses {
		switch c.name {
		case "gable with gable trusses, unequal pitches", "pyramid", "L with gables and a carried valley", "T with equal ridges", "cross of two gables",
			"U with two lower wings and gable trusses", "hip main, gable wing to the north, steeper", "low wing against a wall of two stories",
			"L of two bodies that overlap, one gable and one hip", "L flush with a gable", "T of trusses with a valley set":
			continue
		}
		n++
		t.Run(c.name, func(t *testing.T) {
			plain := func() *plan.Plan {
				p := c.plan()
				p.Lumber = plan.LumberYard{Plate: 1000, Stud: 1000, Stock: []float64{1000}}
				for _, l := range p.Levels {
					l.JoistSpace = 0
				}
				for _, r := range p.Roofs {
					r.CeilingTies = false // the middle one is on either side of its pair
				}
				return p
			}
			h, _ := Frame(plain())
			want := turnedBack(h, 0)
			for k := 1; k < 4; k++ {
				h, faults := Frame(turnedHouse(plain(), k))
				require.False(t, faults.Errors(), "%v", faults)
				assert.Equal(t, want, turnedBack(h, k), "%d quarters to the left", k)
			}
		})
	}
	assert.Greater(t, n, 9)
}

// The ceiling joists of a hip lie across its ridge, whichever way that runs: none from one hip
// end's common to the other's, where it would lie in the way of all others.
func TestCeilingJoistsOfAHipLieAcrossIt(t *testing.T) {
	for k := range 4 {
		p := stories(1)
		ring(p, 0, rect(0, 0, 144, 96)...)
		roofOn(p, "main", plan.HipRoof, plan.AxisX, 9, rect(0, 0, 144, 96))
		h, faults := Frame(turnedHouse(p, k))
		require.False(t, faults.Errors(), "%v", faults)
		// The ridge is from 48 to 96, with pairs at 48, 64, 80 and 96: four joists of 96.
		assert.Len(t, h.Ties, 4, "%d", k)
		for _, tie := range h.Ties {
			require.Len(t, tie.Pieces, 1)
			assert.InDelta(t, 96, tie.Pieces[0].Length, 1e-6, "%d", k)
		}
	}
}

// The south end's truss of a shed 120 wide, overhanging by 18 at its low side, runs from its tail
// to the inner face of the high wall, 138 - 5.5 = 132.5, whichever way it rises. It serves the rake's
// 12 and half of 16.75, 20.375, of a face that is 18 + 120 + 18 up the slope.
func TestAShedsGableTrussRunsUpToItsHighWall(t *testing.T) {
	for k := range 4 {
		p := stories(1)
		ring(p, 0, rect(0, 0, 120, 192)...)[3].Top = plan.RakeTop
		roofOn(p, "main", plan.ShedRoof, plan.AxisY, 3, rect(0, 0, 120, 192)).High = plan.West
		h, _ := Frame(turnedHouse(p, k))
		n := 0
		for _, s := range h.Shares {
			if s.Member.Role == plan.Truss {
				n++
				assert.InDelta(t, 132.5, s.Run, 1e-9, "%d", k)
				assert.InDelta(t, 20.375*156/132.5, s.Width, 1e-6, "%d", k)
				low := quarters(s.Low, 4-k)
				assert.InDelta(t, 138, low.X, 1e-9, "%d", k)
			}
		}
		assert.Equal(t, 2, n)
	}
}

// Where two gables of one height cross, each ridge is dropped by half of its thickness times the
// slope, 0.875 / 2, so that its arrises lie in the roof: 229.125 + 8.1057 - 2.0264 + 72/2 = 271.2043.
func TestRidgesThatCrossAreBothDropped(t *testing.T) {
	for _, c := range roofHouses {
		if c.name != "cross of two gables" {
			continue
		}
		for k := range 4 {
			h, _ := Frame(turnedHouse(c.plan(), k))
			for _, m := range withRole(h, plan.Ridge) {
				assert.InDelta(t, 271.2043-0.4375, m.A.Z, 1e-4, "%s, %d", m.ID, k)
			}
		}
	}
}
