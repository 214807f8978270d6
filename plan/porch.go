package plan

import "galewright/plan/geom"

// PorchCorners returns the sides of porches that meet a porch at its ends, around an
// outside corner: before it and after it as seen from outside; nil where none does.
func (p *Plan) PorchCorners(x *Porch) (before, after *Porch) {
	for _, o := range p.Porches {
		if o == x {
			continue
		}
		if o.To.Sub(x.From).Len() < oneCorner && o.To.Sub(o.From).Cross(x.To.Sub(x.From)) > 0 {
			before = o
		}
		if o.From.Sub(x.To).Len() < oneCorner && x.To.Sub(x.From).Cross(o.To.Sub(o.From)) > 0 {
			after = o
		}
	}
	return before, after
}

// Side returns the side of the compass that a porch looks to.
func (x *Porch) Side() Side {
	out := x.To.Sub(x.From).Right().Unit()
	best := South
	for _, s := range Sides {
		if sideWays[s].Dot(out) > sideWays[best].Dot(out)+1e-9 {
			best = s
		}
	}
	return best
}

// oneCorner is how near the ends of two beams lie that meet at a corner, in.
const oneCorner = 1.0 / 16

// Corner returns the plan point in the middle of the beams at an end of a porch where it
// meets another: the first end, or the last.
func (x *Porch) Corner(last bool) geom.Vec2 {
	f, half := geom.NewFrame(x.From, x.To), x.Beam.Width()/2
	s := half
	if last {
		s = x.To.Sub(x.From).Len() - half
	}
	return f.At(s, half, 0).Flat()
}
