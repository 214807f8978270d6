package scene

import (
	"galewright/plan"
	"galewright/plan/framing"
	"galewright/plan/geom"
	"galewright/plan/steel"
	"galewright/render/project"
)

// Kind is what a part of a scene is made of.
type Kind uint8

// The kinds of parts.
const (
	Wood Kind = iota
	Plate
	Rod
	Nut
	Washer
	Concrete
)

// Part owns lines of a picture: a member, or one kind of part of a body.
type Part struct {
	Kind   Kind
	Member *framing.Member // of wood
	Body   *steel.Body     // of steel
}

// House is a house to look at.
type House struct {
	foundation plan.FoundationKind
	members    *geom.Grid[*framing.Member]
}

// New makes the members of a house ready to be found.
func New(h *framing.House) *House {
	out := &House{members: geom.NewGrid[*framing.Member]()}
	if h.Plan != nil {
		out.foundation = h.Plan.Foundation.Kind
	}
	for _, m := range h.Members {
		if lo, hi, ok := bounds(m.Solid); ok {
			out.members.Add(m, lo, hi, geom.Slant(m.A.Flat(), m.B.Flat(), max(m.Section.Width(), m.Section.Depth)))
		}
	}
	return out
}

// bounds returns the box around solids.
func bounds(list []geom.Solid) (lo, hi geom.Vec3, ok bool) {
	for _, s := range list {
		a, b := s.Bounds()
		if !ok {
			lo, hi, ok = a, b, true
		}
		lo = geom.Vec3{X: min(lo.X, a.X), Y: min(lo.Y, a.Y), Z: min(lo.Z, a.Z)}
		hi = geom.Vec3{X: max(hi.X, b.X), Y: max(hi.Y, b.Y), Z: max(hi.Z, b.Z)}
	}
	return lo, hi, ok
}

// Around returns what lies inside the planes, whose box is lo..hi, with the
// bodies given; the planes cut it open.
func (h *House) Around(planes []geom.Plane, lo, hi geom.Vec3, bodies ...*steel.Body) *project.Scene {
	var s project.Scene
	for _, m := range h.members.Within(lo, hi) {
		s.Add(project.Thing{Solids: m.Solid, Owner: Part{Kind: Wood, Member: m}})
		if m.Role == plan.SillPlate {
			s.Add(h.under(m))
		}
	}
	for _, b := range bodies {
		s.Add(body(b)...)
		s.Add(h.pier(b))
	}
	return s.Clip(planes...)
}

// All returns the whole house with its steel, without concrete: the members and
// bodies themselves.
func All(h *framing.House, bodies ...*steel.Body) *project.Scene {
	var s project.Scene
	for _, m := range h.Members {
		s.Add(project.Thing{Solids: m.Solid, Owner: Part{Kind: Wood, Member: m}})
	}
	for _, b := range bodies {
		s.Add(body(b)...)
	}
	return &s
}

// The concrete drawn under a sill plate, in: as wide as a stem wall of one block,
// as far as a slab goes on in a picture, and as deep as either is seen. Its true
// size is on the foundation's drawings.
const (
	stemWide  = 8.0
	slabWide  = 60.0
	pierWide  = 12.0
	blockDeep = 30.0
)

// pier is the concrete that a post base stands on, where no wood is under it.
func (h *House) pier(b *steel.Body) project.Thing {
	if b.Piece.Item.Kind.Name != plan.PostBaseItem {
		return project.Thing{}
	}
	at := b.Piece.Joint.At
	for _, band := range b.Bands {
		for _, p := range band {
			at.Z = min(at.Z, p.A.Z, p.B.Z)
		}
	}
	below := at.Sub(geom.Vec3{Z: 1})
	for _, m := range h.members.Within(below, below) {
		for _, s := range m.Solid {
			if _, _, ok := geom.Within(s.Planes(), below, geom.Vec3{Z: 1}, 0, 0.5); ok {
				return project.Thing{}
			}
		}
	}
	o := at.Sub(geom.Vec3{X: pierWide / 2, Y: pierWide / 2, Z: blockDeep})
	return project.Thing{Solids: []geom.Solid{geom.Box(o, geom.Vec3{X: pierWide}, geom.Vec3{Y: pierWide}, geom.Vec3{Z: blockDeep})}, Owner: Part{Kind: Concrete}}
}

// under is the concrete that a sill plate lies on.
func (h *House) under(sill *framing.Member) project.Thing {
	if sill.Wall == nil {
		return project.Thing{}
	}
	wide := stemWide
	if h.foundation == plan.Slab {
		wide = slabWide
	}
	box := sill.Wall.Frame().Box(sill.S0, sill.S1, 0, wide, sill.Z0-blockDeep, sill.Z0)
	return project.Thing{Solids: []geom.Solid{box}, Owner: Part{Kind: Concrete}}
}
