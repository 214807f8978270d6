package roofplan

import (
	"fmt"
	"math"

	"galewright/plan"
	"galewright/plan/geom"
)

// The sides of a body, in the order of Body.Sides.
const (
	South = iota
	East
	North
	West
)

// outward holds the outward normals of the sides.
var outward = [4]geom.Vec2{{X: 0, Y: -1}, {X: 1, Y: 0}, {X: 0, Y: 1}, {X: -1, Y: 0}}

// SideNames are the letters of the sides.
var SideNames = [4]plan.Side{plan.South, plan.East, plan.North, plan.West}

// SidesOf returns the sides in the order south, east, north, west of the house as written.
func SidesOf(l plan.Lay) (out [4]int) {
	for i, d := range outward {
		for j, e := range outward {
			if geom.With(l.Way(d), e) {
				out[i] = j
			}
		}
	}
	return out
}

// Outward returns the unit outward normal of side i.
func Outward(i int) geom.Vec2 { return outward[i] }

// Side is one side of a body's rectangle.
type Side struct {
	// Slope is the rise per inch of run of the plane that climbs inward from
	// this side; 0 for a gable end or the high side of a shed.
	Slope float64
	// Height of the roof plane, the top of the rafters, over the outside
	// face of the wall, in above grade. Only where Slope > 0.
	Height float64
	// Over is the horizontal overhang from the outside face, in.
	Over float64
	// Against says that the body ends at a wall that stands higher: there is
	// no overhang and the edge there is a "wall" edge.
	Against bool
	// RunsIn is set by New: the side lies within another body, so the roof
	// runs on until its ridge dies in the other's plane.
	RunsIn bool
	run    float64 // how far it runs on past the rectangle, in
	// lap is how much of the overhangs of the sides along the axis runs on
	// there: no more than lies within the other body's walls.
	lap [2]float64
}

// Body is one roof over a rectangle of walls.
type Body struct {
	Name string
	// Lo and Hi are the corners of the rectangle of the outside faces of its
	// walls, in on plan.
	Lo, Hi geom.Vec2
	Sides  [4]Side
	// Axis is the direction of the ridge, or of a shed's high wall.
	Axis plan.Axis
	// Spacing of rafters on center, and Thick, the thickness of one, in.
	Spacing, Thick float64
	// Layout is where the module of the rafters along the ridge starts, in from
	// the low end of the axis; nil leaves it to the shape.
	Layout *float64
	// Lay is how its house lies: what is chosen by place or by order of the sides is chosen as
	// in the house as written.
	Lay   plan.Lay
	index int
}

// Shape is what a kind of roof is asked: the slopes in rise per inch of run.
type Shape struct {
	Axis         plan.Axis // the way the ridge runs
	High         plan.Side // of a shed's high wall
	Slope, Other float64
	HipEnd       [2]bool // at the low and high end of the ridge of a gable
}

// Kind returns the slopes of the four sides, 0 for a side that has no plane,
// or an error that says what the shape lacks.
type Kind func(Shape) (slopes [4]float64, err error)

// kinds is filled by the file of each kind.
var kinds = map[plan.RoofKind]Kind{}

// Slopes returns the slope of each side of a roof of the kind, or an error
// when the kind is unknown or the shape lacks what the kind needs.
func Slopes(kind plan.RoofKind, s Shape) (slopes [4]float64, err error) {
	k, known := kinds[kind]
	switch {
	case !known:
		return slopes, fmt.Errorf("a roof of the kind %q is not known", kind)
	case s.Slope <= 0:
		return slopes, fmt.Errorf("a %s roof without a pitch", kind)
	}
	return k(s)
}

// eaves returns the two sides along the axis and its two ends, low first.
func eaves(axis plan.Axis) (sides, ends [2]int) {
	if axis == plan.AxisY {
		return [2]int{West, East}, [2]int{South, North}
	}
	return [2]int{South, North}, [2]int{West, East}
}

// edge returns the coordinate of side i along its outward normal.
func (b *Body) edge(i int) float64 {
	switch i {
	case South:
		return -b.Lo.Y
	case East:
		return b.Hi.X
	case North:
		return b.Hi.Y
	}
	return -b.Lo.X
}

// On returns how far p lies outside the outside face of side i, in;
// negative inside.
func (b *Body) On(i int, p geom.Vec2) float64 { return outward[i].Dot(p) - b.edge(i) }

