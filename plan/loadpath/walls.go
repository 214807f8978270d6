package loadpath

import (
	"math"

	"galewright/plan"
	"galewright/plan/wind"
)

// deckLoad returns the level wind load on the edge of a deck: from the upper
// half of the walls under it, what stands between it and the floor above, the
// lower half of the walls on it, and the roofs over it.
func (m *model) deckLoad(d *diaphragm, g gust) (walls, roofs []stretch) {
	cross, top := 1-g.axis, d.level.Top()
	walls = m.band(g, axis(d.extent.lo, cross), axis(d.extent.hi, cross), [2]float64{top - d.level.PlateHeight/2, top}, walls)
	if up := m.plan.Above(d.level); up != nil {
		if e, ok := wallExtent(m.plan, up); ok {
			walls = m.band(g, axis(e.lo, cross), axis(e.hi, cross), [2]float64{top, top + up.FloorDepth + up.PlateHeight/2}, walls)
		}
	}
	for _, r := range m.plan.Roofs {
		if r.Over == d.level {
			roofs = m.roofBand(g, r, roofs)
		}
	}
	return walls, roofs
}

// band adds the pressure on a strip of wall between two heights above grade
// (in) and two coordinates across the wind, end zone apart.
func (m *model) band(g gust, lo, hi float64, z [2]float64, out []stretch) []stretch {
	in, end := m.wallPressure(g, z)
	return m.ends(g, lo, hi, face{z: z, high: (z[1] - z[0]) / 12}, in, end, out)
}

// ends adds lo..hi with the pressures of a face, psf, in two pieces: the end zone
// at the reference corner, and the rest.
func (m *model) ends(g gust, lo, hi float64, on face, in, end float64, out []stretch) []stretch {
	zone := math.Min(24*m.basis.EdgeStrip(), hi-lo)
	inner := func(lo, hi float64) stretch { return stretch{lo, hi, in * on.high, on.with(in, false)} }
	corner := func(lo, hi float64) stretch { return stretch{lo, hi, end * on.high, on.with(end, true)} }
	if g.proc != plan.Envelope {
		return append(out, inner(lo, hi))
	}
	if g.corner < 0 {
		return append(out, corner(lo, lo+zone), inner(lo+zone, hi))
	}
	return append(out, inner(lo, hi-zone), corner(hi-zone, hi))
}

// wallPressure returns the sum of windward and leeward wall pressure, psf, in
// the interior and the end zone. Envelope: zones 1 and 4 across the main
// ridge, 5 and 6 along it. Directional: the windward wall's with the mean q of
// its height above grade z (in), the leeward wall's with qh; it has no end
// zone. Internal pressure is on both and goes out.
func (m *model) wallPressure(g gust, z [2]float64) (in, end float64) {
	ridge := m.alongRidge(g.axis)
	switch {
	case g.least():
		return wind.LeastWall, wind.LeastWall
	case g.proc == plan.Directional:
		l, b := m.basis.Along(ridge)
		psf := wind.Gust * (wind.WindwardWallCp*m.basis.MeanQKd(z[0]/12, z[1]/12) - wind.LeewardWallCp(l, b)*m.basis.Direct().QKd)
		return psf, psf
	}
	c, i, k := wind.CaseA(m.basis.Theta), 0, 3
	if ridge && m.main != nil {
		c, i, k = wind.CaseB, 4, 5
	}
	return m.q * (c.Interior[i] - c.Interior[k]), m.q * (c.End[i] - c.End[k])
}
