package framing

import (
	"slices"

	"galewright/plan"
)

// hooked returns the plan with the stations of its walls counted from their
// first studs, where a framer's tape hooks: a wall that runs through at an
// inside corner begins behind the other wall, before its own point From. A wall
// without such an end is the plan's own, and so is the plan when there is none.
func hooked(p *plan.Plan) *plan.Plan {
	b := newBuilder(p)
	b.setUp()
	b.corners()
	out := *p
	out.Walls = slices.Clone(p.Walls)
	changed := false
	for i, w := range p.Walls {
		f := b.byWall[w]
		if f == nil {
			continue
		}
		if f.s0 < -onLine/100 {
			out.Walls[i], changed = w.Hooked(w.Hook-f.s0), true
		}
		if past := f.s1 - w.Length(); past > onLine/100 {
			one := *out.Walls[i]
			one.Past = past
			out.Walls[i], changed = &one, true
		}
	}
	if !changed {
		return p
	}
	return &out
}
