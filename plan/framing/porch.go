package framing

import (
	"fmt"

	"galewright/plan"
	"galewright/plan/geom"
)

// porches adds the beam and posts of each porch, and their joints.
func (b *builder) porches() {
	for _, p := range b.plan.Porches {
		f := geom.NewFrame(p.From, p.To)
		length, foot := p.To.Sub(p.From).Len(), p.Top-p.Beam.Depth
		if length < plate || foot-p.Base < plate {
			b.porchFault(p, "porch-no-size", fmt.Sprintf("porch %s leaves no room for beam and posts", p.Name), "check from, to, base and top")
			continue
		}
		var beams []*Member
		b.eachPart(append(append([]float64{0}, b.cutsOver(p.Posts, 0, length)...), length), func(from, to float64) {
			m := b.lying(plan.Beam, f, from, to, 0, p.Beam.Width(), foot, p.Top)
			m.ID, m.Section = fmt.Sprintf("%s/beam@%s", p.Name, at(from)), p.Beam
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

// porchPost adds one post, kept flush within the beam's ends.
func (b *builder) porchPost(p *plan.Porch, f geom.Frame, s, foot float64, beams []*Member) {
	w, d, mid := p.Post.Width(), p.Post.Depth, p.Beam.Width()/2
	m := b.member(&Member{
		ID: fmt.Sprintf("%s/porch post@%s", p.Name, at(s)), Role: plan.PorchPost, Section: p.Post, Length: foot - p.Base,
		Z0: p.Base, Z1: foot, A: f.At(s, mid, p.Base), B: f.At(s, mid, foot),
		Solid: []geom.Solid{f.Box(s-w/2, s+w/2, mid-d/2, mid+d/2, p.Base, foot)},
	})
	share := shareOf(p.Posts, s, 0, p.To.Sub(p.From).Len())
	b.joint(&Joint{Kind: plan.PostBase, Host: p.Name, Station: s, At: m.A, Members: []*Member{m}, Below: true, Tributary: share})
	over := []*Member{}
	for _, beam := range beams {
		if x, _ := f.Local(beam.A.Flat()); s >= x-geom.Eps && s <= x+beam.Length+geom.Eps {
			over = append(over, beam)
		}
	}
	over = b.inOrder(over)
	b.joint(&Joint{Kind: plan.PostCap, Host: p.Name, Station: s, At: m.B, Members: append([]*Member{over[0], m}, over[1:]...), Below: true, Tributary: share})
}

func (b *builder) porchFault(p *plan.Porch, code plan.Code, what, mend string) {
	b.fault(plan.Diagnostic{Code: code, Pos: p.Pos, Where: "porch " + p.Name, Summary: what, Mend: mend})
}
