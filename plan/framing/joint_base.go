package framing

import (
	"cmp"
	"math"
	"slices"

	"galewright/plan"
	"galewright/plan/geom"
)

// footing is what the foot of an upright can be tied to.
type footing struct {
	kind   plan.JointKind // StudStud or StudBase
	member *Member
	passes []*Member // plates and boards between the two
	gap    float64   // from the upright's foot to the lapped face below
	offset float64
	below  bool
}

// baseJoints ties the foot of each upright: to the stud below where a wall
// stands below in the same plane, else to the floor or foundation.
func (b *builder) baseJoints() {
	b.findLower()
	for _, w := range b.walls {
		share := tributary(w)
		for _, m := range w.uprights {
			full := m.Role.FullHeight()
			if !full && m.Role != plan.Jack {
				continue
			}
			f := b.footOf(w, m)
			if f.kind == plan.StudStud && !full {
				continue // the king beside it carries the uplift down
			}
			b.footJoint(w, f.kind, m, f).Tributary = share[m]
		}
	}
}

// footJoint adds the joint of m's foot; At is half way over the gap.
func (b *builder) footJoint(w *framedWall, k plan.JointKind, m *Member, f footing) *Joint {
	j := b.newJoint(w, k, m.Mid(), m.Z0-f.gap/2, append([]*Member{m, f.member}, f.passes...)...)
	j.Gap, j.Offset, j.Below = f.gap, f.offset, f.below
	return j
}

// findLower notes for each wall the walls below it in its plane, whose tops
// carry its floor.
func (b *builder) findLower() {
	for _, l := range b.house.Lines {
		for _, w := range l.Walls {
			for _, o := range l.Walls {
				u, d := b.byWall[w], b.byWall[o]
				if d.TopLevel().Index == u.Level.Index-1 && d.top <= u.floor {
					u.lower = append(u.lower, d)
				}
			}
		}
	}
}

// footOf finds what the foot of m stands over.
func (b *builder) footOf(w *framedWall, m *Member) footing {
	for _, d := range w.lower {
		s, _ := d.frame.Local(w.frame.At(m.Mid(), 0, 0).Flat())
		if s > d.s0-near && s < d.s1+near {
			return b.onWall(w, d, m, s)
		}
	}
	return b.onFloor(w, m)
}

// onWall finds the member of the wall d below that stands under m at d's
// station s: the full-height member that shares its footprint, the header of
// the opening it stands over, or the nearest full-height member within half
// a stud space.
func (b *builder) onWall(w, below *framedWall, m *Member, s float64) footing {
	foot := footing{kind: plan.StudStud, passes: b.between(w, below, m, s)}
	foot.gap = m.Z0 - below.head
	hit := below.nearest(below.uprights, s)
	if hit != nil {
		foot.offset = hit.Mid() - s
	}
	if hit == nil || math.Abs(foot.offset) > plate-geom.Eps {
		for _, o := range below.openings {
			if s > o.h0 && s < o.h1 && o.header != nil {
				foot.member, foot.offset, foot.below, foot.gap = o.header, 0, true, m.Z0-o.top
				return foot
			}
		}
	}
	if hit == nil {
		return foot
	}
	if foot.below = math.Abs(foot.offset) <= below.Spacing/2+plate/2; foot.below {
		foot.member, foot.gap = hit, m.Z0-hit.Z1
	}
	return foot
}

// between lists the plates and rim between m and the wall below.
func (b *builder) between(w, d *framedWall, m *Member, s float64) []*Member {
	return []*Member{w.memberAt(w.bottoms, m.Mid()), w.memberAt(w.rims, m.Mid()), d.capAt(s), d.memberAt(d.plates, s)}
}

// onFloor finds the rim, joist, girder or sill plate under m.
func (b *builder) onFloor(w *framedWall, m *Member) footing {
	f := footing{kind: plan.StudBase, below: true}
	bottom := w.memberAt(w.bottoms, m.Mid())
	if bottom != nil && bottom.Role == plan.SillPlate {
		f.member = bottom
		return f
	}
	under := b.under(w, m)
	if len(under) == 0 {
		f.member, f.gap = bottom, 0
		return f
	}
	f.member, f.passes = under[0], append([]*Member{bottom}, under[1:]...)
	f.gap = m.Z0 - under[0].Z1
	return f
}

// under returns what lies below the subfloor under the footprint of m, the
// highest first.
func (b *builder) under(w *framedWall, m *Member) (out []*Member) {
	l := w.Level
	top := w.floor - l.Subfloor
	box := w.frame.Box(m.S0, m.S1, 0, w.Depth(), top-l.FloorDepth-4*plate, top)
	lo, hi := box.Bounds()
	found := b.index.Within(lo, hi)
	own := func(m *Member) int {
		if m.Wall == w.Wall {
			return 0
		}
		return 1
	}
	slices.SortStableFunc(found, func(a, b *Member) int { return cmp.Compare(own(a), own(b)) })
	pick := func(roles ...plan.Role) {
		for _, o := range found {
			for _, r := range roles {
				if o.Role == r && o != m && geom.Overlap(box, o.Solid[0], 0.1) {
					out = append(out, o)
					return
				}
			}
		}
	}
	pick(plan.Rim)
	if len(out) == 0 {
		pick(plan.Joist, plan.Ledger)
	}
	pick(plan.GirderBeam, plan.Beam)
	pick(plan.SillPlate)
	return out
}
