package loadpath_test

import (
	"math"
	"os"
	"slices"
	"testing"

	"galewright/plan"
	"galewright/plan/geom"
	"galewright/plan/loadpath"
	"galewright/plan/pipeline"
	"galewright/plan/plantest"
	"galewright/plan/read"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"
)

// elsewhere is a way to put a whole plan elsewhere on the ground.
type elsewhere struct {
	at, way func(geom.Vec2) geom.Vec2 // a point, a direction
}

// farOff is how far a moved house goes, in: no number that any grid likes.
var farOff = geom.Vec2{X: 1234.5, Y: -777.25}

func (c elsewhere) rectangle(lo, hi geom.Vec2) (geom.Vec2, geom.Vec2) {
	a, b := c.at(lo), c.at(hi)
	return geom.Vec2{X: min(a.X, b.X), Y: min(a.Y, b.Y)}, geom.Vec2{X: max(a.X, b.X), Y: max(a.Y, b.Y)}
}

func (c elsewhere) axis(a plan.Axis) plan.Axis {
	d := geom.Vec2{X: 1}
	if a == plan.AxisY {
		d = geom.Vec2{Y: 1}
	}
	return plan.Axes[c.way(d).MainAxis()]
}

// put puts a plan there.
func (c elsewhere) put(p *plan.Plan) {
	for _, l := range p.Levels {
		l.JoistRun = c.axis(l.JoistRun)
	}
	for _, w := range p.Walls {
		w.From, w.To = c.at(w.From), c.at(w.To)
	}
	for _, g := range p.Girders {
		g.From, g.To = c.at(g.From), c.at(g.To)
	}
	for _, x := range p.Porches {
		x.From, x.To = c.at(x.From), c.at(x.To)
	}
	for _, x := range p.Beams {
		x.From, x.To = c.at(x.From), c.at(x.To)
	}
	for _, x := range p.FloorJoists {
		x.From, x.To = c.at(x.From), c.at(x.To)
	}
	for _, x := range p.FloorBlocks {
		x.From, x.To = c.at(x.From), c.at(x.To)
	}
	for _, x := range p.FloorOpenings {
		x.Lo, x.Hi = c.rectangle(x.Lo, x.Hi)
	}
	for _, r := range p.Roofs {
		c.roof(r)
	}
}

func (c elsewhere) roof(r *plan.Roof) {
	r.Area[0], r.Area[1] = c.rectangle(r.Area[0], r.Area[1])
	along, across := geom.Vec2{X: 1}, geom.Vec2{Y: 1}
	if r.Ridge == plan.AxisY {
		along, across = across, along
	}
	r.Ridge = c.axis(r.Ridge)
	if d := c.way(along); d.X+d.Y < 0 {
		r.GableEnd[0], r.GableEnd[1] = r.GableEnd[1], r.GableEnd[0]
	}
	if d := c.way(across); d.X+d.Y < 0 && r.PitchOther > 0 {
		r.Pitch, r.PitchOther = r.PitchOther, r.Pitch
	}
}

// numbersOf lists all that a report asks and holds, by kind, each kind in the order of its
// numbers: where the house stands and which way it looks is not in them.
func numbersOf(r *loadpath.Report) map[string][][]float64 {
	out := map[string][][]float64{}
	add := func(kind string, v ...float64) { out[kind] = append(out[kind], v) }
	for _, l := range r.Links {
		held, known := 0.0, l.Capacity != nil && l.Capacity.Unknown == ""
		if known {
			held = l.Capacity.Value
		}
		gap := 0.0
		if l.Gap != "" {
			gap = 1
		}
		add("check "+l.Check.ID, l.Demand, l.Strength, held, gap)
	}
	for _, s := range r.Stories {
		add("story", s.Wall, s.Roof, s.Above, s.Total, s.ASD, s.Depth, s.Width)
	}
	for _, b := range r.Base {
		add("base", b.Story, b.Walls, b.Edge, b.Girders, b.Total)
	}
	for _, x := range r.Lines {
		add("line", x.Force, x.Deck, x.Brought, x.Floor, x.Under, x.Drift())
		for _, s := range x.Segments {
			add("segment", s.Length, s.Working, s.Share, s.V, s.Demand, s.Lifts, s.Lever)
		}
		most := 0.0
		for _, d := range x.Drag {
			most = math.Max(most, math.Abs(d.Force))
		}
		add("collector", most)
	}
	for _, b := range r.Bays {
		add("bay", b.Hi-b.Lo, b.Unit(), b.Chord(), b.Depth)
	}
	for _, u := range r.Uplift {
		add("uplift", float64(u.Joints), u.Largest.W, u.Largest.D, u.Width, u.PerFoot)
	}
	for _, x := range r.Ridges {
		add("ridge", float64(x.Joints), x.Tension, x.Thrust)
	}
	for _, g := range r.GableEnds() {
		add("gable end", g.Tall, g.Push, g.Rake, g.Up)
	}
	for _, b := range r.Bounds() {
		add("bound", b.Value, b.Most)
	}
	add("torsion", float64(len(r.Torsion)))
	for _, c := range r.Chains {
		for _, g := range c.Links {
			add("chain", float64(g.Joints), float64(g.Gaps), g.Worst.Demand)
		}
	}
	for _, list := range out {
		slices.SortFunc(list, func(a, b []float64) int {
			for i := range a {
				if d := a[i] - b[i]; math.Abs(d) > 1e-3 {
					return int(math.Copysign(1, d))
				}
			}
			return 0
		})
	}
	return out
}

// A house asks the same wherever it stands, and whichever way it looks: the wind comes from
// all sides alike. Which of two joints is which changes names, not numbers.
func TestAHouseAsksTheSameElsewhereAndTurned(t *testing.T) {
	moved := elsewhere{func(v geom.Vec2) geom.Vec2 { return v.Add(farOff) }, func(v geom.Vec2) geom.Vec2 { return v }}
	turned := elsewhere{func(v geom.Vec2) geom.Vec2 { return v.Left().Add(farOff) }, geom.Vec2.Left}
	for _, name := range []string{"marsh-wren.toml", "sanderling.toml", "curlew-row.toml"} {
		t.Run(name, func(t *testing.T) {
			src := loadpath.Source(t, name)
			here, _ := loadpath.WorkOut(name, string(src)).Loads()
			want := numbersOf(here)
			for how, c := range map[string]elsewhere{"moved": moved, "turned": turned} {
				if how == "turned" && name == "sanderling.toml" {
					continue // its wing's rafters are laid out from the other end then, and lap its straps otherwise
				}
				p, ds := read.Plan("plan.toml", src, func(n string) ([]byte, error) { return os.ReadFile("../../examples/" + n) })
				require.False(t, ds.Errors())
				c.put(p)
				placed, ds := pipeline.From(p)
				require.False(t, ds.Errors(), "%v", ds)
				r, _ := loadpath.Run(placed.Placement)
				got := numbersOf(r)
				for kind, list := range want {
					if !assert.Len(t, got[kind], len(list), "%s: %s", how, kind) {
						continue
					}
					for i, v := range list {
						if !plantest.Near(t, v, got[kind][i], 0.01+2e-4*slices.Max(v), how+": "+kind) {
							break
						}
					}
				}
			}
		})
	}
}
