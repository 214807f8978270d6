package frame

import (
	"math"
	"slices"

	"galewright/plan"
	"galewright/plan/framing"
	"galewright/plan/geom"
	"galewright/plan/placement"
	"galewright/render/page"
)

// path is one way of the uplift from a rafter down to what stands in the ground.
type path struct {
	members map[*framing.Member]bool
	stops   []stop // from the top down
}

// stop is a joint of a path with the pieces that tie it.
type stop struct {
	at     geom.Vec3
	pieces []*placement.Piece
}

// along is where on its wall the rafter of a path is sought, as a share of its length
// from its left end: clear of corners.
const along = 0.3

// pathOf finds the path in an outside wall that is seen along toward: of the highest
// walls that carry rafters the first one, at the rafter nearest to its place there.
// It is nil where no such wall looks toward the eye.
func pathOf(c *page.Context, toward geom.Vec3) *path {
	var first *framing.Joint
	better := func(j *framing.Joint) bool {
		if first == nil || j.Wall != first.Wall {
			return first == nil || j.Wall.PlateTop() > first.Wall.PlateTop()+geom.Eps
		}
		off := func(j *framing.Joint) float64 { return math.Abs(j.Station - along*j.Wall.Length()) }
		return off(j) < off(first)-geom.Eps
	}
	for _, j := range c.House.Joints {
		if j.Kind == plan.RafterPlate && j.Wall != nil && j.Wall.Exterior && outward(j.Wall).Dot(toward.Flat()) > 0 && better(j) {
			first = j
		}
	}
	if first == nil {
		return nil
	}
	p := &path{members: map[*framing.Member]bool{}}
	p.follow(c, first)
	return p
}

// outward is the way from a wall to the side it is seen from.
func outward(w *plan.Wall) geom.Vec2 { return w.Frame().In.Mul(-1) }

// follow goes from a rafter on its plate to the ridge, and down.
func (p *path) follow(c *page.Context, j *framing.Joint) {
	for _, k := range c.House.Joints {
		if k.Kind == plan.RafterRidge && slices.Contains(k.Members, j.First()) {
			p.stop(c, k)
		}
	}
	p.stop(c, j)
	stud := nearestStud(c, j)
	for stud != nil {
		stud = p.through(c, stud)
	}
}

// nearestStud returns the full-height member of the wall that stands nearest under
// a rafter, or nil.
func nearestStud(c *page.Context, j *framing.Joint) (best *framing.Member) {
	for _, k := range c.House.Joints {
		m := k.First()
		if k.Kind != plan.StudTop || k.Wall != j.Wall || !m.Role.FullHeight() {
			continue
		}
		if best == nil || math.Abs(m.Mid()-j.Station) < math.Abs(best.Mid()-j.Station)-geom.Eps {
			best = m
		}
	}
	return best
}

// through goes down a stud and returns the one below it; at the lowest it ends at the
// pile.
func (p *path) through(c *page.Context, stud *framing.Member) *framing.Member {
	var foot *framing.Joint
	for _, k := range c.House.Joints {
		if k.First() != stud {
			continue
		}
		switch k.Kind {
		case plan.StudTop:
			p.stop(c, k)
		case plan.StudStud, plan.StudBase:
			foot = k
		}
	}
	if foot == nil {
		return nil
	}
	p.stop(c, foot)
	if foot.Kind == plan.StudStud && foot.Below && len(foot.Members) > 1 && foot.Members[1].Role.FullHeight() {
		return foot.Members[1]
	}
	p.pile(c, foot)
	return nil
}

// pile ends a path at the pile nearest to the lowest joint, if it has a girder.
func (p *path) pile(c *page.Context, foot *framing.Joint) {
	var best *framing.Joint
	off := func(k *framing.Joint) float64 { return k.At.Sub(foot.At).Flat().Len() }
	for _, k := range c.House.Joints {
		if k.Kind == plan.GirderPile && slices.ContainsFunc(k.Members, func(m *framing.Member) bool { return slices.Contains(foot.Members, m) }) && (best == nil || off(k) < off(best)-geom.Eps) {
			best = k
		}
	}
	if best != nil {
		p.stop(c, best)
	}
}

// stop adds a joint, its members and its pieces.
func (p *path) stop(c *page.Context, j *framing.Joint) {
	for _, m := range j.Members {
		p.members[m] = true
	}
	s := stop{at: j.At, pieces: c.Placement.At(j)}
	if len(s.pieces) > 0 {
		q := s.pieces[0]
		if n := len(q.Path); n > 0 {
			s.at = q.Path[0].Add(q.Path[n-1]).Mul(0.5)
		}
	}
	p.stops = append(p.stops, s)
}
