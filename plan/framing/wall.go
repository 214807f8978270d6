package framing

import (
	"cmp"
	"fmt"
	"math"
	"slices"

	"galewright/plan"
	"galewright/plan/geom"
)

// setUp makes a framedWall of each wall of the plan, with its heights.
func (b *builder) setUp() {
	for nth, w := range b.plan.Walls {
		f := &framedWall{Wall: w, nth: nth, frame: w.Frame(), mirrored: b.plan.Lay.Mirrored, s0: w.Hook, s1: w.Length(), floor: w.Level.Floor, top: w.PlateTop()}
		f.base, f.head = f.floor+plate, f.top-2*plate
		if w.Length()-w.Hook < 2*plate {
			b.wallFault(w, "wall-too-short", "has no length to frame", "give it two ends that lie apart")
			continue
		}
		if f.head-f.base < plate {
			b.wallFault(w, "wall-too-low", fmt.Sprintf("is %s high, lower than its plates and a block", b.inches(f.top-f.floor)), "make it higher")
			continue
		}
		if w.Top == plan.RakeTop {
			var roof *plan.Roof
			f.seat, roof = b.rakePlanes(f)
			if roof != nil && !b.checkRake(f, roof) {
				continue
			}
			if len(f.seat) == 0 {
				b.wallFault(w, "rake-without-roof", "has a rake top and no roof over it to follow", "put a roof over it, or end it at the plate")
			}
		}
		b.walls = append(b.walls, f)
		b.byWall[w] = f
	}
}

// frameWalls puts plates and uprights into each wall.
func (b *builder) frameWalls() {
	for _, w := range b.walls {
		if w.s1-w.s0 < 2*plate {
			continue
		}
		l := b.layOut(w)
		b.openingMembers(w, l)
		b.uprights(w, l)
		b.bevels(w)
		b.plates(w)
		b.checkStock(w)
	}
}

// role of the slots in a wall's layout, in order of priority.
type slot struct {
	span
	role    plan.Role
	opening *framedOpening
	post    *plan.WallPost // that the plan adds here
}

// layout is where the uprights of a wall stand: full-height slots and the
// module stations, used ones and dropped ones alike.
type layout struct {
	wall   span
	slots  []slot // that do not overlap
	module []float64
}

func (l *layout) free(s span) bool {
	return !slices.ContainsFunc(l.slots, func(x slot) bool { return x.meets(s) })
}

// put adds a slot unless it overlaps one that is there or stands off the
// wall.
func (l *layout) put(s slot) bool {
	if !l.free(s.span) || s.lo < l.wall.lo-geom.Eps || s.hi > l.wall.hi+geom.Eps {
		return false
	}
	l.slots = append(l.slots, s)
	return true
}

// layOut finds the place of each upright in order of priority: ends, kings
// and jacks, the rest of corner posts, backing, module studs.
func (b *builder) layOut(w *framedWall) *layout {
	l := &layout{wall: span{w.s0, w.s1}, module: moduleOf(w)}
	l.put(slot{span: span{w.s0, w.s0 + plate}, role: endRole(w, -1)})
	if !l.put(slot{span: span{w.s1 - plate, w.s1}, role: endRole(w, 1)}) {
		return l
	}
	b.gapPosts(w, l)
	b.openings(w, l)
	b.posts(w, l)
	b.addedPosts(w, l)
	shearPosts(w, l)
	for _, s := range l.module {
		l.put(slot{span: span{s - plate/2, s + plate/2}, role: plan.Stud})
	}
	slices.SortFunc(l.slots, func(a, b slot) int { return cmp.Compare(a.lo, b.lo) })
	return l
}

// moduleOf returns the stations of the module within the wall: multiples of
// the spacing from Layout, the wall's own two ends left out.
func moduleOf(w *framedWall) (at []float64) {
	if w.Spacing < plate {
		return nil
	}
	for k := math.Ceil((w.s0 - w.Layout) / w.Spacing); ; k++ {
		s := w.Layout + k*w.Spacing
		if s+plate/2 > w.s1+geom.Eps {
			return at
		}
		if s-plate/2 > w.s0-geom.Eps {
			at = append(at, s)
		}
	}
}

// endRole returns the role of a wall's end stud: one of a corner post where
// another wall meets there.
func endRole(w *framedWall, side int) plan.Role {
	for _, m := range w.meets {
		if m.end == side && (m.over || m.line || m.miter || m.other.cornerWith(w)) {
			return plan.Post
		}
	}
	return plan.Stud
}

