package loadpath

import (
	"fmt"
	"math"
	"slices"

	"galewright/plan"
	"galewright/plan/framing"
	"galewright/plan/timber"
)

// arrival is where a segment presses on a post of several studs: the stud that its tie
// is fastened to, which its sheathing is taken to bring it to, and how much, lb ASD.
type arrival struct {
	at *framing.Member
	lb float64
}

// nailsBetween is what the ordered nails between two studs hold across, lb ASD at wind
// duration, and their words: of studs tight beside each other, or where walls meet.
func (a *analysis) nailsBetween(m, o *framing.Member) (lb float64, words string) {
	for _, c := range []plan.Connection{plan.BuiltUpStuds, plan.CornerStuds} {
		line := a.nails.Line(c)
		if line == nil {
			continue
		}
		for _, s := range line.Spots {
			if s.Side == m && s.Main == o || s.Side == o && s.Main == m {
				n := s.Nails(line.Order)
				lb += float64(n) * line.One(s, a.species).Lateral
				words = fmt.Sprintf("%s of %s, %s", plan.Counted(n, "nail"), line.Mark(), line.Row.One)
			}
		}
	}
	return lb, words
}

// reached is what the studs of a post bear of a force that comes in at one of them:
// that one, and of each that is nailed to it no more than the nails between let
// through. seen are those already counted.
func (a *analysis) reached(m *framing.Member, post []*framing.Member, seen map[*framing.Member]bool) (lb float64, out []Term) {
	seen[m] = true
	lb = a.studBears(m)
	for _, o := range post {
		by, words := a.nailsBetween(m, o)
		if seen[o] || by == 0 {
			continue
		}
		far, more := a.reached(o, post, seen)
		lb += math.Min(by, far)
		out = append(append(out, Term{fmt.Sprintf("through %s between %s and %s", words, m.ID, o.ID), by, "lb"}), more...)
	}
	return lb, out
}

// studBears is what one stud of a post bears: its plate under it, or it as a column.
func (a *analysis) studBears(m *framing.Member) float64 {
	area := m.Section.Width() * m.Section.Depth
	lb := a.species.FcPerp * area
	if w, ok := a.species.Along(); ok {
		v := timber.Column{Along: w, Length: m.Z1 - m.Z0, Depth: m.Section.Depth, Duration: timber.WindDuration}.Value()
		lb = math.Min(lb, v.Stress*area)
	}
	return lb
}

// nailedTogether lowers what a post of several studs bears to what their nails let
// through from where the forces come in to the others. Of two forces, of the walls at
// a corner, both grow alike until one has no way left.
func (a *analysis) nailedTogether(held *Capacity, post []*framing.Member, in ...arrival) {
	if held.Unknown != "" || len(post) < 2 {
		return
	}
	sum := 0.0
	for _, x := range in {
		sum += x.lb
	}
	for _, x := range in {
		if !slices.Contains(post, x.at) || x.lb <= 0 {
			continue
		}
		lb, terms := a.reached(x.at, post, map[*framing.Member]bool{})
		held.Terms = append(held.Terms, ofCapacity(terms...)...)
		what := "of a force that comes in at " + x.at.ID + " the studs bear, each no more than the nails to it let through"
		held.Terms = append(held.Terms, ofCapacity(Term{what, lb, "lb"})...)
		if all := lb * sum / x.lb; all < held.Value {
			held.Value, held.Governs = all, "nails between the studs of the post"
		}
	}
	if len(in) > 1 {
		held.Terms = append(held.Terms, ofCapacity(Term{"both together, as far as the first of them goes", held.Value, "lb"})...)
	}
}
