package geom

import "math"

// Apart returns the least distance between the segments p0–p1 and q0–q1.
func Apart(p0, p1, q0, q1 Vec3) float64 {
	u, v, w := p1.Sub(p0), q1.Sub(q0), p0.Sub(q0)
	a, b, c, d, e := u.Dot(u), u.Dot(v), v.Dot(v), u.Dot(w), v.Dot(w)
	at := func(s, t float64) float64 { return w.Add(u.Mul(s)).Sub(v.Mul(t)).Len() }
	clamp := func(x float64) float64 { return math.Min(1, math.Max(0, x)) }
	best := math.Inf(1)
	if den := a*c - b*b; den > 1e-12 { // the lines are not parallel
		if s, t := (b*e-c*d)/den, (a*e-b*d)/den; s >= 0 && s <= 1 && t >= 0 && t <= 1 {
			best = at(s, t)
		}
	}
	for _, s := range []float64{0, 1} {
		best = math.Min(best, at(s, clamp((e+b*s)/math.Max(c, 1e-12))))
		best = math.Min(best, at(clamp((b*s-d)/math.Max(a, 1e-12)), s))
	}
	return best
}
