package deck

import (
	"cmp"
	"math"
	"slices"

	"galewright/plan"
	"galewright/plan/framing"
	"galewright/plan/geom"
)

// touch is how near two things must be to be one, in.
const touch = 0.25

// Edge is an edge of a face of the roof, on plan.
type Edge struct {
	Kind plan.RoofEdge
	A, B geom.Vec2
}

// past returns how much longer than the edge its strip of width d is at both
// ends, so that it goes around a corner: square at eaves and gable ends, along
// the bisector where ridges, hips and valleys meet at 45 degrees on plan.
func (e Edge) past(d float64) float64 {
	switch e.Kind {
	case plan.RidgeEdge, plan.HipEdge, plan.ValleyEdge:
		return d * math.Tan(math.Pi/8)
	}
	return d
}

// Face is one face of the roof with its deck.
type Face struct {
	*framing.Face
	Name   string // "main S": the roof and the side it looks to
	Pieces []*Piece
	n      int       // its place among the faces
	along  geom.Vec2 // unit, along the eave
	up     geom.Vec2 // unit on plan, uphill
	k      float64   // true length up the slope for one inch on plan
	shape  []geom.Vec2
	plan   []geom.Vec2
	lines  []*line
	edges  *edges // of all faces that share its zones
}

// newFace returns a face in its own axes. Along the eave it counts east or north, or where
// the house lies the other way what these are there: panels are laid from the same end.
func newFace(f *framing.Face, lay plan.Lay) *Face {
	x := &Face{Face: f, up: f.Slope.Mul(-1)}
	x.along = x.up.Left().Mul(-1) // to the right of one who looks uphill
	if d := lay.Back(x.along); d.X+d.Y < 0 {
		x.along = x.along.Mul(-1)
	}
	lo, hi := f.Outline[0], f.Outline[0]
	for _, p := range f.Outline {
		x.plan = append(x.plan, p.Flat())
		if p.Flat().Dot(x.up) < lo.Flat().Dot(x.up) {
			lo = p
		}
		if p.Flat().Dot(x.up) > hi.Flat().Dot(x.up) {
			hi = p
		}
	}
	x.k = 1
	if run := hi.Sub(lo).Flat().Dot(x.up); run > touch {
		x.k = math.Hypot(1, (hi.Z-lo.Z)/run)
	}
	for _, p := range x.plan {
		x.shape = append(x.shape, x.own(p))
	}
	x.Name = f.Roof.Name + " " + sideOf(f.Slope)
	return x
}

// sideOf names the side that a face looks to.
func sideOf(downhill geom.Vec2) string {
	if math.Abs(downhill.X) > math.Abs(downhill.Y) {
		return string(map[bool]plan.Side{true: plan.East, false: plan.West}[downhill.X > 0])
	}
	return string(map[bool]plan.Side{true: plan.North, false: plan.South}[downhill.Y > 0])
}

// own returns a plan point in the face's axes.
func (x *Face) own(p geom.Vec2) geom.Vec2 {
	return geom.Vec2{X: p.Dot(x.along), Y: p.Dot(x.up) * x.k}
}

// at returns the plan point of a point in the face's axes.
func (x *Face) at(q geom.Vec2) geom.Vec2 {
	return x.along.Mul(q.X).Add(x.up.Mul(q.Y / x.k))
}

// height returns the height of the face over a plan point, in above grade.
func (x *Face) height(p geom.Vec2) float64 {
	o := x.Outline[0]
	return o.Z + p.Sub(o.Flat()).Dot(x.up)*math.Sqrt(x.k*x.k-1)
}

// Area returns the area of the face along its slope, ft².
func (x *Face) Area() float64 { return area(x.shape) / 144 }

// area returns the area of a polygon, whichever way it runs, in².
func area(p []geom.Vec2) (a float64) {
	for i, q := range p {
		a += q.Cross(p[(i+1)%len(p)]) / 2
	}
	return math.Abs(a)
}

// clip returns the part of a polygon where n·q <= c. Of one that is not
// convex, parts come out joined along the line of the cut.
func clip(p []geom.Vec2, n geom.Vec2, c float64) (out []geom.Vec2) {
	for i, a := range p {
		b := p[(i+1)%len(p)]
		da, db := n.Dot(a)-c, n.Dot(b)-c
		if da <= 0 {
			out = append(out, a)
		}
		if (da < 0 && db > 0) || (da > 0 && db < 0) {
			out = append(out, a.Add(b.Sub(a).Mul(da/(da-db))))
		}
	}
	return out
}

// box cuts a polygon to the rectangle from lo to hi.
func box(p []geom.Vec2, lo, hi geom.Vec2) []geom.Vec2 {
	p = clip(p, geom.Vec2{X: -1}, -lo.X)
	p = clip(p, geom.Vec2{X: 1}, hi.X)
	p = clip(p, geom.Vec2{Y: -1}, -lo.Y)
	return clip(p, geom.Vec2{Y: 1}, hi.Y)
}

// bounds returns the extent of points.
func bounds(p []geom.Vec2) (lo, hi geom.Vec2) {
	lo, hi = p[0], p[0]
	for _, q := range p {
		lo = geom.Vec2{X: min(lo.X, q.X), Y: min(lo.Y, q.Y)}
		hi = geom.Vec2{X: max(hi.X, q.X), Y: max(hi.Y, q.Y)}
	}
	return lo, hi
}

// holds tells whether p lies in the polygon, or no more than slack beside it.
func holds(poly []geom.Vec2, p geom.Vec2, slack float64) bool {
	in := false
	for i, a := range poly {
		b := poly[(i+1)%len(poly)]
		d := b.Sub(a)
		t := min(max(p.Sub(a).Dot(d)/max(d.Dot(d), 1e-12), 0), 1)
		if p.Sub(a.Add(d.Mul(t))).Len() <= slack {
			return true
		}
		if (a.Y > p.Y) != (b.Y > p.Y) && p.X < a.X+(b.X-a.X)*(p.Y-a.Y)/(b.Y-a.Y) {
			in = !in
		}
	}
	return in
}

// stretches returns the parts of the segment a b that lie in the polygon, as
// fractions of it.
func stretches(poly []geom.Vec2, a, b geom.Vec2, slack float64) (out [][2]float64) {
	d := b.Sub(a)
	cuts := []float64{0, 1}
	for i, p := range poly {
		e := poly[(i+1)%len(poly)].Sub(p)
		den := d.Cross(e)
		if math.Abs(den) < 1e-9 {
			continue
		}
		t, s := p.Sub(a).Cross(e)/den, p.Sub(a).Cross(d)/den
		if t > 0 && t < 1 && s > -1e-9 && s < 1+1e-9 {
			cuts = append(cuts, t)
		}
	}
	slices.SortFunc(cuts, cmp.Compare[float64])
	for i := 1; i < len(cuts); i++ {
		lo, hi := cuts[i-1], cuts[i]
		if hi-lo < 1e-6 || !holds(poly, a.Add(d.Mul((lo+hi)/2)), slack) {
			continue
		}
		if n := len(out); n > 0 && lo-out[n-1][1] < 1e-6 {
			out[n-1][1] = hi
		} else {
			out = append(out, [2]float64{lo, hi})
		}
	}
	return out
}
