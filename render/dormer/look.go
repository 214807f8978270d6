package dormer

import (
	"cmp"
	"math"
	"slices"

	"galewright/plan"
	"galewright/plan/framing"
	"galewright/plan/geom"
	"galewright/plan/placement"
	"galewright/plan/steel"
	"galewright/render/page"
	"galewright/render/project"
	"galewright/render/scene"
)

// look is one elevation of a dormer: u is the station along its wall, v the height over the
// plates under the eave, in.
type look struct {
	*framing.Dormer
	name     string
	frame    geom.Frame // along the wall as seen, in away from the eye
	back     bool       // stations count from the right, where the front is
	lines    []project.Line
	lo, hi   geom.Vec2
	stations []float64
	levels   []level
	pieces   []*placement.Piece
	eave     float64 // the plates under the eave, above grade
}

// level is a height that an elevation names, in over the plates under the eave.
type level struct {
	z    float64
	name string
}

// clear is how far beside a wall's faces it is cut off from the house, in.
const clear = 1.0 / 16

// looks are the left side, the front and the right side of a dormer, as they stand beside
// each other when its walls are folded out.
func looks(c *page.Context, d *framing.Dormer) []*look {
	eave := d.Own.Over.Top()
	if m := highest(c.House, d, plan.UpperPlate); m != nil {
		eave = m.Z1 - d.PlateHeight
	}
	origin := d.Frame.At(d.From, d.SetBack, 0).Flat()
	front := &look{Dormer: d, name: "front", eave: eave, frame: geom.Frame{Origin: origin, D: d.Frame.D, In: d.Frame.In}}
	left := &look{Dormer: d, name: "left side", eave: eave, back: true, frame: geom.Frame{Origin: origin, D: d.Frame.In.Mul(-1), In: d.Frame.D}}
	right := &look{Dormer: d, name: "right side", eave: eave, frame: geom.Frame{Origin: d.Frame.At(d.To, d.SetBack, 0).Flat(), D: d.Frame.In, In: d.Frame.D.Mul(-1)}}
	list := []*look{left, front, right}
	for _, pc := range c.Placement.Pieces {
		if pc.Joint.Dormer == d && page.HomeOf(pc) == page.OnDormer {
			l := list[sideOf(d, pc)]
			l.pieces = append(l.pieces, pc)
		}
	}
	for _, l := range list {
		l.project(c)
		l.find(c.House)
	}
	front.heights(c.House)
	return list
}

// highest returns the highest member of a dormer's own with a role, or nil.
func highest(h *framing.House, d *framing.Dormer, role plan.Role) (best *framing.Member) {
	for _, m := range h.Members {
		if m.Roof == d.Own && m.Role == role && (best == nil || m.Z1 > best.Z1) {
			best = m
		}
	}
	return best
}

// at is where a piece is shown: the middle of its steel.
func at(pc *placement.Piece) geom.Vec3 {
	if n := len(pc.Path); n > 0 {
		return pc.Path[0].Add(pc.Path[n-1]).Mul(0.5)
	}
	return pc.Joint.At
}

// sideOf tells in which elevation a piece is shown: 0 the left one, 1 the front, 2 the right.
func sideOf(d *framing.Dormer, pc *placement.Piece) int {
	s, t := d.Frame.Local(at(pc).Flat())
	switch {
	case pc.Joint.Host == d.Name, math.Abs(t-d.SetBack) < clear:
		return 1
	case s < (d.From+d.To)/2:
		return 0
	}
	return 2
}

// project draws what the wall is made of, its steel, and what it stands on.
func (l *look) project(c *page.Context) {
	h := &framing.House{Plan: c.House.Plan}
	for _, m := range c.House.Members {
		wall := m.Roof == l.Own && m.Role != plan.ValleyBoard && m.Role != plan.FlyRafter && m.Role != plan.Outlooker
		if wall || slices.Contains(l.Headers, m) || slices.Contains(l.Trimmers[:], m) {
			h.Members = append(h.Members, m)
		}
	}
	var bodies []*steel.Body
	for _, pc := range l.pieces {
		if b := c.Schedule.Steel.Body(pc); b != nil {
			bodies = append(bodies, b)
		}
	}
	s := scene.All(h, bodies...).Clip(l.cuts()...)
	l.lines = project.Project(s, project.Looking(l.frame.In.Up(0), geom.Vec3{Z: 1})).SeenLines()
	l.lo, l.hi = project.Settled(l.lines, geom.Vec2{X: l.frame.Origin.Dot(l.frame.D), Y: l.eave})
}

// beyond is how far past a side wall's ends it is drawn, in.
const beyond = 12.0

// cuts are the planes that cut the wall off from the house: its faces, and past its ends.
func (l *look) cuts() []geom.Plane {
	in, d := l.frame.In.Up(0), l.frame.D.Up(0)
	o := l.frame.Origin.Up(0)
	deep := max(l.Studs.Depth, l.Trimmers[0].Section.Width())
	planes := []geom.Plane{geom.PlaneAt(o.Sub(in.Mul(clear)), in.Mul(-1)), geom.PlaneAt(o.Add(in.Mul(deep+clear)), in)}
	if l.name == "front" {
		return planes
	}
	a, b := -beyond, l.Upper-l.SetBack+2*beyond
	if l.back {
		a, b = -b, -a
	}
	return append(planes, geom.PlaneAt(o.Add(d.Mul(a)), d.Mul(-1)), geom.PlaneAt(o.Add(d.Mul(b)), d))
}

// find gathers the stations of what stands in the wall, and of its ends.
func (l *look) find(h *framing.House) {
	long := l.To - l.From
	if l.name != "front" {
		long = l.Upper - l.SetBack
	}
	list := []float64{0, long}
	deep := l.Studs.Depth
	for _, m := range h.Members {
		if m.Roof != l.Own || m.Role != plan.Stud && m.Role != plan.Post {
			continue
		}
		u, t := l.frame.Local(m.A.Flat())
		if t > -clear && t < max(deep, m.Section.Width())+clear {
			list = append(list, math.Abs(u))
		}
	}
	if l.name == "front" {
		for _, o := range l.Openings {
			list = append(list, o.At, o.At+o.Width)
		}
	}
	slices.Sort(list)
	l.stations = slices.CompactFunc(list, func(a, b float64) bool { return math.Abs(a-b) < clear })
}

// heights names the heights of the front.
func (l *look) heights(h *framing.House) {
	l.levels = []level{{0, "plates under the eave"}, {l.PlateHeight, "top of plates"}}
	if l.SetBack > 0 {
		l.levels = append(l.levels, level{l.Headers[0].Z1 - l.eave, "top of lower header"})
	}
	if m := highest(h, l.Dormer, plan.Ridge); m != nil {
		l.levels = append(l.levels, level{m.B.Z - l.eave, "top of ridge"})
	}
	for _, o := range l.Openings {
		l.levels = append(l.levels, level{o.Sill, "sill of " + o.Name}, level{o.Sill + o.Height, "head of " + o.Name})
	}
	slices.SortStableFunc(l.levels, func(a, b level) int { return cmp.Compare(b.z, a.z) })
}
