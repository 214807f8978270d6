package schedule

import (
	"math"

	"galewright/plan"
	"galewright/plan/framing"
)

// rect is a part of a wall's face: stations, and heights above its subfloor, in.
type rect struct{ x0, x1, z0, z1 float64 }

// cut returns what of r lies in o; empty where nothing does.
func (r rect) cut(o rect) (rect, bool) {
	c := rect{max(r.x0, o.x0), min(r.x1, o.x1), max(r.z0, o.z0), min(r.z1, o.z1)}
	return c, c.x1-c.x0 > tiny && c.z1-c.z0 > tiny
}

func (r rect) area() float64 { return (r.x1 - r.x0) * (r.z1 - r.z0) }

// tiny is a length, in, that no panel has.
const tiny = 1e-6

// countOwn covers the stretch with upright panels from its start, up to the highest place
// of the plates over each, and nails each panel. A panel that lies in an opening whole is
// none; of what another one cuts out nothing is used again.
func (h *Sheathing) countOwn(house *framing.House) {
	top := topsOf(house, h.Wall)
	for x := h.Shear.From; x < h.Shear.To-tiny; x += h.Size[0] {
		to := min(x+h.Size[0], h.Shear.To)
		for z, high := 0.0, top.highest(x, to); z < high-tiny; z += h.Size[1] {
			panel := rect{x, to, z, min(z+h.Size[1], high)}
			holes := h.holes(panel)
			if left := panel.area() - areas(holes); left > tiny {
				h.Panels++
				h.Nails += h.nailsAround(panel, holes)
			}
		}
	}
}

// holes returns what the openings cut out of a panel.
func (h *Sheathing) holes(panel rect) (out []rect) {
	for _, o := range h.Wall.Openings {
		if c, ok := panel.cut(rect{o.At, o.End(), o.Sill, o.Sill + o.Height}); ok {
			out = append(out, c)
		}
	}
	return out
}

func areas(list []rect) (a float64) {
	for _, r := range list {
		a += r.area()
	}
	return a
}

// nailsAround returns the nails of one panel with holes: along its four edges and around
// each hole at the edge spacing, on each stud between at the field spacing, but none in a hole.
func (h *Sheathing) nailsAround(panel rect, holes []rect) int {
	e, f := h.Shear.Edge, h.Shear.Field
	if e <= 0 || f <= 0 {
		return 0
	}
	n := h.panelNails(panel.x1-panel.x0, panel.z1-panel.z0)
	studs := max(int(math.Ceil((panel.x1-panel.x0)/h.Wall.Spacing-1e-9))-1, 0)
	for _, o := range holes {
		gone, around := 0.0, 0.0 // of the panel's edges, and new ones
		for _, side := range []struct {
			long float64
			edge bool
		}{{o.z1 - o.z0, o.x0-panel.x0 < tiny}, {o.z1 - o.z0, panel.x1-o.x1 < tiny}, {o.x1 - o.x0, o.z0-panel.z0 < tiny}, {o.x1 - o.x0, panel.z1-o.z1 < tiny}} {
			if side.edge {
				gone += side.long
			} else {
				around += side.long
			}
		}
		n += int(math.Ceil(around/e-1e-9)) - int(gone/e+1e-9)
		n -= int(float64(studs) * (o.x1 - o.x0) / (panel.x1 - panel.x0) * (o.z1 - o.z0) / f)
	}
	return max(n, 0)
}

// tops is the upper edge of a wall's plates, piece by piece.
type tops struct {
	height float64 // where no plate is known, in above the subfloor
	pieces [][4]float64
}

// topsOf reads the upper edge of a wall from its upper plates.
func topsOf(house *framing.House, w *plan.Wall) tops {
	t, f := tops{height: w.TopHeight()}, w.Frame()
	for _, m := range house.In(w) {
		if m.Role != plan.UpperPlate {
			continue
		}
		for _, solid := range m.Solid {
			for _, face := range solid.Faces {
				for i, p := range face {
					q := face[(i+1)%len(face)]
					a, _ := f.Local(p.Flat())
					b, _ := f.Local(q.Flat())
					t.pieces = append(t.pieces, [4]float64{a, p.Z - w.Level.Floor, b, q.Z - w.Level.Floor})
				}
			}
		}
	}
	return t
}

// highest returns the greatest height, in above the subfloor, of the edge between two
// stations.
func (t tops) highest(x0, x1 float64) float64 {
	high, found := 0.0, false
	for _, p := range t.pieces {
		a, az, b, bz := p[0], p[1], p[2], p[3]
		if a > b {
			a, az, b, bz = b, bz, a, az
		}
		lo, hi := max(a, x0), min(b, x1)
		if hi < lo-tiny {
			continue
		}
		for _, s := range []float64{lo, hi} {
			z := max(az, bz)
			if b-a > tiny {
				z = az + (bz-az)*(s-a)/(b-a)
			}
			high, found = max(high, z), true
		}
	}
	if !found {
		return t.height
	}
	return high
}
