package project

import "galewright/plan/geom"

// View is a direction to look along, as the axes of the picture: to the right,
// up, and toward the eye; unit vectors, square to each other, right-handed.
type View struct{ Right, Up, Toward geom.Vec3 }

// Looking returns the view along a direction of sight, with up as near as can
// be to the upward direction given. The two must not be parallel.
func Looking(sight, up geom.Vec3) View {
	toward := sight.Mul(-1).Unit()
	right := up.Cross(toward).Unit()
	return View{Right: right, Up: toward.Cross(right), Toward: toward}
}

// Plan looks down with north up.
func Plan() View { return Looking(geom.Vec3{Z: -1}, geom.Vec3{Y: 1}) }

// At returns a point in the picture: right and up, in.
func (v View) At(p geom.Vec3) geom.Vec2 { return geom.Vec2{X: p.Dot(v.Right), Y: p.Dot(v.Up)} }

// Depth returns how near to the eye a point is, in: the larger, the nearer.
func (v View) Depth(p geom.Vec3) float64 { return p.Dot(v.Toward) }

// box returns the extent of a solid in the picture, and in depth as Z.
func (v View) box(s geom.Solid) (lo, hi geom.Vec3) {
	first := true
	s.Points(func(p geom.Vec3) {
		q := geom.Vec3{X: p.Dot(v.Right), Y: p.Dot(v.Up), Z: p.Dot(v.Toward)}
		if first {
			lo, hi, first = q, q, false
		}
		lo = geom.Vec3{X: min(lo.X, q.X), Y: min(lo.Y, q.Y), Z: min(lo.Z, q.Z)}
		hi = geom.Vec3{X: max(hi.X, q.X), Y: max(hi.Y, q.Y), Z: max(hi.Z, q.Z)}
	})
	return lo, hi
}
