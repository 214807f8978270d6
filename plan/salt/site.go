package salt

import (
	"slices"

	"galewright/plan"
	"galewright/plan/framing"
	"galewright/plan/geom"
)

// At is the class of one place and where that is.
type At struct {
	Class plan.SaltClass // "" in concrete, where salt air does not come
	Where string         // "on the outside of walls, behind the siding"
	On    string         // the wall or level: "wall 1S"; "" where that says nothing
}

// Why says where the place is, with the wall or level.
func (a At) Why() string {
	if a.On == "" {
		return a.Where
	}
	return a.Where + " (" + a.On + ")"
}

// site finds the class of any point of a house.
type site struct {
	house     *framing.House
	salt      *plan.Salt
	underside plan.Finish
	overrides []*plan.SaltPlace
	used      map[*plan.SaltPlace]bool
	walls     *walls
	porches   map[string]bool // by name
}

func newSite(h *framing.House) *site {
	s := &site{house: h, salt: &h.Plan.Salt, underside: h.Plan.Salt.Underside, used: map[*plan.SaltPlace]bool{}}
	if s.underside == "" {
		s.underside = map[plan.FoundationKind]plan.Finish{plan.Piles: plan.OpenFinish, plan.Stem: plan.VentedFinish}[h.Plan.Foundation.Kind]
	}
	s.overrides = slices.Clone(s.salt.Overrides)
	slices.Reverse(s.overrides)
	s.walls, s.porches = newWalls(h.Plan), map[string]bool{}
	for _, x := range h.Plan.Porches {
		s.porches[x.Name] = true
	}
	return s
}

// Distances that part one place from the next, in: skin is how far steel and
// finish stand out of a face of the framing, hair the play of a face
// (assumed).
const (
	skin = 2.0
	hair = 0.05
)

// at returns the class of a point at a joint: the engineer's own, else by
// where it is.
func (s *site) at(p geom.Vec3, j *framing.Joint) At {
	for _, o := range s.overrides {
		if s.matches(o, j) {
			s.used[o] = true
			why := "the engineer's own class"
			if o.Why != "" {
				why += ": " + o.Why
			}
			return At{Class: o.Class, Where: why}
		}
	}
	if s.porches[j.Host] {
		return At{Class: plan.PartiallySheltered, Where: "in a porch, under its roof"}
	}
	first := s.house.Plan.Levels[0]
	if p.Z < first.Floor-first.Subfloor-hair {
		return s.below(p, first)
	}
	return s.above(p)
}

// matches tells whether a joint meets all conditions.
func (s *site) matches(o *plan.SaltPlace, j *framing.Joint) bool {
	level := ""
	if l := s.house.Story(j); l != nil {
		level = l.Name
	}
	roof := ""
	if j.Roof != nil {
		roof = j.Roof.Name
	}
	return (len(o.Level) == 0 || slices.Contains(o.Level, level)) &&
		(len(o.On) == 0 || slices.Contains(o.On, j.Host) || roof != "" && slices.Contains(o.On, roof)) &&
		(len(o.At) == 0 || slices.Contains(o.At, j.Kind))
}

// below is the class under the lowest subfloor: between its joists, or lower.
func (s *site) below(p geom.Vec3, first *plan.Level) At {
	kind := s.house.Plan.Foundation.Kind
	if kind == plan.Slab {
		return At{Class: "", Where: "in the concrete"}
	}
	joists := p.Z >= first.Floor-first.FloorDepth-hair
	if w := s.face(p); w != nil && (joists || kind == plan.Stem) {
		return s.outside(p, w)
	}
	switch s.underside {
	case plan.VentedFinish:
		return At{Class: plan.VentedEnclosed, Where: "in the vented crawl space"}
	case plan.UnventedFinish:
		return At{Class: plan.UnventedEnclosed, Where: "in the crawl space without vents"}
	case plan.SheathingFinish:
		if joists {
			return At{Class: plan.UnventedEnclosed, Where: "between the joists of the lowest floor, behind the sheathing under them"}
		}
	}
	return At{Class: plan.PartiallySheltered, Where: "under the house"}
}

// outside is the class on the outside face of a wall. Behind a porch no rain
// reaches it.
func (s *site) outside(p geom.Vec3, w *plan.Wall) At {
	switch {
	case s.salt.Walls == plan.SidingFinish:
		return At{plan.UnventedEnclosed, "on the outside of walls, behind the siding", "wall " + w.Name}
	case s.behindPorch(p, w):
		return At{plan.PartiallySheltered, "on the outside of walls, behind a porch", "wall " + w.Name}
	}
	return At{plan.OpenExposed, "on the outside of walls", "wall " + w.Name}
}

// porchDeep is how far out of a wall a porch's beam is looked for, in.
const porchDeep = 192.0

