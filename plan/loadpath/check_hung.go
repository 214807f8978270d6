package loadpath

import (
	"math"

	"galewright/plan"
	"galewright/plan/framing"
	"galewright/plan/hardware"
)

// hungOn is the part of a hip's or valley's pull that its hanger hands to a rafter
// beside it.
type hungOn struct {
	joint *framing.Joint // of the hip or valley
	k     float64        // share of the hanger's nails in the rafter
}

// hungOnRafters finds which rafters hold the upper ends of hips and valleys: those
// that the flanges of their hangers are nailed to, each by its share of the nails that
// are not in the hip itself.
func (a *analysis) hungOnRafters() map[*framing.Member][]hungOn {
	out := map[*framing.Member][]hungOn{}
	for _, j := range a.house.Joints {
		if j.Kind != plan.RafterRidge || j.First() == nil || j.First().Role != plan.HipRafter && j.First().Role != plan.ValleyRafter {
			continue
		}
		in, total := map[*framing.Member]int{}, 0
		var order []*framing.Member
		for _, p := range a.placed.At(j) {
			b := a.steel.Body(p)
			if p.Item.Kind.Shape != hardware.Body || b == nil {
				continue
			}
			for _, f := range b.Fasteners {
				m, _, _, ok := f.Bite(p.Item.Thickness)
				if !ok || m == j.First() {
					continue
				}
				if in[m]++; in[m] == 1 {
					order = append(order, m)
				}
				total++
			}
		}
		for _, m := range order {
			if m.Role == plan.Rafter {
				out[m] = append(out[m], hungOn{j, float64(in[m]) / float64(total)})
			}
		}
	}
	return out
}

// withHung adds to what a rafter asks of its tie at the ridge the pull of the hips and
// valleys that hang on it, each in its own worst case. The pair of rafters that takes
// what comes to a ridge board there has all of it in its own forces already.
func (a *analysis) withHung(l *Link, on map[*framing.Member][]hungOn) {
	members := l.Joint.Members[:1]
	p := a.pairAt[l.Joint]
	if p != nil {
		members = l.Joint.Members
	}
	added := false
	for _, m := range members {
		for _, h := range on[m] {
			added = a.addHung(l, p, h) || added
		}
	}
	if added {
		l.Terms = append(l.Terms, Term{"together, ASD", l.Demand, "lb"})
	}
}

// addHung adds what one hanger hands on: as it is where the tie of one rafter holds it
// up, as level tension across the ridge where two lean on each other (a pull P at the
// peak of two bars hinged there and at their plates: P a b / (L f)).
func (a *analysis) addHung(l *Link, p *pair, h hungOn) bool {
	q := a.peaks[h.joint]
	if q == nil || q.demand <= 0 || p != nil && (a.takes(p, h.joint) || p.rise <= 1) {
		return false
	}
	k, as := h.k, ""
	if p != nil {
		k *= p.apex * (p.span - p.apex) / p.span / p.rise
		as = ", as level tension across the ridge"
	}
	lb := k * q.demand
	l.Demand += lb
	l.Strength += k * math.Max(0, q.force.net(Strength))
	l.Terms = append(l.Terms, Term{a.u.Sprintf("of the %s at %s, whose hanger has %.0f%% of its nails in this rafter, in its own worst case%s", h.joint.First().Role, h.joint.ID, 100*h.k, as), lb, "lb"})
	return true
}

// takes tells whether the pull that a hip or valley brings to a ridge board is in the
// forces of this pair: that of the nearest pair on two plates alone, which may stand
// bays away where the rafters beside end at a valley.
func (a *analysis) takes(p *pair, j *framing.Joint) bool {
	for _, s := range a.rafters {
		for _, e := range s.ends {
			if e.joint == j && e.ridge != nil && !e.ridge.bearing && e.ridge.nearest(e.at) == p {
				return true
			}
		}
	}
	return false
}
