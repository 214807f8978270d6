package deck

import (
	"math"

	"galewright/plan"
	"galewright/plan/geom"
)

// edge is an edge with what is asked of it for every nail, worked out once.
type edge struct {
	Edge
	dir  geom.Vec2 // unit, from A to B
	long float64   // in
}

func measured(e Edge) *edge {
	d := e.B.Sub(e.A)
	return &edge{e, d.Unit(), d.Len()}
}

// within tells whether p lies in the strip d wide along the edge.
func (e *edge) within(p geom.Vec2, d float64) bool {
	if e.long < touch {
		return false
	}
	t, off := p.Sub(e.A).Dot(e.dir), math.Abs(p.Sub(e.A).Cross(e.dir))
	past := e.past(d)
	return off <= d+1e-6 && t >= -past-1e-6 && t <= e.long+past+1e-6
}

// edges are edges of faces that share their zones, found by place.
type edges struct{ grid *geom.Grid[*edge] }

// edgesCell is the side of a cell of the grid of edges, in: about a face's.
const edgesCell = 480

func newEdges() *edges { return &edges{geom.NewGridOf[*edge](edgesCell)} }

// add takes the edges of a face.
func (s *edges) add(x *Face) {
	for _, e := range x.Strips() {
		lo, hi := bounds([]geom.Vec2{e.A, e.B})
		s.grid.Add(measured(e), lo.Up(0), hi.Up(0), nil)
	}
}

// around widens a box by as far as a strip d wide may reach beyond its edge: around
// a corner, d on both axes.
func around(lo, hi geom.Vec2, d float64) (from, to geom.Vec3) {
	reach := math.Sqrt2*d + 1
	return geom.Vec3{X: lo.X - reach, Y: lo.Y - reach}, geom.Vec3{X: hi.X + reach, Y: hi.Y + reach}
}

// near calls do with every edge whose strip d wide holds p.
func (s *edges) near(p geom.Vec2, d float64, do func(*edge)) {
	lo, hi := around(p, p, d)
	s.grid.Each(lo, hi, func(_ int, e *edge) bool {
		if e.within(p, d) {
			do(e)
		}
		return true
	})
}

// reaching returns the edges whose strips d wide may reach a face, in the order in
// which they were added.
func (s *edges) reaching(x *Face, d float64) []*edge {
	lo, hi := bounds(x.plan)
	return s.grid.Within(around(lo, hi, d))
}

// share gives each face the edges that its zones are measured from: those of all
// gable and hip roofs over its level together, of a shed its own.
func (d *Deck) share() {
	over := map[*plan.Level]*edges{}
	for _, x := range d.Faces {
		x.edges = over[x.Roof.Over]
		if x.edges == nil || x.Roof.Kind == plan.ShedRoof {
			x.edges = newEdges()
		}
		if x.Roof.Kind != plan.ShedRoof {
			over[x.Roof.Over] = x.edges
		}
		x.edges.add(x)
	}
}
