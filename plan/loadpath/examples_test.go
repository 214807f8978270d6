package loadpath

import (
	"math"
	"path/filepath"
	"testing"

	"galewright/plan"
	"galewright/plan/framing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"
)

// eachExample works out the load path of every example that has a wind basis.
func eachExample(t *testing.T, f func(t *testing.T, a *analysis)) {
	files, err := filepath.Glob(filepath.Join(examples, "*.toml"))
	require.NoError(t, err)
	ran := 0
	for _, file := range files {
		w := WorkOut(filepath.Base(file), string(Source(t, filepath.Base(file))))
		if w.Faults.Errors() || w.Placed == nil || w.Placed.House.Plan.Site.WindSpeed == 0 {
			continue // a catalog, or a plan without a wind basis
		}
		ran++
		t.Run(filepath.Base(file), func(t *testing.T) { f(t, reportOf(w.Placed).work) })
	}
	require.Greater(t, ran, 2)
}

func TestEveryFootOfRoofIsCarried(t *testing.T) {
	// Hips, valleys and all: the strips of the rafters make up the plan area of
	// the roof's faces. A corner too small for a rafter may be left.
	eachExample(t, func(t *testing.T, a *analysis) {
		roof, strips := 0.0, 0.0
		for _, f := range a.house.Roof {
			roof += f.AreaBetween(0, math.Inf(-1), math.Inf(1))
		}
		for _, s := range a.rafters {
			if !s.Gathers() {
				strips += s.Width * s.Run
			}
		}
		assert.InEpsilon(t, roof, strips, 0.01)
	})
}

func TestExamplesLoseNothing(t *testing.T) {
	eachExample(t, func(t *testing.T, a *analysis) {
		assert.Zero(t, sumOf(a.unheld), "rafters without bearings")
		assert.Zero(t, sumOf(a.ridgeLost), "ridges without supports")
		for _, c := range a.cases() {
			state := a.run(c)
			lifted, reached := Force{}, Force{}
			for _, s := range a.rafters {
				a.roofLoads(s, state.roofs[s.roof], func(p patch) { lifted.take(p.force) })
			}
			for _, p := range a.paths {
				reached.take(state.walls[p.n].roof)
			}
			for _, p := range a.porches {
				reached.take(state.posts[p.n])
			}
			for _, f := range state.poles {
				reached.take(f)
			}
			lifted.take(down(hung(a)))
			reached.take(down(onPosts(a)))
			ledger := ledgerLoad(state)
			assert.InDelta(t, lifted.W, reached.W+ledger.W, 1e-6*math.Abs(lifted.W)+1e-6, "%s: wind", c)
			assert.InDelta(t, lifted.D, reached.D+ledger.D, 1e-6*lifted.D+1e-6, "%s: weight", c)
		}
	})
}

// onPosts is the ceiling's weight that beams bring to posts, which is not followed: what
// comes to the beams and not by them to walls, lb.
func onPosts(a *analysis) (lb float64) {
	for _, c := range a.ceilings {
		for _, x := range c.seats {
			if x.beam == nil {
				continue
			}
			lb += x.weight
			a.handOver(x.beam, []push{{x.station, x.weight}}, func(_ *wallPath, _, to float64) { lb -= to })
		}
	}
	return lb
}

// ledgerLoad is what ends at ledgers: their joints are neither plate, ridge,
// hip nor valley.
func ledgerLoad(state *caseState) (f Force) {
	seen := map[*framing.Joint]bool{}
	for _, s := range state.m.rafters {
		for _, e := range s.ends {
			if e.plate == nil && e.on == nil && e.ridge == nil && e.joint != nil && !seen[e.joint] {
				seen[e.joint] = true
				f.take(state.rafters[e.joint])
			}
		}
	}
	return f
}

func TestExamplesPassStoryByStory(t *testing.T) {
	eachExample(t, func(t *testing.T, a *analysis) {
		for _, c := range a.cases() {
			s := a.run(c)
			roof, feet, lost := 0.0, 0.0, 0.0
			for _, p := range a.paths {
				roof += s.walls[p.n].roof.W
				for _, k := range p.carriers {
					if k.base != nil && k.base.Kind == plan.StudBase {
						feet += s.foot(k).W
					}
				}
			}
			for _, l := range a.plan.Levels {
				lost += s.lost[l].W
			}
			assert.InDelta(t, roof, feet+lost, 1e-6*math.Abs(roof)+1e-6, c.String())
		}
	})
}
