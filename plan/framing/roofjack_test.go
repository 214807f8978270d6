package framing

import (
	"math"
	"testing"

	"github.com/stretchr/testify/require"
	"pgregory.net/rapid"

	"galewright/plan"
)

// untied names each end of a rafter, hip or valley that has no joint and so
// would be held by the sheathing alone. What others lean on at its own top,
// as at a pyramid's peak, is held by them.
func untied(h *House) (out []string) {
	plates, low, high := map[*Member]int{}, map[*Member]bool{}, map[*Member]bool{}
	for _, j := range h.Joints {
		switch j.Kind {
		case plan.RafterPlate, plan.RafterLedger:
			plates[j.First()]++
		case plan.DormerFoot: // the end rafter of a shed dormer on the trimmer
			high[j.First()] = true
		case plan.RafterRidge:
			for _, m := range j.Members {
				a, b := j.At.Sub(m.A).Flat().Len(), j.At.Sub(m.B).Flat().Len()
				high[m] = high[m] || b < 6 && b < a
				low[m] = low[m] || a < 6 && a < b
			}
		}
	}
	for _, m := range withRole(h, plan.Rafter, plan.HipRafter, plan.ValleyRafter) {
		if !low[m] && plates[m] == 0 {
			out = append(out, m.ID+" low")
		}
		if !high[m] && plates[m] < 2 {
			out = append(out, m.ID+" high")
		}
	}
	return out
}

func TestEveryEndOfARafterIsTied(t *testing.T) {
	for _, c := range roofHouses {
		t.Run(c.name, func(t *testing.T) {
			h := roofed(t, c.plan())
			require.Empty(t, untied(h))
			require.Empty(t, doublyTied(h))
		})
	}
}

func TestEveryJackIsTiedToItsHip(t *testing.T) {
	p := stories(1)
	ring(p, 0, rect(0, 0, 288, 192)...)
	roofOn(p, "main", "hip", "x", 8, rect(0, 0, 288, 192))
	h := roofed(t, p)
	// five jacks a side at 16, 32 ... 80 in from the corner, two sides a hip
	for _, host := range []string{"main/hipSW", "main/hipSE", "main/hipNW", "main/hipNE"} {
		list := joints(h, host, plan.RafterRidge)
		require.Len(t, list, 10, host)
		for i, j := range list {
			require.Equal(t, []plan.Role{plan.Rafter, plan.HipRafter}, rolesOf(j))
			// the overhang of 18 in lies before the corner, at 45 degrees
			require.InDelta(t, (18+16*float64(i/2+1))*math.Sqrt2, j.Station, 1.5, j.ID)
			require.InDelta(t, 16, j.Tributary, 1e-6, "a jack serves its spacing")
		}
		require.Less(t, list[0].At.Sub(list[1].At).Len(), 4.0, "two meet across the hip")
		require.NotEqual(t, list[0].At, list[1].At)
	}
}

func TestValleyJacksAreTiedToTheirValley(t *testing.T) {
	for _, c := range roofHouses {
		if c.name != "L with gables and a carried valley" {
			continue
		}
		h := roofed(t, c.plan())
		jacks := 0
		for _, j := range h.Joints {
			if j.Kind == plan.RafterRidge && len(j.Members) == 2 && j.Members[1].Role == plan.ValleyRafter {
				if j.First().Role == plan.Rafter && j.At == j.First().A {
					jacks++
				}
			}
		}
		require.Equal(t, len(withRole(h, plan.Rafter))-plated(h), jacks, "every rafter without a plate stands on a valley")
	}
}

// plated counts the rafters that bear on a plate.
func plated(h *House) int {
	on := map[*Member]bool{}
	for _, j := range h.Joints {
		if (j.Kind == plan.RafterPlate || j.Kind == plan.RafterLedger) && j.First().Role == plan.Rafter {
			on[j.First()] = true
		}
	}
	return len(on)
}

func TestAnyRoofIsTied(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		p := roofPlan(t)
		if p.Roofs[0].Trusses {
			t.Skip("the rafters there lie on rake walls all along")
		}
		h, _ := Frame(p)
		require.Empty(t, doublyTied(h))
		require.Empty(t, untied(h))
	})
}
