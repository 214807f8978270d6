package loadpath

import (
	"fmt"
	"math"
	"slices"

	"galewright/plan/framing"
	"galewright/plan/steel"
	"galewright/plan/timber"
	"galewright/plan/units"
)

// postCheck is the ID of the check of end posts in tension.
const postCheck = "post-tension"

// pulledPosts checks the wood of each segment's end posts where a hold-down or
// strap takes their tension: only the studs that its fasteners are in count, for at
// the uppermost of them they carry all of it.
func pulledPosts(c *Check, a *analysis) (out []*Link) {
	for _, x := range a.lateral.lines {
		for _, s := range x.Segments {
			if !s.base || s.Lifts == 0 {
				continue
			}
			for i, j := range s.ends {
				if j == nil {
					continue
				}
				if end := a.endLink(c, x, s, i); end.Gap == "" && end.Demand > least {
					out = append(out, a.postLink(end, s.posts[i], j))
				}
			}
		}
	}
	return out
}

// postLink makes the link of an end post out of that of its tie. What lifts the
// post itself goes through the same wood, whichever piece holds it at its foot.
func (a *analysis) postLink(l *Link, posts []*framing.Member, j *framing.Joint) *Link {
	l.ID, l.Notes = j.ID+", post", nil
	if foot := a.footOf[j.First()]; foot != nil && !slices.ContainsFunc(l.Terms, func(t Term) bool { return t.Text == sameUplift }) {
		if p := a.peaks[foot]; p != nil && p.demand > 0 {
			l.Demand += p.demand
			l.Strength += p.demand / ASD.W
			l.Terms = append(l.Terms, Term{"uplift of the post, in its own worst case", p.demand, "lb"}, Term{"both, ASD", l.Demand, "lb"})
		}
	}
	l.close(a.woodPulled(posts, a.tiesOf(j)))
	return l
}

// tiesOf returns the bodies that hold the post of a wall-end joint: those at the
// joint, else at the post's foot.
func (a *analysis) tiesOf(j *framing.Joint) (out []*steel.Body) {
	at := a.placed.At(j)
	if foot := a.footOf[j.First()]; len(at) == 0 && foot != nil {
		at = a.placed.At(foot)
	}
	for _, p := range at {
		if b := a.steel.Body(p); b != nil && len(b.Fasteners) > 0 {
			out = append(out, b)
		}
	}
	return out
}

// woodPulled is what the studs that the bodies are fastened to bear in tension, ASD
// at wind duration.
func (a *analysis) woodPulled(posts []*framing.Member, bodies []*steel.Body) *Capacity {
	along, from := a.tension()
	if along.Ft == 0 {
		return &Capacity{Unknown: "no tension along the grain is carried for " + a.species.Name + ": give lumber.tension"}
	}
	held := &Capacity{Source: "computed", Pieces: 1, Governs: "tension of the post's wood"}
	least := map[*framing.Member]float64{}
	var order []*framing.Member
	for _, b := range bodies {
		for _, m := range b.Members() {
			if !slices.Contains(posts, m) && m != b.Piece.Joint.First() {
				continue
			}
			v, t := studPulled(a.u, b, m, along)
			if old, ok := least[m]; !ok || v < old {
				if !ok {
					order = append(order, m)
				}
				least[m] = v
				held.Terms = append(held.Terms, ofCapacity(Term{t + ", " + from, v, "lb"})...)
			}
		}
	}
	for _, m := range order {
		held.Value += least[m]
	}
	if len(order) > 1 {
		held.Terms = append(held.Terms, ofCapacity(Term{fmt.Sprintf("%d studs", len(order)), held.Value, "lb"})...)
	}
	if len(order) == 0 {
		held.Unknown = "no fastener is in a stud of the post"
	}
	return held
}

// tension returns Ft and Fv of the posts and where they are from.
func (a *analysis) tension() (timber.Along, string) {
	w, _ := a.species.Along()
	if t := a.plan.Lumber.Tension; t > 0 {
		w.Ft = t
		return w, a.u.Sprintf("Ft %.0f psi by the plan", t)
	}
	return w, a.u.Sprintf("Ft %.0f psi, No. 2, from memory", w.Ft)
}

// studPulled is what one stud bears where a body is fastened to it. Nails and
// screws are driven without a hole that counts; of bolts the net section and what
// their rows tear out (NDS 2018 3.1.2, from memory, and Appendix E): as far as the
// bolt nearest to the stud's end is from it, or as they are apart. Rows are taken to
// stand close beside each other, which tears out soonest.
func studPulled(u units.System, b *steel.Body, m *framing.Member, along timber.Along) (lb float64, text string) {
	in := b.Holds(m)
	gross := m.Section.Width() * m.Section.Depth
	if in[0].Diameter < steel.Large {
		return float64(timber.WindDuration) * along.Ft * gross, u.Sprintf("stud of %.2f in², CD 1.6", gross)
	}
	p, end := b.Pattern(in[0].End), math.Inf(1)
	for _, f := range in {
		end = math.Min(end, f.Margin.End)
	}
	rows := max(p.Rows, 1)
	n := max(1, len(in)/rows)
	if n > 1 {
		end = math.Min(end, p.Spacing)
	}
	w := timber.WoodTension{
		Thickness: in[0].Runs[0].Len(), Width: gross / in[0].Runs[0].Len(), Hole: in[0].Diameter + 1.0/16, Rows: rows, N: n,
		Critical: end, Ft: along.Ft * float64(timber.WindDuration), Fv: along.Fv * float64(timber.WindDuration),
	}
	v, err := w.Value()
	if err != nil {
		return 0, err.Error()
	}
	return v.Allow, u.Sprintf("stud of %.2f in² with %d bolts of %.3f in, %s governs, CD 1.6 (%s)", gross, len(in), in[0].Diameter, v.Governs, v.Source)
}
