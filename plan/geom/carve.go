package geom

// sliver is the volume, in³, under which a part of a solid is dropped.
const sliver = 1e-4

// Carve cuts from every solid of list what lies inside all planes. What is
// left of a solid is a slice of convex parts that touch but do not overlap,
// cut along the planes in the order given.
func Carve(list []Solid, planes []Plane) (out []Solid) {
	for _, s := range list {
		if !s.reaches(planes) {
			out = append(out, s)
			continue
		}
		for _, p := range planes {
			if part := s.Clip(Plane{p.N.Mul(-1), -p.C}); part.Volume() > sliver {
				out = append(out, part)
			}
			if s = s.Clip(p); s.Volume() <= sliver {
				break
			}
		}
	}
	return out
}

// reaches tells whether part of s lies inside all planes.
func (s Solid) reaches(planes []Plane) bool {
	for _, p := range planes {
		if s = s.Clip(p); s.Empty() || s.Volume() <= sliver {
			return false
		}
	}
	return true
}

// Along returns the extent of s along the unit direction n.
func (s Solid) Along(n Vec3) (lo, hi float64) { return s.along(n) }
