package geom

import "math"

// Planes returns the half spaces whose common part is s, one a face, unit
// normals outward.
func (s Solid) Planes() []Plane {
	out := make([]Plane, 0, len(s.Faces))
	for _, f := range s.Faces {
		if n := normal(f); n.Len() > 0 {
			out = append(out, PlaneAt(f[0], n))
		}
	}
	return out
}

// Within returns the part t0..t1 of the line a + t d, t from lo to hi, that
// lies in all half spaces; ok is false when none does.
func Within(planes []Plane, a, d Vec3, lo, hi float64) (t0, t1 float64, ok bool) {
	t0, t1 = lo, hi
	for _, p := range planes {
		k, gap := p.N.Dot(d), p.C-p.N.Dot(a)
		switch {
		case math.Abs(k) < 1e-12:
			if gap < 0 {
				return 0, 0, false
			}
		case k > 0:
			t1 = min(t1, gap/k)
		default:
			t0 = max(t0, gap/k)
		}
		if t1 <= t0 {
			return 0, 0, false
		}
	}
	return t0, t1, true
}
