package geom

import "math"

// Eps is the tolerance, in inches, below which two places are the same:
// well under the 1/16 in of a tape and well over float64 rounding.
const Eps = 1e-6

// Vec2 is a point or direction on plan, in.
type Vec2 struct{ X, Y float64 }

// Add returns a + b.
func (a Vec2) Add(b Vec2) Vec2 { return Vec2{a.X + b.X, a.Y + b.Y} }

// Sub returns a − b.
func (a Vec2) Sub(b Vec2) Vec2 { return Vec2{a.X - b.X, a.Y - b.Y} }

// Mul returns a scaled by k.
func (a Vec2) Mul(k float64) Vec2 { return Vec2{a.X * k, a.Y * k} }

// Dot returns the scalar product.
func (a Vec2) Dot(b Vec2) float64 { return a.X*b.X + a.Y*b.Y }

// Cross returns the z component of a × b: positive when b lies to the left of a.
func (a Vec2) Cross(b Vec2) float64 { return a.X*b.Y - a.Y*b.X }

// Len returns the length of a, in.
func (a Vec2) Len() float64 { return math.Hypot(a.X, a.Y) }

// Unit returns a scaled to length 1, or the zero vector.
func (a Vec2) Unit() Vec2 {
	if l := a.Len(); l > 0 {
		return a.Mul(1 / l)
	}
	return Vec2{}
}

// Left returns a turned 90 degrees counterclockwise.
func (a Vec2) Left() Vec2 { return Vec2{-a.Y, a.X} }

// Right returns a turned 90 degrees clockwise.
func (a Vec2) Right() Vec2 { return Vec2{a.Y, -a.X} }

// Up lifts a to height z.
func (a Vec2) Up(z float64) Vec3 { return Vec3{a.X, a.Y, z} }

// Vec3 is a point or direction in space, in.
type Vec3 struct{ X, Y, Z float64 }

// Add returns a + b.
func (a Vec3) Add(b Vec3) Vec3 { return Vec3{a.X + b.X, a.Y + b.Y, a.Z + b.Z} }

// Sub returns a − b.
func (a Vec3) Sub(b Vec3) Vec3 { return Vec3{a.X - b.X, a.Y - b.Y, a.Z - b.Z} }

// Mul returns a scaled by k.
func (a Vec3) Mul(k float64) Vec3 { return Vec3{a.X * k, a.Y * k, a.Z * k} }

// Dot returns the scalar product.
func (a Vec3) Dot(b Vec3) float64 { return a.X*b.X + a.Y*b.Y + a.Z*b.Z }

// Cross returns the vector product.
func (a Vec3) Cross(b Vec3) Vec3 {
	return Vec3{a.Y*b.Z - a.Z*b.Y, a.Z*b.X - a.X*b.Z, a.X*b.Y - a.Y*b.X}
}

// Len returns the length of a, in.
func (a Vec3) Len() float64 { return math.Sqrt(a.Dot(a)) }

// Unit returns a scaled to length 1, or the zero vector.
func (a Vec3) Unit() Vec3 {
	if l := a.Len(); l > 0 {
		return a.Mul(1 / l)
	}
	return Vec3{}
}

// Flat drops the height.
func (a Vec3) Flat() Vec2 { return Vec2{a.X, a.Y} }

// Frame is the frame of a wall on plan: stations s run along D from Origin,
// depth t runs inward along In from the measured face (the outside face of
// the studs), z is up. In is to the left of D, so that somebody who stands
// outside and looks at the wall sees stations grow from left to right.
type Frame struct {
	Origin Vec2
	D, In  Vec2 // unit
}

// NewFrame returns the frame of the line from a to b.
func NewFrame(a, b Vec2) Frame {
	d := b.Sub(a).Unit()
	return Frame{Origin: a, D: d, In: d.Left()}
}

// At returns the point at station s, depth t and height z.
func (f Frame) At(s, t, z float64) Vec3 {
	return f.Origin.Add(f.D.Mul(s)).Add(f.In.Mul(t)).Up(z)
}

// Local returns station and depth of p.
func (f Frame) Local(p Vec2) (s, t float64) {
	v := p.Sub(f.Origin)
	return v.Dot(f.D), v.Dot(f.In)
}

// Box returns the solid between stations s0..s1, depths t0..t1, heights z0..z1.
func (f Frame) Box(s0, s1, t0, t1, z0, z1 float64) Solid {
	return Box(f.At(s0, t0, z0), f.D.Up(0).Mul(s1-s0), f.In.Up(0).Mul(t1-t0), Vec3{0, 0, z1 - z0})
}
