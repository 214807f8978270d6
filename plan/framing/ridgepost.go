package framing

import (
	"fmt"
	"math"

	"galewright/plan"
	"galewright/plan/geom"
)

// ridgePosts adds the posts under ridges, and the joints at their feet and heads.
func (b *builder) ridgePosts() {
	for _, r := range b.plan.Roofs {
		for _, p := range r.Posts {
			b.ridgePost(r, p)
		}
	}
}

// ridgePost stands one post under the ridge board or beam that passes over its place;
// where none does it tells.
func (b *builder) ridgePost(r *plan.Roof, p *plan.RidgePost) {
	over, mid := b.ridgeOver(r, p.At)
	if over == nil {
		b.ridgePostFault(r, p, "ridge-post-off-ridge", fmt.Sprintf("a post at %s has no ridge over it", b.inches(p.At)), b.ridgeReach(r))
		return
	}
	top := min(over.Z0, over.Z1, lowest(over))
	if top-p.Base < plate {
		b.ridgePostFault(r, p, "ridge-post-no-size", fmt.Sprintf("a post at %s leaves %s from its footing to the ridge", b.inches(p.At), b.inches(max(0, top-p.Base))), "lower its base")
		return
	}
	f := geom.NewFrame(mid, mid.Add(over.B.Sub(over.A).Flat().Unit()))
	d, w := p.Member.Depth/2, p.Member.Width()/2
	m := b.member(&Member{
		ID: fmt.Sprintf("%s/ridge post@%s", r.Name, at(p.At)), Role: plan.RidgePole, Roof: r, Section: p.Member, Length: top - p.Base,
		Z0: p.Base, Z1: top, A: mid.Up(p.Base), B: mid.Up(top), Solid: []geom.Solid{f.Box(-d, d, -w, w, p.Base, top)},
	})
	b.joint(&Joint{Kind: plan.PostBase, Host: r.Name, Roof: r, Level: r.Over, Station: p.At, At: m.A, Members: []*Member{m}, Below: true})
	b.joint(&Joint{Kind: plan.PostCap, Host: r.Name, Roof: r, Level: r.Over, Station: p.At, At: m.B, Members: []*Member{over, m}, Below: true})
}

// ridgeOver returns the piece of a roof's ridge that passes over a place along it, and
// that place on plan; nil where none does.
func (b *builder) ridgeOver(r *plan.Roof, s float64) (*Member, geom.Vec2) {
	for _, m := range b.house.Members {
		if m.Role != plan.Ridge || m.Roof != r {
			continue
		}
		lo, hi := m.A.Flat(), m.B.Flat()
		d := hi.Sub(lo)
		u := s + axisOf(r.Area[0], r.RidgeAxis()) - axisOf(lo, r.RidgeAxis())
		if along := axisOf(d, r.RidgeAxis()); math.Abs(along) > 1 && u/along > 0 && u/along < 1 {
			return m, lo.Add(d.Mul(u / along))
		}
	}
	return nil, geom.Vec2{}
}

// ridgeReach says where a roof has a ridge to stand a post under.
func (b *builder) ridgeReach(r *plan.Roof) string {
	lo, hi := math.Inf(1), math.Inf(-1)
	for _, m := range b.house.Members {
		if m.Role == plan.Ridge && m.Roof == r {
			for _, p := range []geom.Vec3{m.A, m.B} {
				s := axisOf(p.Flat().Sub(r.Area[0]), r.RidgeAxis())
				lo, hi = min(lo, s), max(hi, s)
			}
		}
	}
	if lo > hi {
		return "take it out: the roof has no ridge"
	}
	return fmt.Sprintf("let it stand from %s to %s", b.inches(lo), b.inches(hi))
}

// axisOf returns the coordinate of a plan point along an axis: 0 is x, 1 is y.
func axisOf(p geom.Vec2, i int) float64 { return [2]float64{p.X, p.Y}[i] }

// lowest is the height of a member's lowest point.
func lowest(m *Member) float64 {
	z := math.Inf(1)
	for _, s := range m.Solid {
		lo, _ := s.Bounds()
		z = min(z, lo.Z)
	}
	return z
}

func (b *builder) ridgePostFault(r *plan.Roof, p *plan.RidgePost, code plan.Code, what, mend string) {
	b.fault(plan.Diagnostic{Code: code, Pos: p.Pos, Where: "roof " + r.Name, Summary: what, Mend: mend})
}
