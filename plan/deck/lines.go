package deck

import (
	"cmp"
	"math"
	"slices"

	"galewright/plan"
	"galewright/plan/framing"
	"galewright/plan/geom"
)

// line is the center line of a member under a face, in the face's axes, low
// end first.
type line struct {
	a, b   geom.Vec2
	role   plan.Role
	gable  bool    // over a gable wall, with an overhang beyond
	hangs  bool    // a fly rafter beyond such a line, which holds the deck for both
	level  bool    // the level top of a truss, along the eave
	depth  float64 // of wood along the nail, in
	member *framing.Member
}

// crosses returns u of the line at height v, ok only where it reaches it.
func (l *line) crosses(v float64) (u float64, ok bool) {
	if v < l.a.Y-touch || v > l.b.Y+touch || l.b.Y-l.a.Y < touch {
		return 0, false
	}
	t := (v - l.a.Y) / (l.b.Y - l.a.Y)
	return l.a.X + t*(l.b.X-l.a.X), true
}

// length returns its length along the slope, in.
func (l *line) length() float64 { return l.b.Sub(l.a).Len() }

// dropped is how far below the deck a member's top may lie and still take its
// nails, in.
const dropped = 0.75

// linesOf finds the members that the deck of a face is nailed to: its rafters
// and truss chords, the hips and valleys at its edges, and what frames the
// overhang at a gable. A gable truss that is dropped for the outlookers over
// it takes no nail.
func linesOf(h *framing.House, x *Face) (out []*line) {
	for _, s := range h.Shares {
		switch {
		case s.Level && s.Face == x.Face:
			out = x.levelTop(out, s.Member)
		case slanted(s.Member.Role):
			if s.Member.Roof.Over == x.Roof.Over {
				out = x.add(out, s.Member, s.At(0), s.At(s.Run))
			}
		case s.Face == x.Face && !s.Gathers():
			out = x.add(out, s.Member, s.At(0), s.At(s.Run))
		}
	}
	for _, m := range h.Members {
		if (m.Role == plan.FlyRafter || m.Role == plan.Outlooker) && m.Roof != nil && x.onTop(m, m.A) {
			out = x.add(out, m, m.A.Flat(), m.B.Flat())
		}
	}
	x.gables(out)
	slices.SortStableFunc(out, func(a, b *line) int { return cmp.Or(cmp.Compare(a.a.X, b.a.X), cmp.Compare(a.a.Y, b.a.Y)) })
	return out
}

// slanted tells whether members of a role run along hips and valleys, under two faces.
func slanted(r plan.Role) bool {
	return r == plan.HipRafter || r == plan.ValleyRafter || r == plan.CornerJack
}

// levelTop appends the level top of a hip or girder truss, which runs along the eave.
func (x *Face) levelTop(out []*line, m *framing.Member) []*line {
	in := x.up.Mul(m.Section.Breadth / 2) // the middle of the ply whose arris lies under the deck
	p, q := x.own(m.Flat[0].Flat().Add(in)), x.own(m.Flat[1].Flat().Add(in))
	if q.X < p.X {
		p, q = q, p
	}
	return append(out, &line{a: p, b: q, role: m.Role, depth: m.Section.Depth, member: m, level: true})
}

// onTop tells whether the top of a member at p lies under the face's deck.
func (x *Face) onTop(m *framing.Member, p geom.Vec3) bool {
	mid := m.A.Add(m.B).Mul(0.5)
	return holds(x.plan, mid.Flat(), 1) && math.Abs(x.height(mid.Flat())-mid.Z) < 4
}

// under returns how far below the deck the top of a truss lies at its tail a,
// in; 0 of other members.
func (x *Face) under(m *framing.Member, a geom.Vec2) float64 {
	end := m.A
	if a.Sub(m.B.Flat()).Len() < a.Sub(m.A.Flat()).Len() {
		end = m.B
	}
	if !m.Role.IsTruss() || end.Flat().Sub(a).Len() > 1 {
		return 0
	}
	return x.height(a) - end.Z
}

// add appends the parts of a member's line that lie under the face.
func (x *Face) add(out []*line, m *framing.Member, a, b geom.Vec2) []*line {
	if x.under(m, a) > dropped {
		return out
	}
	p, q := x.own(a), x.own(b)
	if q.Y < p.Y {
		p, q = q, p
	}
	slack := touch
	if slanted(m.Role) || m.Role == plan.FlyRafter {
		slack = 1.5
	}
	d := q.Sub(p)
	for _, s := range stretches(x.shape, p, q, slack) {
		l := &line{a: p.Add(d.Mul(s[0])), b: p.Add(d.Mul(s[1])), role: m.Role, depth: m.Section.Depth, member: m}
		if m.Role == plan.Outlooker {
			l.depth = min(m.Section.Depth, m.Section.Width())
		}
		if l.length() > 1 {
			out = append(out, l)
		}
	}
	return out
}

// gables marks the lines over gable walls: the outermost of each end, where
// the deck goes on past a rake of the face.
func (x *Face) gables(lines []*line) {
	for i, e := range x.Edges {
		if e.Kind != plan.RakeEdge {
			continue
		}
		a, b := x.shape[i], x.shape[(i+1)%len(x.shape)]
		mid, in := (a.X+b.X)/2, math.Copysign(1, x.middle()-(a.X+b.X)/2)
		var best *line
		for _, l := range lines {
			d := (l.a.X - mid) * in
			if l.role == plan.FlyRafter || l.role == plan.Outlooker || math.Abs(l.b.X-l.a.X) > touch || d < -touch {
				continue
			}
			if overlaps(l, a, b) && (best == nil || d < (best.a.X-mid)*in) {
				best = l
			}
		}
		if best != nil && (best.a.X-mid)*in < PanelWide {
			best.gable = true
		}
		for _, l := range lines {
			if l.role == plan.FlyRafter && best != nil && (l.a.X-mid)*in < PanelWide {
				l.hangs = true
			}
		}
	}
}

// overlaps tells whether a line runs beside some of the edge from a to b.
func overlaps(l *line, a, b geom.Vec2) bool {
	return min(l.b.Y, max(a.Y, b.Y))-max(l.a.Y, min(a.Y, b.Y)) > 1
}

// middle returns u of the middle of the face.
func (x *Face) middle() float64 {
	lo, hi := bounds(x.shape)
	return (lo.X + hi.X) / 2
}

// bears tells whether a line carries the deck across its length: outlookers run
// along the eave, and a fly rafter beyond a gable's line hangs on them.
func (l *line) bears() bool { return l.role != plan.Outlooker && !l.hangs }
