package framing

import "galewright/plan/geom"

// addMember puts m into the grid, unless it has no body.
func addMember(g *geom.Grid[*Member], m *Member) {
	if len(m.Solid) == 0 {
		return
	}
	lo, hi := m.Bounds()
	g.Add(m, lo, hi, geom.Slant(m.A.Flat(), m.B.Flat(), max(m.Section.Width(), m.Section.Depth)))
}

// Bounds returns the axis-aligned extent of the member, in.
func (m *Member) Bounds() (lo, hi geom.Vec3) {
	for i, s := range m.Solid {
		l, h := s.Bounds()
		if i == 0 {
			lo, hi = l, h
			continue
		}
		lo = geom.Vec3{X: min(lo.X, l.X), Y: min(lo.Y, l.Y), Z: min(lo.Z, l.Z)}
		hi = geom.Vec3{X: max(hi.X, h.X), Y: max(hi.Y, h.Y), Z: max(hi.Z, h.Z)}
	}
	return lo, hi
}