// cornerWith tells whether w runs through over o at a corner.
func (w *framedWall) cornerWith(o *framedWall) bool {
	return slices.ContainsFunc(w.meets, func(m meeting) bool { return m.other == o && m.over && m.end != 0 })
}

// uprights makes the members of the layout's full-height slots; jacks stop
// below their header.
func (b *builder) uprights(w *framedWall, l *layout) {
	slots := slices.Clone(l.slots)
	if w.mirrored {
		slices.Reverse(slots)
	}
	for _, s := range slots {
		if s.role == "" {
			continue // the opening itself
		}
		p := piece{role: s.role, s0: s.lo, s1: s.hi, z0: w.base, z1: w.head, section: w.Studs}
		if s.opening != nil {
			p.opening = s.opening.Opening
		}
		if s.role == plan.Jack {
			p.z1 = s.opening.head
		}
		m := b.wallMember(w, p)
		if m == nil {
			continue
		}
		w.uprights = append(w.uprights, m)
		if s.post != nil {
			w.added = append(w.added, m)
		}
		if s.opening != nil {
			s.opening.upright(m)
		}
	}
	slices.SortStableFunc(w.uprights, func(a, b *Member) int { return cmp.Compare(a.S0, b.S0) })
}

// piece says where one member of a wall stands.
type piece struct {
	role           plan.Role
	name           string // in the ID, when not the role
	s0, s1, t0, t1 float64
	z0, z1         float64
	section        plan.Lumber
	opening        *plan.Opening
}

// wallMember adds a member between stations, depths (0, 0 = the wall's own)
// and heights; in a rake wall what reaches its head is cut to the slope.
func (b *builder) wallMember(w *framedWall, p piece) *Member {
	if p.t1 == 0 {
		p.t1 = w.Depth()
	}
	z1 := p.z1
	if w.rake() && p.z1 == w.head {
		z1 = w.ceiling()
	}
	solid := w.frame.Box(p.s0, p.s1, p.t0, p.t1, p.z0, z1)
	if w.rake() {
		for _, h := range w.seat {
			solid = solid.Clip(geom.Plane{N: h.N, C: h.C - 2*plate*h.N.Len()})
		}
		if solid.Empty() {
			return nil
		}
	}
	solid, bevel := w.trimmed(solid, p)
	m := &Member{
		Role: p.role, Wall: w.Wall, Level: w.Level, Opening: p.opening, Section: p.section,
		S0: p.s0, S1: p.s1, Solid: []geom.Solid{solid}, Bevel: bevel,
	}
	lo, hi := solid.Bounds()
	m.Z0, m.Z1 = lo.Z, hi.Z
	axis(m, w.frame, p)
	name := p.name
	if name == "" {
		name = string(p.role)
	}
	mark := max(0, m.Mid())
	if lying(p) {
		mark = max(0, m.S0) // an upper plate that laps over the wall behind begins before its own
	}
	m.ID = w.Name + "/" + name + "@" + at(mark)
	return b.member(m)
}

// lying tells whether the piece runs along the wall.
func lying(p piece) bool {
	switch p.role {
	case plan.Stud, plan.King, plan.Jack, plan.Cripple, plan.Post, plan.BeveledStud:
		return false
	}
	return true
}

// axis sets the ends of m's center line and its length.
func axis(m *Member, f geom.Frame, p piece) {
	t := (p.t0 + p.t1) / 2
	if lying(p) {
		z := (m.Z0 + m.Z1) / 2
		m.A, m.B = f.At(p.s0, t, z), f.At(p.s1, t, z)
	} else {
		m.A, m.B = f.At(m.Mid(), t, m.Z0), f.At(m.Mid(), t, m.Z1)
	}
	m.Length = m.B.Sub(m.A).Len()
}

// checkStock faults studs that no stud of the yard is long enough for.
func (b *builder) checkStock(w *framedWall) {
	longest := b.plan.Lumber.Stud
	if longest <= 0 {
		return
	}
	for _, m := range w.uprights {
		if m.Length > longest+geom.Eps {
			b.fault(plan.Diagnostic{
				Code: "stud-too-long", Pos: w.Pos, Where: fmt.Sprintf("wall %s, %s at %s", w.Name, m.Role, b.inches(m.Mid())),
				Summary: fmt.Sprintf("the studs of wall %s are %s long and the longest stock is %s", w.Name, b.inches(m.Length), b.inches(longest)),
				Mend:    "name longer stud stock under [lumber], or stop the wall at a floor",
			})
			return
		}
	}
}
