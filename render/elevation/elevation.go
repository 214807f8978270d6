package elevation

import (
	"slices"

	"galewright/plan"
	"galewright/plan/framing"
	"galewright/plan/geom"
	"galewright/plan/placement"
	"galewright/render/page"
	"galewright/render/project"
)

// Pages draws every stack of walls from outside, each to the
// largest scale that its sheet takes.
func Pages(c *page.Context) []*page.Page {
	var parts []*part
	for _, e := range elevations(c) {
		own := e.split()
		for _, p := range own {
			p.siblings, p.best = own, p.scale
		}
		parts = append(parts, own...)
	}
	return pack(c, parts)
}

// elev is one stack of walls as it is seen: everything in coordinates of the
// line, u = station along it, v = height above grade, in.
type elev struct {
	*page.Context
	line           *framing.Line
	stories        []story
	shapes         []shape            // far ones first
	pieces         []*placement.Piece // those at home here, in the order of the placement
	paths          map[*placement.Piece][]geom.Vec2
	metal          map[*placement.Piece][]metal
	splices        []*framing.Joint // the breaks in the top plates
	wood           *project.Picture // its lumber as it stands
	drawn          []project.Line   // of the lumber
	u0, u1, v0, v1 float64
}

// story is one wall of the stack.
type story struct {
	wall  *plan.Wall
	shift float64 // station of the line where the wall starts
	floor float64 // top of subfloor
	top   float64 // top of the upper plate
}

// shape is one convex part of a member as it is seen.
type shape struct {
	m     *framing.Member
	solid geom.Solid // what of it shows
	pts   []geom.Vec2
	depth float64 // of its nearest face behind the line
}

// bounds returns the extent of the shape.
func (s shape) bounds() (u0, u1, v0, v1 float64) {
	u0, u1, v0, v1 = s.pts[0].X, s.pts[0].X, s.pts[0].Y, s.pts[0].Y
	for _, p := range s.pts {
		u0, u1 = min(u0, p.X), max(u1, p.X)
		v0, v1 = min(v0, p.Y), max(v1, p.Y)
	}
	return u0, u1, v0, v1
}

// elevations returns the elevation of every line of the house, and of every
// wall that is in none.
func elevations(c *page.Context) (out []*elev) {
	lines := slices.Clone(c.House.Lines)
	in := map[*plan.Wall]bool{}
	for _, l := range lines {
		for _, w := range l.Walls {
			in[w] = true
		}
	}
	for _, w := range c.House.Plan.Walls {
		if !in[w] {
			lines = append(lines, &framing.Line{Name: w.Name, Walls: []*plan.Wall{w}, Frame: w.Frame(), Shift: []float64{0}})
		}
	}
	x := newIndex(c.House, c.Schedule.Steel)
	splices := map[*plan.Wall][]*framing.Joint{}
	for _, j := range c.House.Joints {
		if j.Kind == plan.PlateSplice {
			splices[j.Wall] = append(splices[j.Wall], j)
		}
	}
	home := map[*plan.Wall][]*placement.Piece{}
	for _, pc := range c.Placement.Pieces {
		if page.HomeOf(pc) == page.OnElevation {
			w := page.HomeWall(pc.Joint)
			home[w] = append(home[w], pc)
		}
	}
	for _, l := range lines {
		e := newElev(c, l, x, home)
		for _, w := range l.Walls {
			e.splices = append(e.splices, splices[w]...)
		}
		out = append(out, e)
	}
	return out
}

func newElev(c *page.Context, l *framing.Line, x *index, home map[*plan.Wall][]*placement.Piece) *elev {
	e := &elev{Context: c, line: l}
	for i, w := range l.Walls {
		e.stories = append(e.stories, story{w, l.Shift[i], w.Level.Floor, x.top(w)})
		e.pieces = append(e.pieces, home[w]...)
		delete(home, w) // a wall is at home in one line only
	}
	e.paths = make(map[*placement.Piece][]geom.Vec2, len(e.pieces))
	for _, pc := range e.pieces {
		e.paths[pc] = e.trace(pc)
	}
	e.shapes = x.seen(e)
	e.wood = e.look()
	e.drawn = e.lines()
	e.metal = make(map[*placement.Piece][]metal, len(e.pieces))
	for _, pc := range e.pieces {
		e.metal[pc] = e.metals(x.steel.Body(pc))
	}
	e.extend()
	return e
}

// extend finds what the drawing reaches to.
func (e *elev) extend() {
	first := true
	add := func(u0, u1, v0, v1 float64) {
		if first {
			e.u0, e.u1, e.v0, e.v1, first = u0, u1, v0, v1, false
		}
		e.u0, e.u1 = min(e.u0, u0), max(e.u1, u1)
		e.v0, e.v1 = min(e.v0, v0), max(e.v1, v1)
	}
	for _, s := range e.stories {
		add(s.shift, s.shift+s.wall.Length(), s.floor, s.top)
	}
	for _, s := range e.shapes {
		add(s.bounds())
	}
	for _, pc := range e.pieces {
		for _, q := range e.path(pc) {
			add(q.X, q.X, q.Y, q.Y)
		}
		for _, m := range e.metal[pc] {
			add(shape{pts: m.pts}.bounds())
		}
	}
}

// path returns a piece's line as it is seen, without doubled points.
func (e *elev) path(pc *placement.Piece) []geom.Vec2 { return e.paths[pc] }

func (e *elev) trace(pc *placement.Piece) (out []geom.Vec2) {
	for _, q := range pc.Path {
		out = append(out, e.flat(q))
	}
	if len(out) == 0 {
		out = append(out, e.flat(pc.Joint.At))
	}
	return slices.CompactFunc(out, func(a, b geom.Vec2) bool { return a.Sub(b).Len() < 1e-3 })
}

// flat returns a point of the house as it is seen.
func (e *elev) flat(p geom.Vec3) geom.Vec2 {
	s, _ := e.line.Frame.Local(p.Flat())
	return geom.Vec2{X: s, Y: p.Z}
}

// name returns the names of the walls i of the stack.
func (e *elev) name(own []int) string {
	s := "Wall " + e.stories[own[0]].wall.Name
	for k, i := range own[1:] {
		sep := ", "
		if k == len(own)-2 {
			sep = " and "
		}
		s += sep + e.stories[i].wall.Name
	}
	if len(own) > 1 {
		s = "Walls" + s[len("Wall"):]
	}
	return s
}

// seenFrom says how one looks at the stack.
func (e *elev) seenFrom() string {
	from := "from outside, "
	if !e.stories[0].wall.Exterior {
		from = ""
	}
	return "seen " + from + "looking " + compass(e.line.Frame.In)
}

// compass names a direction on plan: y is north.
func compass(d geom.Vec2) string {
	const part = 0.383 // sine of 22.5 degrees
	s := ""
	switch {
	case d.Y > part:
		s = "north"
	case d.Y < -part:
		s = "south"
	}
	switch {
	case d.X > part:
		s += "east"
	case d.X < -part:
		s += "west"
	}
	return s
}
