package wood

import (
	"math"

	"galewright/plan/framing"
	"galewright/plan/geom"
)

// Washer is a flat plate under a nut, in.
type Washer struct {
	Side  float64 // of a square plate, one side along the grain; else the diameter
	Round bool
	Hole  float64 // in the wood, its diameter
}

// sides is how many sides stand for a round washer: its area is then a third
// of a percent short.
const sides = 48

// outline returns the corners of a washer around at, u and v the directions
// along its sides.
func (x Washer) outline(at, u, v geom.Vec3) (out []geom.Vec3) {
	r := x.Side / 2
	if !x.Round {
		a, b := u.Mul(r), v.Mul(r)
		return []geom.Vec3{at.Sub(a).Sub(b), at.Add(a).Sub(b), at.Add(a).Add(b), at.Sub(a).Add(b)}
	}
	for i := range sides {
		sin, cos := math.Sincos(2 * math.Pi * float64(i) / sides)
		out = append(out, at.Add(u.Mul(r*cos)).Add(v.Mul(r*sin)))
	}
	return out
}

// Bears returns the area of wood of m, in², right under a washer that lies at
// a point of its face; n is the normal out of the wood. What hangs over the
// member's edge, or over a neighbor, counts for nothing, nor does the hole.
func (w *Index) Bears(m *framing.Member, at, n geom.Vec3, x Washer) float64 {
	n = n.Unit()
	u := Grain(m).Sub(n.Mul(n.Dot(Grain(m))))
	if u.Len() < 0.1 { // on end grain: any way round
		u = sideways(n)
	}
	u = u.Unit()
	slab := geom.Prism(x.outline(at.Sub(n.Mul(Hair)), u, n.Cross(u)), n.Mul(-Hair))
	area := 0.0
	for _, planes := range w.parts[m] {
		area += within(slab, planes).Volume() / Hair
	}
	return max(0, area-math.Pi/4*x.Hole*x.Hole)
}

// within returns the part of a solid inside all planes.
func within(s geom.Solid, planes []geom.Plane) geom.Solid {
	for _, p := range planes {
		if s = s.Clip(p); s.Empty() {
			break
		}
	}
	return s
}

// blocks returns the member other than m whose wood is where a washer and nut
// would be, under a point of the underside of m; nil for none.
func (w *Index) blocks(m *framing.Member, at geom.Vec3, x Washer, room float64) *framing.Member {
	u := Grain(m)
	u.Z = 0
	if u.Len() < 0.1 {
		u = sideways(geom.Vec3{Z: 1})
	}
	u = u.Unit()
	down := geom.Vec3{Z: -1}
	box := geom.Prism(x.outline(at.Add(down.Mul(Hair)), u, down.Cross(u)), down.Mul(room))
	lo, hi := box.Bounds()
	for _, b := range w.grid.Within(lo, hi) {
		if b.m != m && within(box, b.planes).Volume() > sliver {
			return b.m
		}
	}
	return nil
}

// sliver is the volume of wood that may be cut away for a washer, in³: the
// play of a joint cut by hand (common practice, no published source).
const sliver = 0.02
