package framing

import (
	"fmt"
	"math"
	"strings"

	"galewright/plan"
	"galewright/plan/geom"
)

// porches adds the beam and posts of each porch, and their joints. At a corner the beams of
// two sides are mitered over one post, so that each has half of it (common practice, no
// published source).
func (b *builder) porches() {
	for _, p := range b.plan.Porches {
		f := geom.NewFrame(p.From, p.To)
		length, foot := p.To.Sub(p.From).Len(), p.Top-p.Beam.Depth
		if length < plate || foot-p.Base < plate {
			b.porchFault(p, "porch-no-size", fmt.Sprintf("porch %s leaves no room for beam and posts", p.Name), "check from, to, base and top")
			continue
		}
		b.checkPorchCorners(p)
		var beams []*Member
		b.eachPart(append(append([]float64{0}, b.cutsOver(p.Posts, 0, length)...), length), func(from, to float64) {
			m := b.lying(plan.Beam, f, from, to, 0, p.Beam.Width(), foot, p.Top)
			m.ID, m.Section = fmt.Sprintf("%s/beam@%s", p.Name, at(from)), p.Beam
			b.miterBeam(p, f, m, from < geom.Eps, to > length-geom.Eps)
			beams = append(beams, b.member(m))
		})
		beams = b.inOrder(beams)
		for i, s := range p.Posts {
			if s < 0 || s > length {
				b.porchFault(p, "post-off-beam", fmt.Sprintf("post %d of porch %s stands off its beam", i+1, p.Name), "give stations along the beam, from its start")
				continue
			}
			b.porchPost(p, f, s, foot, beams)
		}
	}
}

// checkPorchCorners reports sides of porches that meet at a corner and do not fit: tops or
// beams that differ, a corner that is not square, or no post under it.
func (b *builder) checkPorchCorners(p *plan.Porch) {
	_, next := b.plan.PorchCorners(p)
	if next == nil {
		return
	}
	if math.Abs(p.Top-next.Top) > sixteenth || p.Beam != next.Beam || p.Base != next.Base || p.Post != next.Post || !geom.Square(p.To.Sub(p.From).Unit(), next.To.Sub(next.From).Unit()) {
		b.porchFault(p, "porch-corner-unlike", fmt.Sprintf("porches %s and %s meet at a corner and do not fit there", p.Name, next.Name),
			"give both one beam, one post, one base and one top, and a square corner; or end one short of the other's beam")
	}
	for _, x := range []struct {
		of   *plan.Porch
		last bool
	}{{p, true}, {next, false}} {
		s, _ := geom.NewFrame(x.of.From, x.of.To).Local(x.of.Corner(x.last))
		under := false
		for _, at := range x.of.Posts {
			under = under || math.Abs(at-s) < sixteenth
		}
		if !under {
			b.porchFault(x.of, "porch-corner-unlike", fmt.Sprintf("porch %s has no post in the middle of its beam at the corner", x.of.Name),
				fmt.Sprintf("put one at %s", b.inches(s)))
		}
	}
}

// miterBeam cuts a piece of a porch's beam at the corners where another goes on.
func (b *builder) miterBeam(p *plan.Porch, f geom.Frame, m *Member, first, last bool) {
	before, after := b.plan.PorchCorners(p)
	cut := func(corner, d geom.Vec2) {
		n := d.Add(f.In).Unit()
		m.Solid[0] = m.Solid[0].Clip(geom.Plane{N: n.Up(0), C: n.Dot(corner)})
	}
	back := f.D.Mul(p.Beam.Width() / 2).Up(0)
	if first && before != nil {
		cut(p.From, f.D.Mul(-1))
		m.A, m.Bevel = m.A.Add(back), 45
	}
	if last && after != nil {
		cut(p.To, f.D)
		m.B, m.Bevel = m.B.Sub(back), 45
	}
}

// porchPost adds one post; at a corner the one that stands there already.
func (b *builder) porchPost(p *plan.Porch, f geom.Frame, s, foot float64, beams []*Member) {
	w, d, mid := p.Post.Width(), p.Post.Depth, p.Beam.Width()/2
	share := shareOf(p.Posts, s, 0, p.To.Sub(p.From).Len())
	m := b.postAt(f.At(s, mid, foot))
	if m == nil {
		role, name := plan.PorchPost, "porch post"
		if p.Piles {
			role, name = plan.Pile, porchPile
		}
		m = b.member(&Member{
			ID: fmt.Sprintf("%s/%s@%s", p.Name, name, at(s)), Role: role, Section: p.Post, Length: foot - p.Base,
			Z0: p.Base, Z1: foot, A: f.At(s, mid, p.Base), B: f.At(s, mid, foot),
			Solid: []geom.Solid{f.Box(s-w/2, s+w/2, mid-d/2, mid+d/2, p.Base, foot)},
		})
		if !p.Piles {
			b.joint(&Joint{Kind: plan.PostBase, Host: p.Name, Station: s, At: m.A, Members: []*Member{m}, Below: true, Tributary: share})
		}
	}
	over := []*Member{}
	for _, beam := range beams {
		x, _ := f.Local(beam.A.Flat())
		if y, _ := f.Local(beam.B.Flat()); s >= x-geom.Eps && s <= y+geom.Eps {
			over = append(over, beam)
		}
	}
	over = b.inOrder(over)
	b.joint(&Joint{Kind: plan.PostCap, Host: p.Name, Station: s, At: m.B, Members: append([]*Member{over[0], m}, over[1:]...), Below: true, Tributary: share})
}

// porchPile names a pile that is a post of a porch in IDs.
const porchPile = "porch pile"

// OfPorch tells whether a pile is a post of a porch, that goes up to its beam.
func (m *Member) OfPorch() bool {
	return m.Role == plan.Pile && strings.Contains(m.ID, "/"+porchPile+"@")
}

// postAt returns the porch post whose head is at p, nil for none.
func (b *builder) postAt(p geom.Vec3) *Member {
	for _, m := range b.index.Within(around(p)) {
		if (m.Role == plan.PorchPost || m.OfPorch()) && m.B.Sub(p).Len() < sixteenth {
			return m
		}
	}
	return nil
}

func (b *builder) porchFault(p *plan.Porch, code plan.Code, what, mend string) {
	b.fault(plan.Diagnostic{Code: code, Pos: p.Pos, Where: "porch " + p.Name, Summary: what, Mend: mend})
}
