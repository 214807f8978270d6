package elevation

import (
	"cmp"
	"math"
	"slices"

	"galewright/plan"
	"galewright/plan/framing"
	"galewright/plan/geom"
	"galewright/plan/steel"
)

// index holds the members of the house as elevations look them up.
type index struct {
	ofWall map[*plan.Wall][]*framing.Member
	others *geom.Grid[*framing.Member] // floors, roofs, foundation
	steel  *steel.Steel
	// lying are the joists of the floor above that are tied down to a wall's plates: no rim
	// stands before them.
	lying map[*framing.Member][]*plan.Wall
}

func newIndex(h *framing.House, st *steel.Steel) *index {
	x := &index{ofWall: map[*plan.Wall][]*framing.Member{}, others: geom.NewGrid[*framing.Member](), steel: st, lying: map[*framing.Member][]*plan.Wall{}}
	for _, m := range h.Members {
		if m.Wall != nil {
			x.ofWall[m.Wall] = append(x.ofWall[m.Wall], m)
			continue
		}
		if h.Splices(m) {
			continue // it lies on its joist, a line's breadth beside it
		}
		lo, hi := m.Bounds()
		x.others.Add(m, lo, hi, geom.Slant(m.A.Flat(), m.B.Flat(), max(m.Section.Width(), m.Section.Depth)))
	}
	for _, j := range h.Joints {
		if j.Kind == plan.JoistPlate && j.First().Role == plan.Joist {
			x.lying[j.First()] = append(x.lying[j.First()], j.Wall)
		}
	}
	return x
}

// liesOn tells whether a joist is tied down to the plates of the highest wall of the stack.
func (x *index) liesOn(e *elev, m *framing.Member) bool {
	return slices.Contains(x.lying[m], e.stories[len(e.stories)-1].wall)
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
	case plan.Rafter, plan.HipRafter, plan.ValleyRafter, plan.Truss, plan.GirderTruss, plan.HipTruss, plan.JackTruss, plan.CornerJack, plan.ValleyFrame, plan.Outlooker:
		return slab{0.5, 0, 1}, true
	case plan.Ridge, plan.Beam, plan.PlateBeam, plan.FlushBeam:
		return slab{0.5, 0, 1}, true
	}
	return slab{}, false
}

// most is the slab that holds those of all roles.
var most = slab{6, 6, 12}

// seen returns what shows in an elevation, far things first.
func (x *index) seen(e *elev) (out []shape) {
	for _, s := range e.stories {
		for _, m := range x.ofWall[s.wall] {
			for _, solid := range m.Solid {
				out = e.addShape(out, m, solid)
			}
		}
	}
	for _, m := range x.others.Within(boundsOf(e.corners(most))) {
		if sl, ok := slabOf(m.Role); ok && (e.concerns(m) || x.liesOn(e, m)) {
			out = e.addCut(out, m, sl)
		}
	}
	out = x.receivers(e, out)
	slices.SortStableFunc(out, func(a, b shape) int { return cmp.Compare(b.depth, a.depth) })
	return out
}

// long is how far the stack goes along its line, in.
func (e *elev) long() (l float64) {
	for _, s := range e.stories {
		l = max(l, s.shift+s.wall.Length())
	}
	return l
}

// corners are those of a slab around the stack, as high as anything.
func (e *elev) corners(sl slab) (out []geom.Vec3) {
	const high = 1e6
	for _, s := range [...]float64{-sl.beyond, e.long() + sl.beyond} {
		for _, t := range [...]float64{-sl.before, e.stories[0].wall.Depth() + sl.behind} {
			out = append(out, e.line.Frame.At(s, t, -high), e.line.Frame.At(s, t, high))
		}
	}
	return out
}

// boundsOf returns the box around points.
func boundsOf(pts []geom.Vec3) (lo, hi geom.Vec3) {
	lo, hi = pts[0], pts[0]
	for _, p := range pts {
		lo = geom.Vec3{X: min(lo.X, p.X), Y: min(lo.Y, p.Y), Z: min(lo.Z, p.Z)}
		hi = geom.Vec3{X: max(hi.X, p.X), Y: max(hi.Y, p.Y), Z: max(hi.Z, p.Z)}
	}
	return lo, hi
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
func (e *elev) addCut(out []shape, m *framing.Member, sl slab) []shape {
	depth := e.stories[0].wall.Depth()
	for _, solid := range e.between(m, -sl.beyond, e.long()+sl.beyond, -sl.before, depth+sl.behind) {
		if e.carries(m, solid) {
			out = e.addShape(out, m, solid)
		}
	}
	return out
}

// between returns what of a member lies between two stations and two depths, at all heights.
func (e *elev) between(m *framing.Member, s0, s1, t0, t1 float64) (out []geom.Solid) {
	f := e.line.Frame
	in, d := f.In.Up(0), f.D.Up(0)
	planes := [...]geom.Plane{
		geom.PlaneAt(f.At(0, t1, 0), in), geom.PlaneAt(f.At(0, t0, 0), in.Mul(-1)),
		geom.PlaneAt(f.At(s1, 0, 0), d), geom.PlaneAt(f.At(s0, 0, 0), d.Mul(-1)),
	}
	for _, solid := range m.Solid {
		for _, p := range planes {
			solid = solid.Clip(p)
		}
		if !solid.Empty() {
			out = append(out, solid)
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

func abs(x float64) float64 { return max(x, -x) }

// pileShown is how much of a pile shows below what it carries, in.
const pileShown = 9

// brokenAt returns the height at which a pile is broken off.
func brokenAt(pile *framing.Member) float64 {
	low := math.Inf(1)
	for _, s := range pile.Solid {
		_, hi := s.Bounds()
		low = min(low, hi.Z-pileShown)
	}
	return low
}

// addShape adds a solid as it is seen: of a pile its head alone.
func (e *elev) addShape(out []shape, m *framing.Member, solid geom.Solid) []shape {
	if m.Role == plan.Pile {
		solid = solid.Clip(geom.PlaneAt(geom.Vec3{Z: brokenAt(m)}, geom.Vec3{Z: -1}))
	}
	s := shape{m: m, solid: solid, depth: math.Inf(1)}
	var pts []geom.Vec2
	solid.Points(func(p geom.Vec3) {
		pts = append(pts, e.flat(p))
		_, t := e.line.Frame.Local(p.Flat())
		s.depth = min(s.depth, t)
	})
	s.pts = outline(pts)
	if len(s.pts) < 3 {
		return out
	}
	return append(out, s)
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
