package geom

import "math"

// How nearly two directions must agree. Plans are drawn by hand and
// members follow them, so a direction may be a little off; each threshold is
// the cosine or sine of the angle it means.
const (
	// diagonal is a little under cos 45°, so that what lies at 45° runs along
	// both axes.
	diagonal = 0.7
	cos26    = 0.9
	cos11    = 0.98
	cos8     = 0.99
	cos60    = 0.5
	cos1     = 0.9999 // 0.8°
	sin15    = 0.26
	sin30    = 0.5
	sin17    = 0.3
	sin6     = 0.1
	sin3     = 0.05
	sin0     = 1e-3 // 0.06°: rounding and nothing more
)

// Along returns the coordinate of a along axis 0 (x) or 1 (y).
func (a Vec2) Along(axis int) float64 {
	if axis == 0 {
		return a.X
	}
	return a.Y
}

// MainAxis returns the axis that a unit direction runs along rather than
// across; y at 45°.
func (a Vec2) MainAxis() int {
	if a.Mainly(1) {
		return 1
	}
	return 0
}

// Mainly tells whether a unit direction runs along an axis rather than across
// it; at 45° it does both.
func (a Vec2) Mainly(axis int) bool { return math.Abs(a.Along(axis)) > diagonal }

// RunsAlong tells whether a unit direction runs along an axis within 11°, so
// that what stands in it resists force along the axis.
func (a Vec2) RunsAlong(axis int) bool { return math.Abs(a.Along(axis)) >= cos11 }

// Leans tells whether a unit direction is more than 17° off square to an axis:
// what spans along the axis does not rest on it.
func (a Vec2) Leans(axis int) bool { return math.Abs(a.Along(axis)) > sin17 }

// With tells whether two unit directions look the same way, within 26°: the
// slope of a roof face and of its rafters, a wall and the side it closes.
func With(a, b Vec2) bool { return a.Dot(b) > cos26 }

// Against tells whether two unit directions look opposite ways, within 26°:
// rafters that meet at a ridge.
func Against(a, b Vec2) bool { return a.Dot(b) < -cos26 }

// Square tells whether two unit directions are square to each other, within
// 8°.
func Square(a, b Vec2) bool { return math.Abs(a.Cross(b)) > cos8 }

// Crosses tells whether two unit directions cross at 30° or more: what crosses
// a plate bears on it, what does not runs along it.
func Crosses(a, b Vec2) bool { return math.Abs(a.Cross(b)) > sin30 }

// Lengthways tells whether one unit direction runs along the other, either way,
// rather than across it; at 45° it does both.
func Lengthways(a, b Vec2) bool { return math.Abs(a.Dot(b)) > diagonal }

// Athwart tells whether one unit direction runs across the other rather than
// along it; at 45° it does both.
func Athwart(a, b Vec2) bool { return math.Abs(a.Cross(b)) > diagonal }

// Toward tells whether a face whose normal is a looks the way of b rather than
// aside: within 60°. Of a normal in space a is its part on plan.
func Toward(a, b Vec2) bool { return a.Dot(b) > cos60 }

// InLine tells whether two unit directions run so nearly the same way, either
// way about, within 15°, that two walls go on as one: neither can butt against
// the other's side without a splinter.
func InLine(a, b Vec2) bool { return math.Abs(a.Cross(b)) < sin15 }

// OneLine tells whether two unit directions are those of one line, looking the
// same way, within 0.8°.
func OneLine(a, b Vec2) bool { return a.Dot(b) >= cos1 }

// Parallel tells whether two unit directions lie along each other, either way,
// within 3°: members that carry a line of force on.
func Parallel(a, b Vec2) bool { return math.Abs(a.Cross(b)) < sin3 }

// Skims tells whether two unit directions meet at less than 6°: too flat a cut
// to be made.
func Skims(a, b Vec2) bool { return math.Abs(a.Cross(b)) < sin6 }

// Same tells whether two unit directions are one, either way, but for
// rounding.
func Same(a, b Vec2) bool { return math.Abs(a.Cross(b)) < sin0 }

// Upright tells whether a unit direction is steeper than 45°: what runs that
// way stands, and what does not lies or slopes. A rafter of 12:12 slopes,
// whichever way its length is rounded.
func Upright(d Vec3) bool { return d.Z*d.Z > 0.5+1e-6 }

// LiesFlat tells whether a face with unit normal n lies, as a plate's top or a
// roof does, rather than stands: it is no steeper than 60°.
func LiesFlat(n Vec3) bool { return math.Abs(n.Z) > cos60 }

// LooksUp tells whether a face with unit normal n lies and is the top of what
// it belongs to.
func LooksUp(n Vec3) bool { return n.Z > cos60 }

// Facing tells whether a face with unit normal n looks the way of a unit direction,
// within 8°.
func Facing(n, way Vec3) bool { return n.Dot(way) > cos8 }

// Aligned tells whether two unit directions in space run along each other, either way,
// within 8°.
func Aligned(a, b Vec3) bool { return math.Abs(a.Dot(b)) > cos8 }
