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
const ridgeBendDoc = "bending and shear, upright, of each piece of a ridge board by what hips, valleys and single rafters pull up at it, each in its own worst case, between the posts under it and the pairs of rafters that stand on plates with both feet: past the last of these the board sticks out. A piece breaks off from the next. That the members which meet at a ridge's end may hold each other there as a tripod is not counted. No. 2 lumber, stable by itself. Ridge beams are the engineer's"

// ridgeBending checks each piece of a ridge board that hips, valleys or single rafters
// pull at, where that bends it.
func ridgeBending(c *Check, a *analysis) (out []*Link) {
	for _, r := range a.ridges {
		pulls, from := a.pullsAt(r)
		if r.bearing {
			continue
		}
		for _, m := range a.boards(r) {
			lo, hi := boardEnds(m, r)
			in, of := within(pulls, from, lo, hi)
			out = append(out, a.pieceLinks(c, r, m, in, of, r.stands(lo-1, hi+1))...)
		}
	}
	return out
}

// within keeps the pulls from lo up to hi, and what is said of each.
func within(pulls []push, from []Term, lo, hi float64) (in []push, of []Term) {
	for i, p := range pulls {
		if p.at >= lo-1e-6 && p.at < hi-1e-6 {
			in, of = append(in, p), append(of, from[i])
		}
	}
	return in, of
}

// pieceLinks are those of one piece of a ridge board.
func (a *analysis) pieceLinks(c *Check, r *ridge, m *framing.Member, pulls []push, of []Term, supports []float64) []*Link {
	if len(pulls) == 0 {
		return nil
	}
	if gap := tips(supports, pulls); gap != "" {
		at := farthest(supports, pulls)
		l := a.ridgeLink(c, r, at.at, "pull", "lb", at.lb, of)
		l.Gap, l.Ratio = gap, math.Inf(1)
		return []*Link{l}
	}
	s := onSupports(supports, 0, m.Section.Depth, pulls)
	if s.moment <= least {
		return nil
	}
	return a.ridgeLinks(c, r, m, s, append(of, a.standTerm(supports, pulls)))
}

// tips says of a piece that what stands under it does not hold; "" where it does.
func tips(supports []float64, pulls []push) string {
	switch far := farthest(supports, pulls); {
	case len(supports) == 0:
		return "no pair of rafters on two plates and no post stands under this piece of the board: nothing in the plan holds it there; put a post under it"
	case len(supports) == 1 && math.Abs(far.at-supports[0]) > 1:
		return "one pair or post alone stands under this piece of the board, and it tips over that: nothing in the plan holds the ridge's end there; put a post under it, or let the board run on in one piece"
	}
	return ""
}

// farthest is the pull that is farthest from what stands under the board.
func farthest(supports []float64, pulls []push) (out push) {
	most := -1.0
	for _, p := range pulls {
		near := math.Inf(1)
		for _, s := range supports {
			near = math.Min(near, math.Abs(s-p.at))
		}
		if near > most {
			out, most = p, near
		}
	}
	return out
}

// pullsAt lists what hips, valleys and single rafters pull up at a ridge, by place along
// it, lb ASD, and what is said of each.
func (a *analysis) pullsAt(r *ridge) (out []push, terms []Term) {
	type told struct {
		push
		Term
	}
	var list []told
	for _, s := range a.rafters {
		for _, e := range s.ends {
			if e.ridge != r || e.joint == nil {
				continue
			}
			if p := a.peaks[e.joint]; p != nil && p.demand > least {
				list = append(list, told{
					push{axis(e.at, r.roof.RidgeAxis()), p.demand},
					Term{fmt.Sprintf("from the %s at %s, in its own worst case, ASD", s.Member.Role, e.joint.ID), p.demand, "lb"},
				})
			}
		}
	}
	slices.SortStableFunc(list, func(x, y told) int { return cmpFloat(x.at, y.at) })
	for _, x := range list {
		out, terms = append(out, x.push), append(terms, x.Term)
	}
	return out, terms
}

// stands lists the places along a ridge, from lo to hi, of the pairs that stand on plates
// with both feet and of posts.
func (r *ridge) stands(lo, hi float64) (out []float64) {
	for _, h := range r.holders() {
		if h.at >= lo && h.at <= hi {
			out = append(out, h.at)
		}
	}
	return out
}

// standTerm tells how far the forces are from what stands under the board.
func (a *analysis) standTerm(supports []float64, pulls []push) Term {
	p, far := farthest(supports, pulls), math.Inf(1)
	for _, s := range supports {
		far = math.Min(far, math.Abs(s-p.at))
	}
	return Term{"from the nearest post, or pair of rafters on two plates, at most", far / 12, "ft"}
}

// boards are the pieces of a ridge, in the order of the house.
func (a *analysis) boards(r *ridge) (out []*framing.Member) {
	for _, m := range a.house.Members {
		if m.Role == plan.Ridge && m.Roof == r.roof && math.Abs(axis(m.A.Flat(), 1-r.roof.RidgeAxis())-r.cross) <= 1 {
			out = append(out, m)
		}
	}
	return out
}

// boardEnds are where a piece of a ridge board begins and ends along the ridge.
func boardEnds(m *framing.Member, r *ridge) (lo, hi float64) {
	i := r.roof.RidgeAxis()
	lo, hi = axis(m.A.Flat(), i), axis(m.B.Flat(), i)
	return math.Min(lo, hi), math.Max(lo, hi)
}

// ridgeLink is the link of a piece of a ridge board at a place along the ridge.
func (a *analysis) ridgeLink(c *Check, r *ridge, at float64, what, unit string, demand float64, terms []Term) *Link {
	return &Link{
		Check: c, ID: fmt.Sprintf("%s ridge at %.0f, %s", r.roof.Name, math.Abs(at-r.lo), what), Host: "roof " + r.roof.Name, Unit: unit, Case: "each hip, valley or rafter in its own worst case",
		Where:  fmt.Sprintf("roof %s, ridge board, most at %s", r.roof.Name, a.u.Length(at-r.lo)+" from its low end"),
		Demand: demand, Strength: demand / ASD.W, Terms: slices.Clone(terms),
	}
}

// ridgeLinks are those of bending and shear of a piece of a ridge board.
func (a *analysis) ridgeLinks(c *Check, r *ridge, m *framing.Member, s spanned, terms []Term) (out []*Link) {
	of := wood{n: max(1, m.Section.Ply), wide: m.Section.Breadth, deep: m.Section.Depth, depth: m.Section.Depth, why: "the ridge board " + m.Section.Text, factor: 1}
	for _, x := range []struct {
		what, unit, most string
		demand           float64
	}{{"bending", "lb-in", "moment", s.moment}, {"shear", "lb", "shear", s.shear}} {
		l := a.ridgeLink(c, r, s.at, x.what, x.unit, x.demand, terms)
		l.Terms = append(l.Terms, Term{"largest " + x.most + ", ASD", x.demand, x.unit})
		l.close(a.inBending(of, x.what))
		out = append(out, l)
	}
	return out
}
