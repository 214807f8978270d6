package detail

import (
	"cmp"
	"math"
	"slices"

	"galewright/plan/geom"
	"galewright/plan/steel"
	"galewright/render/project"
	"galewright/render/scene"
)

// What is drawn around a piece, in: beyond its steel along it and to its sides,
// behind the face it lies on, and in front.
const (
	pastEnds  = 3.5
	pastSides = 3.0
	behind    = 7.5
	before    = 2.5
)

// shot is a piece with what is around it, and the directions it is looked at
// from.
type shot struct {
	condition
	box    axes // along the steel, across it, up: the axes of what is cut out
	center geom.Vec3
	half   [3]float64
	scene  *project.Scene
	looks  []look
	iso    look
}

// look is one picture of a shot.
type look struct {
	no      int // from 0; that of the slanted one is negative
	name    string
	view    project.View
	picture *project.Picture
	lines   []project.Line // those that matter most first, the nearest first
}

// newLook looks at a scene.
func newLook(no int, name string, scene *project.Scene, v project.View) look {
	p := project.Project(scene, v)
	lines := p.Lines()
	slices.SortStableFunc(lines, func(a, b project.Line) int {
		return cmp.Or(cmp.Compare(rank(a.State), rank(b.State)), -cmp.Compare(math.Round(a.Depth*10), math.Round(b.Depth*10)))
	})
	return look{no, name, v, p, lines}
}

// newShot cuts out what is around the body and settles how to look at it.
func newShot(c condition, h *scene.House) *shot {
	s := &shot{condition: c}
	s.frame()
	planes := project.Box(s.center, [3]geom.Vec3{s.box.along, s.box.in, s.box.up}, s.half)
	lo, hi := s.corners()
	s.scene = h.Around(planes, lo, hi, c.Body)
	for i, sight := range s.sights() {
		v := project.Looking(sight, s.upward(sight))
		s.looks = append(s.looks, newLook(i, s.viewName(sight), s.scene.Clip(s.front(v)), v))
	}
	s.iso = s.slanted()
	return s
}

// front is the plane just before the steel: what stands nearer to the eye is cut
// away, as in any section.
func (s *shot) front(v project.View) geom.Plane {
	near := math.Inf(-1)
	for _, p := range points(s.Body) {
		near = max(near, v.Depth(p))
	}
	for _, r := range s.Body.Rods {
		near = max(near, v.Depth(r.A)+r.Diameter)
	}
	return geom.Plane{N: v.Toward, C: near + clearOf}
}

// clearOf is what is left before the steel, in: a plate's own thickness.
const clearOf = 0.2

// slanted is the body with all around it seen from its own side, from the right
// and above.
func (s *shot) slanted() look {
	n := s.mainNormal()
	sight := s.box.in.Mul(0.75).Add(s.box.along.Mul(-0.55)).Sub(s.box.up.Mul(0.5))
	if n.Z < -0.7 {
		sight = sight.Add(s.box.up)
	}
	v := project.Looking(sight, geom.Vec3{Z: 1})
	return newLook(-1, "slanted, no scale", s.scene, v)
}

// points are all points of the body that a picture must show.
func points(b *steel.Body) (out []geom.Vec3) {
	for _, band := range b.Bands {
		for _, p := range band {
			c := p.Corners()
			out = append(out, c[:]...)
		}
	}
	for _, p := range scene.Seats(b) {
		c := p.Corners()
		out = append(out, c[:]...)
	}
	for _, r := range b.Rods {
		out = append(out, r.A, r.B)
		for _, e := range r.Ends {
			out = append(out, e.At)
		}
	}
	return out
}

// frame settles the box that is cut out: level, turned with the main plate.
func (s *shot) frame() {
	n := s.mainNormal()
	up := geom.Vec3{Z: 1}
	in := geom.Vec3{X: n.X, Y: n.Y}.Mul(-1)
	if math.Hypot(n.X, n.Y) < 0.1 {
		in = s.axes.in
	}
	in = in.Unit()
	s.box = axes{along: in.Cross(up), in: in, up: up}
	lo, hi := geom.Vec3{X: math.Inf(1), Y: math.Inf(1), Z: math.Inf(1)}, geom.Vec3{X: math.Inf(-1), Y: math.Inf(-1), Z: math.Inf(-1)}
	for _, p := range points(s.Body) {
		q := s.box.local(p)
		lo = geom.Vec3{X: min(lo.X, q.X), Y: min(lo.Y, q.Y), Z: min(lo.Z, q.Z)}
		hi = geom.Vec3{X: max(hi.X, q.X), Y: max(hi.Y, q.Y), Z: max(hi.Z, q.Z)}
	}
	lo = lo.Sub(geom.Vec3{X: pastSides, Y: before, Z: pastEnds})
	hi = hi.Add(geom.Vec3{X: pastSides, Y: before, Z: pastEnds})
	if hi.Y-lo.Y < behind+before { // a strap on one face: the wall behind it
		hi.Y = lo.Y + behind + before
	}
	mid := lo.Add(hi).Mul(0.5)
	s.center = s.box.along.Mul(mid.X).Add(s.box.in.Mul(mid.Y)).Add(s.box.up.Mul(mid.Z))
	s.half = [3]float64{(hi.X - lo.X) / 2, (hi.Y - lo.Y) / 2, (hi.Z - lo.Z) / 2}
}

