package steel

import (
	"math"

	"galewright/plan/geom"
)

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
	f *Fastener
}

// stop notes on each fastener how far it goes in before it meets another one. Both
// of a pair are cut short, whichever goes in first: the lower of what either order
// of work leaves them.
func stop(bodies []*Body) {
	eachMeeting(bodies, func(a, b nail, _ float64) {
		short(a.f, b.f)
		short(b.f, a.f)
	})
}

// short cuts f to where its shank first touches g's. Along a line the distance to a
// segment falls and then rises, so the place is found by halving twice.
func short(f, g *Fastener) {
	r, along := (f.Diameter+g.Diameter)/2, f.Tip.Sub(f.Head)
	far := func(s float64) float64 {
		p := f.Head.Add(along.Mul(s))
		return geom.Apart(p, p, g.Head, g.Tip)
	}
	lo, hi := 0.0, 1.0
	for range 50 { // to the least distance
		if a, b := lo+(hi-lo)/3, hi-(hi-lo)/3; far(a) <= far(b) {
			hi = b
		} else {
			lo = a
		}
	}
	out, in := 0.0, hi
	for range 50 { // to where it is first as near as shanks touch
		if mid := (out + in) / 2; far(mid) < r {
			in = mid
		} else {
			out = mid
		}
	}
	if at := math.Max(in*along.Len(), geom.Eps); f.Stop == 0 || at < f.Stop {
		f.Stop = at
	}
}

// Meetings returns the pairs of fasteners whose shanks touch: driven from two
// faces into one member, or through each other's steel. Those of one plate's end are
// left to its pattern.
func Meetings(bodies []*Body) (out []Meeting) {
	eachMeeting(bodies, func(a, b nail, d float64) {
		out = append(out, Meeting{a.b, b.b, *a.f, *b.f, d, shared(*a.f, *b.f)})
	})
	return out
}

// eachMeeting tells each pair of fasteners that touch, with how far their middle
// lines are apart, in.
func eachMeeting(bodies []*Body, tell func(a, b nail, apart float64)) {
	grid := geom.NewGrid[nail]()
	for _, b := range bodies {
		for i := range b.Fasteners {
			f := &b.Fasteners[i]
			lo, hi := bounds(f.Head, f.Tip)
			r := geom.Vec3{X: f.Diameter, Y: f.Diameter, Z: f.Diameter}
			for _, o := range grid.Within(lo.Sub(r), hi.Add(r)) {
				if o.b == b && o.f.End == f.End && o.f.Band == f.Band {
					continue
				}
				if d := Apart(*o.f, *f); d < (o.f.Diameter+f.Diameter)/2-geom.Eps {
					tell(o, nail{b, f}, d)
				}
			}
			grid.Add(nail{b, f}, lo, hi, nil)
		}
	}
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
