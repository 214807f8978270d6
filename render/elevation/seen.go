package elevation

import (
	"cmp"
	"slices"

	"galewright/plan"
	"galewright/plan/framing"
	"galewright/plan/geom"
)

// index holds the members of the house as elevations look them up.
type index struct {
	ofWall map[*plan.Wall][]*framing.Member
	others []boxed // floors, roofs, foundation
}

type boxed struct {
	m      *framing.Member
	lo, hi geom.Vec3
}

func newIndex(h *framing.House) *index {
	x := &index{ofWall: map[*plan.Wall][]*framing.Member{}}
	for _, m := range h.Members {
		if m.Wall != nil {
			x.ofWall[m.Wall] = append(x.ofWall[m.Wall], m)
			continue
		}
		if h.Splices(m) {
			continue // it lies on its joist, a line's breadth beside it
		}
		lo, hi := m.Bounds()
		x.others = append(x.others, boxed{m, lo, hi})
	}
	return x
}

// top returns the height of the highest plate of a wall.
func (x *index) top(w *plan.Wall) float64 {
	top := w.TopLevel().Top()
	first := true
	for _, m := range x.ofWall[w] {
		if m.Role == plan.UpperPlate || m.Role == plan.TopPlate {
			if first {
				top, first = m.Z1, false
			}
			top = max(top, m.Z1)
		}
	}
	return top
}

// slab says between which depths behind the line members of a role are seen,
// beyond the wall's own, and how much of them beyond its ends.
type slab struct{ before, behind, beyond float64 }

func slabOf(r plan.Role) (slab, bool) {
	switch r {
	case plan.Rim, plan.Joist, plan.Blocking, plan.Ledger, plan.SillPlate:
		return slab{2, 0, 1}, true
	case plan.GirderBeam, plan.Packing, plan.Pile:
		return slab{6, 6, 12}, true
	case plan.Rafter, plan.HipRafter, plan.ValleyRafter, plan.Truss, plan.Outlooker:
		return slab{0.5, 0, 1}, true
	case plan.Ridge, plan.Beam, plan.PlateBeam, plan.FlushBeam:
		return slab{0.5, 0, 1}, true
	}
	return slab{}, false
}

// seen returns what shows in an elevation, far things first.
func (x *index) seen(e *elev) (out []shape) {
	for _, s := range e.stories {
		for _, m := range x.ofWall[s.wall] {
			for _, solid := range m.Solid {
				out = e.addShape(out, m, solid, m.Role == plan.SquashBlock)
			}
		}
	}
	length := 0.0
	for _, s := range e.stories {
		length = max(length, s.shift+s.wall.Length())
	}
	for _, b := range x.others {
		if sl, ok := slabOf(b.m.Role); ok && e.concerns(b.m) {
			out = e.addCut(out, b, sl, length)
		}
	}
	slices.SortStableFunc(out, func(a, b shape) int { return cmp.Compare(b.depth, a.depth) })
	return out
}

// concerns tells whether a member without a wall belongs to one of the
// stack's stories: its floor, the roof over it, the foundation below it.
func (e *elev) concerns(m *framing.Member) bool {
	for i, s := range e.stories {
		switch m.Role {
		case plan.GirderBeam, plan.Pile, plan.SillPlate:
			if i == 0 && s.wall.Level.Index == 0 {
				return true
			}
		case plan.Rim, plan.Joist, plan.Blocking, plan.Ledger, plan.PlateBeam, plan.FlushBeam:
			if m.Level == nil || m.Level == s.wall.Level || s.wall.Balloon() && m.Level == s.wall.ToLevel {
				return true
			}
		default:
			if m.Roof == nil || m.Roof.Over == s.wall.Level || m.Roof.Over == s.wall.ToLevel {
				return true
			}
		}
	}
	return false
}

// addCut adds the part of a member that lies in the slab round the wall.
func (e *elev) addCut(out []shape, b boxed, sl slab, length float64) []shape {
	f := e.line.Frame
	depth := e.stories[0].wall.Depth()
	if !e.reaches(b, -sl.before, depth+sl.behind, -sl.beyond, length+sl.beyond) {
		return out
	}
	in, d := f.In.Up(0), f.D.Up(0)
	planes := [...]geom.Plane{
		geom.PlaneAt(f.At(0, depth+sl.behind, 0), in),
		geom.PlaneAt(f.At(0, -sl.before, 0), in.Mul(-1)),
		geom.PlaneAt(f.At(length+sl.beyond, 0, 0), d),
		geom.PlaneAt(f.At(-sl.beyond, 0, 0), d.Mul(-1)),
	}
	for _, solid := range b.m.Solid {
		for _, p := range planes {
			solid = solid.Clip(p)
		}
		if !solid.Empty() && e.carries(b.m, solid) {
			out = e.addShape(out, b.m, solid, b.m.Role == plan.Joist || b.m.Role == plan.Blocking && b.m.Roof == nil)
		}
	}
	return out
}