// corners returns the upright box around what is cut out.
func (s *shot) corners() (lo, hi geom.Vec3) {
	r := math.Sqrt(s.half[0]*s.half[0] + s.half[1]*s.half[1])
	d := geom.Vec3{X: r, Y: r, Z: s.half[2]}
	return s.center.Sub(d), s.center.Add(d)
}

// normals are the faces that fasteners are driven into, those with most first.
func normals(b *steel.Body) (out []geom.Vec3) {
	var count []int
	for _, f := range b.Fasteners {
		n := b.PlateOf(f).N
		i := slices.IndexFunc(out, func(m geom.Vec3) bool { return geom.Facing(m, n) })
		if i < 0 {
			i = len(out)
			out, count = append(out, n), append(count, 0)
		}
		count[i]++
	}
	order := make([]int, len(out))
	for i := range order {
		order[i] = i
	}
	level := func(i int) bool { return math.Abs(out[i].Z) > 0.95 }
	slices.SortStableFunc(order, func(a, b int) int {
		if level(a) != level(b) && count[a] < 3*count[b] && count[b] < 3*count[a] { // a hand reads a wall from its side
			return cmp.Compare(abs01(level(a)), abs01(level(b)))
		}
		return -cmp.Compare(count[a], count[b])
	})
	sorted := make([]geom.Vec3, len(out))
	for i, k := range order {
		sorted[i] = out[k]
	}
	return sorted
}

func abs01(b bool) int {
	if b {
		return 1
	}
	return 0
}

// mainNormal is the face that most fasteners go into, of a rod the outside.
func (s *shot) mainNormal() geom.Vec3 {
	if n := normals(s.Body); len(n) > 0 {
		return n[0]
	}
	return s.axes.in.Mul(-1)
}

// sights are the directions to look along: at the face with most fasteners;
// square to that, so that the steel is seen on edge and its nails in the wood; and
// at each other face that fasteners go into.
func (s *shot) sights() []geom.Vec3 {
	faces := normals(s.Body)
	if len(faces) == 0 {
		return s.rodSights()
	}
	main := faces[0]
	out := []geom.Vec3{main.Mul(-1)}
	edge := s.edgeOn(main, faces)
	out = append(out, edge)
	for _, n := range faces[1:] {
		if !slices.ContainsFunc(out, func(d geom.Vec3) bool { return geom.Facing(d, n.Mul(-1)) }) {
			out = append(out, n.Mul(-1))
		}
	}
	return out
}

// edgeOn is the direction in which the main plate is seen on edge: at another
// face that takes fasteners if one is square to it, else across the plate.
func (s *shot) edgeOn(main geom.Vec3, faces []geom.Vec3) geom.Vec3 {
	for _, n := range faces[1:] {
		if math.Abs(n.Dot(main)) < 0.05 {
			return n.Mul(-1)
		}
	}
	for _, f := range s.Body.Fasteners {
		p := s.Body.PlateOf(f)
		if !geom.Facing(p.N, main) {
			continue
		}
		across := p.Across()
		if math.Abs(across.Z) > 0.7 { // a level strap on an upright face: from above
			return geom.Vec3{Z: -1}
		}
		if across.Dot(s.axes.along) < 0 {
			across = across.Mul(-1)
		}
		return across.Unit()
	}
	return s.axes.along
}

// rodSights shows a rod from outside and from its side, or a level one from its
// head and along what it crosses.
func (s *shot) rodSights() []geom.Vec3 {
	r := s.Body.Rods
	if len(r) == 0 || math.Abs(r[0].A.Sub(r[0].B).Unit().Z) > 0.7 {
		return []geom.Vec3{s.axes.in, s.axes.along}
	}
	d := r[0].B.Sub(r[0].A).Unit()
	return []geom.Vec3{geom.Vec3{Z: 1}.Cross(d).Unit(), d}
}

// upward is what is up in a picture: up, and of one from above the inside.
func (s *shot) upward(sight geom.Vec3) geom.Vec3 {
	if math.Abs(sight.Z) > 0.95 {
		return s.axes.in
	}
	return geom.Vec3{Z: 1}
}

// viewName says where one stands.
func (s *shot) viewName(sight geom.Vec3) string {
	wall := s.Body.Piece.Joint.Wall != nil
	switch {
	case sight.Z < -0.95:
		return "from above"
	case sight.Z > 0.95:
		return "from below"
	case math.Abs(sight.Z) > 0.2:
		return "square to the slope"
	case wall && sight.Dot(s.axes.in) > 0.95:
		return "from outside"
	case wall && sight.Dot(s.axes.in) < -0.95:
		return "from inside"
	case wall && math.Abs(sight.Dot(s.axes.along)) > 0.95:
		return "along the wall"
	}
	return "from the side"
}
