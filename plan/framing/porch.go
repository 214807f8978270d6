package framing

import (
	"fmt"
	"slices"

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
		from := 0.0
		for _, to := range append(b.beamCuts(p, length), length) {
			m := b.lying(Beam, f, from, to, 0, p.Beam.Width(), foot, p.Top)
			m.ID, m.Section = fmt.Sprintf("%s/beam@%s", p.Name, at(from)), p.Beam
			beams = append(beams, b.member(m))
			from = to
		}
		for i, s := range p.Posts {
			if s < 0 || s > length {
				b.porchFault(p, "post-off-beam", fmt.Sprintf("post %d of porch %s stands off its beam", i+1, p.Name), "give stations along the beam, from its start")
				continue
			}
			b.porchPost(p, f, s, foot, beams)
		}
	}
}

// beamCuts breaks a beam longer than the stock over posts.
func (b *builder) beamCuts(p *plan.Porch, length float64) (cuts []float64) {
	posts := slices.Sorted(slices.Values(p.Posts))
	for from := 0.0; length-from > b.longest()+geom.Eps; {
		next := from
		for _, s := range posts {
			if s > next+geom.Eps && s <= from+b.longest()+geom.Eps && s < length {
				next = s
			}
		}
		if next == from {
			return cuts
		}
		cuts, from = append(cuts, next), next
	}
	return cuts
}

// porchPost adds one post, kept flush within the beam's ends.
func (b *builder) porchPost(p *plan.Porch, f geom.Frame, s, foot float64, beams []*Member) {
	w, d, mid := p.Post.Width(), p.Post.Depth, p.Beam.Width()/2
	m := b.member(&Member{ID: fmt.Sprintf("%s/porch post@%s", p.Name, at(s)), Role: Column, Section: p.Post, Length: foot - p.Base,
		Z0: p.Base, Z1: foot, A: f.At(s, mid, p.Base), B: f.At(s, mid, foot),
		Solid: []geom.Solid{f.Box(s-w/2, s+w/2, mid-d/2, mid+d/2, p.Base, foot)}})
	share := postShare(p, s)
	b.joint(&Joint{Kind: PostBase, Host: p.Name, Station: s, At: m.A, Members: []*Member{m}, Below: true, Tributary: share})
	over := []*Member{}
	for _, beam := range beams {
		if x, _ := f.Local(beam.A.Flat()); s >= x-geom.Eps && s <= x+beam.Length+geom.Eps {
			over = append(over, beam)
		}
	}
	b.joint(&Joint{Kind: PostCap, Host: p.Name, Station: s, At: m.B, Members: append([]*Member{over[0], m}, over[1:]...), Below: true, Tributary: share})
}

// postShare returns the length of beam that the post at s carries.
func postShare(p *plan.Porch, s float64) float64 {
	lo, hi := 0.0, p.To.Sub(p.From).Len()
	for _, o := range p.Posts {
		if o < s-geom.Eps {
			lo = max(lo, (o+s)/2)
		}
		if o > s+geom.Eps {
			hi = min(hi, (o+s)/2)
		}
	}
	return hi - lo
}

func (b *builder) porchFault(p *plan.Porch, code, what, mend string) {
	b.fault(plan.Diagnostic{Code: code, Pos: p.Pos, Where: "porch " + p.Name, Summary: what, Mend: mend})
}
