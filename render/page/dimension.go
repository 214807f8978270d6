package page

import (
	"math"

	"galewright/plan/geom"
	"galewright/render/sheet"
)

// Bounds returns the upright rectangle around points.
func Bounds(pts []sheet.Pt) sheet.Rect {
	return sheet.Bounds(sheet.Polyline{Pts: pts}, nil)
}

// Spread moves intervals of the given sizes, wanted about centers that run
// upward, apart until none overlaps, and as little as possible: touching
// ones are pooled and the pool centered on what its members want.
func Spread(centers, sizes []sheet.MM) []sheet.MM {
	type pool struct {
		n         int
		want, len sheet.MM // sum of wanted starts of the pool, its length
	}
	var pools []pool
	for i, c := range centers {
		p := pool{1, c - sizes[i]/2, sizes[i]}
		for len(pools) > 0 {
			q := pools[len(pools)-1]
			if q.want/sheet.MM(q.n)+q.len <= p.want/sheet.MM(p.n) {
				break
			}
			p = pool{q.n + p.n, q.want + p.want - sheet.MM(p.n)*q.len, q.len + p.len}
			pools = pools[:len(pools)-1]
		}
		pools = append(pools, p)
	}
	out := make([]sheet.MM, 0, len(centers))
	for _, p := range pools {
		at := p.want / sheet.MM(p.n)
		for range p.n {
			i := len(out)
			out = append(out, at+sizes[i]/2)
			at += sizes[i]
		}
	}
	return out
}

// Tick draws the slash that ends a dimension.
func (p *Page) Tick(at sheet.Pt) {
	p.Line(sheet.PenMember, sheet.LayerDimension, sheet.Pt{X: at.X - 0.8, Y: at.Y + 0.8}, sheet.Pt{X: at.X + 0.8, Y: at.Y - 0.8})
}

// AngleOf returns the angle of a direction from which text is read upright, deg.
func AngleOf(dir geom.Vec2) float64 {
	a := math.Atan2(dir.Y, dir.X) * 180 / math.Pi
	switch {
	case a > 90+1e-9:
		a -= 180
	case a <= -90+1e-9:
		a += 180
	}
	return a
}
