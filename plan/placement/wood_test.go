package placement

import (
	"math"
	"path/filepath"
	"slices"
	"sync"
	"testing"

	"galewright/plan"
	"galewright/plan/framing"
	"galewright/plan/geom"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"
)

var placedOnce = sync.OnceValues(func() (map[string]*Placement, error) {
	files, _ := filepath.Glob("testdata/*.toml")
	more, _ := filepath.Glob("../../examples/*.toml")
	out := map[string]*Placement{}
	for _, file := range append(files, more...) {
		if filepath.Base(file) == "hardware.toml" {
			continue
		}
		p, _, err := placeFile(file, "")
		if err != nil {
			return nil, err
		}
		out[file] = p
	}
	return out, nil
})

// placedPlans are the plans of these tests and the examples with their hardware, placed once for all tests.
func placedPlans(t *testing.T) map[string]*Placement {
	t.Helper()
	out, err := placedOnce()
	require.NoError(t, err)
	return out
}

// lumberAt finds members by points in them.
type lumberAt struct{ *geom.Grid[*framing.Member] }

func lumberOf(h *framing.House) lumberAt {
	g := geom.NewGrid[*framing.Member]()
	for _, m := range h.Members {
		if len(m.Solid) > 0 {
			lo, hi := m.Bounds()
			g.Add(m, lo, hi, nil)
		}
	}
	return lumberAt{g}
}

// of tells whether a point is in a member, or in one of its kind that it ends at or stands beside.
func (l lumberAt) of(m *framing.Member, p geom.Vec3) bool {
	kind := func(r plan.Role) plan.Role {
		switch r {
		case plan.TopPlate, plan.UpperPlate:
			return plan.TopPlate
		case plan.Stud, plan.King, plan.Jack, plan.Post:
			return plan.Stud
		}
		return r
	}
	return slices.ContainsFunc(l.Within(p, p), func(o *framing.Member) bool {
		return kind(o.Role) == kind(m.Role) && slices.ContainsFunc(o.Solid, func(s geom.Solid) bool {
			return !slices.ContainsFunc(s.Planes(), func(f geom.Plane) bool { return f.N.Dot(p) > f.C+1e-6 })
		})
	})
}

// under measures how much of a lap of steel, from its free end on, has a member's wood a sixteenth
// under its middle line, in steps of an eighth of an inch.
func (l lumberAt) under(m *framing.Member, strip geom.Band, lap float64) (wood float64) {
	const step = 0.125
	before := 0.0
	for _, p := range strip {
		d := p.B.Sub(p.A).Unit()
		for u := step / 2; u < p.Len() && before+u < lap; u += step {
			if l.of(m, p.A.Add(d.Mul(u)).Sub(p.N.Mul(1.0/16))) {
				wood += step
			}
		}
		before += p.Len()
	}
	return wood
}

// Wherever steel is laid on a member, with a free end there from which its fasteners start, that
// member's wood is under it: as much of the lap as the lie says there is room for. Of the two flanges
// of a hanger the longer counts, of those of a post's base or cap the shorter.
func TestSteelLiesOnTheWoodItIsLaidOn(t *testing.T) {
	n := 0
	for file, p := range placedPlans(t) {
		lumber := lumberOf(p.House)
		for _, q := range p.Pieces {
			for i, x := range q.Laid {
				var wood []float64
				for _, s := range x.starts {
					wood = append(wood, lumber.under(x.Member, q.Strip(s), x.Lap))
				}
				if len(wood) == 0 {
					continue // a rod's
				}
				n++
				is := slices.Min(wood)
				if q.Item.Kind.Name == plan.HangerItem {
					is = slices.Max(wood)
				}
				assert.InDelta(t, min(x.Lap, x.Room), is, 0.3, "%s %s, on %s: %v of a lap of %g", file, q.Tag, x.Member.ID, wood, x.Lap)
				require.False(t, math.IsInf(x.Room, 0), "%s %d", q.Tag, i)
			}
		}
	}
	assert.Greater(t, n, 5000)
}

// Bent steel goes on where it bends, flat on each face with its width across it, and a piece reaches
// from the lowest end of its steel to the highest; what it is drawn by lies in its steel.
func TestSteelIsInOnePiece(t *testing.T) {
	for file, p := range placedPlans(t) {
		for _, q := range p.Pieces {
			lo, hi := math.Inf(1), math.Inf(-1)
			for _, b := range q.Bands {
				for i, s := range b {
					require.InDelta(t, 0, s.N.Dot(s.B.Sub(s.A)), 1e-6, "%s %s", file, q.Tag)
					if i > 0 && q.Item.Kind.Strap { // of a clip folded at a corner each leg has a middle line of its own
						require.InDelta(t, 0, s.A.Sub(b[i-1].B).Len(), 0.1, "%s %s, its stretch %d", file, q.Tag, i)
					}
					a, z := min(s.A.Z, s.B.Z), max(s.A.Z, s.B.Z)
					if z-a < 1.0/32 { // level steel is as high as it is wide, but where it lies flat
						half := math.Hypot(s.N.X, s.N.Y)
						if math.Abs(s.N.Z) > 0.5 {
							half = 0
						}
						a, z = a-half*s.Width/2, z+half*s.Width/2
					}
					lo, hi = min(lo, a), max(hi, z)
				}
			}
			for _, c := range q.Path {
				lo, hi = min(lo, c.Z), max(hi, c.Z)
			}
			require.InDelta(t, lo, q.Z0, 0.1, "%s %s", file, q.Tag)
			require.InDelta(t, hi, q.Z1, 0.1, "%s %s", file, q.Tag)
			if q.Item.Kind.Strap {
				require.Len(t, q.Bands, 1)
				first, last := q.Bands[0][0].A, q.Bands[0][len(q.Bands[0])-1].B
				require.InDelta(t, 0, first.Sub(q.Path[0]).Len(), 1e-6, "%s %s", file, q.Tag)
				require.InDelta(t, 0, last.Sub(q.Path[len(q.Path)-1]).Len(), 1e-6, "%s %s", file, q.Tag)
			}
		}
	}
}