// Plane returns the plane of side i.
func (b *Body) Plane(i int) Plane {
	s := b.Sides[i]
	return Plane{
		G: outward[i].Mul(-s.Slope),
		C: s.Height + s.Slope*b.edge(i),
	}
}

// Sloped tells whether side i carries a roof plane.
func (b *Body) Sloped(i int) bool { return b.Sides[i].Slope > 0 }

// overhang returns how far the body's roof reaches past side i, in.
func (b *Body) overhang(i int) float64 {
	switch s := b.Sides[i]; {
	case s.RunsIn:
		return s.run
	case s.Against:
		return 0
	default:
		return s.Over
	}
}

// domain returns the plan of the body with its overhangs as convex
// rectangles. Where an end runs into another body it does so without what
// would stand out beyond the other's walls of the overhangs of its sides.
func (b *Body) domain() (out [][]geom.Vec2) {
	reach := func(lap [4]float64) []geom.Vec2 {
		lo := geom.Vec2{X: b.Lo.X - lap[West], Y: b.Lo.Y - lap[South]}
		hi := geom.Vec2{X: b.Hi.X + lap[East], Y: b.Hi.Y + lap[North]}
		return []geom.Vec2{lo, {X: hi.X, Y: lo.Y}, hi, {X: lo.X, Y: hi.Y}}
	}
	sides, _ := eaves(b.Axis)
	var lap [4]float64
	for i := range b.Sides {
		if !b.Sides[i].RunsIn {
			lap[i] = b.overhang(i)
		}
	}
	out = append(out, reach(lap))
	for i, s := range b.Sides {
		if s.RunsIn && s.run > snap {
			var on [4]float64
			on[i], on[(i+2)%4] = s.run, -b.width(i)
			for k, j := range sides {
				on[j] = s.lap[k]
			}
			out = append(out, reach(on))
		}
	}
	return out
}

// width returns the extent of the rectangle along the normal of side i, in.
func (b *Body) width(i int) float64 { return b.edge(i) + b.edge((i+2)%4) }

// Ridge returns the plan point and height where the ridge would meet the
// outside face of the wall at the low end of the axis; ok is false for a
// shed.
func (b *Body) Ridge() (p geom.Vec2, z float64, ok bool) {
	sides, ends := eaves(b.Axis)
	if !b.Sloped(sides[0]) || !b.Sloped(sides[1]) {
		return p, z, false
	}
	p, z = b.ridgeEnd(ends[0])
	return p, z, true
}

// Reach returns how far the body's roof reaches past side i, in.
func (b *Body) Reach(i int) float64 { return b.overhang(i) }

// Edge returns the coordinate of side i along its outward normal, in.
func (b *Body) Edge(i int) float64 { return b.edge(i) }

// height returns the lower envelope of the body's planes at p, in above
// grade, and the side whose plane it is; it does not ask whether p lies
// within the body.
func (b *Body) height(p geom.Vec2) (z float64, side int) {
	z = math.Inf(1)
	for i := range b.Sides {
		if !b.Sloped(i) {
			continue
		}
		if h := b.Plane(i).At(p); h < z-geom.Eps {
			z, side = h, i
		}
	}
	return z, side
}

// Height returns the height of the body's own planes at p, in above grade,
// and the side whose plane it is; it does not ask whether p lies under them.
func (b *Body) Height(p geom.Vec2) (z float64, side int) { return b.height(p) }

// Alone returns a copy of b that ends at its walls where b runs into another
// body, laid out as b is.
func (b *Body) Alone() *Body {
	c := *b
	for i := range c.Sides {
		c.Sides[i].run = 0
	}
	return &c
}

// Within tells whether p lies in the rectangle of the walls, border included.
func (b *Body) Within(p geom.Vec2) bool { return b.within(p) }

// within tells whether p lies in the rectangle of the walls, border included.
func (b *Body) within(p geom.Vec2) bool {
	for i := range b.Sides {
		if b.On(i, p) > geom.Eps {
			return false
		}
	}
	return true
}

// Plane is the height G·p + C over the plan point p, in.
type Plane struct {
	G geom.Vec2 // rise per inch of run, uphill
	C float64
}

// At returns the plane's height over p.
func (p Plane) At(q geom.Vec2) float64 { return p.G.Dot(q) + p.C }

// same tells whether two planes are one, over the extent of any house.
func (p Plane) same(q Plane) bool {
	return p.G.Sub(q.G).Len() < 1e-9 && math.Abs(p.C-q.C) < 1e-5
}
