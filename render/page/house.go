package page

import (
	"math"
	"strings"

	"galewright/plan"
	"galewright/plan/geom"
)

// WallBounds returns the extent of all walls on plan.
func (c *Context) WallBounds() (lo, hi geom.Vec2, ok bool) {
	lo, hi = geom.Vec2{X: math.Inf(1), Y: math.Inf(1)}, geom.Vec2{X: math.Inf(-1), Y: math.Inf(-1)}
	for _, w := range c.House.Plan.Walls {
		for _, p := range []geom.Vec2{w.From, w.To} {
			lo = geom.Vec2{X: math.Min(lo.X, p.X), Y: math.Min(lo.Y, p.Y)}
			hi = geom.Vec2{X: math.Max(hi.X, p.X), Y: math.Max(hi.Y, p.Y)}
		}
	}
	return lo, hi, len(c.House.Plan.Walls) > 0
}

// WallsOn returns the walls that stand on a level or pass it.
func (c *Context) WallsOn(l *plan.Level) (out []*plan.Wall) {
	for _, w := range c.House.Plan.Walls {
		if w.On(l) {
			out = append(out, w)
		}
	}
	return out
}

// GaugeText prints a gauge as the plan wrote it, with its unit.
func GaugeText(g string) string {
	if strings.Trim(g, "0123456789") == "" {
		return g + " ga"
	}
	return g
}
