package section

import (
	"cmp"
	"math"
	"slices"

	"galewright/plan"
	"galewright/plan/framing"
	"galewright/plan/geom"
	"galewright/plan/loadpath"
	"galewright/render/excerpt"
	"galewright/render/page"
	"galewright/render/project"
)

// How far a section reaches, in: past the wall where no ridge is over it, past the ridge
// or the last joint, below the lowest joint, and above the highest.
const (
	inward = 42.0
	past   = 12.0
	below  = 30.0
	above  = 40.0
)

// slice is a section: u runs inward from the outside face of the line's lowest wall, v is
// the height above grade, in.
type slice struct {
	chain   *loadpath.Chain
	at      float64 // station of its middle along the line, in
	half    float64 // from there to either side of what it shows, in
	picture *project.Picture
	view    project.View
	lines   []project.Line
	rows    []row
	lo, hi  geom.Vec2
	from    geom.Vec2 // of the view: where u and v are 0
}

// row is a joint that the section passes through: its link with the least to spare, and
// how many it has.
type row struct {
	link *loadpath.Link
	of   int
	at   geom.Vec2
}

// slicesOf chooses the sections of a chain: through the stretch of wall that holds most
// of its steps, and through its weakest joint where that is elsewhere.
func slicesOf(c *page.Context, h *excerpt.House, ch *loadpath.Chain) (out []*slice) {
	stations := stationsOf(ch)
	if len(stations) == 0 {
		return nil
	}
	best, most := 0.0, -1
	for _, s := range stations {
		if n := steps(linksIn(c, ch, s)); n > most {
			best, most = s, n
		}
	}
	out = append(out, newSlice(c, h, ch, best))
	if weak := ch.Weak; weak >= 0 && !out[0].holds(ch.Links[weak].Worst) && ch.Links[weak].Worst.Joint != nil {
		s, _ := ch.Line.Frame.Local(ch.Links[weak].Worst.Joint.At.Flat())
		out = append(out, newSlice(c, h, ch, s))
	}
	return slices.DeleteFunc(out, func(s *slice) bool { return len(s.rows) == 0 || len(s.lines) == 0 })
}

// stationsOf are the places along the line of the worst joint of each of its steps, lowest
// first: away from the ends of the line, where the wall around the corner fills the picture,
// if there are any.
func stationsOf(ch *loadpath.Chain) (out []float64) {
	for _, g := range ch.Links {
		if g.Worst.Joint != nil && asks(g.Worst) {
			s, _ := ch.Line.Frame.Local(g.Worst.Joint.At.Flat())
			out = append(out, s)
		}
	}
	slices.Sort(out)
	lo, hi := endsOf(ch)
	near := halfOf(ch) + corner
	if away := slices.DeleteFunc(slices.Clone(out), func(s float64) bool { return s < lo+near || s > hi-near }); len(away) > 0 {
		return away
	}
	return out
}

// corner is how far from the end of a line the wall around the corner may stand, in.
const corner = 12.0

// endsOf is from where to where the walls of a line go, in.
func endsOf(ch *loadpath.Chain) (lo, hi float64) {
	lo, hi = math.Inf(1), math.Inf(-1)
	for i, w := range ch.Line.Walls {
		lo, hi = min(lo, ch.Line.Shift[i]), max(hi, ch.Line.Shift[i]+w.Length())
	}
	return lo, hi
}

// asks tells whether a link has something to hold, or is open.
func asks(l *loadpath.Link) bool { return l.Gap != "" || l.Demand > 0 }

// steps counts the kinds of joints among links, those of each wall apart.
func steps(list []*loadpath.Link) int {
	type step struct {
		kind plan.JointKind
		wall *plan.Wall
	}
	seen := map[step]bool{}
	for _, l := range list {
		seen[step{l.Joint.Kind, l.Joint.Wall}] = true
	}
	return len(seen)
}

// halfOf is half of what a section shows of the length of its line: the studs' spacing.
func halfOf(ch *loadpath.Chain) float64 {
	half := 0.0
	for _, w := range ch.Line.Walls {
		half = max(half, w.Spacing/2)
	}
	return half
}

// linksIn are the links with something to hold that a section at a station passes
// through: those of the line's walls, and what stands over and under them.
func linksIn(c *page.Context, ch *loadpath.Chain, station float64) (out []*loadpath.Link) {
	half := halfOf(ch)
	u0, u1 := reach(c, ch, station)
	for _, l := range c.Loads.Links {
		if l.Joint == nil || !asks(l) || l.Joint.Wall != nil && !slices.Contains(ch.Line.Walls, l.Joint.Wall) {
			continue
		}
		s, t := ch.Line.Frame.Local(l.Joint.At.Flat())
		if s > station-half-geom.Eps && s < station+half-geom.Eps && t > u0 && t < u1 {
			out = append(out, l)
		}
	}
	return out
}

// reach is how far a section goes out and in from the line: to the tails of the rafters
// over it and to the ridge that they lean on.
func reach(c *page.Context, ch *loadpath.Chain, station float64) (u0, u1 float64) {
	deep := 0.0
	for _, w := range ch.Line.Walls {
		deep = max(deep, w.Depth())
	}
	u0, u1 = -inward, deep+inward
	half := halfOf(ch)
	ridge := math.Inf(1)
	for _, j := range c.House.Joints {
		s, t := ch.Line.Frame.Local(j.At.Flat())
		if j.Kind == plan.RafterRidge && math.Abs(s-station) <= half && math.Abs(t) < math.Abs(ridge) {
			ridge = t
		}
	}
	if !math.IsInf(ridge, 1) {
		u0, u1 = min(u0, ridge-past), max(u1, ridge+past)
	}
	return u0, u1
}

