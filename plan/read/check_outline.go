package read

import (
	"math"
	"slices"

	"galewright/plan"
	"galewright/plan/geom"
)

// slip is how far apart, in, a wall's end and the next wall's start may be to
// look like a slip of the pen; further, a wall is missing.
const slip = 24

// ends finds walls by a point that one of their ends is near.
type ends map[[2]int][]*plan.Wall

func cell(p geom.Vec2) [2]int {
	return [2]int{int(math.Floor(p.X / slip)), int(math.Floor(p.Y / slip))}
}

func (e ends) add(p geom.Vec2, w *plan.Wall) { e[cell(p)] = append(e[cell(p)], w) }

// near returns the walls with an end in the cell of p or beside it, in the
// order written within each cell.
func (e ends) near(p geom.Vec2) (out []*plan.Wall) {
	c := cell(p)
	for x := c[0] - 1; x <= c[0]+1; x++ {
		for y := c[1] - 1; y <= c[1]+1; y++ {
			out = append(out, e[[2]int{x, y}]...)
		}
	}
	return out
}

// checkOutline looks whether the exterior walls of a level go round its
// houses, the right way.
func (r *reader) checkOutline(l *plan.Level) {
	var walls []*plan.Wall
	starts, stops := ends{}, ends{}
	for _, w := range r.plan.Walls {
		if w.Level == nil || r.broken[w] {
			return // the outline is not known
		}
		if w.Exterior && w.On(l) && w.Length() > 0 {
			walls = append(walls, w)
			starts.add(w.From, w)
			stops.add(w.To, w)
		}
	}
	next := map[*plan.Wall]*plan.Wall{}
	for _, w := range walls {
		if x := r.follower(w, starts, stops, l); x != nil {
			next[w] = x
		}
	}
	r.checkTurn(l, loops(walls, next))
}

// loops returns the closed rounds of walls.
func loops(walls []*plan.Wall, next map[*plan.Wall]*plan.Wall) (out [][]*plan.Wall) {
	seen := map[*plan.Wall]bool{}
	for _, w := range walls {
		var round []*plan.Wall
		for x := w; x != nil && !seen[x]; x = next[x] {
			seen[x] = true
			round = append(round, x)
			if next[x] == w {
				out = append(out, round)
			}
		}
	}
	return out
}

// checkTurn refuses a round that goes clockwise, unless it goes about a court
// inside another one.
func (r *reader) checkTurn(l *plan.Level, rounds [][]*plan.Wall) {
	for _, round := range rounds {
		area := 0.0
		for _, w := range round {
			area += w.From.Cross(w.To)
		}
		if area >= 0 || slices.ContainsFunc(rounds, func(o []*plan.Wall) bool { return &o[0] != &round[0] && inside(round[0].From, o) }) {
			continue
		}
		r.fail(round[0].Pos, "clockwise", "level "+l.Name, "swap from and to of each of them, and write them counterclockwise",
			"the exterior walls from %s on go clockwise; seen from outside each must run from left to right", round[0].Name)
	}
}

// inside tells whether p lies within the round, by counting the walls east of
// it.
func inside(p geom.Vec2, round []*plan.Wall) (in bool) {
	for _, w := range round {
		a, b := w.From, w.To
		if (a.Y > p.Y) != (b.Y > p.Y) && p.X < a.X+(p.Y-a.Y)*(b.X-a.X)/(b.Y-a.Y) {
			in = !in
		}
	}
	return in
}

// follower returns the exterior wall that begins where w ends; when there is
// none, it says what is there instead.
func (r *reader) follower(w *plan.Wall, starts, stops ends, l *plan.Level) *plan.Wall {
	var near *plan.Wall
	best := math.Inf(1)
	for _, x := range starts.near(w.To) {
		if d := apart(x.From, w.To); x != w && d < best {
			near, best = x, d
		}
	}
	if best <= tolerance {
		return near
	}
	where := "wall " + w.Name
	for _, x := range stops.near(w.To) {
		if x != w && apart(x.To, w.To) <= tolerance {
			r.fail(w.Pos, "wall-turned", where, "swap from and to of one of them: seen from outside each runs from left to right",
				"it ends where wall %s ends", x.Name)
			return nil
		}
	}
	if best < slip {
		r.fail(w.Pos, "corner-apart", where, "let one begin where the other ends",
			"it ends %s from where wall %s begins", r.units().Length(best), near.Name)
		return nil
	}
	r.warn(w.Pos, "open-outline", where, "add the wall that is missing, or write interior = true", "no exterior wall of level %s begins where it ends", l.Name)
	return nil
}

// apart returns the distance of two points, in.
func apart(a, b geom.Vec2) float64 { return a.Sub(b).Len() }
