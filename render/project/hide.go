package project

import "galewright/plan/geom"

// skin is how far inside a solid a line of sight must run for it to hide what
// lies behind, in: what only touches hides nothing.
const skin = 1e-3

// hides returns the part of the line a to b, as shares of its length, that a
// solid hides from somebody who looks at it against the direction toward.
//
// A point a + t(b-a) is hidden where some point s farther toward the eye lies
// in all half spaces. Each is a linear inequality in t and s; s is eliminated
// by pairing each lower bound of it with each upper one (Fourier and Motzkin).
func hides(planes []geom.Plane, a, b, toward geom.Vec3) (span, bool) {
	d := b.Sub(a)
	t := span{0, 1}
	var lows, highs [12]line                                // most solids have six faces: no allocation for them
	low, high := append(lows[:0], line{skin, 0}), highs[:0] // bounds of s: at + slope t
	for _, p := range planes {
		room, kt, ks := p.C-skin-p.N.Dot(a), p.N.Dot(d), p.N.Dot(toward)
		switch {
		case ks > level:
			high = append(high, line{room / ks, -kt / ks})
		case ks < -level:
			low = append(low, line{room / ks, -kt / ks})
		case !t.under(kt, room):
			return span{}, false
		}
	}
	for _, l := range low {
		for _, h := range high {
			if !t.under(l.slope-h.slope, h.at-l.at) {
				return span{}, false
			}
		}
	}
	return t, t.to-t.from > 1e-9
}

// level is the part of a face's normal toward the eye under which the face is
// seen edge on.
const level = 1e-9

// line is a bound that grows with t.
type line struct{ at, slope float64 }

// under narrows the span to the t with k t <= room; false when none is left.
func (t *span) under(k, room float64) bool {
	switch {
	case k > level:
		t.to = min(t.to, room/k)
	case k < -level:
		t.from = max(t.from, room/k)
	default:
		return room >= 0
	}
	return t.to > t.from
}