// heights are the lowest and the highest place that a section shows, in above grade.
func heights(list []*loadpath.Link, ch *loadpath.Chain) (z0, z1 float64) {
	z0, z1 = math.Inf(1), math.Inf(-1)
	for _, w := range ch.Line.Walls {
		z0, z1 = min(z0, w.Level.Floor-w.Level.FloorDepth), max(z1, w.PlateTop())
	}
	for _, l := range list {
		z0, z1 = min(z0, l.Joint.At.Z), max(z1, l.Joint.At.Z)
	}
	return z0 - below, z1 + above
}

// newSlice cuts a line at a station and looks along it.
func newSlice(c *page.Context, h *excerpt.House, ch *loadpath.Chain, station float64) *slice {
	f := ch.Line.Frame
	s := &slice{chain: ch, at: station, half: halfOf(ch)}
	links := linksIn(c, ch, station)
	u0, u1 := reach(c, ch, station)
	z0, z1 := heights(links, ch)
	part := h.Slab(f, geom.Vec3{X: station - s.half, Y: u0, Z: z0}, geom.Vec3{X: station + s.half, Y: u1, Z: z1})
	sight := f.D
	if f.In.Dot(f.D.Left()) > 0 {
		sight = sight.Mul(-1)
	}
	s.view = project.Looking(sight.Up(0), geom.Vec3{Z: 1})
	s.from = s.view.At(f.Origin.Up(0))
	s.picture = project.Project(part, s.view)
	s.lines = s.picture.SeenLines()
	s.lo, s.hi = project.Settled(s.lines, s.from)
	s.rows = s.rowsOf(links)
	return s
}

// rowsOf gathers links by joint, the highest first.
func (s *slice) rowsOf(links []*loadpath.Link) (out []row) {
	for _, l := range links {
		i := slices.IndexFunc(out, func(r row) bool { return r.link.Joint == l.Joint })
		if i < 0 {
			i = len(out)
			out = append(out, row{link: l, at: s.flat(l.Joint.At)})
		}
		out[i].of++
		if worse(l, out[i].link) {
			out[i].link = l
		}
	}
	slices.SortStableFunc(out, func(a, b row) int {
		return cmp.Or(cmp.Compare(math.Round(b.at.Y), math.Round(a.at.Y)), cmp.Compare(math.Round(a.at.X), math.Round(b.at.X)), cmp.Compare(a.link.ID, b.link.ID))
	})
	return out
}

// worse tells whether a link has less to spare than another.
func worse(a, b *loadpath.Link) bool { return a.Ratio > b.Ratio }

// flat is where a place is in the section.
func (s *slice) flat(p geom.Vec3) geom.Vec2 { return s.view.At(p).Sub(s.from) }

// holds tells whether the section passes through a link's joint.
func (s *slice) holds(l *loadpath.Link) bool {
	return slices.ContainsFunc(s.rows, func(r row) bool { return r.link.Joint == l.Joint })
}

// weakest is the link of the section with the least to spare.
func (s *slice) weakest() (weak *loadpath.Link) {
	for _, r := range s.rows {
		if weak == nil || worse(r.link, weak) {
			weak = r.link
		}
	}
	return weak
}

// name says which line is cut, and where, from the start of its lowest wall.
func (s *slice) name(c *page.Context) string {
	return "Section of line " + s.chain.Name + ", " + c.Length(math.Max(0, s.at)) + " from its start"
}

// level is a height that the section names, in above grade.
type level struct {
	z    float64
	name string
}

// levels are the heights beside the section, the highest first.
func (s *slice) levels(c *page.Context) (out []level) {
	add := func(z float64, name string) {
		if z > s.lo.Y-geom.Eps && z < s.hi.Y+geom.Eps && !slices.ContainsFunc(out, func(l level) bool { return math.Abs(l.z-z) < 1.0/16 }) {
			out = append(out, level{z, name})
		}
	}
	for _, w := range s.chain.Line.Walls {
		if w.Top != plan.RakeTop {
			add(w.PlateTop(), "plates of "+w.Name)
		}
		add(w.Level.Floor, "floor of "+w.Level.Name)
	}
	ridge, girder := math.Inf(-1), math.Inf(1)
	for _, m := range s.members() {
		switch m.Role {
		case plan.Ridge:
			ridge = max(ridge, m.Z1)
		case plan.GirderBeam:
			girder = min(girder, m.Z0)
		}
	}
	add(ridge, "top of ridge")
	add(girder, "under girder")
	slices.SortStableFunc(out, func(a, b level) int { return cmp.Compare(b.z, a.z) })
	return out
}

// members are those with a line in the section, in their order.
func (s *slice) members() (out []*framing.Member) {
	seen := map[*framing.Member]bool{}
	for _, l := range s.lines {
		if m := partOf(l).Member; m != nil && !seen[m] {
			seen[m] = true
			out = append(out, m)
		}
	}
	return out
}
