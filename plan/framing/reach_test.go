package framing

import (
	"math"
	"path/filepath"
	"slices"
	"sync"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"galewright/plan"
	"galewright/plan/geom"
)

// framedOnce frames every example and every small plan of these tests.
var framedOnce = sync.OnceValue(func() map[string]*House {
	out := map[string]*House{}
	files, _ := filepath.Glob("../../examples/*.toml")
	for _, f := range files {
		if name := filepath.Base(f); name != "hardware.toml" {
			h, err := frameExample(name)
			if err != nil {
				panic(err)
			}
			out[name] = h
		}
	}
	for name, p := range somePlans() {
		out[name], _ = Frame(p())
	}
	return out
})

// away is how far a point lies off a member, in; 0 or less in it.
func away(m *Member, p geom.Vec3) float64 {
	best := math.Inf(1)
	for _, s := range m.Solid {
		far := math.Inf(-1)
		for _, q := range s.Planes() {
			far = max(far, q.N.Dot(p)-q.C)
		}
		best = min(best, far)
	}
	return best
}

// Members reach the joint that they meet in, but for the gap and the offset that it tells of and what
// plates and ridge board lie between; a collector is tied to the plate across a corner, and a rod
// between two piles is met in its middle, a bolt through a pile and boards on both its faces at one of them.
func TestMembersReachTheirJoint(t *testing.T) {
	off := map[plan.JointKind]float64{plan.Collector: 5.8, plan.GableStud: 3, plan.WallCorner: 2.8, plan.RafterPlate: 2.5, plan.RafterRidge: 1.8, plan.StudTop: 1.4, plan.SoleRim: 1.3, plan.OutlookerGable: 0.8, plan.CripplePlate: 0.4, plan.RimGirder: 0.3, plan.BraceRod: 29, plan.BraceEnd: 9.25}
	n := 0
	for name, h := range framedOnce() {
		for _, j := range h.Joints {
			for i, m := range j.Members[:min(2, len(j.Members))] {
				n++
				assert.LessOrEqual(t, away(m, j.At), j.Gap+j.Step+math.Abs(j.Offset)+off[j.Kind]+0.02, "%s %s, its member %d, %s", name, j.ID, i, m.ID)
			}
		}
	}
	assert.Greater(t, n, 40_000)
}

// A joint on a wall is where its station along the wall is, but for rafters past its end, and one on a
// girder or a floor opening where theirs is.
func TestJointsAreAtTheirStations(t *testing.T) {
	for name, h := range framedOnce() {
		for _, j := range h.Joints {
			switch {
			case j.Wall != nil:
				s, _ := j.Wall.Frame().Local(j.At.Flat())
				if j.Kind == plan.RafterPlate || j.Around != nil {
					s = min(max(s, j.Wall.Hook), j.Wall.Length())
				}
				require.InDelta(t, s, j.Station, 1e-6, "%s %s", name, j.ID)
			case j.Kind == plan.JoistGirder, j.Kind == plan.GirderPile, j.Kind == plan.GirderSplice:
				k := slices.IndexFunc(h.Plan.Girders, func(g *plan.Girder) bool { return g.Name == j.Host })
				require.GreaterOrEqual(t, k, 0)
				g := h.Plan.Girders[k]
				s, _ := geom.NewFrame(g.From, g.To).Local(j.At.Flat())
				require.InDelta(t, s, j.Station, 1e-6, "%s %s", name, j.ID)
			}
		}
	}
}

// A member is as high as its wood, which is its section over its length, but for what is cut off a mitered
// plate, beam or ledger and a rafter's ends and seats, a ridge's and a notched pile. A beveled stud is a wedge.
func TestMembersAreOfTheirSection(t *testing.T) {
	least := map[plan.Role]float64{
		plan.BeveledStud: 0.3, plan.Blocking: 0.85, plan.FlyRafter: 0.94, plan.HipRafter: 0.77, plan.ValleyRafter: 0.9, plan.Rafter: 0.5,
		plan.Ridge: 0.78, plan.Pile: 0.78, plan.SillPlate: 0.95, plan.TopPlate: 0.95, plan.UpperPlate: 0.95,
	}
	n := 0
	for name, h := range framedOnce() {
		for _, m := range h.Members {
			n++
			lo, hi := m.Bounds()
			require.InDelta(t, lo.Z, m.Z0, 1e-6, "%s %s", name, m.ID)
			require.InDelta(t, hi.Z, m.Z1, 1e-6, "%s %s", name, m.ID)
			if m.Role.IsTruss() { // many sticks
				continue
			}
			wood := 0.0
			for _, s := range m.Solid {
				wood += s.Volume()
			}
			share := wood / (m.Section.Width() * m.Section.Depth * m.Length)
			if (m.Role == plan.Beam || m.Role == plan.Ledger) && m.Bevel > 0 {
				require.True(t, share > 0.95 && share < 1, "%s %s: %v of its section over its length", name, m.ID, share)
				continue
			}
			if least[m.Role] == 0 {
				require.InDelta(t, 1, share, 0.016, "%s %s", name, m.ID)
				continue
			}
			require.True(t, share > least[m.Role] && share < 1+1e-9, "%s %s: %v of its section over its length", name, m.ID, share)
		}
	}
	assert.Greater(t, n, 15_000)
}

// The lengths of wall that the feet of its studs serve make up the wall; posts at its corners reach
// past its end to the middle of a mitered corner.
func TestFeetServeTheWholeWall(t *testing.T) {
	for name, h := range framedOnce() {
		sum := map[string]float64{}
		for _, j := range h.Joints {
			if j.Kind == plan.StudBase || j.Kind == plan.StudStud {
				sum[j.Host] += j.Tributary
			}
		}
		for _, w := range h.Plan.Walls {
			if s, ok := sum[w.Name]; ok {
				over := s - (w.Length() - w.Hook)
				require.True(t, over > -1e-6 && over < 10, "%s %s: %v of %v", name, w.Name, s, w.Length())
			}
		}
	}
}
