package page

import (
	"galewright/plan/geom"
	"galewright/render/sheet"
)

// Viewport maps a plane of the house onto paper: model coordinates in inches,
// u to the right and v up, at a real scale. On elevations u is the station
// along the line and v the height above grade; on plans u is east, v north.
type Viewport struct {
	Scale  Scale
	Origin sheet.Pt // where model (0, 0) falls on paper
	Clip   sheet.Rect
	// Range of the model that is shown, in; zero shows all.
	U0, U1, V0, V1 float64
}

// NewViewport returns a viewport that shows the model range u0..u1, v0..v1
// with its lower left corner at p.
func NewViewport(s Scale, p sheet.Pt, u0, u1, v0, v1 float64) *Viewport {
	k := s.K()
	w, h := sheet.MM((u1-u0)*k), sheet.MM((v1-v0)*k)
	return &Viewport{
		Scale:  s,
		Origin: sheet.Pt{X: p.X - sheet.MM(u0*k), Y: p.Y + sheet.MM(v0*k)},
		Clip:   sheet.Rect{X: p.X, Y: p.Y - h, W: w, H: h},
		U0:     u0, U1: u1, V0: v0, V1: v1,
	}
}

// Pt returns the place on paper of model point u, v.
func (v *Viewport) Pt(u, w float64) sheet.Pt {
	k := v.Scale.K()
	return sheet.Pt{X: v.Origin.X + sheet.MM(u*k), Y: v.Origin.Y - sheet.MM(w*k)}
}

// X returns the place on paper of model u.
func (v *Viewport) X(u float64) sheet.MM { return v.Pt(u, 0).X }

// Y returns the place on paper of model height w.
func (v *Viewport) Y(w float64) sheet.MM { return v.Pt(0, w).Y }

// Len returns the length on paper of d inches of house.
func (v *Viewport) Len(d float64) sheet.MM { return sheet.MM(d * v.Scale.K()) }

// Rect returns the rectangle on paper of a model rectangle.
func (v *Viewport) Rect(u0, u1, w0, w1 float64) sheet.Rect {
	p := v.Pt(u0, w1)
	return sheet.Rect{X: p.X, Y: p.Y, W: v.Len(u1 - u0), H: v.Len(w1 - w0)}
}

// Shows tells whether any of the model rectangle is in range.
func (v *Viewport) Shows(u0, u1, w0, w1 float64) bool {
	return u1 > v.U0+geom.Eps && u0 < v.U1-geom.Eps && w1 > v.V0+geom.Eps && w0 < v.V1-geom.Eps
}

// Polygon maps a convex polygon of model points and cuts it at the range. It
// returns nil when nothing is left.
func (v *Viewport) Polygon(pts []geom.Vec2) []sheet.Pt {
	pts = clipConvex(pts, v.U0, v.U1, v.V0, v.V1)
	if len(pts) < 3 {
		return nil
	}
	out := make([]sheet.Pt, len(pts))
	for i, p := range pts {
		out[i] = v.Pt(p.X, p.Y)
	}
	return out
}

// Segment maps a line and cuts it at the range; ok is false when nothing is left.
func (v *Viewport) Segment(a, b geom.Vec2) (p, q sheet.Pt, ok bool) {
	t0, t1 := 0.0, 1.0
	cut := func(d, lo, hi float64) bool {
		if d == 0 {
			return lo <= 0 && hi >= 0
		}
		l, h := lo/d, hi/d
		if l > h {
			l, h = h, l
		}
		t0, t1 = max(t0, l), min(t1, h)
		return t0 <= t1
	}
	d := b.Sub(a)
	if !cut(d.X, v.U0-a.X, v.U1-a.X) || !cut(d.Y, v.V0-a.Y, v.V1-a.Y) {
		return p, q, false
	}
	a, b = a.Add(d.Mul(t0)), a.Add(d.Mul(t1))
	return v.Pt(a.X, a.Y), v.Pt(b.X, b.Y), true
}

// clipConvex cuts a convex polygon at an upright rectangle (Sutherland and
// Hodgman).
func clipConvex(pts []geom.Vec2, x0, x1, y0, y1 float64) []geom.Vec2 {
	for _, e := range [...]struct {
		n geom.Vec2
		c float64
	}{{geom.Vec2{X: -1}, -x0}, {geom.Vec2{X: 1}, x1}, {geom.Vec2{Y: -1}, -y0}, {geom.Vec2{Y: 1}, y1}} {
		var out []geom.Vec2
		for i, a := range pts {
			b := pts[(i+1)%len(pts)]
			da, db := e.n.Dot(a)-e.c, e.n.Dot(b)-e.c
			if da <= 0 {
				out = append(out, a)
			}
			if (da < 0 && db > 0) || (da > 0 && db < 0) {
				out = append(out, a.Add(b.Sub(a).Mul(da/(da-db))))
			}
		}
		pts = out
	}
	return pts
}

// Within returns the viewport with its range cut to u0..u1.
func (v *Viewport) Within(u0, u1 float64) *Viewport {
	w := *v
	w.U0, w.U1 = max(v.U0, u0), min(v.U1, u1)
	return &w
}