// bears is how far above its plates a member may begin that is still taken
// to stand on the wall, in.
const bears = 3

// carries tells whether what is cut of a roof member belongs to the stack: it
// stands on its plates, or closes the roof over its gable. What only passes
// high over the wall does not.
func (e *elev) carries(m *framing.Member, cut geom.Solid) bool {
	if m.Roof == nil {
		return true
	}
	if slices.ContainsFunc(e.House.Dormers, func(d *framing.Dormer) bool { return d.Own == m.Roof }) {
		return false // it has elevations of its own
	}
	last := e.stories[len(e.stories)-1]
	along := geom.Lengthways(m.B.Sub(m.A).Flat().Unit(), e.line.Frame.D)
	if last.wall.Exterior || last.wall.Top == plan.RakeTop {
		return m.Role != plan.Ridge || !along
	}
	lo, _ := cut.Bounds()
	return !along && lo.Z < last.top+bears
}

// reaches tells whether the box of a member meets the slab at all.
func (e *elev) reaches(b boxed, t0, t1, s0, s1 float64) bool {
	f := e.line.Frame
	c := geom.Vec3{X: (b.lo.X + b.hi.X) / 2, Y: (b.lo.Y + b.hi.Y) / 2}
	h := geom.Vec2{X: (b.hi.X - b.lo.X) / 2, Y: (b.hi.Y - b.lo.Y) / 2}
	s, t := f.Local(c.Flat())
	rs := abs(f.D.X)*h.X + abs(f.D.Y)*h.Y
	rt := abs(f.In.X)*h.X + abs(f.In.Y)*h.Y
	return s+rs > s0 && s-rs < s1 && t+rt > t0 && t-rt < t1
}

func abs(x float64) float64 { return max(x, -x) }

// pileShown is how much of a pile shows below what it carries, in.
const pileShown = 9

// addShape adds the outline of a solid as it is seen.
func (e *elev) addShape(out []shape, m *framing.Member, solid geom.Solid, hidden bool) []shape {
	s := shape{m: m, hidden: hidden}
	first := true
	var pts []geom.Vec2
	solid.Points(func(p geom.Vec3) {
		pts = append(pts, e.flat(p))
		_, t := e.line.Frame.Local(p.Flat())
		if first || t < s.depth {
			s.depth, first = t, false
		}
	})
	if m.Role == plan.Pile {
		pts = cutPile(pts)
	}
	s.pts = outline(pts)
	if len(s.pts) < 3 {
		return out
	}
	return append(out, s)
}

// cutPile keeps the head of a pile.
func cutPile(pts []geom.Vec2) []geom.Vec2 {
	top := pts[0].Y
	for _, p := range pts {
		top = max(top, p.Y)
	}
	for i := range pts {
		pts[i].Y = max(pts[i].Y, top-pileShown)
	}
	return pts
}

// outline returns the convex outline of points, counterclockwise (Andrew's
// monotone chain).
func outline(pts []geom.Vec2) []geom.Vec2 {
	pts = slices.Clone(pts)
	for i, p := range pts {
		pts[i] = geom.Vec2{X: tidy(p.X), Y: tidy(p.Y)}
	}
	slices.SortFunc(pts, func(a, b geom.Vec2) int { return cmp.Or(cmp.Compare(a.X, b.X), cmp.Compare(a.Y, b.Y)) })
	pts = slices.Compact(pts)
	if len(pts) < 3 {
		return nil
	}
	half := func(in []geom.Vec2) (h []geom.Vec2) {
		for _, p := range in {
			for len(h) > 1 && h[len(h)-1].Sub(h[len(h)-2]).Cross(p.Sub(h[len(h)-2])) <= 1e-9 {
				h = h[:len(h)-1]
			}
			h = append(h, p)
		}
		return h[:len(h)-1]
	}
	lower := half(pts)
	slices.Reverse(pts)
	return append(lower, half(pts)...)
}

// tidy takes the noise of turned frames off a coordinate.
func tidy(x float64) float64 {
	const k = 1 << 20
	if x < 0 {
		return -tidy(-x)
	}
	return float64(int64(x*k+0.5)) / k
}