// behindPorch tells whether the beam of a porch stands before a point of a
// wall's face, and its roof ends at the wall no lower than that.
func (s *site) behindPorch(p geom.Vec3, w *plan.Wall) bool {
	a := p.Flat()
	b := a.Sub(w.Frame().In.Mul(porchDeep))
	return slices.ContainsFunc(s.house.Plan.Porches, func(x *plan.Porch) bool {
		side := func(u, v, q geom.Vec2) bool { return v.Sub(u).Cross(q.Sub(u)) > 0 }
		return p.Z < s.porchTop(x, w) && side(a, b, x.From) != side(a, b, x.To) && side(x.From, x.To, a) != side(x.From, x.To, b)
	})
}

// porchTop returns how high the roof over a porch's beam goes; without one the
// beam's top.
func (s *site) porchTop(x *plan.Porch, w *plan.Wall) float64 {
	top := x.Top
	in := x.From.Add(x.To).Mul(0.5).Add(w.Frame().In.Mul(6))
	for _, f := range s.house.Roof {
		if covers(f, in) {
			for _, p := range f.Outline {
				top = max(top, p.Z)
			}
		}
	}
	return top
}

// above is the class from the lowest subfloor up.
func (s *site) above(p geom.Vec3) At {
	if w := s.face(p); w != nil {
		return s.outside(p, w)
	}
	l := s.level(p)
	switch {
	case l == nil:
		return s.beyond(p)
	case p.Z > l.Top()+hair && s.within(p, l):
		return s.attic()
	}
	if w := s.wall(p, l); w != nil {
		return At{plan.UnventedEnclosed, "inside walls", "wall " + w.Name}
	}
	if p.Z < l.Floor-hair {
		return At{plan.UnventedEnclosed, "in floors between stories", "level " + l.Name}
	}
	// The finish of the rooms covers steel there; what stays in sight in them
	// the plan says itself: the mildest class is never assumed.
	return At{plan.UnventedEnclosed, "behind the finish of rooms", "level " + l.Name}
}

func (s *site) attic() At {
	if s.salt.Attic == plan.UnventedFinish {
		return At{Class: plan.UnventedEnclosed, Where: "under the roof, without vents"}
	}
	return At{Class: plan.VentedEnclosed, Where: "under the roof, vented"}
}

// beyond is the class outside of all walls.
func (s *site) beyond(p geom.Vec3) At {
	switch {
	case !s.roofed(p):
		return At{Class: plan.OpenExposed, Where: "outside of the walls"}
	case s.salt.Eaves == plan.SoffitFinish:
		return At{Class: plan.VentedEnclosed, Where: "in the eaves, over the soffit"}
	}
	return At{Class: plan.PartiallySheltered, Where: "outside of the walls, under the roof"}
}

// face returns the exterior wall at whose outside face a point is, or nil. The
// finish of the wall goes on past its floor and up between the rafters.
func (s *site) face(p geom.Vec3) *plan.Wall {
	for _, w := range s.walls.at(p.Flat()) {
		if !w.Exterior || p.Z < w.Level.Floor-w.Level.FloorDepth-hair && w.Level.Index > 0 {
			continue
		}
		if w.near(p.Flat(), hair) && !s.covered(p, w.Wall) {
			return w.Wall
		}
	}
	return nil
}

// covered tells whether a point over a wall's plates is inside another wall's
// story and not at the wall's own face.
func (s *site) covered(p geom.Vec3, w *plan.Wall) bool {
	top := w.TopLevel()
	return p.Z > top.Top()+hair && top.Index+1 < len(s.house.Plan.Levels) && s.within(p, s.house.Plan.Levels[top.Index+1])
}

// wall returns the wall that a point of a level is in, or whose face it is
// at, or nil.
func (s *site) wall(p geom.Vec3, l *plan.Level) *plan.Wall {
	for _, w := range s.walls.at(p.Flat()) {
		if w.On(l) && w.near(p.Flat(), w.Depth()+skin) {
			return w.Wall
		}
	}
	return nil
}

// level returns the highest level whose floor or rooms a point is in, or
// over whose plates it is; nil outside of all walls.
func (s *site) level(p geom.Vec3) *plan.Level {
	levels := s.house.Plan.Levels
	for i := len(levels) - 1; i >= 0; i-- {
		if l := levels[i]; (i == 0 || p.Z >= l.Floor-l.FloorDepth-hair) && s.within(p, l) {
			return l
		}
	}
	return nil
}

// within tells whether a point is inside the exterior walls of a level on
// plan, or within their skin.
func (s *site) within(p geom.Vec3, l *plan.Level) bool {
	for _, w := range s.walls.at(p.Flat()) {
		if w.Exterior && w.On(l) && w.near(p.Flat(), w.Depth()) {
			return true
		}
	}
	return s.walls.around[l].Inside(p.Flat())
}

// roofed tells whether a roof is over a point.
func (s *site) roofed(p geom.Vec3) bool {
	return slices.ContainsFunc(s.house.Roof, func(f *framing.Face) bool { return covers(f, p.Flat()) })
}

// covers tells whether a face of the roof is over a point of the plan.
func covers(f *framing.Face, p geom.Vec2) bool {
	in := false
	for i, a := range f.Outline {
		in = in != geom.CrossesEast(a.Flat(), f.Outline[(i+1)%len(f.Outline)].Flat(), p)
	}
	return in
}
