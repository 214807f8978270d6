package pipeline_test

import (
	"fmt"
	"math"
	"os"
	"testing"

	"galewright/plan"
	"galewright/plan/geom"
	"galewright/plan/pipeline"
	"galewright/plan/plantest"
	"galewright/plan/read"

	"github.com/stretchr/testify/require"
)

// laid runs an example, put where it lies.
func laid(t *testing.T, name string, lays ...plan.Lay) *pipeline.Result {
	t.Helper()
	src, err := os.ReadFile("../../examples/" + name + ".toml")
	require.NoError(t, err)
	p, ds := read.Plan(name, src, func(n string) ([]byte, error) { return os.ReadFile("../../examples/" + n) })
	require.False(t, ds.Errors(), "%v", ds)
	for _, l := range lays {
		p.LieBy(l, geom.Vec2{X: 37, Y: -11})
	}
	r, ds := pipeline.From(p)
	require.False(t, ds.Errors(), "%v", ds)
	return r
}

// middle is the middle of the box around a plan's walls.
func middle(p *plan.Plan) geom.Vec2 {
	lo, hi := p.Walls[0].From, p.Walls[0].From
	for _, w := range p.Walls {
		for _, q := range []geom.Vec2{w.From, w.To} {
			lo = geom.Vec2{X: min(lo.X, q.X), Y: min(lo.Y, q.Y)}
			hi = geom.Vec2{X: max(hi.X, q.X), Y: max(hi.Y, q.Y)}
		}
	}
	return lo.Add(hi).Mul(0.5)
}

// round rounds to a number of parts of one, not between numbers that houses are made of.
func round(x, parts float64) float64 { return math.Floor(x*parts+0.37)/parts + 0 }

// linksOf lists the links of the load path, each joint where it would be in the house as written.
func linksOf(r *pipeline.Result) (out []string) {
	c := middle(r.House.Plan)
	rep, _ := r.Loads()
	for _, l := range rep.Links {
		at := ""
		if l.Joint != nil {
			q := r.House.Plan.Lay.Back(l.Joint.At.Flat().Sub(c))
			at = fmt.Sprintf("at %.1f %.1f %.1f", round(q.X, 10), round(q.Y, 10), round(l.Joint.At.Z, 10))
		}
		wall := ""
		if l.Wall != nil {
			wall = l.Wall.Name
		}
		has := 0.0
		if l.Capacity != nil {
			has = l.Capacity.Value
		}
		out = append(out, fmt.Sprintf("%s %s %s: %.0f of %.0f %s, gap %v", l.Check.ID, wall, at, round(l.Demand, 1), round(has, 1), l.Unit, l.Gap != ""))
	}
	return out
}

// bought lists what is ordered, hardware and lumber.
func bought(r *pipeline.Result) (out []string) {
	for _, o := range r.Schedule.Orders(0.05) {
		out = append(out, fmt.Sprintf("%+v", o))
	}
	for _, o := range r.Lumber().Orders() {
		out = append(out, fmt.Sprintf("%+v", o))
	}
	return out
}

// The loads on a house, what its links hold and what is bought for it are the same in the mirror, and
// turned, but for the wind of a compass that nobody asks for. Mirrored twice it is the house as written.
func TestALaidHouseHasItsLoadsAndOrderAlike(t *testing.T) {
	for _, name := range []string{"shed", "marsh-wren", "curlew-row", "sanderling", "dunlin", "turnstone"} {
		r := laid(t, name)
		want := linksOf(r)
		for how, lays := range map[string][]plan.Lay{
			"mirrored": {plan.MirrorX}, "turned to the left": {plan.Turned(1)}, "mirrored and turned around": {plan.MirrorY, plan.Turned(1)}, "mirrored twice": {plan.MirrorX, plan.MirrorX},
		} {
			t.Run(name+" "+how, func(t *testing.T) {
				q := laid(t, name, lays...)
				plantest.Alike(t, "links", want, linksOf(q))
				plantest.Alike(t, "orders", bought(r), bought(q))
			})
		}
	}
}
