package framing

import (
	"cmp"
	"math"
	"slices"

	"galewright/plan"
	"galewright/plan/geom"
)

// A rake wall's plates follow the roof. Its seat is a list of half spaces
// below the roof, and its upper plate fills them; the ceiling is a height
// above everything in it, from which members are cut down.
func (w *framedWall) ceiling() float64 { return w.head + 1200 }

// lowered returns h moved down square to its face by d inches.
func lowered(h geom.Plane, d float64) geom.Plane {
	return geom.Plane{N: h.N, C: h.C - d*h.N.Len()}
}

// rakePlates adds the two sloping plates below each plane of the seat,
// meeting plumb where two planes cross.
func (b *builder) rakePlates(w *framedWall) {
	for i, h := range w.seat {
		run := w.frame.Box(w.s0, w.s1, 0, w.Depth(), w.base, w.ceiling())
		for j, o := range w.seat {
			if i != j {
				run = run.Clip(lowerOf(h, o))
			}
		}
		if run.Empty() {
			continue
		}
		w.plates = append(w.plates, b.slopedRun(w, run, h, plan.TopPlate, 2*plate)...)
		w.caps = append(w.caps, b.slopedRun(w, run, h, plan.UpperPlate, plate)...)
	}
	for _, row := range [][]*Member{w.plates, w.caps} {
		slices.SortFunc(row, func(a, b *Member) int { return cmp.Compare(a.S0, b.S0) })
	}
}

// lowerOf returns the half space of plan in which plane h lies below o.
func lowerOf(h, o geom.Plane) geom.Plane {
	flat := func(p geom.Plane) (geom.Vec3, float64) {
		return geom.Vec3{X: p.N.X / p.N.Z, Y: p.N.Y / p.N.Z}, p.C / p.N.Z
	}
	a, c := flat(h)
	d, e := flat(o)
	return geom.Plane{N: d.Sub(a), C: e - c}
}

// slopedRun adds one plate under plane h: its top lies depth-plate below h,
// its foot depth below, in as many pieces as the stock asks for.
func (b *builder) slopedRun(w *framedWall, run geom.Solid, h geom.Plane, role plan.Role, depth float64) (out []*Member) {
	foot := lowered(h, depth)
	layer := run.Clip(lowered(h, depth-plate)).Clip(geom.Plane{N: foot.N.Mul(-1), C: -foot.C})
	lo, hi, _ := w.reach(layer)
	slope := math.Hypot(1, h.N.Dot(w.frame.D.Up(0))/h.N.Z) // length along the slope by station
	n := math.Ceil((hi-lo)*slope/b.stock(w) - geom.Eps)
	for k := range int(n) {
		s0, s1 := lo+(hi-lo)*float64(k)/n, lo+(hi-lo)*float64(k+1)/n
		part := layer.Clip(w.before(s1)).Clip(w.after(s0))
		if !part.Empty() {
			out = append(out, b.slopedPlate(w, part, role, s0, s1, lowered(h, depth-plate/2)))
		}
	}
	return out
}

// topAt returns the height of the top of a plate of w at station s.
func topAt(m *Member, s float64) float64 {
	run := m.S1 - m.S0
	mid := m.A.Z + (m.B.Z-m.A.Z)*(s-m.S0)/run
	return mid + plate/2*m.Length/run
}

// reach returns the stations that a solid takes up along w.
func (w *framedWall) reach(s geom.Solid) (lo, hi float64, ok bool) {
	lo, hi = math.Inf(1), math.Inf(-1)
	s.Points(func(p geom.Vec3) {
		x, _ := w.frame.Local(p.Flat())
		lo, hi = min(lo, x), max(hi, x)
	})
	return lo, hi, lo < hi
}

// before and after are the half spaces of stations up to and from s.
func (w *framedWall) before(s float64) geom.Plane {
	return geom.PlaneAt(w.frame.At(s, 0, 0), w.frame.D.Up(0))
}

func (w *framedWall) after(s float64) geom.Plane {
	return geom.PlaneAt(w.frame.At(s, 0, 0), w.frame.D.Mul(-1).Up(0))
}

// slopedPlate adds one piece of a plate whose center lies in plane mid.
func (b *builder) slopedPlate(w *framedWall, s geom.Solid, role plan.Role, s0, s1 float64, mid geom.Plane) *Member {
	m := &Member{
		ID: w.Name + "/" + string(role) + "@" + at(s0), Role: role, Wall: w.Wall, Level: w.Level,
		Section: flat(w), S0: s0, S1: s1, Solid: []geom.Solid{s},
	}
	lo, hi := s.Bounds()
	m.Z0, m.Z1 = lo.Z, hi.Z
	end := func(x float64) geom.Vec3 {
		p := w.frame.At(x, w.Depth()/2, 0)
		p.Z = (mid.C - mid.N.Dot(p)) / mid.N.Z
		return p
	}
	m.A, m.B = end(s0), end(s1)
	m.Length = m.B.Sub(m.A).Len()
	return b.member(m)
}
