package loadpath

import (
	"math"
	"slices"

	"galewright/plan/geom"
)

// shape fills in the geometry of a pair from where its rafters rest. What passes the ridge
// is shared as if both feet stood level. Where one stands higher than the other, as at a
// dormer's header, on its valley board or on a valley, the pull at the ridge is that of
// statics of two rafters hinged at the ridge and held at both feet, which is more: the rise
// that it comes out of is both heights, each weighed by the other's distance. By the same
// statics less uplift came to the higher foot, for the level force that it then holds; that
// force is not followed, so the uplift is not lessened.
func (p *pair) shape() {
	left, right := p.a.foot(), p.b.foot()
	p.apex = p.a.Run - left
	p.span = p.apex + p.b.Run - right + p.level
	over := [2]float64{p.a.Tan * p.apex, p.b.Tan * (p.span - p.apex)}
	p.rise = (over[0] + over[1]) / 2
	weighed := (over[0]*(p.span-p.apex) + over[1]*p.apex) / math.Max(p.span, 1e-9)
	if math.Abs(over[0]-over[1]) > 1 && weighed < p.rise { // less is nothing: an inch on five feet makes a ten-thousandth
		p.high, p.rise = over, weighed
	}
}

// across returns what passes the ridge from a to b of moments about their own feet.
func (p *pair) across(left, right Force) Force {
	return left.add(right.times(-1)).times(1 / p.span)
}

// tension returns the pull across the ridge of moments about the feet; none where the
// ridge lies no higher than they.
func (p *pair) tension(left, right Force) Force {
	if p.rise <= 1 {
		return Force{}
	}
	return left.times(p.span - p.apex).add(right.times(p.apex)).times(1 / (p.rise * p.span))
}

// far is the part of a force at the ridge that goes to the foot of b.
func (p *pair) far() float64 { return p.across(Force{W: p.apex}, Force{}).W }

// foot returns u of the lowest support, or of the outside face of the wall
// where there is none.
func (s *strip) foot() float64 {
	if len(s.ends) > 0 {
		return s.ends[0].u
	}
	return s.inside[0]
}

// side gathers the loads of one rafter of a pair: their sum and their moment
// about its own plate. Pressure is square to the slope, so its level part,
// at the height of the place, turns the pair too: W(x + z tan).
type side struct{ sum, moment Force }

func (m *model) sideLoads(s *strip, rc roofCase) (out side) {
	u0 := s.foot()
	m.roofLoads(s, rc, func(p patch) {
		x, f := p.mid()-u0, p.force
		out.sum.take(f)
		out.moment.take(Force{W: f.W * x * (1 + s.Tan*s.Tan), D: f.D * x})
	})
	return out
}

// gives tells whether a ridge hands all of a force at p, or more, to a pair.
func (r *ridge) gives(p geom.Vec2, q *pair) bool {
	return slices.ContainsFunc(r.held(axis(p, r.roof.RidgeAxis())), func(x part) bool { return x.pair == q && x.k >= 1-1e-9 })
}

// onPlates tells whether plates hold both rafters of the pair.
func (p *pair) onPlates() bool {
	return len(p.a.ends) > 0 && p.a.ends[0].plate != nil && len(p.b.ends) > 0 && p.b.ends[0].plate != nil
}
