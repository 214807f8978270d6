package steel

import "galewright/plan/geom"

// Meeting is two fasteners that share space.
type Meeting struct {
	A, B   *Body
	F, G   Fastener
	Apart  float64 // of their middle lines, in
	InWood bool    // both run in one member there
}

// nail is a fastener with its body, in the index of Meetings.
type nail struct {
	b *Body
	f Fastener
}

// Meetings returns the pairs of fasteners whose shanks touch: driven from two
// faces into one member, or through each other's steel. Those of one end are
// left to its pattern.
func Meetings(bodies []*Body) (out []Meeting) {
	grid := geom.NewGrid[nail]()
	for _, b := range bodies {
		for _, f := range b.Fasteners {
			lo, hi := bounds(f.Head, f.Tip)
			r := geom.Vec3{X: f.Diameter, Y: f.Diameter, Z: f.Diameter}
			for _, o := range grid.Within(lo.Sub(r), hi.Add(r)) {
				if o.b == b && o.f.End == f.End {
					continue
				}
				if d := Apart(o.f, f); d < (o.f.Diameter+f.Diameter)/2-geom.Eps {
					out = append(out, Meeting{o.b, b, o.f, f, d, shared(o.f, f)})
				}
			}
			grid.Add(nail{b, f}, lo, hi, nil)
		}
	}
	return out
}

// shared tells whether two fasteners run in one member.
func shared(f, g Fastener) bool {
	for _, r := range f.Runs {
		for _, s := range g.Runs {
			if r.Member == s.Member {
				return true
			}
		}
	}
	return false
}
