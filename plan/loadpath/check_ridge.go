package loadpath

import (
	"fmt"
	"math"
	"slices"

	"galewright/plan"
	"galewright/plan/framing"
)

// ridgeBendCheck is the ID of the check of ridge boards in bending.
const ridgeBendCheck = "ridge-bending"

// ridgeBendDoc says what the check looks at and what it leaves out.
const ridgeBendDoc = "bending and shear, upright, of ridge boards by what hips, valleys and single rafters pull up at them, each in its own worst case, between the pairs of rafters that stand on plates with both feet: past the last of these the board sticks out. That the members which meet at a ridge's end may hold each other there as a tripod is not counted. No. 2 lumber, stable by itself. Ridge beams are the engineer's"

// ridgeBending checks each ridge board that hips, valleys or single rafters pull at, where
// that bends it.
func ridgeBending(c *Check, a *analysis) (out []*Link) {
	for _, r := range a.ridges {
		pulls, from := a.pullsAt(r)
		supports := r.stands()
		if r.bearing || len(pulls) == 0 || len(supports) == 0 {
			continue
		}
		b := a.boardAt(r, pulls[len(pulls)-1].at)
		if b == nil {
			continue
		}
		s := onSupports(supports, 0, b.Section.Depth, pulls)
		if s.moment <= least {
			continue
		}
		out = append(out, a.ridgeLinks(c, r, b, s, append(from, a.standTerm(supports, pulls)))...)
	}
	return out
}

// pullsAt lists what hips, valleys and single rafters pull up at a ridge, by place along
// it, lb ASD.
func (a *analysis) pullsAt(r *ridge) (out []push, terms []Term) {
	for _, s := range a.rafters {
		for _, e := range s.ends {
			if e.ridge != r || e.joint == nil {
				continue
			}
			if p := a.peaks[e.joint]; p != nil && p.demand > least {
				at := axis(e.at, r.roof.RidgeAxis())
				out = append(out, push{at, p.demand})
				terms = append(terms, Term{fmt.Sprintf("from the %s at %s, in its own worst case, ASD", s.Member.Role, e.joint.ID), p.demand, "lb"})
			}
		}
	}
	slices.SortFunc(out, func(x, y push) int { return cmpFloat(x.at, y.at) })
	return out, terms
}

// stands lists the places along a ridge of the pairs that stand on plates with both feet.
func (r *ridge) stands() (out []float64) {
	for _, p := range r.pairs {
		if p.onPlates() {
			out = append(out, p.along)
		}
	}
	slices.Sort(out)
	return out
}

// standTerm tells how far the forces reach past the pairs.
func (a *analysis) standTerm(supports []float64, pulls []push) Term {
	far := 0.0
	for _, p := range pulls {
		near := math.Inf(1)
		for _, s := range supports {
			near = math.Min(near, math.Abs(s-p.at))
		}
		far = math.Max(far, near)
	}
	return Term{"from the nearest pair of rafters on two plates, at most", far / 12, "ft"}
}

// boardAt is the piece of a ridge board at a place along it, or the nearest.
func (a *analysis) boardAt(r *ridge, at float64) (best *framing.Member) {
	near := math.Inf(1)
	for _, m := range a.house.Members {
		if m.Role != plan.Ridge || m.Roof != r.roof || math.Abs(axis(m.A.Flat(), 1-r.roof.RidgeAxis())-r.cross) > 1 {
			continue
		}
		lo, hi := boardEnds(m, r)
		if d := math.Max(0, math.Max(lo-at, at-hi)); d < near {
			best, near = m, d
		}
	}
	return best
}

// boardEnds are where a piece of a ridge board begins and ends along the ridge.
func boardEnds(m *framing.Member, r *ridge) (lo, hi float64) {
	i := r.roof.RidgeAxis()
	lo, hi = axis(m.A.Flat(), i), axis(m.B.Flat(), i)
	return math.Min(lo, hi), math.Max(lo, hi)
}

// ridgeLinks are those of bending and shear of a ridge board. A break of the board on the
// way from the last pair takes no bending at all.
func (a *analysis) ridgeLinks(c *Check, r *ridge, m *framing.Member, s spanned, terms []Term) (out []*Link) {
	of := wood{n: max(1, m.Section.Ply), wide: m.Section.Breadth, deep: m.Section.Depth, depth: m.Section.Depth, why: "the ridge board " + m.Section.Text, factor: 1}
	for _, x := range []struct {
		what, unit string
		demand     float64
	}{{"bending", "lb-in", s.moment}, {"shear", "lb", s.shear}} {
		l := &Link{
			Check: c, ID: fmt.Sprintf("%s ridge at %.0f, %s", r.roof.Name, math.Abs(s.at-r.lo), x.what), Host: "roof " + r.roof.Name, Unit: x.unit, Case: "each hip, valley or rafter in its own worst case",
			Where:  fmt.Sprintf("roof %s, ridge board, most at %s", r.roof.Name, a.u.Length(s.at-r.lo)+" from its low end"),
			Demand: x.demand, Strength: x.demand / ASD.W,
		}
		l.Terms = append(slices.Clone(terms), Term{"largest " + map[string]string{"bending": "moment", "shear": "shear"}[x.what] + ", ASD", x.demand, x.unit})
		if lo, hi := boardEnds(m, r); s.at < lo || s.at > hi {
			l.close(nil)
			l.Gap = "the board breaks between the last pair and what pulls at it: nothing in the plan holds the ridge's end there"
			return append(out, l)
		}
		l.close(a.inBending(of, x.what))
		out = append(out, l)
	}
	return out
}
