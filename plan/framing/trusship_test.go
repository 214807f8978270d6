package framing

import (
	"os"
	"strings"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"galewright/plan"
	"galewright/plan/geom"
	"galewright/plan/read"
)

// trussHouses are the houses with hips or mouths of trusses.
func trussHouses(t *testing.T) map[string]*House {
	t.Helper()
	out := map[string]*House{}
	for _, c := range roofHouses {
		if strings.Contains(c.name, "trusses under") || strings.Contains(c.name, "girder truss") {
			out[c.name] = roofed(t, c.plan())
		}
	}
	p := stories(1)
	ring(p, 0, rect(0, 0, 420, 280)...)
	trussed(roofOn(p, "main", "hip", "x", 6, rect(0, 0, 420, 280))).PitchOther = 8
	out["unequal pitches"] = roofed(t, p)
	for _, name := range []string{"truss-hip", "truss-wing"} {
		src, err := os.ReadFile("testdata/odd/" + name + ".toml")
		require.NoError(t, err)
		p, faults := read.Plan(name, src, os.ReadFile)
		require.False(t, faults.Errors(), "%v", faults)
		out[name] = roofed(t, p)
	}
	return out
}

// Every truss is held at both its ends: a full, hip or girder truss by plates or by a girder
// truss that it hangs on, a jack by a plate and what it hangs on, a corner jack by a plate and
// its girder, and a valley frame by trusses.
func TestEveryTrussIsHeldAtBothEnds(t *testing.T) {
	n := 0
	for name, h := range trussHouses(t) {
		plates, hung, on := map[*Member]int{}, map[*Member]int{}, map[*Member]int{}
		for _, j := range h.Joints {
			switch m := j.First(); {
			case j.Kind.OnPlate():
				plates[m]++
				assert.Equal(t, j.Kind == plan.GirderPlate, m.Role == plan.GirderTruss, "%s %s", name, j.ID)
			case j.Kind == plan.JackGirder:
				hung[m]++
				assert.Equal(t, plan.GirderTruss, j.Members[1].Role, "%s %s", name, j.ID)
			case j.Kind == plan.JackCorner:
				hung[m]++
				assert.Equal(t, plan.CornerJack, j.Members[1].Role, "%s %s", name, j.ID)
			case j.Kind == plan.ValleyTruss:
				on[m]++
			}
		}
		for _, m := range h.Members {
			switch m.Role {
			case plan.Truss, plan.HipTruss, plan.GirderTruss:
				assert.Equal(t, 2, plates[m]+hung[m], "%s %s", name, m.ID)
			case plan.JackTruss, plan.CornerJack:
				assert.Equal(t, [2]int{1, 1}, [2]int{plates[m], hung[m]}, "%s %s", name, m.ID)
			case plan.ValleyFrame:
				assert.Positive(t, on[m], "%s %s", name, m.ID)
			default:
				continue
			}
			n++
		}
		for _, pair := range h.Overlaps(0.01) {
			assert.Fail(t, name, "%s reaches into %s", pair[0].ID, pair[1].ID)
		}
	}
	assert.Greater(t, n, 200)
}

// What the shares of trusses serve adds up to the roof: the plan of all its faces.
func TestSharesOfTrussesAddUpToTheRoof(t *testing.T) {
	for name, h := range trussHouses(t) {
		faces, served := 0.0, 0.0
		for _, f := range h.Roof {
			for i, p := range f.Outline {
				faces += p.Flat().Cross(f.Outline[(i+1)%len(f.Outline)].Flat()) / 2
			}
		}
		for _, s := range h.Shares {
			served += s.Width * s.Run
		}
		assert.InDelta(t, faces, served, 0.002*faces, name)
	}
}

// The girder truss of a hip end 96 in from the end, 408 by 312, 5 in 12, chords of 2x4: its outer
// face is at 95.25, its two plies 3 thick. A truss has no seat, so that the roof over the wall's face is
// at the plates and 3.5 x 13/12 = 3.7917, and over 95.25 it is 39.6875 higher: the level top, from 95.25
// to 312 - 95.25. The hip truss a space farther in is 10 higher, its top 48 shorter.
func TestAGirderTrussByHand(t *testing.T) {
	p := stories(1)
	ring(p, 0, rect(0, 0, 408, 312)...)
	trussed(roofOn(p, "main", "hip", "x", 5, rect(0, 0, 408, 312)))
	h := roofed(t, p)
	plates := p.Levels[0].Top()
	m := byID(t, h, "main/girder truss@96.75")
	lo, hi := m.Bounds()
	assert.InDelta(t, 95.25, lo.X, 1e-9)
	assert.InDelta(t, 98.25, hi.X, 1e-9)
	top := plates + 3.5*13/12 + 95.25*5/12
	assert.InDelta(t, top, hi.Z, 1e-9)
	want := [2]geom.Vec3{{X: 95.25, Y: 95.25, Z: top}, {X: 95.25, Y: 216.75, Z: top}}
	for i, q := range m.Flat {
		assert.InDelta(t, 0, q.Sub(want[i]).Len(), 1e-6)
	}
	assert.InDelta(t, 312, m.Length, 1e-9)
	step := byID(t, h, "main/hip truss@120")
	assert.InDelta(t, top+10, step.Z1, 1e-9)
	assert.InDelta(t, 121.5-48, step.Flat[1].Sub(step.Flat[0]).Len(), 1e-6)

	// A jack of the end wall runs from the wall's face to the girder's; one on the corner jack ends
	// where its two sides meet that one's near face: 0.75 sqrt 2 before the hip and 0.75 to both sides.
	assert.InDelta(t, 95.25, byID(t, h, "main/W/jack truss@156").Length, 1e-9)
	assert.InDelta(t, 60+0.75-0.75*1.414214, byID(t, h, "main/W/jack truss@60").Length, 1e-3)
	assert.Len(t, withRole(h, plan.JackTruss), 2*(5+2*3+2*3)) // at each end five on the girder, on each corner jack three of both walls
}
